package swapworth.command;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import swapworth.CommandRun;
import swapworth.InOneLine;

/** The commands on good and on bad input: exit codes, messages, nothing lost, nothing run. */
class CommandTest {

    @TempDir
    Path folder;

    private CommandRun ran = new CommandRun(0, "", "");

    private int run(String... arguments) {
        ran = CommandRun.of(arguments);
        return ran.code();
    }

    private String out() {
        return ran.out();
    }

    private String err() {
        return ran.err();
    }

    private String file(String name, String text, Charset charset) throws IOException {
        return Files.write(folder.resolve(name), text.getBytes(charset)).toString();
    }

    private String file(String text) throws IOException {
        return file("listings.csv", text, StandardCharsets.UTF_8);
    }

    private static String rows(int count) {
        StringBuilder text = new StringBuilder("id,seen_on,vehicle,model_year,mileage_mi,price_usd,price_kind,seller,note\n");
        for (int i = 0; i < count; i++) {
            text.append("a").append(i).append(",2026-0").append(1 + i % 9).append("-12,Sivrette,").append(2010 + i % 9).append(',')
                    .append(40_000 + 7001 * (i % 13)).append(',').append(14_000 - 400 * (9 - i % 9) + 97 * (i % 7))
                    .append(",asking,private,plain\n");
        }
        return text.toString();
    }

    @Test
    void an_empty_file_is_one_clear_error() throws IOException {
        assertEquals(1, run("judge", file("")));
        assertTrue(err().contains("listings.csv") && err().contains("empty"), err());
    }

    @Test
    void a_missing_file_is_one_clear_error() {
        assertEquals(1, run("check", folder.resolve("nothing.csv").toString()));
        assertTrue(err().contains("nothing.csv") && err().contains("no such file"), err());
    }

    @Test
    void a_file_without_a_price_column_names_what_it_has() throws IOException {
        assertEquals(1, run("judge", file("vehicle,model_year,mileage_mi\nSivrette,2014,88000\n")));
        assertTrue(err().contains("price") && err().contains("model_year"), err());
    }

    @Test
    void a_latin_1_file_is_told_from_utf_8() throws IOException {
        String text = "vehicle,model_year,mileage_mi,price_usd,note\nSivrette,2014,88000,9800,gr\u00fcn\n";
        assertEquals(1, run("judge", file("latin.csv", text, StandardCharsets.ISO_8859_1)));
        assertTrue(err().contains("UTF-8") && err().contains("line 2"), err());
    }

    @Test
    void fifty_megabytes_on_one_line_fail_fast_and_clearly() throws IOException {
        long start = System.nanoTime();
        assertEquals(1, run("judge", file("x".repeat(50_000_000))));
        assertFalse(err().isBlank());
        assertTrue(err().length() < 1000, "the message does not repeat the line");
        assertTrue(System.nanoTime() - start < 20_000_000_000L);
    }

    @Test
    void an_unclosed_quote_costs_its_own_row_only() throws IOException {
        String text = rows(40).replace("a7,2026-08-12,Sivrette", "a7,2026-08-12,\"Sivrette");
        assertEquals(0, run("judge", file(text)));
        assertTrue(out().contains("40 rows: 39 used, 0 set aside, 1 rejected"), out().lines().findFirst().orElse(""));
        assertEquals(1, run("judge", file(text), "--strict"));
        assertTrue(err().contains("--strict"), err());
    }

    @Test
    void html_and_formulas_in_notes_neither_run_nor_escape() throws IOException {
        String text = rows(40).replace("a3,", "<script>alert(1)</script>,").replace("a4,", "\"=HYPERLINK(\"\"http://x\"\")\",");
        Path page = folder.resolve("page.html");
        Path csv = folder.resolve("out.csv");
        assertEquals(0, run("judge", file(text), "--page", page.toString(), "--out", csv.toString()), err());
        String html = Files.readString(page);
        assertFalse(html.contains("<script>alert"), "escaped on the page");
        assertTrue(html.contains("&lt;script&gt;alert"));
        assertTrue(Files.readString(csv).contains("'=HYPERLINK"), "neutralised in the CSV");
        assertFalse(html.contains("<script"), "the page needs no script");
        assertFalse(html.contains("src=\"http") || html.contains("href=\"http"), "the page loads nothing");
    }

    @Test
    void every_row_is_accounted_for_when_none_is_usable() throws IOException {
        assertEquals(1, run("judge", file("vehicle,model_year,price\nSivrette,2014,0\nSivrette,2015,\nSivrette,2016,call\n")));
        assertTrue(err().contains("3 rows: 0 used, 2 set aside, 1 rejected"), err());
    }

    @Test
    void wrong_words_are_wrong_usage() throws IOException {
        String good = file(rows(20));
        assertEquals(2, run("judge"));
        assertEquals(2, run("judge", good, "--colour"));
        assertEquals(2, run("judge", good, "--on", "12/03/2026"));
        assertTrue(err().contains("year-month-day"), err());
        assertEquals(2, run("judge", good, "--level", "wholesale"));
        assertTrue(err().contains("private asking, trade asking"), err());
        assertEquals(2, run("judge", good, "--with", "sunroof"));
        assertTrue(err().contains("sunroof"), err());
        assertEquals(1, run(folder.resolve("nowhere").toString()));
        assertTrue(err().contains("no such folder"), err());
    }

    @Test
    void a_column_that_the_model_knows_by_itself_need_not_be_asked_for_and_does_no_harm() throws IOException {
        String known = file(rows(20).replace("seller,note", "seller,grade").replace("plain", "LX"));
        assertEquals(0, run("judge", known, "--with", "grade,seller"), err());
        assertTrue(out().contains("--with: the column 'grade' is read as trim, which is always in the model"), out());
        assertTrue(out().contains("--with: the column 'seller' is always in the model"), out());
        assertEquals(2, run("judge", file(rows(20)), "--with", "note"));
        assertTrue(err().contains("'note'"), err());
    }

    @Test
    void a_folder_without_listings_says_what_to_begin_with() {
        assertEquals(1, run(folder.toString()));
        assertTrue(err().contains("listings.csv") && err().contains("vehicle"), err());
    }

    @Test
    void the_user_s_own_assumptions_count() throws IOException {
        String listings = file(rows(12));
        assertEquals(0, run("judge", listings));
        String before = out();
        file("assumptions.csv", "name,middle,spread,unit,source\nage_slope,-3,0.1,% per year,mine\n", StandardCharsets.UTF_8);
        assertEquals(0, run("judge", listings));
        assertFalse(before.equals(out()), "a changed assumption moves the values");
    }

    @Test
    void an_output_that_cannot_be_written_is_said() throws IOException {
        assertEquals(1, run("judge", file(rows(20)), "--out", folder.resolve("listings.csv/out.csv").toString()));
        assertTrue(err().contains("cannot write"), err());
    }

    @Test
    void a_file_that_is_read_is_never_written_over() throws IOException {
        String listings = file(rows(20));
        String before = Files.readString(Path.of(listings));
        assertEquals(2, run("judge", listings, "--out", folder.resolve("./listings.csv").toString()));
        assertTrue(err().contains("write to another one"), err());
        file("words.csv", "column,word,means\n*,currency,USD\n", StandardCharsets.UTF_8);
        assertEquals(2, run("judge", listings, "--page", folder.resolve("words.csv").toString()));
        assertEquals(before, Files.readString(Path.of(listings)));
    }

    @Test
    void a_price_is_not_compared_with_a_value_of_another_level_of_trade() throws IOException {
        assertEquals(0, run("judge", file(rows(40)), "--level", "auction"));
        assertTrue(InOneLine.of(out()).contains("at the level auction") && InOneLine.of(out()).contains("they are not compared"), out());
        assertFalse(out().contains("at its own level of trade"));
        assertEquals(0, run("judge", file(rows(40)), "--on", "2025-11-01"));
        assertTrue(InOneLine.of(out()).contains("on 2025-11-01") && InOneLine.of(out()).contains("the first day of the prices that count"),
                out());
    }

    @Test
    void two_columns_for_one_thing_are_a_question() throws IOException {
        assertEquals(0, run("check",
                file("vehicle,model_year,miles,km,price_usd\nSivrette,2016,,71000,11900\nSivrette,2014,88000,,9800\n")));
        assertTrue(out().contains("another column of the file means the same"), out());
    }

    @Test
    void rows_without_a_day_are_not_said_to_be_valued_on_theirs() throws IOException {
        assertEquals(0, run("judge", file("vehicle,model_year,mileage_mi,price_usd\nSivrette,2014,88000,9800\nSivrette,2016,71000,11900\n"
                + "Sivrette,2012,120500,7200\n")));
        assertTrue(InOneLine.of(out()).contains("the median price of such cars at its own level of trade, by all other cars"), out());
    }

    @Test
    void check_tells_machines_what_became_of_each_row() throws IOException {
        Path out = folder.resolve("found.csv");
        assertEquals(0, run("check", "sample-listings", "--out", out.toString()));
        String rows = Files.readString(out);
        assertTrue(rows.startsWith("file,line,column,text,reason,what_became_of_it\r\n"), rows);
        assertTrue(rows.matches("(?s).*listings.csv,280,mileage,12.500 km,[^\r]*,rejected\r\n.*"), rows);
        assertTrue(rows.contains("listings.csv,451,price,0,the price is not above 0,set aside\r\n"), rows);
        assertTrue(rows.matches("(?s).*listings.csv,129,price,USD 1920,[^\r]*,\"?used, odd\"?\r\n.*"), rows);
        assertTrue(rows.matches("(?s).*listings.csv,147,price_includes,,[^\r]*used, a question\"?\r\n.*"), rows);
    }

    @Test
    void crashed_cars_that_no_row_tells_of_have_an_assumed_scatter_and_it_is_said() throws IOException {
        assertEquals(0, run("judge", file(rows(40))));
        assertTrue(InOneLine.of(out()).contains("assumed (scatter_of_troubled): no price of such a car has a value"), out());
        assertEquals(0, run("judge", "sample-listings"));
        assertTrue(InOneLine.of(out()).contains("branded ones too, in the fit (scatter_of_troubled)"));
    }

    @Test
    void help_is_an_answer_and_no_mistake() {
        assertEquals(0, run("--help"));
        assertTrue(out().contains("judge") && out().contains("FOLDER"), out());
        assertTrue(InOneLine.of(out()).contains("the sample where that holds no listings.csv, cars.csv or ledger.csv"), out());
        assertEquals(0, run("judge", "--help"));
        assertTrue(out().contains("--level"), out());
    }

    @Test
    void index_says_how_the_level_moved_and_refuses_a_month_that_nobody_saw() throws IOException {
        String listings = file(rows(60));
        assertEquals(0, run("index", listings, "--base", "2026-02", "--out", folder.resolve("i.csv").toString()));
        assertTrue(out().contains("Level of the market, 2026-02 = 100") && out().contains("Drift of the market"), out());
        assertTrue(Files.readString(folder.resolve("i.csv")).startsWith("month,cars,index,low_80"), out());
        assertEquals(2, run("index", listings, "--base", "2031-02"));
        assertTrue(err().contains("2026-01 to 2026-09"), err());
        assertEquals(2, run("index", listings, "--base", "February"));
        assertEquals(2, run("index", listings, "--line", "Nowhere"));
    }

    @Test
    void index_without_dates_says_what_is_missing() throws IOException {
        assertEquals(0, run("index", file("vehicle,model_year,mileage_mi,price_usd\nSivrette,2014,88000,9000\n")));
        assertTrue(out().contains("Cannot tell how the market moved: no listing has a date"), out());
    }

    @Test
    void an_index_that_cannot_be_told_is_a_page_with_the_reason_and_no_csv() throws IOException {
        String listings = file("vehicle,model_year,mileage_mi,price_usd\nSivrette,2014,88000,9000\n");
        Path page = folder.resolve("i.html");
        Path rows = folder.resolve("i.csv");
        assertEquals(0, run("index", listings, "--page", page.toString()), err());
        assertTrue(Files.readString(page).contains("no listing has a date"));
        assertTrue(Files.readString(page).contains("They are no appraisal, no offer and no advice."), "a page by itself");
        Files.delete(page);
        assertEquals(1, run("index", listings, "--page", page.toString(), "--out", rows.toString()));
        assertTrue(err().contains("i.csv is not written, because the index cannot be told"), err());
        assertTrue(Files.exists(page) && Files.notExists(rows));
    }

    @Test
    void the_rows_and_the_page_are_not_written_into_one_file() throws IOException {
        String listings = file(rows(20));
        String same = folder.resolve("same.x").toString();
        assertEquals(2, run("judge", listings, "--out", same, "--page", folder.resolve("./same.x").toString()));
        assertTrue(err().contains("cannot be written into one file"), err());
        assertEquals(2, run(folder.toString(), "--out", folder.resolve("swapworth.html").toString()), "the page that is written unasked");
        assertTrue(Files.notExists(folder.resolve("same.x")) && Files.notExists(folder.resolve("swapworth.html")));
    }

    @Test
    void of_more_than_5000_rows_the_terminal_shows_what_they_say_together_and_the_page_holds_them() throws IOException {
        String listings = file(rows(5_001));
        Path page = folder.resolve("many.html");
        assertEquals(0, run("judge", listings, "--page", page.toString()), err());
        assertTrue(out().contains("5001 rows are too many to show: --out FILE.csv writes them, --page FILE.html shows them."), out());
        assertTrue(out().lines().count() < 100, out().lines().count() + " lines");
        assertTrue(Files.readString(page).contains("All 5001 rows"), "the page holds them");
    }
}
