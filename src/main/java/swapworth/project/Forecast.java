package swapworth.project;

import static java.util.Objects.requireNonNull;

import java.math.BigDecimal;
import java.time.YearMonth;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.EnumMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Predicate;
import swapworth.assumptions.Assumption;
import swapworth.assumptions.Assumptions;
import swapworth.market.Range;
import swapworth.project.Entry.Direction;
import swapworth.project.Entry.Status;
import swapworth.statistics.AmountLaw;
import swapworth.statistics.Quantiles;
import swapworth.statistics.UncertainSum;
import swapworth.table.Cell;
import swapworth.table.Column;
import swapworth.table.Table;

/**
 * What the undertaking will have cost when it is done: what is paid and agreed stands as it is, estimates are drawn. An estimate with low
 * and high is a beta law between these ends that leans to the likely amount; one with the likely amount alone is ln-normal around it with
 * the spread of its category (assumption {@code estimate_...}). Estimates of one category go together ({@code estimate_correlation}). A
 * reserve for what nobody thought of ({@code contingency}) is a share of the estimates still to be paid, unless the ledger has rows of
 * the category contingency. The same ledger and seed give the same figures on every machine and in whatever order the rows stand.
 */
public final class Forecast {
    /** Draws unless stated. */
    private static final int COUNT = 10_000;
    private static final double LOW = 0.10;
    private static final double HIGH = 0.90;

    private final Ledger ledger;
    private final Options options;
    private final int count;
    private final double soFar;
    private final double keptSoFar;
    private final double[] total;
    private final double[] toPay;
    private final double[] toReceive;
    /** The same by the cars that rows fall on. */
    private final Map<List<String>, double[]> toReceiveOf = new LinkedHashMap<>();
    private final double[] toKeep;
    private final List<MonthOfCash> months;
    private final Peak peak;
    private final List<Driver> drivers;
    private final double[] hours;
    private final double[] moneyMonths;

    /**
     * How much is in the undertaking at the end of a month: paid less received since its beginning.
     *
     * @param month the month
     * @param low the amount below which one outcome in ten lies
     * @param middle the median
     * @param high the amount above which one in ten lies
     * @param wide the 95 % range
     */
    public record MonthOfCash(YearMonth month, double low, double middle, double high, Range wide) {
    }

    /**
     * The most that is in the undertaking at the end of any month.
     *
     * @param amounts the amount, draw by draw
     * @param month the month in which it is highest most often
     * @param chance how often it is that month
     */
    public record Peak(double[] amounts, YearMonth month, double chance) {

        /** Copies the amounts in. */
        public Peak {
            requireNonNull(month, "month");
            amounts = amounts.clone();
        }

        @Override
        public double[] amounts() {
            return amounts.clone();
        }
    }

    /**
     * What an estimate adds to the spread.
     *
     * @param name its note or item
     * @param line its line in the ledger; 0 for the reserve
     * @param low what it may come to, one in ten below; money in is below 0
     * @param middle its median
     * @param high one in ten above
     * @param share its part of the variance of the total at a market that stands still; all parts add up to 1
     */
    public record Driver(String name, int line, double low, double middle, double high, double share) {
    }

    private Forecast(Ledger ledger, Options options) {
        this.ledger = ledger;
        this.options = options;
        count = options.count;
        LedgerSums sums = ledger.sums();
        soFar = sums.total().net().doubleValue();
        keptSoFar = sums.keptSoFar().doubleValue();
        Lines lines = new Lines(ledger, options);
        UncertainSum.Drawn drawn = UncertainSum.of(lines.lines).drawn(count, options.seed);
        double[][] net = new double[lines.months][count];
        toPay = new double[count];
        toReceive = new double[count];
        toKeep = new double[count];
        total = new double[count];
        for (int b = 0; b < lines.bins.size(); b++) {
            Bin bin = lines.bins.get(b);
            double[] amounts = drawn.bins()[b];
            double[] factors = bin.moving.map(options.moved::get).orElse(new double[0]);
            boolean out = bin.direction == Direction.OUT;
            double[] comesIn = out ? new double[0] : toReceiveOf.computeIfAbsent(bin.cars, cars -> new double[count]);
            for (int i = 0; i < count; i++) {
                double amount = factors.length == 0 ? amounts[i] : amounts[i] * factors[i];
                net[bin.month][i] += amount;
                toKeep[i] += bin.kept * amount;
                if (out) {
                    toPay[i] += amount;
                } else {
                    toReceive[i] -= amount;
                    comesIn[i] -= amount;
                }
            }
        }
        for (int i = 0; i < count; i++) {
            total[i] = soFar + toPay[i] - toReceive[i];
        }
        months = new ArrayList<>();
        moneyMonths = new double[count];
        peak = months(sums.cashByMonth(), net);
        drivers = lines.drivers(drawn.covariances());
        double toCome = sums.hoursToCome();
        Assumption off = options.assumptions.get(Category.OWN_HOURS.assumption());
        hours = toCome == 0 ? new double[count] : UncertainSum.of(List.of(new UncertainSum.Line(
                guess(toCome, off), 0, 0, 1, 1, 0))).totals(count, ~options.seed);
        for (int i = 0; i < count; i++) {
            hours[i] += sums.hoursSoFar();
        }
    }

    /**
     * The forecast with 10,000 draws of seed 1 by the assumptions of the program.
     *
     * @param ledger the ledger
     * @return what it will have cost
     */
    public static Forecast of(Ledger ledger) {
        return withDefaults().of(ledger);
    }

    /**
     * The ways to forecast.
     *
     * @return 10,000 draws, seed 1, the assumptions of the program
     */
    public static Options withDefaults() {
        return new Options(COUNT, 1, Assumptions.defaults(), Map.of());
    }

    /**
     * How a forecast is made.
     *
     * @param count the number of draws, at least 1
     * @param seed their seed
     * @param assumptions what stands in where rows do not speak
     * @param moved draws of a factor on the estimates of a category, in the order of the draws of the market
     */
    public record Options(int count, long seed, Assumptions assumptions, Map<Category, double[]> moved) {

        /** Checks that there is a draw and that factors have as many. */
        public Options {
            requireNonNull(assumptions, "assumptions");
            moved = DrawFigures.copied(moved);
            if (count < 1) {
                throw new IllegalArgumentException("a forecast needs a draw, not " + count);
            }
            for (Map.Entry<Category, double[]> factor : moved.entrySet()) {
                if (factor.getValue().length != count) {
                    throw new IllegalArgumentException(factor.getKey().words() + ": " + factor.getValue().length + " factors beside "
                            + count
                            + " draws");
                }
            }
        }

        @Override
        public Map<Category, double[]> moved() {
            return DrawFigures.copied(moved);
        }

        /**
         * The same with other draws.
         *
         * @param draws how many: as many as there are draws of the market, where the two are put together
         * @param of their seed
         * @return a copy
         */
        public Options draws(int draws, long of) {
            return new Options(draws, of, assumptions, moved);
        }

        /**
         * The same by other assumptions.
         *
         * @param own the assumptions
         * @return a copy
         */
        public Options with(Assumptions own) {
            return new Options(count, seed, own, moved);
        }

        /**
         * The same, the estimates of a category moving with the market: what moves values moves the price of parts too.
         *
         * @param category the category
         * @param factors draws of the factor, as many as draws of the forecast
         * @return a copy
         */
        public Options moving(Category category, double[] factors) {
            Map<Category, double[]> more = new EnumMap<>(Category.class);
            more.putAll(moved);
            more.put(category, factors.clone());
            return new Options(count, seed, assumptions, more);
        }

        /**
         * The forecast of a ledger.
         *
         * @param ledger the ledger
         * @return what it will have cost
         */
        public Forecast of(Ledger ledger) {
            return new Forecast(ledger, this);
        }
    }

    /** What a guess may turn out to be: its middle may lean, and its logarithm has a spread. */
    static AmountLaw guess(double likely, Assumption off) {
        double lean = 1 + off.middle() / 100;
        return AmountLaw.lognormal(likely * lean, off.spread() / 100 / lean);
    }

    /**
     * Rows to come that are summed up together.
     *
     * @param month the month, from that of the ledger's day
     * @param direction whether money goes out or comes in
     * @param moving the category with whose market they move; empty where they stand still
     * @param kept the share of them that is not charged to the undertaking: tools that stay
     * @param cars the cars that they fall on, of money that comes in
     */
    private record Bin(int month, Direction direction, Optional<Category> moving, double kept, List<String> cars) {
    }

    /** The rows that are to come, as lines of a sum in an order that does not depend on the file. */
    private static final class Lines {
        final List<UncertainSum.Line> lines = new ArrayList<>();
        final List<Entry> entries = new ArrayList<>();
        final List<Bin> bins = new ArrayList<>();
        final int months;
        private final int reserves;

        Lines(Ledger ledger, Options options) {
            Assumptions assumptions = options.assumptions;
            List<Entry> toCome = new ArrayList<>(ledger.entries());
            toCome.removeIf(e -> e.status() == Status.ACTUAL || e.amount().signum() == 0);
            toCome.sort(Comparator.comparing(Entry::due).thenComparing(Entry::category).thenComparing(Entry::direction)
                    .thenComparing(Entry::amount).thenComparing(Entry::note).thenComparing(Entry::item)
                    .thenComparing(e -> e.range().map(r -> r.low().add(r.high())).orElse(BigDecimal.ZERO))
                    .thenComparing(e -> String.join(";", e.cars())));
            YearMonth first = YearMonth.from(ledger.on());
            double common = Math.sqrt(assumptions.get("estimate_correlation").middle());
            double[] guessed = new double[1200];
            int last = 0;
            boolean reserved = false;
            for (Entry entry : toCome) {
                int month = (int) Math.min(guessed.length - 1, ChronoUnit.MONTHS.between(first, YearMonth.from(entry.due())));
                last = Math.max(last, month);
                boolean out = entry.direction() == Direction.OUT;
                AmountLaw law = law(entry, assumptions);
                Optional<Category> moving = Optional.of(entry.category()).filter(c -> law.sd() > 0 && options.moved.containsKey(c));
                double kept = entry.kept().doubleValue() / entry.amount().doubleValue();
                lines.add(new UncertainSum.Line(law, entry.category().ordinal(), law.sd() == 0 ? 0 : common, out ? 1 : -1, 1,
                        bin(new Bin(month, entry.direction(), moving, kept, out ? List.of() : entry.cars()))));
                entries.add(entry);
                reserved |= entry.category() == Category.CONTINGENCY;
                guessed[month] += out && entry.status() == Status.ESTIMATE ? entry.amount().subtract(entry.kept()).doubleValue() : 0;
            }
            months = last + 1;
            Assumption reserve = assumptions.get("contingency");
            int added = 0;
            for (int m = 0; m < months && !reserved; m++) {
                if (guessed[m] > 0 && reserve.middle() > 0) {
                    AmountLaw law = AmountLaw.lognormal(guessed[m] * reserve.middle() / 100, reserve.spread() / reserve.middle());
                    // A group of its own: that of the sale of the finished car, which is no line of the forecast.
                    lines.add(new UncertainSum.Line(law, Category.CAR_SOLD.ordinal(), 1, 1, 1,
                            bin(new Bin(m, Direction.OUT, Optional.empty(), 0, List.of()))));
                    added++;
                }
            }
            reserves = added;
        }

        private int bin(Bin bin) {
            int known = bins.indexOf(bin);
            if (known < 0) {
                bins.add(bin);
            }
            return known < 0 ? bins.size() - 1 : known;
        }

        private static AmountLaw law(Entry entry, Assumptions assumptions) {
            double likely = entry.amount().doubleValue();
            if (entry.range().isPresent()) {
                return AmountLaw.pert(entry.range().get().low().doubleValue(), likely, entry.range().get().high().doubleValue());
            }
            return entry.status() == Status.COMMITTED || likely < 0 ? AmountLaw.exactly(likely)
                    : guess(likely, assumptions.get(entry.category().assumption()));
        }

        List<Driver> drivers(double[] covariances) {
            double variance = 0;
            for (double one : covariances) {
                variance += one;
            }
            List<Driver> drivers = new ArrayList<>();
            double reserve = 0;
            double[] ofReserve = new double[3];
            for (int l = 0; l < lines.size(); l++) {
                UncertainSum.Line line = lines.get(l);
                double sign = line.weight();
                double[] three = {sign * line.law().quantile(sign > 0 ? LOW : HIGH), sign * line.law().quantile(0.5),
                        sign * line.law().quantile(sign > 0 ? HIGH : LOW)};
                double share = variance > 0 ? covariances[l] / variance : 0;
                if (l >= lines.size() - reserves) {
                    reserve += share;
                    for (int k = 0; k < 3; k++) {
                        ofReserve[k] += three[k];
                    }
                } else if (line.law().sd() > 0) {
                    Entry entry = entries.get(l);
                    String name = entry.note().isEmpty() ? entry.item() : entry.note();
                    drivers.add(new Driver(name, entry.line(), three[0], three[1], three[2], share));
                }
            }
            if (reserves > 0) {
                drivers.add(new Driver("reserve for what nobody thought of", 0, ofReserve[0], ofReserve[1], ofReserve[2], reserve));
            }
            drivers.sort(Comparator.comparingDouble((Driver d) -> -d.share));
            return drivers;
        }
    }

    /** Fills the months with what is in the undertaking at the end of each, and finds the highest. */
    private Peak months(Map<YearMonth, BigDecimal> past, double[][] net) {
        YearMonth now = YearMonth.from(ledger.on());
        double sum = 0;
        double most = 0;
        YearMonth mostIn = now;
        YearMonth first = past.keySet().stream().findFirst().orElse(now);
        for (YearMonth month = first; month.isBefore(now); month = month.plusMonths(1)) {
            sum += past.getOrDefault(month, BigDecimal.ZERO).doubleValue();
            months.add(new MonthOfCash(month, sum, sum, sum, new Range(sum, sum)));
            mostIn = sum > most ? month : mostIn;
            most = Math.max(most, sum);
            double stands = standsIn(month) ? sum : 0;
            for (int i = 0; i < count; i++) {
                moneyMonths[i] += stands;
            }
        }
        double[] standing = new double[count];
        double[] highest = new double[count];
        int[] when = new int[count];
        java.util.Arrays.fill(standing, soFar);
        java.util.Arrays.fill(highest, most);
        java.util.Arrays.fill(when, -1);
        for (int m = 0; m < net.length; m++) {
            boolean stands = standsIn(now.plusMonths(m));
            for (int i = 0; i < count; i++) {
                standing[i] += net[m][i];
                moneyMonths[i] += stands ? standing[i] : 0;
                if (standing[i] > highest[i]) {
                    highest[i] = standing[i];
                    when[i] = m;
                }
            }
            months.add(new MonthOfCash(now.plusMonths(m), Quantiles.of(standing, LOW), Quantiles.of(standing, 0.5),
                    Quantiles.of(standing, HIGH), range(standing, 0.95)));
        }
        int[] times = new int[net.length + 1];
        for (int m : when) {
            times[m + 1]++;
        }
        int best = 0;
        for (int m = 1; m < times.length; m++) {
            best = times[m] > times[best] ? m : best;
        }
        return new Peak(highest, best == 0 ? mostIn : now.plusMonths(best - 1L), times[best] / (double) count);
    }

    /** Whether money stands in the undertaking at the end of a month: until the finished car is sold. */
    private boolean standsIn(YearMonth month) {
        return ledger.carSold().map(sale -> month.isBefore(YearMonth.from(sale.on()))).orElse(true);
    }

    /**
     * The ledger.
     *
     * @return as given
     */
    public Ledger ledger() {
        return ledger;
    }

    /**
     * The number of draws.
     *
     * @return at least 1
     */
    public int count() {
        return count;
    }

    /**
     * Draws of the cash in the undertaking at completion: paid less received, tools that are kept included.
     *
     * @return in the base currency
     */
    public double[] total() {
        return total.clone();
    }

    /**
     * Draws of what the undertaking itself costs at completion: the total less tools that are kept.
     *
     * @return in the base currency
     */
    public double[] charged() {
        double[] charged = DrawFigures.minus(total, toKeep);
        for (int i = 0; i < charged.length; i++) {
            charged[i] -= keptSoFar;
        }
        return charged;
    }

    /**
     * Draws of what the undertaking still costs: what is to be paid less what is to come in, tools that are kept left out.
     *
     * @return in the base currency
     */
    public double[] toFinish() {
        return DrawFigures.minus(DrawFigures.minus(toPay, toReceive), toKeep);
    }

    /**
     * Draws of what is still to be paid, the reserve included.
     *
     * @return in the base currency
     */
    public double[] toPay() {
        return toPay.clone();
    }

    /**
     * Draws of what is still to come in.
     *
     * @return in the base currency
     */
    public double[] toReceive() {
        return toReceive.clone();
    }

    /**
     * Draws of what is still to come in of some cars.
     *
     * @param cars which cars count, by the names that stand in the ledger
     * @return in the base currency, of rows that fall on none but such cars
     */
    double[] toReceive(Predicate<String> cars) {
        double[] sum = new double[count];
        toReceiveOf.forEach((names, amounts) -> {
            if (names.stream().allMatch(cars)) {
                for (int i = 0; i < count; i++) {
                    sum[i] += amounts[i];
                }
            }
        });
        return sum;
    }

    /**
     * Draws of own hours at completion.
     *
     * @return hours done and to come
     */
    public double[] hours() {
        return hours.clone();
    }

    /** Draws of the sum of the cash in it at the end of each month until the car is sold: what interest is reckoned on. */
    double[] moneyMonths() {
        return moneyMonths.clone();
    }

    /** The draws of one thing. */
    Options options() {
        return options;
    }

    /**
     * The cash in the undertaking at the end of each month, past months exactly.
     *
     * @return in order
     */
    public List<MonthOfCash> months() {
        return List.copyOf(months);
    }

    /**
     * The most cash that is in the undertaking at the end of any month.
     *
     * @return amounts and month
     */
    public Peak peak() {
        return peak;
    }

    /**
     * What drives the spread, the largest part first.
     *
     * @return one entry an estimate, and one for the reserve
     */
    public List<Driver> drivers() {
        return drivers;
    }

    /**
     * The month in which the last row is due.
     *
     * @return the last of {@link #months}
     */
    public YearMonth completion() {
        return months.get(months.size() - 1).month();
    }

    /**
     * A range of draws.
     *
     * @param draws the draws
     * @param level how much of them it holds, such as 0.80
     * @return as much left out above as below
     */
    public static Range range(double[] draws, double level) {
        return new Range(Quantiles.of(draws, 0.5 - level / 2), Quantiles.of(draws, 0.5 + level / 2));
    }

    /**
     * The forecast in figures, by month, and what drives its spread.
     *
     * @return three tables
     */
    public List<Table> tables() {
        return List.of(figures(), byMonth(), spread());
    }

    /**
     * Total, still to pay, still to come in and peak, with ranges.
     *
     * @return one row a figure
     */
    public Table figures() {
        String unit = ledger.currency().getCurrencyCode();
        Table.Builder table = DrawFigures.ranged("Forecast at completion, " + unit + ", as of " + ledger.on(), unit);
        long guesses = ledger.entries().stream().filter(e -> e.status() == Status.ESTIMATE).count();
        table.note(ledger.entries().size() + (ledger.entries().size() == 1 ? " row, " : " rows, ") + guesses
                + (guesses == 1 ? " of them an estimate; " : " of them estimates; ")
                + Cell.format(count, 0) + " draws. Paid and agreed amounts stand as they are; estimates are drawn, those of one category"
                        + " together.");
        if (!ledger.carSales().isEmpty()) {
            table.note(ledger.carSaleNote());
        }
        table.row(Cell.words("in it so far, net"), Cell.number(soFar, 2), Cell.BLANK, Cell.BLANK, Cell.BLANK, Cell.BLANK);
        DrawFigures.row(table, "still to pay", toPay);
        DrawFigures.row(table, "still to come in", toReceive);
        DrawFigures.row(table, "cash in it at completion", total);
        if (ledger.sums().keptAtCompletion().signum() != 0) {
            DrawFigures.row(table, "less tools kept: what the undertaking costs", charged());
        }
        DrawFigures.row(table, "most cash in it at the end of a month", peak.amounts);
        table.note("The most cash is in it most often at the end of " + peak.month + " (" + Math.round(100 * peak.chance)
                + " % of the draws).");
        return table.build();
    }

    /**
     * Cash in the undertaking, month by month.
     *
     * @return one row a month
     */
    public Table byMonth() {
        String unit = ledger.currency().getCurrencyCode();
        Table.Builder table = Table.titled("Cash in the undertaking at the end of each month, " + unit).columns(Column.words("month"),
                Column.number("median", unit), Column.number("80 % from", unit), Column.number("80 % to", unit));
        for (MonthOfCash month : months) {
            table.row(Cell.words(month.month.toString()), Cell.number(month.middle, 0), Cell.number(month.low, 0), Cell.number(month.high,
                    0));
        }
        return table.build();
    }

    /**
     * What drives the spread.
     *
     * @return one row an estimate, the largest part of the variance first
     */
    public Table spread() {
        String unit = ledger.currency().getCurrencyCode();
        Table.Builder table = Table.titled("What drives the spread of the forecast").columns(Column.number("line", ""),
                Column.words("estimate"), Column.number("median", unit), Column.number("80 % from", unit), Column.number("80 % to", unit),
                Column.number("part of the variance", "%"));
        table.note("Money that comes in is below 0; parts of the variance are those at a market that stands still. A firm offer or a"
                + " narrower range for the first rows would narrow the forecast most.");
        for (Driver driver : drivers) {
            table.row(driver.line == 0 ? Cell.BLANK : Cell.label(driver.line), Cell.words(driver.name), Cell.number(driver.middle, 0),
                    Cell.number(driver.low, 0), Cell.number(driver.high, 0), Cell.number(100 * driver.share, 1));
        }
        return table.build();
    }
}
