package swapworth.statistics;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.SplittableRandom;

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
                growths[k], weights[k], modes.get(k).factor().inverse()));
        return new Posterior(law, design, sample, List.of(components));
    }

    /** How a posterior changes when rows are left out. */
    public enum LeaveOut {
        /** One step from the mode with the other rows' weights as they were: closed form. */
        CLOSED_FORM,
        /** Steps until the other rows' weights have settled, from the mode with all rows. */
        REFIT
    }

    /** The posterior at one point of the hyperparameters, possibly with rows left out. */
    private static final class Component {
        private final Mode mode;
        private final double scale;
        private final double growth;
        private final double weight;
        private final double[] coefficients;
        private final double[] covariance;
        /** With rows left out the covariance is V + U K U': U has one column of length p for each row left out. */
        private final double[][] left;
        private final double[][] core;

        Component(Mode mode, double scale, double growth, double weight, double[] covariance) {
            this(mode, scale, growth, weight, mode.coefficients(), covariance, new double[0][], new double[0][]);
        }

        private Component(Mode mode, double scale, double growth, double weight, double[] coefficients, double[] covariance,
                double[][] left, double[][] core) {
            this.mode = mode;
            this.scale = scale;
            this.growth = growth;
            this.weight = weight;
            this.coefficients = coefficients;
            this.covariance = covariance;
            this.left = left;
            this.core = core;
        }

        /** The covariance matrix times a contrast. */
        double[] times(SparseRow x) {
            int p = coefficients.length;
            double[] product = x.times(covariance, p);
            addCore(project(x), product);
            return product;
        }

        /** The covariance matrix times a full vector. */
        double[] times(double[] x) {
            int p = coefficients.length;
            double[] product = new double[p];
            for (int i = 0; i < p; i++) {
                double xi = x[i];
                if (xi != 0) {
                    for (int j = 0; j < p; j++) {
                        product[j] += xi * covariance[i * p + j];
                    }
                }
            }
            double[] projected = new double[left.length];
            for (int r = 0; r < left.length; r++) {
                for (int j = 0; j < p; j++) {
                    projected[r] += left[r][j] * x[j];
                }
            }
            addCore(projected, product);
            return product;
        }

        private double[] project(SparseRow x) {
            double[] projected = new double[left.length];
            for (int r = 0; r < left.length; r++) {
                projected[r] = x.dot(left[r]);
            }
            return projected;
        }

        private void addCore(double[] projected, double[] product) {
            for (int r = 0; r < left.length; r++) {
                double sum = 0;
                for (int s = 0; s < left.length; s++) {
                    sum += core[r][s] * projected[s];
                }
                for (int j = 0; j < product.length; j++) {
                    product[j] += sum * left[r][j];
                }
            }
        }

        double variance(SparseRow x) {
            double sum = 0;
            int p = coefficients.length;
            for (int e = 0; e < x.size(); e++) {
                int row = x.index(e) * p;
                double ve = x.value(e);
                double inner = 0;
                for (int f = 0; f < e; f++) {
                    inner += x.value(f) * covariance[row + x.index(f)];
                }
                sum += ve * (2 * inner + ve * covariance[row + x.index(e)]);
            }
            double[] projected = project(x);
            for (int r = 0; r < left.length; r++) {
                for (int s = 0; s < left.length; s++) {
                    sum += projected[r] * core[r][s] * projected[s];
                }
            }
            return Math.max(0, sum);
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
            for (int j = 0; j < mean.length; j++) {
                mean[j] += c.weight * c.coefficients[j];
            }
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
            means[i] = row.dot(c.coefficients);
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
     * The variance that a contrast has before any row speaks, at the first point of the hyperparameters.
     *
     * @param contrast weights of the coefficients
     * @return at least 0; infinite where nothing is assumed of a coefficient in it
     */
    public double priorVariance(SparseRow contrast) {
        return components.get(0).mode.spreads().variance(contrast);
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
        double[] departure = c.coefficients.clone();
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
        boolean[] out = new boolean[design.rows()];
        SparseRow[] x = new SparseRow[rows.length];
        for (int r = 0; r < rows.length; r++) {
            out[rows[r]] = true;
            x[r] = design.row(rows[r]);
        }
        List<Component> changed = new ArrayList<>(components.size());
        double[] logWeight = new double[components.size()];
        double most = Double.NEGATIVE_INFINITY;
        for (int k = 0; k < components.size(); k++) {
            Component c = without(components.get(k), how, rows, x, out);
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
            Component c = changed.get(k);
            kept.add(new Component(c.mode, c.scale, c.growth, logWeight[k] / sum, c.coefficients, c.covariance, c.left, c.core));
        }
        return new Posterior(law, design, sample, List.copyOf(kept));
    }

    private Component without(Component c, LeaveOut how, int[] rows, SparseRow[] x, boolean[] out) {
        int r = rows.length;
        int p = coefficients();
        double[][] u = new double[r][];
        double[][] s = new double[r][r];
        for (int i = 0; i < r; i++) {
            u[i] = x[i].times(c.covariance, p);
            for (int j = 0; j < r; j++) {
                s[i][j] = x[j].dot(u[i]);
            }
        }
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
        Component shape = new Component(c.mode, c.scale, c.growth, c.weight, c.coefficients, c.covariance, u, core);
        double[] lost = new double[p];
        for (int i = 0; i < r; i++) {
            design.addTo(lost, rows[i], -c.mode.pull(rows[i]));
        }
        double[] b = c.coefficients.clone();
        double[] move = shape.times(lost);
        for (int step = 0; ; step++) {
            double size = 0;
            for (int j = 0; j < p; j++) {
                b[j] += move[j];
                size += move[j] * lost[j];
            }
            if (how == LeaveOut.CLOSED_FORM || step == 12 || Math.abs(size) < SETTLED) {
                break;
            }
            lost = c.mode.gradientAt(b, out);
            move = shape.times(lost);
        }
        return new Component(c.mode, c.scale, c.growth, c.weight, b, c.covariance, u, core);
    }

    private double logPredictive(Component c, int[] rows, SparseRow[] x) {
        double sum = 0;
        for (int i = 0; i < rows.length; i++) {
            double scale = c.mode.scale()[rows[i]];
            Mixture one = Mixture.of(law, new double[] {1}, new double[] {x[i].dot(c.coefficients)}, new double[] {c.variance(x[i])},
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
     * Joint draws of the coefficients, the same for the same seed.
     *
     * @param count number of draws
     * @param seed seed of the generator
     * @return {@code count} rows of p numbers
     * @throws IllegalStateException if rows have been left out: draws are for the whole posterior
     */
    public double[][] draws(int count, long seed) {
        SplittableRandom random = new SplittableRandom(seed);
        double[][] draws = new double[count][];
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
                z[j] = gaussian(random);
            }
            double[] draw = c.mode.factor().backSolve(z);
            for (int j = 0; j < z.length; j++) {
                draw[j] += c.coefficients[j];
            }
            draws[i] = draw;
        }
        return draws;
    }

    /** A standard normal number by the polar method, in strict arithmetic: the same on every machine. */
    private static double gaussian(SplittableRandom random) {
        while (true) {
            double u = 2 * random.nextDouble() - 1;
            double v = 2 * random.nextDouble() - 1;
            double s = u * u + v * v;
            if (s > 0 && s < 1) {
                return u * Math.sqrt(-2 * StrictMath.log(s) / s);
            }
        }
    }

    /** The log marginal likelihood of the rows at the first point of the hyperparameters, by Laplace's method. */
    double logMarginal() {
        return components.get(0).mode.logMarginal();
    }

    /** The log likelihood of the rows at the first point of the hyperparameters. */
    double logLikelihood() {
        return components.get(0).mode.logLikelihood();
    }
}
