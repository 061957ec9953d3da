package swapworth.statistics;

import java.util.SplittableRandom;

/**
 * Standard normal numbers, many of them and quickly: the density is covered by 255 strips of equal area and a tail, and most numbers
 * cost one draw of bits and a product (G. Marsaglia and W. Tsang, Journal of Statistical Software 5(8), 2000). In strict arithmetic:
 * the same for the same seed on every machine.
 */
final class NormalSource {
    static final int STRIPS = 256;
    /** Where the tail begins, so that all strips have one area: the paper's value. */
    private static final double TAIL = 3.6541528853610088;
    static final double[] EDGE = new double[STRIPS + 1];
    private static final double[] INSIDE = new double[STRIPS];
    static final double[] HEIGHT = new double[STRIPS + 1];

    static {
        double fraction = TAIL;
        for (int k = 200; k >= 1; k--) {
            fraction = TAIL + k / fraction;
        }
        double height = height(TAIL);
        double area = TAIL * height + height / fraction;
        EDGE[0] = area / height;
        EDGE[1] = TAIL;
        for (int i = 2; i < STRIPS; i++) {
            EDGE[i] = Math.sqrt(-2 * StrictMath.log(area / EDGE[i - 1] + height(EDGE[i - 1])));
        }
        for (int i = 0; i <= STRIPS; i++) {
            HEIGHT[i] = height(EDGE[i]);
        }
        for (int i = 0; i < STRIPS; i++) {
            INSIDE[i] = EDGE[i + 1] / EDGE[i];
        }
    }

    private final SplittableRandom random;

    NormalSource(SplittableRandom random) {
        this.random = random;
    }

    private static double height(double x) {
        return StrictMath.exp(-0.5 * x * x);
    }

    double next() {
        while (true) {
            long bits = random.nextLong();
            int strip = (int) bits & STRIPS - 1;
            double along = (bits >> 11) * 0x1p-52;
            if (Math.abs(along) < INSIDE[strip]) {
                return along * EDGE[strip];
            }
            double x = strip == 0 ? tail(along) : along * EDGE[strip];
            if (strip == 0 || HEIGHT[strip] + random.nextDouble() * (HEIGHT[strip + 1] - HEIGHT[strip]) < height(x)) {
                return x;
            }
        }
    }

    private double tail(double side) {
        double beyond;
        double test;
        do {
            beyond = -StrictMath.log(1 - random.nextDouble()) / TAIL;
            test = -StrictMath.log(1 - random.nextDouble());
        } while (2 * test < beyond * beyond);
        return side < 0 ? -TAIL - beyond : TAIL + beyond;
    }
}
