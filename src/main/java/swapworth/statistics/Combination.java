package swapworth.statistics;

import java.util.Arrays;
import java.util.SplittableRandom;
import java.util.stream.IntStream;
import org.apache.commons.math3.linear.Array2DRowRealMatrix;
import org.apache.commons.math3.linear.ArrayRealVector;
import org.apache.commons.math3.linear.DecompositionSolver;
import org.apache.commons.math3.linear.LUDecomposition;

/**
 * Several estimates of one quantity put together: how much each weighs, and how far they differ beyond what their own errors explain.
 *
 * <p>The model: estimates x = theta 1 + d + e, where the errors e are normal with a known covariance S (estimates that share data have
 * correlated errors), the departures d of the approaches are independent normal with a common spread t, theta is flat and t half-normal
 * with a stated scale. For a known t, with V = S + t^2 I, weights are a = V^-1 1 / (1' V^-1 1), the mean of theta is a'x and its
 * variance a'Va (generalised least squares); t has the density of its prior times |V|^-1/2 (1' V^-1 1)^-1/2 exp(-(x - theta)' V^-1 (x -
 * theta) / 2).
 * The spread t is integrated over a fixed grid: few estimates cannot tell it, and its moment estimate is often zero when they do differ.
 *
 * <p>A weight below zero would push the result away from an estimate on the strength of a covariance that is itself assumed. No weight
 * is let below zero: at each t by itself the weights are those of least variance among all that are not below zero, which leaves out
 * some of the estimates.
 *
 * <p>Source of the formulas: A. Gelman and others, Bayesian Data Analysis, 3rd edition (2013), section 5.4, with a covariance in place of
 * variances (from memory).
 */
public final class Combination {
    private static final int GRID = 320;
    /** How many scales of the prior the grid reaches. */
    private static final double REACH = 8;
    /** An estimate is taken in where that lowers the variance by more than this share, which is above what rounding makes. */
    private static final double LEAST_GAIN = 1e-12;

    private final double[] spread;
    private final double[] probability;
    private final double[][] weights;
    private final double[] means;
    private final double[] variances;

    private Combination(double[] spread, double[] probability, double[][] weights, double[] means, double[] variances) {
        this.spread = spread;
        this.probability = probability;
        this.weights = weights;
        this.means = means;
        this.variances = variances;
    }

    /** The combination at one stated spread. */
    record Given(double[] weights, double mean, double variance, double logLikelihood) {
    }

    /**
     * Puts estimates together, weighted by how sure each is and how far they share their errors.
     *
     * @param estimates k estimates, at least one
     * @param covariance k by k covariance of their errors
     * @param scale scale of the half-normal prior of the spread between them, above 0
     * @return the combination
     */
    public static Combination of(double[] estimates, double[][] covariance, double scale) {
        return over(estimates, covariance, scale, new double[0]);
    }

    /**
     * Puts estimates together with weights that the reader of the estimates chose. How far the estimates differ is found as otherwise.
     *
     * @param estimates k estimates, at least one
     * @param covariance k by k covariance of their errors
     * @param scale scale of the half-normal prior of the spread between them, above 0
     * @param weights k weights of at least 0 that do not all vanish; they are made to add up to 1
     * @return the combination
     */
    public static Combination weighted(double[] estimates, double[][] covariance, double scale, double... weights) {
        double sum = Arrays.stream(weights).sum();
        if (weights.length != estimates.length || !(sum > 0) || Arrays.stream(weights).anyMatch(w -> !(w >= 0))) {
            throw new IllegalArgumentException("weights must be as many as estimates, none below 0 and not all 0: "
                    + Arrays.toString(weights));
        }
        return over(estimates, covariance, scale, Arrays.stream(weights).map(w -> w / sum).toArray());
    }

    private static Combination over(double[] x, double[][] covariance, double scale, double[] chosen) {
        if (x.length == 0 || covariance.length != x.length || !(scale > 0)) {
            throw new IllegalArgumentException("a combination needs an estimate, a covariance of its size and a scale above 0");
        }
        double[] spread = new double[GRID];
        double[] log = new double[GRID];
        double[][] weights = new double[GRID][];
        double[] means = new double[GRID];
        double[] variances = new double[GRID];
        for (int g = 0; g < GRID; g++) {
            double t = REACH * scale * (g + 0.5) / GRID;
            Given given = given(x, covariance, t);
            double[] w = chosen.length > 0 ? chosen : given.weights();
            spread[g] = t;
            weights[g] = w;
            means[g] = dot(w, x);
            variances[g] = quadratic(w, covariance) + t * t * dot(w, w);
            // With one estimate nothing tells of the spread but its prior.
            log[g] = (x.length > 1 ? given.logLikelihood() : 0) - t * t / (2 * scale * scale);
        }
        double most = Arrays.stream(log).max().orElseThrow();
        double[] probability = Arrays.stream(log).map(l -> StrictMath.exp(l - most)).toArray();
        double sum = Arrays.stream(probability).sum();
        for (int g = 0; g < GRID; g++) {
            probability[g] /= sum;
        }
        return new Combination(spread, probability, weights, means, variances);
    }

    /** The combination at a spread between estimates that is known. */
    static Given given(double[] x, double[][] covariance, double spread) {
        int k = x.length;
        double[][] v = new double[k][];
        for (int i = 0; i < k; i++) {
            v[i] = covariance[i].clone();
            v[i][i] += spread * spread;
        }
        LUDecomposition whole = new LUDecomposition(new Array2DRowRealMatrix(v, false), 0);
        DecompositionSolver solver = whole.getSolver();
        double[] solved = solver.solve(new ArrayRealVector(k, 1.0)).toArray();
        double information = Arrays.stream(solved).sum();
        double centre = dot(solved, x) / information;
        double[] rest = Arrays.stream(x).map(a -> a - centre).toArray();
        double distance = dot(rest, solver.solve(new ArrayRealVector(rest)).toArray());
        double logLikelihood = -0.5 * (StrictMath.log(Math.abs(whole.getDeterminant())) + StrictMath.log(information) + distance);
        double[] w = notBelowZero(v, solved);
        return new Given(w, dot(w, x), quadratic(w, v), logLikelihood);
    }

    /**
     * The weights of least variance that are not below zero: z / sum z for the z &gt;= 0 that makes z'Vz / 2 - 1'z least. One estimate
     * after another is taken in that would still lower it; whoever falls below zero by that is left out, and may come back. Each round
     * ends lower than the one before, so that none returns to the same estimates. Source: C. Lawson and R. Hanson, Solving Least Squares
     * Problems (1974), chapter 23 (from memory).
     */
    private static double[] notBelowZero(double[][] v, double[] solved) {
        double[] z = Arrays.stream(solved).allMatch(s -> s >= 0) ? solved : taken(v);
        double sum = Arrays.stream(z).sum();
        return Arrays.stream(z).map(s -> s / sum).toArray();
    }

    private static double[] taken(double[][] v) {
        boolean[] in = new boolean[v.length];
        double[] z = new double[v.length];
        for (int next = bestLeftOut(v, z, in); next >= 0; next = bestLeftOut(v, z, in)) {
            in[next] = true;
            double[] goal = among(v, in);
            if (goal[next] <= 0) {
                // In exact arithmetic it would be above zero: what is left to gain is below rounding.
                return z;
            }
            for (int out = firstAtZero(z, goal, in); out >= 0; out = firstAtZero(z, goal, in)) {
                double part = z[out] / (z[out] - goal[out]);
                for (int i = 0; i < z.length; i++) {
                    z[i] += part * (goal[i] - z[i]);
                }
                in[out] = false;
                z[out] = 0;
                goal = among(v, in);
            }
            z = goal;
        }
        return z;
    }

    /** The estimate left out that would lower the variance most if it were taken in; -1 where none would. */
    private static int bestLeftOut(double[][] v, double[] z, boolean[] in) {
        int best = -1;
        double most = LEAST_GAIN;
        for (int i = 0; i < z.length; i++) {
            double gain = in[i] ? 0 : 1 - dot(v[i], z);
            if (gain > most) {
                most = gain;
                best = i;
            }
        }
        return best;
    }

    /** Which of those taken in comes to zero first on the way from z to a goal; -1 where none does. */
    private static int firstAtZero(double[] z, double[] goal, boolean[] in) {
        int first = -1;
        double least = 1;
        for (int i = 0; i < z.length; i++) {
            double part = in[i] && goal[i] <= 0 ? z[i] / (z[i] - goal[i]) : 1;
            if (part < least) {
                least = part;
                first = i;
            }
        }
        return first;
    }

    /** V^-1 1 of the estimates that are taken in; zero for the others. */
    private static double[] among(double[][] v, boolean[] in) {
        int[] kept = IntStream.range(0, in.length).filter(i -> in[i]).toArray();
        double[][] sub = new double[kept.length][kept.length];
        for (int a = 0; a < kept.length; a++) {
            for (int b = 0; b < kept.length; b++) {
                sub[a][b] = v[kept[a]][kept[b]];
            }
        }
        double[] part = new LUDecomposition(new Array2DRowRealMatrix(sub, false), 0).getSolver()
                .solve(new ArrayRealVector(kept.length, 1.0)).toArray();
        double[] all = new double[in.length];
        for (int a = 0; a < kept.length; a++) {
            all[kept[a]] = part[a];
        }
        return all;
    }

    private static double dot(double[] a, double[] b) {
        double sum = 0;
        for (int i = 0; i < a.length; i++) {
            sum += a[i] * b[i];
        }
        return sum;
    }

    private static double quadratic(double[] w, double[][] v) {
        double sum = 0;
        for (int i = 0; i < w.length; i++) {
            sum += w[i] * dot(w, v[i]);
        }
        return sum;
    }

    /**
     * The weights, averaged over what the spread may be.
     *
     * @return k numbers of at least 0 that add up to 1
     */
    public double[] weights() {
        double[] average = new double[weights[0].length];
        for (int g = 0; g < GRID; g++) {
            for (int i = 0; i < average.length; i++) {
                average[i] += probability[g] * weights[g][i];
            }
        }
        return average;
    }

    /**
     * The mean of the combined quantity.
     *
     * @return in the unit of the estimates
     */
    public double mean() {
        return dot(probability, means);
    }

    /**
     * The standard deviation of the combined quantity.
     *
     * @return in the unit of the estimates
     */
    public double sd() {
        double mean = mean();
        double sum = 0;
        for (int g = 0; g < GRID; g++) {
            sum += probability[g] * (variances[g] + (means[g] - mean) * (means[g] - mean));
        }
        return Math.sqrt(sum);
    }

    /**
     * The mean of the spread between the estimates, after they have spoken.
     *
     * @return in the unit of the estimates
     */
    public double spread() {
        return dot(probability, spread);
    }

    /**
     * The combined quantity, draw by draw: the i-th draws of the estimates, weighted, with a departure by the spread between them that
     * is drawn anew each time. What draw i stands for in the estimates it stands for in the result. Over the draws it has the mean and
     * the variance of the combination.
     *
     * @param draws k estimates with m draws each
     * @param seed seed of the generator
     * @return m draws
     */
    public double[] draws(double[][] draws, long seed) {
        SplittableRandom random = new SplittableRandom(seed);
        double[] result = new double[draws[0].length];
        for (int i = 0; i < result.length; i++) {
            double at = random.nextDouble();
            int g = Noise.place(probability, at);
            double[] w = weights[g];
            double sum = 0;
            for (int a = 0; a < w.length; a++) {
                sum += w[a] * draws[a][i];
            }
            result[i] = sum + spread[g] * Math.sqrt(dot(w, w)) * Noise.normal(random);
        }
        return result;
    }
}
