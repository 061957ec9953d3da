package swapworth.statistics;

import java.util.List;
import java.util.stream.IntStream;

/**
 * Work on many rows in ranges, several at a time. The ranges depend on the number of rows alone, and sums of ranges are added up in
 * their order: the result is the same however many processors there are.
 */
public final class Ranges {
    private static final int ROWS_A_RANGE = 4000;
    private static final int MOST = 16;
    /** Each range has sums of its own: where these are many, few ranges are taken. */
    private static final int MOST_SUMS = 1 << 20;
    private static final int FEW = 4;

    private Ranges() {
    }

    /** Work on a range of rows. */
    public interface Work {
        /**
         * Works on a range.
         *
         * @param first its first row
         * @param end the row behind its last
         */
        void on(int first, int end);
    }

    /** Work on a range of rows that adds to sums. */
    interface Adding {
        void to(double[] sums, int first, int end);
    }

    private static int count(int rows) {
        return Math.max(1, Math.min(MOST, (rows + ROWS_A_RANGE - 1) / ROWS_A_RANGE));
    }

    static int first(int rows, int range, int ranges) {
        return (int) ((long) rows * range / ranges);
    }

    /**
     * Works on each range, several at a time.
     *
     * @param rows the number of rows, at least 0
     * @param work what is written for one row must not depend on another
     */
    public static void each(int rows, Work work) {
        int ranges = count(rows);
        if (ranges == 1) {
            work.on(0, rows);
            return;
        }
        IntStream.range(0, ranges).parallel().forEach(r -> work.on(first(rows, r, ranges), first(rows, r + 1, ranges)));
    }

    /**
     * Makes something of a range of rows.
     *
     * @param <T> what is made
     */
    public interface Making<T> {
        /**
         * What is made of a range.
         *
         * @param first its first row
         * @param end the row behind its last
         * @return what is made of it
         */
        T of(int first, int end);
    }

    /**
     * What is made of each range, several at a time.
     *
     * @param rows the number of rows, at least 0
     * @param work makes something of a range; what it makes must not depend on another range
     * @param <T> what is made
     * @return in the order of the ranges, at least one
     */
    public static <T> List<T> make(int rows, Making<T> work) {
        int ranges = count(rows);
        return IntStream.range(0, ranges).parallel().mapToObj(r -> work.of(first(rows, r, ranges), first(rows, r + 1, ranges))).toList();
    }

    /** Adds what each range adds up to. */
    static void sum(int rows, double[] sums, Adding work) {
        sum(rows, sums, new Room(sums.length), work);
    }

    /** The same with room for the sums of a range. */
    static void sum(int rows, double[] sums, Room room, Adding work) {
        // A power of two, so that two or four processors end at about the same time.
        int ranges = Math.min(count(rows), Math.max(FEW, Integer.highestOneBit(MOST_SUMS / Math.max(1, sums.length))));
        if (ranges == 1) {
            work.to(sums, 0, rows);
            return;
        }
        double[][] parts = new double[ranges][];
        IntStream.range(0, ranges).parallel().forEach(r -> {
            double[] part = room.lend();
            work.to(part, first(rows, r, ranges), first(rows, r + 1, ranges));
            parts[r] = part;
        });
        for (double[] part : parts) {
            for (int k = 0; k < sums.length; k++) {
                sums[k] += part[k];
            }
            room.takeBack(part);
        }
    }
}
