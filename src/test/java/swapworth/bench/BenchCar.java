package swapworth.bench;

import java.math.BigDecimal;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.TreeMap;
import swapworth.listing.Car;
import swapworth.listing.CarFacts;
import swapworth.listing.Condition;
import swapworth.listing.Listing;
import swapworth.listing.Mileage;
import swapworth.listing.Price;
import swapworth.market.Subject;
import swapworth.money.Money;

/**
 * One car of the bench: one row, its latest asking price, else its sale.
 *
 * @param car the car with that one sighting
 * @param age years; not a number where unknown
 * @param miles not a number where unknown
 * @param cells what the references with all columns know beside age and mileage, by column
 */
record BenchCar(Car car, double age, double miles, Map<String, String> cells) {

    /** What became of the cars of a file. */
    record Taken(List<BenchCar> cars, String note) {
    }

    /** Whether cars without age or mileage take part. */
    enum Gaps { KEPT, LEFT_OUT }

    /** One row a car, without repeated ones (line, year, mileage, price) and without prices that are no offer. */
    static Taken take(List<Car> cars, List<String> further, double lowestPrice, Gaps gaps) {
        LocalDate last = cars.stream().flatMap(c -> c.lastSeen().stream()).max(LocalDate::compareTo).orElse(LocalDate.of(
                1 + cars.stream().mapToInt(c -> c.facts().modelYear().orElse(0)).max().orElse(0), 7, 1));
        List<BenchCar> taken = new ArrayList<>();
        Set<List<Object>> seen = new LinkedHashSet<>();
        int priceless = 0;
        int low = 0;
        int repeated = 0;
        int gapped = 0;
        for (Car car : cars) {
            Optional<Listing> row = car.lastAsk().or(car::sale);
            if (row.isEmpty()) {
                priceless++;
                continue;
            }
            BenchCar one = of(car, row.get(), further, last);
            CarFacts facts = one.car.facts();
            if (one.price() < lowestPrice) {
                low++;
            } else if (gaps == Gaps.LEFT_OUT && Double.isNaN(one.age + one.miles)) {
                gapped++;
            } else if (seen.add(List.of(facts.vehicle(), facts.modelYear(), facts.modelYear().isPresent() ? 0.0 : one.age,
                    one.miles, one.price()))) {
                taken.add(one);
            } else {
                repeated++;
            }
        }
        return new Taken(List.copyOf(taken), taken.size() + " cars of " + cars.size() + " taken; left out: " + repeated
                + " that repeat line, year, mileage and price of another, " + low + " priced below " + lowestPrice + ", " + gapped
                + " without age or mileage, " + priceless + " without an asking price or a sale.");
    }

    private static BenchCar of(Car car, Listing row, List<String> further, LocalDate fallback) {
        CarFacts.Builder builder = car.facts().toBuilder().seller(row.facts().seller());
        row.facts().region().ifPresent(builder::region);
        // Measured facts have columns of their own, which the model knows; the references see them as further columns.
        Map<String, String> asked = new HashMap<>();
        for (String column : further) {
            cell(car.facts(), column).ifPresent(text -> asked.put(column, text));
        }
        CarFacts facts = builder.further(asked).build();
        return of(new Listing(row.origin(), row.id(), row.seenOn(), facts, row.price(), row.outcome(), row.endedOn(), row.saved(),
                row.source(), row.note(), row.remarks()), car.name(), fallback);
    }

    private static Optional<String> cell(CarFacts facts, String column) {
        OptionalDouble measured = switch (column) {
            case "cylinders" -> facts.cylinders();
            case "power_kw" -> facts.powerKw();
            case "weight_kg" -> facts.weightKg();
            default -> OptionalDouble.empty();
        };
        return measured.isPresent() ? Optional.of(BigDecimal.valueOf(measured.getAsDouble()).toPlainString())
                : Optional.ofNullable(facts.further().get(column));
    }

    private static BenchCar of(Listing row, String name, LocalDate fallback) {
        CarFacts facts = row.facts();
        Map<String, String> cells = new TreeMap<>(facts.further());
        facts.trim().ifPresent(t -> cells.put("(trim)", t));
        facts.region().ifPresent(r -> cells.put("(region)", r));
        cells.put("(seller)", facts.seller().words());
        cells.put("(title)", facts.title().words());
        cells.put("(runs)", facts.runs().words());
        cells.put("(price kind)", row.price().kind().words());
        Map.of("(rust)", facts.rust(), "(paint)", facts.paint(), "(interior)", facts.interior(), "(mechanical)",
                facts.mechanical(), "(records)", facts.records()).forEach((column, state) -> {
                    if (state != Condition.UNKNOWN) {
                        cells.put(column, state.words());
                    }
                });
        return new BenchCar(new Car(name, List.of(row), facts, List.of()),
                facts.ageOn(row.seenOn().orElse(fallback)).orElse(Double.NaN),
                facts.mileage().map(Mileage::miles).orElse(Double.NaN), Map.copyOf(cells));
    }

    Listing row() {
        return car.latest();
    }

    double price() {
        return row().price().amount();
    }

    Subject subject() {
        return new Subject(car.facts(), row().level(), row().price().includes(), row().seenOn());
    }

    /** The car with its kilometres taken for miles. */
    BenchCar withKilometresForMiles() {
        if (Double.isNaN(miles)) {
            return this;
        }
        Mileage read = car.facts().mileage().orElseThrow();
        CarFacts facts = car.facts().toBuilder().mileage(new Mileage(read.miles() * 1.609344, read.status())).build();
        return changed(car.name(), facts, row().price(), row().seenOn());
    }

    /** The car with one digit of the price missing. */
    BenchCar withADigitMissing() {
        Price price = row().price();
        String typed = BigDecimal.valueOf(price.amount() / 10).toPlainString();
        return changed(car.name(), car.facts(), new Price(Money.of(typed, price.typed().currency().getCurrencyCode()),
                price.amount() / 10, price.kind(), price.includes()), row().seenOn());
    }

    /** The same row again under another id, seen so many days earlier. */
    BenchCar again(int daysEarlier) {
        return changed(car.name() + " again", car.facts(), row().price(), row().seenOn().map(day -> day.minusDays(daysEarlier)));
    }

    private BenchCar changed(String name, CarFacts facts, Price price, Optional<LocalDate> seenOn) {
        Listing old = row();
        Listing now = new Listing(old.origin(), Optional.of(name), seenOn, facts, price, old.outcome(), old.endedOn(),
                old.saved(), old.source(), old.note(), old.remarks());
        double aged = seenOn.isPresent() ? facts.ageOn(seenOn.get()).orElse(age) : age;
        return new BenchCar(new Car(name, List.of(now), facts, List.of()), aged,
                facts.mileage().map(Mileage::miles).orElse(Double.NaN), cells);
    }
}
