package swapworth.market;

import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.stream.IntStream;
import swapworth.assumptions.Assumptions;
import swapworth.listing.Facts;
import swapworth.statistics.RangeStretch;

/**
 * By how much ranges are to be stretched so that they hold what they promise: those of crashed, branded and dead cars, whose prices scatter
 * otherwise, by themselves.
 *
 * @param sound of all other cars
 * @param troubled of these
 * @param lines by how much more those of a line; empty where the scatter of lines is in the fit
 */
record Stretches(RangeStretch sound, RangeStretch troubled, Map<String, Double> lines) {
    /** Left-out residuals of about this many cars are enough. */
    private static final int MOST = 1000;

    /** As cars say that are left out. */
    static Stretches by(LeftOut leftOut, EvidenceList evidence, EncodedRows rows, Assumptions assumptions) {
        int[] first = evidence.firstPrices();
        int[] sound = some(IntStream.of(first).filter(i -> !evidence.isTroubled(i)).toArray());
        int[] troubled = some(IntStream.of(first).filter(evidence::isTroubled).toArray());
        double[] z = leftOut.deviates(rows, sound);
        double[] zOfTroubled = leftOut.deviates(rows, troubled);
        RangeStretch ofSound = RangeStretch.of(z);
        if (PriceModel.isScatterLearned(evidence.size())) {
            return new Stretches(ofSound, RangeStretch.of(zOfTroubled), Map.of());
        }
        // The fit has not learned how crashed ones and lines scatter: the ranges do. At the least crashed ones do like others.
        RangeStretch ofTroubled = RangeStretch.of(assumptions.logSpread("scatter_of_troubled"),
                Math.min(1, Math.exp(-assumptions.logMiddle("scatter_of_troubled"))), zOfTroubled);
        List<Facts> cars = Arrays.stream(sound).mapToObj(i -> evidence.subject(i).facts()).toList();
        double[] beyond = Arrays.stream(z).map(deviate -> deviate / ofSound.factor()).toArray();
        return new Stretches(ofSound, ofTroubled, Scatter.ofLines(cars, beyond, Map.of(), assumptions));
    }

    /** Of many cars some, evenly taken, which stand for all. */
    private static int[] some(int[] of) {
        int every = 1 + (of.length - 1) / MOST;
        return IntStream.range(0, of.length / every).map(k -> of[k * every]).toArray();
    }

    double of(Facts car) {
        return (car.isTroubled() ? troubled : sound).factor() * lines.getOrDefault(car.vehicle(), 1.0);
    }
}
