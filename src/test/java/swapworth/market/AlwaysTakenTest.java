package swapworth.market;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import swapworth.listing.ColumnUnderstood;
import swapworth.listing.Listings;

class AlwaysTakenTest {

    @TempDir
    Path folder;

    @Test
    void each_column_that_is_always_taken_is_one_of_listings_by_that_name() throws IOException {
        Path file = folder.resolve("listings.csv");
        Files.writeString(file, String.join(",", PriceModel.ALWAYS_TAKEN) + ",price_usd\n" + ",".repeat(PriceModel.ALWAYS_TAKEN.size())
                + "9800\n");
        assertEquals(PriceModel.ALWAYS_TAKEN, Listings.read(file).columns().stream().map(ColumnUnderstood::meaning)
                .filter(meaning -> !meaning.equals("price")).toList());
    }
}
