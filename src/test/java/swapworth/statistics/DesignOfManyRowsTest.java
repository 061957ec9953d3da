package swapworth.statistics;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;

/**
 * Many rows stand in blocks, without the numbers that are 1 and the columns that are sums of others: nothing of it may be seen from
 * outside.
 */
class DesignOfManyRowsTest {
    private static final int ROWS = 9_001;
    private static final int COLUMNS = 12;
    private final SplittableRandom random = new SplittableRandom(7);
    private final double[][] x = new double[ROWS][COLUMNS];
    /** The same rows with the columns that are always 1 folded, and with a sum stated beside. */
    private final List<Design> designs;

    DesignOfManyRowsTest() {
        for (double[] row : x) {
            row[0] = 1;
            row[1 + random.nextInt(3)] = 1;
            row[4] = random.nextInt(4) == 0 ? 1 : random.nextDouble() - 0.5;
            row[5] = 1;
            row[6 + random.nextInt(3)] = row[4];
            row[9] = random.nextInt(5) == 0 ? 2 : 0;
            row[10] = random.nextInt(50) == 0 ? 0 : 1;
            row[11] = 1;
        }
        // A few rows are differences, in which what all rows have in common is gone.
        for (int i = 5; i < ROWS; i += 400) {
            x[i][0] = 0;
            x[i][5] = 0;
            x[i][11] = 0;
        }
        designs = List.of(Design.dense(x), stated(x));
    }

    private static Design stated(double[][] x) {
        return Design.of(COLUMNS, x.length, i -> SparseRow.dense(x[i]), List.of(new Design.Sum(4, 6, 3)));
    }

    @Test
    void each_row_is_what_it_was() {
        for (Design design : designs) {
            for (int i = 0; i < ROWS; i++) {
                SparseRow row = design.row(i);
                for (int e = 0; e < row.size(); e++) {
                    assertTrue(e == 0 || row.index(e - 1) < row.index(e), "columns stand in order");
                    assertTrue(row.value(e) != 0, "zeros take no room");
                }
                assertArrayEquals(x[i], written(row));
            }
        }
    }

    @Test
    void sums_over_rows_are_those_of_plain_loops() {
        designs.forEach(this::sumsAreThoseOfPlainLoops);
    }

    private void sumsAreThoseOfPlainLoops(Design design) {
        double[] weight = random.doubles(ROWS).toArray();
        weight[17] = 0;
        double[] coefficients = random.doubles(COLUMNS).toArray();
        double[] lower = new double[COLUMNS * COLUMNS];
        lower[5 * COLUMNS] = 3;
        double[] sum = new double[COLUMNS];
        design.addCrossProducts(lower, weight);
        design.addTo(sum, weight);
        for (int j = 0; j < COLUMNS; j++) {
            double expectedSum = 0;
            for (int i = 0; i < ROWS; i++) {
                expectedSum += weight[i] * x[i][j];
            }
            assertEquals(expectedSum, sum[j], 1e-10 * ROWS);
            for (int k = 0; k < COLUMNS; k++) {
                double expected = j == 5 && k == 0 ? 3 : 0;
                for (int i = 0; i < ROWS && k <= j; i++) {
                    expected += weight[i] * x[i][j] * x[i][k];
                }
                assertEquals(expected, lower[j * COLUMNS + k], 1e-10 * ROWS, j + ", " + k);
            }
        }
        for (int i = 0; i < ROWS; i += 97) {
            double expected = 0;
            for (int j = 0; j < COLUMNS; j++) {
                expected += x[i][j] * coefficients[j];
            }
            assertEquals(expected, design.dot(i, coefficients), 1e-13);
            assertEquals(expected, design.dotKept(i, design.forKept(coefficients)), 1e-13);
            assertEquals(5 - expected, design.residual(i, 5, coefficients), 1e-13);
        }
    }

    @Test
    void columns_that_are_not_always_1_together_are_kept_apart_wherever_that_shows() {
        assertEquals(2, designs.get(0).folding().size(), "5 and 11 are 1 where 0 is");
        for (double other : new double[] {0, 2, -1}) {
            for (int i : new int[] {3, 8_999}) {
                double[][] changed = x.clone();
                changed[i] = x[i].clone();
                changed[i][11] = other;
                Design apart = Design.dense(changed);
                assertTrue(apart.folding().size() != 2);
                assertEquals(SparseRow.dense(changed[i]).dot(new double[] {1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12}),
                        apart.dot(i, new double[] {1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12}), 1e-12);
                assertEquals(100, apart.dot(i + 1, new double[] {0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 100}));
            }
        }
    }

    @Test
    void a_stated_sum_is_used_only_where_it_holds_in_each_row() {
        assertEquals(3, designs.get(1).folding().size());
        for (int i : new int[] {3, 8_999}) {
            for (int column : new int[] {4, 6}) {
                double[][] changed = x.clone();
                changed[i] = x[i].clone();
                changed[i][column] = 7;
                assertEquals(0, stated(changed).folding().size());
                assertArrayEquals(changed[i], written(stated(changed).row(i)));
            }
        }
        assertThrows(IllegalArgumentException.class, () -> Design.of(COLUMNS, ROWS, i -> SparseRow.dense(x[i]),
                List.of(new Design.Sum(4, 6, 3), new Design.Sum(6, 1, 2))));
    }

    private static double[] written(SparseRow row) {
        double[] all = new double[COLUMNS];
        for (int e = 0; e < row.size(); e++) {
            all[row.index(e)] = row.value(e);
        }
        return all;
    }

    @Test
    void what_is_found_of_all_rows_at_once_is_what_is_found_of_each() {
        designs.forEach(this::whatIsFoundOfAllRowsIsWhatIsFoundOfEach);
    }

    private void whatIsFoundOfAllRowsIsWhatIsFoundOfEach(Design design) {
        double[] y = new double[ROWS];
        for (int i = 0; i < ROWS; i++) {
            y[i] = x[i][0] + 0.3 * x[i][4] + 0.1 * (random.nextDouble() - 0.5);
        }
        Posterior fit = ShrunkenRegression.withDefaults().with(Integration.MODE).fit(design, Sample.of(y),
                List.of(PriorBlock.stated("level", 0, 1, 1), PriorBlock.common("all", 1, COLUMNS - 1, 1, PriorBlock.Role.PRIMARY)));
        double[][] one = new double[ROWS][];
        for (int pass = 0; pass < 2; pass++) {
            for (int i = 0; i < ROWS; i += 97) {
                SparseRow row = design.row(i);
                Posterior without = fit.leavingOut(i, row);
                // The row itself, and the row with one entry less, as a car is that is not on offer any more.
                Mixture own = without.estimate(row);
                Mixture less = without.estimate(row.without(4));
                double[] found = {own.mean(), own.sd(), without.priorShare(row), less.mean(), less.sd(),
                    without.priorShare(row.without(4))};
                if (pass == 0) {
                    one[i] = found;
                } else {
                    assertArrayEquals(one[i], found, 1e-10);
                }
            }
            fit.expectEachRowLeftOut();
        }
    }

    @Test
    void some_rows_and_some_columns_are_those_named() {
        designs.forEach(this::someRowsAndColumnsAreThoseNamed);
    }

    private void someRowsAndColumnsAreThoseNamed(Design design) {
        Design some = design.some(new int[] {9_000, 3, 5_000});
        assertEquals(3, some.rows());
        assertEquals(design.row(5_000).dot(new double[] {1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12}),
                some.row(2).dot(new double[] {1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12}));
        Design two = design.only(new int[] {5, 4});
        for (int i = 0; i < ROWS; i += 97) {
            assertEquals(x[i][5] + 10 * x[i][4], two.dot(i, new double[] {1, 10}), 1e-14);
        }
    }

    @Test
    void a_row_that_is_no_row_is_refused_wherever_it_stands() {
        SparseRow good = SparseRow.dense(1, 2);
        assertThrows(IllegalArgumentException.class, () -> Design.of(2, ROWS, i -> i == 8_000 ? SparseRow.dense(1, Double.NaN) : good));
        assertThrows(IllegalArgumentException.class, () -> Design.of(2, ROWS, i -> i == 8_000 ? SparseRow.dense(1, 2, 3) : good));
        assertThrows(IllegalArgumentException.class, () -> Design.of(9_000_000, good));
    }
}
