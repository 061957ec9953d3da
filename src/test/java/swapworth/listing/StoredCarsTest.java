package swapworth.listing;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotSame;
import static org.junit.jupiter.api.Assertions.assertSame;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.lang.reflect.Method;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;

/** That cars made from columns are what their sightings say, and hold every row once. */
class StoredCarsTest extends ReadingListings {

    @Test
    void every_row_is_a_sighting_of_one_car_and_each_car_knows_the_latest_word() {
        ListingsRead read = read(manyRows());
        List<Origin> seen = new ArrayList<>();
        Set<String> names = new HashSet<>();
        for (Car car : read.cars()) {
            CarFacts facts = car.sightings().get(0).facts();
            String name = "";
            for (Listing sighting : car.sightings()) {
                seen.add(sighting.origin());
                facts = sighting == car.sightings().get(0) ? facts : facts.updatedBy(sighting.facts());
                name = name.isEmpty() ? sighting.id().orElse("") : name;
            }
            assertEquals(facts, car.facts());
            assertEquals(name.isEmpty() ? car.sightings().get(0).origin().toString() : name, car.name());
            names.add(car.name());
        }
        assertEquals(read.listings().size(), seen.size());
        assertEquals(new HashSet<>(read.listings().stream().map(Listing::origin).toList()), new HashSet<>(seen));
        assertTrue(read.cars().stream().anyMatch(car -> car.sightings().size() > 2));
        assertTrue(read.cars().stream().anyMatch(car -> !car.joinedBy().isEmpty()));
    }

    @Test
    void plain_listings_are_matched_into_the_same_cars_as_those_that_were_read() {
        ListingsRead read = read(manyRows());
        assertEquals(read.cars(), CarMatching.withDefaults().match(new ArrayList<>(read.listings())).cars());
    }

    @Test
    void a_look_at_a_row_says_what_the_listing_made_of_it_says() throws ReflectiveOperationException {
        ListingsRead read = read(manyRows());
        for (int i = 0; i < read.listings().size(); i++) {
            Listing listing = read.listings().get(i);
            Sighting look = Sighting.of(read.listings(), i);
            assertSame(listing, Sighting.of(List.of(listing), 0));
            assertNotSame(listing, look);
            says(Sighting.class, listing, look);
            says(Facts.class, listing.facts(), look.facts());
            assertEquals(listing.facts(), look.facts().made());
            LocalDate day = LocalDate.of(2026, 1, 1).plusDays(i);
            assertEquals(listing.facts().ageOn(day), look.facts().ageOn(day));
        }
    }

    private static <T> void says(Class<T> kind, T expected, T asked) throws ReflectiveOperationException {
        for (Method question : kind.getMethods()) {
            if (question.getParameterCount() == 0 && !question.getName().equals("facts")) {
                assertEquals(question.invoke(expected), question.invoke(asked), question.getName());
            }
        }
    }

    @Test
    void sightings_and_prices_are_those_of_the_cars_whether_kept_as_columns_or_not() {
        List<Car> kept = read(manyRows()).cars();
        List<Car> plain = new ArrayList<>(kept);
        int once = 0;
        for (int i = 0; i < plain.size(); i++) {
            Optional<Sighting> only = Sighting.onlyOne(kept, i);
            assertEquals(Sighting.onlyOne(plain, i).map(Sighting::origin), only.map(Sighting::origin));
            assertEquals(plain.get(i).sightings().size() == 1, only.isPresent());
            once += only.isPresent() ? 1 : 0;
        }
        assertTrue(once > 100 && once < plain.size() - 100, once + " seen once");
        for (String line : List.of("Corvane", "Jorquist", "Nobody's")) {
            double[] prices = Car.pricesOf(kept, line);
            Arrays.sort(prices);
            double[] expected = Car.pricesOf(plain, line);
            Arrays.sort(expected);
            assertArrayEquals(expected, prices);
            assertEquals(!line.equals("Nobody's"), prices.length > 0);
        }
    }

    @Test
    void the_same_car_asked_for_twice_is_equal() {
        ListingsRead read = read(manyRows());
        List<Car> first = new ArrayList<>(read.cars());
        assertEquals(first, read.cars());
    }

    private static String manyRows() {
        SplittableRandom random = new SplittableRandom(11);
        StringBuilder text = new StringBuilder("id,seen_on,vehicle,trim,model_year,mileage_mi,price_usd,region,note,colour\n");
        for (int i = 0; i < 3_000; i++) {
            int car = random.nextInt(1_600);
            SplittableRandom its = new SplittableRandom(car);
            int day = random.nextInt(1, 28);
            text.append(random.nextInt(3) == 0 ? "" : "c" + car).append(",2025-0").append(random.nextInt(1, 9)).append('-')
                    .append(day < 10 ? "0" : "").append(day).append(',').append(its.nextBoolean() ? "Corvane" : "Jorquist").append(',')
                    .append(its.nextBoolean() ? "Fitted" : "").append(',').append(2005 + its.nextInt(9)).append(',')
                    .append(20_000 + its.nextInt(150_000)).append(',').append(3_000 + its.nextInt(9_000)).append(',')
                    .append(its.nextBoolean() ? "Upper Dell" : "Tarn Side").append(',').append(its.nextBoolean() ? "one owner" : "")
                    .append(',').append(its.nextBoolean() ? "red" : "green").append('\n');
        }
        return text.toString();
    }
}
