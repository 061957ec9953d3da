package swapworth.market;

import static java.util.Objects.requireNonNull;

import java.io.IOException;
import java.io.OutputStream;
import java.io.UncheckedIOException;
import java.time.LocalDate;
import java.util.ArrayDeque;
import java.util.Deque;
import java.util.HashMap;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.ForkJoinPool;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.stream.IntStream;
import swapworth.listing.LevelOfTrade;
import swapworth.listing.ListingsRead;
import swapworth.listing.Sighting;
import swapworth.table.CsvRows;

/**
 * The judgements of a collection too large to keep them all: made, written as rows and let go, by all processors and in the order of the
 * files. The rows are those of {@link Judged#table}.
 */
public final class JudgedRows {
    private static final int ROWS_A_RANGE = 2048;
    /** About as many as a row takes. */
    private static final int BYTES_A_ROW = 180;

    private final ListingsRead read;
    private final Judging judging;
    private final Optional<LocalDate> on;
    private final Optional<LevelOfTrade> level;

    /**
     * Names what to judge.
     *
     * @param read what was read
     * @param model the model fitted to its cars
     * @param on values every listing on this day instead of the day on which it was seen
     * @param level values every listing at this level of trade instead of its own
     */
    public JudgedRows(ListingsRead read, PriceModel model, Optional<LocalDate> on, Optional<LevelOfTrade> level) {
        this.read = requireNonNull(read, "read");
        this.judging = requireNonNull(model, "model").judging();
        this.on = requireNonNull(on, "on");
        this.level = requireNonNull(level, "level");
    }

    /**
     * Judges every row, each with its own car left out, and writes them as CSV.
     *
     * @param out where to
     * @return how well the values met the prices; why there is nothing to tell with fewer than ten prices that have a value
     * @throws IOException if the rows cannot be written
     */
    public Answer<FitStudy> write(OutputStream out) throws IOException {
        new CsvRows(0).header(ValueRows.columns(read.baseCurrency().getCurrencyCode())).writeTo(out);
        judging.expectAll();
        int[] carOfEach = judging.carOfEach(read);
        InOrder inOrder = new InOrder(out, read.listings().size());
        try {
            IntStream.rangeClosed(0, ForkJoinPool.getCommonPoolParallelism()).parallel().forEach(hand -> inOrder.judge(carOfEach));
        } catch (UncheckedIOException e) {
            throw e.getCause();
        }
        return inOrder.misses.study();
    }

    /** A range of rows, judged. */
    private record Done(CsvRows text, Misses misses) {
    }

    /**
     * Hands out ranges of rows and writes them in their order, each as soon as those before it are written: whoever has finished the one
     * whose turn it is writes.
     */
    private final class InOrder {
        private final OutputStream out;
        private final int rows;
        private final Misses misses;
        private final AtomicInteger taken = new AtomicInteger();
        private final Map<Integer, Done> waiting = new HashMap<>();
        private final Deque<CsvRows> free = new ArrayDeque<>();
        private int turn;

        InOrder(OutputStream out, int rows) {
            this.out = out;
            this.rows = rows;
            this.misses = new Misses(rows);
        }

        /** Judges range after range until none is left. Once one has failed the others end too, for nothing is written behind it. */
        void judge(int[] carOfEach) {
            try {
                for (int range = next(); range >= 0; range = next()) {
                    CsvRows text = room();
                    int from = range * ROWS_A_RANGE;
                    put(range, new Done(text, write(from, Math.min(rows, from + ROWS_A_RANGE), carOfEach, text)));
                }
            } catch (RuntimeException | Error e) {
                taken.set(rows);
                throw e;
            }
        }

        private int next() {
            int range = taken.getAndIncrement();
            return range < (rows + ROWS_A_RANGE - 1) / ROWS_A_RANGE ? range : -1;
        }

        /** Room for the text of a range: that of one which is written, where there is any. */
        private synchronized CsvRows room() {
            return free.isEmpty() ? new CsvRows(Math.min(ROWS_A_RANGE, rows) * BYTES_A_ROW) : free.pop();
        }

        private synchronized void put(int range, Done judged) {
            waiting.put(range, judged);
            for (Done next = waiting.remove(turn); next != null; next = waiting.remove(++turn)) {
                try {
                    next.text.writeTo(out);
                } catch (IOException e) {
                    throw new UncheckedIOException(e);
                }
                free.push(next.text);
                misses.add(next.misses);
            }
        }
    }

    private Misses write(int from, int to, int[] carOfEach, CsvRows text) {
        ValueRows rows = new ValueRows(new ValueRows.IntoCsv(text));
        Misses misses = new Misses(to - from);
        for (int i = from; i < to; i++) {
            Sighting seen = Sighting.of(read.listings(), i);
            rows.add(seen, judging.standing(seen, carOfEach[i], on, level, misses));
        }
        return misses;
    }
}
