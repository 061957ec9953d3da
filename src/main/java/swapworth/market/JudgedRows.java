package swapworth.market;

import static java.util.Objects.requireNonNull;

import java.io.IOException;
import java.io.OutputStream;
import java.time.LocalDate;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import swapworth.listing.LevelOfTrade;
import swapworth.listing.Listing;
import swapworth.listing.ListingsRead;
import swapworth.listing.Sighting;
import swapworth.table.CsvRows;

/**
 * The judgements of a collection too large to keep them all: made, written as rows and let go, several ranges of rows at a time and in
 * the order of the files. The rows are those of {@link Judged#table}.
 */
public final class JudgedRows {
    private static final int ROWS_A_RANGE = 2048;
    private static final int RANGES_AT_ONCE = 16;
    /** About as many as a row takes. */
    private static final int BYTES_A_ROW = 240;

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
        Misses misses = new Misses();
        List<Listing> rows = read.listings();
        CsvRows[] texts = new CsvRows[Math.min(RANGES_AT_ONCE, (rows.size() + ROWS_A_RANGE - 1) / ROWS_A_RANGE)];
        Arrays.setAll(texts, r -> new CsvRows(Math.min(ROWS_A_RANGE, rows.size()) * BYTES_A_ROW));
        for (int begin = 0; begin < rows.size(); begin += ROWS_A_RANGE * RANGES_AT_ONCE) {
            int first = begin;
            Misses[] ofRange = new Misses[Math.min(RANGES_AT_ONCE, (rows.size() - begin + ROWS_A_RANGE - 1) / ROWS_A_RANGE)];
            IntStream.range(0, ofRange.length).parallel().forEach(r -> ofRange[r] = write(first + r * ROWS_A_RANGE,
                    Math.min(rows.size(), first + (r + 1) * ROWS_A_RANGE), carOfEach, texts[r]));
            for (int r = 0; r < ofRange.length; r++) {
                texts[r].writeTo(out);
                misses.add(ofRange[r]);
            }
        }
        return misses.study();
    }

    private Misses write(int from, int to, int[] carOfEach, CsvRows text) {
        ValueRows rows = new ValueRows(new ValueRows.IntoCsv(text));
        Misses misses = new Misses();
        for (int i = from; i < to; i++) {
            Sighting seen = Sighting.of(read.listings(), i);
            rows.add(seen, judging.standing(seen, carOfEach[i], on, level, misses));
        }
        return misses;
    }
}
