package swapworth.statistics;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * A response of which only a lower bound was seen, beside one that was seen: the posterior of their level is known exactly, up
 * to a sum over a fine grid. Where, under Student's t, the bound lies more than three scales above what was seen, the exact posterior has
 * two humps, one at each, and no normal law about its mode can stand for both.
 */
class BoundTest {

    private static final double SCALE = 0.15;
    private static final double PRIOR_MEAN = 9.2;
    private static final double PRIOR_SD = 0.6;
    private static final double SEEN = 9.35;

    private static Posterior fit(ErrorLaw law, double bound) {
        Sample sample = new Sample(new double[] {SEEN, bound}, new Bound[] {Bound.NONE, Bound.BELOW}, new double[] {1, 1},
                new double[2], new double[2]);
        return ShrunkenRegression.withDefaults().with(law).with(new ErrorScale.Stated(SCALE)).withTolerance(1e-10)
                .fit(Design.dense(new double[][] {{1}, {1}}), sample,
                        List.of(PriorBlock.stated("level", 0, PRIOR_MEAN, PRIOR_SD)));
    }

    private static double logPosterior(ErrorLaw law, double bound, double level) {
        double prior = (level - PRIOR_MEAN) / PRIOR_SD;
        return -0.5 * prior * prior + law.logDensity((SEEN - level) / SCALE) + Math.log(law.cumulative((level - bound) / SCALE));
    }

    /** The mode, the mean and the standard deviation of the exact posterior. */
    private static double[] exact(ErrorLaw law, double bound) {
        int steps = 20_000;
        double[] sums = new double[3];
        double best = Double.NEGATIVE_INFINITY;
        double mode = Double.NaN;
        double most = logPosterior(law, bound, SEEN);
        for (int k = 0; k <= steps; k++) {
            double level = 7 + 5.0 * k / steps;
            double log = logPosterior(law, bound, level);
            double density = Math.exp(log - most);
            sums[0] += density;
            sums[1] += density * level;
            sums[2] += density * level * level;
            if (log > best) {
                best = log;
                mode = level;
            }
        }
        double mean = sums[1] / sums[0];
        return new double[] {mode, mean, Math.sqrt(sums[2] / sums[0] - mean * mean)};
    }

    @ParameterizedTest
    @CsvSource({"0, 8.5", "0, 9.2", "0, 9.35", "0, 9.5", "0, 10.2", "5, 8.5", "5, 9.2", "5, 9.35", "5, 9.5", "5, 9.6", "5, 9.7",
        "5, 9.8"})
    void the_answer_is_that_of_the_exact_posterior(int nu, double bound) {
        ErrorLaw law = nu == 0 ? ErrorLaw.NORMAL : ErrorLaw.student(nu);
        Posterior fit = fit(law, bound);
        double[] exact = exact(law, bound);
        assertEquals(exact[0], fit.mean()[0], 2e-4, "mode");
        // The normal law about the mode misses what is lopsided in the posterior, most where bound and response disagree.
        assertEquals(exact[1], fit.mean()[0], 0.4 * exact[2], "mean");
        double sd = fit.estimate(SparseRow.dense(1)).sd();
        assertEquals(1, sd / exact[2], 0.25, "standard deviation " + sd + " for " + exact[2]);
    }

    @Test
    void a_bound_pulls_up_and_never_down_and_the_higher_the_more() {
        for (ErrorLaw law : List.of(ErrorLaw.NORMAL, ErrorLaw.student(5))) {
            double before = ShrunkenRegression.withDefaults().with(law).with(new ErrorScale.Stated(SCALE)).withTolerance(1e-10)
                    .fit(Design.dense(new double[][] {{1}}), Sample.of(SEEN),
                            List.of(PriorBlock.stated("level", 0, PRIOR_MEAN, PRIOR_SD))).mean()[0];
            for (double bound = 7.5; bound < 9.7; bound += 0.1) {
                double level = fit(law, bound).mean()[0];
                assertTrue(level > before - 1e-9, law + ": " + bound + " gives " + level + " after " + before);
                before = level;
            }
        }
    }
}
