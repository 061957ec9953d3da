package swapworth.statistics;

import java.util.Arrays;
import java.util.stream.IntStream;

/**
 * The Cholesky factor of a positive definite matrix of blocks with a {@link Border}, whose columns were first scaled to a diagonal of one.
 * With D = L L' for each block, B its part of the border and C that of the bordering columns:
 *
 * <pre>
 *   G = L^-1 B      S = C - sum of G'G = M M'      the factor's rows: L | G' M
 * </pre>
 */
final class BorderedFactor implements Factor {
    /** Blocks are shared out to so many parts; sums of parts are added in their order, whatever the number of processors. */
    static final int PARTS = 8;
    /** Below so many numbers that a factor holds, one part is quicker. */
    private static final int SHARED_OUT = 20_000;

    private final Border border;
    /** Where the matrix was: L and G in the rows of blocks, M in those of the border. */
    private final double[] factor;
    private final double[] scale;
    private final double smallestPivot;

    private BorderedFactor(Border border, double[] factor, double[] scale, double smallestPivot) {
        this.border = border;
        this.factor = factor;
        this.scale = scale;
        this.smallestPivot = smallestPivot;
    }

    static BorderedFactor of(double[] matrix, Border border) {
        int p = border.columns();
        double[] scale = new double[p];
        for (int c = 0; c < p; c++) {
            double d = matrix[border.at(c, c)];
            scale[c] = d > 0 ? 1 / Math.sqrt(d) : 0;
        }
        double[] f = border.zeros();
        scaled(border, matrix, scale, f);
        int s = border.shared().length;
        double[] smallest = new double[PARTS];
        Arrays.fill(smallest, 1);
        double[][] taken = new double[PARTS][];
        parts(border, (part, first, end) -> {
            double[] sum = new double[triangle(s)];
            for (int b = first; b < end; b++) {
                smallest[part] = Math.min(smallest[part], factorBlock(border, b, f));
                addSquares(border, b, f, sum);
            }
            taken[part] = sum;
        });
        for (double[] sum : taken) {
            for (int k = 0; sum != null && k < sum.length; k++) {
                f[k] -= sum[k];
            }
        }
        double least = Math.min(Arrays.stream(smallest).min().orElseThrow(), factorTriangle(f, s));
        return new BorderedFactor(border, f, scale, Math.max(0, least));
    }

    /** Work on a part of the blocks. */
    interface OnPart {
        void on(int part, int first, int end);
    }

    static void parts(Border border, OnPart work) {
        int blocks = border.blocks();
        if (border.size() < SHARED_OUT) {
            work.on(0, 0, blocks);
        } else {
            IntStream.range(0, PARTS).parallel()
                    .forEach(part -> work.on(part, Ranges.first(blocks, part, PARTS), Ranges.first(blocks, part + 1, PARTS)));
        }
    }

    static int triangle(int s) {
        return s * (s + 1) / 2;
    }

    /** A matrix with this border whose rows and columns are multiplied by a number each. */
    static void scaled(Border border, double[] matrix, double[] scale, double[] into) {
        int[] shared = border.shared();
        for (int c = 0; c < scale.length; c++) {
            int base = border.base(c);
            int place = border.place(c);
            int most = Math.min(shared.length, place + 1);
            for (int k = 0; k < most; k++) {
                into[base + k] = matrix[base + k] * scale[c] * scale[shared[k]];
            }
            for (int k = most; k <= place; k++) {
                into[base + k] = matrix[base + k] * scale[c] * scale[border.block(border.blockOf(c))[k - most]];
            }
        }
    }

    /** Factors a block, and what it has in the border; returns its smallest pivot. */
    private static double factorBlock(Border border, int block, double[] f) {
        int[] column = border.block(block);
        int s = border.shared().length;
        double smallest = 1;
        for (int i = 0; i < column.length; i++) {
            int row = border.base(column[i]);
            for (int j = 0; j <= i; j++) {
                int other = border.base(column[j]);
                double sum = f[row + s + j] - Vectors.dot(f, row + s, f, other + s, j);
                if (j < i) {
                    f[row + s + j] = sum / f[other + s + j];
                } else {
                    smallest = Math.min(smallest, sum);
                    f[row + s + i] = Math.sqrt(sum);
                }
            }
            for (int k = 0; k < i; k++) {
                Vectors.addTimes(-f[row + s + k], f, border.base(column[k]), f, row, s);
            }
            double root = f[row + s + i];
            for (int j = 0; j < s; j++) {
                f[row + j] /= root;
            }
        }
        return Double.isNaN(smallest) ? 0 : smallest;
    }

    /** Adds G'G of a block to a lower triangle, two rows at a time: each sum is then read and written half as often. */
    private static void addSquares(Border border, int block, double[] f, double[] sum) {
        int[] column = border.block(block);
        int s = border.shared().length;
        int i = 0;
        for (; i + 1 < column.length; i += 2) {
            int one = border.base(column[i]);
            int two = border.base(column[i + 1]);
            for (int a = 0, at = 0; a < s; at += ++a) {
                double first = f[one + a];
                double second = f[two + a];
                if (first != 0 || second != 0) {
                    for (int b = 0; b <= a; b++) {
                        sum[at + b] += first * f[one + b] + second * f[two + b];
                    }
                }
            }
        }
        for (; i < column.length; i++) {
            int row = border.base(column[i]);
            for (int a = 0, at = 0; a < s; at += ++a) {
                Vectors.addTimes(f[row + a], f, row, sum, at, a + 1);
            }
        }
    }

    /** Factors the lower triangle of the border in its place; returns its smallest pivot. */
    private static double factorTriangle(double[] f, int s) {
        double smallest = 1;
        for (int i = 0; i < s; i++) {
            int row = triangle(i);
            for (int j = 0; j <= i; j++) {
                int other = triangle(j);
                double sum = f[row + j] - Vectors.dot(f, row, f, other, j);
                if (j < i) {
                    f[row + j] = sum / f[other + j];
                } else {
                    smallest = Math.min(smallest, sum);
                    f[row + i] = Math.sqrt(sum);
                }
            }
        }
        return Double.isNaN(smallest) ? 0 : smallest;
    }

    @Override
    public double smallestPivot() {
        return smallestPivot;
    }

    /** x'V y. */
    double between(SparseRow x, SparseRow y) {
        double[] through = forward(x.writtenOut(scale.length));
        double[] other = x == y ? through : forward(y.writtenOut(scale.length));
        return Vectors.dot(through, 0, other, 0, other.length);
    }

    @Override
    public double[] solve(double[] right) {
        return backward(forward(right));
    }

    @Override
    public double[] backSolve(double[] z) {
        return backward(z.clone());
    }

    /** What a vector has in some columns; by a plain loop, for there may be thousands of blocks. */
    static double[] gathered(int[] columns, double[] x) {
        double[] part = new double[columns.length];
        for (int k = 0; k < part.length; k++) {
            part[k] = x[columns[k]];
        }
        return part;
    }

    /** The factor's inverse times a vector. */
    private double[] forward(double[] right) {
        int[] shared = border.shared();
        double[] x = new double[right.length];
        double[] onBorder = new double[shared.length];
        for (int b = 0; b < border.blocks(); b++) {
            int[] column = border.block(b);
            double[] part = new double[column.length];
            boolean any = false;
            for (int i = 0; i < part.length; i++) {
                part[i] = right[column[i]] * scale[column[i]];
                any |= part[i] != 0;
            }
            if (any) {
                throughBlock(b, part, onBorder);
                for (int i = 0; i < part.length; i++) {
                    x[column[i]] = part[i];
                }
            }
        }
        for (int k = 0; k < shared.length; k++) {
            onBorder[k] += right[shared[k]] * scale[shared[k]];
        }
        throughBorder(onBorder);
        for (int k = 0; k < shared.length; k++) {
            x[shared[k]] = onBorder[k];
        }
        return x;
    }

    /** L^-1 times what a vector has in a block, in its place, and what that leaves of the border's part taken off it. */
    private void throughBlock(int block, double[] x, double[] onBorder) {
        int[] column = border.block(block);
        int s = border.shared().length;
        for (int i = 0; i < x.length; i++) {
            int row = border.base(column[i]);
            double sum = x[i] - Vectors.dot(factor, row + s, x, 0, i);
            x[i] = sum / factor[row + s + i];
            Vectors.addTimes(-x[i], factor, row, onBorder, 0, s);
        }
    }

    /** M^-1 times what a vector has of the border, in its place. */
    private double[] throughBorder(double[] x) {
        for (int i = 0; i < x.length; i++) {
            int row = triangle(i);
            x[i] = (x[i] - Vectors.dot(factor, row, x, 0, i)) / factor[row + i];
        }
        return x;
    }

    /** The transposed inverse of the factor times a vector, which is overwritten. */
    private double[] backward(double[] x) {
        int[] shared = border.shared();
        double[] onBorder = backSolveBorder(gathered(shared, x));
        for (int k = 0; k < shared.length; k++) {
            x[shared[k]] = onBorder[k] * scale[shared[k]];
        }
        for (int b = 0; b < border.blocks(); b++) {
            int[] column = border.block(b);
            double[] part = gathered(column, x);
            backSolveBlock(b, onBorder, part);
            for (int i = 0; i < part.length; i++) {
                x[column[i]] = part[i];
            }
        }
        return x;
    }

    /** What {@link #backSolve} has in the bordering columns, before they are scaled: it depends on theirs alone, which are overwritten. */
    double[] backSolveBorder(double[] z) {
        for (int i = z.length - 1; i >= 0; i--) {
            int row = triangle(i);
            z[i] /= factor[row + i];
            Vectors.addTimes(-z[i], factor, row, z, 0, i);
        }
        return z;
    }

    /** What {@link #backSolve} has in a block, in the place of what the block had, from {@link #backSolveBorder}. */
    void backSolveBlock(int block, double[] onBorder, double[] z) {
        int[] column = border.block(block);
        int s = onBorder.length;
        for (int i = column.length - 1; i >= 0; i--) {
            int row = border.base(column[i]);
            z[i] = (z[i] - Vectors.dot(factor, row, onBorder, 0, s)) / factor[row + s + i];
            Vectors.addTimes(-z[i], factor, row + s, z, 0, i);
        }
        for (int i = 0; i < z.length; i++) {
            z[i] *= scale[column[i]];
        }
    }

    Border border() {
        return border;
    }

    double scale(int column) {
        return scale[column];
    }

    @Override
    public Covariance inverseWhereHeld(Room room) {
        double[] inverse = room.lend();
        new BorderedInverse(border, factor, scale).write(inverse);
        return new Covariance(border, inverse, this);
    }

    @Override
    public Covariance inverse() {
        return inverseWhereHeld(new Room(border.size()));
    }

    /** V P V where V is held, from P there, which must be 0 between blocks and border. */
    double[] held(double[] prior) {
        return new BorderedInverse(border, factor, scale).held(prior);
    }

    @Override
    public double logDeterminant() {
        double sum = 0;
        for (int c = 0; c < scale.length; c++) {
            sum += 2 * (Math.log(factor[border.at(c, c)]) - Math.log(scale[c]));
        }
        return sum;
    }

    /**
     * The sum of the squares of the entries of V among some neighbouring columns. V is a sum over the rows of the factor's inverse: those
     * of the border tell of all columns, those of a block of its own alone.
     */
    double sumOfSquares(int from, int count) {
        int[] shared = border.shared();
        int s = shared.length;
        double[] squares = new double[s * s];
        for (int k = 0; k < s; k++) {
            if (shared[k] >= from && shared[k] < from + count) {
                double[] unit = new double[s];
                unit[k] = scale[shared[k]];
                addSquare(throughBorder(unit), squares);
            }
        }
        double sum = 0;
        for (int b = 0; b < border.blocks(); b++) {
            int[] column = border.block(b);
            int[] asked = IntStream.range(0, column.length).filter(i -> column[i] >= from && column[i] < from + count).toArray();
            double[][] inBlock = new double[asked.length][column.length];
            double[][] onBorder = new double[asked.length][];
            for (int q = 0; q < asked.length; q++) {
                inBlock[q][asked[q]] = scale[column[asked[q]]];
                double[] taken = new double[s];
                throughBlock(b, inBlock[q], taken);
                onBorder[q] = throughBorder(taken);
                addSquare(onBorder[q], squares);
            }
            for (int q = 0; q < asked.length; q++) {
                for (int r = 0; r < asked.length; r++) {
                    double ofBorder = Vectors.dot(onBorder[q], 0, onBorder[r], 0, s);
                    double all = ofBorder + Vectors.dot(inBlock[q], 0, inBlock[r], 0, column.length);
                    sum += all * all - ofBorder * ofBorder;
                }
            }
        }
        return sum + Vectors.dot(squares, 0, squares, 0, squares.length);
    }

    private static void addSquare(double[] x, double[] squares) {
        for (int a = 0; a < x.length; a++) {
            Vectors.addTimes(x[a], x, 0, squares, a * x.length, x.length);
        }
    }
}
