package swapworth.statistics;

import java.util.SplittableRandom;

/** Random numbers from a seed, in strict arithmetic: the same for the same seed on every machine. */
public final class RandomNumbers {
    private final SplittableRandom random;

    private RandomNumbers(long seed) {
        this.random = new SplittableRandom(seed);
    }

    /**
     * A stream of its own for a named quantity, so that adding another quantity changes none of the others.
     *
     * @param seed the seed of the whole
     * @param name the name of the quantity
     * @return the stream
     */
    public static RandomNumbers of(long seed, String name) {
        return new RandomNumbers(seed(seed, name));
    }

    /**
     * A seed of its own for a named quantity, for what draws by a seed. It has 64 bits, so that no two names that anybody gives have the
     * same one; two names of two letters can already have the same {@link String#hashCode}.
     *
     * @param seed the seed of the whole
     * @param name the name of the quantity
     * @return the seed
     */
    public static long seed(long seed, String name) {
        long mixed = seed;
        for (int i = 0; i < name.length(); i++) {
            mixed = (mixed ^ name.charAt(i)) * 0x9E3779B97F4A7C15L;
            mixed ^= mixed >>> 29;
        }
        return mixed;
    }

    /**
     * A number between 0 and 1, each as likely as any other.
     *
     * @return at least 0, below 1
     */
    public double uniform() {
        return random.nextDouble();
    }

    /**
     * A standard normal number.
     *
     * @return mean 0, standard deviation 1
     */
    public double normal() {
        return Noise.normal(random);
    }

    /**
     * A waiting time with a constant chance per unit of time: -ln(1 - u).
     *
     * @return mean 1, median ln 2
     */
    public double waiting() {
        return -StrictMath.log1p(-random.nextDouble());
    }
}
