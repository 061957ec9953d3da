package swapworth.statistics;

import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.SplittableRandom;
import java.util.stream.IntStream;
import org.apache.commons.math3.linear.Array2DRowRealMatrix;
import org.apache.commons.math3.linear.LUDecomposition;
import org.apache.commons.math3.linear.RealMatrix;

/** Arithmetic on draws of which the i-th of each quantity belongs to the same state of the world. */
public final class Draws {
    /** From fewer draws for each thing learned, the range of what is learned comes out more than a twentieth too narrow. */
    private static final int DRAWS_A_THING = 10;
    /** The variance added to each of several quantities, as a share of the largest of theirs. */
    private static final double NOISE = 1e-9;

    /** The last ladder of normal quantiles that was asked for: most callers take the same number of draws again and again. */
    private static volatile double[] ladder = new double[0];

    private Draws() {
    }

    /**
     * Draws of a standard normal number, spread evenly over its law: quantiles in the middle of m equal steps, shuffled.
     *
     * @param count number of draws, m
     * @param seed seed of the order
     * @return m numbers
     */
    public static double[] normal(int count, long seed) {
        double[] ordered = ladder;
        if (ordered.length != count) {
            ordered = new double[count];
            for (int i = 0; i < count; i++) {
                ordered[i] = Normal.quantile((i + 0.5) / count);
            }
            ladder = ordered;
        }
        return shuffled(ordered, seed);
    }

    /**
     * The same values in another order: as if of another quantity with the same law, independent of the first.
     *
     * @param values the values
     * @param seed seed of the order
     * @return a copy
     */
    public static double[] shuffled(double[] values, long seed) {
        double[] copy = values.clone();
        shuffle(copy, seed);
        return copy;
    }

    private static void shuffle(double[] values, long seed) {
        SplittableRandom random = new SplittableRandom(seed);
        for (int i = values.length - 1; i > 0; i--) {
            int j = random.nextInt(i + 1);
            double kept = values[i];
            values[i] = values[j];
            values[j] = kept;
        }
    }

    /**
     * How often each of several quantities is the highest, draw by draw; of equal ones the first.
     *
     * @param quantities at least one, of as many draws each
     * @return for each its share of the draws, adding up to 1
     * @throws IllegalArgumentException if they are not as many
     */
    public static double[] shareHighest(List<double[]> quantities) {
        quantities.forEach(draws -> sameNumber(quantities.get(0), draws));
        double[] share = new double[quantities.size()];
        int count = quantities.get(0).length;
        for (int i = 0; i < count; i++) {
            int best = 0;
            for (int q = 1; q < share.length; q++) {
                best = quantities.get(q)[i] > quantities.get(best)[i] ? q : best;
            }
            share[best]++;
        }
        for (int q = 0; q < share.length; q++) {
            share[q] /= count;
        }
        return share;
    }

    /**
     * The mean.
     *
     * @param values at least one number
     * @return their mean
     */
    public static double mean(double[] values) {
        return Arrays.stream(values).average().orElseThrow();
    }

    /**
     * The covariance of two quantities.
     *
     * @param a m draws of one
     * @param b m draws of the other
     * @return with divisor m
     * @throws IllegalArgumentException if they are not as many
     */
    public static double covariance(double[] a, double[] b) {
        sameNumber(a, b);
        double meanA = mean(a);
        double meanB = mean(b);
        double sum = 0;
        for (int i = 0; i < a.length; i++) {
            sum += (a[i] - meanA) * (b[i] - meanB);
        }
        return sum / a.length;
    }

    /**
     * The covariances of several quantities.
     *
     * @param draws k quantities with m draws each
     * @return k by k
     */
    public static double[][] covariance(double[]... draws) {
        double[][] matrix = new double[draws.length][draws.length];
        for (int i = 0; i < draws.length; i++) {
            for (int j = 0; j <= i; j++) {
                matrix[i][j] = covariance(draws[i], draws[j]);
                matrix[j][i] = matrix[i][j];
            }
        }
        return matrix;
    }

    /**
     * Draws after something was observed, all observations at once: each draw moves by how far its own prediction, its own error
     * included, misses what was seen, times the regression of the quantity on the predictions. For normal laws that is the law given the
     * observations, and draw i keeps its state of the world. Source: J.-P. Chilès and P. Delfiner, Geostatistics, 2nd edition (2012),
     * conditional simulation (from memory).
     *
     * <p>The errors are known to be independent, so what goes together in their draws by chance is not taken for knowledge: with S the
     * covariance of the middles and D the variances of the errors on a diagonal, the regression is (S + D)^-1 times the covariance of the
     * quantity with the middles. So there may be more observations than draws. What the draws must bear is the number of different things
     * that the observations tell, the trace of S (S + D)^-1: close to 1 where all tell the same one, n where they have no errors.
     *
     * @param target m draws of a quantity
     * @param middles n predictions of observations with m draws each, without the errors of single observations
     * @param errors n errors with m draws each, independent of one another and of all else
     * @param observed n observations; where two without an error contradict each other it is their middle that counts
     * @return m draws
     * @throws IllegalArgumentException if the sizes differ, or if there are fewer than {@value #DRAWS_A_THING} draws for each thing that
     *     the observations tell: the draws would be fitted to their own chance, and their range would be too narrow
     */
    public static double[] given(double[] target, double[][] middles, double[][] errors, double... observed) {
        int n = observed.length;
        if (middles.length != n || errors.length != n) {
            throw new IllegalArgumentException(n + " observations meet " + middles.length + " middles and " + errors.length + " errors");
        }
        double[] moved = target.clone();
        double[][] covariance = covariance(middles);
        double[] own = new double[n];
        for (int k = 0; k < n; k++) {
            own[k] = covariance(errors[k], errors[k]);
            covariance[k][k] += own[k];
        }
        Optional<RealMatrix> inverse = inverse(covariance);
        if (inverse.isEmpty()) {
            return moved;
        }
        double told = IntStream.range(0, n).mapToDouble(k -> 1 - own[k] * inverse.get().getEntry(k, k)).sum();
        if (target.length < DRAWS_A_THING * told) {
            throw new IllegalArgumentException(target.length + " draws are too few for " + n + " observations that tell "
                    + Math.round(told) + " different things; at least " + DRAWS_A_THING + " draws for each are needed");
        }
        double[] gain = inverse.get().operate(with(target, middles));
        for (int i = 0; i < moved.length; i++) {
            for (int k = 0; k < n; k++) {
                moved[i] += gain[k] * (observed[k] - middles[k][i] - errors[k][i]);
            }
        }
        return moved;
    }

    /**
     * By how much of each of several others a quantity is followed best. Where some of them move together, as good as each other, what
     * they make together is what counts and not how it is shared among them.
     *
     * @param target m draws of a quantity
     * @param others k quantities with m draws each
     * @return k coefficients of least squares; zeros where none of the others moves
     */
    public static double[] regression(double[] target, double[]... others) {
        return inverse(covariance(others)).map(m -> m.operate(with(target, others))).orElse(new double[others.length]);
    }

    private static double[] with(double[] target, double[][] others) {
        return Arrays.stream(others).mapToDouble(p -> covariance(target, p)).toArray();
    }

    /** The inverse of a covariance with a trace of noise in each, so that there is one where some are the same; none where none moves. */
    private static Optional<RealMatrix> inverse(double[][] covariance) {
        double most = IntStream.range(0, covariance.length).mapToDouble(k -> covariance[k][k]).max().orElse(0);
        if (!(most > 0)) {
            return Optional.empty();
        }
        for (int k = 0; k < covariance.length; k++) {
            covariance[k][k] += NOISE * most;
        }
        return Optional.of(new LUDecomposition(new Array2DRowRealMatrix(covariance, false), 0).getSolver().getInverse());
    }

    /**
     * Equal draws from weighted ones: each draw moves to where its rank stands in the weighted law, so that the draws follow that law and
     * keep their order. Between two weighted values, each taken at the middle of its weight, it is a straight line.
     *
     * @param values m draws
     * @param weights m weights of at least 0 that do not all vanish
     * @return m draws, each equally likely
     * @throws IllegalArgumentException if they are not as many, a weight is below 0, or all vanish
     */
    public static double[] moved(double[] values, double[] weights) {
        sameNumber(values, weights);
        int m = values.length;
        int[] order = order(values);
        double sum = sum(weights);
        double[] at = new double[m];
        double[] sorted = new double[m];
        int kept = 0;
        double before = 0;
        for (int r = 0; r < m; r++) {
            double share = weights[order[r]] / sum;
            if (share > 0) {
                at[kept] = before + share / 2;
                sorted[kept++] = values[order[r]];
            }
            before += share;
        }
        double[] result = new double[m];
        int k = 0;
        for (int r = 0; r < m; r++) {
            double p = (r + 0.5) / m;
            while (k < kept && at[k] < p) {
                k++;
            }
            if (k == 0 || k == kept) {
                result[order[r]] = sorted[k == 0 ? 0 : kept - 1];
            } else {
                double step = at[k] - at[k - 1];
                result[order[r]] = sorted[k - 1] + (p - at[k - 1]) / step * (sorted[k] - sorted[k - 1]);
            }
        }
        return result;
    }

    private static double sum(double[] weights) {
        double sum = Arrays.stream(weights).sum();
        if (!(sum > 0 && sum < Double.POSITIVE_INFINITY) || Arrays.stream(weights).anyMatch(w -> w < 0)) {
            throw new IllegalArgumentException("weights must be at least 0 and not all 0; the sum of these is " + sum);
        }
        return sum;
    }

    private static void sameNumber(double[] a, double[] b) {
        if (a.length != b.length) {
            throw new IllegalArgumentException(a.length + " draws meet " + b.length);
        }
    }

    /** The numbers of the values from the least to the largest; equal ones by their number. */
    private static int[] order(double[] values) {
        return IntStream.range(0, values.length).boxed()
                .sorted((a, b) -> values[a] != values[b] ? Double.compare(values[a], values[b]) : Integer.compare(a, b))
                .mapToInt(Integer::intValue).toArray();
    }

    /**
     * How many equally weighted draws the weighted ones are worth: the square of the sum over the sum of squares.
     *
     * @param weights m weights of at least 0 that do not all vanish
     * @return between 1 and m
     * @throws IllegalArgumentException if a weight is below 0, or all vanish
     */
    public static double worth(double[] weights) {
        double sum = sum(weights);
        return sum * sum / Arrays.stream(weights).map(w -> w * w).sum();
    }

    /**
     * The logarithm of the density of Student's t with 4 degrees of freedom at scale 1, but for a constant.
     *
     * @param z distance from the middle in scales
     * @return log density
     */
    public static double logStudent4(double z) {
        return -2.5 * StrictMath.log1p(z * z / 4);
    }
}
