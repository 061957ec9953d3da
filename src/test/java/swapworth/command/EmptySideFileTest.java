package swapworth.command;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import swapworth.CommandRun;
import swapworth.InOneLine;

/** A file of 0 bytes, or of blank lines alone, beside the listings says nothing: that is told, and the rest is done. */
class EmptySideFileTest {
    private static final String EMPTY = "the file is empty; needed: a header line and at least one row";

    @TempDir
    Path folder;

    private void smallFolder() throws IOException {
        StringBuilder rows = new StringBuilder("vehicle,model_year,mileage_mi,price_usd\n");
        for (int i = 0; i < 12; i++) {
            rows.append("Sivrette,").append(2010 + i % 8).append(',').append(60_000 + 3_000 * i).append(',').append(9_000 + 350 * (i % 8))
                    .append('\n');
        }
        Files.writeString(folder.resolve("listings.csv"), rows);
        Files.writeString(folder.resolve("cars.csv"), "name,role,vehicle,model_year,mileage_mi,price_usd\n"
                + "tidy,candidate,Sivrette,2014,70000,9900\nmine,finished,Sivrette,2014,80000,\n");
        Files.writeString(folder.resolve("ledger.csv"), "date,amount,note\n2026-05-01,100,plates\n");
    }

    @ParameterizedTest
    @ValueSource(strings = {"cars.csv", "fees.csv", "parts.csv", "partout.csv", "swaps.csv", "ledger.csv", "alternatives.csv", "gates.csv",
        "words.csv", "rates.csv", "lines.csv", "assumptions.csv"})
    void the_rest_of_the_folder_is_done(String file) throws IOException {
        smallFolder();
        if (file.equals("parts.csv")) {
            Files.writeString(folder.resolve("partout.csv"), "car,part\ntidy,engine\n");
        }
        for (String nothing : List.of("", "\n\n \n")) {
            Files.writeString(folder.resolve(file), nothing);
            Path page = folder.resolve("page.html");
            Files.deleteIfExists(page);
            CommandRun ran = CommandRun.of(folder.toString(), "--page", page.toString());
            assertEquals(Exit.DONE, ran.code(), ran.err());
            assertTrue(InOneLine.of(ran.out()).contains(file + ": " + EMPTY), ran.out());
            assertTrue(Files.readString(page).contains("Fair value"));
        }
    }

    @Test
    void a_step_that_needs_the_file_says_why_it_has_nothing() throws IOException {
        smallFolder();
        Files.writeString(folder.resolve("ledger.csv"), "");
        CommandRun ran = CommandRun.of("project", folder.toString());
        assertEquals(Exit.NOTHING_USABLE, ran.code());
        assertTrue(ran.err().contains("ledger.csv: " + EMPTY), ran.err());
    }
}
