package swapworth.statistics;

/** The beta law on 0 to 1, in strict arithmetic. */
final class Beta {
    private static final double TINY = 1e-300;

    private Beta() {
    }

    /**
     * Quantiles at standard normal numbers 0, -1/steps, -2/steps and so on: each by Newton's method on the logarithms, begun at its
     * neighbour.
     */
    static double[] lowerHalf(double a, double b, int count, int steps) {
        double[] quantiles = new double[count];
        double logBeta = logGamma(a) + logGamma(b) - logGamma(a + b);
        double log = StrictMath.log(a / (a + b));
        for (int k = 0; k < count; k++) {
            double wanted = StrictMath.log(Normal.strictCumulative(-k / (double) steps));
            for (int step = 0; step < 50; step++) {
                double x = StrictMath.exp(log);
                double below = cumulative(x, a, b, logBeta);
                double density = StrictMath.exp((a - 1) * log + (b - 1) * StrictMath.log1p(-x) - logBeta);
                double move = (wanted - StrictMath.log(below)) * below / (x * density);
                // Half of the way to 1 at most, so that the next place lies within.
                double next = Math.min(log + move, 0.5 * log);
                boolean done = Math.abs(next - log) < 1e-13;
                log = next;
                if (done) {
                    break;
                }
            }
            quantiles[k] = StrictMath.exp(log);
        }
        return quantiles;
    }

    /** The probability of at most x, by the continued fraction of the incomplete beta function (DLMF 8.17.22). */
    private static double cumulative(double x, double a, double b, double logBeta) {
        double front = StrictMath.exp(a * StrictMath.log(x) + b * StrictMath.log1p(-x) - logBeta);
        return x < (a + 1) / (a + b + 2) ? front * fraction(x, a, b) / a : 1 - front * fraction(1 - x, b, a) / b;
    }

    /** The continued fraction from the front, by the ratios of its numerators and denominators. */
    private static double fraction(double x, double a, double b) {
        double c = 1;
        double d = 1 / nonzero(1 - (a + b) * x / (a + 1));
        double value = d;
        for (int m = 1; m < 300; m++) {
            double even = m * (b - m) * x / ((a + 2 * m - 1) * (a + 2 * m));
            d = 1 / nonzero(1 + even * d);
            c = nonzero(1 + even / c);
            value *= d * c;
            double odd = -(a + m) * (a + b + m) * x / ((a + 2 * m) * (a + 2 * m + 1));
            d = 1 / nonzero(1 + odd * d);
            c = nonzero(1 + odd / c);
            double change = d * c;
            value *= change;
            if (Math.abs(change - 1) < 1e-15) {
                return value;
            }
        }
        return value;
    }

    private static double nonzero(double value) {
        return Math.abs(value) < TINY ? TINY : value;
    }

    /** The logarithm of the gamma function for x above 0, by Stirling's series above 10. */
    static double logGamma(double x) {
        double shifted = x;
        double product = 1;
        while (shifted < 10) {
            product *= shifted;
            shifted++;
        }
        double r = 1 / (shifted * shifted);
        double series = (1 / 12.0 - r * (1 / 360.0 - r * (1 / 1260.0 - r * (1 / 1680.0 - r / 1188.0)))) / shifted;
        return (shifted - 0.5) * StrictMath.log(shifted) - shifted + 0.5 * StrictMath.log(2 * Math.PI) + series
                - StrictMath.log(product);
    }
}
