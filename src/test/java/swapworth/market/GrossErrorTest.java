package swapworth.market;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import swapworth.listing.Car;
import swapworth.listing.Listing;
import swapworth.listing.Listings;
import swapworth.world.SampleWorld;
import swapworth.world.WorldFiles.Slip;
import swapworth.world.WorldFiles.SlipKind;

/** Two typing errors in the prices of a sample world: one digit too many, one missing. */
class GrossErrorTest {

    /** A comma with an even number of quotes behind it. */
    private static final String COMMA_BETWEEN_CELLS = ",(?=([^\"]*\"[^\"]*\")*[^\"]*$)";

    @TempDir
    Path folder;

    private PriceModel ofFiles(String name, Map<String, String> files) {
        try {
            Path place = Files.createDirectories(folder.resolve(name));
            for (Map.Entry<String, String> file : files.entrySet()) {
                Files.writeString(place.resolve(file.getKey()), file.getValue());
            }
            return PriceModel.fit(Listings.read(place.resolve("listings.csv")).cars());
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /** The value of each car of a model that has one, by the place of its last row, its own prices left out. */
    private static Map<String, Double> values(PriceModel model) {
        Map<String, Double> values = new HashMap<>();
        for (Car car : model.cars()) {
            if (model.judge(car.latest()).valuation() instanceof FairValue value) {
                values.put(car.latest().origin().toString(), value.median());
            }
        }
        return values;
    }

    /** The files with the price of each slip as it should have been. */
    private static Map<String, String> repaired(Map<String, String> files, List<Slip> slips) {
        List<String> lines = new ArrayList<>(files.get("listings.csv").lines().toList());
        int price = Arrays.asList(lines.get(0).split(",")).indexOf("price");
        for (Slip slip : slips) {
            List<String> cells = new ArrayList<>(Arrays.asList(lines.get(slip.line() - 1).split(COMMA_BETWEEN_CELLS, -1)));
            cells.set(price, slip.truth());
            lines.set(slip.line() - 1, String.join(",", cells));
        }
        Map<String, String> changed = new HashMap<>(files);
        changed.put("listings.csv", String.join("\n", lines) + "\n");
        return changed;
    }

    /** By how much the values of other cars move when the typing errors of a world are mended; the errors must be named. */
    private List<Double> moves(long seed) {
        SampleWorld world = SampleWorld.generate(seed);
        List<Slip> slips = world.slips().stream()
                .filter(s -> s.kind() == SlipKind.DIGIT_MISSING || s.kind() == SlipKind.DIGIT_TOO_MANY).toList();
        assertEquals(2, slips.size());
        PriceModel dirty = ofFiles("dirty" + seed, world.files());
        PriceModel clean = ofFiles("clean" + seed, repaired(world.files(), slips));
        List<Judgement> judged = dirty.judgeAll();
        for (Slip slip : slips) {
            Judgement of = judged.stream().filter(j -> j.listing().origin().line() == slip.line()).findFirst().orElseThrow();
            assertTrue(of.remarks().stream().anyMatch(r -> r.contains("typing error")), seed + ": " + slip + " " + of.remarks());
        }
        Map<String, Double> before = values(clean);
        List<Double> moves = new ArrayList<>();
        values(dirty).forEach((car, value) -> {
            if (before.containsKey(car)) {
                moves.add(Math.abs(value / before.get(car) - 1));
            }
        });
        assertTrue(moves.size() > 280, moves.size() + " cars compared");
        return moves;
    }

    @Test
    void the_sample_s_typing_errors_are_named_and_move_no_value_of_another_car_by_two_per_cent() {
        moves(23).forEach(move -> assertTrue(move < 0.02, "moved by " + move));
    }

    // Two per cent does not hold for every car of every world: world 61 has a car that moves by more, since mending an error brings
    // back what it took away. The seeds stand in a row and are not chosen.
    @Test
    void in_other_worlds_at_most_one_car_in_two_hundred_moves_by_more_than_two_per_cent() {
        List<Double> all = new ArrayList<>();
        for (long seed = 61; seed <= 66; seed++) {
            all.addAll(moves(seed));
        }
        long far = all.stream().filter(move -> move > 0.02).count();
        assertTrue(far <= all.size() / 200, far + " of " + all.size());
    }

    // A mistyped price tells nothing: it must do no more than to be missing.
    @ParameterizedTest
    @ValueSource(longs = {41, 42})
    void a_mistyped_price_counts_as_if_it_were_not_there(long seed) {
        List<Car> cars = SampleWorld.generate(seed).joinedCars();
        // A car that was seen several times keeps its other prices; these two were seen once.
        List<Integer> once = IntStream.range(0, cars.size()).filter(c -> cars.get(c).sightings().size() == 1).boxed().toList();
        Random random = new Random(seed);
        int low = once.get(random.nextInt(once.size() / 2));
        int high = once.get(once.size() / 2 + random.nextInt(once.size() / 2));
        IntStream all = IntStream.range(0, cars.size());
        PriceModel mistyped = PriceModel.fit(all.mapToObj(c -> c == low ? latestTimes(cars.get(c), 0.1)
                : c == high ? latestTimes(cars.get(c), 10) : cars.get(c)).toList());
        List<Car> others = new ArrayList<>(cars);
        others.removeAll(List.of(cars.get(low), cars.get(high)));
        Map<String, Double> without = values(PriceModel.fit(others));
        Map<String, Double> with = values(mistyped);
        assertTrue(without.size() > 290);
        // Two cars of world 41 move by 1.2 per cent, among those whose prices are taken to scatter more; a mistyped price also counts a
        // little in how far its line scatters, so that a third of world 42 moves by more than half a per cent.
        without.forEach((car, value) -> assertEquals(1, with.getOrDefault(car, value) / value, 0.015, car));
        long moved = without.entrySet().stream().filter(e -> Math.abs(with.getOrDefault(e.getKey(), e.getValue()) / e.getValue()
                - 1) > 0.005).count();
        assertTrue(moved <= 3, moved + " of " + without.size());
        for (int wrong : new int[] {low, high}) {
            List<String> remarks = mistyped.judge(mistyped.cars().get(wrong).latest()).remarks();
            assertTrue(remarks.stream().anyMatch(r -> r.contains("typing error")), remarks.toString());
        }
    }

    @Test
    void an_earlier_price_of_its_car_stands_in_for_a_mistyped_one() {
        for (int sightings : new int[] {2, 3, 5}) {
            List<Car> cars = new ArrayList<>(SampleWorld.generate(41).joinedCars());
            int repeated = IntStream.range(0, cars.size()).filter(c -> cars.get(c).sightings().size() == sightings
                    && cars.get(c).sightings().stream().map(Listing::level).distinct().count() == 1).findFirst().orElseThrow();
            for (double factor : new double[] {0.1, 10}) {
                Car mistyped = latestTimes(cars.get(repeated), factor);
                List<Car> with = new ArrayList<>(cars);
                with.set(repeated, mistyped);
                List<Listing> used = EvidenceList.in(with, List.of()).evidence().stream().filter(e -> e.car() == repeated)
                        .map(Evidence::listing).toList();
                assertEquals(List.of(mistyped.sightings().get(sightings - 2).price()), used.stream().map(Listing::price).toList());
            }
        }
    }

    private static Car latestTimes(Car car, double factor) {
        Listing latest = car.latest();
        return TestCars.withPrice(car, latest, factor * latest.price().amount());
    }
}
