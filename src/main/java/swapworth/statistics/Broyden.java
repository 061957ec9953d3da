package swapworth.statistics;

import java.util.Arrays;

/**
 * A faster way to the fixed point of a few numbers x, given the moves g(x) - x of an iteration that gets there slowly: secants of the
 * moves gather into an inverse of their derivative. Source: C. Broyden, Math. Comp. 19 (1965) 577-593 (from memory).
 */
final class Broyden {
    /** The farthest that one number goes at once. */
    private static final double FARTHEST = 1.5;

    private final double[][] inverse;
    private double[] lastX = new double[0];
    private double[] lastMoves = new double[0];

    Broyden(int numbers) {
        inverse = new double[numbers][numbers];
        startAfresh();
    }

    private void startAfresh() {
        for (int i = 0; i < inverse.length; i++) {
            Arrays.fill(inverse[i], 0);
            inverse[i][i] = -1;
        }
    }

    /**
     * Where to look next.
     *
     * @param x where the iteration stands
     * @param moves how far it would go by itself; 0 for a number that is held
     * @return the next x
     */
    double[] next(double[] x, double[] moves) {
        if (lastX.length > 0) {
            if (largest(moves) > 2 * largest(lastMoves)) {
                startAfresh();
            } else {
                learn(x, moves);
            }
        }
        double[] next = x.clone();
        double[] step = times(moves);
        for (int i = 0; i < x.length; i++) {
            next[i] += moves[i] == 0 ? 0 : Math.max(-FARTHEST, Math.min(FARTHEST, -step[i]));
        }
        lastX = x.clone();
        lastMoves = moves.clone();
        return next;
    }

    private void learn(double[] x, double[] moves) {
        int n = x.length;
        double[] went = new double[n];
        double[] changed = new double[n];
        for (int i = 0; i < n; i++) {
            went[i] = x[i] - lastX[i];
            changed[i] = moves[i] - lastMoves[i];
        }
        double[] foretold = times(changed);
        double[] left = new double[n];
        double scale = 0;
        for (int j = 0; j < n; j++) {
            for (int i = 0; i < n; i++) {
                left[j] += went[i] * inverse[i][j];
            }
            scale += left[j] * changed[j];
        }
        if (scale == 0) {
            return;
        }
        for (int i = 0; i < n; i++) {
            for (int j = 0; j < n; j++) {
                inverse[i][j] += (went[i] - foretold[i]) * left[j] / scale;
            }
        }
    }

    private double[] times(double[] vector) {
        double[] product = new double[vector.length];
        for (int i = 0; i < product.length; i++) {
            for (int j = 0; j < product.length; j++) {
                product[i] += inverse[i][j] * vector[j];
            }
        }
        return product;
    }

    private static double largest(double[] moves) {
        return Arrays.stream(moves).map(Math::abs).max().orElse(0);
    }
}
