package swapworth.reading;

import static java.util.Objects.requireNonNull;

import java.util.ArrayList;
import java.util.List;
import swapworth.table.Table;

/**
 * What became of the rows of one file: used, set aside, rejected and blank rows add up to all of them.
 *
 * @param file the name of the file, without its folder
 * @param used how many rows are used
 * @param rejected rows that could not be read, an entry each
 * @param setAside rows that were read and cannot be used, an entry each
 * @param oddities what is odd about rows that are used, words and columns that were not understood
 * @param questions answers that would make used rows worth more
 * @param blank how many rows hold no text
 */
public record RowsRead(String file, int used, List<RowProblem> rejected, List<RowProblem> setAside, List<RowProblem> oddities,
        List<RowProblem> questions, int blank) {

    /** Copies the lists in. */
    public RowsRead {
        requireNonNull(file, "file");
        rejected = List.copyOf(rejected);
        setAside = List.copyOf(setAside);
        oddities = List.copyOf(oddities);
        questions = List.copyOf(questions);
    }

    /**
     * The counts as a sentence.
     *
     * @return for instance {@code parts.csv, 43 rows: 40 used, 2 set aside, 1 rejected, 0 blank}
     */
    public String sentence() {
        int all = used + setAside.size() + rejected.size() + blank;
        return file + ", " + all + (all == 1 ? " row: " : " rows: ") + used + " used, " + setAside.size()
                + " set aside, " + rejected.size() + " rejected, " + blank + " blank";
    }

    /**
     * All that a reader should look at: rejected first, then set aside, questions, oddities.
     *
     * @return entries of the four lists
     */
    public List<RowProblem> problems() {
        List<RowProblem> all = new ArrayList<>(rejected);
        all.addAll(setAside);
        all.addAll(questions);
        all.addAll(oddities);
        return all;
    }

    /**
     * The counts with everything to look at, as a table.
     *
     * @return one row a problem; none where all is well
     */
    public Table table() {
        Table rows = RowProblem.table("Rows of " + file, problems());
        return new Table(rows.title(), List.of(sentence() + "."), rows.columns(), rows.rows());
    }
}
