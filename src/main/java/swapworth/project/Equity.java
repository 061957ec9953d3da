package swapworth.project;

import static java.util.Objects.requireNonNull;

import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import swapworth.assumptions.Assumptions;
import swapworth.statistics.Quantiles;
import swapworth.table.Cell;
import swapworth.table.Table;

/**
 * What the finished car is worth less what is in it, draw by draw: draw i of the value and of the money belongs to one state of the
 * market. In cash: value less money in (paid less received, tools that are kept left out). After the cost of money: less simple interest
 * on what stands in it at the end of each month until it is done (assumption {@code capital_rate}), less the interest that the ledger
 * holds already. With hours: less own hours at a rate ({@code own_hour_rate}). The break-even rate is what an hour may cost before
 * nothing is left. When the car is sold, what came in for it stands in place of its value, and the cost of money ends with that month.
 *
 * @param currency the base currency
 * @param value draws of the value of the finished car; when it is sold what came in for it
 * @param moneyIn draws of the money in it at completion
 * @param capital draws of the cost of money
 * @param hours draws of own hours at completion
 * @param rate the stated rate of an hour
 * @param sale the sale of the finished car; empty where it is not done
 */
public record Equity(String currency, double[] value, double[] moneyIn, double[] capital, double[] hours, double rate,
        Optional<Ledger.CarSale> sale) {

    /** Copies the draws in and checks that they are as many. */
    public Equity {
        value = value.clone();
        moneyIn = moneyIn.clone();
        capital = capital.clone();
        hours = hours.clone();
        requireNonNull(sale, "sale");
        DrawFigures.asMany(value.length, DrawFigures.VALUE, value);
        DrawFigures.asMany(value.length, "the money in it", moneyIn);
        DrawFigures.asMany(value.length, "the cost of money", capital);
        DrawFigures.asMany(value.length, "own hours", hours);
    }

    /**
     * The equity of an undertaking.
     *
     * @param value draws of the value of the finished car, as many as those of the forecast; they do not count when it is sold
     * @param forecast what it will have cost
     * @return the equity, by the assumptions of the forecast
     * @throws IllegalArgumentException if there are more or fewer draws of the value than of the forecast, or one is no finite number
     */
    public static Equity of(double[] value, Forecast forecast) {
        Assumptions assumptions = forecast.options().assumptions();
        double[] perYear = DrawFigures.costOfMoney(assumptions, forecast.count(), forecast.options().seed());
        double[] capital = forecast.moneyMonths();
        double paid = 0;
        for (LedgerSums.Sum sum : forecast.ledger().sums().byCategory()) {
            paid += sum.name().equals(Category.INTEREST.words()) ? sum.atCompletion().doubleValue() : 0;
        }
        for (int i = 0; i < capital.length; i++) {
            capital[i] = Math.max(0, capital[i] * perYear[i] / 1200 - paid);
        }
        Optional<Ledger.CarSale> sale = forecast.ledger().carSold();
        double[] worth = value.clone();
        sale.ifPresent(s -> Arrays.fill(worth, s.received().doubleValue()));
        return new Equity(forecast.ledger().currency().getCurrencyCode(), worth, forecast.charged(), capital, forecast.hours(),
                assumptions.get("own_hour_rate").middle(), sale);
    }

    @Override
    public double[] value() {
        return value.clone();
    }

    @Override
    public double[] moneyIn() {
        return moneyIn.clone();
    }

    @Override
    public double[] capital() {
        return capital.clone();
    }

    @Override
    public double[] hours() {
        return hours.clone();
    }

    /**
     * Value less money in.
     *
     * @return draws in the base currency
     */
    public double[] inCash() {
        return DrawFigures.minus(value, moneyIn);
    }

    /**
     * Value less money in and the cost of money.
     *
     * @return draws in the base currency
     */
    public double[] afterCapital() {
        return DrawFigures.minus(inCash(), capital);
    }

    /**
     * Value less money in, the cost of money and own hours at the stated rate.
     *
     * @return draws in the base currency
     */
    public double[] withHours() {
        return DrawFigures.minus(afterCapital(), DrawFigures.times(hours, rate));
    }

    /**
     * What an hour may cost before nothing is left: below 0 where nothing is left anyway.
     *
     * @return draws in the base currency per hour; none where there are no hours
     */
    public double[] breakEvenRate() {
        double[] rates = afterCapital();
        for (int i = 0; i < rates.length; i++) {
            if (!(hours[i] > 0)) {
                return new double[0];
            }
            rates[i] /= hours[i];
        }
        return rates;
    }

    /**
     * The chance of being ahead in cash.
     *
     * @return from 0 to 1
     */
    public double chanceAhead() {
        return DrawFigures.chance(inCash());
    }

    /**
     * What is left in cash, the car being done and sold at its value, or as it was sold.
     *
     * @return a sentence
     */
    public String sentence() {
        return (sale.isPresent() ? "Left in cash, the car being sold: " : "Left in cash, done and sold at its value: ") + currency + " "
                + DrawFigures.withRange(inCash()) + ".";
    }

    /**
     * The chance that the money in it is not met by its value.
     *
     * @return in words without a full stop, in cash and after the cost of money
     */
    public String chanceOfLoss() {
        String afterCost = Cell.chanceInWords(1 - DrawFigures.chance(afterCapital())) + " after the cost of money";
        return isBooked() ? "In cash it brought " + booked() + "; the chance of a loss is " + afterCost
                : "The chance of a loss is " + Cell.chanceInWords(1 - chanceAhead()) + " in cash, " + afterCost;
    }

    /** Whether all money is in the books, so that what is left in cash is no matter of chance. */
    private boolean isBooked() {
        return sale.isPresent() && Arrays.stream(inCash()).distinct().count() == 1;
    }

    private String booked() {
        double left = inCash()[0];
        return (left < 0 ? "a loss of " : "a gain of ") + currency + " " + Cell.format(Math.abs(left), 0);
    }

    /**
     * How much of what is unsure about what is left in cash lies in the value of the car: the rest lies in the money.
     *
     * @return the covariance of value and equity over the variance of the equity; nought where nothing is unsure
     */
    public double shareOfValue() {
        double[] left = inCash();
        double meanLeft = 0;
        double meanValue = 0;
        for (int i = 0; i < left.length; i++) {
            meanLeft += left[i] / left.length;
            meanValue += value[i] / left.length;
        }
        double together = 0;
        double variance = 0;
        for (int i = 0; i < left.length; i++) {
            together += (left[i] - meanLeft) * (value[i] - meanValue);
            variance += (left[i] - meanLeft) * (left[i] - meanLeft);
        }
        return variance > 0 ? together / variance : 0;
    }

    /**
     * The equity in figures.
     *
     * @return a table with the chances in its notes, and one of the break-even rate where there are hours
     */
    public List<Table> tables() {
        Table.Builder table = DrawFigures.ranged("What is left: value less money in, " + currency, currency);
        table.note(Cell.format(value.length, 0) + " draws, each one state of the market for value and money alike.");
        table.note((isBooked() ? "In cash it brought " + booked() + ", as booked. Chance that something is left: after the cost of money "
                : "Chance that something is left: in cash " + Cell.chanceInWords(chanceAhead()) + ", after the cost of money ")
                + Cell.chanceInWords(DrawFigures.chance(afterCapital())) + ", with hours at " + currency + " " + Cell.format(rate, 2) + " "
                + Cell.chanceInWords(DrawFigures.chance(withHours())) + ".");
        DrawFigures.row(table, sale.map(s -> "came in for the finished car, " + s.on()).orElse("value of the finished car when sold"),
                value);
        DrawFigures.row(table, "money in it at completion", moneyIn);
        DrawFigures.row(table, "left in cash", inCash());
        DrawFigures.row(table, "cost of money until it is " + (sale.isPresent() ? "sold" : "done"), capital);
        DrawFigures.row(table, "left after the cost of money", afterCapital());
        double[] rates = breakEvenRate();
        if (rates.length == 0) {
            table.note("The ledger has no own hours: what an hour would bring cannot be told.");
            return List.of(table.build());
        }
        DrawFigures.row(table, "left with own hours at the stated rate", withHours());
        Table.Builder hour = DrawFigures.ranged("What an hour may cost before nothing is left, " + currency + " per hour", currency);
        hour.note("Own hours at completion: " + Cell.format(Quantiles.median(hours), 0) + " (median).");
        DrawFigures.row(hour, "break-even rate", rates);
        return List.of(table.build(), hour.build());
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof Equity equity && currency.equals(equity.currency) && Arrays.equals(value, equity.value)
                && Arrays.equals(moneyIn, equity.moneyIn) && Arrays.equals(capital, equity.capital) && Arrays.equals(hours, equity.hours)
                && Double.compare(rate, equity.rate) == 0 && sale.equals(equity.sale);
    }

    @Override
    public int hashCode() {
        return Arrays.hashCode(value) * 31 + Arrays.hashCode(moneyIn);
    }

    /** What is left in cash. */
    @Override
    public String toString() {
        return "left in cash " + currency + " " + DrawFigures.withRange(inCash());
    }
}
