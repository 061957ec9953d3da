package swapworth.donor;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** The bids that can be made, counted from 1: by steps of 1, or by the increments that an auction states for stretches of the bid. */
final class BidLadder {

    /** Bids by {@code step} on from the rung {@code from}, which has this number. */
    private record Stretch(BigDecimal from, BigDecimal step, long rung) {
    }

    private final List<Stretch> stretches = new ArrayList<>();

    private BidLadder() {
    }

    static BidLadder of(Optional<FeeTable> increments) {
        BidLadder ladder = new BidLadder();
        if (increments.isEmpty()) {
            ladder.stretches.add(new Stretch(BigDecimal.ZERO, BigDecimal.ONE, 0));
            return ladder;
        }
        BigDecimal from = BigDecimal.ZERO;
        long rung = 0;
        for (FeeTable.Tier tier : increments.get().tiers()) {
            BigDecimal start = tier.from().orElse(from).max(from);
            if (!ladder.stretches.isEmpty()) {
                Stretch before = ladder.stretches.get(ladder.stretches.size() - 1);
                // The stretch before goes on until this one begins.
                BigDecimal rungs = start.subtract(before.from).divide(before.step, 0, RoundingMode.CEILING);
                rung = before.rung + rungs.longValue();
                start = before.from.add(before.step.multiply(rungs));
            } else {
                // The first bid is the amount at which the steps begin, or one step where they begin at 0 or 1.
                start = start.compareTo(BigDecimal.ONE) <= 0 ? BigDecimal.ZERO : start.subtract(tier.flat());
            }
            ladder.stretches.add(new Stretch(start, tier.flat(), rung));
            from = start;
        }
        return ladder;
    }

    /** The bid of a rung, from 1 on; rung 0 is no bid. */
    BigDecimal bid(long rung) {
        Stretch found = stretches.get(0);
        for (Stretch s : stretches) {
            found = s.rung <= rung ? s : found;
        }
        return found.from.add(found.step.multiply(BigDecimal.valueOf(rung - found.rung)));
    }

    /** The first rung that passes an edge. */
    long first(FeeTable.Edge edge) {
        long rung = last(edge.at());
        while (!edge.passedBy(bid(rung))) {
            rung++;
        }
        return rung;
    }

    /** The last rung that does not pass an amount. */
    long last(BigDecimal amount) {
        Stretch found = stretches.get(0);
        for (Stretch s : stretches) {
            found = s.from.compareTo(amount) <= 0 ? s : found;
        }
        BigDecimal rungs = amount.subtract(found.from).divide(found.step, 0, RoundingMode.FLOOR);
        return found.rung + Math.max(0, rungs.longValue());
    }
}
