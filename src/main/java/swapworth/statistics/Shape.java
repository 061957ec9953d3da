package swapworth.statistics;

import static java.util.Objects.requireNonNull;

import java.util.Arrays;
import java.util.stream.IntStream;
import org.jspecify.annotations.Nullable;

/** The normal law about a mode with all rows: V, its covariance matrix, and V P V, what of it the prior P holds. */
final class Shape {
    final Mode mode;
    final Covariance covariance;
    private volatile double @Nullable [][] pairs;
    private volatile double @Nullable [] ownForms;
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
            double[][] made = new double[p][];
            if (mode.factor() instanceof BorderedFactor bordered) {
                double[] prior = border().zeros();
                mode.spreads().addPrecision(prior, border());
                double[] held = bordered.held(prior);
                IntStream.range(0, p).parallel().forEach(i -> made[i] = pairs(i, held));
            } else {
                IntStream.range(0, p).parallel().forEach(i -> made[i] = pairs(i));
            }
            // The same whichever thread makes it.
            pairs = made;
        }
    }

    private Border border() {
        return covariance.border();
    }

    /** Row i up to its diagonal of V and of V P V, side by side, of matrices in full. */
    private double[] pairs(int i) {
        int p = p();
        double[] v = covariance.held();
        double[] column = mode.spreads().times(Arrays.copyOfRange(v, i * p, (i + 1) * p));
        double[] sum = new double[i + 1];
        Vectors.addSymmetricTimes(v, column, sum);
        double[] made = new double[2 * (i + 1)];
        for (int j = 0; j <= i; j++) {
            made[2 * j] = v[i * p + j];
            made[2 * j + 1] = sum[j];
        }
        return made;
    }

    /** All that is held of row i of V and of V P V, side by side. */
    private double[] pairs(int i, double[] held) {
        int[] columns = border().inFull(i);
        double[] made = new double[2 * columns.length];
        for (int k = 0; k < columns.length; k++) {
            made[2 * k] = covariance.at(i, columns[k]);
            made[2 * k + 1] = held[border().at(i, columns[k])];
        }
        return made;
    }

    /** The forms of a contrast with itself. */
    Forms quadratic(SparseRow x) {
        Forms forms = new Forms();
        double[][] made = pairs;
        if (made == null) {
            forms.variance = covariance.quadratic(x);
        } else if (border().isNone()) {
            x.quadratic(made, forms);
        } else if (border().holds(x, x)) {
            x.quadratic(made, border(), forms);
        } else {
            apart(x, x, forms);
        }
        return forms;
    }

    /**
     * Has the forms of every row of the design with itself found, one right after another: the matrices then stay at hand, and it takes
     * half the time of finding each among other work. They take 16 bytes a row.
     */
    void withOwnForms(Design design) {
        if (ownForms == null) {
            withHeld();
            double[][] whole = requireNonNull(pairs, "made above");
            double[][] made = design.folding().size() == 0 ? whole : design.folding().forKept(whole, border());
            double[] found = new double[2 * design.rows()];
            Ranges.each(design.rows(), (first, end) -> {
                Border.Entries entries = border().new Entries(design.columns());
                Forms forms = new Forms();
                for (int i = first; i < end; i++) {
                    entries.take(design, i);
                    SparseRow.quadratic(entries.column, entries.place, entries.number, entries.size, made, forms);
                    found[2 * i] = forms.variance;
                    found[2 * i + 1] = forms.held;
                }
            });
            ownForms = found;
        }
    }

    /** The forms of a row of the design with itself. */
    Forms own(int row, SparseRow x) {
        double[] found = ownForms;
        if (found == null) {
            return quadratic(x);
        }
        Forms forms = new Forms();
        forms.variance = found[2 * row];
        forms.held = found[2 * row + 1];
        return forms;
    }

    /** The forms between two contrasts. */
    Forms between(SparseRow x, SparseRow y) {
        Forms forms = new Forms();
        double[][] made = pairs;
        if (made == null) {
            forms.variance = covariance.between(x, y);
        } else if (border().isNone()) {
            x.between(made, y, forms);
        } else if (border().holds(x, y)) {
            x.between(made, border(), y, forms);
        } else {
            apart(x, y, forms);
        }
        return forms;
    }

    /** The forms between two contrasts that ask for entries which are not held. */
    private void apart(SparseRow x, SparseRow y, Forms forms) {
        double[] times = covariance.times(y);
        forms.variance = x.dot(times);
        double[] force = mode.spreads().times(times);
        double[] other = x == y ? times : covariance.times(x);
        forms.held = 0;
        for (int j = 0; j < force.length; j++) {
            forms.held += other[j] * force[j];
        }
    }

    /**
     * The forms of a contrast x with itself, and between it and another one y of which those with itself are known. They go by the
     * difference d = x - y, which has few entries where both are rows of one car: x'V y = y'V y + d'V y, x'V x = x'V y + d'V y + d'V d.
     */
    void both(SparseRow x, SparseRow y, Forms ofOther, Forms itself, Forms between) {
        SparseRow difference = x.plus(-1, y);
        Forms across = between(difference, y);
        Forms apart = quadratic(difference);
        between.variance = ofOther.variance + across.variance;
        between.held = ofOther.held + across.held;
        itself.variance = between.variance + across.variance + apart.variance;
        itself.held = between.held + across.held + apart.held;
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

    /** The law of the fitted values of the rows of the fit, made when first asked for. */
    synchronized OnRows onRows() {
        OnRows made = onRows;
        if (made == null) {
            made = new OnRows(this, mode.design());
            onRows = made;
        }
        return made;
    }

    /** A posterior as the rows of its design see it: their fitted values at the mode, X b, and the covariances of these, X V X'. */
    static final class OnRows {
        final double[] fitted;
        /** The gradient at the mode, r, is 0 but for how closely it was sought: V r, X V r, and r' V r. */
        private final double[] step;
        final double[] rest;
        final double restSize;
        private final int n;
        /** V X', a row for each coefficient, and X V X'. */
        private final double[] reach;
        private final double[] covariance;

        OnRows(Shape shape, Design design) {
            this.n = design.rows();
            this.fitted = shape.mode.fitted();
            double[] gradient = shape.mode.gradient();
            int p = gradient.length;
            this.step = shape.covariance.times(gradient);
            this.reach = new double[p * n];
            this.covariance = new double[n * n];
            this.rest = new double[n];
            SparseRow[] rows = new SparseRow[n];
            for (int i = 0; i < n; i++) {
                rows[i] = design.row(i);
                rest[i] = rows[i].dot(step);
                double[] times = shape.covariance.times(rows[i]);
                for (int j = 0; j < p; j++) {
                    reach[j * n + i] = times[j];
                }
            }
            for (int i = 0; i < n; i++) {
                for (int e = 0; e < rows[i].size(); e++) {
                    addRow(rows[i].value(e), reach, rows[i].index(e) * n, covariance, i * n);
                }
            }
            double size = 0;
            for (int j = 0; j < p; j++) {
                size += gradient[j] * step[j];
            }
            this.restSize = size;
        }

        private void addRow(double factor, double[] from, int first, double[] to, int begin) {
            for (int j = 0; j < n; j++) {
                to[begin + j] += factor * from[first + j];
            }
        }

        /** Adds the covariances of row i, times a factor, to n numbers. */
        void add(double factor, int i, double[] sum) {
            addRow(factor, covariance, i * n, sum, 0);
        }

        /** Adds the covariances of all rows, each times its factor, to n numbers. */
        void add(double[] factors, double[] sum) {
            Vectors.addSymmetricTimes(covariance, factors, sum);
        }

        /** By how much a contrast moves with a step of V (r + X' d). */
        double moved(SparseRow x, double[] d) {
            double sum = 0;
            for (int e = 0; e < x.size(); e++) {
                sum += x.value(e) * moved(x.index(e), d);
            }
            return sum;
        }

        /** By how much a coefficient does. */
        double moved(int coefficient, double[] d) {
            double sum = step[coefficient];
            int from = coefficient * n;
            for (int i = 0; i < n; i++) {
                sum += reach[from + i] * d[i];
            }
            return sum;
        }
    }
}
