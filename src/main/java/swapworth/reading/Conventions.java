package swapworth.reading;

import static java.util.Objects.requireNonNull;

import java.util.Currency;
import java.util.Optional;

/**
 * How the user writes numbers, dates, distances and money, as far as it is stated; what is not stated is never guessed where it
 * makes a difference.
 *
 * @param decimalMark the mark before decimals
 * @param dateOrder whether the day or the month comes first
 * @param mileageUnit for distances that carry no unit
 * @param currency for amounts that carry no currency
 */
public record Conventions(Optional<DecimalMark> decimalMark, Optional<DateOrder> dateOrder, Optional<DistanceUnit> mileageUnit,
        Optional<Currency> currency) {

    private static final Conventions UNSTATED = new Conventions(Optional.empty(), Optional.empty(), Optional.empty(),
            Optional.empty());

    /** Checks that nothing is missing. */
    public Conventions {
        requireNonNull(decimalMark, "decimalMark");
        requireNonNull(dateOrder, "dateOrder");
        requireNonNull(mileageUnit, "mileageUnit");
        requireNonNull(currency, "currency");
    }

    /**
     * Nothing is stated.
     *
     * @return four blanks
     */
    public static Conventions unstated() {
        return UNSTATED;
    }

    /**
     * The same with a stated decimal mark.
     *
     * @param mark the mark before decimals
     * @return a copy
     */
    public Conventions with(DecimalMark mark) {
        return new Conventions(Optional.of(mark), dateOrder, mileageUnit, currency);
    }

    /**
     * The same with a stated order of dates.
     *
     * @param order whether the day or the month comes first
     * @return a copy
     */
    public Conventions with(DateOrder order) {
        return new Conventions(decimalMark, Optional.of(order), mileageUnit, currency);
    }

    /**
     * The same with a stated unit of mileage.
     *
     * @param unit for distances that carry no unit
     * @return a copy
     */
    public Conventions with(DistanceUnit unit) {
        return new Conventions(decimalMark, dateOrder, Optional.of(unit), currency);
    }

    /**
     * The same with a stated currency.
     *
     * @param stated for amounts that carry no currency
     * @return a copy
     */
    public Conventions with(Currency stated) {
        return new Conventions(decimalMark, dateOrder, mileageUnit, Optional.of(stated));
    }

    /**
     * These conventions, and where one is not stated the other's.
     *
     * @param other stands in for what is not stated here
     * @return the two joined
     */
    public Conventions or(Conventions other) {
        return new Conventions(first(decimalMark, other.decimalMark), first(dateOrder, other.dateOrder),
                first(mileageUnit, other.mileageUnit), first(currency, other.currency));
    }

    private static <T> Optional<T> first(Optional<T> one, Optional<T> other) {
        return one.isPresent() ? one : other;
    }
}
