package swapworth.project;

import static java.util.Objects.requireNonNull;

import java.math.BigDecimal;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;
import swapworth.market.Range;
import swapworth.project.Entry.Status;
import swapworth.reading.Spelling;
import swapworth.statistics.Quantiles;
import swapworth.table.Cell;
import swapworth.table.Column;
import swapworth.table.Table;

/**
 * Whether each extra of a build, wanted and not needed to finish it (rows with {@code needed} no), pays: what it still costs against what
 * it adds to the price of the finished car. What is paid or agreed is gone either way and counts on neither side. What it adds is the
 * guess of its rows ({@code adds}), else a share of all that it costs (assumption {@code extra_adds}). An extra whose rows are all done
 * can no longer be left out and is not among them.
 *
 * @param currency the base currency
 * @param on the day of the ledger
 * @param rate the stated rate of an own hour
 * @param all the extras, in the order of the file
 */
public record Extras(String currency, LocalDate on, double rate, List<One> all) {

    /** Copies the list in. */
    public Extras {
        requireNonNull(currency, "currency");
        requireNonNull(on, "on");
        all = List.copyOf(all);
    }

    /**
     * One extra: the rows of one item; amounts are in the base currency.
     *
     * @param name the item, else the note, else the line in words
     * @param rows how many rows of the ledger
     * @param owed what is paid or agreed, less what came back
     * @param toCome m draws of what is still to be paid and not agreed, less what is still to come back
     * @param hours own hours to come, by the likely figures
     * @param adds m draws of what it adds to the price of the finished car; below 0 where it takes from it
     */
    public record One(String name, int rows, BigDecimal owed, double[] toCome, double hours, double[] adds) {

        /**
         * Copies the draws in.
         *
         * @throws IllegalArgumentException if there are more of the one than of the other, or one is no finite number
         */
        public One {
            requireNonNull(name, "name");
            requireNonNull(owed, "owed");
            toCome = toCome.clone();
            adds = adds.clone();
            DrawFigures.asMany(toCome.length, "what '" + name + "' still costs", toCome);
            DrawFigures.asMany(toCome.length, "what '" + name + "' adds", adds);
        }

        @Override
        public double[] toCome() {
            return toCome.clone();
        }

        @Override
        public double[] adds() {
            return adds.clone();
        }

        /**
         * What leaving it out brings in cash: what it still costs less what it adds.
         *
         * @return m draws in the base currency; below 0 where it pays to do it
         */
        public double[] leavingOut() {
            return DrawFigures.minus(toCome, adds);
        }

        @Override
        public boolean equals(Object other) {
            return other instanceof One one && name.equals(one.name) && rows == one.rows && owed.compareTo(one.owed) == 0
                    && Arrays.equals(toCome, one.toCome) && Double.compare(hours, one.hours) == 0 && Arrays.equals(adds, one.adds);
        }

        @Override
        public int hashCode() {
            return name.hashCode() * 31 + Arrays.hashCode(toCome);
        }

        /** What leaving it out brings, in cash. */
        @Override
        public String toString() {
            return name + ": leaving it out brings " + DrawFigures.withRange(leavingOut());
        }
    }

    /** The extras of a ledger that are not done yet; empty where it has none. */
    static Optional<Extras> of(Forecast forecast) {
        Map<String, List<Entry>> byName = new LinkedHashMap<>();
        for (Entry entry : forecast.ledger().entries()) {
            if (entry.extra().isPresent()) {
                byName.computeIfAbsent(Spelling.name(nameOf(entry)), name -> new ArrayList<>()).add(entry);
            }
        }
        // What is done can no longer be left out.
        byName.values().removeIf(rows -> rows.stream().allMatch(entry -> entry.status() == Status.ACTUAL));
        List<One> all = byName.values().stream().map(rows -> one(rows, forecast)).toList();
        return all.isEmpty() ? Optional.empty() : Optional.of(new Extras(forecast.ledger().currency().getCurrencyCode(),
                forecast.ledger().on(), forecast.options().assumptions().get("own_hour_rate").middle(), all));
    }

    private static String nameOf(Entry entry) {
        return Stream.of(entry.item(), entry.note()).filter(words -> !words.isEmpty()).findFirst().orElse("line " + entry.line());
    }

    private static One one(List<Entry> rows, Forecast forecast) {
        BigDecimal owed = forecast.ledger().nothing();
        double hours = 0;
        List<Entry> guessed = new ArrayList<>();
        for (Entry entry : rows) {
            if (entry.status() == Status.ESTIMATE) {
                guessed.add(entry);
            } else {
                owed = owed.add(entry.cash());
            }
            hours += entry.status() == Status.ACTUAL ? 0 : entry.hours();
        }
        double[] toCome = RowsToCome.sum(guessed, forecast.options());
        return new One(nameOf(rows.get(0)), rows.size(), owed, toCome, hours, adds(rows, owed, toCome, forecast));
    }

    private static double[] adds(List<Entry> rows, BigDecimal owed, double[] toCome, Forecast forecast) {
        List<BigDecimal> stated = rows.stream().flatMap(entry -> entry.extra().orElseThrow().adds().stream()).toList();
        double[] adds = new double[toCome.length];
        if (!stated.isEmpty()) {
            Arrays.fill(adds, stated.stream().reduce(BigDecimal.ZERO, BigDecimal::add).doubleValue());
            return adds;
        }
        double[] shares = DrawFigures.shares(forecast.options().assumptions().get("extra_adds"), Double.MAX_VALUE, adds.length,
                forecast.options().seed() ^ 0x7d0L);
        for (int i = 0; i < adds.length; i++) {
            adds[i] = shares[i] * Math.max(0, owed.doubleValue() + toCome[i]);
        }
        return adds;
    }

    /**
     * The extras in figures.
     *
     * @return one row an extra, and all together where there are several
     */
    public Table table() {
        Table.Builder table = Table.titled("Extras: what is wanted and not needed to finish, " + currency + ", as of " + on).columns(
                Column.words("extra"), Column.number("rows", ""), Column.number("paid or agreed", currency),
                Column.number("still to pay, median", currency).key("to_come"), Column.number("own hours to come", "h"),
                Column.number("adds to the price, median", currency).key("adds"),
                Column.number("leaving it out brings, median", currency).key("leaving_out"), Column.number("80 % from", currency),
                Column.number("80 % to", currency), Column.number("chance that leaving it out pays", "%"));
        table.note("Rows of which needed says no, or that say what they add. What is paid or agreed is gone either way. What an extra adds"
                + " is the guess of its rows (adds), else a share of all that it costs (extra_adds, an assumption: most of what is spent"
                + " beyond need does not come back). It is in no value of the finished car here; what it still costs is in the forecast,"
                + " in what is left and in finish or stop. Below 0: doing it brings more. Own hours are in no amount: at "
                + Cell.format(rate, 2) + " each they speak for leaving it out. An extra whose rows are all done is left off.");
        all.forEach(one -> table.row(row(one)));
        if (all.size() > 1) {
            table.row(row(together()));
        }
        return table.build();
    }

    private One together() {
        double[] toCome = all.get(0).toCome;
        double[] adds = all.get(0).adds;
        for (One one : all.subList(1, all.size())) {
            toCome = DrawFigures.plus(toCome, one.toCome);
            adds = DrawFigures.plus(adds, one.adds);
        }
        return new One("all", all.stream().mapToInt(One::rows).sum(), all.stream().map(One::owed).reduce(BigDecimal.ZERO, BigDecimal::add),
                toCome, all.stream().mapToDouble(One::hours).sum(), adds);
    }

    private static Cell[] row(One one) {
        double[] brings = one.leavingOut();
        Range near = Forecast.range(brings, 0.80);
        // Of what takes hours alone no chance in cash can be told.
        boolean movesMoney = Arrays.stream(brings).anyMatch(amount -> amount != 0);
        return new Cell[] {Cell.words(one.name), Cell.whole(one.rows), Cell.amount(one.owed),
                Cell.number(Quantiles.median(one.toCome), 0), one.hours > 0 ? Cell.number(one.hours, 1) : Cell.BLANK,
                Cell.number(Quantiles.median(one.adds), 0), Cell.number(Quantiles.median(brings), 0), Cell.number(near.low(), 0),
                Cell.number(near.high(), 0), movesMoney ? Cell.chance(DrawFigures.chance(brings)) : Cell.BLANK};
    }
}
