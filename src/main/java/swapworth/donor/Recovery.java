package swapworth.donor;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.function.IntPredicate;
import swapworth.listing.Days;
import swapworth.listing.Runs;
import swapworth.market.Range;
import swapworth.statistics.Draws;
import swapworth.statistics.Quantiles;
import swapworth.statistics.RandomNumbers;
import swapworth.table.Cell;
import swapworth.table.Column;
import swapworth.table.Table;

/**
 * What the left-over parts of a car bring: net of fees, postage, packing, returns, parts that turn out bad or never sell, and the space
 * they take, with what is left at the end. Simulated: one history of all sales for each state of the market, every assumption drawn within
 * its spread. Hours are counted and not priced.
 */
public final class Recovery {
    private static final double DAYS_PER_WEEK = 7;

    private final PartOut of;
    private final List<SaleUnit> units;
    private final int months;
    private final double[] net;
    private final double[][] byMonth;
    private final double[] hours;
    private final double[] peak;
    private final double[] remainder;
    private final double[] held;
    private final double[][] unitNet;
    private final double[][] unitHours;
    private final boolean[][] unitSold;
    private final double listed;

    private Recovery(PartOut of, List<SaleUnit> units, int months) {
        this.of = of;
        this.units = units;
        this.months = months;
        int m = of.state().count();
        net = new double[m];
        byMonth = new double[m][months];
        hours = new double[m];
        peak = new double[m];
        held = new double[m];
        unitNet = new double[units.size()][m];
        unitHours = new double[units.size()][m];
        unitSold = new boolean[units.size()][m];
        remainder = remainder();
        double sum = 0;
        for (SaleUnit unit : units) {
            sum += unit.asked();
        }
        listed = sum;
        simulate();
    }

    static Recovery of(PartOut out) {
        int months = Math.max(1, (int) Math.round(out.draws().assumptions().get("horizon_months").middle()));
        List<SaleUnit> units = new ArrayList<>(SaleUnit.of(out));
        double horizon = months * Days.PER_MONTH;
        double[] rank = new double[units.size()];
        Integer[] order = new Integer[units.size()];
        for (int u = 0; u < rank.length; u++) {
            rank[u] = units.get(u).netPerHour(horizon);
            order[u] = u;
        }
        Arrays.sort(order, Comparator.<Integer>comparingDouble(u -> -rank[u]).thenComparing(u -> units.get(u).name));
        List<SaleUnit> ranked = new ArrayList<>();
        for (int u : order) {
            ranked.add(units.get(u));
        }
        return new Recovery(out, List.copyOf(ranked), months);
    }

    /** What is left in the end: the hulk of a donor, and the core of a dead engine. */
    private double[] remainder() {
        double[] sum = new double[of.state().count()];
        if (of.endsAsHulk()) {
            add(sum, PartKind.HULK, "hulk_value", i -> true);
        }
        if (of.car().facts().runs() == Runs.ENGINE_DEAD) {
            add(sum, PartKind.CORE, "core_value", own(PartKind.CORE).isPresent() ? i -> true : this::leavesCore);
        }
        return sum;
    }

    /** Whether the engine is left as a core in a draw: not where it is kept, goes into the swap or is sold as an engine. */
    private boolean leavesCore(int draw) {
        boolean elsewhere = of.pieces().stream().map(p -> p.row)
                .anyMatch(row -> row.part().isEngine() && (row.goesTo() == GoesTo.KEEP || row.goesTo() == GoesTo.SWAP));
        return !elsewhere && units.stream()
                .noneMatch(unit -> unit.good[draw] > 0 && unit.pieces.stream().anyMatch(p -> p.row.part().isEngine()));
    }

    private Optional<PartRow> own(String group) {
        return of.pieces().stream().map(p -> p.row).filter(r -> r.part().group().equals(group)).findFirst();
    }

    private void add(double[] sum, String group, String assumption, IntPredicate left) {
        Optional<PartRow> own = own(group);
        if (own.map(r -> r.goesTo() != GoesTo.SELL).orElse(false)) {
            return;
        }
        double[] amounts = own.isPresent() && own.get().price().isPresent()
                ? of.draws().sizes(own.get().price().getAsDouble(), 0, RandomNumbers.of(of.state().seed(), group))
                : of.draws().size(assumption);
        for (int i = 0; i < sum.length; i++) {
            sum[i] += left.test(i) ? amounts[i] : 0;
        }
    }

    private void simulate() {
        int m = net.length;
        double horizon = months * Days.PER_MONTH;
        int weeks = (int) Math.ceil(horizon / DAYS_PER_WEEK) + 1;
        double[] pace = of.draws().size("listing_pace");
        double[] space = of.draws().size("holding_cost");
        double[] hulkMonth = of.draws().size("hulk_months");
        double[] drift = of.drift();
        boolean hulk = of.endsAsHulk();
        int[] shelf = new int[weeks + 1];
        for (int i = 0; i < m; i++) {
            Arrays.fill(shelf, 0);
            double listedOn = 0;
            double lastDay = hulk ? Math.min(horizon, hulkMonth[i] * Days.PER_MONTH) : 0;
            for (int u = 0; u < units.size(); u++) {
                SaleUnit unit = units.get(u);
                if (unit.good[i] == 0 || listedOn >= horizon) {
                    continue;
                }
                double soldOn = listedOn + unit.days[i];
                boolean sold = soldOn <= horizon;
                boolean back = sold && unit.returned[i];
                unitHours[u][i] = unit.hoursListed[i] + (sold ? unit.hoursSent[i] : 0);
                hours[i] += unitHours[u][i];
                if (sold) {
                    double money = unit.moneyAt(i, unit.price[i] * StrictMath.exp(drift[i] * soldOn / Days.PER_MONTH));
                    unitNet[u][i] = money;
                    unitSold[u][i] = !back;
                    byMonth[i][month(soldOn)] += money;
                }
                double gone = sold && !back ? soldOn : horizon;
                lastDay = Math.max(lastDay, gone);
                shelf[(int) (listedOn / DAYS_PER_WEEK)] += unit.good[i];
                shelf[(int) Math.ceil(gone / DAYS_PER_WEEK)] -= unit.good[i];
                listedOn += DAYS_PER_WEEK * unit.good[i] / Math.max(0.1, pace[i]);
            }
            peak[i] = mostOnShelf(shelf);
            byMonth[i][hulk ? month(hulkMonth[i] * Days.PER_MONTH) : 0] += remainder[i];
            addUp(i, (int) Math.ceil(lastDay / Days.PER_MONTH), space[i]);
        }
    }

    /** The most pieces at a time, by how many come and go each week. */
    private static int mostOnShelf(int[] shelf) {
        int most = 0;
        int now = 0;
        for (int change : shelf) {
            now += change;
            most = Math.max(most, now);
        }
        return most;
    }

    /** Takes off what the space costs until a month, and adds the months up. */
    private void addUp(int i, int until, double space) {
        for (int k = 0; k < months; k++) {
            if (k < until) {
                byMonth[i][k] -= space;
                held[i] += space;
            }
            byMonth[i][k] += k > 0 ? byMonth[i][k - 1] : 0;
        }
        net[i] = byMonth[i][months - 1];
    }

    private int month(double day) {
        return Math.min(months - 1, (int) (day / Days.PER_MONTH));
    }

    /**
     * The net recovery within the horizon.
     *
     * @return one amount for each state of the market
     */
    public double[] net() {
        return net.clone();
    }

    /**
     * The net recovery until the end of each month.
     *
     * @return [state][month], cumulative; the last month holds {@link #net()}
     */
    public double[][] netByMonth() {
        double[][] copy = new double[byMonth.length][];
        for (int i = 0; i < copy.length; i++) {
            copy[i] = byMonth[i].clone();
        }
        return copy;
    }

    /**
     * The hours of taking off, putting on sale and sending.
     *
     * @return one number for each state of the market
     */
    public double[] hours() {
        return hours.clone();
    }

    /**
     * The share of the listed sum that comes back.
     *
     * @return one number for each state of the market; not a number where nothing is listed
     */
    public double[] shareOfListed() {
        double[] shares = new double[net.length];
        for (int i = 0; i < shares.length; i++) {
            shares[i] = listed > 0 ? net[i] / listed : Double.NaN;
        }
        return shares;
    }

    /**
     * The parts on sale, in the order in which they should be listed: by money per hour.
     *
     * @return one record for each part or bundle
     */
    public List<PartResult> parts() {
        List<PartResult> results = new ArrayList<>();
        for (int u = 0; u < units.size(); u++) {
            SaleUnit unit = units.get(u);
            double sold = 0;
            for (boolean one : unitSold[u]) {
                sold += one ? 1 : 0;
            }
            double meanNet = Draws.mean(unitNet[u]);
            double meanHours = Draws.mean(unitHours[u]);
            double[] price = Arrays.stream(unit.price).filter(p -> p > 0).sorted().toArray();
            results.add(new PartResult(unit.name, unit.count(), price.length == 0 ? 0 : Quantiles.ofSorted(price, 0.5),
                    price.length == 0 ? new Range(0, 0) : new Range(Quantiles.ofSorted(price, 0.1), Quantiles.ofSorted(price, 0.9)),
                    sold / net.length, meanNet, meanHours, meanHours > 0 ? meanNet / meanHours : Double.NaN,
                    perHour(unitNet[u], meanHours, 0.8),
                    perHour(unitNet[u], meanHours, 0.95), unit.priceFrom(), gear(unit)));
        }
        return results;
    }

    /** How many pieces are on sale, bundles taken apart. */
    int pieces() {
        return units.stream().mapToInt(SaleUnit::count).sum();
    }

    private static Range perHour(double[] nets, double hours, double probability) {
        if (hours <= 0) {
            return new Range(0, 0);
        }
        double[] sorted = nets.clone();
        Arrays.sort(sorted);
        return new Range(Quantiles.ofSorted(sorted, (1 - probability) / 2) / hours,
                Quantiles.ofSorted(sorted, (1 + probability) / 2) / hours);
    }

    private static boolean gear(SaleUnit unit) {
        return unit.pieces.stream().allMatch(p -> p.row.part().isEngineOrGearbox());
    }

    /**
     * A part on sale, or a bundle.
     *
     * @param name what it is
     * @param pieces how many pieces
     * @param price median of what it sells for when good
     * @param range80 80 % range of the same
     * @param chanceSold share of the histories in which it is good, sells within the horizon and stays sold
     * @param net expected money, with what never sells counted as nothing
     * @param hours expected hours
     * @param perHour expected money an hour: listing it pays where an hour is worth less to you
     * @param perHour80 80 % range of the money over the expected hours; a part that may never sell begins at 0
     * @param perHour95 95 % range of the same
     * @param priceFrom what the price rests on
     * @param engineOrGearbox whether it is the engine, the gearbox, or both
     */
    public record PartResult(String name, int pieces, double price, Range range80, double chanceSold, double net, double hours,
            double perHour,
            Range perHour80, Range perHour95, String priceFrom, boolean engineOrGearbox) {
    }

    /**
     * The figures of the whole car.
     *
     * @param currency of all amounts
     * @return one row a figure, with its mean and its ranges
     */
    public Table table(String currency) {
        Table.Builder table = Table.titled("What the parts of " + of.car().name() + " bring, " + currency)
                .columns(Column.words("figure"), Column.number("mean", ""), Column.number("median", ""), Column.words("80 % range"));
        table.note(units.size() + (units.size() == 1 ? " part or bundle" : " parts or bundles") + " on sale for " + months
                + (months == 1 ? " month; " : " months; ") + Cell.format(net.length, 0)
                + " draws, every assumption within its spread.");
        List<String> without = new ArrayList<>();
        for (Piece p : of.pieces()) {
            if (p.row.goesTo() == GoesTo.SELL && !p.earnsNothing().isEmpty() && !p.row.part().isLeftOver()) {
                without.add(p.row.part().name() + " (" + p.earnsNothing() + ")");
            }
        }
        if (!without.isEmpty()) {
            table.note("Not in the sum: " + String.join("; ", without) + ".");
        }
        table.row(Cell.words("sum of all asking prices"), Cell.number(listed, 0), Cell.number(listed, 0), Cell.words(""));
        row(table, "net recovery", net, 0);
        row(table, "of it what is left (hulk, core)", remainder, 0);
        row(table, "of it the cost of space", negative(held), 0);
        if (listed > 0) {
            double[] percent = shareOfListed();
            for (int i = 0; i < percent.length; i++) {
                percent[i] *= 100;
            }
            row(table, "share of the asking prices that comes back, %", percent, 0);
        }
        row(table, "hours", hours, 0);
        row(table, "most parts on the shelf", peak, 0);
        return table.build();
    }

    private static double[] negative(double[] values) {
        double[] negated = new double[values.length];
        for (int i = 0; i < values.length; i++) {
            negated[i] = 0 - values[i];
        }
        return negated;
    }

    private static void row(Table.Builder table, String figure, double[] values, int decimals) {
        double[] sorted = values.clone();
        Arrays.sort(sorted);
        table.row(Cell.words(figure), Cell.number(Draws.mean(values), decimals), Cell.number(Quantiles.ofSorted(sorted, 0.5), decimals),
                Cell.words(Cell.format(Quantiles.ofSorted(sorted, 0.1), decimals) + " to "
                        + Cell.format(Quantiles.ofSorted(sorted, 0.9), decimals)));
    }

    /**
     * The parts ranked by money per hour.
     *
     * @param currency of all amounts
     * @return one row a part or bundle
     */
    public Table partsTable(String currency) {
        Table.Builder table = Table.titled("Parts of " + of.car().name() + " by money per hour, " + currency)
                .columns(Column.words("part"), Column.number("sells for", ""), Column.words("80 % range"), Column.words("priced by"),
                        Column.number("chance to sell", "%"), Column.number("net", ""), Column.number("hours", "h"),
                        Column.number("net per hour", ""));
        table.note("Listing a part pays where an hour is worth less to you than its net per hour. Net counts what turns out bad or never "
                + "sells.");
        List<PartResult> parts = parts();
        for (PartResult p : parts) {
            table.row(Cell.words(p.name() + (p.pieces() > 1 ? " (" + p.pieces() + ")" : "")), Cell.number(p.price(), 0),
                    Cell.words(Cell.format(p.range80().low(), 0) + " to " + Cell.format(p.range80().high(), 0)), Cell.words(p.priceFrom()),
                    Cell.chance(p.chanceSold()), Cell.number(p.net(), 0), Cell.number(p.hours(), 1), Cell.number(p.perHour(), 1));
        }
        List<String> losing = parts.stream().filter(p -> p.net() < 0).map(PartResult::name).toList();
        if (!losing.isEmpty()) {
            table.note("Not worth listing at any rate: " + String.join(", ", losing) + ".");
        }
        return table.build();
    }

    /**
     * How the recovery comes in.
     *
     * @param currency of all amounts
     * @return one row a month
     */
    public Table monthsTable(String currency) {
        Table.Builder table = Table.titled("Recovery of " + of.car().name() + " by month, " + currency)
                .columns(Column.number("month", ""), Column.number("new in the month", ""), Column.number("so far, mean", ""),
                        Column.words("80 % range"));
        table.note("The cost of space is taken off. Where a month brings less than the space is worth to you, give the rest away.");
        double before = 0;
        for (int k = 0; k < months; k++) {
            double[] soFar = new double[net.length];
            for (int i = 0; i < soFar.length; i++) {
                soFar[i] = byMonth[i][k];
            }
            double mean = Draws.mean(soFar);
            Arrays.sort(soFar);
            table.row(Cell.whole(k + 1), Cell.number(mean - before, 0), Cell.number(mean, 0), Cell.words(
                    Cell.format(Quantiles.ofSorted(soFar, 0.1), 0) + " to " + Cell.format(Quantiles.ofSorted(soFar, 0.9), 0)));
            before = mean;
        }
        return table.build();
    }

    /** What comes back, in the middle and with its range. */
    @Override
    public String toString() {
        return "the left-over parts of '" + of.car().name() + "' bring " + Cell.format(Quantiles.of(net, 0.5), 0) + " net, 80 % range "
                + Choice.range(net);
    }
}
