package swapworth.donor;

import swapworth.reading.Vocabulary;

/** What a line of the landed cost is for; by it a line knows whether a price already holds it and who charges it. */
public enum CostKind {
    /** The buyer's fees of an auction. */
    FEE("fee"),
    /** Sales tax and what goes with it. */
    TAX("tax"),
    /** Title, registration and other papers. */
    PAPER("paper"),
    /** Standing in somebody's yard, by the day. */
    STORAGE("storage"),
    /** Bringing the car home. */
    FREIGHT("freight"),
    /** The buyer's own way there and back. */
    TRAVEL("travel"),
    /** A key, and teaching it to the car. */
    KEY("key"),
    /** Getting rid of what is not wanted. */
    DISPOSAL("disposal"),
    /** Somebody who may bid where the buyer may not. */
    BROKER("broker"),
    /** Anything else. */
    OTHER("other"),
    /** No cost: the steps by which bids rise. */
    INCREMENT("increment");

    static final Vocabulary<CostKind> WORDS = Vocabulary.<CostKind>empty()
            .with(FEE, "fee", "fees", "premium", "buyer's premium", "buyers premium", "auction fee", "auction")
            .with(TAX, "tax", "sales tax", "vat", "duty").with(PAPER, "paper", "papers", "title", "registration", "paper fee")
            .with(STORAGE, "storage", "yard").with(FREIGHT, "freight", "transport", "haulage", "delivery", "towing")
            .with(TRAVEL, "travel", "trip").with(KEY, "key", "keys").with(DISPOSAL, "disposal", "waste", "removal")
            .with(BROKER, "broker", "agent").with(OTHER, "other").with(INCREMENT, "increment", "bid increment", "bid step", "bid steps");

    private final String words;

    CostKind(String words) {
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

    /** Whether only an auction charges it, unless the file says who does. */
    boolean auctionOnly() {
        return this == FEE || this == STORAGE || this == BROKER;
    }
}
