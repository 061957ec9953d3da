package swapworth.table;

import static java.util.Objects.requireNonNull;

import java.util.List;

/**
 * Writes rows as CSV after RFC 4180 one cell after another, for rows too many to be kept: the same text as {@link Table#csv}.
 *
 * <p>Not for sharing between threads.
 */
public final class CsvRows {
    private final StringBuilder out;
    private boolean begun;

    /**
     * Writes to the end of a text.
     *
     * @param out where the rows go
     */
    public CsvRows(StringBuilder out) {
        this.out = requireNonNull(out, "out");
    }

    /**
     * Writes the keys of columns as a row.
     *
     * @param columns the columns, from left to right
     * @return this writer
     */
    public CsvRows header(List<Column> columns) {
        columns.forEach(column -> field(column.key()));
        return end();
    }

    /**
     * Writes a cell of words. Words that begin with {@code = + - @}, a tab or a carriage return get a leading apostrophe, so that no
     * spreadsheet runs them.
     *
     * @param words the words
     * @return this writer
     */
    public CsvRows words(String words) {
        return field(!words.isEmpty() && "=+-@\t\r".indexOf(words.charAt(0)) >= 0 ? "'" + words : words);
    }

    /**
     * Writes a number with at most twelve significant digits.
     *
     * @param value the number; one that is not finite leaves the cell empty
     * @return this writer
     */
    public CsvRows number(double value) {
        next();
        if (Double.isFinite(value)) {
            Cell.appendPlain(value, out);
        }
        return this;
    }

    /**
     * Writes a whole number.
     *
     * @param value the number
     * @return this writer
     */
    public CsvRows whole(long value) {
        next();
        out.append(value);
        return this;
    }

    /**
     * Writes a cell as it stands in a table.
     *
     * @param cell the cell
     * @return this writer
     */
    public CsvRows cell(Cell cell) {
        return cell.kind() == Cell.Kind.WORDS ? words(cell.exact()) : field(cell.exact());
    }

    /**
     * Ends a row.
     *
     * @return this writer
     */
    public CsvRows end() {
        out.append("\r\n");
        begun = false;
        return this;
    }

    private void next() {
        if (begun) {
            out.append(',');
        }
        begun = true;
    }

    private CsvRows field(String text) {
        next();
        if (text.indexOf(',') >= 0 || text.indexOf('"') >= 0 || text.indexOf('\n') >= 0 || text.indexOf('\r') >= 0) {
            out.append('"').append(text.replace("\"", "\"\"")).append('"');
        } else {
            out.append(text);
        }
        return this;
    }
}
