package swapworth.statistics;

/**
 * The Cholesky factor of a symmetric positive definite p x p matrix whose rows and columns were first scaled to a diagonal of one.
 * The smallest pivot of the scaled matrix, 1 - R^2 of the most dependent column on those before it, tells how many digits the
 * factor can be trusted with.
 */
final class Cholesky {
    private final int p;
    private final double[] lower;
    private final double[] scale;
    private final double smallestPivot;

    private Cholesky(int p, double[] lower, double[] scale, double smallestPivot) {
        this.p = p;
        this.lower = lower;
        this.scale = scale;
        this.smallestPivot = smallestPivot;
    }

    /**
     * Factors a matrix.
     *
     * @param matrix its lower triangle, held row after row in p x p places; left as it is
     * @param p its size
     * @return the factor; its smallest pivot is not above 0 where the matrix is singular to working precision
     */
    static Cholesky of(double[] matrix, int p) {
        double[] scale = new double[p];
        for (int i = 0; i < p; i++) {
            double d = matrix[i * p + i];
            scale[i] = d > 0 ? 1 / Math.sqrt(d) : 0;
        }
        double[] l = new double[p * p];
        double smallest = 1;
        for (int i = 0; i < p; i++) {
            int ri = i * p;
            for (int j = 0; j <= i; j++) {
                int rj = j * p;
                double sum = matrix[ri + j] * scale[i] * scale[j];
                for (int k = 0; k < j; k++) {
                    sum -= l[ri + k] * l[rj + k];
                }
                if (i != j) {
                    l[ri + j] = sum / l[rj + j];
                } else {
                    smallest = Math.min(smallest, sum);
                    if (!(sum > 0)) {
                        return new Cholesky(p, l, scale, 0);
                    }
                    l[ri + i] = Math.sqrt(sum);
                }
            }
        }
        return new Cholesky(p, l, scale, smallest);
    }

    /** A factor that was found another way: the upper triangle R of an orthogonal factorisation, R'R being the matrix. */
    static Cholesky ofUpper(double[][] upper) {
        int p = upper.length;
        double[] lower = new double[p * p];
        double[] scale = new double[p];
        for (int i = 0; i < p; i++) {
            scale[i] = 1;
            for (int j = 0; j <= i; j++) {
                lower[i * p + j] = upper[j][i];
            }
        }
        return new Cholesky(p, lower, scale, 1);
    }

    /** The factor of the matrix times the square of a number. */
    Cholesky times(double factor) {
        double[] scaled = scale.clone();
        for (int i = 0; i < p; i++) {
            scaled[i] /= factor;
        }
        return new Cholesky(p, lower, scaled, smallestPivot);
    }

    double smallestPivot() {
        return smallestPivot;
    }

    /** The solution of the system for one right-hand side of length p. */
    double[] solve(double[] right) {
        double[] x = new double[p];
        for (int i = 0; i < p; i++) {
            double sum = right[i] * scale[i];
            int ri = i * p;
            for (int k = 0; k < i; k++) {
                sum -= lower[ri + k] * x[k];
            }
            x[i] = sum / lower[ri + i];
        }
        return backSolve(x);
    }

    /** The solution of L'x = z, unscaled: for independent standard normal z a draw with the inverse matrix as covariance. */
    double[] backSolve(double[] z) {
        double[] x = z.clone();
        for (int i = p - 1; i >= 0; i--) {
            x[i] /= lower[i * p + i];
            double xi = x[i];
            int ri = i * p;
            for (int k = 0; k < i; k++) {
                x[k] -= lower[ri + k] * xi;
            }
        }
        for (int i = 0; i < p; i++) {
            x[i] *= scale[i];
        }
        return x;
    }

    /** Writes row j of the upper factor, unscaled, into a row of p numbers. */
    void copyUpperRow(int j, double[] row) {
        for (int i = j; i < p; i++) {
            row[i] = lower[i * p + j] / scale[i];
        }
    }

    /** The logarithm of the determinant. */
    double logDeterminant() {
        double sum = 0;
        for (int i = 0; i < p; i++) {
            sum += 2 * (Math.log(Math.abs(lower[i * p + i])) - Math.log(scale[i]));
        }
        return sum;
    }

    /** The inverse matrix in full, row after row. */
    double[] inverse() {
        double[] w = new double[p * p];
        for (int i = 0; i < p; i++) {
            int ri = i * p;
            double d = 1 / lower[ri + i];
            for (int k = 0; k < i; k++) {
                double f = -lower[ri + k] * d;
                int rk = k * p;
                for (int j = 0; j <= k; j++) {
                    w[ri + j] += f * w[rk + j];
                }
            }
            w[ri + i] = d;
        }
        double[] inverse = new double[p * p];
        for (int k = 0; k < p; k++) {
            int rk = k * p;
            for (int i = 0; i <= k; i++) {
                double f = w[rk + i];
                if (f != 0) {
                    int ri = i * p;
                    for (int j = 0; j <= i; j++) {
                        inverse[ri + j] += f * w[rk + j];
                    }
                }
            }
        }
        for (int i = 0; i < p; i++) {
            for (int j = 0; j <= i; j++) {
                double v = inverse[i * p + j] * scale[i] * scale[j];
                inverse[i * p + j] = v;
                inverse[j * p + i] = v;
            }
        }
        return inverse;
    }
}
