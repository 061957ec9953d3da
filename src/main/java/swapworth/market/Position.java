package swapworth.market;

/** Where a price stands against the 80 % range of what such a car is predicted to cost. */
public enum Position {
    /** Under the lower end. */
    BELOW("below"),
    /** Between the ends. */
    INSIDE("inside"),
    /** Over the upper end. */
    ABOVE("above"),
    /** There is no range that the listings would bear. */
    CANNOT_TELL("cannot tell");

    private final String words;

    Position(String words) {
        this.words = words;
    }

    /**
     * How it stands on a page and in a file.
     *
     * @return plain words
     */
    public String words() {
        return words;
    }
}
