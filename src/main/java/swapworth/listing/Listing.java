package swapworth.listing;

import static java.util.Objects.requireNonNull;

import java.time.LocalDate;
import java.util.List;
import java.util.Optional;

/**
 * One sighting of one advertisement or sale: one usable row of a file.
 *
 * @param origin where the row stands
 * @param id the collector's own name for the advertisement
 * @param seenOn the day it was seen
 * @param facts what the row says of the car
 * @param price the price
 * @param outcome how the advertisement ended, as far as the row knows
 * @param endedOn the day it ended
 * @param saved how the row came into the collection
 * @param source where the collector found it
 * @param note free text, never interpreted
 * @param remarks what a reader should know of how the row was understood: odd values, defaults taken
 */
public record Listing(
        Origin origin,
        Optional<String> id,
        Optional<LocalDate> seenOn,
        CarFacts facts,
        Price price,
        Outcome outcome,
        Optional<LocalDate> endedOn,
        Saved saved,
        Optional<String> source,
        Optional<String> note,
        List<String> remarks) implements Sighting {

    /** Copies the remarks in and checks that nothing is missing. */
    public Listing {
        requireNonNull(origin, "origin");
        requireNonNull(id, "id");
        requireNonNull(seenOn, "seenOn");
        requireNonNull(facts, "facts");
        requireNonNull(price, "price");
        requireNonNull(outcome, "outcome");
        requireNonNull(endedOn, "endedOn");
        requireNonNull(saved, "saved");
        requireNonNull(source, "source");
        requireNonNull(note, "note");
        remarks = List.copyOf(remarks);
    }

    @Override
    public double amount() {
        return price.amount();
    }

    @Override
    public PriceKind kind() {
        return price.kind();
    }

    @Override
    public PriceIncludes includes() {
        return price.includes();
    }

    /** What was seen, in one line. */
    @Override
    public String toString() {
        return id.map(i -> i + ", ").orElse("") + facts.words() + facts.mileage().map(m -> ", " + m.words()).orElse("") + ", "
                + price.typed() + ", " + level().words() + seenOn.map(day -> ", seen on " + day).orElse("") + ", " + origin;
    }
}
