package swapworth.statistics;

import java.util.Arrays;
import java.util.stream.IntStream;
import org.jspecify.annotations.Nullable;

/** The normal law about a mode with all rows: V, its covariance matrix, and V P V, what of it the prior P holds. */
final class Shape {
    final Mode mode;
    /** V in full, row after row. */
    final double[] covariance;
    private volatile double @Nullable [] pairs;
    private volatile @Nullable OnRows onRows;

    Shape(Mode mode) {
        this.mode = mode;
        this.covariance = mode.factor().inverse();
    }

    int p() {
        return mode.coefficients().length;
    }

    /** What V and V P V say of one contrast, or of two. */
    static final class Forms {
        /** The quadratic form in V. */
        double variance;
        /** That in V P V; not a number where {@link #withHeld} has not been called. */
        double held = Double.NaN;
    }

    /** Has V P V made, so that every further answer holds it: most ask for no more than V, and it takes p cubed steps to make. */
    void withHeld() {
        if (pairs == null) {
            int p = p();
            double[] made = new double[p * (p + 1)];
            IntStream.range(0, p).parallel().forEach(i -> addPairs(i, made));
            // The same whichever thread makes it.
            pairs = made;
        }
    }

    /** Row i up to its diagonal of V and of V P V, side by side. */
    private void addPairs(int i, double[] made) {
        int p = p();
        double[] column = mode.spreads().times(Arrays.copyOfRange(covariance, i * p, (i + 1) * p));
        double[] sum = new double[i + 1];
        for (int k = 0; k < p; k++) {
            double ck = column[k];
            if (ck != 0) {
                int other = k * p;
                for (int j = 0; j <= i; j++) {
                    sum[j] += ck * covariance[other + j];
                }
            }
        }
        int at = i * (i + 1);
        for (int j = 0; j <= i; j++) {
            made[at++] = covariance[i * p + j];
            made[at++] = sum[j];
        }
    }

    /** The forms of a contrast with itself. */
    Forms quadratic(SparseRow x) {
        Forms forms = new Forms();
        double[] made = pairs;
        if (made == null) {
            forms.variance = x.quadratic(covariance, p());
        } else {
            x.quadratic(made, forms);
        }
        return forms;
    }

    /** The forms between two contrasts. */
    Forms between(SparseRow x, SparseRow y) {
        Forms forms = new Forms();
        double[] made = pairs;
        if (made == null) {
            forms.variance = x.between(covariance, p(), y);
        } else {
            x.between(made, y, forms);
        }
        return forms;
    }

    /** The forms between each two of some contrasts. */
    Forms[][] among(SparseRow[] rows) {
        Forms[][] among = new Forms[rows.length][rows.length];
        for (int i = 0; i < rows.length; i++) {
            among[i][i] = quadratic(rows[i]);
            for (int j = 0; j < i; j++) {
                among[i][j] = between(rows[i], rows[j]);
                among[j][i] = among[i][j];
            }
        }
        return among;
    }

    /** Whether forms were found before V P V was made, and can be completed now. */
    boolean outgrew(Forms forms) {
        return pairs != null && Double.isNaN(forms.held);
    }

    /** The law of the fitted values of the rows, made when first asked for: the same whichever thread makes it. */
    OnRows onRows(Design design) {
        OnRows made = onRows;
        if (made == null) {
            made = new OnRows(this, design);
            onRows = made;
        }
        return made;
    }

    /** Adds V times a full vector. */
    void addTimes(double[] x, double[] product) {
        int p = p();
        for (int i = 0; i < p; i++) {
            double xi = x[i];
            if (xi != 0) {
                for (int j = 0; j < p; j++) {
                    product[j] += xi * covariance[i * p + j];
                }
            }
        }
    }

    /** A posterior as the rows of its design see it: their fitted values at the mode, X b, and the covariances of these, X V X'. */
    static final class OnRows {
        final double[] fitted;
        /** The gradient at the mode, r, which is 0 but for how closely it was sought; X V r, and r' V r. */
        final double[] gradient;
        final double[] rest;
        final double restSize;
        private final int n;
        private final double[] covariance;

        OnRows(Shape shape, Design design) {
            this.n = design.rows();
            this.fitted = shape.mode.fitted();
            this.covariance = new double[n * n];
            this.gradient = shape.mode.gradient();
            double[] step = new double[gradient.length];
            shape.addTimes(gradient, step);
            this.rest = new double[n];
            for (int i = 0; i < n; i++) {
                double[] times = design.row(i).times(shape.covariance, step.length);
                for (int j = 0; j <= i; j++) {
                    covariance[i * n + j] = design.dot(j, times);
                    covariance[j * n + i] = covariance[i * n + j];
                }
                rest[i] = design.dot(i, step);
            }
            double size = 0;
            for (int j = 0; j < step.length; j++) {
                size += gradient[j] * step[j];
            }
            this.restSize = size;
        }

        /** Adds the covariances of row i, times a factor, to n numbers. */
        void add(double factor, int i, double[] sum) {
            int from = i * n;
            for (int j = 0; j < n; j++) {
                sum[j] += factor * covariance[from + j];
            }
        }
    }
}
