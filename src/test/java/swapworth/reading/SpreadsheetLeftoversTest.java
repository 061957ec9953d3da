package swapworth.reading;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.math.BigDecimal;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What spreadsheets and exports leave in cells and files. */
class SpreadsheetLeftoversTest {

    @TempDir
    Path folder;

    private static CellReader cells() {
        return new CellReader(Conventions.unstated(), ',');
    }

    private NamedRows rows(String text) throws IOException {
        Path file = folder.resolve("ledger.csv");
        Files.writeString(file, text);
        return NamedRows.of(file, FolderSettings.of(folder, Conventions.unstated())).needs("date").needs("amount").needs("note");
    }

    private static RowsRead used(NamedRows rows) {
        rows.rows().forEach(NamedRows.Row::use);
        return rows.read();
    }

    @Test
    void signs_that_nothing_is_known_are_blank_whoever_wrote_them() {
        for (String sign : List.of("-", "--", "---", "TBD", "tbc", "n/a", "N/A", "#N/A", "?", "null", "NULL", "\u2014",
                "\u00a0-\u200b")) {
            assertTrue(cells().number(sign) instanceof Parsed.Blank, sign);
            assertTrue(cells().date(sign) instanceof Parsed.Blank, sign);
            assertTrue(Spelling.isBlank(Spelling.stripped(sign)), sign);
        }
        for (String word : List.of("-5", "none", "no", "Nantwell", "unsold", "#3", "T")) {
            assertTrue(!Spelling.isBlank(word), word);
        }
    }

    @Test
    void an_error_of_a_spreadsheet_is_called_one() {
        for (String error : List.of("#REF!", "#VALUE!", "#DIV/0!", "#NAME?", "#num!", "####")) {
            Parsed.Refused<BigDecimal> number = (Parsed.Refused<BigDecimal>) cells().number(error);
            assertEquals("a spreadsheet's error stands here in place of the value; mend it there, or leave the cell blank",
                    number.message(), error);
            assertTrue(cells().date(error).toString().contains("a spreadsheet's error"), error);
            assertTrue(cells().distance(error).toString().contains("a spreadsheet's error"), error);
            assertTrue(cells().money(error, Optional.empty()).toString().contains("a spreadsheet's error"), error);
        }
    }

    @Test
    void a_formula_is_called_one_and_not_two_numbers() {
        for (String formula : List.of("=A1+B2", "=SUM(F2:F33)")) {
            assertTrue(cells().number(formula).toString().contains("a formula stands here in place of its value"), formula);
            assertTrue(cells().date(formula).toString().contains("a formula stands here"), formula);
        }
    }

    @Test
    void a_row_that_begins_with_an_error_is_no_remark_and_is_not_lost() throws IOException {
        RowsRead read = used(rows("date,amount,note\n2026-05-01,10,a\n#REF!,20,b\n#N/A,30,c\n"));
        assertEquals("ledger.csv, 3 rows: 1 used, 0 set aside, 2 rejected, 0 blank", read.sentence());
        assertEquals("the row begins with a spreadsheet's error, #REF!: mend it there, or leave the cell blank",
                read.rejected().get(0).message());
        assertEquals("#REF!,20,b", read.rejected().get(0).rawText());
        assertEquals(List.of(3, 4), read.rejected().stream().map(RowProblem::line).toList());
    }

    @Test
    void a_remark_with_as_many_cells_as_a_row_is_asked_about_once() throws IOException {
        RowsRead read = used(rows("# my money, all of it, since May\ndate,amount,note\n2026-05-01,10,a\n#2,20,b\n#3,30,c\n# sold now\n"));
        assertEquals("ledger.csv, 1 row: 1 used, 0 set aside, 0 rejected, 0 blank", read.sentence());
        assertEquals(List.of("4 this line begins with # and is taken for a remark, though it has as many cells as a row, and so do 1 more:"
                + " if it is a row, put its first cell in quotes"),
                read.oddities().stream().map(p -> p.line() + " " + p.message()).toList());
        assertEquals(2, used(rows("date,amount,note\n2026-05-01,10,a\n\"#2\",20,b\n# sold now\n#####\n")).used());
        assertEquals(0, rows("date,amount,note\n#####\n").read().rejected().size());
    }

    @Test
    void of_one_export_behind_another_each_row_counts_once() throws IOException {
        String export = "date,amount,note\n2026-05-01,10,train\n2026-05-01,10,train\n2026-05-02,20,plates\n";
        NamedRows rows = rows(export + export + "2026-06-01,30,paint\n");
        RowsRead read = used(rows);
        assertEquals("ledger.csv, 8 rows: 4 used, 3 set aside, 1 rejected, 0 blank", read.sentence());
        assertTrue(read.rejected().get(0).losesNothing() && read.setAside().get(0).losesNothing());
        assertEquals("line 4 says the same, above the header that stands again on line 5: one export put behind another, of which each row"
                + " is counted once", read.setAside().get(2).message());
        // Without the second header two rows that are alike may be two payments.
        assertEquals(4, used(rows(export + "2026-05-02,20,plates\n")).used());
    }

    @Test
    void utf_16_without_its_mark_is_told_as_such() throws IOException {
        for (var charset : List.of(StandardCharsets.UTF_16LE, StandardCharsets.UTF_16BE)) {
            Path file = folder.resolve("bare.csv");
            Files.write(file, "vehicle,price\nA,1\n".getBytes(charset));
            assertTrue(assertThrows(UnusableFileException.class, () -> CsvSource.read(file)).getMessage().contains("written in UTF-16"));
        }
    }

    @Test
    void strokes_between_cells_are_named() {
        CsvSource source = CsvSource.of("mine.csv", "vehicle|price\nA|1\n");
        assertTrue(assertThrows(UnusableFileException.class, () -> source.neededColumns("vehicle", "price")).getMessage()
                .endsWith("with a comma, a semicolon or a tab between them, and not '|'"));
    }

    @Test
    void a_first_row_in_place_of_the_header_is_told_by_its_day_or_amount() {
        for (String row : List.of("2026-08-03,\"10200.00\",tidy roadster", "paint,10.200,x", "*,mileage unit,mi")) {
            CsvSource source = CsvSource.of("mine.csv", row + "\n");
            assertTrue(assertThrows(UnusableFileException.class, () -> source.neededColumns("date", "amount")).getMessage()
                    .endsWith("is no name. If it is a row already, write the header above it"), row);
        }
    }

    @Test
    void a_rate_that_is_refused_is_told_why() throws IOException {
        Files.writeString(folder.resolve("rates.csv"), "date,from,to,rate\n2026-10-01,EUR,USD,10.921\n01/02/2026,EUR,USD,1.09\n");
        List<String> told = FolderSettings.of(folder, Conventions.unstated()).problems().stream().map(RowProblem::message).toList();
        assertTrue(told.get(0).contains("; rate: this can be 10921 or 10.921 by the country of the writer"), told.get(0));
        assertTrue(told.get(1).contains("; date: the day or the month can come first in this date"), told.get(1));
    }

    @Test
    void rows_of_sums_are_known_by_their_words_with_year_and_currency() {
        for (String sum : List.of("Total (USD)", "TOTAL:", "Total 2026", "total paid", "Sum [EUR]:", "Grand total", "Summe EUR")) {
            assertTrue(Spelling.isTotal(sum), sum);
        }
        for (String thing : List.of("total loss assessment", "Sumvale", "Total seal kit", "Sum 41")) {
            assertTrue(!Spelling.isTotal(thing), thing);
        }
    }
}
