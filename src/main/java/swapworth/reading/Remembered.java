package swapworth.reading;

import static java.util.Objects.requireNonNull;

import java.util.Arrays;
import java.util.function.Function;
import org.jspecify.annotations.Nullable;

/**
 * What the cells of one column of a file say: of a text that many rows share it is found once, with the first of them, and of a text of
 * a row's own each time. One thread at a time may ask.
 *
 * @param <T> what is found
 */
public final class Remembered<T> {
    private final int column;
    private final Function<CsvRow, T> finding;
    private @Nullable T[] known;

    /**
     * Begins with nothing found.
     *
     * @param column the place of the column, from 0; a negative one is that of a column that the file does not have
     * @param finding finds what the cell of a row says, by its text in this column alone
     */
    @SuppressWarnings("unchecked")
    public Remembered(int column, Function<CsvRow, T> finding) {
        this.column = column;
        this.finding = requireNonNull(finding, "finding");
        known = (@Nullable T[]) new Object[4];
    }

    /**
     * What the cell of a row says.
     *
     * @param row a row
     * @return what was found; a cell that is missing says what an empty one does
     */
    public T of(CsvRow row) {
        int number = row.number(column);
        if (number < 0) {
            return finding.apply(row);
        }
        @Nullable T before = number < known.length ? known[number] : null;
        return before != null ? before : found(number, row);
    }

    private T found(int number, CsvRow row) {
        T found = finding.apply(row);
        if (number >= known.length) {
            known = Arrays.copyOf(known, Math.max(number + 1, 2 * known.length));
        }
        known[number] = found;
        return found;
    }
}
