package swapworth.donor;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.math.BigDecimal;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Random;
import java.util.TreeMap;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import swapworth.statistics.Draws;

/** Which way the figures of a donor move when one thing of it is changed, in folders of random cars, fees and parts. */
class DirectionsOfDonorTest {
    private static final int SEEDS = 3;
    @TempDir
    private Path folder;
    private Map<String, String> donor = new TreeMap<>();
    private double fees;
    private double parts;
    private List<String> partout = List.of();

    /** A random folder: a donor whose row, fees and parts are changed by the tests. */
    private void random(int seed) {
        Random random = new Random(seed);
        donor = new TreeMap<>(Map.of("mileage", Integer.toString(30_000 + random.nextInt(60_000)), "planned_bid",
                Integer.toString(2000 + 50 * random.nextInt(80)), "runs", "engine fires", "damage", random.nextBoolean() ? "front" : "rear",
                "distance_away", Integer.toString(20 + random.nextInt(200)), "keys", "yes", "airbags", "in place"));
        fees = 1 + 0.5 * random.nextDouble();
        parts = 1;
        partout = new ArrayList<>(List.of("swap,engine,2500", "swap,gearbox,1100", "sell,wheels,420", "sell,left headlamp,180",
                "sell,tailgate,240", "sell,left door,260", "sell,front seats,350"));
    }

    private DonorStudy study() throws IOException {
        Files.writeString(folder.resolve("words.csv"), "column,word,means\n*,currency,USD\n*,mileage unit,mi\n");
        Files.writeString(folder.resolve("cars.csv"), "name,role,vehicle,running_gear,model_year,seller," + String.join(",", donor.keySet())
                + "\nhit,donor,Velmarch,six 3.2,2018,auction," + String.join(",", donor.values()) + "\n");
        Files.writeString(folder.resolve("fees.csv"), String.format(Locale.ROOT, "table,kind,from,to,flat,percent,per_day,free_days,days,"
                + "per_mile,applies_to,seller,when%npremium,fee,1,3999,%.2f,,,,,,,,%npremium,fee,4000,,,%.2f,,,,,bid,,%n"
                + "yard,storage,,,,,30,2,%d,,,,%nfreight,freight,,,110,,,,,%.2f,,,%nwinching,freight,,,130,,,,,,,,non-runner%n"
                + "second key,key,,,210,,,,,,,,no key%n", 300 * fees, 10 * fees, (int) (4 * fees), 1.5 * fees));
        Files.writeString(folder.resolve("partout.csv"), "car,part,goes_to\n" + String.join("\n", partout.stream()
                .map(row -> "hit," + row.split(",")[1] + "," + row.split(",")[0]).toList()) + "\n");
        StringBuilder offers = new StringBuilder("part,vehicle,running_gear,mileage,price\n");
        Random random = new Random(7);
        for (String row : partout) {
            String[] cells = row.split(",");
            for (int k = 0; k < 6; k++) {
                double miles = 40_000 + 12_000 * k;
                offers.append(String.format(Locale.ROOT, "%s,Velmarch,six 3.2,%.0f,%.2f%n", cells[1], miles, parts * Double.parseDouble(
                        cells[2]) * Math.exp(-0.004 * (miles - 70_000) / 1000 + 0.1 * random.nextGaussian())));
            }
        }
        Files.writeString(folder.resolve("parts.csv"), offers);
        return DonorStudy.of(folder, new BigDecimal("6000"));
    }

    private double withGear() throws IOException {
        return study().choices().get(0).options().get(0).meanWithGear();
    }

    private double landed() throws IOException {
        return study().landedOf("hit").match(cost -> cost.total().doubleValue(), no -> Double.NaN);
    }

    private double highestBid() throws IOException {
        return study().landed().told().orElseThrow().bids().get(0).answer().match(bid -> bid.bid().doubleValue(), no -> 0.0);
    }

    private double recovery() throws IOException {
        return Draws.mean(study().partOut("hit").told().orElseThrow().recovery().orElseThrow().net());
    }

    @Test
    void the_less_its_engine_does_the_dearer_a_donor_is_with_the_gear_to_replace() throws IOException {
        for (int seed = 0; seed < SEEDS; seed++) {
            random(seed);
            double before = 0;
            for (String runs : List.of("drives", "engine fires", "not tried", "engine dead", "no engine")) {
                donor.put("runs", runs);
                double now = withGear();
                // Without an engine there is no more to replace than with a dead one.
                assertTrue(now >= 0.999 * before, "seed " + seed + ", " + runs + ": " + now + " after " + before);
                before = now;
            }
        }
    }

    @Test
    void a_car_is_found_by_its_name_however_it_is_spelled() throws IOException {
        random(1);
        DonorStudy study = study();
        assertEquals(study.landedOf("hit").map(LandedCost::total), study.landedOf("HIT").map(LandedCost::total));
        assertEquals(3, study.landed().orElseThrow().tables().size(), "totals, highest bids and lines");
        assertEquals("hit", study.partOut("Hit").orElseThrow().car().name());
        assertEquals("cars.csv has no car 'hitt' to buy that has a price or a planned bid",
                study.landedOf("hitt").match(cost -> "", no -> no.reason()));
    }

    @Test
    void an_engine_that_is_not_there_costs_another_one_as_a_dead_one_does() throws IOException {
        random(1);
        donor.put("runs", "engine dead");
        DonorStudy dead = study();
        donor.put("runs", "no engine");
        DonorStudy none = study();
        assertEquals(dead.choices().get(0).options().get(0).gearGood(), none.choices().get(0).options().get(0).gearGood(), 1e-9);
        assertEquals(Draws.mean(dead.choices().get(0).options().get(0).toReplace().draws()),
                Draws.mean(none.choices().get(0).options().get(0).toReplace().draws()), 1e-6);
        assertTrue(none.read().stream().anyMatch(read -> read.problems().stream().anyMatch(p -> p.message().startsWith(
                "the car has no engine: the row brings nothing, and where it goes into the swap another one is counted"))));
    }

    @Test
    void more_miles_never_make_a_donor_cheaper() throws IOException {
        for (int seed = 0; seed < SEEDS; seed++) {
            for (String runs : List.of("drives", "not tried", "engine dead")) {
                random(seed);
                donor.put("runs", runs);
                double before = 0;
                double brought = Double.MAX_VALUE;
                for (int miles : new int[] {20_000, 20_001, 50_000, 90_000, 150_000}) {
                    donor.put("mileage", Integer.toString(miles));
                    double now = withGear();
                    double brings = recovery();
                    assertTrue(now >= before && brings <= brought, "seed " + seed + " at " + miles + ": " + now + " after " + before
                            + ", parts bring " + brings + " after " + brought);
                    before = now;
                    brought = brings;
                }
            }
        }
    }

    @Test
    void more_damage_never_raises_what_the_parts_bring_nor_lowers_the_cost() throws IOException {
        for (int seed = 0; seed < SEEDS; seed++) {
            random(seed);
            double brought = Double.MAX_VALUE;
            double cost = 0;
            for (String damage : List.of("none", "front", "front; left", "front; left; rear", "front; left; rear; flood")) {
                donor.put("damage", damage);
                assertTrue(recovery() <= brought, "seed " + seed + ", " + damage + ": " + recovery() + " after " + brought);
                assertTrue(withGear() >= cost, "seed " + seed + ", " + damage + ": " + withGear() + " after " + cost);
                brought = recovery();
                cost = withGear();
            }
        }
    }

    @Test
    void higher_fees_a_longer_way_a_missing_key_and_a_higher_bid_raise_the_landed_cost_and_never_the_highest_bid() throws IOException {
        for (int seed = 0; seed < SEEDS; seed++) {
            random(seed);
            donor.put("runs", "drives");
            double before = landed();
            double bid = highestBid();
            for (String step : List.of("fees", "way", "key", "engine", "bid")) {
                switch (step) {
                    case "fees" -> fees *= 1.3;
                    case "way" -> donor.put("distance_away", Integer.toString(50 + Integer.parseInt(donor.get("distance_away"))));
                    case "key" -> donor.put("keys", "no");
                    case "engine" -> donor.put("runs", "engine dead");
                    default -> donor.put("planned_bid", Integer.toString(100 + Integer.parseInt(donor.get("planned_bid"))));
                }
                assertTrue(landed() > before, "seed " + seed + ", " + step + ": " + landed() + " after " + before);
                assertTrue(highestBid() <= bid, "seed " + seed + ", " + step + ": " + highestBid() + " after " + bid);
                before = landed();
                bid = highestBid();
            }
        }
    }

    @Test
    void cheaper_parts_bring_less_and_a_part_that_is_not_sold_brings_nothing() throws IOException {
        for (int seed = 0; seed < SEEDS; seed++) {
            random(seed);
            double full = recovery();
            parts = 0.8;
            double cheaper = recovery();
            assertTrue(cheaper < full, "seed " + seed + ": " + cheaper + " after " + full);
            parts = 1;
            partout.set(2, partout.get(2).replace("sell", "scrap"));
            double fewer = recovery();
            assertTrue(fewer < full, "seed " + seed + ": " + fewer + " after " + full);
        }
    }
}
