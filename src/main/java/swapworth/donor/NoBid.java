package swapworth.donor;

import static java.util.Objects.requireNonNull;

import java.math.BigDecimal;
import java.util.function.Function;
import swapworth.market.CannotTell;

/**
 * There is no bid within the target.
 *
 * @param target the most to be paid in all
 * @param reason why, in one sentence
 */
public record NoBid(BigDecimal target, String reason) implements BidAnswer {

    /** Checks that nothing is missing. */
    public NoBid {
        requireNonNull(target, "target");
        requireNonNull(reason, "reason");
    }

    @Override
    public <T> T match(Function<HighestBid, T> bid, Function<NoBid, T> none) {
        return none.apply(this);
    }

    /**
     * The reason as one of the house.
     *
     * @return why there is no bid, and what would help
     */
    public CannotTell cannotTell() {
        return CannotTell.without(reason, "a higher target, or a landed cost that lacks no line");
    }
}
