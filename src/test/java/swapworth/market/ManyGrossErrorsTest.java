package swapworth.market;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import swapworth.listing.Car;
import swapworth.listing.CarFacts;
import swapworth.listing.LevelOfTrade;
import swapworth.listing.Listing;

/**
 * A file in which one row in twenty or three in twenty are wrong: a third have kilometres where miles are meant, a third lack a
 * digit of the price, a third stand twice. Sixty cars of an invented line, twelve seeds in a row.
 */
class ManyGrossErrorsTest {
    private static final LocalDate DAY = LocalDate.of(2026, 6, 1);
    private static final int CARS = 60;
    private static final int SEEDS = 12;

    /** What a model says of cars that it has not seen. */
    private record Met(double meanMiss, double in80, double in95, double meanWidth95) {

        static Met of(PriceModel model, List<Car> unseen) {
            double miss = 0;
            double width = 0;
            int in80 = 0;
            int in95 = 0;
            for (Car car : unseen) {
                FairValue value = TestCars.fair(model.value(Subject.of(car.facts(), LevelOfTrade.PRIVATE_ASKING, DAY)));
                double price = car.latest().price().amount();
                miss += Math.abs(Math.log(price / value.median())) / unseen.size();
                width += Math.log(value.range(0.95).high() / value.range(0.95).low()) / unseen.size();
                in80 += value.range(0.80).holds(price) ? 1 : 0;
                in95 += value.range(0.95).holds(price) ? 1 : 0;
            }
            return new Met(miss, 100.0 * in80 / unseen.size(), 100.0 * in95 / unseen.size(), width);
        }
    }

    private static List<Car> spoilt(List<Car> cars, double share) {
        List<Car> spoilt = new ArrayList<>(cars);
        int wrong = (int) Math.round(share * cars.size());
        for (int k = 0; k < wrong; k++) {
            int i = k * cars.size() / wrong;
            Car car = cars.get(i);
            Listing row = car.latest();
            switch (k % 3) {
                case 0 -> {
                    CarFacts facts = car.facts().toBuilder()
                            .mileage(TestCars.miles(1.609 * car.facts().mileage().orElseThrow().miles())).build();
                    spoilt.set(i, TestCars.car(i, facts, row.price().amount()));
                }
                case 1 -> spoilt.set(i, TestCars.car(i, car.facts(), row.price().amount() / 10));
                default -> spoilt.add(TestCars.car(5000 + i, car.facts(), row.price().amount()));
            }
        }
        return spoilt;
    }

    @ParameterizedTest
    @ValueSource(doubles = {0.05, 0.15})
    void values_and_ranges_of_clean_cars_hold(double share) {
        Met[] clean = new Met[SEEDS];
        Met[] dirty = new Met[SEEDS];
        for (int seed = 0; seed < SEEDS; seed++) {
            List<Car> cars = TestCars.line("Corlette", 14_000, CARS, 300 + seed);
            List<Car> unseen = TestCars.line("Corlette", 14_000, 100, 700 + seed);
            clean[seed] = Met.of(PriceModel.fit(cars), unseen);
            dirty[seed] = Met.of(PriceModel.fit(spoilt(cars, share)), unseen);
        }
        double growthOfMiss = mean(dirty, Met::meanMiss) / mean(clean, Met::meanMiss);
        double growthOfWidth = mean(dirty, Met::meanWidth95) / mean(clean, Met::meanWidth95);
        assertTrue(growthOfMiss < 1.1, "the mean miss grew " + growthOfMiss + " times");
        assertTrue(growthOfWidth < 1.5, "the mean width of 95 % ranges grew " + growthOfWidth + " times");
        assertEquals(81, mean(dirty, Met::in80), 5, "80 % ranges held so many per cent");
        assertEquals(95.5, mean(dirty, Met::in95), 3.5, "95 % ranges held so many per cent");
    }

    private static double mean(Met[] met, java.util.function.ToDoubleFunction<Met> figure) {
        return java.util.Arrays.stream(met).mapToDouble(figure).average().orElseThrow();
    }
}
