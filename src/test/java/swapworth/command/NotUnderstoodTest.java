package swapworth.command;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import swapworth.CommandRun;
import swapworth.InOneLine;

/** That no step loses a word in silence, neither of the cars in play nor of listings, in the terminal and on the page. */
class NotUnderstoodTest {
    private static final List<String> OF_CARS = List.of(
            "cars.csv:2 runs 'no strat': not understood; known: drives, engine fires, engine dead, no engine, not tried;"
                    + " did you mean no start?",
            "cars.csv:2 role 'doner': not understood; known: candidate, recipient, donor, factory equivalent, finished;"
                    + " did you mean donor?");
    private static final String OF_LISTINGS = "listings.csv:2 runs 'blown': not understood; known: drives, engine fires,";

    @TempDir
    Path folder;

    @BeforeEach
    void files() throws IOException {
        StringBuilder rows = new StringBuilder("vehicle,model_year,mileage_mi,price_usd,runs,title\n");
        for (int i = 0; i < 12; i++) {
            String runs = i == 0 ? "blown" : i == 5 ? "yes" : "drives";
            String title = i == 7 ? "murky" : i == 8 ? "clena" : "clean";
            rows.append(i % 2 == 0 ? "Sivrette," : "Velmarch,").append(2010 + i).append(',').append(120_000 - 7_000 * i).append(',')
                    .append(6_000 + 700 * i).append(',').append(runs).append(',').append(title).append('\n');
        }
        write("listings.csv", rows.toString());
        write("cars.csv", "name,role,vehicle,model_year,mileage_mi,planned_bid,runs,running_gear\n"
                + "hit,doner,Velmarch,2016,70000,4000,no strat,\nmine,finished,Sivrette,2012,90000,,drives,eight\n");
        write("fees.csv", "table,kind,from,to,flat,percent\ntax,tax,,,,5\n");
        write("partout.csv", "car,part,goes_to\nhit,engine,swap\nhit,wheels,sell\n");
        write("parts.csv", "part,price\nengine,2000\nwheels,300\n");
        write("ledger.csv", "date,amount,note\n2026-03-04,19.99,wire\n");
    }

    private void write(String name, String text) throws IOException {
        Files.writeString(folder.resolve(name), text);
    }

    private static String run(String... arguments) {
        CommandRun ran = CommandRun.of(arguments);
        assertEquals(0, ran.code(), ran.err());
        return ran.out();
    }

    private void tellsOfCars(String out, Path page) throws IOException {
        String html = Files.readString(page);
        for (String sentence : OF_CARS) {
            assertTrue(InOneLine.of(out).contains(sentence), out);
        }
        assertTrue(html.contains("What was read of the cars in play") && html.contains("did you mean donor?") && html.contains("no strat"),
                "the page tells it too");
    }

    private static void tellsOfListings(String out) {
        assertTrue(out.contains("not understood: 4 words in 4 cells; the fact stays unknown there; the first 3 are below,"
                + " 'check' lists them all"), out);
        assertTrue(out.contains(OF_LISTINGS), out);
        assertTrue(out.contains("listings.csv:9 title 'murky'") && !out.contains("'clena'"), "the first three only: " + out);
    }

    @Test
    void steps_on_listings_tell_of_their_words() {
        String listings = folder.resolve("listings.csv").toString();
        tellsOfListings(run("judge", listings));
        tellsOfListings(run("index", listings));
        String check = run("check", listings);
        assertTrue(check.contains("clena") && check.contains("did you mean"), check);
    }

    @Test
    void check_of_a_folder_lists_the_words_of_its_cars_too() throws IOException {
        Path page = folder.resolve("check.html");
        String out = run("check", folder.toString(), "--page", page.toString());
        assertTrue(out.contains("clena") && out.contains("murky") && out.contains("cars.csv, 2 rows: 2 used"), out);
        assertTrue(out.contains("did you mean donor?") && out.contains("did you mean no start?"), out);
        assertTrue(Files.readString(page).contains("did you mean donor?"));
        String listings = run("check", folder.resolve("listings.csv").toString());
        assertFalse(listings.contains("cars.csv"), "only what was asked for");
    }

    @Test
    void value_tells_of_both_files() throws IOException {
        Path page = folder.resolve("value.html");
        String cars = folder.resolve("cars.csv").toString();
        String out = run("value", "--market", folder.toString(), "--subject", cars, "--page", page.toString());
        tellsOfListings(out);
        tellsOfCars(out, page);
    }

    @Test
    void steps_on_a_folder_tell_of_both_files() throws IOException {
        for (String step : List.of("landed", "partout", "swap", "project")) {
            Path page = folder.resolve(step + ".html");
            String out = run(step, folder.toString(), "--page", page.toString());
            tellsOfListings(out);
            tellsOfCars(out, page);
        }
    }

    @Test
    void the_whole_job_tells_of_both_files() throws IOException {
        String out = run(folder.toString());
        tellsOfListings(out);
        tellsOfCars(out, folder.resolve("swapworth.html"));
    }

    @Test
    void where_every_word_is_understood_nothing_is_told() throws IOException {
        write("listings.csv", Files.readString(folder.resolve("listings.csv")).replace("blown", "seized").replace("yes", "runs")
                .replace("murky", "salvage").replace("clena", "clean"));
        write("cars.csv", Files.readString(folder.resolve("cars.csv")).replace("doner", "donor").replace("no strat", "no start"));
        String out = run(folder.toString());
        assertFalse(out.contains("not understood"), out);
        assertFalse(Files.readString(folder.resolve("swapworth.html")).contains("What was read of the cars in play"));
    }

    @Test
    void a_car_that_does_not_start_is_worth_less_than_one_of_which_nothing_is_known() throws IOException {
        String before = run("value", "--market", folder.toString(), "--subject", folder.toString());
        write("cars.csv", Files.readString(folder.resolve("cars.csv")).replace("no strat", "no start"));
        String after = run("value", "--market", folder.toString(), "--subject", folder.toString());
        assertTrue(fairValue(after) < 0.8 * fairValue(before), before + after);
    }

    /** The number after the planned bid in the row of the car. */
    private static double fairValue(String out) {
        String row = out.lines().filter(l -> l.startsWith("hit ")).findFirst().orElseThrow();
        return Double.parseDouble(row.substring(row.indexOf("4,000") + 5).strip().split(" ")[0].replace(",", ""));
    }

    @Test
    void the_file_handed_to_others_holds_none_of_it() throws IOException {
        Path page = folder.resolve("buyer.html");
        run("project", folder.toString(), "--for", "buyer", "--page", page.toString());
        assertFalse(Files.readString(page).contains("doner"));
    }
}
