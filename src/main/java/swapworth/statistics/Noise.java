package swapworth.statistics;

import java.util.SplittableRandom;

/** Random numbers in strict arithmetic: the same for the same seed on every machine. */
final class Noise {

    private Noise() {
    }

    /** A standard normal number by the polar method. */
    static double normal(SplittableRandom random) {
        while (true) {
            double u = 2 * random.nextDouble() - 1;
            double v = 2 * random.nextDouble() - 1;
            double s = u * u + v * v;
            if (s > 0 && s < 1) {
                return u * Math.sqrt(-2 * StrictMath.log(s) / s);
            }
        }
    }

    /** So many independent standard normal numbers. */
    static double[] normals(int count, SplittableRandom random) {
        double[] z = new double[count];
        for (int j = 0; j < z.length; j++) {
            z[j] = normal(random);
        }
        return z;
    }

    /** Which of several weights holds a place along their sum; the last one for a place beyond it. */
    static int place(double[] weights, double at) {
        int g = 0;
        for (double reached = weights[0]; at > reached && g + 1 < weights.length; reached += weights[g]) {
            g++;
        }
        return g;
    }

    /** An error of a law at scale 1, gross errors left out: a normal number over the root of a mean of squares of normal ones. */
    static double of(ErrorLaw law, SplittableRandom random) {
        double z = normal(random);
        if (law.isNormal()) {
            return z;
        }
        double squares = 0;
        for (int k = 0; k < law.degreesOfFreedom(); k++) {
            double g = normal(random);
            squares += g * g;
        }
        return z / Math.sqrt(squares / law.degreesOfFreedom());
    }
}
