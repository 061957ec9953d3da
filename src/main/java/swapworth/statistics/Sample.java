package swapworth.statistics;

import java.util.Arrays;

/**
 * What was observed, row by row.
 *
 * @param y n responses; for a row that is a bound, the bound
 * @param bound n marks: whether the response itself was seen, or only that it lies above
 * @param inflation n factors above 0 on the error scale of a row, 1 for an ordinary row
 * @param growth n values of the measure along which the error scale grows, 0 where it is as stated
 */
public record Sample(double[] y, Bound[] bound, double[] inflation, double[] growth) {

    /** Copies the arrays in and checks that they have one length and finite numbers. */
    public Sample {
        y = y.clone();
        bound = bound.clone();
        inflation = inflation.clone();
        growth = growth.clone();
        if (bound.length != y.length || inflation.length != y.length || growth.length != y.length) {
            throw new IllegalArgumentException("a sample needs as many bounds, inflations and growths as responses");
        }
        for (int i = 0; i < y.length; i++) {
            if (!Double.isFinite(y[i]) || !(inflation[i] > 0) || !Double.isFinite(growth[i])) {
                throw new IllegalArgumentException("row " + i + " is not finite: " + y[i] + ", " + inflation[i] + ", " + growth[i]);
            }
        }
    }

    /**
     * Ordinary rows: every response seen, all with the same error scale.
     *
     * @param y n responses
     * @return the sample
     */
    public static Sample of(double... y) {
        Bound[] bound = new Bound[y.length];
        Arrays.fill(bound, Bound.NONE);
        double[] inflation = new double[y.length];
        Arrays.fill(inflation, 1);
        return new Sample(y, bound, inflation, new double[y.length]);
    }

    /**
     * The number of rows, n.
     *
     * @return at least 0
     */
    public int size() {
        return y.length;
    }

    double response(int i) {
        return y[i];
    }

    boolean isBound(int i) {
        return bound[i] == Bound.BELOW;
    }

    /** The error scale of each row at stated hyperparameters. */
    double[] scales(double scale, double growthRate) {
        double[] scales = new double[y.length];
        for (int i = 0; i < scales.length; i++) {
            scales[i] = scale * inflation[i] * Math.exp(growthRate * growth[i]);
        }
        return scales;
    }
}
