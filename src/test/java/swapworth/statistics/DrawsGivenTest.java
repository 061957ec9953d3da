package swapworth.statistics;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Draws after something was observed. */
class DrawsGivenTest {
    private static final int COUNT = 100_000;

    // Closed form: a normal quantity of variance 1 about 0, seen once with an error of variance 1/4 at 1.5.
    @Test
    void draws_given_an_observation_follow_the_normal_law_in_closed_form() {
        double[] target = Draws.normal(COUNT, 1);
        double[] error = Draws.normal(COUNT, 2);
        Arrays.setAll(error, i -> 0.5 * error[i]);
        double[] given = Draws.given(target, new double[][] {target}, new double[][] {error}, 1.5);
        assertEquals(1.5 * 0.8, Draws.mean(given), 0.01);
        assertEquals(0.2, Draws.covariance(given, given), 0.01);
        assertTrue(Draws.covariance(given, target) > 0.15, "draws keep their states");
    }

    @Test
    void nothing_observed_moves_nothing() {
        double[] target = Draws.normal(100, 1);
        assertArrayEquals(target, Draws.given(target, new double[0][], new double[0][]), 0);
    }

    /** The mean and the standard deviation, each the mean of some worlds, of a normal quantity seen so often with such an error. */
    private static double[] learned(int draws, int times, double error, double[] observed) {
        int worlds = 20;
        double[] found = new double[2];
        for (int w = 0; w < worlds; w++) {
            double[] target = Draws.normal(draws, 1000 + w);
            double[][] middles = new double[times][];
            double[][] errors = new double[times][];
            for (int k = 0; k < times; k++) {
                middles[k] = target;
                errors[k] = Arrays.stream(Draws.normal(draws, 100_000L * w + 7 * k + 3)).map(z -> error * z).toArray();
            }
            double[] given = Draws.given(target, middles, errors, observed);
            found[0] += Draws.mean(given) / worlds;
            found[1] += Math.sqrt(Draws.covariance(given, given)) / worlds;
        }
        return found;
    }

    // Closed form: a standard normal quantity seen n times with an error of standard deviation s at a mean of y has the mean
    // y n / (n + s^2) and the variance s^2 / (n + s^2), however few the draws are.
    @ParameterizedTest
    @CsvSource({"4000, 3", "100, 3", "100, 30", "100, 90", "100, 100", "100, 300", "400, 300"})
    void many_observations_of_one_thing_may_meet_few_draws(int draws, int times) {
        double error = 0.8;
        double[] observed = new double[times];
        Arrays.setAll(observed, k -> 1.2 + 0.5 * Math.sin(k));
        double[] found = learned(draws, times, error, observed);
        double mean = Arrays.stream(observed).average().orElseThrow();
        double sd = Math.sqrt(error * error / (times + error * error));
        // Three standard errors of a standard deviation from twenty worlds of draws.
        double chance = 3 / Math.sqrt(2 * 20.0 * draws);
        System.out.println(draws + " draws, " + times + " observations: mean " + found[0] + ", sd / closed form " + found[1] / sd);
        assertEquals(mean * times / (times + error * error), found[0], 3 * sd / Math.sqrt(draws), "mean");
        assertEquals(1, found[1] / sd, chance + 0.02, "standard deviation");
    }

    @Test
    void draws_that_are_too_few_for_what_is_observed_are_refused_with_the_reason() {
        int things = 30;
        double[][] middles = new double[things][];
        double[][] errors = new double[things][];
        for (int k = 0; k < things; k++) {
            middles[k] = Draws.normal(100, k);
            errors[k] = Arrays.stream(Draws.normal(100, 1000 + k)).map(z -> 0.1 * z).toArray();
        }
        IllegalArgumentException refused = assertThrows(IllegalArgumentException.class,
                () -> Draws.given(middles[0], middles, errors, new double[things]));
        assertTrue(refused.getMessage().contains("100 draws are too few for 30 observations"), refused.getMessage());
    }

    // By hand: what is seen twice without an error is known; where the two differ neither is more right than the other.
    @Test
    void observations_of_one_thing_without_an_error_give_numbers_even_where_they_contradict_each_other() {
        double[] target = Draws.normal(1000, 1);
        double[][] twice = {target, target};
        double[][] none = new double[2][1000];
        for (double value : Draws.given(target, twice, none, 0.5, 0.5)) {
            assertEquals(0.5, value, 1e-6);
        }
        for (double value : Draws.given(target, twice, none, 0.5, 0.7)) {
            assertEquals(0.6, value, 1e-6);
        }
    }

    @Test
    void a_prediction_that_does_not_move_teaches_nothing() {
        double[] target = Draws.normal(100, 1);
        assertArrayEquals(target, Draws.given(target, new double[1][100], new double[1][100], 0.5), 0);
        assertArrayEquals(new double[1], Draws.regression(target, new double[100]), 0);
    }

    @Test
    void draws_that_are_not_as_many_are_refused() {
        double[] target = Draws.normal(100, 1);
        assertThrows(IllegalArgumentException.class, () -> Draws.covariance(target, new double[101]));
        assertThrows(IllegalArgumentException.class, () -> Draws.moved(target, new double[99]));
        assertThrows(IllegalArgumentException.class, () -> Draws.given(target, new double[1][100], new double[2][100], 0.5));
        assertThrows(IllegalArgumentException.class, () -> Draws.given(target, new double[1][100], new double[1][100]));
    }

    @Test
    void weights_that_all_vanish_are_refused() {
        assertThrows(IllegalArgumentException.class, () -> Draws.moved(new double[] {1, 2}, new double[] {0, 0}));
        assertThrows(IllegalArgumentException.class, () -> Draws.moved(new double[] {1, 2}, new double[] {2, -1}));
        assertThrows(IllegalArgumentException.class, () -> Draws.worth(new double[] {0, 0}));
    }

    // Closed form: weights exp(z) on a standard normal law give one of mean 1 and variance 1.
    @Test
    void moved_draws_follow_the_weighted_law_and_keep_their_order() {
        double[] target = Draws.normal(COUNT, 3);
        double[] weights = new double[COUNT];
        for (int i = 0; i < COUNT; i++) {
            weights[i] = Math.exp(target[i]);
        }
        double[] moved = Draws.moved(target, weights);
        assertEquals(1, Draws.mean(moved), 0.01);
        assertEquals(1, Draws.covariance(moved, moved), 0.01);
        for (int i = 1; i < 1000; i++) {
            assertEquals(target[i] >= target[i - 1], moved[i] >= moved[i - 1], "order of " + i);
        }
    }

    @Test
    void equal_weights_move_nothing() {
        double[] target = Draws.normal(1000, 3);
        double[] equal = new double[1000];
        Arrays.fill(equal, 0.25);
        assertArrayEquals(target, Draws.moved(target, equal), 1e-12);
        assertEquals(1000, Draws.worth(equal), 1e-9);
    }

    @Test
    void weights_that_leave_one_draw_put_all_draws_there() {
        double[] moved = Draws.moved(new double[] {3, 1, 2}, new double[] {0, 0, 1});
        assertArrayEquals(new double[] {2, 2, 2}, moved, 0);
    }
}
