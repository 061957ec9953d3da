package swapworth.listing;

/** The state of the airbags. */
public enum Airbags {
    /** All are where they belong. */
    IN_PLACE("in place"),
    /** At least one has fired. */
    FIRED("fired"),
    /** At least one is missing. */
    GONE("gone"),
    /** The row does not say. */
    UNKNOWN("unknown");

    private final String words;

    Airbags(String words) {
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
