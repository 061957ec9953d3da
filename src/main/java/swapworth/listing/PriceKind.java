package swapworth.listing;

/** What a price in a listing is. */
public enum PriceKind {
    /** What the seller asks. */
    ASKING("asking"),
    /** What a buyer paid, or the winning bid of an auction. */
    SOLD("sold"),
    /** The highest bid of a sale that missed its reserve: the car is worth more to its seller. */
    BID_NOT_MET("bid not met");

    private final String words;

    PriceKind(String words) {
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
