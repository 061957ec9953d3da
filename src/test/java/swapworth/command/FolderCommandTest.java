package swapworth.command;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import swapworth.InOneLine;
import swapworth.report.FolderPage;

/** What a folder's page and terminal say first and last. */
class FolderCommandTest {
    private static final Pattern RANGE = Pattern.compile("80 % range (-?[\\d,.]*\\d) to (-?[\\d,.]*\\d)");

    @TempDir
    static Path sampleFolder;

    private static Told sample;
    /** The sample before anything was bought. */
    private static Told choosing;

    @TempDir
    Path folder;

    /** What the terminal and the page of a folder say. */
    private record Told(String out, String page) {

        static Told of(Path folder, Path page) throws IOException {
            ByteArrayOutputStream out = new ByteArrayOutputStream();
            PrintStream terminal = new PrintStream(out, true, StandardCharsets.UTF_8);
            assertEquals(0, Main.run(terminal, terminal, folder.toString(), "--page", page.toString()));
            return new Told(out.toString(StandardCharsets.UTF_8), unbound(Files.readString(page)));
        }

        /** The last sentences of the terminal, from the heading on; lines further in go on with one. */
        List<String> terminal() {
            int begin = out.lastIndexOf("\nIn short\n");
            return begin < 0 ? List.of() : Pattern.compile("\n(?=  \\S)").splitAsStream(out.substring(begin + "\nIn short".length()))
                    .filter(s -> !s.isBlank()).map(InOneLine::of).toList();
        }

        String section(String id) {
            int begin = page.indexOf("<section id=\"" + id + "\">");
            return begin < 0 ? "" : page.substring(begin, page.indexOf("</section>", begin));
        }

        /** The answers in short, each with the section that it leads to. */
        List<Point> answers() {
            List<Point> points = new ArrayList<>();
            Pattern.compile("<dt><a href=\"#([a-z-]+)\">([^<]+)</a></dt>(.*)</div>").matcher(section("in-short")).results()
                    .forEach(led -> Pattern.compile("<dd>(.*?)</dd>").matcher(led.group(3)).results()
                            .forEach(m -> points.add(new Point(led.group(1), led.group(2), m.group(1).replace("&#39;", "'")))));
            return points;
        }

        List<String> sentences() {
            return answers().stream().map(Point::words).toList();
        }

        String about(String id) {
            return String.join("\n", answers().stream().filter(a -> a.section().equals(id)).map(Point::words).toList());
        }
    }

    private record Point(String section, String heading, String words) {
    }

    @BeforeAll
    static void ask_the_sample() throws IOException {
        sample = Told.of(Path.of("sample-listings"), sampleFolder.resolve("page.html"));
        Path before = Files.createDirectory(sampleFolder.resolve("before"));
        for (String name : List.of("listings.csv", "cars.csv", "lines.csv", "words.csv", "rates.csv", "fees.csv", "partout.csv",
                "parts.csv")) {
            Files.copy(Path.of("sample-listings", name), before.resolve(name));
        }
        choosing = Told.of(before, before.resolve("page.html"));
    }

    /** Thirty cars that are seen twice, the last of them a second time at the price that is given. */
    private Told thirty(int lastPrice) throws IOException {
        StringBuilder text = new StringBuilder("id,seen_on,vehicle,model_year,mileage_mi,price_usd,price_kind,seller\n");
        for (int i = 0; i < 30; i++) {
            int year = 2010 + i % 9;
            int miles = 40_000 + 7001 * (i % 13);
            int price = 10_000 + 400 * (i % 9) + 97 * (i % 7);
            for (int day : new int[] {1 + i % 9, 19 + i % 9}) {
                text.append("a%d,2026-09-%02d,Sivrette,%d,%d,%d,asking,private%n".formatted(i, day, year, miles,
                        i == 29 && day > 18 ? lastPrice : price));
            }
        }
        Files.writeString(folder.resolve("listings.csv"), text);
        return Told.of(folder, folder.resolve("page.html"));
    }

    /** One ledger cannot tell two swaps apart: it is held against the first finished car of cars.csv. */
    @Test
    void a_second_finished_car_is_said_to_be_in_none_of_the_money() throws IOException {
        copyOfSample("listings.csv", "lines.csv", "words.csv", "rates.csv", "ledger.csv", "swaps.csv");
        List<String> cars = Files.readAllLines(Path.of("sample-listings", "cars.csv"));
        String said = "cars.csv has one more finished car, 'the other swap': it is in none of these figures";
        for (boolean another : new boolean[] {false, true}) {
            String more = another ? "\n" + cars.get(cars.size() - 1).replace("the swap,", "the other swap,") : "";
            Files.writeString(folder.resolve("cars.csv"), String.join("\n", cars) + more + "\n");
            Told told = Told.of(folder, folder.resolve("page.html"));
            assertEquals(another, String.join(" ", told.terminal()).contains(said));
            assertEquals(another, told.about("equity").contains(said));
            ByteArrayOutputStream out = new ByteArrayOutputStream();
            Main.run(new PrintStream(out, true, StandardCharsets.UTF_8), System.err, "project", folder.toString());
            assertEquals(another, InOneLine.of(out.toString(StandardCharsets.UTF_8)).contains(said));
        }
    }

    private void copyOfSample(String... names) throws IOException {
        for (String name : names) {
            Files.copy(Path.of("sample-listings", name), folder.resolve(name));
        }
    }

    @Test
    void the_answers_stand_before_all_but_what_must_be_settled_first() {
        List<String> ids = Pattern.compile("<section id=\"([a-z-]+)\">").matcher(sample.page).results().map(m -> m.group(1)).toList();
        assertEquals(List.of("gates", "in-short", "read"), ids.subList(0, 3));
    }

    @Test
    void a_call_of_the_library_makes_the_same_page() {
        assertEquals(sample.page, unbound(FolderPage.of(Path.of("sample-listings")).page().html()));
    }

    /** On the page a number and its per cent do not break apart; the terminal has a space there. */
    private static String unbound(String html) {
        return html.replace('\u00a0', ' ');
    }

    @Test
    void the_terminal_ends_with_the_sentences_of_the_page() {
        assertEquals(7, sample.sentences().size(), "on offer, the finished car, what is left, finish or stop, against what, the market,"
                + " what is unsure;"
                + " both cars are bought, so that nothing is said of which and when to buy");
        assertEquals(sample.sentences(), sample.terminal());
        assertEquals(choosing.sentences(), choosing.terminal());
    }

    @Test
    void which_cars_to_buy_is_said_until_both_are_bought_and_shown_always() {
        assertEquals("", sample.about("choice"));
        assertTrue(sample.section("choice").contains("Donors side by side"));
        assertTrue(choosing.about("choice").contains("Donors: of the 2 compared 'tail hit' costs least"), choosing.about("choice"));
    }

    @Test
    void each_answer_leads_to_a_section_that_shows_its_range() {
        assertEquals(List.of("on-offer", "swap", "swap", "equity", "finish", "alternatives", "alternatives", "market",
                "market"), led(sample));
        assertEquals(List.of("on-offer", "in-play", "choice", "choice"), led(choosing).subList(0, 4));
    }

    /** The section of each range in the answers, in which it must stand. */
    private static List<String> led(Told told) {
        List<String> led = new ArrayList<>();
        for (Point answer : told.answers()) {
            String section = told.section(answer.section());
            assertTrue(section.contains("<h2>" + answer.heading() + "</h2>"), answer.words());
            Matcher range = RANGE.matcher(answer.words());
            while (range.find()) {
                assertTrue(section.contains(range.group(1)) && section.contains(range.group(2)), answer.section() + ": " + range.group());
                led.add(answer.section());
            }
        }
        return led;
    }

    @Test
    void the_chart_of_what_is_left_states_the_range_of_its_table() {
        Matcher range = RANGE.matcher(sample.about("equity"));
        assertTrue(range.find());
        assertTrue(sample.section("equity").contains("80 % range " + range.group(1) + " to " + range.group(2)), range.group());
    }

    @Test
    void no_value_stands_without_its_range_count_day_and_level_of_trade() {
        String car = "80 % range [\\d,]+ to [\\d,]+; private asking on 2026-10-\\d\\d; by \\d+ cars of its line, \\d+ in all";
        assertTrue(Pattern.compile(car).matcher(sample.about("on-offer")).find(), sample.about("on-offer"));
        String swap = "80 % range [\\d,]+ to [\\d,]+; the price of this one car, private asking on 2026-10-30.*85 cars of the line";
        assertTrue(Pattern.compile(swap).matcher(sample.about("swap")).find(), sample.about("swap"));
        String left = "80 % range -[\\d,]+ to -[\\d,]+.*chance of a loss.*private sold on 2026-10-30.*33 rows of the ledger as of "
                + "2026-10-28";
        assertTrue(Pattern.compile(left).matcher(sample.about("equity")).find(), sample.about("equity"));
        assertEquals(2, Pattern.compile("80 % range [\\d,]+ to [\\d,]+; 2026-10-30\\)[^;]*\\((auction|private)\\)[^;]*by \\d+ offers of"
                + " parts")
                .matcher(choosing.about("choice")).results().count(), choosing.about("choice"));
    }

    @Test
    void cars_that_money_does_not_tell_from_the_cheapest_are_named() {
        assertTrue(choosing.about("choice").contains("Recipients: of the 2 compared 'dead roadster' (engine dead) costs least"),
                choosing.about("choice"));
        assertTrue(choosing.about("choice").contains("Money tells no real difference from 'tidy roadster' (dearer in "),
                choosing.about("choice"));
        assertFalse(choosing.about("choice").contains("'front hit'"), "it is dearer beyond doubt");
    }

    @Test
    void the_terminal_lists_what_is_on_offer_and_says_where_all_rows_are() {
        assertTrue(sample.out.contains("Cars on offer in the 14 days up to 2026-10-30, USD"), sample.out);
        assertTrue(sample.out.contains("784 rows are judged in all: the step 'judge' and the page show them."), sample.out);
        assertFalse(sample.out.contains("Listings in the order of the files"), sample.out);
        assertTrue(sample.out.lines().count() < 250, sample.out.lines().count() + " lines");
        assertTrue(sample.page.contains("Listings in the order of the files"));
    }

    @Test
    void cars_below_their_range_are_counted_and_the_lowest_is_named_with_its_remarks() throws IOException {
        Told told = thirty(5_000);
        long below = Pattern.compile("<td>below</td>").matcher(told.section("on-offer")).results().count();
        assertTrue(below > 0, told.out);
        String words = told.about("on-offer");
        assertTrue(words.startsWith("Of 30 cars on offer in the 14 days up to 2026-09-27 " + below + " stand"), words);
        assertTrue(words.contains("80 % range (about one in ten does by chance). Lowest against its value stands 'a29', Sivrette: USD "
                + "5,000, gap -54 %, fair value "), words);
        assertTrue(words.endsWith(": below the range, and the row is silent on: title, damage, whether it runs."), words);
    }

    @Test
    void a_price_that_looks_mistyped_is_not_the_lowest_of_all() throws IOException {
        String words = thirty(1).about("on-offer");
        assertTrue(words.startsWith("Of 29 cars on offer"), words);
        assertTrue(words.contains("not counted: 'a29', whose price is so far from the value that it looks mistyped"), words);
        assertFalse(words.contains("Lowest against its value stands 'a29'"), words);
    }

    @Test
    void a_market_that_cannot_be_told_is_no_answer() throws IOException {
        assertEquals(List.of("on-offer", "model"), thirty(10_800).answers().stream().map(Point::section).toList());
    }

    @Test
    void without_further_files_the_listings_alone_answer() throws IOException {
        Told told = thirty(10_800);
        assertEquals(told.sentences(), told.terminal());
        assertTrue(told.about("model")
                .matches("How unsure one price is: half of \\d+ prices lie within [\\d.]+ % of their value, and \\d+ %"
                + " inside their 80 % range\\."), told.about("model"));
    }

    @Test
    void who_only_thinks_of_it_is_answered_by_ways_and_gates_alone() throws IOException {
        Files.writeString(folder.resolve("alternatives.csv"), """
                alternative,item,amount,kind,month
                swap,both cars and the work,24000,cost,0
                swap,the car then,12000,resale,
                factory car,the car,31000,cost,0
                factory car,the car then,19000,resale,
                """);
        Told ways = Told.of(folder, folder.resolve("page.html"));
        assertTrue(ways.about("alternatives").startsWith("Of 2 ways "), ways.out);
        assertTrue(ways.page.contains("what is spent, still to come and left is not told"));
        Files.delete(folder.resolve("alternatives.csv"));
        Files.writeString(folder.resolve("gates.csv"), "gate,answer\nlawful here,no\n");
        Told gates = Told.of(folder, folder.resolve("page.html"));
        assertTrue(gates.about("gates").startsWith("Before any of this: 'lawful here' is answered with no"), gates.out);
    }

    @Test
    void a_ledger_of_payments_alone_is_not_said_to_know_what_is_still_to_come() throws IOException {
        Files.writeString(folder.resolve("ledger.csv"), "date,amount,note\n2026-08-03,10200,roadster\n2026-08-19,5300,front hit\n");
        Told told = Told.of(folder, folder.resolve("page.html"));
        assertEquals("As of 2026-08-19 you have USD 15,500.00 in it, net of refunds and of what was sold. Every row is done: what it will"
                + " be at completion is not told until the ledger has rows of what is still to be paid (status committed or estimate)."
                + " That is by 2 rows of the ledger as of 2026-08-19.", told.about("ledger"));
        assertTrue(told.out.contains("Every row is done."), told.out);
        Files.writeString(folder.resolve("ledger.csv"), "date,amount,note,status\n2026-08-03,10200,roadster,actual\n"
                + "2026-08-19,5300,front hit,committed\n");
        assertTrue(Told.of(folder, folder.resolve("page.html")).about("ledger").contains("At completion it will be USD 15,500"));
    }

    @Test
    void a_car_of_which_nobody_says_who_sells_it_is_not_called_unknown() throws IOException {
        Files.writeString(folder.resolve("fees.csv"), "table,kind,from,to,flat,percent\npremium,fee,1,,160,\n");
        Files.writeString(folder.resolve("cars.csv"), "name,role,vehicle,model_year,mileage_mi,price\n"
                + "red,donor,Sivrette,2014,60000,6000\n");
        assertTrue(thirty(10_800).about("landed").endsWith("for a price or bid of 6,000 (seller not stated)."));
    }

    @Test
    void the_page_says_what_offers_of_parts_would_answer_and_how_the_highest_bid_is_found() throws IOException {
        Files.writeString(folder.resolve("fees.csv"), "table,kind,from,to,flat,percent\npremium,fee,1,,160,\n");
        Files.writeString(folder.resolve("cars.csv"), "name,role,vehicle,model_year,mileage_mi,price\n"
                + "red,donor,Sivrette,2014,60000,6000\n");
        Files.writeString(folder.resolve("partout.csv"), "car,part,goes_to,price\nred,wheels,sell,300\n");
        Told told = thirty(10_800);
        assertTrue(told.section("further").contains("parts.csv (used parts seen on offer): "), told.section("further"));
        assertTrue(told.section("landed").contains("--target AMOUNT"), told.section("landed"));
        assertFalse(sample.section("further").contains("parts.csv"), sample.section("further"));
    }

    @Test
    void with_fees_alone_the_answer_is_what_stands_at_the_door() throws IOException {
        Files.writeString(folder.resolve("fees.csv"), "table,kind,from,to,flat,percent\npremium,fee,1,,160,\n");
        Files.writeString(folder.resolve("cars.csv"), """
                name,role,vehicle,model_year,mileage_mi,planned_bid,seller
                dear one,donor,Sivrette,2014,60000,6000,auction
                cheap one,donor,Sivrette,2012,90000,4000,auction
                """);
        Told told = thirty(10_800);
        assertEquals("Of 2 cars in play 'cheap one' costs least at the door: USD 4,160.00 for a price or bid of 4,000 (auction).",
                told.about("landed"), told.out);
    }

    @Test
    void a_donor_and_a_recipient_are_both_bought_and_not_held_against_each_other() throws IOException {
        Files.writeString(folder.resolve("fees.csv"), "table,kind,from,to,flat,percent\npremium,fee,1,,160,\n");
        Files.writeString(folder.resolve("cars.csv"), """
                name,role,vehicle,model_year,mileage_mi,planned_bid,seller,runs
                dear one,donor,Sivrette,2014,60000,6000,auction,drives
                body,recipient,Sivrette,2011,120000,2000,auction,drives
                cheap one,donor,Sivrette,2012,90000,4000,auction,engine dead
                """);
        assertEquals("Of 2 cars in play (donor) 'cheap one' (engine dead) costs least at the door: USD 4,160.00 for a price or"
                + " bid of 4,000 (auction). 'body' (recipient) costs at the door: USD 2,160.00 for a price or bid of 2,000 (auction).",
                thirty(10_800).about("landed"));
    }

    @Test
    void the_cars_that_one_thinks_of_buying_are_among_the_answers() throws IOException {
        Files.writeString(folder.resolve("cars.csv"), """
                name,role,vehicle,model_year,mileage_mi,price,seller
                far too dear,recipient,Sivrette,2014,60000,30000,private
                as usual,recipient,Sivrette,2014,61000,11500,private
                half a price,,Sivrette,2014,62000,4000,private
                """);
        Told told = thirty(10_800);
        assertTrue(told.about("in-play").matches("Of 3 cars in play with a price or bid 1 stands above its 80 % range, 1 inside and 1"
                + " below: 'far too dear', recipient, above: USD 30,000 \\(private asking\\), fair value [\\d,]+ \\(80 % range [\\d,]+ to"
                + " [\\d,]+; 2026-09-27; by 30 cars of its line, 30 in all\\); 'half a price', below: USD 4,000 .*\\. Below the"
                + " range: look for what the row does not say\\."),
                told.about("in-play"));
        assertFalse(told.about("in-play").contains("as usual"), "what lies inside needs no words where others do not");
        Files.writeString(folder.resolve("ledger.csv"), "date,amount,note,car,category\n2026-09-02,9000,body,recipient,purchase\n"
                + "2026-09-03,5000,wreck,donor,purchase\n");
        assertEquals("", Told.of(folder, folder.resolve("page.html")).about("in-play"), "both are bought");
    }

    @Test
    void where_the_page_cannot_be_written_the_answers_are_told_all_the_same() throws IOException {
        thirty(10_800);
        Files.createDirectory(folder.resolve("swapworth.html"));
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        ByteArrayOutputStream err = new ByteArrayOutputStream();
        assertEquals(1, Main.run(new PrintStream(out, true, StandardCharsets.UTF_8), new PrintStream(err, true, StandardCharsets.UTF_8),
                folder.toString()));
        assertTrue(new Told(out.toString(StandardCharsets.UTF_8), "").terminal().get(0).startsWith("Of 30 cars on offer"), out.toString());
        assertEquals("cannot write " + folder.resolve("swapworth.html") + ": this is a folder; a name of a file is needed; --page FILE.html"
                + " writes the page to another place", err.toString(StandardCharsets.UTF_8).strip());
    }

    @Test
    void what_the_lowest_row_says_against_its_car_stands_beside_its_price() throws IOException {
        StringBuilder text = new StringBuilder("id,seen_on,vehicle,model_year,mileage_mi,price_usd,title,runs,damage\n");
        for (int i = 0; i < 30; i++) {
            text.append("a%d,2026-09-%02d,Sivrette,%d,%d,%d,%s%n".formatted(i, 1 + i % 9, 2010 + i % 9, 40_000 + 7001 * (i % 13),
                    i == 7 ? 900 : 10_000 + 400 * (i % 9) + 97 * (i % 7),
                    i == 7 ? "salvage,engine dead,rear; flood" : "clean,drives,none"));
        }
        Files.writeString(folder.resolve("listings.csv"), text);
        String words = Told.of(folder, folder.resolve("page.html")).about("on-offer");
        assertTrue(words.contains("'a7', Sivrette (title salvage; engine dead; damage rear, flood): USD 900"), words);
    }

    @Test
    void a_gate_that_is_shut_stands_before_all_answers() throws IOException {
        Files.writeString(folder.resolve("gates.csv"), "gate,answer\nlawful here,no\ninsurable,yes\n");
        Told told = thirty(10_800);
        assertEquals("Before any of this: 'lawful here' is answered with no, and 3 more gates are not answered. Settle that before you"
                + " spend; no figure below counts it.", told.sentences().get(0));
        assertEquals(told.sentences(), told.terminal());
        Files.writeString(folder.resolve("gates.csv"), "gate,answer\nlawful here,unknown\n");
        assertEquals("", Told.of(folder, folder.resolve("page.html")).about("gates"), "an open question is asked above");
    }

    @Test
    void wherever_a_donor_stands_the_cautions_of_taking_cars_apart_stand_too() throws IOException {
        assertFalse(thirty(10_800).page.contains("49 CFR 173.166"), "cars of which nothing bad is said");
        Files.writeString(folder.resolve("cars.csv"), "name,role,vehicle,model_year,mileage_mi\nwreck,donor,Sivrette,2014,60000\n");
        assertTrue(Told.of(folder, folder.resolve("page.html")).page.contains("49 CFR 173.166"));
        Files.delete(folder.resolve("listings.csv"));
        Files.writeString(folder.resolve("partout.csv"), "car,part,price\nwreck,wheels,100\n");
        String parts = Told.of(folder, folder.resolve("page.html")).page;
        assertTrue(parts.contains("49 CFR 173.166") && parts.contains("51 FR 28114"), "airbags and catalysts");
        Files.delete(folder.resolve("partout.csv"));
        Files.delete(folder.resolve("cars.csv"));
        Files.writeString(folder.resolve("ledger.csv"), "date,amount,note,car\n2026-09-02,9000,body,recipient\n");
        assertFalse(Told.of(folder, folder.resolve("page.html")).page.contains("49 CFR 173.166"));
        Files.writeString(folder.resolve("ledger.csv"), "date,amount,note,car\n2026-09-02,900,wreck,donor\n");
        String money = Told.of(folder, folder.resolve("page.html")).page;
        assertTrue(money.contains("49 CFR 173.166") && money.contains("cheap copies have killed people"), money);
    }

    /** A buyer's strongest words are how long the car has stood, and what was cut. */
    @Test
    void how_long_each_car_on_offer_has_stood_is_told_and_what_was_cut() throws IOException {
        String stood = thirty(9_000).section("on-offer");
        String row = stood.substring(stood.lastIndexOf("a29"));
        assertTrue(stood.contains("How long the cars on offer in the 14 days up to 2026-09-27 have stood"), stood);
        List<String> cells = Pattern.compile("<td[^>]*>([^<]*)").matcher(row).results().map(m -> m.group(1)).limit(6).toList();
        assertEquals(List.of("2026-09-03", "18", "10,897", "9,000", "-17.4", "1"), cells);
    }

    @Test
    void a_bid_before_the_first_ask_is_no_ask() throws IOException {
        thirty(9_000);
        Path listings = folder.resolve("listings.csv");
        List<String> rows = Files.readAllLines(listings);
        String asked = rows.get(rows.size() - 1);
        rows.add(asked.replaceAll("2026-09-..", "2026-08-30").replace(",9000,asking,private", ",5000,bid not met,auction"));
        Files.write(listings, rows);
        String stood = Told.of(folder, folder.resolve("page.html")).section("on-offer");
        String row = stood.substring(stood.lastIndexOf(">a29<"));
        List<String> cells = Pattern.compile("<td[^>]*>([^<]*)").matcher(row).results().map(m -> m.group(1)).limit(6).toList();
        assertEquals(List.of("2026-08-30", "22", "10,897", "9,000", "-17.4", "1"), cells);
    }

    @Test
    void a_file_that_would_answer_several_questions_is_asked_for_once() throws IOException {
        Files.writeString(folder.resolve("cars.csv"), """
                name,role,vehicle,model_year,mileage_mi,planned_bid,seller
                one,donor,Sivrette,2014,60000,6000,auction
                """);
        String asked = thirty(10_800).section("further");
        assertEquals(1, Pattern.compile("fees\\.csv").matcher(asked).results().count(), asked);
    }

    @Test
    void a_car_of_which_a_fee_is_missing_is_not_called_the_cheapest() throws IOException {
        Files.writeString(folder.resolve("fees.csv"), "table,kind,per_mile\nfreight,freight,2\n");
        Files.writeString(folder.resolve("cars.csv"), """
                name,role,vehicle,model_year,mileage_mi,planned_bid,seller,distance_away
                near,donor,Sivrette,2014,60000,5000,auction,10
                far,donor,Sivrette,2014,60000,4990,auction,
                """);
        Told told = thirty(10_800);
        assertTrue(told.about("landed").startsWith("Of 2 cars in play 'near' costs least at the door: USD 5,020.00"), told.out);
        Files.writeString(folder.resolve("partout.csv"), "car,part,price\nnear,wheels,100\nfar,wheels,100\n");
        told = Told.of(folder, folder.resolve("page.html"));
        assertTrue(told.about("choice").contains("'near' costs net"), told.about("choice"));
        assertTrue(told.out.contains("The landed cost of 'far' is not whole: a line is missing"), told.out);
        assertFalse(told.out.contains("dearer by"), told.out);
    }

    @Test
    void without_dates_nobody_knows_what_is_on_offer_and_all_rows_are_listed() throws IOException {
        Files.writeString(folder.resolve("listings.csv"), """
                vehicle,model_year,mileage_mi,price_usd
                Sivrette,2014,88000,9800
                Sivrette,2016,71000,11900
                Sivrette,2012,120500,7200
                """);
        Told told = Told.of(folder, folder.resolve("page.html"));
        assertTrue(told.out.contains("Listings in the order of the files"), told.out);
        assertTrue(told.about("listings")
                .startsWith("Of 3 cars, without days nobody knows which are still on offer, none stands below its"),
                told.out);
    }

    @Test
    void an_ask_that_is_not_held_against_a_stated_level_of_trade_is_not_called_the_lowest() throws IOException {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        PrintStream terminal = new PrintStream(out, true, StandardCharsets.UTF_8);
        assertEquals(0, Main.run(terminal, terminal, "sample-listings", "--level", "private sold", "--page",
                folder.resolve("page.html").toString()));
        String text = out.toString(StandardCharsets.UTF_8);
        assertTrue(text.contains("In short") && !text.contains("Lowest against its value"), text);
    }

    private void copySample() throws IOException {
        try (var files = Files.list(Path.of("sample-listings"))) {
            for (Path file : files.filter(f -> f.toString().endsWith(".csv")).toList()) {
                Files.copy(file, folder.resolve(file.getFileName()));
            }
        }
    }

    @Test
    void when_to_buy_is_told_until_both_cars_are_bought() throws IOException {
        copySample();
        Path ledger = folder.resolve("ledger.csv");
        Files.writeString(ledger, Files.readString(ledger).replace("donor,car,purchase,,,,", "donor,car,purchase,,estimate,2026-11-20,"));
        assertTrue(Told.of(folder, folder.resolve("page.html")).about("now-or-later").startsWith("Waiting 6 months to buy "));
    }

    @Test
    void what_a_car_is_worth_is_not_told_once_it_is_sold() throws IOException {
        copySample();
        Path ledger = folder.resolve("ledger.csv");
        Files.writeString(ledger, Files.readString(ledger) + "\n2027-02-01,11000,USD,to a neighbour,project,car,car sold\n");
        String answers = String.join("\n", Told.of(folder, folder.resolve("page.html")).terminal());
        assertTrue(answers.contains("by what came in for 'the swap' (2027-02-01)"), answers);
        assertFalse(answers.contains("is worth"), answers);
        assertTrue(answers.contains("All that is unsure about what is left lies in the money"), answers);
    }

    @Test
    void rows_of_the_ledger_that_are_in_no_figure_are_counted_beside_the_answer() throws IOException {
        copySample();
        Files.writeString(folder.resolve("ledger.csv"), Files.readString(folder.resolve("ledger.csv")) + "\n2026-13-45,12,USD,lost\n");
        Told told = Told.of(folder, folder.resolve("page.html"));
        assertTrue(told.about("equity")
                .contains("33 rows of the ledger as of 2026-10-28; 1 more row is in no figure, for it cannot be used."),
                told.about("equity"));
    }

    @Test
    void where_all_are_sold_no_car_is_said_to_be_on_offer() throws IOException {
        Files.writeString(folder.resolve("listings.csv"), """
                seen_on,vehicle,model_year,mileage_mi,price_usd,price_kind
                2026-09-01,Sivrette,2014,88000,9800,sold
                2026-09-02,Sivrette,2016,71000,11900,sold
                2026-09-03,Sivrette,2012,120500,7200,sold
                """);
        Told told = Told.of(folder, folder.resolve("page.html"));
        assertTrue(told.out.contains("No car was on offer in the 14 days up to 2026-09-03."), told.out);
        assertTrue(told.out.contains("3 rows are judged in all"), told.out);
        assertEquals("", told.about("on-offer"));
    }

    @Test
    void without_listings_the_answers_are_what_is_in_it_and_what_stands_at_the_door() throws IOException {
        Files.writeString(folder.resolve("ledger.csv"), """
                date,amount,note,status
                2026-03-04,4160,front hit,
                2026-03-09,900,welding,estimate
                2026-03-02,x,paint,
                """);
        Told money = Told.of(folder, folder.resolve("page.html"));
        assertEquals(money.sentences(), money.terminal());
        assertEquals(1, money.sentences().size());
        assertTrue(money.about("ledger").matches("As of 2026-03-04 you have USD 4,160\\.00 in it, net of refunds and of what was sold\\."
                + " At completion it will be USD [\\d,]+ \\(80 % range [\\d,]+ to [\\d,]+\\)\\. That is by 2 rows of the ledger as of"
                + " 2026-03-04; 1 more row is in no figure, for it cannot be used\\."), money.about("ledger"));
        Files.writeString(folder.resolve("gates.csv"), "gate,answer\ninsurable,no\n");
        Files.writeString(folder.resolve("fees.csv"), "table,kind,from,to,flat,percent\npremium,fee,1,,160,\n");
        Files.writeString(folder.resolve("cars.csv"), """
                name,role,vehicle,model_year,mileage_mi,planned_bid,seller
                dear one,donor,Sivrette,2014,60000,6000,auction
                cheap one,donor,Sivrette,2012,90000,4000,auction
                """);
        Told both = Told.of(folder, folder.resolve("page.html"));
        assertEquals(both.sentences(), both.terminal());
        assertTrue(both.about("gates").startsWith("Before any of this: 'insurable' is answered with no"), both.out);
        assertEquals("Of 2 cars in play 'cheap one' costs least at the door: USD 4,160.00 for a price or bid of 4,000 (auction).",
                both.about("landed"), both.out);
        List<String> ids = Pattern.compile("<section id=\"([a-z-]+)\">").matcher(both.page).results().map(m -> m.group(1)).toList();
        assertEquals(List.of("gates", "in-short"), ids.subList(0, 2));
        Files.delete(folder.resolve("ledger.csv"));
        Files.delete(folder.resolve("fees.csv"));
        Files.writeString(folder.resolve("partout.csv"), "car,part,goes_to,price\ncheap one,wheels,sell,300\ndear one,wheels,sell,300\n");
        Told parts = Told.of(folder, folder.resolve("page.html"));
        assertTrue(parts.about("choice").startsWith("Donors: "), parts.out);
        assertEquals(parts.sentences(), parts.terminal());
    }
}
