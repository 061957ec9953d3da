package swapworth.statistics;

import java.util.SplittableRandom;

/**
 * The law of the common spread t of some levels, given the levels: half-normal prior with a stated scale, times one normal density of
 * standard deviation t a level, on a fixed grid of t from a fiftieth of the scale to four scales.
 */
final class SpreadOfLevels {
    private static final int GRID = 80;
    private static final double LEAST = 0.02;
    private static final double MOST = 4;

    private final PriorBlock block;
    private final double[] spread = new double[GRID];
    /** The logarithm of prior times width of the step, less that of the normal densities' constants. */
    private final double[] constant = new double[GRID];

    SpreadOfLevels(PriorBlock block) {
        this.block = block;
        double scale = block.spreadAt(0);
        double step = StrictMath.log(MOST / LEAST) / GRID;
        for (int g = 0; g < GRID; g++) {
            double ratio = LEAST * StrictMath.exp((g + 0.5) * step);
            spread[g] = scale * ratio;
            constant[g] = StrictMath.log(ratio) - ratio * ratio / 2 - block.seen() * StrictMath.log(spread[g]);
        }
    }

    private double squares(double[] coefficients) {
        double sum = 0;
        for (int j = 0; j < block.seen(); j++) {
            double departure = coefficients[block.from() + j] - block.meanAt(j);
            sum += departure * departure;
        }
        return sum;
    }

    /** How likely the levels are under all spreads, over how likely they are under one; a constant factor is left out. */
    double weight(double[] coefficients, double one) {
        double squares = squares(coefficients);
        double held = -block.seen() * StrictMath.log(one) - squares / (2 * one * one);
        double sum = 0;
        for (int g = 0; g < GRID; g++) {
            sum += StrictMath.exp(constant[g] - squares / (2 * spread[g] * spread[g]) - held);
        }
        return sum;
    }

    /** Draws a spread that belongs to the levels of a draw, and from it the level never seen. */
    void drawUnseen(double[] coefficients, SplittableRandom random) {
        double squares = squares(coefficients);
        double most = Double.NEGATIVE_INFINITY;
        double[] log = new double[GRID];
        for (int g = 0; g < GRID; g++) {
            log[g] = constant[g] - squares / (2 * spread[g] * spread[g]);
            most = Math.max(most, log[g]);
        }
        double sum = 0;
        for (int g = 0; g < GRID; g++) {
            log[g] = StrictMath.exp(log[g] - most);
            sum += log[g];
        }
        double at = random.nextDouble() * sum;
        int g = 0;
        for (double reached = log[0]; at > reached && g + 1 < GRID; reached += log[g]) {
            g++;
        }
        coefficients[block.from() + block.seen()] = block.meanAt(block.seen()) + spread[g] * Noise.normal(random);
    }
}
