package swapworth.market;

import java.util.Optional;
import java.util.stream.IntStream;
import swapworth.assumptions.Assumptions;
import swapworth.listing.Mileage;
import swapworth.reading.DistanceUnit;
import swapworth.statistics.Mixture;
import swapworth.statistics.Normal;
import swapworth.statistics.Posterior;
import swapworth.table.Cell;

/**
 * Whether the price of a car steps down where its distance passes a round 10,000, beyond the smooth fall that the model has: buyers look at
 * the first figures of a distance. With a step t the price lies off the smooth fall by t (1/2 - f), where f is the part of the last 10,000
 * that is driven. So t is told by what each price lies off its value, r, its car left out:
 *
 * <pre>
 *   r = t x + e,   x = 1/2 - f,   e normal of the width that is predicted of such prices,   t normal as is assumed
 * </pre>
 */
record RoundDistances(EvidenceList evidence, EncodedRows encoded, LeftOut leftOut, Assumptions assumptions) {
    private static final double ROUND = 10_000;
    /** Each price is predicted by itself; so many, evenly taken of more, tell a step to half a per cent where they scatter by 15. */
    private static final int MOST = 10_000;

    /** The step at each round 10,000 of a unit, by the cars whose distance was written in it; empty where no price tells of it. */
    Optional<TermEffect> step(DistanceUnit unit) {
        int[] first = evidence.firstPrices();
        int count = Math.min(MOST, first.length);
        int[] prices = IntStream.range(0, count).map(k -> first[(int) ((long) k * first.length / count)])
                .filter(i -> isTold(unit, evidence.subject(i).facts().mileage())).toArray();
        double priorVariance = Math.pow(assumptions.logSpread("round_distance_step"), 2);
        double precision = 1 / priorVariance;
        double sum = assumptions.logMiddle("round_distance_step") * precision;
        for (int i : prices) {
            Encoded row = encoded.get(i);
            Posterior others = leftOut.without(evidence.car(i), i, Optional.of(row));
            Mixture predicted = others.predict(row.row(), row.inflation(), row.growth());
            double width = (predicted.quantile(0.9) - predicted.quantile(0.1)) / (2 * Normal.quantile(0.9));
            double x = (0.5 - partDriven(unit, evidence.subject(i).facts().mileage().orElseThrow())) / width;
            precision += x * x;
            sum += x * encoded.deviate(others, i);
        }
        double middle = sum / precision;
        double sd = 1 / Math.sqrt(precision);
        return prices.length == 0 ? Optional.empty() : Optional.of(new TermEffect("just past a round " + Cell.format(ROUND, 0) + " "
                + unit.symbol() + " against just before", "%", Figures.percent(middle), end(middle, sd, 0.1), end(middle, sd, 0.9),
                end(middle, sd, 0.025), end(middle, sd, 0.975), 1 / (precision * priorVariance), prices.length));
    }

    private static double end(double middle, double sd, double probability) {
        return Figures.percent(middle + sd * Normal.quantile(probability));
    }

    /**
     * A distance of whole ten thousands was rounded: the car may stand on either side. One that was written in another unit has its marks
     * elsewhere.
     */
    private static boolean isTold(DistanceUnit unit, Optional<Mileage> distance) {
        return distance.isPresent() && distance.get().unit() == unit && unit.fromMiles(distance.get().miles()) > ROUND / 2
                && partDriven(unit, distance.get()) != 0;
    }

    private static double partDriven(DistanceUnit unit, Mileage distance) {
        double driven = Math.rint(unit.fromMiles(distance.miles()));
        return driven / ROUND - Math.floor(driven / ROUND);
    }
}
