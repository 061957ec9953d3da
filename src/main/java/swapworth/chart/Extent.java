package swapworth.chart;

import java.util.Arrays;

/** The span of values that an axis must show. Values without a place on the scale are passed over. */
final class Extent {

    /**
     * How many times the width of the middle half a value may lie outside it and still stretch an axis; more on a linear scale,
     * for prices and distances lean to the right.
     */
    private static final double FAR = 5;
    private static final double FAR_IN_RATIOS = 3;

    private static final double LARGEST = 1e15;

    private final ValueScale scale;
    private double low = Double.POSITIVE_INFINITY;
    private double high = Double.NEGATIVE_INFINITY;

    Extent(ValueScale scale) {
        this.scale = scale;
    }

    double low() {
        return low;
    }

    double high() {
        return high;
    }

    boolean isEmpty() {
        return low > high;
    }

    void include(double... values) {
        for (double value : values) {
            if (hasPlace(value)) {
                low = Math.min(low, value);
                high = Math.max(high, value);
            }
        }
    }

    /** Takes in all values but those far outside the middle half of them: one slip of the pen must not flatten the rest. */
    void includeMost(double... values) {
        int size = 0;
        double[] sorted = new double[values.length];
        for (double value : values) {
            if (hasPlace(value)) {
                sorted[size++] = value;
            }
        }
        if (size == 0) {
            return;
        }
        sorted = Arrays.copyOf(sorted, size);
        Arrays.sort(sorted);
        double q1 = sorted[(sorted.length - 1) / 4];
        double q3 = sorted[sorted.length - 1 - (sorted.length - 1) / 4];
        boolean ratios = scale == ValueScale.LOGARITHMIC;
        double least = ratios ? q1 * Math.pow(q1 / q3, FAR_IN_RATIOS) : q1 - FAR * (q3 - q1);
        double greatest = ratios ? q3 * Math.pow(q3 / q1, FAR_IN_RATIOS) : q3 + FAR * (q3 - q1);
        for (double value : sorted) {
            if (q1 == q3 || value >= least && value <= greatest) {
                include(value);
            }
        }
    }

    /** Takes in values too, but lets them widen each side by no more than the span so far. */
    void includeWithin(double... values) {
        double span = high - low;
        double least = span > 0 ? low - span : Double.NEGATIVE_INFINITY;
        double greatest = span > 0 ? high + span : Double.POSITIVE_INFINITY;
        for (double value : values) {
            if (hasPlace(value)) {
                include(Math.max(least, Math.min(greatest, value)));
            }
        }
    }

    /** Whether a value is a number, and of a size that can stand beside an axis. */
    static boolean isDrawable(double value) {
        return Math.abs(value) <= LARGEST;
    }

    private boolean hasPlace(double value) {
        return isDrawable(value) && (scale == ValueScale.LINEAR || value > 0);
    }
}
