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
}
