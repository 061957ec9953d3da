package swapworth.listing;

import static java.util.Objects.requireNonNull;

import java.time.LocalDate;
import java.util.List;
import java.util.Optional;

/**
 * One car: all sightings that were joined because they show the same car, in order of date, then of place in the files. The car,
 * not the row, is the unit of evidence.
 *
 * @param name the id of its first advertisement, else where its first row stands
 * @param sightings its rows, at least one; rows without a date first
 * @param facts the latest known word on each fact
 * @param joinedBy why the rows were taken for one car, a sentence for each join beyond the collector's own id
 */
public record Car(String name, List<Listing> sightings, CarFacts facts, List<String> joinedBy) {

    /** Copies the lists in and checks that there is a sighting. */
    public Car {
        requireNonNull(name, "name");
        requireNonNull(facts, "facts");
        sightings = List.copyOf(sightings);
        joinedBy = List.copyOf(joinedBy);
        if (sightings.isEmpty()) {
            throw new IllegalArgumentException("a car needs at least one sighting");
        }
    }

    /**
     * The first day on which it was seen.
     *
     * @return empty if no row has a date
     */
    public Optional<LocalDate> firstSeen() {
        return sightings.stream().flatMap(s -> s.seenOn().stream()).min(LocalDate::compareTo);
    }

    /**
     * The last day on which it was seen.
     *
     * @return empty if no row has a date
     */
    public Optional<LocalDate> lastSeen() {
        return sightings.stream().flatMap(s -> s.seenOn().stream()).max(LocalDate::compareTo);
    }

    /**
     * The latest sighting.
     *
     * @return the last of the sightings
     */
    public Listing latest() {
        return sightings.get(sightings.size() - 1);
    }
}
