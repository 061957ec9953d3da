package swapworth.money;

import static java.util.Objects.requireNonNull;

import java.math.BigDecimal;
import java.math.MathContext;
import java.time.LocalDate;
import java.util.Currency;
import java.util.HashMap;
import java.util.List;
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
     * One stated rate.
     *
     * @param date the day of the rate
     * @param from the currency of which one unit is taken
     * @param to the currency in which it is expressed
     * @param rate how many units of {@code to} one unit of {@code from} is worth, above 0
     */
    public record Rate(LocalDate date, Currency from, Currency to, BigDecimal rate) {

        /** Checks that nothing is missing and that the rate is above 0. */
        public Rate {
            requireNonNull(date, "date");
            requireNonNull(from, "from");
            requireNonNull(to, "to");
            if (rate.signum() <= 0) {
                throw new IllegalArgumentException("a rate must be above 0, not " + rate.toPlainString());
            }
        }
    }

    /**
     * A collection of stated rates; of two for the same day and pair the later in the list counts.
     *
     * @param stated the rates, in any order
     * @return the collection
     */
    public static Rates of(List<Rate> stated) {
        Map<String, TreeMap<LocalDate, BigDecimal>> byPair = new HashMap<>();
        for (Rate one : stated) {
            byPair.computeIfAbsent(key(one.from, one.to), pair -> new TreeMap<>()).put(one.date, one.rate);
        }
        return new Rates(byPair);
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
