package swapworth.market;

/** What is held still while the level of the market is followed through time. */
public enum Held {
    /** Cars of the same age in each month: the market itself, with ageing taken out. */
    AGE("cars of the same age"),
    /** One and the same car, growing older from month to month: the market and ageing together. */
    MODEL_YEAR("one and the same car, growing older");

    private final String words;

    Held(String words) {
        this.words = words;
    }

    /**
     * What it is, in words.
     *
     * @return for instance {@code cars of the same age}
     */
    public String words() {
        return words;
    }
}
