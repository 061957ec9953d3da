package swapworth.reading;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.math.BigDecimal;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.Currency;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import swapworth.money.Conversion;
import swapworth.money.Money;

class FolderFilesTest {

    @TempDir
    Path folder;

    private Path file(String text) throws IOException {
        return Files.writeString(folder.resolve("file.csv"), text);
    }

    @Test
    void words_state_conventions_and_spellings() throws IOException {
        Words words = Words.read(file("column,word,means\n*,decimal mark,comma\n*,Date order,day first\n*,mileage unit,KM\n"
                + "*,currency,EUR\nruns,blown,engine dead\nPrice_Kind,Hammer,sold\n"));
        assertEquals(new Conventions(Optional.of(DecimalMark.COMMA), Optional.of(DateOrder.DAY_FIRST), Optional.of("km"),
                Optional.of(Currency.getInstance("EUR"))), words.conventions());
        assertEquals(Optional.of("engine dead"), words.meaning("runs", "BLOWN"));
        assertEquals(Optional.of("sold"), words.meaning("price_kind", "hammer"));
        assertEquals(Optional.empty(), words.meaning("title", "blown"));
        assertTrue(words.speakOf("price kind"));
        assertEquals(List.of(), words.problems());
    }

    @Test
    void a_convention_that_is_none_is_reported() throws IOException {
        Words words = Words.read(file("column,word,means\n*,decimal mark,semicolon\n*,colour,red\n,x,y\n"));
        assertEquals(List.of(2, 3, 4), words.problems().stream().map(RowProblem::line).toList());
        assertEquals(Conventions.unstated(), words.conventions());
    }

    @Test
    void rates_are_read_and_bad_rows_reported() throws IOException {
        RatesFile read = RatesFile.read(file("date,from,to,rate\n"
                + "2024-01-01,EUR,USD,1.1\nsoon,EUR,USD,1.2\n2024-01-01,EUR,USD,0\n"),
                Conventions.unstated());
        assertEquals(List.of(3, 4), read.problems().stream().map(RowProblem::line).toList());
        Conversion.Converted converted = assertInstanceOf(Conversion.Converted.class,
                read.rates().convert(Money.of("100", "EUR"), Currency.getInstance("USD"), LocalDate.of(2024, 2, 1)));
        assertEquals(0, new BigDecimal("110").compareTo(converted.amount()));
    }

    @Test
    void writing_replaces_a_file_and_leaves_nothing_beside_it() throws IOException {
        Path target = folder.resolve("new/page.html");
        OutputFile.write(target, "first \u00e9");
        OutputFile.write(target, "second");
        assertEquals("second", Files.readString(target));
        try (var files = Files.list(target.getParent())) {
            assertEquals(1, files.count());
        }
    }

    @Test
    void writing_over_a_folder_fails_and_leaves_nothing_beside_it() throws IOException {
        Files.createDirectories(folder.resolve("out"));
        assertThrows(IOException.class, () -> OutputFile.write(folder.resolve("out"), "text"));
        try (var files = Files.list(folder)) {
            assertEquals(1, files.count());
        }
    }

    @Test
    void the_nearest_name_is_found_only_if_it_is_near() {
        assertEquals(Optional.of("mileage_slope"), Spelling.nearest("milage_slope", List.of("age_slope", "mileage_slope")));
        assertEquals(Optional.empty(), Spelling.nearest("colour", List.of("age_slope", "mileage_slope")));
    }

    @Test
    void raw_text_is_shortened_and_loses_its_control_characters() {
        assertEquals("a b\u2026", Spelling.shortened("a\u001bbcdef", 4));
        assertEquals("ab", Spelling.shortened("ab", 4));
    }
}
