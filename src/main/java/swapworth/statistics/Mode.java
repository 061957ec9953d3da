package swapworth.statistics;

import java.util.Arrays;
import java.util.Optional;

/**
 * The most likely coefficients at stated hyperparameters, found by iterated weighted least squares, and the shape of the posterior
 * about them.
 *
 * <p>The information of a row is (nu + 1) / (nu + 3) times its weight: with the weights alone, the information that the missing
 * mixing variables of Student's t would bring is counted as if it were there, and ranges come out too narrow.
 */
final class Mode {
    /** Below this smallest pivot fewer than eight digits would be left, and the orthogonal route is always taken. */
    private static final double LEAST_PIVOT = 1e-7;
    /** Above this smallest pivot the orthogonal route is never taken. */
    private static final double PLENTY = 1e-3;
    /** Steps of a linear fit: each wins back about seven digits or more, its gradient being taken in twice the precision. */
    private static final int LINEAR_STEPS = 4;
    private static final int MOST_STEPS = 200;
    private static final int MOST_CHEAP_STEPS = 40;
    /** A step whose square is more than this share of that of the one before: a factor of its own gets there sooner. */
    private static final double TOO_SLOW = 0.5;
    /** Steps from a cold start before the law of the errors is taken as it is. */
    private static final int COLD_STEPS = 4;
    private static final int FEWEST_COLD_STEPS = 3;

    private final Design design;
    private final Sample sample;
    private final ErrorLaw law;
    private final Spreads spreads;
    private final double[] scale;
    private final double[] coefficients;
    private final double[] pull;
    private final double[] information;
    private final Factor factor;

    private Mode(Design design, Sample sample, ErrorLaw law, Spreads spreads, double[] scale, double[] coefficients,
            double[] pull, double[] information, Factor factor) {
        this.design = design;
        this.sample = sample;
        this.law = law;
        this.spreads = spreads;
        this.scale = scale;
        this.coefficients = coefficients;
        this.pull = pull;
        this.information = information;
        this.factor = factor;
    }

    /**
     * Finds the mode.
     *
     * @param scale the error scale of each row
     * @param start coefficients to begin with; an empty array for a cold start
     * @param tolerance the steps end when one moves the coefficients by less than this share of their own uncertainty
     */
    static Mode find(Design design, Sample sample, ErrorLaw law, Spreads spreads, double[] scale, double[] start, double tolerance) {
        boolean linear = law.isNormal() && law.grossShare() == 0
                && java.util.stream.IntStream.range(0, design.rows()).noneMatch(sample::isBound);
        Search search = new Search(design, sample, law, spreads, scale, start.length == 0 ? spreads.mean() : start);
        if (start.length == 0 && !linear) {
            search.begin(COLD_STEPS);
        }
        for (int step = 0; step < (linear ? LINEAR_STEPS : MOST_STEPS); step++) {
            double size = linear ? search.linearStep() : search.step(Phase.LAW, 1 + 0.8 * (1 - law.information()));
            if (!linear && size <= tolerance) {
                break;
            }
        }
        return search.ended().withOwnFactor(tolerance);
    }

    /** The same from a cold start where the rows are many, and a factor costs as much as several steps with one from nearby. */
    static Mode findOfMany(Design design, Sample sample, ErrorLaw law, Spreads spreads, double[] scale, double tolerance) {
        Search search = new Search(design, sample, law, spreads, scale, spreads.mean());
        search.begin(FEWEST_COLD_STEPS);
        return search.ended().moved(spreads, scale, tolerance);
    }

    /** Steps of weighted least squares, each with a factor of its own. */
    private static final class Search {
        private final Design design;
        private final Sample sample;
        private final ErrorLaw law;
        private final Spreads spreads;
        private final double[] scale;
        private final double[] weight;
        private final double[] pull;
        private final double[] b;

        Search(Design design, Sample sample, ErrorLaw law, Spreads spreads, double[] scale, double[] start) {
            this.design = design;
            this.sample = sample;
            this.law = law;
            this.spreads = spreads;
            this.scale = scale;
            this.weight = new double[design.rows()];
            this.pull = new double[weight.length];
            this.b = start.clone();
        }

        /** The first steps from a cold start: plain, then with absolute-value weights, before far rows may be weighed down. */
        void begin(int steps) {
            for (int step = 0; step < steps; step++) {
                step(step == 0 ? Phase.PLAIN : Phase.ABSOLUTE, 1);
            }
        }

        /** One step, some times as long as least squares would have it; returns its size against the uncertainty of the coefficients. */
        double step(Phase phase, double length) {
            weigh(design, sample, law, scale, b, phase, weight, pull);
            return step(gradient(design, spreads, pull, b), length);
        }

        double linearStep() {
            weigh(design, sample, law, scale, b, Phase.LAW, weight, pull);
            return step(preciseGradient(design, sample, spreads, weight, b), 1);
        }

        private double step(double[] gradient, double length) {
            Step next = Mode.step(design, spreads, weight, pull, b, gradient);
            for (int j = 0; j < b.length; j++) {
                b[j] += length * next.move[j];
            }
            return next.size;
        }

        Mode ended() {
            return at(design, sample, law, spreads, scale, b, Cholesky.of(new double[0], 0));
        }
    }

    /** The posterior's shape about coefficients that are the mode, with a factor that was found before. */
    private static Mode at(Design design, Sample sample, ErrorLaw law, Spreads spreads, double[] scale, double[] b, Factor factor) {
        int n = design.rows();
        double[] pull = new double[n];
        double[] information = design.perRow().with(weight -> {
            weigh(design, sample, law, scale, b, Phase.LAW, weight, pull);
            return information(sample, law, weight);
        });
        for (int i = 0; i < n; i++) {
            if (sample.isBound(i)) {
                double z = (sample.response(i) - design.dot(i, b)) / scale[i];
                information[i] = Math.max(0, boundCurvature(law, z)) / (scale[i] * scale[i]);
            }
        }
        return new Mode(design, sample, law, spreads, scale, b, pull, information, factor);
    }

    /**
     * The mode at other hyperparameters not far from these: steps with one factor, found where they begin, for they cost a small part of
     * a new one. Where they do not settle soon, the mode is found by full steps.
     *
     * @param changed the prior at the other hyperparameters
     * @param changedScale the error scale of each row there
     * @param tolerance as for {@link #find}
     */
    Mode moved(Spreads changed, double[] changedScale, double tolerance) {
        return moved(design, sample, changed, changedScale, tolerance);
    }

    /** The same by the factor of this mode, unless the other hyperparameters turn out to be too far for that. */
    Mode movedLittle(Spreads changed, double[] changedScale, double tolerance) {
        return toward(design, sample, changed, changedScale, factor, tolerance, TOO_SLOW).map(mode -> mode.withOwnFactor(tolerance))
                .orElseGet(() -> moved(changed, changedScale, tolerance));
    }

    /** The mode with other rows of the same columns, whose coefficients are not far from these. */
    Mode moved(Design rows, Sample responses, Spreads changed, double[] changedScale, double tolerance) {
        return movedNearly(rows, responses, changed, changedScale, tolerance).map(mode -> mode.withOwnFactor(tolerance))
                .orElseGet(() -> find(rows, responses, law, changed, changedScale, coefficients, tolerance));
    }

    /** The mode at other hyperparameters with the factor found where the steps began: for one that is to be moved again. */
    Mode movedOnTheWay(Spreads changed, double[] changedScale, double tolerance) {
        return movedNearly(design, sample, changed, changedScale, tolerance).orElseGet(() -> moved(changed, changedScale, tolerance));
    }

    private Optional<Mode> movedNearly(Design rows, Sample responses, Spreads changed, double[] changedScale, double tolerance) {
        return law.isNormal() ? Optional.empty()
                : toward(rows, responses, changed, changedScale, factorWith(rows, responses, changed, changedScale, tolerance), tolerance);
    }

    /** The factor at these coefficients with other rows of the same columns. */
    Factor factorWith(Design rows, Sample responses, Spreads changed, double[] changedScale, double tolerance) {
        return factorWith(rows, responses, changed, changedScale, tolerance, 1);
    }

    /** About the same factor, one row out of so many standing for all of them: near enough to take steps with. */
    Factor factorWith(Design rows, Sample responses, Spreads changed, double[] changedScale, double tolerance, int every) {
        return rows.perRow().with(weight -> {
            rows.perRow().lendTo(pull -> weigh(rows, responses, law, changedScale, coefficients, Phase.LAW, weight, pull));
            for (int i = 0; i < weight.length; i++) {
                weight[i] = i % every == 0 ? every * information(i, responses, law, weight) : 0;
            }
            return factor(rows, changed, weight, trusted(tolerance));
        });
    }

    /**
     * The mode as steps with a stated factor find it, that factor standing for its own; empty where they do not settle soon, and with
     * normal errors, whose full steps are closer. With many rows a factor costs as much as a dozen steps.
     */
    Optional<Mode> toward(Design rows, Sample responses, Spreads changed, double[] changedScale, Factor near, double tolerance) {
        return toward(rows, responses, changed, changedScale, near, tolerance, 1);
    }

    /** The same, given up as soon as the square of a step is not below a share of that of the step before. */
    private Optional<Mode> toward(Design rows, Sample responses, Spreads changed, double[] changedScale, Factor near, double tolerance,
            double share) {
        if (law.isNormal()) {
            return Optional.empty();
        }
        Room room = rows.perRow();
        return room.with(weight -> room.with(slope -> toward(rows, responses, changed, changedScale, near, tolerance, share, weight,
                slope)));
    }

    /** The same with room for a weight and a slope of each row. */
    private Optional<Mode> toward(Design rows, Sample responses, Spreads changed, double[] changedScale, Factor near, double tolerance,
            double share, double[] weight, double[] slope) {
        int p = coefficients.length;
        double[] b = coefficients.clone();
        double before = Double.POSITIVE_INFINITY;
        for (int step = 0; step < MOST_CHEAP_STEPS; step++) {
            double[] gradient = priorGradient(changed, b);
            double[] kept = rows.forKept(b);
            rows.sum(gradient, (sums, first, end) -> {
                weigh(rows, responses, law, changedScale, b, kept, Phase.LAW, weight, slope, first, end);
                for (int i = first; i < end; i++) {
                    rows.addKept(sums, i, slope[i]);
                }
            });
            double[] move = near.solve(gradient);
            double size = 0;
            for (int j = 0; j < p; j++) {
                size += move[j] * gradient[j];
            }
            if (!(size < share * before)) {
                break;
            }
            before = size;
            for (int j = 0; j < p; j++) {
                b[j] += move[j];
            }
            if (Math.sqrt(Math.max(0, size)) <= tolerance) {
                return Optional.of(at(rows, responses, law, changed, changedScale, b, near));
            }
        }
        return Optional.empty();
    }

    /** The same mode with a factor found at its own coefficients. */
    Mode withOwnFactor(double tolerance) {
        return new Mode(design, sample, law, spreads, scale, coefficients, pull, information,
                factor(design, spreads, information, trusted(tolerance)));
    }

    private static double[] information(Sample sample, ErrorLaw law, double[] weight) {
        double[] information = new double[weight.length];
        for (int i = 0; i < weight.length; i++) {
            information[i] = information(i, sample, law, weight);
        }
        return information;
    }

    private static double information(int i, Sample sample, ErrorLaw law, double[] weight) {
        return sample.isBound(i) ? weight[i] : weight[i] * law.information();
    }

    /** The smallest pivot with which sums of cross-products keep as many digits as a tolerance asks. */
    private static double trusted(double tolerance) {
        return Math.max(LEAST_PIVOT, Math.min(PLENTY, 1e-15 / tolerance));
    }

    private enum Phase { PLAIN, ABSOLUTE, LAW }

    private record Step(double[] move, double size) {
    }

    /**
     * The weight of each row, per squared unit of y, and its pull: the slope of its log density at the fitted value.
     */
    private static void weigh(Design design, Sample sample, ErrorLaw law, double[] scale, double[] b, Phase phase, double[] weight,
            double[] pull) {
        double[] kept = design.forKept(b);
        Ranges.each(weight.length, (first, end) -> weigh(design, sample, law, scale, b, kept, phase, weight, pull, first, end));
    }

    private static void weigh(Design design, Sample sample, ErrorLaw law, double[] scale, double[] b, double[] kept, Phase phase,
            double[] weight, double[] pull, int first, int end) {
        for (int i = first; i < end; i++) {
            double residual = law.isNormal() ? design.residual(i, sample.response(i), b) : sample.response(i) - design.dotKept(i, kept);
            weigh(residual, sample, law, scale[i], phase, i, weight, pull);
        }
    }

    private static void weigh(double residual, Sample sample, ErrorLaw law, double s, Phase phase, int i, double[] weight,
            double[] pull) {
        double z = residual / s;
        if (sample.isBound(i)) {
            bounded(law, z, s, i, weight, pull);
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
    private static void bounded(ErrorLaw law, double z, double s, int i, double[] weight, double[] pull) {
        double hazard = hazard(law, z);
        pull[i] = hazard / s;
        weight[i] = Math.max(boundCurvature(law, z), hazard / 3) / (s * s);
    }

    private static double hazard(ErrorLaw law, double z) {
        return (1 - law.grossShare()) * law.density(z) / Math.max(law.above(z), 1e-300);
    }

    /**
     * The curvature of the log likelihood of a bound, per squared scale: negative where the bound lies so far above that the tail of
     * Student's t falls ever more slowly. There the row makes nothing surer, and its information is taken as none.
     */
    private static double boundCurvature(ErrorLaw law, double z) {
        double hazard = hazard(law, z);
        double slopeOfLogDensity = law.isNormal() ? -z : -(law.degreesOfFreedom() + 1.0) * z / (law.degreesOfFreedom() + z * z);
        return hazard * (hazard + slopeOfLogDensity);
    }

    /** The gradient of a linear fit as if in twice the precision, so that steps with a rounded factor still end at the mode. */
    private static double[] preciseGradient(Design design, Sample sample, Spreads spreads, double[] weight, double[] b) {
        double[] sum = priorGradient(spreads, b);
        double[] lost = new double[sum.length];
        for (int i = 0; i < weight.length; i++) {
            design.addResidual(sum, lost, i, sample.response(i), weight[i], b);
        }
        for (int j = 0; j < sum.length; j++) {
            sum[j] += lost[j];
        }
        return sum;
    }

    /** One step of weighted least squares from b. */
    private static Step step(Design design, Spreads spreads, double[] weight, double[] pull, double[] b, double[] gradient) {
        Factor factor = factor(design, spreads, weight);
        double[] move = factor.smallestPivot() > LEAST_PIVOT ? factor.solve(gradient)
                : orthogonal(design, spreads, weight, pull, b).coefficients();
        double size = 0;
        for (int j = 0; j < move.length; j++) {
            size += move[j] * gradient[j];
        }
        return new Step(move, Math.sqrt(Math.max(0, size)));
    }

    /** The factor of the weighted cross-products of all rows and the precision of the prior. */
    private static Factor factor(Design design, Spreads spreads, double[] weight) {
        return design.squares().with(matrix -> {
            spreads.addPrecision(matrix, design.border());
            design.addCrossProducts(matrix, weight);
            return Factor.of(matrix, design.border());
        });
    }

    /** The same by the orthogonal route where its smallest pivot is not to be trusted. */
    private static Factor factor(Design design, Spreads spreads, double[] weight, double trusted) {
        Factor factor = factor(design, spreads, weight);
        return factor.smallestPivot() > trusted ? factor
                : orthogonal(design, spreads, weight, new double[weight.length], spreads.mean()).factor();
    }

    private static double[] gradient(Design design, Spreads spreads, double[] pull, double[] b) {
        double[] gradient = priorGradient(spreads, b);
        design.addTo(gradient, pull);
        return gradient;
    }

    private static double[] priorGradient(Spreads spreads, double[] b) {
        double[] departure = new double[b.length];
        for (int j = 0; j < b.length; j++) {
            departure[j] = spreads.mean()[j] - b[j];
        }
        return spreads.times(departure);
    }

    /** The same step without cross-products: rows times the roots of their weights, and the prior as further rows. */
    private static OrthogonalFactor.Solution orthogonal(Design design, Spreads spreads, double[] weight, double[] pull, double[] b) {
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
                OrthogonalFactor.solve(Arrays.copyOf(rows, used), Arrays.copyOf(right, used), j -> nameOf(spreads, j));
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

    private static String nameOf(Spreads spreads, int column) {
        for (PriorBlock block : spreads.blocks()) {
            if (column >= block.from() && column < block.from() + block.count()) {
                return block.name();
            }
        }
        return "column " + column;
    }

    Design design() {
        return design;
    }

    double[] coefficients() {
        return coefficients;
    }

    Spreads spreads() {
        return spreads;
    }

    Factor factor() {
        return factor;
    }

    double[] scale() {
        return scale;
    }

    /** The slope of the log density of row i at its fitted value. */
    double pull(int i) {
        return pull[i];
    }

    /** By how much the response of row i, which is no bound, lies above its fitted value: its pull over its weight. */
    double residual(int i) {
        return information[i] > 0 ? pull[i] * law.information() / information[i] : sample.response(i) - design.dot(i, coefficients);
    }

    /** The chance that row i, which has this residual, is no gross error. */
    double chanceOfNoGrossError(int i, double residual) {
        return law.chanceOfNoGrossError(residual / scale[i]);
    }

    /** What row i adds to the precision of its fitted value. */
    double information(int i) {
        return information[i];
    }

    /** The fitted value of each row. */
    double[] fitted() {
        double[] fitted = new double[pull.length];
        double[] kept = design.forKept(coefficients);
        for (int i = 0; i < fitted.length; i++) {
            fitted[i] = design.dotKept(i, kept);
        }
        return fitted;
    }

    /** The gradient of the log posterior, which is 0 but for how closely the mode was sought. */
    double[] gradient() {
        return gradient(design, spreads, pull, coefficients);
    }

    /** The slope of the log density of each row at other fitted values. */
    void slopesAt(double[] fitted, double[] weight, double[] slope) {
        for (int i = 0; i < fitted.length; i++) {
            weigh(sample.response(i) - fitted[i], sample, law, scale[i], Phase.LAW, i, weight, slope);
        }
    }

    /** The log density of all rows at the mode. */
    double logLikelihood() {
        double[] sum = new double[1];
        double[] kept = design.forKept(coefficients);
        Ranges.sum(pull.length, sum, (sums, first, end) -> {
            for (int i = first; i < end; i++) {
                double z = (sample.response(i) - design.dotKept(i, kept)) / scale[i];
                sums[0] += sample.isBound(i) ? Math.log(Math.max(law.above(z), 1e-300))
                        : law.logLikelihood(z) - Math.log(scale[i]);
            }
        });
        return sum[0];
    }

    /** The log marginal likelihood of the rows by Laplace's method; exact for normal errors and a proper prior. */
    double logMarginal() {
        int p = design.columns();
        return logLikelihood() + spreads.logDensity(coefficients) + 0.5 * p * Math.log(2 * Math.PI) - 0.5 * factor.logDeterminant();
    }
}
