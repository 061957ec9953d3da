package swapworth.donor;

import static java.util.Objects.requireNonNull;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.TreeSet;
import java.util.function.Function;

/**
 * The highest bid whose landed cost does not pass a target: max { b : L(b) &lt;= target }, by search over the bids that can be made.
 * L jumps where a fee table steps, so it is searched between the steps and never by dividing.
 *
 * @param target the most to be paid in all
 * @param bid the highest bid
 * @param landed what it costs in the yard
 * @param next the next bid that could be made
 * @param nextLanded what that one costs
 * @param steps the nearest steps of the fees, below and above
 */
public record HighestBid(BigDecimal target, BigDecimal bid, BigDecimal landed, BigDecimal next, BigDecimal nextLanded, List<Step> steps)
        implements BidAnswer {

    /**
     * A place where the landed cost jumps.
     *
     * @param before the last bid below the step
     * @param landedBefore what it costs in the yard
     * @param at the first bid on the step
     * @param landedAt what that one costs
     */
    public record Step(BigDecimal before, BigDecimal landedBefore, BigDecimal at, BigDecimal landedAt) {

        /**
         * The step in words.
         *
         * @return a sentence without its full stop
         */
        public String sentence() {
            return "from a bid of " + Cents.text(before) + " to one of " + Cents.text(at) + " the landed cost goes from "
                    + Cents.exact(landedBefore) + " to " + Cents.exact(landedAt);
        }
    }

    /**
     * Whether a step lies so near that another bid might be made for it: within a fifth of the bid.
     *
     * @param step one of the steps
     * @return false for those too far to matter
     */
    public boolean isNear(Step step) {
        return step.at.subtract(bid).abs().multiply(BigDecimal.valueOf(5)).compareTo(bid) <= 0;
    }

    /** Copies the list in. */
    public HighestBid {
        requireNonNull(target, "target");
        requireNonNull(bid, "bid");
        requireNonNull(landed, "landed");
        requireNonNull(next, "next");
        requireNonNull(nextLanded, "nextLanded");
        steps = List.copyOf(steps);
    }

    @Override
    public <T> T match(Function<HighestBid, T> bid, Function<NoBid, T> none) {
        return bid.apply(this);
    }

    /**
     * The highest bid.
     *
     * @param schedule the fee tables, with the increments of bids where there are any (else bids rise by 1)
     * @param purchase the car; its bid does not matter
     * @param target the most to be paid in all
     * @return the bid, or why there is none
     */
    public static BidAnswer of(FeeSchedule schedule, Purchase purchase, BigDecimal target) {
        if (target.signum() <= 0) {
            return new NoBid(target, "the most to be paid must be above 0, not " + target.toPlainString());
        }
        return new Search(schedule, purchase, target).answer();
    }

    private static final class Search {
        private final FeeSchedule schedule;
        private final Purchase purchase;
        private final BigDecimal target;
        private final BidLadder ladder;

        Search(FeeSchedule schedule, Purchase purchase, BigDecimal target) {
            this.schedule = schedule;
            this.purchase = purchase.at(purchase.bid());
            this.target = target;
            this.ladder = BidLadder.of(schedule.increments());
        }

        private LandedCost landed(long rung) {
            return LandedCost.of(schedule, purchase.at(ladder.bid(rung)));
        }

        private boolean fits(long rung) {
            LandedCost cost = landed(rung);
            return cost.whole() && cost.total().compareTo(target) <= 0;
        }

        BidAnswer answer() {
            // Fees are never below 0: no bid above the target can fit.
            long last = ladder.last(target);
            TreeSet<Long> starts = new TreeSet<>(List.of(1L));
            for (FeeTable table : schedule.tablesFor(purchase.car())) {
                if (table.measure == FeeTable.Measure.BID && table.notCharged(purchase).isEmpty()) {
                    for (FeeTable.Edge edge : table.edges()) {
                        starts.add(Math.max(1, ladder.first(edge)));
                    }
                }
            }
            long end = last;
            for (long start : starts.descendingSet()) {
                if (start > end) {
                    continue;
                }
                if (fits(start)) {
                    return found(lastThatFits(start, end), starts);
                }
                end = start - 1;
            }
            return new NoBid(target, reason(last));
        }

        /** Between two steps the landed cost only rises. */
        private long lastThatFits(long first, long last) {
            long low = first;
            long high = last;
            while (low < high) {
                long middle = low + (high - low + 1) / 2;
                if (fits(middle)) {
                    low = middle;
                } else {
                    high = middle - 1;
                }
            }
            return low;
        }

        private String reason(long last) {
            LandedCost least = landed(1);
            if (last < 1) {
                return "no bid that can be made is as low as " + Cents.text(target);
            }
            return least.whole() ? "even a bid of " + Cents.text(ladder.bid(1)) + " costs " + Cents.text(least.total())
                    + " in the yard, more than "
                    + Cents.text(target) : "the landed cost is not whole: " + String.join("; ", least.missing());
        }

        private HighestBid found(long rung, TreeSet<Long> starts) {
            List<Step> steps = new ArrayList<>();
            Optional.ofNullable(starts.floor(rung)).filter(s -> s > 1).ifPresent(s -> steps.add(step(s)));
            Optional.ofNullable(starts.higher(rung)).ifPresent(s -> steps.add(step(s)));
            LandedCost next = landed(rung + 1);
            return new HighestBid(target, ladder.bid(rung), landed(rung).total(), ladder.bid(rung + 1), next.total(), steps);
        }

        private Step step(long start) {
            return new Step(ladder.bid(start - 1), landed(start - 1).total(), ladder.bid(start), landed(start).total());
        }
    }
}
