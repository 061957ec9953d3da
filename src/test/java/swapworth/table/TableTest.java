package swapworth.table;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Locale;
import org.junit.jupiter.api.Test;

class TableTest {

    private static Table prices() {
        return Table.titled("Prices").note("2 rows").columns(Column.words("car"), Column.number("price", "USD"))
                .row(Cell.words("first"), Cell.number(12500.5, 0)).row(Cell.words("the second"), Cell.number(950, 0)).build();
    }

    @Test
    void text_aligns_words_left_and_numbers_right_below_title_and_notes() {
        assertEquals("""
                Prices
                  2 rows
                car         price, USD
                ----------  ----------
                first           12,500
                the second         950
                """, prices().text());
    }

    @Test
    void html_holds_caption_note_head_and_cells() {
        String html = prices().html();
        assertTrue(html.contains("<figcaption>Prices</figcaption>"));
        assertTrue(html.contains("<p class=\"note\">2 rows</p>"));
        assertTrue(html.contains("<th scope=\"col\" class=\"n\">price <span class=\"unit\">USD</span></th>"));
        assertTrue(html.contains("<tr><td class=\"w\">first</td><td class=\"n\">12,500</td></tr>"));
    }

    @Test
    void html_marks_the_columns_that_stand_behind_on_a_narrow_screen() {
        String html = Table.titled("t").columns(Column.words("a").behind(), Column.number("b", "").behind(), Column.words("c"))
                .row(Cell.words("x"), Cell.number(1, 0), Cell.words("y")).build().html();
        assertTrue(html.contains("<tr><td class=\"b\">x</td><td class=\"n b\">1</td><td>y</td></tr>"), html);
        assertTrue(html.contains("<th scope=\"col\" class=\"b\">a</th>"), html);
    }

    @Test
    void html_marks_columns_of_several_words_which_may_break_on_paper() {
        String html = Table.titled("t").columns(Column.words("car"), Column.words("seen"), Column.words("level").behind())
                .columns(Column.words("range"))
                .row(Cell.words("tidy roadster"), Cell.words("2026-10-30"), Cell.words("private asking"), Cell.words("-1,759 to 857"))
                .row(Cell.words("wreck"), Cell.words("2026-10-31"), Cell.words("auction"), Cell.words("")).build().html();
        assertTrue(html.contains("<tr><td class=\"w\">wreck</td><td>2026-10-31</td><td class=\"w b\">auction</td><td></td></tr>"), html);
    }

    @Test
    void html_keeps_a_number_and_its_per_cent_together() {
        String html = Table.titled("The 80 % range").note("100 % of it, or % alone").columns(Column.number("80 % from", "%"),
                Column.sentences("why")).row(Cell.number(1, 0), Cell.words("97 % <lies> 3 %")).build().html();
        for (String text : List.of("<figcaption>The 80\u00a0% range<", ">100\u00a0% of it, or % alone<", ">80\u00a0% from <",
                ">97\u00a0% &lt;lies&gt; 3\u00a0%<")) {
            assertTrue(html.contains(text), html);
        }
    }

    @Test
    void html_tells_a_screen_reader_the_name_of_the_table() {
        assertTrue(Table.titled("\"<Prices>\"").columns(Column.words("a")).row(Cell.words("x")).build().html()
                .contains("<table aria-label=\"&quot;&lt;Prices&gt;&quot;\">"));
    }

    @Test
    void html_marks_a_table_that_leaves_its_sentences_no_room() {
        Table.Builder few = Table.titled("few").columns(Column.words("a"), Column.sentences("remarks"));
        Table.Builder many = Table.titled("many").columns(Column.sentences("remarks"));
        Table.Builder without = Table.titled("without");
        for (int c = 0; c < 12; c++) {
            many.columns(Column.number("n" + c, ""));
            without.columns(Column.number("n" + c, ""));
        }
        few.row(Cell.words("x"), Cell.words("y"));
        for (Table.Builder wide : List.of(many, without)) {
            wide.row(Collections.nCopies(wide == many ? 13 : 12, Cell.words("x")));
        }
        assertTrue(few.build().html().contains("<table aria-label=\"few\">"));
        assertTrue(many.build().html().contains("<table aria-label=\"many\" class=\"crowded\">"));
        assertTrue(without.build().html().contains("<table aria-label=\"without\">"));
    }

    @Test
    void html_leaves_out_sentences_that_no_row_has() {
        Table.Builder table = Table.titled("t").columns(Column.words("a"), Column.sentences("remarks"));
        table.row(Cell.words("x"), Cell.words(""));
        assertFalse(table.build().html().contains("remarks"));
        assertTrue(table.row(Cell.words("y"), Cell.words("late")).build().html().contains("remarks"));
    }

    @Test
    void a_table_without_rows_says_so_and_shows_no_empty_columns() {
        Table bare = Table.titled("Odd rows").columns(Column.words("row"), Column.sentences("why")).build();
        assertEquals("Odd rows\n  No row.\n", bare.text());
        assertTrue(bare.html().contains("<p class=\"note\">No row.</p>") && !bare.html().contains("<table"), bare.html());
        Table told = Table.titled("Odd rows").note("12 rows: 12 used.").columns(Column.words("row")).build();
        assertEquals("Odd rows\n  12 rows: 12 used.\n", told.text());
        assertFalse(told.html().contains("No row."), told.html());
        assertEquals("row\r\n", told.csv());
    }

    @Test
    void csv_has_keys_as_header_exact_numbers_and_carriage_returns() {
        assertEquals("car,price\r\nfirst,12500.5\r\nthe second,950\r\n", prices().csv());
    }

    @Test
    void csv_quotes_separators_quotes_and_line_breaks() {
        Table table = Table.titled("t").columns(Column.words("a")).row(Cell.words("x,y")).row(Cell.words("say \"hi\""))
                .row(Cell.words("two\nlines")).build();
        assertEquals("a\r\n\"x,y\"\r\n\"say \"\"hi\"\"\"\r\n\"two\nlines\"\r\n", table.csv());
    }

    @Test
    void csv_neutralises_formulas_in_words_but_not_numbers() {
        Table table = Table.titled("t").columns(Column.words("a"), Column.number("b", ""))
                .row(Cell.words("=1+1"), Cell.number(-5, 0)).row(Cell.words("@SUM(A1)"), Cell.signed(5, 0))
                .row(Cell.words("+1"), Cell.BLANK).row(Cell.words("-1"), Cell.BLANK).row(Cell.words("\tx"), Cell.BLANK).build();
        assertEquals("a,b\r\n'=1+1,-5\r\n'@SUM(A1),5\r\n'+1,\r\n'-1,\r\n'\tx,\r\n", table.csv());
    }

    @Test
    void html_escapes_everything_a_stranger_may_have_typed() {
        Table table = Table.titled("<b>t</b>").note("a & b").columns(Column.words("h<i>"))
                .row(Cell.words("<script>alert('1')</script>\u0007").linked("#x\" onclick=\"y")).build();
        String html = table.html();
        assertFalse(html.contains("<script>"));
        assertFalse(html.contains("<b>t"));
        assertFalse(html.contains("h<i>"));
        assertFalse(html.contains("\" onclick"));
        assertFalse(html.contains("\u0007"));
        assertTrue(html.contains("&lt;script&gt;alert(&#39;1&#39;)&lt;/script&gt;"));
        assertTrue(html.contains("a &amp; b"));
    }

    @Test
    void a_page_holds_no_control_characters_but_tabs_and_line_feeds_with_or_without_markup() {
        String stranger = "a\u0007b\u007fc\td\ne<\r";
        assertEquals("abc\td\ne<", Html.withoutControls(stranger));
        assertEquals("abc\td\ne&lt;", Html.escape(stranger));
    }

    @Test
    void text_shows_control_characters_as_spaces() {
        String text = Table.titled("t").columns(Column.words("a")).row(Cell.words("red\u001b[31m\nnext")).build().text();
        assertTrue(text.contains("red [31m next"));
        assertFalse(text.contains("\u001b"));
    }

    @Test
    void a_heading_wider_than_its_column_breaks_into_lines_where_the_table_is_wide() {
        Table.Builder table = Table.titled("t");
        List<Cell> row = new ArrayList<>();
        for (int c = 0; c < 12; c++) {
            table.columns(Column.number("chance of a loss", "%"));
            row.add(Cell.whole(10 + c));
        }
        String text = table.row(row).build().text();
        assertTrue(text.lines().allMatch(line -> line.length() <= 140), text);
        assertTrue(text.lines().skip(1).findFirst().orElseThrow().strip().startsWith("chance of"), text);
        assertTrue(text.contains("21\n"), text);
    }

    @Test
    void sentences_without_room_beside_the_numbers_stand_below_their_row() {
        Table.Builder table = Table.titled("t");
        List<Cell> row = new ArrayList<>();
        for (int c = 0; c < 14; c++) {
            table.columns(Column.number("price", "USD"));
            row.add(Cell.number(1000 + c, 0));
        }
        row.add(Cell.words("does the price include fees or tax? At an auction that can be a third"));
        String text = table.columns(Column.sentences("to look at")).row(row).row(Collections.nCopies(15, Cell.BLANK)).build().text();
        assertTrue(text.contains("1,013\n      to look at: does the price include fees or tax? At an auction that can be a third\n"), text);
        assertEquals(1, text.split("to look at", -1).length - 1);
    }

    @Test
    void words_break_within_their_column_and_numbers_never() {
        Table.Builder table = Table.titled("t").columns(Column.words("against"));
        List<Cell> row = new ArrayList<>(List.of(Cell.words("recipient sold without an engine, left-over parts sold")));
        for (int c = 0; c < 10; c++) {
            table.columns(Column.number("n", ""));
            row.add(Cell.number(-1_234_567, 0));
        }
        List<String> lines = table.row(row).build().text().lines().toList();
        assertTrue(lines.stream().allMatch(line -> line.length() <= 140), lines.toString());
        assertTrue(lines.get(3).startsWith("recipient sold        -1,234,567"), lines.toString());
        assertEquals(List.of("without an engine,", "left-over parts sold"), lines.subList(4, 6));
    }

    @Test
    void notes_break_between_words_and_keep_a_number_with_its_per_cent() {
        String words = "word ".repeat(20) + "lesser ";
        List<String> lines = Table.titled("t").note(words + "1 % of all").build().text().lines().toList();
        assertEquals("  " + words.strip(), lines.get(1));
        assertEquals("    1 % of all", lines.get(2));
    }

    @Test
    void a_word_longer_than_a_line_is_cut() {
        assertEquals(List.of("abcd", "efg", "hi"), TextLines.broken("abcdefg hi", 4));
        assertEquals(List.of(""), TextLines.broken("", 4));
    }

    @Test
    void a_row_with_a_wrong_number_of_cells_is_refused() {
        Table.Builder builder = Table.titled("t").columns(Column.words("a")).row(Cell.BLANK, Cell.BLANK);
        assertThrows(IllegalArgumentException.class, builder::build);
    }

    @Test
    void numbers_do_not_follow_the_language_of_the_machine() {
        Locale before = Locale.getDefault();
        try {
            Locale.setDefault(Locale.GERMANY);
            assertEquals("12,500.50", Cell.format(12500.5, 2));
            assertEquals("12500.5", Cell.number(12500.5, 0).exact());
        } finally {
            Locale.setDefault(before);
        }
    }

    @Test
    void a_number_that_rounds_to_zero_has_no_sign() {
        assertEquals("0.0", Cell.signed(-0.01, 1).shown());
        assertEquals("0.0", Cell.signed(0.01, 1).shown());
        assertEquals("+0.1", Cell.signed(0.1, 1).shown());
        assertEquals(Cell.BLANK, Cell.number(Double.NaN, 1));
    }

    @Test
    void a_chance_is_shown_no_surer_than_draws_can_tell_and_kept_exact_for_machines() {
        assertEquals("57", Cell.chance(0.57).shown());
        for (double share : new double[] {0.01, 0.085, 0.125, 0.135, 0.57, 0.99}) {
            assertEquals(Cell.chance(share).shown() + " %", Cell.chanceInWords(share), "a table and a sentence round alike");
        }
        assertEquals(List.of("less than 1 %", "more than 99 %"), List.of(Cell.chanceInWords(0.009), Cell.chanceInWords(0.991)));
        assertEquals(List.of("> 99", "100"), List.of(Cell.chance(1).shown(), Cell.chance(1).exact()));
        assertEquals(List.of("< 1", "0.25"), List.of(Cell.chance(0.0025).shown(), Cell.chance(0.0025).exact()));
        assertEquals(List.of("1", "99"), List.of(Cell.chance(0.01).shown(), Cell.chance(0.99).shown()));
        assertEquals(Cell.BLANK, Cell.chance(Double.NaN));
    }

    @Test
    void a_label_has_no_thousands_separator() {
        assertEquals("2014", Cell.label(2014).shown());
        assertEquals("2,014", Cell.whole(2014).shown());
    }
}
