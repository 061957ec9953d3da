package swapworth.reading;

import java.nio.file.Path;
import java.util.List;
import java.util.Locale;

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
    static final String EMPTY = "%s: the file is empty; needed: a header line and at least one row";
    static final String NO_HEADER = "%s: only blank or comment lines were found; needed: a header line that names the columns";
    static final String WORKBOOK = "%s: this is a spreadsheet workbook or an archive, not a CSV file; save it as 'CSV UTF-8'"
            + " and try again";
    static final String UTF_16 = "%s: the file is written in UTF-16; save it as UTF-8 ('CSV UTF-8' in a spreadsheet)"
            + " and try again";
    static final String UNDECODABLE = "%s: line %d: the byte 0x%02X does not belong to UTF-8 text; save it as UTF-8 ('CSV UTF-8'"
            + " in a spreadsheet) and try again";
    static final String BROKEN_HEADER = "%s: line %d: the header line cannot be read: %s";
    static final String BLANK_HEADER = "%s: line %d: the header line holds no name of a column";
    static final String DUPLICATE_HEADER = "%s: line %d: the column '%s' stands twice in the header; rename or remove one of"
            + " them";
    static final String MANY_BROKEN_ROWS = "%s: more than %,d rows could not be told apart (the last one at line %d: %s); mend"
            + " the quotes in the file and try again";
    static final String MISSING_COLUMN = "%s: %s is missing; found the columns %s";

    private UnusableFileException(String message) {
        super(message);
    }

    static UnusableFileException of(String template, Object... arguments) {
        return new UnusableFileException(String.format(Locale.ROOT, template, arguments));
    }

    /**
     * A column that the file must have is not there.
     *
     * @param file the name of the file
     * @param needed what is needed, for instance {@code a price column (price, ask, price_eur)}
     * @param found the header names that were found
     * @return the exception, to be thrown
     */
    public static UnusableFileException missingColumn(String file, String needed, List<String> found) {
        StringBuilder names = new StringBuilder();
        for (int i = 0; i < found.size() && i < 60; i++) {
            names.append(i == 0 ? "" : ", ").append(Spelling.shortened(found.get(i), 40));
        }
        if (found.size() > 60) {
            names.append(", and ").append(found.size() - 60).append(" more");
        }
        return of(MISSING_COLUMN, file, needed, names);
    }

    /**
     * The file is not there.
     *
     * @param file where it was looked for
     * @return the exception, to be thrown
     */
    public static UnusableFileException missing(Path file) {
        return of(MISSING, file);
    }

    /**
     * The file breaks a rule of its kind that makes all of it useless.
     *
     * @param file the name of the file
     * @param message what was found and what is needed
     * @return the exception, to be thrown
     */
    public static UnusableFileException because(String file, String message) {
        return new UnusableFileException(file + ": " + message);
    }
}
