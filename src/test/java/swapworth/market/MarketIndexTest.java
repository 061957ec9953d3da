package swapworth.market;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.YearMonth;
import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.Test;
import swapworth.listing.LevelOfTrade;
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
}
