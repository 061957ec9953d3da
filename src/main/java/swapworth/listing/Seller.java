package swapworth.listing;

/** Who offers the car. */
public enum Seller {
    /** A private person. */
    PRIVATE("private"),
    /** A business that deals in cars. */
    TRADE("trade"),
    /** An auction. */
    AUCTION("auction"),
    /** The row does not say. */
    UNKNOWN("unknown");

    private final String words;

    Seller(String words) {
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
