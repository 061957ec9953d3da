package swapworth.statistics;

/** What a row tells of its response. */
public enum Bound {
    /** The response was seen. */
    NONE,
    /** The response lies above the stated number, such as the worth of a car above a bid that missed the reserve. */
    BELOW
}
