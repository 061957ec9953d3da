package swapworth.money;

import static java.util.Objects.requireNonNull;

import java.math.BigDecimal;
import java.math.MathContext;
import java.time.LocalDate;
import java.util.Currency;
import java.util.HashMap;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;

/** Dated exchange rates. The rate of a day is the latest one stated on or before it; a pair stated one way serves both ways. */
public final class Rates {

    private static final Rates NONE = new Rates(Map.of());

    private final Map<String, TreeMap<LocalDate, BigDecimal>> byPair;

    private Rates(Map<String, TreeMap<LocalDate, BigDecimal>> byPair) {
        this.byPair = byPair;
    }

    /**
     * No rates.
     *
     * @return the empty collection
     */
    public static Rates none() {
        return NONE;
    }

    /**
     * These rates and one more; a rate of the same day and pair is replaced.
     *
     * @param date the day of the rate
     * @param from the currency of which one unit is taken
     * @param to the currency in which it is expressed
     * @param rate how many units of {@code to} one unit of {@code from} is worth
     * @return a copy
     * @throws IllegalArgumentException if the rate is not above 0
     */
    public Rates with(LocalDate date, Currency from, Currency to, BigDecimal rate) {
        requireNonNull(date, "date");
        if (rate.signum() <= 0) {
            throw new IllegalArgumentException("a rate must be above 0, not " + rate.toPlainString());
        }
        Map<String, TreeMap<LocalDate, BigDecimal>> more = new HashMap<>(byPair);
        TreeMap<LocalDate, BigDecimal> pair = new TreeMap<>(more.getOrDefault(key(from, to), new TreeMap<>()));
        pair.put(date, rate);
        more.put(key(from, to), pair);
        return new Rates(more);
    }

    /**
     * An amount in another currency at the rate of a day.
     *
     * @param money the amount
     * @param to the other currency
     * @param on the day
     * @return the amount with the day of the rate, or the reason why there is none
     */
    public Conversion convert(Money money, Currency to, LocalDate on) {
        if (money.currency().equals(to)) {
            return new Conversion.Converted(money.amount(), on);
        }
        Optional<Map.Entry<LocalDate, BigDecimal>> straight = latest(money.currency(), to, on);
        Optional<Map.Entry<LocalDate, BigDecimal>> reverse = latest(to, money.currency(), on);
        if (straight.isPresent() && (reverse.isEmpty() || !reverse.get().getKey().isAfter(straight.get().getKey()))) {
            return new Conversion.Converted(money.amount().multiply(straight.get().getValue()), straight.get().getKey());
        }
        if (reverse.isPresent()) {
            return new Conversion.Converted(money.amount().divide(reverse.get().getValue(), MathContext.DECIMAL64),
                    reverse.get().getKey());
        }
        boolean later = byPair.containsKey(key(money.currency(), to)) || byPair.containsKey(key(to, money.currency()));
        return new Conversion.NoRate("no rate from " + money.currency().getCurrencyCode() + " to " + to.getCurrencyCode()
                + (later ? " on or before " + on : "") + "; state one in rates.csv");
    }

    private Optional<Map.Entry<LocalDate, BigDecimal>> latest(Currency from, Currency to, LocalDate on) {
        TreeMap<LocalDate, BigDecimal> pair = byPair.get(key(from, to));
        return pair == null ? Optional.empty() : Optional.ofNullable(pair.floorEntry(on));
    }

    private static String key(Currency from, Currency to) {
        return from.getCurrencyCode() + to.getCurrencyCode();
    }
}
