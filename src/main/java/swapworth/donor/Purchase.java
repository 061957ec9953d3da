package swapworth.donor;

import static java.util.Objects.requireNonNull;

import java.math.BigDecimal;
import java.math.MathContext;
import java.math.RoundingMode;
import java.util.Currency;
import java.util.Optional;
import java.util.OptionalDouble;
import swapworth.listing.CandidateCar;
import swapworth.listing.Keys;
import swapworth.listing.Price;
import swapworth.listing.PriceIncludes;
import swapworth.listing.Runs;
import swapworth.listing.Seller;

/**
 * What the costs of a purchase depend on.
 *
 * @param car what the car is called
 * @param bid the bid or the price, above 0, in the base currency
 * @param seller who sells
 * @param includes what the price already holds
 * @param runs whether the car drives, for freight
 * @param keys whether there are keys
 * @param miles how far away the car stands, where known
 * @param typed how the bid was typed, and at which rate it was converted; empty where it was typed in the base currency
 */
public record Purchase(String car, BigDecimal bid, Seller seller, PriceIncludes includes, Runs runs, Keys keys, OptionalDouble miles,
        String typed) {

    /** Rates are shown with so many digits. */
    private static final MathContext DIGITS = new MathContext(6);

    /** Checks that the bid is above 0, that the distance is one, and that nothing is missing. */
    public Purchase {
        requireNonNull(car, "car");
        requireNonNull(seller, "seller");
        requireNonNull(includes, "includes");
        requireNonNull(runs, "runs");
        requireNonNull(keys, "keys");
        requireNonNull(miles, "miles");
        requireNonNull(typed, "typed");
        if (bid.signum() <= 0) {
            throw new IllegalArgumentException("a bid must be above 0, not " + bid.toPlainString());
        }
        if (miles.isPresent() && !(miles.getAsDouble() >= 0 && Double.isFinite(miles.getAsDouble()))) {
            throw new IllegalArgumentException("a car stands at least 0 miles away, not " + miles.getAsDouble());
        }
    }

    /**
     * A purchase at a bid in the base currency.
     *
     * @param car what the car is called
     * @param bid the bid or the price, above 0
     * @param seller who sells
     * @param includes what the price already holds
     * @param runs whether the car drives
     * @param keys whether there are keys
     * @param miles how far away the car stands, where known
     */
    public Purchase(String car, BigDecimal bid, Seller seller, PriceIncludes includes, Runs runs, Keys keys, OptionalDouble miles) {
        this(car, bid, seller, includes, runs, keys, miles, "");
    }

    /**
     * The purchase of a car in play at its planned bid, else at the price asked.
     *
     * @param car the car
     * @param currency the base currency
     * @return nothing where the row gives no price
     */
    public static Optional<Purchase> of(CandidateCar car, Currency currency) {
        return car.priceOrBid().map(price -> price.typed().currency().equals(currency) ? of(car, price.typed().amount())
                : of(car, Cents.rounded(BigDecimal.valueOf(price.amount()))).typed(price));
    }

    /**
     * The purchase of a car in play at a bid or a price of which its row need not speak.
     *
     * @param car the car
     * @param bid the bid or the price, above 0, in the base currency
     * @return the purchase
     */
    static Purchase of(CandidateCar car, BigDecimal bid) {
        return new Purchase(car.name(), bid, car.facts().seller(), car.priceOrBid().map(Price::includes).orElse(PriceIncludes.UNKNOWN),
                car.facts().runs(), car.facts().keys(), car.facts().distanceAway());
    }

    private Purchase typed(Price price) {
        return new Purchase(car, bid, seller, includes, runs, keys, miles, typed(price.typed().amount(), price));
    }

    private static String typed(BigDecimal amount, Price price) {
        BigDecimal rate = BigDecimal.valueOf(price.amount()).divide(price.typed().amount(), DIGITS).stripTrailingZeros();
        return Cents.text(amount) + " " + price.typed().currency().getCurrencyCode() + " at " + rate.toPlainString();
    }

    /**
     * What a bid is where the car is bid for in another currency: whole units, rounded down, at the rate of its planned bid or price.
     *
     * @param car the car
     * @param bid in the base currency
     * @param currency the base currency
     * @return for instance {@code 5,187 USD at 0.93}; empty where its row states the base currency, or no amount
     */
    static String there(CandidateCar car, BigDecimal bid, Currency currency) {
        return car.priceOrBid().filter(price -> !price.typed().currency().equals(currency)).map(price -> typed(bid.multiply(price.typed()
                .amount()).divide(BigDecimal.valueOf(price.amount()), 0, RoundingMode.DOWN), price)).orElse("");
    }

    /**
     * The same at another bid or price. What was paid at an auction may have been typed with its fees; a bid there holds none.
     *
     * @param other the bid or price, above 0
     * @return a copy
     */
    public Purchase at(BigDecimal other) {
        return new Purchase(car, other, seller, seller == Seller.AUCTION ? PriceIncludes.NEITHER : includes, runs, keys, miles);
    }

    /**
     * The same at another distance.
     *
     * @param away miles, at least 0
     * @return a copy
     */
    public Purchase away(double away) {
        return new Purchase(car, bid, seller, includes, runs, keys, OptionalDouble.of(away), typed);
    }
}
