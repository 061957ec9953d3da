package swapworth.statistics;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.SplittableRandom;
import org.apache.commons.math3.distribution.NormalDistribution;
import org.apache.commons.math3.distribution.TDistribution;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Distribution functions. Source: Commons Math 3.6.1, a separate implementation, and plain simulation. */
class DistributionTest {

    @ParameterizedTest
    @ValueSource(ints = {1, 2, 3, 4, 5, 8, 23})
    void student_agrees_with_another_library(int nu) {
        TDistribution other = new TDistribution(null, nu);
        for (double t = -12; t <= 12; t += 0.37) {
            double expected = other.cumulativeProbability(t);
            assertEquals(expected, StudentT.cumulative(t, nu), 1e-12, "t " + t);
            assertEquals(Math.log(other.density(t)), ErrorLaw.student(nu).logDensity(t), 1e-11, "density at " + t);
        }
    }

    // Source: the regularised incomplete beta function in 40 digits, mpmath 1.3.0.
    @ParameterizedTest
    @CsvSource({"1, -1000000.0, 3.183098861836846e-7", "3, -30, 4.06764021358198e-5", "3, -150, 3.266611528287915e-7",
        "4, -8, 0.0006619484546085839", "4, -199, 1.912651480259984e-9", "4, -201, 1.837660855697203e-9",
        "5, -400, 9.267120873225203e-13", "5, -3000, 3.905413970269125e-17", "24, -22, 1.018912010420771e-17",
        "30, -5, 1.16483427335039e-5", "200, -14, 8.587873093409531e-32"})
    void student_keeps_its_digits_in_the_far_tail(int nu, double t, double expected) {
        assertTrue(Reference.digits(StudentT.cumulative(t, nu), expected) > 12, "found " + StudentT.cumulative(t, nu));
    }

    @Test
    void student_never_falls_below_nought_nor_from_one_place_to_the_next() {
        for (int nu = 1; nu <= 200; nu++) {
            double before = 0;
            for (double t = -400; t < -0.01; t /= 1.01) {
                double p = StudentT.cumulative(t, nu);
                assertTrue(p >= before, "nu " + nu + ", t " + t + ": " + p + " after " + before);
                before = p;
            }
        }
        assertEquals(0, StudentT.cumulative(Double.NEGATIVE_INFINITY, 4));
        assertEquals(1, StudentT.cumulative(Double.POSITIVE_INFINITY, 4));
    }

    // Source: scipy 1.17.1, norm.ppf.
    @ParameterizedTest
    @CsvSource({"1e-12, -7.034483825301131", "1e-20, -9.262340089798409", "1e-50, -14.933337534788487", "1e-100, -21.273453560965322",
        "1e-300, -37.0470962993612"})
    void normal_quantiles_keep_their_digits_in_the_far_tail(double probability, double expected) {
        assertTrue(Reference.digits(Normal.quantile(probability), expected) > 13, "found " + Normal.quantile(probability));
    }

    @Test
    void normal_agrees_with_another_library_and_its_quantile_inverts_it() {
        NormalDistribution other = new NormalDistribution(null, 0, 1);
        for (double z = -8; z <= 8; z += 0.13) {
            double expected = other.cumulativeProbability(z);
            assertTrue(Reference.digits(Normal.cumulative(z), expected) > 10, "z " + z + ": " + Normal.cumulative(z));
            if (Math.abs(z) < 6) {
                assertEquals(z, Normal.quantile(Normal.cumulative(z)), 1e-6 * Math.max(1, Math.exp(z * z / 4 - 6)));
            }
        }
        // Source: from memory, the familiar 97.5 % point to 15 digits.
        assertEquals(1.959963984540054, Normal.quantile(0.975), 1e-12);
        assertThrows(IllegalArgumentException.class, () -> Normal.quantile(1));
    }

    @ParameterizedTest
    @ValueSource(ints = {1, 4, 5, 8})
    void tabulated_quantiles_are_those_found_by_search(int nu) {
        for (double ratio = 0; ratio < 3.2; ratio += 0.0173) {
            Mixture sum = Mixture.of(ErrorLaw.student(nu), 0.3, 4 * ratio * ratio, 2);
            for (double probability : new double[] {0.025, 0.1, 0.5, 0.9, 0.975}) {
                assertEquals(sum.search(probability), sum.quantile(probability), 2e-6 * sum.sd(), "ratio " + ratio);
            }
        }
    }

    @ParameterizedTest
    @ValueSource(doubles = {0, 0.1, 0.6, 1.5, 2.9, 4})
    void a_mixture_agrees_with_simulation(double ratio) {
        double[] weight = {0.3, 0.7};
        double[] mean = {0.4, -0.2};
        double[] variance = {ratio * ratio, 0.8 * ratio * ratio};
        double[] scale = {1, 1.3};
        Mixture mixture = Mixture.of(ErrorLaw.student(5), weight, mean, variance, scale);
        SplittableRandom random = new SplittableRandom(11);
        java.util.Random gaussian = new java.util.Random(12);
        int n = 400_000;
        double[] probability = {0.025, 0.1, 0.5, 0.9, 0.975};
        int[] below = new int[probability.length];
        double[] quantile = java.util.Arrays.stream(probability).map(mixture::quantile).toArray();
        for (int i = 0; i < n; i++) {
            int k = random.nextDouble() < 0.3 ? 0 : 1;
            double chi = 0;
            for (int d = 0; d < 5; d++) {
                double g = gaussian.nextGaussian();
                chi += g * g;
            }
            double y = mean[k] + Math.sqrt(variance[k]) * gaussian.nextGaussian()
                    + scale[k] * gaussian.nextGaussian() / Math.sqrt(chi / 5);
            for (int q = 0; q < below.length; q++) {
                below[q] += y <= quantile[q] ? 1 : 0;
            }
        }
        for (int q = 0; q < below.length; q++) {
            double p = probability[q];
            // Four standard errors of the simulation, and the stated error of the quadrature.
            assertEquals(p, below[q] / (double) n, 4 * Math.sqrt(p * (1 - p) / n) + 0.001, "quantile " + p);
            assertEquals(p, mixture.cumulative(quantile[q]), 1e-6);
        }
    }

    @Test
    void a_law_with_some_probability_and_otherwise_a_normal_one_is_the_weighted_sum_of_the_two() {
        Mixture one = Mixture.of(ErrorLaw.student(4), new double[] {0.3, 0.7}, new double[] {1, 2}, new double[] {0.5, 0.1},
                new double[] {0, 0});
        Mixture both = one.or(0.2, -1, 4);
        for (double y = -6; y <= 6; y += 0.5) {
            assertEquals(0.8 * one.cumulative(y) + 0.2 * Normal.cumulative((y + 1) / 2), both.cumulative(y), 1e-9, "at " + y);
        }
        assertEquals(0.8 * one.mean() - 0.2, both.mean(), 1e-12);
        double square = 0.8 * (one.sd() * one.sd() + one.mean() * one.mean()) + 0.2 * (4 + 1);
        assertEquals(square - both.mean() * both.mean(), both.sd() * both.sd(), 1e-12);
    }

    @ParameterizedTest
    @ValueSource(doubles = {0, 0.1, 0.6, 1.5, 8, 12})
    void a_single_sum_is_the_mixture_of_its_two_halves(double variance) {
        for (double scale : new double[] {0, 0.7}) {
            Mixture one = Mixture.of(ErrorLaw.student(4), 0.3, variance, scale);
            Mixture halves = Mixture.of(ErrorLaw.student(4), new double[] {0.5, 0.5}, new double[] {0.3, 0.3},
                    new double[] {variance, variance}, new double[] {scale, scale});
            assertEquals(halves.mean(), one.mean(), 1e-15);
            assertEquals(halves.sd(), one.sd(), 1e-15);
            for (double y = -4; y <= 4; y += 0.37) {
                assertEquals(halves.cumulative(y), one.cumulative(y), 1e-15, "at " + y);
                assertEquals(halves.density(y), one.density(y), 1e-15, "at " + y);
            }
        }
    }

    @Test
    void the_ends_of_a_range_are_two_quantiles() {
        for (Mixture law : new Mixture[] {Mixture.of(ErrorLaw.student(4), 9.3, 0.01, 0.2), Mixture.of(ErrorLaw.NORMAL, 9.3, 0.01, 0.2),
            Mixture.of(ErrorLaw.student(4), 9.3, 0.01, 0), Mixture.of(ErrorLaw.student(4), new double[] {0.2, 0.8},
                    new double[] {9, 10}, new double[] {0.1, 0.2}, new double[] {0.1, 0.3})}) {
            for (double probability : new double[] {0.3, 0.80, 0.95}) {
                double[] ends = law.range(probability);
                assertEquals(law.quantile((1 - probability) / 2), ends[0]);
                assertEquals(law.quantile((1 + probability) / 2), ends[1]);
            }
            assertThrows(IllegalArgumentException.class, () -> law.range(0));
            assertThrows(IllegalArgumentException.class, () -> law.range(1));
        }
    }
}
