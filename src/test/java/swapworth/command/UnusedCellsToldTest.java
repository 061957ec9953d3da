package swapworth.command;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import swapworth.CommandRun;
import swapworth.InOneLine;

class UnusedCellsToldTest {

    @TempDir
    Path folder;

    private String told(int code, String step) {
        CommandRun ran = CommandRun.of(step, folder.toString());
        assertEquals(code, ran.code(), ran.err());
        return InOneLine.of(code == Exit.DONE ? ran.out() : ran.err());
    }

    private void listings(String outcome, String first) throws IOException {
        StringBuilder rows = new StringBuilder("vehicle,seen_on,model_year,mileage_mi,price_usd,outcome,ended_on\n" + first);
        for (int i = 0; i < 9; i++) {
            rows.append("Sivrette,2026-0").append(1 + i % 6).append("-05,").append(2010 + i).append(',').append(60_000 + 3_000 * i)
                    .append(',').append(8_000 + 350 * i).append(outcome).append('\n');
        }
        Files.writeString(folder.resolve("listings.csv"), rows);
    }

    @Test
    void cells_of_listings_that_are_not_used_are_told_by_every_step() throws IOException {
        listings(",sold,last week", "");
        String told = told(Exit.DONE, "judge");
        assertTrue(told.contains("to look at: listings.csv:2 ended_on 'last week': this is no date; write it as"
                + " year-month-day, for instance 2024-04-03; not used"
                + " to look at: 8 more cells that are not used; the page and 'check' list them"), told);
    }

    @Test
    void nothing_is_said_where_nothing_is_odd() throws IOException {
        listings(",sold,2026-07-01", "");
        String told = told(Exit.DONE, "judge");
        assertFalse(told.contains("not used"), told);
    }

    @Test
    void a_line_whose_name_is_an_error_of_a_spreadsheet_is_none() throws IOException {
        listings(",,", "#REF!,2026-01-05,2014,70000,9000,,\nVelmarch,2026-01-05,2014,70000,#VALUE!,,\n");
        String told = told(Exit.DONE, "judge");
        assertTrue(told.contains("11 rows: 9 used, 0 set aside, 2 rejected"), told);
        assertTrue(told.contains("listings.csv:2 '#REF!,2026-01-05"), told);
        assertTrue(told.contains("listings.csv:3 price_usd '#VALUE!': a spreadsheet's error stands here"), told);
    }

    @Test
    void where_no_listing_is_usable_lines_of_which_there_is_none_are_no_reason() throws IOException {
        listings(",,", "");
        Files.writeString(folder.resolve("listings.csv"), Files.readString(folder.resolve("listings.csv")).replace("2026-0", "26-0"));
        Files.writeString(folder.resolve("lines.csv"), "vehicle,power_kw\nSivrette,112\n");
        String told = told(Exit.NOTHING_USABLE, "judge");
        assertTrue(told.contains("listings.csv:2 seen_on '26-01-05': a year of two digits"), told);
        assertFalse(told.contains("lines.csv"), told);
    }

    @Test
    void rejected_rows_of_swaps_are_called_so() throws IOException {
        listings(",,", "");
        Files.writeString(folder.resolve("cars.csv"), "name,role,vehicle,model_year,mileage_mi\nmine,finished,Sivrette,2014,80000\n");
        Files.writeString(folder.resolve("swaps.csv"),
                "vehicle,model_year,mileage_mi,price_usd,price_kind\nSivrette,2014,70000,oh,asking\n");
        String told = told(Exit.DONE, "swap");
        assertTrue(told.contains("rejected: swaps.csv:2 price_usd 'oh': this is no amount of money"), told);
    }
}
