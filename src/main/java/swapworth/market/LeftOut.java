package swapworth.market;

import java.util.Arrays;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.ConcurrentHashMap;
import java.util.stream.IntStream;
import swapworth.statistics.ErrorTail;
import swapworth.statistics.Posterior;
import swapworth.statistics.Posterior.LeaveOut;

/** What would be believed had one of the cars of a fit never been seen. */
final class LeftOut {
    /** Up to this many cars each is left out by a refit, beyond it in closed form. */
    private static final int REFITTED = 150;
    /** Of more cars than these one with a single price is left out by that row alone. */
    static final int ONE_BY_ONE = 1000;

    private final EvidenceList evidence;
    private final Posterior posterior;
    /** The first row of each car, and behind the last car the number of rows. */
    private final int[] firstRow;
    private final Map<Integer, Posterior> kept = new ConcurrentHashMap<>();

    LeftOut(EvidenceList evidence, int[] firstRow, Posterior posterior) {
        this.evidence = evidence;
        this.posterior = posterior;
        this.firstRow = firstRow;
    }

    private int cars() {
        return firstRow.length - 1;
    }

    /** The row of the fit that holds the price of a sighting of a car; -1 if none does. */
    int row(int car, int place) {
        for (int row = firstRow[car]; row < firstRow[car + 1]; row++) {
            if (evidence.place(row) == place) {
                return row;
            }
        }
        return -1;
    }

    /** Gets ready for each car of many, one by one. */
    void expectAll() {
        if (cars() > ONE_BY_ONE) {
            posterior.expectEachRowLeftOut();
        }
    }

    /** The same with other tails of single prices. */
    LeftOut withTail(ErrorTail tail) {
        Posterior tailed = posterior.withTail(tail);
        if (tailed == posterior) {
            return this;
        }
        LeftOut changed = new LeftOut(evidence, firstRow, tailed);
        kept.forEach((car, without) -> changed.kept.put(car, without.withTail(tail)));
        return changed;
    }

    /** Some prices, each predicted without its car, as normal deviates; what they were predicted by is kept, of not too many cars. */
    double[] deviates(EncodedRows rows, int[] prices) {
        return IntStream.of(prices).parallel().mapToDouble(i -> {
            int car = evidence.car(i);
            return rows.deviate(cars() > ONE_BY_ONE ? leavingOut(car) : kept.computeIfAbsent(car, this::leavingOut), i);
        }).toArray();
    }

    /** The posterior without a car. */
    Posterior without(int car) {
        Posterior known = kept.get(car);
        return known != null ? known : leavingOut(car);
    }

    /**
     * The same for what is asked of a row: of many cars each with one price, the row that was made for it is left out.
     *
     * @param own the row, where it was made already
     */
    Posterior without(int car, int row, Optional<Encoded> own) {
        boolean alone = cars() > ONE_BY_ONE && firstRow[car + 1] - firstRow[car] == 1;
        return alone && own.isPresent() ? posterior.leavingOut(row, own.get().row()) : without(car);
    }

    private Posterior leavingOut(int car) {
        int[] rows = new int[firstRow[car + 1] - firstRow[car]];
        Arrays.setAll(rows, r -> firstRow[car] + r);
        return posterior.leavingOut(cars() <= REFITTED ? LeaveOut.REFIT : LeaveOut.CLOSED_FORM, rows);
    }
}
