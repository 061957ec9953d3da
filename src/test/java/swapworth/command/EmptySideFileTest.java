package swapworth.command;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** A file of 0 bytes, or of blank lines alone, beside the listings says nothing: that is told, and the rest is done. */
class EmptySideFileTest {
    private static final String EMPTY = "the file is empty; needed: a header line and at least one row";

    @TempDir
    Path folder;

    private final ByteArrayOutputStream out = new ByteArrayOutputStream();
    private final ByteArrayOutputStream err = new ByteArrayOutputStream();

    private int run(String... words) {
        return Main.run(new PrintStream(out, true, StandardCharsets.UTF_8), new PrintStream(err, true, StandardCharsets.UTF_8), words);
    }

    private String told() {
        return out.toString(StandardCharsets.UTF_8).replaceAll("\\s+", " ");
    }

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
            out.reset();
            Files.writeString(folder.resolve(file), nothing);
            Path page = folder.resolve("page.html");
            Files.deleteIfExists(page);
            assertEquals(Exit.DONE, run(folder.toString(), "--page", page.toString()), () -> err.toString(StandardCharsets.UTF_8));
            assertTrue(told().contains(file + ": " + EMPTY), told());
            assertTrue(Files.readString(page).contains("Fair value"));
        }
    }

    @Test
    void a_step_that_needs_the_file_says_why_it_has_nothing() throws IOException {
        smallFolder();
        Files.writeString(folder.resolve("ledger.csv"), "");
        assertEquals(Exit.NOTHING_USABLE, run("project", folder.toString()));
        assertTrue(err.toString(StandardCharsets.UTF_8).contains("ledger.csv: " + EMPTY), err.toString(StandardCharsets.UTF_8));
    }
}
