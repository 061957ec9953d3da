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

    /** From K'W K to X'W X: fills in what folded columns have in a matrix that is held with a border. */
    void unfold(double[] matrix, Border border) {
        for (int f = 0; f < column.length; f++) {
            int own = column[f];
            for (int k : sumOf[f]) {
                add(matrix, border, k, own, border.shared());
                if (border.blockOf(k) >= 0) {
                    add(matrix, border, k, own, border.block(border.blockOf(k)));
                    continue;
                }
                for (int b = 0; b < border.blocks(); b++) {
                    add(matrix, border, k, own, border.block(b));
                }
            }
            double sum = 0;
            for (int k : sumOf[f]) {
                sum += matrix[border.at(own, k)];
            }
            matrix[border.at(own, own)] = sum;
        }
    }

    /** Adds what one column has in some others to what another one has there. */
    private static void add(double[] matrix, Border border, int from, int to, int[] others) {
        for (int j : others) {
            matrix[border.at(to, j)] += matrix[border.at(from, j)];
        }
    }

    /**
     * T V T': two symmetric matrices, held side by side with a border, as kept entries ask for them.
     *
     * @param pairs for each column the entries of both at twice the places of the border, up to the diagonal and perhaps further
     */
    double[][] forKept(double[][] pairs, Border border) {
        int[][] partsOf = partsOf(pairs.length);
        double[][] kept = new double[pairs.length][];
        IntStream.range(0, pairs.length).parallel().forEach(i -> {
            double[] row = Arrays.copyOf(pairs[i], 2 * (border.place(i) + 1));
            border.row(i).forEach(j -> {
                for (int matrix = 0; matrix < 2; matrix++) {
                    double sum = 0;
                    for (int f : partsOf[i]) {
                        sum += entry(pairs, border, column[f], j, matrix);
                        for (int g : partsOf[j]) {
                            sum += entry(pairs, border, column[f], column[g], matrix);
                        }
                    }
                    for (int g : partsOf[j]) {
                        sum += entry(pairs, border, i, column[g], matrix);
                    }
                    row[2 * border.place(j) + matrix] += sum;
                }
            });
            kept[i] = row;
        });
        return kept;
    }

    private static double entry(double[][] pairs, Border border, int i, int j, int matrix) {
        return border.place(j) <= border.place(i) ? pairs[i][2 * border.place(j) + matrix] : pairs[j][2 * border.place(i) + matrix];
    }
}
