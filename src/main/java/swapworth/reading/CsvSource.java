package swapworth.reading;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
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

    CsvSource(String file, char separator, int headerLine, List<String> header, Optional<Words> words, List<CsvRow> rows,
            int commentsAbove) {
        this.file = file;
        this.separator = separator;
        this.headerLine = headerLine;
        this.header = List.copyOf(header);
        this.names = words.isPresent() ? words.get().names(this.header) : this.header;
        this.takesWords = words.isPresent();
        this.rows = rows;
        this.commentLines = commentsAbove;
    }

    /** Takes in a line that is no row. */
    void reject(int line, String raw, String reason) {
        rejected.add(new RowProblem(file, line, "", raw, RowProblem.Kind.REJECTED, reason));
    }

    /** Takes in a row that is the header once more. */
    void takeHeaderAgain(int line, String raw) {
        headerAgain = headerAgain == 0 ? line : headerAgain;
        reject(line, raw, RowProblem.HEADER_AGAIN + headerLine + " stands here again: it is no row; remove it");
    }

    /** Takes in a comment of so many cells. */
    void takeComment(int line, int cells) {
        commentLines++;
        if (cells > 2 && cells >= header.size()) {
            commentsLikeRows++;
            commentLikeARow = commentsLikeRows == 1 ? line : commentLikeARow;
        }
    }

    /** Takes in lines that hold nothing. */
    void takeBlank(int lines) {
        blankLines += lines;
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
        return new CsvReading(FileText.of(path, MOST_BYTES), Optional.of(words), List.of(), taker).source();
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
            CsvSource none = new CsvSource(text.file(), ',', 0, List.of(), words, List.of(), 0);
            none.ofNothing = true;
            return none;
        }
    }

    private static CsvSource collected(FileText text, Optional<Words> words) {
        List<CsvRow> rows = new ArrayList<>();
        return new CsvReading(text, words, Collections.unmodifiableList(rows), source -> rows::add).source();
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
}
