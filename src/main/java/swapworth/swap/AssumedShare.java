package swapworth.swap;

import java.util.Map;
import swapworth.assumptions.Assumptions;
import swapworth.market.FairValue.HeldBy;
import swapworth.statistics.Draws;

/**
 * How much of what is unsure about a quantity assumptions hold: of each assumption that was drawn for it the squared correlation with
 * the quantity (the share of its variance that goes with the assumption alone), and of the rest, which is the market's but for a part that
 * the rows of swaps hold, the share that the price model says its priors hold.
 *
 * @param share between 0 and 1
 * @param largest the assumption that holds most, in words
 */
record AssumedShare(double share, HeldBy largest) {

    static AssumedShare of(double[] quantity, Map<String, double[]> sources, Assumptions assumptions, double ofRows,
            double marketShare, HeldBy marketLargest) {
        double variance = Draws.covariance(quantity, quantity);
        double sum = 0;
        HeldBy largest = new HeldBy("none", 0);
        for (Map.Entry<String, double[]> source : sources.entrySet()) {
            double own = Draws.covariance(source.getValue(), source.getValue());
            double both = Draws.covariance(quantity, source.getValue());
            double part = own > 0 && variance > 0 ? both * both / own / variance : 0;
            sum += part;
            largest = part > largest.share() ? new HeldBy(assumptions.get(source.getKey()).words(), part) : largest;
        }
        double rest = Math.max(0, 1 - sum - ofRows);
        double ofMarket = rest * marketLargest.share();
        return new AssumedShare(Math.min(1, sum + rest * marketShare),
                ofMarket > largest.share() ? new HeldBy(marketLargest.assumption(), ofMarket) : largest);
    }
}
