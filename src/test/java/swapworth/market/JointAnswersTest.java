package swapworth.market;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import swapworth.listing.Car;
import swapworth.listing.CarFacts;
import swapworth.listing.LevelOfTrade;
import swapworth.listing.Seller;

/** Differences between two cars and joint draws hang together with the values of single cars. */
class JointAnswersTest {
    private static final LocalDate DAY = LocalDate.of(2026, 6, 1);
    private static final int COUNT = 20_000;

    private static PriceModel model() {
        List<Car> cars = new ArrayList<>(TestCars.line("Abel", 12_000, 25, 1));
        cars.addAll(TestCars.line("Brand", 9_000, 8, 2));
        return PriceModel.fit(cars);
    }

    private static Subject subject(String line, int year) {
        return Subject.of(CarFacts.of(line).modelYear(year).mileage(TestCars.miles(60_000)).seller(Seller.PRIVATE).build(),
                LevelOfTrade.PRIVATE_ASKING, DAY);
    }

    @Test
    void a_car_differs_from_itself_by_nothing() {
        Difference none = model().difference(subject("Abel", 2018), subject("Abel", 2018));
        assertEquals(0, none.percent(), 1e-9);
        assertEquals(0, none.range95().high() - none.range95().low(), 1e-6);
    }

    @Test
    void a_difference_is_the_ratio_of_two_values_and_surer_than_if_they_were_independent() {
        PriceModel model = model();
        Subject newer = subject("Abel", 2019);
        Subject older = subject("Abel", 2016);
        Difference between = model.difference(newer, older);
        FairValue a = TestCars.fair(model.value(newer));
        FairValue b = TestCars.fair(model.value(older));
        // The median of a ratio is not quite that of two medians: the hyperparameters are averaged over.
        assertEquals(100 * (a.median() / b.median() - 1), between.percent(), 0.3);
        double own = Math.log(a.level(0.80).high() / a.level(0.80).low());
        double other = Math.log(b.level(0.80).high() / b.level(0.80).low());
        double width = Math.log((100 + between.range80().high()) / (100 + between.range80().low()));
        assertTrue(width < 0.9 * Math.hypot(own, other), width + " against " + Math.hypot(own, other));
        assertTrue(between.priorShare() > 0 && between.priorShare() < 1, "prior share " + between.priorShare());
    }

    @Test
    void a_weighted_sum_of_prices_is_held_by_what_holds_the_value_and_the_difference() {
        PriceModel model = model();
        Subject newer = subject("Abel", 2019);
        Subject older = subject("Abel", 2016);
        FairValue one = TestCars.fair(model.value(newer));
        Map<String, Double> alone = model.heldBy(Map.of(newer, 0.3));
        assertEquals(one.priorShare(), alone.values().stream().mapToDouble(Double::doubleValue).sum(), 1e-9);
        assertEquals(one.largestAssumption().share(), alone.get(one.largestAssumption().assumption()), 1e-9);
        Difference between = model.difference(newer, older);
        assertEquals(between.largest().share(), model.heldBy(Map.of(newer, 2.0, older, -2.0)).get(between.largest().assumption()), 1e-9);
        assertThrows(IllegalArgumentException.class, () -> model.heldBy(Map.of()));
    }

    @Test
    void draws_have_the_middles_and_ranges_of_values_and_differences() {
        PriceModel model = model();
        ValueDraws draws = model.draws(COUNT, 11);
        Subject first = subject("Abel", 2018);
        Subject second = subject("Brand", 2018);
        double[] a = draws.level(first);
        double[] b = draws.level(second);
        FairValue value = TestCars.fair(model.value(first));
        assertShare(0.1, a, value.level(0.80).low());
        assertShare(0.9, a, value.level(0.80).high());
        double[] percent = new double[COUNT];
        Arrays.setAll(percent, i -> 100 * (a[i] / b[i] - 1));
        assertShare(0.1, percent, model.difference(first, second).range80().low());
        assertShare(0.9, percent, model.difference(first, second).range80().high());
        double[] price = draws.price(first, 5);
        assertShare(0.1, price, value.range(0.80).low());
        assertShare(0.9, price, value.range(0.80).high());
    }

    private static void assertShare(double expected, double[] draws, double at) {
        double share = Arrays.stream(draws).filter(d -> d <= at).count() / (double) draws.length;
        // Five standard errors of the simulation.
        assertEquals(expected, share, 5 * Math.sqrt(expected * (1 - expected) / draws.length));
    }

    @Test
    void no_draws_are_refused() {
        assertThrows(IllegalArgumentException.class, () -> model().draws(0, 1));
    }

    @Test
    void a_line_never_seen_differs_by_assumption_alone() {
        assertTrue(model().difference(subject("Nowhere", 2018), subject("Abel", 2018)).priorShare() > 0.9);
    }

    @Test
    void the_same_seed_gives_the_same_draws() {
        assertArrayEquals(model().draws(50, 3).price(subject("Abel", 2018), 1), model().draws(50, 3).price(subject("Abel", 2018), 1));
    }
}
