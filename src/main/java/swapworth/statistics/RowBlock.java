package swapworth.statistics;

/**
 * Some neighbouring rows: where the entries and the kept numbers of each begin, the low bits of their columns, marked, the high ones
 * where columns are many, and the numbers.
 */
record RowBlock(int[] start, int[] measured, char[] index, byte[] high, double[] value) {
    /** The mark of a column whose number is kept. */
    static final int MARK = 0x8000;
    /** Of so many columns a number of 15 bits names each; a byte more is kept where there are more. */
    static final int NAMED_SHORTLY = MARK;
    static final int SHORT_BITS = 15;
    static final int MOST_COLUMNS = (1 << SHORT_BITS + Byte.SIZE) - 1;

    /** The column of an entry. */
    int column(int e) {
        int low = index[e] & MARK - 1;
        return high.length == 0 ? low : low | (high[e] & 0xff) << SHORT_BITS;
    }

    /** Whether an entry is 1. */
    boolean isOne(int e) {
        return index[e] < MARK;
    }

    /** The sum of the entries of its k-th row, each times its coefficient. */
    double dot(int k, double[] coefficients) {
        double sum = 0;
        int at = measured[k];
        int end = start[k + 1];
        if (high.length > 0) {
            for (int e = start[k]; e < end; e++) {
                sum += isOne(e) ? coefficients[column(e)] : value[at++] * coefficients[column(e)];
            }
            return sum;
        }
        for (int e = start[k]; e < end; e++) {
            int column = index[e];
            sum += column < MARK ? coefficients[column] : value[at++] * coefficients[column - MARK];
        }
        return sum;
    }

    void addTo(double[] vector, int k, double factor) {
        int at = measured[k];
        int end = start[k + 1];
        if (high.length > 0) {
            for (int e = start[k]; e < end; e++) {
                vector[column(e)] += isOne(e) ? factor : factor * value[at++];
            }
            return;
        }
        for (int e = start[k]; e < end; e++) {
            int column = index[e];
            if (column < MARK) {
                vector[column] += factor;
            } else {
                vector[column - MARK] += factor * value[at++];
            }
        }
    }

    /** Adds each entry of its k-th row to the sums that its column is part of. */
    void addParts(int k, int[][] partsOf, double[] sums) {
        int at = measured[k];
        for (int e = start[k]; e < start[k + 1]; e++) {
            double number = isOne(e) ? 1 : value[at++];
            for (int sum : partsOf[column(e)]) {
                sums[sum] += number;
            }
        }
    }

    /** How many entries its k-th row has. */
    int size(int k) {
        return start[k + 1] - start[k];
    }

    /** A number of 31 bits that rows share whose first two entries stand in the same columns; 0 of shorter ones. */
    long beginning(int k) {
        int from = start[k];
        return size(k) > 1 ? (column(from) & MARK - 1L) << 16 | index[from + 1] : 0;
    }

    /** As many entries as its longest row has. */
    int longest() {
        int most = 0;
        for (int k = 0; k + 1 < start.length; k++) {
            most = Math.max(most, size(k));
        }
        return most;
    }

    /** Writes the entries of its k-th row, in the order of their columns, into arrays that have room; returns their number. */
    int write(int k, int[] column, double[] number) {
        int at = measured[k];
        int begin = start[k];
        int size = size(k);
        for (int e = 0; e < size; e++) {
            int own = index[begin + e];
            column[e] = own & MARK - 1;
            number[e] = own < MARK ? 1 : value[at++];
        }
        for (int e = 0; high.length > 0 && e < size; e++) {
            column[e] = column(begin + e);
        }
        return size;
    }
}
