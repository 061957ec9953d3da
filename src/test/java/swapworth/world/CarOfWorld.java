package swapworth.world;

import java.time.LocalDate;
import java.util.List;
import swapworth.listing.CarFacts;

/**
 * One car of the world as it truly is.
 *
 * @param name the id of its first advertisement
 * @param line its model line
 * @param facts all that is true of it and known to its advertisement
 * @param error its own error, log points: what sets its price apart from the median of such cars, the same in all its prices
 * @param ids all ids under which it was advertised; several after a repost
 * @param offeredOn the day on which it was first offered, perhaps before collecting began
 * @param daysOnOffer how long it would be on offer in all, reposts included, were the collector to look for ever; 0 at an
 *        auction
 * @param fate how the offer truly ends, whatever the collector knew
 */
public record CarOfWorld(String name, Line line, CarFacts facts, double error, List<String> ids, LocalDate offeredOn,
        int daysOnOffer, Fate fate) {

    /** How an offer truly ends. */
    public enum Fate {
        /** Someone bought it. */
        SOLD,
        /** The owner kept it. */
        KEPT
    }

    CarOfWorld withIds(List<String> found) {
        return new CarOfWorld(found.get(0), line, facts, error, List.copyOf(found), offeredOn, daysOnOffer, fate);
    }
}
