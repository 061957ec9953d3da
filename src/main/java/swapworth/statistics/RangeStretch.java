package swapworth.statistics;

import java.util.Arrays;

/**
 * By how much predictive ranges are to be stretched so that they hold what they promise, never narrowed: one robust factor from left-out
 * residuals on the scale of a standard normal law.
 *
 * <p>The absolute residuals z at three levels are compared with those of a standard normal law, the mean of the three
 * logarithms is the raw factor, and it is drawn toward 1 as if by {@value #PRIOR_COUNT} residuals that are as they should be:
 * ln s = n / (n + {@value #PRIOR_COUNT}) x mean of ln(quantile of |z| / quantile of a normal law), or 0 where that is below 0. No quantile
 * counts for more than {@value #FAR}, so that a file in which one price in seven is mistyped does not stretch the ranges of all cars
 * without bound.
 *
 * <p>Fit for subjects exchangeable with those of the residuals: never for another level of trade, a future date, or a pair never seen.
 *
 * @param factor at least 1; 1 where there are no residuals
 * @param residuals n, the number of residuals in it
 */
public record RangeStretch(double factor, int residuals) {
    private static final int PRIOR_COUNT = 40;
    private static final double FAR = 3;
    private static final double[] LEVELS = {0.7, 0.8, 0.9};

    /** No stretch. */
    public static final RangeStretch NONE = new RangeStretch(1, 0);

    /**
     * The factor of some residuals.
     *
     * @param z left-out residuals: the standard normal quantile of the predictive probability of each response; any number of them
     * @return the factor
     */
    public static RangeStretch of(double... z) {
        double[] size = Arrays.stream(z).map(a -> Math.min(FAR, Math.abs(a))).sorted().toArray();
        if (size.length < 2) {
            return NONE;
        }
        double sum = 0;
        for (double level : LEVELS) {
            sum += Math.log(Math.max(Quantiles.ofSorted(size, level), 1e-3) / Normal.quantile((1 + level) / 2));
        }
        double share = (double) size.length / (size.length + PRIOR_COUNT);
        return new RangeStretch(Math.exp(share * Math.max(0, sum / LEVELS.length)), size.length);
    }
}
