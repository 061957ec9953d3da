package swapworth.statistics;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Coefficients that may all be 0 are averaged over with their chance of being so. */
class AbsenceTest {
    private static final int ROWS = 10;
    private static final double SLOPE = -0.1;
    private static final double SPREAD = 0.05;
    private static final double SCALE = 0.5;
    private static final double CHANCE = 0.2;
    private static final List<PriorBlock> PRIORS = List.of(PriorBlock.stated("slope", 0, SLOPE, SPREAD));
    private static final double[] X = {-5, -4, -3, -2, -1, 1, 2, 3, 4, 5};

    private static ShrunkenRegression known(double chance) {
        return ShrunkenRegression.withDefaults().with(ErrorLaw.NORMAL).with(ErrorScale.of(SCALE, 0)).withChanceOfAbsence(chance,
                List.of("slope"));
    }

    private static Design design() {
        double[][] rows = new double[ROWS][1];
        for (int i = 0; i < ROWS; i++) {
            rows[i][0] = X[i];
        }
        return Design.dense(rows);
    }

    private static double[] along(double slope) {
        double[] y = new double[ROWS];
        for (int i = 0; i < ROWS; i++) {
            y[i] = slope * X[i] + (i % 2 == 0 ? 0.3 : -0.3);
        }
        return y;
    }

    /** By the normal law of the least-squares slope, with and without a slope: the rows say nothing else of it. */
    private static double exact(double[] y) {
        double xx = 0;
        double xy = 0;
        for (int i = 0; i < ROWS; i++) {
            xx += X[i] * X[i];
            xy += X[i] * y[i];
        }
        double found = xy / xx;
        double absent = CHANCE * density(found, 0, SCALE * SCALE / xx);
        return absent / (absent + (1 - CHANCE) * density(found, SLOPE, SCALE * SCALE / xx + SPREAD * SPREAD));
    }

    private static double density(double x, double mean, double variance) {
        return Math.exp(-(x - mean) * (x - mean) / (2 * variance)) / Math.sqrt(variance);
    }

    // Closed form. What is held at 0 keeps a ten-thousandth of its spread, hence 1e-6.
    @ParameterizedTest
    @ValueSource(doubles = {0, 0.02, 0.05, 0.15})
    void the_chance_is_that_of_the_closed_form(double slope) {
        double[] y = along(slope);
        Posterior found = known(CHANCE).fit(design(), Sample.of(y), PRIORS);
        assertEquals(exact(y), found.chanceOfAbsence(), 1e-6);
        Posterior present = known(0).fit(design(), Sample.of(y), PRIORS);
        assertEquals((1 - exact(y)) * present.mean()[0], found.mean()[0], 1e-6);
        assertEquals(0, present.chanceOfAbsence());
    }

    // -0.1 is what is assumed of it.
    @ParameterizedTest
    @ValueSource(doubles = {-2, -0.3, -0.1})
    void where_the_rows_do_not_speak_for_it_nothing_changes(double slope) {
        double[] y = along(slope);
        Posterior found = known(CHANCE).fit(design(), Sample.of(y), PRIORS);
        assertTrue(exact(y) < CHANCE);
        assertEquals(0, found.chanceOfAbsence());
        assertArrayEquals(known(0).fit(design(), Sample.of(y), PRIORS).mean(), found.mean());
    }

    // Twenty sets each of 40 rows with errors of Student's t, all hyperparameters open; the chance was 0.1.
    @Test
    void rows_without_slopes_show_it_and_rows_with_slopes_too() {
        assertTrue(meanChance(0) > 0.5, "without slopes " + meanChance(0));
        assertTrue(meanChance(1) < 0.02, "with slopes " + meanChance(1));
    }

    private static double meanChance(double times) {
        SplittableRandom random = new SplittableRandom(7);
        double sum = 0;
        for (int set = 0; set < 20; set++) {
            double[][] rows = new double[40][4];
            double[] y = new double[rows.length];
            for (int i = 0; i < rows.length; i++) {
                rows[i] = new double[] {1, 4 * random.nextDouble() - 2, random.nextDouble(), random.nextDouble()};
                double t = Noise.normal(random) / Math.sqrt(-Math.log(1 - random.nextDouble()) / 2 - Math.log(1 - random.nextDouble()) / 2);
                y[i] = 3 + times * (-0.3 * rows[i][1] + 0.1 * rows[i][2]) + 0.2 * t;
            }
            sum += ShrunkenRegression.withDefaults().withChanceOfAbsence(0.1, List.of("slope", "bends")).fit(Design.dense(rows),
                    Sample.of(y), List.of(PriorBlock.stated("level", 0, 0, 5), PriorBlock.stated("slope", 1, -0.3, 0.2),
                    PriorBlock.common("bends", 2, 2, 0.1, PriorBlock.Role.SECONDARY))).chanceOfAbsence() / 20;
        }
        return sum;
    }

    @Test
    void a_row_left_out_changes_the_chance_as_a_fit_without_it() {
        double[] y = along(-0.01);
        y[9] = 2;
        Posterior without = known(CHANCE).fit(design(), Sample.of(y), PRIORS).leavingOut(Posterior.LeaveOut.CLOSED_FORM, 9);
        double[][] rows = new double[ROWS - 1][1];
        double[] rest = new double[ROWS - 1];
        for (int i = 0; i < rest.length; i++) {
            rows[i][0] = X[i];
            rest[i] = y[i];
        }
        assertEquals(known(CHANCE).fit(Design.dense(rows), Sample.of(rest), PRIORS).chanceOfAbsence(), without.chanceOfAbsence(), 1e-6);
    }

    @Test
    void a_chance_that_is_none_and_a_block_of_which_nothing_is_assumed_are_refused() {
        assertThrows(IllegalArgumentException.class, () -> known(1));
        assertThrows(IllegalArgumentException.class, () -> known(-0.1));
        assertThrows(IllegalArgumentException.class, () -> known(Double.NaN));
        List<PriorBlock> flat = List.of(PriorBlock.stated("slope", 0, SLOPE, SPREAD), PriorBlock.flat("level", 1, 1));
        double[][] rows = new double[ROWS][2];
        for (int i = 0; i < ROWS; i++) {
            rows[i] = new double[] {X[i], 1};
        }
        ShrunkenRegression both = ShrunkenRegression.withDefaults().withChanceOfAbsence(CHANCE, List.of("slope", "level"));
        assertThrows(IllegalArgumentException.class, () -> both.fit(Design.dense(rows), Sample.of(along(0)), flat));
    }
}
