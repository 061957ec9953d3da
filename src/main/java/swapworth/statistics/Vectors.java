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

    /** A matrix of some rows times one of so many rows of so many columns each, row after row. */
    static double[] times(double[] left, double[] right, int inner, int columns) {
        int rows = inner == 0 ? 0 : left.length / inner;
        double[] product = new double[rows * columns];
        for (int i = 0; i < rows; i++) {
            int to = i * columns;
            int k = 0;
            // Four rows at a time, for each sum is then read and written a quarter as often.
            for (; k + 3 < inner; k += 4) {
                double first = left[i * inner + k];
                double second = left[i * inner + k + 1];
                double third = left[i * inner + k + 2];
                double fourth = left[i * inner + k + 3];
                if (first == 0 && second == 0 && third == 0 && fourth == 0) {
                    continue;
                }
                int one = k * columns;
                int two = one + columns;
                int three = two + columns;
                int four = three + columns;
                for (int j = 0; j < columns; j++) {
                    product[to + j] += first * right[one + j] + second * right[two + j] + third * right[three + j]
                            + fourth * right[four + j];
                }
            }
            for (; k < inner; k++) {
                addTimes(left[i * inner + k], right, k * columns, product, to, columns);
            }
        }
        return product;
    }
}
