package swapworth.donor;

import static java.util.Objects.requireNonNull;

import java.math.BigDecimal;

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
}
