package swapworth.project;

import static java.util.Objects.requireNonNull;

import java.time.LocalDate;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import swapworth.statistics.Quantiles;
import swapworth.table.Cell;
import swapworth.table.Column;
import swapworth.table.Table;

/**
 * Whether to go on, on the day of the ledger: the value of the finished car less what it still costs to finish, against what stopping
 * brings, draw by draw. Money already spent stands nowhere.
 *
 * @param on the day
 * @param currency the base currency
 * @param finished draws of the value of the finished car
 * @param toFinish draws of what is still to be paid less what still comes in, tools that are kept left out
 * @param hoursToCome draws of own hours to come
 * @param rate the stated rate of an hour
 * @param exits the ways to stop
 */
public record FinishOrStop(LocalDate on, String currency, double[] finished, double[] toFinish, double[] hoursToCome, double rate,
        List<Exit> exits) {

    /**
     * A way to stop.
     *
     * @param name what is done, for instance {@code recipient sold as it stands, donor in parts}
     * @param brings draws of what it brings from this day on
     * @param how where the figure comes from
     */
    public record Exit(String name, double[] brings, String how) {

        /** Copies the draws in. */
        public Exit {
            requireNonNull(name, "name");
            requireNonNull(how, "how");
            brings = brings.clone();
        }

        @Override
        public double[] brings() {
            return brings.clone();
        }

        @Override
        public boolean equals(Object other) {
            return other instanceof Exit exit && name.equals(exit.name) && Arrays.equals(brings, exit.brings) && how.equals(exit.how);
        }

        @Override
        public int hashCode() {
            return name.hashCode() * 31 + Arrays.hashCode(brings);
        }

        /** What is done and what it brings. */
        @Override
        public String toString() {
            return name + ": brings " + DrawFigures.withRange(brings);
        }
    }

    /** Copies draws and list in and checks that the draws are as many. */
    public FinishOrStop {
        requireNonNull(on, "on");
        finished = finished.clone();
        toFinish = toFinish.clone();
        hoursToCome = hoursToCome.clone();
        exits = List.copyOf(exits);
        DrawFigures.asMany(finished.length, DrawFigures.VALUE, finished);
        DrawFigures.asMany(finished.length, "what it costs to finish", toFinish);
        DrawFigures.asMany(finished.length, "hours to come", hoursToCome);
        for (Exit exit : exits) {
            DrawFigures.asMany(finished.length, "stopping by '" + exit.name + "'", exit.brings);
        }
    }

    /**
     * Whether to go on.
     *
     * @param value draws of the value of the finished car
     * @param forecast what it still costs, as of the day of its ledger
     * @param exits the ways to stop, their draws in the order of those of the value
     * @return the comparison
     * @throws IllegalArgumentException if the draws are not as many
     */
    public static FinishOrStop of(double[] value, Forecast forecast, List<Exit> exits) {
        double[] hours = forecast.hours();
        double done = forecast.ledger().sums().hoursSoFar();
        for (int i = 0; i < hours.length; i++) {
            hours[i] -= done;
        }
        return new FinishOrStop(forecast.ledger().on(), forecast.ledger().currency().getCurrencyCode(), value,
                forecast.toFinish(), hours,
                forecast.options().assumptions().get("own_hour_rate").middle(), exits);
    }

    @Override
    public double[] finished() {
        return finished.clone();
    }

    @Override
    public double[] toFinish() {
        return toFinish.clone();
    }

    @Override
    public double[] hoursToCome() {
        return hoursToCome.clone();
    }

    /**
     * What finishing brings from this day on.
     *
     * @return draws in the base currency, own hours not counted
     */
    public double[] finishing() {
        return DrawFigures.minus(finished, toFinish);
    }

    /**
     * What finishing brings more than a way to stop.
     *
     * @param exit the way to stop
     * @return draws in the base currency, own hours not counted
     */
    public double[] gain(Exit exit) {
        return DrawFigures.minus(finishing(), exit.brings);
    }

    /**
     * The answer against the way to stop that brings most by the median.
     *
     * @return a sentence; empty where there is no way to stop
     */
    public String sentence() {
        return exits.stream().max(Comparator.comparingDouble(exit -> Quantiles.median(exit.brings))).map(exit -> {
            double[] gain = gain(exit);
            double median = Quantiles.median(gain);
            return "Finishing brings " + currency + " " + Cell.format(Math.abs(median), 0) + (median < 0 ? " less" : " more")
                    + " than stopping by '" + exit.name + "' (80 % range " + Cell.format(Forecast.range(gain, 0.80).low(), 0) + " to "
                    + Cell.format(Forecast.range(gain, 0.80).high(), 0) + ", below 0 where stopping brings more; as of " + on
                    + "): the chance that it brings more is " + Cell.chanceInWords(DrawFigures.chance(gain)) + ", with hours to"
                    + " come at " + currency + " " + Cell.format(rate, 2) + " each "
                    + Cell.chanceInWords(DrawFigures.chance(DrawFigures.minus(gain, DrawFigures.times(hoursToCome, rate)))) + ".";
        }).orElse("");
    }

    /**
     * The comparison in figures.
     *
     * @return what finishing and each way to stop bring, and the chance that finishing brings more
     */
    public List<Table> tables() {
        Table.Builder brings = DrawFigures.ranged("Finish or stop, " + currency + ", as of " + on, currency);
        brings.note("Money already spent is left out: it is gone either way. Hours to come: "
                + Cell.format(Quantiles.median(hoursToCome), 0) + " (median).");
        DrawFigures.row(brings, "value of the finished car when sold", finished);
        DrawFigures.row(brings, "less what it still costs to finish", toFinish);
        DrawFigures.row(brings, "finishing brings", finishing());
        for (Exit exit : exits) {
            DrawFigures.row(brings, "stopping: " + exit.name, exit.brings);
        }
        Table.Builder chances = Table.titled("Does finishing bring more?").columns(Column.words("against"),
                Column.number("gain by finishing", currency), Column.number("80 % from", currency), Column.number("80 % to", currency),
                Column.number("chance", "%"), Column.number("chance with hours", "%"), Column.number("an hour earns", currency),
                Column.sentences("where stopping's figure comes from"));
        chances.note("With hours: own hours to come at " + currency + " " + Cell.format(rate, 2) + " each.");
        double hours = Quantiles.median(hoursToCome);
        for (Exit exit : exits) {
            double[] gain = gain(exit);
            double[] less = DrawFigures.minus(gain, DrawFigures.times(hoursToCome, rate));
            chances.row(Cell.words(exit.name), Cell.number(Quantiles.median(gain), 0), Cell.number(Forecast.range(gain, 0.80).low(), 0),
                    Cell.number(Forecast.range(gain, 0.80).high(), 0), Cell.chance(DrawFigures.chance(gain)),
                    Cell.chance(DrawFigures.chance(less)), hours > 0
                    ? Cell.number(Quantiles.median(gain) / hours, 1) : Cell.BLANK,
                    Cell.words(exit.how));
        }
        return List.of(brings.build(), chances.build());
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof FinishOrStop choice && on.equals(choice.on) && currency.equals(choice.currency)
                && Arrays.equals(finished, choice.finished) && Arrays.equals(toFinish, choice.toFinish)
                && Arrays.equals(hoursToCome, choice.hoursToCome) && Double.compare(rate, choice.rate) == 0 && exits.equals(choice.exits);
    }

    @Override
    public int hashCode() {
        return Arrays.hashCode(finished) * 31 + Arrays.hashCode(toFinish);
    }

    /** What finishing brings from this day on. */
    @Override
    public String toString() {
        return "finishing brings " + currency + " " + DrawFigures.withRange(finishing()) + ", as of " + on;
    }
}
