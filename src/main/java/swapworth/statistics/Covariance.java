package swapworth.statistics;

/** The inverse of a precision matrix: held where rows of the design ask for it, and found by its factor where other contrasts do. */
final class Covariance {
    private final Border border;
    private final double[] held;
    private final Factor factor;

    /**
     * @param border where it is held
     * @param held the numbers; of a matrix in full both triangles
     * @param factor the factor of its inverse
     */
    Covariance(Border border, double[] held, Factor factor) {
        this.border = border;
        this.held = held;
        this.factor = factor;
    }

    Border border() {
        return border;
    }

    /** What is held of it, to be given back to the room it was lent from. */
    double[] held() {
        return held;
    }

    /** The entry of two columns that are not of two blocks. */
    double at(int a, int b) {
        return held[border.at(a, b)];
    }

    /** x'V x. */
    double quadratic(SparseRow x) {
        if (factor instanceof BorderedFactor bordered) {
            return border.holds(x, x) ? x.quadratic(held, border) : bordered.between(x, x);
        }
        return x.quadratic(held, border.columns());
    }

    /** x'V y. */
    double between(SparseRow x, SparseRow y) {
        if (factor instanceof BorderedFactor bordered) {
            return border.holds(x, y) ? x.between(held, border, y) : bordered.between(x, y);
        }
        return x.between(held, border.columns(), y);
    }

    /**
     * The variance of the sum of squares of some neighbouring normal coefficients with such means: 4 m'Vm + 2 tr(VV).
     *
     * @param from the first of them
     */
    double varianceOfSquares(int from, double[] mean) {
        if (factor instanceof BorderedFactor bordered) {
            double[] full = new double[border.columns()];
            System.arraycopy(mean, 0, full, from, mean.length);
            double[] times = factor.solve(full);
            double sum = 2 * bordered.sumOfSquares(from, mean.length);
            for (int j = 0; j < mean.length; j++) {
                sum += 4 * mean[j] * times[from + j];
            }
            return sum;
        }
        double sum = 0;
        for (int i = 0; i < mean.length; i++) {
            for (int j = 0; j < mean.length; j++) {
                double v = at(from + i, from + j);
                sum += v * (4 * mean[i] * mean[j] + 2 * v);
            }
        }
        return sum;
    }

    /** V x. */
    double[] times(SparseRow x) {
        if (border.isNone()) {
            return x.times(held, border.columns());
        }
        return factor.solve(x.writtenOut(border.columns()));
    }

    /** V x for a full vector. */
    double[] times(double[] x) {
        if (!border.isNone()) {
            return factor.solve(x);
        }
        double[] product = new double[x.length];
        addTimes(held, x, product);
        return product;
    }

    /** Adds a symmetric matrix, held row after row in full, times a full vector, as far as the sums reach. */
    static void addTimes(double[] symmetric, double[] x, double[] sums) {
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
}
