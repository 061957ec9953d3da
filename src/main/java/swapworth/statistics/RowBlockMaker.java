package swapworth.statistics;

import java.util.Arrays;
import java.util.function.IntFunction;

/** The entries of the rows of one block after another. */
final class RowBlockMaker {
    /** As many entries as most rows have at most, of those that are kept; more find room too. */
    private static final int MOST_USUAL = 20;
    private static final byte[] NOTHING = new byte[0];

    private final int columns;
    /** Of each column its number among the folded ones, and those that it is part of. */
    private final int[] folds;
    private final int[][] partsOf;
    /** Of each folded column what a row has in it, and the sum of those that it is the sum of. */
    private final double[] own;
    private final double[] sum;
    private int[] start = new int[0];
    private int[] measured = new int[0];
    private char[] index;
    private byte[] high;
    private double[] value;
    private int size;
    private int numbers;

    /** Room for about so many rows at a time. */
    RowBlockMaker(int columns, Folding folding, int rows) {
        this.columns = columns;
        this.index = new char[MOST_USUAL * rows];
        this.high = columns <= RowBlock.NAMED_SHORTLY ? NOTHING : new byte[index.length];
        this.value = new double[index.length];
        this.folds = folding.folds(columns);
        this.partsOf = folding.partsOf(columns);
        this.own = new double[folding.size()];
        this.sum = new double[own.length];
    }

    /** Takes the rows of a block; whether each folded column is in each of them the sum that it is to be. */
    boolean take(int from, int end, IntFunction<SparseRow> row) {
        start = new int[end - from + 1];
        measured = new int[start.length];
        size = 0;
        numbers = 0;
        boolean whole = true;
        for (int i = from; i < end; i++) {
            whole &= add(i, row.apply(i));
            start[i - from + 1] = size;
            measured[i - from + 1] = numbers;
        }
        return whole;
    }

    /** Adds row i; whether each folded column is in it the sum that it is to be. */
    private boolean add(int i, SparseRow added) {
        makeRoom(added.size());
        for (int e = 0; e < added.size(); e++) {
            int column = added.index(e);
            double number = added.value(e);
            if (column < 0 || column >= columns) {
                throw new IllegalArgumentException("row " + i + " names column " + column + " of " + columns);
            }
            if (!Double.isFinite(number)) {
                throw new IllegalArgumentException("row " + i + " holds " + number + " in column " + column);
            }
            if (folds[column] >= 0) {
                own[folds[column]] = number;
                continue;
            }
            for (int fold : partsOf[column]) {
                sum[fold] += number;
            }
            if (number != 0) {
                if (high.length > 0) {
                    high[size] = (byte) (column >> RowBlock.SHORT_BITS);
                }
                index[size++] = (char) (column & RowBlock.MARK - 1 | (number == 1 ? 0 : RowBlock.MARK));
            }
            if (number != 0 && number != 1) {
                value[numbers++] = number;
            }
        }
        return endsWhole();
    }

    private void makeRoom(int more) {
        if (size + more > index.length) {
            index = Arrays.copyOf(index, size + more + index.length);
            high = high.length == 0 ? high : Arrays.copyOf(high, index.length);
        }
        if (numbers + more > value.length) {
            value = Arrays.copyOf(value, numbers + more + value.length);
        }
    }

    /** Ends a row; whether each folded column was in it the sum that it is to be. */
    private boolean endsWhole() {
        boolean whole = true;
        for (int fold = 0; fold < own.length; fold++) {
            whole &= own[fold] == sum[fold];
            own[fold] = 0;
            sum[fold] = 0;
        }
        return whole;
    }

    /** In how many rows of the block each column is 1. */
    int[] ones() {
        RowBlock block = block();
        int[] ones = new int[columns];
        for (int e = 0; e < size; e++) {
            ones[block.column(e)] += block.isOne(e) ? 1 : 0;
        }
        return ones;
    }

    RowBlock block() {
        return new RowBlock(start, measured, Arrays.copyOf(index, size), high.length == 0 ? high : Arrays.copyOf(high, size),
                Arrays.copyOf(value, numbers));
    }
}
