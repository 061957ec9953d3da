package swapworth.swap;

import java.util.LinkedHashMap;
import java.util.Map;
import swapworth.market.FairValue.HeldBy;
import swapworth.market.Subject;
import swapworth.statistics.Draws;

/**
 * How much of what is unsure about a quantity assumptions hold: of each assumption that was drawn for it the squared correlation with
 * the quantity (the share of its variance that goes with the assumption alone). Of the market's part, which is what the middle prices of
 * all cars that were asked for explain of it by least squares, the shares of that very sum of prices which the price model says its
 * priors hold. What is left is held by rows of swaps and of parts. To first order no part is more than the variance would fall by if
 * nothing were unsure about that assumption.
 *
 * @param parts between 0 and 1, by the assumption in words
 */
record AssumedShare(Map<String, Double> parts) {

    static AssumedShare of(double[] quantity, Map<String, double[]> sources, Situation s, Map<Subject, double[]> market) {
        double variance = Draws.covariance(quantity, quantity);
        Map<String, Double> parts = new LinkedHashMap<>();
        sources.forEach((name, drawn) -> {
            double own = Draws.covariance(drawn, drawn);
            double both = Draws.covariance(quantity, drawn);
            parts.put(s.assumption(name).words(), own > 0 && variance > 0 ? both * both / own / variance : 0);
        });
        double[][] logs = market.values().stream().map(level -> Situation.map(level, StrictMath::log)).toArray(double[][]::new);
        double[] weights = Draws.regression(quantity, logs);
        Map<Subject, Double> sum = new LinkedHashMap<>();
        double[] followed = new double[quantity.length];
        int k = 0;
        for (Subject subject : market.keySet()) {
            double weight = weights[k];
            followed = Situation.combined((whole, log) -> whole + weight * log, followed, logs[k++]);
            sum.put(subject, weight);
        }
        double ofMarket = variance > 0 ? Draws.covariance(followed, followed) / variance : 0;
        s.model.heldBy(sum).forEach((assumption, share) -> parts.merge(assumption, ofMarket * share, Double::sum));
        return new AssumedShare(parts);
    }

    /** All of them together, between 0 and 1. */
    double share() {
        return Math.min(1, parts.values().stream().mapToDouble(Double::doubleValue).sum());
    }

    /** The assumption that holds most. */
    HeldBy largest() {
        HeldBy largest = new HeldBy("none", 0);
        for (Map.Entry<String, Double> part : parts.entrySet()) {
            largest = part.getValue() > largest.share() ? new HeldBy(part.getKey(), part.getValue()) : largest;
        }
        return largest;
    }
}
