package swapworth.listing;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotSame;
import static org.junit.jupiter.api.Assertions.assertSame;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.lang.reflect.Method;
import java.lang.reflect.RecordComponent;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;

/** That cars made from columns are what their sightings say, and hold every row once. */
class StoredCarsTest extends ReadingListings {

    @Test
    void every_row_is_a_sighting_of_one_car_and_each_car_knows_the_latest_word() throws ReflectiveOperationException {
        ListingsRead read = read(manyRows());
        List<Origin> seen = new ArrayList<>();
        Set<String> names = new HashSet<>();
        for (Car car : read.cars()) {
            String name = "";
            for (Listing sighting : car.sightings()) {
                seen.add(sighting.origin());
                name = name.isEmpty() ? sighting.id().orElse("") : name;
            }
            for (RecordComponent fact : CarFacts.class.getRecordComponents()) {
                assertEquals(latest(car, fact), fact.getAccessor().invoke(car.facts()), fact.getName());
            }
            assertEquals(name.isEmpty() ? car.sightings().get(0).origin().toString() : name, car.name());
            names.add(car.name());
        }
        assertEquals(read.listings().size(), seen.size());
        assertEquals(new HashSet<>(read.listings().stream().map(Listing::origin).toList()), new HashSet<>(seen));
        assertTrue(read.cars().stream().anyMatch(car -> car.sightings().size() > 2));
        assertTrue(read.cars().stream().anyMatch(car -> !car.joinedBy().isEmpty()));
    }

    /** The last of what the sightings of a car say of a fact and that is known; of further columns the last text of each. */
    private static Object latest(Car car, RecordComponent fact) throws ReflectiveOperationException {
        Object latest = fact.getAccessor().invoke(car.sightings().get(0).facts());
        Map<Object, Object> further = new HashMap<>();
        for (Listing sighting : car.sightings()) {
            Object word = fact.getAccessor().invoke(sighting.facts());
            boolean known = !word.toString().equals("UNKNOWN") && !word.toString().endsWith(".empty");
            latest = known ? word : latest;
            if (word instanceof Map<?, ?> texts) {
                further.putAll(texts);
            }
        }
        return latest instanceof Map ? further : latest;
    }

    @Test
    void plain_listings_are_matched_into_the_same_cars_as_those_that_were_read() {
        ListingsRead read = read(manyRows());
        assertEquals(read.cars(), CarMatching.match(new ArrayList<>(read.listings())).cars());
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
    void looks_at_cars_and_prices_are_those_of_the_cars_whether_kept_as_columns_or_not() {
        List<Car> kept = read(manyRows()).cars();
        List<Car> plain = new ArrayList<>(kept);
        int once = 0;
        for (int i = 0; i < plain.size(); i++) {
            SeenCar look = SeenCar.of(kept, i);
            assertSame(plain.get(i), SeenCar.of(plain, i));
            assertEquals(plain.get(i).facts(), look.facts().made());
            assertEquals(plain.get(i).outcome(), look.outcome());
            assertEquals(plain.get(i).sightings().stream().map(Listing::origin).toList(),
                    look.sightings().stream().map(Sighting::origin).toList());
            once += look.sightings().size() == 1 ? 1 : 0;
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
        StringBuilder text = new StringBuilder(
                "id,seen_on,vehicle,trim,model_year,mileage_mi,price_usd,region,note,colour,title,rust,power_kw\n");
        for (int i = 0; i < 3_000; i++) {
            int car = random.nextInt(1_600);
            SplittableRandom its = new SplittableRandom(car);
            int day = random.nextInt(1, 28);
            text.append(random.nextInt(3) == 0 ? "" : "c" + car).append(",2025-0").append(random.nextInt(1, 9)).append('-')
                    .append(day < 10 ? "0" : "").append(day).append(',').append(its.nextBoolean() ? "Corvane" : "Jorquist").append(',')
                    .append(its.nextBoolean() ? "Fitted" : "").append(',').append(2005 + its.nextInt(9)).append(',')
                    .append(20_000 + its.nextInt(150_000)).append(',').append(3_000 + its.nextInt(9_000)).append(',')
                    .append(its.nextBoolean() ? "Upper Dell" : "Tarn Side").append(',').append(its.nextBoolean() ? "one owner" : "")
                    .append(',').append(its.nextBoolean() ? "red" : "green")
                    .append(random.nextBoolean() ? ",clean" : ",").append(random.nextBoolean() ? ",worn" : ",")
                    .append(random.nextBoolean() ? ",90" : ",").append('\n');
        }
        return text.toString();
    }
}
