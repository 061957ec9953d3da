package swapworth.statistics;

import java.util.Arrays;
import java.util.List;
import java.util.function.IntFunction;

/**
 * The rows of a regression, n x p, most of whose entries are zero: measured columns have one entry a row, a group of levels one
 * entry at the level of the row, so that indicator columns are never written out.
 *
 * <p>Immutable. Rows are kept one after another: the entries of row i stand from {@code start[i]} to {@code start[i + 1]}.
 */
public final class Design {
    /** More columns than this no fit could hold the cross-products of. */
    private static final int MOST_COLUMNS = Character.MAX_VALUE;

    private final int columns;
    private final int[] start;
    private final char[] index;
    private final double[] value;

    private Design(int columns, int[] start, char[] index, double[] value) {
        this.columns = columns;
        this.start = start;
        this.index = index;
        this.value = value;
    }

    /**
     * The design with these rows.
     *
     * @param columns p, at least 1, at most 65,535
     * @param rows n rows whose indices lie between 0 and p - 1
     * @return the design, n x p
     * @throws IllegalArgumentException if there are too many columns, an index lies outside or a value is not finite
     */
    public static Design of(int columns, SparseRow... rows) {
        return of(columns, rows.length, i -> rows[i]);
    }

    /**
     * The design whose rows are made one by one, several ranges of rows at a time, and not kept.
     *
     * @param columns p, at least 1, at most 65,535
     * @param rows n, the number of rows
     * @param row makes row i, whose indices lie between 0 and p - 1; asked once for each
     * @return the design, n x p
     * @throws IllegalArgumentException if there are too many columns, an index lies outside or a value is not finite
     */
    public static Design of(int columns, int rows, IntFunction<SparseRow> row) {
        if (columns > MOST_COLUMNS) {
            throw new IllegalArgumentException("a design of " + columns + " columns; at most " + MOST_COLUMNS + " can be fitted");
        }
        int[] start = new int[rows + 1];
        List<Entries> parts = Ranges.make(rows, (first, end) -> {
            Entries entries = new Entries(columns);
            for (int i = first; i < end; i++) {
                entries.add(i, row.apply(i));
                start[i + 1] = entries.size;
            }
            return entries;
        });
        int size = 0;
        for (int k = 0; k < parts.size(); k++) {
            for (int i = Ranges.first(rows, k, parts.size()); i < Ranges.first(rows, k + 1, parts.size()); i++) {
                start[i + 1] += size;
            }
            size += parts.get(k).size;
        }
        char[] index = new char[size];
        double[] value = new double[size];
        int at = 0;
        for (Entries part : parts) {
            System.arraycopy(part.index, 0, index, at, part.size);
            System.arraycopy(part.value, 0, value, at, part.size);
            at += part.size;
            part.letGo();
        }
        return new Design(columns, start, index, value);
    }

    /** The entries of a range of rows, growing. */
    private static final class Entries {
        private final int columns;
        private char[] index = new char[256];
        private double[] value = new double[256];
        private int size;

        Entries(int columns) {
            this.columns = columns;
        }

        void add(int i, SparseRow row) {
            if (size + row.size() > index.length) {
                int room = Math.max(size + row.size(), index.length + index.length / 2);
                index = Arrays.copyOf(index, room);
                value = Arrays.copyOf(value, room);
            }
            for (int e = 0; e < row.size(); e++) {
                int column = row.index(e);
                if (column < 0 || column >= columns) {
                    throw new IllegalArgumentException("row " + i + " names column " + column + " of " + columns);
                }
                if (!Double.isFinite(row.value(e))) {
                    throw new IllegalArgumentException("row " + i + " holds " + row.value(e) + " in column " + column);
                }
                index[size] = (char) column;
                value[size++] = row.value(e);
            }
        }

        void letGo() {
            index = new char[0];
            value = new double[0];
        }
    }

    /**
     * The design with every entry written out.
     *
     * @param x n rows of p numbers each
     * @return the design, n x p
     */
    public static Design dense(double[][] x) {
        int columns = x.length == 0 ? 0 : x[0].length;
        SparseRow[] rows = new SparseRow[x.length];
        for (int i = 0; i < rows.length; i++) {
            if (x[i].length != columns) {
                throw new IllegalArgumentException("row " + i + " has " + x[i].length + " entries, row 0 has " + columns);
            }
            rows[i] = SparseRow.dense(x[i]);
        }
        return of(columns, rows);
    }

    /**
     * The number of rows, n.
     *
     * @return at least 0
     */
    public int rows() {
        return start.length - 1;
    }

    /**
     * The number of columns, p.
     *
     * @return at least 0
     */
    public int columns() {
        return columns;
    }

    /**
     * One row.
     *
     * @param i from 0
     * @return its entries
     */
    public SparseRow row(int i) {
        return new SparseRow(index, value, start[i], start[i + 1]);
    }

    /** The length of each column. */
    double[] lengths() {
        double[] squares = new double[columns];
        for (int e = 0; e < index.length; e++) {
            squares[index[e]] += value[e] * value[e];
        }
        for (int j = 0; j < columns; j++) {
            squares[j] = Math.sqrt(squares[j]);
        }
        return squares;
    }

    /** Some columns written out, each divided by its length: one array of n numbers a column. */
    double[][] transposed(int[] chosen, double[] length) {
        int[] place = new int[columns];
        Arrays.fill(place, -1);
        for (int c = 0; c < chosen.length; c++) {
            place[chosen[c]] = c;
        }
        double[][] out = new double[chosen.length][rows()];
        for (int i = 0; i < rows(); i++) {
            for (int e = start[i]; e < start[i + 1]; e++) {
                if (place[index[e]] >= 0) {
                    out[place[index[e]]][i] = value[e] / length[index[e]];
                }
            }
        }
        return out;
    }

    /** The design of some columns alone, in the order named. */
    Design only(int[] chosen) {
        int[] place = new int[columns];
        Arrays.fill(place, -1);
        for (int c = 0; c < chosen.length; c++) {
            place[chosen[c]] = c;
        }
        SparseRow[] rows = new SparseRow[rows()];
        for (int i = 0; i < rows.length; i++) {
            int[] at = new int[start[i + 1] - start[i]];
            double[] kept = new double[at.length];
            int size = 0;
            for (int e = start[i]; e < start[i + 1]; e++) {
                if (place[index[e]] >= 0) {
                    at[size] = place[index[e]];
                    kept[size++] = value[e];
                }
            }
            rows[i] = SparseRow.of(Arrays.copyOf(at, size), Arrays.copyOf(kept, size));
        }
        return of(chosen.length, rows);
    }

    /** The sum of the entries of row i, each times its coefficient. */
    double dot(int i, double[] coefficients) {
        double sum = 0;
        for (int e = start[i]; e < start[i + 1]; e++) {
            sum += value[e] * coefficients[index[e]];
        }
        return sum;
    }

    /**
     * y less the sum of the entries of row i, each times its coefficient, as if in twice the precision: a second step from there wins
     * back the digits that a first one lost. Source: T. Ogita, S. Rump, S. Oishi, SIAM J. Sci. Comput. 26 (2005) 1955-1988 (from memory).
     */
    double residual(int i, double y, double[] coefficients) {
        double[] parts = residualInParts(i, y, coefficients);
        return parts[0] + parts[1];
    }

    /** The residual as a sum of two numbers. */
    private double[] residualInParts(int i, double y, double[] coefficients) {
        double sum = y;
        double lost = 0;
        for (int e = start[i]; e < start[i + 1]; e++) {
            double a = -value[e];
            double b = coefficients[index[e]];
            double product = a * b;
            double next = sum + product;
            double part = next - sum;
            lost += Math.fma(a, b, -product) + (sum - (next - part)) + (product - part);
            sum = next;
        }
        return new double[] {sum, lost};
    }

    /**
     * Adds row i, times a weight and its residual, to a vector of length p, whose rounding errors are gathered in another.
     *
     * @param sum the vector
     * @param lost what must be added to it in the end
     */
    void addResidual(double[] sum, double[] lost, int i, double y, double weight, double[] coefficients) {
        double[] parts = residualInParts(i, y, coefficients);
        double pull = weight * parts[0];
        double rest = Math.fma(weight, parts[0], -pull) + weight * parts[1];
        for (int e = start[i]; e < start[i + 1]; e++) {
            int j = index[e];
            double product = value[e] * pull;
            double next = sum[j] + product;
            double part = next - sum[j];
            lost[j] += Math.fma(value[e], pull, -product) + value[e] * rest + (sum[j] - (next - part)) + (product - part);
            sum[j] = next;
        }
    }

    /** Adds row i, times a factor, to a vector of length p. */
    void addTo(double[] vector, int i, double factor) {
        for (int e = start[i]; e < start[i + 1]; e++) {
            vector[index[e]] += factor * value[e];
        }
    }

    /** Adds the weighted cross-products of all rows to the lower triangle of a p x p matrix held row after row. */
    void addCrossProducts(double[] lower, double[] weight) {
        Ranges.sum(rows(), lower, (sums, first, end) -> addCrossProducts(sums, weight, first, end));
    }

    /** Adds all rows, each times its factor, to a vector of length p. */
    void addTo(double[] vector, double[] factor) {
        Ranges.sum(rows(), vector, (sums, first, end) -> {
            for (int i = first; i < end; i++) {
                addTo(sums, i, factor[i]);
            }
        });
    }

    /** The design with some of the rows, in the order named. */
    Design some(int[] rows) {
        int[] starts = new int[rows.length + 1];
        for (int i = 0; i < rows.length; i++) {
            starts[i + 1] = starts[i] + start[rows[i] + 1] - start[rows[i]];
        }
        char[] someIndex = new char[starts[rows.length]];
        double[] someValue = new double[someIndex.length];
        for (int i = 0; i < rows.length; i++) {
            System.arraycopy(index, start[rows[i]], someIndex, starts[i], starts[i + 1] - starts[i]);
            System.arraycopy(value, start[rows[i]], someValue, starts[i], starts[i + 1] - starts[i]);
        }
        return new Design(columns, starts, someIndex, someValue);
    }

    private void addCrossProducts(double[] lower, double[] weight, int first, int end) {
        for (int i = first; i < end; i++) {
            double w = weight[i];
            if (w == 0) {
                continue;
            }
            int from = start[i];
            int to = start[i + 1];
            for (int e = from; e < to; e++) {
                double we = w * value[e];
                int row = index[e] * columns;
                // The entries of a row stand in the order of their columns, so that all of this is below the diagonal.
                for (int f = from; f <= e; f++) {
                    lower[row + index[f]] += we * value[f];
                }
            }
        }
    }
}
