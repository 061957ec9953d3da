package swapworth.donor;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.math.BigDecimal;
import java.nio.file.Path;
import java.util.List;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import swapworth.listing.CandidateCar;
import swapworth.listing.CarsFile;
import swapworth.listing.Keys;
import swapworth.listing.PriceIncludes;
import swapworth.listing.Runs;
import swapworth.listing.Seller;
import swapworth.market.CannotTell;

class LandedCostTest {
    @TempDir
    Path folder;

    // Source: a published fee table, results by hand (reference/fee-tables/SOURCE.md).
    @Test
    void a_published_fee_table_gives_the_landed_costs_found_by_hand_to_the_cent() throws IOException {
        FeeSchedule schedule = FeeFiles.read(FeeFiles.REFERENCE.resolve("tiers.csv"));
        assertEquals(19, schedule.read().orElseThrow().used());
        for (BigDecimal[] row : FeeFiles.rows("landed.csv")) {
            LandedCost cost = LandedCost.of(schedule, FeeFiles.bid(row[0]));
            assertEquals(row[2], cost.total(), "bid " + row[0]);
            assertEquals(0, row[1].compareTo(cost.lines().get(1).amount()), "premium at " + row[0]);
            assertTrue(cost.whole());
        }
    }

    // Source: a published table whose rows say only "up to"; shares of the bid by hand: 550 of 10,000 and 275 of 1,000.
    // By hand: 0.5 % of 101 is 0.505, and half a cent goes up: 101.51; of 103 it is 0.515: 103.52.
    @Test
    void half_a_cent_goes_up_whether_the_cent_before_it_is_even_or_odd() throws IOException {
        FeeSchedule schedule = FeeFiles.of(folder, "table,kind,percent,seller", "premium,fee,0.5,auction");
        assertEquals(new BigDecimal("101.51"), LandedCost.of(schedule, FeeFiles.bid("101")).total());
        assertEquals(new BigDecimal("103.52"), LandedCost.of(schedule, FeeFiles.bid("103")).total());
    }

    // By hand: 150 up to 100 miles, 250 beyond, whatever the bid; zeros in rows that are no carriage are blanks.
    @Test
    void carriage_by_zones_of_distance_states_a_price_a_mile_of_0() throws IOException {
        FeeSchedule schedule = FeeFiles.of(folder, "table,kind,from,to,flat,per_mile", "premium,fee,0,999,100,0", "premium,fee,1000,,200,0",
                "freight,freight,0,100,150,0", "freight,freight,100,,250,0");
        assertEquals(List.of(), schedule.unusable());
        for (String bid : List.of("50", "5000")) {
            BigDecimal fee = new BigDecimal(bid.equals("50") ? "100" : "200");
            for (double away : new double[] {40, 100, 140}) {
                BigDecimal expected = new BigDecimal(bid).add(fee).add(BigDecimal.valueOf(away > 100 ? 250 : 150));
                LandedCost cost = LandedCost.of(schedule, FeeFiles.bid(bid).away(away));
                assertEquals(0, expected.compareTo(cost.total()), bid + " at " + away + ": " + cost.total());
            }
        }
    }

    @Test
    void rows_that_say_only_where_they_end_hold_their_end() throws IOException {
        FeeSchedule schedule = FeeFiles.read(FeeFiles.REFERENCE.resolve("house.csv"));
        assertEquals(new BigDecimal("10550.00"), LandedCost.of(schedule, FeeFiles.bid("10000")).total());
        assertEquals(new BigDecimal("1275.00"), LandedCost.of(schedule, FeeFiles.bid("1000")).total());
        assertEquals(new BigDecimal("2275.00"), LandedCost.of(schedule, FeeFiles.bid("2000")).total());
        assertEquals(new BigDecimal("2350.01"), LandedCost.of(schedule, FeeFiles.bid("2000.01")).total());
        assertEquals(new BigDecimal("91750.00"), LandedCost.of(schedule, FeeFiles.bid("90000")).total());
    }

    // By hand: 210 km at 1.10 is 231.00, with 90 flat 321.00; 310 km at 0.85 is 263.50; 100 miles are 160.9344 km, at 1.10 177.02784,
    // with 90 flat 267.03; 130.5 miles at 1.60 are 208.80.
    @Test
    void freight_by_the_km_is_charged_on_km_to_the_cent_whatever_the_distance_was_written_in() throws IOException {
        FeeSchedule km = FeeFiles.of(folder, "table,kind,from,to,flat,per_km", "freight,freight,0,210,90,1.10",
                "freight,freight,210,,,0.85");
        assertEquals(List.of(), km.read().orElseThrow().problems());
        LandedCost near = LandedCost.of(km, away("210 km"));
        assertEquals(new BigDecimal("4321.00"), near.total());
        assertEquals("90 and 1.10 a km for 210 km, row 0 to 210 km", near.lines().get(1).how());
        assertEquals(new BigDecimal("4263.50"), LandedCost.of(km, away("310 km")).total());
        LandedCost miles = LandedCost.of(km, away("100 mi"));
        assertEquals(new BigDecimal("4267.03"), miles.total());
        assertEquals("90 and 1.10 a km for 160.93 km, row 0 to 210 km", miles.lines().get(1).how());
        FeeSchedule byMile = FeeFiles.of(folder, "table,kind,per_mile", "freight,freight,1.60");
        assertEquals("1.60 a mile for 130.50 miles", LandedCost.of(byMile, away("130.5 mi")).lines().get(1).how());
        assertEquals(new BigDecimal("4208.80"), LandedCost.of(byMile, away("130.5 mi")).total());
    }

    private Purchase away(String distance) throws IOException {
        CandidateCar car = new Donors(folder).file("cars.csv", "name,vehicle,mileage_km,distance_away,price,seller,price_includes",
                "tail hit,Velmarch,92000," + distance + ",4000,auction,neither").cars().get(0);
        return Purchase.of(car, FeeFiles.USD).orElseThrow();
    }

    @Test
    void a_distance_that_is_none_is_told_of_and_not_taken() throws IOException {
        Donors files = new Donors(folder).file("cars.csv", "name,vehicle,distance_away,price,seller", "far,Velmarch,-300,4000,auction");
        var read = CarsFile.read(folder.resolve("cars.csv"), FeeFiles.USD);
        assertEquals("no distance to a car; not used", read.read().oddities().get(0).message());
        assertEquals(OptionalDouble.empty(), files.cars().get(0).facts().distanceAway());
        for (double away : new double[] {-300, Double.NaN, Double.POSITIVE_INFINITY}) {
            assertThrows(IllegalArgumentException.class, () -> FeeFiles.bid("4000").away(away));
        }
    }

    @Test
    void a_bid_in_another_currency_says_what_was_typed_and_at_which_rate() throws IOException {
        new Donors(folder).file("rates.csv", "date,from,to,rate", "2026-01-02,CHF,USD,1.08");
        CandidateCar car = new Donors(folder).file("cars.csv", "name,vehicle,planned_bid,currency,seller,price_includes",
                "tail hit,Velmarch,2700,CHF,auction,neither").cars().get(0);
        FeeSchedule title = FeeFiles.of(folder, "table,kind,flat", "title,paper,33");
        LandedCost cost = LandedCost.of(title, Purchase.of(car, FeeFiles.USD).orElseThrow().away(12));
        assertEquals(new BigDecimal("2916.00"), cost.lines().get(0).amount());
        assertEquals("2,700 CHF at 1.08", cost.lines().get(0).how());
        assertEquals("", LandedCost.of(title, cost.purchase().at(new BigDecimal("2800"))).lines().get(0).how(),
                "another bid was not typed");
    }

    @Test
    void a_freight_by_the_km_of_a_car_that_stands_nobody_knows_how_far_away_is_missing_from_the_sum() throws IOException {
        FeeSchedule km = FeeFiles.of(folder, "table,kind,per_km,per_day", "freight,freight,1.10,5");
        assertEquals(List.of("freight: distance_away is blank"), LandedCost.of(km, FeeFiles.bid("4000")).missing());
    }

    private FeeSchedule everyKind() throws IOException {
        return FeeFiles.of(folder, "table,kind,from,to,flat,percent,minimum,per_day,free_days,days,per_mile,applies_to,seller,when,car",
                "premium,fee,0,2000,150,5,,,,,,,,,", "premium,fee,2001,,,12,300,,,,,,,,", "gate,fee,,,79,,,,,,,,,,",
                "broker,broker,,,,8.85,400,,,,,bid,,,", "tax,tax,,,,6,,,,,,bid; premium; gate,,,", "title,paper,,,33,,,,,,,,,,",
                "yard,storage,,,,,,25,2,5,,,,,", "freight,freight,0,200,250,,,,,,1.50,,,,", "freight,freight,200,,300,,,,,,1.10,,,,",
                "winching,freight,,,120,,,,,,,,,non-runner,", "new key,key,,,180,,,,,,,,,no key,",
                "freight,freight,,,95,,,,,,,,,,near by");
    }

    private static Purchase hit(String bid) {
        return new Purchase("front hit", new BigDecimal(bid), Seller.AUCTION, PriceIncludes.NEITHER, Runs.NOT_TRIED, Keys.NO,
                OptionalDouble.of(164));
    }

    // By hand: 4,000 + 12 % 480 + 79 + the minimum 400 (8.85 % is 354) + 6 % of (4,000 + 480 + 79) 273.54 + 33 + 25 x (5 - 2) 75
    // + 250 + 164 x 1.50 = 496 + 120 + 180 = 6,136.54.
    @Test
    void every_kind_of_line_is_charged_on_what_it_applies_to() throws IOException {
        LandedCost cost = LandedCost.of(everyKind(), hit("4000"));
        assertEquals(new BigDecimal("6136.54"), cost.total());
        assertEquals(10, cost.lines().size());
        assertTrue(cost.whole() && cost.questions().isEmpty());
        assertTrue(cost.table().text().contains("6,136.54"), cost.table().text());
    }

    // By hand: 4,000 + tax: none from a private seller + 33 + 250 + 246 + 180 for the key; it drives, so no winching.
    @Test
    void a_private_seller_charges_no_auction_fees_and_no_sales_tax() throws IOException {
        Purchase privately = new Purchase("tidy", new BigDecimal("4000"), Seller.PRIVATE, PriceIncludes.UNKNOWN, Runs.DRIVES, Keys.NO,
                OptionalDouble.of(164));
        LandedCost cost = LandedCost.of(everyKind(), privately);
        assertEquals(new BigDecimal("4709.00"), cost.total());
        assertTrue(cost.questions().isEmpty(), "a private price holds no auction fees to ask about");
    }

    @Test
    void what_a_price_includes_is_not_paid_twice_and_a_blank_at_an_auction_is_one_question() throws IOException {
        FeeSchedule schedule = FeeFiles.read(FeeFiles.REFERENCE.resolve("tiers.csv"));
        Purchase bare = FeeFiles.bid("2000");
        // By hand from 2,534.56: without 285 + 82; without 125 + 4.556; without both.
        assertEquals(new BigDecimal("2167.56"), total(schedule, bare, PriceIncludes.FEES));
        assertEquals(new BigDecimal("2405.00"), total(schedule, bare, PriceIncludes.TAX));
        assertEquals(new BigDecimal("2038.00"), total(schedule, bare, PriceIncludes.BOTH));
        assertEquals(new BigDecimal("2534.56"), total(schedule, bare, PriceIncludes.UNKNOWN));
        LandedCost open = LandedCost.of(schedule, including(bare, PriceIncludes.UNKNOWN));
        assertEquals(1, open.questions().size());
        assertTrue(open.questions().get(0).contains("price_includes"));
    }

    private static Purchase including(Purchase p, PriceIncludes includes) {
        return new Purchase(p.car(), p.bid(), p.seller(), includes, p.runs(), p.keys(), p.miles());
    }

    private static BigDecimal total(FeeSchedule schedule, Purchase p, PriceIncludes includes) {
        return LandedCost.of(schedule, including(p, includes)).total();
    }

    @Test
    void a_car_with_a_table_of_its_own_pays_that_one() throws IOException {
        Purchase near = new Purchase("Near By", new BigDecimal("100"), Seller.PRIVATE, PriceIncludes.NEITHER, Runs.DRIVES, Keys.YES,
                OptionalDouble.empty());
        assertEquals(new BigDecimal("228.00"), LandedCost.of(everyKind(), near).total(), "100 + 33 + 95");
    }

    @Test
    void an_unknown_distance_leaves_a_line_out_and_says_so() throws IOException {
        LandedCost cost = LandedCost.of(everyKind(), FeeFiles.bid("4000"));
        assertFalse(cost.whole());
        assertEquals("freight: distance_away is blank", cost.missing().get(0));
        assertTrue(cost.table().text().contains("at least"));
    }

    @Test
    void without_any_fee_no_landed_cost_is_whole() throws IOException {
        LandedCost none = LandedCost.of(FeeSchedule.none(FeeFiles.USD), FeeFiles.bid("4000"));
        assertEquals(java.util.List.of("fees, tax and carriage: there is no fees.csv"), none.missing());
        assertEquals("there is no fees.csv", FeeSchedule.none(FeeFiles.USD).read().match(rows -> rows.file(), CannotTell::reason));
        LandedCost header = LandedCost.of(FeeFiles.of(folder, "table,kind,flat"), FeeFiles.bid("4000"));
        assertEquals(java.util.List.of("fees, tax and carriage: fees.csv holds none"), header.missing());
        assertTrue(header.table().text().contains("at least"), header.table().text());
        LandedCost stated = LandedCost.of(FeeFiles.of(folder, "table,kind,flat", "none,fee,0"), FeeFiles.bid("4000"));
        assertTrue(stated.whole(), stated.missing().toString());
    }

    @Test
    void days_stated_in_any_row_of_a_table_count() throws IOException {
        FeeSchedule late = FeeFiles.of(folder, "table,kind,from,to,per_day,days", "yard,storage,0,2,0,", "yard,storage,3,,40,5");
        assertEquals(new BigDecimal("1200.00"), LandedCost.of(late, FeeFiles.bid("1000")).total(), "1,000 + 5 x 40");
        FeeSchedule both = FeeFiles.of(folder, "table,kind,per_mile,per_day,days", "carrier,freight,1,10,6");
        assertEquals(new BigDecimal("1160.00"), LandedCost.of(both, FeeFiles.bid("1000").away(100)).total(), "1,000 + 100 x 1 + 6 x 10");
    }

    @Test
    void days_that_are_free_bring_nothing_back_where_the_car_is_fetched_before_they_are_over() throws IOException {
        FeeSchedule schedule = FeeFiles.of(folder, "table,kind,per_day,free_days,days", "yard,storage,40,5,2");
        assertEquals(new BigDecimal("1000.00"), LandedCost.of(schedule, FeeFiles.bid("1000")).total());
    }

    @Test
    void days_that_the_file_does_not_state_are_a_visible_assumption() throws IOException {
        FeeSchedule schedule = FeeFiles.of(folder, "table,kind,per_day,free_days", "yard,storage,50,1");
        LandedCost cost = LandedCost.of(schedule, FeeFiles.bid("1000"));
        // days_until_collected is 3: 50 x (3 - 1).
        assertEquals(new BigDecimal("1100.00"), cost.total());
        assertTrue(cost.lines().get(1).how().contains("days_until_collected"), cost.lines().get(1).how());
    }
}
