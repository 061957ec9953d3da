package swapworth.world;

import java.util.List;

/**
 * Random numbers that are the same on every machine and in every release of Java: SplitMix64 (Steele, Lea and Flood 2014),
 * with {@link StrictMath} for everything that is not plain arithmetic.
 */
final class Chance {

    private static final long GOLDEN_GAMMA = 0x9e3779b97f4a7c15L;

    private long state;

    private Chance(long state) {
        this.state = state;
    }

    /** A stream of its own for each purpose, so that a change in one part of a world leaves the others as they were. */
    static Chance of(long seed, String purpose) {
        Chance chance = new Chance(seed);
        for (int i = 0; i < purpose.length(); i++) {
            chance.state = chance.nextLong() ^ purpose.charAt(i);
        }
        return chance;
    }

    private long nextLong() {
        state += GOLDEN_GAMMA;
        long z = state;
        z = (z ^ z >>> 30) * 0xbf58476d1ce4e5b9L;
        z = (z ^ z >>> 27) * 0x94d049bb133111ebL;
        return z ^ z >>> 31;
    }

    /** Uniform on [0, 1). */
    double uniform() {
        return (nextLong() >>> 11) * 0x1.0p-53;
    }

    double uniform(double low, double high) {
        return low + (high - low) * uniform();
    }

    /** A whole number from low to high, both included. */
    int whole(int low, int high) {
        return low + (int) (uniform() * (high - low + 1));
    }

    boolean happens(double probability) {
        return uniform() < probability;
    }

    /** Standard normal (Box and Muller). */
    double normal() {
        double radius = StrictMath.sqrt(-2 * StrictMath.log(1 - uniform()));
        return radius * StrictMath.cos(2 * StrictMath.PI * uniform());
    }

    /** Normal, drawn again beyond two and a half standard deviations, so that no world is absurd. */
    double near(double middle, double spread) {
        double z = normal();
        while (StrictMath.abs(z) > 2.5) {
            z = normal();
        }
        return middle + spread * z;
    }

    /** Student's t with a whole number of degrees of freedom, scale 1. */
    double studentT(int degrees) {
        double squares = 0;
        for (int i = 0; i < degrees; i++) {
            double z = normal();
            squares += z * z;
        }
        return normal() / StrictMath.sqrt(squares / degrees);
    }

    <T> T oneOf(List<T> things) {
        return things.get(whole(0, things.size() - 1));
    }

    /** One of the things, each with its weight. */
    <T> T oneOf(List<T> things, double... weights) {
        double total = 0;
        for (double weight : weights) {
            total += weight;
        }
        double left = uniform() * total;
        for (int i = 0; i < weights.length; i++) {
            left -= weights[i];
            if (left < 0) {
                return things.get(i);
            }
        }
        return things.get(weights.length - 1);
    }
}
