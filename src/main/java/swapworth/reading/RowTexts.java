package swapworth.reading;

import de.siegmar.fastcsv.reader.AbstractBaseCsvCallbackHandler;
import de.siegmar.fastcsv.reader.CsvParseException;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/**
 * The texts of one row after another: always the same object, refilled for each row. A text that its column has held before is the
 * same object again, so that a million cells of a few dozen words take the room of a few dozen.
 */
final class RowTexts extends AbstractBaseCsvCallbackHandler<RowTexts> {
    private final int mostCells;
    private final int mostCharacters;
    private final List<Texts> columns = new ArrayList<>();
    private String[] cells = new String[16];
    private int size;
    private long line;
    private boolean comment;
    private boolean quoted;

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

    /** Whether a cell stands in quotes; only then can one run over several lines. */
    boolean hasQuotes() {
        return quoted;
    }

    int size() {
        return size;
    }

    String cell(int column) {
        return cells[column];
    }

    /** The cells of the row as it is now. */
    List<String> cells(int count) {
        return List.of(Arrays.copyOf(cells, count));
    }

    @Override
    protected void handleBegin(long startingLineNumber) {
        line = startingLineNumber;
        size = 0;
        comment = false;
        quoted = false;
    }

    @Override
    protected void handleField(int fieldIndex, char[] buffer, int offset, int length, boolean inQuotes) {
        if (fieldIndex >= mostCells) {
            throw new CsvParseException("limit of " + mostCells);
        }
        if (length > mostCharacters) {
            throw new CsvParseException("field size");
        }
        if (fieldIndex == cells.length) {
            cells = Arrays.copyOf(cells, 2 * fieldIndex);
        }
        while (fieldIndex >= columns.size()) {
            columns.add(new Texts());
        }
        cells[fieldIndex] = columns.get(fieldIndex).of(buffer, offset, length);
        size = fieldIndex + 1;
        quoted |= inQuotes;
    }

    @Override
    protected void handleComment(char[] buffer, int offset, int length) {
        comment = true;
    }

    @Override
    protected RowTexts buildRecord() {
        return this;
    }

    /** The texts of a column, each once. */
    private static final class Texts {
        private static final int MOST = 1 << 16;
        private static final int LONGEST = 60;

        private String[] table = new String[64];
        /** The characters of each, which are compared one by one quicker here than inside a text. */
        private char[][] characters = new char[64][];
        private int known;
        private int found;
        private boolean worthwhile = true;

        String of(char[] buffer, int offset, int length) {
            if (length == 0) {
                return "";
            }
            if (!worthwhile || length > LONGEST) {
                return new String(buffer, offset, length);
            }
            int hash = 0;
            for (int i = offset; i < offset + length; i++) {
                hash = 31 * hash + buffer[i];
            }
            int at = place(hash);
            while (table[at] != null) {
                if (isSame(characters[at], buffer, offset, length)) {
                    found++;
                    return table[at];
                }
                at = at + 1 & table.length - 1;
            }
            String text = new String(buffer, offset, length);
            if (known < MOST) {
                table[at] = text;
                characters[at] = Arrays.copyOfRange(buffer, offset, offset + length);
                known++;
                if (2 * known > table.length) {
                    grow();
                }
            } else {
                // A column of names of their own would only be searched in vain.
                worthwhile = found > MOST / 2;
            }
            return text;
        }

        private int place(int hash) {
            return (hash ^ hash >>> 15) * 0x9e3779b1 >>> 7 & table.length - 1;
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

        private void grow() {
            String[] before = table;
            char[][] charactersBefore = characters;
            table = new String[2 * before.length];
            characters = new char[table.length][];
            for (int i = 0; i < before.length; i++) {
                if (before[i] != null) {
                    int at = place(before[i].hashCode());
                    while (table[at] != null) {
                        at = at + 1 & table.length - 1;
                    }
                    table[at] = before[i];
                    characters[at] = charactersBefore[i];
                }
            }
        }
    }
}
