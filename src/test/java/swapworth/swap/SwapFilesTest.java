package swapworth.swap;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
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

    /** By hand: 100 GBP at 1.15 are 115 EUR. Without a currency an amount is in that of words.csv, else in that of the listings. */
    @Test
    void a_price_without_a_currency_is_in_that_of_the_listings_unless_words_csv_states_one() throws IOException {
        Files.writeString(folder.resolve("rates.csv"), "date,from,to,rate\n2026-01-01,USD,EUR,0.9\n2026-01-01,GBP,EUR,1.15\n");
        Path file = Files.writeString(folder.resolve("swaps.csv"), "seen_on,vehicle,model_year,price\n2026-03-01,Sivrette,2015,14900\n"
                + "2026-03-02,Sivrette,2012,\u00a3100\n");
        Currency euro = Currency.getInstance("EUR");
        SwapsFile read = SwapsFile.read(file, euro, List.of());
        assertEquals(List.of(14_900.0, 115.0), read.seen().stream().map(SeenSwap::price).toList());
        assertTrue(read.read().questions().stream().noneMatch(p -> p.message().contains("currency")), read.read().questions().toString());
        Files.writeString(folder.resolve("words.csv"), "column,word,means\n*,currency,USD\n");
        assertEquals(13_410.0, SwapsFile.read(file, euro, List.of()).seen().get(0).price(), 1e-9);
    }

    @Test
    void what_swaps_csv_leaves_open_is_asked() throws IOException {
        Files.writeString(folder.resolve("cars.csv"), "name,role,vehicle,gear_line,model_year,mileage_km\n"
                + "the swap,finished,Sivrette,Velmarch,2015,99000\n");
        swaps("a,2026-03-01,Sivrette,six,2015,80000,14900,USD,asking,owner,Galdrise,,");
        PriceModel model = PriceModel.fit(Listings.read(Files.writeString(folder.resolve("listings.csv"),
                "vehicle,model_year,mileage_mi,price_usd\nSivrette,2015,80000,9900\nVelmarch,2017,61000,14500\n")).cars());
        Swaps all = Swaps.of(folder, CarsFile.read(folder.resolve("cars.csv")), USD, model, Optional.empty(), Optional.empty());
        assertEquals(List.of("swaps.csv mileage"), all.problems().stream().filter(p -> p.message().startsWith("nothing states the unit"))
                .map(p -> p.file() + " " + p.column()).toList());
    }

    @Test
    void a_column_of_swaps_that_nothing_reads_is_named_with_the_one_that_was_probably_meant() throws IOException {
        Path file = Files.writeString(folder.resolve("swaps.csv"), "vehicle,model_year,price,biult_by,own_car,colour\n"
                + "Sivrette,2015,14900,shop,,red\n");
        SwapsFile read = SwapsFile.read(file, USD, List.of());
        assertEquals(List.of("biult_by: this column is not used; did you mean built_by?", "colour: this column is not used"),
                read.unusedColumns(List.of()).stream().map(p -> p.column() + ": " + p.message()).toList());
        assertEquals(1, read.unusedColumns(List.of("colour")).size(), "the model takes it");
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
                "z,2026-05-20,Sivrette,six,2016,71000,13500,USD,sold,owner,,the swap,",
                "w,2026-03-01,Sivrette,six,2016,71000,15500,USD,asking,owner,,the swap,");
        assertEquals(0, read.seen().size());
        List<OwnOffer> offers = read.offersFor("The Swap").stream().sorted(OwnOffer.ORDER).toList();
        assertEquals(List.of(OwnOffer.Kind.OFFER_REFUSED, OwnOffer.Kind.NO_TAKER, OwnOffer.Kind.SOLD), offers.stream().map(OwnOffer::kind)
                .toList());
        assertEquals(40, offers.get(1).days());
        assertEquals(1, read.problems().size());
        assertTrue(read.problems().get(0).message().contains("days"), read.problems().toString());
    }

    @Test
    void own_cars_stand_in_the_order_of_the_file() throws IOException {
        List<String> names = List.of("delta", "alpha", "gamma", "beta", "zeta", "eta", "theta", "kappa");
        SwapsFile read = swaps(names.stream().map(n -> n.charAt(0) + n + ",2026-03-01,Sivrette,six,2016," + (60 + names.indexOf(n))
                + "000,15000,USD,offer refused,owner,," + n + ",").toArray(String[]::new));
        assertEquals(names, List.copyOf(read.offers().keySet()));
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
    void an_amount_below_what_it_can_be_is_asked_about_and_a_removed_gear_that_brings_nothing_is_an_answer() throws IOException {
        Files.writeString(folder.resolve("cars.csv"), "name,role,vehicle,gear_value,work_value,removed_value,options_lost,obsolescence\n"
                + "mine,finished,Sivrette,0,-20,0,heater,heater: -350; clock: 100 %; lamp: 0\n");
        FinishedCars read = FinishedCars.of(CarsFile.read(folder.resolve("cars.csv"), USD),
                FolderSettings.of(folder, Conventions.unstated()), USD, Assumptions.defaults());
        assertEquals(List.of("0 it must be above 0; it is not used", "-20 it must be above 0; it is not used",
                "heater: -350 a loss cannot be below 0; it is not used", "clock: 100 % a share lies between 0 and 100 %; it is not used"),
                read.problems().stream().map(p -> p.rawText() + " " + p.message()).toList());
        SwapCost cost = read.cars().get(0).cost();
        assertEquals(List.of(0.0, 0.0), Arrays.stream(cost.removed().orElseThrow().draws(2, 1)).boxed().toList());
        assertEquals(List.of(new SwapCost.Loss("lamp", 0, 0)), cost.losses());
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

    private FinishedCars faulty(String faults, String obsolescence) throws IOException {
        Files.writeString(folder.resolve("rates.csv"), "date,from,to,rate\n2026-01-01,EUR,USD,1.2\n");
        Files.writeString(folder.resolve("cars.csv"), "name,role,vehicle,options_lost,faults,obsolescence\n"
                + "mine,finished,Sivrette,heater,\"" + faults + "\",\"" + obsolescence + "\"\n");
        return FinishedCars.of(CarsFile.read(folder.resolve("cars.csv"), USD),
                FolderSettings.of(folder, Conventions.unstated()), USD, Assumptions.defaults());
    }

    private static List<String> messages(FinishedCars read) {
        return read.problems().stream().map(p -> p.column() + " " + p.rawText() + " " + p.message()).toList();
    }

    @Test
    void a_fault_may_say_what_it_takes_off_as_a_loss_does() throws IOException {
        FinishedCars read = faulty("engine knocks: 1,500; paint peels: 3 %; small dent; gearbox: whines; seat torn: 100 EUR", "");
        assertEquals(List.of(), messages(read));
        assertEquals(List.of(new SwapCost.Loss("engine knocks", 1500, 0), new SwapCost.Loss("paint peels", 0, 0.03),
                SwapCost.Loss.unstated("small dent"), SwapCost.Loss.unstated("gearbox: whines"), new SwapCost.Loss("seat torn", 120, 0)),
                read.cars().get(0).faults());
    }

    @Test
    void a_figure_of_a_fault_that_makes_no_sense_is_named_as_that_of_a_loss_and_the_fault_is_still_told() throws IOException {
        String entries = "heater: -350; clock: 100 %; lamp: 12x; seat: 5 ZAR";
        FinishedCars read = faulty(entries, "");
        assertEquals(List.of(entries.split("; ")), read.cars().get(0).faults().stream().map(SwapCost.Loss::what).toList());
        assertEquals(List.of(), read.cars().get(0).statedFaults());
        assertEquals(4, read.problems().size(), messages(read).toString());
        assertEquals(messages(faulty("", entries)), messages(read).stream().map(m -> m.replace("faults", "obsolescence")).toList());
    }

    @Test
    void a_loss_that_is_a_fault_too_is_asked_about_and_counts_where_the_fault_states_it() throws IOException {
        FinishedCars twice = faulty("engine knocks: 1500", "Engine-Knocks: 1500; heater lost: 300");
        assertEquals(1, twice.problems().size(), messages(twice).toString());
        assertEquals(RowProblem.Kind.QUESTION, twice.problems().get(0).kind());
        assertTrue(twice.problems().get(0).message().endsWith("where the fault itself states it, as it does; here it is not used"));
        assertEquals(List.of(new SwapCost.Loss("heater lost", 300, 0)), twice.cars().get(0).cost().losses());
        FinishedCars elsewhere = faulty("engine knocks", "engine knocks: 1500");
        assertTrue(elsewhere.problems().get(0).message().endsWith("Move the figure to faults"), messages(elsewhere).toString());
        assertEquals(1, elsewhere.cars().get(0).cost().losses().size());
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
    void what_becomes_of_the_old_running_gear_does_not_change_what_the_finished_car_is_worth() throws IOException {
        Files.writeString(folder.resolve("parts.csv"), "part,vehicle,running_gear,price\nengine,Line 33,gear 3,2600\n"
                + "engine,Line 00,gear 0,900\ngearbox,Line 00,gear 0,400\ngearbox,Line 33,gear 3,800\n");
        double sold = byParts("sell,engine,sell\nold,gearbox,sell", 3);
        assertEquals(sold, byParts("sell,engine,keep\nold,gearbox,scrap", 3));
        assertEquals(sold, byParts("sell,engine,sell\nold,gearbox,sell\nold,front seats,sell", 3));
        assertTrue(Math.abs(byParts("sell,front seats,sell", 4) / sold - 1) > 1e-4);
    }

    /** Cost by partout.csv; a note tells where the old gear is not priced. */
    private double byParts(String rows, int notes) throws IOException {
        Path cars = Files.writeString(folder.resolve("cars.csv"), "name,role,vehicle,body,running_gear,model_year,mileage,recipient,donor\n"
                + "mine,finished,Line 00,shell 0,gear 3,2013,70000,old,new\nold,recipient,Line 00,shell 0,gear 0,2013,70000,,\n"
                + "new,donor,Line 33,shell 3,gear 3,2013,40000,,\n");
        Files.writeString(folder.resolve("partout.csv"), "car,part,goes_to\nnew,engine,swap\nnew,gearbox,swap\n"
                + rows.replaceFirst("sell,", "old,") + "\n");
        Swaps swaps = Swaps.of(folder, CarsFile.read(cars, USD), USD, PriceModel.fit(SwapWorld.ordinary(3).cars()), Optional.empty(),
                Optional.empty());
        assertEquals(notes - 2, swaps.notes().size(), swaps.notes().toString());
        return ((SwapValue) swaps.answers().get(0)).median();
    }

    @Test
    void where_the_donor_s_cluster_goes_into_the_car_and_nobody_says_so_it_is_asked_and_told() throws IOException {
        String header = "name,role,vehicle,body,running_gear,model_year,mileage,donor,gear_value,removed_value,cluster\n";
        String donor = "new,donor,Line 33,shell 3,gear 3,2013,40000,,,,\n";
        Path cars = folder.resolve("cars.csv");
        Files.writeString(folder.resolve("partout.csv"), "car,part,goes_to\nnew,engine,swap\nnew,instrument cluster,swap\n");
        for (String stated : List.of(",", "2000,300")) {
            Files.writeString(cars, header + "mine,finished,Line 00,shell 0,gear 3,2013,70000,new," + stated + ",\n" + donor);
            Swaps swaps = Swaps.of(folder, CarsFile.read(cars, USD), USD, PriceModel.fit(SwapWorld.ordinary(3).cars()), Optional.empty(),
                    Optional.empty());
            assertTrue(swaps.problems().stream().anyMatch(p -> p.column().equals("cluster") && p.line() == 2
                    && p.kind() == RowProblem.Kind.QUESTION), swaps.problems().toString());
            String told = ((SwapValue) swaps.answers().get(0)).disclosure().csv();
            assertTrue(told.contains("not stated; by the owner's list of parts the donor's goes into it"), told);
        }
        for (String told : List.of("mine,finished,Line 00,shell 0,gear 3,2013,70000,new,,,its own", "mine,finished,Line 00,shell 0,gear 3,"
                + "2013,70000,other,,,")) {
            Files.writeString(cars, header + told + "\n" + donor);
            Swaps swaps = Swaps.of(folder, CarsFile.read(cars, USD), USD, PriceModel.fit(SwapWorld.ordinary(3).cars()), Optional.empty(),
                    Optional.empty());
            assertTrue(swaps.problems().stream().noneMatch(p -> p.column().equals("cluster")), swaps.problems().toString());
        }
    }

    @Test
    void a_second_factory_equivalent_and_one_with_another_running_gear_are_asked_about() throws IOException {
        Path cars = folder.resolve("cars.csv");
        Files.writeString(cars, "name,role,vehicle,body,running_gear,model_year,mileage\nmine,finished,Line 00,shell 0,gear 2,2013,70000\n"
                + "one,factory equivalent,Line 33,shell 3,gear 3,2013,70000\ntwo,factory equivalent,Line 22,shell 2,gear 2,2013,70000\n");
        Swaps swaps = Swaps.of(folder, CarsFile.read(cars, USD), USD, PriceModel.fit(SwapWorld.ordinary(3).cars()), Optional.empty(),
                Optional.empty());
        List<String> asked = swaps.problems().stream().map(RowProblem::message).toList();
        assertEquals(2, asked.size(), asked.toString());
        assertTrue(asked.get(0).contains("'one', and the first is the one that is used"), asked.toString());
        assertTrue(asked.get(1).contains("'one' has the running gear 'gear 3'") && asked.get(1).contains("'gear 2'"), asked.toString());
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
