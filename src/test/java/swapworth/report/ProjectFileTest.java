package swapworth.report;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.math.BigDecimal;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import swapworth.listing.CandidateCar;
import swapworth.listing.Listing;
import swapworth.market.Figures;
import swapworth.project.Alternative;
import swapworth.project.Entry;
import swapworth.project.FinishOrStop;
import swapworth.project.Undertaking;
import swapworth.report.ProjectFile.Reader;
import swapworth.statistics.Quantiles;
import swapworth.table.Cell;

/** The file on the finished car: what it holds for whom, and what it must not hold for others than its owner. */
class ProjectFileTest {

    @TempDir
    static Path folder;

    private static Undertaking undertaking;

    /** The sample, with things in it that strangers must not read. */
    @BeforeAll
    static void prepare() throws IOException {
        try (Stream<Path> files = Files.list(Path.of("sample-listings"))) {
            for (Path file : files.filter(f -> f.toString().endsWith(".csv")).toList()) {
                Files.copy(file, folder.resolve(file.getFileName().toString()));
            }
        }
        Path ledger = folder.resolve("ledger.csv");
        Files.writeString(ledger, Files.readString(ledger) + "2026-10-02,41.10,,\"bolts from Tamsin Orrell, call 0555 0123"
                + " 4567\",project,bolts,part,,,,,,,,,,,,"
                + "https://shop.invalid/order/99\n2026-10-03,12,,glue,project,glue,part,,,,,,,,,,,,receipt-0555-0123-4567.pdf\n");
        Path gates = folder.resolve("gates.csv");
        Files.writeString(gates, Files.readString(gates) + "workshop agrees,yes,Tamsin Orrell said so on 0555 0123 4567\n");
        Files.writeString(folder.resolve("engine-bay.jpg"), "no real picture");
        undertaking = Undertaking.of(folder);
    }

    private static String page(Reader reader) {
        return ProjectFile.of(folder, undertaking, reader).html().replace('\u00a0', ' ');
    }

    private static String whole(double[] draws) {
        return Cell.format(Quantiles.of(draws, 0.5), 0);
    }

    @Test
    void a_car_that_is_not_finished_is_not_shown_as_if_it_were() {
        // Of twelve rows to come of the sample nine go out, or are own hours: the last is the insurance.
        for (Reader reader : Reader.values()) {
            assertTrue(page(reader).replace("&#39;", "'")
                    .contains("The car is not finished: 9 rows of the owner's ledger are still to be paid or worked, the last in 2027-02;"),
                    reader.words());
        }
    }

    @Test
    void what_is_said_of_the_two_distances_is_true_where_that_of_the_running_gear_is_unknown_too() {
        for (Reader reader : Reader.values()) {
            assertTrue(page(reader).contains("What the running gear has run stands beside the mileage and not in its place"),
                    reader.words());
            assertFalse(page(reader).contains("another distance") || page(reader).contains("has another one"), reader.words());
        }
    }

    @Test
    void the_range_is_rounded_as_on_the_pages_of_the_owner() {
        String range = Figures.range(undertaking.finished().orElseThrow().range(0.80));
        for (Reader reader : Reader.values()) {
            assertTrue(page(reader).contains("): " + range + " (80 %), "), range);
            assertTrue(page(reader).contains("<td class=\"n\">" + range + "</td>"), range);
        }
    }

    @Test
    void the_lead_says_the_median_beside_its_ranges_and_what_they_rest_on() {
        var value = undertaking.finished().orElseThrow();
        for (Reader reader : Reader.values()) {
            String html = page(reader).replace("&#39;", "'");
            String lead = html.substring(html.indexOf("<p class=\"lead\">"), html.indexOf("</header>"));
            assertTrue(lead.contains(Figures.range(value.range(0.95)) + " (95 %), median " + Figures.rounded(value.median()) + ", USD, by "
                    + value.basis() + "."), lead);
        }
    }

    @Test
    void who_lends_or_insures_reads_what_is_paid_and_not_only_what_is_asked() {
        var value = undertaking.finished().orElseThrow();
        double[] paid = value.soldDraws();
        String near = Figures.rounded(Quantiles.of(paid, 0.10)) + " to " + Figures.rounded(Quantiles.of(paid, 0.90));
        String lead = "What is paid for it in the end (private sold, 2026-10-30): " + near + " (80 %), ";
        String row = "<td class=\"w\">private sold</td><td class=\"n\">" + Figures.rounded(Quantiles.of(paid, 0.5))
                + "</td><td class=\"n\">" + near + "</td>";
        for (Reader reader : List.of(Reader.LENDER, Reader.INSURER)) {
            assertTrue(page(reader).contains(lead), lead);
            assertTrue(page(reader).contains(row), row);
        }
        assertFalse(page(Reader.BUYER).contains("What is paid for it"));
        assertFalse(page(Reader.BUYER).contains(row));
    }

    @Test
    void what_others_read_holds_no_equity_no_bracket_and_nobodys_notes_links_or_numbers() {
        List<String> forbidden = new ArrayList<>(List.of("Tamsin", "0555", "shop.invalid", "http:", "https:", "left in cash",
                "What is left", "equity",
                "Finish or stop", "stopping", "half-built", "walk away", "Walk", "take-apart", "non-runner", "Redo", "Money by",
                "sold, net", "parts sold so far"));
        // The figures of equity, of the ways to stop and of the cheaper alternatives.
        forbidden.add(whole(undertaking.equity().orElseThrow().inCash()));
        forbidden.add(whole(undertaking.equity().orElseThrow().moneyIn()));
        for (FinishOrStop.Exit exit : undertaking.finishOrStop().orElseThrow().exits()) {
            forbidden.add(exit.name());
            forbidden.add(whole(exit.brings()));
        }
        for (Alternative one : undertaking.alternatives().orElseThrow().all()) {
            forbidden.add(one.name());
            forbidden.add(whole(one.netCost()));
        }
        for (Entry entry : undertaking.ledger().orElseThrow().entries()) {
            forbidden.add(entry.note());
        }
        undertaking.gates().orElseThrow().gates().stream().map(g -> g.note()).filter(n -> n.length() > 3).forEach(forbidden::add);
        Undertaking.Market market = undertaking.market().orElseThrow();
        for (Listing listing : market.read().listings()) {
            listing.note().filter(n -> n.length() > 3).ifPresent(forbidden::add);
            listing.source().filter(n -> n.length() > 3).ifPresent(forbidden::add);
            listing.id().filter(n -> n.length() > 3).ifPresent(forbidden::add);
        }
        for (CandidateCar car : market.cars().cars()) {
            if (car.role() != CandidateCar.Role.FINISHED) {
                forbidden.add(car.name());
            }
        }
        // What the owner gives as the name of a receipt, or as a role, may stand.
        List<String> spoken = List.of("factory six");
        for (Reader reader : List.of(Reader.BUYER, Reader.LENDER, Reader.INSURER)) {
            String html = page(reader).replace("bill-tidy-roadster.pdf", "");
            for (String one : forbidden) {
                boolean insurersOwn = reader == Reader.INSURER && (one.equals("Redo") || one.equals("sold, net"));
                if (!insurersOwn && !spoken.contains(one)) {
                    assertFalse(html.contains(one), reader + " reads '" + one + "'");
                }
            }
        }
    }

    @Test
    void cautions_to_others_speak_of_the_owner_and_ask_nothing_of_the_reader_that_is_the_owners_to_do() {
        for (Reader reader : List.of(Reader.BUYER, Reader.LENDER, Reader.INSURER)) {
            String html = page(reader);
            for (String owners : List.of("that you chose", "you collected", "you can change", "for you to certify", "before you build",
                    "you spent", "Sell a swap", "unfold what you want printed")) {
                assertFalse(html.contains(owners), reader + " reads '" + owners + "'");
            }
            assertTrue(html.contains("is for the seller to certify") && html.contains("16 CCR 3362.1"), reader.name());
        }
        assertTrue(page(Reader.SELF).contains("is for you to certify"));
    }

    @Test
    void the_owner_reads_everything() {
        String html = page(Reader.SELF);
        for (String one : List.of("What is left", "Finish or stop", "Against what", "When to walk away", "Tamsin Orrell",
                "Where the money is")) {
            assertTrue(html.contains(one), one);
        }
    }

    @Test
    void it_says_what_the_car_is_both_mileages_range_level_day_listings_receipts_and_pictures() {
        String html = page(Reader.BUYER);
        for (String one : List.of("Made by the owner for a buyer, from listings that the owner chose and collected; no appraisal",
                "71,000 mi, read", "title salvage; damage front; airbags fired; runs: not tried",
                "44,000 mi, recorded", "80 % range", "95 % range", "private asking, 2026-10-30", "Comparables", "hall-0819.pdf",
                        "engine-bay.jpg",
                "What to check, and with whom", "(kept by the owner)", "What was paid, USD, to 2026-10-28", "A mechanic of your own")) {
            assertTrue(html.contains(one), one);
        }
        assertTrue(page(Reader.INSURER).contains("What it would cost to do it again at the prices of 2026-10-28"));
        assertTrue(page(Reader.LENDER).contains("Still to be paid until it is done, as of 2026-10-28"));
        assertFalse(page(Reader.BUYER).contains("Still to be paid"));
    }

    @Test
    void a_car_that_does_not_pass_or_has_faults_has_the_range_of_one_that_passes_and_has_none(@TempDir Path faulty) throws IOException {
        for (String name : List.of("listings.csv", "lines.csv", "words.csv", "rates.csv", "swaps.csv")) {
            Files.copy(Path.of("sample-listings", name), faulty.resolve(name));
        }
        Files.writeString(faulty.resolve("cars.csv"), "name,role,vehicle,model_year,mileage_mi,running_gear,built_by,gear_line,inspected,"
                + "emissions,faults\nmine,finished,Sivrette,2016,71000,six 3.2,owner,Velmarch,no,yes,gearbox whines; brake lamp on\n");
        Undertaking read = Undertaking.of(faulty);
        String words = "The owner states: inspection passed: no; 2 known faults without a figure. The range is that of a car that passes"
                + " and has no such fault: what this takes off is not in it. What passing would cost can be stated as a fault with its"
                + " figure, and is in it only where it is.";
        assertEquals(words, read.finished().orElseThrow().statedAgainst().orElseThrow());
        String html = ProjectFile.of(faulty, read, Reader.LENDER).html();
        assertEquals(3, html.split(words, -1).length, "in the lead and at the range");
        assertTrue(read.finished().orElseThrow().result().text().replaceAll("\\s+", " ").contains(words));
        assertEquals(Optional.empty(), undertaking.finished().orElseThrow().statedAgainst());
        Files.writeString(faulty.resolve("swaps.csv"), "vehicle,model_year,price_usd,price_kind,own_car,seen_on\n"
                + "Sivrette,2016,12900,sold,mine,2026-10-25\n");
        assertEquals(Optional.empty(), Undertaking.of(faulty).finished().orElseThrow().statedAgainst());
    }

    @Test
    void the_last_row_to_pay_is_not_one_that_comes_in() {
        // The sample sells parts of its recipient in 2027-03, a month after its last payment.
        assertTrue(page(Reader.LENDER).contains("The last row still to be paid or worked is due in 2027-02."));
    }

    @Test
    void a_tool_that_stays_with_the_owner_is_shown_apart_from_what_was_paid_for_the_car() {
        // 80 % of the lift for 1,250.00 are kept.
        String html = page(Reader.LENDER);
        assertTrue(html.matches("(?s).*of it tools that stay with the owner<(?:(?!</tr>).)*>1,000\\.00<.*"), html);
        BigDecimal all = undertaking.ledger().orElseThrow().sums().byCategory().stream().map(s -> s.paid().subtract(s.refunded()))
                .reduce(BigDecimal.ZERO, BigDecimal::add);
        assertTrue(html.matches("(?s).*all without these tools<(?:(?!</tr>).)*>"
                + Cell.format(all.doubleValue() - 1000, 2) + "<.*"), html);
    }

    @Test
    void what_is_left_says_how_much_market_and_age_take_until_the_car_is_done() {
        // From 2026-10 to 2027-02 are four months, in which the car grows older.
        var market = undertaking.nowOrLater().orElseThrow();
        double then = Quantiles.of(market.exit().get(3), 0.5);
        String less = "until it is done in 2027-02 is not in it: about " + Cell.format(Quantiles.of(market.exitNow(), 0.5) - then, 0)
                + " less by the outlook and by ageing as the listings tell it";
        assertTrue(page(Reader.SELF).contains(less), less);
        assertFalse(page(Reader.BUYER).contains("until it is done in"));
        assertTrue(ProjectPage.valueInIt(undertaking).orElseThrow().contains("(private sold, 2026-10-30)"));
    }

    /** The sample's market, with a ledger of the recipient bought and one more row. */
    private static void copied(Path to, String row) throws IOException {
        for (String name : List.of("listings.csv", "cars.csv", "lines.csv", "words.csv", "rates.csv")) {
            Files.copy(Path.of("sample-listings", name), to.resolve(name));
        }
        Files.writeString(to.resolve("ledger.csv"), "date,amount,note,car,category\n2026-08-03,10200,tidy roadster,recipient,purchase\n"
                + row + "\n");
    }

    @Test
    void where_all_is_done_the_value_of_the_last_look_is_set_against_the_month_of_the_ledger(@TempDir Path done) throws IOException {
        copied(done, "2027-03-02,90,inspection,project,inspection");
        String words = ProjectPage.valueInIt(Undertaking.of(done)).orElseThrow();
        assertTrue(words.matches(".* price until 2027-03, the month of the ledger, is not in it: about [\\d,]+ less by .*"), words);
    }

    @Test
    void an_insurer_reads_where_the_comparables_stand_and_how_many_are_of_late() {
        String page = page(Reader.INSURER);
        String table = page.substring(page.indexOf("Comparables: the cars that tell most"));
        table = table.substring(0, table.indexOf("</table>"));
        assertTrue(table.contains(">region<") && table.contains("Norrowfen"), table);
        assertTrue(table.contains(">trim<") && table.contains(">Fitted<"), table);
        assertTrue(table.contains("title clean; drives; damage none"), "like is compared with like, or it shows: " + table);
        LocalDate on = undertaking.finished().orElseThrow().on().orElseThrow();
        List<LocalDate> days = Pattern.compile(">(20\\d\\d-\\d\\d-\\d\\d)<").matcher(table).results().map(m -> LocalDate.parse(m.group(1)))
                .toList();
        long late = days.stream().filter(day -> day.isAfter(on.minusDays(90))).count();
        assertTrue(page.contains(late + " of these " + days.size() + " were seen in the 90 days up to " + on), table);
        assertFalse(page(Reader.BUYER).contains("settling a total loss"));
    }

    @Test
    void the_file_of_a_car_that_is_sold_says_so_and_not_for_how_much(@TempDir Path done) throws IOException {
        copied(done, "2027-03-02,17431,to a neighbour,project,car sold");
        Undertaking sold = Undertaking.of(done);
        for (Reader reader : List.of(Reader.BUYER, Reader.LENDER, Reader.INSURER)) {
            String html = ProjectFile.of(done, sold, reader).html();
            assertTrue(html.contains("The car is sold: by the owner&#39;s records the last of its price came in on 2027-03-02."), html);
            assertFalse(html.contains("17431") || html.contains("17,431"), reader.name());
        }
        String own = ProjectPage.of("sold", sold).html();
        assertTrue(own.contains("17,431.00 came in for it by 2027-03-02"), own);
        assertFalse(own.contains("and the sum to insure") || own.contains("The sum to insure lies"), own);
    }

    @Test
    void the_same_folder_gives_the_same_file() {
        assertEquals(ProjectFile.of(folder, undertaking, Reader.INSURER).html(),
                ProjectFile.of(folder, Undertaking.of(folder), Reader.INSURER).html());
    }

    @Test
    void a_folder_that_says_little_makes_a_file_that_says_so(@TempDir Path empty) {
        String html = ProjectFile.of(empty, Undertaking.of(empty, Optional.empty(), Optional.empty()), Reader.BUYER).html();
        assertTrue(html.contains("does not say what the finished car is worth") && html.contains("Photographs: none"), html);
    }

    @Test
    void links_addresses_and_telephone_numbers_are_kept_and_days_and_amounts_are_not() {
        for (String text : List.of("see https://a.invalid", "www.a.invalid", "ask a@b.invalid", "0555 0123 4567", "(0555) 012-3456",
                "+44 20")) {
            assertEquals("(kept by the owner)", Discreet.text(text), text);
        }
        for (String text : List.of("shop-1001.pdf", "bill-2026-10-02.pdf", "20261002.pdf", "engine 3.2", "hall 12, lot 4411")) {
            assertEquals(text, Discreet.text(text));
        }
    }
}
