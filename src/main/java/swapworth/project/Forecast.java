package swapworth.project;

import static java.util.Objects.requireNonNull;

import java.time.YearMonth;
import java.util.Arrays;
import java.util.EnumMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Function;
import swapworth.assumptions.Assumption;
import swapworth.assumptions.Assumptions;
import swapworth.market.Range;
import swapworth.project.Entry.Direction;
import swapworth.statistics.AmountLaw;
import swapworth.statistics.Quantiles;
import swapworth.statistics.UncertainSum;
import swapworth.table.Cell;
import swapworth.table.Table;

/**
 * What the undertaking will have cost when it is done: what is paid and agreed stands as it is, estimates are drawn. An estimate with low
 * and high is a beta law between these ends that leans to the likely amount; one with the likely amount alone is ln-normal around it with
 * the spread of its category (assumption {@code estimate_...}). Estimates of one category go together ({@code estimate_correlation}). A
 * reserve for what nobody thought of ({@code contingency}) is a share of the estimates still to be paid, unless rows of the category
 * contingency are still to come. The same ledger and seed give the same figures on every machine and in whatever order the rows stand.
 */
public final class Forecast {
    /** Draws unless stated. */
    private static final int COUNT = 10_000;
    static final double LOW = 0.10;
    static final double HIGH = 0.90;

    private final Ledger ledger;
    private final Options options;
    private final int count;
    private final double keptSoFar;
    private final double[] total;
    private final double[] toPay;
    private final double[] toReceive;
    /** The same by the cars that rows fall on, and what of them is sold. */
    private final Map<List<String>, Map<RowsToCome.Part, double[]>> toReceiveOf = new LinkedHashMap<>();
    private final double[] toKeep;
    private final List<Driver> drivers;
    private final double[] hours;
    private final CashInIt cash;

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

        @Override
        public boolean equals(Object other) {
            return other instanceof Peak peak && Arrays.equals(amounts, peak.amounts) && month.equals(peak.month)
                    && Double.compare(chance, peak.chance) == 0;
        }

        @Override
        public int hashCode() {
            return month.hashCode() * 31 + Arrays.hashCode(amounts);
        }

        /** The amount, and the month in which it is highest most often. */
        @Override
        public String toString() {
            return DrawFigures.withRange(amounts) + " at the end of " + month + " (" + Cell.chanceInWords(chance) + " of the draws)";
        }
    }

    /**
     * What an estimate adds to the spread.
     *
     * @param name its note, else its item, else its line in words
     * @param line its line in the ledger; 0 for the reserve
     * @param low what it may come to, one in ten below; money in is below 0
     * @param middle its median
     * @param high one in ten above
     * @param share its part of the variance of the total at a market that stands still; all parts add up to 1
     */
    public record Driver(String name, int line, double low, double middle, double high, double share) {

        /**
         * Whether it is the reserve for what nobody thought of, for which there is no offer.
         *
         * @return true where no row stands behind it
         */
        public boolean isReserve() {
            return line == 0;
        }
    }

    private Forecast(Ledger ledger, Options options) {
        this.ledger = ledger;
        this.options = options;
        count = options.count;
        LedgerSums sums = ledger.sums();
        double soFar = sums.total().net().doubleValue();
        keptSoFar = sums.keptSoFar().doubleValue();
        RowsToCome rows = new RowsToCome(ledger, options);
        UncertainSum.Drawn drawn = rows.drawn(count, options.seed);
        double[][] net = new double[rows.months()][count];
        toPay = new double[count];
        toReceive = new double[count];
        toKeep = new double[count];
        total = new double[count];
        for (int b = 0; b < rows.bins().size(); b++) {
            RowsToCome.Bin bin = rows.bins().get(b);
            add(bin, drawn.bin(b), net[bin.month()]);
        }
        for (int i = 0; i < count; i++) {
            total[i] = soFar + toPay[i] - toReceive[i];
        }
        cash = new CashInIt(ledger, net);
        drivers = rows.drivers(drawn.covariances());
        hours = hours(sums);
    }

    /** Adds the draws of rows that are summed up together to what is to come. */
    private void add(RowsToCome.Bin bin, double[] amounts, double[] net) {
        double[] factors = bin.moving().map(options.moved::get).orElse(new double[0]);
        boolean out = bin.direction() == Direction.OUT;
        double[] comesIn = out ? new double[0] : toReceiveOf.computeIfAbsent(bin.cars(), cars -> new EnumMap<>(RowsToCome.Part.class))
                .computeIfAbsent(bin.part(), part -> new double[count]);
        for (int i = 0; i < count; i++) {
            double amount = factors.length == 0 ? amounts[i] : amounts[i] * factors[i];
            net[i] += amount;
            toKeep[i] += bin.kept() * amount;
            if (out) {
                toPay[i] += amount;
            } else {
                toReceive[i] -= amount;
                comesIn[i] -= amount;
            }
        }
    }

    private double[] hours(LedgerSums sums) {
        double toCome = sums.hoursToCome();
        Assumption off = options.assumptions.get(Category.OWN_HOURS.assumption());
        double[] all = toCome == 0 ? new double[count] : UncertainSum.of(List.of(new UncertainSum.Line(guess(toCome, off), 0, 0, 1, 1, 0)))
                .totals(count, ~options.seed);
        for (int i = 0; i < count; i++) {
            all[i] += sums.hoursSoFar();
        }
        return all;
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
                            + count + " draws");
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

    /** What counts of what is still to come in of a car. */
    enum Counted { ALL, ITS_ENGINE, NOTHING }

    /**
     * Draws of what is still to come in of some cars.
     *
     * @param cars what counts of each car, by the name that stands in the ledger
     * @return in the base currency, of rows that count for all cars that they fall on
     */
    double[] toReceive(Function<String, Counted> cars) {
        double[] sum = new double[count];
        toReceiveOf.forEach((names, byPart) -> byPart.forEach((part, amounts) -> {
            if (names.stream().map(cars).allMatch(c -> c == Counted.ALL || c == Counted.ITS_ENGINE && part == RowsToCome.Part.ENGINE)) {
                for (int i = 0; i < count; i++) {
                    sum[i] += amounts[i];
                }
            }
        }));
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
        return cash.moneyMonths();
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
        return cash.months();
    }

    /**
     * The most cash that is in the undertaking at the end of any month.
     *
     * @return amounts and month
     */
    public Peak peak() {
        return cash.peak();
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
        return months().get(months().size() - 1).month();
    }

    /**
     * A range of draws.
     *
     * @param draws at least one draw
     * @param level how much of them it holds, above 0 and below 1, such as 0.80
     * @return as much left out above as below
     * @throws IllegalArgumentException if there is no draw, or the level lies outside
     */
    public static Range range(double[] draws, double level) {
        if (draws.length == 0) {
            throw new IllegalArgumentException("no draw has no range");
        }
        if (!(level > 0 && level < 1)) {
            throw new IllegalArgumentException("a range holds a share of the draws above 0 and below 1, such as 0.80, not " + level);
        }
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
        return new ForecastTables(this).figures();
    }

    /**
     * Cash in the undertaking, month by month.
     *
     * @return one row a month
     */
    public Table byMonth() {
        return new ForecastTables(this).byMonth();
    }

    /**
     * What drives the spread.
     *
     * @return one row an estimate, the largest part of the variance first
     */
    public Table spread() {
        return new ForecastTables(this).spread();
    }
}
