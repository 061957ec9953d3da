package swapworth.donor;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import swapworth.listing.CandidateCar;
import swapworth.table.Cell;
import swapworth.table.Column;
import swapworth.table.Table;

/**
 * The landed costs of the cars in play, and the highest bid for each where a target is stated.
 *
 * @param costs one for each car that has a price, in the order of the file
 * @param bids the highest bids for the target, one for each cost; empty without a target
 * @param unpriced the cars without a price or a planned bid
 */
public record Landed(List<LandedCost> costs, List<BidAnswer> bids, List<String> unpriced) {

    /** Copies the lists in. */
    public Landed {
        costs = List.copyOf(costs);
        bids = List.copyOf(bids);
        unpriced = List.copyOf(unpriced);
    }

    /**
     * The landed costs of cars.
     *
     * @param cars the cars in play; a finished car and a factory equivalent are not bought and left out
     * @param schedule the fee tables
     * @param target the most to be paid in all for any one of them, where stated
     * @return their costs
     */
    public static Landed of(List<CandidateCar> cars, FeeSchedule schedule, Optional<BigDecimal> target) {
        List<LandedCost> costs = new ArrayList<>();
        List<BidAnswer> bids = new ArrayList<>();
        List<String> unpriced = new ArrayList<>();
        for (CandidateCar car : cars) {
            if (!bought(car)) {
                continue;
            }
            Optional<Purchase> purchase = Purchase.of(car, schedule.currency());
            purchase.ifPresentOrElse(p -> {
                costs.add(LandedCost.of(schedule, p));
                target.ifPresent(most -> bids.add(HighestBid.of(schedule, p, most)));
            }, () -> unpriced.add(car.name()));
        }
        return new Landed(costs, bids, unpriced);
    }

    static boolean bought(CandidateCar car) {
        return car.role() != CandidateCar.Role.FINISHED && car.role() != CandidateCar.Role.FACTORY_EQUIVALENT;
    }

    /**
     * What a reader looks at: the bids where a target is stated, then the cost of each car.
     *
     * @return tables
     */
    public List<Table> tables() {
        List<Table> tables = new ArrayList<>();
        if (!bids.isEmpty()) {
            tables.add(bidTable());
        }
        costs.forEach(cost -> tables.add(cost.table()));
        return tables;
    }

    private Table bidTable() {
        Table.Builder table = Table.titled("Highest bid within a target, " + costs.get(0).currency().getCurrencyCode())
                .columns(Column.words("car"), Column.number("target", ""), Column.number("highest bid", ""), Column.number("landed", ""),
                        Column.number("next bid", ""), Column.number("next landed", ""), Column.sentences("steps near it"));
        table.note("Found by search: the landed cost jumps where a fee table steps. The bid is the one before which to stop.");
        for (int i = 0; i < bids.size(); i++) {
            Cell car = Cell.words(costs.get(i).purchase().car());
            if (bids.get(i) instanceof HighestBid bid) {
                table.row(car, Cents.cell(bid.target()), Cents.cell(bid.bid()), Cents.cell(bid.landed()), Cents.cell(bid.next()),
                        Cents.cell(bid.nextLanded()), Cell.words(String.join("; ", bid.steps().stream().map(HighestBid.Step::sentence).toList())));
            } else if (bids.get(i) instanceof NoBid none) {
                table.row(car, Cell.BLANK, Cell.words("none"), Cell.BLANK, Cell.BLANK, Cell.BLANK, Cell.words(none.reason()));
            }
        }
        return table.build();
    }

    /**
     * Every line of every cost: for machines.
     *
     * @return the columns car, line, kind, amount, how
     */
    public Table lines() {
        Table.Builder table = Table.titled("Lines of the landed costs").columns(Column.words("car"), Column.words("line"), Column.words("kind"),
                Column.number("amount", ""), Column.words("how"));
        for (LandedCost cost : costs) {
            for (LandedCost.Line line : cost.lines()) {
                table.row(Cell.words(cost.purchase().car()), Cell.words(line.name()), Cell.words(line.kind().words()),
                        Cents.cell(line.amount()), Cell.words(line.how()));
            }
            table.row(Cell.words(cost.purchase().car()), Cell.words("landed cost"), Cell.BLANK, Cents.cell(cost.total()),
                    Cell.words(String.join("; ", cost.missing())));
        }
        return table.build();
    }
}
