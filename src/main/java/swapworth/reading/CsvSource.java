package swapworth.reading;

import de.siegmar.fastcsv.reader.CloseableIterator;
import de.siegmar.fastcsv.reader.CommentStrategy;
import de.siegmar.fastcsv.reader.CsvParseException;
import de.siegmar.fastcsv.reader.CsvReader;
import de.siegmar.fastcsv.reader.FieldMismatchStrategy;
import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collections;
import java.util.HashSet;
import java.util.List;
import java.util.NoSuchElementException;
import java.util.Optional;
import java.util.Set;
import java.util.function.Consumer;
import java.util.function.Function;

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
    public static final long MOST_BYTES = 1L << 32;
    /** The most rows that may be broken in their quotes before the file as a whole counts as unusable. */
    public static final int MOST_BROKEN_ROWS = 1_000;

    private final String file;
    private final char separator;
    private final int headerLine;
    private final List<String> header;
    private final List<String> names;
    private final boolean takesWords;
    private final List<CsvRow> rows;
    private final List<RowProblem> rejected = new ArrayList<>();
    private int blankLines;
    private int commentLines;
    private int headerAgain;
    /** The lines that begin with {@code #} and have as many cells as a row: the first, and how many. */
    private int commentLikeARow;
    private int commentsLikeRows;
    private boolean ofNothing;

    private CsvSource(String file, char separator, int headerLine, List<String> header, Optional<Words> words, List<CsvRow> rows) {
        this.file = file;
        this.separator = separator;
        this.headerLine = headerLine;
        this.header = List.copyOf(header);
        this.names = words.isPresent() ? words.get().names(this.header) : this.header;
        this.takesWords = words.isPresent();
        this.rows = rows;
    }

    /**
     * Reads a file by its headers as they stand.
     *
     * @param path the file
     * @return its rows and an account of the rest
     * @throws UnusableFileException if the file is missing, empty, not UTF-8, without header, with two columns of one name, or
     *         beyond the limits
     */
    public static CsvSource read(Path path) {
        return collected(FileText.of(path, MOST_BYTES), Optional.empty());
    }

    /**
     * Reads a file of a folder, by what its {@code words.csv} says of headers.
     *
     * @param path the file
     * @param words the user's own spellings
     * @return its rows and an account of the rest
     * @throws UnusableFileException as for {@link #read(Path)}
     */
    public static CsvSource read(Path path, Words words) {
        return collected(FileText.of(path, MOST_BYTES), Optional.of(words));
    }

    /**
     * Reads a file whose rows are taken one by one as they come and not kept: {@link #rows} is empty.
     *
     * @param path the file
     * @param words the user's own spellings, for the headers
     * @param taker is shown the source when its header is known, and gives what takes the rows
     * @return the account of the file
     * @throws UnusableFileException as for {@link #read(Path)}
     */
    public static CsvSource read(Path path, Words words, Function<CsvSource, Consumer<CsvRow>> taker) {
        return new Reading(FileText.of(path, MOST_BYTES), Optional.of(words), List.of(), taker).source();
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
        return collected(FileText.of(file, text), Optional.empty());
    }

    /**
     * Reads a file of a folder without which the others say what they say: where it holds nothing it has neither columns nor rows.
     *
     * @param path the file
     * @param words the user's own spellings
     * @return its rows and an account of the rest
     * @throws UnusableFileException as for {@link #read(Path)}, but not for an empty file
     */
    public static CsvSource readBeside(Path path, Words words) {
        return readBeside(path, Optional.of(words));
    }

    /** The same, where nothing speaks of headers. */
    static CsvSource readBeside(Path path, Optional<Words> words) {
        FileText text = FileText.of(path, MOST_BYTES);
        try {
            return collected(text, words);
        } catch (UnusableFileException e) {
            if (!e.isOfNothing()) {
                throw e;
            }
            CsvSource none = new CsvSource(text.file(), ',', 0, List.of(), words, List.of());
            none.ofNothing = true;
            return none;
        }
    }

    private static CsvSource collected(FileText text, Optional<Words> words) {
        List<CsvRow> rows = new ArrayList<>();
        return new Reading(text, words, Collections.unmodifiableList(rows), source -> rows::add).source();
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
     * The names of the columns as they are understood: what {@code words.csv} puts in place of a header, else the header.
     *
     * @return one name a column
     */
    public List<String> names() {
        return names;
    }

    /** The line of the header, from 1. */
    int headerLine() {
        return headerLine;
    }

    /** Whether what {@code words.csv} says of headers holds for the file. */
    boolean takesWords() {
        return takesWords;
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
        return Collections.unmodifiableList(rejected);
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
     * How many lines begin with {@code #} and are taken for comments, above the header and below it.
     *
     * @return the count
     */
    public int commentLines() {
        return commentLines;
    }

    /**
     * Whether the file holds nothing but blank and comment lines, and so no header.
     *
     * @return never where its rows were taken one by one: such a file is refused
     */
    public boolean isOfNothing() {
        return ofNothing;
    }

    /**
     * What a reader should know of the file as a whole: that it holds nothing, or that a comment of it looks like a row.
     *
     * @return problems of the kind odd
     */
    public List<RowProblem> oddities() {
        List<RowProblem> odd = new ArrayList<>(1);
        if (ofNothing) {
            odd.add(new RowProblem(file, 0, "", "", RowProblem.Kind.ODD, UnusableFileException.IS_EMPTY));
        } else if (commentLikeARow > 0) {
            odd.add(new RowProblem(file, commentLikeARow, "", "", RowProblem.Kind.ODD, "this line begins with # and is taken for a remark,"
                    + " though it has as many cells as a row" + (commentsLikeRows == 1 ? "" : ", and so do " + (commentsLikeRows - 1)
                    + " more") + ": if it is a row, put its first cell in quotes"));
        }
        return odd;
    }

    /** The first line on which the header stands again; 0 where it does not. */
    int headerAgain() {
        return headerAgain;
    }

    /**
     * The place of the column of a name.
     *
     * @param name the name, compared without regard to case; a hyphen or an underscore is a space
     * @return its place from 0; -1 if there is none
     */
    public int column(String name) {
        String key = Spelling.key(name);
        for (int i = 0; i < names.size(); i++) {
            if (Spelling.key(names.get(i)).equals(key)) {
                return i;
            }
        }
        return -1;
    }

    /**
     * The places of columns that the file must have.
     *
     * @param needed their names
     * @return the place of each, from 0
     * @throws UnusableFileException if one is not there; the message names all that are missing and lists those that were found
     */
    public int[] neededColumns(String... needed) {
        int[] places = new int[needed.length];
        List<String> missing = new ArrayList<>();
        for (int i = 0; i < needed.length; i++) {
            places[i] = column(needed[i]);
            if (places[i] < 0) {
                missing.add(needed[i]);
            }
        }
        if (!missing.isEmpty()) {
            throw UnusableFileException.missingNames(this, missing);
        }
        return places;
    }

    /** One pass over the text, begun again behind each row whose quotes are broken. */
    private static final class Reading {
        private final FileText text;
        private final Optional<Words> words;
        private final List<CsvRow> rows;
        private final Function<CsvSource, Consumer<CsvRow>> taker;
        private final RowTexts texts = new RowTexts(MOST_COLUMNS, MOST_CHARACTERS_A_CELL);
        private final char separator;
        private final int commentsAbove;
        private Optional<CsvSource> known = Optional.empty();
        private Consumer<CsvRow> taking = row -> { };
        private int brokenRows;
        /** Whether the writer of the file puts spaces between a separator and a cell. */
        private boolean headerIsSpaced;

        Reading(FileText text, Optional<Words> words, List<CsvRow> rows, Function<CsvSource, Consumer<CsvRow>> taker) {
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
                    .missingFieldStrategy(FieldMismatchStrategy.IGNORE).maxBufferSize(2 * MOST_CHARACTERS_A_CELL)
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
                return "more than " + MOST_COLUMNS + " cells, the limit of a row";
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
            if (brokenRows > MOST_BROKEN_ROWS) {
                throw UnusableFileException.of(UnusableFileException.MANY_BROKEN_ROWS, text.file(), MOST_BROKEN_ROWS, line, reason);
            }
            source().rejected.add(new RowProblem(text.file(), line, "", raw, RowProblem.Kind.REJECTED, reason));
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
            int columns = source.header.size();
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
                String hint = "the row has " + record.size() + " cells under " + columns + " columns"
                        + (filled > columns ? "" : ", and '" + Spelling.shortened(record.cell(cut), 20) + "' begins with a space")
                        + "; a cell that holds a "
                        + (separator == ',' ? "comma" : separator == ';' ? "semicolon" : "tab") + " must stand in quotes"
                        + (filled > columns ? "" : "; if none does, write no space there");
                if (lines > 1) {
                    return hint;
                }
                source.rejected.add(new RowProblem(text.file(), line, "",
                        String.join(String.valueOf(separator), record.row(line, record.size()).cells()),
                        RowProblem.Kind.REJECTED, hint));
                return "";
            }
            for (int i = 0; i < record.size(); i++) {
                if (!record.isEmpty(i)) {
                    if (isHeaderAgain(record)) {
                        source.headerAgain = source.headerAgain == 0 ? line : source.headerAgain;
                        source.rejected.add(new RowProblem(text.file(), line, "", record.cell(i), RowProblem.Kind.REJECTED,
                                RowProblem.HEADER_AGAIN + source.headerLine + " stands here again: it is no row; remove it"));
                    } else {
                        taking.accept(record.row(line, filled));
                    }
                    return "";
                }
            }
            source.blankLines += lines;
            return "";
        }

        /** A spreadsheet's error in the first cell makes a row look like a remark; other rows that begin so are asked about. */
        private String takeComment(String behind, int line) {
            CsvSource source = source();
            String comment = "#" + behind;
            int cells = 1 + (int) comment.chars().filter(c -> c == separator).count();
            int first = comment.indexOf(separator);
            String cell = Spelling.stripped(first < 0 ? comment : comment.substring(0, first));
            if (cells > 1 && (Spelling.isFault(cell) || Spelling.isBlank(cell))) {
                source.rejected.add(new RowProblem(text.file(), line, "", comment, RowProblem.Kind.REJECTED, "the row begins with a"
                        + " spreadsheet's error, " + cell + ": mend it there, or leave the cell blank"));
                return "";
            }
            source.commentLines++;
            if (cells > 2 && cells >= source.header.size()) {
                source.commentsLikeRows++;
                source.commentLikeARow = source.commentsLikeRows == 1 ? line : source.commentLikeARow;
            }
            return "";
        }

        /** Whether each cell holds the name of its column: so does the second header where files are put behind each other. */
        private boolean isHeaderAgain(RowTexts record) {
            List<String> header = source().header;
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
            List<String> header = new ArrayList<>();
            Set<String> keys = new HashSet<>();
            int named = 0;
            for (String cell : record.row(line, record.size()).cells()) {
                String name = Spelling.stripped(cell);
                if (!name.isEmpty()) {
                    named++;
                    if (!keys.add(Spelling.key(name))) {
                        throw UnusableFileException.of(UnusableFileException.DUPLICATE_HEADER, text.file(), line,
                                Spelling.shortened(name, RowProblem.SHOWN));
                    }
                }
                header.add(name);
            }
            if (named == 0) {
                throw UnusableFileException.of(UnusableFileException.BLANK_HEADER, text.file(), line);
            }
            CsvSource source = new CsvSource(text.file(), separator, line, header, words, rows);
            for (int i = 0; i < header.size(); i++) {
                String own = header.get(i);
                String name = source.names.get(i);
                new OwnHeader(own, name).contradiction().ifPresent(unit -> {
                    throw UnusableFileException.of(UnusableFileException.CONTRADICTION, text.file(), line,
                            Spelling.shortened(own, RowProblem.SHOWN), unit, Spelling.shortened(name, RowProblem.SHOWN));
                });
            }
            source.commentLines = commentsAbove;
            known = Optional.of(source);
            taking = taker.apply(known.get());
        }

        /**
         * A quote that was never meant to open a cell pairs with a later one, and the rows between vanish into one cell. Such a
         * cell holds a line with as many separators as a row has; prose seldom does, unless the file has very few columns.
         */
        private boolean swallowsRows(RowTexts cells, int columns) {
            int wanted = Math.max(3, columns - 1);
            for (int k = 0; k < cells.size(); k++) {
                String cell = cells.cell(k);
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
    }
}
