package swapworth.market;

import java.math.BigDecimal;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import java.util.function.UnaryOperator;
import swapworth.listing.Car;
import swapworth.listing.CarFacts;
import swapworth.listing.Listing;
import swapworth.listing.Mileage;
import swapworth.listing.MileageStatus;
import swapworth.listing.Origin;
import swapworth.listing.Outcome;
import swapworth.listing.Price;
import swapworth.listing.PriceIncludes;
import swapworth.listing.PriceKind;
import swapworth.listing.Saved;
import swapworth.listing.Seller;
import swapworth.money.Money;

/** Cars for the tests of the price model. */
public final class TestCars {

    private static final LocalDate DAY = LocalDate.of(2026, 6, 1);

    private TestCars() {
    }

    static FairValue fair(Valuation valuation) {
        return valuation.match(value -> value, no -> {
            throw new AssertionError(no);
        });
    }

    public static Mileage miles(double miles) {
        return new Mileage(miles, MileageStatus.READ);
    }

    private static Price price(double amount, Price like) {
        String currency = like.typed().currency().getCurrencyCode();
        return new Price(Money.of(BigDecimal.valueOf(amount).toPlainString(), currency), amount, like.kind(), like.includes());
    }

    private static Listing withPrice(Listing listing, double amount) {
        return new Listing(listing.origin(), listing.id(), listing.seenOn(), listing.facts(), price(amount, listing.price()),
                listing.outcome(), listing.endedOn(), listing.saved(), listing.source(), listing.note(), listing.remarks());
    }

    /** The car with another price in one of its sightings. */
    static Car withPrice(Car car, Listing sighting, double amount) {
        return mapped(car, listing -> listing == sighting ? withPrice(listing, amount) : listing);
    }

    /** The cars with all prices times a factor. */
    static List<Car> timesPrice(List<Car> cars, double factor) {
        return cars.stream().map(car -> mapped(car, listing -> withPrice(listing, factor * listing.price().amount()))).toList();
    }

    private static Car mapped(Car car, UnaryOperator<Listing> change) {
        return new Car(car.name(), car.sightings().stream().map(change).toList(), car.facts(), car.joinedBy());
    }

    /** A car of one private sighting. */
    static Car car(int number, String line, int modelYear, double miles, double amount, PriceKind kind, Seller seller) {
        return car(number, CarFacts.of(line).modelYear(modelYear).mileage(miles(miles)).seller(seller).build(), amount, kind);
    }

    /** A car on offer, of one sighting. */
    public static Car car(int number, CarFacts facts, double amount) {
        return car(number, facts, amount, PriceKind.ASKING);
    }

    /** A car of one sighting, with its price of that kind. */
    public static Car car(int number, CarFacts facts, double amount, PriceKind kind) {
        Price price = new Price(Money.of(BigDecimal.valueOf(Math.rint(amount)).toPlainString(), "USD"), Math.rint(amount), kind,
                PriceIncludes.NEITHER);
        Listing listing = new Listing(new Origin("listings.csv", number + 2), Optional.of("car-" + number), Optional.of(DAY),
                facts, price, Outcome.OPEN, Optional.empty(), Saved.WHOLE_SEARCH, Optional.empty(), Optional.empty(), List.of());
        return new Car("car-" + number, List.of(listing), facts, List.of());
    }

    /** A price of a car as somebody saw it on a day. */
    record Seen(LocalDate on, PriceKind kind, Seller seller, double amount) {
    }

    /** A car that was seen several times, in the order given. */
    static Car car(int number, CarFacts facts, List<Seen> times) {
        List<Listing> sightings = new ArrayList<>();
        for (Seen seen : times) {
            Price price = new Price(Money.of(BigDecimal.valueOf(Math.rint(seen.amount)).toPlainString(), "USD"), Math.rint(seen.amount),
                    seen.kind, PriceIncludes.NEITHER);
            sightings.add(new Listing(new Origin("listings.csv", 10 * number + 2 + sightings.size()), Optional.of("car-" + number),
                    Optional.of(seen.on), facts.toBuilder().seller(seen.seller).build(), price,
                    seen.kind == PriceKind.SOLD ? Outcome.SOLD : Outcome.OPEN, Optional.empty(), Saved.WHOLE_SEARCH, Optional.empty(),
                    Optional.empty(), List.of()));
        }
        return new Car("car-" + number, sightings, facts, List.of());
    }

    /** So many private asking prices of one invented line with a known fall by age and mileage and a scatter of 10 %. */
    static List<Car> line(String line, double level, int count, long seed) {
        Random random = new Random(seed);
        List<Car> cars = new ArrayList<>();
        for (int i = 0; i < count; i++) {
            int year = 2012 + random.nextInt(11);
            double age = 2026 - year;
            double miles = Math.rint(age * 9000 * Math.exp(0.3 * random.nextGaussian()));
            double log = Math.log(level) - 0.09 * (age - 7) - 0.04 * (miles - 60_000) / 10_000 + 0.1 * random.nextGaussian();
            cars.add(car((int) (1000 * (seed % 100)) + i, line, year, miles, Math.exp(log), PriceKind.ASKING, Seller.PRIVATE));
        }
        return cars;
    }
}
