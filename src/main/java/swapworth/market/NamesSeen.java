package swapworth.market;

import java.util.Collection;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import swapworth.listing.Facts;
import swapworth.reading.Spelling;

/**
 * The names that the listings have: who asks in case, spaces or hyphens of his own asks for the same line, trim, body, running gear and
 * region. A name that no listing has stays as it is.
 */
final class NamesSeen {
    private final Map<String, String> lines = new HashMap<>();
    private final Map<String, String> trims = new HashMap<>();
    private final Map<String, String> bodies = new HashMap<>();
    private final Map<String, String> gears = new HashMap<>();
    private final Map<String, String> regions = new HashMap<>();

    NamesSeen(List<Subject> examples) {
        for (Subject example : examples) {
            Facts car = example.facts();
            take(lines, car.vehicle());
            car.trim().ifPresent(trim -> take(trims, trim));
            car.body().ifPresent(body -> take(bodies, body));
            car.runningGear().ifPresent(gear -> take(gears, gear));
            car.region().ifPresent(region -> take(regions, region));
        }
    }

    /** Each name as it is, and the form in which names are compared: of two that are one by it the first. */
    private static void take(Map<String, String> names, String name) {
        if (names.put(name, name) == null) {
            names.putIfAbsent(Spelling.name(name), name);
        }
    }

    private static String asSeen(Map<String, String> names, String name) {
        String exact = names.get(name);
        return exact != null && exact.equals(name) ? name : names.getOrDefault(Spelling.name(name), name);
    }

    private static Optional<String> asSeen(Map<String, String> names, Optional<String> name) {
        return name.map(n -> asSeen(names, n));
    }

    /** A line as the listings spell it. */
    String line(String name) {
        return asSeen(lines, name);
    }

    /** The line that was probably meant by one that no listing has. */
    Optional<String> meant(String line) {
        return lines.containsKey(line) ? Optional.empty() : Spelling.slipOf(line, lines.values());
    }

    /** What is said of a line that is none of the model's. */
    IllegalArgumentException unknown(String line, Collection<String> known) {
        return new IllegalArgumentException("no car of the line '" + line + "' is in the model; "
                + meant(line).map(near -> "did you mean " + near + "?").orElseGet(() -> "its lines are " + String.join(", ", known)));
    }

    /** A car as the listings spell its names. */
    Facts of(Facts car) {
        String line = line(car.vehicle());
        Optional<String> trim = asSeen(trims, car.trim());
        Optional<String> body = asSeen(bodies, car.body());
        Optional<String> gear = asSeen(gears, car.runningGear());
        Optional<String> region = asSeen(regions, car.region());
        if (line.equals(car.vehicle()) && trim.equals(car.trim()) && body.equals(car.body()) && gear.equals(car.runningGear())
                && region.equals(car.region())) {
            return car;
        }
        var spelled = car.made().toBuilder().vehicle(line);
        trim.ifPresent(spelled::trim);
        body.ifPresent(spelled::body);
        gear.ifPresent(spelled::runningGear);
        region.ifPresent(spelled::region);
        return spelled.build();
    }

    /** A subject as the listings spell the names of its car. */
    Subject of(Subject subject) {
        Facts car = of(subject.facts());
        return car == subject.facts() ? subject : new Subject(car, subject.level(), subject.includes(), subject.on());
    }
}
