package swapworth.statistics;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.Random;
import java.util.Set;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Estimates put together, against a published meta-analysis and by simulation. */
class CombinationTest {
    private final Reference trials = Reference.read("bcg/bcg.csv");

    private static double[][] diagonal(double[] variances) {
        double[][] matrix = new double[variances.length][variances.length];
        for (int i = 0; i < variances.length; i++) {
            matrix[i][i] = variances[i];
        }
        return matrix;
    }

    private static double[][] correlated(double[] variances, double correlation) {
        double[][] matrix = diagonal(variances);
        for (int i = 0; i < variances.length; i++) {
            for (int j = 0; j < variances.length; j++) {
                matrix[i][j] = i == j ? variances[i] : correlation * Math.sqrt(variances[i] * variances[j]);
            }
        }
        return matrix;
    }

    // Source: R 4.2.2, metafor 3.8-1, rma(yi, vi, method="EE"), rma(yi, vi, tau2=...), and at the REML estimate of tau2.
    @ParameterizedTest
    @CsvSource({"0, -0.430285163654091, 0.0404987517108638", "0.01, -0.555127862580586, 0.0596773052647032",
        "0.1, -0.671412082781109, 0.116895171707345", "0.313243258136481, -0.714532342158139, 0.179781516105206",
        "0.5, -0.725789141971031, 0.218045503389405"})
    void independent_estimates_combine_as_in_a_meta_analysis(double variance, double mean, double error) {
        Combination.Given found = Combination.given(trials.numbers("yi"), diagonal(trials.numbers("vi")), Math.sqrt(variance));
        assertTrue(Reference.digits(found.mean(), mean) >= 12, "mean " + found.mean());
        assertTrue(Reference.digits(Math.sqrt(found.variance()), error) >= 12, "standard error " + Math.sqrt(found.variance()));
    }

    // Source: R 4.2.2, metafor 3.8-1, weights(rma(yi, vi, method="REML")) / 100.
    @Test
    void weights_are_those_of_the_meta_analysis() {
        double[] expected = {0.0505948273437, 0.0636467937256, 0.044360274026, 0.0969874701892, 0.0886845639124, 0.100957385442,
            0.0602718141444, 0.101894390371, 0.0874313321164, 0.0836760725789, 0.0992502699981, 0.0382162906299, 0.084028515522};
        assertArrayEquals(expected, Combination.given(trials.numbers("yi"), diagonal(trials.numbers("vi")),
                Math.sqrt(0.313243258136481)).weights(), 1e-11);
    }

    // Source: R 4.2.2, metafor 3.8-1, rma.mv(yi, V, random = ~1 | trial, sigma2=...), V of correlation 0.7.
    @ParameterizedTest
    @CsvSource({"0.3, -0.566594459788221, 0.240140112272318", "1, -0.574856701234783, 0.383338216467459"})
    void correlated_estimates_combine_by_their_covariance(double variance, double mean, double error) {
        Set<String> kept = Set.of("4", "5", "6", "8", "9", "10", "11", "13");
        int[] rows = IntStream.range(0, trials.rows()).filter(i -> kept.contains(trials.text(i, "trial"))).toArray();
        double[] y = Arrays.stream(rows).mapToDouble(i -> trials.number(i, "yi")).toArray();
        double[] v = Arrays.stream(rows).mapToDouble(i -> trials.number(i, "vi")).toArray();
        Combination.Given found = Combination.given(y, correlated(v, 0.7), Math.sqrt(variance));
        assertTrue(Reference.digits(found.mean(), mean) >= 11, "mean " + found.mean());
        assertTrue(Reference.digits(Math.sqrt(found.variance()), error) >= 11, "standard error " + Math.sqrt(found.variance()));
    }

    // Source: base R 4.2.2, integrate() over the spread with relative tolerance 1e-11.
    @ParameterizedTest
    @CsvSource({"0.1, -0.670732565544, 0.119209122577, 0.319153311153", "0.5, -0.711860008182, 0.187327060413, 0.57190967162",
        "1, -0.715582087409, 0.201460275283, 0.620924931605"})
    void the_spread_between_estimates_is_integrated_over(double scale, double mean, double sd, double spread) {
        Combination found = Combination.of(trials.numbers("yi"), diagonal(trials.numbers("vi")), scale);
        assertEquals(mean, found.mean(), 1e-7);
        assertEquals(sd, found.sd(), 1e-7);
        assertEquals(spread, found.spread(), 1e-7);
    }

    @Test
    void the_draws_have_the_mean_and_the_variance_of_the_combination() {
        double[] sd = {0.1, 0.15, 0.2};
        int count = 200_000;
        double[] common = Draws.normal(count, 1);
        double[][] draws = new double[3][count];
        for (int a = 0; a < 3; a++) {
            double[] own = Draws.normal(count, 2 + a);
            for (int i = 0; i < count; i++) {
                draws[a][i] = 0.1 * a + sd[a] * (Math.sqrt(0.5) * common[i] + Math.sqrt(0.5) * own[i]);
            }
        }
        Combination combination = Combination.of(new double[] {0, 0.1, 0.2}, Draws.covariance(draws), 0.1);
        double[] found = combination.draws(draws, 9);
        assertEquals(combination.mean(), Draws.mean(found), 4 * combination.sd() / Math.sqrt(count));
        assertEquals(combination.sd(), Math.sqrt(Draws.covariance(found, found)), 0.01 * combination.sd());
    }

    /** How often the combined 80 % range holds the truth, estimates correlated, the spread between them drawn from its prior. */
    private static double covered(double correlation, double assumedCorrelation, double between, int worlds) {
        double[] variances = {0.0225, 0.0256, 0.0289};
        double[][] assumed = correlated(variances, assumedCorrelation);
        Random random = new Random(7);
        int held = 0;
        for (int w = 0; w < worlds; w++) {
            double spread = between * Math.abs(random.nextGaussian());
            double shared = random.nextGaussian();
            double[] x = new double[3];
            for (int a = 0; a < 3; a++) {
                x[a] = Math.sqrt(variances[a]) * (Math.sqrt(correlation) * shared + Math.sqrt(1 - correlation) * random.nextGaussian())
                        + spread * random.nextGaussian();
            }
            Combination found = Combination.of(x, assumed, Math.max(1e-6, between));
            held += Math.abs(found.mean()) <= 1.2815515655446004 * found.sd() ? 1 : 0;
        }
        return 100.0 * held / worlds;
    }

    @Test
    void correlated_estimates_are_covered_when_their_covariance_is_used() {
        double without = covered(0.7, 0.7, 1e-6, 4000);
        double with = covered(0.7, 0.7, 0.1, 4000);
        System.out.println("80 % range of estimates correlated at 0.7: " + without + " % without a spread between them, " + with
                + " % with one drawn from its prior");
        assertTrue(without >= 77 && without <= 83, "without a spread: " + without);
        assertTrue(with >= 77 && with <= 83, "with a spread: " + with);
    }

    @Test
    void treating_correlated_estimates_as_independent_covers_too_little() {
        double covered = covered(0.7, 0, 1e-6, 4000);
        System.out.println("80 % range of estimates correlated at 0.7, taken for independent: " + covered + " %");
        assertTrue(covered < 65, "covered " + covered);
    }

    // By hand: of estimates with standard deviations a < b and a correlation above a / b the first alone has the least variance.
    @Test
    void an_estimate_whose_weight_would_be_below_zero_is_left_out() {
        double[][] covariance = correlated(new double[] {0.01, 0.09}, 0.7);
        Combination.Given found = Combination.given(new double[] {1, 2}, covariance, 0);
        assertArrayEquals(new double[] {1, 0}, found.weights(), 0);
        assertEquals(0.01, found.variance(), 1e-15);
    }

    // By hand: standard deviations 0.28, 0.81 and 0.20 with correlations 0.92, 0.66 and 0.34. Of all three together the last has the
    // weight furthest below zero, but without the second, first and last have (0.04 - 0.03696) and (0.0784 - 0.03696), over 0.04448, and
    // the variance (0.0784 * 0.04 - 0.03696^2) / 0.04448.
    @Test
    void an_estimate_left_out_on_account_of_another_comes_back_without_that_one() {
        double[][] covariance = {{0.0784, 0.208656, 0.03696}, {0.208656, 0.6561, 0.05508}, {0.03696, 0.05508, 0.04}};
        Combination.Given found = Combination.given(new double[] {1, 2, 3}, covariance, 0);
        assertArrayEquals(new double[] {0.00304 / 0.04448, 0, 0.04144 / 0.04448}, found.weights(), 1e-12);
        assertEquals(0.0017699584 / 0.04448, found.variance(), 1e-12);
    }

    /** Covariances of k errors that k + 1 normal sources make, some of them nearly the same. */
    private static double[][] anyCovariance(int k, Random random) {
        double[][] loads = new double[k][k + 1];
        for (double[] load : loads) {
            Arrays.setAll(load, j -> 0.2 * random.nextGaussian());
            load[k] = 0.3 * random.nextGaussian() + (random.nextBoolean() ? 0.5 : 0);
        }
        double[][] covariance = new double[k][k];
        for (int i = 0; i < k; i++) {
            for (int j = 0; j < k; j++) {
                covariance[i][j] = dot(loads[i], loads[j]);
            }
        }
        return covariance;
    }

    private static double dot(double[] a, double[] b) {
        return IntStream.range(0, a.length).mapToDouble(i -> a[i] * b[i]).sum();
    }

    /** The least variance of all weights that are whole multiples of 1 / steps. */
    private static double leastOnGrid(double[][] covariance, double[] weights, int from, int left, int steps) {
        if (from == weights.length - 1) {
            weights[from] = (double) left / steps;
            return IntStream.range(0, weights.length).mapToDouble(i -> weights[i] * dot(weights, covariance[i])).sum();
        }
        double least = Double.POSITIVE_INFINITY;
        for (int n = 0; n <= left; n++) {
            weights[from] = (double) n / steps;
            least = Math.min(least, leastOnGrid(covariance, weights, from + 1, left - n, steps));
        }
        return least;
    }

    @ParameterizedTest
    @CsvSource({"2, 400, 2000", "3, 60, 2000", "4, 24, 1000", "5, 14, 300"})
    void no_weights_that_are_not_below_zero_have_less_variance(int k, int steps, int worlds) {
        Random random = new Random(11);
        int leftOut = 0;
        for (int w = 0; w < worlds; w++) {
            double[][] covariance = anyCovariance(k, random);
            Combination.Given found = Combination.given(new double[k], covariance, 0);
            assertEquals(1, Arrays.stream(found.weights()).sum(), 1e-12);
            assertTrue(Arrays.stream(found.weights()).allMatch(weight -> weight >= 0), () -> Arrays.toString(found.weights()));
            double grid = leastOnGrid(covariance, new double[k], 0, steps, steps);
            assertTrue(found.variance() <= grid * (1 + 1e-9), () -> found.variance() + " where " + grid + " can be had by "
                    + Arrays.deepToString(covariance));
            leftOut += Arrays.stream(found.weights()).anyMatch(weight -> weight == 0) ? 1 : 0;
        }
        assertTrue(leftOut > worlds / 5, "only " + leftOut + " worlds leave one out");
    }

    @Test
    void estimates_that_are_one_and_the_same_share_their_weight_in_any_way() {
        double[][] covariance = {{0.04, 0.04, 0.01}, {0.04, 0.04, 0.01}, {0.01, 0.01, 0.0025}};
        Combination found = Combination.of(new double[] {1, 1, 2}, covariance, 0.1);
        assertEquals(1, Arrays.stream(found.weights()).sum(), 1e-12);
        assertTrue(Arrays.stream(found.weights()).allMatch(weight -> weight >= 0));
    }

    @Test
    void chosen_weights_are_kept() {
        Combination found = Combination.weighted(new double[] {1, 2, 3}, diagonal(new double[] {0.01, 0.01, 0.01}), 0.1, 1, 0, 3);
        assertArrayEquals(new double[] {0.25, 0, 0.75}, found.weights(), 1e-12);
        assertEquals(2.5, found.mean(), 1e-12);
    }
}
