package swapworth.market;

import java.util.Optional;
import swapworth.listing.Car;
import swapworth.listing.Facts;
import swapworth.listing.Listing;
import swapworth.listing.Outcome;
import swapworth.listing.PriceKind;
import swapworth.listing.Sighting;
import swapworth.statistics.Bound;

/**
 * One price that the model learns from: a car at a level of trade, by its last sighting there.
 *
 * @param car the number of the car
 * @param listing the sighting
 * @param subject what the price is for
 * @param logPrice the natural logarithm of the price
 * @param bound whether the worth is the price, or only lies above it
 */
record Evidence(int car, Listing listing, Subject subject, double logPrice, Bound bound) {

    /** The same price as if nobody knew its day. */
    Evidence undated() {
        return new Evidence(car, listing, subject.undated(), logPrice, bound);
    }

    /** What a sighting of a car tells. */
    static Evidence of(int number, Car car, Listing listing) {
        return new Evidence(number, listing, subject(car.facts(), listing), Math.log(listing.price().amount()),
                bound(listing.price().kind()));
    }

    static Bound bound(PriceKind kind) {
        return kind == PriceKind.BID_NOT_MET ? Bound.BELOW : Bound.NONE;
    }

    /** Whether a car was still on offer at a price when it was last seen, as far as its rows know. */
    static boolean isOnOffer(PriceKind kind, Outcome ofCar) {
        return kind == PriceKind.ASKING && ofCar == Outcome.OPEN;
    }

    /** What a sighting's price is for: the car as all its sightings together show it, offered as this one says. */
    static Subject subject(Facts car, Sighting seen) {
        Facts own = seen.facts();
        if (own == car || own.seller() == car.seller() && (own.region().isEmpty() || own.region().equals(car.region()))) {
            return new Subject(car, seen.level(), seen.includes(), seen.seenOn());
        }
        Optional<String> region = own.region();
        var facts = car.made().toBuilder().seller(own.seller());
        if (region.isPresent()) {
            facts.region(region.get());
        }
        return new Subject(facts.build(), seen.level(), seen.includes(), seen.seenOn());
    }
}
