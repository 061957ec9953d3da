package swapworth.donor;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.math.BigDecimal;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Currency;
import java.util.List;
import java.util.Optional;
import java.util.SplittableRandom;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import swapworth.assumptions.Assumptions;
import swapworth.listing.CarsFile;
import swapworth.market.CannotTell;

class HighestBidTest {
    @TempDir
    Path folder;

    private static HighestBid found(FeeSchedule schedule, String target) {
        return assertInstanceOf(HighestBid.class, HighestBid.of(schedule, FeeFiles.bid("1"), new BigDecimal(target)));
    }

    // Source: a published fee table, results by hand (reference/fee-tables/SOURCE.md).
    @Test
    void a_published_fee_table_gives_the_highest_bids_found_by_hand() throws IOException {
        FeeSchedule schedule = FeeFiles.read(FeeFiles.REFERENCE.resolve("tiers.csv"));
        for (BigDecimal[] row : FeeFiles.rows("highest.csv")) {
            HighestBid answer = assertInstanceOf(HighestBid.class, HighestBid.of(schedule, FeeFiles.bid("1"), row[0]));
            assertEquals(0, row[1].compareTo(answer.bid()), "target " + row[0] + ": " + answer.bid());
            assertEquals(row[2], answer.landed());
        }
    }

    // By hand: without fees the highest bid is the highest that can be made: 500, 550, ..., 1,000, 1,100; none below 500.
    @Test
    void bids_begin_at_the_first_amount_for_which_steps_are_stated() throws IOException {
        String[] rows = {"table,kind,from,to,flat,seller", "premium,fee,,,0,auction", "steps,increment,500,1000,50,",
            "steps,increment,1000,,100,"};
        FeeSchedule steps = FeeFiles.of(folder, rows[0], rows[1], rows[2], rows[3]);
        assertEquals(List.of("500", "500", "550", "1000", "1000", "1100"), Stream.of("500", "549", "550", "1050", "1099", "1100")
                .map(target -> found(steps, target).bid().toPlainString()).toList());
        assertEquals("no bid that can be made is as low as 499", HighestBid.of(steps, FeeFiles.bid("1"), new BigDecimal("499"))
                .match(bid -> bid.bid().toPlainString(), NoBid::reason));
        FeeSchedule small = FeeFiles.of(folder, rows[0], rows[1], "steps,increment,25,,25,");
        assertEquals(List.of("25", "25", "50"), Stream.of("25", "49", "50").map(target -> found(small, target).bid().toPlainString())
                .toList());
    }

    @Test
    void the_step_that_stops_the_next_bid_is_named() {
        HighestBid answer = found(FeeFiles.read(FeeFiles.REFERENCE.resolve("tiers.csv")), "6550");
        assertEquals("from a bid of 5,499 to one of 5,500 the landed cost goes from 6,530.21 to 6,606.28",
                answer.steps().get(1).sentence());
        assertTrue(answer.isNear(answer.steps().get(1)));
        HighestBid far = found(FeeFiles.read(FeeFiles.REFERENCE.resolve("tiers.csv")), "65500");
        assertTrue(!far.steps().isEmpty() && far.steps().stream().noneMatch(far::isNear), far.steps().toString());
        assertEquals(new BigDecimal("6606.28"), answer.nextLanded());
    }

    @Test
    void a_step_within_a_fifth_of_the_bid_on_either_side_is_near() {
        BigDecimal any = BigDecimal.ONE;
        HighestBid bid = new HighestBid(any, new BigDecimal("1000"), any, any, any, List.of());
        assertEquals(List.of(false, true, true, false), Stream.of("799", "800", "1200", "1201")
                .map(at -> bid.isNear(new HighestBid.Step(any, any, new BigDecimal(at), any))).toList());
    }

    // By hand: 6,000 / 1.15 = 5,217.39, so 5,217 EUR; at 0.93 that is 5,609.67 USD.
    @Test
    void the_highest_bid_for_a_car_that_is_bid_for_in_another_currency_stands_in_both() throws IOException {
        Donors files = new Donors(folder).file("rates.csv", "date,from,to,rate", "2026-10-01,USD,EUR,0.93")
                .file("cars.csv", "name,role,vehicle,seller,planned_bid,currency,runs,keys",
                        "abroad,donor,Merend,auction,4200,USD,drives,yes",
                        "here,donor,Merend,auction,4200,EUR,drives,yes")
                .file("fees.csv", "table,kind,from,to,percent,currency", "premium,fee,,,15,EUR", "steps,fee,1,,1,USD");
        Currency euro = Currency.getInstance("EUR");
        FeeSchedule schedule = FeeSchedule.read(folder.resolve("fees.csv"), files.settings(), euro, Assumptions.defaults());
        String refused = schedule.read().told().orElseThrow().rejected().toString();
        assertTrue(refused.contains("must be in the currency of the folder, EUR, also for a bid in another one"), refused);
        files.file("fees.csv", "table,kind,percent", "premium,fee,15");
        Landed landed = Landed.of(CarsFile.read(folder.resolve("cars.csv"), euro).cars(), FeeSchedule.read(folder.resolve("fees.csv"),
                files.settings(), euro, Assumptions.defaults()), Optional.of(new BigDecimal("6000")));
        assertEquals(List.of("5,609 USD at 0.93", ""), landed.bids().stream().map(Landed.Bid::there).toList());
        assertTrue(landed.bidTable().orElseThrow().csv().contains("\"5,609 USD at 0.93\""), landed.bidTable().orElseThrow().csv());
    }

    @Test
    void search_finds_what_trying_every_bid_finds_also_where_fees_fall_and_bids_rise_by_uneven_steps() throws IOException {
        SplittableRandom random = new SplittableRandom(11);
        for (int trial = 0; trial < 60; trial++) {
            List<String> lines = new ArrayList<>(List.of("table,kind,from,to,flat,percent,minimum,maximum,applies_to"));
            int from = 0;
            int tables = 1 + random.nextInt(3);
            for (int t = 0; t < tables; t++) {
                from = 0;
                String base = t > 0 && random.nextInt(2) == 0 ? "all above" : "";
                for (int i = 0; i < 4; i++) {
                    int to = from + 50 + random.nextInt(400);
                    lines.add("t" + t + ",fee," + from + "," + (i == 3 ? "" : to) + "," + random.nextInt(120) + ","
                            + random.nextInt(30) + ","
                            + (random.nextInt(3) == 0 ? random.nextInt(90) : "") + ","
                            + (random.nextInt(3) == 0 ? 90 + random.nextInt(90) : "")
                            + "," + base);
                    from = to + random.nextInt(2);
                }
            }
            lines.add("steps,increment,0,300,25,,,,");
            lines.add("steps,increment,300,,40,,,,");
            FeeSchedule schedule = FeeFiles.of(folder, lines.toArray(String[]::new));
            assertTrue(schedule.unusable().isEmpty(), schedule.unusable() + "");
            BigDecimal target = BigDecimal.valueOf(200 + random.nextInt(1500));
            BigDecimal best = BigDecimal.ZERO;
            for (int bid = 25; bid <= target.intValue(); bid += bid < 300 ? 25 : 40) {
                best = LandedCost.of(schedule, FeeFiles.bid("" + bid)).total().compareTo(target) <= 0 ? BigDecimal.valueOf(bid) : best;
            }
            BidAnswer answer = HighestBid.of(schedule, FeeFiles.bid("1"), target);
            if (best.signum() == 0) {
                assertInstanceOf(NoBid.class, answer);
            } else {
                assertEquals(0, best.compareTo(assertInstanceOf(HighestBid.class, answer).bid()), String.join("\n", lines) + "\n" + target);
            }
        }
    }

    // By hand: 5,000 + 10 % + 453.40 = 5,953.40; 5,042 would cost 5,999.60, and 5,043 costs 6,000.70.
    @Test
    void a_bid_at_an_auction_holds_no_fees_though_the_price_of_the_row_does() throws IOException {
        FeeSchedule schedule = FeeFiles.of(folder, "table,kind,flat,percent,seller", "premium,fee,453.40,10,auction");
        Files.write(folder.resolve("cars.csv"), List.of("name,vehicle,seller,price,price_includes,planned_bid",
                "paid,Velmarch,auction,6094.50,fees,", "planned,Velmarch,auction,9000,both,5300", "asked,Velmarch,auction,,,"));
        CarsFile cars = CarsFile.read(folder.resolve("cars.csv"), FeeFiles.USD);
        Landed landed = Landed.of(cars.cars(), schedule, Optional.of(new BigDecimal("6000")));
        assertEquals(new BigDecimal("6094.50"), landed.of("paid").orElseThrow().total());
        assertEquals(new BigDecimal("6283.40"), landed.of("planned").orElseThrow().total());
        assertEquals(List.of(), landed.of("planned").orElseThrow().questions(), "a bid is a bid");
        for (Landed.Bid bid : landed.bids()) {
            assertEquals(new BigDecimal("5042"), assertInstanceOf(HighestBid.class, bid.answer()).bid(), bid.car());
        }
        assertEquals(3, landed.bids().size(), "a bid is sought for a car without a price too");
        assertEquals(List.of("Without a price or a planned bid: asked."), landed.lacking());
    }

    @Test
    void a_target_below_every_fee_has_no_bid_and_says_why() throws IOException {
        NoBid none = assertInstanceOf(NoBid.class, HighestBid.of(FeeFiles.read(FeeFiles.REFERENCE.resolve("tiers.csv")), FeeFiles.bid("1"),
                new BigDecimal("100")));
        assertTrue(none.reason().contains("even a bid of 1 costs 156.06"), none.reason());
        FeeSchedule far = FeeFiles.of(folder, "table,kind,flat,per_mile", "freight,freight,200,1.2");
        NoBid unknown = assertInstanceOf(NoBid.class, HighestBid.of(far, FeeFiles.bid("1"), new BigDecimal("3000")));
        assertTrue(unknown.reason().contains("distance_away is blank"), unknown.reason());
    }

    @Test
    void both_outcomes_are_read_in_the_same_way() {
        FeeSchedule schedule = FeeFiles.read(FeeFiles.REFERENCE.resolve("tiers.csv"));
        BidAnswer some = HighestBid.of(schedule, FeeFiles.bid("1"), new BigDecimal("3000"));
        BidAnswer none = HighestBid.of(schedule, FeeFiles.bid("1"), new BigDecimal("100"));
        assertEquals("bid", some.match(bid -> "bid", no -> no.reason()));
        assertEquals(some, some.answer().orElseThrow());
        String why = none.match(bid -> "bid", NoBid::reason);
        assertTrue(why.contains("even a bid of 1 costs 156.06"), why);
        assertEquals(why, none.answer().map(HighestBid::bid).match(BigDecimal::toPlainString, CannotTell::reason));
    }
}
