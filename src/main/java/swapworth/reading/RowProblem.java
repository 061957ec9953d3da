package swapworth.reading;

import static java.util.Objects.requireNonNull;

import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import java.util.function.Predicate;
import swapworth.table.Cell;
import swapworth.table.Column;
import swapworth.table.Table;

/**
 * Something that a reader must know of one row, or of a whole file.
 *
 * @param file the name of the file, without its folder
 * @param line the physical line on which the row begins, from 1; 0 for the file as a whole
 * @param column the header of the column; empty for the row as a whole
 * @param rawText what stands there, cut to {@value #SHOWN} characters, control characters as spaces
 * @param kind what became of the row
 * @param message the reason, and the question if there is one
 */
public record RowProblem(String file, int line, String column, String rawText, Kind kind, String message) {

    /** The most characters of raw text that are kept. */
    public static final int SHOWN = 60;

    /** How the reason ends where a cell is not used and the rest of its row is. */
    public static final String NOT_USED = "; not used";
    /** How the reason begins where the header stands among the rows. */
    static final String HEADER_AGAIN = "the header of line ";
    /** How the reason ends where a row stands above the header that stands again, and below it. */
    static final String COUNTED_ONCE = "one export put behind another, of which each row is counted once";

    /** What became of a row. */
    public enum Kind {
        /** It could not be read. */
        REJECTED("rejected"),
        /** It was read, but lies outside what a model may use. */
        SET_ASIDE("set aside"),
        /** It is used, and something about it looks odd. */
        ODD("used, odd"),
        /** It is used, and an answer would make it worth more. */
        QUESTION("used, a question");

        private final String words;

        Kind(String words) {
            this.words = words;
        }
    }

    /** Shortens the raw text and checks that nothing is missing. */
    public RowProblem {
        requireNonNull(file, "file");
        requireNonNull(kind, "kind");
        column = Spelling.shortened(column, SHOWN);
        rawText = Spelling.shortened(rawText, SHOWN);
        requireNonNull(message, "message");
    }

    /**
     * A column that nothing reads, with the name that was probably meant.
     *
     * @param file the name of the file, without its folder
     * @param header the header as it stands
     * @param name the header as words.csv has it
     * @param names the names of the columns that the file may have
     * @param isThere whether the file has a column of a name: it was not meant then
     * @return the problem, at the first line
     */
    public static RowProblem unusedColumn(String file, String header, String name, Collection<String> names,
            Predicate<String> isThere) {
        String taken = header.equals(name) ? ""
                : ": words.csv takes it for '" + Spelling.shortened(name, 40) + "', which this file does not have";
        return new RowProblem(file, 1, header, "", Kind.ODD, "this column is not used" + taken + Spelling.nearest(name, names)
                .filter(isThere.negate()).map(near -> "; did you mean " + near + "?").orElse(""));
    }

    /**
     * Whether nothing is lost where the row is not counted: it sums up others, says again what another one says, or is the header again.
     *
     * @return whether it was rejected or set aside for that
     */
    public boolean losesNothing() {
        return message.startsWith(Spelling.IS_TOTAL) || message.startsWith(HEADER_AGAIN) || message.endsWith(COUNTED_ONCE);
    }

    /**
     * Problems as a table: file, line, column, text, reason.
     *
     * @param title what the table shows
     * @param problems the problems, in the order in which they are to stand
     * @return one row a problem
     */
    public static Table table(String title, List<RowProblem> problems) {
        Table.Builder table = Table.titled(title).columns(columns());
        problems.forEach(problem -> table.row(problem.cells()));
        return table.build();
    }

    /**
     * The same for machines: what became of each row stands behind the reason, for rows that are used and rows that are not stand together.
     *
     * @param title what the table shows
     * @param problems the problems, in the order in which they are to stand
     * @return one row a problem
     */
    public static Table tableOfAllKinds(String title, List<RowProblem> problems) {
        Table.Builder table = Table.titled(title).columns(columns()).columns(Column.words("what became of it"));
        for (RowProblem problem : problems) {
            List<Cell> row = new ArrayList<>(problem.cells());
            row.add(Cell.words(problem.kind.words));
            table.row(row);
        }
        return table.build();
    }

    private static Column[] columns() {
        return new Column[] {Column.words("file"), Column.number("line", ""), Column.words("column"), Column.words("text"),
            Column.sentences("reason")};
    }

    private List<Cell> cells() {
        return List.of(Cell.words(file), line == 0 ? Cell.BLANK : Cell.label(line), Cell.words(column), Cell.words(rawText),
                Cell.words(message));
    }

    /**
     * The one entry of a row that is not used: its first problem, with the others named behind it.
     *
     * @param problems the problems of the row, at least one
     * @return one entry
     */
    public static RowProblem joined(List<RowProblem> problems) {
        RowProblem first = problems.get(0);
        if (problems.size() == 1) {
            return first;
        }
        StringBuilder message = new StringBuilder(first.message());
        for (RowProblem other : problems.subList(1, problems.size())) {
            message.append(". Also ").append(other.column()).append(" '").append(Spelling.shortened(other.rawText(), 30))
                    .append("': ").append(other.message());
        }
        return new RowProblem(first.file(), first.line(), first.column(), first.rawText(), first.kind(), message.toString());
    }
}
