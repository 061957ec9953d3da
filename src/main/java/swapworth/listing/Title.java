package swapworth.listing;

/** The state of the car's title. */
public enum Title {
    /** No brand. */
    CLEAN("clean"),
    /** Was branded, repaired and approved again. */
    REBUILT("rebuilt"),
    /** Branded, not repaired. */
    SALVAGE("salvage"),
    /** May not return to the road. */
    PARTS_ONLY("parts only"),
    /** The row does not say; never read as clean. */
    UNKNOWN("unknown");

    private final String words;

    Title(String words) {
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
