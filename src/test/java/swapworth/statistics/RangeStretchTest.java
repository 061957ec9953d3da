package swapworth.statistics;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.SplittableRandom;
import java.util.stream.DoubleStream;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** By how much ranges are stretched to hold what they promise. */
class RangeStretchTest {

    private static double[] normal(int n, double scale, long seed) {
        SplittableRandom random = new SplittableRandom(seed);
        return DoubleStream.generate(() -> scale * Noise.normal(random)).limit(n).toArray();
    }

    @Test
    void residuals_as_they_should_be_stretch_nothing() {
        assertEquals(1, RangeStretch.of(normal(20_000, 1, 1)).factor(), 0.02);
    }

    @Test
    void residuals_too_far_out_stretch_by_how_far() {
        assertEquals(1.3, RangeStretch.of(normal(20_000, 1.3, 2)).factor(), 0.03);
    }

    @Test
    void ranges_are_not_narrowed_but_where_it_is_said() {
        assertEquals(1, RangeStretch.of(normal(500, 0.6, 3)).factor());
        assertEquals(0.6, RangeStretch.ofAtLeast(0.5, normal(20_000, 0.6, 3)).factor(), 0.02, "but where they may be");
        assertEquals(RangeStretch.NONE, RangeStretch.of());
        assertThrows(IllegalArgumentException.class, () -> RangeStretch.of(new double[] {1, Double.NaN}));
    }

    @Test
    void what_was_less_sure_beforehand_is_learned_sooner_and_may_be_narrowed_as_far_as_is_said() {
        assertEquals(0.8, RangeStretch.of(0.3, 0.7, normal(20_000, 0.8, 4)).factor(), 0.02);
        assertEquals(0.9, RangeStretch.of(0.3, 0.9, normal(20_000, 0.8, 4)).factor());
        assertEquals(1, RangeStretch.of(0, 0.7, normal(20_000, 0.8, 4)).factor());
        double[] ten = normal(10, 2, 5);
        assertTrue(RangeStretch.of(0.3, 0.7, ten).factor() > RangeStretch.of(ten).factor() + 0.1);
    }

    /** The raw factor is all there is to see where nothing was sure beforehand. */
    @ParameterizedTest
    @ValueSource(ints = {5, 12, 40})
    void few_residuals_as_they_should_be_narrow_nothing_on_average(int n) {
        double sum = 0;
        double squares = 0;
        for (int k = 0; k < 4000; k++) {
            double log = Math.log(RangeStretch.of(1e6, 1e-9, normal(n, 1, 1000 * n + k)).factor());
            sum += log;
            squares += log * log;
        }
        double mean = sum / 4000;
        assertEquals(0, mean, 0.07 * 5 / n, n + " residuals");
        assertEquals(0.6, n * (squares / 4000 - mean * mean), 0.08, n + " residuals");
    }

    @Test
    void what_is_no_factor_or_no_residual_is_refused() {
        assertThrows(IllegalArgumentException.class, () -> new RangeStretch(0, 3));
        assertThrows(IllegalArgumentException.class, () -> new RangeStretch(Double.NaN, 3));
        assertThrows(IllegalArgumentException.class, () -> RangeStretch.NONE.carriedOn(0.3, 0.5, 1, Double.NaN));
    }

    @Test
    void few_residuals_move_it_little_and_one_more_never_much() {
        double before = 1;
        for (int n = 2; n <= 400; n++) {
            int count = n;
            double[] z = IntStream.rangeClosed(1, n).mapToDouble(i -> 1.5 * Normal.quantile(i / (count + 1.0))).toArray();
            double factor = RangeStretch.of(z).factor();
            assertTrue(factor <= 1.5, n + ": " + factor);
            assertTrue(Math.abs(factor - before) < 0.03, n + ": " + before + " to " + factor);
            before = factor;
        }
        assertTrue(before > 1.4, "at 400: " + before);
    }

    @Test
    void one_gross_error_in_seven_does_not_blow_it_up() {
        for (int n : new int[] {12, 25, 60, 150, 1000}) {
            double[] z = normal(n, 1, n);
            for (int i = 0; i < n; i += 7) {
                z[i] = 25;
            }
            double factor = RangeStretch.of(z).factor();
            assertTrue(factor < 1.6, n + " residuals: " + factor);
        }
    }
}
