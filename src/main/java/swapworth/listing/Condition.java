package swapworth.listing;

/** The state of one thing about a car, as a fact that was seen. */
public enum Condition {
    /** Nothing to do. */
    SOUND("sound"),
    /** Worn, but in use. */
    WORN("worn"),
    /** Needs work. */
    BAD("bad"),
    /** The row does not say. */
    UNKNOWN("unknown");

    private final String words;

    Condition(String words) {
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
