package swapworth.listing;

/** How an advertisement or sale ended. */
public enum Outcome {
    /** Still on offer when it was last seen. */
    OPEN("open"),
    /** Sold. */
    SOLD("sold"),
    /** Taken back by the seller. */
    WITHDRAWN("withdrawn"),
    /** Vanished for an unknown reason: not a sale. */
    GONE("gone");

    private final String words;

    Outcome(String words) {
        this.words = words;
    }

    /**
     * How it stands in a file and on a page.
     *
     * @return plain words in lower case
     */
    public String words() {
        return words;
    }
}
