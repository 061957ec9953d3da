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
        Writer row = new Writer(index.length);
        for (int e = 0; e < index.length; e++) {
            row.put(index[e], value[e]);
        }
        return row.row();
    }

    /** Collects the entries of one row. */
    public static final class Writer {
        private static final int USUAL = 40;

        private int[] index;
        private double[] value;
        private int size;

        /** Begins with no entry. */
        public Writer() {
            this(USUAL);
        }

        private Writer(int room) {
            index = new int[room];
            value = new double[room];
        }

        /**
         * Adds an entry; 0 is none. Entries may come in any order, and come quickest in that of their columns.
         *
         * @param column from 0, each once
         * @param number the number
         * @throws IllegalArgumentException if the column has an entry
         */
        public void add(int column, double number) {
            if (number != 0) {
                put(column, number);
            }
        }

        private void put(int column, double number) {
            if (size == index.length) {
                index = Arrays.copyOf(index, 2 * size + 1);
                value = Arrays.copyOf(value, 2 * size + 1);
            }
            int at = size++;
            while (at > 0 && index[at - 1] > column) {
                index[at] = index[at - 1];
                value[at] = value[at - 1];
                at--;
            }
            if (at > 0 && index[at - 1] == column) {
                throw new IllegalArgumentException("column " + column + " stands twice");
            }
            index[at] = column;
            value[at] = number;
        }

        /**
         * The row of the entries so far.
         *
         * @return its entries in the order of their columns
         */
        public SparseRow row() {
            return new SparseRow(Arrays.copyOf(index, size), Arrays.copyOf(value, size));
        }
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
     * @return a new row, in which entries that cancel take no room
     */
    public SparseRow plus(double factor, SparseRow other) {
        int[] joined = new int[index.length + other.index.length];
        double[] mine = new double[joined.length];
        double[] its = new double[joined.length];
        int both = side(other, joined, mine, its);
        int size = 0;
        for (int e = 0; e < both; e++) {
            double sum = mine[e] + factor * its[e];
            if (sum != 0) {
                joined[size] = joined[e];
                mine[size++] = sum;
            }
        }
        return new SparseRow(Arrays.copyOf(joined, size), Arrays.copyOf(mine, size));
    }

    /**
     * This row without the entry of a column.
     *
     * @param column from 0
     * @return the row itself if it has none there
     */
    public SparseRow without(int column) {
        int at = Arrays.binarySearch(index, column);
        if (at < 0) {
            return this;
        }
        int[] columns = new int[index.length - 1];
        double[] values = new double[columns.length];
        System.arraycopy(index, 0, columns, 0, at);
        System.arraycopy(index, at + 1, columns, at, columns.length - at);
        System.arraycopy(value, 0, values, 0, at);
        System.arraycopy(value, at + 1, values, at, columns.length - at);
        return new SparseRow(columns, values);
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

    /** All p numbers, zeros included. */
    double[] writtenOut(int p) {
        double[] full = new double[p];
        for (int e = 0; e < index.length; e++) {
            full[index[e]] = value[e];
        }
        return full;
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
     * and column j at places 2 j and 2 j + 1 of array i.
     */
    void quadratic(double[][] pairs, Shape.Forms forms) {
        quadratic(index, index, value, index.length, pairs, forms);
    }

    /** The same of so many entries that stand in arrays, in the order of their places. */
    static void quadratic(int[] columns, int[] places, double[] values, int size, double[][] pairs, Shape.Forms forms) {
        double sum = 0;
        double otherSum = 0;
        int e = 0;
        if (size % 2 == 1) {
            double[] row = pairs[columns[0]];
            int at = 2 * places[0];
            sum = values[0] * (values[0] * row[at]);
            otherSum = values[0] * (values[0] * row[at + 1]);
            e++;
        }
        // Two rows of the matrices at a time, for each entry is then read half as often; the order of the sums is that of one at a time.
        for (; e < size; e += 2) {
            double[] row = pairs[columns[e]];
            double[] next = pairs[columns[e + 1]];
            double inner = 0;
            double otherInner = 0;
            double nextInner = 0;
            double otherNextInner = 0;
            for (int f = 0; f < e; f++) {
                double v = values[f];
                int at = 2 * places[f];
                inner += v * row[at];
                otherInner += v * row[at + 1];
                nextInner += v * next[at];
                otherNextInner += v * next[at + 1];
            }
            double v = values[e];
            int at = 2 * places[e];
            sum += v * (2 * inner + v * row[at]);
            otherSum += v * (2 * otherInner + v * row[at + 1]);
            nextInner += v * next[at];
            otherNextInner += v * next[at + 1];
            v = values[e + 1];
            at = 2 * places[e + 1];
            sum += v * (2 * nextInner + v * next[at]);
            otherSum += v * (2 * otherNextInner + v * next[at + 1]);
        }
        forms.variance = sum;
        forms.held = otherSum;
    }

    /** This row times two symmetric matrices, held as for {@link #quadratic(double[][], Shape.Forms)}, times another row. */
    void between(double[][] pairs, SparseRow other, Shape.Forms forms) {
        int[] columns = other.index;
        double[] values = other.value;
        double sum = 0;
        double otherSum = 0;
        for (int e = 0; e < index.length; e++) {
            int column = index[e];
            double[] row = pairs[column];
            double inner = 0;
            double otherInner = 0;
            int f = 0;
            for (; f < columns.length && columns[f] <= column; f++) {
                int at = 2 * columns[f];
                inner += values[f] * row[at];
                otherInner += values[f] * row[at + 1];
            }
            for (; f < columns.length; f++) {
                double[] below = pairs[columns[f]];
                inner += values[f] * below[2 * column];
                otherInner += values[f] * below[2 * column + 1];
            }
            sum += value[e] * inner;
            otherSum += value[e] * otherInner;
        }
        forms.variance = sum;
        forms.held = otherSum;
    }

    /** This row times a symmetric matrix that is held with a border, times another row; no two of their entries are of two blocks. */
    double between(double[] matrix, Border border, SparseRow other) {
        double sum = 0;
        for (int e = 0; e < index.length; e++) {
            double inner = 0;
            for (int f = 0; f < other.index.length; f++) {
                inner += other.value[f] * matrix[border.at(index[e], other.index[f])];
            }
            sum += value[e] * inner;
        }
        return sum;
    }

    /** This row times a symmetric matrix that is held with a border, times this row; no two of its entries are of two blocks. */
    double quadratic(double[] matrix, Border border) {
        int[] columns = index;
        double[] values = value;
        int[] base = border.bases();
        int[] place = border.places();
        double sum = 0;
        for (int e = 0; e < columns.length; e++) {
            int own = columns[e];
            int row = base[own];
            int last = place[own];
            double inner = 0;
            for (int f = 0; f < e; f++) {
                int other = columns[f];
                inner += values[f] * matrix[place[other] < last ? row + place[other] : base[other] + last];
            }
            sum += values[e] * (2 * inner + values[e] * matrix[row + last]);
        }
        return sum;
    }

    /**
     * The same with two matrices, held side by side: for each column the entries of both with the columns that {@link Border#slots} places,
     * at twice their places.
     */
    void between(double[][] pairs, Border border, SparseRow other, Shape.Forms forms) {
        int[] columns = other.index;
        double[] values = other.value;
        double sum = 0;
        double otherSum = 0;
        for (int e = 0; e < index.length; e++) {
            double[] row = pairs[index[e]];
            int[] slot = border.slots(index[e]);
            double inner = 0;
            double otherInner = 0;
            for (int f = 0; f < columns.length; f++) {
                double v = values[f];
                int at = 2 * slot[columns[f]];
                inner += v * row[at];
                otherInner += v * row[at + 1];
            }
            sum += value[e] * inner;
            otherSum += value[e] * otherInner;
        }
        forms.variance = sum;
        forms.held = otherSum;
    }

    /** This row times two matrices, held side by side likewise, times this row. */
    void quadratic(double[][] pairs, Border border, Shape.Forms forms) {
        int[] columns = index;
        double[] values = value;
        double sum = 0;
        double otherSum = 0;
        for (int e = 0; e < columns.length; e++) {
            double[] row = pairs[columns[e]];
            int[] slot = border.slots(columns[e]);
            double inner = 0;
            double otherInner = 0;
            for (int f = 0; f < e; f++) {
                double v = values[f];
                int at = 2 * slot[columns[f]];
                inner += v * row[at];
                otherInner += v * row[at + 1];
            }
            double v = values[e];
            int at = 2 * slot[columns[e]];
            sum += v * (2 * inner + v * row[at]);
            otherSum += v * (2 * otherInner + v * row[at + 1]);
        }
        forms.variance = sum;
        forms.held = otherSum;
    }

    /** Writes the columns of two rows in order, and what each has in them; returns how many there are. */
    private int side(SparseRow other, int[] columns, double[] mine, double[] its) {
        int size = 0;
        int at = 0;
        int otherAt = 0;
        while (at < index.length || otherAt < other.index.length) {
            int column = Math.min(at < index.length ? index[at] : Integer.MAX_VALUE,
                    otherAt < other.index.length ? other.index[otherAt] : Integer.MAX_VALUE);
            columns[size] = column;
            if (at < index.length && index[at] == column) {
                mine[size] = value[at++];
            }
            if (otherAt < other.index.length && other.index[otherAt] == column) {
                its[size] = other.value[otherAt++];
            }
            size++;
        }
        return size;
    }
}
