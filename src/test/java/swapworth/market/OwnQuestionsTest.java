package swapworth.market;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import swapworth.listing.CarFacts;
import swapworth.listing.LevelOfTrade;
import swapworth.listing.Listings;
import swapworth.listing.ListingsRead;
import swapworth.listing.Mileage;
import swapworth.listing.MileageStatus;
import swapworth.table.Cell;
import swapworth.table.Table;
import swapworth.world.SampleWorld;

/** A question typed by hand: names as people spell them, days of their own, numbers that are none. */
class OwnQuestionsTest {
    private static final PriceModel MODEL = PriceModel.fit(SampleWorld.generate(300).joinedCars());
    private static final LocalDate DAY = MODEL.lastSeen().orElseThrow();
    private static final String LINE = MODEL.lines().get(0);
    private static final CarFacts CAR = MODEL.cars().stream().map(c -> c.facts())
            .filter(f -> f.vehicle().equals(LINE) && f.trim().isPresent() && f.region().isPresent()).findFirst().orElseThrow()
            .toBuilder().modelYear(2017).mileage(new Mileage(60_000, MileageStatus.READ)).build();
    private static final CarFacts SPELLED = CAR.toBuilder().vehicle(otherwise(LINE)).trim(otherwise(CAR.trim().orElseThrow()))
            .region(otherwise(CAR.region().orElseThrow())).build();

    /** In capitals, with a hyphen after the second letter. */
    private static String otherwise(String name) {
        return name.substring(0, 2).toUpperCase(Locale.ROOT) + "-" + name.substring(2).toUpperCase(Locale.ROOT);
    }

    private static Subject of(CarFacts car) {
        return Subject.of(car, LevelOfTrade.PRIVATE_ASKING, DAY);
    }

    @Test
    void names_that_differ_in_case_spaces_or_hyphens_alone_are_those_of_the_listings() {
        assertEquals(MODEL.value(of(CAR)).toString(), MODEL.value(of(SPELLED)).toString());
        ValueDraws draws = MODEL.draws(50, 1);
        assertArrayEquals(draws.level(of(CAR)), draws.level(of(SPELLED)));
        assertArrayEquals(draws.price(of(CAR), 7), draws.price(of(SPELLED), 7));
        assertArrayEquals(draws.ageing(of(CAR), 2), draws.ageing(of(SPELLED), 2));
        assertEquals(0, MODEL.difference(of(CAR), of(SPELLED)).range95().high(), 1e-9);
        assertEquals(MODEL.heldBy(Map.of(of(CAR), 1.0)), MODEL.heldBy(Map.of(of(SPELLED), 1.0)));
        assertEquals(MODEL.pricesOfPair(CAR), MODEL.pricesOfPair(SPELLED));
        assertEquals(MODEL.curve(LINE).points(), MODEL.curve(otherwise(LINE)).points());
        Outlook outlook = MODEL.index().orElseThrow().outlook().orElseThrow();
        assertArrayEquals(outlook.factors(draws, LINE, 3), outlook.factors(draws, otherwise(LINE), 3));
    }

    @Test
    void a_name_that_no_listing_has_stays_as_it_is_and_the_one_that_was_meant_is_asked_about() {
        CarFacts slip = CarFacts.of(LINE + "x").modelYear(2017).build();
        assertEquals("no other car of the line '" + LINE + "x' is in the files (did you mean " + LINE + "?)",
                MODEL.value(of(slip)).match(v -> "", CannotTell::reason));
        assertEquals("no car of the line '" + LINE + "x' is in the model; did you mean " + LINE + "?",
                assertThrows(IllegalArgumentException.class, () -> MODEL.curve(LINE + "x")).getMessage());
        assertEquals("no car of the line 'Brackenholt' is in the model; its lines are " + String.join(", ", MODEL.lines()),
                assertThrows(IllegalArgumentException.class, () -> MODEL.curve("Brackenholt")).getMessage());
        assertFalse(MODEL.value(of(CarFacts.of("Brackenholt").modelYear(2017).build())).match(v -> "", CannotTell::reason)
                .contains("did you mean"));
    }

    @Test
    void what_is_no_number_is_refused_and_gives_no_figure() {
        ValueDraws draws = MODEL.draws(50, 1);
        assertThrows(IllegalArgumentException.class, () -> draws.ageing(of(CAR), Double.NaN));
        assertThrows(IllegalArgumentException.class, () -> draws.ageing(of(CAR), Double.POSITIVE_INFINITY));
        assertThrows(IllegalArgumentException.class, () -> MODEL.heldBy(Map.of(of(CAR), Double.NaN)));
    }

    @Test
    void a_value_has_a_table_of_itself_with_what_must_be_known_of_it() {
        Table table = TestCars.fair(MODEL.value(Subject.of(CAR, LevelOfTrade.PRIVATE_SOLD, DAY.plusYears(1)))).table();
        assertTrue(table.title().startsWith(LINE + " " + CAR.trim().orElseThrow() + " 2017"), table.title());
        assertTrue(table.title().endsWith("private sold on " + DAY.plusYears(1) + ", in the currency of the listings"), table.title());
        assertTrue(table.notes().stream().anyMatch(n -> n.startsWith("Valued after the last day seen, " + DAY)), table.notes().toString());
        assertEquals(List.of("fair value", "80 % range", "95 % range", "held by assumptions"),
                table.rows().stream().map(r -> r.get(0).shown()).toList());
        assertEquals(1, table.rows().stream().map(r -> r.get(2)).map(Cell::shown).filter(s -> s.contains(" of the line and ")).count());
    }

    @Test
    void a_difference_has_a_table_of_itself_with_its_ranges_and_what_holds_it() {
        CarFacts more = CAR.toBuilder().mileage(new Mileage(70_000, MileageStatus.READ)).build();
        Table table = MODEL.difference(of(more), of(CAR)).table();
        assertEquals(List.of("difference, %", "80 % range", "95 % range", "held by assumptions"),
                table.rows().stream().map(r -> r.get(0).shown()).toList());
        assertTrue(table.rows().get(1).get(1).shown().matches("-\\d\\.\\d to -?\\+?\\d\\.\\d"), table.text());
    }

    @Test
    void a_listing_is_found_by_its_id_however_it_is_spelled(@TempDir Path folder) throws IOException {
        ListingsRead read = Listings.read(Files.writeString(folder.resolve("listings.csv"), "id,vehicle,model_year,mileage_mi,price_usd\n"
                + "siv-1,Sivrette,2014,88000,9800\nsiv-2,Sivrette,2016,71000,11900\nSIV 2,Sivrette,2012,120500,7200\n"));
        Judged judged = Judged.of(read, PriceModel.fit(read.cars()));
        assertEquals("siv-1", JudgedListing.of(judged, "Siv 1").judgement().car());
        assertEquals("no car is called 'siv-9'; the first of 3 is called 'siv-1'",
                assertThrows(IllegalArgumentException.class, () -> JudgedListing.of(judged, "siv-9")).getMessage());
    }

    @Test
    void comparables_have_a_table_of_themselves() {
        Comparables grid = TestCars.fair(MODEL.value(of(CAR))).comparables();
        assertEquals(grid.rows().size() + 4, grid.table().rows().size());
        assertEquals("Comparables adjusted toward the car, in the currency of the listings", grid.table().title());
    }

    @Test
    void a_further_column_may_be_named_in_capitals_and_twice_and_one_that_no_row_fills_is_said_to_be_unused() {
        List<swapworth.listing.Car> cars = List.of(TestCars.car(0, CAR.toBuilder().further(Map.of("colour", "red")).build(), 9000),
                TestCars.car(1, CAR.toBuilder().further(Map.of("colour", "blue")).build(), 9500));
        PriceModel model = PriceModel.options().withColumns(List.of(" Colour", "colour", "nosuch")).fit(cars);
        assertEquals(List.of("colour", "nosuch"), model.furtherColumns());
        assertTrue(model.columnsTaken().get(0).startsWith("colour: taken as words, 2 different"));
        assertEquals("nosuch: no row fills it; it is not used", model.columnsTaken().get(1));
    }
}
