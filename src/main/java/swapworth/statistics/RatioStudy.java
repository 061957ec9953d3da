package swapworth.statistics;

import java.util.Arrays;

/**
 * How well estimates meet prices, after the practice of mass appraisal: ratio = estimate / price.
 *
 * <p>COD = 100 mean|r - median| / median. PRD = mean ratio / weighted mean ratio, the latter being the sum of the estimates over the
 * sum of the prices. PRB = slope of (r - median) / median on the binary logarithm of half the sum of price and estimate / median.
 * Source: IAAO, Standard on Ratio Studies (2013); formulas from memory, checked against published worked examples.
 *
 * @param n number of pairs, at least 2
 * @param median median ratio
 * @param mean mean ratio
 * @param weightedMean weighted mean ratio
 * @param cod coefficient of dispersion, per cent
 * @param prd price-related differential
 * @param prb price-related bias: relative change of the ratio when the value doubles; 0 where all pairs are
 *     of one size, which tell nothing of it
 * @param prbError standard error of the bias; infinite with fewer than 3 pairs, and where all are of one size
 */
public record RatioStudy(int n, double median, double mean, double weightedMean, double cod, double prd, double prb,
        double prbError) {

    /**
     * Studies pairs of estimate and price.
     *
     * @param estimates n numbers above 0
     * @param prices n numbers above 0
     * @return the study
     * @throws IllegalArgumentException if there are fewer than two pairs or a number is not above 0
     */
    public static RatioStudy of(double[] estimates, double[] prices) {
        int n = estimates.length;
        if (n < 2 || prices.length != n) {
            throw new IllegalArgumentException("a ratio study needs at least two pairs, not " + n + " and " + prices.length);
        }
        double[] ratio = new double[n];
        double sumOfEstimates = 0;
        double sumOfPrices = 0;
        for (int i = 0; i < n; i++) {
            if (!(estimates[i] > 0) || !(prices[i] > 0)) {
                throw new IllegalArgumentException("pair " + i + " is " + estimates[i] + " and " + prices[i] + ", not both above 0");
            }
            ratio[i] = estimates[i] / prices[i];
            sumOfEstimates += estimates[i];
            sumOfPrices += prices[i];
        }
        double median = Quantiles.of(ratio, 0.5);
        double mean = Arrays.stream(ratio).average().orElseThrow();
        double weighted = sumOfEstimates / sumOfPrices;
        // Each logarithm is taken once: a study of a million pairs has as many.
        double[] size = new double[n];
        double deviation = 0;
        double meanX = 0;
        double meanY = 0;
        for (int i = 0; i < n; i++) {
            deviation += Math.abs(ratio[i] - median) / n;
            size[i] = Math.log(0.5 * (estimates[i] / median + prices[i])) / Math.log(2);
            meanX += size[i] / n;
            meanY += bias(ratio[i], median) / n;
        }
        double xx = 0;
        double xy = 0;
        for (int i = 0; i < n; i++) {
            double x = size[i] - meanX;
            xx += x * x;
            xy += x * (bias(ratio[i], median) - meanY);
        }
        double slope = xx > 0 ? xy / xx : 0;
        double squares = 0;
        for (int i = 0; i < n; i++) {
            double e = bias(ratio[i], median) - meanY - slope * (size[i] - meanX);
            squares += e * e;
        }
        double error = n > 2 && xx > 0 ? Math.sqrt(squares / (n - 2) / xx) : Double.POSITIVE_INFINITY;
        return new RatioStudy(n, median, mean, weighted, 100 * deviation / median, mean / weighted, slope, error);
    }

    /** By how much a ratio lies above the median one, relative to it. */
    private static double bias(double ratio, double median) {
        return (ratio - median) / median;
    }
}
