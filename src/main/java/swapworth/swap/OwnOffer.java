package swapworth.swap;

import static java.util.Objects.requireNonNull;

import java.time.LocalDate;
import java.util.Comparator;
import java.util.Optional;

/**
 * What happened when the finished car itself was on offer.
 *
 * @param kind what happened
 * @param amount the price or the offer, in the base currency
 * @param days how long it stood at this price without a taker; 0 for an offer or a sale
 * @param on the day; empty: the day of the valuation
 */
public record OwnOffer(Kind kind, double amount, double days, Optional<LocalDate> on) {

    /** One order for all that was seen, whatever order it came in: sums of it are then the same to the last bit. */
    static final Comparator<OwnOffer> ORDER = Comparator.comparing(OwnOffer::kind).thenComparing(o -> o.on().orElse(LocalDate.MIN))
            .thenComparingDouble(OwnOffer::amount).thenComparingDouble(OwnOffer::days);

    /** What happened. */
    public enum Kind {
        /** A serious offer that the owner refused. */
        OFFER_REFUSED("offer refused"),
        /** On offer for a time, without a taker. */
        NO_TAKER("no taker"),
        /** Sold. */
        SOLD("sold");

        private final String words;

        Kind(String words) {
            this.words = words;
        }

        /**
         * How it stands on a page.
         *
         * @return plain words in lower case
         */
        public String words() {
            return words;
        }
    }

    /** Checks that nothing is missing and the figures make sense. */
    public OwnOffer {
        requireNonNull(kind, "kind");
        requireNonNull(on, "on");
        if (!(amount > 0) || Double.isInfinite(amount) || !(days >= 0) || Double.isInfinite(days)) {
            throw new IllegalArgumentException("an offer needs an amount above 0 and days of at least 0, not " + amount + " and " + days);
        }
    }

    /**
     * A serious offer that the owner refused.
     *
     * @param amount the offer
     * @param on the day
     * @return what happened
     */
    public static OwnOffer refused(double amount, LocalDate on) {
        return new OwnOffer(Kind.OFFER_REFUSED, amount, 0, Optional.of(on));
    }

    /**
     * A serious offer that the owner refused, on the day of the valuation.
     *
     * @param amount the offer
     * @return what happened
     */
    public static OwnOffer refused(double amount) {
        return new OwnOffer(Kind.OFFER_REFUSED, amount, 0, Optional.empty());
    }

    /**
     * On offer for a time, without a taker, up to the day of the valuation.
     *
     * @param asked the price asked, privately
     * @param days how long
     * @return what happened
     */
    public static OwnOffer noTaker(double asked, double days) {
        return new OwnOffer(Kind.NO_TAKER, asked, days, Optional.empty());
    }

    /**
     * On offer for a time, without a taker.
     *
     * @param asked the price asked, privately
     * @param days how long
     * @param on the last day of that time
     * @return what happened
     */
    public static OwnOffer noTaker(double asked, double days, LocalDate on) {
        return new OwnOffer(Kind.NO_TAKER, asked, days, Optional.of(on));
    }

    /**
     * Sold, by a private seller.
     *
     * @param price the price paid
     * @param on the day
     * @return what happened
     */
    public static OwnOffer sold(double price, LocalDate on) {
        return new OwnOffer(Kind.SOLD, price, 0, Optional.of(on));
    }
}
