package swapworth.market;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.YearMonth;
import java.time.temporal.ChronoUnit;
import java.util.Comparator;
import java.util.List;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.stream.LongStream;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import swapworth.listing.Car;
import swapworth.statistics.Reference;

/**
 * Invented listings whose market follows a published one: the US consumer price index for used cars, seasonally adjusted. Source of the
 * path and of its figures: Bureau of Labor Statistics, series CUSR0000SETA02, in {@code reference/us-cpi-used-cars}.
 */
class PublishedPathTest {
    private static final YearMonth BEGIN = YearMonth.of(2020, 1);
    private static final YearMonth PEAK = YearMonth.of(2022, 2);
    private static final YearMonth LOW = YearMonth.of(2024, 8);
    private static final SortedMap<YearMonth, Double> PATH = path();

    private static SortedMap<YearMonth, Double> path() {
        Reference months = Reference.read("us-cpi-used-cars/months.csv");
        SortedMap<YearMonth, Double> path = new TreeMap<>();
        for (int i = 0; i < months.rows(); i++) {
            YearMonth month = YearMonth.parse(months.text(i, "month"));
            if (!month.isBefore(BEGIN)) {
                path.put(month, Math.log(months.number(i, "sa_CUSR0000SETA02_vintage2026")));
            }
        }
        double first = path.get(BEGIN);
        path.replaceAll((month, log) -> log - first);
        return path;
    }

    @Test
    void the_published_path_itself_has_its_published_figures() {
        YearMonth highest = PATH.keySet().stream().max(Comparator.comparingDouble(PATH::get)).orElseThrow();
        assertEquals(PEAK, highest);
        assertEquals(-19.45, 100 * Math.expm1(PATH.get(LOW) - PATH.get(PEAK)), 0.005);
        assertEquals(-0.72, 100 * Math.expm1((PATH.get(LOW) - PATH.get(PEAK)) / 30), 0.005);
        assertEquals(16_110.87, 20_000 * Math.exp(PATH.get(LOW) - PATH.get(PEAK)), 0.005);
    }

    private static MarketIndex index(int perMonth, long seed) {
        return PriceModel.fit(ListingsAlongAPath.of(PATH, perMonth, seed)).index().orElseThrow();
    }

    private static long monthsOffPeak(MarketIndex index) {
        YearMonth highest = index.months().stream().max(Comparator.comparingDouble(IndexMonth::index)).orElseThrow().month();
        return Math.abs(ChronoUnit.MONTHS.between(PEAK, highest));
    }

    private static boolean holdsTheFall(MarketIndex index) {
        return index.drift(PEAK, LOW).orElseThrow().range95().holds(-0.7182);
    }

    @Test
    void fifteen_cars_a_month_find_the_peak_and_the_fall() {
        MarketIndex index = index(15, 1);
        assertTrue(monthsOffPeak(index) <= 2, "months off the peak: " + monthsOffPeak(index));
        assertTrue(holdsTheFall(index), index.drift(PEAK, LOW).toString());
    }

    @Test
    @Tag("full")
    void twenty_sets_of_fifteen_cars_a_month_find_them_nearly_always() {
        long peaks = LongStream.range(0, 20).filter(seed -> monthsOffPeak(index(15, seed)) <= 2).count();
        long falls = LongStream.range(0, 20).filter(seed -> holdsTheFall(index(15, seed))).count();
        assertTrue(peaks >= 16 && falls >= 17, peaks + " peaks within two months, " + falls + " falls within the range, of 20");
    }

    // The path rose by 6.4 % from March to May 2023.
    @Test
    @Tag("full")
    void sixty_cars_a_month_do_not_smooth_the_rebound_of_2023_away() {
        double sum = 0;
        int seen = 0;
        for (long seed = 0; seed < 10; seed++) {
            Drift rebound = index(60, seed).drift(YearMonth.of(2023, 3), YearMonth.of(2023, 5)).orElseThrow();
            sum += rebound.percentPerMonth();
            seen += rebound.range80().low() > 0 ? 1 : 0;
        }
        assertTrue(sum / 10 > 1.6 && seen >= 8, sum / 10 + " % a month against 3.2 true; above 0 by the 80 % range in " + seen + " of 10");
    }

    @Test
    void one_model_year_says_that_ageing_and_market_are_one_and_by_what_the_index_stands() {
        SortedMap<YearMonth, Double> falling = new TreeMap<>();
        for (int k = 0; k < 12; k++) {
            falling.put(YearMonth.of(2025, 1).plusMonths(k), -0.01 * k);
        }
        MarketIndex one = PriceModel.fit(ListingsAlongAPath.ofModelYear(2017, falling, 15, 1)).index().orElseThrow();
        assertTrue(one.cautions().get(0).contains("cannot be told apart") && one.cautions().get(0).contains("age_slope"),
                one.cautions().get(0));
        Drift market = one.drift(11).orElseThrow();
        Drift aged = one.holding(Held.MODEL_YEAR).drift(11).orElseThrow();
        assertTrue(market.spread() > 1.3 * aged.spread(), "cars of one age are less sure: " + market + " against " + aged);
        // One car loses 1 % a month by the market and 9 % a year by ageing at the same mileage.
        assertTrue(aged.range95().holds(-1.75), aged.toString());
        MarketIndex many = PriceModel.fit(ListingsAlongAPath.of(falling, 15, 1)).index().orElseThrow();
        assertTrue(many.cautions().get(0).startsWith("Ageing is told from"), many.cautions().get(0));
        assertTrue(many.drift(11).orElseThrow().priorShare() < market.priorShare());
    }

    /** Dates that have nothing to do with the prices beside them, as in some open data sets: no move of the market may be told. */
    @Test
    void dates_drawn_at_random_show_no_move_and_are_doubted() {
        SortedMap<YearMonth, Double> year = new TreeMap<>();
        for (int k = 0; k < 12; k++) {
            year.put(YearMonth.of(2025, 1).plusMonths(k), 0.0);
        }
        List<Car> cars = ListingsAlongAPath.withDatesDrawnAnew(ListingsAlongAPath.of(year, 40, 3), 4);
        MarketIndex index = PriceModel.fit(cars).index().orElseThrow();
        assertTrue(index.chanceThatDatesTellNothing() > 0.5, "doubt " + index.chanceThatDatesTellNothing());
        for (Held held : Held.values()) {
            MarketIndex of = index.holding(held);
            long months = of.months().stream().filter(m -> m.range95().holds(100)).count();
            assertTrue(months >= 11, held + ": " + months + " of 12 months");
            assertTrue(of.drift(12).orElseThrow().range80().holds(0), of.drift(12).toString());
        }
        assertTrue(index.cautions().get(0).startsWith("Are these the days"), index.cautions().get(0));
        assertTrue(index.outlook() instanceof Answer.NotTold, "no outlook");
        MarketIndex sound = PriceModel.fit(ListingsAlongAPath.of(year, 40, 3)).index().orElseThrow();
        assertTrue(sound.chanceThatDatesTellNothing() < 0.05, "no doubt " + sound.chanceThatDatesTellNothing());
    }
}
