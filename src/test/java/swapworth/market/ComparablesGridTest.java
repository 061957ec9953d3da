package swapworth.market;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.stream.Collectors;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import swapworth.listing.Car;
import swapworth.listing.CarFacts;
import swapworth.listing.LevelOfTrade;
import swapworth.listing.Listing;
import swapworth.listing.PriceKind;
import swapworth.listing.Seller;
import swapworth.world.SampleWorld;

/** The grid of comparables, recomputed as a reader with a pocket calculator would. */
class ComparablesGridTest {

    private static List<Car> cars = List.of();
    private static List<Judgement> judged = List.of();

    @BeforeAll
    static void judge() {
        cars = SampleWorld.generate(23).joinedCars();
        PriceModel model = PriceModel.fit(cars);
        judged = cars.stream().filter(c -> c.name().hashCode() % 20 == 0 || c.sightings().size() == 1).limit(25)
                .map(c -> model.judge(c.latest())).filter(j -> j.valuation() instanceof FairValue).toList();
        assertTrue(judged.size() >= 20);
    }

    private static double rounded(double factor) {
        return Math.rint(factor * 1000) / 1000;
    }

    @Test
    void the_closing_lines_multiply_out_to_the_value() {
        for (Judgement j : judged) {
            FairValue value = TestCars.fair(j.valuation());
            Comparables grid = value.comparables();
            assertEquals(value.median(), grid.value(), 0);
            assertEquals(1, grid.geometricMean() * grid.otherListings() * grid.assumptions() / value.median(), 1e-10, j.car());
        }
    }

    @Test
    void factors_of_three_decimals_multiply_out_to_within_their_rounding() {
        for (Judgement j : judged) {
            Comparables grid = TestCars.fair(j.valuation()).comparables();
            double sumOfLogs = 0;
            for (Comparables.Comparable row : grid.rows()) {
                double adjusted = row.listing().price().amount();
                for (double factor : row.factors()) {
                    adjusted *= rounded(factor);
                }
                double tolerance = row.factors().stream().mapToDouble(f -> 0.00051 / f).sum();
                assertEquals(1, adjusted / row.adjusted(), tolerance, j.car() + " by " + row.car());
                sumOfLogs += Math.log(adjusted);
            }
            double value = Math.exp(sumOfLogs / grid.rows().size()) * rounded(grid.otherListings()) * rounded(grid.assumptions());
            assertEquals(1, value / grid.value(), 0.006, j.car());
        }
    }

    @Test
    void net_and_gross_adjustments_are_those_of_the_factors() {
        for (Judgement j : judged) {
            for (Comparables.Comparable row : TestCars.fair(j.valuation()).comparables().rows()) {
                double net = 1;
                double gross = 1;
                for (double factor : row.factors()) {
                    net *= factor;
                    gross *= Math.max(factor, 1 / factor);
                }
                assertEquals(100 * (row.adjusted() / row.listing().price().amount() - 1), row.netPercent(), 1e-9);
                // Adjustments below 0.005 % are not shown but counted.
                assertEquals(100 * (net - 1), row.netPercent(), 0.1);
                assertEquals(100 * (gross - 1), row.grossPercent(), 0.1);
                assertTrue(row.grossPercent() >= Math.abs(row.netPercent()) - 1e-9 || row.netPercent() < 0);
            }
        }
    }

    @Test
    void six_other_cars_stand_in_a_grid_each_once_and_none_is_a_missed_bid() {
        for (Judgement j : judged) {
            Comparables grid = TestCars.fair(j.valuation()).comparables();
            assertEquals(6, grid.rows().size());
            Set<String> names = new HashSet<>();
            for (Comparables.Comparable row : grid.rows()) {
                assertNotEquals(j.car(), row.car());
                assertTrue(names.add(row.car()));
                assertEquals(grid.groups().size(), row.factors().size());
                assertNotEquals(PriceKind.BID_NOT_MET, row.listing().price().kind());
            }
            assertEquals(2, grid.bracketing().size());
        }
    }

    @Test
    void a_car_of_the_same_facts_needs_no_adjustment() {
        List<Car> line = new ArrayList<>(TestCars.line("Aral Siv", 11_000, 20, 3));
        Car twin = TestCars.car(900, "Aral Siv", 2017, 61_000, 10_300, PriceKind.ASKING, Seller.PRIVATE);
        line.add(twin);
        PriceModel model = PriceModel.fit(line);
        Listing like = TestCars.car(901, "Aral Siv", 2017, 61_000, 9_000, PriceKind.ASKING, Seller.PRIVATE).latest();
        Comparables grid = TestCars.fair(model.judge(like).valuation()).comparables();
        assertEquals("car-900", grid.rows().get(0).car());
        assertEquals(10_300, grid.rows().get(0).adjusted(), 1e-6);
        assertEquals(0, grid.rows().get(0).grossPercent(), 1e-9);
    }

    /** The README's promise, asked of the library's other answer: two lines that share nothing, one scattering 3 %, the other 30. */
    @Test
    void comparables_are_the_cars_whose_difference_from_the_subject_is_least_unsure() {
        List<Car> both = new ArrayList<>(scattering("Calm", 0.3, 1));
        both.addAll(scattering("Wild", 3, 2));
        PriceModel model = PriceModel.fit(both);
        Subject wild = subject(TestCars.car(900, "Wild", 2017, 61_000, 9_000, PriceKind.ASKING, Seller.PRIVATE));
        Map<String, Double> unsure = new TreeMap<>();
        for (Car car : both) {
            Range of = model.difference(wild, subject(car)).range80();
            unsure.put(car.name(), Math.log((100 + of.high()) / (100 + of.low())));
        }
        Set<String> least = unsure.entrySet().stream().sorted(Map.Entry.comparingByValue()).map(Map.Entry::getKey).limit(6)
                .collect(Collectors.toSet());
        assertEquals(least, TestCars.fair(model.value(wild)).comparables().rows().stream().map(Comparables.Comparable::car)
                .collect(Collectors.toSet()));
        assertTrue(least.stream().allMatch(name -> name.startsWith("car-2")), least.toString());
    }

    private static Subject subject(Car car) {
        return Subject.of(car.facts(), LevelOfTrade.PRIVATE_ASKING, car.latest().seenOn().get());
    }

    private static List<Car> scattering(String line, double times, int seed) {
        List<Car> cars = new ArrayList<>();
        for (Car car : TestCars.line(line, 10_000, 40, seed)) {
            CarFacts facts = car.facts();
            double expected = Math.log(10_000) - 0.09 * (2019 - facts.modelYear().getAsInt())
                    - 0.04 * (facts.mileage().get().miles() - 60_000) / 10_000;
            double price = car.latest().price().amount();
            cars.add(TestCars.withPrice(car, car.latest(), price * Math.exp((times - 1) * (Math.log(price) - expected))));
        }
        return cars;
    }
}
