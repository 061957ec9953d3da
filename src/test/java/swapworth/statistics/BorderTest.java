package swapworth.statistics;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.SplittableRandom;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

/** That the matrices of many groups say by blocks with a border what they say in full. */
class BorderTest {
    private static final int GROUPS = 60;
    private static final int TRIMS = 2;
    private static final int REGIONS = 9;
    private static final int MONTHS = 8;
    private static final int LEVEL = 0;
    private static final int SLOPE = 1;
    private static final int LINE = 2;
    private static final int LINE_SLOPE = LINE + GROUPS + 1;
    private static final int TRIM = LINE_SLOPE + GROUPS;
    private static final int REGION = TRIM + GROUPS * TRIMS;
    private static final int MONTH = REGION + REGIONS;
    private static final int P = MONTH + MONTHS;

    private static final List<PriorBlock> PRIORS = List.of(PriorBlock.stated("level", LEVEL, 9, 2),
            PriorBlock.stated("slope", SLOPE, -1, 1), PriorBlock.levels("lines", LINE, GROUPS, 0.4, PriorBlock.Role.PRIMARY),
            PriorBlock.common("slopes of lines", LINE_SLOPE, GROUPS, 0.2, PriorBlock.Role.SECONDARY),
            PriorBlock.common("trims", TRIM, GROUPS * TRIMS, 0.1, PriorBlock.Role.SECONDARY),
            PriorBlock.common("regions", REGION, REGIONS, 0.1, PriorBlock.Role.SECONDARY),
            PriorBlock.trendWalk("market", MONTH, MONTHS, 0.02, 0.5, 0.5));

    private final SplittableRandom random = new SplittableRandom(11);

    private SparseRow row(int line, double slope, int trim, int region, int month) {
        int[] columns = {LEVEL, SLOPE, LINE + line, LINE_SLOPE + line, TRIM + TRIMS * line + trim, REGION + region, MONTH + month};
        return SparseRow.of(columns, new double[] {1, slope, 1, slope, 1, 1, 1});
    }

    private SparseRow row(int line) {
        return row(line, random.nextDouble() - 0.5, random.nextInt(TRIMS), random.nextInt(REGIONS), random.nextInt(MONTHS));
    }

    private Design design(int n) {
        SparseRow[] rows = new SparseRow[n];
        for (int i = 0; i < n; i++) {
            rows[i] = row(random.nextInt(GROUPS));
        }
        return Design.of(P, n, i -> rows[i], List.of(new Design.Sum(LEVEL, LINE, GROUPS), new Design.Sum(SLOPE, LINE_SLOPE, GROUPS)));
    }

    private Sample sample(Design design) {
        double[] y = new double[design.rows()];
        for (int i = 0; i < y.length; i++) {
            y[i] = 9 + 0.3 * (random.nextDouble() + random.nextDouble() - 1) + 0.01 * design.row(i).index(2) + (i % 90 == 7 ? 2 : 0);
        }
        return Sample.of(y);
    }

    private static Spreads spreads() {
        return Spreads.of(PRIORS, P, new double[] {1, 1, 0.3, 0.15, 0.08, 0.05, 1});
    }

    private static double[] matrix(Design design) {
        double[] matrix = design.border().zeros();
        spreads().addPrecision(matrix, design.border());
        double[] weight = new double[design.rows()];
        Arrays.fill(weight, 7);
        design.addCrossProducts(matrix, weight);
        return matrix;
    }

    private static Mode mode(Design design, Sample sample) {
        double[] scale = new double[design.rows()];
        Arrays.fill(scale, 0.1);
        return Mode.find(new LogPosterior(design, sample, ErrorLaw.student(5).withGrossErrors(0.01), spreads(), scale), 1e-11);
    }

    @Test
    void columns_of_one_line_alone_are_its_block_and_all_others_border_them() {
        for (int n : new int[] {1500, 6000}) {
            Border border = Border.of(design(n), PRIORS);
            assertEquals(GROUPS, border.blocks());
            // Of the levels of lines the last is that of lines never seen.
            int[] shared = IntStream.concat(IntStream.of(LEVEL, SLOPE, LINE + GROUPS), IntStream.range(REGION, P)).toArray();
            assertArrayEquals(shared, border.shared());
            for (int line = 0; line < GROUPS; line++) {
                int[] own = {LINE + line, LINE_SLOPE + line, TRIM + TRIMS * line, TRIM + TRIMS * line + 1};
                assertArrayEquals(own, border.block(line));
            }
            assertTrue(border.size() < P * P / 3);
        }
    }

    @Test
    void a_row_of_two_lines_leaves_nothing_of_them_in_a_block_and_small_designs_have_none() {
        SparseRow[] rows = IntStream.range(0, 900).mapToObj(i -> row(i % GROUPS)).toArray(SparseRow[]::new);
        rows[899] = row(3).plus(-1, row(4));
        Border border = Border.of(Design.of(P, rows), PRIORS);
        assertTrue(border.blockOf(LINE + 3) < 0);
        assertTrue(border.blockOf(LINE + 4) < 0);
        assertTrue(border.blockOf(LINE + 5) >= 0);
        // The rows that are looked at first are of one line each, those between them of two.
        SparseRow[] every = IntStream.range(0, 8000).mapToObj(i -> i % 2 == 0 ? row(i / 2 % GROUPS)
                : row(i / 2 % GROUPS).plus(-1, row((i / 2 + 1) % GROUPS))).toArray(SparseRow[]::new);
        Border none = Border.of(Design.of(P, every), PRIORS);
        assertTrue(none.isNone());
        assertEquals(P * P, none.size());
        assertTrue(Border.of(Design.of(2, SparseRow.dense(1, 2)), List.of(PriorBlock.flat("both", 0, 2))).isNone());
    }

    @Test
    void walks_stay_together_and_columns_that_no_row_has_stand_alone() {
        int seen = P;
        int unseen = P + GROUPS;
        int walk = unseen + 20;
        List<PriorBlock> priors = new ArrayList<>(PRIORS);
        priors.add(PriorBlock.statedWalk("one step a line", seen, GROUPS, 0.1));
        priors.add(PriorBlock.common("trims of no car", unseen, 20, 0.1, PriorBlock.Role.SECONDARY));
        priors.add(PriorBlock.statedWalk("months of no car", walk, 20, 0.1));
        SparseRow[] rows = IntStream.range(0, 5000).mapToObj(i -> row(i % GROUPS).plus(1, SparseRow.of(new int[] {seen + i % GROUPS},
                new double[] {1}))).toArray(SparseRow[]::new);
        Design full = Design.of(walk + 20, rows.length, i -> rows[i], List.of(new Design.Sum(LEVEL, LINE, GROUPS)));
        Border border = Border.of(full, priors);
        // The level of lines never seen stands alone too.
        assertEquals(GROUPS + 20 + 1 + 1, border.blocks());
        assertTrue(border.blockOf(LEVEL) < 0 && border.blockOf(seen) < 0 && border.blockOf(seen + 7) < 0);
        assertArrayEquals(IntStream.range(walk, walk + 20).toArray(), border.block(border.blockOf(walk)));
        Spreads spreads = Spreads.of(priors, walk + 20, new double[] {1, 1, 0.3, 0.15, 0.08, 0.05, 1, 1, 0.1, 1});
        double[][] columns = new double[2][];
        for (int k = 0; k < 2; k++) {
            Design design = k == 0 ? full : full.with(border);
            double[] matrix = design.border().zeros();
            spreads.addPrecision(matrix, design.border());
            double[] weight = new double[rows.length];
            Arrays.fill(weight, 7);
            design.addCrossProducts(matrix, weight);
            double[] ones = new double[walk + 20];
            Arrays.fill(ones, 1);
            columns[k] = Factor.of(matrix, design.border()).solve(ones);
        }
        assertArrayEquals(columns[0], columns[1], 1e-11);
    }

    @Test
    void the_factor_by_blocks_solves_and_inverts_as_the_one_in_full() {
        for (int n : new int[] {400, 5000}) {
            Design full = design(n);
            Design byBlocks = full.with(Border.of(full, PRIORS));
            Factor plain = Factor.of(matrix(full), full.border());
            Factor factor = Factor.of(matrix(byBlocks), byBlocks.border());
            assertFalse(byBlocks.border().isNone());
            assertEquals(plain.logDeterminant(), factor.logDeterminant(), 1e-9);
            assertTrue(factor.smallestPivot() > 0 && factor.smallestPivot() <= 1);
            Covariance inverse = plain.inverse();
            Covariance held = factor.inverse();
            double[][] drawn = new double[P][P];
            for (int j = 0; j < P; j++) {
                double[] unit = new double[P];
                unit[j] = 1;
                double[] column = factor.solve(unit);
                double[] draw = factor.backSolve(unit);
                for (int i = 0; i < P; i++) {
                    assertEquals(inverse.at(i, j), column[i], 1e-12);
                    if (byBlocks.border().blockOf(i) < 0 || byBlocks.border().blockOf(j) < 0
                            || byBlocks.border().blockOf(i) == byBlocks.border().blockOf(j)) {
                        assertEquals(inverse.at(i, j), held.at(i, j), 1e-12);
                    }
                    for (int k = 0; k < P; k++) {
                        drawn[i][k] += draw[i] * draw[k];
                    }
                }
            }
            for (int i = 0; i < P; i++) {
                for (int j = 0; j < P; j++) {
                    assertEquals(inverse.at(i, j), drawn[i][j], 1e-12, "draws have the inverse as covariance");
                }
            }
            double[] mean = random.doubles(GROUPS, -1, 1).toArray();
            assertEquals(inverse.varianceOfSquares(LINE, mean), held.varianceOfSquares(LINE, mean), 1e-12);
            assertEquals(inverse.varianceOfSquares(LINE_SLOPE, mean), held.varianceOfSquares(LINE_SLOPE, mean), 1e-12);
        }
    }

    @Test
    void what_is_believed_of_any_contrast_is_the_same() {
        for (int n : new int[] {400, 5000}) {
            Design full = design(n);
            Design byBlocks = full.with(Border.of(full, PRIORS));
            Sample sample = sample(full);
            Mode plain = mode(full, sample);
            Mode mode = mode(byBlocks, sample);
            assertArrayEquals(plain.coefficients(), mode.coefficients(), 1e-9);
            assertEquals(plain.logMarginal(), mode.logMarginal(), 1e-7);
            Shape inFull = new Shape(plain);
            Shape shape = new Shape(mode);
            SparseRow[] contrasts = {row(3), row(4), row(3).plus(-1, row(4)), row(5).plus(-1, row(5)),
                    SparseRow.of(new int[] {LINE + GROUPS}, new double[] {1}), SparseRow.dense(random.doubles(P, -1, 1).toArray())};
            for (int round = 0; round < 2; round++) {
                for (SparseRow x : contrasts) {
                    for (SparseRow y : contrasts) {
                        assertSame(inFull.between(x, y), shape.between(x, y));
                    }
                    assertSame(inFull.quadratic(x), shape.quadratic(x));
                    assertArrayEquals(inFull.covariance.times(x), shape.covariance.times(x), 1e-11);
                }
                inFull.withHeld();
                shape.withHeld();
            }
            inFull.withOwnForms(full);
            shape.withOwnForms(byBlocks);
            for (int i = 0; i < n; i += 37) {
                assertSame(inFull.quadratic(full.row(i)), shape.own(i, full.row(i)));
                assertSame(inFull.own(i, full.row(i)), shape.own(i, full.row(i)));
            }
        }
    }

    private static void assertSame(Shape.Forms expected, Shape.Forms found) {
        assertEquals(expected.variance, found.variance, 1e-10);
        assertEquals(expected.held, found.held, 1e-10);
    }

    @Test
    void draws_are_those_of_what_is_believed_whatever_was_asked_before() {
        Design design = design(400);
        assertFalse(Border.of(design, PRIORS).isNone());
        Posterior posterior = ShrunkenRegression.withDefaults().withChanceOfAbsence(0.3, List.of("slope", "slopes of lines"))
                .fit(design, sample(design), PRIORS);
        assertTrue(posterior.chanceOfAbsence() > 0.1 && posterior.chanceOfAbsence() < 1, "points with slopes and without");
        int count = 20_000;
        SparseRow one = row(3);
        SparseRow other = row(4);
        SparseRow market = SparseRow.of(new int[] {MONTH, MONTH + MONTHS - 1}, new double[] {-1, 1});
        SparseRow sum = one.plus(1, market);
        JointDraws draws = posterior.draws(count, 17);
        for (SparseRow contrast : List.of(one, one.plus(-1, other), market, sum, row(5).plus(-1, row(5)),
                SparseRow.of(new int[] {LINE + GROUPS}, new double[] {1}))) {
            DrawsTest.assertDrawn(posterior, draws, contrast);
        }
        double[] level = draws.of(one);
        double[] moved = draws.of(market);
        double[] both = draws.of(sum);
        for (int i = 0; i < count; i++) {
            assertEquals(level[i] + moved[i], both[i], 1e-12);
        }
        assertArrayEquals(level, posterior.draws(count, 17).of(one), "the first that is asked");
        assertFalse(Arrays.equals(level, posterior.draws(count, 18).of(one)));
    }

    @Test
    void more_columns_than_fifteen_bits_name_are_fitted() {
        int groups = 33_000;
        int p = groups + 2;
        int n = 3 * groups;
        double[] y = random.doubles(n, -1, 1).toArray();
        Design design = Design.of(p, n, i -> SparseRow.of(new int[] {i / 3, groups, groups + 1}, new double[] {1, 1, i % 3 - 1}));
        assertEquals(0.5, design.row(n - 1).value(2) - design.row(n - 1).value(0) / 2, "as it was");
        assertEquals(groups - 1, design.row(n - 1).index(0));
        double spread = 0.5;
        double scale = 0.7;
        Posterior posterior = ShrunkenRegression.withDefaults().with(ErrorLaw.NORMAL).with(Integration.MODE)
                .with(new ErrorScale.Stated(scale)).fit(design, Sample.of(y), List.of(stated("groups", groups, spread),
                        PriorBlock.stated("level", groups, 0, 1e-6), PriorBlock.stated("slope", groups + 1, 0, 1e-6)));
        double[] mean = posterior.mean();
        // With level and slope held at 0 each group is a normal mean with a normal prior.
        double precision = 3 / (scale * scale) + 1 / (spread * spread);
        for (int g = 0; g < groups; g += 997) {
            double sum = y[3 * g] + y[3 * g + 1] + y[3 * g + 2];
            assertEquals(sum / (scale * scale) / precision, mean[g], 1e-6);
            assertEquals(1 / precision, posterior.variance(SparseRow.of(new int[] {g}, new double[] {1})), 1e-9);
        }
        SparseRow apart = SparseRow.of(new int[] {0, groups - 1}, new double[] {1, -1});
        assertEquals(2 / precision, posterior.variance(apart), 1e-9);
        assertEquals(1 / (spread * spread) / precision, posterior.priorShare(apart), 1e-6);
    }

    private static PriorBlock stated(String name, int count, double spread) {
        double[] sd = new double[count];
        Arrays.fill(sd, spread);
        return new PriorBlock(name, 0, PriorBlock.Kind.STATED, PriorBlock.Role.PRIMARY, new double[count], sd);
    }
}
