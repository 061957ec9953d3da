package swapworth.listing;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.io.TempDir;

/** Writes a file of listings into a folder of its own and reads it. */
abstract class ReadingListings {

    @TempDir
    Path folder;

    Path write(String name, String text) {
        try {
            return Files.writeString(folder.resolve(name), text);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    ListingsRead read(String text) {
        return Listings.read(write("listings.csv", text));
    }

    /** One row under a header. */
    Listing one(String header, String row) {
        ListingsRead read = read(header + "\n" + row + "\n");
        if (read.listings().size() != 1) {
            throw new AssertionError(read.rejected() + " " + read.setAside());
        }
        return read.listings().get(0);
    }
}
