package swapworth.bench;

import java.util.ArrayList;
import java.util.List;
import org.apache.commons.math3.distribution.TDistribution;

/**
 * Least squares and the Huber fit, as a statistics package gives them.
 *
 * <p>Columns are taken from the left; one that lies within 1e-7 of its length in the space of those before it is dropped, and so
 * is every further one once only two degrees of freedom are left. A dropped column has the coefficient 0. Gram and Schmidt's
 * orthogonalisation, each column done twice.
 */
final class ReferenceSquares {
    private static final double RANK = 1e-7;
    private static final int FEWEST_FREE = 2;
    private static final double HUBER = 1.345;
    private static final int MOST_ROUNDS = 500;

    private final int columns;
    private final List<Integer> kept = new ArrayList<>();
    private final List<double[]> q = new ArrayList<>();
    private final List<double[]> r = new ArrayList<>();
    private double[] coefficients = {};
    private double scale;
    private int free;

    private ReferenceSquares(double[][] x) {
        this.columns = x[0].length;
        for (int j = 0; j < columns && kept.size() < x.length - FEWEST_FREE; j++) {
            double[] v = column(x, j);
            double before = Math.sqrt(dot(v, v));
            double[] above = take(v, new double[q.size() + 1]);
            double length = Math.sqrt(dot(v, v));
            if (length > RANK * before) {
                above[q.size()] = length;
                for (int i = 0; i < v.length; i++) {
                    v[i] /= length;
                }
                kept.add(j);
                q.add(v);
                r.add(above);
            }
        }
    }

    /** The orthogonal base of the columns of a matrix, without a response. */
    static ReferenceSquares base(double[][] x) {
        return new ReferenceSquares(x);
    }

    /** Least squares of y on the columns of x; the intercept is a column like others. */
    static ReferenceSquares of(double[][] x, double[] y) {
        ReferenceSquares fit = new ReferenceSquares(x);
        double[] rest = y.clone();
        fit.coefficients = fit.solved(fit.take(rest, new double[fit.q.size()]));
        fit.free = y.length - fit.q.size();
        fit.scale = Math.sqrt(dot(rest, rest) / fit.free);
        return fit;
    }

    /**
     * Huber's fit: weights min(1, 1.345 s / |residual|), s = median |residual| / 0.6745 of the round before, from least squares
     * on until no coefficient moves by more than 1e-10 of the largest. Where half of the residuals are 0 the fit stays as
     * it is.
     * Source: W. N. Venables and B. D. Ripley, Modern Applied Statistics with S (2002), 6.5.
     */
    static ReferenceSquares huber(double[][] x, double[] y) {
        ReferenceSquares start = of(x, y);
        double[][] told = new double[x.length][start.kept.size()];
        for (int i = 0; i < x.length; i++) {
            told[i] = start.ofKept(x[i]);
        }
        double[] b = start.ofKept(start.coefficients);
        double s = 0;
        for (int round = 0; round < MOST_ROUNDS; round++) {
            double[] size = new double[y.length];
            for (int i = 0; i < y.length; i++) {
                size[i] = Math.abs(y[i] - dot(told[i], b));
            }
            s = Figure.median(size) / 0.6745;
            if (!(s > 1e-12)) {
                break;
            }
            double[][] weighted = new double[y.length][];
            double[] response = new double[y.length];
            for (int i = 0; i < y.length; i++) {
                double root = Math.sqrt(Math.min(1, HUBER * s / size[i]));
                weighted[i] = new double[b.length];
                for (int j = 0; j < b.length; j++) {
                    weighted[i][j] = root * told[i][j];
                }
                response[i] = root * y[i];
            }
            double[] next = of(weighted, response).coefficients;
            double moved = 0;
            double largest = 0;
            for (int j = 0; j < b.length; j++) {
                moved = Math.max(moved, Math.abs(next[j] - b[j]));
                largest = Math.max(largest, Math.abs(next[j]));
            }
            b = next;
            if (moved <= 1e-10 * largest) {
                break;
            }
        }
        ReferenceSquares fit = new ReferenceSquares(x);
        fit.coefficients = new double[fit.columns];
        for (int j = 0; j < b.length; j++) {
            fit.coefficients[fit.kept.get(j)] = b[j];
        }
        fit.free = start.free;
        fit.scale = s;
        return fit;
    }

    /** Takes from a vector its part in the space of the base and adds the coordinates of that part. */
    double[] take(double[] v, double[] coordinates) {
        for (int twice = 0; twice < 2; twice++) {
            for (int k = 0; k < q.size(); k++) {
                double part = dot(q.get(k), v);
                coordinates[k] += part;
                for (int i = 0; i < v.length; i++) {
                    v[i] -= part * q.get(k)[i];
                }
            }
        }
        return coordinates;
    }

    /** The coefficients of all columns that have the stated coordinates. */
    double[] solved(double[] coordinates) {
        double[] b = new double[columns];
        double[] c = coordinates.clone();
        for (int k = q.size() - 1; k >= 0; k--) {
            double value = c[k] / r.get(k)[k];
            b[kept.get(k)] = value;
            for (int m = 0; m < k; m++) {
                c[m] -= value * r.get(k)[m];
            }
        }
        return b;
    }

    /** How much of a row's own price the base uses: the sum of squares of its coordinates. */
    double leverage(int row) {
        double sum = 0;
        for (double[] v : q) {
            sum += v[row] * v[row];
        }
        return sum;
    }

    double[] coefficients() {
        return coefficients.clone();
    }

    double scale() {
        return scale;
    }

    double predicted(double[] row) {
        return dot(row, coefficients);
    }

    /** Half the width of the range that holds a new response with a probability: Student's t with the free degrees. */
    double reach(double[] row, double probability) {
        double[] z = ofKept(row);
        double sum = 1;
        for (int k = 0; k < z.length; k++) {
            for (int m = 0; m < k; m++) {
                z[k] -= r.get(k)[m] * z[m];
            }
            z[k] /= r.get(k)[k];
            sum += z[k] * z[k];
        }
        return new TDistribution(null, free).inverseCumulativeProbability((1 + probability) / 2) * scale * Math.sqrt(sum);
    }

    private double[] ofKept(double[] all) {
        return kept.stream().mapToDouble(j -> all[j]).toArray();
    }

    static double[] column(double[][] x, int j) {
        double[] v = new double[x.length];
        for (int i = 0; i < v.length; i++) {
            v[i] = x[i][j];
        }
        return v;
    }

    static double dot(double[] a, double[] b) {
        double sum = 0;
        for (int i = 0; i < a.length; i++) {
            sum += a[i] * b[i];
        }
        return sum;
    }
}
