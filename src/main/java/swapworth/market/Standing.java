package swapworth.market;

import java.util.List;
import swapworth.listing.Listing;

/** How a price stands: a {@link Judgement} without the listing that it is about, which need not be made for it. */
record Standing(Valuation valuation, Position position, double gap, double gapPercent, double percentile, List<String> remarks) {

    /** A price that is not compared. */
    static Standing untold(Valuation valuation, List<String> remarks) {
        return new Standing(valuation, Position.CANNOT_TELL, Double.NaN, Double.NaN, Double.NaN, remarks);
    }

    /** The judgement on a listing of a car. */
    Judgement of(Listing listing, String car) {
        return new Judgement(listing, car, valuation, position, gap, gapPercent, percentile, remarks);
    }
}
