package swapworth.statistics;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.junit.jupiter.api.Test;

/**
 * A level that walks: the flow of the Nile from 1871 to 1970. Source: J. Durbin, S. Koopman, Time Series Analysis by State Space Methods
 * (2001), chapter 2, recomputed; see the SOURCE.md of nile. The last level is flat, the earlier ones are a walk that ends there.
 */
class LocalLevelTest {

    private static final Reference NILE = Reference.read("nile/nile_kalman_15099_1469.1.csv");

    private static Posterior fit(ErrorScale scale, PriorBlock walk) {
        int n = NILE.rows();
        SparseRow[] rows = new SparseRow[n];
        for (int t = 0; t < n; t++) {
            rows[t] = level(t);
        }
        return CertifiedRegressionTest.LEAST_SQUARES.with(scale)
                .fit(Design.of(n, rows), Sample.of(NILE.numbers("flow")), List.of(PriorBlock.flat("last level", 0, 1), walk));
    }

    private static SparseRow level(int t) {
        SparseRow last = SparseRow.dense(1);
        return t == NILE.rows() - 1 ? last : last.plus(1, SparseRow.of(new int[] {1 + t}, new double[] {1}));
    }

    @Test
    void the_levels_are_those_of_the_smoother_at_stated_variances() {
        Posterior fit = fit(new ErrorScale.Stated(Math.sqrt(15099)),
                PriorBlock.statedWalk("level", 1, NILE.rows() - 1, Math.sqrt(1469.1)));
        for (int t = 0; t < NILE.rows(); t++) {
            double level = Reference.digits(fit.estimate(level(t)).mean(), NILE.number(t, "alpha_smoothed"));
            double variance = Reference.digits(fit.variance(level(t)), NILE.number(t, "V_smoothed"));
            assertTrue(level >= 11, "level " + t + ": " + level + " digits");
            assertTrue(variance >= 11, "variance " + t + ": " + variance + " digits");
        }
        // The diffuse log likelihood with -((n - 1) / 2) log(2 pi).
        assertEquals(-632.545625115674, fit.logMarginal(), 1e-9);
    }

    /** With a flat level the marginal likelihood of the rows is the diffuse likelihood. */
    @Test
    void the_variances_of_the_largest_diffuse_likelihood_are_found() {
        Posterior fit = fit(new ErrorScale.Unsure(1, Double.POSITIVE_INFINITY),
                new PriorBlock("level", 1, PriorBlock.Kind.WALK, PriorBlock.Role.PRIMARY, new double[NILE.rows() - 1],
                        new double[] {Double.POSITIVE_INFINITY}));
        // Source: the same likelihood maximised in mpmath 1.3.0 with 40 digits: q = 0.0973059957787251.
        double error = Reference.digits(fit.errorScale() * fit.errorScale(), 15098.5183240963);
        double step = Reference.digits(fit.commonSpread(1) * fit.commonSpread(1), 1469.17636030952);
        assertTrue(error >= 12, error + " digits of the error variance");
        assertTrue(step >= 12, step + " digits of the variance of a step");
        assertEquals(-632.545625103041, fit.logMarginal(), 1e-9);
    }
}
