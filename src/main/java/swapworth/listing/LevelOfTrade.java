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
     * The level of a price: an auction's price is an auction price, a business's a trade price, and a seller of whom nothing is known
     * counts as private.
     *
     * @param kind the kind of the price
     * @param seller who sells
     * @return the level
     */
    public static LevelOfTrade of(PriceKind kind, Seller seller) {
        boolean sold = kind == PriceKind.SOLD;
        return switch (seller) {
            case AUCTION -> AUCTION;
            case TRADE -> sold ? TRADE_SOLD : TRADE_ASKING;
            case PRIVATE, UNKNOWN -> kind == PriceKind.BID_NOT_MET ? AUCTION : sold ? PRIVATE_SOLD : PRIVATE_ASKING;
        };
    }

    /**
     * The level at which money changes hands where this is asked.
     *
     * @return the level of sales of the same kind of seller; the level itself where it is one of sales
     */
    public LevelOfTrade sold() {
        return switch (this) {
            case PRIVATE_ASKING -> PRIVATE_SOLD;
            case TRADE_ASKING -> TRADE_SOLD;
            case PRIVATE_SOLD, TRADE_SOLD, AUCTION -> this;
        };
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
