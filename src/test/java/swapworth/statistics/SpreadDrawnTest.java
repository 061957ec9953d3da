package swapworth.statistics;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.Test;

/** Joint draws in which the common spread of few levels is drawn too, against the exact law by quadrature over the spread. */
class SpreadDrawnTest {
    private static final double[] SEEN = {0.3, -0.1, 0.6};
    private static final double ERROR = 0.2;
    private static final double SCALE = 0.3;
    private static final PriorBlock LEVELS = PriorBlock.levels("levels", 0, SEEN.length, SCALE, PriorBlock.Role.PRIMARY);

    private static Posterior posterior() {
        double[][] x = new double[SEEN.length][SEEN.length + 1];
        for (int i = 0; i < SEEN.length; i++) {
            x[i][i] = 1;
        }
        return ShrunkenRegression.withDefaults().with(ErrorLaw.NORMAL).with(new ErrorScale.Stated(ERROR)).fit(Design.dense(x),
                Sample.of(SEEN), List.of(LEVELS));
    }

    /** The mean of something over the spread t, whose exact law is its half-normal prior times the normal density of what was seen. */
    private static double exact(java.util.function.DoubleUnaryOperator of) {
        double sum = 0;
        double weights = 0;
        for (int k = 0; k < 20_000; k++) {
            double t = (k + 0.5) * 10 * SCALE / 20_000;
            double variance = t * t + ERROR * ERROR;
            double log = -t * t / (2 * SCALE * SCALE);
            for (double y : SEEN) {
                log -= 0.5 * Math.log(variance) + y * y / (2 * variance);
            }
            weights += Math.exp(log);
            sum += Math.exp(log) * of.applyAsDouble(t);
        }
        return sum / weights;
    }

    @Test
    void levels_seen_and_unseen_have_their_exact_law() {
        int count = 40_000;
        JointDraws draws = posterior().draws(LEVELS, count, 7);
        double[] first = draws.of(SparseRow.dense(1, 0, 0, 0));
        double mean = exact(t -> SEEN[0] * t * t / (t * t + ERROR * ERROR));
        assertEquals(mean, Draws.mean(first), 0.005);
        double[] unseen = draws.of(SparseRow.dense(0, 0, 0, 1));
        assertEquals(0, Draws.mean(unseen), 0.01);
        for (double bound : new double[] {0.1, 0.3, 0.6, 1}) {
            double expected = exact(t -> 2 * Normal.cumulative(bound / t) - 1);
            assertEquals(expected, Arrays.stream(unseen).filter(u -> Math.abs(u) < bound).count() / (double) count, 0.012, "within "
                    + bound);
        }
    }

    /** No draw stands for others: whatever the seed, means are as near as so many independent draws bring them. */
    @Test
    void every_draw_is_one_of_its_own() {
        double mean = exact(t -> SEEN[2] * t * t / (t * t + ERROR * ERROR));
        for (int seed = 1; seed <= 20; seed++) {
            double[] third = posterior().draws(LEVELS, 4000, seed).of(SparseRow.dense(0, 0, 1, 0));
            assertEquals(4000, Arrays.stream(third).distinct().count());
            double error = Math.sqrt(Draws.covariance(third, third) / 4000);
            assertEquals(mean, Draws.mean(third), 4 * error, "seed " + seed);
        }
    }

    @Test
    void the_same_seed_gives_the_same_draws() {
        SparseRow unseen = SparseRow.dense(0, 0, 0, 1);
        assertArrayEquals(posterior().draws(LEVELS, 50, 3).of(unseen), posterior().draws(LEVELS, 50, 3).of(unseen), 0);
    }
}
