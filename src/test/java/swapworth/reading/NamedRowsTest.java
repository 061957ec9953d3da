package swapworth.reading;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
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
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import swapworth.money.Money;

class NamedRowsTest {

    private enum Side { LEFT, RIGHT }

    private static final Vocabulary<Side> SIDES = Vocabulary.<Side>empty().with(Side.LEFT, "left").with(Side.RIGHT, "right");

    @TempDir
    Path folder;

    private NamedRows rows(String text) throws IOException {
        Path file = folder.resolve("parts.csv");
        Files.writeString(file, text);
        return NamedRows.of(file, FolderSettings.of(folder, Conventions.unstated()));
    }

    @Test
    void cells_are_read_by_name_synonym_and_unit_of_the_header() throws IOException {
        NamedRows file = rows("Item,price_eur,haul (km),Day,side,chance\nlamp,\"1,250.50\",100,2026-03-04,Left,35 %\n")
                .needs("part", "item").column("price").column("haul").column("day").column("side").column("chance");
        NamedRows.Row row = file.rows().get(0);
        assertEquals("lamp", row.text("part"));
        assertEquals(Optional.of(Money.of("1250.50", "EUR")), row.money("price", ""));
        // 100 km / 1.609344 km per mile, by hand.
        assertEquals(62.137119, row.miles("haul").orElseThrow(), 1e-6);
        assertEquals(Optional.of(LocalDate.of(2026, 3, 4)), row.date("day"));
        assertEquals(Optional.of(Side.LEFT), row.word("side", SIDES));
        assertEquals(OptionalDouble.of(35), row.number("chance", 0, 100));
        assertTrue(row.use());
        assertEquals("parts.csv, 1 row: 1 used, 0 set aside, 0 rejected, 0 blank", file.read().sentence());
        assertTrue(file.read().problems().isEmpty());
    }

    @Test
    void distances_of_which_nothing_says_the_unit_are_taken_for_miles_and_asked_about_once() throws IOException {
        String asked = "nothing states the unit of the distances: they are taken for miles. State it in words.csv: *,mileage unit,km"
                + " (or mi)";
        for (String[] file : new String[][] {{"haul", "100", asked}, {"haul", "100 km", ""}, {"haul (km)", "100", ""}, {"haul", "", ""}}) {
            NamedRows rows = rows("part," + file[0] + "\nlamp," + file[1] + "\ndoor," + file[1] + "\n").needs("part").column("haul");
            for (NamedRows.Row row : rows.rows()) {
                row.miles("haul");
                row.use();
            }
            assertEquals(file[2].isEmpty() ? List.of() : List.of("haul " + file[2]), rows.read().questions().stream()
                    .map(p -> p.column() + " " + p.message()).toList(), file[0] + file[1]);
        }
        Files.writeString(folder.resolve("words.csv"), "column,word,means\n*,mileage unit,km\n");
        NamedRows km = rows("part,haul\nlamp,100\n").needs("part").column("haul");
        assertEquals(62.137119, km.rows().get(0).miles("haul").orElseThrow(), 1e-6);
        assertEquals(List.of(), km.read().questions());
    }

    @Test
    void a_unit_in_a_header_is_told_from_its_name_by_any_bracket_or_stroke() throws IOException {
        for (String header : List.of("haul (km),price (EUR)", "haul [km],price [EUR]", "haul/km,price/EUR", "haul: km,price: EUR")) {
            NamedRows.Row row = rows(header + "\n100,7\n").needs("haul").needs("price").rows().get(0);
            assertEquals(62.137119, row.miles("haul").orElseThrow(), 1e-6, header);
            assertEquals(Optional.of(Money.of("7", "EUR")), row.money("price", ""), header);
        }
    }

    @Test
    void every_row_is_accounted_for_with_its_reason() throws IOException {
        NamedRows file = rows("part,chance,extra\nlamp,35,\ndoor,135,\nseat,many,\n\nhood,,\n").needs("part").column("chance");
        for (NamedRows.Row row : file.rows()) {
            row.number("chance", 0, 100);
            if (row.text("part").equals("hood")) {
                row.setAside("part", "no such part");
            }
            row.use();
        }
        RowsRead read = file.read();
        assertEquals(1, read.used());
        assertEquals(List.of(3, 4), read.rejected().stream().map(RowProblem::line).toList());
        assertEquals("this must lie between 0 and 100", read.rejected().get(0).message());
        assertEquals("no such part", read.setAside().get(0).message());
        assertEquals(List.of("extra"), read.oddities().stream().map(RowProblem::column).toList());
    }

    @Test
    void a_word_that_is_not_understood_is_listed_once_and_words_csv_gives_it_a_meaning() throws IOException {
        NamedRows unknown = rows("part,side\nlamp,port\ndoor,port\n").needs("part").column("side");
        for (NamedRows.Row row : unknown.rows()) {
            assertTrue(row.word("side", SIDES).isEmpty());
            assertTrue(row.use());
        }
        assertEquals(1, unknown.read().oddities().size());
        Files.writeString(folder.resolve("words.csv"), "column,word,means\nside,port,left\n");
        NamedRows known = rows("part,side\nlamp,port\n").needs("part").column("side");
        assertEquals(Optional.of(Side.LEFT), known.rows().get(0).word("side", SIDES));
    }

    @Test
    void words_csv_says_what_yes_and_no_are() throws IOException {
        Files.writeString(folder.resolve("words.csv"), "column,word,means\nrule met,ja,yes\nrule met,nein,no\nrule met,offen,unknown\n");
        NamedRows file = rows("part,rule_met\nlamp,ja\ndoor,Nein\nseat,offen\nhood,maybe\n").needs("part").column("rule_met");
        List<Optional<Boolean>> said = new java.util.ArrayList<>();
        for (NamedRows.Row row : file.rows()) {
            said.add(row.yesOrNo("rule_met"));
            row.use();
        }
        assertEquals(List.of(Optional.of(true), Optional.of(false), Optional.empty(), Optional.empty()), said);
        assertEquals(List.of("maybe"), file.read().problems().stream().map(RowProblem::rawText).toList());
    }

    @Test
    void a_word_that_words_csv_takes_for_unknown_is_a_blank() throws IOException {
        Files.writeString(folder.resolve("words.csv"), "column,word,means\nside,offen,unknown\nside,keine,n/a\n");
        NamedRows file = rows("part,side\nlamp,offen\ndoor,keine\n").needs("part").column("side");
        for (NamedRows.Row row : file.rows()) {
            assertEquals(Optional.empty(), row.word("side", SIDES));
            assertEquals(Optional.empty(), row.decisiveWord("side", SIDES));
            assertTrue(row.use());
        }
        assertEquals(List.of(), file.read().problems());
    }

    @Test
    void words_csv_may_call_a_column_by_our_name_or_by_the_header_in_the_file() throws IOException {
        Files.writeString(folder.resolve("words.csv"), "column,word,means\nheader,Seite,side\nSeite,links,left\nside,rechts,right\n");
        NamedRows file = rows("part,Seite\nlamp,links\ndoor,rechts\n").needs("part").column("side");
        assertEquals(List.of(Side.LEFT, Side.RIGHT), file.rows().stream().map(r -> r.word("side", SIDES).orElseThrow())
                .toList());
    }

    @Test
    void several_words_of_a_cell_are_each_taken_by_words_csv() throws IOException {
        Files.writeString(folder.resolve("words.csv"), "column,word,means\nside,links,left\nside,beide,left; right\n");
        NamedRows file = rows("part,side\nlamp,links; right\ndoor,beide\nseat,left; oben\nhood,\n").needs("part").column("side");
        List<List<Side>> said = new java.util.ArrayList<>();
        for (NamedRows.Row row : file.rows()) {
            said.add(row.decisiveWords("side", SIDES));
            row.use();
        }
        assertEquals(List.of(List.of(Side.LEFT, Side.RIGHT), List.of(Side.LEFT, Side.RIGHT), List.of(Side.LEFT), List.of()), said);
        RowProblem oben = file.read().rejected().get(0);
        assertEquals("4 side left; oben", oben.line() + " " + oben.column() + " " + oben.rawText());
        assertTrue(oben.message().contains("'oben' is not understood") && oben.message().contains("known are: left, right; words.csv can"),
                oben.message());
    }

    @Test
    void a_column_that_words_csv_takes_for_one_of_another_file_says_so() throws IOException {
        Files.writeString(folder.resolve("words.csv"), "column,word,means\nheader,Zustand,runs\nheader,Seide,sid\n");
        NamedRows file = rows("part,Zustand,Seide\nlamp,gut,x\n").needs("part").column("side");
        file.rows().forEach(NamedRows.Row::use);
        assertEquals(List.of("Zustand: this column is not used: words.csv takes it for 'runs', which this file does not have",
                "Seide: this column is not used: words.csv takes it for 'sid', which this file does not have; did you mean side?"),
                file.read().oddities().stream().map(p -> p.column() + ": " + p.message()).toList());
    }

    @Test
    void an_amount_without_a_rate_sets_its_row_aside() throws IOException {
        NamedRows file = rows("part,price,currency\nlamp,20,EUR\n").needs("part").column("price").column("currency");
        NamedRows.Row row = file.rows().get(0);
        Money typed = row.money("price", "currency").orElseThrow();
        assertTrue(row.converted("price", typed, Currency.getInstance("USD"), LocalDate.of(2026, 1, 1)).isEmpty());
        assertFalse(row.use());
        assertEquals("no rate from EUR to USD; state one in rates.csv", file.read().setAside().get(0).message());
        Files.writeString(folder.resolve("rates.csv"), "date,from,to,rate\n2025-12-01,EUR,USD,1.10\n");
        NamedRows with = rows("part,price,currency\nlamp,20,EUR\n").needs("part").column("price").column("currency");
        Optional<BigDecimal> dollars = with.rows().get(0).converted("price", typed, Currency.getInstance("USD"), LocalDate.of(2026, 1, 1));
        assertEquals(0, new BigDecimal("22").compareTo(dollars.orElseThrow()));
    }

    @Test
    void a_sign_that_nothing_is_known_is_blank_in_every_kind_of_column() throws IOException {
        for (String sign : new String[] {"n/a", "?", "-", "unknown", "\u2014"}) {
            Path file = folder.resolve("signs.csv");
            Files.writeString(file, "name,price,seen_on,miles\n" + sign + "," + sign + "," + sign + "," + sign + "\nx,1,2026-01-02,3\n");
            NamedRows rows = NamedRows.of(file, FolderSettings.of(folder, Conventions.unstated())).needs("name").column("price")
                    .column("seen_on").column("miles");
            NamedRows.Row row = rows.rows().get(0);
            assertEquals("", row.text("name") + row.text("price") + row.text("seen_on"), sign);
            assertTrue(row.money("price", "").isEmpty() && row.date("seen_on").isEmpty() && row.miles("miles").isEmpty(), sign);
            assertTrue(row.use(), sign);
        }
    }

    @Test
    void a_needed_column_that_is_missing_is_named_with_those_found() throws IOException {
        NamedRows file = rows("thing,price\nlamp,20\n").needs("part", "item").needs("price").needs("day").column("side");
        String message = String.valueOf(assertThrows(UnusableFileException.class, file::rows).getMessage());
        assertTrue(message.contains("the column 'part' and the column 'day' are missing; found the columns thing, price"), message);
        assertTrue(message.contains("words.csv beside it says so with a row such as header,your own header,part"), message);
    }

    @Test
    void a_word_a_letter_away_is_hinted_at_and_not_read() throws IOException {
        NamedRows file = rows("part,side\nlamp,lefft\ndoor,both\n").needs("part").column("side");
        for (NamedRows.Row row : file.rows()) {
            assertEquals(Optional.empty(), row.word("side", SIDES));
            row.use();
        }
        assertEquals(List.of(true, false), file.read().oddities().stream().map(p -> p.message().endsWith("; did you mean left?")).toList());
    }
}
