package swapworth.market;

import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import swapworth.assumptions.Assumptions;
import swapworth.listing.Facts;
import swapworth.statistics.ErrorLaw;
import swapworth.statistics.ErrorTail;
import swapworth.statistics.RangeStretch;

/**
 * By how much ranges are to be stretched so that they hold what they promise: those of crashed, branded and dead cars, whose prices scatter
 * otherwise, by themselves; and how heavy the tails of single prices are, without which a range that holds eight prices in ten need not
 * hold nineteen in twenty.
 *
 * @param tail how heavy the tails are
 * @param sound of all other cars
 * @param troubled of these
 * @param lines by how much more those of a line; empty where the scatter of lines is in the fit
 */
record Stretches(ErrorTail tail, RangeStretch sound, RangeStretch troubled, Map<String, Double> lines) {
    /** Left-out residuals of so many cars of a line are enough: its ranges then hold their share to within 3 % of it or so. */
    private static final int MOST_OF_LINE = 500;
    /** So many are where there are few lines, so many crashed cars, and so many prices for the tails. */
    private static final int MOST = 2000;

    /**
     * As cars say that are left out.
     *
     * @param law the law of the errors in the fit
     */
    static Stretches by(LeftOut leftOut, ErrorLaw law, EvidenceList evidence, EncodedRows rows, Assumptions assumptions) {
        int[] first = evidence.firstPrices();
        Map<String, List<Integer>> lines = IntStream.of(first).filter(i -> !evidence.isTroubled(i)).boxed()
                .collect(Collectors.groupingBy(i -> evidence.subject(i).facts().vehicle(), TreeMap::new, Collectors.toList()));
        int ofLine = Math.max(MOST_OF_LINE, MOST / Math.max(1, lines.size()));
        int[] sound = lines.values().stream().flatMapToInt(line -> some(line.stream().mapToInt(i -> i).toArray(), ofLine)).toArray();
        int[] troubled = some(IntStream.of(first).filter(evidence::isTroubled).toArray(), MOST).toArray();
        List<Facts> cars = Arrays.stream(sound).mapToObj(i -> evidence.subject(i).facts()).toList();
        double[] z = leftOut.deviates(rows, sound);
        double[] zOfTroubled = leftOut.deviates(rows, troubled);
        Stretches asFitted = of(new ErrorTail(law.degreesOfFreedom(), 0), cars, z, zOfTroubled, evidence, assumptions);
        // That one line scatters more than another, or all more than the fit has it, is no tail.
        ErrorTail tail = ErrorTail.of(law, some(IntStream.range(0, z.length).toArray(), MOST)
                .mapToDouble(k -> z[k] / asFitted.of(cars.get(k))).toArray());
        if (tail.degreesOfFreedom() == law.degreesOfFreedom()) {
            return new Stretches(tail, asFitted.sound, asFitted.troubled, asFitted.lines);
        }
        LeftOut tailed = leftOut.withTail(tail);
        return of(tail, cars, tailed.deviates(rows, sound), tailed.deviates(rows, troubled), evidence, assumptions);
    }

    private static Stretches of(ErrorTail tail, List<Facts> cars, double[] z, double[] zOfTroubled, EvidenceList evidence,
            Assumptions assumptions) {
        RangeStretch ofSound = RangeStretch.of(z);
        if (PriceModel.isScatterLearned(evidence.size())) {
            return new Stretches(tail, ofSound, RangeStretch.of(zOfTroubled), Map.of());
        }
        // The fit has not learned how crashed ones and lines scatter: the ranges do. At the least crashed ones do like others.
        RangeStretch ofTroubled = RangeStretch.of(assumptions.logSpread("scatter_of_troubled"),
                Math.min(1, Math.exp(-assumptions.logMiddle("scatter_of_troubled"))), zOfTroubled);
        double[] beyond = Arrays.stream(z).map(deviate -> deviate / ofSound.factor()).toArray();
        return new Stretches(tail, ofSound, ofTroubled, Scatter.ofLines(cars, beyond, Map.of(), assumptions));
    }

    /** Of many some, evenly taken, which stand for all. */
    private static IntStream some(int[] of, int most) {
        int count = Math.min(most, of.length);
        return IntStream.range(0, count).map(k -> of[(int) ((long) k * of.length / count)]);
    }

    double of(Facts car) {
        return (car.isTroubled() ? troubled : sound).factor() * lines.getOrDefault(car.vehicle(), 1.0);
    }
}
