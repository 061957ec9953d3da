package swapworth.statistics;

import java.util.Arrays;
import java.util.List;
import java.util.stream.IntStream;

/**
 * Columns of a design that are in each row the sum of other ones and need not be kept: the level of all rows is the sum of the levels of
 * their groups, a common slope the sum of the slopes of groups, and a fact that nearly all rows are silent on is the level once more.
 *
 * <p>With K the kept columns, n x p with zeros elsewhere, the design is X = K T, where T adds to each folded column those it is the sum of.
 * So X b = K (T b), X'r = T'(K'r), X'W X = T'(K'W K) T, and x'V x = k'(T V T') k for a row x and its kept entries k.
 */
final class Folding {
    /** The share of rows that columns must be 1 in to be taken for the same. */
    private static final double NEARLY_ALL = 0.9;
    private static final int[] NOWHERE = new int[0];
    static final Folding NONE = new Folding(NOWHERE, new int[0][]);

    /** The folded columns, in order, and those that each is the sum of, none of which is folded. */
    private final int[] column;
    private final int[][] sumOf;

    private Folding(int[] column, int[][] sumOf) {
        this.column = column;
        this.sumOf = sumOf;
    }

    /**
     * What some rows allow: the stated sums, and columns that are 1 together in nearly all of them.
     *
     * @param columns p
     * @param stated sums that are said to hold in each row
     * @param ones in how many of the rows each column is 1
     * @param rows their number
     */
    static Folding of(int columns, List<Design.Sum> stated, int[] ones, int rows) {
        int[][] sumOf = new int[columns][];
        boolean[] part = new boolean[columns];
        for (Design.Sum sum : stated) {
            sumOf[sum.column()] = IntStream.range(sum.from(), sum.from() + sum.count()).toArray();
            Arrays.fill(part, sum.from(), sum.from() + sum.count(), true);
        }
        for (Design.Sum sum : stated) {
            if (part[sum.column()]) {
                throw new IllegalArgumentException("column " + sum.column() + " is said to be a sum, and part of one");
            }
        }
        int most = Arrays.stream(ones).max().orElse(0);
        if (most >= NEARLY_ALL * rows) {
            int[] alike = IntStream.range(0, columns).filter(j -> ones[j] == most).toArray();
            int[] known = Arrays.stream(alike).filter(j -> sumOf[j] != null).limit(1).toArray();
            int[] same = known.length == 1 ? sumOf[known[0]] : new int[] {alike[0]};
            for (int j : alike) {
                if (sumOf[j] == null && !part[j] && j != same[0]) {
                    sumOf[j] = same;
                }
            }
        }
        int[] column = IntStream.range(0, columns).filter(j -> sumOf[j] != null).toArray();
        return new Folding(column, Arrays.stream(column).mapToObj(j -> sumOf[j]).toArray(int[][]::new));
    }

    /** How many columns are folded. */
    int size() {
        return column.length;
    }

    /** A folded column, by its number among them. */
    int column(int fold) {
        return column[fold];
    }

    /** For each of p columns its number among the folded ones; -1 for one that is kept. */
    int[] folds(int columns) {
        int[] folds = new int[columns];
        Arrays.fill(folds, -1);
        for (int f = 0; f < column.length; f++) {
            folds[column[f]] = f;
        }
        return folds;
    }

    /** For each of p columns the numbers of the folded ones that it is part of. */
    int[][] partsOf(int columns) {
        int[][] parts = new int[columns][];
        Arrays.fill(parts, NOWHERE);
        for (int f = 0; f < column.length; f++) {
            for (int kept : sumOf[f]) {
                parts[kept] = Arrays.copyOf(parts[kept], parts[kept].length + 1);
                parts[kept][parts[kept].length - 1] = f;
            }
        }
        return parts;
    }

    /** T b: coefficients as kept entries ask for them. */
    double[] forKept(double[] coefficients) {
        double[] kept = coefficients.clone();
        for (int f = 0; f < column.length; f++) {
            for (int k : sumOf[f]) {
                kept[k] += coefficients[column[f]];
            }
        }
        return kept;
    }

    /** From K'r to X'r: fills in the folded entries of a vector of length p. */
    void unfold(double[] vector) {
        for (int f = 0; f < column.length; f++) {
            double sum = 0;
            for (int k : sumOf[f]) {
                sum += vector[k];
            }
            vector[column[f]] = sum;
        }
    }

    /** From K'W K to X'W X: fills in the folded rows and columns of a symmetric p x p matrix, held row after row in full. */
    void unfold(double[] matrix, int p) {
        for (int f = 0; f < column.length; f++) {
            int row = column[f] * p;
            for (int k : sumOf[f]) {
                for (int j = 0; j < p; j++) {
                    matrix[row + j] += matrix[k * p + j];
                }
            }
            for (int j = 0; j < p; j++) {
                matrix[j * p + column[f]] = matrix[row + j];
            }
            double own = 0;
            for (int k : sumOf[f]) {
                own += matrix[row + k];
            }
            matrix[row + column[f]] = own;
        }
    }

    /** T V T': a symmetric p x p matrix, held row after row in full, as kept entries ask for it. */
    double[] forKept(double[] matrix, int p) {
        double[] kept = matrix.clone();
        for (int f = 0; f < column.length; f++) {
            int row = column[f] * p;
            for (int k : sumOf[f]) {
                for (int j = 0; j < p; j++) {
                    kept[k * p + j] += kept[row + j];
                }
            }
            for (int j = 0; j < p; j++) {
                for (int k : sumOf[f]) {
                    kept[j * p + k] += kept[j * p + column[f]];
                }
            }
        }
        return kept;
    }
}
