package swapworth.listing;

import static java.util.Objects.requireNonNull;

/**
 * A word that stands in a column of stated words and is none of them; the fact stays unknown in its rows.
 *
 * @param column the column
 * @param word the word as it was first typed, shortened
 * @param rows how many rows have it
 * @param firstSeen the first of these rows
 * @param accepted the words that the column knows
 */
public record UnmatchedWord(String column, String word, int rows, Origin firstSeen, String accepted) {

    /** Checks that nothing is missing. */
    public UnmatchedWord {
        requireNonNull(column, "column");
        requireNonNull(word, "word");
        requireNonNull(firstSeen, "firstSeen");
        requireNonNull(accepted, "accepted");
    }
}
