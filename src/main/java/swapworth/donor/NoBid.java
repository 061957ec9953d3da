package swapworth.donor;

import static java.util.Objects.requireNonNull;

/**
 * There is no bid within the target.
 *
 * @param reason why, in one sentence
 */
public record NoBid(String reason) implements BidAnswer {

    /** Checks that nothing is missing. */
    public NoBid {
        requireNonNull(reason, "reason");
    }
}
