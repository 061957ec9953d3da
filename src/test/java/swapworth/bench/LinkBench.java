package swapworth.bench;

import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.stream.Collectors;
import swapworth.listing.Car;
import swapworth.listing.CarFacts;
import swapworth.listing.CarMatching;
import swapworth.listing.Listing;
import swapworth.listing.Listings;
import swapworth.listing.ListingsRead;
import swapworth.listing.Mileage;
import swapworth.listing.Origin;

/**
 * How well cars are known again by their facts: {@code LinkBench FILE MILES SEEDS}, where the file's ids are the truth. The ids are taken
 * away, and each car's mileage grows from one of its days to the next by a random distance of up to so many miles a month. A link is a
 * car on two days, with no day of it between them.
 */
public final class LinkBench {
    private static final double DAYS_PER_MONTH = 30;

    private LinkBench() {
    }

    /** Prints a line for each seed. */
    public static void main(String[] arguments) {
        ListingsRead read = Listings.read(Path.of(arguments[0]));
        System.out.println(read.counts().sentence() + "; " + read.cars().size() + " cars; "
                + read.cars().stream().mapToInt(c -> c.priceCuts().size()).sum() + " price cuts");
        for (long seed = 1; seed <= Long.parseLong(arguments[2]); seed++) {
            run(read.listings(), Double.parseDouble(arguments[1]), seed);
        }
    }

    private static void run(List<Listing> listings, double milesAMonth, long seed) {
        Map<Origin, String> truth = listings.stream().collect(Collectors.toMap(Listing::origin, l -> l.id().orElseThrow()));
        List<Listing> hidden = hidden(listings, milesAMonth, new Random(seed));
        Map<String, Set<LocalDate>> days = new HashMap<>();
        hidden.forEach(l -> days.computeIfAbsent(truth.get(l.origin()), id -> new TreeSet<>()).add(l.seenOn().orElseThrow()));
        int links = days.values().stream().mapToInt(d -> d.size() - 1).sum();
        int found = 0;
        Set<String> right = new HashSet<>();
        int wrong = 0;
        for (Car car : CarMatching.match(hidden).cars()) {
            TreeMap<LocalDate, Set<String>> ids = new TreeMap<>();
            car.sightings().forEach(s -> ids.computeIfAbsent(s.seenOn().orElseThrow(), d -> new TreeSet<>()).add(truth.get(s.origin())));
            for (LocalDate day : ids.navigableKeySet().tailSet(ids.firstKey(), false)) {
                LocalDate before = ids.lowerKey(day);
                Set<String> both = new TreeSet<>(ids.getOrDefault(before, Set.of()));
                both.retainAll(ids.getOrDefault(day, Set.of()));
                found++;
                wrong += both.isEmpty() ? 1 : 0;
                both.forEach(id -> right.add(id + before + day));
            }
        }
        System.out.printf("seed %d: %d true links, %d found rightly (%.1f %%), %d of %d found are false (%.1f %%)%n", seed, links,
                right.size(), 100.0 * right.size() / links, wrong, found, 100.0 * wrong / found);
    }

    private static List<Listing> hidden(List<Listing> listings, double milesAMonth, Random random) {
        Map<String, Double> grown = new HashMap<>();
        Map<String, LocalDate> last = new HashMap<>();
        List<Listing> hidden = new ArrayList<>();
        for (Listing l : listings.stream().sorted(Comparator.comparing(l -> l.seenOn().orElseThrow())).toList()) {
            String id = l.id().orElseThrow();
            LocalDate day = l.seenOn().orElseThrow();
            LocalDate before = last.put(id, day);
            if (before != null) {
                double months = (day.toEpochDay() - before.toEpochDay()) / DAYS_PER_MONTH;
                grown.merge(id, Math.rint(random.nextDouble() * milesAMonth * months), Double::sum);
            }
            CarFacts facts = l.facts().mileage().map(m -> l.facts().toBuilder().mileage(new Mileage(m.miles() + grown.getOrDefault(id, 0.0),
                    m.status())).build()).orElse(l.facts());
            hidden.add(new Listing(l.origin(), Optional.empty(), l.seenOn(), facts, l.price(), l.outcome(), l.endedOn(),
                    l.saved(), l.source(),
                    l.note(), l.remarks()));
        }
        return hidden;
    }
}
