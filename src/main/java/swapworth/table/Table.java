package swapworth.table;

import static java.util.Objects.requireNonNull;

import java.util.ArrayList;
import java.util.List;

/**
 * Rows that print themselves: one set of cells, rendered as text for a terminal, as HTML for a page and as CSV for a machine,
 * so that a warning or a unit cannot be lost in one of the three.
 *
 * @param title what the table shows, with the unit where there is one for all of it
 * @param notes sentences that must be read before the rows: counts first, warnings second
 * @param columns the columns, from left to right
 * @param rows the rows, each with as many cells as there are columns
 */
public record Table(String title, List<String> notes, List<Column> columns, List<List<Cell>> rows) {

    /** Copies the lists in and checks that each row has one cell a column. */
    public Table {
        requireNonNull(title, "title");
        notes = List.copyOf(notes);
        columns = List.copyOf(columns);
        List<List<Cell>> copied = new ArrayList<>(rows.size());
        for (List<Cell> row : rows) {
            if (row.size() != columns.size()) {
                throw new IllegalArgumentException("a row has " + row.size() + " cells under " + columns.size()
                        + " columns in the table '" + title + "'");
            }
            copied.add(List.copyOf(row));
        }
        rows = List.copyOf(copied);
    }

    /**
     * Begins a table.
     *
     * @param title what the table shows
     * @return a builder without notes, columns and rows
     */
    public static Builder titled(String title) {
        return new Builder(title);
    }

    /**
     * The table as aligned text: title, notes, rows. Control characters in cells are shown as spaces.
     *
     * @return lines that end in a line feed
     */
    public String text() {
        return TableText.of(this);
    }

    /**
     * The table as an HTML element; every text of a cell is escaped.
     *
     * @return a {@code figure} element holding caption, notes and a {@code table} with a repeating head
     */
    public String html() {
        return TableHtml.of(this);
    }

    /**
     * The rows as CSV after RFC 4180, with the keys of the columns as header; title and notes are left out. Cells of words that
     * begin with {@code = + - @}, a tab or a carriage return get a leading apostrophe, so that no spreadsheet runs them.
     *
     * @return lines that end in CR LF
     */
    public String csv() {
        return TableCsv.of(this);
    }

    /** Collects the parts of a {@link Table}; not for sharing between threads. */
    public static final class Builder {
        private final String title;
        private final List<String> notes = new ArrayList<>();
        private final List<Column> columns = new ArrayList<>();
        private final List<List<Cell>> rows = new ArrayList<>();

        private Builder(String title) {
            this.title = requireNonNull(title, "title");
        }

        /**
         * Adds a sentence that stands before the rows.
         *
         * @param note the sentence
         * @return this builder
         */
        public Builder note(String note) {
            notes.add(note);
            return this;
        }

        /**
         * Adds columns to the right.
         *
         * @param more the columns
         * @return this builder
         */
        public Builder columns(Column... more) {
            columns.addAll(List.of(more));
            return this;
        }

        /**
         * Adds a row at the bottom.
         *
         * @param cells one cell a column
         * @return this builder
         */
        public Builder row(Cell... cells) {
            rows.add(List.of(cells));
            return this;
        }

        /**
         * Adds a row at the bottom.
         *
         * @param cells one cell a column
         * @return this builder
         */
        public Builder row(List<Cell> cells) {
            rows.add(List.copyOf(cells));
            return this;
        }

        /**
         * The finished table.
         *
         * @return an immutable table
         * @throws IllegalArgumentException if a row has more or fewer cells than there are columns
         */
        public Table build() {
            return new Table(title, notes, columns, rows);
        }
    }
}
