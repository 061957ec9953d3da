package swapworth.listing;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A name whose formula has failed is no name: rows that have nothing else in common must not share it. */
class FailedFormulaTest {

    @TempDir
    Path folder;

    private ListingsRead read(String... rows) throws IOException {
        Path file = folder.resolve("listings.csv");
        Files.writeString(file, "seen_on,vehicle,trim,model_year,mileage_mi,price_usd,region,colour,note,id\n"
                + String.join("\n", rows) + "\n");
        return Listings.read(file);
    }

    @Test
    void it_is_not_used_and_the_row_is_kept() throws IOException {
        ListingsRead read = read("2026-05-01,Corvane,#REF!,2009,80000,7000,#NAME?,#VALUE!,#N/A,1",
                "2026-05-01,Corvane,Fitted,2010,81000,7100,Tarn Side,red,fine,2");
        assertEquals(2, read.listings().size());
        CarFacts facts = read.listings().get(0).facts();
        assertEquals(Optional.empty(), facts.trim());
        assertEquals(Optional.empty(), facts.region());
        assertEquals(Map.of(), facts.further());
        assertEquals(List.of("2 trim #REF!", "2 region #NAME?"), read.oddities().stream()
                .filter(p -> p.message().startsWith("a spreadsheet's error stands here") && p.message().endsWith("; not used"))
                .map(p -> p.line() + " " + p.column() + " " + p.rawText()).toList());
    }

    @Test
    void an_id_that_has_failed_joins_nothing() throws IOException {
        ListingsRead read = read("2026-05-01,Corvane,Fitted,2009,80000,7000,Tarn Side,red,fine,#REF!",
                "2026-05-03,Corvane,Fitted,2009,80100,6900,Tarn Side,blue,rusty,#REF!");
        assertEquals(2, read.cars().size());
    }

    @Test
    void a_line_that_has_failed_is_set_aside_as_such() throws IOException {
        ListingsRead read = read("2026-05-01,#REF!,,2009,80000,7000,,,,1",
                "2026-05-01,Corvane,Fitted,2010,81000,7100,Tarn Side,red,fine,2");
        assertEquals(1, read.listings().size());
        assertEquals(List.of("2 vehicle a spreadsheet's error stands here in place of what was meant; mend it there, or leave the cell"
                + " blank"),
                read.setAside().stream().map(p -> p.line() + " " + p.column() + " " + p.message()).toList());
    }
}
