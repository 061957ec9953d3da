package swapworth.statistics;

import static java.util.Objects.requireNonNull;

import java.util.Arrays;
import java.util.Optional;
import java.util.stream.IntStream;
import org.jspecify.annotations.Nullable;

/** The normal law about a mode with all rows: V, its covariance matrix, and V P V, what of it the prior P holds. */
final class Shape {
    final Mode mode;
    /** V in full, row after row. */
    final double[] covariance;
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
            IntStream.range(0, p).parallel().forEach(i -> made[i] = pairs(i));
            // The same whichever thread makes it.
            pairs = made;
        }
    }

    /** Row i up to its diagonal of V and of V P V, side by side. */
    private double[] pairs(int i) {
        int p = p();
        double[] column = mode.spreads().times(Arrays.copyOfRange(covariance, i * p, (i + 1) * p));
        double[] sum = new double[i + 1];
        addTimes(column, sum);
        double[] made = new double[2 * (i + 1)];
        for (int j = 0; j <= i; j++) {
            made[2 * j] = covariance[i * p + j];
            made[2 * j + 1] = sum[j];
        }
        return made;
    }

    /** The forms of a contrast with itself. */
    Forms quadratic(SparseRow x) {
        Forms forms = new Forms();
        double[][] made = pairs;
        if (made == null) {
            forms.variance = x.quadratic(covariance, p());
        } else {
            x.quadratic(made, forms);
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
            double[][] made = forKept(requireNonNull(pairs, "made above"), design.folding());
            double[] found = new double[2 * design.rows()];
            Ranges.each(design.rows(), (first, end) -> {
                int[] column = new int[design.columns()];
                double[] number = new double[design.columns()];
                Forms forms = new Forms();
                for (int i = first; i < end; i++) {
                    SparseRow.quadratic(column, number, design.writeKept(i, column, number), made, forms);
                    found[2 * i] = forms.variance;
                    found[2 * i + 1] = forms.held;
                }
            });
            ownForms = found;
        }
    }

    /** The matrices as the entries that a design keeps ask for them. */
    private static double[][] forKept(double[][] pairs, Folding folding) {
        if (folding.size() == 0) {
            return pairs;
        }
        int p = pairs.length;
        double[][] kept = new double[p][];
        Arrays.setAll(kept, i -> new double[pairs[i].length]);
        for (int matrix = 0; matrix < 2; matrix++) {
            double[] full = new double[p * p];
            for (int i = 0; i < p; i++) {
                for (int j = 0; j <= i; j++) {
                    full[i * p + j] = pairs[i][2 * j + matrix];
                    full[j * p + i] = full[i * p + j];
                }
            }
            double[] folded = folding.forKept(full, p);
            for (int i = 0; i < p; i++) {
                for (int j = 0; j <= i; j++) {
                    kept[i][2 * j + matrix] = folded[i * p + j];
                }
            }
        }
        return kept;
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
            forms.variance = x.between(covariance, p(), y);
        } else {
            x.between(made, y, forms);
        }
        return forms;
    }

    /** The forms of a contrast with itself, and between it and another one, of which those with itself are known. */
    void both(SparseRow x, SparseRow y, Forms ofOther, Forms itself, Forms between) {
        double[][] made = pairs;
        if (made == null) {
            itself.variance = x.quadratic(covariance, p());
            between.variance = x.between(covariance, p(), y);
            return;
        }
        Optional<SparseRow> more = x.differenceInOneColumn(y);
        if (more.isEmpty()) {
            x.quadraticAndBetween(made, y, itself, between);
            return;
        }
        // x = y + d: x'V y = y'V y + d'V y, and x'V x = y'V y + 2 d'V y + d'V d.
        Forms across = between(more.get(), y);
        Forms apart = quadratic(more.get());
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

    /** The law of the fitted values of the rows, made when first asked for: the same whichever thread makes it. */
    OnRows onRows(Design design) {
        OnRows made = onRows;
        if (made == null) {
            made = new OnRows(this, design);
            onRows = made;
        }
        return made;
    }

    /** Adds V times a full vector, as far as the sums reach. */
    void addTimes(double[] x, double[] sums) {
        int p = p();
        int k = 0;
        // Four rows of V at a time, for each sum is then read and written a quarter as often.
        for (; k + 3 < p; k += 4) {
            addFour(x, k, sums);
        }
        for (; k < p; k++) {
            for (int j = 0; j < sums.length; j++) {
                sums[j] += x[k] * covariance[k * p + j];
            }
        }
    }

    private void addFour(double[] x, int k, double[] sums) {
        double[] v = covariance;
        double first = x[k];
        double second = x[k + 1];
        double third = x[k + 2];
        double fourth = x[k + 3];
        if (first == 0 && second == 0 && third == 0 && fourth == 0) {
            return;
        }
        int p = p();
        int from = k * p;
        for (int j = 0; j < sums.length; j++) {
            int at = from + j;
            sums[j] = sums[j] + first * v[at] + second * v[at + p] + third * v[at + 2 * p] + fourth * v[at + 3 * p];
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
