package swapworth.statistics;

import java.util.Arrays;
import java.util.stream.IntStream;

/**
 * The logarithm of the posterior density of the coefficients at stated hyperparameters: the rows, the law of their errors with a scale for
 * each row, and the prior at stated spreads. It answers with weights, slopes, gradients and factors at whatever coefficients b it is asked.
 *
 * <p>The information of a row is (nu + 1) / (nu + 3) times its weight: with the weights alone, the information that the missing
 * mixing variables of Student's t would bring is counted as if it were there, and ranges come out too narrow.
 */
final class LogPosterior {
    /** Below this smallest pivot fewer than eight digits would be left, and the orthogonal route is always taken. */
    private static final double LEAST_PIVOT = 1e-7;
    /** Above this smallest pivot the orthogonal route is never taken. */
    private static final double PLENTY = 1e-3;
    /** The upper tail of a bound far above all that is likely is not taken to be less: neither its logarithm nor a quotient by it fails. */
    private static final double LEAST_TAIL = 1e-300;

    final Design design;
    final Sample sample;
    final ErrorLaw law;
    final Spreads spreads;
    /** The error scale of each row. */
    final double[] scale;

    LogPosterior(Design design, Sample sample, ErrorLaw law, Spreads spreads, double[] scale) {
        this.design = design;
        this.sample = sample;
        this.law = law;
        this.spreads = spreads;
        this.scale = scale;
    }

    /** How far rows are weighed down whose residuals are large. */
    enum Phase { PLAIN, ABSOLUTE, LAW }

    /** One step of weighted least squares, and its size against the uncertainty of the coefficients. */
    record Step(double[] move, double size) {
    }

    /** Whether the mode is the solution of linear equations: normal errors, no gross ones, no bounds. */
    boolean isLinear() {
        return law.isNormal() && law.grossShare() == 0 && IntStream.range(0, design.rows()).noneMatch(sample::isBound);
    }

    /** The weight of each row, per squared unit of y, and its pull: the slope of its log density at the fitted value. */
    void weigh(double[] b, Phase phase, double[] weight, double[] pull) {
        double[] kept = design.forKept(b);
        Ranges.each(weight.length, (first, end) -> weigh(b, kept, phase, weight, pull, first, end));
    }

    /** The same of the rows from first up to end; {@code kept} is {@link Design#forKept} of b. */
    void weigh(double[] b, double[] kept, Phase phase, double[] weight, double[] pull, int first, int end) {
        for (int i = first; i < end; i++) {
            double residual = law.isNormal() ? design.residual(i, sample.response(i), b) : sample.response(i) - design.dotKept(i, kept);
            weigh(i, residual, phase, weight, pull);
        }
    }

    /** The same of row i, which has this residual. */
    void weigh(int i, double residual, Phase phase, double[] weight, double[] pull) {
        double s = scale[i];
        double z = residual / s;
        if (sample.isBound(i)) {
            weighBound(i, z, weight, pull);
            return;
        }
        double w = switch (phase) {
            case PLAIN -> 1;
            case ABSOLUTE -> 1 / Math.max(1, Math.abs(z));
            case LAW -> law.weight(z);
        };
        weight[i] = w / (s * s);
        pull[i] = weight[i] * residual;
    }

    /**
     * A response known only to lie above y: its log likelihood is the log of the upper tail. Its curvature is held above a third of
     * its slope per scale, so that one such row never asks for a step of more than three scales.
     */
    private void weighBound(int i, double z, double[] weight, double[] pull) {
        double s = scale[i];
        double hazard = hazard(z);
        pull[i] = hazard / s;
        weight[i] = Math.max(boundCurvature(z), hazard / 3) / (s * s);
    }

    private double hazard(double z) {
        return (1 - law.grossShare()) * law.density(z) / Math.max(law.above(z), LEAST_TAIL);
    }

    /**
     * The curvature of the log likelihood of a bound, per squared scale: negative where the bound lies so far above that the tail of
     * Student's t falls ever more slowly. There the row makes nothing surer, and its information is taken as none.
     */
    private double boundCurvature(double z) {
        double hazard = hazard(z);
        double slopeOfLogDensity = law.isNormal() ? -z : -(law.degreesOfFreedom() + 1.0) * z / (law.degreesOfFreedom() + z * z);
        return hazard * (hazard + slopeOfLogDensity);
    }

    /** What row i of such a weight adds to the precision of its fitted value, where its curvature is held above 0. */
    double heldInformation(int i, double weight) {
        return sample.isBound(i) ? weight : weight * law.information();
    }

    /** What each row of such weights adds to the precision of its fitted value at b. */
    double[] information(double[] b, double[] weight) {
        double[] information = new double[weight.length];
        for (int i = 0; i < weight.length; i++) {
            if (sample.isBound(i)) {
                double z = (sample.response(i) - design.dot(i, b)) / scale[i];
                information[i] = Math.max(0, boundCurvature(z)) / (scale[i] * scale[i]);
            } else {
                information[i] = weight[i] * law.information();
            }
        }
        return information;
    }

    /** The gradient at b, where the rows pull like this. */
    double[] gradient(double[] pull, double[] b) {
        double[] gradient = priorGradient(b);
        design.addTo(gradient, pull);
        return gradient;
    }

    /** The gradient of a linear fit as if in twice the precision, so that steps with a rounded factor still end at the mode. */
    double[] preciseGradient(double[] weight, double[] b) {
        double[] sum = priorGradient(b);
        double[] lost = new double[sum.length];
        for (int i = 0; i < weight.length; i++) {
            design.addResidual(sum, lost, i, sample.response(i), weight[i], b);
        }
        for (int j = 0; j < sum.length; j++) {
            sum[j] += lost[j];
        }
        return sum;
    }

    /** The gradient of the prior's part. */
    double[] priorGradient(double[] b) {
        double[] departure = new double[b.length];
        for (int j = 0; j < b.length; j++) {
            departure[j] = spreads.mean()[j] - b[j];
        }
        return spreads.times(departure);
    }

    /** One step of weighted least squares from b. */
    Step step(double[] weight, double[] pull, double[] b, double[] gradient) {
        Factor factor = factor(weight);
        double[] move = factor.smallestPivot() > LEAST_PIVOT ? factor.solve(gradient) : orthogonal(weight, pull, b).coefficients();
        double size = 0;
        for (int j = 0; j < move.length; j++) {
            size += move[j] * gradient[j];
        }
        return new Step(move, Math.sqrt(Math.max(0, size)));
    }

    /** The factor of the weighted cross-products of all rows and the precision of the prior. */
    private Factor factor(double[] weight) {
        return design.squares().with(matrix -> {
            spreads.addPrecision(matrix, design.border());
            design.addCrossProducts(matrix, weight);
            return Factor.of(matrix, design.border());
        });
    }

    /** The same by the orthogonal route where its smallest pivot is not to be trusted for a mode that is sought within a tolerance. */
    Factor factor(double[] weight, double tolerance) {
        Factor factor = factor(weight);
        return factor.smallestPivot() > trusted(tolerance) ? factor
                : orthogonal(weight, new double[weight.length], spreads.mean()).factor();
    }

    /** The smallest pivot with which sums of cross-products keep as many digits as a tolerance asks. */
    private static double trusted(double tolerance) {
        return Math.max(LEAST_PIVOT, Math.min(PLENTY, 1e-15 / tolerance));
    }

    /** The same step without cross-products: rows times the roots of their weights, and the prior as further rows. */
    private OrthogonalFactor.Solution orthogonal(double[] weight, double[] pull, double[] b) {
        int n = design.rows();
        int p = design.columns();
        double[] precision = new double[p * p];
        spreads.addPrecision(precision, Border.none(p));
        Cholesky prior = Cholesky.of(withUnitsOnEmptyRows(precision, p), p);
        // Relative to the largest weight: rows of equal weight enter as they are and lose no digit.
        double most = Math.max(Arrays.stream(weight).max().orElse(1), Double.MIN_NORMAL);
        double unit = Math.sqrt(most);
        double[][] rows = new double[n + p][p];
        double[] right = new double[n + p];
        for (int i = 0; i < n; i++) {
            double root = Math.sqrt(weight[i] / most);
            design.addTo(rows[i], i, root);
            right[i] = root == 0 ? 0 : pull[i] / (root * most);
        }
        int used = n;
        for (int j = 0; j < p; j++) {
            int begins = prior.column(j);
            if (precision[begins * p + begins] > 0) {
                prior.copyUpperRow(j, rows[used]);
                for (int k = 0; k < p; k++) {
                    rows[used][k] /= unit;
                    right[used] += rows[used][k] * (spreads.mean()[k] - b[k]);
                }
                used++;
            }
        }
        OrthogonalFactor.Solution solution =
                OrthogonalFactor.solve(Arrays.copyOf(rows, used), Arrays.copyOf(right, used), this::nameOf);
        return new OrthogonalFactor.Solution(solution.coefficients(), solution.factor().times(unit));
    }

    private static double[] withUnitsOnEmptyRows(double[] precision, int p) {
        double[] copy = precision.clone();
        for (int j = 0; j < p; j++) {
            if (copy[j * p + j] == 0) {
                copy[j * p + j] = 1;
            }
        }
        return copy;
    }

    private String nameOf(int column) {
        for (PriorBlock block : spreads.blocks()) {
            if (column >= block.from() && column < block.from() + block.count()) {
                return block.name();
            }
        }
        return "column " + column;
    }

    /** The fitted value of each row at b. */
    double[] fitted(double[] b) {
        double[] fitted = new double[design.rows()];
        double[] kept = design.forKept(b);
        for (int i = 0; i < fitted.length; i++) {
            fitted[i] = design.dotKept(i, kept);
        }
        return fitted;
    }

    /** The log density of all rows at b. */
    double logLikelihood(double[] b) {
        double[] sum = new double[1];
        double[] kept = design.forKept(b);
        Ranges.sum(design.rows(), sum, (sums, first, end) -> {
            for (int i = first; i < end; i++) {
                double z = (sample.response(i) - design.dotKept(i, kept)) / scale[i];
                sums[0] += sample.isBound(i) ? Math.log(Math.max(law.above(z), LEAST_TAIL))
                        : law.logLikelihood(z) - Math.log(scale[i]);
            }
        });
        return sum[0];
    }
}
