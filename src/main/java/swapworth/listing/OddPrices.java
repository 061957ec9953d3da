package swapworth.listing;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.BitSet;
import java.util.List;
import swapworth.reading.RowProblem;
import swapworth.table.Cell;

/**
 * Flags prices that look mistyped: more than five times above or below the median of the fifteen rows of the same line that are
 * nearest in age (sound cars among sound ones, crashed, branded and dead ones among their like), and more than four robust standard deviations (1.4826 times the median absolute deviation of the line's
 * distances). Of lines with fewer rows those are flagged that lie more than thirty times, and more than four robust standard deviations,
 * above or below the median of all rows. Such rows stay in use: the model is robust against them.
 */
final class OddPrices {

    private static final int NEIGHBOURS = 15;
    private static final int FEWEST = 6;
    /** A row without a day counts as seen on one and the same day, so that the rows stay in the order of their ages. */
    private static final long NO_DAY = LocalDate.of(2025, 1, 1).toEpochDay();
    private static final double FACTOR = Math.log(5);
    /** Four standard deviations, by the median absolute deviation. */
    private static final double ROBUST = 4 * 1.4826;
    private static final int FEWEST_OF_ALL = 4;
    private static final double FACTOR_OF_ALL = Math.log(30);
    /** From the half on. */
    private static final List<String> PARTS = List.of("half", "a third", "a quarter", "a fifth", "a sixth", "a seventh", "an eighth",
            "a ninth", "a tenth", "an eleventh", "a twelfth");

    private OddPrices() {
    }

    /** Flags the rows in their columns and among the oddities. */
    static void flag(StoredListings listings, List<RowProblem> oddities) {
        ListingColumns columns = listings.columns();
        int[] rows = listings.rows();
        List<int[]> likes = likes(columns, rows);
        List<List<Odd>> found = new ArrayList<>(likes.parallelStream().map(like -> oddOnes(columns, like)).toList());
        found.add(oddAmongAll(columns, rows, likes));
        for (List<Odd> ofLine : found) {
            for (Odd odd : ofLine) {
                flag(columns, odd, oddities);
            }
        }
    }

    /** Of the rows that have too few like them those that no car of the files costs anything like. */
    private static List<Odd> oddAmongAll(ListingColumns columns, int[] rows, List<int[]> likes) {
        BitSet rest = new BitSet();
        for (int row : rows) {
            rest.set(row);
        }
        for (int[] like : likes) {
            for (int row : like) {
                rest.clear(row);
            }
        }
        if (rest.isEmpty() || rows.length < FEWEST_OF_ALL) {
            return List.of();
        }
        double[] log = new double[rows.length];
        Arrays.setAll(log, i -> Math.log(columns.amount(rows[i])));
        double middle = median(log.clone());
        double[] size = new double[log.length];
        Arrays.setAll(size, i -> Math.abs(log[i] - middle));
        double limit = Math.max(FACTOR_OF_ALL, ROBUST * median(size.clone()));
        List<Odd> odd = new ArrayList<>();
        for (int i = 0; i < rows.length; i++) {
            if (size[i] > limit && rest.get(rows[i])) {
                odd.add(new Odd(rows[i], message(log[i] - middle, "the middle of all rows of the files")));
            }
        }
        return odd;
    }

    private static String message(double distance, String ofWhat) {
        double factor = Math.exp(Math.abs(distance));
        return "the price is " + (distance > 0 ? Cell.format(factor, 1) + " times " : "about " + part(Math.round(factor)) + " of ") + ofWhat
                + "; is a digit too many or missing? The row is used";
    }

    /** For instance {@code a twelfth}, or {@code 1/975}. */
    private static String part(long factor) {
        return factor < 2 || factor >= PARTS.size() + 2 ? "1/" + factor : PARTS.get((int) factor - 2);
    }

    /** The rows of each line, sound cars and troubled ones apart, where there are enough. */
    private static List<int[]> likes(ListingColumns columns, int[] rows) {
        int[] sizes = new int[2 * columns.vehicle.count()];
        for (int row : rows) {
            sizes[group(columns, row)]++;
        }
        int[][] places = new int[sizes.length][];
        List<int[]> enough = new ArrayList<>();
        for (int row : rows) {
            int g = group(columns, row);
            if (sizes[g] >= FEWEST) {
                if (places[g] == null) {
                    places[g] = new int[sizes[g]];
                    enough.add(places[g]);
                    sizes[g] = FEWEST;
                }
                places[g][sizes[g]++ - FEWEST] = row;
            }
        }
        return enough;
    }

    /** Crashed, branded and dead cars are cheap for a reason; they are neighbours of one another. */
    private static int group(ListingColumns columns, int row) {
        return 2 * columns.vehicle.code(row) + (columns.isTroubled(row) ? 1 : 0);
    }

    /** A price that looks mistyped: its row and why. */
    private record Odd(int row, String message) {
    }

    private static List<Odd> oddOnes(ListingColumns columns, int[] line) {
        int n = line.length;
        long[] order = new long[n];
        for (int i = 0; i < n; i++) {
            order[i] = Math.round(100 * columns.age(line[i], NO_DAY)) << 32 | i;
        }
        Arrays.sort(order);
        double[] log = new double[n];
        for (int i = 0; i < n; i++) {
            log[i] = Math.log(columns.amount(line[(int) order[i]]));
        }
        double[] distance = new double[n];
        double[] size = new double[n];
        int window = Math.min(NEIGHBOURS, n);
        double[] near = Arrays.copyOf(log, window);
        Arrays.sort(near);
        int last = window - 1;
        for (int i = 0; i < n; i++) {
            int from = Math.max(0, Math.min(n - window, i - window / 2));
            if (from + window - 1 > last) {
                last++;
                replace(near, log[last - window], log[last]);
            }
            distance[i] = log[i] - middle(near);
            size[i] = Math.abs(distance[i]);
        }
        double limit = Math.max(FACTOR, ROBUST * median(size.clone()));
        List<Odd> odd = new ArrayList<>();
        for (int i = 0; i < n; i++) {
            if (size[i] > limit) {
                odd.add(new Odd(line[(int) order[i]], message(distance[i], "the middle of the " + window
                        + " like rows of the line nearest in age")));
            }
        }
        return odd;
    }

    private static void flag(ListingColumns columns, Odd odd, List<RowProblem> oddities) {
        Origin origin = columns.origin(odd.row);
        oddities.add(new RowProblem(origin.file(), origin.line(), "price", columns.price(odd.row).typed().toString(), RowProblem.Kind.ODD,
                odd.message));
        List<String> remarks = new ArrayList<>(columns.remarks(odd.row));
        remarks.add(odd.message);
        columns.setRemarks(odd.row, List.copyOf(remarks));
    }

    /** Puts one number into the place of another and keeps the order: each window differs from the last by one row. */
    private static void replace(double[] sorted, double gone, double come) {
        int at = Arrays.binarySearch(sorted, gone);
        while (at > 0 && sorted[at - 1] > come) {
            sorted[at] = sorted[at - 1];
            at--;
        }
        while (at < sorted.length - 1 && sorted[at + 1] < come) {
            sorted[at] = sorted[at + 1];
            at++;
        }
        sorted[at] = come;
    }

    private static double median(double[] values) {
        Arrays.sort(values);
        return middle(values);
    }

    private static double middle(double[] sorted) {
        int half = sorted.length / 2;
        return sorted.length % 2 == 1 ? sorted[half] : (sorted[half - 1] + sorted[half]) / 2;
    }
}
