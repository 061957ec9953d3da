package swapworth.swap;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import swapworth.InOneLine;
import swapworth.listing.CarFacts;
import swapworth.listing.LevelOfTrade;
import swapworth.listing.PriceIncludes;
import swapworth.listing.Seller;
import swapworth.market.PriceModel;
import swapworth.market.TestCars;
import swapworth.project.Undertaking;
import swapworth.statistics.Quantiles;
import swapworth.table.Table;

/** What the faults of one finished car take off: from its value, whatever approach or swap seen speaks of sound ones. */
class FaultsTest {
    private static final PriceModel MODEL = PriceModel.fit(SwapWorld.ordinary(3).cars());
    private static final CarFacts FACTS = CarFacts.of("Line 00").body("shell 0").runningGear("gear 3").modelYear(2013)
            .mileage(TestCars.miles(70_000)).gearMileage(TestCars.miles(40_000)).seller(Seller.PRIVATE).build();
    private static final FinishedCar CAR = FinishedCar.of("the swap", FACTS).with(BuiltBy.OWNER);
    private static final SwapOptions OPTIONS = SwapValue.options().withFactoryEquivalent(SwapWorld.facts(3, 3, 2013, 70_000).build());
    private static final SwapValue SOUND = value(OPTIONS, CAR);
    @TempDir
    private Path folder;

    private static SwapValue value(SwapOptions options, FinishedCar car) {
        return assertInstanceOf(SwapValue.class, options.value(car, MODEL));
    }

    private static FinishedCar faulty(Map<Paper, Known> papers, SwapCost.Loss... faults) {
        return new FinishedCar(CAR.name(), CAR.facts(), CAR.gearLine(), CAR.gearYear(), CAR.builtBy(), papers, List.of(), List.of(),
                List.of(faults), CAR.cost(), CAR.recipient(), CAR.donor());
    }

    private static FinishedCar knocking(double amount) {
        return faulty(Map.of(), new SwapCost.Loss("engine knocks", amount, 0));
    }

    private static SwapOptions withSeen(double price) {
        return OPTIONS.withSeen(IntStream.range(0, 6).mapToObj(k -> new SeenSwap("seen " + k, FACTS, BuiltBy.OWNER, price * (1 + 0.02 * k),
                SeenSwap.Kind.ASKED, LevelOfTrade.PRIVATE_ASKING, PriceIncludes.NEITHER, Optional.of(SwapWorld.DAY), Optional.empty()))
                .toList());
    }

    // By hand: each draw of a sound car less 3 % of it and 1,500, but a twentieth of it at least.
    @Test
    void each_draw_loses_what_the_faults_take_off_of_a_sound_car() {
        SwapValue told = value(OPTIONS, faulty(Map.of(), new SwapCost.Loss("engine knocks", 1500, 0),
                new SwapCost.Loss("paint peels", 0, 0.03), SwapCost.Loss.unstated("small dent")));
        assertArrayEquals(Arrays.stream(SOUND.draws()).map(v -> Math.max(0.05 * v, 0.97 * v - 1500)).toArray(), told.draws(), 1e-6);
        assertArrayEquals(Arrays.stream(SOUND.levelDraws()).map(v -> Math.max(0.05 * v, 0.97 * v - 1500)).toArray(), told.levelDraws(),
                1e-6);
        for (int i = 0; i < 100; i++) {
            assertEquals(SOUND.soldDraws()[i] / SOUND.draws()[i], told.soldDraws()[i] / told.draws()[i], 1e-9);
        }
    }

    @Test
    void a_larger_loss_never_raises_the_value_and_the_median_falls_by_what_is_stated_with_and_without_swaps_seen() {
        for (SwapOptions options : List.of(OPTIONS, withSeen(0.7 * SOUND.median()), withSeen(1.3 * SOUND.median()))) {
            SwapValue sound = value(options, CAR);
            double before = sound.median();
            for (double amount : new double[] {100, 500, 1500, 3000, 6000}) {
                SwapValue told = value(options, knocking(amount));
                assertEquals(sound.median() - amount, told.median(), 0.1 * amount);
                assertTrue(told.median() < before, amount + ": " + told.median() + " after " + before);
                before = told.median();
            }
            assertTrue(value(options, knocking(100_000)).median() > 0.04 * sound.median());
        }
    }

    @Test
    void the_approaches_alone_and_all_that_is_asked_for_lose_it_too() {
        SwapOptions seen = withSeen(1.2 * SOUND.median());
        double[] together = value(seen, CAR).togetherDraws().orElseThrow();
        assertEquals(Quantiles.median(together) - 1500, Quantiles.median(value(seen, knocking(1500)).togetherDraws().orElseThrow()), 30);
        double asked = Double.parseDouble(value(seen, knocking(1500)).selling().orElseThrow().rows().get(1).get(0).exact());
        assertEquals(value(seen, knocking(1500)).median(), asked, 1e-6 * asked);
    }

    @Test
    void a_sale_of_the_car_itself_was_for_the_car_with_its_faults() {
        double price = 0.8 * SOUND.median();
        SwapOptions sold = OPTIONS.with(LevelOfTrade.PRIVATE_SOLD).withOffers(List.of(OwnOffer.sold(price, SwapWorld.DAY)));
        for (double amount : new double[] {0, 500, 1500, 3000}) {
            assertEquals(price, value(sold, knocking(amount)).median(), 0.03 * price, "fault of " + amount);
        }
        assertEquals(Optional.empty(), value(sold, knocking(1500)).statedAgainst());
        SwapOptions refused = OPTIONS.withOffers(List.of(OwnOffer.refused(price, SwapWorld.DAY), OwnOffer.noTaker(1.2 * price, 60)));
        double before = Double.MAX_VALUE;
        for (double amount : new double[] {0, 500, 1500, 3000}) {
            double median = value(refused, knocking(amount)).median();
            assertTrue(median < before, amount + ": " + median + " after " + before);
            before = median;
        }
    }

    @Test
    void the_disclosure_names_each_fault_with_what_it_takes_off() {
        SwapValue told = value(OPTIONS, faulty(Map.of(), new SwapCost.Loss("engine knocks", 1500, 0),
                new SwapCost.Loss("paint peels", 0, 0.025), SwapCost.Loss.unstated("small dent")));
        String words = InOneLine.of(told.disclosure().text());
        assertTrue(words.contains("engine knocks (takes off 1,500); paint peels (takes off 2.5 %); small dent"), words);
        assertEquals("For known faults the range has taken off what the owner states: engine knocks: 1,500; paint peels: 2.5 %. The owner"
                + " states: 1 known fault without a figure. The range is that of a car that passes and has no such fault: what this takes"
                + " off is not in it.", told.statedAgainst().orElseThrow());
    }

    @Test
    void that_a_fault_is_not_in_the_range_is_said_only_where_it_states_no_figure() {
        String stated = value(OPTIONS, knocking(1500)).statedAgainst().orElseThrow();
        assertFalse(stated.contains("not in it"), stated);
        assertFalse(SOUND.statedAgainst().isPresent());
        String paper = value(OPTIONS, faulty(Map.of(Paper.INSPECTED, Known.NO))).statedAgainst().orElseThrow();
        assertTrue(paper.contains("not in it. What passing would cost can be stated as a fault with its figure"), paper);
    }

    @Test
    void the_tables_say_where_the_faults_came_off_and_their_steps_multiply_out() {
        SwapValue told = value(withSeen(1.2 * SOUND.median()), knocking(1500));
        for (Table grid : told.grids()) {
            double product = Double.parseDouble(grid.rows().get(0).get(4).exact());
            for (int r = 1; r < grid.rows().size(); r++) {
                product *= Double.parseDouble(grid.rows().get(r).get(1).exact());
            }
            assertEquals(told.median(), product, 1e-6 * product, grid.title());
            assertTrue(grid.text().contains("known faults, as the owner states"), grid.text());
        }
        assertTrue(InOneLine.of(told.approachesTable().text()).contains("what a car without the stated faults is worth"));
        assertTrue(InOneLine.of(told.result().text()).contains("middle price of such swaps with these faults"));
        assertTrue(InOneLine.of(value(OPTIONS, knocking(100_000)).result().text()).contains("held at one twentieth of a sound car"));
    }

    @Test
    void in_the_sample_too_the_value_falls_by_what_a_fault_takes_off() throws IOException {
        SwapValue sound = sample("");
        SwapValue told = sample("engine knocks: 1500");
        assertEquals(sound.median() - 1500, told.median(), 100);
        assertEquals(Quantiles.median(sound.soldDraws()) - 1500, Quantiles.median(told.soldDraws()), 200);
        assertTrue(sample("engine knocks: 2500").median() < told.median());
        Files.delete(folder.resolve("swaps.csv"));
        assertEquals(sample("").median() - 1500, sample("engine knocks: 1500").median(), 100);
    }

    /** The finished car of the sample with faults. */
    private SwapValue sample(String faults) throws IOException {
        if (Files.notExists(folder.resolve("listings.csv"))) {
            for (String name : List.of("listings.csv", "lines.csv", "words.csv", "rates.csv", "swaps.csv")) {
                Files.copy(Path.of("sample-listings", name), folder.resolve(name));
            }
        }
        List<String> rows = Files.readAllLines(Path.of("sample-listings", "cars.csv"));
        Files.write(folder.resolve("cars.csv"), Stream.concat(Stream.of(rows.get(0) + ",faults"), rows.stream().skip(1)
                .map(row -> row + "," + (row.startsWith("the swap,") ? faults : ""))).toList());
        return Undertaking.of(folder).finished().orElseThrow();
    }
}
