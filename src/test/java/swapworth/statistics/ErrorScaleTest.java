package swapworth.statistics;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.List;
import java.util.SplittableRandom;
import java.util.function.DoubleUnaryOperator;
import java.util.stream.DoubleStream;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** What is believed of the scale of the errors after a dozen rows. */
class ErrorScaleTest {
    private static final int ROWS = 12;

    /** Twelve responses spread as evenly as a normal law, with a standard deviation of so much. */
    private static double[] responses(double sd) {
        double[] y = IntStream.range(0, ROWS).mapToDouble(i -> Normal.quantile((i + 0.5) / ROWS)).toArray();
        double unit = Math.sqrt(Arrays.stream(y).map(v -> v * v).sum() / (ROWS - 1));
        return Arrays.stream(y).map(v -> sd * v / unit).toArray();
    }

    private static double found(ErrorScale prior, double sd) {
        double[][] ones = new double[ROWS][1];
        Arrays.stream(ones).forEach(row -> row[0] = 1);
        return ShrunkenRegression.withDefaults().with(ErrorLaw.NORMAL).with(prior).fit(Design.dense(ones), Sample.of(responses(sd)),
                List.of(PriorBlock.flat("level", 0, 1))).errorScale();
    }

    /** The mean of the logarithm of the scale by quadrature: a level of which nothing is assumed takes one degree of freedom. */
    private static double byQuadrature(DoubleUnaryOperator logPrior, double sd) {
        double weights = 0;
        double sum = 0;
        for (double log = Math.log(sd) - 3; log < Math.log(sd) + 3; log += 1e-3) {
            double weight = Math.exp(logPrior.applyAsDouble(log) - (ROWS - 1) * (log - Math.log(sd))
                    - (ROWS - 1) * Math.exp(2 * (Math.log(sd) - log)) / 2);
            weights += weight;
            sum += weight * log;
        }
        return sum / weights;
    }

    // Within 0.04: the law leans to large scales, the design of points does not.
    @ParameterizedTest
    @ValueSource(doubles = {0.02, 0.1, 0.3, 0.9, 3})
    void agrees_with_quadrature(double sd) {
        DoubleUnaryOperator student = log -> -2 * Math.log1p(Math.pow((log - Math.log(0.3)) / 0.6, 2) / 3);
        assertEquals(byQuadrature(student, sd), Math.log(found(ErrorScale.guessed(0.3, 0.6), sd)), 0.04);
        DoubleUnaryOperator normal = log -> -Math.pow((log - Math.log(0.3)) / 0.8, 2) / 2;
        assertEquals(byQuadrature(normal, sd), Math.log(found(ErrorScale.of(0.3, 0.8), sd)), 0.04);
    }

    @Test
    void the_farther_off_a_guess_the_less_it_holds() {
        double[] held = DoubleStream.of(0.1, 0.02, 0.001).map(sd -> found(ErrorScale.guessed(0.3, 0.6), sd) / unheld(sd)).toArray();
        assertTrue(held[0] > held[1] && held[1] > held[2] && held[2] > 1 && held[2] < 1.06, Arrays.toString(held));
        assertTrue(found(ErrorScale.of(0.3, 0.6), 0.001) / unheld(0.001) > 1.9, "a normal law holds the more");
    }

    private static double unheld(double sd) {
        return found(new ErrorScale.Unsure(0.3, Double.POSITIVE_INFINITY), sd);
    }

    /**
     * Forty rows of twenty levels that differ in nothing, so that their spread is found well below what is assumed of it. The search may
     * not see the error scale twice: what was found with some rows is only where the scale of all rows begins.
     */
    // A second way to the same mode; no source.
    @ParameterizedTest
    @ValueSource(longs = {1, 2, 3, 4, 5, 6})
    void with_the_other_spreads_held_it_is_found_as_it_is_together_with_them(long seed) {
        int levels = 20;
        NormalSource errors = new NormalSource(new SplittableRandom(seed));
        SparseRow[] rows = new SparseRow[2 * levels];
        double[] y = new double[rows.length];
        for (int i = 0; i < rows.length; i++) {
            rows[i] = SparseRow.of(new int[] {0, 1 + i / 2}, new double[] {1, 1});
            y[i] = 9 + 0.1 * errors.next();
        }
        Design design = Design.of(1 + levels, rows);
        List<PriorBlock> priors = List.of(PriorBlock.stated("level", 0, 9, 2),
                PriorBlock.common("levels", 1, levels, 0.3, PriorBlock.Role.SECONDARY));
        ShrunkenRegression mode = ShrunkenRegression.withDefaults().with(ErrorScale.guessed(0.3, 0.6)).withSecondarySpread(0.5)
                .with(Integration.MODE);
        Sample sample = Sample.of(y);
        double together = mode.fit(design, sample, priors).errorScale();
        double held = mode.fit(design, sample, priors, mode.search(design, sample, priors)).errorScale();
        assertEquals(1, held / together, 0.1, "held " + held + ", together " + together);
    }

    @Test
    void what_is_no_law_is_refused() {
        assertThrows(IllegalArgumentException.class, () -> ErrorScale.guessed(0, 1));
        assertThrows(IllegalArgumentException.class, () -> ErrorScale.guessed(1, -1));
        assertThrows(IllegalArgumentException.class, () -> new ErrorScale.Unsure(1, 1, 0));
        assertEquals(new ErrorScale.Stated(0.2), ErrorScale.guessed(0.2, 0));
    }
}
