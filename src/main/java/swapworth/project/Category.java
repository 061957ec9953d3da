package swapworth.project;

import swapworth.reading.Vocabulary;

/** What money of a ledger is for. */
public enum Category {
    /** A car, or what was bought in place of one. */
    PURCHASE("purchase", "bought", "car"),
    /** Fees of sellers and auctions. */
    FEE("fee", "fees", "buyer's premium", "premium"),
    /** Carriage of cars and parts. */
    FREIGHT("freight", "transport", "shipping", "towing", "delivery"),
    /** Journeys of people. */
    TRAVEL("travel", "fuel", "journey"),
    /** Parts that stay in the car. */
    PART("part", "parts"),
    /** What is used up. */
    CONSUMABLE("consumable", "consumables", "fluids", "supplies"),
    /** Tools, which may be kept. */
    TOOL("tool", "tools", "equipment"),
    /** Work of others. */
    LABOUR("labour", "labor", "shop", "labour bought", "machining", "work bought"),
    /** One's own hours, apart from cash. */
    OWN_HOURS("own hours", "hours", "own labour", "own labor", "time"),
    /** Inspections and tests. */
    INSPECTION("inspection", "test", "inspections"),
    /** Registration, title, duty and tax. */
    PAPER("paper", "papers", "title", "registration", "tax", "duty"),
    /** Insurance. */
    INSURANCE("insurance"),
    /** Interest and charges of loans. */
    INTEREST("interest", "finance", "loan"),
    /** Room for cars and parts. */
    STORAGE("storage", "rent"),
    /** Parts sold, and cars that are not the finished one. */
    SOLD("part sold", "parts sold", "sold", "sale", "sales"),
    /** A reserve for what nobody thought of. */
    CONTINGENCY("contingency", "reserve"),
    /** The row does not say, or says a word that is not understood. */
    UNSORTED("unsorted", "other", "misc", "miscellaneous"),
    /** The finished car sold, or paid for as a total loss: no money of the undertaking, but what its value turned out to be. */
    CAR_SOLD("car sold", "sale of the car", "sale of car", "car sale", "sold car", "finished car sold", "sale of the finished car",
            "finished car", "vehicle sold", "sale of the vehicle", "swap sold", "sale of the swap", "total loss", "total loss settlement",
            "write-off", "written off"),
    /** What a customer pays a shop for the work: no money of the undertaking, but what the job brings. */
    INVOICE("invoice", "invoiced", "invoices", "customer", "customer paid", "paid by customer", "paid by the customer", "from customer",
            "from the customer");

    private final String words;
    private final String[] synonyms;

    Category(String words, String... synonyms) {
        this.words = words;
        this.synonyms = synonyms;
    }

    /**
     * How it stands in a file and on a page.
     *
     * @return plain words in lower case
     */
    public String words() {
        return words;
    }

    /**
     * Whether it is of something sold, so that its money comes in unless the row says otherwise.
     *
     * @return true for parts sold, for the finished car sold and for what a customer pays
     */
    public boolean isSale() {
        return this == SOLD || standsApart();
    }

    /**
     * Whether its rows are in no sum and no forecast of what the car costs.
     *
     * @return true for the finished car sold and for what a customer pays
     */
    public boolean standsApart() {
        return this == CAR_SOLD || this == INVOICE;
    }

    /** The name of its assumption on how far a single guess may be off. */
    String assumption() {
        return "estimate_" + words.replace(' ', '_');
    }

    static Vocabulary<Category> vocabulary() {
        Vocabulary<Category> vocabulary = Vocabulary.empty();
        for (Category category : values()) {
            vocabulary = vocabulary.with(category, category.words).with(category, category.synonyms);
        }
        return vocabulary;
    }
}
