package swapworth.donor;

import java.util.Optional;
import java.util.stream.IntStream;
import swapworth.assumptions.Assumptions;
import swapworth.statistics.Quantiles;
import swapworth.table.Cell;
import swapworth.table.Column;
import swapworth.table.Table;

/**
 * Whether it pays to go and look at a car before it is paid: what the way there and back costs, against what it costs on average to buy
 * unseen a car that is not as described, draw by draw of what is assumed:
 *
 * <pre>
 *   way = 2 x miles x cost of a mile          unseen = price x chance x share that is lost
 * </pre>
 *
 * All of it is assumption but the distance and the price. Amounts are in the base currency.
 */
final class GoingToLook {
    private static final int DRAWS = 4000;
    private static final long SEED = 20_261_128;
    /** From this chance on that one costs more than the other, it is said to. */
    private static final double LIKELY = 0.8;

    private GoingToLook() {
    }

    /** One row a car; empty where of none the distance is known. */
    static Optional<Table> table(Landed landed, Assumptions assumptions) {
        AssumptionDraws drawn = new AssumptionDraws(assumptions, DRAWS, SEED);
        double[] chance = drawn.share("not_as_described");
        double[] share = drawn.share("misdescribed_by");
        double[] mile = drawn.size("trip_cost");
        Table.Builder table = Table.titled("Whether it is worth going to look before you pay, "
                + landed.currency().getCurrencyCode()).columns(
                Column.words("car"), Column.number("the way there and back", ""), Column.words("80 % range"),
                Column.number("lost unseen, on average", ""), Column.words("80 % range unseen"),
                Column.number("looking costs less", "%"), Column.sentences("so"));
        table.note("Assumed, whoever sells: " + stated(assumptions, "not_as_described") + " of 100 cars turn out worse than described, and"
                + " are then worth " + stated(assumptions, "misdescribed_by") + " % less; a mile of the way costs "
                + stated(assumptions, "trip_cost") + " (not_as_described, misdescribed_by, trip_cost): put what you have seen yourself into"
                + " assumptions.csv. Own hours are not in it.");
        table.note("The way is a trip of its own: where you would fetch the car on it, looking costs less than is shown. "
                + inVain(assumptions.get("not_as_described").middle() / 100) + " At an auction you also look at cars that others win.");
        for (LandedCost cost : landed.costs()) {
            cost.purchase().miles().ifPresent(miles -> {
                double bid = cost.purchase().bid().doubleValue();
                double[] way = IntStream.range(0, DRAWS).mapToDouble(i -> 2 * miles * mile[i]).toArray();
                double[] unseen = IntStream.range(0, DRAWS).mapToDouble(i -> bid * chance[i] * share[i]).toArray();
                double less = IntStream.range(0, DRAWS).filter(i -> way[i] < unseen[i]).count() / (double) DRAWS;
                table.row(Cell.words(cost.purchase().car()), Cell.number(Quantiles.median(way), 0), Cell.words(Choice.range(way)),
                        Cell.number(Quantiles.median(unseen), 0), Cell.words(Choice.range(unseen)), Cell.chance(less),
                        Cell.words(advice(less)));
            });
        }
        Table made = table.build();
        return made.rows().isEmpty() ? Optional.empty() : Optional.of(made);
    }

    private static String stated(Assumptions assumptions, String name) {
        return Cell.stated(assumptions.get(name).middle()).shown();
    }

    /** By how many trips a car is found, if each that is worse is left where it stands. */
    private static String inVain(double chance) {
        return chance >= 1 ? "If you leave the cars that are worse, you bring none home."
                : "If you leave the cars that are worse, you look at " + Cell.format(1 / (1 - chance), 1) + " for each that you bring home:"
                        + " the trips in vain are in no landed cost.";
    }

    private static String advice(double lookingCostsLess) {
        if (lookingCostsLess >= LIKELY) {
            return "go and look";
        }
        return lookingCostsLess > 1 - LIKELY ? "a close call: ask for photographs first"
                : "ask for photographs and a film first: the way costs more than it is likely to save";
    }
}
