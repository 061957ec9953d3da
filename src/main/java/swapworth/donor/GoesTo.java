package swapworth.donor;

import swapworth.reading.Vocabulary;

/** What becomes of a part; only what is sold earns. */
public enum GoesTo {
    /** It is sold. */
    SELL("sell"),
    /** It goes into the swap. */
    SWAP("swap"),
    /** It is kept. */
    KEEP("keep"),
    /** It goes with what is left. */
    SCRAP("scrap");

    static final Vocabulary<GoesTo> WORDS = Vocabulary.<GoesTo>empty().with(SELL, "sell", "sale", "for sale", "sold")
            .with(SWAP, "swap", "into the swap", "build", "use").with(KEEP, "keep", "stays", "spare").with(SCRAP, "scrap", "bin", "waste");

    private final String words;

    GoesTo(String words) {
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
