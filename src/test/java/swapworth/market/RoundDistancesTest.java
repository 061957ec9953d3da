package swapworth.market;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import swapworth.assumptions.Assumption;
import swapworth.assumptions.Assumptions;
import swapworth.listing.Car;
import swapworth.listing.CarFacts;
import swapworth.listing.Mileage;
import swapworth.listing.MileageStatus;
import swapworth.reading.DistanceUnit;

/**
 * Whether prices step down at round distances. That they do by some 150 to 200 dollars at each 10,000 miles: Lacetera, Pope and Sydnor,
 * American Economic Review 102(5) 2012; the worlds of these tests have stated steps.
 */
class RoundDistancesTest {

    /** Cars that are worth less by a stated part at each round 10,000 of a unit, and fall the more slowly between. */
    private static List<Car> cars(int count, double step, DistanceUnit unit, double scatter, long seed) {
        Random random = new Random(seed);
        List<Car> cars = new ArrayList<>();
        for (int i = 0; i < count; i++) {
            double age = 3 + 9 * random.nextDouble();
            double driven = Math.rint(age * 15_000 * Math.exp(0.3 * random.nextGaussian()));
            double smooth = Math.log(20_000) - 0.09 * age - 0.02 * driven / 10_000;
            double part = driven / 10_000 - Math.floor(driven / 10_000);
            double log = smooth + step * (0.5 - part) + scatter * random.nextGaussian();
            CarFacts facts = CarFacts.of("Velmarch").ageYears(age)
                    .mileage(new Mileage(unit.toMiles(driven), MileageStatus.READ, unit)).build();
            cars.add(TestCars.car(i, facts, Math.exp(log)));
        }
        return cars;
    }

    private static TermEffect step(List<Car> cars, DistanceUnit unit) {
        return PriceModel.fit(cars).stepAtRoundDistances(unit).orElseThrow();
    }

    private static TermEffect step(List<Car> cars, DistanceUnit unit, double assumed, double spread) {
        Assumption ours = Assumptions.defaults().get("round_distance_step");
        return PriceModel.options().with(Assumptions.defaults().with(new Assumption(ours.name(), ours.question(), assumed, spread,
                ours.unit(), "a test", ours.note()))).fit(cars).stepAtRoundDistances(unit).orElseThrow();
    }

    @Test
    void a_step_is_found_in_the_unit_in_which_it_is() {
        double large = Math.log(0.94);
        for (DistanceUnit unit : DistanceUnit.values()) {
            List<Car> cars = cars(500, large, unit, 0.05, 3);
            TermEffect found = step(cars, unit, -1, 5);
            assertTrue(found.low95() < -6 && found.high95() > -6 && found.high95() < -4, found.toString());
            assertTrue(found.label().contains("10,000 " + unit.symbol()), found.label());
            assertTrue(found.rows() > 450 && found.priorShare() < 0.1, found.toString());
            TermEffect drawnToward = step(cars, unit);
            assertTrue(drawnToward.percent() > found.percent() && drawnToward.percent() < -1, drawnToward.toString());
        }
    }

    @Test
    void its_ranges_hold_what_they_promise_where_steps_are_as_assumed() {
        Random random = new Random(5);
        int inside = 0;
        int worlds = 60;
        for (int world = 0; world < worlds; world++) {
            double step = Math.log(0.99) + 0.01 / 0.99 * random.nextGaussian();
            TermEffect found = step(cars(100, step, DistanceUnit.MI, 0.04, 100 + world), DistanceUnit.MI);
            inside += found.low80() <= 100 * Math.expm1(step) && 100 * Math.expm1(step) <= found.high80() ? 1 : 0;
        }
        // Three standard errors of 60 draws with a chance of 0.8 each.
        assertTrue(Math.abs(inside - 0.8 * worlds) <= 3 * Math.sqrt(worlds * 0.16), inside + " of " + worlds);
    }

    @Test
    void a_dozen_cars_leave_it_to_the_assumption() {
        TermEffect found = step(cars(12, 0, DistanceUnit.MI, 0.12, 7), DistanceUnit.MI);
        assertEquals(-1, found.percent(), 0.3);
        assertTrue(found.priorShare() > 0.95, found.toString());
    }

    @Test
    void distances_of_whole_ten_thousands_were_rounded_and_tell_nothing() {
        List<Car> cars = new ArrayList<>();
        for (int i = 0; i < 30; i++) {
            cars.add(TestCars.car(i, CarFacts.of("Velmarch").ageYears(6.0).mileage(TestCars.miles(10_000.0 * (1 + i % 9))).build(),
                    9_000 - 300 * (i % 9)));
        }
        assertTrue(PriceModel.fit(cars).stepAtRoundDistances(DistanceUnit.MI).isEmpty());
        cars.add(TestCars.car(30, CarFacts.of("Velmarch").ageYears(6.0).mileage(TestCars.miles(41_000)).build(), 8_000));
        assertEquals(1, step(cars, DistanceUnit.MI).rows());
    }

    @Test
    void a_distance_that_was_written_in_another_unit_tells_nothing_of_the_marks_of_this_one() {
        List<Car> miles = cars(200, -0.06, DistanceUnit.MI, 0.05, 9);
        List<Car> both = new ArrayList<>(miles);
        for (Car car : cars(100, -0.06, DistanceUnit.KM, 0.05, 10)) {
            both.add(TestCars.car(200 + both.size(), car.facts(), car.sightings().get(0).price().amount()));
        }
        PriceModel model = PriceModel.fit(both);
        TermEffect ofMiles = model.stepAtRoundDistances(DistanceUnit.MI).orElseThrow();
        TermEffect ofKilometres = model.stepAtRoundDistances(DistanceUnit.KM).orElseThrow();
        assertEquals(step(miles, DistanceUnit.MI).rows(), ofMiles.rows());
        assertTrue(ofKilometres.rows() > 90 && ofKilometres.rows() <= 100, ofKilometres.toString());
        assertTrue(PriceModel.fit(miles).stepAtRoundDistances(DistanceUnit.KM).isEmpty());
    }

    @Test
    void kilometres_that_were_rounded_are_known_for_it_though_they_are_kept_in_miles() {
        List<Car> cars = new ArrayList<>();
        for (int i = 0; i < 40; i++) {
            Mileage whole = new Mileage(DistanceUnit.KM.toMiles(10_000.0 * (1 + i)), MileageStatus.READ, DistanceUnit.KM);
            cars.add(TestCars.car(i, CarFacts.of("Velmarch").ageYears(6.0).mileage(whole).build(), 9_000 - 100 * i));
        }
        assertTrue(PriceModel.fit(cars).stepAtRoundDistances(DistanceUnit.KM).isEmpty());
    }

    @Test
    void a_car_that_has_not_come_near_the_first_mark_tells_nothing() {
        List<Car> cars = new ArrayList<>();
        for (double miles : new double[] {4_000, 6_000, 14_000}) {
            cars.add(TestCars.car(cars.size(), CarFacts.of("Velmarch").ageYears(6.0).mileage(TestCars.miles(miles)).build(), 9_000));
        }
        assertEquals(2, step(cars, DistanceUnit.MI).rows());
    }

    @Test
    void a_step_that_is_known_stays_as_stated() {
        TermEffect found = step(cars(200, 0, DistanceUnit.MI, 0.05, 9), DistanceUnit.MI, -2, 0);
        assertEquals(-2, found.percent(), 0.01);
        assertEquals(1, found.priorShare(), 0.01);
    }
}
