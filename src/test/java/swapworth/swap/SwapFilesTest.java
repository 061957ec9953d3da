package swapworth.swap;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Currency;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import swapworth.assumptions.Assumptions;
import swapworth.listing.CarsFile;
import swapworth.listing.Listings;
import swapworth.market.CannotTell;
import swapworth.market.PriceModel;
import swapworth.reading.Conventions;
import swapworth.reading.FolderSettings;
import swapworth.reading.RowProblem;

/** What {@code cars.csv} and {@code swaps.csv} say of finished swaps. */
class SwapFilesTest {
    private static final Currency USD = Currency.getInstance("USD");
    @TempDir
    private Path folder;

    private SwapsFile swaps(String... rows) throws IOException {
        Path file = folder.resolve("swaps.csv");
        Files.writeString(file, "id,seen_on,vehicle,running_gear,model_year,mileage,price,currency,price_kind,built_by,factory_line,"
                + "own_car,days\n" + String.join("\n", rows) + "\n");
        return SwapsFile.read(file, USD, List.of());
    }

    @Test
    void a_swap_counts_once_by_its_sale_else_by_its_last_price() throws IOException {
        SwapsFile read = swaps("a,2026-03-01,Sivrette,six,2015,80000,14900,USD,asking,owner,Galdrise,,",
                "a,2026-05-01,Sivrette,six,2015,80000,13900,USD,asking,owner,Galdrise,,",
                "b,2026-03-01,Sivrette,six,2016,60000,16000,USD,sold,shop,,,",
                        "b,2026-03-09,Sivrette,six,2016,60000,17000,USD,asking,shop,,,",
                "c,2026-04-01,Sivrette,six,2014,90000,9000,USD,offer refused,owner,,,");
        assertEquals(5, read.read().counts().used());
        assertEquals(List.of(13_900.0, 16_000.0, 9_000.0), read.seen().stream().map(SeenSwap::price).toList());
        assertEquals(List.of(SeenSwap.Kind.ASKED, SeenSwap.Kind.SOLD, SeenSwap.Kind.OFFER_REFUSED), read.seen().stream().map(SeenSwap::kind)
                .toList());
        assertEquals(List.of(BuiltBy.OWNER, BuiltBy.SHOP, BuiltBy.OWNER), read.seen().stream().map(SeenSwap::builtBy).toList());
        assertEquals(Optional.of("Galdrise"), read.seen().get(0).factoryLine());
        assertTrue(read.offers().isEmpty());
    }

    @Test
    void a_swap_is_of_the_lines_of_the_listings_whichever_way_they_are_written() throws IOException {
        Path listings = Files.writeString(folder.resolve("listings.csv"), "vehicle,model_year,price\n"
                + "Sivrette,2015,9000\nGaldrise,2016,9900\n");
        Path file = Files.writeString(folder.resolve("swaps.csv"), "vehicle,model_year,price,factory_line\nSIVRETTE,2015,14900,galdrise\n");
        SeenSwap seen = SwapsFile.read(file, USD, Listings.read(listings).cars()).seen().get(0);
        assertEquals("Sivrette", seen.facts().vehicle());
        assertEquals(Optional.of("Galdrise"), seen.factoryLine());
    }

    @Test
    void rows_of_the_users_own_car_are_offers_and_no_swaps_of_other_people() throws IOException {
        SwapsFile read = swaps("x,2026-03-01,Sivrette,six,2016,71000,15000,USD,asking,owner,,the swap,40",
                "y,2026-04-20,Sivrette,six,2016,71000,12500,USD,offer refused,owner,,the swap,",
                "z,2026-05-20,Sivrette,six,2016,71000,13500,USD,sold,owner,,The Swap,",
                "w,2026-03-01,Sivrette,six,2016,71000,15500,USD,asking,owner,,The-Swap,");
        assertEquals(0, read.seen().size());
        List<OwnOffer> offers = read.offersFor("the swap").stream().sorted(OwnOffer.ORDER).toList();
        assertEquals(List.of(OwnOffer.Kind.OFFER_REFUSED, OwnOffer.Kind.NO_TAKER, OwnOffer.Kind.SOLD), offers.stream().map(OwnOffer::kind)
                .toList());
        assertEquals(40, offers.get(1).days());
        assertEquals(1, read.problems().size());
        assertTrue(read.problems().get(0).message().contains("days"), read.problems().toString());
    }

    @Test
    void words_that_are_not_understood_are_named_and_not_guessed() throws IOException {
        SwapsFile read = swaps("a,2026-03-01,Sivrette,six,2015,80000,14900,USD,asking,my uncle,,,");
        assertEquals(BuiltBy.UNKNOWN, read.seen().get(0).builtBy());
        assertEquals("my uncle", read.problems().get(0).rawText());
    }

    private FinishedCars finished(String cells) throws IOException {
        Path file = folder.resolve("cars.csv");
        Files.writeString(file, "name,role,vehicle,running_gear,model_year,mileage,gear_mileage,built_by,gear_line,gear_year,documented,"
                + "inspected,options_lost,gear_value,work_value,obsolescence\n" + cells
                + "\nmaker's,factory equivalent,Galdrise,,2016,50000,,,,,,,,,,\n");
        return FinishedCars.of(CarsFile.read(file, USD), FolderSettings.of(folder, Conventions.unstated()), USD, Assumptions.defaults());
    }

    @Test
    void a_finished_car_is_read_with_all_that_only_it_has() throws IOException {
        FinishedCars read = finished("mine,finished,Sivrette,six,2016,71000,44000,shop,Velmarch,2019,yes,no,cruise;"
                + " heater,\"$3,400\",5000 USD,"
                + "heater lost: 300; zone rule: 4 %");
        FinishedCar car = read.cars().get(0);
        assertEquals(List.of(), read.problems());
        assertEquals(BuiltBy.SHOP, car.builtBy());
        assertEquals(Optional.of("Velmarch"), car.gearLine());
        assertEquals(2019, car.gearYear().getAsInt());
        assertEquals(Known.YES, car.paper(Paper.DOCUMENTED));
        assertEquals(Known.NO, car.paper(Paper.INSPECTED));
        assertEquals(Known.UNKNOWN, car.paper(Paper.EMISSIONS));
        assertEquals(List.of("cruise", "heater"), car.optionsLost());
        assertEquals(List.of(new SwapCost.Loss("heater lost", 300, 0), new SwapCost.Loss("zone rule", 0, 0.04)), car.cost().losses());
        assertEquals(3400, swapworth.statistics.Quantiles.of(car.cost().gear().orElseThrow().draws(1001, 1), 0.5), 1e-6);
        assertEquals(44_000, car.facts().gearMileage().orElseThrow().miles());
        assertEquals("Galdrise", read.factoryEquivalent().orElseThrow().vehicle());
    }

    @Test
    void cells_that_make_no_sense_are_named_and_not_used() throws IOException {
        FinishedCars read = finished("mine,finished,Sivrette,six,2016,71000,44000,nobody,,12,perhaps,,,12.500,,\"=cmd: 3; heater lost\"");
        assertEquals(5, read.problems().stream().filter(p -> p.kind() == RowProblem.Kind.ODD).count(), read.problems().toString());
        assertTrue(read.cars().get(0).cost().gear().isEmpty());
        assertEquals(List.of(new SwapCost.Loss("=cmd", 3, 0)), read.cars().get(0).cost().losses());
    }

    @Test
    void amounts_of_nothing_and_below_are_named_and_not_used() throws IOException {
        FinishedCars read = finished("mine,finished,Sivrette,six,2016,71000,44000,shop,Velmarch,2019,yes,no,heater,0,-5000,"
                + "heater lost: -300");
        assertEquals(List.of("gear_value: an amount must be above 0; it is not used",
                "work_value: an amount must be above 0; it is not used",
                "obsolescence: a loss is written without a sign; it is not used"),
                read.problems().stream().map(p -> p.column() + ": " + p.message()).toList());
        assertTrue(read.cars().get(0).cost().gear().isEmpty() && read.cars().get(0).cost().losses().isEmpty());
    }

    @Test
    void the_name_of_a_donor_that_cars_csv_does_not_have_is_asked_about() throws IOException {
        Files.writeString(folder.resolve("cars.csv"), "name,role,vehicle,donor,recipient\nmine,finished,Sivrette,frnt hit,tidy\n"
                + "front hit,donor,Velmarch,,\ntidy,recipient,Sivrette,,\n");
        FinishedCars read = FinishedCars.of(CarsFile.read(folder.resolve("cars.csv"), USD),
                FolderSettings.of(folder, Conventions.unstated()), USD,
                Assumptions.defaults());
        assertEquals(1, read.problems().size(), read.problems().toString());
        assertEquals("cars.csv has no such car; its parts are not counted; did you mean front hit?", read.problems().get(0).message());
    }

    @Test
    void a_loss_that_lowers_the_value_while_no_lost_function_is_stated_is_asked_about() throws IOException {
        String start = "mine,finished,Sivrette,six,2016,71000,44000,shop,Velmarch,2019,yes,no,";
        List<RowProblem> asked = finished(start + ",,,air conditioning lost: 400").problems();
        assertEquals(1, asked.size(), asked.toString());
        assertEquals(RowProblem.Kind.QUESTION, asked.get(0).kind());
        assertEquals("air conditioning lost: 400", asked.get(0).rawText());
        assertTrue(asked.get(0).message().contains("options_lost"), asked.toString());
        assertEquals(List.of(), finished(start + "air conditioning,,,air conditioning lost: 400").problems());
        assertEquals(List.of(), finished(start + ",,,").problems());
    }

    @Test
    void a_folder_without_swaps_has_a_value_and_says_what_the_file_would_answer() throws IOException {
        Path cars = folder.resolve("cars.csv");
        Files.writeString(cars, "name,role,vehicle,body,running_gear,power_kw,model_year,mileage\nmine,finished,Line 00,shell 0,gear"
                + " 2,170,2013,70000\n");
        PriceModel model = PriceModel.fit(SwapWorld.ordinary(3).cars());
        Swaps swaps = Swaps.of(folder, CarsFile.read(cars, USD), USD, model, Optional.empty(), Optional.empty());
        assertInstanceOf(SwapValue.class, swaps.answers().get(0));
        assertTrue(swaps.notes().get(0).startsWith("without swaps.csv"), swaps.notes().toString());
        assertTrue(swaps.table().csv().contains("\r\nmine,Line 00,"), swaps.table().csv());
    }

    @Test
    void a_folder_without_a_finished_car_is_told_to_give_it_a_row() throws IOException {
        Path cars = folder.resolve("cars.csv");
        Files.writeString(cars, "name,role,vehicle,model_year,mileage\nmine,recipient,Line 00,2013,70000\n");
        PriceModel model = PriceModel.fit(SwapWorld.ordinary(3).cars());
        Swaps swaps = Swaps.of(folder, CarsFile.read(cars, USD), USD, model, Optional.empty(), Optional.empty());
        assertEquals("Cannot tell: cars.csv has no car of the role finished; needed: a row for the finished car, with vehicle and "
                + "gear_line.",
                swaps.first().match(value -> "a value", CannotTell::sentence));
    }
}
