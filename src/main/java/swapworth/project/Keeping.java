package swapworth.project;

import java.time.YearMonth;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import swapworth.assumptions.Assumptions;
import swapworth.market.Range;
import swapworth.statistics.Quantiles;
import swapworth.table.Cell;
import swapworth.table.Column;
import swapworth.table.Table;

/**
 * What it costs a month to keep the finished car, and when its value must be found anew: by the same draws of its price in the months to
 * come as the exit of {@link NowOrLater}, which asks for a donor and a recipient besides.
 *
 * @param currency the base currency
 * @param months over how many months
 * @param loses m draws of what market and age take off it a month, in the base currency; below 0 where it gains
 * @param capital m draws of what the money in it costs a month, in the base currency
 * @param anew in how many months its value has moved by as much as {@code revalue_at}, by the middle; empty where it has not
 * @param on the month from which it is kept: that from which the months of its price count
 * @param percent by how much it may move, per cent
 */
public record Keeping(String currency, int months, double[] loses, double[] capital, Optional<Integer> anew, YearMonth on,
        double percent) {

    /** Copies the draws in and checks that they are as many, all of them finite numbers. */
    public Keeping {
        loses = loses.clone();
        capital = capital.clone();
        DrawFigures.asMany(loses.length, "what market and age take off it", loses);
        DrawFigures.asMany(loses.length, "what the money costs", capital);
    }

    /**
     * What keeping a car costs.
     *
     * @param currency the base currency
     * @param car the car, with how its price moves in the months to come, its ageing included
     * @param from the month from which these months count
     * @param assumptions what money costs, and how far a value may move
     * @param seed the seed of what money costs
     * @return nothing where no month to come is known
     */
    static Optional<Keeping> of(String currency, NowOrLater.Leg car, YearMonth from, Assumptions assumptions, long seed) {
        int months = car.factors().size();
        if (months == 0) {
            return Optional.empty();
        }
        double[] now = car.now();
        double[] loses = DrawFigures.times(DrawFigures.minus(now, car.after(months)), 1.0 / months);
        double[] rate = DrawFigures.costOfMoney(assumptions, now.length, seed);
        double[] capital = IntStream.range(0, now.length).mapToDouble(i -> now[i] * rate[i] / 1200).toArray();
        double percent = assumptions.get("revalue_at").middle();
        double middle = Quantiles.median(now);
        Optional<Integer> anew = IntStream.rangeClosed(1, months).boxed()
                .filter(h -> Math.abs(Quantiles.median(car.after(h)) / middle - 1) >= percent / 100).findFirst();
        return Optional.of(new Keeping(currency, months, loses, capital, anew, from, percent));
    }

    @Override
    public double[] loses() {
        return loses.clone();
    }

    @Override
    public double[] capital() {
        return capital.clone();
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof Keeping k && currency.equals(k.currency) && months == k.months && Arrays.equals(loses, k.loses)
                && Arrays.equals(capital, k.capital) && anew.equals(k.anew) && on.equals(k.on) && percent == k.percent;
    }

    @Override
    public int hashCode() {
        return Arrays.hashCode(loses);
    }

    /**
     * When its value must be found anew.
     *
     * @return a sentence
     */
    public String sentence() {
        String far = Cell.stated(percent).shown();
        return anew.map(h -> "By the outlook and by ageing its value moves by " + far + " % within " + h
                + (h == 1 ? " month" : " months") + ", by the middle: find it anew in " + on.plusMonths(h) + " (revalue_at)")
                .orElseGet(() -> "By the outlook and by ageing its value moves by less than " + far + " % within "
                + months + (months == 1 ? " month" : " months") + ", by the middle (revalue_at): find it anew in " + on.plusMonths(months)
                + " all the same") + ", and at once before a sum is agreed, after a crash, and when the market turns.";
    }

    /**
     * The figures of a month.
     *
     * @return what it loses, what the money in it costs, and both
     */
    public Table table() {
        Table.Builder table = Table.titled("What keeping the finished car costs a month, from " + on + " over " + months
                + (months == 1 ? " month" : " months") + ", by what it would be sold for, " + currency).columns(Column.words("figure"),
                Column.number("median", currency), Column.number("80 % from", currency), Column.number("80 % to", currency));
        table.note(sentence());
        table.note("The car is taken to stand still: what you drive meanwhile comes on top (mileage_slope, and the terms of the price"
                + " model). Insurance, room, tax and repairs are not in it either: only you know them.");
        List.of(row("what market and age take off it (below 0: it gains)", loses),
                row("what the money bound in it costs (capital_rate)", capital),
                row("both together", DrawFigures.plus(loses, capital))).forEach(table::row);
        return table.build();
    }

    private static List<Cell> row(String words, double[] draws) {
        Range near = Forecast.range(draws, 0.80);
        return List.of(Cell.words(words), Cell.number(Quantiles.median(draws), 0), Cell.number(near.low(), 0),
                Cell.number(near.high(), 0));
    }

    /** {@link #sentence()}. */
    @Override
    public String toString() {
        return sentence();
    }
}
