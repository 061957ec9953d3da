package swapworth.statistics;

import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** With nothing assumed and normal errors the engine is least squares. Source: NIST StRD, certified values. */
class CertifiedRegressionTest {

    static final ShrunkenRegression LEAST_SQUARES = ShrunkenRegression.withDefaults().with(ErrorLaw.NORMAL)
            .with(new ErrorScale.Unsure(1, Double.POSITIVE_INFINITY)).with(Integration.MODE).withTolerance(1e-12);

    /** The digits asked are what the engine reaches, rounded down: more than Commons Math 3.6.1 where the columns are hard. */
    @ParameterizedTest
    @CsvSource({"Norris, 1, 12, 12", "Pontius, 2, 11, 11", "Longley, 0, 12, 12", "Filip, 10, 7, 7"})
    void agrees_with_the_certified_values_to_the_stated_digits(String name, int degree, double digits, double digitsOfErrors) {
        Posterior fit = fit(name, degree);
        Reference certified = Reference.read("nist-linear/certified.csv").where("dataset", name);
        double[] found = fit.mean();
        for (int j = 0; j < found.length; j++) {
            double[] unit = new double[found.length];
            unit[j] = 1;
            double se = fit.estimate(SparseRow.dense(unit)).sd();
            double right = Reference.digits(found[j], certified.number(j, "estimate"));
            double rightError = Reference.digits(se, certified.number(j, "standard_error"));
            assertTrue(right >= digits, name + " B" + j + ": " + right + " digits of the estimate");
            assertTrue(rightError >= digitsOfErrors, name + " B" + j + ": " + rightError + " digits of the standard error");
        }
    }

    private static Posterior fit(String name, int degree) {
        Reference data = Reference.read("nist-linear/nist_" + name + ".csv");
        double[][] x = new double[data.rows()][];
        for (int i = 0; i < x.length; i++) {
            int p = degree == 0 ? 7 : degree + 1;
            x[i] = new double[p];
            x[i][0] = 1;
            for (int j = 1; j < p; j++) {
                x[i][j] = degree == 0 ? data.number(i, "x" + j) : Math.pow(data.number(i, "x"), j);
            }
        }
        return LEAST_SQUARES.fit(Design.dense(x), Sample.of(data.numbers("y")), List.of(PriorBlock.flat("all", 0, x[0].length)));
    }

    @Test
    void refuses_columns_that_the_rows_cannot_tell_apart_and_names_one() {
        double[][] x = new double[12][];
        double[] y = new double[12];
        for (int i = 0; i < x.length; i++) {
            x[i] = new double[] {1, i, 2020 - i};
            y[i] = Math.sin(i);
        }
        List<PriorBlock> priors = List.of(PriorBlock.flat("intercept", 0, 1), PriorBlock.flat("age", 1, 1),
                PriorBlock.flat("model year", 2, 1));
        var refused = assertThrows(ConfoundedColumnsException.class,
                () -> LEAST_SQUARES.fit(Design.dense(x), Sample.of(y), priors));
        assertTrue(refused.getMessage().contains("model year"), refused.getMessage());
    }
}
