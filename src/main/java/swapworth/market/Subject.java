package swapworth.market;

import static java.util.Objects.requireNonNull;

import java.time.LocalDate;
import java.util.Optional;
import swapworth.listing.CarFacts;
import swapworth.listing.Facts;
import swapworth.listing.LevelOfTrade;
import swapworth.listing.PriceIncludes;

/**
 * What a value is asked for: a car, on a day, at a level of trade.
 *
 * @param facts what is known of the car
 * @param level the level of trade of the price
 * @param includes what the price holds beside the car
 * @param on the day; empty where the listings have no dates, and nothing can be said about time
 */
public record Subject(Facts facts, LevelOfTrade level, PriceIncludes includes, Optional<LocalDate> on) {

    /** Checks that nothing is missing. */
    public Subject {
        requireNonNull(facts, "facts");
        requireNonNull(level, "level");
        requireNonNull(includes, "includes");
        requireNonNull(on, "on");
    }

    /**
     * The price of the car alone, without fees and tax.
     *
     * @param facts what is known of the car
     * @param level the level of trade
     * @param on the day
     * @return the subject
     */
    public static Subject of(CarFacts facts, LevelOfTrade level, LocalDate on) {
        return new Subject(facts, level, PriceIncludes.NEITHER, Optional.of(on));
    }

    /** The same on no day, as if nobody knew it. */
    Subject undated() {
        return new Subject(facts, level, includes, Optional.empty());
    }
}
