package swapworth.statistics;

import java.util.Arrays;
import java.util.stream.IntStream;

/**
 * The inverse V of a matrix of blocks with a {@link Border}, where such a matrix is held, and what a prior P holds of it. With the parts L,
 * G and M of the {@link BorderedFactor}, E = (L L')^-1 and U = L'^-1 G of each block, and W = (M M')^-1:
 *
 * <pre>
 *   V of the border W, of border and block -U W, of the block E + U W U'
 * </pre>
 *
 * <p>V P V follows with K = E P U from Q = W (P of the border + sum of U'P U) W: of the border Q, of border and block -(U Q + K W), of the
 * block E P E + K W U' + U W K' + U Q U'.
 */
final class BorderedInverse {
    private final Border border;
    private final double[] factor;
    private final double[] scale;
    /** W, row after row in full. */
    private final double[] ofBorder;

    BorderedInverse(Border border, double[] factor, double[] scale) {
        this.border = border;
        this.factor = factor;
        this.scale = scale;
        this.ofBorder = inverseOfSquare(IntStream.range(0, border.shared().length).map(BorderedFactor::triangle).toArray());
    }

    /** Writes V where a matrix with the border is held. */
    void write(double[] inverse) {
        write(ofBorder, inverse);
        BorderedFactor.parts(border, (part, first, end) -> {
            for (int b = first; b < end; b++) {
                new Block(b).writeInverse(inverse);
            }
        });
        BorderedFactor.scaled(border, inverse, scale, inverse);
    }

    /** V P V where V is held, from P there, which must be 0 between blocks and border. */
    double[] held(double[] prior) {
        int s = border.shared().length;
        double[] p = border.zeros();
        BorderedFactor.scaled(border, prior, scale, p);
        double[][] sums = new double[BorderedFactor.PARTS][];
        BorderedFactor.parts(border, (part, first, end) -> {
            double[] sum = new double[s * s];
            for (int b = first; b < end; b++) {
                new Block(b).addHeld(p, sum);
            }
            sums[part] = sum;
        });
        double[] inner = new double[s * s];
        for (double[] sum : sums) {
            for (int k = 0; sum != null && k < sum.length; k++) {
                inner[k] += sum[k];
            }
        }
        for (int i = 0; i < s; i++) {
            for (int j = 0; j <= i; j++) {
                inner[i * s + j] += p[BorderedFactor.triangle(i) + j];
                inner[j * s + i] += i == j ? 0 : p[BorderedFactor.triangle(i) + j];
            }
        }
        double[] q = Vectors.times(Vectors.times(ofBorder, inner, s, s), ofBorder, s, s);
        double[] held = border.zeros();
        write(q, held);
        BorderedFactor.parts(border, (part, first, end) -> {
            for (int b = first; b < end; b++) {
                new Block(b).writeHeld(p, q, held);
            }
        });
        BorderedFactor.scaled(border, held, scale, held);
        return held;
    }

    /** Writes the lower triangle of a matrix of the bordering columns. */
    private void write(double[] full, double[] into) {
        int s = border.shared().length;
        for (int i = 0; i < s; i++) {
            System.arraycopy(full, i * s, into, BorderedFactor.triangle(i), i + 1);
        }
    }

    /** (L L')^-1, row after row in full, for a lower triangle L whose rows begin at stated places. */
    private double[] inverseOfSquare(int[] row) {
        int m = row.length;
        double[] root = new double[m * m];
        for (int i = 0; i < m; i++) {
            for (int k = 0; k < i; k++) {
                Vectors.addTimes(-factor[row[i] + k], root, k * m, root, i * m, k + 1);
            }
            root[i * m + i] = 1;
            for (int j = 0; j <= i; j++) {
                root[i * m + j] /= factor[row[i] + i];
            }
        }
        double[] inverse = new double[m * m];
        for (int k = 0; k < m; k++) {
            for (int i = 0; i <= k; i++) {
                Vectors.addTimes(root[k * m + i], root, k * m, inverse, i * m, k + 1);
            }
        }
        return inverse;
    }

    /** What a block of m columns brings to the inverse. */
    private final class Block {
        private final int[] column;
        private final int m;
        private final int s = border.shared().length;
        /** U and U W, each of m rows. */
        private final double[] u;
        private final double[] uw;
        /** E. */
        private final double[] own;

        Block(int number) {
            this.column = border.block(number);
            this.m = column.length;
            this.u = new double[m * s];
            int[] row = Arrays.stream(column).map(c -> border.base(c) + s).toArray();
            for (int i = m - 1; i >= 0; i--) {
                System.arraycopy(factor, border.base(column[i]), u, i * s, s);
                for (int k = i + 1; k < m; k++) {
                    Vectors.addTimes(-factor[row[k] + i], u, k * s, u, i * s, s);
                }
                for (int j = 0; j < s; j++) {
                    u[i * s + j] /= factor[row[i] + i];
                }
            }
            this.own = inverseOfSquare(row);
            this.uw = Vectors.times(u, ofBorder, s, s);
        }

        void writeInverse(double[] into) {
            for (int i = 0; i < m; i++) {
                int row = border.base(column[i]);
                for (int j = 0; j < s; j++) {
                    into[row + j] = -uw[i * s + j];
                }
                for (int j = 0; j <= i; j++) {
                    into[row + s + j] = own[i * m + j] + Vectors.dot(uw, i * s, u, j * s, s);
                }
            }
        }

        /** P of the block, row after row in full. */
        private double[] prior(double[] p) {
            double[] full = new double[m * m];
            for (int i = 0; i < m; i++) {
                for (int j = 0; j <= i; j++) {
                    full[i * m + j] = p[border.base(column[i]) + s + j];
                    full[j * m + i] = full[i * m + j];
                }
            }
            return full;
        }

        /** Adds U'P U. */
        void addHeld(double[] p, double[] sum) {
            double[] pu = Vectors.times(prior(p), u, m, s);
            for (int i = 0; i < m; i++) {
                for (int a = 0; a < s; a++) {
                    Vectors.addTimes(u[i * s + a], pu, i * s, sum, a * s, s);
                }
            }
        }

        void writeHeld(double[] p, double[] q, double[] into) {
            double[] ownPrior = Vectors.times(own, prior(p), m, m);
            double[] k = Vectors.times(ownPrior, u, m, s);
            double[] kw = Vectors.times(ownPrior, uw, m, s);
            double[] uq = Vectors.times(u, q, s, s);
            double[] ownHeld = Vectors.times(ownPrior, own, m, m);
            for (int i = 0; i < m; i++) {
                int row = border.base(column[i]);
                for (int j = 0; j < s; j++) {
                    into[row + j] = -(uq[i * s + j] + kw[i * s + j]);
                }
                for (int j = 0; j <= i; j++) {
                    into[row + s + j] = ownHeld[i * m + j] + Vectors.dot(kw, i * s, u, j * s, s)
                            + Vectors.dot(uw, i * s, k, j * s, s) + Vectors.dot(uq, i * s, u, j * s, s);
                }
            }
        }
    }
}
