package swapworth.reading;

import java.util.List;

/**
 * One row of a CSV file.
 *
 * @param line the physical line on which it begins, from 1
 * @param cells its cells as they stand; there may be fewer than the header has columns
 */
public record CsvRow(int line, List<String> cells) {

    /** Copies the cells in. */
    public CsvRow {
        cells = List.copyOf(cells);
    }

    /**
     * A cell without the spaces around it.
     *
     * @param column the place of its column, from 0
     * @return the text; empty if the row is shorter or the column is negative (not in the file)
     */
    public String cell(int column) {
        return column >= 0 && column < cells.size() ? Spelling.stripped(cells.get(column)) : "";
    }
}
