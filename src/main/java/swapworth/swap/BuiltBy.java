package swapworth.swap;

/** Who did the work of a swap. */
public enum BuiltBy {
    /** Its owner. */
    OWNER("owner", "swap_built_by_owner"),
    /** A shop. */
    SHOP("shop", "swap_built_by_shop"),
    /** Nobody says. */
    UNKNOWN("unknown", "swap_built_by_unknown");

    private final String words;
    private final String assumption;

    BuiltBy(String words, String assumption) {
        this.words = words;
        this.assumption = assumption;
    }

    /**
     * How it stands in a file and on a page.
     *
     * @return plain words in lower case
     */
    public String words() {
        return words;
    }

    /** The assumption on what it does to the price. */
    String assumption() {
        return assumption;
    }
}
