package swapworth.listing;

import static java.util.Objects.requireNonNull;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.stream.Stream;

/**
 * One car: all sightings that were joined because they show the same car, in order of date, then of place in the files. The car,
 * not the row, is the unit of evidence.
 *
 * @param name the id of its first advertisement, else where its first row stands
 * @param sightings its rows, at least one; rows without a date first
 * @param facts the latest known word on each fact
 * @param joinedBy why the rows were taken for one car, a sentence for each join beyond the collector's own id
 */
public record Car(String name, List<Listing> sightings, CarFacts facts, List<String> joinedBy) implements SeenCar {

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

    /**
     * A change of the asking price between two sightings.
     *
     * @param from the day of the earlier sighting
     * @param to the day of the later one
     * @param before the earlier price, in the base currency
     * @param after the later price, in the base currency
     */
    public record PriceChange(LocalDate from, LocalDate to, double before, double after) {

        /** Checks that nothing is missing. */
        public PriceChange {
            requireNonNull(from, "from");
            requireNonNull(to, "to");
        }

        /**
         * The change in per cent of the earlier price.
         *
         * @return below 0 for a cut
         */
        public double percent() {
            return 100 * (after / before - 1);
        }
    }

    /**
     * The changes of the asking price, from each dated sighting to the next; of two in one foreign currency the earlier is taken at the
     * rate of the later, so that a rate that moved is no cut.
     *
     * @return in order of time; changes that convert to the same amount are none
     */
    public List<PriceChange> priceChanges() {
        List<PriceChange> changes = new ArrayList<>();
        Optional<Listing> before = Optional.empty();
        for (Listing sighting : sightings) {
            if (sighting.price().kind() != PriceKind.ASKING || sighting.seenOn().isEmpty()) {
                continue;
            }
            if (before.isPresent() && before.get().price().amount() != sighting.price().amount()
                    && !before.get().price().sameAsTyped(sighting.price())) {
                changes.add(new PriceChange(before.get().seenOn().orElseThrow(), sighting.seenOn().orElseThrow(),
                        before.get().price().amountBeside(sighting.price()), sighting.price().amount()));
            }
            before = Optional.of(sighting);
        }
        return List.copyOf(changes);
    }

    /**
     * The cuts of the asking price.
     *
     * @return those of the price changes that go down
     */
    public List<PriceChange> priceCuts() {
        return priceChanges().stream().filter(change -> change.after() < change.before()).toList();
    }

    /**
     * How long it is known to have been on offer: from the first sighting to the last day on which anything is known of it. The true time
     * is longer: it was on offer before it was first seen.
     *
     * @return days, at least 0; empty if no sighting has a date
     */
    public OptionalLong daysOnOffer() {
        Optional<LocalDate> first = firstSeen();
        if (first.isEmpty()) {
            return OptionalLong.empty();
        }
        return OptionalLong.of(Math.max(0, lastKnown().orElseThrow().toEpochDay() - first.get().toEpochDay()));
    }

    /**
     * The last day on which anything is known of it: its last sighting, a sale among them, or the end of its last advertisement, whichever
     * is later. An advertisement that ended before another one of the car began is not its end.
     *
     * @return empty if no row has a date
     */
    public Optional<LocalDate> lastKnown() {
        return Stream.of(lastSeen(), endedOn()).flatMap(Optional::stream).max(LocalDate::compareTo);
    }

    /**
     * The day on which the last advertisement ended.
     *
     * @return the latest such day of the rows, if one has it
     */
    public Optional<LocalDate> endedOn() {
        return sightings.stream().flatMap(s -> s.endedOn().stream()).max(LocalDate::compareTo);
    }

    /**
     * The last asking price.
     *
     * @return the latest sighting with an asking price, if there is one
     */
    public Optional<Listing> lastAsk() {
        return last(PriceKind.ASKING);
    }

    /**
     * The sale.
     *
     * @return the latest sighting with a price that was paid, if there is one
     */
    public Optional<Listing> sale() {
        return last(PriceKind.SOLD);
    }

    private Optional<Listing> last(PriceKind kind) {
        for (int i = sightings.size() - 1; i >= 0; i--) {
            if (sightings.get(i).price().kind() == kind) {
                return Optional.of(sightings.get(i));
            }
        }
        return Optional.empty();
    }

    /**
     * The prices at which cars of a line were seen.
     *
     * @param cars any cars
     * @param line the line, as {@link CarFacts#vehicle()}
     * @return in the base currency, one for each sighting of the line
     */
    public static double[] pricesOf(List<Car> cars, String line) {
        return cars instanceof StoredCars stored ? stored.pricesOf(line)
                : cars.stream().flatMap(car -> car.sightings.stream()).filter(s -> s.facts().vehicle().equals(line))
                .mapToDouble(s -> s.price().amount()).toArray();
    }
}
