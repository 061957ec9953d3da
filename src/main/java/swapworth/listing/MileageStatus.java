package swapworth.listing;

/** Where a mileage comes from. */
public enum MileageStatus {
    /** Read off the car. */
    READ("read"),
    /** From papers. */
    RECORDED("recorded"),
    /** The row does not say. */
    UNKNOWN("unknown");

    private final String words;

    MileageStatus(String words) {
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
