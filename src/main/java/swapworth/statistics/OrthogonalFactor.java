package swapworth.statistics;

import java.util.function.IntFunction;

/**
 * Weighted least squares by Householder reflections on columns scaled to about unit length: the careful route, taken where sums of
 * cross-products would lose too many digits. Source of the method: A. Householder, J. ACM 5 (1958) 339-342.
 */
final class OrthogonalFactor {
    /** A column of unit length of which the columns before it leave less is a sum of them to working precision. */
    private static final double LEAST_NORM = 1e-13;

    private OrthogonalFactor() {
    }

    /** The least-squares solution and the factor of the cross-product matrix. */
    record Solution(double[] coefficients, Cholesky factor) {
    }

    /**
     * Solves min |A b - c|.
     *
     * @param a m rows of p numbers, overwritten
     * @param c m numbers, overwritten
     * @param names a name for each column, for the message
     * @return the solution
     * @throws ConfoundedColumnsException if columns depend on each other to working precision
     */
    static Solution solve(double[][] a, double[] c, IntFunction<String> names) {
        int m = a.length;
        int p = a[0].length;
        if (m < p) {
            throw new ConfoundedColumnsException(m + " rows cannot tell " + p + " coefficients apart");
        }
        double[] length = scaledToUnit(a);
        for (int j = 0; j < p; j++) {
            double norm = norm(a, j);
            if (!(norm > LEAST_NORM)) {
                throw new ConfoundedColumnsException("the column '" + names.apply(j) + "' is a sum of the columns before it");
            }
            reflect(a, c, j, a[j][j] > 0 ? -norm : norm);
        }
        double[] b = new double[p];
        double[][] upper = new double[p][p];
        for (int i = p - 1; i >= 0; i--) {
            double sum = c[i];
            for (int j = i + 1; j < p; j++) {
                sum -= a[i][j] * b[j];
            }
            b[i] = sum / a[i][i];
            for (int j = i; j < p; j++) {
                upper[i][j] = a[i][j] * length[j];
            }
        }
        for (int j = 0; j < p; j++) {
            b[j] /= length[j];
        }
        return new Solution(b, Cholesky.ofUpper(upper));
    }

    /** Divides each column by about its length; the divisors. */
    private static double[] scaledToUnit(double[][] a) {
        double[] length = new double[a[0].length];
        for (int j = 0; j < length.length; j++) {
            double sum = 0;
            for (double[] row : a) {
                sum += row[j] * row[j];
            }
            // A power of two, so that scaling rounds nothing.
            length[j] = sum == 0 ? 1 : Math.scalb(1, Math.getExponent(Math.sqrt(sum)));
            for (double[] row : a) {
                row[j] /= length[j];
            }
        }
        return length;
    }

    /** The length of what is left of column j from the diagonal on. */
    private static double norm(double[][] a, int j) {
        double norm = 0;
        for (int i = j; i < a.length; i++) {
            norm = Math.fma(a[i][j], a[i][j], norm);
        }
        return Math.sqrt(norm);
    }

    /** Reflects the rows from j on so that of column j nothing is left below the diagonal, where alpha then stands. */
    private static void reflect(double[][] a, double[] c, int j, double alpha) {
        int m = a.length;
        double[] v = new double[m - j];
        double vv = 0;
        for (int i = j; i < m; i++) {
            v[i - j] = a[i][j] - (i == j ? alpha : 0);
            vv += v[i - j] * v[i - j];
        }
        for (int k = j; k < a[0].length; k++) {
            double sum = 0;
            for (int i = j; i < m; i++) {
                sum += v[i - j] * a[i][k];
            }
            double f = 2 * sum / vv;
            for (int i = j; i < m; i++) {
                a[i][k] -= f * v[i - j];
            }
        }
        double sum = 0;
        for (int i = j; i < m; i++) {
            sum += v[i - j] * c[i];
        }
        double f = 2 * sum / vv;
        for (int i = j; i < m; i++) {
            c[i] -= f * v[i - j];
        }
    }
}
