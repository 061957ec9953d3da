package swapworth.market;

import static org.junit.jupiter.api.Assertions.assertDoesNotThrow;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import swapworth.bench.WriteManyListings;
import swapworth.listing.Car;
import swapworth.listing.CarFacts;
import swapworth.listing.LevelOfTrade;
import swapworth.listing.Listing;
import swapworth.listing.Listings;
import swapworth.listing.ListingsRead;
import swapworth.listing.Seller;
import swapworth.world.SampleWorld;

/** That rows written and let go are the rows of the table that is kept. */
class JudgedRowsTest {

    @Test
    void listings_are_not_judged_by_a_model_of_other_cars() {
        ListingsRead read = Listings.read(Path.of("sample-listings", "listings.csv"));
        PriceModel other = PriceModel.fit(read.cars().subList(0, 20));
        assertThrows(IllegalArgumentException.class, () -> Judged.of(read, other));
    }

    @Test
    void rows_written_one_by_one_are_those_of_the_table() throws IOException {
        ListingsRead read = Listings.read(Path.of("sample-listings", "listings.csv"));
        PriceModel model = PriceModel.fit(read.cars());
        for (Optional<LevelOfTrade> level : List.of(Optional.<LevelOfTrade>empty(), Optional.of(LevelOfTrade.AUCTION))) {
            Judged judged = Judged.of(read, model, Optional.empty(), level);
            ByteArrayOutputStream out = new ByteArrayOutputStream();
            Answer<FitStudy> study = new JudgedRows(read, model, Optional.empty(), level).write(out);
            assertEquals(judged.table().csv(), out.toString(StandardCharsets.UTF_8));
            assertEquals(judged.study().map(FitStudy::all), study.map(FitStudy::all));
            assertEquals(judged.study().map(FitStudy::leftOut), study.map(FitStudy::leftOut));
        }
    }

    @Test
    void ranges_of_many_rows_stand_in_the_order_of_the_file(@TempDir Path folder) throws IOException {
        ListingsRead read = many(folder);
        PriceModel model = PriceModel.fit(read.cars());
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        Answer<FitStudy> study = new JudgedRows(read, model, Optional.empty(), Optional.empty()).write(out);
        assertSameRows(oneByOne(read, model), out.toString(StandardCharsets.UTF_8));
        Judged judged = Judged.of(read, model);
        assertEquals(judged.study().map(FitStudy::all), study.map(FitStudy::all));
        assertEquals(judged.study().map(FitStudy::leftOut), study.map(FitStudy::leftOut));
    }

    @Test
    void rows_that_cannot_be_written_end_the_judging_with_their_reason(@TempDir Path folder) {
        ListingsRead read = many(folder);
        JudgedRows rows = new JudgedRows(read, PriceModel.fit(read.cars()), Optional.empty(), Optional.empty());
        OutputStream full = new OutputStream() {
            private int room = 700_000;

            @Override
            public void write(int oneByte) throws IOException {
                write(new byte[1], 0, 1);
            }

            @Override
            public void write(byte[] bytes, int from, int length) throws IOException {
                room -= length;
                if (room < 0) {
                    throw new IOException("no room left");
                }
            }
        };
        assertEquals("no room left", assertThrows(IOException.class, () -> rows.write(full)).getMessage());
    }

    /** More rows than one range holds, so that several hands have work. */
    private static ListingsRead many(Path folder) {
        Path file = folder.resolve("many.csv");
        assertDoesNotThrow(() -> WriteManyListings.main(new String[] {"9000", "6", "3", file.toString()}));
        return Listings.read(file);
    }

    @Test
    void the_car_of_each_listing_is_told_without_looking_it_up() throws IOException {
        ListingsRead read = Listings.read(Path.of("sample-listings", "listings.csv"));
        int[] carOfEach = read.carOfEach();
        assertEquals(read.listings().size(), carOfEach.length);
        for (int i = 0; i < carOfEach.length; i++) {
            assertTrue(read.cars().get(carOfEach[i]).sightings().contains(read.listings().get(i)), "listing " + i);
        }
        // A model fitted to a copy of the cars, some of them left out, looks listings up and has not seen all.
        List<Car> some = List.copyOf(read.cars().subList(0, 200));
        for (List<Car> cars : List.of(List.copyOf(read.cars()), some)) {
            PriceModel model = PriceModel.fit(cars);
            ByteArrayOutputStream out = new ByteArrayOutputStream();
            new JudgedRows(read, model, Optional.empty(), Optional.empty()).write(out);
            assertEquals(oneByOne(read, model), out.toString(StandardCharsets.UTF_8));
        }
    }

    private static String oneByOne(ListingsRead read, PriceModel model) {
        ValueRows.IntoTable table = new ValueRows.IntoTable("Judged listings", read.baseCurrency().getCurrencyCode());
        ValueRows rows = new ValueRows(table);
        read.listings().forEach(listing -> rows.add(model.judge(listing)));
        return table.table().csv();
    }

    /** The first that differs is shown, and not all. */
    private static void assertSameRows(String expected, String actual) {
        List<String> lines = actual.lines().toList();
        List<String> wanted = expected.lines().toList();
        for (int i = 0; i < wanted.size(); i++) {
            assertEquals(wanted.get(i), lines.get(i));
        }
        assertEquals(wanted.size(), lines.size());
    }

    /** More cars than ranges are stretched by, so that a car with one price is left out by that price alone. */
    @Test
    void each_of_many_cars_is_judged_one_by_one_as_all_are_together() {
        List<Car> cars = cars();
        PriceModel model = PriceModel.fit(cars);
        Map<String, Integer> seen = new TreeMap<>();
        for (Judgement together : model.judgeAll()) {
            Judgement alone = model.judge(together.listing());
            assertEquals(together.position(), alone.position());
            near(together.gap(), alone.gap());
            near(together.percentile(), alone.percentile());
            assertEquals(together.remarks(), alone.remarks());
            together.valuation().match(value -> {
                FairValue other = TestCars.fair(alone.valuation());
                for (double share : new double[] {0.80, 0.95}) {
                    near(value.range(share).low(), other.range(share).low());
                    near(value.range(share).high(), other.range(share).high());
                }
                near(value.priorShare(), other.priorShare());
                return true;
            }, no -> {
                assertEquals(no, alone.valuation());
                return false;
            });
            together.remarks().forEach(remark -> seen.merge(remark.split(":")[0], 1, Integer::sum));
            seen.merge(together.listing().price().kind() + "", 1, Integer::sum);
        }
        for (String kind : List.of("BID_NOT_MET", "SOLD", "mileage unknown", "a bid that missed the reserve", "below the range, and the"
                + " row is silent on")) {
            assertTrue(seen.getOrDefault(kind, 0) > 5, kind + " in " + seen);
        }
    }

    /** The two are found on two ways, which round otherwise. */
    private static void near(double expected, double actual) {
        assertEquals(expected, actual, 1e-9 * Math.max(1, Math.abs(expected)));
    }

    @Test
    void a_price_that_the_model_learned_from_lies_inside_what_it_has_seen() {
        PriceModel model = PriceModel.fit(cars());
        List<Judgement> all = model.judgeAll();
        // The same listings as strangers' are asked about where they lie.
        for (Judgement judged : all.subList(0, 300)) {
            Listing listing = judged.listing();
            Subject subject = new Subject(listing.facts(), listing.level(), listing.price().includes(), listing.seenOn());
            List<String> remarks = TestCars.fair(model.value(subject)).remarks();
            assertTrue(remarks.stream().noneMatch(r -> r.contains("outside") || r.contains("day seen")), () -> listing + ": " + remarks);
        }
        assertEquals(all.size(), model.judgeAll().size());
    }

    /** Cars with sales, bids that missed, several prices and, some of them, no mileage. */
    private static List<Car> cars() {
        List<Car> cars = new ArrayList<>(SampleWorld.withDefaults().withCarsPerLine(180).generate(31).joinedCars());
        String line = cars.get(0).facts().vehicle();
        for (int i = 0; i < 12; i++) {
            cars.add(TestCars.car(5000 + i, CarFacts.of(line).modelYear(2012 + i % 5).seller(Seller.PRIVATE).build(), 9000 + 500 * i));
        }
        return cars;
    }
}
