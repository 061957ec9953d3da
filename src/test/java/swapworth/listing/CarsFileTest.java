package swapworth.listing;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Currency;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import swapworth.reading.RowProblem;
import swapworth.reading.UnusableFileException;

class CarsFileTest extends ReadingListings {

    private CarsFile cars(String text) {
        return CarsFile.read(write("cars.csv", text), Currency.getInstance("EUR"));
    }

    @Test
    void cars_in_play_have_a_role_facts_and_perhaps_a_price() {
        CarsFile read = cars("name,role,vehicle,mileage_km,planned bid\n"
                + "the red one,Donor,Saloon,100000,4000\nmine,recipient,Roadster,,\n");
        assertEquals(2, read.cars().size());
        CandidateCar donor = read.cars().get(0);
        assertEquals(CandidateCar.Role.DONOR, donor.role());
        assertEquals(4000, donor.priceOrBid().orElseThrow().amount());
        assertEquals("EUR", donor.priceOrBid().orElseThrow().typed().currency().getCurrencyCode());
        assertEquals(62137.12, donor.facts().mileage().orElseThrow().miles(), 0.01);
        assertEquals(Optional.empty(), read.cars().get(1).priceOrBid());
        assertEquals(new Origin("cars.csv", 3), read.cars().get(1).origin());
    }

    @Test
    void a_car_in_play_is_of_the_line_and_region_of_the_listings_whichever_way_it_is_written() {
        ListingsRead listed = Listings.read(write("listings.csv", "vehicle,model_year,price,region,trim,gear_line\n"
                + "Sivrette,2015,9000,Norrow-Fen,Sport,Gald Rise\n"));
        String text = "name,role,vehicle,region,trim,gear_line,price\n"
                + "x,finished,SIVRETTE,NORROW FEN,sport,sivrette,8000\ny,donor,sivrette,Elsewhere,,gald-rise,\n";
        List<CarFacts> cars = CarsFile.read(write("cars.csv", text), listed).cars().stream().map(CandidateCar::facts).toList();
        assertEquals(List.of("Sivrette", "Sivrette"), cars.stream().map(CarFacts::vehicle).toList());
        assertEquals(List.of("Norrow-Fen", "Elsewhere"), cars.stream().map(c -> c.region().orElseThrow()).toList());
        assertEquals(Optional.of("Sport"), cars.get(0).trim());
        assertEquals("Sivrette", cars.get(0).further().get("gear_line"));
        ListingsRead more = Listings.withDefaults().spelledAs(List.of(listed.cars().get(0))).readFiles(write("more.csv",
                "vehicle,model_year,price,region\nsivrette,2015,9000,norrow fen\n"));
        assertEquals("Sivrette", more.cars().get(0).facts().vehicle());
        assertEquals(Optional.of("Norrow-Fen"), more.cars().get(0).facts().region());
    }

    @Test
    void a_column_that_nothing_reads_is_named_with_the_one_that_was_probably_meant() {
        ListingsRead listed = Listings.read(write("listings.csv", "vehicle,model_year,price_eur,colour\nSaloon,2015,9000,red\n"));
        String text = "name,role,vehicle,damge,gear_milage_km,obsolesence,workvalue,shade,colour,built_by,price\n"
                + "mine,finished,Saloon,front,90000,clock: 2 %,4000,red,red,owner,\n";
        assertEquals(List.of("damge: this column is not used; did you mean damage?",
                "gear_milage_km: this column is not used; did you mean gear_mileage?",
                "obsolesence: this column is not used; did you mean obsolescence?",
                "workvalue: this column is not used; did you mean work_value?", "shade: this column is not used"),
                CarsFile.read(write("cars.csv", text), listed).oddities().stream().filter(p -> p.line() == 1)
                        .map(p -> p.column() + ": " + p.message()).toList());
    }

    @Test
    void a_name_that_stands_twice_or_is_missing_is_set_aside() {
        CarsFile read = cars("name,vehicle,price\na,Saloon,1\nA,Saloon,2\n,Saloon,3\nb,Saloon,12.500\nc,Saloon,0\n");
        assertEquals(List.of(3, 4), read.setAside().stream().map(RowProblem::line).toList());
        assertEquals(List.of(5), read.rejected().stream().map(RowProblem::line).toList());
        assertEquals(List.of("a", "c"), read.cars().stream().map(CandidateCar::name).toList());
        assertTrue(read.oddities().get(0).message().contains("not above 0"));
    }

    @Test
    void a_planned_bid_counts_before_the_price_asked() {
        CarsFile read = cars("name,vehicle,price,planned_bid\na,Saloon,5000,\nb,Saloon,5000,4000\nc,Saloon,,3000\n");
        assertEquals(List.of(5000.0, 4000.0, 3000.0),
                read.cars().stream().map(car -> car.priceOrBid().orElseThrow().amount()).toList());
    }

    @Test
    void a_distance_whose_unit_nothing_states_is_asked_about() {
        assertTrue(cars("name,vehicle,mileage\na,Saloon,92000\n").oddities().get(0).message().contains("they are taken for miles"));
        for (String file : List.of("name,vehicle,mileage\na,Saloon,92000 km\n", "name,vehicle,mileage_km\na,Saloon,92000\n",
                "name,vehicle,mileage\na,Saloon,\n")) {
            assertTrue(cars(file).oddities().stream().noneMatch(p -> p.message().contains("taken for miles")), file);
        }
    }

    @Test
    void a_cell_with_its_unit_contradicts_only_a_unit_that_is_stated() {
        assertEquals(List.of(), cars("name,role,vehicle,mileage\na,donor,Saloon,92000 km\n").oddities());
        assertTrue(cars("name,vehicle,mileage_mi\na,Saloon,92000 km\n").oddities().get(0).message().contains("its header says mi"));
    }

    @Test
    void a_role_that_is_not_known_is_listed() {
        CarsFile read = cars("name,role,vehicle\na,mascot,Saloon\n");
        assertEquals(CandidateCar.Role.UNKNOWN, read.cars().get(0).role());
        assertTrue(read.oddities().get(0).message().contains("candidate, recipient, donor, factory equivalent, finished"));
    }

    @Test
    void a_file_that_does_not_say_which_part_the_cars_play_is_asked_about_with_the_headers_that_are_not_understood() {
        String asked = cars("name,vehicle,part,hue\na,Saloon,donor,red\n").oddities().get(0).message();
        assertTrue(asked.contains("no car counts as donor") && asked.contains("part, hue") && asked.contains("header,part,role"), asked);
        assertEquals(List.of("this column is not used"),
                cars("name,vehicle,role,hue\na,Saloon,,red\n").oddities().stream().map(RowProblem::message).toList());
    }

    @Test
    void a_file_without_names_is_unusable() {
        assertThrows(UnusableFileException.class, () -> cars("vehicle,price\nSaloon,1\n"));
    }

    @Test
    void a_word_that_is_not_understood_is_told_with_its_row_the_known_words_and_a_hint_but_never_read_by_likeness() {
        CarsFile read = cars("name,role,vehicle,runs\nhit,doner,Saloon,no strat\nb,recipient,Roadster,blown\n");
        assertEquals(CandidateCar.Role.UNKNOWN, read.cars().get(0).role());
        assertEquals(Runs.UNKNOWN, read.cars().get(0).facts().runs());
        assertEquals(List.of("2 runs no strat: not understood; known: drives, engine fires, engine dead, no engine, not tried; did you"
                + " mean no start?",
                "2 role doner: not understood; known: candidate, recipient, donor, factory equivalent, finished; did you mean donor?",
                "3 runs blown: not understood; known: drives, engine fires, engine dead, no engine, not tried"),
                read.read().problems().stream().map(p -> p.line() + " " + p.column() + " " + p.rawText() + ": " + p.message()).toList());
        assertEquals("cars.csv, 2 rows: 2 used, 0 set aside, 0 rejected, 0 blank", read.read().sentence());
    }

    @Test
    void a_word_of_the_user_s_own_is_understood_in_cars_too() {
        write("words.csv", "column,word,means\nrole,doner,donor\nruns,blown,engine dead\n");
        CarsFile read = cars("name,role,vehicle,runs\nhit,doner,Saloon,blown\n");
        assertEquals(CandidateCar.Role.DONOR, read.cars().get(0).role());
        assertEquals(Runs.ENGINE_DEAD, read.cars().get(0).facts().runs());
        assertEquals(List.of(), read.read().problems());
    }

    @Test
    void a_row_that_sums_up_the_others_is_no_car_in_play() {
        CarsFile read = cars("name,role,vehicle,price\nhit,donor,Saloon,5300\nTotal,,Saloon,5300\n");
        assertEquals(List.of("hit"), read.cars().stream().map(CandidateCar::name).toList());
        assertEquals(List.of("Total"), read.setAside().stream().map(RowProblem::rawText).toList());
        ListingsRead listed = read("id,vehicle,model_year,price_usd\na1,Saloon,2015,9000\naverage,Saloon,2015,9000\n");
        assertEquals(1, listed.listings().size());
    }
}
