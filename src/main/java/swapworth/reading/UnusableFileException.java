package swapworth.reading;

import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.IntStream;

/**
 * A file as a whole cannot be used: missing, empty, undecodable, without header, without a needed column, or beyond the stated
 * limits. The message names what was found and what is needed. A single bad row never raises it.
 */
public final class UnusableFileException extends RuntimeException {

    private static final long serialVersionUID = 1L;

    static final String MISSING = "%s: there is no such file; needed: a CSV file that can be read";
    static final String FOLDER = "%s: this is a folder; needed: a CSV file";
    static final String UNREADABLE = "%s: the file cannot be read (%s)";
    static final String TOO_LARGE = "%s: the file has %,d bytes; the limit is %,d. Split it into several files";
    /** Why a file that holds nothing says nothing, and what it needs. */
    public static final String IS_EMPTY = "the file is empty; needed: a header line and at least one row";
    static final String EMPTY = "%s: " + IS_EMPTY;
    static final String NO_HEADER = "%s: only blank or comment lines were found; needed: a header line that names the columns";
    static final String WORKBOOK = "%s: this is a spreadsheet workbook or an archive, not a CSV file; save it as 'CSV UTF-8'"
            + " and try again";
    static final String UTF_16 = "%s: the file is written in UTF-16; save it as UTF-8 ('CSV UTF-8' in a spreadsheet) and try again";
    static final String UNDECODABLE = "%s: line %d: the byte 0x%02X does not belong to UTF-8 text; save it as UTF-8 ('CSV UTF-8'"
            + " in a spreadsheet) and try again";
    static final String BROKEN_HEADER = "%s: line %d: the header line cannot be read: %s";
    static final String BLANK_HEADER = "%s: line %d: the header line holds no name of a column; needed: the names of the columns";
    static final String DUPLICATE_HEADER = "%s: line %d: the column '%s' stands twice in the header; rename or remove one of"
            + " them. If the line is a row already, write the header above it";
    static final String CONTRADICTION = "%s: line %d: the header '%s' says %s, and words.csv takes it for %s: which is right? Let its row"
            + " of words.csv name a column of the same unit and currency, or of none";
    static final String MANY_BROKEN_ROWS = "%s: more than %,d rows could not be told apart (the last one at line %d: %s); mend"
            + " the quotes in the file and try again";
    static final String MISSING_COLUMNS = "%s: %s %s missing; found the columns %s%s";
    static final String OF_HEADERS = ". If one of these is meant, words.csv beside it says so with a row such as header,your own header,%s "
            + "below its first line, column,word,means";

    static final String TITLE = ". Line %d must be the header, which names the columns: if it is a title, remove it, or begin it with #";
    static final String ROW = ". Line %d must be the header, which names the columns: '%s' is no name. If it is a row already, write the"
            + " header above it";
    static final String STROKES = ". Line %d must be the header, which names the columns, with a comma, a semicolon or a tab between them,"
            + " and not '|'";

    /** Whether the file holds neither a header nor a row. */
    private final boolean ofNothing;

    private UnusableFileException(String message, boolean ofNothing) {
        super(message);
        this.ofNothing = ofNothing;
    }

    static UnusableFileException of(String template, Object... arguments) {
        return new UnusableFileException(String.format(Locale.ROOT, template, arguments), template.equals(EMPTY)
                || template.equals(NO_HEADER));
    }

    /**
     * Whether the file holds nothing but blank and comment lines: it says nothing, and nothing of it is lost.
     *
     * @return for another file whether the others of a folder can do without it
     */
    public boolean isOfNothing() {
        return ofNothing;
    }

    /**
     * Columns that the file must have are not there.
     *
     * @param source the file
     * @param needed all that is missing, for instance {@code a column for the price (price, ask, price_eur)}
     * @param example the name of the first of them, for what the message says of {@code words.csv}
     * @return the exception, to be thrown
     */
    public static UnusableFileException missingColumns(CsvSource source, List<String> needed, String example) {
        int[] found = IntStream.range(0, source.header().size()).filter(i -> !source.header().get(i).isEmpty()).toArray();
        StringBuilder names = new StringBuilder();
        for (int k = 0; k < found.length && k < 60; k++) {
            String typed = source.header().get(found[k]);
            String meant = source.names().get(found[k]);
            names.append(k == 0 ? "" : ", ").append(Spelling.shortened(typed, 40));
            if (!meant.equals(typed)) {
                names.append(" (by words.csv: ").append(Spelling.shortened(meant, 40)).append(')');
            }
        }
        if (found.length > 60) {
            names.append(", and ").append(found.length - 60).append(" more");
        }
        return of(MISSING_COLUMNS, source.file(), listed(needed), needed.size() == 1 ? "is" : "are", names, advice(source, found, example));
    }

    /** What may be done about it: a header in the user's own words is one thing, a line that is no header another. */
    private static String advice(CsvSource source, int[] found, String example) {
        if (found.length == 1) {
            return String.format(Locale.ROOT, source.header().get(found[0]).indexOf('|') > 0 ? STROKES : TITLE, source.headerLine());
        }
        Optional<String> number = IntStream.of(found).mapToObj(source.header()::get).filter(UnusableFileException::isNoName).findFirst();
        return number.isPresent() ? String.format(Locale.ROOT, ROW, source.headerLine(), Spelling.shortened(number.get(), 40))
                : source.takesWords() ? String.format(Locale.ROOT, OF_HEADERS, example) : "";
    }

    /** Numbers, days and amounts name no column, and neither does the star of a row of {@code words.csv}. */
    private static boolean isNoName(String header) {
        return header.equals("*") || header.matches("[-+]?[0-9]+([-./:,' ][0-9]+)*");
    }

    /** The same for columns that go by their names alone. */
    static UnusableFileException missingNames(CsvSource source, List<String> needed) {
        return missingColumns(source, needed.stream().map(name -> "the column '" + name + "'").toList(), needed.get(0));
    }

    private static String listed(List<String> all) {
        int last = all.size() - 1;
        return last == 0 ? all.get(0) : String.join(", ", all.subList(0, last)) + " and " + all.get(last);
    }

    /**
     * The file breaks a rule of its kind that makes all of it useless.
     *
     * @param file the name of the file
     * @param message what was found and what is needed
     * @return the exception, to be thrown
     */
    public static UnusableFileException because(String file, String message) {
        return new UnusableFileException(file + ": " + message, false);
    }
}
