package swapworth.statistics;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Random;
import java.util.Set;
import java.util.TreeSet;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** What rows can tell apart, whatever is assumed. */
class IdentificationTest {

    private static Set<Integer> columns(Identification.Dependence d) {
        Set<Integer> columns = new TreeSet<>();
        for (int e = 0; e < d.direction().size(); e++) {
            columns.add(d.direction().index(e));
        }
        return columns;
    }

    /** Intercept, age, model year, a column of its own scale, and one that no row has. */
    private static double[][] cars(int n) {
        Random random = new Random(7);
        double[][] x = new double[n][];
        for (int i = 0; i < n; i++) {
            int age = random.nextInt(15);
            x[i] = new double[] {1, age, 2026 - age, 1e6 * random.nextGaussian(), 0};
        }
        return x;
    }

    /** The larger number of rows goes by cross-products. */
    @ParameterizedTest
    @ValueSource(ints = {5, 40, 1_100_000})
    void age_model_year_and_intercept_are_named_and_a_column_of_zeros_is_not_seen(int n) {
        Design design = Design.dense(cars(n));
        Identification told = Identification.of(design);
        assertEquals(3, told.rank());
        assertEquals(List.of(4), told.unseen());
        assertEquals(1, told.dependences().size());
        Identification.Dependence d = told.dependences().get(0);
        assertEquals(Identification.Degree.CONFOUNDED, d.degree());
        assertEquals(Set.of(0, 1, 2), columns(d));
        double[] b = new double[5];
        for (int e = 0; e < d.direction().size(); e++) {
            b[d.direction().index(e)] = d.direction().value(e);
        }
        for (int i = 0; i < Math.min(n, 40); i++) {
            assertEquals(0, design.dot(i, b), 1e-9 / Math.sqrt(n), "no fitted value moves");
        }
    }

    @Test
    void kilometres_beside_rounded_miles_are_nearly_confounded() {
        Random random = new Random(3);
        double[][] x = new double[60][];
        for (int i = 0; i < x.length; i++) {
            double km = Math.rint(20_000 + 200_000 * random.nextDouble());
            x[i] = new double[] {1, km, Math.rint(km / 1.609344)};
        }
        Identification told = Identification.of(Design.dense(x));
        assertEquals(3, told.rank());
        assertEquals(Identification.Degree.NEARLY_CONFOUNDED, told.dependences().get(0).degree());
        assertTrue(columns(told.dependences().get(0)).containsAll(Set.of(1, 2)));
    }

    @Test
    void honest_columns_in_any_unit_are_told_apart() {
        Random random = new Random(11);
        for (int trial = 0; trial < 200; trial++) {
            int p = 2 + random.nextInt(6);
            double[][] x = new double[p + 2 + random.nextInt(30)][p];
            for (double[] row : x) {
                for (int j = 0; j < p; j++) {
                    row[j] = Math.pow(10, 3 * j - 6) * random.nextGaussian();
                }
            }
            Identification told = Identification.of(Design.dense(x));
            assertEquals(p, told.rank());
            assertTrue(told.dependences().isEmpty(), () -> told.dependences().toString());
        }
    }

    // Source: NIST StRD Filip, whose certified solution needs all eleven powers.
    @Test
    void eleven_powers_of_one_measure_are_nearly_confounded_and_still_told_apart() {
        Reference data = Reference.read("nist-linear/nist_Filip.csv");
        double[][] x = new double[data.rows()][11];
        for (int i = 0; i < x.length; i++) {
            for (int j = 0; j < 11; j++) {
                x[i][j] = Math.pow(data.number(i, "x"), j);
            }
        }
        Identification told = Identification.of(Design.dense(x));
        assertEquals(11, told.rank());
        assertTrue(told.dependences().stream().allMatch(d -> d.degree() == Identification.Degree.NEARLY_CONFOUNDED));
        assertTrue(!told.dependences().isEmpty());
    }

    @Test
    void more_columns_than_rows_have_at_most_the_rank_of_the_rows() {
        Identification told = Identification.of(Design.dense(new double[][] {{1, 2, 3, 5}, {1, 3, 7, 11}}));
        assertEquals(2, told.rank());
        assertEquals(2, told.dependences().size());
    }

    @Test
    void flat_coefficients_that_the_rows_cannot_tell_apart_are_refused_with_all_their_names() {
        double[][] x = cars(30);
        List<PriorBlock> priors = List.of(PriorBlock.flat("intercept", 0, 1), PriorBlock.flat("age", 1, 1),
                PriorBlock.flat("model year", 2, 1), PriorBlock.flat("distance", 3, 1), PriorBlock.stated("colour", 4, 0, 1));
        String refusal = assertThrows(ConfoundedColumnsException.class, () -> fit(x, priors)).getMessage();
        for (String name : List.of("'intercept'", "'age'", "'model year'")) {
            assertTrue(refusal.contains(name), refusal);
        }
        assertTrue(!refusal.contains("distance") && !refusal.contains("colour"), refusal);
    }

    @Test
    void a_flat_coefficient_that_no_row_has_is_refused_by_name() {
        List<PriorBlock> priors = List.of(PriorBlock.flat("intercept", 0, 1), PriorBlock.stated("age", 1, 0, 1),
                PriorBlock.stated("model year", 2, 0, 1), PriorBlock.flat("distance", 3, 1), PriorBlock.flat("colour", 4, 1));
        String refusal = assertThrows(ConfoundedColumnsException.class, () -> fit(cars(30), priors)).getMessage();
        assertTrue(refusal.contains("'colour'"), refusal);
    }

    @Test
    void a_prior_decides_what_the_rows_cannot_and_its_contrast_keeps_its_prior_variance() {
        double[][] x = new double[30][];
        for (int i = 0; i < x.length; i++) {
            x[i] = new double[] {1, i % 2, i % 2};
        }
        Posterior fit = fit(x, List.of(PriorBlock.flat("intercept", 0, 1), PriorBlock.stated("auction", 1, 0, 0.1),
                PriorBlock.stated("front damage", 2, 0, 0.1)));
        Identification told = fit.identification();
        assertEquals(2, told.rank());
        assertEquals(Set.of(1, 2), columns(told.dependences().get(0)));
        SparseRow split = SparseRow.dense(0, 1, -1);
        assertEquals(fit.priorVariance(split), fit.variance(split), 1e-12);
        SparseRow sum = SparseRow.dense(0, 1, 1);
        assertTrue(fit.variance(sum) < 0.5 * fit.priorVariance(sum));
    }

    private static Posterior fit(double[][] x, List<PriorBlock> priors) {
        double[] y = new double[x.length];
        Random random = new Random(5);
        for (int i = 0; i < y.length; i++) {
            y[i] = 0.1 * random.nextGaussian();
        }
        return CertifiedRegressionTest.LEAST_SQUARES.with(new ErrorScale.Stated(0.1)).fit(Design.dense(x), Sample.of(y), priors);
    }
}
