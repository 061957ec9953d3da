package swapworth.table;

import java.io.IOException;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.time.LocalDate;
import java.util.Arrays;
import java.util.List;

/**
 * Writes rows as CSV after RFC 4180 one cell after another, for rows too many to be kept: the same text as {@link Table#csv}, as bytes of
 * UTF-8.
 *
 * <p>Not for sharing between threads.
 */
public final class CsvRows {
    private static final int LAST_OF_ASCII = 127;

    private byte[] bytes;
    private int size;
    /** The number of the next cell in its row. */
    private int cell;
    /** Of each cell its words in the row before, and where they stand: a file and a level of trade come again and again. */
    private String[] before = new String[0];
    private int[] beforeFrom = new int[0];
    private int[] beforeTo = new int[0];

    /**
     * Begins with no row.
     *
     * @param room the number of bytes expected; more find room too
     */
    public CsvRows(int room) {
        this.bytes = new byte[Math.max(room, 2 * PlainNumber.ROOM)];
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
        if (words.isEmpty()) {
            next();
            return this;
        }
        char first = words.charAt(0);
        // All of these stand before the letters but the sign for "at".
        return field(first <= '@' && "=+-@\t\r".indexOf(first) >= 0 ? "'" + words : words);
    }

    /**
     * Writes a number rounded to some places behind the point.
     *
     * @param value the number; one that is not finite leaves the cell empty
     * @param places 2, 4 or 6; zeros at the end are left out
     * @return this writer
     */
    public CsvRows number(double value, int places) {
        next();
        if (Double.isFinite(value)) {
            int end = PlainNumber.write(value, places, bytes, size);
            if (end < 0) {
                encoded(PlainNumber.exact(value, places));
            } else {
                size = end;
            }
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
        size = PlainNumber.write(value, bytes, size);
        return this;
    }

    /**
     * Writes a day, for instance {@code 2024-05-31}.
     *
     * @param day the day
     * @return this writer
     */
    public CsvRows day(LocalDate day) {
        if (day.getYear() < 1000 || day.getYear() > 9999) {
            return words(day.toString());
        }
        next();
        size = PlainNumber.write(day.getYear(), bytes, size);
        dashed(day.getMonthValue());
        dashed(day.getDayOfMonth());
        return this;
    }

    private void dashed(int number) {
        bytes[size++] = '-';
        PlainNumber.two(number, bytes, size);
        size += 2;
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
        room(2);
        bytes[size++] = '\r';
        bytes[size++] = '\n';
        if (cell > before.length) {
            before = new String[cell];
            Arrays.fill(before, "");
            beforeFrom = new int[cell];
            beforeTo = new int[cell];
        }
        cell = 0;
        return this;
    }

    /**
     * Hands over the rows written since the last time, and forgets them.
     *
     * @param out where they go
     * @throws IOException if they cannot be written
     */
    public void writeTo(OutputStream out) throws IOException {
        out.write(bytes, 0, size);
        size = 0;
        Arrays.fill(before, "");
        Arrays.fill(beforeFrom, 0);
        Arrays.fill(beforeTo, 0);
    }

    /** The rows as text. */
    @Override
    public String toString() {
        return new String(bytes, 0, size, StandardCharsets.UTF_8);
    }

    /** The comma before every cell but the first, with room for a number behind it. */
    private void next() {
        room(1 + PlainNumber.ROOM);
        if (cell > 0) {
            bytes[size++] = ',';
        }
        cell++;
    }

    private void room(int more) {
        if (bytes.length - size < more) {
            bytes = Arrays.copyOf(bytes, Math.max(size + more, bytes.length + bytes.length / 2));
        }
    }

    private CsvRows field(String text) {
        next();
        int column = cell - 1;
        if (column < before.length) {
            if (before[column] == text) {
                int length = beforeTo[column] - beforeFrom[column];
                room(length);
                System.arraycopy(bytes, beforeFrom[column], bytes, size, length);
                size += length;
            } else {
                int from = size;
                written(text);
                before[column] = text;
                beforeFrom[column] = from;
                beforeTo[column] = size;
            }
            return this;
        }
        written(text);
        return this;
    }

    private void written(String text) {
        int length = text.length();
        room(length);
        byte[] to = bytes;
        int at = size;
        for (int i = 0; i < length; i++) {
            char c = text.charAt(i);
            if (c > ',' ? c > LAST_OF_ASCII : c == ',' || c == '"' || c == '\n' || c == '\r') {
                unusual(text);
                return;
            }
            to[at++] = (byte) c;
        }
        size = at;
    }

    /** A field with signs that need quotation marks or more than one byte. */
    private void unusual(String text) {
        if (text.indexOf(',') >= 0 || text.indexOf('"') >= 0 || text.indexOf('\n') >= 0 || text.indexOf('\r') >= 0) {
            encoded("\"" + text.replace("\"", "\"\"") + "\"");
        } else {
            encoded(text);
        }
    }

    private void encoded(String text) {
        byte[] encoded = text.getBytes(StandardCharsets.UTF_8);
        room(encoded.length);
        System.arraycopy(encoded, 0, bytes, size, encoded.length);
        size += encoded.length;
    }
}
