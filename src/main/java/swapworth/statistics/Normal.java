package swapworth.statistics;

/** The standard normal law. */
public final class Normal {
    private static final double LOG_ROOT_TWO_PI = 0.5 * StrictMath.log(2 * Math.PI);

    private Normal() {
    }

    /**
     * The probability of a value of at most z: near the middle by the power series of the integral, in the tails by its continued
     * fraction (M. Abramowitz and I. Stegun, Handbook of Mathematical Functions, 1964, formulas 26.2.11 and 26.2.14).
     *
     * @param z any number
     * @return between 0 and 1, to about 14 digits
     */
    public static double cumulative(double z) {
        return cumulative(z, density(z));
    }

    /** The same in strict arithmetic: the same bits on every machine. */
    static double strictCumulative(double z) {
        return cumulative(z, StrictMath.exp(-0.5 * z * z - LOG_ROOT_TWO_PI));
    }

    private static double cumulative(double z, double density) {
        double a = Math.abs(z);
        double tail;
        if (a > 38) {
            tail = 0;
        } else if (a < 3) {
            double term = a;
            double sum = a;
            for (int k = 3; Math.abs(term) > 1e-17 * sum; k += 2) {
                term *= a * a / k;
                sum += term;
            }
            tail = 0.5 - sum * density;
        } else {
            double fraction = a;
            for (int k = 120; k >= 1; k--) {
                fraction = a + k / fraction;
            }
            tail = density / fraction;
        }
        return z > 0 ? 1 - tail : tail;
    }

    /**
     * The value below which the stated probability lies.
     *
     * @param probability above 0 and below 1
     * @return the quantile, to about 12 digits
     * @throws IllegalArgumentException if the probability is not between 0 and 1
     */
    public static double quantile(double probability) {
        if (!(probability > 0 && probability < 1)) {
            throw new IllegalArgumentException("a probability must lie between 0 and 1, not " + probability);
        }
        double low = -39;
        double high = 39;
        double z = nearly(probability);
        for (int step = 0; step < 200; step++) {
            double miss = cumulative(z) - probability;
            if (miss > 0) {
                high = z;
            } else {
                low = z;
            }
            double next = z - miss / density(z);
            if (!(next > low && next < high)) {
                next = 0.5 * (low + high);
            }
            if (Math.abs(next - z) <= 1e-14 * Math.max(1, Math.abs(z))) {
                return next;
            }
            z = next;
        }
        return z;
    }

    /** The quantile to three digits, from where a few steps lead to all: formula 26.2.23 of Abramowitz and Stegun (from memory). */
    private static double nearly(double probability) {
        double t = Math.sqrt(-2 * Math.log(Math.min(probability, 1 - probability)));
        double z = t - (2.515517 + t * (0.802853 + t * 0.010328)) / (1 + t * (1.432788 + t * (0.189269 + t * 0.001308)));
        return probability < 0.5 ? -z : z;
    }

    static double density(double z) {
        return Math.exp(-0.5 * z * z - LOG_ROOT_TWO_PI);
    }
}
