package swapworth.donor;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import swapworth.statistics.Quantiles;
import swapworth.table.Cell;
import swapworth.table.Column;
import swapworth.table.Table;

/**
 * Cars for one purpose side by side, by net cost after recovery. Differences are taken draw by draw, since all prices share one market:
 * ranges of single cars that overlap say little. Where the 80 % range of a difference holds nought there is no real difference.
 *
 * @param purpose what they are for
 * @param options the cars, the one with the lowest mean net cost first
 */
public record Choice(String purpose, List<CarOption> options) {

    /** Copies the list in, in order of mean net cost. */
    public Choice {
        List<CarOption> sorted = new ArrayList<>(options);
        sorted.sort(Comparator.comparingDouble(CarOption::meanNetCost));
        options = List.copyOf(sorted);
    }

    static double mean(double[] values) {
        double sum = 0;
        for (double v : values) {
            sum += v / values.length;
        }
        return sum;
    }

    /**
     * How a car stands to the cheapest.
     *
     * @param k its place in {@link #options()}, from 1 on
     * @return draws of its net cost less that of the first
     */
    public double[] dearerBy(int k) {
        double[] difference = options.get(k).netCost();
        double[] first = options.get(0).netCost();
        for (int i = 0; i < difference.length; i++) {
            difference[i] -= first[i];
        }
        return difference;
    }

    /**
     * Whether a car cannot be told from the cheapest by money.
     *
     * @param k its place in {@link #options()}, from 1 on
     * @return whether the 80 % range of the difference holds nought
     */
    public boolean noRealDifference(int k) {
        double[] difference = dearerBy(k);
        return Quantiles.of(difference, 0.1) <= 0 && Quantiles.of(difference, 0.9) >= 0;
    }

    /**
     * The cars side by side.
     *
     * @param currency of all amounts
     * @return one row a car
     */
    public Table table(String currency) {
        Table.Builder table = Table.titled(purpose + " side by side, " + currency).columns(Column.words("car"), Column.words("runs"),
                Column.number("landed cost", ""), Column.number("parts bring", ""), Column.number("net cost", ""), Column.words("80 % range"),
                Column.words("against the first"), Column.number("hours", "h"), Column.number("gear as used parts", ""),
                Column.number("engine and gearbox good", "%"), Column.sentences("caps the finished car"));
        table.note(options.size() + " cars. Net cost is the landed cost less what the left-over parts bring; hours are not priced.");
        for (int k = 0; k < options.size(); k++) {
            CarOption o = options.get(k);
            double[] gear = o.gear().draws();
            table.row(Cell.words(o.car().name() + (o.whole() ? "" : " (landed cost not whole)")), Cell.words(o.car().facts().runs().words()),
                    Cell.number(o.landed(), 0), o.parts() ? Cell.number(mean(o.recovery()), 0) : Cell.words("not in partout.csv"),
                    Cell.number(o.meanNetCost(), 0), Cell.words(range(o.netCost())), Cell.words(k == 0 ? "" : against(k)), Cell.number(mean(o.hours()), 0),
                    gear.length == 0 ? Cell.BLANK : Cell.number(Quantiles.of(gear, 0.5), 0),
                    gear.length == 0 ? Cell.BLANK : Cell.number(100 * o.gearGood(), 0),
                    Cell.words(o.givesGear() ? "" : String.join("; ", o.caps())));
        }
        return table.build();
    }

    private String against(int k) {
        double[] difference = dearerBy(k);
        return noRealDifference(k) ? "no real difference (" + range(difference) + ")" : "dearer by " + range(difference);
    }

    /**
     * The 80 % range of amounts that are drawn.
     *
     * @param values draws, such as those of a net cost
     * @return for instance {@code 3,345 to 4,485}
     */
    public static String range(double[] values) {
        return Cell.format(Quantiles.of(values, 0.1), 0) + " to " + Cell.format(Quantiles.of(values, 0.9), 0);
    }
}
