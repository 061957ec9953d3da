package swapworth.listing;

/** Whether the keys are there. */
public enum Keys {
    /** They are. */
    YES("yes"),
    /** They are not. */
    NO("no"),
    /** The row does not say. */
    UNKNOWN("unknown");

    private final String words;

    Keys(String words) {
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
