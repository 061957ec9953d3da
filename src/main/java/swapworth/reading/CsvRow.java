package swapworth.reading;

import java.util.List;

/** One row of a CSV file. */
public final class CsvRow {
    /** The number of a text that is empty or holds but spaces, and of what a short row or a file does not have. */
    static final int EMPTY = 0;
    /** Stands for the number of a text that the row does not share with others. */
    static final int OWN = -1;

    private final int line;
    private final String[] cells;
    private final short[] numbers;

    CsvRow(int line, String[] cells, short[] numbers) {
        this.line = line;
        this.cells = cells;
        this.numbers = numbers;
    }

    /**
     * The physical line on which the row begins.
     *
     * @return from 1
     */
    public int line() {
        return line;
    }

    /**
     * The cells as they stand.
     *
     * @return one text a cell; there may be fewer than the header has columns
     */
    public List<String> cells() {
        return List.of(cells);
    }

    /**
     * A cell without the spaces around it.
     *
     * @param column the place of its column, from 0
     * @return the text; empty if the row is shorter or the column is negative (not in the file)
     */
    public String cell(int column) {
        return column >= 0 && column < cells.length ? Spelling.stripped(cells[column]) : "";
    }

    /**
     * Whether a cell says nothing: it is empty or holds but spaces.
     *
     * @param column the place of its column, from 0
     * @return also if the row is shorter or the column is negative (not in the file)
     */
    public boolean isEmpty(int column) {
        return number(column) == EMPTY;
    }

    /** The number of the text of a cell among those of its column, equal for equal texts. */
    int number(int column) {
        return column >= 0 && column < numbers.length ? numbers[column] : EMPTY;
    }
}
