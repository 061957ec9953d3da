package swapworth.market;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.LocalDate;
import java.time.YearMonth;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.Set;
import java.util.SortedMap;
import java.util.TreeMap;
import org.apache.commons.math3.stat.correlation.PearsonsCorrelation;
import org.junit.jupiter.api.Test;
import swapworth.listing.Car;
import swapworth.listing.CarFacts;
import swapworth.listing.LevelOfTrade;
import swapworth.listing.PriceKind;
import swapworth.listing.Seller;
import swapworth.market.TestCars.Seen;
import swapworth.statistics.Quantiles;
import swapworth.world.Line;
import swapworth.world.SampleWorld;

/** The market in time: its index, drift, peak and outlook, from the price model's own time terms. */
class MarketIndexTest {
    private static final SampleWorld WORLD = SampleWorld.generate(600);
    private static final PriceModel MODEL = PriceModel.fit(WORLD.joinedCars());

    private static MarketIndex index() {
        return MODEL.index().orElseThrow();
    }

    @Test
    void the_base_month_is_100_and_any_base_gives_the_same_ratios() {
        MarketIndex first = index();
        MarketIndex later = first.withBase(YearMonth.of(2026, 1));
        IndexMonth base = later.months().get(8);
        assertEquals(YearMonth.of(2026, 1), base.month());
        assertEquals(100, base.index(), 1e-9);
        assertEquals(0, base.range95().high() - base.range95().low(), 1e-9);
        double ratio = first.months().get(17).index() / first.months().get(8).index();
        assertEquals(ratio, later.months().get(17).index() / 100, 0.003 * ratio);
        assertThrows(IllegalArgumentException.class, () -> first.withBase(YearMonth.of(2030, 1)));
    }

    @Test
    void one_and_the_same_car_falls_faster_than_cars_of_one_age_by_about_the_slope_of_age() {
        double market = index().drift(12).orElseThrow().percentPerMonth();
        double car = index().holding(Held.MODEL_YEAR).drift(12).orElseThrow().percentPerMonth();
        double age = MODEL.terms().stream().filter(t -> t.label().equals("age")).findFirst().orElseThrow().percent() / 12;
        assertEquals(age, car - market, 0.15, market + " and " + car);
    }

    @Test
    void a_drift_is_asked_of_months_seen_in_their_order() {
        MarketIndex index = index();
        YearMonth last = index.last();
        assertThrows(IllegalArgumentException.class, () -> index.drift(YearMonth.of(1999, 3), last));
        assertThrows(IllegalArgumentException.class, () -> index.drift(last, last.plusMonths(1)));
        assertThrows(IllegalArgumentException.class, () -> index.drift(last, last.minusMonths(1)));
        assertInstanceOf(Answer.NotTold.class, index.drift(last, last));
    }

    /** The same prices two weeks later: what lies between the middles of two months is divided by the days between, not by months. */
    @Test
    void a_drift_does_not_depend_on_where_the_days_seen_stand_in_their_months() {
        TreeMap<YearMonth, Double> falling = new TreeMap<>();
        falling.put(YearMonth.of(2026, 1), 0.0);
        falling.put(YearMonth.of(2026, 2), -0.04);
        List<Car> cars = ListingsAlongAPath.of(falling, 60, 7);
        double middle = PriceModel.fit(cars).index().orElseThrow().drift(12).orElseThrow().percentPerMonth();
        double late = PriceModel.fit(cars.stream().map(c -> ListingsAlongAPath.later(c, 14)).toList()).index().orElseThrow().drift(12)
                .orElseThrow().percentPerMonth();
        assertEquals(middle, late, 0.1 * Math.abs(middle), middle + " and " + late);
    }

    @Test
    void a_few_days_over_the_end_of_a_month_are_no_drift() {
        TreeMap<YearMonth, Double> one = new TreeMap<>();
        one.put(YearMonth.of(2026, 4), 0.0);
        List<Car> april = ListingsAlongAPath.of(one, 30, 7);
        List<Car> days = april.stream().filter(c -> c.firstSeen().orElseThrow().getDayOfMonth() > 22)
                .map(c -> ListingsAlongAPath.later(c, 5)).toList();
        String why = PriceModel.fit(days).index().orElseThrow().drift(12).match(d -> d.toString(), CannotTell::reason);
        assertTrue(why.startsWith("a drift needs at least 20 days"), why);
        why = PriceModel.fit(april).index().orElseThrow().drift(12).match(d -> d.toString(), CannotTell::reason);
        assertEquals("the level is that of a month, and all days lie in one, 2026-04: a drift needs two", why);
    }

    @Test
    void a_line_is_found_in_whatever_case_and_a_slip_is_asked_about() {
        MarketIndex index = PriceModel.fit(SampleWorld.withDefaults().generate(5).joinedCars()).index().orElseThrow();
        assertEquals(index.ofLine("Sivrette").drift(6), index.ofLine("SIVRETTE").drift(6));
        assertEquals("no car of the line 'Sivrete' is in the model; did you mean Sivrette?",
                assertThrows(IllegalArgumentException.class, () -> index.ofLine("Sivrete")).getMessage());
    }

    /** Where each was seen once nobody knows which are gone: the last ones are not dearer for being the last. */
    @Test
    void cars_seen_once_each_are_not_told_apart_by_whether_they_are_still_on_offer() {
        TreeMap<YearMonth, Double> year = new TreeMap<>();
        for (int k = 0; k < 12; k++) {
            year.put(YearMonth.of(2025, 1).plusMonths(k), 0.0);
        }
        List<Car> ended = ListingsAlongAPath.of(year, 10, 8);
        List<Car> once = ended.stream().map(ListingsAlongAPath::stillOpen).toList();
        assertFalse(hasStep(PriceModel.fit(once)), "each seen once");
        List<Car> some = new ArrayList<>(once);
        for (int i = 0; i < 20; i++) {
            some.set(i, ended.get(i));
        }
        assertFalse(hasStep(PriceModel.fit(some)), "some known to be gone, and no ask that has stood");
        for (int i = 100; i < 120; i++) {
            some.set(i, ListingsAlongAPath.standing(once.get(i), 40));
        }
        assertTrue(hasStep(PriceModel.fit(some)), "some that have stood");
    }

    /** A market that falls by 2 % a month, in which every seventh car is asked a tenth too dear and stands to the end unchanged. */
    @Test
    void asks_that_nobody_changed_do_not_hold_up_the_market() {
        TreeMap<YearMonth, Double> falling = new TreeMap<>();
        for (int k = 0; k < 12; k++) {
            falling.put(YearMonth.of(2025, 1).plusMonths(k), -0.02 * k);
        }
        List<Car> cars = new ArrayList<>(ListingsAlongAPath.of(falling, 14, 9));
        LocalDate last = LocalDate.of(2025, 12, 31);
        for (int i = 0; i < cars.size(); i += 7) {
            Car one = ListingsAlongAPath.at(cars.get(i), 1.1);
            cars.set(i, ListingsAlongAPath.standing(one, (int) ChronoUnit.DAYS.between(one.firstSeen().orElseThrow(), last)));
        }
        Drift year = PriceModel.fit(cars).index().orElseThrow().drift(12).match(d -> d, no -> {
            throw new AssertionError(no.reason());
        });
        assertTrue(year.range80().holds(Figures.percent(-0.02)), year.toString());
        assertTrue(year.range80().high() < 0, year.toString());
    }

    @Test
    void cars_that_stood_there_at_the_first_look_are_said_to_show_a_fall_too_fast() {
        assertEquals(List.of("30 of 90 asks are of the first week, 3 times as many as of a week since or more: most of these cars had stood"
                + " for a time, and of cars that stand it is the dear ones that stay. Where they were asked 2 % more than cars just come "
                + "up, the movement from the first month on is shown 0.4 % a month too low"), ofFirstLook(30, 3, 20));
        assertEquals(List.of(), ofFirstLook(4, 4, 20), "as many as in any week");
        assertEquals(List.of(), ofFirstLook(30, 3, 60), "more than a year");
    }

    /** What is said of the first look where so many cars came up in the first week, and so many in each of some weeks since. */
    private static List<String> ofFirstLook(int first, int since, int weeks) {
        Random random = new Random(3);
        List<Car> cars = new ArrayList<>();
        for (int week = 0; week <= weeks; week++) {
            for (int k = 0; k < (week == 0 ? first : since); k++) {
                CarFacts facts = CarFacts.of("Sivrette").modelYear(2012 + random.nextInt(10)).mileage(TestCars.miles(60_000)).build();
                cars.add(TestCars.car(cars.size(), facts, List.of(new Seen(LocalDate.of(2025, 3, 3).plusWeeks(week), PriceKind.ASKING,
                        Seller.PRIVATE, 12_000 * Math.exp(0.1 * random.nextGaussian())))));
            }
        }
        return PriceModel.fit(cars).index().orElseThrow().cautions().stream().filter(c -> c.contains("first week")).toList();
    }

    private static boolean hasStep(PriceModel model) {
        return model.terms().stream().anyMatch(t -> t.label().startsWith("still on offer"));
    }

    @Test
    void tables_say_where_the_season_is_in_and_where_it_is_not() {
        List<String> texts = IndexTables.all(MODEL, index()).stream().map(t -> t.text().replaceAll("\\s+", " ")).toList();
        assertTrue(texts.get(0).contains("The season is in it"), texts.get(0));
        assertTrue(texts.get(1).contains("without the season"), texts.get(1));
        assertTrue(texts.get(3).contains("without the season"), texts.get(3));
        assertTrue(texts.get(4).contains("the season is in it"), texts.get(4));
    }

    @Test
    void chances_of_the_peak_add_up_and_the_most_probable_months_hold_it() {
        Peak peak = index().peak();
        assertEquals(1, Arrays.stream(peak.chances()).sum(), 1e-9);
        assertTrue(peak.within(0.5).contains(peak.month()));
        assertTrue(peak.within(0.95).size() >= peak.within(0.5).size());
    }

    @Test
    void an_outlook_goes_on_draw_by_draw_with_the_values_of_cars() {
        Outlook outlook = index().outlook().orElseThrow();
        ValueDraws draws = MODEL.draws(2000, 5);
        String line = Line.SALOON.vehicle();
        double[] three = outlook.factors(draws, line, 3);
        assertArrayEquals(three, outlook.factors(draws, line, 3), 0, "the same draws give the same factors");
        double[] six = outlook.factors(draws, line, 6);
        assertTrue(correlation(three, six) > 0.6, "six months go on from three: " + correlation(three, six));
        assertTrue(correlation(six, outlook.factors(draws, Line.ROADSTER.vehicle(), 6)) > 0.9, "lines share the market");
        // The level of a car after three months holds the factor and the ageing of a quarter of a year.
        Subject subject = Subject.of(WORLD.joinedCars().get(0).facts(), LevelOfTrade.PRIVATE_ASKING, MODEL.lastSeen().orElseThrow());
        double[] now = outlook.levels(draws, subject, 0);
        assertArrayEquals(draws.level(subject), now, 0);
        double[] then = outlook.levels(draws, subject, 3);
        double[] ageing = new double[now.length];
        double[] ofLine = outlook.factors(draws, subject.facts().vehicle(), 3);
        Arrays.setAll(ageing, i -> then[i] / now[i] / ofLine[i]);
        double middle = Quantiles.of(ageing, 0.5);
        assertTrue(middle > 0.94 && middle < 0.995, "a quarter of a year of ageing: " + middle);
        CarFacts facts = WORLD.joinedCars().get(0).facts();
        assertArrayEquals(ageing, outlook.ageing(draws, facts, 3), 1e-3, "its own ageing, asked for alone");
        assertEquals(1, outlook.ageing(draws, facts, 0)[0], 0);
        assertThrows(IllegalArgumentException.class, () -> outlook.ageing(draws, facts, 13));
    }

    @Test
    void farther_ahead_is_less_sure_and_the_assumption_is_never_surer_than_the_listings() {
        Outlook outlook = index().outlook().orElseThrow();
        ValueDraws draws = MODEL.draws(4000, 6);
        double before = 0;
        for (int months = 1; months <= Outlook.MOST_AHEAD; months++) {
            double[] factors = outlook.factors(draws, "", months);
            double width = Math.log(Quantiles.of(factors, 0.9) / Quantiles.of(factors, 0.1));
            assertTrue(width > before, months + " months: " + width + " after " + before);
            before = width;
        }
        Drift drift = index().drift(6).orElseThrow();
        assertTrue(drift.spread() < drift.priorSpread());
        assertThrows(IllegalArgumentException.class, () -> outlook.factors(draws, "", 13));
        assertThrows(IllegalArgumentException.class, () -> outlook.factors(PriceModel.fit(WORLD.joinedCars()).draws(5, 1), "", 1));
    }

    @Test
    void too_few_months_or_one_day_are_said_and_not_dressed_up() {
        assertInstanceOf(Answer.NotTold.class, PriceModel.fit(TestCars.line("Abel", 12_000, 25, 1)).index());
        SampleWorld few = SampleWorld.withDefaults().withMonths(3).generate(601);
        MarketIndex short3 = PriceModel.fit(few.joinedCars()).index().orElseThrow();
        String needed = short3.outlook().match(o -> "nothing", CannotTell::needed);
        assertTrue(needed.contains(Outlook.LEAST_MONTHS + " months"), needed);
    }

    /** Three dozen cars of two looks, or one car long before all others, span months without telling anything of a movement. */
    @Test
    void an_outlook_asks_for_cars_spread_over_months_and_not_for_two_looks() {
        SortedMap<YearMonth, Double> half = new TreeMap<>();
        for (int k = 0; k < 8; k++) {
            half.put(YearMonth.of(2025, 1).plusMonths(k), 0.0);
        }
        MarketIndex spread = PriceModel.fit(ListingsAlongAPath.of(half, 5, 5)).index().orElseThrow();
        assertInstanceOf(Answer.Told.class, spread.outlook());
        half.keySet().removeIf(month -> month.getMonthValue() > 1 && month.getMonthValue() < 8);
        MarketIndex two = PriceModel.fit(ListingsAlongAPath.of(half, 20, 5)).index().orElseThrow();
        String why = two.outlook().match(o -> "nothing", CannotTell::sentence);
        assertTrue(why.contains("most of them of few months") && why.contains("20 of them where no month counts for more than 5"), why);
        List<Car> one = new ArrayList<>(ListingsAlongAPath.of(new TreeMap<>(Map.of(YearMonth.of(2025, 8), 0.0)), 39, 5));
        one.add(ListingsAlongAPath.later(one.get(0), -214));
        MarketIndex thin = PriceModel.fit(one).index().orElseThrow();
        assertInstanceOf(Answer.NotTold.class, thin.outlook());
        assertTrue(thin.drift(12).orElseThrow().weightOfAssumption() > 0.5, thin.drift(12).toString());
        String movement = IndexTables.summary(thin);
        assertTrue(movement.contains("% of this is the assumption market_drift and not the listings)"), movement);
        assertFalse(IndexTables.summary(index()).contains("of this is the assumption"));
    }

    @Test
    void months_of_an_outlook_are_counted_by_days() {
        SortedMap<YearMonth, Double> half = new TreeMap<>();
        for (int k = 0; k < 7; k++) {
            half.put(YearMonth.of(2025, 1).plusMonths(k), 0.0);
        }
        List<Car> cars = ListingsAlongAPath.of(half, 8, 5).stream().filter(c -> !c.firstSeen().orElseThrow()
                .isBefore(LocalDate.of(2025, 1, 25)) && c.firstSeen().orElseThrow().isBefore(LocalDate.of(2025, 7, 6))).toList();
        assertInstanceOf(Answer.NotTold.class, PriceModel.fit(cars).index().orElseThrow().outlook());
    }

    @Test
    void tables_name_what_is_held_and_how_sure_it_is() {
        List<String> texts = IndexTables.all(MODEL, index()).stream().map(t -> t.text()).toList();
        assertEquals(6, texts.size());
        assertTrue(texts.get(0).contains("2025-05 = 100"), texts.get(0));
        assertTrue(texts.get(1).contains("cars of the same age"), texts.get(1));
        assertTrue(texts.get(4).contains("last day seen = 100"), texts.get(4));
    }

    private static double correlation(double[] a, double[] b) {
        return new org.apache.commons.math3.stat.correlation.PearsonsCorrelation().correlation(a, b);
    }

    /** A month's move goes on by 0.4 of itself, as our assumptions have it: a market that fell last month falls on, in the same draws. */
    @Test
    void the_months_to_come_go_on_from_the_last_one() {
        ValueDraws draws = MODEL.draws(4000, 5);
        String line = MODEL.lines().get(0);
        LocalDate end = index().last().atEndOfMonth();
        CarFacts car = CarFacts.of(line).modelYear(2016).mileage(TestCars.miles(70_000)).seller(Seller.PRIVATE).build();
        double[] now = draws.level(Subject.of(car, LevelOfTrade.PRIVATE_ASKING, end));
        double[] before = draws.level(Subject.of(car, LevelOfTrade.PRIVATE_ASKING, end.minusMonths(1)));
        double[] factor = index().outlook().orElseThrow().factors(draws, line, 1);
        double[] last = new double[now.length];
        double[] next = new double[now.length];
        for (int i = 0; i < now.length; i++) {
            last[i] = Math.log(now[i] / before[i]);
            next[i] = Math.log(factor[i]);
        }
        assertTrue(new PearsonsCorrelation().correlation(last, next) > 0.15, "" + new PearsonsCorrelation().correlation(last, next));
    }

    @Test
    void a_peak_is_held_with_a_probability_between_0_and_1() {
        Peak peak = index().peak();
        assertThrows(IllegalArgumentException.class, () -> peak.within(Double.NaN));
        assertThrows(IllegalArgumentException.class, () -> peak.within(1));
        assertTrue(peak.toString().startsWith("highest most probably in " + peak.month() + ", chance "), peak.toString());
    }

    /** Six cars a month over eight months, five of them asked again a month later for 2 per cent less in the months that are named. */
    private static List<MarketIndex.Comparison> askedAgainAfter(Set<Integer> months, int base) {
        Random random = new Random(3);
        List<Car> cars = new ArrayList<>();
        for (int month = 0; month < 8; month++) {
            for (int k = 0; k < 6; k++) {
                LocalDate day = LocalDate.of(2026, 1, 15).plusMonths(month);
                double ask = 12_000 * Math.exp(0.1 * random.nextGaussian() - 0.01 * month);
                List<Seen> seen = new ArrayList<>(List.of(new Seen(day, PriceKind.ASKING, Seller.PRIVATE, ask)));
                if (months.contains(month) && k > 0) {
                    seen.add(new Seen(day.plusMonths(1), PriceKind.ASKING, Seller.PRIVATE, 0.98 * ask));
                }
                cars.add(TestCars.car(cars.size(), CarFacts.of("Line").modelYear(2012 + random.nextInt(10)).build(), seen));
            }
        }
        return PriceModel.fit(cars).index().orElseThrow().withBase(YearMonth.of(2026, 1 + base)).comparison();
    }

    @Test
    void a_month_without_a_car_seen_again_takes_no_repeat_listings_from_the_months_before_it() {
        Set<Integer> every = Set.of(0, 1, 2, 3, 4, 5, 6);
        Set<Integer> withoutTheSixth = Set.of(0, 1, 2, 3, 4, 6);
        Set<Integer> firstTwo = Set.of(0, 1);
        List<MarketIndex.Comparison> all = askedAgainAfter(every, 0);
        List<MarketIndex.Comparison> broken = askedAgainAfter(withoutTheSixth, 0);
        List<MarketIndex.Comparison> behindTheBreak = askedAgainAfter(withoutTheSixth, 7);
        List<MarketIndex.Comparison> baseOfNoPair = askedAgainAfter(firstTwo, 7);
        for (int month = 0; month < 8; month++) {
            // Each step is 2 % down, the asks rounded to whole dollars.
            assertEquals(100 * Math.pow(0.98, month), all.get(month).repeats(), 0.05);
            assertEquals(month < 6 ? 100 * Math.pow(0.98, month) : Double.NaN, broken.get(month).repeats(), 0.05);
            assertEquals(month < 6 ? Double.NaN : 100 * Math.pow(0.98, month - 7), behindTheBreak.get(month).repeats(), 0.05);
            assertEquals(Double.NaN, baseOfNoPair.get(month).repeats());
        }
    }
}
