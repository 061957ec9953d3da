package swapworth.listing;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.stream.IntStream;
import swapworth.money.Money;
import swapworth.reading.RowProblem;
import swapworth.statistics.Ranges;
import swapworth.table.Cell;

/**
 * Flags prices that look mistyped: more than five times above or below the median of the fifteen rows of the same line that are
 * nearest in age (sound cars among sound ones, crashed, branded and dead ones among their like), and more than four robust standard
 * deviations (1.4826 times the median absolute deviation of the line's distances). Of lines with fewer rows those are flagged that lie more
 * than thirty times, and more than four robust standard deviations, above or below the median of all rows. Such rows stay in use: the model
 * is robust against them.
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

    private final ListingColumns columns;
    private final int[] rows;
    /** The places of the rows of each line, sound cars and troubled ones apart, and where each such group begins and the last one ends. */
    private final int[] places;
    private final int[] begin;
    /** The logarithms of the prices of the rows, and their ages in hundredths of a year. */
    private final double[] log;
    private final int[] age;

    private final List<List<Odd>> found;

    /** Looks for them; the rows themselves stay as they are. */
    OddPrices(StoredListings listings) {
        this.columns = listings.columns();
        this.rows = listings.rows();
        int n = rows.length;
        int[] group = new int[n];
        log = new double[n];
        age = new int[n];
        Ranges.each(n, (first, end) -> {
            for (int k = first; k < end; k++) {
                int row = rows[k];
                // Crashed, branded and dead cars are cheap for a reason; they are neighbours of one another.
                group[k] = 2 * columns.vehicle.code(row) + (columns.isTroubled(row) ? 1 : 0);
                log[k] = Math.log(columns.amount(row));
                age[k] = (int) Math.round(100 * columns.age(row, NO_DAY));
            }
        });
        begin = new int[2 * columns.vehicle.count() + 1];
        places = Orders.grouped(group, begin);
        found = new ArrayList<>(IntStream.range(0, begin.length - 1).parallel()
                .filter(line -> begin[line + 1] - begin[line] >= FEWEST)
                .mapToObj(line -> oddOnes(begin[line], begin[line + 1])).toList());
        found.add(oddAmongAll());
    }

    /** Flags the rows in their columns and among the oddities. */
    void flag(List<RowProblem> oddities) {
        for (List<Odd> ofLine : found) {
            for (Odd odd : ofLine) {
                flag(odd, oddities);
            }
        }
    }

    /** Of the rows that have too few like them those that no car of the files costs anything like. */
    private List<Odd> oddAmongAll() {
        int[] rest = new int[0];
        for (int group = 0; group < begin.length - 1; group++) {
            int size = begin[group + 1] - begin[group];
            if (size > 0 && size < FEWEST) {
                rest = Arrays.copyOf(rest, rest.length + size);
                System.arraycopy(places, begin[group], rest, rest.length - size, size);
            }
        }
        if (rest.length == 0 || rows.length < FEWEST_OF_ALL) {
            return List.of();
        }
        double middle = median(log.clone());
        double limit = limit(Arrays.stream(log).map(its -> its - middle).toArray(), FACTOR_OF_ALL);
        List<Odd> odd = new ArrayList<>();
        for (int place : rest) {
            if (Math.abs(log[place] - middle) > limit) {
                odd.add(new Odd(rows[place], message(log[place] - middle, "the middle of all rows of the files")));
            }
        }
        return odd;
    }

    /** How far from its neighbours a price is odd: by a factor, and by more than the spread of all distances explains. */
    private static double limit(double[] distance, double factor) {
        int within = 0;
        for (double its : distance) {
            within += ROBUST * Math.abs(its) <= factor ? 1 : 0;
        }
        if (within > distance.length / 2) {
            return factor;
        }
        double[] size = new double[distance.length];
        Arrays.setAll(size, i -> Math.abs(distance[i]));
        return Math.max(factor, ROBUST * median(size));
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

    /** A price that looks mistyped: its row and why. */
    private record Odd(int row, String message) {
    }

    /** The odd ones among rows of one group, which stand from one of the places to another. */
    private List<Odd> oddOnes(int first, int end) {
        int n = end - first;
        long[] order = new long[n];
        for (int i = 0; i < n; i++) {
            order[i] = (long) age[places[first + i]] << 32 | i;
        }
        Arrays.sort(order);
        int[] line = new int[n];
        double[] log = new double[n];
        for (int i = 0; i < n; i++) {
            line[i] = places[first + (int) order[i]];
            log[i] = this.log[line[i]];
        }
        double[] distance = new double[n];
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
        }
        double limit = limit(distance, FACTOR);
        List<Odd> odd = new ArrayList<>();
        for (int i = 0; i < n; i++) {
            if (Math.abs(distance[i]) > limit) {
                odd.add(new Odd(rows[line[i]], message(distance[i], "the middle of the " + window
                        + " like rows of the line nearest in age")));
            }
        }
        return odd;
    }

    /** How an amount was read; without the zeros at its end, since {@code 8.950} is a thousand times as much to many readers. */
    private static String read(Money typed) {
        return new Money(typed.amount().stripTrailingZeros(), typed.currency()).toString();
    }

    private void flag(Odd odd, List<RowProblem> oddities) {
        Origin origin = columns.origin(odd.row);
        oddities.add(new RowProblem(origin.file(), origin.line(), "price", read(columns.price(odd.row).typed()), RowProblem.Kind.ODD,
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
