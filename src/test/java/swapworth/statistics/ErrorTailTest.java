package swapworth.statistics;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.SplittableRandom;
import java.util.stream.DoubleStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** How heavy the tails of left-out residuals are. */
class ErrorTailTest {
    private static final ErrorLaw FOUR = ErrorLaw.student(4).withGrossErrors(0.01);

    /** Errors of a law as deviates of predictions that took them for Student's t with 4 degrees of freedom. */
    private static double[] deviates(ErrorLaw law, int n, double scale, long seed) {
        SplittableRandom random = new SplittableRandom(seed);
        return DoubleStream.generate(() -> Normal.quantile(Math.max(1e-12, Math.min(1 - 1e-12,
                StudentT.cumulative(scale * Noise.of(law, random), 4))))).limit(n).toArray();
    }

    @Test
    void nothing_seen_leaves_the_tail_as_it_is() {
        assertEquals(new ErrorTail(4, 0), ErrorTail.of(FOUR));
        assertEquals(Integer.MAX_VALUE, ErrorTail.of(ErrorLaw.NORMAL, 1, 2).degreesOfFreedom());
    }

    @ParameterizedTest
    @ValueSource(ints = {3, 4, 6, 12})
    void many_residuals_tell_the_degrees_of_freedom_of_their_law(int degrees) {
        int found = ErrorTail.of(FOUR, deviates(ErrorLaw.student(degrees), 20_000, 1.3, degrees)).degreesOfFreedom();
        assertEquals(1.0 / degrees, 1.0 / found, 0.03, "found " + found);
    }

    @Test
    void of_normal_errors_a_hundred_and_fifty_are_enough_to_see_lighter_tails_and_a_dozen_are_not() {
        int lighter = 0;
        int light = 0;
        for (int seed = 0; seed < 100; seed++) {
            double[] z = deviates(ErrorLaw.NORMAL, 150, 1.1, seed);
            lighter += ErrorTail.of(FOUR, z).degreesOfFreedom() > 4 ? 1 : 0;
            light += ErrorTail.of(FOUR, Arrays.copyOf(z, 12)).degreesOfFreedom() > 5 ? 1 : 0;
        }
        assertTrue(lighter > 85, lighter + " of 100 with 150");
        assertEquals(0, light, "of 100 with a dozen");
    }

    @Test
    void thousands_of_normal_errors_leave_next_to_no_tail_whatever_their_scale() {
        for (double scale : new double[] {0.5, 1, 2}) {
            assertTrue(ErrorTail.of(FOUR, deviates(ErrorLaw.NORMAL, 4000, scale, 9)).degreesOfFreedom() >= 20, "scale " + scale);
        }
    }

    @Test
    void mistyped_prices_are_no_tail() {
        double[] z = deviates(ErrorLaw.NORMAL, 2000, 1, 3);
        for (int i = 0; i < z.length; i += 100) {
            z[i] = 6.5;
        }
        assertTrue(ErrorTail.of(FOUR, z).degreesOfFreedom() >= 8);
    }

    @Test
    void eight_in_ten_errors_lie_as_far_out_as_before() {
        ErrorTail tail = new ErrorTail(30, 100);
        double before = Mixture.of(FOUR, 0, 0, 1).quantile(0.9);
        assertEquals(before, tail.scaleOf(FOUR) * Mixture.of(ErrorLaw.student(30), 0, 0, 1).quantile(0.9), 1e-9);
        assertEquals(1, new ErrorTail(4, 100).scaleOf(FOUR));
        // Quantiles of Student's t by SciPy 1.17.1, stats.t.ppf: 1.533206 at 0.9 and 4 degrees, 1.310415 at 0.9 and 30, 2.042272 at 0.975.
        assertEquals(1.533206 / 1.310415, tail.scaleOf(FOUR), 1e-6);
        assertEquals(2.042272, Mixture.of(ErrorLaw.student(30), 0, 0, 1).quantile(0.975), 1e-6);
    }

    @Test
    void what_is_no_tail_or_no_residual_is_refused() {
        assertThrows(IllegalArgumentException.class, () -> new ErrorTail(0, 3));
        assertThrows(IllegalArgumentException.class, () -> new ErrorTail(4, -1));
        assertThrows(IllegalArgumentException.class, () -> ErrorTail.of(FOUR, 1, Double.NaN));
    }
}
