package swapworth.statistics;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
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
        double[][] draws = posterior.draws(count, 17);
        for (SparseRow contrast : List.of(SparseRow.dense(1, 0, 0), SparseRow.dense(0, 1, -1), SparseRow.dense(1, 1.5, 1.7))) {
            double[] values = Arrays.stream(draws).mapToDouble(contrast::dot).toArray();
            Mixture stated = posterior.estimate(contrast);
            // Four standard errors of the simulation.
            assertEquals(stated.mean(), Arrays.stream(values).average().orElseThrow(), 4 * stated.sd() / Math.sqrt(count));
            for (double probability : new double[] {0.05, 0.5, 0.95}) {
                double below = Arrays.stream(values).filter(v -> v <= stated.quantile(probability)).count() / (double) count;
                assertEquals(probability, below, 4 * Math.sqrt(probability * (1 - probability) / count) + 0.002);
            }
        }
    }

    @Test
    void the_same_seed_gives_the_same_draws_and_another_one_others() {
        Posterior posterior = posterior();
        assertArrayEquals(posterior.draws(20, 3), posterior.draws(20, 3));
        assertEquals(false, Arrays.deepEquals(posterior.draws(20, 3), posterior.draws(20, 4)));
    }

    @Test
    void there_are_none_where_rows_were_left_out() {
        Posterior without = posterior().leavingOut(Posterior.LeaveOut.CLOSED_FORM, 3);
        assertThrows(IllegalStateException.class, () -> without.draws(5, 1));
    }
}
