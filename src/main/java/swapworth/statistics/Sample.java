package swapworth.statistics;

import java.util.Arrays;

/**
 * What was observed, row by row. The arrays that it gives are copies; {@link #inflation(int)} and {@link #growth(int)} ask for one row.
 *
 * @param y n responses; for a row that is a bound, the bound
 * @param bound n marks: whether the response itself was seen, or only that it lies above
 * @param inflation n factors above 0 on the error scale of a row, 1 for an ordinary row
 * @param known n error scales that are known by themselves and follow no hyperparameter; 0 for an ordinary row
 * @param growth n values of the measure along which the error scale grows, 0 where it is as stated
 */
public record Sample(double[] y, Bound[] bound, double[] inflation, double[] known,
        double[] growth) {

    /** Copies the arrays in and checks that they have one length and finite numbers. */
    public Sample {
        y = y.clone();
        bound = bound.clone();
        inflation = inflation.clone();
        known = known.clone();
        growth = growth.clone();
        int n = y.length;
        if (bound.length != n || inflation.length != n || known.length != n || growth.length != n) {
            throw new IllegalArgumentException("a sample needs as many bounds, inflations, known scales and growths as responses");
        }
        for (int i = 0; i < y.length; i++) {
            if (!Double.isFinite(y[i]) || !(inflation[i] > 0) || !(known[i] >= 0) || !Double.isFinite(growth[i])) {
                throw new IllegalArgumentException("row " + i + " is no row: response " + y[i] + ", inflation " + inflation[i]
                        + ", known scale " + known[i] + ", growth " + growth[i]);
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
        return new Sample(y, bound, inflation, new double[y.length], new double[y.length]);
    }

    @Override
    public double[] y() {
        return y.clone();
    }

    @Override
    public Bound[] bound() {
        return bound.clone();
    }

    @Override
    public double[] inflation() {
        return inflation.clone();
    }

    @Override
    public double[] known() {
        return known.clone();
    }

    @Override
    public double[] growth() {
        return growth.clone();
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof Sample sample && Arrays.equals(y, sample.y) && Arrays.equals(bound, sample.bound)
                && Arrays.equals(inflation, sample.inflation) && Arrays.equals(known, sample.known) && Arrays.equals(growth, sample.growth);
    }

    @Override
    public int hashCode() {
        return Arrays.hashCode(y);
    }

    /** How many rows it has, and how many of them are bounds. */
    @Override
    public String toString() {
        long bounds = Arrays.stream(bound).filter(b -> b == Bound.BELOW).count();
        return y.length + (y.length == 1 ? " row" : " rows") + (bounds == 0 ? "" : ", of which " + bounds
                + (bounds == 1 ? " only bounds" : " only bound") + " the response");
    }

    /**
     * The factor on the error scale of one row.
     *
     * @param row from 0
     * @return above 0
     */
    public double inflation(int row) {
        return inflation[row];
    }

    /**
     * The measure along which the error scale of one row grows.
     *
     * @param row from 0
     * @return 0 where the scale is as stated
     */
    public double growth(int row) {
        return growth[row];
    }

    /**
     * The same rows with other factors on their error scale.
     *
     * @param factors n factors above 0
     * @return another sample
     */
    public Sample withInflation(double[] factors) {
        return new Sample(y, bound, factors, known, growth);
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

    /** What rounding to a double leaves open of a response, on average over the rows: no error scale can be told to be smaller. */
    double rounding() {
        double sum = 0;
        for (double one : y) {
            sum += one * one;
        }
        return Math.max(1e-150, Math.scalb(Math.sqrt(sum / y.length), -53));
    }

    /** The standard deviation of the responses about their mean. */
    double sd() {
        double mean = Arrays.stream(y).average().orElse(0);
        return Math.sqrt(Arrays.stream(y).map(v -> (v - mean) * (v - mean)).average().orElse(0));
    }

    boolean isBound(int i) {
        return bound[i] == Bound.BELOW;
    }

    boolean followsScale(int i) {
        return known[i] == 0;
    }

    /** Some of the rows, in the order named. */
    Sample some(int[] rows) {
        Bound[] bounds = new Bound[rows.length];
        for (int i = 0; i < rows.length; i++) {
            bounds[i] = bound[rows[i]];
        }
        return new Sample(some(y, rows), bounds, some(inflation, rows), some(known, rows), some(growth, rows));
    }

    private static double[] some(double[] values, int[] rows) {
        return Arrays.stream(rows).mapToDouble(i -> values[i]).toArray();
    }

    /** The error scale of each row at stated hyperparameters. */
    double[] scales(double scale, double growthRate) {
        double[] scales = new double[y.length];
        Ranges.each(scales.length, (first, end) -> {
            for (int i = first; i < end; i++) {
                scales[i] = known[i] > 0 ? known[i] : scale * inflation[i] * Math.exp(growthRate * growth[i]);
            }
        });
        return scales;
    }
}
