package swapworth.donor;

import static java.util.Objects.requireNonNull;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.TreeSet;
import java.util.stream.Collectors;
import swapworth.statistics.Draws;
import swapworth.statistics.Quantiles;
import swapworth.table.Cell;
import swapworth.table.Column;
import swapworth.table.Table;

/**
 * Cars for one purpose side by side, by net cost after recovery; cars that give their gear by that with the gear that must be replaced, so
 * that a dead engine is not had for nothing. Differences are taken draw by draw, since all prices share one market:
 * ranges of single cars that overlap say little. Where the 80 % range of a difference holds nought there is no real difference. A car that
 * partout.csv does not name, or none of whose parts for sale has a price, has no net cost: its left-over parts are not counted, and it is
 * not held against those whose parts are; nor is a car of whose gear part is not priced against one of which all is.
 *
 * @param purpose what they are for
 * @param options the cars, those whose parts are counted first, of these those whose landed cost is whole, of these those whose gear is
 *     priced, in each group the one that costs least by the mean first
 */
public record Choice(String purpose, List<CarOption> options) {

    /** From so many more parts, and twice as many, on the numbers behind two net costs are told. */
    private static final int PARTS_APART = 2;
    private static final String NOT_COUNTED = "left-over parts not counted";
    private static final String NOT_WHOLE = "landed cost not whole";
    private static final String NO_GEAR = "gear to replace not counted";

    /** Copies the list in, in its order; a choice of no car is none. */
    public Choice {
        requireNonNull(purpose, "purpose");
        if (options.isEmpty()) {
            throw new IllegalArgumentException("a choice needs at least one car");
        }
        List<CarOption> sorted = new ArrayList<>(options);
        sorted.sort(Comparator.comparing(CarOption::parts).thenComparing(CarOption::whole)
                .thenComparing(CarOption::gearCounted).reversed().thenComparingDouble(CarOption::meanWithGear));
        options = List.copyOf(sorted);
    }

    /**
     * How many cars are held against each other: those of which as much is counted as of the first, parts, fees and gear.
     *
     * @return so many stand first in {@link #options()}
     */
    public int compared() {
        CarOption first = options.get(0);
        return (int) options.stream().filter(o -> o.parts() == first.parts() && o.whole() == first.whole()
                && o.gearCounted() == first.gearCounted()).count();
    }

    /**
     * How a car stands to the first.
     *
     * @param k its place in {@link #options()}, from 1 on and below {@link #compared()}
     * @return draws of its net cost, with gear to replace, less that of the first
     */
    public double[] dearerBy(int k) {
        double[] difference = options.get(k).withGear();
        double[] first = options.get(0).withGear();
        for (int i = 0; i < difference.length; i++) {
            difference[i] -= first[i];
        }
        return difference;
    }

    /**
     * Whether a car cannot be told from the first by money.
     *
     * @param k its place in {@link #options()}, from 1 on
     * @return whether the 80 % range of the difference holds nought, or lies below it where few dear draws make its mean; not where the
     *     two cannot be compared
     */
    public boolean noRealDifference(int k) {
        return k < compared() && Quantiles.of(dearerBy(k), 0.1) <= 0;
    }

    /**
     * The cars side by side.
     *
     * @param currency of all amounts
     * @return one row a car
     */
    public Table table(String currency) {
        boolean gear = options.stream().anyMatch(CarOption::givesGear);
        Column net = Column.number("net cost", "");
        // What decides stands first on a narrow screen: the net cost that the range and the order are those of.
        List<Column> columns = new ArrayList<>(List.of(Column.words("car"), Column.words("runs").behind(),
                Column.number("landed cost", "").behind(), Column.number("parts bring", "").behind(), gear ? net.behind() : net));
        if (gear) {
            columns.addAll(List.of(Column.number("engine and gearbox good", "%").behind(), Column.number("gear to replace", "").behind(),
                    Column.number("net cost with it", "")));
        }
        columns.addAll(List.of(Column.words("80 % range"), Column.words("against the first"), Column.number("hours", "h"),
                gear ? Column.number("gear as used parts, if good", "") : Column.sentences("stays with the finished car")));
        Table.Builder table = Table.titled(purpose + " side by side, " + currency).columns(columns.toArray(Column[]::new));
        table.note(options.size() + (options.size() == 1 ? " car" : " cars")
                + ". Net cost is the landed cost less what the left-over parts bring; hours are not priced.");
        if (gear) {
            table.note("Gear to replace is what another of each part that goes into the swap costs, as far run as those on offer, where"
                    + " the one in the car turns out bad or is not there, by the mean; the range and the order are those of the net cost"
                    + " with it.");
        }
        notCounted().forEach(table::note);
        for (int k = 0; k < options.size(); k++) {
            CarOption o = options.get(k);
            List<Cell> row = new ArrayList<>(List.of(Cell.words(o.car().name() + lacks(o)), Cell.words(o.car().facts().runs().words()),
                    Cell.number(o.landed(), 0),
                    o.parts() ? Cell.number(Draws.mean(o.recovery()), 0)
                            : Cell.words(unpriced(o) ? "no part has a price" : "not in partout.csv"),
                    o.parts() ? Cell.number(Draws.mean(o.netCost()), 0) : Cell.BLANK));
            double[] good = o.gear().draws();
            if (gear) {
                row.addAll(good.length == 0 ? List.of(Cell.BLANK, Cell.BLANK) : List.of(Cell.number(100 * o.gearGood(), 0),
                        Cell.number(Draws.mean(o.toReplace().draws()), 0)));
                row.add(o.parts() ? Cell.number(o.meanWithGear(), 0) : Cell.BLANK);
            }
            row.addAll(List.of(o.parts() ? Cell.words(range(o.withGear())) : Cell.BLANK, Cell.words(against(k)),
                    o.parts() ? Cell.number(Draws.mean(o.hours()), 0) : Cell.BLANK));
            row.add(!gear ? Cell.words(String.join("; ", o.caps())) : good.length == 0 ? Cell.BLANK
                    : Cell.number(Quantiles.of(good, 0.5), 0));
            table.row(row);
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
        if (o.parts() && !o.gearCounted()) {
            lacks.add(o.toReplace().unpriced().isEmpty() ? "its gear is not named" : NO_GEAR + ": no price of "
                    + String.join(", ", o.toReplace().unpriced()));
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
        List<String> notes = new ArrayList<>(partsNotCounted());
        List<CarOption> without = options.stream().filter(o -> !o.whole()).toList();
        if (!without.isEmpty() && without.size() < options.size()) {
            notes.add("The landed cost of " + names(without) + " is not whole: a line is missing, so that it looks lower than it is."
                    + " It is not held against one that is.");
        }
        notes.addAll(gearNotCounted());
        partsApart().ifPresent(notes::add);
        return notes;
    }

    private List<String> partsNotCounted() {
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
        return notes;
    }

    private List<String> gearNotCounted() {
        List<String> notes = new ArrayList<>();
        List<CarOption> gearless = options.stream().filter(o -> !o.gearCounted()).toList();
        if (!gearless.isEmpty()) {
            notes.add("What it would cost to replace the gear of " + names(gearless) + " where it turns out bad is not all counted: "
                    + "partout.csv does not say what goes into the swap, or no offer in parts.csv prices it."
                    + (gearless.size() < options.size() ? " They are not held against those whose gear is counted." : ""));
        }
        List<CarOption> gear = options.stream().filter(o -> o.givesGear() && o.gearCounted()).toList();
        TreeSet<String> given = new TreeSet<>();
        gear.forEach(o -> given.addAll(o.gear().parts()));
        for (CarOption o : gear) {
            List<String> less = given.stream().filter(part -> !o.gear().parts().contains(part)).toList();
            if (!less.isEmpty()) {
                notes.add("Of '" + o.car().name() + "' these do not go into the swap, as they do of another: " + String.join(", ", less)
                        + ". Others in their place are not in its cost.");
            }
        }
        return notes;
    }

    /** Where far more parts stand behind one net cost than behind another. */
    private Optional<String> partsApart() {
        List<CarOption> counted = options.stream().filter(CarOption::parts).toList();
        int fewest = counted.stream().mapToInt(CarOption::partsOnSale).min().orElse(0);
        int most = counted.stream().mapToInt(CarOption::partsOnSale).max().orElse(0);
        return most - fewest < PARTS_APART || most < 2 * fewest ? Optional.empty()
                : Optional.of("They do not count the same number of parts with a price: " + counted.stream()
                .map(o -> "'" + o.car().name() + "' " + o.partsOnSale()).collect(Collectors.joining(", "))
                + ". Where parts of a car are not yet named or priced, its net cost is too high.");
    }

    private String against(int k) {
        CarOption o = options.get(k);
        if (k >= compared()) {
            CarOption first = options.get(0);
            return o.parts() != first.parts() ? NOT_COUNTED : o.whole() != first.whole() ? NOT_WHOLE : NO_GEAR;
        }
        if (!o.parts()) {
            double more = o.meanWithGear() - options.get(0).meanWithGear();
            return k == 0 ? NOT_COUNTED : (more > 0 ? "dearer by " + Cell.format(more, 0) : "the same") + " at the door"
                    + (o.givesGear() && o.gearCounted() ? ", gear to replace added" : "") + "; " + NOT_COUNTED;
        }
        String by = range(dearerBy(k));
        return k == 0 ? "" : noRealDifference(k) ? "no real difference (" + by + "; dearer in " + dearerIn(k) + " % of draws)"
                : "dearer by " + by;
    }

    /**
     * How often a car costs more than the first.
     *
     * @param k its place in {@link #options()}, from 1 on and below {@link #compared()}
     * @return per cent of the states of the market
     */
    public long dearerIn(int k) {
        double[] more = dearerBy(k);
        return Math.round(100.0 * Arrays.stream(more).filter(d -> d > 0).count() / more.length);
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
