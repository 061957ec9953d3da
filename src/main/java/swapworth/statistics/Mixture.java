package swapworth.statistics;

import static java.util.Objects.requireNonNull;

import java.util.Arrays;
import org.jspecify.annotations.Nullable;

/**
 * A distribution that is a weighted mixture of sums of a normal part (what is unsure about the line) and an error part (how one
 * response scatters about it), one for each point of the hyperparameters.
 *
 * <p>The sum of a normal and an error of Student's t has no closed form. It is integrated over the normal part by Gauss-Hermite
 * quadrature with 3 points where it is small against the error part, 7 where it is not, 15 where it is larger; where the normal part is
 * more than three times the error scale the sum is taken for normal with the same variance. The distribution function is good to about
 * three digits in the last case and five in the others.
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

    /** The rule of a sum that is taken for normal. */
    private static final double[][] NONE = new double[2][0];

    private final ErrorLaw law;
    private final double mean;
    private final double variance;
    private final Sum first;
    /** Of a single sum the error scale; 0 for a mixture of several. */
    private final double singleScale;

    private Mixture(ErrorLaw law, double mean, double variance, Sum first, double singleScale) {
        this.law = law;
        this.mean = mean;
        this.variance = variance;
        this.first = first;
        this.singleScale = singleScale;
    }

    /** The sums of a mixture one after another: there is one as a rule, and millions of mixtures. */
    private static final class Sum {
        private final ErrorLaw law;
        private final double weight;
        private final double factor;
        private final double mean;
        private final double root;
        private final double scale;
        private final double[][] rule;
        private final @Nullable Sum next;

        /** A normal part and an error part; {@code whole} is the variance of their sum. */
        Sum(ErrorLaw law, double weight, double mean, double variance, double whole, double scale, @Nullable Sum next) {
            double ratio = scale > 0 ? variance / (scale * scale) : Double.POSITIVE_INFINITY;
            boolean plain = law.isNormal() || ratio > LARGE;
            this.law = law;
            this.weight = weight;
            this.factor = 1;
            this.mean = mean;
            this.rule = plain ? NONE : ratio > MIDDLING ? FIFTEEN : ratio > SMALL ? SEVEN : THREE;
            this.root = Math.sqrt(plain ? whole : variance);
            this.scale = scale;
            this.next = next;
        }

        private Sum(Sum same, double factor, @Nullable Sum next) {
            this.law = same.law;
            this.weight = same.weight;
            this.factor = factor;
            this.mean = same.mean;
            this.root = same.root;
            this.scale = same.scale;
            this.rule = same.rule;
            this.next = next;
        }

        /** The same sums, each weighing so many times as much, and one more. */
        Sum times(double times, Sum last) {
            return new Sum(this, factor * times, next == null ? last : next.times(times, last));
        }

        double addCumulative(double y, double before) {
            double sum = before;
            if (rule == NONE) {
                return root == 0 ? sum + (y >= mean ? weight * factor : 0) : sum + weight * factor * Normal.cumulative((y - mean) / root);
            }
            double[] points = rule[0];
            double[] weights = rule[1];
            for (int q = 0; q < points.length; q++) {
                sum += weight * weights[q] * factor * law.cumulative((y - (mean + root * points[q])) / scale);
            }
            return sum;
        }

        double addDensity(double y, double before) {
            double sum = before;
            if (rule == NONE) {
                return root == 0 ? sum : sum + weight * factor / root * Normal.density((y - mean) / root);
            }
            for (int q = 0; q < rule[0].length; q++) {
                sum += weight * rule[1][q] * factor / scale * law.density((y - (mean + root * rule[0][q])) / scale);
            }
            return sum;
        }
    }

    /**
     * One sum.
     *
     * @param law the law of the error part
     * @param mean the mean of the normal part
     * @param variance its variance
     * @param scale the scale of the error part, 0 where there is none
     */
    static Mixture of(ErrorLaw law, double mean, double variance, double scale) {
        double whole = variance + tail(law) * scale * scale;
        return new Mixture(law, mean, whole, new Sum(law, 1, mean, variance, whole, scale, null), scale);
    }

    /**
     * The mixture of k sums.
     *
     * @param law the law of the error part
     * @param weights k weights that add up to 1, at least one
     * @param means k means of the normal part
     * @param variances k variances of the normal part
     * @param scales k scales of the error part, all 0 where there is none
     */
    static Mixture of(ErrorLaw law, double[] weights, double[] means, double[] variances, double[] scales) {
        if (weights.length == 1) {
            return of(law, means[0], variances[0], scales[0]);
        }
        double mean = 0;
        for (int k = 0; k < weights.length; k++) {
            mean += weights[k] * means[k];
        }
        double tail = tail(law);
        double variance = 0;
        for (int k = 0; k < weights.length; k++) {
            double whole = variances[k] + tail * scales[k] * scales[k];
            variance += weights[k] * ((means[k] - mean) * (means[k] - mean) + whole);
        }
        Sum sum = null;
        for (int k = weights.length - 1; k >= 0; k--) {
            double whole = variances[k] + tail * scales[k] * scales[k];
            sum = new Sum(law, weights[k], means[k], variances[k], whole, scales[k], sum);
        }
        return new Mixture(law, mean, variance, requireNonNull(sum, "a mixture has a part"), 0);
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
        double together = (1 - otherwise) * mean + otherwise * itsMean;
        double sum = (1 - otherwise) * (variance + (mean - together) * (mean - together))
                + otherwise * (itsVariance + (itsMean - together) * (itsMean - together));
        return new Mixture(law, together, sum,
                first.times(1 - otherwise, new Sum(law, otherwise, itsMean, itsVariance, itsVariance, 0, null)), 0);
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
        for (Sum part = first; part != null; part = part.next) {
            sum = part.addCumulative(y, sum);
        }
        return Math.max(0, Math.min(1, sum));
    }

    /**
     * The density at y.
     *
     * @param y any number
     * @return at least 0
     */
    public double density(double y) {
        double sum = 0;
        for (Sum part = first; part != null; part = part.next) {
            sum = part.addDensity(y, sum);
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
        inside(probability);
        if (singleScale > 0 && probability == 0.5) {
            return mean;
        }
        double reach = tabulated(Math.max(probability, 1 - probability));
        return Double.isNaN(reach) ? search(probability) : probability < 0.5 ? mean - reach : mean + reach;
    }

    /**
     * The ends of the range that holds a value with the stated probability, as much left out above as below.
     *
     * @param probability above 0 and below 1
     * @return the lower and the upper end, two quantiles
     * @throws IllegalArgumentException if the probability is not between 0 and 1
     */
    public double[] range(double probability) {
        inside(probability);
        double reach = tabulated((1 + probability) / 2);
        return Double.isNaN(reach) ? new double[] {quantile((1 - probability) / 2), quantile((1 + probability) / 2)}
                : new double[] {mean - reach, mean + reach};
    }

    private static void inside(double probability) {
        if (!(probability > 0 && probability < 1)) {
            throw new IllegalArgumentException("a probability must lie between 0 and 1, not " + probability);
        }
    }

    /** How far above the mean of a single sum a quantile above it lies; not a number where no table says so. */
    private double tabulated(double upper) {
        if (!(singleScale > 0) || law.isNormal()) {
            return Double.NaN;
        }
        double ratio = Math.max(0, variance / (singleScale * singleScale) - tail(law));
        return singleScale * SumQuantiles.above(law.degreesOfFreedom(), upper, ratio);
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
