package swapworth.listing;

import static java.util.Objects.requireNonNull;

import swapworth.money.Money;

/**
 * The price in a row: as typed, and in the folder's base currency.
 *
 * @param typed the exact amount and its currency
 * @param amount the same in the base currency at the rate of the day, above 0
 * @param kind asking, sold, or a bid that missed the reserve
 * @param includes what the price already holds beside the car
 */
public record Price(Money typed, double amount, PriceKind kind, PriceIncludes includes) {

    /** Checks that the amount is above 0. */
    public Price {
        requireNonNull(typed, "typed");
        requireNonNull(kind, "kind");
        requireNonNull(includes, "includes");
        if (!(amount > 0) || Double.isInfinite(amount)) {
            throw new IllegalArgumentException("a price must be a finite number above 0, not " + amount);
        }
    }

    /** The amount at the rate of another price where both are typed in one currency, else at its own. */
    double amountBeside(Price other) {
        return typed.currency().equals(other.typed.currency())
                ? typed.amount().doubleValue() * (other.amount / other.typed.amount().doubleValue()) : amount;
    }

    /**
     * Whether another price is the same amount in the same currency, as typed; {@code 9000} and {@code 9000.00} are the same.
     *
     * @param other the other price
     * @return whether the two are one amount
     */
    public boolean sameAsTyped(Price other) {
        return typed.currency() == other.typed.currency() && typed.amount().compareTo(other.typed.amount()) == 0;
    }
}
