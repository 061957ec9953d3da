package swapworth.project;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.math.BigDecimal;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import swapworth.reading.RowProblem;
import swapworth.report.InShort;
import swapworth.report.ProjectPage;
import swapworth.statistics.Quantiles;
import swapworth.table.Table;

/** What a job for a customer leaves, against sums by hand. */
class JobTest {
    private static final String HEAD = "date,amount,note,category,status,due,low,likely,high,hours,direction\n";
    private static final String DONE = HEAD + """
            2026-08-03,3000,deposit,invoice,,,,,,,
            2026-08-10,412.30,"radiator, hoses",part,,,,,,,
            2026-08-20,1150,bearings,labour,,,,,,,
            2026-08-21,,taking the gear out and putting the other in,own hours,,,,,,50,
            2026-09-15,3500,rest,customer paid,,,,,,,
            2026-09-20,200,a scratch,invoice,,,,,,,out
            """;

    @TempDir
    private Path folder;

    private Undertaking undertaking(String ledger) throws IOException {
        Files.writeString(folder.resolve("ledger.csv"), ledger);
        return Undertaking.of(folder);
    }

    private Undertaking undertaking(String ledger, String assumptions) throws IOException {
        Files.writeString(folder.resolve("assumptions.csv"), "name,middle,spread\n" + assumptions);
        return undertaking(ledger);
    }

    // 3,000 + 3,500 - 200 paid; 412.30 + 1,150 of costs; 10 % of 6,300 kept; 50 hours at 40.
    @Test
    void a_job_that_is_done_leaves_what_was_paid_less_costs_and_reserve() throws IOException {
        Job job = undertaking(DONE, "warranty_reserve,10,0\nown_hour_rate,40,0\n").job().orElseThrow();
        assertEquals(new BigDecimal("6300.00"), job.paid());
        assertEquals(630, job.reserve()[7], 1e-9);
        assertEquals(6_300 - 1_562.30 - 630, job.margin()[7], 1e-9);
        assertEquals(6_300 - 1_562.30 - 630 - 2_000, job.withHours()[7], 1e-9);
        assertEquals((6_300 - 1_562.30 - 630) / 50, job.anHourBrings()[7], 1e-9);
        // 0.9 times as much pays costs and hours
        assertEquals(3_562.30 / 0.9, job.leastToAsk(), 1e-9);
        assertTrue(job.sentence().contains("The job leaves USD 4,108") && job.sentence().contains("quoted at 3,958 or more"),
                job.sentence());
    }

    @Test
    void what_a_customer_pays_is_in_no_sum_of_costs_and_the_car_is_his() throws IOException {
        Undertaking shop = undertaking(DONE);
        assertEquals(new BigDecimal("1562.30"), shop.ledger().orElseThrow().sums().total().net());
        assertEquals(1_562.30, shop.forecast().orElseThrow().total()[0], 1e-9);
        assertEquals(Optional.empty(), shop.equity());
        assertTrue(shop.answers().equity().toString().contains("the car is the customer's"), shop.answers().equity().toString());
        String page = ProjectPage.of("shop", shop).html();
        assertTrue(page.contains("What the job leaves") && page.contains("invoice: 3 rows"), "its rows stand on the page");
        assertTrue(page.contains("is not in these figures: &#39;What the job leaves&#39; counts it")
                || page.contains("is not in these figures: 'What the job leaves' counts it"), "the sums say what they lack");
    }

    @Test
    void invoices_to_come_are_exact_when_agreed_and_drawn_when_guessed() throws IOException {
        Job agreed = undertaking(DONE + "2026-09-20,500,rest,invoice,committed,2026-11-01,,,,,\n").job().orElseThrow();
        assertEquals(6_800, Arrays.stream(agreed.pays()).distinct().sum(), 1e-9, "one figure in all draws");
        Job guessed = undertaking(DONE + "2026-09-20,,rest,invoice,estimate,2026-11-01,400,500,700,,\n").job().orElseThrow();
        double[] pays = guessed.pays();
        assertTrue(Arrays.stream(pays).min().orElseThrow() >= 6_700 && Arrays.stream(pays).max().orElseThrow() <= 7_000, "its ends");
        // The mean of a beta law between low and high that leans to the likely amount: (400 + 4 * 500 + 700) / 6.
        assertEquals(6_300 + 3_100 / 6.0, Arrays.stream(pays).average().orElseThrow(), 2);
    }

    @Test
    void an_agreed_credit_lowers_what_is_paid_and_a_tool_that_the_shop_keeps_is_no_cost_of_the_job() throws IOException {
        Job job = undertaking(DONE + "2026-09-20,300,to be paid back,invoice,committed,2026-11-01,,,,,out\n"
                + "2026-09-20,900,a lift,tool,,,,,,,\n").job().orElseThrow();
        assertEquals(6_000, job.pays()[5], 1e-9);
        assertEquals(1_562.30, job.costs()[5], 1e-9);
    }

    @Test
    void of_tools_the_job_says_that_they_stay() throws IOException {
        String text = undertaking(DONE + "2026-09-20,900,a lift,tool,,,,,,,\n").job().orElseThrow().table().text();
        assertTrue(text.replaceAll("\\s+", " ").contains("Of a tool only the share that its row charges is a cost"), text);
    }

    @Test
    void parts_of_a_car_that_the_customer_bought_are_sold_without_a_question() throws IOException {
        String sold = "date,amount,note,category,car\n2026-08-10,500,seats,part sold,donor\n";
        assertTrue(undertaking(sold).read().get(0).problems().stream().anyMatch(p -> p.message().contains("tells of its purchase")));
        List<RowProblem> problems = undertaking(sold + "2026-08-12,900,deposit,invoice,\n").read().get(0).problems();
        assertEquals(List.of(), problems.stream().filter(p -> p.column().equals("car")).toList());
    }

    @Test
    void a_car_sold_beside_invoices_counts_nowhere_and_that_is_said() throws IOException {
        Undertaking shop = undertaking(DONE + "2026-09-20,9000,handed over,car sold,,,,,,,\n");
        assertEquals(6_300, shop.job().orElseThrow().pays()[0], 1e-9);
        String note = shop.ledger().orElseThrow().carSaleNote();
        assertTrue(note.contains("9,000.00) is not in these figures. It counts nowhere"), note);
        assertFalse(note.contains("What is left counts"), note);
    }

    @Test
    void cash_by_month_says_that_what_the_customer_pays_is_not_in_it() throws IOException {
        List<Table> tables = undertaking(HEAD + "2026-08-10,412.30,radiator,part,,,,,,,\n"
                + "2026-08-10,,rest,invoice,estimate,2026-11-01,,900,,,\n").forecast().orElseThrow().tables();
        String text = tables.stream().map(Table::text).filter(t -> t.startsWith("Cash in the undertaking")).findFirst().orElseThrow();
        assertTrue(text.contains("What the customer pays (1 row of the category invoice)"), text);
        String first = tables.get(0).text();
        assertTrue(first.contains("Every row of what the work costs is done.") && !first.contains("Every row is done"), first);
    }

    @Test
    void no_reserve_is_kept_of_what_goes_back_and_none_is_larger_than_what_is_paid() throws IOException {
        Job back = undertaking(HEAD + "2026-08-03,300,credit,invoice,,,,,,,out\n", "warranty_reserve,10,0\n").job().orElseThrow();
        assertEquals(0, Arrays.stream(back.reserve()).max().orElseThrow());
        assertEquals(-300, back.margin()[4], 1e-9);
        Job wild = undertaking(DONE, "warranty_reserve,60,60\n").job().orElseThrow();
        assertEquals(0.95, Arrays.stream(wild.reserveShare()).max().orElseThrow(), 1e-12);
    }

    // Two guesses of 1,000 whose errors go together by 0.3: the sd of their sum is that of one times the root of 2 x 1.3.
    @Test
    void guesses_of_instalments_are_off_together() throws IOException {
        double one = sd(undertaking(HEAD + "2026-08-03,,one,invoice,estimate,2026-11-01,,1000,,,\n").job().orElseThrow().pays());
        double two = sd(undertaking(HEAD + "2026-08-03,,one,invoice,estimate,2026-11-01,,1000,,,\n"
                + "2026-08-03,,two,invoice,estimate,2026-12-01,,1000,,,\n").job().orElseThrow().pays());
        assertEquals(Math.sqrt(2.6), two / one, 0.05);
    }

    private static double sd(double[] draws) {
        double mean = Arrays.stream(draws).average().orElseThrow();
        return Math.sqrt(Arrays.stream(draws).map(x -> (x - mean) * (x - mean)).average().orElseThrow());
    }

    @Test
    void whether_it_was_worth_taking_counts_own_hours() throws IOException {
        Job job = undertaking(DONE, "own_hour_rate,400,0\n").job().orElseThrow();
        assertTrue(job.sentence().contains("at 400.00 an hour the chance that it was worth taking is less than 1 %"), job.sentence());
    }

    @Test
    void nine_times_in_ten_the_least_to_ask_is_enough() throws IOException {
        Job job = undertaking(DONE + "2026-09-20,,exhaust,part,estimate,2026-11-01,420,560,900,,\n"
                + "2026-09-20,,fitting it,own hours,estimate,2026-11-01,,,,12,\n").job().orElseThrow();
        double[] share = job.reserveShare();
        double[] hours = job.hours();
        double[] costs = job.costs();
        double least = job.leastToAsk();
        int enough = 0;
        for (int i = 0; i < share.length; i++) {
            enough += least * (1 - share[i]) - costs[i] - hours[i] * job.rate() >= -1e-9 ? 1 : 0;
        }
        assertEquals(0.9, enough / (double) share.length, 0.002);
        assertTrue(Quantiles.median(job.reserve()) > 0 && Arrays.stream(job.reserve()).min().orElseThrow() >= 0, "a reserve is kept");
    }

    @Test
    void a_ledger_of_invoices_alone_or_without_hours_says_what_it_lacks() throws IOException {
        Job bare = undertaking(HEAD + "2026-08-03,3000,deposit,invoice,,,,,,,\n").job().orElseThrow();
        assertEquals(0, bare.anHourBrings().length);
        assertTrue(bare.sentence().contains("no own hours") && bare.sentence().contains("quoted, without your hours, at 0"),
                bare.sentence());
        assertFalse(bare.table().text().contains("own hours at"), bare.table().text());
        assertEquals(0, bare.leastToAsk(), 1e-9);
    }

    @Test
    void a_credit_goes_out_and_hours_have_a_row_of_their_own() throws IOException {
        Undertaking shop = undertaking(HEAD + "2026-08-03,3000,deposit,invoice,,,,,,5,\n2026-08-04,-200,back to him,invoice,,,,,,,\n");
        List<RowProblem> problems = shop.read().get(0).problems();
        assertTrue(problems.stream().anyMatch(p -> p.column().equals("hours") && p.message().contains("a row of their own")),
                problems.toString());
        assertTrue(problems.stream().anyMatch(p -> p.kind() == RowProblem.Kind.REJECTED && p.message().contains("out under direction")),
                problems.toString());
    }

    @Test
    void a_ledger_without_invoices_has_no_job() throws IOException {
        Undertaking own = undertaking(HEAD + "2026-08-10,412.30,radiator,part,,,,,,,\n");
        assertEquals(Optional.empty(), own.job());
        assertEquals(List.of(), own.ledger().orElseThrow().invoices());
    }

    @Test
    void draws_that_do_not_belong_together_are_refused() {
        double[] two = new double[2];
        assertThrows(IllegalArgumentException.class, () -> new Job("USD", LocalDate.EPOCH, BigDecimal.ZERO, two, new double[3], two, two,
                25));
        Job job = new Job("USD", LocalDate.EPOCH, BigDecimal.ZERO, two, two, two, two, 25);
        job.pays()[0] = 9;
        assertArrayEquals(new double[2], job.pays());
        assertEquals(job, new Job("USD", LocalDate.EPOCH, new BigDecimal("0.00"), two, two, two, two, 25));
    }

    @Test
    void in_short_a_job_is_told_with_its_rows_and_day() throws IOException {
        Files.writeString(folder.resolve("ledger.csv"), """
                date,amount,note,category
                2026-08-03,3000,deposit,invoice
                2026-08-10,412.30,radiator,part
                2026-08-20,1150,bearings,labour
                """);
        String told = InShort.withoutListings(Optional.empty(), Undertaking.of(folder)).text().replaceAll("\\s+", " ");
        assertTrue(told.contains("The job leaves USD 1,348") && told.contains("That is by 3 rows of the ledger as of 2026-08-20."), told);
        assertFalse(told.contains("you have USD"), "what it costs alone would mislead: " + told);
    }
}
