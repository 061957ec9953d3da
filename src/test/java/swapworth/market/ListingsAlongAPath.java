package swapworth.market;

import java.time.LocalDate;
import java.time.YearMonth;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import java.util.SortedMap;
import java.util.stream.IntStream;
import swapworth.listing.Car;
import swapworth.listing.CarFacts;
import swapworth.listing.Listing;
import swapworth.listing.Origin;
import swapworth.listing.Outcome;
import swapworth.listing.Price;
import swapworth.listing.PriceIncludes;
import swapworth.listing.PriceKind;
import swapworth.listing.Saved;
import swapworth.listing.Seller;
import swapworth.money.Money;

/** Invented listings of one line whose market follows a stated path: so many cars a month, errors of Student's t of scale 0.12. */
final class ListingsAlongAPath {
    private static final double SCALE = 0.12;
    private static final int DEGREES = 5;

    private final Random random;
    private final List<Car> cars = new ArrayList<>();

    private ListingsAlongAPath(long seed) {
        this.random = new Random(seed);
    }

    /**
     * Cars of one to twelve model years before the month.
     *
     * @param level ln of the level of each month
     */
    static List<Car> of(SortedMap<YearMonth, Double> level, int perMonth, long seed) {
        ListingsAlongAPath made = new ListingsAlongAPath(seed);
        level.forEach((month, log) -> {
            for (int i = 0; i < perMonth; i++) {
                made.add(month, month.getYear() - 1 - made.random.nextInt(12), log);
            }
        });
        return made.cars;
    }

    /** Cars of one model year. */
    static List<Car> ofModelYear(int modelYear, SortedMap<YearMonth, Double> level, int perMonth, long seed) {
        ListingsAlongAPath made = new ListingsAlongAPath(seed);
        level.forEach((month, log) -> {
            for (int i = 0; i < perMonth; i++) {
                made.add(month, modelYear, log);
            }
        });
        return made.cars;
    }

    /** The same cars at the same prices, with the dates dealt out anew. */
    static List<Car> withDatesDrawnAnew(List<Car> cars, long seed) {
        List<LocalDate> days = new ArrayList<>(cars.stream().map(c -> c.firstSeen().orElseThrow()).toList());
        Collections.shuffle(days, new Random(seed));
        List<Car> dealt = new ArrayList<>();
        for (int i = 0; i < cars.size(); i++) {
            dealt.add(seenOn(Optional.of(days.get(i)), cars.get(i)));
        }
        return dealt;
    }

    /** The same cars at the same prices, but that nobody wrote down the day of every second one. */
    static List<Car> withEverySecondDateLost(List<Car> cars) {
        return IntStream.range(0, cars.size()).mapToObj(i -> i % 2 == 0 ? cars.get(i) : withoutDate(cars.get(i))).toList();
    }

    /** The same car of no known day. */
    static Car withoutDate(Car car) {
        return seenOn(Optional.empty(), car);
    }

    /** The same car, seen so many days later. */
    static Car later(Car car, int days) {
        return seenOn(car.firstSeen().map(day -> day.plusDays(days)), car);
    }

    /** The same car, of which nobody knows that it is gone. */
    static Car stillOpen(Car car) {
        return seen(car.firstSeen(), Outcome.OPEN, Optional.empty(), car);
    }

    /** The same car at another price. */
    static Car at(Car car, double times) {
        Listing l = car.latest();
        double amount = Math.rint(times * l.price().amount());
        Price price = new Price(Money.of(Long.toString((long) amount), "USD"), amount, PriceKind.ASKING, PriceIncludes.NEITHER);
        return new Car(car.name(), List.of(new Listing(l.origin(), l.id(), l.seenOn(), l.facts(), price, l.outcome(), l.endedOn(),
                l.saved(), l.source(), l.note(), l.remarks())), car.facts(), List.of());
    }

    /** The same car, which so many days later still stood at its price. */
    static Car standing(Car car, int days) {
        Car first = stillOpen(car);
        Car second = seen(car.firstSeen().map(day -> day.plusDays(days)), Outcome.OPEN, Optional.empty(), car);
        return new Car(car.name(), List.of(first.latest(), second.latest()), car.facts(), List.of());
    }

    private static Car seenOn(Optional<LocalDate> day, Car car) {
        return seen(day, Outcome.GONE, day, car);
    }

    private static Car seen(Optional<LocalDate> day, Outcome outcome, Optional<LocalDate> ended, Car car) {
        Listing l = car.sightings().get(0);
        Listing moved = new Listing(l.origin(), l.id(), day, l.facts(), l.price(), outcome, ended, l.saved(), l.source(), l.note(),
                l.remarks());
        return new Car(car.name(), List.of(moved), l.facts(), List.of());
    }

    private void add(YearMonth month, int modelYear, double level) {
        LocalDate day = month.atDay(1 + random.nextInt(month.lengthOfMonth()));
        double age = day.getYear() + (day.getDayOfYear() - 182.5) / 365.25 - modelYear;
        double miles = Math.rint(age * 9000 * Math.exp(0.3 * random.nextGaussian()));
        double squares = 0;
        for (int k = 0; k < DEGREES; k++) {
            double g = random.nextGaussian();
            squares += g * g / DEGREES;
        }
        double log = Math.log(12_000) - 0.09 * (age - 7) - 0.04 * (miles - 60_000) / 10_000 + level
                + SCALE * random.nextGaussian() / Math.sqrt(squares);
        long amount = Math.round(Math.exp(log));
        String id = "car-" + cars.size();
        CarFacts facts = CarFacts.of("Abel").modelYear(modelYear).mileage(TestCars.miles(miles)).seller(Seller.PRIVATE).build();
        Listing listing = new Listing(new Origin("listings.csv", cars.size() + 2), Optional.of(id), Optional.of(day), facts,
                new Price(Money.of(Long.toString(amount), "USD"), amount, PriceKind.ASKING, PriceIncludes.NEITHER), Outcome.GONE,
                Optional.of(day), Saved.WHOLE_SEARCH, Optional.empty(), Optional.empty(), List.of());
        cars.add(new Car(id, List.of(listing), facts, List.of()));
    }
}
