package swapworth.reading;

import de.siegmar.fastcsv.reader.AbstractBaseCsvCallbackHandler;
import de.siegmar.fastcsv.reader.CsvParseException;
import java.util.Arrays;

/**
 * The texts of one row after another: always the same object, refilled for each row. A text that its column has held before is the
 * same object again, with the same number, so that a million cells of a few dozen words take the room, and the understanding, of a
 * few dozen.
 */
final class RowTexts extends AbstractBaseCsvCallbackHandler<RowTexts> {
    private final int mostCells;
    private final int mostCharacters;
    private Texts[] columns = new Texts[0];
    private String[] cells = new String[0];
    private short[] numbers = new short[0];
    private int size;
    private long line;
    private int lines;
    private boolean comment;

    RowTexts(int mostCells, int mostCharacters) {
        this.mostCells = mostCells;
        this.mostCharacters = mostCharacters;
    }

    /** The line on which the row begins, counted from where reading began. */
    long line() {
        return line;
    }

    boolean isComment() {
        return comment;
    }

    /** How many lines it stands on. */
    int lines() {
        return lines;
    }

    int size() {
        return size;
    }

    String cell(int column) {
        return cells[column];
    }

    boolean isEmpty(int column) {
        return numbers[column] == CsvRow.EMPTY;
    }

    /** The first cells of the row as it is now. */
    CsvRow row(int itsLine, int count) {
        return new CsvRow(itsLine, Arrays.copyOf(cells, count), Arrays.copyOf(numbers, count));
    }

    @Override
    protected void handleBegin(long startingLineNumber) {
        line = startingLineNumber;
        size = 0;
        lines = 1;
        comment = false;
    }

    @Override
    protected void handleField(int fieldIndex, char[] buffer, int offset, int length, boolean inQuotes) {
        if (fieldIndex >= mostCells) {
            throw new CsvParseException("limit of " + mostCells);
        }
        if (length > mostCharacters) {
            throw new CsvParseException("field size");
        }
        if (fieldIndex == columns.length) {
            grow();
        }
        Texts column = columns[fieldIndex];
        int number = column.number(buffer, offset, length);
        numbers[fieldIndex] = (short) number;
        cells[fieldIndex] = length == 0 || number > CsvRow.EMPTY ? column.text(number) : new String(buffer, offset, length);
        size = fieldIndex + 1;
        if (inQuotes) {
            lines += breaks(buffer, offset, offset + length);
        }
    }

    private void grow() {
        columns = Arrays.copyOf(columns, size + 1 + size / 4);
        for (int i = size; i < columns.length; i++) {
            columns[i] = new Texts();
        }
        cells = Arrays.copyOf(cells, columns.length);
        numbers = Arrays.copyOf(numbers, columns.length);
    }

    /** How many line breaks a text holds: line feeds, carriage returns, or both together. */
    private static int breaks(char[] buffer, int from, int to) {
        int breaks = 0;
        for (int i = from; i < to; i++) {
            char c = buffer[i];
            if (c == '\n' || c == '\r' && (i + 1 == to || buffer[i + 1] != '\n')) {
                breaks++;
            }
        }
        return breaks;
    }

    @Override
    protected void handleComment(char[] buffer, int offset, int length) {
        handleField(0, buffer, offset, length, false);
        comment = true;
    }

    @Override
    protected RowTexts buildRecord() {
        return this;
    }

    /** The texts of a column that rows share, each once. */
    private static final class Texts {
        private static final int MOST = 1 << 13;
        private static final int LONGEST = 60;

        private String[] texts = {"", "", "", ""};
        /** The characters of each, which are compared one by one quicker here than inside a text. */
        private char[][] characters = new char[4][0];
        private int count = 1;
        /** The numbers of the texts by their hashes; 0 where there is none. */
        private short[] places = new short[8];
        private int found;
        private boolean worthwhile = true;

        String text(int number) {
            return texts[number];
        }

        int number(char[] buffer, int offset, int length) {
            if (length == 0 || Spelling.isSpace(buffer[offset]) && isEmpty(buffer, offset, length)) {
                return CsvRow.EMPTY;
            }
            if (!worthwhile || length > LONGEST) {
                return CsvRow.OWN;
            }
            int hash = 0;
            for (int i = offset; i < offset + length; i++) {
                hash = 31 * hash + buffer[i];
            }
            int at = place(hash);
            for (int number = places[at]; number != 0; number = places[at]) {
                if (isSame(characters[number], buffer, offset, length)) {
                    found++;
                    return number;
                }
                at = at + 1 & places.length - 1;
            }
            if (count == MOST) {
                // A column of names of their own would only be searched in vain.
                worthwhile = found > MOST / 2;
                return CsvRow.OWN;
            }
            return add(at, new String(buffer, offset, length));
        }

        private int add(int at, String text) {
            if (count == texts.length) {
                texts = Arrays.copyOf(texts, 2 * count);
                characters = Arrays.copyOf(characters, 2 * count);
            }
            texts[count] = text;
            characters[count] = text.toCharArray();
            places[at] = (short) count;
            count++;
            if (2 * count > places.length) {
                spread();
            }
            return count - 1;
        }

        private int place(int hash) {
            return (hash ^ hash >>> 15) * 0x9e3779b1 >>> 7 & places.length - 1;
        }

        private static boolean isEmpty(char[] buffer, int offset, int length) {
            for (int i = offset; i < offset + length; i++) {
                if (!Spelling.isSpace(buffer[i])) {
                    return false;
                }
            }
            return true;
        }

        private static boolean isSame(char[] text, char[] buffer, int offset, int length) {
            if (text.length != length) {
                return false;
            }
            // The last ones first: numbers, days and ids that share a beginning are told apart by their ends.
            for (int i = length - 1; i >= 0; i--) {
                if (text[i] != buffer[offset + i]) {
                    return false;
                }
            }
            return true;
        }

        private void spread() {
            places = new short[2 * places.length];
            for (int number = 1; number < count; number++) {
                int at = place(texts[number].hashCode());
                while (places[at] != 0) {
                    at = at + 1 & places.length - 1;
                }
                places[at] = (short) number;
            }
        }
    }
}
