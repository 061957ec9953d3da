package swapworth.statistics;

import java.util.Arrays;

/**
 * Sample quantiles by linear interpolation between order statistics: definition 7 of R. Hyndman and Y. Fan, The American Statistician
 * 50 (1996) 361-365, with the k-th of n ordered values at probability (k - 1) / (n - 1).
 */
public final class Quantiles {

    private Quantiles() {
    }

    /**
     * A quantile of values in any order.
     *
     * @param values at least one number
     * @param probability from 0 to 1
     * @return the quantile
     * @throws IllegalArgumentException if there is no value: a median of nothing does not exist
     */
    public static double of(double[] values, double probability) {
        double[] sorted = values.clone();
        Arrays.sort(sorted);
        return ofSorted(sorted, probability);
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
}
