package swapworth.world;

import java.math.BigDecimal;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import swapworth.listing.Car;
import swapworth.listing.CarFacts;
import swapworth.listing.Listing;
import swapworth.listing.Mileage;
import swapworth.listing.Origin;
import swapworth.listing.Price;
import swapworth.money.Money;

/**
 * An invented market with a known truth: cars, what a collector saw of them, and the files that he kept. The same seed and
 * settings give the same world on every machine.
 */
public final class SampleWorld {

    private final long seed;
    private final Truths truths;
    private final List<CarOfWorld> cars;
    private final List<Sighting> sightings;
    private final LocalDate lastEvening;
    private final WorldFiles files;

    private SampleWorld(long seed, Truths truths, List<CarOfWorld> cars, List<Sighting> sightings, LocalDate lastEvening,
            WorldFiles files) {
        this.seed = seed;
        this.truths = truths;
        this.cars = List.copyOf(cars);
        this.sightings = List.copyOf(sightings);
        this.lastEvening = lastEvening;
        this.files = files;
    }

    /** The world of that seed with the usual settings. */
    public static SampleWorld generate(long seed) {
        return withDefaults().generate(seed);
    }

    /** The usual settings, to be changed. */
    public static WorldSettings withDefaults() {
        return WorldSettings.defaults();
    }

    static SampleWorld generate(long seed, WorldSettings settings) {
        Truths truths = Truths.draw(seed, settings);
        CarMaker maker = new CarMaker(Chance.of(seed, "cars"), settings);
        Chance errors = Chance.of(seed, "errors");
        History history = new History(Chance.of(seed, "histories"), truths, settings);
        List<CarOfWorld> cars = new ArrayList<>();
        List<List<Sighting>> parts = new ArrayList<>();
        for (Line line : Line.values()) {
            for (int i = 0; i < settings.cars(line); i++) {
                CarFacts facts = maker.make(line);
                double age = facts.ageOn(history.lastEvening()).orElseThrow();
                double error = truths.errorScale(age) * errors.studentT(5);
                History.Seen seen = history.of(cars.size(), line, facts, error);
                cars.add(seen.car());
                parts.addAll(seen.parts());
            }
        }
        List<Sighting> sightings = numbered(cars, parts);
        Truths told = truths.withMedianCar(
                median(cars.stream().mapToDouble(car -> car.facts().ageOn(history.lastEvening()).orElseThrow()).toArray()),
                median(cars.stream().mapToDouble(car -> car.facts().mileage().orElseThrow().miles()).toArray()));
        WorldFiles files = WorldFiles.write(Chance.of(seed, "dirt"), settings, told, cars, sightings, history.lastEvening());
        return new SampleWorld(seed, told, cars, sightings, history.lastEvening(), files);
    }

    /**
     * Gives each part its id in the order in which the collector met it, and puts the sightings in the order of his evenings.
     */
    private static List<Sighting> numbered(List<CarOfWorld> cars, List<List<Sighting>> parts) {
        List<List<Sighting>> met = new ArrayList<>(parts);
        met.sort(Comparator.comparing((List<Sighting> part) -> part.get(0).seenOn()).thenComparing(part -> part.get(0).car()));
        Map<Line, Integer> next = new EnumMap<>(Line.class);
        List<Sighting> sightings = new ArrayList<>();
        List<List<String>> ids = new ArrayList<>();
        cars.forEach(car -> ids.add(new ArrayList<>()));
        for (List<Sighting> part : met) {
            int car = part.get(0).car();
            Line line = cars.get(car).line();
            String id = id(line, next.merge(line, 1, Integer::sum));
            ids.get(car).add(id);
            part.forEach(sighting -> sightings.add(sighting.withId(id)));
        }
        for (int i = 0; i < cars.size(); i++) {
            cars.set(i, cars.get(i).withIds(ids.get(i)));
        }
        sightings.sort(Comparator.comparing(Sighting::seenOn).thenComparing(Sighting::id).thenComparing(Sighting::kind));
        return sightings;
    }

    static String id(Line line, int number) {
        String digits = Integer.toString(1_000 + number).substring(1);
        return line.idPrefix() + "-" + digits;
    }

    private static double median(double... values) {
        if (values.length == 0) {
            return 0;
        }
        double[] sorted = values.clone();
        Arrays.sort(sorted);
        int middle = sorted.length / 2;
        return sorted.length % 2 == 1 ? sorted[middle] : (sorted[middle - 1] + sorted[middle]) / 2;
    }

    /** The seed. */
    public long seed() {
        return seed;
    }

    /** What is true. */
    public Truths truths() {
        return truths;
    }

    /** All cars. */
    public List<CarOfWorld> cars() {
        return cars;
    }

    /** All sightings as they truly were, before dirt, in the order of the evenings. */
    public List<Sighting> sightings() {
        return sightings;
    }

    /** The last evening of collecting: the day on which the files are valued. */
    public LocalDate lastEvening() {
        return lastEvening;
    }

    /** The text of each file of the folder by its name. */
    public Map<String, String> files() {
        return files.texts();
    }

    /** What was done to the rows of {@code listings.csv}, with the line of each. */
    public List<WorldFiles.Slip> slips() {
        return files.slips();
    }

    /** The cars of {@code cars.csv}, with what is true of them. */
    public List<WorldFiles.InPlay> carsInPlay() {
        return files.carsInPlay();
    }

    /** The sightings as clean listings, without a detour through the files; the line is that of a file without dirt. */
    public List<Listing> listings() {
        List<Listing> listings = new ArrayList<>();
        for (Sighting sighting : sightings) {
            CarFacts facts = cars.get(sighting.car()).facts();
            CarFacts seen = facts.toBuilder()
                    .mileage(new Mileage(sighting.miles(), facts.mileage().orElseThrow().status()))
                    .build();
            Money typed = Money.of(BigDecimal.valueOf(sighting.price()).toPlainString(), "USD");
            Price price = new Price(typed, sighting.price(), sighting.kind(), sighting.includes());
            listings.add(new Listing(new Origin("listings.csv", listings.size() + 2), Optional.of(sighting.id()),
                    Optional.of(sighting.seenOn()), seen, price, sighting.outcome(), sighting.endedOn(),
                    sighting.saved(), Optional.of(sighting.source()), Optional.empty(), List.of()));
        }
        return listings;
    }

    /** The clean listings joined as they truly belong together, in the order of {@link #cars}. */
    public List<Car> joinedCars() {
        List<List<Listing>> byCar = new ArrayList<>();
        cars.forEach(car -> byCar.add(new ArrayList<>()));
        List<Listing> listings = listings();
        for (int i = 0; i < listings.size(); i++) {
            byCar.get(sightings.get(i).car()).add(listings.get(i));
        }
        List<Car> joined = new ArrayList<>();
        for (int i = 0; i < cars.size(); i++) {
            List<Listing> rows = byCar.get(i);
            List<String> why = cars.get(i).ids().size() > 1 ? List.of("known to be one car") : List.of();
            joined.add(new Car(cars.get(i).name(), rows, rows.get(rows.size() - 1).facts(), why));
        }
        return joined;
    }
}
