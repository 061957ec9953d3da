package swapworth.donor;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.Random;
import java.util.stream.IntStream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import swapworth.assumptions.Assumptions;
import swapworth.statistics.Quantiles;

class RecoveryTest {
    private static final int MANY = 20_000;

    @TempDir
    Path folder;
    private Donors donors;

    @BeforeEach
    void cars() throws IOException {
        donors = new Donors(folder).file("cars.csv", "name,role,vehicle,runs,damage", "hit,donor,Velmarch,drives,none",
                "body,recipient,Sivrette,drives,none", "dead,recipient,Sivrette,engine dead,none");
    }

    private Recovery recovery(int car, int draws, long seed, Assumptions assumptions) {
        return donors.partOut(car, MarketState.withoutCars(draws, seed), assumptions).recovery().orElseThrow();
    }

    private static double mean(double[] values) {
        return Arrays.stream(values).average().orElseThrow();
    }

    private static double sd(double[] values) {
        double mean = mean(values);
        return Math.sqrt(Arrays.stream(values).map(v -> (v - mean) * (v - mean)).average().orElseThrow());
    }

    // Source: closed forms of the ln-normal, mu 9.2, sigma 0.25 (Johnson, Kotz, Balakrishnan; computed with 40 digits):
    // mean 10211.297659526834, sd 2593.2365725170948, q10 7184.0035821718474, q50 9897.1290587439159, q90 13634.899048285317.
    @Test
    void a_price_stated_with_a_spread_gives_the_ln_normal_of_the_closed_form() throws IOException {
        donors.file("partout.csv", "car,part,price,sells,days,postage", "body,engine," + Math.exp(9.2) + ",1,0.1,0");
        Assumptions certain = Donors.plain();
        Assumptions quarter = certain.with(Donors.with(certain.get("own_price"), 0, 25));
        double[] net = recovery(1, MANY, 5, quarter).net();
        double error = 2593.2365725170948 / Math.sqrt(MANY);
        assertEquals(10211.297659526834, mean(net), 4.5 * error);
        assertEquals(2593.2365725170948, sd(net), 4.5 * error);
        // The standard error of a quantile is sqrt(p (1 - p) / n) / f(q).
        assertEquals(7184.0035821718474, Quantiles.of(net, 0.1), 4.5 * Math.sqrt(0.09 / MANY) / (0.1755 / (0.25 * 7184)));
        assertEquals(9897.1290587439159, Quantiles.of(net, 0.5), 4.5 * 31.0105294203995 / Math.sqrt(MANY / 10_000.0));
        assertEquals(13634.899048285317, Quantiles.of(net, 0.9), 4.5 * Math.sqrt(0.09 / MANY) / (0.1755 / (0.25 * 13635)));
    }

    // By hand: P = 0.85 (likely good) x 0.8 (sells) x (1 - 2^(-6 x 30.4375 / 60)); a sale brings (100 + 12)(1 - 0.1) - 0.5 - 15 - 4 =
    // 81.30; one that comes back -2 x 15 - 4 = -34.
    @Test
    void expected_money_is_chance_times_sale_less_what_comes_back() throws IOException {
        donors.file("partout.csv", "car,part,state,price,sells,days,postage,postage_charged,packing,fee",
                "body,alternator,likely good,100,0.8,60,15,12,4,10");
        Assumptions a = Donors.plain("chance_likely", 85, "selling_fee_fixed", 0.5, "returns", 5, "horizon_months", 6);
        double chance = 0.85 * 0.8 * (1 - Math.pow(2, -6 * 30.4375 / 60));
        double expected = chance * (0.95 * 81.30 + 0.05 * -34);
        double[] net = recovery(1, MANY, 6, a).net();
        assertEquals(expected, mean(net), 4.5 * sd(net) / Math.sqrt(MANY));
        assertEquals(chance * 0.95, recovery(1, MANY, 6, a).parts().get(0).chanceSold(), 4.5 * Math.sqrt(0.25 / MANY));
    }

    // By hand: sold on the first day and given back: postage of 15 there and back, packing of 4. The space is paid for the month of the
    // sale alone, of six.
    @Test
    void what_comes_back_costs_its_postage_twice_and_space_is_paid_until_the_last_part_is_gone() throws IOException {
        donors.file("partout.csv", "car,part,state,price,sells,days,postage,postage_charged,packing",
                "body,alternator,present,100,1,0.1,15,12,4");
        for (double net : recovery(1, 20, 6, Donors.plain("returns", 100, "horizon_months", 1, "holding_cost", 25)).net()) {
            assertEquals(-2 * 15 - 4 - 25, net, 1e-9);
        }
        for (double net : recovery(1, 20, 6, Donors.plain("horizon_months", 6, "holding_cost", 25)).net()) {
            assertEquals(100 + 12 - 15 - 4 - 25, net, 1e-9);
        }
        // What comes back stands there until the end, three months.
        for (double net : recovery(1, 20, 6, Donors.plain("returns", 100, "horizon_months", 3, "holding_cost", 25)).net()) {
            assertEquals(-2 * 15 - 4 - 3 * 25, net, 1e-9);
        }
    }

    // By hand: half of the slow ones are gone within 10,000 days, so of a month's 30.4 days 1 - 2^(-30.4375 / 10000) = 0.2 %.
    @Test
    void a_bundle_waits_as_long_as_the_slowest_of_its_parts_wherever_that_stands() throws IOException {
        for (String slow : List.of("alternator", "gearbox")) {
            donors.file("partout.csv", "car,part,price,sells,days,postage,bundle",
                    "body,alternator,100,1," + (slow.equals("alternator") ? 10_000 : 0.1) + ",0,all",
                    "body,gearbox,100,1," + (slow.equals("gearbox") ? 10_000 : 0.1) + ",0,all");
            assertEquals(0.002, recovery(1, 2_000, 6, Donors.plain()).parts().get(0).chanceSold(), 0.006, slow);
        }
    }

    /** The same sales counted one history after another, by other code and other random numbers. */
    @Test
    void an_independent_count_of_many_histories_gives_the_same_months_hours_and_shelf() throws IOException {
        donors.file("partout.csv", "car,part,state,count,price,sells,days,postage,postage_charged,hours",
                "hit,engine,,1,1500,0.9,30,200,180,8",
                "hit,left door,doubtful,1,200,0.7,80,60,60,1.5", "hit,wheels,likely good,4,90,0.9,20,15,10,0.5", "hit,hulk,,,150,,,,,");
        Assumptions a = Donors.plain("chance_present", 95, "chance_likely", 80, "chance_doubtful", 50, "selling_fee", 12, "returns",
                6, "packing", 5,
                "packing_hours", 0.5, "holding_cost", 20, "hulk_months", 2, "horizon_months", 5, "listing_pace", 2, "part_drift", -1);
        Recovery ours = recovery(0, MANY, 7, a);
        Random random = new Random(99);
        int n = 60_000;
        int months = 5;
        double horizon = months * 30.4375;
        double[] byMonth = new double[months];
        double hours = 0;
        double peak = 0;
        double peakSquared = 0;
        // In the order of money per hour, which is engine, wheels, door: prices, chances and so on as above.
        double[][] parts = {{1500, 0.9, 30, 200, 180, 8, 1, 0.95}, {90, 0.9, 20, 15, 10, 0.5, 4, 0.8}, {200, 0.7, 80, 60, 60, 1.5, 1, 0.5}};
        assertEquals("engine, wheels, left door", String.join(", ", ours.parts().stream().map(Recovery.PartResult::name).toList()));
        for (int h = 0; h < n; h++) {
            double[] money = new double[months];
            double day = 0;
            double last = 2 * 30.4375;
            double[][] onShelf = new double[3][3];
            for (int p = 0; p < 3; p++) {
                double[] x = parts[p];
                int good = 0;
                for (int k = 0; k < x[6]; k++) {
                    good += random.nextDouble() < x[7] ? 1 : 0;
                }
                if (good == 0) {
                    continue;
                }
                hours += good * x[5];
                double wait = random.nextDouble() < x[1] ? -Math.log(random.nextDouble()) * x[2] / Math.log(2) : 1e9;
                boolean back = random.nextDouble() < 0.06;
                double gone = horizon;
                if (day + wait <= horizon) {
                    hours += good * 0.5;
                    double price = good * x[0] * Math.pow(0.99, (day + wait) / 30.4375);
                    double buyer = price + good * x[4];
                    money[(int) ((day + wait) / 30.4375)] += back ? -good * (2 * x[3] + 5) : 0.88 * buyer - good * (x[3] + 5);
                    gone = back ? horizon : day + wait;
                }
                last = Math.max(last, gone);
                onShelf[p] = new double[] {day, gone, good};
                day += 7.0 * good / 2;
            }
            double most = 0;
            for (double[] at : onShelf) {
                double there = 0;
                for (double[] other : onShelf) {
                    there += Math.floor(other[0] / 7) <= Math.floor(at[0] / 7) && Math.ceil(other[1] / 7) > Math.floor(at[0] / 7)
                            ? other[2] : 0;
                }
                most = Math.max(most, there);
            }
            peak += most / n;
            peakSquared += most * most / n;
            money[2] += 150;
            double sum = 0;
            for (int k = 0; k < months; k++) {
                sum += money[k] - (k < Math.ceil(last / 30.4375) ? 20 : 0);
                byMonth[k] += sum / n;
            }
        }
        double[][] counted = ours.netByMonth();
        for (int k = 0; k < months; k++) {
            int month = k;
            double[] one = Arrays.stream(counted).mapToDouble(c -> c[month]).toArray();
            assertEquals(byMonth[k], mean(one), 4.5 * sd(one) * Math.sqrt(1.0 / MANY + 1.0 / n), "month " + (k + 1));
        }
        assertEquals(hours / n, mean(ours.hours()), 4.5 * sd(ours.hours()) * Math.sqrt(1.0 / MANY + 1.0 / n));
        String shelf = ours.table("USD").csv().lines().filter(line -> line.startsWith("most parts on the shelf")).findFirst().orElseThrow();
        assertEquals(peak, Double.parseDouble(shelf.split(",")[1]), 4.5 * Math.sqrt((peakSquared - peak * peak) * (1.0 / MANY + 1.0 / n)));
    }

    @Test
    void the_same_seed_gives_the_same_figures_and_another_car_changes_none() throws IOException {
        donors.file("partout.csv", "car,part,price", "body,engine,900", "body,wheels,200");
        double[] first = recovery(1, 500, 3, Assumptions.defaults()).net();
        assertArrayEquals(first, recovery(1, 500, 3, Assumptions.defaults()).net());
        assertNotEquals(first[0], recovery(1, 500, 4, Assumptions.defaults()).net()[0]);
        donors.file("partout.csv", "car,part,price", "hit,engine,5000", "body,engine,900", "body,wheels,200");
        assertArrayEquals(first, recovery(1, 500, 3, Assumptions.defaults()).net());
    }

    // The two names have one hashCode, as have all names that go on from them in the same way.
    @Test
    void parts_of_two_cars_whose_names_are_alike_to_a_hash_have_each_a_luck_of_their_own() throws IOException {
        assertEquals("C1/engine".hashCode(), "BP/engine".hashCode());
        donors.file("cars.csv", "name,role,vehicle", "C1,donor,Velmarch", "BP,donor,Velmarch")
                .file("partout.csv", "car,part", "C1,engine", "BP,engine")
                .file("parts.csv", "part,vehicle,price", "engine,Velmarch,1000", "engine,Velmarch,1400", "engine,Velmarch,800");
        double[] one = donors.partOut(0, MarketState.withoutCars(2000, 5), Donors.plain()).pieces().get(0).logPrice;
        double[] other = donors.partOut(1, MarketState.withoutCars(2000, 5), Donors.plain()).pieces().get(0).logPrice;
        double[] apart = IntStream.range(0, one.length).mapToDouble(i -> one[i] - other[i]).toArray();
        assertTrue(sd(apart) > sd(one) / 2, "the two differ by " + sd(apart));
    }

    // By hand: 1,000 (1 - f) with f normal about 12 with spread 2 per cent: mean 880, sd 20.
    @Test
    void what_is_assumed_is_as_unsure_in_the_result_as_its_spread_says() throws IOException {
        donors.file("partout.csv", "car,part,price,sells,days,postage", "body,engine,1000,1,0.1,0");
        Assumptions a = Donors.plain();
        double[] net = recovery(1, MANY, 8, a.with(Donors.with(a.get("selling_fee"), 12, 2))).net();
        assertEquals(880, mean(net), 4.5 * 20 / Math.sqrt(MANY));
        assertEquals(20, sd(net), 4.5 * 20 / Math.sqrt(2.0 * MANY));
    }

    @Test
    void unknown_chances_are_shared_by_all_parts_so_that_their_errors_do_not_cancel() throws IOException {
        donors.file("partout.csv", "car,part,state,price,sells,days,postage,count", "body,wheels,doubtful,100,1,0.1,0,20");
        Assumptions a = Donors.plain();
        double alone = sd(recovery(1, MANY, 9, a.with(Donors.with(a.get("chance_doubtful"), 45, 0))).net());
        double shared = sd(recovery(1, MANY, 9, a.with(Donors.with(a.get("chance_doubtful"), 45, 15))).net());
        // By hand: 100 sqrt(20 x 0.45 x 0.55) = 222; with the spread sqrt(222^2 + (20 x 100 x 0.15)^2), less the shared part within each:
        // 371.
        assertEquals(222.5, alone, 8);
        assertEquals(371, shared, 12);
    }

    @Test
    void a_dead_engine_earns_a_core_a_donor_a_hulk_and_ruled_parts_nothing_until_the_rule_is_met() throws IOException {
        donors.file("partout.csv", "car,part,price,sells,days,postage,local_rule", "dead,gearbox,500,1,0.1,0,", "dead,engine,2000,1,0.1,0,",
                "hit,catalyst,300,1,0.1,0,", "hit,driver airbag,80,1,0.1,0,no", "body,catalyst,300,1,0.1,0,yes");
        Assumptions a = Donors.plain("core_value", 120, "hulk_value", 180);
        assertEquals(620, recovery(2, 10, 1, a).net()[0], 1e-9, "the gearbox and a core, no engine");
        assertEquals(180, recovery(0, 10, 1, a).net()[0], 1e-9, "the hulk alone");
        assertEquals(300, recovery(1, 10, 1, a).net()[0], 1e-9, "the rule is met");
        assertEquals(1, donors.partout().read().questions().size());
        assertTrue(recovery(0, 10, 1, a).table("USD").text().contains("the local rule is not stated to be met"));
    }

    @Test
    void a_cluster_and_an_airbag_that_go_into_another_car_are_no_parts_like_others() throws IOException {
        donors.file("partout.csv", "car,part,goes_to,price", "hit,instrument cluster,swap,90", "hit,driver airbag,swap,80",
                "hit,main loom,swap,70");
        String left = donors.partOut(0, MarketState.withoutCars(10, 1), Assumptions.defaults()).leftTable().csv();
        assertTrue(left.contains("earns nothing; its odometer shows the donor's distance"), left);
        assertTrue(left.contains("earns nothing; whether a used one may be fitted is for your local law to say"), left);
        assertTrue(left.lines().anyMatch(row -> row.startsWith("main loom") && row.endsWith("earns nothing")), left);
    }

    @Test
    void an_engine_that_is_kept_used_or_sold_leaves_no_core() throws IOException {
        Assumptions a = Donors.plain("core_value", 120, "chance_doubtful", 50);
        for (String goes : List.of("keep", "swap")) {
            donors.file("partout.csv", "car,part,goes_to,state,price,sells,days,postage", "dead,gearbox,sell,,500,1,0.1,0",
                    "dead,engine," + goes + ",,2000,1,0.1,0");
            assertEquals(500, recovery(2, 10, 1, a).net()[0], 1e-9, goes);
        }
        donors.file("partout.csv", "car,part,goes_to,state,price,sells,days,postage", "dead,engine,scrap,,2000,1,0.1,0");
        assertEquals(120, recovery(2, 10, 1, a).net()[0], 1e-9);
        donors.file("partout.csv", "car,part,goes_to,state,price,sells,days,postage", "dead,engine,sell,doubtful,2000,1,0.1,0");
        double[] net = recovery(2, MANY, 1, a).net();
        assertEquals(0.5, Arrays.stream(net).filter(v -> Math.abs(v - 120) < 1e-9).count() / (double) MANY, 0.02, "no engine, a core");
        assertEquals(0, Arrays.stream(net).filter(v -> v > 120 && v < 1500).count(), "an engine is sold without a core beside it");
    }

    // By hand: (70 + 55) x 0.75 = 93.75 for both together; hours 0.6 x (0.8 + 0.8) = 0.96.
    @Test
    void one_is_counted_in_the_singular() throws IOException {
        donors.file("partout.csv", "car,part", "hit,engine").file("parts.csv", "part,price", "engine,900");
        PartOut out = donors.partOut(0, MarketState.withoutCars(10, 1), Assumptions.defaults());
        assertTrue(out.leftTable().text().contains("1 part named."), out.leftTable().text());
        Recovery recovery = out.recovery().orElseThrow();
        assertTrue(recovery.table("USD").text().contains("1 part or bundle on sale"), recovery.table("USD").text());
        assertTrue(recovery.partsTable("USD").text().contains("1 offer,"), recovery.partsTable("USD").text());
    }

    @Test
    void a_bundle_sells_below_the_sum_and_saves_hours() throws IOException {
        donors.file("partout.csv", "car,part,price,sells,days,postage,hours,bundle", "body,alternator,70,1,0.1,0,0.8,small",
                "body,starter motor,55,1,0.1,0,0.8,small");
        Recovery r = recovery(1, 10, 1, Donors.plain());
        assertEquals(93.75, r.net()[0], 1e-9);
        assertEquals(0.96, r.hours()[0], 1e-9);
        assertEquals(1, r.parts().size());
        assertEquals(2, r.parts().get(0).pieces());
    }

    // By hand: 20 % of the 300 of one and nothing of the 100 of the other is 15 % of both: (300 + 100) x 0.75 x 0.85 = 255.
    @Test
    void the_order_of_its_rows_changes_nothing_of_a_bundle() throws IOException {
        String head = "car,part,price,sells,days,postage,fee,state,bundle";
        String one = "body,alternator,300,1,0.1,0,20,,small";
        String other = "body,starter motor,100,1,0.1,0,,,small";
        assertEquals(255, recoveryOf(Donors.plain(), head, one, other).net()[0], 1e-9);
        assertEquals(255, recoveryOf(Donors.plain(), head, other, one).net()[0], 1e-9);
        String doubtful = "body,starter motor,,0.5,30,12,7,doubtful,small";
        donors.file("parts.csv", "part,price", "starter motor,90", "starter motor,110");
        Recovery forth = recoveryOf(Assumptions.defaults(), head, one, doubtful);
        Recovery back = recoveryOf(Assumptions.defaults(), head, doubtful, one);
        assertArrayEquals(forth.net(), back.net(), 1e-9);
        assertArrayEquals(forth.hours(), back.hours(), 1e-9);
        assertEquals(forth.parts(), back.parts());
        assertTrue(forth.parts().get(0).priceFrom().matches("your own price; 2 offers, \\d+ % assumed"), forth.parts().get(0).priceFrom());
    }

    @Test
    void a_bundle_with_a_part_that_never_sells_never_sells() throws IOException {
        String head = "car,part,price,sells,days,postage,bundle";
        String never = "body,alternator,300,0,0.1,0,small";
        String always = "body,starter motor,100,1,0.1,0,small";
        assertEquals(0, recoveryOf(Donors.plain(), head, never, always).parts().get(0).chanceSold(), 1e-9);
        assertEquals(0, recoveryOf(Donors.plain(), head, always, never).parts().get(0).chanceSold(), 1e-9);
    }

    private Recovery recoveryOf(Assumptions assumptions, String... partout) throws IOException {
        donors.file("partout.csv", partout);
        return recovery(1, 500, 3, assumptions);
    }

    @Test
    void a_chance_to_sell_is_never_shown_as_surer_than_draws_can_tell() throws IOException {
        String text = recoveryOf(Donors.plain(), "car,part,price,sells,days,postage", "body,wheels,300,1,0.1,0", "body,carpet,20,0,0.1,0")
                .partsTable("USD").text();
        assertTrue(text.contains("> 99") && text.contains("< 1"), text);
    }

    @Test
    void a_part_that_loses_money_is_named() throws IOException {
        donors.file("partout.csv", "car,part,price,sells,days,postage,postage_charged", "body,carpet,20,1,0.1,40,5",
                "body,wheels,300,1,0.1,0,0");
        Recovery r = recovery(1, 10, 1, Donors.plain());
        assertEquals("wheels", r.parts().get(0).name());
        assertTrue(r.partsTable("USD").text().contains("Not worth listing at any rate: carpet"), r.partsTable("USD").text());
    }

    @Test
    void what_goes_into_the_swap_earns_nothing_and_is_valued_apart() throws IOException {
        donors.file("partout.csv", "car,part,goes_to,price", "hit,engine,swap,1500", "hit,gearbox,swap,900", "hit,main loom,swap,",
                "hit,wheels,keep,300");
        PartOut out = donors.partOut(0, MarketState.withoutCars(20, 1), Donors.plain());
        assertEquals(2400, out.gear().draws()[0], 1e-9);
        assertFalse(out.gear().whole());
        assertEquals("without a price: main loom; add offers to parts.csv", out.gear().reason());
        assertEquals(0, out.recovery().orElseThrow().net()[0], 1e-9);
    }

    // By hand: 1,500 x 0.45 + 4 x 90 x 0.8, variance 1,500^2 x 0.45 x 0.55 + 4 x 90^2 x 0.8 x 0.2; engine and gearbox are good as often as
    // the engine is.
    @Test
    void gear_as_it_is_found_is_what_turns_out_good_and_only_engine_and_gearbox_are_told_as_good() throws IOException {
        donors.file("partout.csv", "car,part,goes_to,price,count,state", "hit,engine,swap,1500,,doubtful",
                "hit,wheels,swap,90,4,likely good");
        PartOut out = donors.partOut(0, MarketState.withoutCars(MANY, 1), Donors.plain("chance_doubtful", 45, "chance_likely", 80));
        assertEquals(963, mean(out.gearAsFound()), 4.5 * sd(out.gearAsFound()) / Math.sqrt(MANY));
        assertEquals(750, sd(out.gearAsFound()), 7.5);
        assertEquals(0.45, out.gearGood(), 1e-12);
    }

    @Test
    void a_price_of_ones_own_is_moved_by_what_is_assumed_of_such_prices() throws IOException {
        donors.file("partout.csv", "car,part,goes_to,price", "hit,engine,swap,1500");
        Assumptions certain = Donors.plain();
        Assumptions tenth = certain.with(Donors.with(certain.get("own_price"), -10, 0));
        assertEquals(1350, donors.partOut(0, MarketState.withoutCars(20, 1), tenth).gear().draws()[7], 1e-9);
    }

    @Test
    void where_nothing_is_listed_the_share_of_the_listed_sum_is_not_a_number_whatever_the_rest_brings() throws IOException {
        donors.file("partout.csv", "car,part,goes_to", "hit,engine,keep", "hit,gearbox,swap");
        Recovery r = recovery(0, 20, 1, Donors.plain("hulk_value", 300));
        assertTrue(Arrays.stream(r.net()).anyMatch(net -> net != 0), "the hulk brings something");
        assertTrue(Arrays.stream(r.shareOfListed()).allMatch(Double::isNaN), Arrays.toString(r.shareOfListed()));
    }
}
