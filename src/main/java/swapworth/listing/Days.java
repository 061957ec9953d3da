package swapworth.listing;

/** How many days the years and months of the calendar have on average. */
public final class Days {
    /** The mean length of a year. */
    public static final double PER_YEAR = 365.25;
    /** The mean length of a month. */
    public static final double PER_MONTH = PER_YEAR / 12;

    private Days() {
    }
}
