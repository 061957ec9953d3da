package swapworth.listing;

import static java.util.Objects.requireNonNull;

/**
 * Where a row stands.
 *
 * @param file the name of the file, without its folder
 * @param line the physical line on which the row begins, from 1; the header is usually line 1
 */
public record Origin(String file, int line) {

    /** Checks that the name is there. */
    public Origin {
        requireNonNull(file, "file");
    }

    /** For instance {@code listings.csv:12}. */
    @Override
    public String toString() {
        return file + ":" + line;
    }
}
