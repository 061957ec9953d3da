package swapworth.statistics;

import java.util.Arrays;
import java.util.stream.IntStream;

/**
 * The Cholesky factor of a symmetric positive definite p x p matrix whose rows and columns were first scaled to a diagonal of one.
 * The smallest pivot of the scaled matrix, 1 - R^2 of the most dependent column on those before it, tells how many digits the
 * factor can be trusted with.
 *
 * <p>Large matrices of grouped models are mostly zeros: a trim meets its own line only. Their columns are taken in order of how full
 * they are, the fullest last, so that most of the zeros stay, and zeros are passed over. Once what is left is full for the most part, zeros
 * are no longer looked for: plain loops over whole rows are quicker.
 */
final class Cholesky implements Factor {
    /** Below this size an order of columns gains nothing. */
    private static final int ORDERED = 64;
    /** From this size on the inverse is worth several processors, */
    private static final int SHARED = 200;
    /** and is taken in so many parts, more than there are processors, for some take longer than others. */
    private static final int PARTS = 64;
    /** Of no weight in any sum with numbers about 1, and yet its square and cube are no denormal numbers, with which sums are slow. */
    private static final double NEXT_TO_NOTHING = 1e-100;

    private final int p;
    private final int[] order;
    /** Row after row, each up to its diagonal. */
    private final double[] lower;
    private final double[] scale;
    private final double smallestPivot;
    /** From this column on every place counts as filled. */
    private final int full;

    /** The factor of the matrix in the stated order of its columns; {@code scale} is by the columns themselves. */
    private Cholesky(int p, int[] order, double[] lower, double[] scale, double smallestPivot, int full) {
        this.p = p;
        this.full = full;
        this.order = order;
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
        int[] order = p < ORDERED ? asTheyStand(p) : fullestLast(matrix, p);
        double[] l = scaled(matrix, p, order, scale);
        double smallest = 1;
        double[] column = new double[p];
        int[] filled = new int[p];
        int full = p;
        for (int k = 0; k < p; k++) {
            int own = row(k) + k;
            double pivot = l[own];
            smallest = Math.min(smallest, pivot);
            if (!(pivot > 0)) {
                return new Cholesky(p, order, l, scale, 0, full);
            }
            double root = Math.sqrt(pivot);
            l[own] = root;
            if (k > full) {
                takeOff(l, p, k, root, column);
                continue;
            }
            int count = 0;
            for (int i = k + 1, at = row(i) + k; i < p; at += ++i) {
                double value = l[at];
                if (value != 0) {
                    filled[count++] = i;
                    column[i] = value / root;
                    l[at] = column[i];
                }
            }
            full = 2 * count > p - 1 - k ? k : full;
            takeOff(l, column, filled, count);
        }
        return new Cholesky(p, order, l, scale, smallest, full);
    }

    /** The lower triangle of a matrix in another order of its columns, each divided by the root of its diagonal. */
    private static double[] scaled(double[] matrix, int p, int[] order, double[] scale) {
        double[] l = new double[row(p)];
        for (int i = 0; i < p; i++) {
            int ri = row(i);
            for (int j = 0; j <= i; j++) {
                int r = Math.max(order[i], order[j]);
                int c = Math.min(order[i], order[j]);
                l[ri + j] = matrix[r * p + c] * scale[r] * scale[c];
            }
        }
        return l;
    }

    /** The part of a column of the factor taken off all that is left, where only so many places of it are filled. */
    private static void takeOff(double[] l, double[] column, int[] filled, int count) {
        for (int a = 0; a < count; a++) {
            int row = row(filled[a]);
            double f = column[filled[a]];
            for (int b = 0; b < a; b++) {
                // A sum that cancels to nothing stays a place of the factor: the inverse is taken along its places.
                double rest = l[row + filled[b]] - f * column[filled[b]];
                l[row + filled[b]] = rest == 0 ? NEXT_TO_NOTHING : rest;
            }
            l[row + filled[a]] -= f * f;
        }
    }

    /** Where row i of a lower triangle begins. */
    private static int row(int i) {
        return i * (i + 1) / 2;
    }

    /** Column k of the factor, and its part taken off all that is left. */
    private static void takeOff(double[] l, int p, int k, double root, double[] column) {
        for (int i = k + 1, at = row(i) + k; i < p; at += ++i) {
            column[i] = l[at] / root;
            l[at] = column[i];
        }
        for (int i = k + 1; i < p; i++) {
            double f = column[i];
            int row = row(i);
            for (int j = k + 1; j <= i; j++) {
                l[row + j] -= f * column[j];
            }
        }
    }

    private static int[] asTheyStand(int p) {
        int[] order = new int[p];
        for (int j = 0; j < p; j++) {
            order[j] = j;
        }
        return order;
    }

    private static int[] fullestLast(double[] matrix, int p) {
        long[] keys = new long[p];
        for (int i = 0; i < p; i++) {
            keys[i] += i;
            for (int j = 0; j < i; j++) {
                if (matrix[i * p + j] != 0) {
                    keys[i] += 1L << 32;
                    keys[j] += 1L << 32;
                }
            }
        }
        Arrays.sort(keys);
        int[] order = new int[p];
        for (int i = 0; i < p; i++) {
            order[i] = (int) keys[i];
        }
        return order;
    }

    /** A factor that was found another way: the upper triangle R of an orthogonal factorisation, R'R being the matrix. */
    static Cholesky ofUpper(double[][] upper) {
        int p = upper.length;
        double[] lower = new double[row(p)];
        double[] scale = new double[p];
        for (int i = 0; i < p; i++) {
            scale[i] = 1;
            for (int j = 0; j <= i; j++) {
                lower[row(i) + j] = upper[j][i];
            }
        }
        return new Cholesky(p, asTheyStand(p), lower, scale, 1, 0);
    }

    /** The factor of the matrix times the square of a number. */
    Cholesky times(double factor) {
        double[] scaled = scale.clone();
        for (int i = 0; i < p; i++) {
            scaled[i] /= factor;
        }
        return new Cholesky(p, order, lower, scaled, smallestPivot, full);
    }

    @Override
    public double smallestPivot() {
        return smallestPivot;
    }

    @Override
    public double[] solve(double[] right) {
        double[] x = new double[p];
        for (int i = 0; i < p; i++) {
            double sum = right[order[i]] * scale[order[i]];
            int ri = row(i);
            for (int k = 0; k < i; k++) {
                sum -= lower[ri + k] * x[k];
            }
            x[i] = sum / lower[ri + i];
        }
        return backSolve(x);
    }

    @Override
    public double[] backSolve(double[] z) {
        double[] x = z.clone();
        double[] solution = new double[p];
        for (int i = p - 1; i >= 0; i--) {
            int ri = row(i);
            x[i] /= lower[ri + i];
            double xi = x[i];
            for (int k = 0; k < i; k++) {
                x[k] -= lower[ri + k] * xi;
            }
            solution[order[i]] = xi * scale[order[i]];
        }
        return solution;
    }

    /** Writes row j of the upper factor, unscaled, into a row of p numbers. */
    void copyUpperRow(int j, double[] row) {
        for (int i = j; i < p; i++) {
            row[order[i]] = lower[row(i) + j] / scale[order[i]];
        }
    }

    /** The column that row j of the upper factor begins with. */
    int column(int j) {
        return order[j];
    }

    @Override
    public double logDeterminant() {
        double sum = 0;
        for (int i = 0; i < p; i++) {
            sum += 2 * (Math.log(Math.abs(lower[row(i) + i])) - Math.log(scale[order[i]]));
        }
        return sum;
    }

    @Override
    public Covariance inverseWhereHeld(Room room) {
        return new Covariance(Border.none(p), inverseAlongFactor(room.size() == (long) p * p ? room : new Room(p * p)), this);
    }

    @Override
    public Covariance inverse() {
        return new Covariance(Border.none(p), fullInverse(), this);
    }

    /**
     * The inverse matrix at those places at which the factor is not zero, which are the places of the matrix and more; zeros elsewhere.
     * From the last column to the first each entry follows from later ones. Source: K. Takahashi, J. Fagan, M. Chin (1973), as given by
     * A. Erisman and W. Tinney, Comm. ACM 18 (1975) 177-179 (from memory).
     *
     * @param room for p x p numbers, some of which hold the inverse
     */
    private double[] inverseAlongFactor(Room room) {
        double[] z = room.lend();
        int[] filled = new int[p];
        double[] ratio = new double[p];
        for (int j = p - 1; j > full; j--) {
            fullColumn(z, j, filled, ratio);
        }
        for (int j = Math.min(full, p - 1); j >= 0; j--) {
            int count = ratios(j, filled, ratio);
            double pivot = lower[row(j) + j];
            double own = 1 / (pivot * pivot);
            for (int a = 0; a < count; a++) {
                double sum = 0;
                int row = filled[a] * p;
                for (int b = 0; b < count; b++) {
                    sum -= ratio[b] * z[row + filled[b]];
                }
                z[row + j] = sum;
                z[j * p + filled[a]] = sum;
                own -= ratio[a] * sum;
            }
            z[j * p + j] = own;
        }
        double[] inverse = inOrder(z, room.lend());
        room.takeBack(z);
        return inverse;
    }

    /**
     * The inverse matrix in full, row after row: of a factor with zeros as {@link #inverseAlongFactor}, of one without by inverting it,
     * which keeps more digits; a large one in several parts at a time, each number summed up in the same order.
     */
    private double[] fullInverse() {
        double[] z = new double[p * p];
        if (full == 0) {
            double[] w = new double[p * p];
            parts((first, end) -> invertFactor(w, first, end));
            parts((first, end) -> squareInverse(w, z, first, end));
            for (int i = 0; i < p; i++) {
                for (int j = 0; j < i; j++) {
                    z[j * p + i] = z[i * p + j];
                }
            }
        } else {
            int[] filled = new int[p];
            double[] ratio = new double[p];
            for (int j = p - 1; j >= 0; j--) {
                fullColumn(z, j, filled, ratio);
            }
        }
        return inOrder(z, new double[p * p]);
    }

    /** Work on columns, or on rows, several parts at a time. */
    private void parts(Ranges.Work work) {
        if (p < SHARED) {
            work.on(0, p);
        } else {
            IntStream.range(0, PARTS).parallel().forEach(part -> work.on(Ranges.first(p, part, PARTS), Ranges.first(p, part + 1, PARTS)));
        }
    }

    /** Some columns of the inverse of the factor. */
    private void invertFactor(double[] w, int first, int end) {
        for (int i = first; i < p; i++) {
            int ri = i * p;
            int li = row(i);
            double d = 1 / lower[li + i];
            for (int k = first; k < i; k++) {
                double f = -lower[li + k] * d;
                int rk = k * p;
                if (f != 0) {
                    int last = Math.min(k, end - 1);
                    for (int j = first; j <= last; j++) {
                        w[ri + j] += f * w[rk + j];
                    }
                }
            }
            if (i < end) {
                w[ri + i] = d;
            }
        }
    }

    /** Some rows of the product of a transposed lower triangle with itself. */
    private void squareInverse(double[] w, double[] product, int first, int end) {
        for (int k = first; k < p; k++) {
            int rk = k * p;
            int last = Math.min(k, end - 1);
            for (int i = first; i <= last; i++) {
                double f = w[rk + i];
                if (f != 0) {
                    int ri = i * p;
                    for (int j = 0; j <= i; j++) {
                        product[ri + j] += f * w[rk + j];
                    }
                }
            }
        }
    }

    /** Writes where column j of the factor is not zero below its pivot, and what is there over the pivot; returns in how many places. */
    private int ratios(int j, int[] filled, double[] ratio) {
        int count = 0;
        double pivot = lower[row(j) + j];
        for (int i = j + 1, at = row(i) + j; i < p; at += ++i) {
            double value = lower[at];
            if (value != 0) {
                ratio[count] = value / pivot;
                filled[count++] = i;
            }
        }
        return count;
    }

    /** Column j of the inverse from later ones in every place; the arrays have room for p numbers. */
    private void fullColumn(double[] z, int j, int[] filled, double[] ratio) {
        int count = ratios(j, filled, ratio);
        int own = j * p;
        int a = 0;
        // Four rows at a time, for each sum is then read and written a quarter as often.
        for (; a + 3 < count; a += 4) {
            double first = ratio[a];
            double second = ratio[a + 1];
            double third = ratio[a + 2];
            double fourth = ratio[a + 3];
            int one = filled[a] * p;
            int two = filled[a + 1] * p;
            int three = filled[a + 2] * p;
            int four = filled[a + 3] * p;
            for (int k = j + 1; k < p; k++) {
                z[own + k] -= first * z[one + k] + second * z[two + k] + third * z[three + k] + fourth * z[four + k];
            }
        }
        for (; a < count; a++) {
            double f = ratio[a];
            int row = filled[a] * p;
            for (int k = j + 1; k < p; k++) {
                z[own + k] -= f * z[row + k];
            }
        }
        double pivot = lower[row(j) + j];
        z[own + j] = 1 / (pivot * pivot);
        for (int b = 0; b < count; b++) {
            z[own + j] -= ratio[b] * z[own + filled[b]];
        }
        for (int k = j + 1; k < p; k++) {
            z[k * p + j] = z[own + k];
        }
    }

    /** A symmetric matrix of the scaled columns in the order of the factor, written as one of the columns as they are. */
    private double[] inOrder(double[] z, double[] ordered) {
        for (int i = 0; i < p; i++) {
            int row = order[i] * p;
            double s = scale[order[i]];
            for (int j = 0; j < p; j++) {
                ordered[row + order[j]] = z[i * p + j] * s * scale[order[j]];
            }
        }
        return ordered;
    }
}
