package swapworth.reading;

import de.siegmar.fastcsv.reader.CloseableIterator;
import de.siegmar.fastcsv.reader.CommentStrategy;
import de.siegmar.fastcsv.reader.CsvParseException;
import de.siegmar.fastcsv.reader.CsvReader;
import de.siegmar.fastcsv.reader.FieldMismatchStrategy;
import java.io.IOException;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.NoSuchElementException;
import java.util.Optional;
import java.util.Set;
import java.util.function.Consumer;
import java.util.function.Function;

/** One pass over the text of a file, begun again behind each row whose quotes are broken; {@link CsvSource} is what comes of it. */
final class CsvReading {
    private final FileText text;
    private final Optional<Words> words;
    private final List<CsvRow> rows;
    private final Function<CsvSource, Consumer<CsvRow>> taker;
    private final RowTexts texts = new RowTexts(CsvSource.MOST_COLUMNS, CsvSource.MOST_CHARACTERS_A_CELL);
    private final char separator;
    private final int commentsAbove;
    private Optional<CsvSource> known = Optional.empty();
    private Consumer<CsvRow> taking = row -> { };
    private int brokenRows;
    /** Whether the writer of the file puts spaces between a separator and a cell. */
    private boolean headerIsSpaced;

    CsvReading(FileText text, Optional<Words> words, List<CsvRow> rows, Function<CsvSource, Consumer<CsvRow>> taker) {
        this.text = text;
        this.words = words;
        this.rows = rows;
        this.taker = taker;
        HeaderLine header = HeaderLine.of(text);
        this.separator = header.separator();
        this.commentsAbove = header.comments();
        FileText.Place place = header.place();
        do {
            int failed = readFrom(place);
            if (failed == 0) {
                return;
            }
            place = text.lineAfter(place, failed + 1);
        } while (!text.endsAt(place));
    }

    /** The source once its header is known, which it is when reading has ended. */
    CsvSource source() {
        return known.orElseThrow();
    }

    /**
     * Reads rows until the text ends or a row is broken.
     *
     * @return 0 if the text ended, else the line on which the broken row begins
     */
    private int readFrom(FileText.Place place) {
        int line = place.line();
        CsvReader<RowTexts> csv = CsvReader.builder().fieldSeparator(separator).commentStrategy(CommentStrategy.READ)
                .skipEmptyLines(false).allowUnclosedQuote(false).extraFieldStrategy(FieldMismatchStrategy.IGNORE)
                .missingFieldStrategy(FieldMismatchStrategy.IGNORE).maxBufferSize(2 * CsvSource.MOST_CHARACTERS_A_CELL)
                .build(texts, text.from(place));
        int next = line;
        int behind = line;
        try (CloseableIterator<RowTexts> records = csv.iterator()) {
            while (records.hasNext()) {
                RowTexts record = records.next();
                next = line - 1 + (int) record.line();
                int lines = record.lines();
                String broken = take(record, next, lines);
                if (!broken.isEmpty()) {
                    return broken(next, broken, record.cell(0));
                }
                behind = next + lines;
            }
            return 0;
        } catch (CsvParseException e) {
            if (e.getCause() instanceof UnusableFileException unusable) {
                throw unusable;
            }
            return broken(behind, reason(e), text.beginning(text.lineAfter(place, behind), RowProblem.SHOWN));
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
            return "more than " + CsvSource.MOST_COLUMNS + " cells, the limit of a row";
        }
        if (words.contains("field size") || words.contains("buffer size") || words.contains("record size")) {
            return "a cell of more than 1,048,576 characters, the limit, or a quote that is never closed";
        }
        return "a quote is opened and never closed";
    }

    private int broken(int line, String reason, String raw) {
        if (known.isEmpty()) {
            throw UnusableFileException.of(UnusableFileException.BROKEN_HEADER, text.file(), line, reason);
        }
        brokenRows++;
        if (brokenRows > CsvSource.MOST_BROKEN_ROWS) {
            throw UnusableFileException.of(UnusableFileException.MANY_BROKEN_ROWS, text.file(), CsvSource.MOST_BROKEN_ROWS, line, reason);
        }
        source().reject(line, raw, reason);
        return line;
    }

    /**
     * Takes one record in.
     *
     * @return empty if all is well, else why the record cannot be trusted beyond its first line
     */
    private String take(RowTexts record, int line, int lines) {
        if (known.isEmpty()) {
            takeHeader(record, line);
            return "";
        }
        CsvSource source = known.get();
        if (record.isComment()) {
            return takeComment(record.cell(0), line);
        }
        int columns = source.header().size();
        if (lines > 1 && swallowsRows(record, columns)) {
            return "a quote is opened here and closed only lines below, with whole rows between; the rows below are read on"
                    + " their own";
        }
        int filled = record.size();
        while (filled > columns && Spelling.isBlank(record.cell(filled - 1))) {
            filled--;
        }
        int cut = record.size() == columns || headerIsSpaced ? 0 : cutAt(record);
        if (filled > columns || cut > 0) {
            return takeMisfit(record, line, lines, filled > columns ? 0 : cut);
        }
        for (int i = 0; i < record.size(); i++) {
            if (!record.isEmpty(i)) {
                if (isHeaderAgain(record)) {
                    source.takeHeaderAgain(line, record.cell(i));
                } else {
                    taking.accept(record.row(line, filled));
                }
                return "";
            }
        }
        source.takeBlank(lines);
        return "";
    }

    /**
     * Rejects a record that has more cells than columns, or a cell that is cut in two.
     *
     * @param cut the place of the second part of such a cell; 0 where there are too many cells
     * @return empty if it ends on its line, else why it cannot be trusted beyond that
     */
    private String takeMisfit(RowTexts record, int line, int lines, int cut) {
        String hint = "the row has " + record.size() + " cells under " + source().header().size() + " columns"
                + (cut == 0 ? "" : ", and '" + Spelling.shortened(record.cell(cut), 20) + "' begins with a space")
                + "; a cell that holds a " + (separator == ',' ? "comma" : separator == ';' ? "semicolon" : "tab")
                + " must stand in quotes" + (cut == 0 ? "" : "; if none does, write no space there");
        if (lines > 1) {
            return hint;
        }
        source().reject(line, String.join(String.valueOf(separator), record.row(line, record.size()).cells()), hint);
        return "";
    }

    /** A spreadsheet's error in the first cell makes a row look like a remark; other rows that begin so are asked about. */
    private String takeComment(String behind, int line) {
        String comment = "#" + behind;
        int cells = 1 + (int) comment.chars().filter(c -> c == separator).count();
        int first = comment.indexOf(separator);
        String cell = Spelling.stripped(first < 0 ? comment : comment.substring(0, first));
        if (cells > 1 && (Spelling.isFault(cell) || Spelling.isBlank(cell))) {
            source().reject(line, comment, "the row begins with a spreadsheet's error, " + cell
                    + ": mend it there, or leave the cell blank");
        } else {
            source().takeComment(line, cells);
        }
        return "";
    }

    /** Whether each cell holds the name of its column: so does the second header where files are put behind each other. */
    private boolean isHeaderAgain(RowTexts record) {
        List<String> header = source().header();
        for (int i = 0; i < header.size(); i++) {
            String cell = i < record.size() ? record.cell(i) : "";
            String name = header.get(i);
            if (!cell.equals(name) && !Spelling.key(Spelling.stripped(cell)).equals(Spelling.key(name))) {
                return false;
            }
        }
        return header.size() > 1;
    }

    /**
     * Where the separator that was typed inside a text cuts a cell in two: people write a space behind it, and none between cells.
     *
     * @return the place of the second part; 0 if none begins so, or all do
     */
    private static int cutAt(RowTexts record) {
        int cut = 0;
        boolean plain = false;
        for (int k = 1; k < record.size(); k++) {
            String cell = record.cell(k);
            boolean spaced = !record.isEmpty(k) && cell.charAt(0) == ' ';
            plain |= !spaced && !record.isEmpty(k);
            cut = cut == 0 && spaced && hasLetter(cell) && hasLetter(record.cell(k - 1)) ? k : cut;
        }
        return plain ? cut : 0;
    }

    private static boolean hasLetter(String text) {
        return text.chars().anyMatch(Character::isLetter);
    }

    private void takeHeader(RowTexts record, int line) {
        for (int k = 1; k < record.size(); k++) {
            headerIsSpaced |= !record.isEmpty(k) && record.cell(k).charAt(0) == ' ';
        }
        CsvSource source = new CsvSource(text.file(), separator, line, header(record, line), words, rows, commentsAbove);
        for (int i = 0; i < source.header().size(); i++) {
            String own = source.header().get(i);
            String name = source.names().get(i);
            new OwnHeader(own, name).contradiction().ifPresent(unit -> {
                throw UnusableFileException.of(UnusableFileException.CONTRADICTION, text.file(), line,
                        Spelling.shortened(own, RowProblem.SHOWN), unit, Spelling.shortened(name, RowProblem.SHOWN));
            });
        }
        known = Optional.of(source);
        taking = taker.apply(source);
    }

    /** The names of the columns: one at least, and none twice. */
    private List<String> header(RowTexts record, int line) {
        List<String> header = new ArrayList<>();
        Set<String> keys = new HashSet<>();
        for (String cell : record.row(line, record.size()).cells()) {
            String name = Spelling.stripped(cell);
            if (!name.isEmpty() && !keys.add(Spelling.key(name))) {
                throw UnusableFileException.of(UnusableFileException.DUPLICATE_HEADER, text.file(), line,
                        Spelling.shortened(name, RowProblem.SHOWN));
            }
            header.add(name);
        }
        if (keys.isEmpty()) {
            throw UnusableFileException.of(UnusableFileException.BLANK_HEADER, text.file(), line);
        }
        return header;
    }

    /**
     * A quote that was never meant to open a cell pairs with a later one, and the rows between vanish into one cell. Such a
     * cell holds a line with as many separators as a row has; prose seldom does, unless the file has very few columns.
     */
    private boolean swallowsRows(RowTexts cells, int columns) {
        int wanted = Math.max(3, columns - 1);
        for (int k = 0; k < cells.size(); k++) {
            if (holdsLine(cells.cell(k), wanted)) {
                return true;
            }
        }
        return false;
    }

    /** Whether a line of so many separators stands whole within a cell: neither its first, which its row began, nor its last. */
    private boolean holdsLine(String cell, int wanted) {
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
        return false;
    }
}
