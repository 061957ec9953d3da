package swapworth.statistics;

import java.util.Arrays;

/**
 * A row of p numbers of which only some are not zero; also a contrast, the weights of coefficients in a question such as "this car
 * less that car". Entries stand in the order of their columns, no column twice.
 */
public final class SparseRow {
    private final int[] index;
    private final double[] value;

    SparseRow(int[] index, double[] value) {
        this.index = index;
        this.value = value;
    }

    /**
     * A row from its entries.
     *
     * @param index the columns, from 0, in any order, each once
     * @param value as many numbers
     * @return the row, its entries in the order of their columns
     * @throws IllegalArgumentException if the lengths differ or a column stands twice
     */
    public static SparseRow of(int[] index, double[] value) {
        if (index.length != value.length) {
            throw new IllegalArgumentException(index.length + " columns for " + value.length + " values");
        }
        int[] columns = index.clone();
        double[] values = value.clone();
        // Entries come nearly in order, so that this is one pass as a rule.
        for (int i = 1; i < columns.length; i++) {
            int column = columns[i];
            double number = values[i];
            int at = i;
            while (at > 0 && columns[at - 1] > column) {
                columns[at] = columns[at - 1];
                values[at] = values[at - 1];
                at--;
            }
            columns[at] = column;
            values[at] = number;
            if (at > 0 && columns[at - 1] == column) {
                throw new IllegalArgumentException("column " + column + " stands twice");
            }
        }
        return new SparseRow(columns, values);
    }

    /**
     * A row with every entry written out.
     *
     * @param values p numbers
     * @return the row; zeros take no room
     */
    public static SparseRow dense(double... values) {
        int size = 0;
        for (double v : values) {
            size += v == 0 ? 0 : 1;
        }
        int[] index = new int[size];
        double[] value = new double[size];
        int at = 0;
        for (int j = 0; j < values.length; j++) {
            if (values[j] != 0) {
                index[at] = j;
                value[at++] = values[j];
            }
        }
        return new SparseRow(index, value);
    }

    /**
     * This row plus another one times a factor.
     *
     * @param factor for instance -1 for the difference of two cars
     * @param other the other row
     * @return a new row
     */
    public SparseRow plus(double factor, SparseRow other) {
        int[] joined = new int[index.length + other.index.length];
        double[] sums = new double[joined.length];
        int size = 0;
        int mine = 0;
        int its = 0;
        while (mine < index.length || its < other.index.length) {
            int column = mine == index.length ? other.index[its] : its == other.index.length ? index[mine]
                    : Math.min(index[mine], other.index[its]);
            joined[size] = column;
            if (mine < index.length && index[mine] == column) {
                sums[size] = value[mine++];
            }
            if (its < other.index.length && other.index[its] == column) {
                sums[size] += factor * other.value[its++];
            }
            size++;
        }
        return new SparseRow(Arrays.copyOf(joined, size), Arrays.copyOf(sums, size));
    }

    /**
     * The number of entries kept.
     *
     * @return at least 0
     */
    public int size() {
        return index.length;
    }

    /**
     * The column of an entry.
     *
     * @param entry from 0
     * @return the column, from 0
     */
    public int index(int entry) {
        return index[entry];
    }

    /**
     * The number of an entry.
     *
     * @param entry from 0
     * @return the number
     */
    public double value(int entry) {
        return value[entry];
    }

    /**
     * The sum of the entries, each times its coefficient.
     *
     * @param coefficients p numbers
     * @return the sum
     */
    public double dot(double[] coefficients) {
        double sum = 0;
        for (int e = 0; e < index.length; e++) {
            sum += value[e] * coefficients[index[e]];
        }
        return sum;
    }

    /** Whether another row has the same entries. */
    boolean isSame(SparseRow other) {
        return this == other || Arrays.equals(index, other.index) && Arrays.equals(value, other.value);
    }

    /** A p x p symmetric matrix, held row after row in full, times this row: a vector of length p. */
    double[] times(double[] symmetric, int p) {
        double[] product = new double[p];
        for (int e = 0; e < index.length; e++) {
            double v = value[e];
            int row = index[e] * p;
            for (int j = 0; j < p; j++) {
                product[j] += v * symmetric[row + j];
            }
        }
        return product;
    }

    /** This row times a p x p symmetric matrix, held row after row in full, times this row. */
    double quadratic(double[] symmetric, int p) {
        int[] columns = index;
        double[] values = value;
        double sum = 0;
        for (int e = 0; e < index.length; e++) {
            int row = columns[e] * p;
            double inner = 0;
            for (int f = 0; f < e; f++) {
                inner += values[f] * symmetric[row + columns[f]];
            }
            sum += values[e] * (2 * inner + values[e] * symmetric[row + columns[e]]);
        }
        return sum;
    }

    /** This row times a p x p matrix, held row after row in full, times another row. */
    double between(double[] matrix, int p, SparseRow other) {
        int[] columns = other.index;
        double[] values = other.value;
        double sum = 0;
        for (int e = 0; e < index.length; e++) {
            int row = index[e] * p;
            double inner = 0;
            for (int f = 0; f < columns.length; f++) {
                inner += values[f] * matrix[row + columns[f]];
            }
            sum += value[e] * inner;
        }
        return sum;
    }

    /**
     * This row times two symmetric matrices, times this row. The matrices are held side by side up to the diagonal: the entries of row i
     * and column j at i (i + 1) + 2 j and the place behind it.
     */
    void quadratic(double[] pairs, Shape.Forms forms) {
        int[] columns = index;
        double[] values = value;
        double sum = 0;
        double otherSum = 0;
        int e = 0;
        if (columns.length % 2 == 1) {
            int at = columns[e] * (columns[e] + 1) + 2 * columns[e];
            sum = values[e] * (values[e] * pairs[at]);
            otherSum = values[e] * (values[e] * pairs[at + 1]);
            e++;
        }
        // Two rows of the matrices at a time, for each entry is then read half as often; the order of the sums is that of one at a time.
        for (; e < columns.length; e += 2) {
            int row = columns[e] * (columns[e] + 1);
            int next = columns[e + 1] * (columns[e + 1] + 1);
            double inner = 0;
            double otherInner = 0;
            double nextInner = 0;
            double otherNextInner = 0;
            for (int f = 0; f < e; f++) {
                double v = values[f];
                int place = 2 * columns[f];
                int at = row + place;
                inner += v * pairs[at];
                otherInner += v * pairs[at + 1];
                at = next + place;
                nextInner += v * pairs[at];
                otherNextInner += v * pairs[at + 1];
            }
            double v = values[e];
            int place = 2 * columns[e];
            sum += v * (2 * inner + v * pairs[row + place]);
            otherSum += v * (2 * otherInner + v * pairs[row + place + 1]);
            nextInner += v * pairs[next + place];
            otherNextInner += v * pairs[next + place + 1];
            v = values[e + 1];
            place = 2 * columns[e + 1];
            sum += v * (2 * nextInner + v * pairs[next + place]);
            otherSum += v * (2 * otherNextInner + v * pairs[next + place + 1]);
        }
        forms.variance = sum;
        forms.held = otherSum;
    }

    /** This row times two symmetric matrices, held as for {@link #quadratic(double[], Shape.Forms)}, times another row. */
    void between(double[] pairs, SparseRow other, Shape.Forms forms) {
        int[] columns = other.index;
        double[] values = other.value;
        double sum = 0;
        double otherSum = 0;
        for (int e = 0; e < index.length; e++) {
            int column = index[e];
            int row = column * (column + 1);
            double inner = 0;
            double otherInner = 0;
            int f = 0;
            for (; f < columns.length && columns[f] <= column; f++) {
                int at = row + 2 * columns[f];
                inner += values[f] * pairs[at];
                otherInner += values[f] * pairs[at + 1];
            }
            for (; f < columns.length; f++) {
                int at = columns[f] * (columns[f] + 1) + 2 * column;
                inner += values[f] * pairs[at];
                otherInner += values[f] * pairs[at + 1];
            }
            sum += value[e] * inner;
            otherSum += value[e] * otherInner;
        }
        forms.variance = sum;
        forms.held = otherSum;
    }
}
