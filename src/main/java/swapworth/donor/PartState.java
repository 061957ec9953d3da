package swapworth.donor;

import java.util.Set;
import swapworth.reading.Spelling;
import swapworth.reading.Vocabulary;

/** What the damage leaves of a part, before anybody has had it in his hands. */
public enum PartState {
    /** It is there and nothing speaks against it. */
    PRESENT("present", "chance_present"),
    /** It is most likely good. */
    LIKELY_GOOD("likely good", "chance_likely"),
    /** It may be good or not. */
    DOUBTFUL("doubtful", "chance_doubtful"),
    /** It is missing, or cannot be used. */
    GONE("gone", "");

    static final Vocabulary<PartState> WORDS = Vocabulary.<PartState>empty()
            .with(PRESENT, "present", "good", "ok", "fine", "there", "sound")
            .with(LIKELY_GOOD, "likely good", "likely", "probably good").with(DOUBTFUL, "doubtful", "unsure", "maybe", "worn")
            .with(GONE, "gone", "missing", "bad", "broken", "destroyed");

    private final String words;
    private final String chance;

    PartState(String words, String chance) {
        this.words = words;
        this.chance = chance;
    }

    /**
     * How it stands in a file and on a page.
     *
     * @return plain words in lower case
     */
    public String words() {
        return words;
    }

    /** The name of the assumption that says how often such a part is good; empty for never. */
    String chance() {
        return chance;
    }

    /** Whether a word says outright that nothing is there, and not only that what is there is no good. */
    static boolean saysGone(String word) {
        return Set.of("gone", "missing").contains(Spelling.key(word));
    }

    PartState worse(PartState other) {
        return ordinal() >= other.ordinal() ? this : other;
    }
}
