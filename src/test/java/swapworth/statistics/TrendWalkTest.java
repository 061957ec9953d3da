package swapworth.statistics;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.util.List;
import org.apache.commons.math3.linear.Array2DRowRealMatrix;
import org.apache.commons.math3.linear.LUDecomposition;
import org.apache.commons.math3.linear.RealMatrix;
import org.junit.jupiter.api.Test;

/** Walks that tend to go on as they went. */
class TrendWalkTest {
    private static final int N = 7;
    private static final double SD = 0.3;
    private static final double CORRELATION = 0.5;
    private static final double ERROR = 0.2;

    /** The covariance of the levels: sums of steps from each level to the end, steps with correlations that fall geometrically. */
    private static RealMatrix levels() {
        RealMatrix covariance = new Array2DRowRealMatrix(N, N);
        for (int i = 0; i < N; i++) {
            for (int j = 0; j < N; j++) {
                double sum = 0;
                for (int k = i; k < N; k++) {
                    for (int l = j; l < N; l++) {
                        sum += SD * SD * Math.pow(CORRELATION, Math.abs(k - l));
                    }
                }
                covariance.setEntry(i, j, sum);
            }
        }
        return covariance;
    }

    private static SparseRow unit(int j) {
        return SparseRow.of(new int[] {j}, new double[] {1});
    }

    private static Posterior fit(double[] y, double logSpread) {
        SparseRow[] rows = new SparseRow[N];
        for (int j = 0; j < N; j++) {
            rows[j] = unit(j);
        }
        return ShrunkenRegression.withDefaults().with(ErrorLaw.NORMAL).with(new ErrorScale.Stated(ERROR)).withTolerance(1e-12)
                .fit(Design.of(N, rows), Sample.of(y), List.of(PriorBlock.trendWalk("walk", 0, N, SD, logSpread, CORRELATION)));
    }

    // Source: the closed form of a normal law given noisy levels, with Commons Math's LU decomposition of the full covariance.
    @Test
    void levels_given_noisy_levels_are_those_of_the_closed_form() {
        double[] y = {0.4, 0.7, 0.1, -0.2, -0.1, 0.3, 0.2};
        RealMatrix prior = levels();
        RealMatrix gain = prior.multiply(new LUDecomposition(prior.add(diagonal(ERROR * ERROR))).getSolver().getInverse());
        double[] mean = gain.operate(y);
        RealMatrix covariance = prior.subtract(gain.multiply(prior));
        Posterior fit = fit(y, 1e-9);
        for (int j = 0; j < N; j++) {
            assertEquals(mean[j], fit.mean()[j], 1e-9, "level " + j);
            assertEquals(covariance.getEntry(j, j), fit.variance(unit(j)), 1e-9, "variance of level " + j);
            assertEquals(prior.getEntry(j, j), fit.priorVariance(unit(j)), 1e-12, "prior variance of level " + j);
        }
        SparseRow difference = unit(1).plus(-1, unit(4));
        assertEquals(prior.getEntry(1, 1) + prior.getEntry(4, 4) - 2 * prior.getEntry(1, 4), fit.priorVariance(difference), 1e-12);
    }

    private static RealMatrix diagonal(double value) {
        RealMatrix diagonal = new Array2DRowRealMatrix(N, N);
        for (int j = 0; j < N; j++) {
            diagonal.setEntry(j, j, value);
        }
        return diagonal;
    }

    // Source: numerical integration over the logarithm of the step's standard deviation, 4,001 points, of the exact normal law.
    @Test
    void a_spread_that_is_unsure_is_averaged_over() {
        double[] y = {1.9, 1.5, 1.2, 0.9, 0.5, 0.2, 0.1};
        double logSpread = 0.6;
        double weights = 0;
        double mean = 0;
        double square = 0;
        for (int k = -2000; k <= 2000; k++) {
            double z = 4.0 * k / 2000;
            double factor = Math.exp(2 * logSpread * z);
            RealMatrix prior = levels().scalarMultiply(factor);
            LUDecomposition whole = new LUDecomposition(prior.add(diagonal(ERROR * ERROR)));
            double[] solved = whole.getSolver().getInverse().operate(y);
            double fit = 0;
            for (int j = 0; j < N; j++) {
                fit += y[j] * solved[j];
            }
            double weight = Math.exp(-0.5 * z * z - 0.5 * fit - 0.5 * Math.log(whole.getDeterminant()));
            RealMatrix gain = prior.multiply(whole.getSolver().getInverse());
            double at = gain.operate(y)[0];
            weights += weight;
            mean += weight * at;
            square += weight * (at * at + prior.subtract(gain.multiply(prior)).getEntry(0, 0));
        }
        mean /= weights;
        double sd = Math.sqrt(square / weights - mean * mean);
        Mixture found = fit(y, logSpread).estimate(unit(0));
        assertEquals(mean, found.mean(), 0.03 * sd);
        assertEquals(sd, found.sd(), 0.03 * sd);
    }

    // Source: the moments of a stationary chain, by arithmetic; five standard errors of the simulation.
    @Test
    void a_walk_goes_on_as_it_went() {
        double[] y = {1.9, 1.5, 1.2, 0.9, 0.5, 0.2, 0.1};
        int count = 40_000;
        JointDraws draws = fit(y, 1e-9).draws(count, 3);
        SparseRow last = SparseRow.of(new int[] {N - 1}, new double[] {-1});
        double[] before = draws.of(last);
        double[] ahead = draws.onward(last, SD, CORRELATION, 2, 4);
        double sum = 0;
        double squares = 0;
        for (int i = 0; i < count; i++) {
            double fresh = ahead[i] - (CORRELATION + CORRELATION * CORRELATION) * before[i];
            sum += fresh;
            squares += fresh * fresh;
        }
        double variance = SD * SD * (1 - CORRELATION * CORRELATION) * ((1 + CORRELATION) * (1 + CORRELATION) + 1);
        assertEquals(0, sum / count, 5 * Math.sqrt(variance / count));
        assertEquals(variance, squares / count, 5 * variance * Math.sqrt(2.0 / count));
    }

    @Test
    void steps_that_never_change_are_refused() {
        assertThrows(IllegalArgumentException.class, () -> PriorBlock.trendWalk("walk", 0, 3, 0.1, 0.5, 1));
    }
}
