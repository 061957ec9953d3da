package swapworth.statistics;

import java.util.function.DoubleUnaryOperator;

/**
 * The quantiles that ranges ask for again and again, of the sum of a normal part and an error of Student's t with scale 1: tabulated
 * once, as Chebyshev series in the variance of the normal part, and good to 1e-8 of what {@link Mixture} finds by search.
 */
final class SumQuantiles {
    private static final int KEPT = 32;
    private static final SumQuantiles[] BY_DEGREES = new SumQuantiles[KEPT];
    private static final double[] PROBABILITIES = {0.9, 0.975};
    /** Where {@link Mixture} changes its rule; within each piece the quantile is a smooth function of the variance. */
    private static final double[] ENDS = {0, Mixture.SMALL, Mixture.MIDDLING, 2, Mixture.LARGE};
    private static final int TERMS = 20;

    private final double[][][] series = new double[PROBABILITIES.length][ENDS.length - 1][];

    private SumQuantiles(int degreesOfFreedom) {
        ErrorLaw law = ErrorLaw.student(degreesOfFreedom);
        for (int q = 0; q < PROBABILITIES.length; q++) {
            double probability = PROBABILITIES[q];
            for (int piece = 0; piece + 1 < ENDS.length; piece++) {
                series[q][piece] = chebyshev(ENDS[piece], ENDS[piece + 1],
                        variance -> Mixture.of(law, 0, variance, 1).search(probability));
            }
        }
    }

    /** The quantile of a probability above a half; not a number where there is no table for it or for this variance of the normal part. */
    static double above(int degreesOfFreedom, double probability, double variance) {
        int at = 0;
        while (at < PROBABILITIES.length && Math.abs(probability - PROBABILITIES[at]) >= 1e-12) {
            at++;
        }
        if (at == PROBABILITIES.length || degreesOfFreedom >= KEPT || variance > Mixture.LARGE) {
            return Double.NaN;
        }
        SumQuantiles table = BY_DEGREES[degreesOfFreedom];
        if (table == null) {
            table = new SumQuantiles(degreesOfFreedom);
            BY_DEGREES[degreesOfFreedom] = table;
        }
        int piece = 0;
        while (variance > ENDS[piece + 1]) {
            piece++;
        }
        return sum(table.series[at][piece], ENDS[piece], ENDS[piece + 1], variance);
    }

    private static double[] chebyshev(double low, double high, DoubleUnaryOperator function) {
        double[] value = new double[TERMS];
        for (int k = 0; k < TERMS; k++) {
            double t = StrictMath.cos(Math.PI * (k + 0.5) / TERMS);
            value[k] = function.applyAsDouble(low + (high - low) * (t + 1) / 2);
        }
        double[] coefficients = new double[TERMS];
        for (int j = 0; j < TERMS; j++) {
            for (int k = 0; k < TERMS; k++) {
                coefficients[j] += 2.0 / TERMS * value[k] * StrictMath.cos(Math.PI * j * (k + 0.5) / TERMS);
            }
        }
        coefficients[0] /= 2;
        return coefficients;
    }

    /** The series at x, by Clenshaw's recurrence. */
    private static double sum(double[] coefficients, double low, double high, double x) {
        double t = 2 * (x - low) / (high - low) - 1;
        double next = 0;
        double afterNext = 0;
        for (int j = coefficients.length - 1; j > 0; j--) {
            double now = 2 * t * next - afterNext + coefficients[j];
            afterNext = next;
            next = now;
        }
        return t * next - afterNext + coefficients[0];
    }
}
