package swapworth.project;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What a slip of the decimal point makes of a sum: common practice, no source. */
class AbsurdAmountTest {
    private static final String HEADER = "date,note,category,amount,status,due,low,likely,high\n";

    @TempDir
    Path folder;

    private List<String> questions(String... rows) throws IOException {
        Path file = folder.resolve("ledger.csv");
        Files.writeString(file, HEADER + String.join("\n", rows) + "\n");
        return Ledger.withDefaults().read(file).read().questions().stream().map(p -> p.line() + " " + p.column() + " " + p.message())
                .toList();
    }

    private List<String> with(String car, String hoses) throws IOException {
        return questions("2026-03-01,the car," + car + ",,,,,", "2026-03-02,title,paper,210.00,,,,,",
                "2026-03-03,trailer,freight,300.00,,,,,", "2026-03-04,fluids,consumable,90.00,,,,,",
                "2026-03-05,hoses,part," + hoses + ",,,,,");
    }

    @Test
    void a_row_that_is_more_than_all_others_together_is_asked_about() throws IOException {
        assertEquals(List.of("6 amount this is more than all other 4 rows that go out together, 5600: is a decimal point or a digit wrong?"
                + " It is counted as it stands"), with("purchase,5000.00", "8640"));
        assertEquals(List.of(), with("purchase,5000.00", "864.00"));
        assertEquals(List.of(), with("purchase,5000.00", "5600"), "as much as all others is not more");
    }

    @Test
    void the_purchase_of_a_car_may_be_more_than_all_else() throws IOException {
        assertEquals(List.of(), with("purchase,50000.00", "86.40"));
    }

    @Test
    void a_row_that_does_not_say_what_it_is_for_may_be_the_car() throws IOException {
        List<String> asked = with(",5000.00", "86.40");
        assertEquals(1, asked.size());
        assertTrue(asked.get(0).startsWith("2 direction neither category nor direction"), asked.get(0));
    }

    @Test
    void in_a_ledger_just_begun_no_row_is_large() throws IOException {
        assertEquals(List.of(), questions("2026-03-01,title,paper,21.00,,,,,", "2026-03-02,engine opened,labour,1150.00,,,,,"));
    }

    @Test
    void an_end_of_an_estimate_ten_times_the_likely_amount_is_asked_about() throws IOException {
        assertEquals(List.of("2 high the high end is more than ten times the likely amount: is a digit too many? It is counted as it"
                + " stands"), questions("2026-03-01,mounts,labour,,estimate,2026-09-01,1400,1900,31000"));
        assertEquals(List.of(), questions("2026-03-01,mounts,labour,,estimate,2026-09-01,1400,1900,19000"));
        assertEquals(List.of(), questions("2026-03-01,perhaps a fine,paper,,estimate,2026-09-01,0,0,900"), "what may not come at all");
    }
}
