package swapworth.market;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import swapworth.listing.Car;
import swapworth.listing.CarFacts;

/**
 * What is assumed of a mile before prices speak: of cars that are driven little each counts more. Figures by hand from the formula of the
 * assumption {@code mileage_slope}: -4 % per 10,000 miles at 11,000 miles a year, steeper by the root of how much less a line is driven,
 * of n cars drawn toward that of others by n to 2.
 */
class WeightOfMilesTest {

    /** Cars of one age and next to one distance, of which prices tell next to nothing of miles. */
    private static List<Car> alike(int first, String line, int number, double milesPerYear) {
        List<Car> cars = new ArrayList<>();
        for (int i = 0; i < number; i++) {
            CarFacts facts = CarFacts.of(line).ageYears(8.0).mileage(TestCars.miles(8 * milesPerYear + 10 * (i % 3))).build();
            cars.add(TestCars.car(first + i, facts, 10_000 + 100 * (i % 5)));
        }
        return cars;
    }

    private static Map<String, Double> slopes(List<Car> cars) {
        return PriceModel.fit(cars).terms().stream().filter(t -> t.label().startsWith("mileage"))
                .collect(Collectors.toMap(TermEffect::label, TermEffect::percent));
    }

    private static double slope(int cars, double milesPerYear) {
        return slopes(alike(0, "Velmarch", cars, milesPerYear)).get("mileage");
    }

    private static double byHand(double weight) {
        return 100 * Math.expm1(weight * Math.log(0.96));
    }

    @Test
    void a_line_driven_as_usual_falls_as_is_assumed() {
        assertEquals(-4, slope(12, 11_000), 0.05);
    }

    @Test
    void a_line_driven_a_quarter_as_much_falls_nearly_twice_as_fast_a_mile() {
        assertEquals(byHand(Math.pow(2, 12.0 / 14)), slope(12, 2_750), 0.05);
        assertEquals(byHand(Math.pow(2, 40.0 / 42)), slope(40, 2_750), 0.05);
    }

    @Test
    void a_line_driven_much_falls_more_slowly() {
        assertEquals(byHand(Math.pow(Math.sqrt(0.5), 40.0 / 42)), slope(40, 22_000), 0.05);
    }

    @Test
    void museum_pieces_and_taxis_stay_within_limits() {
        assertEquals(byHand(Math.pow(2.5, 60.0 / 62)), slope(60, 50), 0.1);
        assertEquals(byHand(Math.pow(0.7, 60.0 / 62)), slope(60, 90_000), 0.05);
    }

    @Test
    void one_car_more_changes_little() {
        for (int cars = 2; cars < 12; cars++) {
            assertTrue(Math.abs(slope(cars, 2_750) - slope(cars + 1, 2_750)) < 0.9, cars + " cars");
        }
    }

    @Test
    void each_line_of_a_file_has_the_weight_of_its_own_miles() {
        List<Car> cars = alike(0, "Velmarch", 40, 11_000);
        cars.addAll(alike(40, "Sivrette", 40, 2_750));
        Map<String, Double> slopes = slopes(cars);
        double ratio = Math.log1p(slopes.get("mileage, Sivrette") / 100) / Math.log1p(slopes.get("mileage, Velmarch") / 100);
        assertTrue(ratio > 1.8 && ratio < 2, slopes.toString());
    }

    @Test
    void prices_that_tell_of_miles_settle_it() {
        Random random = new Random(1);
        List<Car> cars = new ArrayList<>();
        for (int i = 0; i < 400; i++) {
            double age = 2 + 12 * random.nextDouble();
            double miles = 2_500 * age * (0.3 + 1.4 * random.nextDouble());
            double amount = 60_000 * Math.exp(-0.05 * age - 0.03 * miles / 10_000 + 0.05 * random.nextGaussian());
            cars.add(TestCars.car(i, CarFacts.of("Velmarch").ageYears(age).mileage(TestCars.miles(miles)).build(), amount));
        }
        TermEffect slope = PriceModel.fit(cars).terms().stream().filter(t -> t.label().equals("mileage")).findFirst().orElseThrow();
        assertEquals(100 * Math.expm1(-0.03), slope.percent(), 1);
    }
}
