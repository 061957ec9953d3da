package swapworth.swap;

import static java.util.Objects.requireNonNull;

import java.time.LocalDate;
import java.util.Comparator;
import java.util.Optional;
import swapworth.listing.CarFacts;
import swapworth.listing.LevelOfTrade;
import swapworth.listing.PriceIncludes;

/**
 * A finished swap of somebody else's that was seen for sale, sold, or for which a bid was refused.
 *
 * @param name the collector's name for it
 * @param facts what is known of it
 * @param builtBy who built it
 * @param price its price, in the base currency
 * @param kind what the price is
 * @param level the level of trade of the price
 * @param includes what the price holds beside the car
 * @param on the day it was seen
 * @param factoryLine the model line of its factory equivalent; empty: the same as that of the car that is valued, where body and
 *        running gear are the same
 */
public record SeenSwap(String name, CarFacts facts, BuiltBy builtBy, double price, Kind kind, LevelOfTrade level,
        PriceIncludes includes, Optional<LocalDate> on, Optional<String> factoryLine) {

    /** A sale is the last of a swap's prices, whatever its day; without a day is before all days. */
    static final Comparator<SeenSwap> LATEST = Comparator.comparing((SeenSwap swap) -> swap.kind == Kind.SOLD)
            .thenComparing(swap -> swap.on.orElse(LocalDate.MIN)).thenComparing(SeenSwap::kind).thenComparingDouble(SeenSwap::price);

    /** What the price of a swap is. */
    public enum Kind {
        /** Asked. */
        ASKED("asked"),
        /** Paid. */
        SOLD("sold"),
        /** Offered and refused. */
        OFFER_REFUSED("offer refused");

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

    /** Checks that nothing is missing and the price is one. */
    public SeenSwap {
        requireNonNull(name, "name");
        requireNonNull(facts, "facts");
        requireNonNull(builtBy, "builtBy");
        requireNonNull(kind, "kind");
        requireNonNull(level, "level");
        requireNonNull(includes, "includes");
        requireNonNull(on, "on");
        requireNonNull(factoryLine, "factoryLine");
        if (!(price > 0) || Double.isInfinite(price)) {
            throw new IllegalArgumentException(name + ": a price must be a finite number above 0, not " + price);
        }
    }

    SeenSwap with(CarFacts other) {
        return new SeenSwap(name, other, builtBy, price, kind, level, includes, on, factoryLine);
    }
}
