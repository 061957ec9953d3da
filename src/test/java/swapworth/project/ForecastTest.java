package swapworth.project;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.math.BigDecimal;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.YearMonth;
import java.util.Arrays;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import swapworth.assumptions.Assumption;
import swapworth.assumptions.Assumptions;
import swapworth.assumptions.Question;
import swapworth.project.Entry.Direction;
import swapworth.statistics.Quantiles;

/** Forecasts at completion against what can be worked out without drawing, and the sample against common practice. */
class ForecastTest {

    @TempDir
    Path folder;

    private Ledger read(String... lines) throws IOException {
        return Ledger.read(Files.writeString(folder.resolve("ledger.csv"), String.join("\n", lines) + "\n"));
    }

    private static Assumptions without(String... names) {
        Assumptions some = Assumptions.defaults();
        for (String name : names) {
            Assumption one = some.get(name);
            some = some.with(new Assumption(name, Question.PROJECT, 0, 0, one.unit(), one.source(), one.note()));
        }
        return some;
    }

    private static double mean(double[] draws) {
        return Arrays.stream(draws).average().orElseThrow();
    }

    @Test
    void paid_and_agreed_amounts_stand_as_they_are() throws IOException {
        Forecast forecast = Forecast.of(read("date,amount,note,status,direction", "2026-03-04,80,pump,,",
                "2026-05-04,100,exhaust,committed,",
                "2026-06-04,30,seat,committed,in"));
        assertEquals(150, Quantiles.of(forecast.total(), 0));
        assertEquals(150, Quantiles.of(forecast.total(), 1));
        assertEquals(180, forecast.peak().amounts()[0]);
        assertEquals(YearMonth.of(2026, 5), forecast.peak().month());
        assertEquals(YearMonth.of(2026, 6), forecast.completion());
        assertEquals(4, forecast.months().size());
    }

    // Closed form: the mean of a sum of beta laws is the sum of (low + 4 likely + high) / 6; variances add up with the correlation
    // of the two quantile functions, which for laws of this shape is that of the normal numbers to within 2 %.
    @Test
    void estimates_add_up_as_the_moments_of_their_laws_do() throws IOException {
        Ledger ledger = read("date,amount,note,category,status,low,likely,high", "2026-03-04,80,pump,part,,,,",
                "2026-05-04,,exhaust,part,estimate,400,500,900", "2026-05-09,,glass,part,estimate,100,200,360");
        Forecast forecast = Forecast.withDefaults().with(without("contingency")).draws(200_000, 3).of(ledger);
        double first = (400 + 4 * 500 + 900) / 6.0;
        double second = (100 + 4 * 200 + 360) / 6.0;
        double a = (first - 400) * (900 - first) / 7;
        double b = (second - 100) * (360 - second) / 7;
        double variance = a + b + 2 * 0.3 * Math.sqrt(a * b);
        double[] total = forecast.total();
        assertEquals(80 + first + second, mean(total), 3 * Math.sqrt(variance / 200_000));
        double mean = mean(total);
        double drawn = Arrays.stream(total).map(v -> (v - mean) * (v - mean)).average().orElseThrow();
        assertEquals(variance, drawn, 0.02 * variance);
        assertEquals(1, forecast.drivers().stream().mapToDouble(Forecast.Driver::share).sum(), 1e-9);
        assertEquals("exhaust", forecast.drivers().get(0).name());
    }

    @Test
    void a_likely_amount_alone_takes_the_spread_of_its_category() throws IOException {
        Ledger ledger = read("date,amount,note,category,status", "2026-03-04,80,pump,part,", "2026-05-04,1000,welding,labour,estimate");
        double[] toPay = Forecast.withDefaults().with(without("contingency")).draws(100_000, 3).of(ledger).toPay();
        Assumption labour = Assumptions.defaults().get("estimate_labour");
        double median = 1000 * (1 + labour.middle() / 100);
        double sigma = labour.spread() / 100 / (1 + labour.middle() / 100);
        assertEquals(median, Quantiles.of(toPay, 0.5), 0.01 * median);
        assertEquals(median * Math.exp(1.2815515655446004 * sigma), Quantiles.of(toPay, 0.9), 0.01 * median);
    }

    @Test
    void the_reserve_is_drawn_apart_from_every_category_and_what_stands_apart_not_at_all() {
        Set<Integer> groups = new TreeSet<>(List.of(RowsToCome.RESERVE));
        for (Category category : Category.values()) {
            assertEquals(!category.standsApart(), RowsToCome.groupOf(category) >= 0 && groups.add(RowsToCome.groupOf(category)),
                    category.words());
        }
    }

    @Test
    void a_reserve_is_added_unless_the_ledger_has_one() throws IOException {
        String[] rows = {"date,amount,note,category,status", "2026-03-04,80,pump,part,", "2026-05-04,1000,welding,labour,estimate", ""};
        Ledger plain = read(rows);
        double with = Quantiles.of(Forecast.of(plain).toPay(), 0.5);
        double without = Quantiles.of(Forecast.withDefaults().with(without("contingency")).of(plain).toPay(), 0.5);
        assertTrue(with - without > 100 && with - without < 260, with + " against " + without);
        rows[3] = "2026-05-04,50,what nobody thought of,contingency,estimate";
        double own = Quantiles.of(Forecast.of(read(rows)).toPay(), 0.5);
        assertTrue(own - without > 20 && own - without < 90, own + " against " + without);
    }

    // By hand: 20 of a hundred, give or take 10, of a firm 1,000: ln-normal about 200 with a spread of 10 / 20 log points.
    @Test
    void the_doubt_of_the_reserve_is_its_spread_against_its_middle() throws IOException {
        Assumption ours = Assumptions.defaults().get("contingency");
        Assumptions twenty = Assumptions.defaults().with(new Assumption(ours.name(), ours.question(), 20, 10, ours.unit(), ours.source(),
                ours.note()));
        double[] toPay = Forecast.withDefaults().with(twenty).draws(100_000, 3).of(read("date,amount,note,category,status,low,likely,high",
                "2026-03-04,80,pump,part,,,,", "2026-05-04,,welding,labour,estimate,1000,1000,1000")).toPay();
        assertEquals(1200, Quantiles.of(toPay, 0.5), 3);
        assertEquals(1000 + 200 * Math.exp(1.2815515655446004 * 0.5), Quantiles.of(toPay, 0.9), 5);
    }

    @Test
    void what_drives_the_spread_stands_from_low_to_high_below_0_for_money_that_comes_in() throws IOException {
        Ledger ledger = read("date,amount,note,category,status,low,likely,high", "2026-03-04,80,pump,part,,,,",
                "2026-05-04,,doors,part sold,estimate,300,500,900", "2026-05-04,,paint,part,estimate,300,500,900");
        for (Forecast.Driver driver : Forecast.withDefaults().with(without("contingency")).of(ledger).drivers()) {
            assertTrue(driver.low() < driver.middle() && driver.middle() < driver.high(), driver.toString());
            assertEquals(driver.name().equals("doors"), driver.high() < 0, driver.toString());
        }
    }

    @Test
    void a_tool_that_is_kept_costs_the_undertaking_nothing_however_dear_it_becomes() throws IOException {
        String[] rows = {"date,amount,note,category,status,charged", "2026-08-03,5000,buy,purchase,,",
                "2026-12-01,10000,lift,tool,estimate,0"};
        Forecast kept = Forecast.of(read(rows));
        for (double charged : kept.charged()) {
            assertEquals(5000, charged, 1e-9);
        }
        for (double toFinish : kept.toFinish()) {
            assertEquals(0, toFinish, 1e-9);
        }
        rows[2] = "2026-12-01,10000,lift,tool,estimate,40";
        Forecast part = Forecast.withDefaults().with(without("contingency")).of(read(rows));
        for (int i = 0; i < part.count(); i++) {
            assertEquals(0.4 * part.toPay()[i], part.toFinish()[i], 1e-9);
            assertEquals(5000 + 0.4 * part.toPay()[i], part.charged()[i], 1e-9);
        }
        // The reserve is a share of what the undertaking bears.
        Assumption reserve = Assumptions.defaults().get("contingency");
        double more = mean(Forecast.of(read(rows)).toPay()) - mean(part.toPay());
        assertEquals(4000 * reserve.middle() / 100, more, 0.3 * 4000 * reserve.middle() / 100);
    }

    @Test
    void estimates_of_one_category_go_together() throws IOException {
        Ledger ledger = read("date,amount,note,category,status", "2026-03-04,80,pump,part,", "2026-05-04,1000,welding,labour,estimate",
                "2026-05-05,1000,painting,labour,estimate");
        double apart = spread(Forecast.withDefaults().with(without("contingency", "estimate_correlation")).of(ledger).toPay());
        double together = spread(Forecast.withDefaults().with(without("contingency")).of(ledger).toPay());
        assertEquals(Math.sqrt(1.3), together / apart, 0.04);
    }

    private static double spread(double[] draws) {
        return Forecast.range(draws, 0.80).high() - Forecast.range(draws, 0.80).low();
    }

    @Test
    void the_last_month_ends_at_the_total_and_past_months_are_exact() {
        Forecast forecast = Forecast.of(Ledger.read(SAMPLE));
        Forecast.MonthOfCash last = forecast.months().get(forecast.months().size() - 1);
        assertEquals(Quantiles.of(forecast.total(), 0.5), last.middle(), 1e-6);
        Forecast.MonthOfCash first = forecast.months().get(0);
        assertEquals(first.low(), first.high());
        double highest = forecast.months().stream().mapToDouble(Forecast.MonthOfCash::middle).max().orElseThrow();
        assertTrue(Quantiles.of(forecast.peak().amounts(), 0.5) >= highest - 1e-6);
        assertTrue(forecast.peak().chance() > 0.2 && forecast.peak().chance() <= 1);
    }

    @Test
    void the_month_of_most_cash_is_never_surer_than_draws_can_tell() throws IOException {
        Path file = Files.writeString(folder.resolve("ledger.csv"), "date,amount,note,category,status,due\n2026-01-10,1000,car,purchase,"
                + "actual,\n2026-01-10,500,gearbox,labour,estimate,2026-05-01\n");
        Forecast forecast = Forecast.of(Ledger.read(file));
        assertEquals(1, forecast.peak().chance());
        String text = forecast.figures().text().replaceAll("\\s+", " ");
        assertTrue(text.contains("at the end of 2026-05 (more than 99 % of the draws)."), text);
    }

    @Test
    void of_months_with_as_much_in_it_the_first_is_the_one_in_which_it_is_most() throws IOException {
        Path file = Files.writeString(folder.resolve("ledger.csv"), "date,amount,note,category,direction\n2026-01-10,1000,car,purchase,\n"
                + "2026-02-03,100,lamp,part,\n2026-02-20,100,lamp given back,part,in\n2026-03-02,200,rebate,purchase,in\n");
        Forecast.Peak peak = Forecast.of(Ledger.read(file)).peak();
        assertEquals(YearMonth.of(2026, 1), peak.month());
        assertEquals(1000, peak.amounts()[7]);
        assertEquals(1, peak.chance());
    }

    @Test
    void the_same_seed_gives_the_same_figures_and_another_gives_near_ones() {
        Ledger ledger = Ledger.read(SAMPLE);
        assertArrayEquals(Forecast.of(ledger).total(), Forecast.of(ledger).total());
        double one = Quantiles.of(Forecast.of(ledger).total(), 0.5);
        double two = Quantiles.of(Forecast.withDefaults().draws(10_000, 2).of(ledger).total(), 0.5);
        assertTrue(one != two && Math.abs(one - two) < 60, one + " and " + two);
    }

    @Test
    void draws_that_options_hand_out_are_the_callers_own() {
        double[] ones = new double[10];
        Forecast.Options moving = Forecast.withDefaults().draws(10, 1).moving(Category.PART, ones);
        moving.moved().get(Category.PART)[0] = 1e9;
        ones[1] = 1e9;
        assertArrayEquals(new double[10], moving.moved().get(Category.PART));
        Alternatives.Options cars = Alternatives.withDefaults().withCars(java.util.Map.of("a", ones), 1);
        cars.cars().get("a")[1] = 0;
        assertEquals(1e9, cars.cars().get("a")[1]);
    }

    private static final Path SAMPLE = Path.of("sample-listings", "ledger.csv");

    private static double sum(Ledger ledger, Category category, String car, Direction direction) {
        BigDecimal sum = BigDecimal.ZERO;
        for (Entry entry : ledger.entries()) {
            for (Entry.Share share : entry.shares()) {
                if (entry.category() == category && entry.direction() == direction && (car.isEmpty() || car.equals(share.car()))) {
                    sum = sum.add(share.amount());
                }
            }
        }
        return sum.doubleValue();
    }

    private static double cost(Ledger ledger, String car) {
        double cost = 0;
        for (Category category : Category.values()) {
            cost += category == Category.SOLD ? 0 : sum(ledger, category, car, Direction.OUT) - sum(ledger, category, car, Direction.IN);
        }
        return cost;
    }

    // Common practice, no source: what such undertakings look like.
    @Test
    void the_sample_looks_like_such_undertakings_do() {
        Ledger ledger = Ledger.read(SAMPLE);
        double whole = cost(ledger, "");
        double labour = sum(ledger, Category.LABOUR, "", Direction.OUT);
        assertEquals(0.25, labour / whole, 0.05, "shop labour is about a quarter of the whole");
        double landed = 0;
        for (Category category : new Category[] {Category.PURCHASE, Category.FEE, Category.STORAGE, Category.FREIGHT}) {
            landed += sum(ledger, category, "donor", Direction.OUT);
        }
        assertEquals(1 / 8.0, sum(ledger, Category.FREIGHT, "donor", Direction.OUT) / landed, 0.02,
                "freight is about an eighth of a landed donor");
        double sold = sum(ledger, Category.SOLD, "", Direction.IN);
        assertTrue(sold > labour, "left-over parts bring more than the shop's labour costs");
        double recipient = sum(ledger, Category.PURCHASE, "recipient", Direction.OUT);
        double ofRecipient = sum(ledger, Category.SOLD, "recipient", Direction.IN);
        double saved = recipient / 3 - ofRecipient / 3;
        assertTrue(saved > 0 && saved < recipient / 3, "a recipient at two thirds with two thirds of the parts money saves less than its"
                + " price");
        double toFind = whole - recipient - sold;
        assertEquals(1, toFind / landed, 0.25, "an owner of the recipient must find about the donor's landed price");
    }
}
