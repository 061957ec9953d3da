package swapworth.listing;

/** Whether the car moves by itself. */
public enum Runs {
    /** It drives. */
    DRIVES("drives"),
    /** The engine starts, the car was not driven. */
    ENGINE_FIRES("engine fires"),
    /** The engine does not run. */
    ENGINE_DEAD("engine dead"),
    /** The engine is missing. */
    NO_ENGINE("no engine"),
    /** Nobody tried. */
    NOT_TRIED("not tried"),
    /** The row does not say. */
    UNKNOWN("unknown");

    private final String words;

    Runs(String words) {
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
