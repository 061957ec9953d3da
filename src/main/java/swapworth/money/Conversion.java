package swapworth.money;

import static java.util.Objects.requireNonNull;

import java.math.BigDecimal;
import java.time.LocalDate;

/** What became of an amount that was to be expressed in another currency. */
public sealed interface Conversion {

    /**
     * The amount in the other currency.
     *
     * @param amount the amount, unrounded
     * @param rateOf the day of the rate that was used
     */
    record Converted(BigDecimal amount, LocalDate rateOf) implements Conversion {

        /** Checks that nothing is missing. */
        public Converted {
            requireNonNull(amount, "amount");
            requireNonNull(rateOf, "rateOf");
        }
    }

    /**
     * There is no rate.
     *
     * @param reason which one is missing
     */
    record NoRate(String reason) implements Conversion {

        /** Checks that nothing is missing. */
        public NoRate {
            requireNonNull(reason, "reason");
        }
    }
}
