package swapworth.donor;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.stream.Collectors;
import swapworth.statistics.Quantiles;
import swapworth.table.Cell;
import swapworth.table.Column;
import swapworth.table.Table;

/**
 * Cars for one purpose side by side, by net cost after recovery. Differences are taken draw by draw, since all prices share one market:
 * ranges of single cars that overlap say little. Where the 80 % range of a difference holds nought there is no real difference. A car that
 * partout.csv does not name, or none of whose parts for sale has a price, has no net cost: its left-over parts are not counted, and it is
 * not held against those whose parts are.
 *
 * @param purpose what they are for
 * @param options the cars, those whose parts are counted first, of these those whose landed cost is whole, in each group the one with the
 *     lowest mean net cost first
 */
public record Choice(String purpose, List<CarOption> options) {

    /** From so many more parts, and twice as many, on the numbers behind two net costs are told. */
    private static final int PARTS_APART = 2;
    private static final String NOT_COUNTED = "left-over parts not counted";
    private static final String NOT_WHOLE = "landed cost not whole";

    /** Copies the list in, in its order. */
    public Choice {
        List<CarOption> sorted = new ArrayList<>(options);
        sorted.sort(Comparator.comparing(CarOption::parts).thenComparing(CarOption::whole).reversed()
                .thenComparingDouble(CarOption::meanNetCost));
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
     * How many cars are held against each other: those of which as much is counted as of the first, parts and fees.
     *
     * @return so many stand first in {@link #options()}
     */
    public int compared() {
        return (int) options.stream().filter(o -> o.parts() == options.get(0).parts() && o.whole() == options.get(0).whole()).count();
    }

    /**
     * How a car stands to the first.
     *
     * @param k its place in {@link #options()}, from 1 on and below {@link #compared()}
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
     * Whether a car cannot be told from the first by money.
     *
     * @param k its place in {@link #options()}, from 1 on
     * @return whether the 80 % range of the difference holds nought; not where the two cannot be compared
     */
    public boolean noRealDifference(int k) {
        if (k >= compared()) {
            return false;
        }
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
                Column.number("landed cost", ""), Column.number("parts bring", ""), Column.number("net cost", ""),
                Column.words("80 % range"),
                Column.words("against the first"), Column.number("hours", "h"), Column.number("gear as used parts", ""),
                Column.number("engine and gearbox good", "%"), Column.sentences("caps the finished car"));
        table.note(options.size() + (options.size() == 1 ? " car" : " cars")
                + ". Net cost is the landed cost less what the left-over parts bring; hours are not priced.");
        notCounted().forEach(table::note);
        for (int k = 0; k < options.size(); k++) {
            CarOption o = options.get(k);
            double[] gear = o.gear().draws();
            table.row(Cell.words(o.car().name() + lacks(o)), Cell.words(o.car().facts().runs().words()), Cell.number(o.landed(), 0),
                    o.parts() ? Cell.number(mean(o.recovery()), 0) : Cell.words(unpriced(o) ? "no part has a price" : "not in partout.csv"),
                    o.parts() ? Cell.number(o.meanNetCost(), 0) : Cell.BLANK, o.parts() ? Cell.words(range(o.netCost())) : Cell.BLANK,
                    Cell.words(against(k)), o.parts() ? Cell.number(mean(o.hours()), 0) : Cell.BLANK,
                    gear.length == 0 ? Cell.BLANK : Cell.number(Quantiles.of(gear, 0.5), 0),
                    gear.length == 0 ? Cell.BLANK : Cell.number(100 * o.gearGood(), 0),
                    Cell.words(o.givesGear() ? "" : String.join("; ", o.caps())));
        }
        return table.build();
    }

    /** What its figures lack, to stand behind the name of a car; empty where they lack nothing. */
    private static String lacks(CarOption o) {
        List<String> lacks = new ArrayList<>();
        if (!o.whole()) {
            lacks.add(NOT_WHOLE);
        }
        if (o.parts() && o.partsUnpriced() > 0) {
            int all = o.partsOnSale() + o.partsUnpriced();
            lacks.add(o.partsUnpriced() + " of " + all + " parts " + (o.partsUnpriced() == 1 ? "has" : "have") + " no price");
        }
        return lacks.isEmpty() ? "" : " (" + String.join("; ", lacks) + ")";
    }

    private static boolean unpriced(CarOption o) {
        return !o.parts() && o.partsUnpriced() > 0;
    }

    private static String names(List<CarOption> cars) {
        return cars.stream().map(o -> "'" + o.car().name() + "'").collect(Collectors.joining(", "));
    }

    /** What keeps the net costs from being like for like. */
    private List<String> notCounted() {
        List<CarOption> counted = options.stream().filter(CarOption::parts).toList();
        List<CarOption> unpriced = options.stream().filter(Choice::unpriced).toList();
        List<CarOption> unnamed = options.stream().filter(o -> !o.parts() && !unpriced(o)).toList();
        List<String> notes = new ArrayList<>();
        if (unnamed.size() == options.size()) {
            notes.add(unnamed.size() == 1 ? "partout.csv does not name its parts." : "partout.csv names the parts of none of them.");
        } else if (!unnamed.isEmpty()) {
            notes.add("partout.csv does not name the parts of " + names(unnamed) + ". A row for each of them makes them comparable.");
        }
        if (!unpriced.isEmpty()) {
            notes.add("None of the parts for sale of " + names(unpriced) + " has a price: no offer in parts.csv names them, and "
                    + "partout.csv states none. Offers make them comparable.");
        }
        if (counted.isEmpty()) {
            notes.add("What is left over is not counted" + (options.size() == 1 ? "." : ", and they stand by landed cost alone."));
        } else if (counted.size() < options.size()) {
            notes.add("What the left-over parts of these would bring is not counted. They stand last, and are not held against those whose"
                    + " parts are counted.");
        }
        List<CarOption> without = options.stream().filter(o -> !o.whole()).toList();
        if (!without.isEmpty() && without.size() < options.size()) {
            notes.add("The landed cost of " + names(without) + " is not whole: a line is missing, so that it looks lower than it is."
                    + " It is not held against one that is.");
        }
        int fewest = counted.stream().mapToInt(CarOption::partsOnSale).min().orElse(0);
        int most = counted.stream().mapToInt(CarOption::partsOnSale).max().orElse(0);
        if (most - fewest >= PARTS_APART && most >= 2 * fewest) {
            notes.add("They do not count the same number of parts with a price: " + counted.stream()
                    .map(o -> "'" + o.car().name() + "' " + o.partsOnSale()).collect(Collectors.joining(", "))
                    + ". Where parts of a car are not yet named or priced, its net cost is too high.");
        }
        return notes;
    }

    private String against(int k) {
        CarOption o = options.get(k);
        if (k >= compared()) {
            return o.parts() == options.get(0).parts() ? NOT_WHOLE : NOT_COUNTED;
        }
        if (!o.parts()) {
            double more = o.landed() - options.get(0).landed();
            return k == 0 ? NOT_COUNTED
                    : (more > 0 ? "dearer by " + Cell.format(more, 0) + " at the door" : "the same at the door") + "; " + NOT_COUNTED;
        }
        return k == 0 ? "" : noRealDifference(k) ? "no real difference (" + range(dearerBy(k)) + ")" : "dearer by " + range(dearerBy(k));
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
