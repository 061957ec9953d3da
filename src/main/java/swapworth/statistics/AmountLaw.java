package swapworth.statistics;

import java.util.Arrays;

/**
 * What an amount that is not known yet may turn out to be: a distribution, held as its quantile function of a standard normal number, so
 * that amounts can be drawn together. The function is tabulated at {@value #KNOTS} places and taken as straight between two of them; all
 * of it is in strict arithmetic, the same on every machine.
 */
public final class AmountLaw {
    private static final int STEPS_A_UNIT = 128;
    private static final int REACH = 8;
    private static final int KNOTS = 2 * REACH * STEPS_A_UNIT + 1;
    private static final int MIDDLE = REACH * STEPS_A_UNIT;
    /** The weight of the likely value in the textbook form of the PERT law. */
    private static final double PERT_WEIGHT = 4;

    private final double mean;
    private final double sd;
    private final double[] table;

    private AmountLaw(double mean, double sd, double[] table) {
        this.mean = mean;
        this.sd = sd;
        this.table = table;
    }

    /**
     * An amount that is known.
     *
     * @param amount the amount
     * @return a law without spread
     */
    public static AmountLaw exactly(double amount) {
        double[] table = new double[KNOTS];
        Arrays.fill(table, finite(amount));
        return new AmountLaw(amount, 0, table);
    }

    /**
     * The beta law between two ends that leans to a likely value, with shapes 1 + 4 (likely - low) / (high - low) and
     * 1 + 4 (high - likely) / (high - low): mean (low + 4 likely + high) / 6, variance (mean - low) (high - mean) / 7.
     *
     * @param low the least that is possible
     * @param likely the most likely value
     * @param high the most that is possible
     * @return the law; without spread where the ends are one
     * @throws IllegalArgumentException if the three are not in order
     */
    public static AmountLaw pert(double low, double likely, double high) {
        ordered(low, likely, high);
        if (low == high) {
            return exactly(low);
        }
        double span = high - low;
        double lower = 1 + PERT_WEIGHT * (likely - low) / span;
        double upper = 1 + PERT_WEIGHT * (high - likely) / span;
        double mean = (low + PERT_WEIGHT * likely + high) / (PERT_WEIGHT + 2);
        double[] table = new double[KNOTS];
        double[] fromLow = Beta.lowerHalf(lower, upper, MIDDLE + 1, STEPS_A_UNIT);
        double[] fromHigh = Beta.lowerHalf(upper, lower, MIDDLE + 1, STEPS_A_UNIT);
        for (int k = 0; k <= MIDDLE; k++) {
            table[MIDDLE + k] = high - span * fromHigh[k];
            table[MIDDLE - k] = low + span * fromLow[k];
        }
        return new AmountLaw(mean, Math.sqrt((mean - low) * (high - mean) / (PERT_WEIGHT + 3)), table);
    }

    /**
     * The triangular law between two ends with its top at a likely value: mean (low + likely + high) / 3.
     *
     * @param low the least that is possible
     * @param likely the most likely value
     * @param high the most that is possible
     * @return the law; without spread where the ends are one
     * @throws IllegalArgumentException if the three are not in order
     */
    public static AmountLaw triangular(double low, double likely, double high) {
        ordered(low, likely, high);
        if (low == high) {
            return exactly(low);
        }
        double span = high - low;
        double[] table = new double[KNOTS];
        for (int k = 0; k < KNOTS; k++) {
            double below = Normal.strictCumulative(place(k));
            double above = Normal.strictCumulative(-place(k));
            table[k] = below * span <= likely - low ? low + Math.sqrt(below * span * (likely - low))
                    : high - Math.sqrt(above * span * (high - likely));
        }
        double squares = low * low + likely * likely + high * high - low * likely - low * high - likely * high;
        return new AmountLaw((low + likely + high) / 3, Math.sqrt(squares / 18), table);
    }

    /**
     * The law of an amount whose logarithm is normal: mean median exp(sigma<sup>2</sup> / 2).
     *
     * @param median the amount that is exceeded half the time, above 0
     * @param sigma the spread of its logarithm, at least 0
     * @return the law
     */
    public static AmountLaw lognormal(double median, double sigma) {
        if (!(finite(median) > 0) || !(finite(sigma) >= 0)) {
            throw new IllegalArgumentException("an ln-normal law needs a median above 0 and a spread of at least 0, not " + median + " and "
                    + sigma);
        }
        double[] table = new double[KNOTS];
        for (int k = 0; k < KNOTS; k++) {
            table[k] = median * StrictMath.exp(sigma * place(k));
        }
        double mean = median * StrictMath.exp(0.5 * sigma * sigma);
        return new AmountLaw(mean, mean * Math.sqrt(StrictMath.expm1(sigma * sigma)), table);
    }

    /**
     * The normal law.
     *
     * @param mean its middle
     * @param sd its standard deviation, at least 0
     * @return the law
     */
    public static AmountLaw normal(double mean, double sd) {
        if (!(finite(sd) >= 0)) {
            throw new IllegalArgumentException("a normal law needs a spread of at least 0, not " + sd);
        }
        double[] table = new double[KNOTS];
        for (int k = 0; k < KNOTS; k++) {
            table[k] = finite(mean) + sd * place(k);
        }
        return new AmountLaw(mean, sd, table);
    }

    private static double finite(double value) {
        if (!Double.isFinite(value)) {
            throw new IllegalArgumentException("this is no amount: " + value);
        }
        return value;
    }

    private static void ordered(double low, double likely, double high) {
        if (!(finite(low) <= likely && likely <= finite(high))) {
            throw new IllegalArgumentException("low, likely and high must stand in this order, not " + low + ", " + likely + ", " + high);
        }
    }

    private static double place(int knot) {
        return (knot - MIDDLE) / (double) STEPS_A_UNIT;
    }

    /**
     * The mean.
     *
     * @return in the unit of the amount, by the closed form
     */
    public double mean() {
        return mean;
    }

    /**
     * The standard deviation.
     *
     * @return in the unit of the amount, by the closed form
     */
    public double sd() {
        return sd;
    }

    /**
     * The amount below which a share of all outcomes lies.
     *
     * @param probability above 0 and below 1
     * @return the quantile
     */
    public double quantile(double probability) {
        return at(Normal.quantile(probability));
    }

    /**
     * Draws of the amount.
     *
     * @param normals standard normal numbers; amounts drawn by the same numbers go together
     * @return as many amounts
     */
    public double[] draws(double[] normals) {
        double[] amounts = new double[normals.length];
        for (int i = 0; i < amounts.length; i++) {
            amounts[i] = at(normals[i]);
        }
        return amounts;
    }

    /** The amount that belongs to a standard normal number. */
    double at(double z) {
        double along = (z + REACH) * STEPS_A_UNIT;
        int knot = Math.max(0, Math.min(KNOTS - 2, (int) along));
        double low = table[knot];
        double part = Math.max(0, Math.min(1, along - knot));
        return low + part * (table[knot + 1] - low);
    }
}
