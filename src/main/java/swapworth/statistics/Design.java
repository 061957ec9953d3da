package swapworth.statistics;

import java.util.Arrays;
import java.util.List;
import java.util.function.IntFunction;
import java.util.stream.IntStream;

/**
 * The rows of a regression, n x p, most of whose entries are zero: measured columns have one entry a row, a group of levels one
 * entry at the level of the row, so that indicator columns are never written out.
 *
 * <p>Immutable. Rows are kept one after another in blocks of {@value #ROWS_A_BLOCK}. Of an entry that is 1, as those of levels are, the
 * column alone is kept; the columns of all others are marked, and their numbers stand in the order of the marks. Of many rows a column that
 * is in each the sum of others is not kept ({@link Folding}).
 */
public final class Design {
    private static final int ROWS_A_BLOCK = 4096;
    private static final int MOST_RANGES = 64;
    private final int columns;
    private final int rows;
    private final RowBlock[] blocks;
    /** The columns that stand in no block. */
    private final Folding folding;
    /** For each column the numbers of the folded ones that it is part of. */
    private final int[][] partsOf;
    /** How matrices of the columns are held. */
    private final Border border;
    /** Room for such matrices, and for n numbers. */
    private final Room squares;
    private final Room perRow;

    private Design(int columns, int rows, RowBlock[] blocks, Folding folding, Border border) {
        this.columns = columns;
        this.rows = rows;
        this.blocks = blocks;
        this.folding = folding;
        this.partsOf = folding.partsOf(columns);
        this.border = border;
        this.squares = new Room(border.size());
        this.perRow = new Room(rows);
    }

    /**
     * Says that a column is in each row the sum of some neighbouring other ones, as the level of all cars is of the levels of their lines.
     *
     * @param column the column
     * @param from the first of those that it is the sum of
     * @param count their number
     */
    public record Sum(int column, int from, int count) {
    }

    /**
     * The design with these rows.
     *
     * @param columns p, at least 1, at most 8,388,607
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
     * @param columns p, at least 1, at most 8,388,607
     * @param rows n, the number of rows
     * @param row makes row i, whose indices lie between 0 and p - 1; the same each time, as some are asked for again
     * @return the design, n x p
     * @throws IllegalArgumentException if there are too many columns, an index lies outside or a value is not finite
     */
    public static Design of(int columns, int rows, IntFunction<SparseRow> row) {
        return of(columns, rows, row, List.of());
    }

    /**
     * The same with sums that are said to hold, so that many rows take less room and time. Where one does not hold in a row, none is used.
     *
     * @param columns p, at least 1, at most 8,388,607
     * @param rows n, the number of rows
     * @param row makes row i, whose indices lie between 0 and p - 1; the same each time, as some are asked for again
     * @param sums columns that are sums of others, none of which is such a sum itself
     * @return the design, n x p
     * @throws IllegalArgumentException if there are too many columns, an index lies outside or a value is not finite
     */
    public static Design of(int columns, int rows, IntFunction<SparseRow> row, List<Sum> sums) {
        if (columns > RowBlock.MOST_COLUMNS) {
            throw new IllegalArgumentException("a design of " + columns + " columns; at most " + RowBlock.MOST_COLUMNS + " can be fitted");
        }
        Folding folding = Folding.NONE;
        if (rows > ROWS_A_BLOCK) {
            RowBlockMaker first = new RowBlockMaker(columns, folding, ROWS_A_BLOCK);
            first.take(0, ROWS_A_BLOCK, row);
            folding = Folding.of(columns, sums, first.ones(), ROWS_A_BLOCK);
        }
        return made(columns, rows, row, folding);
    }

    private static Design made(int columns, int rows, IntFunction<SparseRow> row, Folding folding) {
        RowBlock[] blocks = new RowBlock[(rows + ROWS_A_BLOCK - 1) / ROWS_A_BLOCK];
        if (make(blocks, columns, rows, row, folding)) {
            return new Design(columns, rows, blocks, folding, Border.none(columns));
        }
        make(blocks, columns, rows, row, Folding.NONE);
        return new Design(columns, rows, blocks, Folding.NONE, Border.none(columns));
    }

    /** Makes the blocks; whether each folded column is in each row the sum that it is to be. */
    private static boolean make(RowBlock[] blocks, int columns, int rows, IntFunction<SparseRow> row, Folding folding) {
        int ranges = Math.min(blocks.length, MOST_RANGES);
        IntStream all = IntStream.range(0, ranges);
        return (ranges > 1 ? all.parallel() : all).allMatch(range -> {
            RowBlockMaker maker = new RowBlockMaker(columns, folding, Math.min(rows, ROWS_A_BLOCK));
            boolean whole = true;
            int end = Ranges.first(blocks.length, range + 1, ranges);
            for (int b = Ranges.first(blocks.length, range, ranges); b < end && whole; b++) {
                whole = maker.take(b * ROWS_A_BLOCK, Math.min(rows, (b + 1) * ROWS_A_BLOCK), row);
                blocks[b] = maker.block();
            }
            return whole;
        });
    }

    private RowBlock block(int i) {
        return blocks[i / ROWS_A_BLOCK];
    }

    /** As many numbers as a block keeps of the longest row. */
    private int longest() {
        int most = 0;
        for (RowBlock block : blocks) {
            most = Math.max(most, block.longest());
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
        RowBlock block = block(i);
        int k = i % ROWS_A_BLOCK;
        double[] folded = folded(block, k);
        int size = block.size(k);
        for (double number : folded) {
            size += number == 0 ? 0 : 1;
        }
        int[] column = new int[size];
        double[] number = new double[size];
        // The kept entries stand first; the folded ones go between them from the end on.
        int e = block.write(k, column, number) - 1;
        int fold = folded.length - 1;
        for (int at = size - 1; at > e; at--) {
            while (folded[fold] == 0) {
                fold--;
            }
            if (e < 0 || folding.column(fold) > column[e]) {
                column[at] = folding.column(fold);
                number[at] = folded[fold--];
            } else {
                column[at] = column[e];
                number[at] = number[e--];
            }
        }
        return new SparseRow(column, number);
    }

    /** What a row has in the folded columns. */
    private double[] folded(RowBlock block, int k) {
        double[] folded = new double[folding.size()];
        if (folded.length > 0) {
            block.addParts(k, partsOf, folded);
        }
        return folded;
    }

    /** Writes the entries that are kept of row i, in the order of their columns, into arrays that have room; returns their number. */
    int writeKept(int i, int[] column, double[] number) {
        return block(i).write(i % ROWS_A_BLOCK, column, number);
    }

    /** The columns that are not kept. */
    Folding folding() {
        return folding;
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
        return made(columns, chosen.length, i -> row(chosen[i]), chosen.length > ROWS_A_BLOCK ? folding : Folding.NONE);
    }

    /** The sum of the entries of row i, each times its coefficient. */
    double dot(int i, double[] coefficients) {
        RowBlock block = block(i);
        int k = i % ROWS_A_BLOCK;
        double sum = block.dot(k, coefficients);
        double[] folded = folded(block, k);
        for (int fold = 0; fold < folded.length; fold++) {
            sum += folded[fold] * coefficients[folding.column(fold)];
        }
        return sum;
    }

    /** Coefficients as the entries that are kept ask for them. */
    double[] forKept(double[] coefficients) {
        return folding.forKept(coefficients);
    }

    /** The sum of the entries of row i, each times its coefficient, from coefficients made {@link #forKept}. */
    double dotKept(int i, double[] forKept) {
        return block(i).dot(i % ROWS_A_BLOCK, forKept);
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
        RowBlock block = block(i);
        int k = i % ROWS_A_BLOCK;
        block.addTo(vector, k, factor);
        double[] folded = folded(block, k);
        for (int fold = 0; fold < folded.length; fold++) {
            vector[folding.column(fold)] += factor * folded[fold];
        }
    }

    /** The entries that are kept of row i, times a factor, added to sums that {@link #sum} was given. */
    void addKept(double[] sums, int i, double factor) {
        block(i).addTo(sums, i % ROWS_A_BLOCK, factor);
    }

    /** Adds to a vector of length p what work on ranges of rows adds up by {@link #addKept}. */
    void sum(double[] vector, Ranges.Adding work) {
        double[] added = new double[columns];
        Ranges.sum(rows, added, work);
        folding.unfold(added);
        for (int j = 0; j < columns; j++) {
            vector[j] += added[j];
        }
    }

    /** Adds all rows, each times its factor, to a vector of length p. */
    void addTo(double[] vector, double[] factor) {
        sum(vector, (sums, first, end) -> {
            for (int i = first; i < end; i++) {
                addKept(sums, i, factor[i]);
            }
        });
    }

    /** The same rows, matrices of whose columns are held with a border. */
    Design with(Border changed) {
        return new Design(columns, rows, blocks, folding, changed);
    }

    /** How matrices of the columns are held. */
    Border border() {
        return border;
    }

    /** Adds the weighted cross-products of all rows to a matrix that is held with the border: where that is none, to its lower triangle. */
    void addCrossProducts(double[] lower, double[] weight) {
        if (folding.size() == 0) {
            addKeptProducts(lower, weight);
            return;
        }
        double[] products = squares.lend();
        addKeptProducts(products, weight);
        folding.unfold(products, border);
        for (int k = 0; k < products.length; k++) {
            lower[k] += products[k];
        }
        squares.takeBack(products);
    }

    private void addKeptProducts(double[] lower, double[] weight) {
        int longest = longest();
        Ranges.sum(rows, lower, squares, (sums, first, end) -> addKeptProducts(sums, weight, first, end, longest));
    }

    /** Room for matrices of the columns, for steps of a fit to share. */
    Room squares() {
        return squares;
    }

    /** Room for a number of each row, for steps of a fit to share. */
    Room perRow() {
        return perRow;
    }

    /** Lets go of the room that steps of a fit have shared. */
    void forgetRoom() {
        squares.clear();
        perRow.clear();
    }

    /**
     * Rows with those of the same first columns, such as those of a line, next to each other: the sums that they add to then lie near, and
     * are not fetched from afar for each row.
     */
    private int[] alike(int first, int end) {
        long[] keys = new long[end - first];
        for (int i = first; i < end; i++) {
            int k = i % ROWS_A_BLOCK;
            keys[i - first] = (long) (i / ROWS_A_BLOCK) << 44 | block(i).beginning(k) << 13 | k;
        }
        Arrays.sort(keys);
        int[] rows = new int[keys.length];
        for (int r = 0; r < rows.length; r++) {
            rows[r] = (int) (keys[r] >> 44) * ROWS_A_BLOCK + (int) (keys[r] & ROWS_A_BLOCK - 1);
        }
        return rows;
    }

    private void addKeptProducts(double[] products, double[] weight, int first, int end, int longest) {
        Border.Entries entries = border.new Entries(longest);
        int[] base = border.bases();
        int[] place = entries.place;
        double[] number = entries.number;
        for (int i : alike(first, end)) {
            double w = weight[i];
            if (w == 0) {
                continue;
            }
            entries.take(this, i);
            for (int a = 0; a < entries.size; a++) {
                double wa = w * number[a];
                int row = base[entries.column[a]];
                for (int b = 0; b <= a; b++) {
                    products[row + place[b]] += wa * number[b];
                }
            }
        }
    }
}
