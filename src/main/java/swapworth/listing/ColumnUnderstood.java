package swapworth.listing;

import static java.util.Objects.requireNonNull;

/**
 * How one column of a file was understood.
 *
 * @param file the name of the file
 * @param header its header as it stands
 * @param meaning the column that it was taken for; empty for a further column, which is kept by its own name
 * @param how the unit or currency that was understood, or why the column is kept as a further one; may be empty
 * @param filled in how many rows it is not blank
 * @param rows of how many rows
 */
public record ColumnUnderstood(String file, String header, String meaning, String how, int filled, int rows) {

    /** Checks that nothing is missing. */
    public ColumnUnderstood {
        requireNonNull(file, "file");
        requireNonNull(header, "header");
        requireNonNull(meaning, "meaning");
        requireNonNull(how, "how");
    }
}
