package swapworth.statistics;

import java.util.Arrays;

/**
 * How heavy the tails of single responses about their predictions are: the degrees of freedom of Student's t, learned from left-out
 * residuals. A law with too heavy tails makes the 95 % range too wide where the 80 % range is right, one with too light tails too narrow.
 *
 * <p>Each of 3, 4, 5, 6, 8, 12, 20 and 30 degrees has a probability beforehand, most for the few degrees that listings of cars show; the
 * likelihood of the residuals that are no more than {@value #FAR} normal deviates out, their scale at its most likely, moves it. What is
 * taken is the number whose inverse is nearest to the mean of 1 / degrees, in which the width of a range is nearly straight. A dozen
 * residuals change next to nothing; of normal errors a hundred and fifty are enough to see that tails are lighter, and some thousands to
 * see how light.
 *
 * @param degreesOfFreedom a whole number of at least 1
 * @param residuals n, the number of residuals that it was learned from
 */
public record ErrorTail(int degreesOfFreedom, int residuals) {
    private static final int[] DEGREES = {3, 4, 5, 6, 8, 12, 20, 30};
    /**
     * Chosen so that the mean of 1 / degrees is that of four. On three files of open listings the likelihood was highest at 3 (7,330 prices
     * of 2018-19), 5 (1,810 of dealers, 2017) and 4 (629 of 2009).
     */
    private static final double[] BEFOREHAND = {0.300, 0.300, 0.170, 0.100, 0.070, 0.040, 0.015, 0.005};
    /** A residual farther out than this may be a mistyped price as well, and is passed over. */
    private static final double FAR = 3.3;
    private static final int STEPS = 8;
    /** How far to either side of a scale the likelihood is looked at, in its logarithm. */
    private static final double ASIDE = 0.05;

    /** Checks the degrees of freedom. */
    public ErrorTail {
        if (degreesOfFreedom < 1 || residuals < 0) {
            throw new IllegalArgumentException("no tail: " + degreesOfFreedom + " degrees of freedom by " + residuals + " residuals");
        }
    }

    /**
     * The tail that some residuals tell.
     *
     * @param assumed the law that they were predicted by, with its share of gross errors
     * @param z left-out residuals: the standard normal quantile of the predictive probability of each response, their common factor (see
     *     {@link RangeStretch}) taken out or not; any number of them
     * @return the tail; that of the assumed law where it is normal or there are no residuals
     * @throws IllegalArgumentException if a residual is not a number
     */
    public static ErrorTail of(ErrorLaw assumed, double... z) {
        if (Arrays.stream(z).anyMatch(Double::isNaN)) {
            throw new IllegalArgumentException("a residual is not a number");
        }
        if (assumed.isNormal() || z.length == 0) {
            return new ErrorTail(assumed.degreesOfFreedom(), 0);
        }
        double far = size(assumed, FAR);
        double[] size = Arrays.stream(z).map(Math::abs).filter(a -> a < FAR).map(a -> size(assumed, a)).toArray();
        double[] log = new double[DEGREES.length];
        for (int k = 0; k < log.length; k++) {
            log[k] = Math.log(BEFOREHAND[k]) + logLikelihood(ErrorLaw.student(DEGREES[k]).withGrossErrors(assumed.grossShare()), size, far);
        }
        double most = Arrays.stream(log).max().orElseThrow();
        double sum = 0;
        double inverse = 0;
        for (int k = 0; k < log.length; k++) {
            double weight = Math.exp(log[k] - most);
            sum += weight;
            inverse += weight / DEGREES[k];
        }
        return new ErrorTail(nearest(inverse / sum), z.length);
    }

    private static int nearest(double inverse) {
        int fewer = (int) Math.floor(1 / inverse);
        return 1.0 / fewer - inverse <= inverse - 1.0 / (fewer + 1) ? fewer : fewer + 1;
    }

    /** How far out an error of scale 1 lies of which a normal deviate is known: the same probability lies beyond it. */
    private static double size(ErrorLaw law, double deviate) {
        double beyond = Normal.cumulative(-deviate);
        double low = 0;
        double high = 1;
        while (law.cumulative(-high) > beyond) {
            low = high;
            high *= 2;
        }
        for (int step = 0; step < 40; step++) {
            double middle = 0.5 * (low + high);
            if (law.cumulative(-middle) > beyond) {
                low = middle;
            } else {
                high = middle;
            }
        }
        return 0.5 * (low + high);
    }

    /** The logarithm of the likelihood of errors that lie less far out than some distance, at their most likely scale. */
    private static double logLikelihood(ErrorLaw law, double[] size, double far) {
        double scale = 1;
        for (int step = 0; step < STEPS; step++) {
            double squares = 0;
            double usual = 0;
            for (double a : size) {
                squares += law.weight(a / scale) * a * a;
                usual += law.chanceOfNoGrossError(a / scale);
            }
            scale = Math.sqrt(Math.max(1e-6, squares / Math.max(1e-6, usual)));
        }
        // That scale is of errors with none passed over: the top of the parabola through three scales about it is near enough.
        double here = logLikelihood(law, size, far, scale);
        double below = logLikelihood(law, size, far, scale * Math.exp(-ASIDE));
        double above = logLikelihood(law, size, far, scale * Math.exp(ASIDE));
        double bend = below + above - 2 * here;
        return bend < 0 ? here - (above - below) * (above - below) / (8 * bend) : Math.max(here, Math.max(below, above));
    }

    private static double logLikelihood(ErrorLaw law, double[] size, double far, double scale) {
        double within = law.above(-far / scale) - law.above(far / scale);
        double sum = -size.length * Math.log(scale * within);
        for (double a : size) {
            sum += law.logLikelihood(a / scale);
        }
        return sum;
    }

    /** The factor on the scale of errors of another law with which eight in ten of these lie as far out as of that one. */
    double scaleOf(ErrorLaw other) {
        return other.degreesOfFreedom() == degreesOfFreedom ? 1
                : Mixture.of(other, 0, 0, 1).quantile(0.9) / Mixture.of(ErrorLaw.student(degreesOfFreedom), 0, 0, 1).quantile(0.9);
    }
}
