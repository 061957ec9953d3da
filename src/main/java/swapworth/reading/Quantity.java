package swapworth.reading;

import static java.util.Objects.requireNonNull;

import java.math.BigDecimal;
import java.util.Optional;

/**
 * A distance as it was typed.
 *
 * @param number the number
 * @param unit {@code mi} or {@code km} if the cell says so
 */
public record Quantity(BigDecimal number, Optional<String> unit) {

    /** Kilometres in an international mile. */
    public static final double KM_PER_MILE = 1.609344;

    /** Checks that nothing is missing. */
    public Quantity {
        requireNonNull(number, "number");
        requireNonNull(unit, "unit");
    }
}
