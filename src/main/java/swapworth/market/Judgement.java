package swapworth.market;

import static java.util.Objects.requireNonNull;

import java.util.List;
import swapworth.listing.Listing;

/**
 * How a listing's price stands against what such a car is predicted to cost by all other cars: its own car was left out.
 *
 * @param listing the listing
 * @param car the name of its car
 * @param valuation the value without its own car, or why there is none
 * @param position where the price stands against the 80 % range
 * @param gap price less fair value, in the base currency; NaN where there is no value
 * @param gapPercent the gap in per cent of the fair value; NaN where there is no value
 * @param percentile the share of such cars predicted to cost less, in per cent; NaN where there is no value
 * @param remarks what to look at: facts missing, odd figures, reasons to be careful
 */
public record Judgement(Listing listing, String car, Valuation valuation, Position position, double gap, double gapPercent,
        double percentile, List<String> remarks) {

    /** Copies the remarks in and checks that nothing is missing. */
    public Judgement {
        requireNonNull(listing, "listing");
        requireNonNull(car, "car");
        requireNonNull(valuation, "valuation");
        requireNonNull(position, "position");
        remarks = List.copyOf(remarks);
    }

    /**
     * Whether the price lies so far from its value that a typing error is likelier than a bargain.
     *
     * @return false where there is no value
     */
    public boolean looksMistyped() {
        return valuation instanceof FairValue value && !Flags.nearItsValue(listing.price().amount(), value);
    }

    /** The same without the listing. */
    Standing standing() {
        return new Standing(valuation, position, gap, gapPercent, percentile, remarks);
    }
}
