package swapworth.project;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.math.BigDecimal;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import swapworth.table.Cell;
import swapworth.table.Table;

/** A row that is done may keep what was expected of it. */
class PlanAgainstActualTest {
    @TempDir
    Path folder;

    private Ledger read(String... rows) throws IOException {
        Path file = folder.resolve("ledger.csv");
        Files.writeString(file, "date,amount,note,category,direction,status,low,likely,high,gross,fee\n" + String.join("\n", rows) + "\n");
        return Ledger.withDefaults().read(file);
    }

    private static Table table(Ledger ledger) {
        return new PlanAgainstActual(ledger).table();
    }

    private static List<List<String>> shown(Table table) {
        return table.rows().stream().map(row -> row.stream().map(Cell::shown).toList()).toList();
    }

    // By hand: labour 1,150 + 400 for 850 + 500, less 100 that came back where 50 was expected; seats 900 less 90 for 700.
    @Test
    void each_category_is_held_against_its_plan_and_what_goes_out_in_all() throws IOException {
        Ledger ledger = read("2026-03-01,1150,engine opened,labour,,actual,600,850,1100,,", "2026-03-02,400,welding,labour,,paid,,500,,,",
                "2026-03-03,100,too much taken,labour,in,actual,,50,,,", "2026-03-04,,seats,part sold,,actual,600,700,950,900,90",
                "2026-03-05,80,pump,part,,,,,,,", "2026-03-06,,paint,labour,,estimate,200,300,400,,");
        Table table = table(ledger);
        assertEquals(List.of(List.of("labour", "3", "1,300.00", "1,450.00", "150.00", "+12", "0 of 1"),
                List.of("part sold", "1", "700.00", "810.00", "110.00", "+16", "1 of 1"),
                List.of("all but parts sold", "3", "1,300.00", "1,450.00", "150.00", "+12", "0 of 1")), shown(table));
        assertTrue(table.text().contains("4 of 5 rows that are done still say what was expected"), table.text());
        assertEquals(new BigDecimal("720.00"), ledger.sums().total().net(), "1,150 + 400 - 100 - 810 + 80: sums are of what was paid");
        assertEquals(List.of(), ledger.read().questions());
        assertTrue(ledger.sums().tables().stream().anyMatch(t -> t.title().startsWith("Plan against actual")));
    }

    @Test
    void what_came_to_more_than_the_high_end_stays_in_the_ledger() throws IOException {
        Ledger ledger = read("2026-03-01,2000,engine opened,labour,,actual,600,850,1100,,");
        assertEquals(0, ledger.read().rejected().size());
        assertEquals(new BigDecimal("2000.00"), ledger.sums().total().paid());
        assertEquals(List.of("labour", "1", "850.00", "2,000.00", "1,150.00", "+135", "0 of 1"), shown(table(ledger)).get(0));
    }

    @Test
    void ends_of_a_plan_that_stand_in_no_order_are_asked_about() throws IOException {
        Ledger ledger = read("2026-03-01,900,engine opened,labour,,actual,1100,850,600,,");
        assertEquals(List.of("labour", "1", "850.00", "900.00", "50.00", "+6", "no ends stated"), shown(table(ledger)).get(0));
        assertTrue(ledger.read().questions().get(0).message().contains("does not stand in order, low, likely, high: 1100, 850, 600"),
                ledger.read().questions().toString());
    }

    @Test
    void an_amount_below_zero_takes_its_plan_with_it() throws IOException {
        Ledger ledger = read("2026-03-01,900,wiring,labour,,actual,,800,,,", "2026-03-02,-100,came back,labour,,actual,-150,-120,-80,,");
        assertEquals(List.of("labour", "2", "680.00", "800.00", "120.00", "+18", "1 of 1"), shown(table(ledger)).get(0));
    }

    @Test
    void without_plans_there_is_no_such_table() throws IOException {
        Ledger ledger = read("2026-03-01,900,wiring,labour,,actual,,,,,", "2026-03-06,,paint,labour,,estimate,200,300,400,,");
        assertEquals(List.of(), table(ledger).rows());
        assertTrue(ledger.sums().tables().stream().noneMatch(t -> t.title().startsWith("Plan against actual")));
    }
}
