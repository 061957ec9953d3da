package swapworth.world;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.LocalDate;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import java.util.stream.LongStream;
import org.junit.jupiter.api.Test;
import swapworth.listing.LevelOfTrade;
import swapworth.listing.Listing;

class SampleWorldTest {

    @Test
    void the_same_seed_gives_the_same_bytes_and_another_seed_does_not() {
        assertEquals(SampleWorld.generate(7).files(), SampleWorld.generate(7).files());
        assertEquals(SampleWorld.generate(7).truths().effects(), SampleWorld.generate(7).truths().effects());
        assertNotEquals(SampleWorld.generate(7).files(), SampleWorld.generate(8).files());
    }

    @Test
    void twenty_seeds_give_six_hundred_sightings_of_some_three_hundred_cars() {
        LongStream.range(0, 20).mapToObj(SampleWorld::generate).forEach(world -> {
            assertTrue(world.sightings().size() >= 600, () -> "seed " + world.seed() + ": " + world.sightings().size());
            assertEquals(305, world.cars().size());
            List<String> lines = world.files().get("listings.csv").lines().toList();
            // The header, a duplicate, an unreadable row and a row without a price stand beside the sightings.
            assertEquals(world.sightings().size() + 4, lines.size());
        });
    }

    @Test
    void every_row_has_as_many_cells_as_the_header() {
        SampleWorld.generate(3).files().forEach((name, text) -> {
            List<String> lines = text.lines().toList();
            int columns = cells(lines.get(0));
            lines.forEach(line -> assertEquals(columns, cells(line), () -> name + ": " + line));
        });
    }

    private static int cells(String line) {
        return line.replaceAll("\"[^\"]*\"", "").split(",", -1).length;
    }

    @Test
    void every_slip_of_the_list_is_made_and_stands_on_the_line_that_it_names() {
        for (long seed = 0; seed < 20; seed++) {
            SampleWorld world = SampleWorld.generate(seed);
            List<String> lines = world.files().get("listings.csv").lines().toList();
            assertEquals(Set.of(WorldFiles.SlipKind.values()),
                    world.slips().stream().map(WorldFiles.Slip::kind).collect(Collectors.toSet()), "seed " + seed);
            for (WorldFiles.Slip slip : world.slips()) {
                String line = lines.get(slip.line() - 1);
                assertTrue(line.startsWith(slip.id() + ","), () -> slip + ": " + line);
                switch (slip.kind()) {
                    case DUPLICATE -> assertEquals(lines.get(slip.line() - 2), line);
                    case KILOMETRES -> assertTrue(line.contains(" km,"), line);
                    case AMBIGUOUS_MILEAGE -> assertTrue(line.contains(",12.500 km,"), line);
                    case HTML -> assertTrue(line.contains("<script>"), line);
                    case FORMULA -> assertTrue(line.contains(",\"=SUM"), line);
                    case UNKNOWN_WORD -> assertTrue(line.contains(",so-so,"), line);
                    case PRICE_ZERO -> assertTrue(line.contains(",0,"), line);
                    case DIGIT_MISSING, DIGIT_TOO_MANY -> assertTrue(!line.contains("," + slip.truth() + ","), line);
                    case BLANK_INCLUDES -> assertTrue(line.contains(",,auction,"), line);
                }
            }
        }
    }

    @Test
    void without_dirt_a_row_is_a_sighting_and_there_is_no_slip() {
        SampleWorld world = SampleWorld.withDefaults().with(WorldSettings.Dirt.OFF).generate(5);
        assertEquals(List.of(), world.slips());
        assertEquals(world.sightings().size() + 1, world.files().get("listings.csv").lines().count());
        assertEquals(SampleWorld.generate(5).sightings(), world.sightings(), "dirt must not move the truth");
    }

    /** Nobody saw the day of a cut, which lies between two looks. */
    @Test
    void the_last_ask_of_a_car_is_its_true_value_on_the_day_on_which_it_was_made_up_to_rounding() {
        SampleWorld world = SampleWorld.generate(11);
        LocalDate begin = world.truths().month(0).atDay(1);
        int compared = 0;
        for (int i = 0; i < world.cars().size(); i++) {
            CarOfWorld one = world.cars().get(i);
            List<Listing> asks = world.joinedCars().get(i).sightings().stream()
                    .filter(s -> s.level() == LevelOfTrade.PRIVATE_ASKING).toList();
            if (!asks.isEmpty() && one.ids().size() == 1) {
                double ask = asks.get(asks.size() - 1).price().amount();
                int from = asks.size() - 1;
                while (from > 0 && asks.get(from - 1).price().amount() == ask) {
                    from--;
                }
                LocalDate offered = one.offeredOn().isBefore(begin) ? begin : one.offeredOn();
                LocalDate earliest = from == 0 ? offered : asks.get(from - 1).seenOn().orElseThrow();
                LocalDate latest = asks.get(from).seenOn().orElseThrow();
                double nearest = earliest.datesUntil(latest.plusDays(1)).mapToDouble(day -> Math.abs(ask
                        - world.truths().trueValue(one, LevelOfTrade.PRIVATE_ASKING, day))).min().orElseThrow();
                assertEquals(0, nearest, ask < 10_000 ? 25.01 : 50.01);
                compared++;
            }
        }
        assertTrue(compared > 100, "compared " + compared);
    }

    @Test
    void the_errors_of_cars_have_the_stated_spread() {
        // The interquartile range of a Student t with 5 degrees of freedom is 2 x 0.7267 scales (tables of the distribution).
        double[] scaled = LongStream.range(0, 10).mapToObj(SampleWorld::generate)
                .flatMapToDouble(world -> world.cars().stream().mapToDouble(car -> car.error()
                        / world.truths().errorScale(car.facts().ageOn(world.lastEvening()).orElseThrow())))
                .sorted().toArray();
        assertEquals(2 * 0.7267, scaled[scaled.length * 3 / 4] - scaled[scaled.length / 4], 0.08);
    }

    @Test
    void a_given_market_path_is_the_truth() {
        List<Double> path = List.of(0.0, 0.05, 0.10, 0.02);
        Truths truths = SampleWorld.withDefaults().withMarketPath(path).withCarsPerLine(5).generate(1).truths();
        assertEquals(path, IntStream.range(0, 4).mapToObj(truths::market).toList());
        assertEquals(100 * Math.exp(0.05), truths.index(2, 1), 1e-9);
        assertEquals(2, truths.peakMonth());
    }

    @Test
    void the_market_rises_cools_and_ends_below_its_beginning() {
        for (long seed = 0; seed < 20; seed++) {
            Truths truths = SampleWorld.withDefaults().withCarsPerLine(1).generate(seed).truths();
            assertTrue(truths.peakMonth() >= 2 && truths.peakMonth() <= 7, "peak at " + truths.peakMonth());
            assertTrue(truths.trend(truths.peakMonth()) > 0.01);
            assertTrue(truths.trend(17) < -0.03, "ends at " + truths.trend(17));
        }
    }

    @Test
    void an_unseen_pair_of_body_and_gear_has_a_true_level() {
        Truths truths = SampleWorld.generate(2).truths();
        double swap = truths.pairLevel(Line.ROADSTER.body(), Line.SALOON.gear());
        double additive = truths.effect("body_" + Line.ROADSTER.body()) + truths.effect("gear_" + Line.SALOON.gear());
        assertEquals(additive, swap, 0.2);
        assertNotEquals(additive, swap);
    }

    @Test
    void reposts_carry_one_car_under_two_ids() {
        SampleWorld world = SampleWorld.generate(4);
        long reposted = world.cars().stream().filter(car -> car.ids().size() == 2).count();
        assertTrue(reposted >= 5 && reposted <= 60, "reposted " + reposted);
        Set<String> ids = new HashSet<>();
        world.cars().forEach(car -> car.ids().forEach(id -> assertTrue(ids.add(id), id)));
        assertEquals(ids, world.sightings().stream().map(Sighting::id).collect(Collectors.toSet()));
    }

    @Test
    void all_names_in_the_files_are_those_of_the_one_list() {
        Set<String> vehicles = Set.of(Names.ROADSTER, Names.SALOON, Names.OPEN_SIX, Names.ESTATE, Names.COUPE, Names.COUPE_SIX);
        Set<String> sources = new HashSet<>(Names.AUCTIONS);
        sources.addAll(Names.PRIVATE_SOURCES);
        sources.addAll(Names.TRADE_SOURCES);
        for (Listing listing : SampleWorld.generate(6).listings()) {
            assertTrue(vehicles.contains(listing.facts().vehicle()));
            assertTrue(Names.REGIONS.contains(listing.facts().region().orElseThrow()));
            assertTrue(sources.contains(listing.source().orElseThrow()));
        }
    }
}
