package swapworth.statistics;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Effects of groups with a common variance. Source: closed forms and lme4 1.1-31, see the SOURCE.md of dyestuff, sleepstudy and ames. */
class GroupEffectsTest {

    private static SparseRow unit(int j) {
        return SparseRow.of(new int[] {j}, new double[] {1});
    }

    private static double sd(Posterior fit, SparseRow contrast) {
        return fit.estimate(contrast).sd();
    }

    /**
     * The standard deviation of an effect when the flat coefficients are held at their estimates, as lme4 states it: the variance less
     * what their estimates' uncertainty brings into it.
     */
    private static double conditionalSd(Posterior fit, int effect, int flat) {
        double[][] v = new double[flat][];
        double[] c = new double[flat];
        for (int j = 0; j < flat; j++) {
            v[j] = Arrays.copyOf(fit.covariances(unit(j)), flat);
            c[j] = fit.covariances(unit(effect))[j];
        }
        double[] packed = new double[flat * flat];
        for (int j = 0; j < flat; j++) {
            System.arraycopy(v[j], 0, packed, j * flat, flat);
        }
        double[] solved = Cholesky.of(packed, flat).solve(c);
        double variance = fit.variance(unit(effect));
        for (int j = 0; j < flat; j++) {
            variance -= c[j] * solved[j];
        }
        return Math.sqrt(variance);
    }

    private static void agrees(double expected, double found, double digits, String what) {
        double reached = Reference.digits(found, expected);
        assertTrue(reached >= digits, what + ": " + found + " for " + expected + ", " + reached + " digits");
    }

    // Source: exact closed form of the balanced one-way layout.
    @Test
    void dyestuff_has_the_restricted_maximum_likelihood_of_its_closed_form() {
        Reference data = Reference.read("dyestuff/dyestuff.csv");
        SparseRow[] rows = new SparseRow[data.rows()];
        for (int i = 0; i < rows.length; i++) {
            rows[i] = SparseRow.of(new int[] {0, 1 + "ABCDEF".indexOf(data.text(i, "Batch"))}, new double[] {1, 1});
        }
        Posterior fit = CertifiedRegressionTest.LEAST_SQUARES.fit(Design.of(7, rows), Sample.of(data.numbers("Yield")),
                List.of(PriorBlock.flat("mean", 0, 1), PriorBlock.varianceComponent("batch", 1, 6)));
        agrees(1764.05, fit.commonSpread(1) * fit.commonSpread(1), 10, "variance of batches");
        agrees(2451.25, fit.errorScale() * fit.errorScale(), 10, "variance of residuals");
        agrees(1527.5, fit.mean()[0], 12, "mean");
        agrees(19.38341215231897, sd(fit, unit(0)), 10, "its standard error");
        double[] effects = {-17.6068513507519, 0.3912633633500421, 28.56222552455308, -23.08453843765249, 56.73318768575611,
            -44.99528678525485};
        for (int g = 0; g < 6; g++) {
            agrees(effects[g], fit.mean()[1 + g], 10, "effect " + g);
            // Closed form: the root of the variance of batches, times one less the shrinkage; lme4 prints 19.58657017.
            agrees(Math.sqrt(1764.05 * (1 - 0.7825267267000843)), conditionalSd(fit, 1 + g, 1), 10, "conditional sd " + g);
            agrees(19.5865701744212, conditionalSd(fit, 1 + g, 1), 8, "conditional sd " + g + " by lme4");
        }
        assertEquals(319.6542768422577, -2 * fit.logMarginal(), 1e-9, "restricted deviance");
    }

    /**
     * Intercept and slope of a subject vary together. At a known covariance L L' of the two, a subject's entries (1, days) times L are the
     * columns of independent effects of variance 1, and L times those effects are the departures of its intercept and slope.
     */
    // Source: exact closed form at the REML covariance.
    @Test
    void sleepstudy_has_the_effects_of_its_closed_form_at_the_stated_covariance() {
        double varianceOfIntercepts = 612.0899386625255;
        double varianceOfSlopes = 35.0716604983174;
        double covariance = 9.604333316744091;
        double l11 = Math.sqrt(varianceOfIntercepts);
        double l21 = covariance / l11;
        double l22 = Math.sqrt(varianceOfSlopes - l21 * l21);
        Reference data = Reference.read("sleepstudy/sleepstudy.csv");
        Map<String, Integer> subjects = numbered(data, "Subject");
        SparseRow[] rows = new SparseRow[data.rows()];
        for (int i = 0; i < rows.length; i++) {
            double days = data.number(i, "Days");
            int at = 2 + 2 * subjects.get(data.text(i, "Subject"));
            rows[i] = SparseRow.dense(1, days).plus(1, SparseRow.of(new int[] {at, at + 1}, new double[] {l11 + days * l21, days * l22}));
        }
        List<PriorBlock> priors = new ArrayList<>(List.of(PriorBlock.flat("common line", 0, 2)));
        for (int j = 2; j < 38; j++) {
            priors.add(PriorBlock.stated("effect " + j, j, 0, 1));
        }
        Posterior fit = CertifiedRegressionTest.LEAST_SQUARES.with(new ErrorScale.Stated(Math.sqrt(654.9410270722988)))
                .fit(Design.of(38, rows), Sample.of(data.numbers("Reaction")), priors);
        agrees(251.4051048484848, fit.mean()[0], 12, "intercept");
        agrees(10.46728595959596, fit.mean()[1], 12, "slope");
        agrees(6.824556532069072, sd(fit, unit(0)), 12, "standard error of the intercept");
        agrees(1.545788896294727, sd(fit, unit(1)), 12, "standard error of the slope");
        assertEquals(1743.628271958491, -2 * fit.logMarginal(), 1e-8, "restricted deviance");
        Reference effects = Reference.read("sleepstudy/sleepstudy_blup_reml.csv");
        for (int i = 0; i < effects.rows(); i++) {
            int at = 2 + 2 * subjects.get(effects.text(i, "Subject"));
            double u1 = fit.mean()[at];
            double u2 = fit.mean()[at + 1];
            agrees(effects.number(i, "ranef_intercept"), l11 * u1, 11, "intercept of " + i);
            agrees(effects.number(i, "ranef_Days"), l21 * u1 + l22 * u2, 11, "slope of " + i);
        }
    }

    private static Map<String, Integer> numbered(Reference data, String column) {
        Map<String, Integer> numbers = new LinkedHashMap<>();
        for (int i = 0; i < data.rows(); i++) {
            numbers.putIfAbsent(data.text(i, column), numbers.size());
        }
        return numbers;
    }

    // Source: lme4 1.1-31, lmer(Reaction ~ Days + (1 | Subject)), REML; whose optimiser stops after about 8 digits.
    @Test
    void sleepstudy_has_the_restricted_maximum_likelihood_of_a_random_intercept() {
        Reference data = Reference.read("sleepstudy/sleepstudy.csv");
        Map<String, Integer> subjects = numbered(data, "Subject");
        SparseRow[] rows = new SparseRow[data.rows()];
        for (int i = 0; i < rows.length; i++) {
            rows[i] = SparseRow.dense(1, data.number(i, "Days")).plus(1, unit(2 + subjects.get(data.text(i, "Subject"))));
        }
        Posterior fit = CertifiedRegressionTest.LEAST_SQUARES.fit(Design.of(20, rows), Sample.of(data.numbers("Reaction")),
                List.of(PriorBlock.flat("common line", 0, 2), PriorBlock.varianceComponent("subject", 2, 18)));
        agrees(1378.17852777635, fit.commonSpread(1) * fit.commonSpread(1), 7, "variance of subjects");
        agrees(960.456577606195, fit.errorScale() * fit.errorScale(), 7, "variance of residuals");
        agrees(9.7467163080762, sd(fit, unit(0)), 8, "standard error of the intercept");
        agrees(0.804221428545719, sd(fit, unit(1)), 8, "standard error of the slope");
        assertEquals(1786.46508539492, -2 * fit.logMarginal(), 1e-9, "restricted deviance");
    }

    // Source: lme4 1.1-31, lmer(log(sale_price) ~ ... + (1 | neighborhood)), REML, on the rows of normal sales.
    @Test
    void house_sales_have_the_restricted_maximum_likelihood_of_a_level_for_each_neighborhood() {
        StudentRegressionTest.Ames ames = StudentRegressionTest.Ames.read();
        Reference data = Reference.read("ames/ames.csv").where("sale_condition", "Normal");
        Map<String, Integer> places = numbered(data, "neighborhood");
        SparseRow[] rows = new SparseRow[data.rows()];
        for (int i = 0; i < rows.length; i++) {
            rows[i] = SparseRow.dense(ames.x()[i]).plus(1, unit(6 + places.get(data.text(i, "neighborhood"))));
        }
        Posterior fit = CertifiedRegressionTest.LEAST_SQUARES.fit(Design.of(6 + places.size(), rows), Sample.of(ames.y()),
                List.of(PriorBlock.flat("measures", 0, 6), PriorBlock.varianceComponent("neighborhood", 6, places.size())));
        agrees(0.0184397156916499, fit.commonSpread(1) * fit.commonSpread(1), 8, "variance of neighborhoods");
        agrees(0.0155410001893362, fit.errorScale() * fit.errorScale(), 8, "variance of residuals");
        assertEquals(1518.41873883336, fit.logMarginal(), 1e-7, "restricted log likelihood");
        double[] expected = {7.69628887092002145, 0.51387387986347399, -0.00386201269549265, 0.07557571927594153, 0.06747012363008180,
            0.20854051858330477};
        double[] error = {0.07647091712897644, 0.01024945183792137, 0.00018748350189389, 0.00250183422561982, 0.00477414076473199,
            0.00790514356686576};
        for (int j = 0; j < 6; j++) {
            agrees(expected[j], fit.mean()[j], 8, "coefficient " + j);
            agrees(error[j], sd(fit, unit(j)), 8, "standard error " + j);
        }
        Reference effects = Reference.read("ames/neighborhoods_reml.csv");
        assertEquals(28, effects.rows());
        for (int i = 0; i < effects.rows(); i++) {
            int at = 6 + places.get(effects.text(i, "neighborhood"));
            agrees(effects.number(i, "blup"), fit.mean()[at], 8, "effect of " + effects.text(i, "neighborhood"));
            agrees(effects.number(i, "conditional_sd"), conditionalSd(fit, at, 6), 8, "conditional sd " + i);
        }
    }

    /** Groups whose means differ less than their rows' scatter alone would make them have no variance of their own. */
    @Test
    void groups_that_do_not_differ_have_next_to_no_variance_and_the_rest_is_least_squares() {
        double[] y = {1, 2, 3, 4, 5, 6, 6, 5, 4, 3, 2, 1};
        SparseRow[] rows = new SparseRow[12];
        for (int i = 0; i < 12; i++) {
            rows[i] = SparseRow.of(new int[] {0, 1 + i % 6 % 3}, new double[] {1, 1});
        }
        Posterior fit = CertifiedRegressionTest.LEAST_SQUARES.fit(Design.of(4, rows), Sample.of(y),
                List.of(PriorBlock.flat("mean", 0, 1), PriorBlock.varianceComponent("group", 1, 3)));
        assertTrue(fit.commonSpread(1) < 1e-3, "spread " + fit.commonSpread(1));
        agrees(3.5, fit.mean()[0], 10, "mean");
        agrees(Math.sqrt(35.0 / 11), fit.errorScale(), 6, "error scale");
    }

    // Source: D. Rubin, J. Educational Statistics 6 (1981) 377-401 for the data; closed form in mpmath 1.3.0 at stated spreads.
    @ParameterizedTest
    @CsvSource({
        "5, 7.85098323390138, 4.49209642570888, 9.86588491051124, 7.88078658712111, 6.88559326647243, 7.70526692672649, "
            + "5.76348718816992, 6.67786966645251, 9.88078658712111, 8.14819073863624",
        "10, 8.12647218557157, 5.5199745620066, 14.2414038207803, 8.06323609278579, 5.00105865029866, 7.61675626449846, "
            + "3.08422235928893, 4.90182413780163, 13.0632360927858, 9.04004006633299",
        "20, 8.46386245090541, 8.3265766911036, 20.9669904823259, 8.09277249018108, 1.47370241986552, 7.33997573235999, "
            + "0.593706566576586, 2.73344982065174, 16.0927724901811, 10.4175296051013"})
    void eight_schools_have_the_effects_of_the_closed_form_at_a_stated_spread(double tau, double mean, double error, double s1, double s2,
            double s3, double s4, double s5, double s6, double s7, double s8) {
        double[] y = {28, 8, -3, 7, -1, 1, 18, 12};
        double[] known = {15, 10, 16, 11, 9, 11, 10, 18};
        Bound[] bound = new Bound[8];
        Arrays.fill(bound, Bound.NONE);
        double[] ones = new double[8];
        Arrays.fill(ones, 1);
        SparseRow[] rows = new SparseRow[8];
        List<PriorBlock> priors = new ArrayList<>(List.of(PriorBlock.flat("mean", 0, 1)));
        for (int i = 0; i < 8; i++) {
            rows[i] = SparseRow.of(new int[] {0, 1 + i}, new double[] {1, 1});
            priors.add(PriorBlock.stated("school " + i, 1 + i, 0, tau));
        }
        Posterior fit = CertifiedRegressionTest.LEAST_SQUARES.with(new ErrorScale.Stated(1))
                .fit(Design.of(9, rows), new Sample(y, bound, ones, known, new double[8]), priors);
        agrees(mean, fit.mean()[0], 12, "mean");
        agrees(error, sd(fit, unit(0)), 12, "its standard error");
        double[] schools = {s1, s2, s3, s4, s5, s6, s7, s8};
        for (int i = 0; i < 8; i++) {
            agrees(schools[i], fit.mean()[0] + fit.mean()[1 + i], 12, "school " + i);
        }
    }
}
