package swapworth.statistics;

/**
 * Student's t with a whole number of degrees of freedom, by its finite series, and in the tails, where that would cancel, by the series
 * of the incomplete beta function: M. Abramowitz and I. Stegun, Handbook of Mathematical Functions (1964), formulas 26.7.3, 26.7.4 and
 * 26.5.4.
 */
final class StudentT {

    private static final int KEPT = 32;
    /** Below this probability the finite series has lost too many digits. */
    private static final double TAIL = 1e-3;
    /** The logarithms of the densities at 0 for few degrees of freedom, which are asked for again and again. */
    private static final double[] LOG_CONSTANT = new double[KEPT];
    private static final double[] CONSTANT = new double[KEPT];

    static {
        for (int nu = 1; nu < KEPT; nu++) {
            LOG_CONSTANT[nu] = computeLogConstant(nu);
            CONSTANT[nu] = Math.exp(LOG_CONSTANT[nu]);
        }
    }

    private StudentT() {
    }

    /**
     * The probability of a value of at most t.
     *
     * @param t any number
     * @param nu degrees of freedom, at least 1
     * @return between 0 and 1; to 12 digits of itself, below t = 0
     */
    public static double cumulative(double t, int nu) {
        if (t > 0) {
            return 1 - lower(-t, nu);
        }
        return lower(t, nu);
    }

    /** The lower tail for t of at most 0. */
    private static double lower(double t, int nu) {
        double x = t * t / nu;
        double cos2 = 1 / (1 + x);
        double term = 1;
        double sum = 1;
        boolean odd = nu % 2 == 1;
        for (int k = odd ? 3 : 2; k <= nu - 2; k += 2) {
            term *= cos2 * (k - 1) / k;
            sum += term;
        }
        double sin = Math.sqrt(x * cos2);
        double angle = Math.atan(Math.sqrt(x));
        double tail = !odd ? 0.5 * (1 - sin * sum)
                : 0.5 - (nu == 1 ? angle : angle + sin * Math.sqrt(cos2) * sum) / Math.PI;
        return tail > TAIL ? tail : farTail(cos2, nu);
    }

    /** Half of the incomplete beta function of nu / 2 and 1 / 2 at y by its series, of which no term is below 0. */
    private static double farTail(double y, int nu) {
        double term = 1;
        double sum = 1;
        for (int k = 0; term > 1e-17 * sum; k++) {
            term *= y * (nu + 1 + 2 * k) / (nu + 2 + 2 * k);
            sum += term;
        }
        return constant(nu) * Math.sqrt((1 - y) / nu) * Math.exp(0.5 * nu * Math.log(y)) * sum;
    }

    /** The logarithm of the density at 0. */
    static double logConstant(int nu) {
        return nu < KEPT ? LOG_CONSTANT[nu] : computeLogConstant(nu);
    }

    /** The density at 0. */
    static double constant(int nu) {
        return nu < KEPT ? CONSTANT[nu] : Math.exp(computeLogConstant(nu));
    }

    private static double computeLogConstant(int nu) {
        return logGammaOfHalf(nu + 1) - logGammaOfHalf(nu) - 0.5 * Math.log(nu * Math.PI);
    }

    /** The logarithm of Gamma(k / 2) for a whole k of at least 1, from Gamma(1/2) and Gamma(1) upwards. */
    private static double logGammaOfHalf(int k) {
        double sum = k % 2 == 0 ? 0 : 0.5 * Math.log(Math.PI);
        for (int j = k % 2 == 0 ? 2 : 1; j < k; j += 2) {
            sum += Math.log(0.5 * j);
        }
        return sum;
    }
}
