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
        Vectors.addSymmetricTimes(held, x, product);
        return product;
    }
}
