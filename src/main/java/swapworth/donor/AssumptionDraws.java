package swapworth.donor;

import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;
import swapworth.assumptions.Assumption;
import swapworth.assumptions.Assumptions;
import swapworth.statistics.RandomNumbers;

/**
 * Draws of assumptions, one of each for every draw of a simulation: what is assumed is as unsure as its spread says, and the same in
 * every part and car of one draw.
 */
final class AssumptionDraws {
    private final Assumptions assumptions;
    private final int count;
    private final long seed;
    private final Map<String, double[]> drawn = new ConcurrentHashMap<>();

    AssumptionDraws(Assumptions assumptions, int count, long seed) {
        this.assumptions = assumptions;
        this.count = count;
        this.seed = seed;
    }

    Assumptions assumptions() {
        return assumptions;
    }

    /** Normal about the middle, held between two ends. */
    double[] between(String name, double least, double most) {
        return drawn.computeIfAbsent(name, n -> {
            Assumption a = assumptions.get(n);
            RandomNumbers random = RandomNumbers.of(seed, n);
            double[] values = new double[count];
            for (int i = 0; i < count; i++) {
                values[i] = Math.max(least, Math.min(most, a.middle() + a.spread() * random.normal()));
            }
            return values;
        });
    }

    /** A share in per cent, as a number between 0 and 1. */
    double[] share(String name) {
        double[] percent = between(name, 0, 100);
        return drawn.computeIfAbsent(name + "/100", n -> scaled(percent));
    }

    private static double[] scaled(double[] percent) {
        double[] shares = new double[percent.length];
        for (int i = 0; i < shares.length; i++) {
            shares[i] = percent[i] / 100;
        }
        return shares;
    }

    /** A size that is never below 0: ln-normal with the middle as its mean and the spread as its standard deviation. */
    double[] size(String name) {
        return drawn.computeIfAbsent(name, n -> {
            Assumption a = assumptions.get(n);
            return sizes(a.middle(), a.spread(), RandomNumbers.of(seed, n));
        });
    }

    /** Another size of the same kind, such as a user's own figure; without spread where it is stated. */
    double[] sizes(double mean, double sd, RandomNumbers random) {
        double[] values = new double[count];
        // sigma^2 = ln(1 + (sd / mean)^2), mu = ln mean - sigma^2 / 2.
        double variance = mean > 0 ? StrictMath.log1p(sd / mean * (sd / mean)) : 0;
        double sigma = Math.sqrt(variance);
        for (int i = 0; i < count; i++) {
            values[i] = mean > 0 && sd > 0 ? mean * StrictMath.exp(sigma * random.normal() - variance / 2) : mean;
        }
        return values;
    }
}
