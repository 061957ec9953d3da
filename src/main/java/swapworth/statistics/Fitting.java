package swapworth.statistics;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.stream.IntStream;
import java.util.stream.Stream;

/**
 * One fit of a {@link ShrunkenRegression}: its data, and where the search for the hyperparameters stands. Spreads and error scale go toward
 * their mode by expectation and maximisation; then the design of points about it is laid out, or the mode itself taken.
 */
final class Fitting {
    private static final double RADIUS = 1.1;
    /** Up to this many rows the corners of the composite design are taken too, beyond it only its axes. */
    private static final int FEW = 120;
    private static final int MOST_ROUNDS = 60;
    /** How closely modes are found whose log posteriors are compared: these are then right to half the square of it. */
    static final double ENOUGH_TO_COMPARE = 0.03;
    /** How closely the mode is found while the error scale is still to be changed. */
    private static final double ROUGHLY = 0.3;
    /** Spreads held at their mode have settled when the logarithm of none moves by more in a round, */
    private static final double SETTLED = 1e-3;
    /** or, where only some of the rows are looked at and the tolerance is wide, by more than this share of it. */
    private static final double SETTLED_OF_SOME = 1.0 / 15;
    /** By secants, with exact rounds, they are sought until no logarithm moves by more than this; */
    private static final double SETTLED_EXACTLY = 1e-9;
    /** where they are only where the climb to the mode of the hyperparameters begins, this will do. */
    private static final double SETTLED_TO_CLIMB = 0.03;
    /** How closely the mode is found between rounds. */
    private static final double BETWEEN_ROUNDS = 1e-2;
    /** Above this many rows a factor costs more than some further steps with one from nearby. */
    private static final int FACTORED_EACH_TIME = 2000;
    /** So many rows make a factor that steps toward the mode of many more can be taken with. */
    private static final int ENOUGH_FOR_STEPS = 200_000;

    private final ShrunkenRegression how;
    private final Design design;
    private final Sample sample;
    private final List<PriorBlock> priors;
    private final List<Axis> axes = new ArrayList<>();
    private final double walkLogSpread;
    private Spreads spreads;

    Fitting(ShrunkenRegression how, Design design, Sample sample, List<PriorBlock> priors) {
        this.how = how;
        this.design = design.with(Border.of(design, priors));
        this.sample = sample;
        this.priors = priors;
        double[] common = new double[priors.size()];
        for (int b = 0; b < common.length; b++) {
            double scale = priors.get(b).learned() ? priors.get(b).spreadAt(0) : 1;
            common[b] = Double.isInfinite(scale) ? Math.max(sample.rounding(), sample.sd()) : 0.7 * scale;
        }
        this.spreads = Spreads.of(priors, design.columns(), common);
        if (how.errorScale instanceof ErrorScale.Unsure) {
            axes.add(Axis.SCALE);
        }
        if (how.growthSpread > 0) {
            axes.add(Axis.GROWTH);
        }
        if (how.secondaryLogSpread > 0 && priors.stream().anyMatch(b -> b.role() == PriorBlock.Role.SECONDARY)) {
            axes.add(Axis.SECONDARY);
        }
        this.walkLogSpread = priors.stream().filter(b -> b.kind() == PriorBlock.Kind.TREND_WALK && b.count() > 0)
                .mapToDouble(PriorBlock::logSpread).min().orElse(0);
        if (walkLogSpread > 0) {
            axes.add(Axis.WALK);
        }
    }

    Posterior run() {
        Posterior found = integrated();
        design.forgetRoom();
        return found;
    }

    private Posterior integrated() {
        if (how.integration == Integration.MODE) {
            return posterior(List.of(mode()), new double[] {1});
        }
        List<Evaluated> points = points();
        if (how.absence.isSpokenFor(priors, points.get(0).mode)) {
            Fitting without = new Fitting(how, design, sample, how.absence.without(priors));
            double absent = Math.log(how.absence.chance());
            double present = Math.log(1 - how.absence.chance()) + how.absence.logDensityOfSpreads(priors, spreads);
            points = Stream.concat(points.stream().map(e -> e.by(present)), without.points().stream().map(e -> e.by(absent))).toList();
        }
        return weighted(points);
    }

    /** The points that are averaged over, the centre first, each with the logarithm of its part of the marginal likelihood. */
    private List<Evaluated> points() {
        Evaluated centre = spreadsAndScale();
        if (axes.isEmpty()) {
            return List.of(centre);
        }
        double[] step = firstSteps();
        centre = climb(centre, step);
        if (sample.size() <= FEW) {
            centre = climb(centre, step);
        }
        return composite(centre, step);
    }

    /** The hyperparameters but the error scale, of which all rows tell later, at their mode. */
    ShrunkenRegression.Found search() {
        axes.remove(Axis.SCALE);
        Evaluated found = mode();
        design.forgetRoom();
        return new ShrunkenRegression.Found(found, spreads);
    }

    /** The posterior with hyperparameters that were found with some of the rows. */
    Posterior runFrom(ShrunkenRegression.Found found) {
        Evaluated pluggedIn = pluggedIn(found);
        design.forgetRoom();
        return posterior(List.of(pluggedIn), new double[] {1});
    }

    private double[] firstSteps() {
        double[] step = new double[axes.size()];
        for (int a = 0; a < step.length; a++) {
            step[a] = switch (axes.get(a)) {
                case SCALE -> 1 / Math.sqrt(2.0 * sample.size() + 4);
                case GROWTH -> Math.min(how.growthSpread, 2 / Math.sqrt(sample.size()));
                case SECONDARY -> 0.7 * how.secondaryLogSpread;
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
    private Evaluated pluggedIn(ShrunkenRegression.Found some) {
        Evaluated found = some.at;
        spreads = some.spreads;
        Point point = found.point;
        LogPosterior at = about(point);
        Factor factor = found.mode.factorOf(at, how.tolerance, 1 + sample.size() / ENOUGH_FOR_STEPS);
        Covariance covariance = factor.inverseWhereHeld(design.squares());
        Mode mode = toward(found.mode, at, factor, ROUGHLY);
        for (int round = 0; round < 5 && how.errorScale instanceof ErrorScale.Unsure; round++) {
            double next = Math.log(nextScale(mode, at.spreads, covariance, Math.exp(point.logScale)));
            double change = Math.abs(next - point.logScale);
            point = new Point(next, point.growth, point.logSecondary, point.logWalk);
            at = about(point);
            if (change < 1e-3) {
                break;
            }
            mode = toward(mode, at, factor, ROUGHLY);
        }
        design.squares().takeBack(covariance.held());
        return new Evaluated(point, toward(mode, at, factor, how.tolerance).withOwnFactor(how.tolerance), Double.NaN);
    }

    private static Mode toward(Mode from, LogPosterior at, Factor factor, double within) {
        return from.toward(at, factor, within).orElseGet(() -> from.moved(at, within));
    }

    private Posterior posterior(List<Evaluated> points, double[] weights) {
        double[] scales = points.stream().mapToDouble(e -> scale(e.point)).toArray();
        double[] growths = points.stream().mapToDouble(e -> e.point.growth).toArray();
        return Posterior.of(how.law, design, sample, points.stream().map(Evaluated::mode).toList(), scales, growths, weights);
    }

    /** Common spreads at the mode of their logarithms and the error scale near its own. */
    private Evaluated spreadsAndScale() {
        Rounds rounds = new Rounds();
        boolean settled = !rounds.isAnythingSought();
        for (int round = 0; round < MOST_ROUNDS && !settled; round++) {
            settled = rounds.settledByNext();
        }
        Point point = rounds.point();
        return new Evaluated(point, rounds.mode, rounds.mode.logMarginal() + logPrior(point));
    }

    /**
     * Rounds of expectation and maximisation: each moves the spreads, then the error scale, by what the posterior about the mode says of
     * them, and then the mode. In arrays of logarithms the spread of each block comes first, by its number, and the error scale last.
     */
    private final class Rounds {
        private final boolean isScaleKnown = how.errorScale instanceof ErrorScale.Stated;
        private final boolean isSpreadLearned = priors.stream().anyMatch(PriorBlock::learned);
        /** With normal errors each round is exact, and the differences between rounds tell how to get there faster. */
        private final boolean isExact = isSpreadLearned && how.law.isNormal() && how.integration == Integration.MODE;
        private final Broyden secants = new Broyden(priors.size() + 1);
        private final Reach[] reach = Stream.generate(Reach::new).limit(priors.size()).toArray(Reach[]::new);
        private double logScale = Math.log(firstScale());
        private Mode mode;

        Rounds() {
            LogPosterior first = new LogPosterior(design, sample, how.law, spreads, sample.scales(Math.exp(logScale), how.growthMean));
            double within = isAnythingSought() ? BETWEEN_ROUNDS : how.tolerance;
            this.mode = isOfMany() ? Mode.findOfMany(first, within) : Mode.find(first, within);
        }

        boolean isAnythingSought() {
            return !isScaleKnown || isSpreadLearned;
        }

        private boolean isOfMany() {
            return sample.size() > FACTORED_EACH_TIME;
        }

        Point point() {
            return new Point(logScale, how.growthMean, 0, 0);
        }

        /** Goes one round on; whether it was the last, after which the mode is as close as the fit asks. */
        boolean settledByNext() {
            Covariance covariance = isExact ? mode.factor().inverse() : mode.factor().inverseWhereHeld(design.squares());
            double[] from = new double[priors.size() + 1];
            double[] moves = new double[from.length];
            moveSpreads(covariance, from, moves);
            if (!isScaleKnown) {
                moveScale(covariance, from, moves);
            }
            double change = isExact ? movedBySecants(from, moves) : Arrays.stream(moves).map(Math::abs).max().orElseThrow();
            design.squares().takeBack(covariance.held());
            boolean last = change < enough();
            if (last) {
                spreads = spreads.withUnseenWidened(mode.coefficients(), mode.factor().inverse());
            }
            double within = last ? how.tolerance : Math.max(how.tolerance, BETWEEN_ROUNDS);
            LogPosterior next = about(point());
            mode = last || !isOfMany() ? mode.movedLittle(next, within) : mode.movedOnTheWay(next, within);
            return last;
        }

        private void moveSpreads(Covariance covariance, double[] from, double[] moves) {
            double[] common = new double[priors.size()];
            for (int b = 0; b < common.length; b++) {
                common[b] = spreads.common(b);
                if (priors.get(b).learned()) {
                    from[b] = Math.log(common[b]);
                    moves[b] = Math.log(modeOfSpread(b, spreads.expectedSquares(b, mode.coefficients(), covariance))) - from[b];
                    common[b] *= Math.exp(isExact ? Reach.bounded(Reach.FIRST * moves[b]) : reach[b].step(moves[b]));
                }
            }
            spreads = spreads.withCommon(common);
        }

        private void moveScale(Covariance covariance, double[] from, double[] moves) {
            int last = from.length - 1;
            moves[last] = Math.log(nextScale(mode, spreads, covariance, Math.exp(logScale))) - logScale;
            logScale += moves[last];
            from[last] = logScale - moves[last];
        }

        /** Spreads and scale where secants of this round and those before lead; the largest change of a logarithm. */
        private double movedBySecants(double[] from, double[] moves) {
            double[] next = secants.next(from, moves);
            double[] common = new double[priors.size()];
            for (int b = 0; b < common.length; b++) {
                common[b] = priors.get(b).learned() ? Math.exp(next[b]) : spreads.common(b);
            }
            spreads = spreads.withCommon(common);
            logScale = isScaleKnown ? logScale : next[common.length];
            return IntStream.range(0, next.length).mapToDouble(k -> Math.abs(next[k] - from[k])).max().orElseThrow();
        }

        /** The change below which a round is the last. */
        private double enough() {
            if (isExact) {
                return SETTLED_EXACTLY;
            }
            return how.integration == Integration.MODE ? Math.max(SETTLED, SETTLED_OF_SOME * how.tolerance) : SETTLED_TO_CLIMB;
        }
    }

    private double firstScale() {
        if (how.errorScale instanceof ErrorScale.Unsure unsure) {
            return Double.isInfinite(unsure.logSpread()) ? Math.max(sample.rounding(), sample.sd()) : unsure.middle();
        }
        return ((ErrorScale.Stated) how.errorScale).scale();
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

    /** The error scale with which the weighted squares match the degrees of freedom that the coefficients leave at such spreads. */
    private double nextScale(Mode mode, Spreads at, Covariance covariance, double scale) {
        // The rows' information, times the variances of their fitted values, adds up to p less what the prior holds.
        double[] sums = {0, at.trace(covariance) - design.columns()};
        Ranges.sum(sample.size(), sums, (part, first, end) -> {
            for (int i = first; i < end; i++) {
                if (sample.isBound(i) || !sample.followsScale(i)) {
                    part[1] += mode.information(i) * covariance.quadratic(design.row(i));
                } else {
                    double residual = mode.residual(i);
                    part[0] += mode.pull(i) * residual;
                    part[1] += mode.chanceOfNoGrossError(i, residual);
                }
            }
        });
        double squares = sums[0];
        double left = sums[1];
        boolean anything = how.errorScale instanceof ErrorScale.Unsure unsure && Double.isInfinite(unsure.logSpread());
        if (!(squares > 0 || anything) || !(left > 0.01)) {
            return scale;
        }
        if (how.errorScale instanceof ErrorScale.Unsure unsure && Double.isFinite(unsure.logSpread())) {
            // One step of Newton's method on the log posterior of the log scale, the prior included.
            double precision = unsure.hold(Math.log(scale));
            double slope = squares - left - (Math.log(scale) - Math.log(unsure.middle())) * precision;
            double curvature = 2 * left * how.law.information() + precision;
            return Math.max(unsure.least(), scale * Math.exp(Math.max(-1, Math.min(1, slope / curvature))));
        }
        return Math.max(sample.rounding(), scale * Math.sqrt(squares / left));
    }

    /** What the rows and the prior say of the coefficients at a point of the hyperparameters. */
    private LogPosterior about(Point point) {
        return new LogPosterior(design, sample, how.law, spreads.withScales(Math.exp(point.logSecondary), Math.exp(point.logWalk)),
                sample.scales(scale(point), point.growth));
    }

    private double scale(Point point) {
        double scale = Math.exp(point.logScale);
        return how.errorScale instanceof ErrorScale.Unsure unsure ? Math.max(unsure.least(), scale) : scale;
    }

    private Evaluated evaluate(Point point, Evaluated near) {
        Mode mode = near.mode.movedLittle(about(point), how.tolerance);
        return new Evaluated(point, mode, mode.logMarginal() + logPrior(point));
    }

    private double logPrior(Point point) {
        double sum = 0;
        if (how.errorScale instanceof ErrorScale.Unsure unsure) {
            sum += unsure.logDensity(point.logScale);
        }
        if (how.growthSpread > 0) {
            sum -= square((point.growth - how.growthMean) / how.growthSpread) / 2;
        }
        if (how.secondaryLogSpread > 0) {
            sum -= square(point.logSecondary / how.secondaryLogSpread) / 2;
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
            case SCALE -> Math.min(1, ((ErrorScale.Unsure) how.errorScale).logSpread());
            case GROWTH -> how.growthSpread;
            case SECONDARY -> how.secondaryLogSpread;
            case WALK -> walkLogSpread;
        };
    }

    private List<Evaluated> composite(Evaluated centre, double[] sd) {
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
        double volume = 0;
        for (int a = 0; a < d; a++) {
            volume += Math.log(sd[a]) - logUnit(axes.get(a));
        }
        for (int k = 0; k < all.length; k++) {
            double area = k == 0 ? Math.log(1 - outer) : Math.log(outer / points.size()) + 0.5 * d * square(RADIUS);
            all[k] = all[k].by(area + volume);
        }
        return List.of(all);
    }

    /** The logarithm of what the prior along an axis was not divided by, where it is not the same for all fits of the same rows. */
    private double logUnit(Axis axis) {
        return axis == Axis.SECONDARY ? Math.log(how.secondaryLogSpread) : 0;
    }

    /** The posterior of all points but those of next to no weight; the first one is kept, for it is asked what is assumed. */
    private Posterior weighted(List<Evaluated> points) {
        double most = points.stream().mapToDouble(Evaluated::logPosterior).max().orElseThrow();
        List<Evaluated> kept = new ArrayList<>();
        List<Double> weights = new ArrayList<>();
        double sum = 0;
        for (Evaluated point : points) {
            double weight = Math.exp(point.logPosterior - most);
            if (weight > 2e-3 || kept.isEmpty()) {
                kept.add(point);
                weights.add(weight);
                sum += weight;
            }
        }
        double total = sum;
        return posterior(kept, weights.stream().mapToDouble(w -> w / total).toArray());
    }

    /** How far beyond its own length a step of expectation and maximisation is carried, by how the steps before it shrank. */
    private static final class Reach {
        /** So many times its own length before anything is known of how steps shrink. */
        static final double FIRST = 1.6;

        private double factor = FIRST;
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

    record Evaluated(Point point, Mode mode, double logPosterior) {
        Evaluated by(double more) {
            return new Evaluated(point, mode, logPosterior + more);
        }
    }

    private static double square(double x) {
        return x * x;
    }
}
