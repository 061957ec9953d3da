package swapworth.statistics;

import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.function.IntFunction;
import java.util.stream.IntStream;

/**
 * The rows of a regression, n x p, most of whose entries are zero: measured columns have one entry a row, a group of levels one
 * entry at the level of the row, so that indicator columns are never written out.
 *
 * <p>Immutable. Rows are kept one after another in blocks of {@value #ROWS_A_BLOCK}. Of an entry that is 1, as those of levels are, the
 * column alone is kept; the columns of all others are marked, and their numbers stand in the order of the marks. Of columns that are 1
 * together in nearly all of many rows and 0 together in the others, such as facts that the whole collection is silent on, the first alone is
 * kept.
 */
public final class Design {
    /** The mark of a column whose number is kept. */
    private static final int MARK = 0x8000;
    /** More columns than this no fit could hold the cross-products of. */
    private static final int MOST_COLUMNS = MARK - 1;
    private static final int ROWS_A_BLOCK = 4096;
    /** The share of rows that columns must be 1 in to be kept together. */
    private static final double NEARLY_ALL = 0.9;

    private final int columns;
    private final int rows;
    private final Block[] blocks;
    /** Columns that are 1 together, of which the first stands in the blocks for all; empty where there are no two. */
    private final int[] together;

    private Design(int columns, int rows, Block[] blocks, int[] together) {
        this.columns = columns;
        this.rows = rows;
        this.blocks = blocks;
        this.together = together;
    }

    /**
     * The design with these rows.
     *
     * @param columns p, at least 1, at most 32,767
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
     * @param columns p, at least 1, at most 32,767
     * @param rows n, the number of rows
     * @param row makes row i, whose indices lie between 0 and p - 1; asked once for each
     * @return the design, n x p
     * @throws IllegalArgumentException if there are too many columns, an index lies outside or a value is not finite
     */
    public static Design of(int columns, int rows, IntFunction<SparseRow> row) {
        if (columns > MOST_COLUMNS) {
            throw new IllegalArgumentException("a design of " + columns + " columns; at most " + MOST_COLUMNS + " can be fitted");
        }
        Block[] blocks = new Block[(rows + ROWS_A_BLOCK - 1) / ROWS_A_BLOCK];
        IntStream made = IntStream.range(0, blocks.length);
        (blocks.length > 1 ? made.parallel() : made).forEach(b -> {
            int first = b * ROWS_A_BLOCK;
            Entries entries = new Entries(columns, Math.min(ROWS_A_BLOCK, rows - first));
            for (int i = first; i < first + entries.rows(); i++) {
                entries.add(i, row.apply(i));
            }
            blocks[b] = entries.block();
        });
        int[] together = blocks.length < 2 ? new int[0] : together(columns, blocks[0]);
        List<Optional<Block>> shorter = together.length < 2 ? List.of()
                : Arrays.stream(blocks).parallel().map(block -> block.withFirstAloneOf(together, columns)).toList();
        if (shorter.isEmpty() || shorter.stream().anyMatch(Optional::isEmpty)) {
            return new Design(columns, rows, blocks, new int[0]);
        }
        return new Design(columns, rows, shorter.stream().map(Optional::get).toArray(Block[]::new), together);
    }

    /** The columns that are 1 in as many rows of a block as any, and nearly in all of them. */
    private static int[] together(int columns, Block block) {
        int[] ones = new int[columns];
        for (char column : block.index) {
            ones[column & MARK - 1] += column < MARK ? 1 : 0;
        }
        int most = Arrays.stream(ones).max().orElse(0);
        return most < NEARLY_ALL * block.start.length ? new int[0] : IntStream.range(0, columns).filter(j -> ones[j] == most).toArray();
    }

    /** Some neighbouring rows: where the entries and the kept numbers of each begin, marked columns, and the numbers. */
    private record Block(int[] start, int[] measured, char[] index, double[] value) {

        /** The sum of the entries of its k-th row, each times its coefficient. */
        double dot(int k, double[] coefficients, int[] together) {
            int all = together.length == 0 ? MARK : together[0];
            double sum = 0;
            int at = measured[k];
            for (int e = start[k]; e < start[k + 1]; e++) {
                int column = index[e];
                sum += column < MARK ? coefficients[column] : value[at++] * coefficients[column - MARK];
                for (int other = 1; column == all && other < together.length; other++) {
                    sum += coefficients[together[other]];
                }
            }
            return sum;
        }

        void addTo(double[] vector, int k, double factor, int[] together) {
            int all = together.length == 0 ? MARK : together[0];
            int at = measured[k];
            for (int e = start[k]; e < start[k + 1]; e++) {
                int column = index[e];
                if (column < MARK) {
                    vector[column] += factor;
                } else {
                    vector[column - MARK] += factor * value[at++];
                }
                for (int other = 1; column == all && other < together.length; other++) {
                    vector[together[other]] += factor;
                }
            }
        }

        /** Whether the columns that are 1 together are so in a row: the first of them stands there for all. */
        boolean has(int k, int[] together) {
            for (int e = start[k]; together.length > 0 && e < start[k + 1]; e++) {
                if (index[e] == together[0]) {
                    return true;
                }
            }
            return false;
        }

        /** The block with the first alone of some columns; none where these are not 1 together in each of its rows, or all not. */
        Optional<Block> withFirstAloneOf(int[] together, int columns) {
            boolean[] any = new boolean[columns];
            for (int column : together) {
                any[column] = true;
            }
            int[] starts = new int[start.length];
            char[] kept = new char[index.length];
            int size = 0;
            for (int k = 0; k + 1 < start.length; k++) {
                int here = 0;
                for (int e = start[k]; e < start[k + 1]; e++) {
                    int column = index[e];
                    boolean one = column < MARK && any[column];
                    here += one ? 1 : 0;
                    if (!one || column == together[0]) {
                        kept[size++] = index[e];
                    }
                }
                if (here != 0 && here != together.length) {
                    return Optional.empty();
                }
                starts[k + 1] = size;
            }
            return Optional.of(new Block(starts, measured, Arrays.copyOf(kept, size), value));
        }
    }

    /** The entries of the rows of a block, growing. */
    private static final class Entries {
        private final int columns;
        private final int[] start;
        private final int[] measured;
        private char[] index;
        private double[] value;
        private int row;
        private int size;
        private int numbers;

        Entries(int columns, int rows) {
            this.columns = columns;
            this.start = new int[rows + 1];
            this.measured = new int[rows + 1];
            this.index = new char[Math.max(16, rows * 8)];
            this.value = new double[Math.max(16, rows * 4)];
        }

        int rows() {
            return start.length - 1;
        }

        void add(int i, SparseRow added) {
            if (size + added.size() > index.length) {
                index = Arrays.copyOf(index, Math.max(size + added.size(), 2 * index.length));
            }
            if (numbers + added.size() > value.length) {
                value = Arrays.copyOf(value, Math.max(numbers + added.size(), 2 * value.length));
            }
            for (int e = 0; e < added.size(); e++) {
                int column = added.index(e);
                double number = added.value(e);
                if (column < 0 || column >= columns) {
                    throw new IllegalArgumentException("row " + i + " names column " + column + " of " + columns);
                }
                if (!Double.isFinite(number)) {
                    throw new IllegalArgumentException("row " + i + " holds " + number + " in column " + column);
                }
                if (number == 1) {
                    index[size++] = (char) column;
                } else {
                    index[size++] = (char) (column | MARK);
                    value[numbers++] = number;
                }
            }
            row++;
            start[row] = size;
            measured[row] = numbers;
        }

        Block block() {
            return new Block(start, measured, Arrays.copyOf(index, size), Arrays.copyOf(value, numbers));
        }
    }

    private Block block(int i) {
        return blocks[i / ROWS_A_BLOCK];
    }

    /** As many numbers as a block keeps of the longest row. */
    private int longest() {
        int most = 0;
        for (Block block : blocks) {
            for (int k = 0; k + 1 < block.start.length; k++) {
                most = Math.max(most, block.start[k + 1] - block.start[k]);
            }
        }
        return most;
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
        return rows;
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
        int size = sizeOf(i);
        int[] column = new int[size];
        double[] number = new double[size];
        write(i, column, number);
        return new SparseRow(column, number);
    }

    /** The number of entries of row i. */
    int sizeOf(int i) {
        Block block = block(i);
        int k = i % ROWS_A_BLOCK;
        return block.start[k + 1] - block.start[k] + (block.has(k, together) ? together.length - 1 : 0);
    }

    /**
     * Writes the entries of row i, in the order of their columns, into arrays that have room for them.
     *
     * @return their number
     */
    int write(int i, int[] column, double[] number) {
        Block block = block(i);
        int k = i % ROWS_A_BLOCK;
        char[] index = block.index;
        double[] value = block.value;
        // Behind the last of them until the first has been met.
        int other = together.length;
        int measured = block.measured[k];
        int size = 0;
        int end = block.start[k + 1];
        for (int e = block.start[k]; e < end; e++) {
            int own = index[e] & MARK - 1;
            while (other < together.length && together[other] < own) {
                column[size] = together[other++];
                number[size++] = 1;
            }
            column[size] = own;
            number[size++] = index[e] < MARK ? 1 : value[measured++];
            other = together.length > 0 && index[e] == together[0] ? 1 : other;
        }
        while (other < together.length) {
            column[size] = together[other++];
            number[size++] = 1;
        }
        return size;
    }

    /** The length of each column. */
    double[] lengths() {
        double[] squares = new double[columns];
        for (int i = 0; i < rows; i++) {
            SparseRow row = row(i);
            for (int e = 0; e < row.size(); e++) {
                squares[row.index(e)] += row.value(e) * row.value(e);
            }
        }
        for (int j = 0; j < columns; j++) {
            squares[j] = Math.sqrt(squares[j]);
        }
        return squares;
    }

    /** Some columns written out, each divided by its length: one array of n numbers a column. */
    double[][] transposed(int[] chosen, double[] length) {
        int[] place = places(chosen);
        double[][] out = new double[chosen.length][rows];
        for (int i = 0; i < rows; i++) {
            SparseRow row = row(i);
            for (int e = 0; e < row.size(); e++) {
                int column = row.index(e);
                if (place[column] >= 0) {
                    out[place[column]][i] = row.value(e) / length[column];
                }
            }
        }
        return out;
    }

    /** For each column its place among some; -1 for the others. */
    private int[] places(int[] chosen) {
        int[] place = new int[columns];
        Arrays.fill(place, -1);
        for (int c = 0; c < chosen.length; c++) {
            place[chosen[c]] = c;
        }
        return place;
    }

    /** The design of some columns alone, in the order named. */
    Design only(int[] chosen) {
        int[] place = places(chosen);
        return of(chosen.length, rows, i -> {
            SparseRow row = row(i);
            int[] at = new int[row.size()];
            double[] kept = new double[at.length];
            int size = 0;
            for (int e = 0; e < row.size(); e++) {
                if (place[row.index(e)] >= 0) {
                    at[size] = place[row.index(e)];
                    kept[size++] = row.value(e);
                }
            }
            return SparseRow.of(Arrays.copyOf(at, size), Arrays.copyOf(kept, size));
        });
    }

    /** The design with some of the rows, in the order named. */
    Design some(int[] chosen) {
        return of(columns, chosen.length, i -> row(chosen[i]));
    }

    /** The sum of the entries of row i, each times its coefficient. */
    double dot(int i, double[] coefficients) {
        return block(i).dot(i % ROWS_A_BLOCK, coefficients, together);
    }

    /**
     * y less the sum of the entries of row i, each times its coefficient, as if in twice the precision: a second step from there wins
     * back the digits that a first one lost. Source: T. Ogita, S. Rump, S. Oishi, SIAM J. Sci. Comput. 26 (2005) 1955-1988 (from memory).
     */
    double residual(int i, double y, double[] coefficients) {
        double[] parts = residualInParts(row(i), y, coefficients);
        return parts[0] + parts[1];
    }

    /** The residual as a sum of two numbers. */
    private static double[] residualInParts(SparseRow row, double y, double[] coefficients) {
        double sum = y;
        double lost = 0;
        for (int e = 0; e < row.size(); e++) {
            double a = -row.value(e);
            double b = coefficients[row.index(e)];
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
        SparseRow row = row(i);
        double[] parts = residualInParts(row, y, coefficients);
        double pull = weight * parts[0];
        double rest = Math.fma(weight, parts[0], -pull) + weight * parts[1];
        for (int e = 0; e < row.size(); e++) {
            int j = row.index(e);
            double product = row.value(e) * pull;
            double next = sum[j] + product;
            double part = next - sum[j];
            lost[j] += Math.fma(row.value(e), pull, -product) + row.value(e) * rest + (sum[j] - (next - part)) + (product - part);
            sum[j] = next;
        }
    }

    /** Adds row i, times a factor, to a vector of length p. */
    void addTo(double[] vector, int i, double factor) {
        block(i).addTo(vector, i % ROWS_A_BLOCK, factor, together);
    }

    /** Adds all rows, each times its factor, to a vector of length p. */
    void addTo(double[] vector, double[] factor) {
        Ranges.sum(rows, vector, (sums, first, end) -> {
            for (int i = first; i < end; i++) {
                addTo(sums, i, factor[i]);
            }
        });
    }

    /** Adds the weighted cross-products of all rows to the lower triangle of a p x p matrix held row after row. */
    void addCrossProducts(double[] lower, double[] weight) {
        // Each pair of columns is summed up on either side of the diagonal; of columns that are 1 together the first stands for all.
        double[] products = new double[columns * columns];
        int longest = longest();
        Ranges.sum(rows, products, (sums, first, end) -> addCrossProducts(sums, weight, first, end, longest));
        for (int other = 1; other < together.length; other++) {
            int first = together[0];
            int j = together[other];
            for (int k = 0; k < columns; k++) {
                products[j * columns + k] = products[first * columns + k] + (k == first ? 0 : products[k * columns + first]);
            }
        }
        for (int i = 0; i < columns; i++) {
            for (int j = 0; j < i; j++) {
                lower[i * columns + j] += products[i * columns + j] + products[j * columns + i];
            }
            lower[i * columns + i] += products[i * columns + i];
        }
    }

    /**
     * Rows with those of the same first columns, such as those of a line, next to each other: the sums that they add to then lie near, and
     * are not fetched from afar for each row.
     */
    private int[] alike(int first, int end) {
        long[] keys = new long[end - first];
        for (int i = first; i < end; i++) {
            Block block = block(i);
            int k = i % ROWS_A_BLOCK;
            int from = block.start[k];
            int size = block.start[k + 1] - from;
            long columns = size > 1 ? (block.index[from] & MARK - 1L) << 16 | block.index[from + 1] : 0;
            keys[i - first] = (long) (i / ROWS_A_BLOCK) << 44 | columns << 13 | k;
        }
        Arrays.sort(keys);
        int[] rows = new int[keys.length];
        for (int r = 0; r < rows.length; r++) {
            rows[r] = (int) (keys[r] >> 44) * ROWS_A_BLOCK + (int) (keys[r] & ROWS_A_BLOCK - 1);
        }
        return rows;
    }

    private void addCrossProducts(double[] products, double[] weight, int first, int end, int longest) {
        int[] ones = new int[longest];
        int[] measured = new int[longest];
        double[] number = new double[longest];
        for (int i : alike(first, end)) {
            double w = weight[i];
            if (w == 0) {
                continue;
            }
            Block block = block(i);
            int k = i % ROWS_A_BLOCK;
            int one = 0;
            int many = 0;
            for (int e = block.start[k]; e < block.start[k + 1]; e++) {
                int column = block.index[e];
                if (column < MARK) {
                    ones[one++] = column;
                } else {
                    number[many] = block.value[block.measured[k] + many];
                    measured[many++] = column - MARK;
                }
            }
            for (int a = 0; a < one; a++) {
                int row = ones[a] * columns;
                for (int b = 0; b <= a; b++) {
                    products[row + ones[b]] += w;
                }
            }
            for (int a = 0; a < many; a++) {
                double wa = w * number[a];
                int row = measured[a] * columns;
                for (int b = 0; b < one; b++) {
                    products[row + ones[b]] += wa;
                }
                for (int b = 0; b <= a; b++) {
                    products[row + measured[b]] += wa * number[b];
                }
            }
        }
    }
}
