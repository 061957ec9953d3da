package swapworth.statistics;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.SplittableRandom;
import java.util.stream.IntStream;
import org.jspecify.annotations.Nullable;

/**
 * What is believed of the coefficients once the rows have spoken: for each point of the hyperparameters a normal law about the mode,
 * and a weight. Every answer is a question about a contrast of coefficients, so that what moves two answers together is counted.
 *
 * <p>Immutable; safe for use by several threads.
 */
public final class Posterior {
    /** A refit ends when its last step moved the coefficients by a hundredth of their own uncertainty (squared). */
    private static final double SETTLED = 1e-4;

    private final ErrorLaw law;
    private final Design design;
    private final Sample sample;
    private final List<Component> components;

    private Posterior(ErrorLaw law, Design design, Sample sample, List<Component> components) {
        this.law = law;
        this.design = design;
        this.sample = sample;
        this.components = components;
    }

    /** A posterior from modes, with the error scale, its growth and the weight at each. */
    static Posterior of(ErrorLaw law, Design design, Sample sample, List<Mode> modes, double[] scales, double[] growths,
            double[] weights) {
        Component[] components = new Component[weights.length];
        java.util.stream.IntStream.range(0, weights.length).parallel().forEach(k -> components[k] = new Component(modes.get(k), scales[k],
                growths[k], weights[k]));
        return new Posterior(law, design, sample, List.of(components));
    }

    /** How a posterior changes when rows are left out. */
    public enum LeaveOut {
        /** One step from the mode with the other rows' weights as they were: closed form. */
        CLOSED_FORM,
        /** Steps until the other rows' weights have settled, from the mode with all rows. */
        REFIT
    }

    /** The normal law about a mode with all rows: V, its covariance matrix, and V P V, what of it the prior P holds. */
    private static final class Shape {
        private final Mode mode;
        private final double[] covariance;
        private volatile double @Nullable [] held;
        private volatile @Nullable OnRows onRows;

        Shape(Mode mode) {
            this.mode = mode;
            this.covariance = mode.factor().inverse();
        }

        int p() {
            return mode.coefficients().length;
        }

        double covariance(SparseRow x, SparseRow y) {
            return x.between(covariance, p(), y);
        }

        /** V P V in full, made when first asked for: the same whichever thread makes it. */
        double[] held() {
            double[] made = held;
            if (made == null) {
                made = new double[covariance.length];
                int p = p();
                double[] all = made;
                IntStream.range(0, p).parallel().forEach(i -> addHeld(i, all));
                for (int i = 0; i < p; i++) {
                    for (int j = 0; j < i; j++) {
                        made[j * p + i] = made[i * p + j];
                    }
                }
                held = made;
            }
            return made;
        }

        /** Row i of V P V up to its diagonal. */
        private void addHeld(int i, double[] made) {
            int p = p();
            double[] column = mode.spreads().times(Arrays.copyOfRange(covariance, i * p, (i + 1) * p));
            int row = i * p;
            for (int k = 0; k < p; k++) {
                double ck = column[k];
                if (ck != 0) {
                    int other = k * p;
                    for (int j = 0; j <= i; j++) {
                        made[row + j] += ck * covariance[other + j];
                    }
                }
            }
        }

        /** The law of the fitted values of the rows, made when first asked for: the same whichever thread makes it. */
        OnRows onRows(Design design) {
            OnRows made = onRows;
            if (made == null) {
                made = new OnRows(this, design);
                onRows = made;
            }
            return made;
        }

        /** Adds V times a full vector. */
        void addTimes(double[] x, double[] product, int at) {
            int p = p();
            for (int i = 0; i < p; i++) {
                double xi = x[i];
                if (xi != 0) {
                    for (int j = 0; j < p; j++) {
                        product[at + j] += xi * covariance[i * p + j];
                    }
                }
            }
        }
    }

    /** A posterior as the rows of its design see it: their fitted values at the mode, X b, and the covariances of these, X V X'. */
    private static final class OnRows {
        private final int n;
        private final double[] fitted;
        private final double[] covariance;
        /** The gradient at the mode, r, which is 0 but for how closely it was sought; X V r, and r' V r. */
        private final double[] gradient;
        private final double[] rest;
        private final double restSize;

        OnRows(Shape shape, Design design) {
            this.n = design.rows();
            this.fitted = shape.mode.fitted();
            this.covariance = new double[n * n];
            this.gradient = shape.mode.gradient();
            double[] step = new double[gradient.length];
            shape.addTimes(gradient, step, 0);
            this.rest = new double[n];
            for (int i = 0; i < n; i++) {
                double[] times = design.row(i).times(shape.covariance, step.length);
                for (int j = 0; j <= i; j++) {
                    covariance[i * n + j] = design.dot(j, times);
                    covariance[j * n + i] = covariance[i * n + j];
                }
                rest[i] = design.dot(i, step);
            }
            double size = 0;
            for (int j = 0; j < step.length; j++) {
                size += gradient[j] * step[j];
            }
            this.restSize = size;
        }

        /** Adds the covariances of row i, times a factor, to n numbers. */
        void add(double factor, int i, double[] sum) {
            int from = i * n;
            for (int j = 0; j < n; j++) {
                sum[j] += factor * covariance[from + j];
            }
        }
    }

    /**
     * The posterior at one point of the hyperparameters, possibly with rows left out. Without them the covariance is V + V X' K X V,
     * where X holds the rows left out, and the coefficients move by V X' d; in closed form no vector of p numbers is written out for it.
     */
    private static final class Component {
        private final Shape shape;
        private final Mode mode;
        private final double scale;
        private final double growth;
        private final double weight;
        private final double[] coefficients;
        private final SparseRow[] left;
        private final double[][] core;
        private final double[] shift;
        /** V and V P V between the rows left out, which are what is asked about most; the second is made when first asked for. */
        private final double[][] among;
        private volatile double @Nullable [][] heldAmong;

        Component(Mode mode, double scale, double growth, double weight) {
            this(new Shape(mode), scale, growth, weight, mode.coefficients(), new SparseRow[0], new double[0][], new double[0], new double[0][]);
        }

        private Component(Shape shape, double scale, double growth, double weight, double[] coefficients, SparseRow[] left,
                double[][] core, double[] shift, double[][] among) {
            this.among = among;
            this.shape = shape;
            this.mode = shape.mode;
            this.scale = scale;
            this.growth = growth;
            this.weight = weight;
            this.coefficients = coefficients;
            this.left = left;
            this.core = core;
            this.shift = shift;
        }

        Component weighing(double changed) {
            return new Component(shape, scale, growth, changed, coefficients, left, core, shift, among);
        }

        Component movedTo(double[] changed) {
            return new Component(shape, scale, growth, weight, changed, left, core, new double[left.length], among);
        }

        /** The fitted value of a row. */
        double fitted(SparseRow x) {
            double sum = x.dot(coefficients);
            double[] projected = projected(x);
            for (int r = 0; r < left.length; r++) {
                sum += shift[r] * projected[r];
            }
            return sum;
        }

        double[] coefficients() {
            double[] moved = coefficients.clone();
            for (int r = 0; r < left.length; r++) {
                if (shift[r] != 0) {
                    add(shift[r], left[r].times(shape.covariance, moved.length), moved);
                }
            }
            return moved;
        }

        private static void add(double factor, double[] vector, double[] sum) {
            for (int j = 0; j < sum.length; j++) {
                sum[j] += factor * vector[j];
            }
        }

        /** With w for a contrast x, the covariance times x is V (x + X' w). */
        private double[] share(SparseRow x) {
            return share(projected(x));
        }

        /** V between a contrast and each of the rows left out. */
        private double[] projected(SparseRow x) {
            int own = own(x);
            if (own >= 0) {
                return among[own];
            }
            double[] projected = new double[left.length];
            for (int r = 0; r < left.length; r++) {
                projected[r] = shape.covariance(x, left[r]);
            }
            return projected;
        }

        /** Which of the rows left out a contrast is; -1 if none. */
        private int own(SparseRow x) {
            for (int r = 0; r < left.length; r++) {
                if (left[r].isSame(x)) {
                    return r;
                }
            }
            return -1;
        }

        private double[][] heldAmong() {
            double[][] made = heldAmong;
            if (made == null) {
                made = between(left, shape.held(), coefficients.length);
                heldAmong = made;
            }
            return made;
        }

        private double[] share(double[] projected) {
            double[] share = new double[left.length];
            for (int r = 0; r < share.length; r++) {
                for (int s = 0; s < share.length; s++) {
                    share[r] += core[r][s] * projected[s];
                }
            }
            return share;
        }

        /** The covariance matrix times a contrast. */
        double[] times(SparseRow x) {
            double[] product = x.times(shape.covariance, coefficients.length);
            double[] share = share(x);
            for (int r = 0; r < share.length; r++) {
                add(share[r], left[r].times(shape.covariance, product.length), product);
            }
            return product;
        }

        double variance(SparseRow x) {
            int own = own(x);
            double sum = own >= 0 ? among[own][own] : x.quadratic(shape.covariance, coefficients.length);
            double[] projected = projected(x);
            double[] share = share(projected);
            for (int r = 0; r < left.length; r++) {
                sum += projected[r] * share[r];
            }
            return Math.max(0, sum);
        }

        /** What the prior holds of the variance of a contrast. */
        double held(SparseRow x) {
            int p = coefficients.length;
            double[] held = shape.held();
            int own = own(x);
            double[] share = share(x);
            double[][] ofLeft = heldAmong();
            double sum = own >= 0 ? ofLeft[own][own] : x.quadratic(held, p);
            for (int r = 0; r < share.length; r++) {
                sum += 2 * share[r] * (own >= 0 ? ofLeft[own][r] : x.between(held, p, left[r]));
                for (int s = 0; s < share.length; s++) {
                    sum += share[r] * share[s] * ofLeft[r][s];
                }
            }
            return sum;
        }
    }

    /**
     * The number of coefficients, p.
     *
     * @return at least 1
     */
    public int coefficients() {
        return design.columns();
    }

    /**
     * The posterior means of the coefficients.
     *
     * @return p numbers
     */
    public double[] mean() {
        double[] mean = new double[coefficients()];
        for (Component c : components) {
            Component.add(c.weight, c.coefficients(), mean);
        }
        return mean;
    }

    /**
     * The error scale of an ordinary row at growth measure 0: the mean of its logarithm, taken back.
     *
     * @return above 0, in units of the response
     */
    public double errorScale() {
        double sum = 0;
        for (Component c : components) {
            sum += c.weight * Math.log(c.scale);
        }
        return Math.exp(sum);
    }

    /**
     * The posterior mean of the growth of the log error scale per unit of its measure.
     *
     * @return 0 where there is none
     */
    public double errorGrowth() {
        double sum = 0;
        for (Component c : components) {
            sum += c.weight * c.growth;
        }
        return sum;
    }

    /**
     * The common spread of a block, as held at its mode.
     *
     * @param block the number of the block in the fit's list
     * @return above 0
     */
    public double commonSpread(int block) {
        return components.get(0).mode.spreads().common(block);
    }

    /**
     * The number of points of the hyperparameters that carry weight.
     *
     * @return at least 1
     */
    public int points() {
        return components.size();
    }

    /**
     * What is believed of a contrast: its distribution, no error of a single response added.
     *
     * @param contrast weights of the coefficients
     * @return the distribution
     */
    public Mixture estimate(SparseRow contrast) {
        return mixture(contrast, 0, 0);
    }

    /**
     * What is predicted of one new response.
     *
     * @param row its row of the design
     * @param inflation the factor on its error scale
     * @param growth its measure along which the error scale grows
     * @return the predictive distribution
     */
    public Mixture predict(SparseRow row, double inflation, double growth) {
        return mixture(row, inflation, growth);
    }

    private Mixture mixture(SparseRow row, double inflation, double growth) {
        int k = components.size();
        double[] weights = new double[k];
        double[] means = new double[k];
        double[] variances = new double[k];
        double[] scales = new double[k];
        for (int i = 0; i < k; i++) {
            Component c = components.get(i);
            weights[i] = c.weight;
            means[i] = c.fitted(row);
            variances[i] = c.variance(row);
            scales[i] = inflation * c.scale * Math.exp(c.growth * growth);
        }
        return Mixture.of(law, weights, means, variances, scales);
    }

    /**
     * The variance of a contrast, averaged over the points of the hyperparameters.
     *
     * @param contrast weights of the coefficients
     * @return at least 0
     */
    public double variance(SparseRow contrast) {
        double sum = 0;
        for (Component c : components) {
            sum += c.weight * c.variance(contrast);
        }
        return sum;
    }

    /**
     * The posterior covariances of a contrast with every coefficient, at the central point of the hyperparameters.
     *
     * @param contrast weights of the coefficients
     * @return p numbers; their sum over a second contrast is the covariance of the two
     */
    public double[] covariances(SparseRow contrast) {
        return components.get(0).times(contrast);
    }

    /**
     * How much of what is still unsure about a contrast is held by assumptions rather than by rows, block by block: with V the
     * posterior covariance and P the prior precision, x'V P V x / x'V x. For a single coefficient this is the ratio of posterior to
     * prior variance: 0 where the rows decide, 1 where nothing but the prior speaks. Taken at the central point of the hyperparameters.
     *
     * @param contrast weights of the coefficients
     * @return for each block its part; the sum lies between 0 and 1
     */
    public double[] priorShares(SparseRow contrast) {
        Component c = components.get(0);
        double[] share = c.mode.spreads().quadraticByBlock(c.times(contrast));
        double variance = c.variance(contrast);
        for (int b = 0; b < share.length; b++) {
            share[b] = variance > 0 ? share[b] / variance : 0;
        }
        return share;
    }

    /**
     * How much of what is still unsure about a contrast is held by assumptions, all blocks together: the sum of {@link #priorShares}.
     *
     * @param contrast weights of the coefficients
     * @return between 0 and 1
     */
    public double priorShare(SparseRow contrast) {
        Component c = components.get(0);
        double variance = c.variance(contrast);
        return variance > 0 ? Math.max(0, Math.min(1, c.held(contrast) / variance)) : 0;
    }

    /**
     * The variance that a contrast has before any row speaks, at the first point of the hyperparameters.
     *
     * @param contrast weights of the coefficients
     * @return at least 0; infinite where nothing is assumed of a coefficient in it
     */
    public double priorVariance(SparseRow contrast) {
        return components.get(0).mode.spreads().variance(contrast);
    }

    /**
     * The mean that a contrast has before any row speaks.
     *
     * @param contrast weights of the coefficients
     * @return 0 where nothing is assumed of its coefficients
     */
    public double priorMean(SparseRow contrast) {
        return contrast.dot(components.get(0).mode.spreads().mean());
    }

    /**
     * Which coefficients the rows tell apart by themselves. Of those that they do not, {@link #priorVariance} and {@link #variance} say
     * how far an assumption and how far what is known in the end leaves a contrast open.
     *
     * @return the rank and the dependences of the whole design, rows left out since included
     */
    public Identification identification() {
        return Identification.of(design);
    }

    /**
     * How the prior means pull the answer to a contrast away from where the rows alone would have it: x'V P (b - m), whose negative is
     * the part of the answer that assumptions hold. Taken at the central point of the hyperparameters.
     *
     * @param contrast weights of the coefficients
     * @return the pull in units of the response
     */
    public double priorPull(SparseRow contrast) {
        Component c = components.get(0);
        double[] departure = c.coefficients();
        double[] mean = c.mode.spreads().mean();
        for (int j = 0; j < departure.length; j++) {
            departure[j] -= mean[j];
        }
        double[] force = c.mode.spreads().times(departure);
        double[] reach = c.times(contrast);
        double sum = 0;
        for (int j = 0; j < force.length; j++) {
            sum += reach[j] * force[j];
        }
        return sum;
    }

    /**
     * The posterior without some rows: what would be believed had they never been seen. Hyperparameter points are weighed anew by the
     * predictive density of the rows left out; common spreads stay as they are.
     *
     * @param how by closed form or by further steps
     * @param rows the rows left out, each once
     * @return the posterior without them
     */
    public Posterior leavingOut(LeaveOut how, int... rows) {
        SparseRow[] x = new SparseRow[rows.length];
        for (int r = 0; r < rows.length; r++) {
            x[r] = design.row(rows[r]);
        }
        if (components.size() == 1) {
            return new Posterior(law, design, sample, List.of(without(components.get(0), how, rows, x)));
        }
        List<Component> changed = new ArrayList<>(components.size());
        double[] logWeight = new double[components.size()];
        double most = Double.NEGATIVE_INFINITY;
        for (int k = 0; k < components.size(); k++) {
            Component c = without(components.get(k), how, rows, x);
            changed.add(c);
            logWeight[k] = Math.log(c.weight) - logPredictive(c, rows, x);
            most = Math.max(most, logWeight[k]);
        }
        double sum = 0;
        for (int k = 0; k < logWeight.length; k++) {
            logWeight[k] = Math.exp(logWeight[k] - most);
            sum += logWeight[k];
        }
        List<Component> kept = new ArrayList<>(components.size());
        for (int k = 0; k < logWeight.length; k++) {
            kept.add(changed.get(k).weighing(logWeight[k] / sum));
        }
        return new Posterior(law, design, sample, List.copyOf(kept));
    }

    private Component without(Component c, LeaveOut how, int[] rows, SparseRow[] x) {
        int r = rows.length;
        double[][] s = between(x, c.shape.covariance, c.coefficients.length);
        // K = (H^-1 - S)^-1 = H (I - S H)^-1, which also holds for rows of no information.
        double[][] inner = new double[r][r];
        for (int i = 0; i < r; i++) {
            for (int j = 0; j < r; j++) {
                inner[i][j] = (i == j ? 1 : 0) - s[i][j] * c.mode.information(rows[j]);
            }
        }
        double[][] core = inverse(inner);
        for (int i = 0; i < r; i++) {
            for (int j = 0; j < r; j++) {
                core[i][j] *= c.mode.information(rows[i]);
            }
        }
        // The rows take their pull with them: d = -(I + K S) times their pulls.
        double[] shift = new double[r];
        for (int i = 0; i < r; i++) {
            shift[i] -= c.mode.pull(rows[i]);
            for (int j = 0; j < r; j++) {
                for (int k = 0; k < r; k++) {
                    shift[i] -= core[i][k] * s[k][j] * c.mode.pull(rows[j]);
                }
            }
        }
        Component without = new Component(c.shape, c.scale, c.growth, c.weight, c.coefficients, x, core, shift, s);
        double size = 0;
        for (int i = 0; i < r; i++) {
            for (int j = 0; j < r; j++) {
                size -= c.mode.pull(rows[i]) * s[i][j] * shift[j];
            }
        }
        return how == LeaveOut.CLOSED_FORM || Math.abs(size) < SETTLED ? without : settled(without, rows);
    }

    /** Rows times a symmetric matrix, held row after row in full, times the rows. */
    private static double[][] between(SparseRow[] rows, double[] symmetric, int p) {
        double[][] s = new double[rows.length][rows.length];
        for (int i = 0; i < s.length; i++) {
            s[i][i] = rows[i].quadratic(symmetric, p);
            for (int j = 0; j < i; j++) {
                s[i][j] = rows[i].between(symmetric, p, rows[j]);
                s[j][i] = s[i][j];
            }
        }
        return s;
    }

    /**
     * Steps on from the closed form until the weights of the other rows have settled. Every step is V times a sum of rows, so only how much
     * of each row has been taken is kept: with h the change of the fitted values and I the rows' information, P V X' d = X' (d - I h).
     */
    private Component settled(Component without, int[] rows) {
        Mode mode = without.mode;
        OnRows on = without.shape.onRows(design);
        int n = design.rows();
        double[] taken = new double[n];
        double[] moved = new double[n];
        double[] change = new double[n];
        double[] slope = new double[n];
        double[] weight = new double[n];
        double[] fitted = new double[n];
        double[] projected = new double[rows.length];
        for (int r = 0; r < rows.length; r++) {
            taken[rows[r]] = without.shift[r];
            on.add(without.shift[r], rows[r], moved);
        }
        // The part of the first step that the mode with all rows was short of.
        double rest = 1;
        for (int step = 0; step < 12; step++) {
            for (int i = 0; i < n; i++) {
                fitted[i] = on.fitted[i] + moved[i];
            }
            mode.slopesAt(fitted, weight, slope);
            for (int row : rows) {
                slope[row] = 0;
            }
            Arrays.fill(change, 0);
            double size = rest * rest * on.restSize;
            for (int i = 0; i < n; i++) {
                double lost = slope[i] - mode.pull(i) - taken[i] + mode.information(i) * moved[i];
                weight[i] = lost;
                taken[i] += lost;
                on.add(lost, i, change);
            }
            for (int i = 0; i < n; i++) {
                size += weight[i] * (2 * rest * on.rest[i] + change[i]);
                change[i] += rest * on.rest[i];
            }
            for (int r = 0; r < rows.length; r++) {
                projected[r] = change[rows[r]];
            }
            double[] share = without.share(projected);
            for (int r = 0; r < rows.length; r++) {
                size += projected[r] * share[r];
                taken[rows[r]] += share[r];
                on.add(share[r], rows[r], change);
            }
            for (int i = 0; i < n; i++) {
                moved[i] += change[i];
            }
            rest = 0;
            if (Math.abs(size) < SETTLED) {
                break;
            }
        }
        double[] force = on.gradient.clone();
        for (int i = 0; i < n; i++) {
            design.addTo(force, i, taken[i]);
        }
        double[] b = without.coefficients.clone();
        without.shape.addTimes(force, b, 0);
        return without.movedTo(b);
    }

    private double logPredictive(Component c, int[] rows, SparseRow[] x) {
        double sum = 0;
        for (int i = 0; i < rows.length; i++) {
            double scale = c.mode.scale()[rows[i]];
            Mixture one = Mixture.of(law, new double[] {1}, new double[] {c.fitted(x[i])}, new double[] {c.variance(x[i])},
                    new double[] {scale});
            double y = sample.response(rows[i]);
            double usual = sample.isBound(rows[i]) ? 1 - one.cumulative(y) : one.density(y);
            double gross = sample.isBound(rows[i]) ? law.grossShare() / 2 : law.grossDensity() / scale;
            sum += Math.log(Math.max(1e-300, (1 - law.grossShare()) * usual + gross));
        }
        return sum;
    }

    /** The inverse of a small matrix by elimination with row exchanges. */
    private static double[][] inverse(double[][] matrix) {
        int r = matrix.length;
        double[][] a = new double[r][2 * r];
        for (int i = 0; i < r; i++) {
            System.arraycopy(matrix[i], 0, a[i], 0, r);
            a[i][r + i] = 1;
        }
        for (int j = 0; j < r; j++) {
            int best = j;
            for (int i = j + 1; i < r; i++) {
                best = Math.abs(a[i][j]) > Math.abs(a[best][j]) ? i : best;
            }
            double[] swap = a[j];
            a[j] = a[best];
            a[best] = swap;
            double pivot = a[j][j];
            for (int k = 0; k < 2 * r; k++) {
                a[j][k] /= pivot;
            }
            for (int i = 0; i < r; i++) {
                double f = a[i][j];
                if (i != j && f != 0) {
                    for (int k = 0; k < 2 * r; k++) {
                        a[i][k] -= f * a[j][k];
                    }
                }
            }
        }
        double[][] inverse = new double[r][];
        for (int i = 0; i < r; i++) {
            inverse[i] = Arrays.copyOfRange(a[i], r, 2 * r);
        }
        return inverse;
    }

    /**
     * Joint draws, the same for the same seed on every machine.
     *
     * @param count number of draws
     * @param seed seed of the generator
     * @return the draws, in no order that means anything
     * @throws IllegalStateException if rows have been left out: draws are for the whole posterior
     */
    public JointDraws draws(int count, long seed) {
        return draws(count, seed, -1, new double[count]);
    }

    /** Joint draws; of each the common spread of a block at the mode that it was drawn about is written to an array. */
    private JointDraws draws(int count, long seed, int block, double[] spreadAtMode) {
        SplittableRandom random = new SplittableRandom(seed);
        double[][] coefficients = new double[count][];
        double[] scales = new double[count];
        double[] growths = new double[count];
        double[] walkScales = new double[count];
        int[] order = shuffled(count, random);
        double offset = random.nextDouble();
        int k = 0;
        double reached = components.get(0).weight;
        for (int i = 0; i < count; i++) {
            // Systematic sampling: each point of the hyperparameters gets its share of the draws to within one.
            double at = (i + offset) / count;
            while (at > reached && k + 1 < components.size()) {
                k++;
                reached += components.get(k).weight;
            }
            Component c = components.get(k);
            if (c.left.length > 0) {
                throw new IllegalStateException("draws are for the posterior with all rows");
            }
            double[] z = new double[coefficients()];
            for (int j = 0; j < z.length; j++) {
                z[j] = Noise.normal(random);
            }
            double[] draw = c.mode.factor().backSolve(z);
            for (int j = 0; j < z.length; j++) {
                draw[j] += c.coefficients[j];
            }
            coefficients[order[i]] = draw;
            scales[order[i]] = c.scale;
            growths[order[i]] = c.growth;
            walkScales[order[i]] = c.mode.spreads().walkScale();
            spreadAtMode[order[i]] = block < 0 ? 0 : c.mode.spreads().common(block);
        }
        return new JointDraws(coefficients, scales, growths, walkScales, law);
    }

    /**
     * Joint draws in which the common spread of one block is drawn too, and not held at its mode: of few levels that tell little of their
     * spread the mode alone gives ranges of the wrong shape. Twice as many draws as asked for are weighted by how likely their levels are
     * under all spreads (half-normal prior) against the spread at the mode, as many as asked for are taken by their weights, and the level
     * never seen is drawn from the spread that belongs to each.
     *
     * @param block a block of levels with a common spread, see {@link PriorBlock#levels}
     * @param count number of draws
     * @param seed seed of the generator
     * @return the draws, in no order that means anything
     */
    public JointDraws draws(PriorBlock block, int count, long seed) {
        double[] spreadAtMode = new double[2 * count];
        JointDraws candidates = draws(2 * count, seed, spreads().number(block.name()), spreadAtMode);
        SplittableRandom random = new SplittableRandom(seed ^ 0x5DEECE66DL);
        SpreadOfLevels spread = new SpreadOfLevels(block);
        double[] weight = new double[2 * count];
        double sum = 0;
        for (int i = 0; i < weight.length; i++) {
            weight[i] = spread.weight(candidates.coefficients(i), spreadAtMode[i]);
            sum += weight[i];
        }
        int[] taken = new int[count];
        double offset = random.nextDouble();
        double reached = weight[0] / sum;
        int at = 0;
        for (int i = 0; i < count; i++) {
            while ((i + offset) / count > reached && at + 1 < weight.length) {
                reached += weight[++at] / sum;
            }
            taken[i] = at;
        }
        int[] order = shuffled(count, random);
        int[] shuffled = new int[count];
        for (int i = 0; i < count; i++) {
            shuffled[order[i]] = taken[i];
        }
        return candidates.some(shuffled, draw -> spread.drawUnseen(draw, random));
    }

    private static int[] shuffled(int count, SplittableRandom random) {
        int[] order = IntStream.range(0, count).toArray();
        for (int i = count - 1; i > 0; i--) {
            int j = random.nextInt(i + 1);
            int kept = order[i];
            order[i] = order[j];
            order[j] = kept;
        }
        return order;
    }

    /** The prior at the first point of the hyperparameters. */
    Spreads spreads() {
        return components.get(0).mode.spreads();
    }

    /**
     * The logarithm of the marginal likelihood of the rows at the first point of the hyperparameters, by Laplace's method: to compare two
     * models of the same responses.
     *
     * @return a log density
     */
    public double logMarginal() {
        return components.get(0).mode.logMarginal();
    }

    /** The log likelihood of the rows at the first point of the hyperparameters. */
    double logLikelihood() {
        return components.get(0).mode.logLikelihood();
    }
}
