package swapworth.project;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class UnusableRowsTest {

    @Test
    void a_ledger_without_a_usable_row_is_accounted_for_and_not_passed_over(@TempDir Path folder) throws IOException {
        Files.writeString(folder.resolve("ledger.csv"), "date,amount,note\n2026-99-01,20.00,paint\n");
        Undertaking undertaking = Undertaking.of(folder);
        assertTrue(undertaking.ledger().isEmpty());
        assertEquals(1, undertaking.read().get(0).rejected().size());
        assertTrue(undertaking.missing().contains("Usable rows: ledger.csv, 1 row: 0 used, 0 set aside, 1 rejected, 0 blank."),
                undertaking.missing().toString());
    }

    /** What a spreadsheet writes below the payments, in whichever column; the sum is that of the two payments. */
    @Test
    void a_row_that_sums_up_the_payments_is_none_of_them(@TempDir Path folder) throws IOException {
        Files.writeString(folder.resolve("ledger.csv"), String.join("\n", "date,amount,note,item,category,car",
                "2026-01-12,12000,front hit,,purchase,donor", "2026-02-12,530.29,total loss assessment,,paper,donor",
                "2026-10-12,12530.29,Total,,,", "2026-10-12,12530.29,,Sum of all,,", "2026-10-12,12530.29,,,Gesamt,",
                "2026-10-12,12530.29,,,,Total:", "Total,12530.29,,,,", ",12530.29,Total,,,", "2026-02-13,40,sum insured,,insurance,donor"));
        Ledger ledger = Ledger.read(folder.resolve("ledger.csv"));
        assertEquals("ledger.csv, 9 rows: 3 used, 6 set aside, 0 rejected, 0 blank", ledger.read().sentence());
        assertEquals("12570.29", ledger.sums().total().net().toPlainString());
        assertEquals("2026-02-13", ledger.on().toString(), "the day of a total is no day of the ledger");
        assertTrue(ledger.read().setAside().stream().allMatch(p -> p.message().contains("a row that sums up the others")));
    }

    @Test
    void a_total_is_no_alternative_and_takes_nothing_from_one(@TempDir Path folder) throws IOException {
        Files.writeString(folder.resolve("alternatives.csv"), String.join("\n", "alternative,item,amount,kind",
                "build,parts,5000,cost", "build,Total,5000,cost", "Total,,5000,cost"));
        Alternatives all = Alternatives.read(folder.resolve("alternatives.csv"));
        assertEquals(1, all.all().size());
        assertEquals(2, all.rowsRead().setAside().size());
        assertTrue(all.tables().stream().noneMatch(table -> table.text().contains("nobody can tell to which")));
    }
}
