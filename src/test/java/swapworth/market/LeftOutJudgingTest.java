package swapworth.market;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import swapworth.listing.Car;
import swapworth.listing.Listing;
import swapworth.world.SampleWorld;

/**
 * A judgement with its own car left out against a model that was fitted from nothing without that car: other medians, knots,
 * spreads and hyperparameters included. Distances are in standard deviations of the predicted log price.
 */
class LeftOutJudgingTest {

    private static final double[] LEVELS = {0.80, 0.95};

    /** How far median and ends of ranges lie from those of an honest refit. */
    private static double farthest(PriceModel all, List<Car> cars, int left) {
        Car car = cars.get(left);
        Listing listing = car.latest();
        List<Car> others = new ArrayList<>(cars);
        others.remove(left);
        Valuation refitted = PriceModel.fit(others).value(Evidence.subject(car.facts(), listing));
        Judgement judged = all.judge(listing);
        if (!(refitted instanceof FairValue honest && judged.valuation() instanceof FairValue value)) {
            assertEquals(refitted.getClass(), judged.valuation().getClass(), car.name());
            return 0;
        }
        assertEquals(honest.carsOfLine(), value.carsOfLine());
        assertEquals(honest.carsInFile(), value.carsInFile());
        // 2.563 standard deviations lie between the ends of the 80 % range of a normal law.
        double sd = Math.log(honest.range(0.80).high() / honest.range(0.80).low()) / 2.563;
        double farthest = Math.abs(Math.log(value.median() / honest.median()));
        for (double level : LEVELS) {
            farthest = Math.max(farthest, Math.abs(Math.log(value.range(level).low() / honest.range(level).low())));
            farthest = Math.max(farthest, Math.abs(Math.log(value.range(level).high() / honest.range(level).high())));
        }
        return farthest / sd;
    }

    private static List<Car> shuffled(long seed) {
        List<Car> cars = new ArrayList<>(SampleWorld.generate(seed).joinedCars());
        Collections.shuffle(cars, new Random(seed));
        return cars;
    }

    private static void check(List<Car> cars, int count, double typical, double nineInTen, double worst) {
        PriceModel all = PriceModel.fit(cars);
        double[] distance = new double[count];
        for (int i = 0; i < count; i++) {
            distance[i] = farthest(all, cars, i);
        }
        Arrays.sort(distance);
        assertTrue(distance[count / 2] < typical, "typical distance " + distance[count / 2] + " of " + cars.size() + " cars");
        double nine = distance[count * 9 / 10];
        assertTrue(nine < nineInTen, "9 in 10 within " + nine + " of " + cars.size() + " cars");
        assertTrue(distance[count - 1] < worst, "worst distance " + distance[count - 1] + " of " + cars.size() + " cars");
    }

    // Common spreads and how far lines scatter stay as all cars have them: with two cars of a line, each far off, that counts most.
    @Test
    void cars_of_a_file_of_thirty_are_judged_as_if_never_seen() {
        check(shuffled(23).subList(100, 130), 12, 0.08, 0.25, 0.75);
    }

    @Test
    void twelve_cars_of_one_line_are_each_judged_as_if_never_seen() {
        List<Car> cars = shuffled(23);
        String line = cars.get(0).facts().vehicle();
        check(cars.stream().filter(c -> c.facts().vehicle().equals(line)).limit(12).toList(), 12, 0.06, 0.2, 0.45);
    }

    // How far its line scatters is as all cars have it: that counts most.
    @Test
    void the_closed_form_for_many_cars_judges_them_as_if_never_seen() {
        check(shuffled(23), 8, 0.04, 0.12, 0.12);
    }

    @Test
    void judging_all_listings_and_judging_one_by_one_agree() {
        List<Car> cars = shuffled(24).subList(0, 40);
        PriceModel all = PriceModel.fit(cars);
        List<Judgement> judged = all.judgeAll();
        List<Listing> sightings = cars.stream().flatMap(c -> c.sightings().stream()).toList();
        assertEquals(sightings, judged.stream().map(Judgement::listing).toList());
        for (Judgement one : judged) {
            Judgement again = all.judge(one.listing());
            assertEquals(one.position(), again.position());
            assertEquals(one.gap(), again.gap());
            assertEquals(one.percentile(), again.percentile());
        }
    }

    @Test
    void its_own_price_does_not_move_a_judged_value() {
        List<Car> cars = new ArrayList<>(shuffled(25).subList(0, 30));
        Car car = cars.stream().filter(c -> c.sightings().size() == 1).findFirst().orElseThrow();
        PriceModel before = PriceModel.fit(cars);
        Car dearer = TestCars.withPrice(car, car.latest(), 3 * car.latest().price().amount());
        cars.set(cars.indexOf(car), dearer);
        PriceModel after = PriceModel.fit(cars);
        double was = TestCars.fair(before.judge(car.latest()).valuation()).median();
        double is = TestCars.fair(after.judge(dearer.latest()).valuation()).median();
        double sd = Math.log(TestCars.fair(before.judge(car.latest()).valuation()).range(0.80).high() / was) / 1.28;
        assertEquals(0, Math.log(is / was) / sd, 0.25);
    }
}
