package swapworth.market;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.LocalDate;
import java.time.YearMonth;
import java.util.List;
import java.util.Optional;
import java.util.TreeMap;
import org.junit.jupiter.api.Test;
import swapworth.listing.Car;
import swapworth.listing.CarFacts;
import swapworth.listing.LevelOfTrade;
import swapworth.listing.PriceIncludes;

/** Prices of which nobody wrote down the day, among others with one: they speak of cars, and not of the market in time. */
class UndatedPricesTest {
    private static final double FALL = 0.98;
    private static final List<Car> DATED = falling();
    private static final List<Car> MIXED = ListingsAlongAPath.withEverySecondDateLost(DATED);
    private static final PriceModel MODEL = PriceModel.fit(MIXED);
    private static final CarFacts CAR = CarFacts.of("Abel").modelYear(2018).mileage(TestCars.miles(60_000)).build();

    private static List<Car> falling() {
        TreeMap<YearMonth, Double> year = new TreeMap<>();
        for (int k = 0; k < 13; k++) {
            year.put(YearMonth.of(2025, 1).plusMonths(k), k * Math.log(FALL));
        }
        return ListingsAlongAPath.of(year, 12, 5);
    }

    private static FairValue value(PriceModel model, Optional<LocalDate> on) {
        return TestCars.fair(model.value(new Subject(CAR, LevelOfTrade.PRIVATE_ASKING, PriceIncludes.NEITHER, on)));
    }

    @Test
    void they_do_not_hide_how_the_market_moved() {
        Drift drift = MODEL.index().orElseThrow().drift(12).orElseThrow();
        assertTrue(drift.range80().holds(100 * (FALL - 1)), drift.toString());
    }

    @Test
    void the_value_of_the_last_day_is_that_of_the_dated_ones_and_that_of_no_day_lies_in_between() {
        List<Car> dated = MIXED.stream().filter(car -> car.lastSeen().isPresent()).toList();
        double now = value(MODEL, MODEL.lastSeen()).median();
        assertEquals(1, now / value(PriceModel.fit(dated), MODEL.lastSeen()).median(), 0.04);
        FairValue ofNoDay = value(MODEL, Optional.empty());
        assertEquals(now * Math.pow(FALL, -6), ofNoDay.median(), 0.05 * now, "half a year before");
        assertTrue(ofNoDay.remarks().get(0).startsWith("no date"), ofNoDay.remarks().toString());
        Range ofDay = value(MODEL, MODEL.lastSeen()).range(0.80);
        Range wide = ofNoDay.range(0.80);
        assertTrue(Math.log(wide.high() / wide.low()) > 1.04 * Math.log(ofDay.high() / ofDay.low()), wide + ", of a day " + ofDay);
    }

    @Test
    void it_is_said_how_many_they_are_and_what_was_done() {
        String said = MODEL.undated().orElseThrow();
        assertTrue(said.startsWith(MIXED.size() / 2 + " prices have no date (seen_on)"), said);
        assertTrue(MODEL.index().orElseThrow().cautions().contains(said));
        assertEquals(Optional.empty(), PriceModel.fit(DATED).undated());
    }

    @Test
    void where_no_price_has_a_date_none_stands_apart() {
        PriceModel none = PriceModel.fit(DATED.stream().map(ListingsAlongAPath::withoutDate).toList());
        assertEquals(Optional.empty(), none.undated());
        assertEquals(List.of(), value(none, Optional.empty()).remarks());
    }

    @Test
    void beside_prices_of_one_day_they_are_taken_to_be_of_it_and_that_is_said() {
        List<Car> day = TestCars.line("Abel", 12_000, 12, 1);
        PriceModel model = PriceModel.fit(ListingsAlongAPath.withEverySecondDateLost(day));
        assertTrue(model.undated().orElseThrow().contains("taken to be of it"), model.undated().toString());
        assertEquals(value(PriceModel.fit(day), model.lastSeen()).median(), value(model, model.lastSeen()).median(), 1e-6);
    }
}
