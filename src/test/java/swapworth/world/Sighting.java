package swapworth.world;

import java.time.LocalDate;
import java.util.Optional;
import swapworth.listing.Outcome;
import swapworth.listing.PriceIncludes;
import swapworth.listing.PriceKind;
import swapworth.listing.Saved;

/**
 * One sighting as it truly was, before any dirt.
 *
 * @param car the number of the car in the world's list
 * @param id the collector's name for the advertisement
 * @param seenOn the evening
 * @param miles what the advertisement says
 * @param kind asking, sold or bid not met
 * @param price in dollars
 * @param includes what the price holds
 * @param outcome how it ended, as far as the collector knew
 * @param endedOn when
 * @param saved how the row came into the collection
 * @param source where it was seen
 */
public record Sighting(int car, String id, LocalDate seenOn, int miles, PriceKind kind, long price, PriceIncludes includes,
        Outcome outcome, Optional<LocalDate> endedOn, Saved saved, String source) {

    Sighting withId(String changed) {
        return new Sighting(car, changed, seenOn, miles, kind, price, includes, outcome, endedOn, saved, source);
    }

    Sighting ended(Outcome how, LocalDate when) {
        return new Sighting(car, id, seenOn, miles, kind, price, includes, how, Optional.of(when), saved, source);
    }
}
