package swapworth.swap;

/** Whether something is so, as far as anybody has said. */
public enum Known {
    /** It is so. */
    YES("yes"),
    /** It is not so. */
    NO("no"),
    /** Nobody says. */
    UNKNOWN("unknown");

    private final String words;

    Known(String words) {
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
