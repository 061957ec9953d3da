package swapworth.statistics;

import java.util.SplittableRandom;
import org.apache.commons.math3.linear.Array2DRowRealMatrix;
import org.apache.commons.math3.linear.EigenDecomposition;

/**
 * The law of the common spread t of some levels, given the levels: half-normal prior with a stated scale, times one normal density of
 * standard deviation t a level, on a fixed grid of t from a fiftieth of the scale to four scales.
 */
final class SpreadOfLevels {
    private static final int GRID = 80;
    private static final double LEAST = 0.02;
    private static final double MOST = 4;

    private final PriorBlock block;
    private final double[] spread = new double[GRID];
    /** The logarithm of prior times width of the step, less that of the normal densities' constants. */
    private final double[] constant = new double[GRID];

    SpreadOfLevels(PriorBlock block) {
        this.block = block;
        double scale = block.spreadAt(0);
        double step = StrictMath.log(MOST / LEAST) / GRID;
        for (int g = 0; g < GRID; g++) {
            double ratio = LEAST * StrictMath.exp((g + 0.5) * step);
            spread[g] = scale * ratio;
            constant[g] = StrictMath.log(ratio) - ratio * ratio / 2 - block.seen() * StrictMath.log(spread[g]);
        }
    }

    private double squares(double[] coefficients) {
        double sum = 0;
        for (int j = 0; j < block.seen(); j++) {
            double departure = coefficients[block.from() + j] - block.meanAt(j);
            sum += departure * departure;
        }
        return sum;
    }

    /** The law of the levels about a mode that was found with one spread, with that spread drawn and not held. */
    About about(Mode mode, double one) {
        return new About(mode, one);
    }

    /**
     * What is believed of the levels and of all else about a mode. Levels u are normal there, of mean m and covariance V; another spread t
     * adds d = 1 / t^2 - 1 / s^2 to the inverse of V, which is plain along the axes of V, and what is believed of all else given u stays as
     * it is. So a draw is moved along the axes to where its spread has it, and the rest of it goes along by its regression on u.
     */
    final class About {
        private final int levels = block.seen();
        /** Variances along the axes, and along which. */
        private final double[] variance;
        private final double[][] axis;
        /** The mean of the levels, from their prior mean, along each axis. */
        private final double[] mean;
        /** How much each coefficient goes along with a move along each axis. */
        private final double[][] along;
        /** How probable all spreads up to each are, a constant factor left out. */
        private final double[] reached = new double[GRID];
        /** What each spread adds to the inverse of V, d. */
        private final double[] more = new double[GRID];

        private About(Mode mode, double one) {
            double[] centre = mode.coefficients();
            double[][] reach = new double[levels][];
            for (int j = 0; j < levels; j++) {
                double[] unit = new double[centre.length];
                unit[block.from() + j] = 1;
                reach[j] = mode.factor().solve(unit);
            }
            double[][] own = new double[levels][levels];
            for (int j = 0; j < levels; j++) {
                for (int k = 0; k < levels; k++) {
                    own[j][k] = (reach[j][block.from() + k] + reach[k][block.from() + j]) / 2;
                }
            }
            EigenDecomposition axes = new EigenDecomposition(new Array2DRowRealMatrix(own, false));
            this.variance = axes.getRealEigenvalues();
            this.axis = new double[levels][];
            this.mean = new double[levels];
            this.along = new double[levels][centre.length];
            for (int a = 0; a < levels; a++) {
                axis[a] = axes.getEigenvector(a).toArray();
                // No level is less sure than its prior.
                variance[a] = Math.max(1e-12 * one * one, Math.min(one * one, variance[a]));
                for (int j = 0; j < levels; j++) {
                    mean[a] += axis[a][j] * (centre[block.from() + j] - block.meanAt(j));
                    for (int i = 0; i < centre.length; i++) {
                        along[a][i] += axis[a][j] * reach[j][i] / variance[a];
                    }
                }
            }
            addUp(one);
        }

        /** Goes through the grid of spreads, from the one at which the mode was found. */
        private void addUp(double one) {
            double sum = 0;
            for (int g = 0; g < GRID; g++) {
                more[g] = 1 / (spread[g] * spread[g]) - 1 / (one * one);
                double log = constant[g] + levels * StrictMath.log(one);
                for (int a = 0; a < levels; a++) {
                    double narrowed = 1 + more[g] * variance[a];
                    log -= (StrictMath.log(narrowed) + more[g] * mean[a] * mean[a] / narrowed) / 2;
                }
                sum += StrictMath.exp(log);
                reached[g] = sum;
            }
        }

        /** How probable the mode is with the spread drawn, over how probable it is with its own spread; the same factor for all modes. */
        double weight() {
            return reached[GRID - 1];
        }

        /** Moves a draw about the mode to a spread that is drawn for it, by a share of all spreads between 0 and 1. */
        void move(double[] coefficients, double share) {
            int g = 0;
            while (g + 1 < GRID && reached[g] < share * weight()) {
                g++;
            }
            double[] step = new double[levels];
            for (int a = 0; a < levels; a++) {
                double at = 0;
                for (int j = 0; j < levels; j++) {
                    at += axis[a][j] * (coefficients[block.from() + j] - block.meanAt(j));
                }
                double narrowed = 1 + more[g] * variance[a];
                step[a] = mean[a] / narrowed + (at - mean[a]) / Math.sqrt(narrowed) - at;
            }
            for (int a = 0; a < levels; a++) {
                for (int i = 0; i < coefficients.length; i++) {
                    coefficients[i] += step[a] * along[a][i];
                }
            }
        }
    }

    /** Draws a spread that belongs to the levels of a draw, and from it the level never seen. */
    void drawUnseen(double[] coefficients, SplittableRandom random) {
        double squares = squares(coefficients);
        double most = Double.NEGATIVE_INFINITY;
        double[] log = new double[GRID];
        for (int g = 0; g < GRID; g++) {
            log[g] = constant[g] - squares / (2 * spread[g] * spread[g]);
            most = Math.max(most, log[g]);
        }
        double sum = 0;
        for (int g = 0; g < GRID; g++) {
            log[g] = StrictMath.exp(log[g] - most);
            sum += log[g];
        }
        int g = Noise.place(log, random.nextDouble() * sum);
        coefficients[block.from() + block.seen()] = block.meanAt(block.seen()) + spread[g] * Noise.normal(random);
    }
}
