package swapworth.market;

import java.util.Arrays;
import java.util.BitSet;
import java.util.List;
import java.util.function.ToDoubleFunction;
import java.util.stream.IntStream;
import swapworth.statistics.Bound;
import swapworth.statistics.Design;
import swapworth.statistics.Sample;

/**
 * The evidence in the numbers of the model, and the design that the model is fitted to: the same rows, but that a second price of a car
 * enters the design as its difference from the first. Up to {@value #KEPT} rows are kept as they are; of more the design alone is kept, and
 * a row is made from it whenever it is asked for.
 */
final class EncodedRows {
    private static final int KEPT = EvidenceList.KEPT;

    private final EvidenceList evidence;
    private final Encoder encoder;
    private final Encoded[] kept;
    private final Sample sample;
    /** The rows that are made anew from their subjects: differences, and those of which there is something to say. */
    private final BitSet apart = new BitSet();
    private final Design design;

    /**
     * The evidence in numbers.
     *
     * @param sameCar the error scale of a second price of a car about the first
     */
    EncodedRows(EvidenceList evidence, Encoder encoder, double sameCar) {
        this(evidence, encoder, sameCar, KEPT);
    }

    /** The same, keeping rows as they are up to a stated number of them. */
    EncodedRows(EvidenceList evidence, Encoder encoder, double sameCar, int most) {
        int n = evidence.size();
        this.evidence = evidence;
        this.encoder = encoder;
        this.kept = n <= most ? IntStream.range(0, n).parallel().mapToObj(this::encoded).toArray(Encoded[]::new) : new Encoded[0];
        double[] inflation = new double[n];
        double[] growth = new double[n];
        this.design = Design.of(encoder.columns(), n, i -> {
            Encoded own = i < kept.length ? kept[i] : encoded(i);
            inflation[i] = own.inflation();
            growth[i] = own.growth();
            return isDifference(i) ? own.row().plus(-1, (i < kept.length ? kept[i - 1] : encoded(i - 1)).row()) : own.row();
        }, encoder.sums());
        double[] y = evidence.logPrices();
        double[] known = new double[n];
        Bound[] bound = new Bound[n];
        for (int i = 0; i < n; i++) {
            bound[i] = evidence.bound(i);
            if (isDifference(i)) {
                y[i] -= evidence.logPrice(i - 1);
                known[i] = sameCar;
            }
            if (inflation[i] != 1 || isDifference(i)) {
                apart.set(i);
            }
        }
        this.sample = new Sample(y, bound, inflation, known, growth);
    }

    private Encoded encoded(int i) {
        return encoder.encode(i, evidence.subject(i));
    }

    /** Whether a row enters the design as its difference from the one before it: a second price of one car. */
    boolean isDifference(int i) {
        return evidence.isSecondPrice(i);
    }

    /** The number of rows. */
    int size() {
        return sample.size();
    }

    /** One row, no difference taken. */
    Encoded get(int i) {
        if (i < kept.length) {
            return kept[i];
        }
        return apart.get(i) ? encoded(i)
                : new Encoded(design.row(i), encoder.termOfColumn(), inflation(i), growth(i), List.of());
    }

    /** Some rows. */
    Encoded[] some(int[] rows) {
        return Arrays.stream(rows).mapToObj(this::get).toArray(Encoded[]::new);
    }

    /** A number of each row, found for several rows at a time. */
    double[] each(ToDoubleFunction<Encoded> number) {
        return IntStream.range(0, size()).parallel().mapToDouble(i -> number.applyAsDouble(get(i))).toArray();
    }

    double inflation(int i) {
        return sample.inflation()[i];
    }

    double growth(int i) {
        return sample.growth()[i];
    }

    /** The prices, as the design explains them: a second price of a car as its difference from the first. */
    Sample sample() {
        return sample;
    }

    Design design() {
        return design;
    }
}
