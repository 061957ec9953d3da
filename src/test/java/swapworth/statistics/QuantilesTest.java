package swapworth.statistics;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.Arrays;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;

class QuantilesTest {
    private final SplittableRandom random = new SplittableRandom(20_261_126);

    @Test
    void many_values_have_the_quantiles_of_sorted_ones() {
        for (int round = 0; round < 300; round++) {
            int kinds = 1 + random.nextInt(2000);
            double[] values = random.doubles(1 + random.nextInt(3000)).map(x -> Math.rint(x * kinds) - kinds / 2.0).toArray();
            double[] sorted = values.clone();
            Arrays.sort(sorted);
            double probability = round % 5 == 0 ? round % 2 : random.nextDouble();
            assertEquals(Quantiles.ofSorted(sorted, probability), Quantiles.of(values, probability));
        }
    }

    @Test
    void one_quantile_after_another_can_be_asked_of_the_same_array() {
        double[] values = random.doubles(5000).toArray();
        double[] sorted = values.clone();
        Arrays.sort(sorted);
        for (double probability : new double[] {0.5, 0.84, 0.16, 0, 1, 0.999}) {
            assertEquals(Quantiles.ofSorted(sorted, probability), Quantiles.ofPartlyOrdered(values, probability));
        }
    }

    @Test
    void rising_falling_and_equal_values_are_no_exception() {
        double[] rising = new double[100_000];
        Arrays.setAll(rising, i -> i);
        double[] falling = new double[100_001];
        Arrays.setAll(falling, i -> -i);
        assertEquals(49_999.5, Quantiles.median(rising));
        assertEquals(-50_000, Quantiles.of(falling, 0.5));
        assertEquals(7, Quantiles.of(new double[] {7, 7, 7}, 0.3));
        double[] equal = new double[1000];
        Arrays.fill(equal, 7);
        assertEquals(7, Quantiles.of(equal, 0.3));
    }

    @Test
    void a_value_that_is_no_number_counts_as_the_greatest() {
        double[] values = random.doubles(1000).toArray();
        values[3] = Double.NaN;
        double[] sorted = values.clone();
        Arrays.sort(sorted);
        assertEquals(Quantiles.ofSorted(sorted, 0.5), Quantiles.of(values, 0.5));
        assertEquals(Double.NaN, Quantiles.of(values, 1));
    }
}
