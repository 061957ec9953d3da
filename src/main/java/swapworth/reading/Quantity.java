package swapworth.reading;

import static java.util.Objects.requireNonNull;

import java.math.BigDecimal;
import java.util.Optional;

/**
 * A distance as it was typed.
 *
 * @param number the number
 * @param unit its unit, if the cell says so
 */
public record Quantity(BigDecimal number, Optional<DistanceUnit> unit) {

    /** Checks that nothing is missing. */
    public Quantity {
        requireNonNull(number, "number");
        requireNonNull(unit, "unit");
    }
}
