package swapworth.statistics;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;

/** That sums taken in ranges, sparse factors and closed forms say what the plain way says. */
class ManyRowsTest {
    private static final int LINES = 40;
    private static final int TRIMS = 120;
    private static final int P = 2 + LINES + TRIMS;

    private static final List<PriorBlock> PRIORS = List.of(PriorBlock.stated("level", 0, 9, 2), PriorBlock.stated("slope", 1, 0, 1),
            PriorBlock.common("lines", 2, LINES, 0.4, PriorBlock.Role.PRIMARY),
            PriorBlock.common("trims", 2 + LINES, TRIMS, 0.1, PriorBlock.Role.SECONDARY));

    private final SplittableRandom random = new SplittableRandom(5);

    private SparseRow row(double slope, int line, int trim) {
        return SparseRow.of(new int[] {0, 1, 2 + line, 2 + LINES + 3 * line + trim}, new double[] {1, slope, 1, 1});
    }

    /** Cars of forty lines with three trims each, some of them mistyped. */
    private double[] world(int n, SparseRow[] rows) {
        double[] y = new double[n];
        for (int i = 0; i < n; i++) {
            int line = random.nextInt(LINES);
            int trim = random.nextInt(3);
            double slope = random.nextDouble() - 0.5;
            rows[i] = row(slope, line, trim);
            y[i] = 9 + 0.4 * slope + 0.02 * (line - 20) + 0.05 * trim + 0.2 * (random.nextDouble() + random.nextDouble() - 1)
                    + (i % 200 == 7 ? 2.3 : 0);
        }
        return y;
    }

    private static Design design(int from, int to, SparseRow[] rows) {
        return Design.of(P, java.util.Arrays.copyOfRange(rows, from, to));
    }

    @Test
    void sums_by_ranges_are_those_of_parts_added_up() {
        int n = 30_000;
        SparseRow[] rows = new SparseRow[n];
        double[] weight = world(n, rows);
        double[] whole = new double[P * P];
        design(0, n, rows).addCrossProducts(whole, weight);
        double[] parts = new double[P * P];
        // Each part is below the size at which ranges begin.
        for (int from = 0; from < n; from += 1000) {
            design(from, from + 1000, rows).addCrossProducts(parts, java.util.Arrays.copyOfRange(weight, from, from + 1000));
        }
        for (int k = 0; k < whole.length; k++) {
            assertEquals(parts[k], whole[k], 1e-11 * Math.max(1, Math.abs(parts[k])));
        }
    }

    @Test
    void the_inverse_along_the_factor_is_the_inverse_at_the_places_of_the_matrix() {
        int n = 400;
        SparseRow[] rows = new SparseRow[n];
        world(n, rows);
        double[] weight = new double[n];
        java.util.Arrays.fill(weight, 3);
        double[] matrix = new double[P * P];
        Spreads.of(PRIORS, P, new double[] {1, 1, 0.3, 0.1}).addPrecision(matrix, Border.none(P));
        design(0, n, rows).addCrossProducts(matrix, weight);
        Cholesky factor = Cholesky.of(matrix, P);
        double[] inverse = factor.inverse().held();
        double[] along = factor.inverseWhereHeld(new Room(P * P)).held();
        int places = 0;
        for (int i = 0; i < P; i++) {
            double[] unit = new double[P];
            unit[i] = 1;
            double[] column = factor.solve(unit);
            for (int j = 0; j < P; j++) {
                assertEquals(column[j], inverse[i * P + j], 1e-12);
                if (matrix[Math.max(i, j) * P + Math.min(i, j)] != 0) {
                    places++;
                    assertEquals(inverse[i * P + j], along[i * P + j], 1e-12, i + ", " + j);
                }
            }
        }
        assertTrue(places > 4 * P && places < P * P / 4, "sparse: " + places);
    }

    @Test
    void a_large_fit_is_the_fit_of_its_parts_at_the_same_hyperparameters() {
        int n = 20_000;
        SparseRow[] rows = new SparseRow[n];
        double[] y = world(n, rows);
        ErrorLaw law = ErrorLaw.student(5).withGrossErrors(0.01);
        Posterior large = ShrunkenRegression.withDefaults().with(law).with(Integration.MODE).withTolerance(1e-10)
                .fit(Design.of(P, rows), Sample.of(y), PRIORS);
        // The same mode, by full steps from a cold start on the same rows in another order.
        List<Integer> order = new ArrayList<>();
        for (int i = 0; i < n; i++) {
            order.add((i * 7919) % n);
        }
        SparseRow[] shuffled = order.stream().map(i -> rows[i]).toArray(SparseRow[]::new);
        double[] responses = order.stream().mapToDouble(i -> y[i]).toArray();
        Sample sample = Sample.of(responses);
        Mode mode = Mode.find(new LogPosterior(Design.of(P, shuffled), sample, law, large.spreads(),
                sample.scales(large.errorScale(), 0)), 1e-10);
        double[] mean = large.mean();
        for (int j = 0; j < P; j++) {
            assertEquals(mode.coefficients()[j], mean[j], 1e-8, "coefficient " + j);
        }
    }

    @Test
    void spreads_searched_for_while_other_rows_are_made_give_the_same_fit() {
        int n = 9_000;
        SparseRow[] rows = new SparseRow[n];
        Sample sample = Sample.of(world(n, rows));
        Design design = Design.of(P, rows);
        ShrunkenRegression many = ShrunkenRegression.withDefaults().with(Integration.MODE);
        int[] some = ShrunkenRegression.searchedIn(n);
        assertEquals(8_000, some.length);
        assertEquals(0, ShrunkenRegression.searchedIn(8_000).length, "few enough to look at all");
        Posterior after = many.fit(design, sample, PRIORS, many.search(design.some(some), sample.some(some), PRIORS));
        assertArrayEquals(many.fit(design, sample, PRIORS).mean(), after.mean());
    }

    @Test
    void what_the_prior_holds_is_the_sum_of_what_its_blocks_hold_rows_left_out_or_not() {
        int n = 300;
        SparseRow[] rows = new SparseRow[n];
        double[] y = world(n, rows);
        Posterior fit = ShrunkenRegression.withDefaults().with(Integration.MODE).fit(Design.of(P, rows), Sample.of(y), PRIORS);
        for (Posterior by : List.of(fit, fit.leavingOut(Posterior.LeaveOut.CLOSED_FORM, 3, 8))) {
            double sum = 0;
            for (double share : by.priorShares(rows[3])) {
                sum += share;
            }
            assertEquals(sum, by.priorShare(rows[3]), 1e-9);
        }
    }

    @Test
    void a_row_left_out_in_closed_form_is_the_fit_without_it() {
        int n = 300;
        SparseRow[] rows = new SparseRow[n];
        double[] y = world(n, rows);
        ShrunkenRegression plain = ShrunkenRegression.withDefaults().with(ErrorLaw.NORMAL).with(new ErrorScale.Stated(0.1))
                .withSecondarySpread(0).withTolerance(1e-10);
        List<PriorBlock> stated = new ArrayList<>();
        for (int j = 0; j < P; j++) {
            stated.add(PriorBlock.stated("b" + j, j, 0.1, 0.5));
        }
        Posterior all = plain.fit(Design.of(P, rows), Sample.of(y), stated);
        Posterior without = plain.fit(design(1, n, rows), Sample.of(java.util.Arrays.copyOfRange(y, 1, n)), stated);
        Posterior closed = all.leavingOut(Posterior.LeaveOut.CLOSED_FORM, 0);
        for (SparseRow contrast : List.of(rows[0], rows[5], row(0.2, 3, 1))) {
            assertEquals(without.estimate(contrast).mean(), closed.estimate(contrast).mean(), 1e-9);
            assertEquals(without.variance(contrast), closed.variance(contrast), 1e-11);
        }
    }
}
