package swapworth.report;

import static java.util.Objects.requireNonNull;

import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import swapworth.listing.CarFacts;
import swapworth.reading.Spelling;

/**
 * What a car has in common with a finished swap: its body, its running gear, both, or neither. Only what the rows state counts.
 *
 * @param line the line of the chassis
 * @param body the body, where it is stated
 * @param gear the running gear, where it is stated
 * @param gearLine the line that the running gear comes from, where it is stated
 * @param equivalents the lines of the factory equivalents
 */
record Shared(String line, Optional<String> body, Optional<String> gear, Optional<String> gearLine, Set<String> equivalents) {

    /** Checks that nothing is missing. */
    Shared {
        requireNonNull(line, "line");
        requireNonNull(body, "body");
        requireNonNull(gear, "gear");
        requireNonNull(gearLine, "gearLine");
        equivalents = Set.copyOf(equivalents);
    }

    /**
     * What is to be shared with a finished car.
     *
     * @param built its facts with the running gear that is in it, not that of its line
     * @param gearLine the line that this comes from
     */
    static Shared with(CarFacts built, Optional<String> gearLine, List<CarFacts> equivalents) {
        return new Shared(Spelling.name(built.vehicle()), built.body().map(Spelling::name),
                built.runningGear().map(Spelling::name), gearLine.map(Spelling::name),
                equivalents.stream().map(facts -> Spelling.name(facts.vehicle())).collect(Collectors.toUnmodifiableSet()));
    }

    /** In words, for one car of the market. */
    String by(CarFacts car) {
        String itsLine = Spelling.name(car.vehicle());
        Optional<String> itsBody = car.body().map(Spelling::name);
        boolean sameBody = itsLine.equals(line) || itsBody.isPresent() && itsBody.equals(body);
        Optional<String> itsGear = car.runningGear().map(Spelling::name);
        boolean sameGear = itsGear.isPresent() && gear.isPresent() ? itsGear.equals(gear) : gearLine.equals(Optional.of(itsLine));
        return (equivalents.contains(itsLine) ? "line of the factory equivalent" + (sameBody || sameGear ? ": " : "") : "")
                + (sameBody && sameGear ? "body and running gear" : sameBody ? "body" : sameGear ? "running gear"
                : equivalents.contains(itsLine) ? "" : "neither body nor running gear");
    }
}
