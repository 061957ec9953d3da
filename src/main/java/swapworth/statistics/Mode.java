package swapworth.statistics;

import java.util.Optional;

/**
 * The most likely coefficients at stated hyperparameters, found by iterated weighted least squares, and the shape of the posterior
 * about them.
 */
final class Mode {
    /** Steps of a linear fit: each wins back about seven digits or more, its gradient being taken in twice the precision. */
    private static final int LINEAR_STEPS = 4;
    private static final int MOST_STEPS = 200;
    private static final int MOST_CHEAP_STEPS = 40;
    /** A step whose square is more than this share of that of the one before: a factor of its own gets there sooner. */
    private static final double TOO_SLOW = 0.5;
    /** Steps from a cold start before the law of the errors is taken as it is. */
    private static final int COLD_STEPS = 4;
    private static final int FEWEST_COLD_STEPS = 3;

    private final LogPosterior posterior;
    private final double[] coefficients;
    private final double[] pull;
    private final double[] information;
    private final Factor factor;

    private Mode(LogPosterior posterior, double[] coefficients, double[] pull, double[] information, Factor factor) {
        this.posterior = posterior;
        this.coefficients = coefficients;
        this.pull = pull;
        this.information = information;
        this.factor = factor;
    }

    /**
     * Finds the mode from a cold start.
     *
     * @param tolerance the steps end when one moves the coefficients by less than this share of their own uncertainty
     */
    static Mode find(LogPosterior posterior, double tolerance) {
        Search search = new Search(posterior, posterior.spreads.mean());
        if (!posterior.isLinear()) {
            search.begin(COLD_STEPS);
        }
        return search.ended(tolerance);
    }

    /** The same where the rows are many, and a factor costs as much as several steps with one from nearby. */
    static Mode findOfMany(LogPosterior posterior, double tolerance) {
        Search search = new Search(posterior, posterior.spreads.mean());
        search.begin(FEWEST_COLD_STEPS);
        return search.reached().moved(posterior, tolerance);
    }

    /** Steps of weighted least squares, each with a factor of its own. */
    private static final class Search {
        private final LogPosterior posterior;
        private final double[] weight;
        private final double[] pull;
        private final double[] b;

        Search(LogPosterior posterior, double[] start) {
            this.posterior = posterior;
            this.weight = new double[posterior.design.rows()];
            this.pull = new double[weight.length];
            this.b = start.clone();
        }

        /** The first steps from a cold start: plain, then with absolute-value weights, before far rows may be weighed down. */
        void begin(int steps) {
            for (int step = 0; step < steps; step++) {
                step(step == 0 ? LogPosterior.Phase.PLAIN : LogPosterior.Phase.ABSOLUTE, 1);
            }
        }

        /** The mode, when steps have become as small as the tolerance asks. */
        Mode ended(double tolerance) {
            if (posterior.isLinear()) {
                for (int step = 0; step < LINEAR_STEPS; step++) {
                    linearStep();
                }
            } else {
                // Weights count more information than rows have, so that steps of least squares fall short.
                double length = 1 + 0.8 * (1 - posterior.law.information());
                for (int step = 0; step < MOST_STEPS; step++) {
                    if (step(LogPosterior.Phase.LAW, length) <= tolerance) {
                        break;
                    }
                }
            }
            return reached().withOwnFactor(tolerance);
        }

        /** One step, some times as long as least squares would have it; returns its size against the uncertainty of the coefficients. */
        private double step(LogPosterior.Phase phase, double length) {
            posterior.weigh(b, phase, weight, pull);
            return step(posterior.gradient(pull, b), length);
        }

        private void linearStep() {
            posterior.weigh(b, LogPosterior.Phase.LAW, weight, pull);
            step(posterior.preciseGradient(weight, b), 1);
        }

        private double step(double[] gradient, double length) {
            LogPosterior.Step next = posterior.step(weight, pull, b, gradient);
            for (int j = 0; j < b.length; j++) {
                b[j] += length * next.move()[j];
            }
            return next.size();
        }

        /** As if the coefficients reached so far were the mode, without a factor. */
        Mode reached() {
            return at(posterior, b, Cholesky.of(new double[0], 0));
        }
    }

    /** The posterior's shape about coefficients that are the mode, with a factor that was found before. */
    private static Mode at(LogPosterior posterior, double[] b, Factor factor) {
        double[] pull = new double[posterior.design.rows()];
        double[] information = posterior.design.perRow().with(weight -> {
            posterior.weigh(b, LogPosterior.Phase.LAW, weight, pull);
            return posterior.information(b, weight);
        });
        return new Mode(posterior, b, pull, information, factor);
    }

    /**
     * The mode of another posterior of the same coefficients not far from this one: at other hyperparameters, or with other rows. Steps are
     * taken with one factor, found where they begin, for they cost a small part of a new one. Where they do not settle soon, the mode is
     * found by full steps.
     *
     * @param tolerance as for {@link #find}
     */
    Mode moved(LogPosterior other, double tolerance) {
        return movedNearly(other, tolerance).map(mode -> mode.withOwnFactor(tolerance))
                .orElseGet(() -> new Search(other, coefficients).ended(tolerance));
    }

    /** The same by the factor of this mode, unless the other posterior turns out to be too far for that. */
    Mode movedLittle(LogPosterior other, double tolerance) {
        return toward(other, factor, tolerance, TOO_SLOW).map(mode -> mode.withOwnFactor(tolerance))
                .orElseGet(() -> moved(other, tolerance));
    }

    /** The same with the factor found where the steps began: for one that is to be moved again. */
    Mode movedOnTheWay(LogPosterior other, double tolerance) {
        return movedNearly(other, tolerance).orElseGet(() -> moved(other, tolerance));
    }

    private Optional<Mode> movedNearly(LogPosterior other, double tolerance) {
        return other.law.isNormal() ? Optional.empty() : toward(other, factorOf(other, tolerance, 1), tolerance);
    }

    /**
     * The factor of another posterior at these coefficients, or about the same.
     *
     * @param every one row out of so many stands for all of them, near enough to take steps with; 1 for all rows
     */
    Factor factorOf(LogPosterior other, double tolerance, int every) {
        Room room = other.design.perRow();
        return room.with(weight -> {
            room.lendTo(slope -> other.weigh(coefficients, LogPosterior.Phase.LAW, weight, slope));
            for (int i = 0; i < weight.length; i++) {
                weight[i] = i % every == 0 ? every * other.heldInformation(i, weight[i]) : 0;
            }
            return other.factor(weight, tolerance);
        });
    }

    /**
     * The mode as steps with a stated factor find it, that factor standing for its own; empty where they do not settle soon, and with
     * normal errors, whose full steps are closer. With many rows a factor costs as much as a dozen steps.
     */
    Optional<Mode> toward(LogPosterior other, Factor near, double tolerance) {
        return toward(other, near, tolerance, 1);
    }

    /** The same, given up as soon as the square of a step is not below a share of that of the step before. */
    private Optional<Mode> toward(LogPosterior other, Factor near, double tolerance, double share) {
        if (other.law.isNormal()) {
            return Optional.empty();
        }
        Room room = other.design.perRow();
        return room.with(weight -> room.with(slope -> toward(other, near, tolerance, share, weight, slope)));
    }

    /** The same with room for a weight and a slope of each row. */
    private Optional<Mode> toward(LogPosterior other, Factor near, double tolerance, double share, double[] weight, double[] slope) {
        int p = coefficients.length;
        Design rows = other.design;
        double[] b = coefficients.clone();
        double before = Double.POSITIVE_INFINITY;
        for (int step = 0; step < MOST_CHEAP_STEPS; step++) {
            double[] gradient = other.priorGradient(b);
            double[] kept = rows.forKept(b);
            rows.sum(gradient, (sums, first, end) -> {
                other.weigh(b, kept, LogPosterior.Phase.LAW, weight, slope, first, end);
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
                return Optional.of(at(other, b, near));
            }
        }
        return Optional.empty();
    }

    /** The same mode with a factor found at its own coefficients. */
    Mode withOwnFactor(double tolerance) {
        return new Mode(posterior, coefficients, pull, information, posterior.factor(information, tolerance));
    }

    Design design() {
        return posterior.design;
    }

    double[] coefficients() {
        return coefficients;
    }

    Spreads spreads() {
        return posterior.spreads;
    }

    Factor factor() {
        return factor;
    }

    /** The error scale of each row. */
    double[] scale() {
        return posterior.scale;
    }

    /** The slope of the log density of row i at its fitted value. */
    double pull(int i) {
        return pull[i];
    }

    /** By how much the response of row i, which is no bound, lies above its fitted value: its pull over its weight. */
    double residual(int i) {
        return information[i] > 0 ? pull[i] * posterior.law.information() / information[i]
                : posterior.sample.response(i) - posterior.design.dot(i, coefficients);
    }

    /** The chance that row i, which has this residual, is no gross error. */
    double chanceOfNoGrossError(int i, double residual) {
        return posterior.law.chanceOfNoGrossError(residual / posterior.scale[i]);
    }

    /** What row i adds to the precision of its fitted value. */
    double information(int i) {
        return information[i];
    }

    /** The fitted value of each row. */
    double[] fitted() {
        return posterior.fitted(coefficients);
    }

    /** The gradient of the log posterior, which is 0 but for how closely the mode was sought. */
    double[] gradient() {
        return posterior.gradient(pull, coefficients);
    }

    /** The slope of the log density of each row at other fitted values. */
    void slopesAt(double[] fitted, double[] weight, double[] slope) {
        for (int i = 0; i < fitted.length; i++) {
            posterior.weigh(i, posterior.sample.response(i) - fitted[i], LogPosterior.Phase.LAW, weight, slope);
        }
    }

    /** The log density of all rows at the mode. */
    double logLikelihood() {
        return posterior.logLikelihood(coefficients);
    }

    /** The log marginal likelihood of the rows by Laplace's method; exact for normal errors and a proper prior. */
    double logMarginal() {
        int p = posterior.design.columns();
        return logLikelihood() + posterior.spreads.logDensity(coefficients) + 0.5 * p * Math.log(2 * Math.PI)
                - 0.5 * factor.logDeterminant();
    }
}
