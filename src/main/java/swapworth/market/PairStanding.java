package swapworth.market;

/** How a body and a running gear stand to each other in a collection of cars. */
public enum PairStanding {
    /** Cars show them together. */
    SEEN,
    /** No car shows them together, but a chain of shared bodies and running gears joins them. */
    LINKED,
    /** Nothing joins them, but measured facts speak for the running gear. */
    BY_FACTS,
    /** Nothing tells them apart. */
    APART
}
