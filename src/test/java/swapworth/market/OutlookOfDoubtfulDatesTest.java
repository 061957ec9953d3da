package swapworth.market;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.YearMonth;
import java.util.Arrays;
import java.util.List;
import java.util.SortedMap;
import java.util.TreeMap;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import swapworth.assumptions.Assumption;
import swapworth.assumptions.Assumptions;
import swapworth.listing.Car;
import swapworth.listing.CarFacts;
import swapworth.listing.LevelOfTrade;
import swapworth.listing.PriceIncludes;
import swapworth.statistics.Quantiles;

/** As far as the dates of a file may tell nothing, the months to come are what is assumed of a market, as the months seen are. */
class OutlookOfDoubtfulDatesTest {
    private static final int AHEAD = 12;
    private static final int DRAWS = 4000;

    private static PriceModel told;
    private static PriceModel doubted;
    private static double doubt;

    @BeforeAll
    static void prices_that_know_little_of_their_dates() {
        SortedMap<YearMonth, Double> still = new TreeMap<>();
        for (int month = 0; month < 10; month++) {
            still.put(YearMonth.of(2026, 1).plusMonths(month), 0.0);
        }
        List<Car> cars = ListingsAlongAPath.withDatesDrawnAnew(ListingsAlongAPath.of(still, 8, 5), 6);
        told = model(cars, 0);
        doubted = model(cars, 50);
        doubt = doubted.index().orElseThrow().chanceThatDatesTellNothing();
    }

    private static PriceModel model(List<Car> cars, double percent) {
        Assumption a = Assumptions.defaults().get("dates_tell_nothing");
        return PriceModel.options().with(Assumptions.defaults().with(new Assumption(a.name(), a.question(), percent, a.spread(), a.unit(),
                a.source(), a.note()))).fit(cars);
    }

    private static double[] factors(PriceModel model) {
        return model.index().orElseThrow().outlook().orElseThrow().factors(model.draws(DRAWS, 1), "", AHEAD);
    }

    private static double below(double level, double[] factors) {
        return Arrays.stream(factors).filter(f -> f < level).count() / (double) factors.length;
    }

    // Source: an independent simulation of the stated market (numpy, 4 million paths: drift normal 0, 1 % a month; steps of 0.026 within a
    // factor of e^0.4, correlation 0.5): after twelve months it stands lower with 0.500, below 0.85 with 0.2019, below 1.1 with 0.6894.
    @Test
    void it_is_what_the_listings_say_and_what_is_assumed_of_any_market_by_the_doubt() {
        assertTrue(doubt > 0.15 && doubt < 0.5, "doubt " + doubt);
        double[] with = factors(doubted);
        double[] without = factors(told);
        double error = 4.5 * Math.sqrt(0.5 / DRAWS);
        assertEquals((1 - doubt) * below(1, without) + doubt * 0.5, below(1, with), error);
        assertEquals((1 - doubt) * below(0.85, without) + doubt * 0.2019, below(0.85, with), error);
        assertEquals((1 - doubt) * below(1.1, without) + doubt * 0.6894, below(1.1, with), error);
    }

    @Test
    void prices_to_come_follow_the_same_draws() {
        Outlook outlook = doubted.index().orElseThrow().outlook().orElseThrow();
        ValueDraws draws = doubted.draws(DRAWS, 1);
        String line = doubted.lines().get(0);
        CarFacts facts = CarFacts.of(line).modelYear(2018).mileage(TestCars.miles(70_000)).build();
        Subject car = new Subject(facts, LevelOfTrade.PRIVATE_ASKING, PriceIncludes.NEITHER, doubted.lastSeen());
        double[] now = outlook.levels(draws, car, 0);
        double[] then = outlook.levels(draws, car, AHEAD);
        double[] factors = outlook.factors(draws, line, AHEAD);
        double[] ageing = outlook.ageing(draws, facts, AHEAD);
        double[] apart = new double[DRAWS];
        for (int i = 0; i < DRAWS; i++) {
            apart[i] = Math.abs(Math.log(then[i] / (now[i] * factors[i] * ageing[i])));
        }
        assertTrue(Quantiles.of(apart, 1) < 0.01, "" + Quantiles.of(apart, 1));
    }

    @Test
    void so_much_more_of_it_is_assumed() {
        double weight = told.index().orElseThrow().outlook().orElseThrow().weightOfAssumption();
        assertEquals(doubt + (1 - doubt) * weight, doubted.index().orElseThrow().outlook().orElseThrow().weightOfAssumption(), 1e-9);
    }
}
