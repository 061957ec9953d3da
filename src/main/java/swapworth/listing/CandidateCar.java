package swapworth.listing;

import static java.util.Objects.requireNonNull;

import java.util.Optional;

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
}
