package swapworth.statistics;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import org.apache.commons.math3.distribution.TDistribution;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Student's t errors and normal priors. Source: R 4.2.2, see the SOURCE.md of stackloss and ames. */
class StudentRegressionTest {

    private static final Reference STACKLOSS = Reference.read("stackloss/stackloss.csv");

    private static Design stackloss() {
        double[][] x = new double[STACKLOSS.rows()][];
        for (int i = 0; i < x.length; i++) {
            x[i] = new double[] {1, STACKLOSS.number(i, "Air.Flow"), STACKLOSS.number(i, "Water.Temp"),
                STACKLOSS.number(i, "Acid.Conc.")};
        }
        return Design.dense(x);
    }

    // Source: R 4.2.2: survreg(Surv(stack.loss) ~ ., dist = "t", parms = nu), tolerance 1e-14
    @ParameterizedTest
    @CsvSource({
        "3, -39.1239443334338, 0.854236231669722, 0.656756878913993, -0.103903004845026, 1.75549399460348, -51.0681099636287",
        "4, -40.0680926907363, 0.857090778938972, 0.745268810864179, -0.115124826428073, 2.02453393318031, -51.4233374326516",
        "5, -40.4884644565501, 0.847548710897373, 0.816476971153895, -0.120412913153851, 2.18544485732894, -51.6343941547914",
        "8, -40.7111841554175, 0.810979361204072, 0.967610479789006, -0.12891267918764, 2.45668175662263, -51.9619093153431"})
    void agrees_with_the_maximum_of_the_likelihood_at_its_scale(int nu, double b0, double b1, double b2, double b3, double scale,
            double logLikelihood) {
        Posterior fit = ShrunkenRegression.withDefaults().with(ErrorLaw.student(nu)).with(new ErrorScale.Stated(scale))
                .withTolerance(1e-12).fit(stackloss(), Sample.of(STACKLOSS.numbers("stack.loss")),
                        List.of(PriorBlock.flat("all", 0, 4)));
        double[] expected = {b0, b1, b2, b3};
        for (int j = 0; j < 4; j++) {
            double digits = Reference.digits(fit.mean()[j], expected[j]);
            assertTrue(digits >= 8, "nu " + nu + ", coefficient " + j + ": " + digits + " digits");
        }
        assertEquals(logLikelihood, fit.logLikelihood(), 1e-9);
    }

    // Source: R 4.2.2, closed form: known error scale 3, independent normal priors.
    @Test
    void agrees_with_the_closed_form_for_normal_errors_and_priors() {
        Posterior fit = ridge();
        double[] mean = {-44.2734950681179, 0.660763152632165, 1.27398647553672, -0.0578476265361345};
        double[] sd = {6.87038207196624, 0.0950437187104937, 0.264544232618675, 0.0787801439377081};
        for (int j = 0; j < 4; j++) {
            assertTrue(Reference.digits(fit.mean()[j], mean[j]) >= 12, "mean " + j + " " + fit.mean()[j]);
            double[] unit = new double[4];
            unit[j] = 1;
            assertTrue(Reference.digits(fit.estimate(SparseRow.dense(unit)).sd(), sd[j]) >= 12, "sd " + j);
        }
        assertEquals(-58.9019479174653, fit.logMarginal(), 1e-10);
    }

    // Source: R 4.2.2: the hat-matrix shortcut, and brute force for row 1.
    @Test
    void leaves_rows_out_as_the_closed_form_does() {
        double[] residual = {5.62784138550352, -1.21825908782428, 6.01637864140136, 6.39346786320369, -1.77977106553763};
        Posterior fit = ridge();
        double[] y = STACKLOSS.numbers("stack.loss");
        for (int i = 0; i < residual.length; i++) {
            Mixture predicted = fit.leavingOut(Posterior.LeaveOut.CLOSED_FORM, i).predict(stackloss().row(i), 1, 0);
            assertTrue(Reference.digits(y[i] - predicted.mean(), residual[i]) >= 10, "row " + i);
            if (i == 0) {
                assertTrue(Reference.digits(predicted.sd(), 3.48799699200194) >= 10, "sd " + predicted.sd());
            }
        }
    }

    private static Posterior ridge() {
        return ShrunkenRegression.withDefaults().with(ErrorLaw.NORMAL).with(new ErrorScale.Stated(3)).withTolerance(1e-13)
                .fit(stackloss(), Sample.of(STACKLOSS.numbers("stack.loss")), List.of(
                        PriorBlock.stated("intercept", 0, -30, 20), PriorBlock.stated("air flow", 1, 0.5, 0.2),
                        PriorBlock.stated("water temperature", 2, 1, 0.5), PriorBlock.stated("acid", 3, 0, 0.1)));
    }

    // Source: R 4.2.2: lm(log(sale_price) ~ log(living_area_sqft) + age + condition_score + garage_cars
    //   + I(basement_area_sqft/1000) + quarter) on the 2413 rows of normal sales.
    @Test
    void agrees_with_lm_on_house_sales_with_a_level_for_each_quarter() {
        Ames ames = Ames.read();
        List<SparseRow> rows = new ArrayList<>();
        for (int i = 0; i < ames.y.length; i++) {
            SparseRow row = SparseRow.dense(ames.x[i]);
            int quarter = ames.quarter[i];
            rows.add(quarter == 0 ? row : row.plus(1, SparseRow.of(new int[] {5 + quarter}, new double[] {1})));
        }
        int p = 6 + 18;
        Posterior fit = CertifiedRegressionTest.LEAST_SQUARES.fit(Design.of(p, rows.toArray(SparseRow[]::new)), Sample.of(ames.y),
                List.of(PriorBlock.flat("measures", 0, 6), PriorBlock.flat("quarter", 6, 18)));
        Reference expected = Reference.read("ames/quarters_lm.csv");
        assertEquals(p, expected.rows());
        for (int j = 0; j < p; j++) {
            double error = fit.estimate(SparseRow.of(new int[] {j}, new double[] {1})).sd();
            String term = expected.text(j, "term");
            assertTrue(Reference.digits(fit.mean()[j], expected.number(j, "estimate")) >= (j < 7 ? 10 : 9), term + " " + fit.mean()[j]);
            assertTrue(Reference.digits(error, expected.number(j, "error")) >= 9, "error of " + term + " " + error);
        }
        assertEquals(expected.number(23, "estimate"), fit.mean()[23], 1e-11);
        assertEquals(0.141761317114778, fit.errorScale(), 1e-12);
        // R's predict(interval = "prediction") of 1,500 square feet, 20 years, condition 5, 2 cars, basement 1,000, second quarter of 2008.
        SparseRow house = SparseRow.dense(1, Math.log(1500), 20, 5, 2, 1).plus(1, SparseRow.of(new int[] {5 + 9}, new double[] {1}));
        Mixture predicted = fit.predict(house, 1, 0);
        assertEquals(12.105994925999, predicted.mean(), 1e-11);
        // Commons Math finds quantiles by search, to about 1e-9.
        TDistribution student = new TDistribution(null, 2389);
        assertEquals(12.2881608693497 - 11.9238289826482, 2 * student.inverseCumulativeProbability(0.9) * predicted.sd(), 1e-9);
        assertEquals(12.3846578383543 - 11.8273320136436, 2 * student.inverseCumulativeProbability(0.975) * predicted.sd(), 1e-9);
    }

    // Source: R 4.2.2: survreg(dist = "t", parms = 4 and 8) on the same rows without the quarters.
    @ParameterizedTest
    @CsvSource({
        "4, 7.35684472336863, 0.556104090794075, -0.00458286239187981, 0.0697880179390783, 0.0831534504508165, 0.251459942195407, "
            + "0.108595517221236, 1337.04262724904",
        "8, 7.32737420484353, 0.558643736577237, -0.0046384802369678, 0.0722365056909145, 0.0832685094061243, 0.250632289060027, "
            + "0.121236634976618, 1337.88996757202"})
    void agrees_with_the_maximum_of_the_likelihood_on_house_sales(int nu, double b0, double b1, double b2, double b3, double b4,
            double b5, double scale, double logLikelihood) {
        Ames ames = Ames.read();
        Posterior fit = ShrunkenRegression.withDefaults().with(ErrorLaw.student(nu)).with(new ErrorScale.Stated(scale))
                .withTolerance(1e-12).fit(Design.dense(ames.x), Sample.of(ames.y), List.of(PriorBlock.flat("all", 0, 6)));
        double[] expected = {b0, b1, b2, b3, b4, b5};
        for (int j = 0; j < 6; j++) {
            double digits = Reference.digits(fit.mean()[j], expected[j]);
            assertTrue(digits >= 7, "nu " + nu + ", coefficient " + j + ": " + digits + " digits");
        }
        assertEquals(logLikelihood, fit.logLikelihood(), 1e-7);
    }

    record Ames(double[][] x, double[] y, int[] quarter) {
        static Ames read() {
            Reference data = Reference.read("ames/ames.csv").where("sale_condition", "Normal");
            double[][] x = new double[data.rows()][];
            double[] y = new double[x.length];
            int[] quarter = new int[x.length];
            for (int i = 0; i < x.length; i++) {
                x[i] = new double[] {1, Math.log(data.number(i, "living_area_sqft")),
                    data.number(i, "year_sold") - data.number(i, "year_built"), data.number(i, "condition_score"),
                    data.number(i, "garage_cars"), data.number(i, "basement_area_sqft") / 1000};
                y[i] = Math.log(data.number(i, "sale_price"));
                quarter[i] = 4 * (int) (data.number(i, "year_sold") - 2006) + (int) (data.number(i, "month_sold") - 1) / 3;
            }
            return new Ames(x, y, quarter);
        }
    }
}
