package swapworth.statistics;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/**
 * A price index from pairs of prices of the same thing at two times: ln(second / first) regressed on the two times, by least squares
 * with the first time as base. Source: M. Bailey, R. Muth, H. Nourse, J. Amer. Statist. Assoc. 58 (1963) 933-942.
 */
public final class RepeatPrices {

    private RepeatPrices() {
    }

    /**
     * Two prices of one thing.
     *
     * @param first number of the first time, from 0
     * @param second number of the second time, later than the first
     * @param logRatio ln(second price / first price)
     */
    public record Pair(int first, int second, double logRatio) {

        /** Checks the order. */
        public Pair {
            if (first < 0 || second <= first) {
                throw new IllegalArgumentException("a pair goes from an earlier time to a later one, not from " + first + " to " + second);
            }
        }
    }

    /**
     * The index.
     *
     * @param log ln of the level at each time, 0 at the base
     * @param error standard error of each
     * @param degreesOfFreedom pairs less levels
     */
    public record Levels(double[] log, double[] error, int degreesOfFreedom) {

        /** Copies the arrays in. */
        public Levels {
            log = log.clone();
            error = error.clone();
        }

        @Override
        public double[] log() {
            return log.clone();
        }

        @Override
        public double[] error() {
            return error.clone();
        }

        @Override
        public boolean equals(Object other) {
            return other instanceof Levels levels && degreesOfFreedom == levels.degreesOfFreedom && Arrays.equals(log, levels.log)
                    && Arrays.equals(error, levels.error);
        }

        @Override
        public int hashCode() {
            return (Arrays.hashCode(log) * 31 + Arrays.hashCode(error)) * 31 + degreesOfFreedom;
        }

        @Override
        public String toString() {
            return "ln of the level " + Arrays.toString(log) + ", standard errors " + Arrays.toString(error) + ", " + degreesOfFreedom
                    + " degrees of freedom";
        }
    }

    /**
     * The index of some pairs.
     *
     * @param times number of times, at least 2; time 0 is the base
     * @param pairs more pairs than times less one
     * @return levels and standard errors
     * @throws ConfoundedColumnsException if the pairs do not link every time with the base
     * @throws IllegalArgumentException if there are too few pairs
     */
    public static Levels of(int times, List<Pair> pairs) {
        int free = pairs.size() - (times - 1);
        if (times < 2 || free < 1) {
            throw new IllegalArgumentException(pairs.size() + " pairs are too few for " + times + " times");
        }
        SparseRow[] rows = new SparseRow[pairs.size()];
        double[] y = new double[rows.length];
        for (int i = 0; i < rows.length; i++) {
            Pair p = pairs.get(i);
            SparseRow second = SparseRow.of(new int[] {p.second() - 1}, new double[] {1});
            rows[i] = p.first() == 0 ? second : second.plus(-1, SparseRow.of(new int[] {p.first() - 1}, new double[] {1}));
            y[i] = p.logRatio();
        }
        List<PriorBlock> priors = new ArrayList<>();
        for (int t = 1; t < times; t++) {
            priors.add(PriorBlock.flat("time " + t, t - 1, 1));
        }
        ShrunkenRegression plain = ShrunkenRegression.withDefaults().with(ErrorLaw.NORMAL).with(Integration.MODE);
        Posterior fit = plain.with(new ErrorScale.Stated(1)).withTolerance(1e-12).fit(Design.of(times - 1, rows), Sample.of(y), priors);
        double[] b = fit.mean();
        double squares = 0;
        for (int i = 0; i < rows.length; i++) {
            double r = y[i] - rows[i].dot(b);
            squares += r * r;
        }
        double[] log = new double[times];
        double[] error = new double[times];
        for (int t = 1; t < times; t++) {
            log[t] = b[t - 1];
            error[t] = Math.sqrt(squares / free * fit.variance(SparseRow.of(new int[] {t - 1}, new double[] {1})));
        }
        return new Levels(log, error, free);
    }
}
