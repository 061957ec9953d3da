package swapworth.statistics;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** A response may be a gross error: then it tells nothing. */
class GrossResponseTest {

    private static final ErrorLaw LAW = ErrorLaw.student(5).withGrossErrors(0.003);

    private static Posterior fit(ErrorLaw law, double... y) {
        double[][] x = new double[y.length][];
        for (int i = 0; i < y.length; i++) {
            x[i] = new double[] {1};
        }
        return ShrunkenRegression.withDefaults().with(law).with(new ErrorScale.Stated(0.15)).withTolerance(1e-10)
                .fit(Design.dense(x), Sample.of(y), List.of(PriorBlock.stated("level", 0, 9, 1)));
    }

    @Test
    void a_response_off_by_a_digit_moves_the_level_no_more_than_a_missing_one() {
        double missing = fit(LAW, 9.10, 9.25, 9.18, 9.31).mean()[0];
        double gross = fit(LAW, 9.10, 9.25, 9.18, 9.31, 9.2 + Math.log(10)).mean()[0];
        double heavyTailsOnly = fit(ErrorLaw.student(5), 9.10, 9.25, 9.18, 9.31, 9.2 + Math.log(10)).mean()[0];
        assertEquals(missing, gross, 2e-3);
        assertTrue(heavyTailsOnly > missing + 0.01, heavyTailsOnly + " " + missing);
    }

    @Test
    void near_responses_count_as_under_heavy_tails_alone() {
        double with = fit(LAW, 9.10, 9.25, 9.18, 9.31, 9.60).mean()[0];
        double without = fit(ErrorLaw.student(5), 9.10, 9.25, 9.18, 9.31, 9.60).mean()[0];
        assertEquals(without, with, 1e-3);
    }

    // Pull and weight against differences of the log likelihood itself.
    @ParameterizedTest
    @ValueSource(doubles = {-20, -9, -3, -0.4, 0.4, 2, 6, 11, 30})
    void the_weight_is_the_slope_of_the_log_likelihood_per_unit_of_distance(double z) {
        for (ErrorLaw law : List.of(LAW, ErrorLaw.student(4).withGrossErrors(0.05), ErrorLaw.NORMAL.withGrossErrors(0.01))) {
            double slope = -(law.logLikelihood(z + 1e-5) - law.logLikelihood(z - 1e-5)) / 2e-5;
            assertEquals(slope, law.weight(z) * z, 1e-6);
        }
    }

    @Test
    void the_mode_is_that_of_the_exact_posterior() {
        double[] y = {9.10, 9.25, 9.18, 11.6};
        double best = Double.NEGATIVE_INFINITY;
        double mode = 0;
        for (double level = 8.5; level < 10.5; level += 1e-5) {
            double log = -0.5 * (level - 9) * (level - 9);
            for (double one : y) {
                log += LAW.logLikelihood((one - level) / 0.15);
            }
            if (log > best) {
                best = log;
                mode = level;
            }
        }
        assertEquals(mode, fit(LAW, y).mean()[0], 2e-5);
    }

    @Test
    void leaving_a_gross_response_out_changes_nothing() {
        double[] y = {9.10, 9.25, 9.18, 9.31, 11.6};
        Posterior with = fit(LAW, y);
        Posterior without = with.leavingOut(Posterior.LeaveOut.REFIT, 4);
        SparseRow level = SparseRow.dense(1);
        assertEquals(with.estimate(level).quantile(0.1), without.estimate(level).quantile(0.1), 2e-3);
        assertEquals(with.estimate(level).quantile(0.9), without.estimate(level).quantile(0.9), 2e-3);
    }

    @Test
    void a_share_of_all_or_less_than_none_is_refused() {
        assertThrows(IllegalArgumentException.class, () -> ErrorLaw.student(5).withGrossErrors(1));
        assertThrows(IllegalArgumentException.class, () -> ErrorLaw.student(5).withGrossErrors(-0.1));
    }
}
