package swapworth.statistics;

import static java.util.Objects.requireNonNull;

import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;
import java.util.stream.IntStream;
import java.util.stream.Stream;

/**
 * A linear model whose coefficients are shrunk toward stated means: y = X b + e, b normal by blocks ({@link PriorBlock}), e of
 * Student's t (5 degrees of freedom unless stated) or normal, with a scale that may grow along one measure.
 *
 * <p>Common spreads of blocks have half-normal priors and are held at the mode of their logarithm, found by expectation and
 * maximisation; those of which nothing is assumed at their restricted maximum likelihood estimate. The error scale (ln-normal
 * prior), its growth (normal prior), the common scale of the secondary spreads and the spread of the steps of a trending walk (ln-normal
 * priors) are averaged over a central composite design about their mode, each point weighted by its Laplace marginal likelihood: centre,
 * both ends of each axis and, up to 120 rows, the corners (of four axes every second one), all at 1.1 standard deviations times the root
 * of the number of axes from the centre, with weights that reproduce the first two moments of a normal law.
 *
 * <p>Sources: K. Lange, R. Little, J. Taylor, J. Amer. Statist. Assoc. 84 (1989) 881-896 for regression with t errors by weighted
 * least squares; L. Tierney, J. Kadane, J. Amer. Statist. Assoc. 81 (1986) 82-86 for Laplace's method; H. Rue, S. Martino, N.
 * Chopin, J. Roy. Statist. Soc. B 71 (2009) 319-392 for integrating hyperparameters on a composite design (all three from memory).
 *
 * <p>Immutable: {@code with} methods return changed copies.
 */
public final class ShrunkenRegression {
    private static final double RADIUS = 1.1;
    /** Up to this many rows the corners of the composite design are taken too, beyond it only its axes. */
    private static final int FEW = 120;
    private static final int MOST_ROUNDS = 60;
    /** How closely modes are found whose log posteriors are compared: these are then right to half the square of it. */
    private static final double ENOUGH_TO_COMPARE = 0.03;
    /** How closely the mode is found while the error scale is still to be changed. */
    private static final double ROUGHLY = 0.3;
    /** Spreads held at their mode have settled when the logarithm of none moves by more in a round, */
    private static final double SETTLED = 1e-3;
    /** or, where only some of the rows are looked at and the tolerance is wide, by more than this share of it. */
    private static final double SETTLED_OF_SOME = 1.0 / 15;
    /** Above this many rows a factor costs more than some further steps with one from nearby. */
    private static final int FACTORED_EACH_TIME = 2000;
    /** Above this many rows the hyperparameters of a plugged-in fit are found with this many of them. */
    private static final int ENOUGH_FOR_SPREADS = 8000;
    /** So many rows make a factor that steps toward the mode of many more can be taken with. */
    private static final int ENOUGH_FOR_STEPS = 200_000;
    /** Seed of the choice of these rows: any fixed number would do. */
    private static final long CHOICE = 20_260_101;

    private final ErrorLaw law;
    private final ErrorScale errorScale;
    private final double growthMean;
    private final double growthSpread;
    private final double secondaryLogSpread;
    private final Integration integration;
    private final double tolerance;

    private ShrunkenRegression(ErrorLaw law, ErrorScale errorScale, double growthMean, double growthSpread, double secondaryLogSpread,
            Integration integration, double tolerance) {
        this.law = law;
        this.errorScale = errorScale;
        this.growthMean = growthMean;
        this.growthSpread = growthSpread;
        this.secondaryLogSpread = secondaryLogSpread;
        this.integration = integration;
        this.tolerance = tolerance;
    }

    /**
     * Student's t with 5 degrees of freedom, an error scale about 0.2 that may be half or twice that, no growth, secondary spreads as
     * stated within a factor of about 1.6, hyperparameters integrated.
     *
     * @return the defaults
     */
    public static ShrunkenRegression withDefaults() {
        return new ShrunkenRegression(ErrorLaw.student(5), new ErrorScale.Unsure(0.2, 0.5), 0, 0, 0.5, Integration.POINTS, 1e-3);
    }

    /**
     * Changes the law of the errors.
     *
     * @param law the law
     * @return a copy
     */
    public ShrunkenRegression with(ErrorLaw law) {
        return new ShrunkenRegression(requireNonNull(law, "law"), errorScale, growthMean, growthSpread, secondaryLogSpread, integration,
                tolerance);
    }

    /**
     * Changes what is known of the error scale.
     *
     * @param errorScale stated or unsure
     * @return a copy
     */
    public ShrunkenRegression with(ErrorScale errorScale) {
        return new ShrunkenRegression(law, requireNonNull(errorScale, "errorScale"), growthMean, growthSpread, secondaryLogSpread,
                integration, tolerance);
    }

    /**
     * Changes what becomes of the hyperparameters.
     *
     * @param integration averaged over points, or held at the mode
     * @return a copy
     */
    public ShrunkenRegression with(Integration integration) {
        return new ShrunkenRegression(law, errorScale, growthMean, growthSpread, secondaryLogSpread,
                requireNonNull(integration, "integration"), tolerance);
    }

    /**
     * Lets the error scale of row i be multiplied by exp(growth times the row's measure).
     *
     * @param mean prior mean of the growth per unit of the measure
     * @param spread prior standard deviation; 0 holds the growth at its mean
     * @return a copy
     */
    public ShrunkenRegression withGrowth(double mean, double spread) {
        return new ShrunkenRegression(law, errorScale, mean, spread, secondaryLogSpread, integration, tolerance);
    }

    /**
     * Changes how unsure the common scale of the secondary spreads is.
     *
     * @param logSpread standard deviation of its logarithm; 0 holds it at 1
     * @return a copy
     */
    public ShrunkenRegression withSecondarySpread(double logSpread) {
        return new ShrunkenRegression(law, errorScale, growthMean, growthSpread, logSpread, integration, tolerance);
    }

    /**
     * Changes how closely the mode is found.
     *
     * @param tolerance the last step moves the coefficients by less than this share of their own uncertainty; 1e-3 unless stated
     * @return a copy
     */
    public ShrunkenRegression withTolerance(double tolerance) {
        return new ShrunkenRegression(law, errorScale, growthMean, growthSpread, secondaryLogSpread, integration, tolerance);
    }

    /**
     * Fits the model.
     *
     * @param design n x p
     * @param sample n responses
     * @param priors blocks that together name each of the p coefficients once
     * @return the posterior
     * @throws IllegalArgumentException if sizes do not fit or there is no row
     * @throws ConfoundedColumnsException if nothing is assumed of some coefficients and the rows cannot tell them apart
     */
    public Posterior fit(Design design, Sample sample, List<PriorBlock> priors) {
        check(design, sample, priors);
        refuseConfounded(design, priors);
        int[] some = integration == Integration.MODE ? searchedIn(sample.size()) : new int[0];
        return some.length == 0 ? new Fitting(design, sample, List.copyOf(priors)).run()
                : fit(design, sample, priors, search(design.some(some), sample.some(some), priors));
    }

    /**
     * The rows in which a fit of many holds its hyperparameters at the mode that these alone tell: one out of each of many equal stretches.
     *
     * @param rows n, the number of all rows
     * @return their numbers; none where all are looked at
     */
    public static int[] searchedIn(int rows) {
        if (rows <= ENOUGH_FOR_SPREADS) {
            return new int[0];
        }
        SplittableRandom random = new SplittableRandom(CHOICE);
        int[] chosen = new int[ENOUGH_FOR_SPREADS];
        for (int k = 0; k < chosen.length; k++) {
            int first = (int) ((long) rows * k / chosen.length);
            int next = (int) ((long) rows * (k + 1) / chosen.length);
            chosen[k] = first + random.nextInt(next - first);
        }
        return chosen;
    }

    /** Hyperparameters that some of many rows tell, as {@link #search} found them. */
    public static final class Found {
        private final Evaluated at;
        private final Spreads spreads;

        private Found(Evaluated at, Spreads spreads) {
            this.at = at;
            this.spreads = spreads;
        }
    }

    /**
     * Finds the spreads and the growth of a fit of many rows with some of them, which can be done while the others are still being made.
     *
     * @param some the rows of {@link #searchedIn}
     * @param sample their responses
     * @param priors as for {@link #fit(Design, Sample, List)}
     * @return what {@link #fit(Design, Sample, List, Found)} goes on with
     */
    public Found search(Design some, Sample sample, List<PriorBlock> priors) {
        check(some, sample, priors);
        Fitting fitting = withTolerance(Math.max(tolerance, ENOUGH_TO_COMPARE)).new Fitting(some, sample, List.copyOf(priors));
        // All rows tell of the error scale, later.
        fitting.axes.remove(Axis.SCALE);
        Evaluated found = fitting.mode();
        return new Found(found, fitting.spreads);
    }

    /**
     * Fits the model with spreads and growth that were found with some of the rows; the error scale and the coefficients come from all.
     *
     * @param design n x p
     * @param sample n responses
     * @param priors as for {@link #fit(Design, Sample, List)}
     * @param found what {@link #search} found, with the same priors
     * @return the posterior, the hyperparameters at their mode
     */
    public Posterior fit(Design design, Sample sample, List<PriorBlock> priors, Found found) {
        check(design, sample, priors);
        Fitting fitting = new Fitting(design, sample, List.copyOf(priors));
        return fitting.posterior(List.of(fitting.pluggedIn(found)), new double[] {1});
    }

    private static void check(Design design, Sample sample, List<PriorBlock> priors) {
        if (design.rows() != sample.size()) {
            throw new IllegalArgumentException("a design of " + design.rows() + " rows meets " + sample.size() + " responses");
        }
        if (sample.size() == 0) {
            throw new IllegalArgumentException("a regression needs at least one row");
        }
        boolean[] named = new boolean[design.columns()];
        for (PriorBlock block : priors) {
            for (int j = block.from(); j < block.from() + block.count(); j++) {
                if (j >= named.length || named[j]) {
                    throw new IllegalArgumentException("coefficient " + j + " of the block '" + block.name()
                            + (j >= named.length ? "' is no column" : "' is in two blocks"));
                }
                named[j] = true;
            }
        }
        for (int j = 0; j < named.length; j++) {
            if (!named[j]) {
                throw new IllegalArgumentException("column " + j + " is in no block");
            }
        }
    }

    /** Where nothing is assumed of some coefficients the rows must tell these apart by themselves. */
    private static void refuseConfounded(Design design, List<PriorBlock> priors) {
        List<String> names = new ArrayList<>();
        int[] columns = priors.stream().filter(b -> b.kind() == PriorBlock.Kind.FLAT).flatMapToInt(b -> {
            for (int k = 0; k < b.count(); k++) {
                names.add("'" + b.name() + (b.count() == 1 ? "'" : "' (" + (k + 1) + ")"));
            }
            return IntStream.range(b.from(), b.from() + b.count());
        }).toArray();
        if (columns.length == 0) {
            return;
        }
        Identification told = Identification.of(design.only(columns));
        List<String> without = told.unseen().stream().map(names::get).toList();
        if (!without.isEmpty()) {
            throw new ConfoundedColumnsException("no row tells of " + String.join(", ", without) + ", and nothing is assumed of it");
        }
        for (Identification.Dependence d : told.dependences()) {
            if (d.degree() == Identification.Degree.CONFOUNDED) {
                throw new ConfoundedColumnsException("the rows cannot tell these apart, and nothing is assumed of them: "
                        + String.join(", ", IntStream.range(0, d.direction().size()).map(d.direction()::index).sorted()
                        .mapToObj(names::get).toList()));
            }
        }
    }

    /** How far beyond its own length a step of expectation and maximisation is carried, by how the steps before it shrank. */
    private static final class Reach {
        private double factor = 1.6;
        private double before;

        double step(double move) {
            if (before != 0) {
                // Where each unit of a step takes a share off the next, the whole way is one unit over that share.
                double share = (1 - move / before) / factor;
                factor = share > 0.1 ? Math.min(1 / share, 2 * factor) : Math.min(10, 2 * factor);
            }
            before = move;
            return bounded(factor * move);
        }

        static double bounded(double step) {
            return Math.max(-0.7, Math.min(0.7, step));
        }
    }

    /** A point of the hyperparameters. */
    private record Point(double logScale, double growth, double logSecondary, double logWalk) {
        Point moved(Axis axis, double by) {
            return switch (axis) {
                case SCALE -> new Point(logScale + by, growth, logSecondary, logWalk);
                case GROWTH -> new Point(logScale, growth + by, logSecondary, logWalk);
                case SECONDARY -> new Point(logScale, growth, logSecondary + by, logWalk);
                case WALK -> new Point(logScale, growth, logSecondary, logWalk + by);
            };
        }
    }

    private enum Axis { SCALE, GROWTH, SECONDARY, WALK }

    private record Evaluated(Point point, Mode mode, double logPosterior) {
    }

    /** One fit: the data and the state of the search. */
    private final class Fitting {
        private final Design design;
        private final Sample sample;
        private final List<PriorBlock> priors;
        private final List<Axis> axes = new ArrayList<>();
        private final double walkLogSpread;
        private Spreads spreads;

        Fitting(Design design, Sample sample, List<PriorBlock> priors) {
            this.design = design;
            this.sample = sample;
            this.priors = priors;
            double[] common = new double[priors.size()];
            for (int b = 0; b < common.length; b++) {
                double scale = priors.get(b).learned() ? priors.get(b).spreadAt(0) : 1;
                common[b] = Double.isInfinite(scale) ? Math.max(sample.rounding(), sample.sd()) : 0.7 * scale;
            }
            this.spreads = Spreads.of(priors, design.columns(), common);
            if (errorScale instanceof ErrorScale.Unsure) {
                axes.add(Axis.SCALE);
            }
            if (growthSpread > 0) {
                axes.add(Axis.GROWTH);
            }
            if (secondaryLogSpread > 0 && priors.stream().anyMatch(b -> b.role() == PriorBlock.Role.SECONDARY)) {
                axes.add(Axis.SECONDARY);
            }
            this.walkLogSpread = priors.stream().filter(b -> b.kind() == PriorBlock.Kind.TREND_WALK && b.count() > 0)
                    .mapToDouble(PriorBlock::logSpread).min().orElse(0);
            if (walkLogSpread > 0) {
                axes.add(Axis.WALK);
            }
        }

        Posterior run() {
            if (integration == Integration.MODE) {
                return posterior(List.of(mode()), new double[] {1});
            }
            Evaluated centre = spreadsAndScale();
            if (axes.isEmpty()) {
                return posterior(List.of(centre), new double[] {1});
            }
            double[] step = firstSteps();
            centre = climb(centre, step);
            if (sample.size() <= FEW) {
                centre = climb(centre, step);
            }
            return integrate(centre, step);
        }

        private double[] firstSteps() {
            double[] step = new double[axes.size()];
            for (int a = 0; a < step.length; a++) {
                step[a] = switch (axes.get(a)) {
                    case SCALE -> 1 / Math.sqrt(2.0 * sample.size() + 4);
                    case GROWTH -> Math.min(growthSpread, 2 / Math.sqrt(sample.size()));
                    case SECONDARY -> 0.7 * secondaryLogSpread;
                    case WALK -> 0.7 * walkLogSpread;
                };
            }
            return step;
        }

        /** The hyperparameters at their mode. */
        private Evaluated mode() {
            Evaluated centre = spreadsAndScale();
            if (axes.isEmpty() || axes.equals(List.of(Axis.SCALE))) {
                return centre;
            }
            double[] step = firstSteps();
            List<Axis> farther = new ArrayList<>();
            Evaluated climbed = climb(centre, step, axes, farther);
            return farther.isEmpty() ? climbed : climb(climbed, step, farther, new ArrayList<>());
        }

        /** The mode with spreads and growth found with some of the rows, and the error scale and the coefficients with all. */
        private Evaluated pluggedIn(Found some) {
            Evaluated found = some.at;
            spreads = some.spreads;
            Point point = found.point;
            Spreads at = at(point);
            double[] scales = scales(point);
            Cholesky factor = found.mode.factorWith(design, sample, at, scales, tolerance, 1 + sample.size() / ENOUGH_FOR_STEPS);
            double[] covariance = factor.inverseAlongFactor();
            Mode mode = toward(found.mode, at, scales, factor, ROUGHLY);
            for (int round = 0; round < 5 && errorScale instanceof ErrorScale.Unsure; round++) {
                double next = Math.log(nextScale(mode, covariance, Math.exp(point.logScale)));
                double change = Math.abs(next - point.logScale);
                point = new Point(next, point.growth, point.logSecondary, point.logWalk);
                if (change < 1e-3) {
                    break;
                }
                mode = toward(mode, at, scales(point), factor, ROUGHLY);
            }
            return new Evaluated(point, toward(mode, at, scales(point), factor, tolerance).withOwnFactor(tolerance), Double.NaN);
        }

        private Mode toward(Mode from, Spreads at, double[] scales, Cholesky factor, double within) {
            return from.toward(design, sample, at, scales, factor, within)
                    .orElseGet(() -> from.moved(design, sample, at, scales, within));
        }

        private Posterior posterior(List<Evaluated> points, double[] weights) {
            double[] scales = points.stream().mapToDouble(e -> Math.exp(e.point.logScale)).toArray();
            double[] growths = points.stream().mapToDouble(e -> e.point.growth).toArray();
            return Posterior.of(law, design, sample, points.stream().map(Evaluated::mode).toList(), scales, growths, weights);
        }

        /** Common spreads at the mode of their logarithms and the error scale near its own, by expectation and maximisation. */
        private Evaluated spreadsAndScale() {
            double logScale = Math.log(firstScale());
            boolean known = errorScale instanceof ErrorScale.Stated;
            boolean learned = priors.stream().anyMatch(PriorBlock::learned);
            double[] scales = sample.scales(Math.exp(logScale), growthMean);
            double within = known && !learned ? tolerance : 1e-2;
            Mode mode = sample.size() > FACTORED_EACH_TIME ? Mode.findOfMany(design, sample, law, spreads, scales, within)
                    : Mode.find(design, sample, law, spreads, scales, new double[0], within);
            // With normal errors each round is exact, and the differences between rounds tell how to get there faster.
            boolean exact = learned && law.isNormal() && integration == Integration.MODE;
            Broyden search = new Broyden(priors.size() + 1);
            Reach[] reach = Stream.generate(Reach::new).limit(priors.size()).toArray(Reach[]::new);
            for (int round = 0; round < MOST_ROUNDS && (!known || learned); round++) {
                double[] covariance = exact ? mode.factor().inverse() : mode.factor().inverseAlongFactor();
                double change = 0;
                double[] common = new double[priors.size()];
                double[] from = new double[common.length + 1];
                double[] moves = new double[common.length + 1];
                for (int b = 0; b < common.length; b++) {
                    common[b] = spreads.common(b);
                    if (priors.get(b).learned()) {
                        double move = Math.log(modeOfSpread(b, spreads.expectedSquares(b, mode.coefficients(), covariance)))
                                - Math.log(common[b]);
                        common[b] *= Math.exp(exact ? Reach.bounded(1.6 * move) : reach[b].step(move));
                        change = Math.max(change, Math.abs(move));
                        from[b] = Math.log(spreads.common(b));
                        moves[b] = move;
                    }
                }
                spreads = spreads.withCommon(common);
                if (!known) {
                    double move = Math.log(nextScale(mode, covariance, Math.exp(logScale))) - logScale;
                    logScale += move;
                    change = Math.max(change, Math.abs(move));
                    from[common.length] = logScale - move;
                    moves[common.length] = move;
                }
                if (exact) {
                    double[] next = search.next(from, moves);
                    change = IntStream.range(0, next.length).mapToDouble(k -> Math.abs(next[k] - from[k])).max().orElseThrow();
                    for (int b = 0; b < common.length; b++) {
                        common[b] = priors.get(b).learned() ? Math.exp(next[b]) : common[b];
                    }
                    spreads = spreads.withCommon(common);
                    logScale = known ? logScale : next[common.length];
                }
                boolean last = change < (exact ? 1e-9
                        : integration == Integration.MODE ? Math.max(SETTLED, SETTLED_OF_SOME * tolerance) : 0.03);
                spreads = last ? spreads.withUnseenWidened(mode.coefficients(), mode.factor().inverse()) : spreads;
                Point next = new Point(logScale, growthMean, 0, 0);
                mode = last || sample.size() <= FACTORED_EACH_TIME ? near(mode, next, last ? tolerance : Math.max(tolerance, 1e-2))
                        : mode.movedOnTheWay(at(next), scales(next), Math.max(tolerance, 1e-2));
                if (last) {
                    break;
                }
            }
            Point point = new Point(logScale, growthMean, 0, 0);
            return new Evaluated(point, mode, mode.logMarginal() + logPrior(point));
        }

        private double firstScale() {
            if (errorScale instanceof ErrorScale.Unsure unsure) {
                return Double.isInfinite(unsure.logSpread()) ? Math.max(sample.rounding(), sample.sd()) : unsure.middle();
            }
            return ((ErrorScale.Stated) errorScale).scale();
        }

        /**
         * The common standard deviation t that is most likely on the logarithmic scale for q departures whose squares are expected to
         * add up to s, with a half-normal prior of scale a: t^4 / a^2 + (q - 1) t^2 - s = 0. Where nothing is assumed of it, t^2 = s / q is
         * the step of expectation and maximisation toward its restricted maximum likelihood estimate.
         */
        private double modeOfSpread(int b, double s) {
            double a = priors.get(b).spreadAt(0);
            if (Double.isInfinite(a)) {
                return Math.sqrt(s / priors.get(b).seen());
            }
            double q = priors.get(b).seen() - 1.0;
            return a * Math.sqrt((Math.sqrt(q * q + 4 * s / (a * a)) - q) / 2);
        }

        /** The error scale with which the weighted squares match the degrees of freedom that the coefficients leave. */
        private double nextScale(Mode mode, double[] covariance, double scale) {
            // The rows' information, times the variances of their fitted values, adds up to p less what the prior holds.
            double[] sums = {0, spreads.trace(covariance) - design.columns()};
            Ranges.sum(sample.size(), sums, (part, first, end) -> {
                for (int i = first; i < end; i++) {
                    if (sample.isBound(i) || !sample.followsScale(i)) {
                        part[1] += mode.information(i) * design.row(i).quadratic(covariance, design.columns());
                    } else {
                        double residual = mode.residual(i);
                        part[0] += mode.pull(i) * residual;
                        part[1] += mode.chanceOfNoGrossError(i, residual);
                    }
                }
            });
            double squares = sums[0];
            double left = sums[1];
            boolean anything = errorScale instanceof ErrorScale.Unsure unsure && Double.isInfinite(unsure.logSpread());
            if (!(squares > 0 || anything) || !(left > 0.01)) {
                return scale;
            }
            if (errorScale instanceof ErrorScale.Unsure unsure && Double.isFinite(unsure.logSpread())) {
                // One step of Newton's method on the log posterior of the log scale, the prior included.
                double precision = 1 / (unsure.logSpread() * unsure.logSpread());
                double slope = squares - left - (Math.log(scale) - Math.log(unsure.middle())) * precision;
                double curvature = 2 * left * law.information() + precision;
                return scale * Math.exp(Math.max(-1, Math.min(1, slope / curvature)));
            }
            return Math.max(sample.rounding(), scale * Math.sqrt(squares / left));
        }

        private Spreads at(Point point) {
            return spreads.withScales(Math.exp(point.logSecondary), Math.exp(point.logWalk));
        }

        private Mode near(Mode mode, Point point, double within) {
            return mode.movedLittle(at(point), scales(point), within);
        }

        private double[] scales(Point point) {
            return sample.scales(Math.exp(point.logScale), point.growth);
        }

        private Evaluated evaluate(Point point, Evaluated near) {
            Mode mode = near(near.mode, point, tolerance);
            return new Evaluated(point, mode, mode.logMarginal() + logPrior(point));
        }

        private double logPrior(Point point) {
            double sum = 0;
            if (errorScale instanceof ErrorScale.Unsure unsure) {
                sum -= square((point.logScale - Math.log(unsure.middle())) / unsure.logSpread()) / 2;
            }
            if (growthSpread > 0) {
                sum -= square((point.growth - growthMean) / growthSpread) / 2;
            }
            if (secondaryLogSpread > 0) {
                sum -= square(point.logSecondary / secondaryLogSpread) / 2;
            }
            if (walkLogSpread > 0) {
                sum -= square(point.logWalk / walkLogSpread) / 2;
            }
            return sum;
        }

        /** One step toward the mode by a parabola along each axis; {@code step} becomes the standard deviation along each. */
        private Evaluated climb(Evaluated centre, double[] step) {
            return climb(centre, step, axes, new ArrayList<>());
        }

        /** The same along some axes; those along which the step had to be cut short, because it was far, are added to {@code farther}. */
        private Evaluated climb(Evaluated centre, double[] step, List<Axis> along, List<Axis> farther) {
            Evaluated[] ends = new Evaluated[2 * along.size()];
            IntStream.range(0, ends.length).parallel().forEach(e -> {
                double by = step[axes.indexOf(along.get(e / 2))];
                ends[e] = evaluate(centre.point.moved(along.get(e / 2), e % 2 == 0 ? -by : by), centre);
            });
            Point target = centre.point;
            for (int k = 0; k < along.size(); k++) {
                int a = axes.indexOf(along.get(k));
                double below = ends[2 * k].logPosterior;
                double above = ends[2 * k + 1].logPosterior;
                double curvature = (2 * centre.logPosterior - below - above) / square(step[a]);
                double slope = (above - below) / (2 * step[a]);
                double least = 0.25 / square(widest(axes.get(a)));
                double sd = 1 / Math.sqrt(Math.max(curvature, least));
                double move = slope * sd * sd;
                target = target.moved(axes.get(a), Math.max(-2 * step[a], Math.min(2 * step[a], move)));
                if (Math.abs(move) > 2 * step[a]) {
                    farther.add(axes.get(a));
                }
                step[a] = sd;
            }
            Evaluated moved = evaluate(target, centre);
            Evaluated best = moved.logPosterior >= centre.logPosterior ? moved : centre;
            for (Evaluated end : ends) {
                best = end.logPosterior > best.logPosterior ? end : best;
            }
            return best;
        }

        private double widest(Axis axis) {
            return switch (axis) {
                case SCALE -> Math.min(1, ((ErrorScale.Unsure) errorScale).logSpread());
                case GROWTH -> growthSpread;
                case SECONDARY -> secondaryLogSpread;
                case WALK -> walkLogSpread;
            };
        }

        private Posterior integrate(Evaluated centre, double[] sd) {
            int d = sd.length;
            List<Point> points = new ArrayList<>();
            for (int a = 0; a < d; a++) {
                points.add(centre.point.moved(axes.get(a), RADIUS * Math.sqrt(d) * sd[a]));
                points.add(centre.point.moved(axes.get(a), -RADIUS * Math.sqrt(d) * sd[a]));
            }
            for (int corner = 0; corner < 1 << d && d > 1 && sample.size() <= FEW; corner++) {
                if (d > 3 && Integer.bitCount(corner) % 2 == 1) {
                    continue;
                }
                Point point = centre.point;
                for (int a = 0; a < d; a++) {
                    point = point.moved(axes.get(a), (corner >> a & 1) == 0 ? RADIUS * sd[a] : -RADIUS * sd[a]);
                }
                points.add(point);
            }
            Evaluated[] all = new Evaluated[points.size() + 1];
            all[0] = centre;
            IntStream.range(0, points.size()).parallel().forEach(k -> all[k + 1] = evaluate(points.get(k), centre));
            double outer = 1 / square(RADIUS);
            double[] logWeight = new double[all.length];
            double most = Double.NEGATIVE_INFINITY;
            for (int k = 0; k < all.length; k++) {
                double area = k == 0 ? Math.log(1 - outer) : Math.log(outer / points.size()) + 0.5 * d * square(RADIUS);
                logWeight[k] = area + all[k].logPosterior;
                most = Math.max(most, logWeight[k]);
            }
            List<Evaluated> kept = new ArrayList<>();
            List<Double> weights = new ArrayList<>();
            double sum = 0;
            for (int k = 0; k < all.length; k++) {
                double weight = Math.exp(logWeight[k] - most);
                if (weight > 2e-3) {
                    kept.add(all[k]);
                    weights.add(weight);
                    sum += weight;
                }
            }
            double total = sum;
            return posterior(kept, weights.stream().mapToDouble(w -> w / total).toArray());
        }
    }

    private static double square(double x) {
        return x * x;
    }
}
