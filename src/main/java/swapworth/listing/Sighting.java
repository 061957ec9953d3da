package swapworth.listing;

import java.time.LocalDate;
import java.util.List;
import java.util.Optional;

/** A car seen once, as a model asks for it: a {@link Listing}, or a look at the row that would make one. */
public interface Sighting {

    /** Where the row stands. */
    Origin origin();

    /** The collector's own name for the advertisement. */
    Optional<String> id();

    /** The day on which it was seen. */
    Optional<LocalDate> seenOn();

    /** What the row says of the car. */
    Facts facts();

    /** The price, in the base currency. */
    double amount();

    /** The kind of the price. */
    PriceKind kind();

    /** What the price holds beside the car. */
    PriceIncludes includes();

    /** How the advertisement ended, as far as the row knows. */
    Outcome outcome();

    /** How the row came into the collection. */
    Saved saved();

    /** What a reader should know of how the row was understood. */
    List<String> remarks();

    /**
     * The level of trade of the price: an auction's price is an auction price, a business's a trade price, and a seller of whom
     * nothing is known counts as private.
     *
     * @return the level
     */
    default LevelOfTrade level() {
        return LevelOfTrade.of(kind(), facts().seller());
    }

    /**
     * A listing of several, not made if it is not.
     *
     * @param listings any listings
     * @param place its place among them
     * @return the listing as it was seen
     * @throws IndexOutOfBoundsException if there is no such listing
     */
    static Sighting of(List<Listing> listings, int place) {
        return listings instanceof StoredListings stored ? stored.sighting(place) : listings.get(place);
    }
}
