package swapworth.listing;

/** Where and how a price is made: each level has its own price for the same car. */
public enum LevelOfTrade {
    /** What a private seller asks. */
    PRIVATE_ASKING("private asking"),
    /** What a business asks. */
    TRADE_ASKING("trade asking"),
    /** What was paid to a private seller. */
    PRIVATE_SOLD("private sold"),
    /** What was paid to a business. */
    TRADE_SOLD("trade sold"),
    /** The winning bid of an auction, without fees and tax. */
    AUCTION("auction");

    private final String words;

    LevelOfTrade(String words) {
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
