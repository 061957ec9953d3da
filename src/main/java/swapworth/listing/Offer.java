package swapworth.listing;

import java.time.LocalDate;
import java.util.List;
import java.util.Optional;

/**
 * What a car that was seen once was offered at: what a model asks of most cars, found without the texts that stand beside it.
 *
 * @param facts what the row says of the car
 * @param seenOn the day, if the row has one
 * @param kind the kind of its price
 * @param includes what the price holds beside the car
 * @param amount the price, in the base currency
 * @param outcome how the advertisement ended, as far as the row knows
 */
public record Offer(CarFacts facts, Optional<LocalDate> seenOn, PriceKind kind, PriceIncludes includes, double amount, Outcome outcome) {

    /**
     * The one offer of a car.
     *
     * @param cars any cars
     * @param number the place of the car among them
     * @return empty if it was seen more than once
     * @throws IndexOutOfBoundsException if there is no such car
     */
    public static Optional<Offer> onlyOne(List<Car> cars, int number) {
        if (cars instanceof StoredCars stored) {
            return stored.onlyOffer(number);
        }
        List<Listing> sightings = cars.get(number).sightings();
        return sightings.size() == 1 ? Optional.of(of(sightings.get(0))) : Optional.empty();
    }

    private static Offer of(Listing listing) {
        return new Offer(listing.facts(), listing.seenOn(), listing.price().kind(), listing.price().includes(), listing.price().amount(),
                listing.outcome());
    }

    /**
     * The level of trade of its price.
     *
     * @return the level
     */
    public LevelOfTrade level() {
        return LevelOfTrade.of(kind, facts.seller());
    }
}
