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
                Column.number("bought unseen, on average", ""), Column.words("80 % range unseen"),
                Column.number("looking costs less", "%"), Column.sentences("so"));
        table.note("Assumed, whoever sells: " + Cell.format(assumptions.get("not_as_described").middle(), 0) + " of 100 cars turn out worse"
                + " than described, and are then worth " + Cell.format(assumptions.get("misdescribed_by").middle(), 0) + " % less"
                + " (not_as_described, misdescribed_by, trip_cost): put what you have seen yourself into assumptions.csv. Own hours are not"
                + " in it.");
        table.note("For each car that you bring home you look at " + Cell.format(1 / (1 - Quantiles.median(chance)), 1) + " on average:"
                + " each of these trips is money spent, and only the last is in the landed cost, where fees.csv has it.");
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

    private static String advice(double lookingCostsLess) {
        if (lookingCostsLess >= LIKELY) {
            return "go and look";
        }
        return lookingCostsLess > 1 - LIKELY ? "a close call: ask for photographs first"
                : "ask for photographs and a film first: the way costs more than it is likely to save";
    }
}
