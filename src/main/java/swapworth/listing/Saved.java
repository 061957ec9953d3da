package swapworth.listing;

/** How a row came into the collection. */
public enum Saved {
    /** Every result of a search was kept. */
    WHOLE_SEARCH("whole search"),
    /** The collector chose it, so it may be unusual. */
    PICKED("picked"),
    /** The row does not say. */
    UNKNOWN("unknown");

    private final String words;

    Saved(String words) {
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
