package swapworth.market;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Random;
import java.util.TreeMap;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import swapworth.listing.Car;
import swapworth.listing.CarFacts;
import swapworth.listing.LevelOfTrade;
import swapworth.listing.Listings;
import swapworth.listing.Mileage;
import swapworth.listing.MileageStatus;
import swapworth.listing.PriceKind;
import swapworth.listing.Seller;
import swapworth.world.SampleWorld;

/** What must not matter to a value, and what must carry through. */
class PriceModelPropertiesTest {

    private static List<Car> some(long seed, int count) {
        List<Car> cars = new ArrayList<>(SampleWorld.generate(seed).joinedCars());
        Collections.shuffle(cars, new Random(seed));
        return cars.subList(0, count);
    }

    /** Ratios of medians and of ends of ranges of each car under two models; the second saw other prices of the same cars. */
    private static void assertRatio(double expected, double tolerance, PriceModel before, List<Car> was, PriceModel after,
            List<Car> is) {
        for (int c = 0; c < was.size(); c++) {
            Judgement one = before.judge(was.get(c).latest());
            Judgement other = after.judge(is.get(c).latest());
            assertEquals(one.position(), other.position(), one.car());
            if (one.valuation() instanceof FairValue a && other.valuation() instanceof FairValue b) {
                assertEquals(expected, b.median() / a.median(), tolerance * expected, one.car());
                assertEquals(expected, b.range(0.80).low() / a.range(0.80).low(), tolerance * expected, one.car());
                assertEquals(expected, b.range(0.95).high() / a.range(0.95).high(), tolerance * expected, one.car());
                assertEquals(a.priorShare(), b.priorShare(), 0.01, one.car());
            }
        }
    }

    @Test
    void the_order_of_the_cars_does_not_matter() {
        List<Car> cars = some(31, 60);
        List<Car> turned = new ArrayList<>(cars);
        Collections.shuffle(turned, new Random(2));
        assertRatio(1, 5e-4, PriceModel.fit(cars), cars, PriceModel.fit(turned), cars);
    }

    /** Rows as a collector keeps them in nine months: three lines, two trims and regions, and most facts stated now and then. */
    private static String collected(long seed) {
        Random random = new Random(seed);
        StringBuilder rows = new StringBuilder("id,seen_on,vehicle,trim,model_year,mileage_mi,price_usd,seller,region,rust,records\n");
        String[] lines = {"Aral Siv", "Aral Siv", "Aral Tor", "Aral Tor", "Aral Vel"};
        for (int i = 0; i < 44; i++) {
            String line = lines[random.nextInt(lines.length)];
            LocalDate seen = LocalDate.of(2025, 9, 6).plusDays(random.nextInt(280));
            int year = 2010 + random.nextInt(12);
            double age = seen.getYear() + seen.getDayOfYear() / 365.25 - year - 0.5;
            long miles = Math.round(age * 10_000 * Math.exp(0.3 * random.nextGaussian()));
            double level = line.equals("Aral Siv") ? 17_000 : line.equals("Aral Tor") ? 23_000 : 30_000;
            double price = level * Math.exp(0.3 - 0.1 * age - 4e-6 * miles + 0.12 * random.nextGaussian());
            rows.append("a").append(i).append(',').append(seen).append(',').append(line).append(',')
                    .append(of(random, "Plain", "Fitted", "")).append(',').append(year).append(',').append(miles).append(',')
                    .append(Math.round(price)).append(',').append(of(random, "private", "trade")).append(',')
                    .append(of(random, "North", "South", "")).append(',').append(of(random, "sound", "worn", "")).append(',')
                    .append(of(random, "sound", "bad", "")).append('\n');
        }
        return rows.toString();
    }

    private static String of(Random random, String... words) {
        return words[random.nextInt(words.length)];
    }

    /** The widths of the 80 % ranges of one plain car of each line. */
    private static Map<String, Double> widths(List<Car> cars) {
        PriceModel model = PriceModel.fit(cars);
        Map<String, Double> widths = new TreeMap<>();
        for (String line : List.of("Aral Siv", "Aral Tor", "Aral Vel")) {
            CarFacts plain = CarFacts.of(line).modelYear(2016).mileage(new Mileage(70_000, MileageStatus.READ)).build();
            Range range = TestCars.fair(model.value(Subject.of(plain, LevelOfTrade.PRIVATE_ASKING, LocalDate.of(2026, 6, 12)))).range(0.80);
            widths.put(line, Math.log(range.high() / range.low()));
        }
        return widths;
    }

    // One price more tells a little of how far all of them scatter, no more.
    @ParameterizedTest
    @ValueSource(longs = {1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12})
    void a_car_of_a_line_that_shares_nothing_with_the_others_moves_their_ranges_little(long seed, @TempDir Path folder)
            throws IOException {
        String rows = collected(seed);
        Map<String, Double> before = widths(Listings.read(Files.writeString(folder.resolve("listings.csv"), rows)).cars());
        String more = rows + "other,2026-05-20,Orvane,Plain,2016,70000,9000,private,North,sound,\n";
        Map<String, Double> after = widths(Listings.read(Files.writeString(folder.resolve("listings.csv"), more)).cars());
        before.forEach((line, width) -> assertEquals(1, after.get(line) / width, 0.03, line + " " + before + " " + after));
    }

    // 150 is a change of currency, 0.001 one to thousands.
    @ParameterizedTest
    @ValueSource(doubles = {2, 150, 0.001})
    void prices_times_a_factor_give_values_times_the_factor(double factor) {
        List<Car> cars = some(32, 60);
        List<Car> dearer = TestCars.timesPrice(cars, factor);
        assertRatio(factor, 1e-6, PriceModel.fit(cars), cars, PriceModel.fit(dearer), dearer);
    }

    @Test
    void the_same_cars_give_the_same_bits_twice() {
        List<Car> cars = some(33, 50);
        PriceModel first = PriceModel.fit(cars);
        PriceModel second = PriceModel.fit(cars);
        for (Car car : cars) {
            assertEquals(first.judge(car.latest()).gap(), second.judge(car.latest()).gap());
        }
    }

    @Test
    void mileages_written_in_kilometres_change_nothing(@TempDir Path folder) throws IOException {
        StringBuilder miles = new StringBuilder("vehicle,seen_on,model_year,mileage_mi,price_usd\n");
        StringBuilder km = new StringBuilder("vehicle,seen_on,model_year,mileage_km,price_usd\n");
        for (Car car : TestCars.line("Aral Siv", 11_000, 25, 8)) {
            double distance = car.facts().mileage().orElseThrow().miles();
            String row = "Aral Siv,2026-06-01," + car.facts().modelYear().orElseThrow() + ",%s,"
                    + Math.round(car.latest().price().amount()) + "\n";
            miles.append(row.formatted(String.format(Locale.ROOT, "%.0f", distance)));
            km.append(row.formatted(String.format(Locale.ROOT, "%.6f", distance * 1.609344)));
        }
        List<Car> inMiles = Listings.read(Files.writeString(folder.resolve("miles.csv"), miles)).cars();
        List<Car> inKm = Listings.read(Files.writeString(folder.resolve("km.csv"), km)).cars();
        assertEquals(25, inKm.size());
        assertRatio(1, 1e-6, PriceModel.fit(inMiles), inMiles, PriceModel.fit(inKm), inKm);
    }

    @Test
    void more_miles_and_more_years_never_raise_a_value_of_a_plain_line() {
        PriceModel model = PriceModel.fit(TestCars.line("Aral Siv", 11_000, 60, 9));
        double before = Double.POSITIVE_INFINITY;
        for (double miles = 20_000; miles <= 140_000; miles += 10_000) {
            double value = TestCars.fair(model.judge(TestCars.car(900, "Aral Siv", 2017, miles, 9_000,
                    PriceKind.ASKING, Seller.PRIVATE).latest()).valuation()).median();
            assertTrue(value < before, miles + " miles");
            before = value;
        }
        before = 0;
        for (int year = 2012; year <= 2022; year++) {
            double value = TestCars.fair(model.judge(TestCars.car(900, "Aral Siv", year, 70_000, 9_000,
                    PriceKind.ASKING, Seller.PRIVATE).latest()).valuation()).median();
            assertTrue(value > before, "model year " + year);
            before = value;
        }
    }

    @Test
    void a_range_of_more_probability_holds_one_of_less_and_the_percentile_agrees_with_it() {
        List<Car> cars = some(34, 40);
        PriceModel model = PriceModel.fit(cars);
        for (Car car : cars) {
            if (model.judge(car.latest()).valuation() instanceof FairValue value) {
                for (double p : new double[] {0.5, 0.8, 0.9, 0.95, 0.99}) {
                    assertEquals(50 * (1 + p), value.percentile(value.range(p).high()), 1e-3);
                    assertEquals(50 * (1 - p), value.percentile(value.range(p).low()), 1e-3);
                }
                assertEquals(50, value.percentile(value.median()), 1e-3);
            }
        }
    }
}
