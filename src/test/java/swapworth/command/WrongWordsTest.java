package swapworth.command;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import swapworth.CommandRun;

/** What is said of a command line that makes no sense: plain words, what would make sense, no name of a class. */
class WrongWordsTest {
    private static final String ALL_STEPS = "check, judge, value, index, landed, partout, swap, project, notebook";

    @TempDir
    Path folder;

    private String out = "";
    private String err = "";

    private int run(String... arguments) {
        CommandRun ran = CommandRun.of(arguments);
        out = ran.out();
        err = ran.err();
        return ran.code();
    }

    private String listings() throws IOException {
        return Files.writeString(folder.resolve("listings.csv"), "vehicle,model_year,mileage_mi,price_usd\nSivrette,2014,88000,9800\n"
                + "Sivrette,2016,71000,11900\nSivrette,2012,120500,7200\nVelmarch,2018,54000,17400\n").toString();
    }

    private void refused(String said, String... arguments) {
        assertEquals(2, run(arguments), String.join(" ", arguments) + ": " + err);
        assertTrue(err.contains(said), err);
        assertEquals("", out, "a wrong word is told before any work");
    }

    @Test
    void a_mistyped_step_is_named_with_the_nearest_and_all_there_are() throws IOException {
        String said = "no step 'chek'; did you mean check? The steps are: " + ALL_STEPS;
        refused(said, "chek", listings());
        refused(said, "chek");
        refused("no step 'Judge'; did you mean judge?", "Judge", listings());
        refused("no step 'frobnicate'. The steps are: " + ALL_STEPS, "frobnicate", listings());
        assertEquals(1, run("frobnicate"));
        assertTrue(err.contains("no such folder") && err.contains(ALL_STEPS), err);
    }

    @Test
    void every_step_that_is_listed_is_one() {
        for (String step : ALL_STEPS.split(", ")) {
            assertEquals(0, run(step, "--help"), step);
            assertEquals(0, run("--help"));
            assertTrue(out.contains("\n  " + step + " "), "the help names " + step);
        }
    }

    @Test
    void a_step_that_does_not_stand_first_is_told_where_it_belongs() throws IOException {
        refused("the step stands first: swapworth judge", "--strict", "judge", listings());
        refused("'judge' is one word too many; a step stands first", folder.toString(), "judge");
        refused("this is a file; needed: the folder in which it lies, or a step before it", listings());
        refused("'more' is one word too many for landed", "landed", folder.toString(), "more");
    }

    @Test
    void an_option_that_is_not_there_is_named_with_those_that_are() throws IOException {
        refused("no option '--otu'; did you mean --out? The options are: --help, --page, --out, --strict", "judge", listings(), "--otu",
                "x");
        refused("no option '--colour'. The options are:", "judge", listings(), "--colour");
    }

    @Test
    void what_is_missing_or_stated_twice_is_named() throws IOException {
        refused("needed: LISTINGS (one or several files of listings", "judge");
        refused("needed: --out FILE.csv", "judge", listings(), "--out");
        refused("--subject CARS", "value", "--market", listings());
        refused("--out is stated twice", "judge", listings(), "--out", "a", "--out", "b");
        refused("--strict takes no value; leave out '=yes'", "judge", listings(), "--strict=yes");
        refused("--out: '' cannot be the name", "judge", listings(), "--out", "");
    }

    @Test
    void amounts_may_have_commas_between_thousands_and_nothing_else() throws IOException {
        Files.writeString(folder.resolve("cars.csv"), "name,vehicle,seller,planned_bid,price_includes\n"
                + "hit,Velmarch,auction,2000,neither\n");
        Files.writeString(folder.resolve("fees.csv"), "table,kind,from,to,flat,percent\npremium,fee,0,,285,\n");
        List<String> answers = new ArrayList<>();
        for (String amount : List.of("6000", "6,000", "6,000.00", " 6000.0 ")) {
            assertEquals(0, run("landed", folder.toString(), "--target", amount), err);
            answers.add(out);
        }
        assertEquals(1, answers.stream().distinct().count(), "one amount however it is written");
        // By hand: 6,000 - 285 = 5,715.
        assertTrue(answers.get(0).contains("5,715"), answers.get(0));
        for (String wrong : List.of("60,00,0", ",600", "$6000", "-5", "0", "1e4", "six", "", "6 000", "NaN")) {
            refused("--target: '" + wrong + "' is no amount above 0; write it in digits, for instance 6000 or 6,000 or 6000.50", "landed",
                    folder.toString(), "--target", wrong);
        }
        for (String comma : List.of("6,00", "6.000,00")) {
            refused("--target: '" + comma + "' is written with a decimal comma, which no words.csv of the folder states; write "
                    + comma.replace(".", "").replace(',', '.') + ", or state it there: *,decimal mark,comma", "landed",
                    folder.toString(), "--target", comma);
        }
        refused("--target: '6.000' can be read in two ways; write 6000 or 6", "landed", folder.toString(), "--target", "6.000");
    }

    @Test
    void where_words_csv_states_the_decimal_comma_an_amount_is_read_by_it() throws IOException {
        Files.writeString(folder.resolve("cars.csv"), "name,vehicle,role,planned_bid,seller\nhit,Velmarch,donor,5000,auction\n");
        Files.writeString(folder.resolve("fees.csv"), "table,kind,flat\ntitle papers,fee,285\n");
        Files.writeString(folder.resolve("words.csv"), "column,word,means\n*,decimal mark,comma\n");
        List<String> answers = new ArrayList<>();
        for (String amount : List.of("6000", "6.000", "6.000,00", "6000,0", "6000.00", "6,000.00")) {
            assertEquals(0, run("landed", folder.toString(), "--target", amount), amount + ": " + err);
            answers.add(out);
        }
        assertEquals(1, answers.stream().distinct().count(), "one amount however it is written");
        assertTrue(answers.get(0).contains("5,715"), answers.get(0));
        refused("--target: '6,000' can be read in two ways, since words.csv states the decimal comma; write 6000 or 6", "landed",
                folder.toString(), "--target", "6,000");
        refused("--target: '6,00,0' is no amount above 0; write it in digits, for instance 6000 or 6,000 or 6000.50", "landed",
                folder.toString(), "--target", "6,00,0");
    }

    @Test
    void days_months_and_times_to_run_have_plain_messages_too() throws IOException {
        for (String wrong : List.of("12/03/2026", "2026-3-1", "2026-02-30", "soon")) {
            refused("--on: '" + wrong + "' is no date; write it as year-month-day, for instance 2026-03-31", "judge", listings(),
                    "--on", wrong);
        }
        refused("--on: 9999-12-31: the year 9999 is not one of a car; write it as year-month-day, for instance"
                + " 2024-04-03", "judge", listings(), "--on", "9999-12-31");
        refused("--base: '3' is no month; write it as year-month", "index", listings(), "--base", "3");
        for (String wrong : List.of("0", "-1", "1e3", "9999999999", "2.5")) {
            refused("--limit: '" + wrong + "' is no time to run; write whole seconds", "notebook", "a.jsh", "--limit=" + wrong);
        }
    }

    @Test
    void a_column_that_is_empty_is_there_all_the_same() throws IOException {
        Path file = Files.writeString(folder.resolve("empty.csv"), """
                vehicle,model_year,mileage,price,colour,dealer
                Velmarch,2016,80000,9000,red,
                Velmarch,2017,70000,9900,blue,
                """);
        refused("--with: no used row says anything in the column 'dealer'; the others are colour", "judge", file.toString(), "--with",
                "dealer");
        refused("--with: the files have no further column 'price'; they have colour", "judge", file.toString(), "--with", "price");
    }

    @Test
    void no_message_names_a_class() throws IOException {
        String listings = listings();
        Files.writeString(folder.resolve("cars.csv"), "name,vehicle\nhit,Velmarch\n");
        List<String> rests = List.of("--target 6,00", "--target x", "--on x", "--level x", "--with x", "--base x", "--line x", "--limit x",
                "--for x", "--out", "--page", "--market", "--subject", "--strict=x", "--ipynb=x", "--folder", "-x", "x y z", "--page /",
                "--out / --out /", "--help=x", "--with", "--on= --level=");
        List<String> starts = new ArrayList<>(Stream.of(ALL_STEPS.split(", ")).toList());
        starts.addAll(List.of("chek", folder.toString(), folder.resolve("none").toString(), "a\0b"));
        for (String start : starts) {
            // Left out are what would run a notebook in another Java, and the whole sample again and again.
            boolean ofFolders = List.of("landed", "partout", "swap", "project").contains(start);
            List<String> middles = start.equals("notebook") ? List.of("a\0b")
                    : List.of(ofFolders ? listings : "", listings, folder.toString(), folder.resolve("none").toString(), "a\0b");
            for (String middle : middles) {
                for (String rest : rests) {
                    List<String> words = new ArrayList<>(List.of(start));
                    if (!middle.isEmpty()) {
                        words.add(middle);
                    }
                    words.addAll(List.of(rest.split(" ")));
                    run(words.toArray(String[]::new));
                    assertFalse(err.contains("Exception") || err.contains("java.") || err.contains("swapworth.command"),
                            words + ": " + err);
                    assertFalse(err.contains("BigDecimal") || err.contains("Path"), words + ": " + err);
                }
            }
        }
    }

    @Test
    void of_a_folder_its_listings_are_taken() throws IOException {
        listings();
        for (String step : List.of("check", "judge")) {
            assertEquals(0, run(step, folder.toString()), err);
            assertTrue(out.contains("4 rows: 4 used"), out);
        }
        Files.writeString(folder.resolve("cars.csv"), "name,vehicle\nhit,Velmarch\n");
        assertEquals(0, run("value", "--market", folder.toString(), "--subject", folder.toString()), err);
        assertTrue(out.contains("hit"), out);
        Path empty = Files.createDirectory(folder.resolve("empty"));
        assertEquals(1, run("judge", empty.toString()));
        assertTrue(err.contains("listings.csv: there is no such file"), err);
    }

    @Test
    void without_a_folder_the_sample_is_taken_and_said_first() {
        assertEquals(0, run("landed"), err);
        assertTrue(out.startsWith("This is the sample; for your own files: swapworth FOLDER"), out);
        assertEquals(0, run("landed", "sample-listings"), err);
        assertFalse(out.contains("This is the sample"), out);
    }

    @Test
    void a_working_folder_with_files_of_its_own_is_taken_before_the_sample() throws Exception {
        assertEquals(Optional.empty(), Inputs.ownFolder(folder));
        listings();
        assertEquals(Optional.of(folder), Inputs.ownFolder(folder));
        Path log = folder.resolve("log.txt");
        Process other = new ProcessBuilder(Path.of(System.getProperty("java.home"), "bin", "java").toString(), "-cp", absolute(),
                Main.class.getName()).directory(folder.toFile()).redirectErrorStream(true).redirectOutput(log.toFile()).start();
        assertEquals(0, other.waitFor(), Files.readString(log));
        assertTrue(Files.readString(log).startsWith("4 rows: 4 used"), Files.readString(log));
        assertTrue(Files.exists(folder.resolve("swapworth.html")));
    }

    /** The class path, whatever folder it is asked from. */
    private static String absolute() {
        String separator = System.getProperty("path.separator");
        return String.join(separator, Stream.of(System.getProperty("java.class.path").split(separator))
                .map(p -> Path.of(p).toAbsolutePath().toString()).toList());
    }
}
