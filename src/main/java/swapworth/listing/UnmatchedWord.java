package swapworth.listing;

import static java.util.Objects.requireNonNull;

import java.util.Optional;
import swapworth.reading.RowProblem;

/**
 * A word that stands in a column of stated words and is none of them; the fact stays unknown in its rows.
 *
 * @param column the column
 * @param word the word as it was first typed, shortened
 * @param rows how many rows have it
 * @param firstSeen the first of these rows
 * @param accepted the words that the column knows, as a reader should write them
 * @param nearest a known word that is a letter or two away, as a hint and no more; empty where there is none
 */
public record UnmatchedWord(String column, String word, int rows, Origin firstSeen, String accepted, Optional<String> nearest) {

    /** Checks that nothing is missing. */
    public UnmatchedWord {
        requireNonNull(column, "column");
        requireNonNull(word, "word");
        requireNonNull(firstSeen, "firstSeen");
        requireNonNull(accepted, "accepted");
        requireNonNull(nearest, "nearest");
    }

    /**
     * The word as something to look at.
     *
     * @return an oddity of the first row that has it
     */
    public RowProblem problem() {
        return new RowProblem(firstSeen.file(), firstSeen.line(), column, word, RowProblem.Kind.ODD, "not understood"
                + (rows > 1 ? " (" + rows + " rows)" : "") + "; known: " + accepted
                + nearest.map(n -> "; did you mean " + n + "?").orElse(""));
    }
}
