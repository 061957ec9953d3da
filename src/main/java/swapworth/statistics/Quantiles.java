package swapworth.statistics;

import java.util.Arrays;
import org.apache.commons.math3.distribution.TDistribution;

/**
 * Sample quantiles by linear interpolation between order statistics: definition 7 of R. Hyndman and Y. Fan, The American Statistician
 * 50 (1996) 361-365, with the k-th of n ordered values at probability (k - 1) / (n - 1).
 */
public final class Quantiles {
    /** Fewer values than this are sorted as soon as looked through. */
    private static final int FEW = 200;

    private Quantiles() {
    }

    /**
     * A quantile of values in any order.
     *
     * @param values at least one number; NaN counts as greater than all others
     * @param probability from 0 to 1
     * @return the quantile
     * @throws IllegalArgumentException if there is no value: a median of nothing does not exist
     */
    public static double of(double[] values, double probability) {
        return ofPartlyOrdered(values.clone(), probability);
    }

    /**
     * The median of values in any order.
     *
     * @param values at least one number
     * @return the quantile at one half
     * @throws IllegalArgumentException if there is no value
     */
    public static double median(double[] values) {
        return of(values, 0.5);
    }

    /**
     * A quantile of values that are put in order as far as it needs: much quicker than sorting where they are many and few quantiles are
     * asked for, one call after another with the same array.
     *
     * @param values at least one number; they change places
     * @param probability from 0 to 1
     * @return the quantile
     * @throws IllegalArgumentException as for values in ascending order
     */
    public static double ofPartlyOrdered(double[] values, double probability) {
        if (values.length > FEW && probability >= 0 && probability <= 1 && allNumbers(values)) {
            int below = (int) Math.floor(probability * (values.length - 1));
            select(values, below);
            // The next value above is the least of those that stand behind.
            int least = Math.min(below + 1, values.length - 1);
            for (int i = least + 1; i < values.length; i++) {
                least = values[i] < values[least] ? i : least;
            }
            swap(values, least, Math.min(below + 1, values.length - 1));
        } else {
            Arrays.sort(values);
        }
        return ofSorted(values, probability);
    }

    private static boolean allNumbers(double[] values) {
        for (double value : values) {
            if (Double.isNaN(value)) {
                return false;
            }
        }
        return true;
    }

    /**
     * Moves values so that the k-th stands in its place, no greater one before it and no smaller one behind it. Source: C. Hoare, Comm. ACM
     * 4 (1961) 321-322, the value to compare with being the middle one of three.
     */
    private static void select(double[] values, int k) {
        int from = 0;
        int to = values.length - 1;
        while (from < to) {
            double a = values[from];
            double b = values[(from + to) >>> 1];
            double c = values[to];
            double pivot = Math.max(Math.min(a, b), Math.min(Math.max(a, b), c));
            int i = from;
            int j = to;
            while (i <= j) {
                while (values[i] < pivot) {
                    i++;
                }
                while (values[j] > pivot) {
                    j--;
                }
                if (i <= j) {
                    swap(values, i++, j--);
                }
            }
            if (k <= j) {
                to = j;
            } else if (k >= i) {
                from = i;
            } else {
                return;
            }
        }
    }

    private static void swap(double[] values, int i, int j) {
        double moved = values[i];
        values[i] = values[j];
        values[j] = moved;
    }

    /**
     * A quantile of values in ascending order.
     *
     * @param sorted at least one number, in ascending order
     * @param probability from 0 to 1
     * @return the quantile
     * @throws IllegalArgumentException if there is no value, or the probability lies outside 0 and 1
     */
    public static double ofSorted(double[] sorted, double probability) {
        if (sorted.length == 0) {
            throw new IllegalArgumentException("no value has no quantile");
        }
        if (!(probability >= 0 && probability <= 1)) {
            throw new IllegalArgumentException("a probability must lie between 0 and 1, not " + probability);
        }
        double at = probability * (sorted.length - 1);
        int below = (int) Math.floor(at);
        int above = Math.min(below + 1, sorted.length - 1);
        return sorted[below] + (at - below) * (sorted[above] - sorted[below]);
    }

    /**
     * Below what the next value of the kind falls with a probability: values that are few tell less of it than of themselves. It is the
     * k-th of n values at probability k / (n + 1), whatever their law. Where that lies beyond the least and the greatest, the law is taken
     * for a normal one, of which the next value lies about their mean by Student's law, s (1 + 1 / n)<sup>1/2</sup> wide.
     *
     * @param sorted at least two numbers, in ascending order
     * @param probability above 0 and below 1
     * @return the quantile
     * @throws IllegalArgumentException if there are fewer values, or the probability lies outside
     */
    public static double ofNext(double[] sorted, double probability) {
        int n = sorted.length;
        if (n < 2 || !(probability > 0 && probability < 1)) {
            throw new IllegalArgumentException(n + " values do not tell below what the next one falls with probability "
                    + probability);
        }
        double place = probability * (n + 1);
        if (place >= 1 && place <= n) {
            return ofSorted(sorted, (place - 1) / (n - 1));
        }
        double mean = Draws.mean(sorted);
        double squares = 0;
        for (double value : sorted) {
            squares += (value - mean) * (value - mean);
        }
        double deviate = new TDistribution(null, n - 1).inverseCumulativeProbability(probability);
        return mean + deviate * Math.sqrt(squares / (n - 1) * (1 + 1.0 / n));
    }
}
