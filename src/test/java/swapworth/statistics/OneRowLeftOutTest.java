package swapworth.statistics;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.List;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;

/**
 * That the short way by which a row of many is left out says what the general way says: to the last bit, but for contrasts that differ from
 * the row in one column, which go a shorter way still.
 */
class OneRowLeftOutTest {
    private static final int P = 23;
    private static final int N = 120;
    private static final int BOUNDS_FROM = 100;
    private static final int MISTYPED = 7;
    private static final int LOW_BOUND = 110;

    private final SplittableRandom random = new SplittableRandom(41);
    private final SparseRow[] rows = new SparseRow[N];
    private Design design = Design.of(P);
    private final Component.WithoutRows all = all();

    /** A row of a level, some slopes and some of twenty indicators; now an odd number of entries, now an even one. */
    private SparseRow row() {
        double[] values = new double[P];
        values[0] = 1;
        values[1] = random.nextDouble() - 0.5;
        values[2] = random.nextInt(3) == 0 ? 0 : random.nextDouble() - 0.5;
        for (int j = 3; j < P; j++) {
            values[j] = random.nextInt(4) == 0 ? 1 : 0;
        }
        return SparseRow.dense(values);
    }

    /** A fit with rows that are prices, bounds, one mistyped, and scales that differ. */
    private Component.WithoutRows all() {
        double[] y = new double[N];
        Bound[] bound = new Bound[N];
        double[] inflation = new double[N];
        double[] growth = new double[N];
        for (int i = 0; i < N; i++) {
            rows[i] = row();
            y[i] = 9 + rows[i].value(1) + 0.3 * (random.nextDouble() - 0.5) + (i == MISTYPED ? 3 : i == LOW_BOUND ? -3 : 0);
            bound[i] = i >= BOUNDS_FROM ? Bound.BELOW : Bound.NONE;
            inflation[i] = i % 5 == 0 ? 1.4 : 1;
            growth[i] = random.nextDouble();
        }
        List<PriorBlock> priors = List.of(PriorBlock.stated("level", 0, 9, 2), PriorBlock.stated("slope", 1, 0, 1),
                PriorBlock.stated("other slope", 2, 0.1, 0.2), PriorBlock.common("levels", 3, P - 3, 0.4, PriorBlock.Role.PRIMARY));
        design = Design.of(P, rows);
        Sample sample = new Sample(y, bound, inflation, new double[N], growth);
        Mode mode = Mode.find(new LogPosterior(design, sample, ErrorLaw.student(4).withGrossErrors(0.01),
                Spreads.of(priors, P, new double[] {1, 1, 1, 0.3}), sample.scales(0.1, 0.2)), 1e-9);
        return new Component.WithoutRows(mode, 0.1, 0.2, 1);
    }

    private void sameWithout(int row, SparseRow contrast) {
        Component quick = all.without(row, rows[row]);
        Component general = all.without(new int[] {row}, new SparseRow[] {SparseRow.dense(written(rows[row]))});
        assertEquals(general.of(contrast), quick.of(contrast), "row " + row);
        assertEquals(general.leavesOut(), quick.leavesOut());
        assertTrue(Arrays.equals(general.coefficients(), quick.coefficients()), "row " + row);
        assertTrue(Arrays.equals(general.times(contrast), quick.times(contrast)), "row " + row);
    }

    private void nearlySameWithout(int row, SparseRow contrast) {
        Component.Said quick = all.without(row, rows[row]).of(contrast);
        Component.Said general = all.without(new int[] {row}, new SparseRow[] {SparseRow.dense(written(rows[row]))}).of(contrast);
        assertEquals(general.fitted(), quick.fitted(), 1e-12);
        assertEquals(general.variance(), quick.variance(), 1e-12);
        assertEquals(general.held(), quick.held(), 1e-12);
    }

    private static double[] written(SparseRow row) {
        double[] values = new double[P];
        for (int e = 0; e < row.size(); e++) {
            values[row.index(e)] = row.value(e);
        }
        return values;
    }

    @Test
    void prices_bounds_and_inflated_rows_are_left_out_as_one_of_several_would_be() {
        for (int round = 0; round < 3; round++) {
            for (int i = 0; i < N; i++) {
                sameWithout(i, rows[i]);
                nearlySameWithout(i, row());
                nearlySameWithout(i, rows[i].without(1));
                nearlySameWithout(i, rows[i].plus(0.5, SparseRow.of(new int[] {2}, new double[] {1})));
            }
            assertEquals(round == 0, Double.isNaN(all.of(rows[0]).held()), "what the prior holds is known when asked for");
            if (round == 0) {
                all.shape.withHeld();
            } else {
                all.shape.withOwnForms(design);
            }
        }
    }

    @Test
    void what_was_left_out_before_the_prior_was_asked_about_tells_of_it_afterwards() {
        Component early = all.without(3, rows[3]);
        Component earlyOfTwo = all.without(new int[] {3, 8}, new SparseRow[] {rows[3], rows[8]});
        all.shape.withHeld();
        assertEquals(all.without(3, rows[3]).of(rows[5]), early.of(rows[5]));
        assertEquals(all.without(new int[] {3, 8}, new SparseRow[] {rows[3], rows[8]}).of(rows[8]), earlyOfTwo.of(rows[8]));
    }

    @Test
    void a_bound_that_tells_nothing_changes_nothing_when_it_goes() {
        SparseRow x = rows[LOW_BOUND];
        assertEquals(all.of(x).variance(), all.without(LOW_BOUND, x).of(x).variance(), 1e-3 * all.of(x).variance());
        assertEquals(all.of(x).fitted(), all.without(LOW_BOUND, x).of(x).fitted(), 1e-3);
    }

    @Test
    void a_row_left_out_leaves_more_unsure_and_a_mistyped_one_hardly_any_more() {
        for (int i = 0; i < BOUNDS_FROM; i++) {
            double before = all.of(rows[i]).variance();
            double after = all.without(i, rows[i]).of(rows[i]).variance();
            assertTrue(after > before || i == MISTYPED, "row " + i);
            assertTrue(i != MISTYPED || after < 1.01 * before, "the mistyped row told nothing");
        }
    }

    @Test
    void rows_are_left_out_of_all_and_not_of_a_posterior_without_others() {
        Posterior fit = ShrunkenRegression.withDefaults().with(Integration.MODE).fit(Design.of(P, rows), Sample.of(new double[N]),
                List.of(PriorBlock.common("all", 0, P, 1, PriorBlock.Role.PRIMARY)));
        Posterior without = fit.leavingOut(Posterior.LeaveOut.CLOSED_FORM, 3);
        assertThrows(IllegalStateException.class, () -> without.leavingOut(Posterior.LeaveOut.CLOSED_FORM, 4));
        assertEquals(without.of(rows[3]).priorShare(), fit.leavingOut(3, rows[3]).of(rows[3]).priorShare());
    }

    @Test
    void forms_of_a_row_and_between_it_and_another_are_found_by_how_the_two_differ() {
        all.shape.withHeld();
        for (int i = 0; i < BOUNDS_FROM; i++) {
            SparseRow x = rows[i];
            for (SparseRow y : List.of(rows[(i + 1) % N], x, x.plus(0.5, SparseRow.of(new int[] {2, 5}, new double[] {1, -3})))) {
                Shape.Forms itself = new Shape.Forms();
                Shape.Forms between = new Shape.Forms();
                all.shape.both(x, y, all.shape.quadratic(y), itself, between);
                assertEquals(all.shape.quadratic(x).variance, itself.variance, 1e-12);
                assertEquals(all.shape.quadratic(x).held, itself.held, 1e-12);
                assertEquals(all.shape.between(x, y).variance, between.variance, 1e-12);
                assertEquals(all.shape.between(x, y).held, between.held, 1e-12);
            }
        }
    }

    @Test
    void two_forms_found_in_one_pass_are_the_two_found_one_by_one() {
        double[] one = new double[P * P];
        double[] other = new double[P * P];
        double[][] pairs = new double[P][];
        for (int i = 0; i < P; i++) {
            pairs[i] = new double[2 * (i + 1)];
            for (int j = 0; j <= i; j++) {
                one[i * P + j] = random.nextDouble() - 0.5;
                other[i * P + j] = random.nextDouble() - 0.5;
                one[j * P + i] = one[i * P + j];
                other[j * P + i] = other[i * P + j];
                pairs[i][2 * j] = one[i * P + j];
                pairs[i][2 * j + 1] = other[i * P + j];
            }
        }
        boolean[] parity = new boolean[2];
        for (int k = 0; k < 200; k++) {
            SparseRow x = row();
            SparseRow y = row();
            parity[x.size() % 2] = true;
            Shape.Forms forms = new Shape.Forms();
            x.quadratic(pairs, forms);
            assertEquals(x.quadratic(one, P), forms.variance);
            assertEquals(x.quadratic(other, P), forms.held);
            x.between(pairs, y, forms);
            assertEquals(x.between(one, P, y), forms.variance);
            assertEquals(x.between(other, P, y), forms.held);
        }
        assertTrue(parity[0] && parity[1], "odd and even numbers of entries");
    }
}
