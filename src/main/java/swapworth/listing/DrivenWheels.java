package swapworth.listing;

/** Which wheels are driven. */
public enum DrivenWheels {
    /** The front wheels. */
    FRONT("front"),
    /** The rear wheels. */
    REAR("rear"),
    /** All wheels. */
    ALL("all"),
    /** The row does not say. */
    UNKNOWN("unknown");

    private final String words;

    DrivenWheels(String words) {
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
