package swapworth.money;

import static java.util.Objects.requireNonNull;

import java.math.BigDecimal;
import java.util.Currency;

/**
 * An exact amount in one currency, kept as it was typed.
 *
 * @param amount the amount, with the decimals that were typed
 * @param currency the currency, by its ISO 4217 code
 */
public record Money(BigDecimal amount, Currency currency) {

    /** Checks that nothing is missing. */
    public Money {
        requireNonNull(amount, "amount");
        requireNonNull(currency, "currency");
    }

    /**
     * An amount from its digits and an ISO 4217 code.
     *
     * @param amount for instance {@code 12500} or {@code 12500.50}
     * @param code for instance {@code USD}
     * @return the amount
     * @throws IllegalArgumentException if the digits are no number or the code is none of ISO 4217
     */
    public static Money of(String amount, String code) {
        try {
            return new Money(new BigDecimal(amount), Currency.getInstance(code));
        } catch (IllegalArgumentException e) {
            throw new IllegalArgumentException("'" + amount + "' in '" + code
                    + "' is no amount: needed are plain digits and a code of ISO 4217", e);
        }
    }

    /** The code and the amount in plain digits, for instance {@code USD 12500.50}. */
    @Override
    public String toString() {
        return currency.getCurrencyCode() + " " + amount.toPlainString();
    }
}
