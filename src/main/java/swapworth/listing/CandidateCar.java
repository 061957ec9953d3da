package swapworth.listing;

import static java.util.Objects.requireNonNull;

import java.util.Optional;
import swapworth.reading.Spelling;

/**
 * A car in play: one row of {@code cars.csv}.
 *
 * @param name what the user calls it
 * @param role what it is in the undertaking
 * @param facts what is known of it
 * @param priceOrBid the bid planned for it, else the price asked
 * @param origin where the row stands
 */
public record CandidateCar(String name, Role role, CarFacts facts, Optional<Price> priceOrBid, Origin origin) {

    /** What a car is in an undertaking. */
    public enum Role {
        /** It may be bought, for whatever part. */
        CANDIDATE("candidate"),
        /** It receives the running gear. */
        RECIPIENT("recipient"),
        /** It gives the running gear. */
        DONOR("donor"),
        /** It is the car that the maker sold with such running gear. */
        FACTORY_EQUIVALENT("factory equivalent"),
        /** It is finished, and its running gear is another car's. */
        FINISHED("finished"),
        /** The row does not say. */
        UNKNOWN("unknown");

        private final String words;

        Role(String words) {
            this.words = words;
        }

        /**
         * How it stands in a file and on a page.
         *
         * @return plain words in lower case
         */
        public String words() {
            return words;
        }
    }

    /** Checks that nothing is missing. */
    public CandidateCar {
        requireNonNull(name, "name");
        requireNonNull(role, "role");
        requireNonNull(facts, "facts");
        requireNonNull(priceOrBid, "priceOrBid");
        requireNonNull(origin, "origin");
    }

    /**
     * Whether a car of the listings is this very one: it is of the same line, and either it has the name of this car for its id, with a
     * model year within one and a distance within that of rows of one id, or year, distance and a price are stated and equal.
     *
     * @param seen a car of the listings
     * @return false where nothing tells
     */
    public boolean isSeenAs(SeenCar seen) {
        if (!seen.facts().vehicle().equals(facts.vehicle())) {
            return false;
        }
        String called = Spelling.name(name);
        for (Sighting sighting : seen.sightings()) {
            boolean named = sighting.id().isPresent() && Spelling.name(sighting.id().get()).equals(called);
            if (named ? contradictsNot(seen.facts()) : hasYearDistanceAndPriceOf(seen.facts(), sighting.amount())) {
                return true;
            }
        }
        return false;
    }

    private boolean contradictsNot(Facts other) {
        boolean year = facts.modelYear().isEmpty() || other.modelYear().isEmpty()
                || Math.abs(facts.modelYear().getAsInt() - other.modelYear().getAsInt()) <= 1;
        return year && (facts.mileage().isEmpty() || other.mileage().isEmpty() || Math.abs(facts.mileage().get().miles()
                - other.mileage().get().miles()) <= SharedIds.slip(other.mileage().get().miles()));
    }

    private boolean hasYearDistanceAndPriceOf(Facts other, double amount) {
        return priceOrBid.isPresent() && priceOrBid.get().amount() == amount && facts.modelYear().isPresent()
                && facts.modelYear().equals(other.modelYear()) && facts.mileage().isPresent() && other.mileage().isPresent()
                && facts.mileage().get().miles() == other.mileage().get().miles();
    }
}
