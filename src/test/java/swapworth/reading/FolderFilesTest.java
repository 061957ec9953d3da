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
        assertEquals(new Conventions(Optional.of(DecimalMark.COMMA), Optional.of(DateOrder.DAY_FIRST), Optional.of(DistanceUnit.KM),
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
    void words_say_what_a_header_means_in_every_file_of_the_folder() throws IOException {
        Files.writeString(folder.resolve("words.csv"),
                "column,word,means\nheader,Teil,part\nheader,gesehen am,day\nheader,Preis,price_eur\n"
                + "Header,Tag,date\nheader,von,from\nheader,nach,to\nheader,Kurs,rate\n");
        Files.writeString(folder.resolve("rates.csv"), "Tag,Von,Nach,Kurs\n2024-01-01,EUR,USD,1.1\n");
        FolderSettings settings = FolderSettings.of(folder, Conventions.unstated());
        assertEquals(List.of(), settings.problems());
        NamedRows rows = NamedRows.of(file("TEIL,Gesehen_am,Preis,Farbe\nlamp,2024-01-02,20,blue\n"), settings).needs("part").needs("day")
                .column("price");
        NamedRows.Row row = rows.rows().get(0);
        assertEquals("lamp", row.text("part"));
        assertEquals(Optional.of(LocalDate.of(2024, 1, 2)), row.date("day"));
        assertEquals(Money.of("20", "EUR"), row.money("price", "").orElseThrow());
        assertTrue(row.use());
        assertEquals(List.of("Farbe"), rows.read().oddities().stream().map(RowProblem::column).toList());
        assertInstanceOf(Conversion.Converted.class,
                settings.rates().convert(Money.of("100", "EUR"), Currency.getInstance("USD"), LocalDate.of(2024, 2, 1)));
    }

    @Test
    void a_row_of_a_header_that_does_not_say_what_it_means_is_reported() throws IOException {
        Words words = Words.read(file("column,word,means\nheader,Teil,\nheader,,part\n"));
        assertEquals(List.of(2, 3), words.problems().stream().map(RowProblem::line).toList());
        assertTrue(words.problems().get(0).message().contains("the header as it stands in your files"), words.problems().toString());
    }

    @Test
    void the_columns_that_words_and_rates_lack_are_all_named_at_once() throws IOException {
        String rates = assertThrows(UnusableFileException.class, () -> RatesFile.read(file("day,from,rate\n2024-01-01,EUR,1.1\n"),
                Conventions.unstated(), Words.none())).getMessage();
        assertTrue(rates.contains("the column 'date' and the column 'to' are missing; found the columns day, from, rate"), rates);
        assertTrue(rates.contains("header,your own header,date"), rates);
        String words = assertThrows(UnusableFileException.class, () -> Words.read(file("Spalte,Wort,meaning\nruns,x,y\n"))).getMessage();
        assertTrue(words.endsWith("the column 'column' and the column 'word' are missing; found the columns Spalte, Wort, meaning"), words);
    }

    @Test
    void two_rates_of_one_day_that_differ_are_asked_about() throws IOException {
        RatesFile read = RatesFile.read(file("date,from,to,rate\n2024-01-01,EUR,USD,1.08\n"
                + "2024-01-02,EUR,USD,1.99\n2024-01-01,EUR,USD,1.08\n"
                + "2024-01-01,EUR,USD,1.99\n"), Conventions.unstated(), Words.none());
        assertEquals(1, read.problems().size());
        assertEquals(5, read.problems().get(0).line());
        assertTrue(read.problems().get(0).message().startsWith("a row above states 1.08 for the same day"),
                read.problems().get(0).message());
    }

    @Test
    void rates_are_read_and_bad_rows_reported() throws IOException {
        RatesFile read = RatesFile.read(file("date,from,to,rate\n"
                + "2024-01-01,EUR,USD,1.1\nsoon,EUR,USD,1.2\n2024-01-01,EUR,USD,0\n"),
                Conventions.unstated(), Words.none());
        assertEquals(List.of(3, 4), read.problems().stream().map(RowProblem::line).toList());
        Conversion.Converted converted = assertInstanceOf(Conversion.Converted.class,
                read.rates().convert(Money.of("100", "EUR"), Currency.getInstance("USD"), LocalDate.of(2024, 2, 1)));
        assertEquals(0, new BigDecimal("110").compareTo(converted.amount()));
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
