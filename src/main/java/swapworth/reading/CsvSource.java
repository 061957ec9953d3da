package swapworth.reading;

import de.siegmar.fastcsv.reader.CloseableIterator;
import de.siegmar.fastcsv.reader.CommentStrategy;
import de.siegmar.fastcsv.reader.CsvParseException;
import de.siegmar.fastcsv.reader.CsvReader;
import de.siegmar.fastcsv.reader.CsvRecord;
import de.siegmar.fastcsv.reader.CsvRecordHandler;
import de.siegmar.fastcsv.reader.FieldMismatchStrategy;
import java.io.IOException;
import java.io.StringReader;
import java.nio.ByteBuffer;
import java.nio.CharBuffer;
import java.nio.charset.CharsetDecoder;
import java.nio.charset.CoderResult;
import java.nio.charset.CodingErrorAction;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.NoSuchElementException;
import java.util.Set;

/**
 * The rows of one CSV file, with an account of every line: how a row is read stands on the page of this package.
 *
 * <p>Each line after the header belongs to exactly one of: a row, a rejected line, a blank line, a comment line; or it continues
 * a row whose quoted cell runs over it.
 */
public final class CsvSource {

    /** The most characters of one cell. */
    public static final int MOST_CHARACTERS_A_CELL = 1 << 20;
    /** The most columns of a file. */
    public static final int MOST_COLUMNS = 2_000;
    /** The most bytes of a file. */
    public static final long MOST_BYTES = 1L << 30;
    /** The most rows that may be broken in their quotes before the file as a whole counts as unusable. */
    public static final int MOST_BROKEN_ROWS = 1_000;

    private static final char BYTE_ORDER_MARK = '\ufeff';

    private final String file;
    private final char separator;
    private final List<String> header;
    private final List<CsvRow> rows;
    private final List<RowProblem> rejected;
    private final int blankLines;
    private final int commentLines;

    private CsvSource(Reading reading) {
        this.file = reading.file;
        this.separator = reading.separator;
        this.header = List.copyOf(reading.header);
        this.rows = List.copyOf(reading.rows);
        this.rejected = List.copyOf(reading.rejected);
        this.blankLines = reading.blankLines;
        this.commentLines = reading.commentLines;
    }

    /**
     * Reads a file.
     *
     * @param path the file
     * @return its rows and an account of the rest
     * @throws UnusableFileException if the file is missing, empty, not UTF-8, without header, with two columns of one name, or
     *         beyond the limits
     */
    public static CsvSource read(Path path) {
        byte[] bytes;
        try {
            if (Files.isDirectory(path)) {
                throw UnusableFileException.of(UnusableFileException.FOLDER, path);
            }
            long size = Files.size(path);
            if (size > MOST_BYTES) {
                throw UnusableFileException.of(UnusableFileException.TOO_LARGE, path, size, MOST_BYTES);
            }
            bytes = Files.readAllBytes(path);
        } catch (NoSuchFileException e) {
            throw UnusableFileException.of(UnusableFileException.MISSING, path);
        } catch (IOException e) {
            throw UnusableFileException.of(UnusableFileException.UNREADABLE, path, e.getMessage());
        }
        return of(nameOf(path), decoded(nameOf(path), bytes));
    }

    /**
     * Reads text that is already decoded, such as a resource of the program.
     *
     * @param file a name for messages
     * @param text the text of the file
     * @return its rows and an account of the rest
     * @throws UnusableFileException as for a file
     */
    public static CsvSource of(String file, String text) {
        return new CsvSource(new Reading(file, text));
    }

    /**
     * The name of the file, without its folder.
     *
     * @return the name
     */
    public String file() {
        return file;
    }

    /**
     * The separator that the header line uses.
     *
     * @return comma, semicolon or tab
     */
    public char separator() {
        return separator;
    }

    /**
     * The names of the columns as they stand in the header, without the spaces around them; a nameless column has an empty name.
     *
     * @return one name a column
     */
    public List<String> header() {
        return header;
    }

    /**
     * The rows that could be told apart, in file order.
     *
     * @return at most as many cells a row as there are columns
     */
    public List<CsvRow> rows() {
        return rows;
    }

    /**
     * The lines that could not be read as a row.
     *
     * @return problems of the kind rejected
     */
    public List<RowProblem> rejected() {
        return rejected;
    }

    /**
     * How many lines after the header hold nothing, or nothing but separators.
     *
     * @return the count
     */
    public int blankLines() {
        return blankLines;
    }

    /**
     * How many lines after the header begin with {@code #} and are taken for comments.
     *
     * @return the count
     */
    public int commentLines() {
        return commentLines;
    }

    /**
     * The place of the column of a name.
     *
     * @param name the name, compared without regard to case, spaces, hyphens and underscores
     * @return its place from 0; -1 if there is none
     */
    public int column(String name) {
        String key = Spelling.key(name);
        for (int i = 0; i < header.size(); i++) {
            if (Spelling.key(header.get(i)).equals(key)) {
                return i;
            }
        }
        return -1;
    }

    /**
     * The place of a column that the file must have.
     *
     * @param name the name
     * @param synonyms other names by which it may stand there
     * @return its place from 0
     * @throws UnusableFileException if there is none; the message lists the columns that were found
     */
    public int neededColumn(String name, String... synonyms) {
        int column = column(name);
        for (int i = 0; column < 0 && i < synonyms.length; i++) {
            column = column(synonyms[i]);
        }
        if (column < 0) {
            throw UnusableFileException.missingColumn(file, "the column '" + name + "'", header);
        }
        return column;
    }

    private static String nameOf(Path path) {
        Path name = path.getFileName();
        return name == null ? path.toString() : name.toString();
    }

    private static String decoded(String file, byte[] bytes) {
        if (bytes.length == 0) {
            throw UnusableFileException.of(UnusableFileException.EMPTY, file);
        }
        int first = bytes[0] & 0xff;
        int second = bytes.length > 1 ? bytes[1] & 0xff : 0;
        if (first == 0xff && second == 0xfe || first == 0xfe && second == 0xff) {
            throw UnusableFileException.of(UnusableFileException.UTF_16, file);
        }
        if (first == 'P' && second == 'K' && bytes.length > 3 && bytes[2] == 3 && bytes[3] == 4) {
            throw UnusableFileException.of(UnusableFileException.WORKBOOK, file);
        }
        String text = new String(bytes, StandardCharsets.UTF_8);
        if (text.indexOf('\ufffd') >= 0) {
            refuseWrongBytes(file, bytes);
        }
        return text;
    }

    /** The quick decoder puts U+FFFD where a byte is wrong; whether it was wrong or truly U+FFFD, the strict one tells. */
    private static void refuseWrongBytes(String file, byte[] bytes) {
        CharsetDecoder decoder = StandardCharsets.UTF_8.newDecoder().onMalformedInput(CodingErrorAction.REPORT)
                .onUnmappableCharacter(CodingErrorAction.REPORT);
        ByteBuffer in = ByteBuffer.wrap(bytes);
        CharBuffer out = CharBuffer.allocate(8192);
        int line = 1;
        boolean afterReturn = false;
        while (true) {
            CoderResult result = decoder.decode(in, out, true);
            out.flip();
            while (out.hasRemaining()) {
                char c = out.get();
                if (c == '\r' || c == '\n' && !afterReturn) {
                    line++;
                }
                afterReturn = c == '\r';
            }
            out.clear();
            if (result.isError()) {
                throw UnusableFileException.of(UnusableFileException.UNDECODABLE, file, line, bytes[in.position()] & 0xff);
            }
            if (result.isUnderflow()) {
                return;
            }
        }
    }

    /** One pass over the text, begun again behind each row whose quotes are broken. */
    private static final class Reading {
        private final String file;
        private final String text;
        private char separator = ',';
        private final List<String> header = new ArrayList<>();
        private final List<CsvRow> rows = new ArrayList<>();
        private final List<RowProblem> rejected = new ArrayList<>();
        private int blankLines;
        private int commentLines;
        private int brokenRows;

        Reading(String file, String text) {
            this.file = file;
            this.text = text;
            if (text.isEmpty() || text.length() == 1 && text.charAt(0) == BYTE_ORDER_MARK) {
                throw UnusableFileException.of(UnusableFileException.EMPTY, file);
            }
            int offset = text.charAt(0) == BYTE_ORDER_MARK ? 1 : 0;
            int line = 1;
            while (offset < text.length() && isBlankOrComment(offset)) {
                separatorLine(offset);
                offset = nextLine(offset);
                line++;
            }
            if (offset >= text.length()) {
                throw UnusableFileException.of(UnusableFileException.NO_HEADER, file);
            }
            if (!stated) {
                separator = separatorOf(offset);
            }
            while (offset < text.length()) {
                int failed = readFrom(offset, line);
                if (failed == 0) {
                    return;
                }
                while (line <= failed && offset < text.length()) {
                    offset = nextLine(offset);
                    line++;
                }
            }
        }

        private boolean stated;

        /** Some spreadsheets write {@code sep=;} above the header. */
        private void separatorLine(int offset) {
            if (text.startsWith("sep=", offset) && offset + 4 < text.length()) {
                separator = text.charAt(offset + 4);
                stated = true;
            }
        }

        private boolean isBlankOrComment(int offset) {
            if (text.charAt(offset) == '#') {
                return true;
            }
            int end = endOfLine(offset);
            if (end - offset == 5 && text.startsWith("sep=", offset) && ",;\t".indexOf(text.charAt(offset + 4)) >= 0) {
                return true;
            }
            for (int i = offset; i < end; i++) {
                if (!Spelling.isSpace(text.charAt(i))) {
                    return false;
                }
            }
            return true;
        }

        /**
         * Reads rows until the text ends or a row is broken.
         *
         * @return 0 if the text ended, else the line on which the broken row begins
         */
        private int readFrom(int offset, int line) {
            StringReader reader = new StringReader(text);
            try {
                reader.skip(offset);
            } catch (IOException e) {
                throw new IllegalStateException(e);
            }
            CsvRecordHandler limits = CsvRecordHandler.builder().maxFields(MOST_COLUMNS).maxFieldSize(MOST_CHARACTERS_A_CELL)
                    .maxRecordSize(4 * MOST_CHARACTERS_A_CELL).build();
            CsvReader<CsvRecord> csv = CsvReader.builder().fieldSeparator(separator).commentStrategy(CommentStrategy.READ)
                    .skipEmptyLines(false).allowUnclosedQuote(false).extraFieldStrategy(FieldMismatchStrategy.IGNORE)
                    .missingFieldStrategy(FieldMismatchStrategy.IGNORE).maxBufferSize(2 * MOST_CHARACTERS_A_CELL)
                    .build(limits, reader);
            List<String> last = List.of();
            int next = line;
            try (CloseableIterator<CsvRecord> records = csv.iterator()) {
                while (records.hasNext()) {
                    CsvRecord record = records.next();
                    next = line - 1 + (int) record.getStartingLineNumber();
                    String broken = take(record, next);
                    if (!broken.isEmpty()) {
                        return broken(next, broken, record.getField(0));
                    }
                    last = record.getFields();
                }
                return 0;
            } catch (CsvParseException e) {
                int failed = last.isEmpty() ? line : next + linesOf(last);
                return broken(failed, reason(e), text.substring(lineStart(offset, line, failed),
                        Math.min(text.length(), lineStart(offset, line, failed) + RowProblem.SHOWN)));
            } catch (IOException e) {
                throw new IllegalStateException(e);
            } catch (NoSuchElementException e) {
                return 0;
            }
        }

        /** The parser's own words speak of buffers; the reader of the message knows quotes and commas. */
        private static String reason(CsvParseException e) {
            String words = String.valueOf(e.getMessage());
            if (words.contains("closing quote")) {
                return "text follows a closing quote; a quote inside a quoted cell is written twice";
            }
            if (words.contains("limit of")) {
                return "more than " + MOST_COLUMNS + " cells, the limit of a row";
            }
            if (words.contains("field size") || words.contains("buffer size") || words.contains("record size")) {
                return "a cell of more than 1,048,576 characters, the limit, or a quote that is never closed";
            }
            return "a quote is opened and never closed";
        }

        private int broken(int line, String reason, String raw) {
            if (header.isEmpty()) {
                throw UnusableFileException.of(UnusableFileException.BROKEN_HEADER, file, line, reason);
            }
            brokenRows++;
            if (brokenRows > MOST_BROKEN_ROWS) {
                throw UnusableFileException.of(UnusableFileException.MANY_BROKEN_ROWS, file, MOST_BROKEN_ROWS, line, reason);
            }
            rejected.add(new RowProblem(file, line, "", raw, RowProblem.Kind.REJECTED, reason));
            return line;
        }

        /**
         * Takes one record in.
         *
         * @return empty if all is well, else why the record cannot be trusted beyond its first line
         */
        private String take(CsvRecord record, int line) {
            if (header.isEmpty()) {
                takeHeader(record, line);
                return "";
            }
            if (record.isComment()) {
                commentLines++;
                return "";
            }
            List<String> cells = record.getFields();
            int lines = linesOf(cells);
            if (lines > 1 && swallowsRows(cells)) {
                return "a quote is opened here and closed only lines below, with whole rows between; the rows below are read on"
                        + " their own";
            }
            int filled = cells.size();
            while (filled > header.size() && Spelling.isBlank(cells.get(filled - 1))) {
                filled--;
            }
            if (filled > header.size()) {
                String hint = "the row has " + cells.size() + " cells under " + header.size() + " columns; a cell that holds a "
                        + (separator == ',' ? "comma" : separator == ';' ? "semicolon" : "tab") + " must stand in quotes";
                if (lines > 1) {
                    return hint;
                }
                rejected.add(new RowProblem(file, line, "", String.join(String.valueOf(separator), cells),
                        RowProblem.Kind.REJECTED, hint));
                return "";
            }
            for (String cell : cells) {
                if (!cell.isEmpty() && !Spelling.stripped(cell).isEmpty()) {
                    rows.add(new CsvRow(line, filled == cells.size() ? cells : cells.subList(0, filled)));
                    return "";
                }
            }
            blankLines += lines;
            return "";
        }

        private void takeHeader(CsvRecord record, int line) {
            Set<String> keys = new HashSet<>();
            int named = 0;
            for (String cell : record.getFields()) {
                String name = Spelling.stripped(cell);
                if (!name.isEmpty()) {
                    named++;
                    if (!keys.add(Spelling.key(name))) {
                        throw UnusableFileException.of(UnusableFileException.DUPLICATE_HEADER, file, line,
                                Spelling.shortened(name, RowProblem.SHOWN));
                    }
                }
                header.add(name);
            }
            if (named == 0) {
                throw UnusableFileException.of(UnusableFileException.BLANK_HEADER, file, line);
            }
        }

        /**
         * A quote that was never meant to open a cell pairs with a later one, and the rows between vanish into one cell. Such a
         * cell holds a line with as many separators as a row has; prose seldom does, unless the file has very few columns.
         */
        private boolean swallowsRows(List<String> cells) {
            int wanted = Math.max(3, header.size() - 1);
            for (String cell : cells) {
                int separators = 0;
                boolean inner = false;
                for (int i = 0; i < cell.length(); i++) {
                    char c = cell.charAt(i);
                    if (c == '\n' || c == '\r') {
                        if (inner && separators >= wanted) {
                            return true;
                        }
                        inner = true;
                        separators = 0;
                    } else if (c == separator) {
                        separators++;
                    }
                }
            }
            return false;
        }

        private static int linesOf(List<String> cells) {
            int lines = 1;
            for (String cell : cells) {
                if (cell.indexOf('\n') < 0 && cell.indexOf('\r') < 0) {
                    continue;
                }
                for (int i = 0; i < cell.length(); i++) {
                    char c = cell.charAt(i);
                    if (c == '\n' || c == '\r' && (i + 1 == cell.length() || cell.charAt(i + 1) != '\n')) {
                        lines++;
                    }
                }
            }
            return lines;
        }

        private char separatorOf(int offset) {
            int commas = 0;
            int semicolons = 0;
            int tabs = 0;
            boolean quoted = false;
            for (int i = offset; i < text.length(); i++) {
                char c = text.charAt(i);
                if (c == '"') {
                    quoted = !quoted;
                } else if (!quoted) {
                    if (c == '\n' || c == '\r') {
                        break;
                    }
                    commas += c == ',' ? 1 : 0;
                    semicolons += c == ';' ? 1 : 0;
                    tabs += c == '\t' ? 1 : 0;
                }
            }
            return tabs > commas && tabs > semicolons ? '\t' : semicolons > commas ? ';' : ',';
        }

        private int lineStart(int offset, int line, int wanted) {
            int at = offset;
            for (int i = line; i < wanted && at < text.length(); i++) {
                at = nextLine(at);
            }
            return at;
        }

        private int endOfLine(int offset) {
            for (int i = offset; i < text.length(); i++) {
                char c = text.charAt(i);
                if (c == '\n' || c == '\r') {
                    return i;
                }
            }
            return text.length();
        }

        private int nextLine(int offset) {
            int end = endOfLine(offset);
            boolean pair = end + 1 < text.length() && text.charAt(end) == '\r' && text.charAt(end + 1) == '\n';
            return Math.min(text.length(), end + (pair ? 2 : 1));
        }
    }
}
