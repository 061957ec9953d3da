package swapworth.swap;

import static java.util.Objects.requireNonNull;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.stream.IntStream;
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
    private static final Comparator<SeenSwap> LATEST = Comparator.comparing((SeenSwap swap) -> swap.kind == Kind.SOLD)
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

    /** Each swap once, whatever the order: by its sale, else its last price. */
    static List<SeenSwap> once(List<SeenSwap> prices) {
        List<SeenSwap> firsts = new ArrayList<>();
        List<SeenSwap> last = new ArrayList<>();
        prices.stream().sorted(Comparator.comparing(SeenSwap::name).thenComparing(swap -> swap.facts.vehicle())
                .thenComparingInt(swap -> swap.facts.modelYear().orElse(Integer.MAX_VALUE)).thenComparing(LATEST)).forEach(swap -> {
                    int at = IntStream.range(0, firsts.size()).filter(k -> firsts.get(k).isOne(swap)).findFirst().orElse(firsts.size());
                    if (at == firsts.size()) {
                        firsts.add(swap);
                        last.add(swap);
                    } else if (LATEST.compare(swap, last.get(at)) > 0) {
                        last.set(at, swap);
                    }
                });
        return List.copyOf(last);
    }

    /** Whether two prices are of one swap, as with the ids of a file: one name, one line, and one model year to within one. */
    private boolean isOne(SeenSwap other) {
        OptionalInt year = facts.modelYear();
        OptionalInt its = other.facts.modelYear();
        return name.equals(other.name) && facts.vehicle().equals(other.facts.vehicle())
                && (year.isEmpty() || its.isEmpty() || Math.abs(year.getAsInt() - its.getAsInt()) <= 1);
    }

    /** What its own luck is drawn by: no two swaps that {@link #once} leaves have the same. */
    String ownName() {
        return name + "\n" + facts.vehicle() + "\n" + facts.modelYear().orElse(0);
    }

    SeenSwap with(CarFacts other) {
        return new SeenSwap(name, other, builtBy, price, kind, level, includes, on, factoryLine);
    }
}
