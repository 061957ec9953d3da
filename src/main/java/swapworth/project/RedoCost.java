package swapworth.project;

import static java.util.Objects.requireNonNull;

import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import swapworth.assumptions.Assumption;
import swapworth.assumptions.Assumptions;
import swapworth.listing.Days;
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
 * What it would cost to do the work again at the prices of the day of the ledger, and between which ends the sum to insure lies. Each row
 * that is done is carried from its day to today: parts, work and the rest with {@code redo_prices}, cars and parts sold with the movement
 * of the market where its draws are given, else with {@code redo_cars}. What is still to come counts as forecast. Tools count by
 * their charged share; nothing is taken off for age. When the finished car is sold there is nothing left to insure.
 *
 * @param currency the base currency
 * @param cash draws of the redo cost in cash
 * @param hours draws of own hours at completion
 * @param rate the stated rate of an hour
 * @param value draws of the value of the finished car
 * @param salvage draws of what would be kept after a write-off
 * @param evidence one sentence on where each figure that counts comes from
 * @param sale the sale of the finished car; empty where it is not done
 * @param on the day at whose prices it is done again
 */
public record RedoCost(String currency, double[] cash, double[] hours, double rate, double[] value, double[] salvage,
        List<String> evidence, Optional<Ledger.CarSale> sale, LocalDate on) {
    private static final Set<Category> OF_THE_MARKET = Set.of(Category.PURCHASE, Category.SOLD);

    /** Copies draws and list in and checks that the draws are as many. */
    public RedoCost {
        cash = cash.clone();
        hours = hours.clone();
        value = value.clone();
        salvage = salvage.clone();
        evidence = List.copyOf(evidence);
        requireNonNull(sale, "sale");
        requireNonNull(on, "on");
        DrawFigures.asMany(value.length, DrawFigures.VALUE, value);
        DrawFigures.asMany(value.length, "the redo cost in cash", cash);
        DrawFigures.asMany(value.length, "own hours", hours);
        DrawFigures.asMany(value.length, "what would be kept", salvage);
    }

    /**
     * The redo cost by assumptions alone.
     *
     * @param value draws of the value of the finished car, as many as those of the forecast
     * @param forecast the forecast
     * @return the redo cost, salvage as the share {@code salvage_share} of the value
     * @throws IllegalArgumentException if there are more or fewer draws of the value than of the forecast, or one is no finite number
     */
    public static RedoCost of(double[] value, Forecast forecast) {
        return of(value, forecast, Map.of());
    }

    /**
     * The redo cost with what the market says.
     *
     * @param value draws of the value of the finished car, as many as those of the forecast
     * @param forecast the forecast
     * @param carsSince for a row of the ledger by its line: draws of the factor from the market of its day to that of today
     * @return the redo cost, salvage as the share {@code salvage_share} of the value
     * @throws IllegalArgumentException if there are more or fewer draws of the value than of the forecast, or one is no finite number
     */
    public static RedoCost of(double[] value, Forecast forecast, Map<Integer, double[]> carsSince) {
        Assumptions assumptions = forecast.options().assumptions();
        int count = forecast.count();
        DrawFigures.asMany(count, DrawFigures.VALUE, value);
        long seed = forecast.options().seed();
        double[] prices = perYear(assumptions.get("redo_prices"), count, seed ^ 0x1d0L);
        double[] cars = perYear(assumptions.get("redo_cars"), count, seed ^ 0x2d0L);
        double[] cash = forecast.toFinish();
        int byMarket = 0;
        int byPrices = 0;
        for (Entry entry : forecast.ledger().entries()) {
            if (entry.status() != Status.ACTUAL || entry.amount().signum() == 0) {
                continue;
            }
            double charged = signed(entry, entry.amount().subtract(entry.kept()).doubleValue());
            double years = ChronoUnit.DAYS.between(entry.date(), forecast.ledger().on()) / Days.PER_YEAR;
            double[] given = carsSince.getOrDefault(entry.line(), new double[0]);
            double[] rates = OF_THE_MARKET.contains(entry.category()) ? cars : prices;
            byMarket += given.length > 0 ? 1 : 0;
            byPrices += given.length > 0 ? 0 : 1;
            for (int i = 0; i < count; i++) {
                cash[i] += charged * (given.length > 0 ? given[i] : StrictMath.exp(years * rates[i]));
            }
        }
        Assumption share = assumptions.get("salvage_share");
        double[] salvage = DrawFigures.shares(share, 1, count, seed ^ 0x3d0L);
        for (int i = 0; i < count; i++) {
            salvage[i] *= value[i];
        }
        int rows = byMarket + byPrices;
        String ofRedo = "The redo cost comes from " + rows + (rows == 1 ? " row" : " rows") + " of the ledger that are done, " + byMarket
                + " of them carried to that day by the market of the listings, " + byPrices + " by assumptions on yearly prices, and from"
                + " what is still to be paid.";
        Optional<Ledger.CarSale> sale = forecast.ledger().carSold();
        List<String> evidence = sale.isPresent() ? List.of(ofRedo) : List.of(
                "The value comes from listings and assumptions, with its range.", ofRedo,
                "What would be kept after a write-off is an assumption: " + Cell.stated(share.middle()).shown()
                        + " % of the value, give or take " + Cell.stated(share.spread()).shown() + ".");
        return new RedoCost(forecast.ledger().currency().getCurrencyCode(), cash, forecast.hours(),
                assumptions.get("own_hour_rate").middle(), value, salvage, evidence, sale, forecast.ledger().on());
    }

    private static double signed(Entry entry, double amount) {
        return entry.direction() == Direction.OUT ? amount : -amount;
    }

    /** Draws of the growth of the logarithm of prices in a year. */
    private static double[] perYear(Assumption growth, int count, long seed) {
        double middle = Math.log1p(growth.middle() / 100);
        return AmountLaw.normal(middle, growth.spread() / 100 / (1 + growth.middle() / 100)).draws(UncertainSum.normals(count, seed));
    }

    @Override
    public double[] cash() {
        return cash.clone();
    }

    @Override
    public double[] hours() {
        return hours.clone();
    }

    @Override
    public double[] value() {
        return value.clone();
    }

    @Override
    public double[] salvage() {
        return salvage.clone();
    }

    /**
     * The redo cost with own hours at the stated rate.
     *
     * @return draws in the base currency
     */
    public double[] withHours() {
        return DrawFigures.minus(cash, DrawFigures.times(hours, -rate));
    }

    /**
     * The upper end of the sum to insure: redo cost with hours less what would be kept.
     *
     * @return draws in the base currency; nothing when the car is sold
     */
    public Optional<double[]> upperEnd() {
        return sale.isPresent() ? Optional.empty() : Optional.of(DrawFigures.minus(withHours(), salvage));
    }

    /**
     * The redo cost and the two ends of the sum to insure; when the car is sold what came in for it, and no such sum.
     *
     * @return two tables, or one when it is sold
     */
    public List<Table> tables() {
        Table.Builder redo = DrawFigures.ranged("What it would cost to do it again at the prices of " + on + ", " + currency,
                currency);
        DrawFigures.row(redo, "in cash: cars, parts, work, less parts sold", cash);
        DrawFigures.row(redo, "with own hours at " + Cell.format(rate, 2) + " each", withHours());
        sale.ifPresent(s -> redo.note("The finished car is sold: " + Cell.amount(s.received()).shown() + " came in for it by " + s.on()
                + ", net of its fee where one is stated. There is nothing left of it to insure, and no sum to insure stands here."));
        return upperEnd().map(upper -> {
            DrawFigures.row(redo, "what would be kept after a write-off", salvage);
            return List.of(redo.build(), sumToInsure(upper));
        }).orElseGet(() -> List.of(redo.build()));
    }

    private Table sumToInsure(double[] upper) {
        Table.Builder ends = Table.titled("The sum to insure lies between two ends, " + currency).columns(Column.words("end"),
                Column.number("median", currency), Column.number("80 % from", currency), Column.number("80 % to", currency),
                Column.sentences("what it would pay for"));
        ends.note("Which sum to agree on is your choice and the insurer's; read in the policy whether it pays an agreed sum, the market"
                + " value or the least of several.");
        Range kept = Forecast.range(salvage, 0.80);
        ends.note("After a write-off an insurer may leave you the wreck and take its price off the settlement. Keeping it pays while it"
                + " costs less than what its parts would leave you: " + Cell.format(Quantiles.median(salvage), 0) + " by the middle (80 %"
                + " range " + Cell.format(kept.low(), 0) + " to " + Cell.format(kept.high(), 0) + "; salvage_share), your hours not"
                + " counted. At less than the low end it pays nine times in ten. Ask first what title it then has, and whether you may"
                + " strip it.");
        end(ends, "value of the finished car when sold", value, "another car of the same worth on the market, if there were one");
        end(ends, "redo cost with hours, less what is kept", upper, "doing the work again");
        return ends.build();
    }

    private static void end(Table.Builder table, String name, double[] draws, String pays) {
        table.row(Cell.words(name), Cell.number(Quantiles.median(draws), 0), Cell.number(Forecast.range(draws, 0.80).low(), 0),
                Cell.number(Forecast.range(draws, 0.80).high(), 0), Cell.words(pays));
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof RedoCost redo && currency.equals(redo.currency) && Arrays.equals(cash, redo.cash)
                && Arrays.equals(hours, redo.hours) && Double.compare(rate, redo.rate) == 0 && Arrays.equals(value, redo.value)
                && Arrays.equals(salvage, redo.salvage) && evidence.equals(redo.evidence) && sale.equals(redo.sale);
    }

    @Override
    public int hashCode() {
        return Arrays.hashCode(cash) * 31 + Arrays.hashCode(value);
    }

    /** What it would cost in cash. */
    @Override
    public String toString() {
        return "to do it again " + currency + " " + DrawFigures.withRange(cash);
    }
}
