package swapworth.project;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import swapworth.InOneLine;
import swapworth.assumptions.Assumption;
import swapworth.assumptions.Assumptions;
import swapworth.reading.RowProblem;
import swapworth.statistics.Quantiles;

/** Alternatives against sums by hand, and what two of them share. */
class AlternativesTest {
    private static final String HEAD = "alternative,item,amount,kind,month,until,low,likely,high,chance,hours,car";

    @TempDir
    Path folder;

    private static Assumptions exact(String... namesAndMiddles) {
        Assumptions all = Assumptions.defaults();
        for (int k = 0; k < namesAndMiddles.length; k += 2) {
            Assumption one = all.get(namesAndMiddles[k]);
            all = all.with(new Assumption(one.name(), one.question(), Double.parseDouble(namesAndMiddles[k + 1]), 0, one.unit(),
                    one.source(),
                    one.note()));
        }
        return all;
    }

    private Alternatives read(Assumptions assumptions, String... rows) throws IOException {
        Path file = Files.writeString(folder.resolve("alternatives.csv"), HEAD + "\n" + String.join("\n", rows) + "\n");
        return Alternatives.withDefaults().with(assumptions).read(file);
    }

    @Test
    void amounts_are_carried_to_the_horizon_and_owned_things_need_no_cash() throws IOException {
        Assumptions assumptions = exact("alternative_estimate", "0", "capital_rate", "10", "horizon", "24");
        Alternative one = read(assumptions, "swap,car,8000,cost,0,,,,,,,", "swap,old tools,500,owned,0,,,,,,,",
                "swap,parts,1000,parts sold,6,,,,,,,",
                "swap,rent,50,cost,1,3,,,,,,", "swap,the car then,6000,resale,,,,,,,,", "swap,work,,cost,0,,,,,,120,").all().get(0);
        double year = 1.1;
        double expected = 8500 * year * year - 1000 * Math.pow(year, 1.5)
                + 50 * (Math.pow(year, 23 / 12.0) + Math.pow(year, 22 / 12.0) + Math.pow(year, 21 / 12.0)) - 6000;
        assertEquals(expected, one.netCost()[0], 1e-6);
        assertEquals(8150, one.toFind()[0], 1e-9);
        assertEquals(6000, one.resale()[0], 1e-9);
    }

    @Test
    void one_item_in_two_ways_is_one_thing_however_it_is_spelled_and_two_of_a_name_in_one_way_are_two() throws IOException {
        Assumptions assumptions = exact("capital_rate", "0", "horizon", "24");
        Alternatives spelled = read(assumptions, "a,Gear box,5000,cost,0,,,,,,,", "a,deposit,100,payment,0,,,,,,,",
                "b,gear-box,5000,cost,0,,,,,,,");
        double[] a = spelled.all().get(0).netCost();
        double[] b = spelled.all().get(1).netCost();
        for (int i = 0; i < a.length; i++) {
            assertEquals(100, a[i] - b[i], 1e-6);
        }
        // two coins: below 5,000 together in three of four; one coin would say one of two
        double[] risks = read(exact("capital_rate", "0", "horizon", "24", "alternative_estimate", "0"),
                "c,repair,5000,cost,6,,,,,50 %,,", "c,repair,5000,cost,18,,,,,50 %,,").all().get(0).netCost();
        double once = Arrays.stream(risks).filter(r -> r < 7500).count() / (double) risks.length;
        assertEquals(0.75, once, 4 * Math.sqrt(0.75 * 0.25 / risks.length));
    }

    @Test
    void a_row_that_sums_up_the_items_is_none_of_them() throws IOException {
        Assumptions assumptions = exact("alternative_estimate", "0", "capital_rate", "0", "horizon", "24");
        Alternatives read = read(assumptions, "swap,car,8000,cost,0,,,,,,,", "swap,work,1200,cost,0,,,,,,,",
                "swap,Total,9200,,,,,,,,,");
        assertEquals(9200, read.all().get(0).netCost()[0], 1e-6);
        assertTrue(read.all().get(0).whole());
    }

    @Test
    void amounts_that_are_said_to_come_out_higher_are_counted_higher_and_payments_are_not() throws IOException {
        Alternative one = read(exact("alternative_estimate", "50", "capital_rate", "0"), "swap,car,8000,cost,0,,,,,,,",
                "swap,rent,300,payment,0,,,,,,,", "swap,the car then,2000,resale,,,,,,,,").all().get(0);
        assertEquals(1.5 * 8000 + 300 - 1.5 * 2000, one.netCost()[0], 1e-6);
    }

    @Test
    void a_way_with_a_kind_that_is_not_understood_is_not_held_against_others_by_a_wrong_sign() throws IOException {
        Alternatives all = read(Assumptions.defaults(), "swap,car,8000,cost,0,,,,,,,", "swap,the car then,6000,Wiederverkauf,,,,,,,,");
        assertEquals(List.of(3), all.all().get(0).notCounted());
        assertTrue(reasons(all.rowsRead().rejected()).contains("3 kind: this word is not understood, so nobody can tell how the row"),
                reasons(all.rowsRead().rejected()));
    }

    @Test
    void what_is_paid_after_the_month_of_comparison_is_not_counted_and_asked_about() throws IOException {
        Assumptions assumptions = exact("alternative_estimate", "0", "capital_rate", "0", "horizon", "36");
        Alternatives both = read(assumptions, "A,car,10000,cost,0,,,,,,,", "A,insurance,100,payment,1,36,,,,,,",
                "A,sold,4000,resale,,,,,,,,",
                "B,car,10000,cost,0,,,,,,,", "B,insurance,100,payment,1,120,,,,,,", "B,sold,4000,resale,,,,,,,,");
        assertEquals(10_000 + 3_600 - 4_000, both.all().get(0).netCost()[0], 1e-9);
        assertEquals(both.all().get(0).netCost()[0], both.all().get(1).netCost()[0], 1e-9);
        assertEquals(13_600, both.all().get(1).toFind()[0], 1e-9);
        String questions = reasons(both.rowsRead().questions());
        assertTrue(questions.startsWith("6 until: alternatives are held against each other after 36 months"), questions);
    }

    @Test
    void a_loan_that_is_not_paid_back_within_the_horizon_is_asked_about() throws IOException {
        Assumptions assumptions = exact("horizon", "24");
        String[] rows = {"factory,car,30000,cost,0,,,,,,,", "factory,loan,20000,loan,0,,,,,,,", "factory,payments,600,payment,1,30,,,,,,",
            "factory,the car then,15000,resale,,,,,,,,"};
        String asked = reasons(read(assumptions, rows).rowsRead().questions());
        assertTrue(asked.contains("3 kind: 20000 is lent, and rows of the kinds payment and owed pay back 14400 of it within 24 months: the"
                + " rest looks like money gained. What is still owed then needs a row of the kind owed in month 24"), asked);
        rows[0] = "factory,the rest,6000,owed,24,,,,,,,";
        asked = reasons(read(assumptions, rows).rowsRead().questions());
        assertFalse(asked.contains("is lent"), asked);
    }

    @Test
    void the_way_that_costs_least_is_said_with_the_next_one_and_those_that_are_not_whole_are_left_out() throws IOException {
        Assumptions assumptions = exact("alternative_estimate", "0", "capital_rate", "0", "horizon", "12");
        assertEquals("Of 2 ways 'b' costs least over 12 months: net USD 4,000 (80 % range 4,000 to 4,000), own hours not in it; next 'a'"
                + " with 5,000 (80 % range 5,000 to 5,000), which is dearer with a chance of more than 99 %.",
                read(assumptions, "a,car,5000,cost,0,,,,,,,", "b,car,4000,cost,0,,,,,,,", "c,car,100,cost,0,,,,,,,",
                        "c,rent,x,cost,0,,,,,,,").sentence());
        assertEquals("", read(assumptions, "a,car,5000,cost,0,,,,,,,").sentence());
    }

    @Test
    void a_loan_lowers_the_cash_to_find_and_its_payments_count() throws IOException {
        Assumptions assumptions = exact("alternative_estimate", "0", "capital_rate", "0", "horizon", "36");
        Alternative one = read(assumptions, "factory,car,30000,cost,0,,30000,30000,30000,,,", "factory,loan,20000,loan,0,,,,,,,",
                "factory,payments,627,payment,1,36,,,,,,", "factory,the car then,18000,resale,,,,,,,,").all().get(0);
        assertEquals(30_000 - 20_000 + 36 * 627 - 18_000, one.netCost()[5], 1e-9);
        assertEquals(30_000 - 20_000 + 36 * 627, one.toFind()[5], 1e-9);
    }

    @Test
    void the_same_item_in_two_ways_is_drawn_once() throws IOException {
        String[] rows = {"a,donor,,cost,0,,6000,7000,9500,,,", "a,paint,500,cost,0,,500,500,500,,,", "b,donor,,cost,0,,6000,7000,9500,,,",
            "b,paint,600,cost,0,,600,600,600,,,", "c,another donor,,cost,0,,6000,7000,9500,,,", "c,paint,600,cost,0,,600,600,600,,,"};
        List<Alternative> all = read(Assumptions.defaults(), rows).all();
        assertEquals(1, Alternatives.chanceCheaper(all.get(0), all.get(1)));
        double apart = Alternatives.chanceCheaper(all.get(0), all.get(2));
        assertTrue(apart > 0.5 && apart < 0.65, "by " + apart);
        assertEquals(1, Alternatives.chanceCheaper(all.get(0), all.get(2)) + Alternatives.chanceCheaper(all.get(2), all.get(0)), 1e-9);
    }

    @Test
    void something_that_may_happen_happens_as_often_as_said() throws IOException {
        Alternative tuned = read(exact("capital_rate", "0"), "tuned,engine fails,,cost,20,,4000,4000,4000,18,,",
                "tuned,car,8000,resale,,,,,,,,")
                .all().get(0);
        double often = Arrays.stream(tuned.toFind()).filter(v -> v > 0).count() / (double) tuned.toFind().length;
        assertEquals(0.18, often, 3 * Math.sqrt(0.18 * 0.82 / 10_000));
    }

    @Test
    void the_value_of_a_car_in_play_comes_with_its_draws_and_ages_until_the_resale() throws IOException {
        Path file = Files.writeString(folder.resolve("alternatives.csv"), HEAD
                + "\nswap,buy,,cost,0,,,,,,,roadster\nswap,sell,,resale,12,,,,,,,roadster\n"
                + "other,buy,,cost,0,,,,,,,no such car\n");
        double[] value = new double[1000];
        for (int i = 0; i < value.length; i++) {
            value[i] = 9_000 + i;
        }
        Alternatives both = Alternatives.withDefaults().with(exact("capital_rate", "0", "age_slope", "-10")).withCars(Map.of("roadster",
                value), 4)
                .read(file);
        for (int i = 0; i < value.length; i++) {
            assertEquals(0.1 * value[i], both.all().get(0).netCost()[i], 1e-6);
        }
        assertTrue(reasons(both.rowsRead().rejected()).contains("there is no value of 'no such car'"), reasons(both.rowsRead().rejected()));
    }

    // By hand: a car of 10,000 that loses 20 % with each year is worth 10,000 x 0.8^1.5 = 7,155.42 after 18 months, and a quarter more in
    // a state of the market in which it loses nothing and is worth 12,500.
    @Test
    void a_car_in_play_loses_what_such_cars_lose_and_not_what_is_assumed_of_any() throws IOException {
        Path file = Files.writeString(folder.resolve("alternatives.csv"), HEAD + "\nswap,sell,,resale,18,,,,,,,Road-Ster\n");
        Alternatives.Options options = Alternatives.withDefaults().with(exact("capital_rate", "0", "age_slope", "-10", "horizon", "24"))
                .withCars(Map.of("roadster", new double[] {10_000, 12_500}), 4);
        double[] assumed = options.read(file).all().get(0).resale();
        assertEquals(10_000 * Math.pow(0.9, 1.5), assumed[0], 1e-6);
        double[] told = options.withAgeing(Map.of("roadster", new double[] {Math.log(0.8), 0})).read(file).all().get(0).resale();
        assertEquals(7_155.417528, told[0], 1e-6);
        assertEquals(12_500, told[1], 1e-6);
    }

    // By hand: 10,000 paid now, for three years at 8 % with a spread of 2: 10,000 x (1 + r)^3, r = 0.08 -/+ 1.281552 x 0.02.
    @Test
    void what_nobody_knows_of_the_cost_of_money_is_in_the_net_cost() throws IOException {
        double[] net = read(Assumptions.defaults(), "a,all,10000,payment,0,,,,,,,").all().get(0).netCost();
        assertEquals(10_000 * Math.pow(1.054368965, 3), Quantiles.of(net, 0.1), 15);
        assertEquals(10_000 * Math.pow(1.08, 3), Quantiles.median(net), 15);
        assertEquals(10_000 * Math.pow(1.105631035, 3), Quantiles.of(net, 0.9), 15);
    }

    @Test
    void one_name_in_two_spellings_is_one_way_and_one_car() throws IOException {
        Path file = Files.writeString(folder.resolve("alternatives.csv"), HEAD
                + "\nTidy swap,buy,9000,cost,0,,,,,,,\ntidy-swap,sell,,resale,12,,,,,,,Open_Roadster\n");
        double[] value = new double[1000];
        Arrays.fill(value, 5_000);
        Alternatives all = Alternatives.withDefaults().with(exact("capital_rate", "0", "age_slope", "0", "alternative_estimate", "0"))
                .withCars(Map.of("open roadster", value), 4).read(file);
        assertEquals(List.of("Tidy swap"), all.all().stream().map(Alternative::name).toList());
        assertEquals(4_000, all.all().get(0).netCost()[7], 1e-6);
        assertEquals(List.of(), all.rowsRead().questions());
    }

    @Test
    void an_amount_beside_a_car_in_play_is_not_passed_over_in_silence() throws IOException {
        Path file = Files.writeString(folder.resolve("alternatives.csv"), HEAD
                + "\nswap,buy,9000,cost,0,,,,,,,roadster\nswap,sell,,resale,,,4000,,6000,,,roadster\n");
        Alternatives all = Alternatives.withDefaults().withCars(Map.of("roadster", new double[100]), 4).read(file);
        String questions = reasons(all.rowsRead().questions());
        assertTrue(questions.contains("2 amount: what such a car sells for by the listings is counted, and not this amount"), questions);
        assertTrue(questions.contains("3 low: what such a car sells for"), questions);
    }

    @Test
    void half_a_month_is_refused() throws IOException {
        Alternatives all = read(Assumptions.defaults(), "a,car,5000,cost,1.5,,,,,,,", "a,rent,10,cost,1,7.5,,,,,,",
                "a,it,9,resale,2.0,,,,,,,");
        assertEquals("2 month: months are counted whole\n3 until: months are counted whole", reasons(all.rowsRead().rejected()));
    }

    private static String reasons(List<RowProblem> problems) {
        return problems.stream().map(p -> p.line() + " " + p.column() + ": " + p.message()).collect(Collectors.joining("\n"));
    }

    @Test
    void bad_rows_are_rejected_and_a_missing_resale_is_asked_for() throws IOException {
        Alternatives all = read(Assumptions.defaults(), "a,car,5000,cost,0,,,,,,,", "a,paint,,cost,0,,900,500,700,,,",
                "a,rent,10,cost,9,3,,,,,,",
                "a,odd,-5,cost,0,,,,,,,", "a,nothing,,cost,0,,,,,,,", "a,chance,5,cost,0,,,,,120,,");
        assertEquals(5, all.rowsRead().rejected().size());
        assertEquals(1, all.rowsRead().used());
        assertTrue(reasons(all.rowsRead().questions()).contains("2 kind: this alternative has no resale"),
                reasons(all.rowsRead().questions()));
    }

    @Test
    void a_way_that_lost_a_row_is_marked_and_not_held_against_others() throws IOException {
        Alternatives all = read(Assumptions.defaults(), "swap,car,8000,cost,0,,,,,,,", "swap,the car then,6000,resale,,,,,,,,",
                "factory,car,?,cost,0,,,,,,,", "factory,the car then,18000,resale,,,,,,,,", "old,car,4000,owned,0,,,,,,,",
                "old,the car then,2000,resale,,,,,,,,", "gone,car,-5,cost,,,,,,,,", ",paint,700,cost,,,,,,,,");
        String side = InOneLine.of(all.tables().get(0).text());
        assertTrue(side.contains("factory (row 4 not counted)"), side);
        assertTrue(side.contains("'gone' is not shown: row 8 not counted."), side);
        assertTrue(side.contains("Of row 9 nobody can tell to which alternative it belongs"), side);
        assertEquals("alternative,swap,old", all.tables().get(1).csv().lines().findFirst().orElseThrow());
        assertTrue(all.tables().get(1).text().contains("Not compared, since not all of their rows are counted: 'factory'."));
        Alternatives whole = read(Assumptions.defaults(), "swap,car,8000,cost,0,,,,,,,", "swap,the car then,6000,resale,,,,,,,,");
        assertFalse(whole.tables().get(0).text().contains("not counted") || whole.tables().get(1).text().contains("Not compared"));
    }

    @Test
    void a_chance_is_per_cent_with_its_sign_and_up_to_1_without_it_a_share_that_is_asked_about() throws IOException {
        String[] typed = {"18 %", "18", "0.4", "0.4 %", "1", "1%", "0", ""};
        double[] meant = {0.18, 0.18, 0.4, 0.004, 1, 0.01, 0, 1};
        String[] rows = new String[typed.length];
        for (int i = 0; i < rows.length; i++) {
            rows[i] = "a,item " + i + ",500,cost,0,,,,," + typed[i] + ",,";
        }
        Alternatives all = read(Assumptions.defaults(), rows);
        for (int i = 0; i < rows.length; i++) {
            assertEquals(meant[i], all.all().get(0).items().get(i).chance(), 1e-12, typed[i]);
        }
        String questions = reasons(all.rowsRead().questions());
        assertTrue(questions.contains("4 chance: is this meant as 40 % or as 0.4 %? It is taken for 40 %; write it with its sign"),
                questions);
        assertTrue(questions.contains("6 chance: is this meant as 100 % or as 1 %?"), questions);
        assertEquals(2, all.rowsRead().questions().stream().filter(q -> q.column().equals("chance")).count(), questions);
    }

    @Test
    void the_sample_compares_seven_ways_and_shows_chances_and_not_a_ranking() {
        Alternatives all = Alternatives.read(Path.of("sample-listings", "alternatives.csv"));
        assertEquals(0, all.rowsRead().rejected().stream().filter(p -> !p.message().contains("no value of")).count());
        String text = all.tables().get(1).text();
        assertTrue(text.contains("50 means that the rows cannot tell"), text);
        for (Alternative one : all.all()) {
            assertTrue(Quantiles.of(one.toFind(), 0.5) > 0, one.name());
        }
    }
}
