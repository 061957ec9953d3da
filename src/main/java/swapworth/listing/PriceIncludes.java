package swapworth.listing;

/** What a price already holds beside the car. */
public enum PriceIncludes {
    /** Neither fees nor tax. */
    NEITHER("neither"),
    /** The buyer's fees. */
    FEES("fees"),
    /** The sales tax. */
    TAX("tax"),
    /** The buyer's fees and the sales tax. */
    BOTH("both"),
    /** The row does not say. */
    UNKNOWN("unknown");

    private final String words;

    PriceIncludes(String words) {
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
