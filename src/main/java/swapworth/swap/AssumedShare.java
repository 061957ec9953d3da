package swapworth.swap;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
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

    static AssumedShare of(double[] quantity, Map<String, double[]> sources, Situation s, Map<Subject, double[]> market,
            Map<Subject, double[]> alike) {
        double variance = Draws.covariance(quantity, quantity);
        Map<String, Double> parts = new LinkedHashMap<>();
        sources.forEach((name, drawn) -> {
            double own = Draws.covariance(drawn, drawn);
            double both = Draws.covariance(quantity, drawn);
            parts.put(s.assumption(name).words(), own > 0 && variance > 0 ? both * both / own / variance : 0);
        });
        // Swaps seen of this pair count together: each for itself would be followed by chance where there are many.
        List<Map<Subject, double[]>> groups = new ArrayList<>();
        market.forEach((subject, level) -> groups.add(Map.of(subject, level)));
        if (!alike.isEmpty()) {
            groups.add(alike);
        }
        double[][] logs = groups.stream().map(AssumedShare::meanLog).toArray(double[][]::new);
        double[] weights = Draws.regression(quantity, logs);
        Map<Subject, Double> sum = new LinkedHashMap<>();
        double[] followed = new double[quantity.length];
        for (int k = 0; k < weights.length; k++) {
            double weight = weights[k];
            followed = Situation.combined((whole, log) -> whole + weight * log, followed, logs[k]);
            Map<Subject, double[]> group = groups.get(k);
            group.keySet().forEach(subject -> sum.merge(subject, weight / group.size(), Double::sum));
        }
        double ofMarket = variance > 0 ? Draws.covariance(followed, followed) / variance : 0;
        s.model.heldBy(sum).forEach((assumption, share) -> parts.merge(assumption, ofMarket * share, Double::sum));
        return new AssumedShare(parts);
    }

    private static double[] meanLog(Map<Subject, double[]> levels) {
        double[] mean = new double[levels.values().iterator().next().length];
        for (double[] level : levels.values()) {
            mean = Situation.combined((sum, amount) -> sum + StrictMath.log(amount) / levels.size(), mean, level);
        }
        return mean;
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
