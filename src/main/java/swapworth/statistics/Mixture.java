package swapworth.statistics;

import java.util.Arrays;

/**
 * A distribution that is a weighted mixture of sums of a normal part (what is unsure about the line) and an error part (how one
 * response scatters about it), one for each point of the hyperparameters.
 *
 * <p>The sum of a normal and an error of Student's t has no closed form. It is integrated over the normal part by Gauss-Hermite
 * quadrature with 3 points where it is small against the error part, 7 where it is not, 15 where it is larger; where the normal part is more than three times the error
 * scale the sum is taken for normal with the same variance. The distribution function is good to about three digits in the last case
 * and five in the others.
 */
public final class Mixture {
    /** Up to this variance of the normal part, in squared scales of the error part, three points are enough. */
    static final double SMALL = 0.2;
    /** Up to this one seven are. */
    static final double MIDDLING = 0.7;
    /** Above this one the sum is taken for normal. */
    static final double LARGE = 9;

    private static final double[][] THREE = hermite(3);
    private static final double[][] SEVEN = hermite(7);
    private static final double[][] FIFTEEN = hermite(15);

    private final ErrorLaw law;
    private final double mean;
    private final double variance;
    private final double[] weight;
    private final double[] centre;
    private final double[] spread;
    private final boolean[] normal;
    /** Of a single sum the error scale; 0 for a mixture of several. */
    private final double singleScale;

    private Mixture(ErrorLaw law, double mean, double variance, double[] weight, double[] centre, double[] spread, boolean[] normal,
            double singleScale) {
        this.singleScale = singleScale;
        this.law = law;
        this.mean = mean;
        this.variance = variance;
        this.weight = weight;
        this.centre = centre;
        this.spread = spread;
        this.normal = normal;
    }

    /**
     * The mixture of k sums.
     *
     * @param law the law of the error part
     * @param weights k weights that add up to 1
     * @param means k means of the normal part
     * @param variances k variances of the normal part
     * @param scales k scales of the error part, all 0 where there is none
     */
    static Mixture of(ErrorLaw law, double[] weights, double[] means, double[] variances, double[] scales) {
        double mean = 0;
        for (int k = 0; k < weights.length; k++) {
            mean += weights[k] * means[k];
        }
        double variance = 0;
        double tail = tail(law);
        int size = 0;
        double[][][] rules = new double[weights.length][][];
        double[] whole = new double[weights.length];
        for (int k = 0; k < weights.length; k++) {
            whole[k] = variances[k] + tail * scales[k] * scales[k];
            variance += weights[k] * ((means[k] - mean) * (means[k] - mean) + whole[k]);
            double ratio = scales[k] > 0 ? variances[k] / (scales[k] * scales[k]) : Double.POSITIVE_INFINITY;
            boolean plain = law.isNormal() || ratio > LARGE;
            rules[k] = plain ? new double[2][0] : ratio > MIDDLING ? FIFTEEN : ratio > SMALL ? SEVEN : THREE;
            size += plain ? 1 : rules[k][0].length;
        }
        double[] weight = new double[size];
        double[] centre = new double[size];
        double[] spread = new double[size];
        boolean[] normal = new boolean[size];
        int at = 0;
        for (int k = 0; k < weights.length; k++) {
            if (rules[k][0].length == 0) {
                weight[at] = weights[k];
                centre[at] = means[k];
                spread[at] = Math.sqrt(whole[k]);
                normal[at++] = true;
            }
            for (int q = 0; q < rules[k][0].length; q++) {
                weight[at] = weights[k] * rules[k][1][q];
                centre[at] = means[k] + Math.sqrt(variances[k]) * rules[k][0][q];
                spread[at++] = scales[k];
            }
        }
        return new Mixture(law, mean, variance, weight, centre, spread, normal, weights.length == 1 ? scales[0] : 0);
    }

    /**
     * This law with some probability, and otherwise a normal law.
     *
     * @param otherwise the probability of the normal law, from 0 to 1
     * @param itsMean the mean of the normal law
     * @param itsVariance its variance
     * @return the mixture of the two
     */
    public Mixture or(double otherwise, double itsMean, double itsVariance) {
        int n = weight.length;
        double[] weights = Arrays.copyOf(weight, n + 1);
        for (int k = 0; k < n; k++) {
            weights[k] *= 1 - otherwise;
        }
        weights[n] = otherwise;
        double[] centres = Arrays.copyOf(centre, n + 1);
        centres[n] = itsMean;
        double[] spreads = Arrays.copyOf(spread, n + 1);
        spreads[n] = Math.sqrt(itsVariance);
        boolean[] plain = Arrays.copyOf(normal, n + 1);
        plain[n] = true;
        double together = (1 - otherwise) * mean + otherwise * itsMean;
        double sum = (1 - otherwise) * (variance + (mean - together) * (mean - together))
                + otherwise * (itsVariance + (itsMean - together) * (itsMean - together));
        return new Mixture(law, together, sum, weights, centres, spreads, plain, 0);
    }

    /** The variance of an error of scale 1; where it is infinite, a stand-in. */
    private static double tail(ErrorLaw law) {
        return law.isNormal() ? 1 : law.degreesOfFreedom() > 2 ? law.degreesOfFreedom() / (law.degreesOfFreedom() - 2.0) : 3;
    }

    /**
     * The mean.
     *
     * @return in units of the response
     */
    public double mean() {
        return mean;
    }

    /**
     * The standard deviation.
     *
     * @return in units of the response
     */
    public double sd() {
        return Math.sqrt(variance);
    }

    /**
     * The probability of a value of at most y.
     *
     * @param y any number
     * @return between 0 and 1
     */
    public double cumulative(double y) {
        double sum = 0;
        for (int k = 0; k < weight.length; k++) {
            if (spread[k] == 0) {
                sum += y >= centre[k] ? weight[k] : 0;
            } else {
                double z = (y - centre[k]) / spread[k];
                sum += weight[k] * (normal[k] ? Normal.cumulative(z) : law.cumulative(z));
            }
        }
        return Math.min(1, sum);
    }

    /**
     * The density at y.
     *
     * @param y any number
     * @return at least 0
     */
    public double density(double y) {
        double sum = 0;
        for (int k = 0; k < weight.length; k++) {
            if (spread[k] > 0) {
                double z = (y - centre[k]) / spread[k];
                sum += weight[k] / spread[k] * (normal[k] ? Normal.density(z) : law.density(z));
            }
        }
        return sum;
    }

    /**
     * The value below which the stated probability lies.
     *
     * @param probability above 0 and below 1
     * @return the quantile, to six digits of the distribution's own spread
     * @throws IllegalArgumentException if the probability is not between 0 and 1
     */
    public double quantile(double probability) {
        if (!(probability > 0 && probability < 1)) {
            throw new IllegalArgumentException("a probability must lie between 0 and 1, not " + probability);
        }
        if (singleScale > 0) {
            if (probability == 0.5) {
                return mean;
            }
            double ratio = Math.max(0, variance / (singleScale * singleScale) - tail(law));
            if (!law.isNormal() && SumQuantiles.have(law.degreesOfFreedom(), probability, ratio)) {
                return mean + singleScale * SumQuantiles.of(law.degreesOfFreedom(), probability, ratio);
            }
        }
        return search(probability);
    }

    /** The quantile by Newton's steps of at most two standard deviations, inside a bracket that shrinks. */
    double search(double probability) {
        double sd = sd();
        if (sd == 0) {
            return mean;
        }
        double low = Double.NEGATIVE_INFINITY;
        double high = Double.POSITIVE_INFINITY;
        double y = mean + sd * 0.8 * Normal.quantile(probability);
        for (int step = 0; step < 200; step++) {
            double miss = cumulative(y) - probability;
            if (miss > 0) {
                high = y;
            } else {
                low = y;
            }
            double next = y - Math.max(-2 * sd, Math.min(2 * sd, miss / density(y)));
            if (!(next >= low && next <= high)) {
                next = 0.5 * (low + high);
            }
            if (Math.abs(next - y) < 1e-6 * sd) {
                return next;
            }
            y = next;
        }
        return y;
    }

    /**
     * The points and weights of Gauss-Hermite quadrature for the standard normal law: the roots of the Hermite polynomial by Newton's
     * method from the outside in.
     */
    private static double[][] hermite(int n) {
        double[] point = new double[n];
        double[] weight = new double[n];
        double guess = Math.sqrt(4.0 * n + 2);
        for (int i = 0; i < n; i++) {
            double x = i == 0 ? guess : point[i - 1] - 0.01;
            for (int step = 0; step < 500; step++) {
                double before = 0;
                double now = 1;
                for (int k = 1; k <= n; k++) {
                    double next = x * now - (k - 1) * before;
                    before = now;
                    now = next;
                }
                double slope = n * before;
                // Roots already found are divided out, so that the search ends at the next one.
                double others = 0;
                for (int j = 0; j < i; j++) {
                    others += 1 / (x - point[j]);
                }
                double move = now / (slope - now * others);
                x -= move;
                point[i] = x;
                weight[i] = before;
                if (Math.abs(move) < 1e-14) {
                    break;
                }
            }
        }
        double factorial = 1;
        for (int k = 2; k <= n; k++) {
            factorial *= k;
        }
        for (int i = 0; i < n; i++) {
            weight[i] = factorial / (n * (double) n * weight[i] * weight[i]);
        }
        double sum = Arrays.stream(weight).sum();
        for (int i = 0; i < n; i++) {
            weight[i] /= sum;
        }
        return new double[][] {point, weight};
    }
}
