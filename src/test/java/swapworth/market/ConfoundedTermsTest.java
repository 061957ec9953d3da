package swapworth.market;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.function.BiFunction;
import org.junit.jupiter.api.Test;
import swapworth.listing.Car;
import swapworth.listing.CarFacts;
import swapworth.listing.Condition;
import swapworth.listing.Damage;
import swapworth.listing.Listing;
import swapworth.listing.Listings;
import swapworth.listing.PriceKind;
import swapworth.listing.Seller;
import swapworth.reading.DistanceUnit;

/** Terms that the prices cannot tell apart are named, and nothing else is. */
class ConfoundedTermsTest {

    private static List<Confounded> confounded(List<Car> cars) {
        return PriceModel.fit(cars).confounded();
    }

    private static List<Car> twoLines() {
        List<Car> cars = new ArrayList<>(TestCars.line("Aral Siv", 11_000, 20, 1));
        cars.addAll(TestCars.line("Aral Vel", 14_000, 15, 2));
        return cars;
    }

    private static List<Car> auctions(int count) {
        List<Car> cars = new ArrayList<>();
        for (int i = 0; i < count; i++) {
            cars.add(TestCars.car(700 + i, "Aral Siv", 2014 + i, 90_000 - 7_000 * i + 900 * (i % 3), 5_000 + 700 * i, PriceKind.SOLD,
                    Seller.AUCTION));
        }
        return cars;
    }

    /** The cars with other facts; the number of a car is its place in the list. */
    private static List<Car> changed(List<Car> cars, BiFunction<Integer, CarFacts, CarFacts> change) {
        List<Car> changed = new ArrayList<>();
        for (int i = 0; i < cars.size(); i++) {
            Car car = cars.get(i);
            CarFacts facts = change.apply(i, car.facts());
            Listing l = car.latest();
            changed.add(new Car(car.name(), List.of(new Listing(l.origin(), l.id(), l.seenOn(), facts, l.price(), l.outcome(), l.endedOn(),
                    l.saved(), l.source(), l.note(), l.remarks())), facts, car.joinedBy()));
        }
        return changed;
    }

    private static CarFacts damaged(CarFacts facts, Damage... zones) {
        EnumSet<Damage> set = EnumSet.noneOf(Damage.class);
        set.addAll(List.of(zones));
        return facts.toBuilder().damage(set).build();
    }

    @Test
    void all_sold_cars_stood_at_auctions_and_all_have_front_damage() {
        List<Car> cars = changed(twoLines(), (i, f) -> damaged(f));
        cars.addAll(changed(auctions(6), (i, f) -> damaged(f, Damage.FRONT)));
        PriceModel model = PriceModel.fit(cars);
        List<Confounded> found = model.confounded();
        assertEquals(1, found.size(), found.toString());
        assertEquals(Confounded.Kind.ALWAYS_TOGETHER, found.get(0).kind());
        assertEquals(List.of("level of trade: auction", "damage: front"), found.get(0).terms().subList(0, 2));
        String sentence = "'level of trade: auction' and 'damage: front' always go together in these prices: how an effect splits between"
                + " them is assumption";
        assertEquals(sentence, found.get(0).sentence());
        assertTrue(ModelTables.terms(model, DistanceUnit.MI).text().replaceAll("\\s+", " ").contains(sentence));
    }

    @Test
    void one_auction_car_without_the_damage_tells_them_apart() {
        List<Car> cars = changed(twoLines(), (i, f) -> damaged(f));
        cars.addAll(changed(auctions(6), (i, f) -> i == 0 ? damaged(f) : damaged(f, Damage.FRONT)));
        assertEquals(List.of(), confounded(cars));
    }

    @Test
    void a_region_that_is_a_line_by_another_name_is_named() {
        List<Confounded> found = confounded(changed(twoLines(),
                (i, f) -> f.toBuilder().region(f.vehicle().equals("Aral Vel") ? "north" : "south").build()));
        assertEquals(List.of(List.of("region: north", "line: Aral Vel")), found.stream().map(Confounded::terms).toList());
    }

    @Test
    void of_a_fact_with_very_many_words_the_commonest_are_looked_at() {
        List<Car> cars = new ArrayList<>();
        for (int line = 0; line < 510; line++) {
            cars.addAll(TestCars.line("Aral " + line, 9_000 + 10 * line, 4, line));
        }
        cars.addAll(TestCars.line("Aral Vel", 14_000, 30, 2));
        List<Confounded> found = confounded(changed(cars,
                (i, f) -> f.toBuilder().region(f.vehicle().equals("Aral Vel") ? "north" : "south").build()));
        assertEquals(List.of(List.of("region: north", "line: Aral Vel")), found.stream().map(Confounded::terms).toList());
    }

    @Test
    void a_fact_that_all_cars_share_is_not_seen_and_no_matter_of_confounding() {
        assertEquals(List.of(), confounded(auctions(9)));
        assertEquals(List.of(), confounded(changed(auctions(9), (i, f) -> damaged(f, Damage.FRONT))));
    }

    @Test
    void two_cars_that_share_two_facts_are_too_few_to_speak_of() {
        List<Car> cars = changed(twoLines(), (i, f) -> damaged(f));
        cars.addAll(changed(auctions(2), (i, f) -> damaged(f, Damage.FRONT)));
        assertEquals(List.of(), confounded(cars));
    }

    @Test
    void ordinary_listings_give_no_warning() {
        assertEquals(List.of(), confounded(Listings.read(Path.of("sample-listings/listings.csv")).cars()));
        for (int seed = 1; seed <= 20; seed++) {
            List<Car> cars = new ArrayList<>(TestCars.line("Aral Siv", 11_000, 9, seed));
            cars.addAll(TestCars.line("Aral Vel", 14_000, 6, 50 + seed));
            assertEquals(List.of(), confounded(cars), "seed " + seed);
        }
    }

    @Test
    void facts_that_are_blank_together_are_no_warning() {
        List<Car> cars = changed(twoLines(), (i, f) -> i % 3 == 0 ? f
                : f.toBuilder().rust(Condition.SOUND).paint(i % 3 == 1 ? Condition.SOUND : Condition.WORN).build());
        assertEquals(List.of(), confounded(cars));
    }

    @Test
    void a_fact_that_is_blank_wherever_another_is_seen_is_named() {
        List<Car> cars = changed(twoLines(), (i, f) -> damaged(f.toBuilder().rust(Condition.SOUND).build()));
        cars.addAll(changed(auctions(6), (i, f) -> damaged(f)));
        assertEquals(List.of(List.of("level of trade: auction", "rust: unknown")),
                confounded(cars).stream().map(Confounded::terms).toList());
    }
}
