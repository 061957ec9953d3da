package swapworth.command;

import static java.util.stream.Collectors.joining;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import swapworth.CommandRun;
import swapworth.InOneLine;

/** That each step accounts for every file that it reads, in the terminal and in its exit code. */
class AccountsTest {
    /** Of each file what an account of it says. */
    private static final Map<String, String> FILES = new LinkedHashMap<>();
    /** The steps, each with the files that it reads. */
    private static final Map<String, String> STEPS = new LinkedHashMap<>();

    static {
        FILES.put("listings.csv", "rows: 12 used, 0 set aside, 1 rejected");
        FILES.put("swaps.csv", "swaps.csv: 2 rows: 1 used, 0 set aside, 1 rejected");
        for (String file : List.of("cars.csv", "fees.csv", "partout.csv", "parts.csv", "ledger.csv", "gates.csv", "alternatives.csv")) {
            FILES.put(file, file + ", ");
        }
        for (String file : List.of("words.csv", "rates.csv", "lines.csv", "assumptions.csv")) {
            FILES.put(file, file + ":");
        }
        String settings = " words.csv rates.csv lines.csv";
        STEPS.put("check FOLDER", "listings.csv cars.csv" + settings);
        STEPS.put("judge FOLDER", "listings.csv assumptions.csv" + settings);
        STEPS.put("index FOLDER", "listings.csv assumptions.csv" + settings);
        STEPS.put("value --market FOLDER --subject FOLDER", "listings.csv cars.csv assumptions.csv" + settings);
        STEPS.put("landed FOLDER", "listings.csv cars.csv fees.csv assumptions.csv" + settings);
        STEPS.put("partout FOLDER", "listings.csv cars.csv fees.csv partout.csv parts.csv assumptions.csv" + settings);
        STEPS.put("swap FOLDER", "listings.csv cars.csv swaps.csv partout.csv parts.csv assumptions.csv" + settings);
        STEPS.put("project FOLDER", String.join(" ", FILES.keySet()));
        STEPS.put("project FOLDER --for buyer --page FOLDER/buyer.html", String.join(" ", FILES.keySet()));
        STEPS.put("FOLDER", String.join(" ", FILES.keySet()));
    }

    @TempDir
    Path folder;

    private String out = "";
    private String err = "";

    @BeforeEach
    void files() throws IOException {
        write("listings.csv", "vehicle,model_year,mileage_mi,price_usd\n" + IntStream.range(0, 12).mapToObj(i -> (i % 2 == 0 ? "Sivrette"
                : "Velmarch") + "," + (2010 + i) + "," + (120_000 - 7_000 * i) + "," + (6_000 + 700 * i) + "\n").collect(joining()));
        write("cars.csv", "name,role,vehicle,model_year,mileage_mi,planned_bid,gear_line\nhit,donor,Velmarch,2016,70000,4000,\n"
                + "bare,recipient,Sivrette,2012,90000,3000,\nmine,finished,Sivrette,2012,90000,,Velmarch\n");
        write("fees.csv", "table,kind,from,to,flat,percent\ntax,tax,,,,5\n");
        write("partout.csv", "car,part,goes_to\nhit,engine,swap\nhit,wheels,sell\n");
        write("parts.csv", "part,price\nengine,2000\nwheels,300\n");
        write("swaps.csv", "vehicle,model_year,mileage_mi,price_usd\nSivrette,2014,80000,9000\n");
        write("ledger.csv", "date,amount,note\n2026-03-04,19.99,wire\n");
        write("gates.csv", "gate,answer\ninsurable,yes\n");
        write("alternatives.csv", "alternative,item,amount\nstock car,car,9000\n");
        write("words.csv", "column,word,means\n*,currency,USD\n");
        write("rates.csv", "date,from,to,rate\n2026-03-01,EUR,USD,1.1\n");
        write("lines.csv", "vehicle,power_kw\nSivrette,112\n");
        write("assumptions.csv", "name,middle,spread\nage_slope,-9,2\n");
    }

    private void write(String name, String text) throws IOException {
        Files.writeString(folder.resolve(name), text);
    }

    private int run(String words) {
        CommandRun ran = CommandRun.of(words.replace("FOLDER", folder.toString()).split(" "));
        out = ran.out();
        err = ran.err();
        return ran.code();
    }

    /** Adds a row that cannot be read, whatever the file. */
    private void addBadRow(String file) throws IOException {
        write(file, Files.readString(folder.resolve(file)) + "\"never closed,1\n");
    }

    @Test
    void a_rejected_row_of_any_file_that_a_step_reads_is_told_once_and_fails_where_strictness_is_asked_for() throws IOException {
        for (String words : STEPS.keySet()) {
            assertEquals(0, run(words + " --strict"), words + err);
        }
        for (String file : FILES.keySet()) {
            addBadRow(file);
        }
        for (Map.Entry<String, String> step : STEPS.entrySet()) {
            assertEquals(1, run(step.getKey() + " --strict"), step.getKey());
            List<String> files = Stream.of(step.getValue().split(" ")).sorted().toList();
            assertEquals("--strict: " + files.stream().map(f -> "1 rejected in " + f).collect(joining(", ")), err.strip(), step.getKey());
            // The step 'check' has tables in place of sentences.
            for (String file : step.getKey().startsWith("check") ? List.<String>of() : files) {
                String told = InOneLine.of(out);
                assertTrue(told.contains(FILES.get(file)), step.getKey() + ", " + file + "\n" + out);
                assertEquals(2, told.split("(rejected|changes nothing|to look at): " + file + ":", -1).length,
                        step.getKey() + ", " + file + "\n" + out);
            }
        }
    }

    @Test
    void without_strictness_a_rejected_row_is_no_failure() throws IOException {
        addBadRow("cars.csv");
        addBadRow("listings.csv");
        assertEquals(0, run("FOLDER"), err);
        assertEquals(0, run("landed FOLDER"), err);
    }

    @Test
    void assumptions_that_change_nothing_are_told_without_listings_too() throws IOException {
        write("assumptions.csv", "name,middle\nage_slop,-9\nage_slope,much\n");
        for (String words : List.of("landed FOLDER", "landed FOLDER --target 5000", "partout FOLDER", "project FOLDER", "swap FOLDER",
                "FOLDER")) {
            toldOnce(words);
        }
        Files.delete(folder.resolve("listings.csv"));
        for (String words : List.of("landed FOLDER", "partout FOLDER", "project FOLDER", "FOLDER")) {
            toldOnce(words);
        }
    }

    @Test
    void where_no_listing_can_be_used_what_was_not_understood_of_words_csv_is_told_too() throws IOException {
        write("words.csv", "column,word,means\n*,decimal mark,coma\n");
        write("listings.csv", "vehicle;model_year;price\nSivrette;2014;12.500\nSivrette;2015;13.500\n");
        for (String words : List.of("check FOLDER", "judge FOLDER", "index FOLDER", "swap FOLDER", "FOLDER")) {
            assertEquals(1, run(words), words);
            assertTrue(err.contains("no usable row") && err.contains("  words.csv:2 ") && err.contains("  listings.csv:2 price"),
                    words + err);
        }
    }

    private void toldOnce(String words) {
        assertEquals(0, run(words), err);
        assertEquals(3, InOneLine.of(out).split("changes nothing: assumptions.csv:", -1).length, words + "\n" + out);
        assertTrue(InOneLine.of(out).contains("did you mean age_slope?"), out);
    }

    @Test
    void cars_without_a_column_for_their_roles_are_asked_about_in_every_step_that_reads_them() throws IOException {
        write("cars.csv", Files.readString(folder.resolve("cars.csv")).replace("name,role,", "name,plays,"));
        for (String words : STEPS.keySet()) {
            boolean read = STEPS.get(words).contains("cars.csv");
            assertEquals(words.startsWith("swap") ? 1 : 0, run(words), err);
            assertEquals(read, InOneLine.of(out).contains("so that no car counts as donor, recipient or finished"), words + "\n" + out);
            assertEquals(read, out.contains("header,plays,role"), out);
        }
        write("words.csv", "column,word,means\nheader,plays,role\n");
        assertEquals(0, run("swap FOLDER"), err);
        assertFalse(out.contains("no car counts as"), out);
    }
}
