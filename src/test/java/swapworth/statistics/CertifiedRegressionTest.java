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

    /**
     * The digits asked are what the engine reaches, rounded down: those of Commons Math 3.6.1 or more, but for Pontius, where reading the
     * decimals of the data as doubles leaves no more. Where a certified value is 0, as the standard errors of an exact fit are, digits
     * of the absolute value are asked.
     */
    @ParameterizedTest
    @CsvSource({"Norris, 0 1, 13.5, 14", "Pontius, 0 1 2, 13.4, 13.4", "NoInt1, 1, 15, 15", "NoInt2, 1, 15, 15",
        "Longley, x, 12.8, 12.7", "Filip, 0 1 2 3 4 5 6 7 8 9 10, 7.5, 7.2", "Wampler1, 0 1 2 3 4 5, 15, 9.6",
        "Wampler2, 0 1 2 3 4 5, 12.9, 14.5", "Wampler3, 0 1 2 3 4 5, 15, 13.6", "Wampler4, 0 1 2 3 4 5, 15, 13.6",
        "Wampler5, 0 1 2 3 4 5, 15, 13.6"})
    void agrees_with_the_certified_values_to_the_stated_digits(String name, String powers, double digits, double digitsOfErrors) {
        Posterior fit = fit(name, powers);
        Reference certified = Reference.read("nist-linear/certified.csv").where("dataset", name);
        double[] found = fit.mean();
        double least = 16;
        double leastOfErrors = 16;
        for (int j = 0; j < found.length; j++) {
            double se = fit.estimate(SparseRow.of(new int[] {j}, new double[] {1})).sd();
            least = Math.min(least, Reference.digits(found[j], certified.number(j, "estimate")));
            double error = certified.number(j, "standard_error");
            leastOfErrors = Math.min(leastOfErrors, error == 0 ? -Math.log10(se) : Reference.digits(se, error));
        }
        assertTrue(least >= digits, name + ": " + least + " digits of the estimates");
        assertTrue(leastOfErrors >= digitsOfErrors, name + ": " + leastOfErrors + " digits of the standard errors");
        double sd = Reference.read("nist-linear/certified_fits.csv").where("dataset", name).number(0, "residual_SD");
        double ofScatter = sd == 0 ? -Math.log10(fit.errorScale()) : Reference.digits(fit.errorScale(), sd);
        assertTrue(ofScatter >= digitsOfErrors, name + ": " + ofScatter + " digits of the residual standard deviation");
    }

    /** A regression on powers of x or, with {@code x}, on a constant and the columns of that letter. */
    private static Posterior fit(String name, String powers) {
        Reference data = Reference.read("nist-linear/nist_" + name + ".csv");
        String[] power = powers.equals("x") ? new String[7] : powers.split(" ");
        double[][] x = new double[data.rows()][power.length];
        for (int i = 0; i < x.length; i++) {
            for (int j = 0; j < power.length; j++) {
                x[i][j] = powers.equals("x") ? j == 0 ? 1 : data.number(i, "x" + j)
                        : Math.pow(data.number(i, "x"), Integer.parseInt(power[j]));
            }
        }
        return LEAST_SQUARES.fit(Design.dense(x), Sample.of(data.numbers("y")), List.of(PriorBlock.flat("all", 0, power.length)));
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
