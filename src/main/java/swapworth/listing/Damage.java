package swapworth.listing;

/** A zone of unrepaired damage. */
public enum Damage {
    /** The front. */
    FRONT("front"),
    /** The rear. */
    REAR("rear"),
    /** The left side. */
    LEFT("left"),
    /** The right side. */
    RIGHT("right"),
    /** The roof. */
    ROOF("roof"),
    /** The underside. */
    UNDERSIDE("underside"),
    /** Water. */
    FLOOD("flood"),
    /** Fire. */
    FIRE("fire");

    private final String words;

    Damage(String words) {
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
