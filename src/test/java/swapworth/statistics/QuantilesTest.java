package swapworth.statistics;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

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

    // Source: of n values from any one law the next one falls below the k-th with probability k / (n + 1) (S. Wilks, Ann. Math. Statist. 12
    // (1941)); of normal ones it lies about their mean by Student's law, s (1 + 1 / n)^(1/2) wide.
    @ParameterizedTest
    @ValueSource(ints = {2, 5, 8, 9, 12, 30})
    void the_next_value_falls_below_as_often_as_it_is_said_to(int n) {
        int worlds = 20_000;
        int below = 0;
        int above = 0;
        for (int w = 0; w < worlds; w++) {
            // Where the law counts it is normal, else it leans to one side.
            double[] seen = random.doubles(n).map(u -> n < 9 ? Normal.quantile(u) : -Math.log(u)).sorted().toArray();
            double next = n < 9 ? Normal.quantile(random.nextDouble()) : -Math.log(random.nextDouble());
            below += next < Quantiles.ofNext(seen, 0.1) ? 1 : 0;
            above += next > Quantiles.ofNext(seen, 0.9) ? 1 : 0;
        }
        assertEquals(0.1, below / (double) worlds, 4.5 * Math.sqrt(0.09 / worlds));
        assertEquals(0.1, above / (double) worlds, 4.5 * Math.sqrt(0.09 / worlds));
    }

    // Source: the rule of V. Vovk, A. Gammerman, G. Shafer, Algorithmic Learning in a Random World (2005): of n scores the one of order
    // ceil((1 - alpha) (n + 1)); here of 1 to n, in exact arithmetic.
    @ParameterizedTest
    @CsvSource({"0.1, 9, 9", "0.1, 10, 10", "0.1, 18, 18", "0.1, 19, 18", "0.1, 20, 19", "0.1, 25, 24", "0.1, 99, 90", "0.1, 999, 900",
        "0.05, 19, 19", "0.05, 39, 38", "0.05, 99, 95", "0.2, 4, 4", "0.2, 9, 8", "0.2, 19, 16", "0.2, 99, 80"})
    void the_score_below_which_the_next_one_falls_is_the_one_of_its_order(double alpha, int n, int order) {
        double[] scores = new double[n];
        Arrays.setAll(scores, i -> i + 1);
        assertEquals(order, Quantiles.ofNext(scores, order / (n + 1.0)), 1e-9);
        // Between two orders the quantile lies between their scores.
        double quantile = Quantiles.ofNext(scores, 1 - alpha);
        assertTrue(quantile <= order + 1e-9 && quantile > order - 1 + 1e-9, quantile + " for " + order);
    }

    // By hand: mean 3, s = 2.5^(1/2), t = 1.533206 with 4 degrees of freedom (any table of Student's law).
    @Test
    void few_values_have_their_next_one_by_students_law() {
        assertEquals(3 + 1.533206 * Math.sqrt(2.5 * 1.2), Quantiles.ofNext(new double[] {1, 2, 3, 4, 5}, 0.9), 1e-5);
        assertEquals(3 - 1.533206 * Math.sqrt(2.5 * 1.2), Quantiles.ofNext(new double[] {1, 2, 3, 4, 5}, 0.1), 1e-5);
        assertEquals(-30, Quantiles.ofNext(new double[] {-30, -30, -30, -30, -30}, 0.1));
        assertEquals(1, Quantiles.ofNext(new double[] {1, 2, 3, 4, 5, 6, 7, 8, 9}, 0.1));
        assertEquals(5, Quantiles.ofNext(new double[] {1, 2, 3, 4, 5, 6, 7, 8, 9}, 0.5));
    }
}
