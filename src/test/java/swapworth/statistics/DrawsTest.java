package swapworth.statistics;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.util.Arrays;
import java.util.List;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;

/** Joint draws have the distribution that the answers to contrasts state. */
class DrawsTest {

    private static Posterior posterior() {
        SplittableRandom random = new SplittableRandom(5);
        int n = 40;
        double[][] x = new double[n][];
        double[] y = new double[n];
        for (int i = 0; i < n; i++) {
            double a = random.nextDouble() * 4 - 2;
            double b = a + 0.3 * random.nextDouble();
            x[i] = new double[] {1, a, b};
            y[i] = 2 + 0.5 * a - 0.2 * b + 0.4 * (random.nextDouble() + random.nextDouble() - 1);
        }
        return ShrunkenRegression.withDefaults().fit(Design.dense(x), Sample.of(y), List.of(PriorBlock.stated("level", 0, 0, 5),
                PriorBlock.common("slopes", 1, 2, 1, PriorBlock.Role.SECONDARY)));
    }

    @Test
    void their_moments_and_quantiles_are_those_of_the_posterior() {
        Posterior posterior = posterior();
        int count = 40_000;
        JointDraws draws = posterior.draws(count, 17);
        for (SparseRow contrast : List.of(SparseRow.dense(1, 0, 0), SparseRow.dense(0, 1, -1), SparseRow.dense(1, 1.5, 1.7))) {
            assertDrawn(posterior, draws, contrast);
        }
    }

    /** That draws of a contrast are those of what is believed of it, to four standard errors of the simulation. */
    static void assertDrawn(Posterior posterior, JointDraws draws, SparseRow contrast) {
        double[] values = draws.of(contrast);
        Mixture stated = posterior.estimate(contrast);
        assertEquals(stated.mean(), Arrays.stream(values).average().orElseThrow(), 4 * stated.sd() / Math.sqrt(draws.count()));
        for (double probability : new double[] {0.05, 0.5, 0.95}) {
            double below = Arrays.stream(values).filter(v -> v <= stated.quantile(probability)).count() / (double) draws.count();
            assertEquals(probability, below, 4 * Math.sqrt(probability * (1 - probability) / draws.count()) + 0.002);
        }
    }

    // By hand: of four draws the first quantity is highest in two, one of them by standing first.
    @Test
    void the_highest_draw_by_draw_is_counted() {
        assertArrayEquals(new double[] {0.5, 0.25, 0.25}, Draws.shareHighest(List.of(new double[] {3, 1, 5, 0}, new double[] {2, 4, 5, 0},
                new double[] {1, 2, 4, 1})));
    }

    // By hand: 2 a - b, and a twice.
    @Test
    void a_quantity_is_followed_by_others_even_where_two_of_them_are_the_same() {
        double[] a = Draws.normal(4000, 1);
        double[] b = Draws.normal(4000, 2);
        double[] target = new double[a.length];
        Arrays.setAll(target, i -> 2 * a[i] - b[i]);
        assertArrayEquals(new double[] {2, -1}, Draws.regression(target, a, b), 1e-6);
        double[] twice = Draws.regression(target, a, b, a);
        assertEquals(2, twice[0] + twice[2], 1e-6);
        assertEquals(-1, twice[1], 1e-6);
    }

    @Test
    void the_same_seed_gives_the_same_draws_and_another_one_others() {
        Posterior posterior = posterior();
        SparseRow contrast = SparseRow.dense(1, 0.5, -1);
        assertArrayEquals(posterior.draws(20, 3).of(contrast), posterior.draws(20, 3).of(contrast));
        assertFalse(Arrays.equals(posterior.draws(20, 3).of(contrast), posterior.draws(20, 4).of(contrast)));
    }

    @Test
    void responses_scatter_as_the_predictive_distribution_says() {
        Posterior posterior = posterior();
        int count = 40_000;
        SparseRow row = SparseRow.dense(1, 1.5, 1.7);
        double[] values = posterior.draws(count, 17).responses(row, 1.5, 0, 99);
        Mixture stated = posterior.predict(row, 1.5, 0);
        for (double probability : new double[] {0.025, 0.1, 0.5, 0.9, 0.975}) {
            double below = Arrays.stream(values).filter(v -> v <= stated.quantile(probability)).count() / (double) count;
            assertEquals(probability, below, 4 * Math.sqrt(probability * (1 - probability) / count) + 0.002);
        }
    }

    @Test
    void draws_stand_in_no_order() {
        double[] values = posterior().draws(4000, 5).of(SparseRow.dense(1, 0, 0));
        double first = Arrays.stream(values, 0, 2000).average().orElseThrow();
        double second = Arrays.stream(values, 2000, 4000).average().orElseThrow();
        double sd = posterior().estimate(SparseRow.dense(1, 0, 0)).sd();
        assertEquals(first, second, 4 * sd * Math.sqrt(2.0 / 2000));
    }

    @Test
    void there_are_none_where_rows_were_left_out() {
        Posterior without = posterior().leavingOut(Posterior.LeaveOut.CLOSED_FORM, 3);
        assertThrows(IllegalStateException.class, () -> without.draws(5, 1));
    }
}
