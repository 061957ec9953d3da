package swapworth.notebook;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The notebooks of the project on folders in which files or columns are missing: they say which, and show whatever can be shown. */
class MissingFilesTest {
    private static final Path SAMPLE = Path.of("sample-listings");
    private static final String FIVE = """
            vehicle,model_year,mileage_mi,price_usd
            Sivrette,2014,88000,9800
            Sivrette,2016,71000,11900
            Sivrette,2012,120500,7200
            Velmarch,2018,54000,17400
            Velmarch,2017,60000,16400
            """;
    private static final String NO_CARS = "Cannot tell: there is no cars.csv; needed: ";
    private static final String NO_DATE = "Cannot tell: no listing has a date; needed: listings seen in several months, with seen_on.";

    @TempDir
    Path folder;

    private void sample(String... names) throws IOException {
        for (String name : names) {
            Files.copy(SAMPLE.resolve(name), folder.resolve(name));
        }
    }

    private void five() throws IOException {
        Files.writeString(folder.resolve("listings.csv"), FIVE);
    }

    private Evaluation.Outcome run(NotebookFile notebook) {
        System.setProperty("folder", folder.toString());
        try {
            return Unwatched.run(notebook);
        } finally {
            System.clearProperty("folder");
        }
    }

    private static NotebookFile notebook(int number) throws IOException {
        try (Stream<Path> files = Files.list(Path.of("notebooks"))) {
            return NotebookFile.read(files.filter(f -> f.getFileName().toString().startsWith(number + "-")).findFirst().orElseThrow());
        }
    }

    /** Everything that a notebook shows, as text, one cell a string; it must run to its end. */
    private List<String> shown(int number) throws IOException {
        NotebookFile notebook = notebook(number);
        Evaluation.Outcome outcome = run(notebook);
        assertEquals("", outcome.failure().map(f -> f.report(notebook)).orElse(""));
        return outcome.outputs().stream().map(cell -> String.join("", cell.stream().map(o -> PartText.of(o.part())).toList())).toList();
    }

    private static long saying(List<String> cells, String words) {
        return cells.stream().filter(c -> c.contains(words)).count();
    }

    private static void says(List<String> cells, String words) {
        assertTrue(saying(cells, words) > 0, words + " in\n" + String.join("\n", cells));
    }

    @Test
    void without_partout_what_cars_cost_at_the_door_and_the_highest_bid_are_shown() throws IOException {
        five();
        sample("cars.csv", "fees.csv", "words.csv", "lines.csv");
        List<String> cells = shown(2);
        says(cells, "Landed cost of tail hit, USD");
        says(cells, "Highest bid within a target, USD");
        assertEquals(6, saying(cells, "Cannot tell: there is no partout.csv; needed: that file (car, part, goes_to"),
                "each section that needs it");
    }

    @Test
    void without_fees_and_listings_what_the_parts_bring_is_shown() throws IOException {
        sample("cars.csv", "partout.csv", "parts.csv", "words.csv", "lines.csv");
        List<String> cells = shown(2);
        assertEquals(3, saying(cells, "Cannot tell: there is no fees.csv; needed: that file (what a purchase costs"),
                "each section that needs it");
        says(cells, "What is left of tail hit");
        says(cells, "Donors side by side, USD");
        says(cells, "or no listings tell what such cars sell for");
    }

    @Test
    void with_neither_fees_nor_partout_each_section_names_the_file_that_it_needs() throws IOException {
        sample("cars.csv");
        List<String> cells = shown(2);
        assertEquals(3, saying(cells, "there is no fees.csv"));
        assertEquals(6, saying(cells, "there is no partout.csv"));
    }

    @Test
    void a_ledger_alone_shows_the_money_and_names_what_its_value_needs() throws IOException {
        sample("ledger.csv", "rates.csv", "words.csv");
        List<String> cells = shown(4);
        says(cells, "ledger.csv");
        says(cells, "Forecast");
        assertEquals(4, saying(cells, "Cannot tell: there is no listings.csv and no cars.csv; needed: listings.csv"));
        says(cells, "Cannot tell: there is no alternatives.csv; needed: that file (against what");
    }

    @Test
    void listings_without_dates_leave_the_market_in_time_untold_and_say_which_column_is_needed() throws IOException {
        five();
        List<String> cells = shown(5);
        assertEquals(6, saying(cells, NO_DATE));
        assertEquals(2, saying(cells, "no car has an asking price with a date; needed: the column seen_on"));
        says(cells, NO_CARS + "listings.csv");
    }

    @Test
    void without_dates_a_finished_car_has_its_value_and_an_offer_teaches() throws IOException {
        five();
        sample("cars.csv", "words.csv", "lines.csv");
        List<String> cells = shown(3);
        assertEquals(0, saying(cells, "Cannot tell: "), String.join("\n", cells));
        says(cells, "80 % range before the offers: ");
    }

    @Test
    void cars_without_a_finished_one_say_which_row_is_needed() throws IOException {
        five();
        Files.writeString(folder.resolve("cars.csv"), "name,role,vehicle,price_usd\nhit,donor,Velmarch,3000\n");
        says(shown(3), "Cannot tell: cars.csv has no car of the role finished; needed: "
                + "a row for the finished car, with vehicle and gear_line.");
    }

    @Test
    void a_ledger_without_a_usable_row_shows_what_is_wrong_with_it() throws IOException {
        Files.writeString(folder.resolve("ledger.csv"), "date,amount,note\n2026-99-01,20.00,paint\n");
        List<String> cells = shown(4);
        says(cells, "2026-99-01");
        says(cells, "Cannot tell: no row can be used: ledger.csv, 1 row: 0 used");
    }

    @Test
    void a_single_listing_is_said_to_have_no_value_and_why() throws IOException {
        Files.writeString(folder.resolve("listings.csv"), "vehicle,model_year,mileage_mi,price_usd\nSivrette,2014,88000,9800\n");
        List<String> cells = shown(1);
        says(cells, "Cannot tell: fewer than ten prices have a value, and how well values meet prices does not show in so few; needed: ");
        says(cells, "Cannot tell: no other car of the line 'Sivrette' is in the files; needed: listings of this line.");
    }

    @Test
    void an_empty_folder_still_gives_whole_pages_where_no_file_is_all_that_a_notebook_is_about() throws IOException {
        says(shown(2), NO_CARS + "that file (the cars that you think of buying");
        says(shown(3), "there is no listings.csv and no cars.csv");
        says(shown(4), "there is no ledger.csv");
        says(shown(6), "there is no gates.csv");
    }

    @Test
    void without_listings_a_notebook_about_listings_stops_and_names_the_file() throws IOException {
        for (int number : List.of(1, 5)) {
            String cause = run(notebook(number)).failure().orElseThrow().cause();
            assertTrue(cause.contains("listings.csv: there is no such file"), cause);
            assertFalse(cause.contains("Exception"), cause);
        }
    }
}
