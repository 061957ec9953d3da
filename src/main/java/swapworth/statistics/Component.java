package swapworth.statistics;

import java.util.Arrays;

/**
 * The posterior at one point of the hyperparameters, possibly with rows left out. Without them the covariance is V + V X' K X V, where X
 * holds the rows left out, and the coefficients move by V X' d; in closed form no vector of p numbers is written out for it.
 */
abstract class Component {
    final Shape shape;
    final Mode mode;
    final double scale;
    final double growth;
    final double weight;

    Component(Shape shape, double scale, double growth, double weight) {
        this.shape = shape;
        this.mode = shape.mode;
        this.scale = scale;
        this.growth = growth;
        this.weight = weight;
    }

    /**
     * What a component says of a contrast.
     *
     * @param fitted the mean
     * @param variance the variance, at least 0
     * @param held what the prior holds of the variance; not a number where V P V has not been made, see {@link Shape#withHeld}
     */
    record Said(double fitted, double variance, double held) {
    }

    /** What is believed of a contrast. */
    abstract Said of(SparseRow contrast);

    /** The means of the coefficients. */
    abstract double[] coefficients();

    /** The covariance matrix times a contrast. */
    abstract double[] times(SparseRow contrast);

    abstract Component weighing(double changed);

    /** Whether rows are left out. */
    abstract boolean leavesOut();

    /** The error scale of a response. */
    final double errorScale(double inflation, double along) {
        return inflation * scale * Math.exp(growth * along);
    }

    static void add(double factor, double[] vector, double[] sum) {
        for (int j = 0; j < sum.length; j++) {
            sum[j] += factor * vector[j];
        }
    }

    /** Without one row, in closed form: a few numbers, which answer as {@link WithoutRows} does. */
    static final class WithoutRow extends Component {
        private final double[] coefficients;
        private final SparseRow left;
        private final double core;
        private final double shift;
        private final Shape.Forms ofLeft;

        private WithoutRow(Component all, double weight, double[] coefficients, SparseRow left, double core, double shift,
                Shape.Forms ofLeft) {
            super(all.shape, all.scale, all.growth, weight);
            this.coefficients = coefficients;
            this.left = left;
            this.core = core;
            this.shift = shift;
            this.ofLeft = ofLeft;
        }

        @Override
        Said of(SparseRow x) {
            Shape.Forms among = shape.outgrew(ofLeft) ? shape.quadratic(left) : ofLeft;
            Shape.Forms itself = among;
            Shape.Forms shared = among;
            if (!left.isSame(x)) {
                itself = new Shape.Forms();
                shared = new Shape.Forms();
                shape.both(x, left, among, itself, shared);
            }
            double share = core * shared.variance;
            return new Said(x.dot(coefficients) + shift * shared.variance, Math.max(0, itself.variance + shared.variance * share),
                    itself.held + 2 * share * shared.held + share * share * among.held);
        }

        @Override
        double[] coefficients() {
            return asRows().coefficients();
        }

        @Override
        double[] times(SparseRow contrast) {
            return asRows().times(contrast);
        }

        private WithoutRows asRows() {
            return new WithoutRows(this, weight, coefficients, new SparseRow[] {left}, new double[][] {{core}}, new double[] {shift},
                    new Shape.Forms[][] {{ofLeft}}, new double[0], new double[0]);
        }

        @Override
        Component weighing(double changed) {
            return new WithoutRow(this, changed, coefficients, left, core, shift, ofLeft);
        }

        @Override
        boolean leavesOut() {
            return true;
        }
    }

    /** Without several rows, or with all. */
    static final class WithoutRows extends Component {
        private final double[] coefficients;
        private final SparseRow[] left;
        private final double[][] core;
        private final double[] shift;
        private final Shape.Forms[][] ofLeft;
        /** How much of each row of the fit the coefficients have moved by, beside what they move by in closed form; empty for nothing. */
        private final double[] taken;
        /** By how much the fitted values of the rows left out have moved with it. */
        private final double[] moved;

        /** With all rows. */
        WithoutRows(Mode mode, double scale, double growth, double weight) {
            super(new Shape(mode), scale, growth, weight);
            this.coefficients = mode.coefficients();
            this.left = new SparseRow[0];
            this.core = new double[0][];
            this.shift = new double[0];
            this.ofLeft = new Shape.Forms[0][];
            this.taken = new double[0];
            this.moved = new double[0];
        }

        private WithoutRows(Component all, double weight, double[] coefficients, SparseRow[] left, double[][] core, double[] shift,
                Shape.Forms[][] ofLeft, double[] taken, double[] moved) {
            super(all.shape, all.scale, all.growth, weight);
            this.coefficients = coefficients;
            this.left = left;
            this.core = core;
            this.shift = shift;
            this.ofLeft = ofLeft;
            this.taken = taken;
            this.moved = moved;
        }

        /** Without a row of all. */
        WithoutRow without(int row, SparseRow x) {
            Shape.Forms own = shape.own(row, x);
            double core = 1 / (1 - own.variance * mode.information(row)) * mode.information(row);
            // The row takes its pull with it: d = -(I + K S) times its pull.
            double shift = -mode.pull(row) - core * own.variance * mode.pull(row);
            return new WithoutRow(this, weight, coefficients, x, core, shift, own);
        }

        /** Without rows of all. */
        WithoutRows without(int[] rows, SparseRow[] x) {
            int r = rows.length;
            Shape.Forms[][] s = shape.among(x);
            // K = (H^-1 - S)^-1 = H (I - S H)^-1, which also holds for rows of no information.
            double[][] inner = new double[r][r];
            for (int i = 0; i < r; i++) {
                for (int j = 0; j < r; j++) {
                    inner[i][j] = (i == j ? 1 : 0) - s[i][j].variance * mode.information(rows[j]);
                }
            }
            double[][] k = inverse(inner);
            for (int i = 0; i < r; i++) {
                for (int j = 0; j < r; j++) {
                    k[i][j] *= mode.information(rows[i]);
                }
            }
            double[] d = new double[r];
            for (int i = 0; i < r; i++) {
                d[i] -= mode.pull(rows[i]);
                for (int j = 0; j < r; j++) {
                    for (int m = 0; m < r; m++) {
                        d[i] -= k[i][m] * s[m][j].variance * mode.pull(rows[j]);
                    }
                }
            }
            return new WithoutRows(this, weight, coefficients, x, k, d, s, new double[0], new double[0]);
        }

        /** The inverse of a small matrix by elimination with row exchanges. */
        private static double[][] inverse(double[][] matrix) {
            int r = matrix.length;
            double[][] a = new double[r][2 * r];
            for (int i = 0; i < r; i++) {
                System.arraycopy(matrix[i], 0, a[i], 0, r);
                a[i][r + i] = 1;
            }
            for (int j = 0; j < r; j++) {
                int best = j;
                for (int i = j + 1; i < r; i++) {
                    best = Math.abs(a[i][j]) > Math.abs(a[best][j]) ? i : best;
                }
                double[] swap = a[j];
                a[j] = a[best];
                a[best] = swap;
                double pivot = a[j][j];
                for (int k = 0; k < 2 * r; k++) {
                    a[j][k] /= pivot;
                }
                for (int i = 0; i < r; i++) {
                    if (i != j && a[i][j] != 0) {
                        add(-a[i][j], a[j], a[i]);
                    }
                }
            }
            double[][] inverse = new double[r][];
            for (int i = 0; i < r; i++) {
                inverse[i] = Arrays.copyOfRange(a[i], r, 2 * r);
            }
            return inverse;
        }

        /** The size of the step that leaving rows out takes, in squared standard deviations. */
        double sizeOfStep(int[] rows) {
            double size = 0;
            for (int i = 0; i < rows.length; i++) {
                for (int j = 0; j < rows.length; j++) {
                    size -= mode.pull(rows[i]) * ofLeft[i][j].variance * shift[j];
                }
            }
            return size;
        }

        /** How much of each row left out the step takes. */
        double shift(int r) {
            return shift[r];
        }

        /** The same with so much of each row of the fit taken in all, the rows left out and the rest of the first step included. */
        WithoutRows settled(double[] taken, double[] moved) {
            return new WithoutRows(this, weight, coefficients, left, core, new double[left.length], ofLeft, taken, moved);
        }

        /** By how much a contrast has moved beside what it moves by in closed form. */
        private double moved(SparseRow x) {
            if (taken.length == 0) {
                return 0;
            }
            int own = own(x);
            return own < 0 ? shape.onRows().moved(x, taken) : moved[own];
        }

        /** Which of the rows left out a contrast is; -1 for none. */
        private int own(SparseRow x) {
            int own = left.length - 1;
            while (own >= 0 && !left[own].isSame(x)) {
                own--;
            }
            return own;
        }

        /** With w for a contrast x, the covariance times x is V (x + X' w); from V between the contrast and each row left out. */
        double[] share(double[] projected) {
            double[] share = new double[left.length];
            for (int r = 0; r < share.length; r++) {
                for (int s = 0; s < share.length; s++) {
                    share[r] += core[r][s] * projected[s];
                }
            }
            return share;
        }

        /** The forms between a contrast and each row left out, and last those of the contrast with itself. */
        private Shape.Forms[] forms(SparseRow x, Shape.Forms[][] among) {
            Shape.Forms[] forms = new Shape.Forms[left.length + 1];
            int own = own(x);
            if (own >= 0) {
                System.arraycopy(among[own], 0, forms, 0, left.length);
                forms[left.length] = among[own][own];
                return forms;
            }
            for (int r = 0; r < left.length; r++) {
                forms[r] = shape.between(x, left[r]);
            }
            forms[left.length] = shape.quadratic(x);
            return forms;
        }

        private double[] share(Shape.Forms[] forms) {
            double[] projected = new double[left.length];
            for (int r = 0; r < left.length; r++) {
                projected[r] = forms[r].variance;
            }
            return share(projected);
        }

        @Override
        Said of(SparseRow x) {
            Shape.Forms[][] among = left.length > 0 && shape.outgrew(ofLeft[0][0]) ? shape.among(left) : ofLeft;
            Shape.Forms[] forms = forms(x, among);
            double[] share = share(forms);
            double fitted = x.dot(coefficients) + moved(x);
            double variance = forms[left.length].variance;
            double held = forms[left.length].held;
            for (int r = 0; r < left.length; r++) {
                fitted += shift[r] * forms[r].variance;
                variance += forms[r].variance * share[r];
                held += 2 * share[r] * forms[r].held;
                for (int s = 0; s < left.length; s++) {
                    held += share[r] * share[s] * among[r][s].held;
                }
            }
            return new Said(fitted, Math.max(0, variance), held);
        }

        @Override
        double[] coefficients() {
            double[] moved = coefficients.clone();
            for (int r = 0; r < left.length; r++) {
                if (shift[r] != 0) {
                    add(shift[r], shape.covariance.times(left[r]), moved);
                }
            }
            for (int j = 0; taken.length > 0 && j < moved.length; j++) {
                moved[j] += shape.onRows().moved(j, taken);
            }
            return moved;
        }

        @Override
        double[] times(SparseRow x) {
            double[] product = shape.covariance.times(x);
            double[] share = share(forms(x, ofLeft));
            // Whatever is asked of a price of its own car is asked of a row left out: with thousands of columns once is enough.
            int own = own(x);
            double[] all = own < 0 ? product : product.clone();
            for (int r = 0; r < share.length; r++) {
                add(share[r], r == own ? all : shape.covariance.times(left[r]), product);
            }
            return product;
        }

        @Override
        Component weighing(double changed) {
            return new WithoutRows(this, changed, coefficients, left, core, shift, ofLeft, taken, moved);
        }

        @Override
        boolean leavesOut() {
            return left.length > 0;
        }
    }
}
