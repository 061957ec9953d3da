package swapworth.market;

import java.util.Arrays;
import java.util.BitSet;
import java.util.List;
import java.util.function.IntFunction;
import java.util.function.IntUnaryOperator;
import java.util.function.ToDoubleFunction;
import java.util.stream.IntStream;
import swapworth.statistics.Bound;
import swapworth.statistics.Design;
import swapworth.statistics.Mixture;
import swapworth.statistics.Normal;
import swapworth.statistics.Posterior;
import swapworth.statistics.Ranges;
import swapworth.statistics.Sample;
import swapworth.statistics.SparseRow;

/**
 * The evidence in the numbers of the model, and the design that the model is fitted to: the same rows, but that a second price of a car
 * enters the design as its difference from the first, and a bid that missed, beside prices of its car, as that from the last of them. Up
 * to {@value #KEPT} rows are kept as they are; of more the design alone is kept, and a row is made from it whenever it is asked for.
 */
final class EncodedRows {
    private static final int KEPT = EvidenceList.KEPT;

    private final EvidenceList evidence;
    private final Encoder encoder;
    private final Encoded[] kept;
    private final Rows rows;
    /** The rows that are made anew from their subjects: differences, and those of which there is something to say. */
    private final BitSet apart = new BitSet();

    /**
     * Prices and the design that explains them: a second price of a car as its difference from the first.
     *
     * @param design a row for each price
     * @param sample the prices
     * @param filledIn of each whether something had to be filled in
     */
    record Rows(Design design, Sample sample, boolean[] filledIn) {
    }

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
        this.rows = rows(evidence, encoder, sameCar, n, k -> k, i -> i < kept.length ? kept[i] : encoded(i));
        for (int i = 0; i < n; i++) {
            if (rows.filledIn[i] || isDifference(i)) {
                apart.set(i);
            }
        }
    }

    private EncodedRows(EncodedRows before, Encoded[] kept, Sample sample) {
        this.evidence = before.evidence;
        this.encoder = before.encoder;
        this.kept = kept;
        this.rows = new Rows(before.rows.design, sample, before.rows.filledIn);
        this.apart.or(before.apart);
    }

    /** The same rows, with their factors on the error scale as the encoder gives them now. */
    EncodedRows scatteredAnew() {
        double[] inflation = rows.sample.inflation();
        Ranges.each(inflation.length, (first, end) -> {
            for (int i = first; i < end; i++) {
                // Of many rows those of which all is stated stay as they are: lines differ in what they are stretched by.
                if (i < kept.length || inflation[i] != 1) {
                    inflation[i] = encoder.inflation(evidence.subject(i));
                }
            }
        });
        Encoded[] changed = IntStream.range(0, kept.length).mapToObj(i -> kept[i].with(inflation[i])).toArray(Encoded[]::new);
        return new EncodedRows(this, changed, rows.sample.withInflation(inflation));
    }

    /** Some of the evidence in the numbers of the model, made without the rest. */
    static Rows some(EvidenceList evidence, Encoder encoder, double sameCar, int[] chosen) {
        return rows(evidence, encoder, sameCar, chosen.length, k -> chosen[k], i -> encoder.encode(i, evidence.subject(i)));
    }

    /** So many rows, of which the k-th stands for a price of the evidence. */
    private static Rows rows(EvidenceList evidence, Encoder encoder, double sameCar, int count, IntUnaryOperator price,
            IntFunction<Encoded> encoded) {
        double[] inflation = new double[count];
        double[] growth = new double[count];
        boolean[] filledIn = new boolean[count];
        Design design = Design.of(encoder.columns(), count, k -> {
            int i = price.applyAsInt(k);
            Encoded own = encoded.apply(i);
            inflation[k] = own.inflation();
            growth[k] = own.growth();
            filledIn[k] = !own.remarks().isEmpty();
            int before = evidence.comparedWith(i);
            return before >= 0 ? own.row().plus(-1, encoded.apply(before).row()) : own.row();
        }, encoder.sums());
        double[] y = new double[count];
        double[] known = new double[count];
        Bound[] bound = new Bound[count];
        for (int k = 0; k < count; k++) {
            int i = price.applyAsInt(k);
            bound[k] = evidence.bound(i);
            y[k] = evidence.logPrice(i);
            int before = evidence.comparedWith(i);
            if (before >= 0) {
                y[k] -= evidence.logPrice(before);
                known[k] = sameCar;
            }
        }
        return new Rows(design, new Sample(y, bound, inflation, known, growth), filledIn);
    }

    private Encoded encoded(int i) {
        return encoder.encode(i, evidence.subject(i));
    }

    /** Whether a row enters the design as its difference from another: a second price of one car, or a bid beside its price. */
    boolean isDifference(int i) {
        return evidence.comparedWith(i) >= 0;
    }

    /** The number of rows. */
    int size() {
        return rows.sample.size();
    }

    /** One row, no difference taken. */
    Encoded get(int i) {
        if (i < kept.length) {
            return kept[i];
        }
        return apart.get(i) ? encoded(i)
                : new Encoded(rows.design.row(i), encoder.termOfColumn(), inflation(i), growth(i), List.of());
    }

    /** The numbers of one row alone, no difference taken: without what is to be said of it, so that fewer rows have to be made anew. */
    SparseRow row(int i) {
        return i < kept.length ? kept[i].row() : isDifference(i) ? encoded(i).row() : rows.design.row(i);
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
        return rows.sample.inflation(i);
    }

    double growth(int i) {
        return rows.sample.growth(i);
    }

    /** The prices, as the design explains them: a second price of a car as its difference from the first. */
    Sample sample() {
        return rows.sample;
    }

    Design design() {
        return rows.design;
    }

    /** The price of a row as a normal deviate of its prediction. */
    double deviate(Posterior by, int i) {
        Mixture predicted = by.predict(get(i).row(), inflation(i), growth(i));
        return Normal.quantile(Math.max(1e-12, Math.min(1 - 1e-12, predicted.cumulative(evidence.logPrice(i)))));
    }
}
