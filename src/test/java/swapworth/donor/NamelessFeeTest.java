package swapworth.donor;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import swapworth.assumptions.Assumptions;
import swapworth.reading.Conventions;
import swapworth.reading.Currencies;
import swapworth.reading.FolderSettings;
import swapworth.reading.RowProblem;

class NamelessFeeTest {

    @TempDir
    Path folder;

    private FeesFile read(String rows) throws IOException {
        Path file = folder.resolve("fees.csv");
        Files.writeString(file, "table,kind,flat\n" + rows);
        return new FeesFile(file, FolderSettings.of(folder, Conventions.unstated()), Currencies.USUAL);
    }

    @Test
    void a_row_without_a_name_is_missing_as_one() throws IOException {
        assertEquals(List.of("a line without a name is missing: fees.csv:3 cannot be used"),
                read("gate,fee,75\n,,2000\n").broken().stream().map(FeesFile.Broken::reason).toList());
    }

    @Test
    void a_row_that_stands_twice_is_told_in_whole_words() throws IOException {
        assertEquals("the line 'gate' is missing: a row has no end, and another row follows it: they overlap",
                read("gate,fee,75\ngate,fee,75\n").read().rejected().get(0).message());
    }

    @Test
    void a_unit_of_an_assumption_may_stand_in_any_case() throws IOException {
        Path file = folder.resolve("assumptions.csv");
        Files.writeString(file, "name,middle,unit\nhorizon_months,14,MONTHS\nchance_present,-5000,%  of parts\n");
        Assumptions read = Assumptions.defaults().with(file);
        assertEquals(14, read.get("horizon_months").middle());
        assertEquals(List.of("chance_present: the middle must lie between 0 and 100 % of parts, not at -5000"),
                read.problems().stream().map(RowProblem::message).toList());
    }
}
