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

/** The command project, and the folder with more and more files: exit codes, messages, what a page holds and what it names as missing. */
class ProjectCommandTest {

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

    private void ledger(String... rows) throws IOException {
        Files.writeString(folder.resolve("ledger.csv"), "date,amount,note\n" + String.join("\n", rows) + "\n");
    }

    private void copy(String... names) throws IOException {
        for (String name : names) {
            Files.copy(Path.of("sample-listings", name), folder.resolve(name));
        }
    }

    private String page() throws IOException {
        return Files.readString(folder.resolve("swapworth.html"));
    }

    @Test
    void a_ledger_alone_is_added_up_and_what_is_missing_is_named() throws IOException {
        ledger("2026-03-04,19.99,wire", "2026-03-05,5.01,clips");
        assertEquals(0, run("project", folder.toString()), err());
        assertTrue(out().contains("25.00") && out().contains("Not here: listings.csv and cars.csv"), out());
    }

    @Test
    void cars_in_play_alone_tell_of_now_or_later_without_a_ledger() throws IOException {
        copy("listings.csv", "cars.csv", "words.csv", "rates.csv", "lines.csv");
        assertEquals(0, run("project", folder.toString(), "--page", folder.resolve("page.html").toString()), err());
        assertTrue(out().contains("Now or later, USD") && out().contains("Not here: ledger.csv"), out());
        assertTrue(Files.readString(folder.resolve("page.html")).contains("Now or later"));
    }

    @Test
    void without_a_ledger_it_says_how_to_begin() {
        assertEquals(1, run("project", folder.toString()));
        assertTrue(err().contains("there is no ledger.csv") && err().contains("date, amount, note"), err());
        assertEquals(1, run("project", folder.resolve("nowhere").toString()));
        assertTrue(err().contains("no such folder"), err());
    }

    @Test
    void a_ledger_without_a_usable_row_is_named_with_the_reason() throws IOException {
        ledger("soon,5,wire");
        assertEquals(1, run("project", folder.toString()));
        assertTrue(err().contains("no usable row") && err().contains("date"), err());
    }

    @Test
    void a_rejected_row_fails_only_where_strictness_is_asked_for() throws IOException {
        ledger("2026-03-04,19.99,wire", "2026-03-05,much,clips");
        assertEquals(0, run("project", folder.toString()));
        assertTrue(out().contains("rejected: ledger.csv:3"), out());
        assertEquals(1, run("project", folder.toString(), "--strict"));
    }

    @Test
    void what_cannot_be_used_of_the_files_that_speak_for_all_is_told_without_listings_too() throws IOException {
        ledger("2026-03-04,19.99,wire");
        Files.writeString(folder.resolve("words.csv"), "column,word,means\n*,curency,EUR\n");
        Files.writeString(folder.resolve("rates.csv"), "date,from,to,rate\n2026-01-01,EUR,USD,1.1\n2026-01-01,EUR,USD,1.9\n");
        assertEquals(0, run("project", folder.toString()));
        assertTrue(out().contains("rejected: words.csv:2") && out().contains("to look at: rates.csv:3"), out());
        assertEquals(1, run("project", folder.toString(), "--strict"));
        assertTrue(err().contains("--strict: 1 rejected in words.csv"), err());
    }

    @Test
    void files_that_are_passed_over_by_their_names_are_named() throws IOException {
        ledger("2026-03-04,19.99,wire");
        for (String name : new String[] {"Cars.CSV", "words.csv.txt", "Rates.txt", "listings-2025.csv", "photo.jpg", "notes.txt"}) {
            Files.writeString(folder.resolve(name), "a,b\n1,2\n");
        }
        assertEquals(0, run("project", folder.toString()));
        for (String told : new String[] {"not read: Cars.CSV, for the name must be cars.csv",
            "not read: words.csv.txt, for the name must be words.csv", "not read: Rates.txt, for the name must be rates.csv",
            "not read: listings-2025.csv; put its rows into"}) {
            assertTrue(out().contains(told), told + "\n" + out());
        }
        assertFalse(out().contains("photo") || out().contains("notes.txt"), out());
    }

    @Test
    void the_file_for_a_reader_is_written_and_an_unknown_reader_is_wrong_usage() throws IOException {
        ledger("2026-03-04,19.99,wire");
        assertEquals(0, run("project", folder.toString(), "--for", "lender"), err());
        assertTrue(Files.readString(folder.resolve("file-for-lender.html")).contains("Made by the owner for a lender"));
        assertEquals(2, run("project", folder.toString(), "--for", "neighbour"));
        assertTrue(err().contains("self, buyer, lender, insurer"), err());
        Path rows = folder.resolve("x.csv");
        assertEquals(2, run("project", folder.toString(), "--for", "buyer", "--out", rows.toString()));
        assertTrue(err().contains("no rows for machines") && Files.notExists(rows), err());
    }

    @Test
    void a_page_is_not_written_over_a_file_that_is_read() throws IOException {
        ledger("2026-03-04,19.99,wire");
        String before = Files.readString(folder.resolve("ledger.csv"));
        assertEquals(2, run("project", folder.toString(), "--page", folder.resolve("ledger.csv").toString()));
        assertEquals(before, Files.readString(folder.resolve("ledger.csv")));
    }

    @Test
    void hostile_text_of_a_ledger_does_not_run_on_its_page() throws IOException {
        ledger("2026-03-04,19.99,<script>alert(1)</script>", "2026-03-04,9,=HYPERLINK(1)");
        assertEquals(0, run("project", folder.toString(), "--page", folder.resolve("p.html").toString()));
        assertFalse(Files.readString(folder.resolve("p.html")).contains("<script>alert"));
    }

    @Test
    void a_folder_of_listings_names_what_every_missing_file_would_answer() throws IOException {
        Files.writeString(folder.resolve("listings.csv"), "vehicle,model_year,mileage_mi,price_usd\nSivrette,2014,88000,9800\n"
                + "Sivrette,2016,71000,11900\nVelmarch,2018,54000,17400\n");
        assertEquals(0, run(folder.toString()), err());
        String page = page();
        for (String name : new String[] {"cars.csv", "fees.csv", "partout.csv", "parts.csv", "swaps.csv", "ledger.csv", "gates.csv",
                "alternatives.csv",
            "words.csv", "lines.csv", "assumptions.csv"}) {
            assertTrue(page.contains(name), name);
        }
        assertFalse(page.contains("Where the money is"));
    }

    @Test
    void a_folder_of_listings_cars_and_parts_says_what_comes_back() throws IOException {
        copy("listings.csv", "cars.csv", "lines.csv", "words.csv", "partout.csv", "parts.csv");
        assertEquals(0, run(folder.toString()), err());
        String page = page();
        assertTrue(page.contains("ledger.csv") && page.contains("What the parts bring") && page.contains("Now or later"),
                "parts and outlook");
        assertFalse(page.contains("Where the money is"));
    }

    @Test
    void a_folder_with_everything_holds_every_section_with_the_gates_at_its_head() throws IOException {
        assertEquals(0, run("sample-listings", "--page", folder.resolve("swapworth.html").toString()), err());
        String page = page();
        for (String heading : new String[] {"What must be settled first", "What was read", "Cars in play",
                "What each car costs at the door",
            "The finished swap", "The market in time", "Where the money is", "What is still to come", "What is left", "Finish or stop",
            "What it would cost to do it again", "Against what", "Now or later", "When to walk away", "Cautions"}) {
            assertTrue(page.contains(heading), heading);
        }
        assertTrue(page.indexOf("insurable: unknown") < page.indexOf("id=\"read\""), "gates that are not open come first");
        assertFalse(page.contains("ledger.csv (the money"), "nothing is named as missing that is there");
    }

    @Test
    void a_folder_without_listings_makes_a_page_of_its_money() throws IOException {
        ledger("2026-03-04,19.99,wire");
        assertEquals(0, run(folder.toString()), err());
        assertTrue(page().contains("Where the money is") && page().contains("listings.csv and cars.csv"));
    }

    @Test
    void a_folder_without_listings_tells_what_its_cars_cost_at_the_door_and_give_back() throws IOException {
        copy("cars.csv", "fees.csv", "partout.csv", "parts.csv", "words.csv", "rates.csv");
        assertEquals(0, run(folder.toString()), err());
        assertTrue(out().contains("Landed cost of each car") && out().contains("Donors side by side"), out());
        assertTrue(out().contains("Not here: listings.csv (listings of such cars"), out());
        for (String heading : new String[] {"What each car costs at the door", "What the parts bring", "Which donor, which recipient",
            "What further files would answer"}) {
            assertTrue(page().contains(heading), heading);
        }
        Files.delete(folder.resolve("fees.csv"));
        Files.delete(folder.resolve("partout.csv"));
        assertEquals(1, run(folder.toString()), "cars.csv alone answers nothing");
        assertTrue(err().contains("there is no listings.csv"), err());
    }
}
