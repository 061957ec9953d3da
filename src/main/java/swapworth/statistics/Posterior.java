package swapworth.statistics;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.SplittableRandom;
import java.util.function.Consumer;
import java.util.function.Function;
import java.util.function.IntFunction;
import java.util.stream.IntStream;

/**
 * What is believed of the coefficients once the rows have spoken: for each point of the hyperparameters a normal law about the mode,
 * and a weight. Every answer is a question about a contrast of coefficients, so that what moves two answers together is counted.
 *
 * <p>Immutable; safe for use by several threads.
 */
public final class Posterior {
    private final ErrorLaw law;
    private final Errors errors;
    private final Design design;
    private final Sample sample;
    private final List<Component> components;

    /**
     * How single responses lie about what is predicted of them.
     *
     * @param law their law
     * @param times its scale over that of the law of the fit
     */
    private record Errors(ErrorLaw law, double times) {
    }

    private Posterior(ErrorLaw law, Errors errors, Design design, Sample sample, List<Component> components) {
        this.law = law;
        this.errors = errors;
        this.design = design;
        this.sample = sample;
        this.components = components;
    }

    /** A posterior from modes, with the error scale, its growth and the weight at each. */
    static Posterior of(ErrorLaw law, Design design, Sample sample, List<Mode> modes, double[] scales, double[] growths,
            double[] weights) {
        Component[] components = new Component[weights.length];
        IntStream.range(0, weights.length).parallel().forEach(k -> components[k] =
                new Component.WithoutRows(modes.get(k), scales[k], growths[k], weights[k]));
        return new Posterior(law, new Errors(law, 1), design, sample, List.of(components));
    }

    /**
     * The same with other tails of single responses than those of the fit, for what is predicted of new ones; eight in ten of their errors
     * lie as far out as before.
     *
     * @param tail the tails
     * @return a posterior of the same coefficients
     */
    public Posterior withTail(ErrorTail tail) {
        return tail.degreesOfFreedom() == errors.law.degreesOfFreedom() ? this
                : new Posterior(law, new Errors(ErrorLaw.student(tail.degreesOfFreedom()), tail.scaleOf(law)), design, sample, components);
    }

    /** How a posterior changes when rows are left out. */
    public enum LeaveOut {
        /** One step from the mode with the other rows' weights as they were: closed form. */
        CLOSED_FORM,
        /** Steps until the other rows' weights have settled, from the mode with all rows. */
        REFIT
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
     * The common spread of a block, as held at its mode.
     *
     * @param block the number of the block in the fit's list
     * @return above 0
     */
    public double commonSpread(int block) {
        return components.get(0).mode.spreads().common(block);
    }

    /**
     * How probable it is that the coefficients that may all be 0 are so, see {@link ShrunkenRegression#withChanceOfAbsence}.
     *
     * @return between 0 and 1; 0 where it came out as not worth a fit
     */
    public double chanceOfAbsence() {
        List<PriorBlock> present = spreads().blocks();
        return components.stream().filter(c -> !c.mode.spreads().blocks().equals(present)).mapToDouble(c -> c.weight).sum();
    }

    /**
     * What is believed of a contrast, for several questions about it.
     *
     * @param contrast weights of the coefficients
     * @return what is believed
     */
    public Belief of(SparseRow contrast) {
        return new Belief(errors, components, contrast);
    }

    /** What a posterior says of one contrast. Immutable. */
    public static final class Belief {
        private final Errors errors;
        private final List<Component> components;
        private final SparseRow contrast;
        private final Component.Said[] said;

        private Belief(Errors errors, List<Component> components, SparseRow contrast) {
            this.errors = errors;
            this.components = components;
            this.contrast = contrast;
            this.said = new Component.Said[components.size()];
            for (int k = 0; k < said.length; k++) {
                said[k] = components.get(k).of(contrast);
            }
        }

        /**
         * Its distribution, no error of a single response added.
         *
         * @return the distribution
         */
        public Mixture estimate() {
            return predict(0, 0);
        }

        /**
         * What is predicted of one new response whose row of the design the contrast is.
         *
         * @param inflation the factor on its error scale
         * @param growth its measure along which the error scale grows
         * @return the predictive distribution
         */
        public Mixture predict(double inflation, double growth) {
            if (said.length == 1) {
                return Mixture.of(errors.law, said[0].fitted(), said[0].variance(),
                        components.get(0).errorScale(inflation * errors.times, growth));
            }
            double[] weights = new double[said.length];
            double[] means = new double[said.length];
            double[] variances = new double[said.length];
            double[] scales = new double[said.length];
            for (int k = 0; k < said.length; k++) {
                weights[k] = components.get(k).weight;
                means[k] = said[k].fitted();
                variances[k] = said[k].variance();
                scales[k] = components.get(k).errorScale(inflation * errors.times, growth);
            }
            return Mixture.of(errors.law, weights, means, variances, scales);
        }

        /**
         * Its variance, averaged over the points of the hyperparameters.
         *
         * @return at least 0
         */
        public double variance() {
            double sum = 0;
            for (int k = 0; k < said.length; k++) {
                sum += components.get(k).weight * said[k].variance();
            }
            return sum;
        }

        /**
         * How much of what is still unsure about it is held by assumptions, all blocks together: the sum of {@link Posterior#priorShares}.
         *
         * @return between 0 and 1
         */
        public double priorShare() {
            Component.Said first = said[0];
            if (Double.isNaN(first.held())) {
                components.get(0).shape.withHeld();
                first = components.get(0).of(contrast);
            }
            return first.variance() > 0 ? Math.max(0, Math.min(1, first.held() / first.variance())) : 0;
        }
    }

    /**
     * What is believed of a contrast: its distribution, no error of a single response added.
     *
     * @param contrast weights of the coefficients
     * @return the distribution
     */
    public Mixture estimate(SparseRow contrast) {
        return of(contrast).estimate();
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
        return of(row).predict(inflation, growth);
    }

    /**
     * The variance of a contrast, averaged over the points of the hyperparameters.
     *
     * @param contrast weights of the coefficients
     * @return at least 0
     */
    public double variance(SparseRow contrast) {
        return of(contrast).variance();
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
        double variance = c.of(contrast).variance();
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
        return of(contrast).priorShare();
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
     * @throws IllegalStateException if rows have been left out before
     */
    public Posterior leavingOut(LeaveOut how, int... rows) {
        SparseRow[] x = new SparseRow[rows.length];
        for (int r = 0; r < rows.length; r++) {
            x[r] = design.row(rows[r]);
        }
        return leavingOut(how, rows, x);
    }

    private Posterior leavingOut(LeaveOut how, int[] rows, SparseRow[] x) {
        if (components.size() == 1) {
            return new Posterior(law, errors, design, sample, List.of(without(components.get(0), how, rows, x)));
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
        return new Posterior(law, errors, design, sample, List.copyOf(kept));
    }

    /**
     * Gets ready for each row to be left out by itself: for a caller that will ask for most of them. The answers stay the same; they come
     * quicker, and what is kept for them takes 16 bytes a row. With several points of the hyperparameters nothing is done: rows are few.
     */
    public void expectEachRowLeftOut() {
        if (components.size() == 1) {
            components.get(0).shape.withOwnForms(design);
        }
    }

    /**
     * The posterior without one row, in closed form: for a caller that has its entries at hand.
     *
     * @param row the row left out
     * @param entries its entries, as the design holds them
     * @return the posterior without it
     * @throws IllegalStateException if rows have been left out before
     */
    public Posterior leavingOut(int row, SparseRow entries) {
        return components.size() == 1 ? new Posterior(law, errors, design, sample, List.of(all(components.get(0)).without(row, entries)))
                : leavingOut(LeaveOut.CLOSED_FORM, new int[] {row}, new SparseRow[] {entries});
    }

    private static Component.WithoutRows all(Component c) {
        if (c instanceof Component.WithoutRows all && !c.leavesOut()) {
            return all;
        }
        throw new IllegalStateException("rows are left out of the posterior with all rows");
    }

    private Component without(Component c, LeaveOut how, int[] rows, SparseRow[] x) {
        Component.WithoutRows all = all(c);
        if (how == LeaveOut.CLOSED_FORM && rows.length == 1) {
            return all.without(rows[0], x[0]);
        }
        Component.WithoutRows without = all.without(rows, x);
        return how == LeaveOut.CLOSED_FORM || Math.abs(without.sizeOfStep(rows)) < Settling.SETTLED ? without
                : Settling.of(without, rows);
    }

    private double logPredictive(Component c, int[] rows, SparseRow[] x) {
        double sum = 0;
        for (int i = 0; i < rows.length; i++) {
            double scale = c.mode.scale()[rows[i]];
            Component.Said said = c.of(x[i]);
            Mixture one = Mixture.of(law, said.fitted(), said.variance(), scale);
            double y = sample.response(rows[i]);
            double usual = sample.isBound(rows[i]) ? 1 - one.cumulative(y) : one.density(y);
            double gross = sample.isBound(rows[i]) ? law.grossShare() / 2 : law.grossDensity() / scale;
            sum += Math.log(Math.max(1e-300, (1 - law.grossShare()) * usual + gross));
        }
        return sum;
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
        SplittableRandom random = new SplittableRandom(seed);
        int[][] dealt = dealt(count, random, components.stream().mapToDouble(c -> c.weight).toArray());
        return drawn(count, dealt, k -> {
            Mode mode = components.get(k).mode;
            return mode.factor() instanceof BorderedFactor factor ? new BorderedDraws(mode, factor, dealt[k].length, random)::of
                    : inFull(mode, dealt[k].length, random, draw -> {
                    });
        });
    }

    /** For each point of the hyperparameters the numbers of the draws that are from it, as many as its weight asks. */
    private int[][] dealt(int count, SplittableRandom random, double[] weights) {
        int[] order = shuffled(count, random);
        double offset = random.nextDouble();
        // Systematic sampling: each point gets its share of the draws to within one.
        int[] from = IntStream.range(0, count).map(i -> Noise.place(weights, (i + offset) / count)).toArray();
        return IntStream.range(0, weights.length)
                .mapToObj(k -> IntStream.range(0, count).filter(i -> from[i] == k).map(i -> order[i]).toArray()).toArray(int[][]::new);
    }

    /** So many draws of all coefficients about a mode, each changed once more. */
    private static Function<SparseRow, double[]> inFull(Mode mode, int count, SplittableRandom random, Consumer<double[]> change) {
        double[][] coefficients = new double[count][];
        for (int i = 0; i < count; i++) {
            coefficients[i] = mode.factor().backSolve(Noise.normals(mode.coefficients().length, random));
            Component.add(1, mode.coefficients(), coefficients[i]);
            change.accept(coefficients[i]);
        }
        return contrast -> Arrays.stream(coefficients).mapToDouble(contrast::dot).toArray();
    }

    /** Joint draws from those about each mode. */
    private JointDraws drawn(int count, int[][] dealt, IntFunction<Function<SparseRow, double[]>> aboutMode) {
        if (components.stream().anyMatch(Component::leavesOut)) {
            throw new IllegalStateException("draws are for the posterior with all rows");
        }
        double[] scales = new double[count];
        double[] growths = new double[count];
        double[] walkScales = new double[count];
        List<Function<SparseRow, double[]>> about = new ArrayList<>();
        for (int k = 0; k < dealt.length; k++) {
            Component c = components.get(k);
            about.add(aboutMode.apply(k));
            for (int i : dealt[k]) {
                scales[i] = errors.times * c.scale;
                growths[i] = c.growth;
                walkScales[i] = c.mode.spreads().walkScale();
            }
        }
        return new JointDraws(contrast -> {
            double[] values = new double[count];
            for (int k = 0; k < dealt.length; k++) {
                double[] own = about.get(k).apply(contrast);
                for (int i = 0; i < own.length; i++) {
                    values[dealt[k][i]] = own[i];
                }
            }
            return values;
        }, scales, growths, walkScales, errors.law);
    }

    /**
     * Joint draws in which the common spread of one block is drawn too, and not held at its mode: of few levels that tell little of their
     * spread the mode alone gives ranges of the wrong shape. Each draw is moved to a spread drawn from its law (half-normal prior), and the
     * level never seen is drawn from the spread that belongs to the levels.
     *
     * @param block a block of levels with a common spread, see {@link PriorBlock#levels}; one of those that the posterior was fitted with
     * @param count number of draws, m
     * @param seed seed of the generator
     * @return m draws, in no order that means anything
     * @throws IllegalStateException if rows have been left out: draws are for the whole posterior
     */
    public JointDraws draws(PriorBlock block, int count, long seed) {
        SpreadOfLevels spread = new SpreadOfLevels(block);
        int number = spreads().number(block.name());
        List<SpreadOfLevels.About> laws = components.stream().map(c -> spread.about(c.mode, c.mode.spreads().common(number))).toList();
        double[] weights = new double[laws.size()];
        double sum = 0;
        for (int k = 0; k < weights.length; k++) {
            weights[k] = components.get(k).weight * laws.get(k).weight();
            sum += weights[k];
        }
        for (int k = 0; k < weights.length; k++) {
            weights[k] /= sum;
        }
        SplittableRandom random = new SplittableRandom(seed);
        SplittableRandom ofSpread = random.split();
        int[][] dealt = dealt(count, random, weights);
        return drawn(count, dealt, k -> inFull(components.get(k).mode, dealt[k].length, random, draw -> {
            laws.get(k).move(draw, ofSpread.nextDouble());
            spread.drawUnseen(draw, ofSpread);
        }));
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
