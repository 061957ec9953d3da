package swapworth.statistics;

/** Sums over neighbouring numbers, and products of small matrices. */
final class Vectors {
    private Vectors() {
    }

    /** Adds a factor times some neighbouring numbers to others. */
    static void addTimes(double factor, double[] from, int first, double[] to, int begin, int count) {
        if (factor != 0) {
            for (int j = 0; j < count; j++) {
                to[begin + j] += factor * from[first + j];
            }
        }
    }

    /** The sum of products, in four sums at a time: none then waits for the one before. */
    static double dot(double[] a, int first, double[] b, int begin, int count) {
        double one = 0;
        double two = 0;
        double three = 0;
        double four = 0;
        int j = 0;
        for (; j + 3 < count; j += 4) {
            int at = first + j;
            int other = begin + j;
            one += a[at] * b[other];
            two += a[at + 1] * b[other + 1];
            three += a[at + 2] * b[other + 2];
            four += a[at + 3] * b[other + 3];
        }
        for (; j < count; j++) {
            one += a[first + j] * b[begin + j];
        }
        return one + two + (three + four);
    }

    /** Adds a symmetric matrix, held row after row in full, times a full vector, as far as the sums reach. */
    static void addSymmetricTimes(double[] symmetric, double[] x, double[] sums) {
        int p = x.length;
        int k = 0;
        // Four rows of the matrix at a time, for each sum is then read and written a quarter as often.
        for (; k + 3 < p; k += 4) {
            addFour(symmetric, x, k, sums);
        }
        for (; k < p; k++) {
            for (int j = 0; j < sums.length; j++) {
                sums[j] += x[k] * symmetric[k * p + j];
            }
        }
    }

    private static void addFour(double[] symmetric, double[] x, int k, double[] sums) {
        double first = x[k];
        double second = x[k + 1];
        double third = x[k + 2];
        double fourth = x[k + 3];
        if (first == 0 && second == 0 && third == 0 && fourth == 0) {
            return;
        }
        int p = x.length;
        int from = k * p;
        for (int j = 0; j < sums.length; j++) {
            int at = from + j;
            sums[j] = sums[j] + first * symmetric[at] + second * symmetric[at + p] + third * symmetric[at + 2 * p]
                    + fourth * symmetric[at + 3 * p];
        }
    }

    /** A matrix of some rows, many of whose entries may be zero, times one of so many rows of so many columns each, row after row. */
    static double[] times(double[] left, double[] right, int inner, int columns) {
        int rows = inner == 0 ? 0 : left.length / inner;
        double[] product = new double[rows * columns];
        int[] filled = new int[inner];
        for (int i = 0; i < rows; i++) {
            int from = i * inner;
            int to = i * columns;
            int count = 0;
            for (int k = 0; k < inner; k++) {
                if (left[from + k] != 0) {
                    filled[count++] = k;
                }
            }
            int f = 0;
            // Four rows at a time, for each sum is then read and written a quarter as often.
            for (; f + 3 < count; f += 4) {
                double first = left[from + filled[f]];
                double second = left[from + filled[f + 1]];
                double third = left[from + filled[f + 2]];
                double fourth = left[from + filled[f + 3]];
                int one = filled[f] * columns;
                int two = filled[f + 1] * columns;
                int three = filled[f + 2] * columns;
                int four = filled[f + 3] * columns;
                for (int j = 0; j < columns; j++) {
                    product[to + j] += first * right[one + j] + second * right[two + j] + third * right[three + j]
                            + fourth * right[four + j];
                }
            }
            for (; f < count; f++) {
                addTimes(left[from + filled[f]], right, filled[f] * columns, product, to, columns);
            }
        }
        return product;
    }
}
