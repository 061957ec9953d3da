package swapworth.chart;

import java.util.Arrays;

/** The span of values that an axis must show. Values without a place on the scale are passed over. */
final class Extent {

    /**
     * How many times the width of the middle eight tenths a value may lie outside them and still stretch an axis; more on a linear scale,
     * for prices and distances lean to the right.
     */
    private static final double FAR = 3;
    private static final double FAR_IN_RATIOS = 2;
    /** A band may reach so many times the largest value that it is about. */
    private static final double BAND = 2;

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

    /** Takes in all values but those far outside the middle eight tenths of them: one slip of the pen must not flatten the rest. */
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
        // Of few values the outermost at each end is left out too.
        int outer = sorted.length < 5 ? 0 : Math.max(1, (sorted.length - 1) / 10);
        double from = sorted[outer];
        double to = sorted[sorted.length - 1 - outer];
        boolean ratios = scale == ValueScale.LOGARITHMIC;
        double least = ratios ? from * Math.pow(from / to, FAR_IN_RATIOS) : from - FAR * (to - from);
        double greatest = ratios ? to * Math.pow(to / from, FAR_IN_RATIOS) : to + FAR * (to - from);
        for (double value : sorted) {
            if (from == to || value >= least && value <= greatest) {
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

    /** Takes in the band that a picture is about: it flattens the rest only where it reaches many times as far. */
    void includeBand(double... values) {
        double reach = Math.max(high - low, BAND * Math.max(Math.abs(low), Math.abs(high)));
        double least = low - reach;
        double greatest = high + reach;
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
