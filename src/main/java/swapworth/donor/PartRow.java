package swapworth.donor;

import java.util.Optional;
import java.util.OptionalDouble;

/** One row of {@code partout.csv}: a part of a car, what becomes of it, and whatever the user knows better than the assumptions. */
record PartRow(String car, PartKind part, int count, Optional<PartState> state, OptionalDouble chanceGood, GoesTo goesTo,
        OptionalDouble price,
        OptionalDouble sells, OptionalDouble days, OptionalDouble hours, OptionalDouble postage, OptionalDouble postageCharged,
        OptionalDouble packing, OptionalDouble fee, String bundle, boolean ruleMet, int line) {

    /** The same part of a car that lacks it, whatever the row says of its state. */
    PartRow gone() {
        return new PartRow(car, part, count, Optional.of(PartState.GONE), OptionalDouble.empty(), goesTo, price, sells, days, hours,
                postage, postageCharged, packing, fee, bundle, ruleMet, line);
    }

    /** The same part, sold. */
    PartRow sold() {
        return new PartRow(car, part, count, state, chanceGood, GoesTo.SELL, price, sells, days, hours, postage, postageCharged,
                packing, fee, bundle,
                ruleMet, line);
    }
}
