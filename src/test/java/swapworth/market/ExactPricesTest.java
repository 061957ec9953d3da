package swapworth.market;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import swapworth.listing.Car;
import swapworth.listing.CarFacts;

/** Prices that follow exactly from facts, as people invent them to try a program out: no error is left, and nothing breaks. */
class ExactPricesTest {

    /** Lines, bodies and gears that go together, trims in a pattern, and mileages that rise row by row. */
    private static List<Car> byFacts(int rows, boolean pairs) {
        return IntStream.range(0, rows).mapToObj(i -> {
            boolean even = i % 2 == 0;
            boolean plain = i % 6 < 4;
            CarFacts.Builder facts = CarFacts.of(even ? "Orvane" : "Ostel").trim(plain ? "Plain" : "Fitted").modelYear(2010 + i % 7)
                    .mileage(TestCars.miles(60_000 + 3_000 * i));
            if (pairs) {
                facts.body(even ? "open" : "saloon").runningGear(even ? "four" : "six");
            }
            return TestCars.car(i, facts.build(), (even ? 9_000 : 13_000) * (plain ? 1 : 1.4));
        }).toList();
    }

    private static void assertNear(List<Car> cars, double within) {
        PriceModel model = PriceModel.fit(cars);
        for (Car car : cars) {
            double price = car.latest().price().amount();
            FairValue value = TestCars.fair(model.value(Evidence.subject(car.facts(), car.latest())));
            assertEquals(1, value.median() / price, within, car.name());
            Range range = value.range(0.95);
            assertTrue(range.low() > 0 && range.low() <= value.median() && value.median() <= range.high(), car.name() + " " + range);
        }
    }

    @ParameterizedTest
    @ValueSource(ints = {6, 9, 12, 18, 24, 36, 60, 150, 400})
    void prices_by_line_and_trim_alone(int rows) {
        assertNear(byFacts(rows, false), rows < 12 ? 0.1 : 0.03);
        assertNear(byFacts(rows, true), rows < 12 ? 0.1 : 0.03);
    }

    @ParameterizedTest
    @ValueSource(ints = {3, 4, 6, 9, 12, 18, 24, 36, 60, 150, 400})
    void prices_on_a_straight_line_of_age_and_miles(int rows) {
        Random random = new Random(rows);
        List<Car> cars = new ArrayList<>();
        for (int i = 0; i < rows; i++) {
            int year = 2008 + random.nextInt(14);
            double miles = 1_000 * (5 + random.nextInt(150));
            cars.add(TestCars.car(i, CarFacts.of("Orvane").modelYear(year).mileage(TestCars.miles(miles)).build(),
                    20_000 * Math.exp(-0.08 * (2026 - year) - 0.03 * miles / 10_000)));
        }
        assertNear(cars, rows < 12 ? 0.25 : 0.03);
    }

    @ParameterizedTest
    @ValueSource(ints = {1, 2, 3, 5, 12, 40, 300})
    void one_price_for_all(int rows) {
        List<Car> cars = IntStream.range(0, rows).mapToObj(i -> TestCars.car(i, CarFacts.of("Orvane").modelYear(2010 + i % 9)
                .mileage(TestCars.miles(40_000 + 5_000 * (i % 11))).build(), 8_000)).toList();
        assertNear(cars, rows < 12 ? 0.25 : 0.03);
    }

    @Test
    void the_same_car_many_times_over() {
        assertNear(IntStream.range(0, 30).mapToObj(i -> TestCars.car(i, CarFacts.of("Orvane").modelYear(2012)
                .mileage(TestCars.miles(80_000)).build(), 7_500)).toList(), 0.01);
    }
}
