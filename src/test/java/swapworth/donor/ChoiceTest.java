package swapworth.donor;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.math.BigDecimal;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import swapworth.InOneLine;
import swapworth.assumptions.Assumptions;
import swapworth.listing.Airbags;
import swapworth.listing.CandidateCar;
import swapworth.listing.CarFacts;
import swapworth.listing.Condition;
import swapworth.listing.LevelOfTrade;
import swapworth.listing.Origin;
import swapworth.listing.PriceIncludes;
import swapworth.listing.Runs;
import swapworth.listing.Title;
import swapworth.market.PriceModel;
import swapworth.market.Subject;
import swapworth.market.ValueDraws;
import swapworth.statistics.Quantiles;
import swapworth.statistics.RandomNumbers;
import swapworth.table.Table;
import swapworth.world.SampleWorld;

class ChoiceTest {
    private static PriceModel model;
    private static ValueDraws draws;

    @TempDir
    Path folder;

    @BeforeAll
    static void fit() {
        model = PriceModel.fit(SampleWorld.generate(4).joinedCars());
        draws = model.draws(1000, 2);
    }

    private DonorStudy study(Assumptions assumptions, boolean listings, String... cars) throws IOException {
        String[] lines = new String[cars.length + 1];
        lines[0] = "name,role,vehicle,running_gear,model_year,mileage_mi,runs,damage,title,rust,seller,price,price_includes";
        System.arraycopy(cars, 0, lines, 1, cars.length);
        Donors donors = new Donors(folder).file("cars.csv", lines);
        return DonorStudy.of(folder, donors.cars(), FeeFiles.USD, listings ? Optional.of(model) : Optional.empty(),
                listings ? state() : MarketState.of(Optional.empty(), Optional.empty()), assumptions);
    }

    private static MarketState state() {
        return MarketState.of(draws, DonorStudy.SEED, model.lastSeen());
    }

    // By hand: 6,000 - 700 = 5,300 against 5,600 - 250 = 5,350: 50 apart, and each price of parts is unsure by 15 %.
    @Test
    void two_cars_within_their_doubt_are_no_real_difference_and_a_clear_one_is_dearer() throws IOException {
        new Donors(folder).file("partout.csv", "car,part,price,sells,days,postage", "a,engine,700,1,0.1,0", "b,gearbox,250,1,0.1,0",
                "c,gearbox,250,1,0.1,0");
        DonorStudy study = study(Donors.plain().with(Donors.with(Donors.plain().get("own_price"), 0, 15)), false,
                "a,recipient,Sivrette,,2016,71000,drives,none,clean,sound,private,6000,neither",
                "b,recipient,Sivrette,,2016,71000,drives,none,clean,sound,private,5600,neither",
                "c,recipient,Sivrette,,2012,120000,drives,front,salvage,bad,private,8600,neither");
        Choice choice = study.choices().get(0);
        assertEquals(List.of("a", "b", "c"), choice.options().stream().map(o -> o.car().name()).toList());
        assertTrue(choice.noRealDifference(1));
        assertFalse(choice.noRealDifference(2));
        // The price of a's parts errs by 15 % of 700 and b's by 15 % of 250: the difference by sqrt(105^2 + 37.5^2) = 111.
        double[] difference = choice.dearerBy(1);
        assertEquals(2 * 1.2816 * 111.5, Quantiles.of(difference, 0.9) - Quantiles.of(difference, 0.1), 25);
        assertTrue(choice.table("USD").csv().contains("title salvage; rust: bad; damage front"), choice.table("USD").csv());
    }

    @Test
    void a_car_whose_parts_nobody_named_stands_last_and_is_not_held_against_one_whose_parts_were_counted() throws IOException {
        new Donors(folder).file("partout.csv", "car,part,price,sells,days,postage", "named,gearbox,250,1,0.1,0");
        Choice choice = study(Donors.plain(), false, "cheap,recipient,Sivrette,,2016,71000,drives,none,clean,sound,private,4000,neither",
                "named,recipient,Sivrette,,2016,71000,drives,none,clean,sound,private,6000,neither").choices().get(0);
        assertEquals(List.of("named", "cheap"), choice.options().stream().map(o -> o.car().name()).toList());
        assertEquals(1, choice.compared());
        assertFalse(choice.noRealDifference(1));
        String text = choice.table("USD").text();
        String row = choice.table("USD").csv().lines().filter(line -> line.startsWith("cheap")).findFirst().orElseThrow();
        assertTrue(row.contains("4000") && row.contains("not in partout.csv") && row.contains("left-over parts not counted"), row);
        assertFalse(row.contains(" to ") || row.contains("dearer"), row);
        assertTrue(text.contains("partout.csv does not name the parts of 'cheap'") && text.contains("are not held against"), text);
    }

    @Test
    void a_car_of_which_nobody_says_what_it_is_for_is_no_recipient() throws IOException {
        new Donors(folder).file("partout.csv", "car,part,price,sells,days,postage", "a,engine,700,1,0.1,0");
        DonorStudy study = study(Donors.plain(), false, "a,,Sivrette,,2016,71000,drives,none,clean,sound,private,6000,neither",
                "b,recipient,Sivrette,,2016,71000,drives,none,clean,sound,private,5600,neither");
        assertEquals(List.of("b"), study.choices().stream().flatMap(c -> c.options().stream()).map(o -> o.car().name()).toList());
    }

    private static final String[] PAIR = {"a,recipient,Sivrette,,2016,71000,drives,none,clean,sound,private,8266,neither",
        "b,recipient,Sivrette,,2016,71000,drives,none,clean,sound,private,9126,neither"};

    @Test
    void cars_none_of_whose_parts_has_a_price_are_not_held_against_others_by_a_recovery_of_nothing() throws IOException {
        Donors files = new Donors(folder).file("partout.csv", "car,part,price", "a,engine,", "a,gearbox,", "b,engine,");
        Choice none = study(Assumptions.defaults(), false, PAIR).choices().get(0);
        String text = InOneLine.of(none.table("USD").text());
        assertTrue(text.contains("None of the parts for sale of 'a', 'b' has a price") && text.contains("no part has a price"), text);
        String rows = none.table("USD").csv();
        assertTrue(rows.contains("dearer by 860 at the door; left-over parts not counted"), rows);
        assertFalse(rows.contains(" to ") || rows.contains("not in partout.csv"), rows);
        files.file("partout.csv", "car,part,price", "a,engine,", "b,engine,400");
        Choice one = study(Assumptions.defaults(), false, PAIR).choices().get(0);
        assertEquals(List.of("b", "a"), one.options().stream().map(o -> o.car().name()).toList());
        assertEquals(1, one.compared());
    }

    @Test
    void how_many_parts_of_a_car_have_no_price_stands_behind_its_name() throws IOException {
        new Donors(folder).file("partout.csv", "car,part,price,goes_to,state,count", "a,engine,700,,,", "a,gearbox,,,,", "a,wheels,,,,4",
                "a,radio,,keep,,", "a,bonnet,,,gone,", "a,catalyst,,,,", "b,engine,700,,,", "b,wheels,0,,,");
        DonorStudy study = study(Donors.plain(), false, PAIR);
        assertTrue(study.partOut("b").told().orElseThrow().leftTable().csv().contains("its row states a price of 0"));
        String table = study.choices().get(0).table("USD").csv();
        assertTrue(table.contains("a (landed cost not whole; 5 of 6 parts have no price)"), table);
        assertTrue(table.contains("b (landed cost not whole),"), table);
    }

    // Two engines in cars of one line: an offer that names the line alone tells of neither.
    @Test
    void the_order_of_cars_does_not_decide_what_an_engine_sells_for() throws IOException {
        new Donors(folder).file("partout.csv", "car,part", "a,engine", "a,gearbox").file("parts.csv", "part,price,vehicle,running_gear",
                "engine,2000,Velmarch,", "engine,2200,Velmarch,", "engine,900,,four 2.0", "engine,950,,four 2.0", "gearbox,400,Velmarch,");
        String four = "a,donor,Velmarch,four 2.0,2016,71000,drives,none,clean,sound,private,8000,neither";
        String six = "b,donor,Velmarch,six 3.2,2016,71000,drives,none,clean,sound,private,9000,neither";
        List<Recovery.PartResult> forth = engines(four, six);
        assertEquals(forth, engines(six, four));
        assertNotEquals(forth, engines(four), "where all rows name one gear the offers of the line are offers of that gear");
        String blank = four.replace("four 2.0", "");
        assertEquals(engines(blank, four.replace("a,", "c,"), six), engines(blank, six, four.replace("a,", "c,")));
    }

    private List<Recovery.PartResult> engines(String... cars) throws IOException {
        return study(Assumptions.defaults(), false, cars).partOut("a").told().orElseThrow().recovery().orElseThrow().parts();
    }

    @Test
    void cars_none_of_which_partout_csv_names_are_compared_by_what_they_cost_at_the_door() throws IOException {
        new Donors(folder).file("partout.csv", "car,part,price", "hit,engine,900");
        Choice choice = study(Donors.plain(), false, "a,recipient,Sivrette,,2016,71000,drives,none,clean,sound,private,4000,neither",
                "b,recipient,Sivrette,,2016,71000,drives,none,clean,sound,private,5250,neither",
                "hit,donor,Velmarch,,,,,,,,private,3000,neither").choices().get(1);
        assertEquals(2, choice.compared());
        String text = InOneLine.of(choice.table("USD").text());
        assertTrue(choice.table("USD").csv().contains("\"dearer by 1,250 at the door; left-over parts not counted\""), text);
        assertTrue(text.contains("partout.csv names the parts of none of them"), text);
        assertFalse(text.contains("4,000 to 4,000") || text.contains("1,250 to 1,250"), text);
    }

    @Test
    void where_one_donor_counts_twice_as_many_parts_as_another_a_note_says_how_many_each_counts() throws IOException {
        String[] cars = {"a,recipient,Sivrette,,2016,71000,drives,none,clean,sound,private,6000,neither",
            "b,recipient,Sivrette,,2016,71000,drives,none,clean,sound,private,5600,neither"};
        new Donors(folder).file("partout.csv", "car,part,price,count", "a,engine,700,", "a,gearbox,250,", "a,wheels,100,", "a,bonnet,80,",
                "b,gearbox,250,", "b,wheels,100,");
        String text = study(Donors.plain(), false, cars).choices().get(0).table("USD").text();
        assertTrue(text.contains("'a' 4, 'b' 2.") || text.contains("'b' 2, 'a' 4."), text);
        new Donors(folder).file("partout.csv", "car,part,price,count", "a,engine,700,", "a,gearbox,250,", "a,wheels,100,", "b,gearbox,250,",
                "b,wheels,100,");
        assertFalse(study(Donors.plain(), false, cars).choices().get(0).table("USD").text().contains("same number of parts"));
    }

    @Test
    void a_car_that_does_not_run_is_bracketed_from_both_sides() throws IOException {
        new Donors(folder).file("partout.csv", "car,part", "dead,gearbox").file("parts.csv", "part,price,price_kind", "engine,2000,sold",
                "engine,2100,sold", "engine,1900,sold", "gearbox,900,sold");
        Assumptions a = Donors.assuming(false, "make_run_extra", 450, "make_run_margin", 12);
        DonorStudy study = study(a, true, "dead,recipient,Sivrette,four 2.0,2014,98000,engine dead,none,clean,sound,private,5000,neither",
                "runs,recipient,Sivrette,four 2.0,2014,98000,drives,none,clean,sound,private,9000,neither");
        assertEquals(1, study.brackets().size());
        RunningBracket bracket = study.brackets().get(0);
        CandidateCar running = study.choices().get(0).options().stream().map(CarOption::car).filter(c -> c.name().equals("runs"))
                .findFirst()
                .orElseThrow();
        double value = Quantiles.of(draws.level(new Subject(running.facts(), LevelOfTrade.PRIVATE_SOLD,
                PriceIncludes.NEITHER, model.lastSeen())), 0.5);
        // By hand from the running value V: V x 0.88 - about 2,000 - 450, within the scatter of single cars and engines.
        assertEquals(value * 0.88 - 2450, Quantiles.of(bracket.fromRunning(), 0.5), 0.05 * value);
        assertTrue(bracket.nonRunners() > 0 && bracket.nonRunnersOfLine() <= bracket.nonRunners());
        assertTrue(Quantiles.of(bracket.direct(), 0.5) < value);
        assertTrue(bracket.bracket().orElseThrow().low() <= bracket.bracket().orElseThrow().high());
        assertTrue(bracket.table("USD").text().contains("make_run_margin"));
    }

    // By hand, draw by draw: the price of the running car less 12 %, less 450; no offer names an engine.
    @Test
    void the_second_side_is_the_running_car_less_the_margin_and_what_else_it_takes() throws IOException {
        new Donors(folder).file("partout.csv", "car,part", "dead,gearbox").file("parts.csv", "part,price,price_kind", "gearbox,900,sold");
        DonorStudy study = study(Donors.assuming(false, "make_run_extra", 450, "make_run_margin", 12), true,
                "dead,recipient,Sivrette,four 2.0,2014,98000,engine dead,none,clean,sound,private,5000,neither");
        RunningBracket bracket = study.brackets().get(0);
        double[] running = draws.price(sold(bracket.car().facts().toBuilder().runs(Runs.DRIVES).build()),
                RandomNumbers.seed(DonorStudy.SEED, "dead"));
        for (int i = 0; i < running.length; i++) {
            assertEquals(running[i] * 0.88 - 450, bracket.fromRunning()[i], 1e-6);
        }
        assertEquals(0, bracket.engine());
    }

    @Test
    void a_car_of_a_line_that_no_listing_knows_has_no_figure_on_either_side() throws IOException {
        new Donors(folder).file("partout.csv", "car,part", "odd,gearbox").file("parts.csv", "part,price,price_kind", "engine,2000,sold");
        DonorStudy study = study(Donors.plain(), true,
                "odd,recipient,Nowhereline,four 2.0,2014,98000,engine dead,none,clean,sound,private,5000,neither");
        RunningBracket bracket = study.brackets().get(0);
        assertEquals(Optional.empty(), bracket.bracket());
        assertEquals("odd: as it lies cannot tell, from running cannot tell", bracket.toString());
        Table table = bracket.table("USD");
        assertTrue(table.notes().get(0).startsWith("The listings cannot tell either side: no other car of the line 'Nowhereline'"),
                table.notes().toString());
        assertEquals(1, table.notes().size());
        assertEquals(List.of("cannot tell", "cannot tell"), table.rows().stream().map(row -> row.get(2).shown()).toList());
    }

    @Test
    void the_uses_of_a_donor_stand_on_the_same_draws_and_a_pulled_set_beside_them() throws IOException {
        new Donors(folder).file("partout.csv", "car,part,goes_to,price,sells,days,postage", "hit,engine,swap,2500,1,0.1,0",
                "hit,wheels,sell,300,1,0.1,0").file("parts.csv", "part,price,price_kind,running_gear", "drivetrain set,3000,sold,six 3.2",
                        "drivetrain set,3000,sold,six 3.2");
        Assumptions a = Donors.plain("postage_set", 320, "set_missing", 10);
        DonorStudy study = study(a, true, "hit,donor,Velmarch,six 3.2,2018,50000,drives,front,salvage,sound,auction,4000,neither");
        DonorUses uses = study.uses().get(0);
        assertEquals(List.of("use the gear, sell the rest", "take all of it apart and sell it", "sell it as it lies", "repair and sell it"),
                uses.uses().stream().map(DonorUses.Use::name).toList());
        // By hand: 2,500 x the chance of an engine after a front hit (chance_likely, 85 %) + 300 - 4,000; the wheels likely good too.
        double[] swap = uses.uses().get(0).leaves();
        assertEquals(2500 * 0.85 + 300 * 0.85 - 4000, Arrays.stream(swap).average().orElseThrow(), 20);
        double[] all = uses.uses().get(1).leaves();
        assertEquals(2500 * 0.85 + 300 * 0.85 - 4000, Arrays.stream(all).average().orElseThrow(), 4.5 * 950 / Math.sqrt(1000));
        DonorUses.PulledSet set = uses.set().orElseThrow();
        // The median of 1,000 draws of a price with a scatter of some 20 % errs by 26.
        assertEquals(3000 * 1.1 + 320, Quantiles.of(set.cost(), 0.5), 4 * 26);
        for (int i = 0; i < 1000; i++) {
            assertEquals(study.choices().get(0).options().get(0).withGear()[i] - set.cost()[i], set.cheaperBy()[i], 1e-6);
        }
        assertTrue(uses.table("USD").text().contains("A pulled drivetrain set"));
    }

    // By hand: 3,000 at the door and another engine at 2,500 is more than 4,500; with the engine good in half of the draws 4,250 is less.
    @Test
    void a_donor_whose_engine_must_be_replaced_stands_by_what_it_costs_with_another() throws IOException {
        Donors files = new Donors(folder).file("partout.csv", "car,part,goes_to,price", "a,engine,swap,2500", "b,engine,swap,2500");
        String dead = "a,donor,Velmarch,,,,engine dead,none,salvage,sound,private,3000,neither";
        String runs = "b,donor,Velmarch,,,,drives,none,salvage,sound,private,4500,neither";
        Choice choice = study(Donors.plain(), false, dead, runs).choices().get(0);
        assertEquals(List.of("b", "a"), choice.options().stream().map(o -> o.car().name()).toList());
        assertEquals(5500, choice.options().get(1).meanWithGear(), 1e-9);
        String table = choice.table("USD").csv();
        assertTrue(table.contains("a (landed cost not whole),engine dead,3000,0,3000,0,2500,5500,\"5,500 to 5,500\""), table);
        files.file("partout.csv", "car,part,goes_to,price,chance_good", "a,engine,swap,2500,0.5", "b,engine,swap,2500,");
        Choice half = study(Donors.plain(), false, dead, runs).choices().get(0);
        assertEquals(3000 + 0.5 * 2500, half.options().get(0).meanWithGear(), 4.5 * 1250 / Math.sqrt(2000));
        assertTrue(half.noRealDifference(1));
        assertEquals(50, half.dearerIn(1), 5);
    }

    @Test
    void a_donor_of_whose_gear_part_has_no_price_is_not_held_against_one_of_which_all_has() throws IOException {
        new Donors(folder).file("partout.csv", "car,part,goes_to,price", "a,engine,swap,", "b,engine,swap,2500", "b,gearbox,swap,900",
                "c,engine,swap,2500", "d,bonnet,sell,10");
        String rest = ",donor,Velmarch,,,,drives,none,salvage,sound,private,";
        Choice choice = study(Donors.plain(), false, "a" + rest + "2000,neither", "b" + rest + "4500,neither", "c" + rest + "4600,neither",
                "d" + rest + "1000,neither").choices().get(0);
        assertEquals(List.of("b", "c", "d", "a"), choice.options().stream().map(o -> o.car().name()).toList());
        assertEquals(2, choice.compared());
        String text = InOneLine.of(choice.table("USD").text());
        assertTrue(text.contains("gear of 'd', 'a' where it turns out bad is not all counted"), text);
        assertTrue(text.contains("Of 'c' these do not go into the swap, as they do of another: gearbox"), text);
        assertTrue(choice.table("USD").csv().contains("gear to replace not counted: no price of engine"), text);
    }

    // By hand, draw by draw: three zones at 18 % each and airbags at 12 % leave 34 % of what the car is worth put right, with a rebuilt
    // title; less 2,500 by the chance of 55 % that a doubtful engine is not good.
    @Test
    void a_use_that_sells_parts_says_how_many_have_no_price_and_is_left_out_where_none_has_one() throws IOException {
        String hit = "hit,donor,Velmarch,six 3.2,2018,50000,drives,front,salvage,sound,private,4000,neither";
        new Donors(folder).file("partout.csv", "car,part,goes_to,price", "hit,left door,sell,");
        assertEquals(List.of("sell it as it lies", "repair and sell it"), study(Donors.plain(), true, hit).uses().get(0).uses().stream()
                .map(DonorUses.Use::name).toList());
        new Donors(folder).file("partout.csv", "car,part,goes_to,price", "hit,engine,swap,2000", "hit,gearbox,sell,600",
                "hit,left door,sell,", "hit,wheels,keep,");
        List<DonorUses.Use> uses = study(Donors.plain(), true, hit).uses().get(0).uses();
        assertTrue(uses.get(0).how().endsWith("; 1 more part has no price and is not in it"), uses.get(0).how());
        assertTrue(uses.get(1).how().endsWith("; 2 more parts have no price and are not in it"), uses.get(1).how());
    }

    @Test
    void a_donor_sold_as_it_lies_or_repaired_leaves_its_price_less_zones_airbags_and_another_engine() throws IOException {
        new Donors(folder).file("partout.csv", "car,part,goes_to,price,state", "hit,engine,swap,2500,doubtful").file("cars.csv",
                "name,role,vehicle,model_year,mileage_mi,runs,damage,airbags,title,seller,price",
                "hit,donor,Velmarch,2018,50000,not tried,front; left; roof,fired,salvage,private,4000");
        Assumptions a = Donors.plain("repair_zone", 18, "repair_airbags", 12, "chance_doubtful", 45);
        CandidateCar hit = new Donors(folder).cars().get(0);
        List<DonorUses.Use> uses = DonorStudy.of(folder, List.of(hit), FeeFiles.USD, Optional.of(model), state(), a).uses().get(0).uses();
        CarFacts right = hit.facts().toBuilder().damage(Set.of()).runs(Runs.DRIVES).airbags(Airbags.IN_PLACE).title(Title.REBUILT)
                .mechanical(Condition.SOUND).build();
        double[] lies = draws.price(sold(hit.facts()), RandomNumbers.seed(DonorStudy.SEED, "hit"));
        double[] sound = draws.price(sold(right), RandomNumbers.seed(DonorStudy.SEED, "hit"));
        assertEquals(List.of("sell it as it lies", "repair and sell it"), uses.subList(2, 4).stream().map(DonorUses.Use::name).toList());
        int bad = 0;
        for (int i = 0; i < lies.length; i++) {
            assertEquals(lies[i] - 4000, uses.get(2).leaves()[i], 1e-6);
            // The engine that leaves nothing as a used part is the one for which another is bought.
            double engine = 2500 - (uses.get(0).leaves()[i] + 4000);
            bad += engine > 1 ? 1 : 0;
            assertEquals(sound[i] * (1 - 3 * 0.18 - 0.12) - engine - 4000, uses.get(3).leaves()[i], 1e-6);
        }
        assertEquals(0.55, bad / (double) lies.length, 4.5 * Math.sqrt(0.55 * 0.45 / lies.length));
    }

    private static Subject sold(CarFacts facts) {
        return new Subject(facts, LevelOfTrade.PRIVATE_SOLD, PriceIncludes.NEITHER, model.lastSeen());
    }

    @Test
    void a_car_that_is_not_dearer_in_nine_draws_of_ten_is_no_real_difference() {
        assertTrue(dearerIn(89, 1).noRealDifference(1));
        assertFalse(dearerIn(93, 1).noRealDifference(1));
        Choice seldomBad = dearerIn(8, 100);
        assertTrue(seldomBad.noRealDifference(1));
        assertEquals(8, seldomBad.dearerIn(1));
    }

    /** Two cars of which the second costs more than the first in so many of a hundred draws, and 1 less in the others. */
    private static Choice dearerIn(int draws, double more) {
        double[] brings = new double[100];
        for (int i = 0; i < 100; i++) {
            brings[i] = i < draws ? -more : 1;
        }
        return new Choice("Recipients", List.of(option("a", 5000, new double[100]), option("b", 5000, brings)));
    }

    private static CarOption option(String name, double landed, double[] brings) {
        return new CarOption(new CandidateCar(name, CandidateCar.Role.RECIPIENT, CarFacts.of("Sivrette").build(), Optional.empty(),
                new Origin("cars.csv", 2)), landed, true, brings, new double[brings.length], GearValue.NONE, GearValue.NONE, 1, true, 1, 0);
    }

    @Test
    void a_choice_of_no_car_is_none() {
        assertThrows(IllegalArgumentException.class, () -> new Choice("Donors", List.of()));
    }

    @Test
    void of_a_donor_whose_line_no_listing_knows_no_bid_is_shaded_and_no_use_as_a_whole_car_is_valued() throws IOException {
        Donors files = new Donors(folder).file("partout.csv", "car,part,goes_to,price", "slip,engine,swap,2500").file("cars.csv",
                "name,role,vehicle,model_year,mileage_mi,runs,seller,price", "slip,donor,Velmrach,2018,50000,drives,auction,4000")
                .file("fees.csv", "table,kind,percent", "premium,fee,10");
        DonorStudy study = DonorStudy.of(new DonorFiles(folder, FeeFiles.USD, Assumptions.defaults()), files.cars(), FeeFiles.USD,
                Optional.of(model), state(), Optional.of(new BigDecimal("6000")));
        Landed.Bid bid = study.landed().told().orElseThrow().bids().get(0);
        assertTrue(bid.shaded().isEmpty() && bid.unshaded().orElseThrow().contains("Velmrach"), bid.toString());
        assertTrue(study.landed().told().orElseThrow().bidTable().orElseThrow().csv().contains("not shaded: "), bid.toString());
        DonorUses uses = study.uses().get(0);
        assertEquals(List.of("use the gear, sell the rest", "take all of it apart and sell it"),
                uses.uses().stream().map(DonorUses.Use::name).toList());
        assertTrue(uses.table("USD").text().contains("the listings cannot tell"), uses.table("USD").text());
    }

    @Test
    void taking_all_of_a_donor_apart_sells_what_is_kept_too() throws IOException {
        new Donors(folder).file("partout.csv", "car,part,goes_to,price,sells,days,postage", "hit,engine,keep,2500,1,0.1,0",
                "hit,bonnet,scrap,80,1,0.1,0");
        DonorUses uses = study(Donors.plain(), false, "hit,donor,Velmarch,six 3.2,,,drives,none,salvage,sound,auction,4000,neither")
                .uses().get(0);
        assertEquals("take all of it apart and sell it", uses.uses().get(0).name());
        assertEquals(2500 - 4000, Quantiles.of(uses.uses().get(0).leaves(), 0.5), 1e-9);
    }

    @Test
    void without_listings_or_fees_what_can_be_said_is_said() throws IOException {
        new Donors(folder).file("partout.csv", "car,part,price", "hit,engine,900");
        DonorStudy study = study(Assumptions.defaults(), false, "hit,candidate,Velmarch,,,,,,,,private,3000,neither");
        assertTrue(study.landed().told().isEmpty() && study.brackets().isEmpty());
        assertEquals(3000, study.choices().get(0).options().get(0).landed(), 1e-9);
        assertTrue(study.choices().get(0).table("USD").text().contains("landed cost not whole"));
        assertEquals(Map.of("velmarch", "six"), DonorFiles.gears(List.of(new CandidateCar("x", CandidateCar.Role.DONOR,
                CarFacts.of("Velmarch").runningGear("Six").build(), Optional.empty(),
                new Origin("cars.csv", 2))), Optional.empty()));
    }
}
