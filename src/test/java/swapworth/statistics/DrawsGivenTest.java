package swapworth.statistics;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;

/** Draws after something was observed. */
class DrawsGivenTest {
    private static final int COUNT = 100_000;

    // Closed form: a normal quantity of variance 1 about 0, seen once with an error of variance 1/4 at 1.5.
    @Test
    void draws_given_an_observation_follow_the_normal_law_in_closed_form() {
        double[] target = Draws.normal(COUNT, 1);
        double[] error = Draws.normal(COUNT, 2);
        double[] predicted = new double[COUNT];
        for (int i = 0; i < COUNT; i++) {
            predicted[i] = target[i] + 0.5 * error[i];
        }
        double[] given = Draws.given(target, new double[][] {predicted}, 1.5);
        assertEquals(1.5 * 0.8, Draws.mean(given), 0.01);
        assertEquals(0.2, Draws.covariance(given, given), 0.01);
        assertTrue(Draws.covariance(given, target) > 0.15, "draws keep their states");
    }

    @Test
    void nothing_observed_moves_nothing() {
        double[] target = Draws.normal(100, 1);
        assertArrayEquals(target, Draws.given(target, new double[0][]), 0);
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
        java.util.Arrays.fill(equal, 0.25);
        assertArrayEquals(target, Draws.moved(target, equal), 1e-12);
        assertEquals(1000, Draws.worth(equal), 1e-9);
    }

    @Test
    void weights_that_leave_one_draw_put_all_draws_there() {
        double[] moved = Draws.moved(new double[] {3, 1, 2}, new double[] {0, 0, 1});
        assertArrayEquals(new double[] {2, 2, 2}, moved, 0);
    }
}
