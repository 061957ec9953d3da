package swapworth.donor;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.math.BigDecimal;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import swapworth.listing.CarsFile;
import swapworth.listing.Keys;
import swapworth.listing.PriceIncludes;
import swapworth.listing.Runs;
import swapworth.listing.Seller;
import swapworth.reading.RowProblem;
import swapworth.reading.RowsRead;

class FeeTableFaultsTest {
    @TempDir
    Path folder;

    private String fault(String... rows) throws IOException {
        String[] lines = new String[rows.length + 1];
        lines[0] = "table,kind,from,to,flat,percent,per_day,per_mile,applies_to,seller,when,currency";
        System.arraycopy(rows, 0, lines, 1, rows.length);
        FeeSchedule schedule = FeeFiles.of(folder, lines);
        LandedCost cost = LandedCost.of(schedule, FeeFiles.bid("1000"));
        assertEquals(schedule.unusable(), cost.missing(), "what cannot be used is missing from the total, and named there");
        return String.join(" ", schedule.unusable()) + " | " + String.join(" ", schedule.read().orElseThrow().problems().stream()
                .map(p -> p.line() + " " + p.message()).toList());
    }

    @Test
    void steps_that_overlap_or_leave_a_gap_are_named_with_their_ends() throws IOException {
        String gap = fault("premium,fee,0,499,50,,,,,,,", "premium,fee,600,,80,,,,,,,");
        assertTrue(gap.contains("leave a gap: one ends at 499, the next begins at 600"), gap);
        String narrow = fault("premium,fee,0,499,50,,,,,,,", "premium,fee,501,,80,,,,,,,");
        assertTrue(narrow.contains("leave a gap: one ends at 499, the next begins at 501"), narrow);
        String overlap = fault("premium,fee,0,500,50,,,,,,,", "premium,fee,450,,80,,,,,,,");
        assertTrue(overlap.contains("overlap: one ends at 500, the next begins at 450"), overlap);
        String open = fault("premium,fee,0,,50,,,,,,,", "premium,fee,450,,80,,,,,,,");
        assertTrue(open.contains("has no end, and another row follows it"), open);
        String turned = fault("premium,fee,500,100,50,,,,,,,");
        assertTrue(turned.contains("ends before it begins"), turned);
    }

    @Test
    void a_negative_fee_and_a_percentage_over_100_are_refused() throws IOException {
        String negative = fault("premium,fee,,,-50,,,,,,,");
        assertTrue(negative.contains("2 a fee cannot be below 0"), negative);
        String much = fault("premium,fee,,,,106.25,,,,,,");
        assertTrue(much.contains("2 a percentage lies between 0 and 100"), much);
        String below = fault("premium,fee,,,,-2 %,,,,,,");
        assertTrue(below.contains("2 a percentage lies between 0 and 100"), below);
    }

    @Test
    void one_bad_row_makes_its_table_unusable_and_no_other() throws IOException {
        String text = fault("premium,fee,0,499,50,,,,,,,", "premium,fee,500,,many,,,,,,,", "title,paper,,,33,,,,,,,");
        assertTrue(text.contains("the line 'premium' is missing: fees.csv:3 cannot be used"), text);
        assertEquals(new BigDecimal("1033.00"), LandedCost.of(FeeFiles.read(folder.resolve("fees.csv")), FeeFiles.bid("1000")).total());
    }

    @Test
    void a_base_that_is_no_line_above_is_refused_with_the_nearest_name() throws IOException {
        String text = fault("premium,fee,,,90,,,,,,,", "tax,tax,,,,6,,,bid; premum,,,");
        assertTrue(text.contains("did you mean premium?"), text);
        String later = fault("tax,tax,,,,6,,,bid; premium,,,", "premium,fee,,,90,,,,,,,");
        assertTrue(later.contains("'premium' is no line above this one"), later);
    }

    @Test
    void a_row_or_a_table_that_counts_in_miles_and_in_km_is_refused() throws IOException {
        String head = "table,kind,from,to,per_mile,per_km";
        FeeSchedule both = FeeFiles.of(folder, head, "freight,freight,,,1.60,1.10");
        assertTrue(both.unusable().toString().contains("fees.csv:2 cannot be used"), both.unusable().toString());
        assertTrue(both.read().orElseThrow().problems().toString().contains("a price a mile and a price a km: keep one"),
                both.read().orElseThrow().problems().toString());
        FeeSchedule mixed = FeeFiles.of(folder, head, "freight,freight,0,300,,1.10", "freight,freight,300,,1.60,");
        String twoUnits = mixed.read().orElseThrow().problems().toString();
        assertTrue(twoUnits.contains("the rows above of 'freight' count in km: one table counts in one unit"), twoUnits);
    }

    @Test
    void a_row_that_says_otherwise_than_the_rows_above_of_its_table_is_refused_and_a_blank_takes_theirs() throws IOException {
        String when = fault("winching,freight,0,999,130,,,,,,,", "winching,freight,1000,,160,,,,,,non-runner,");
        assertTrue(when.contains("3 the rows above of 'winching' have none, so that they always count: one table has one when; give this "
                + "row a table name of its own"), when);
        String seller = fault("tax,tax,0,999,,6,,,,auction,,", "tax,tax,1000,,,7,,,,private,,");
        assertTrue(seller.contains("3 the rows above of 'tax' have 'auction': one table has one seller"), seller);
        String kind = fault("premium,fee,0,999,50,,,,,,,", "premium,tax,1000,,80,,,,,,,");
        assertTrue(kind.contains("3 the rows above of 'premium' have 'fee': one table has one kind"), kind);
        String base = fault("premium,fee,,,90,,,,,,,", "tax,tax,0,999,,6,,,,,,", "tax,tax,1000,,,6,,,bid; premium,,,");
        assertTrue(base.contains("4 the rows above of 'tax' have the bid alone: one table has one applies_to"), base);
        FeeSchedule blank = FeeFiles.of(folder, "table,kind,from,to,flat,percent,applies_to,seller,when",
                "premium,fee,0,999,90,,,auction,no key", "premium,premium,1000,1999,,9,bid,auction,no keys", "premium,,2000,,,8,,,");
        assertEquals(List.of(), blank.read().orElseThrow().problems());
        FeeSchedule above = FeeFiles.of(folder, "table,kind,from,to,flat,percent,applies_to", "gate,fee,,,75,,",
                "tax,tax,0,999,,6,gate; bid", "tax,tax,1000,1999,,6,all above", "tax,tax,2000,,,5,bid;gate");
        assertEquals(List.of(), above.read().orElseThrow().problems());
    }

    @Test
    void a_table_that_counts_in_days_and_in_a_distance_is_refused_and_so_are_two_numbers_of_days() throws IOException {
        String mixed = fault("yard,storage,0,2,,,40,,,,,", "yard,storage,3,,,,,1.60,,,,");
        assertTrue(mixed.contains("3 the rows above of 'yard' count in days: one table counts in one unit"), mixed);
        FeeSchedule days = FeeFiles.of(folder, "table,kind,from,to,per_day,days", "yard,storage,0,2,0,5", "yard,storage,3,,40,7");
        assertTrue(days.unusable().toString().contains("'yard' is missing: fees.csv:3"), days.unusable().toString());
        FeeSchedule none = FeeFiles.of(folder, "table,kind,flat,days,free_days", "yard,storage,90,5,2");
        assertEquals(List.of("days: without a price in per_day days count for nothing", "free_days: without a price in per_day days count"
                + " for nothing"), none.read().orElseThrow().oddities().stream().map(p -> p.column() + ": " + p.message()).toList());
    }

    /** By hand: 10 % of 1,000 is 100, a fifth of bid and premium 220, the winch does not count for a car that drives. */
    @Test
    void words_csv_says_who_charges_when_and_on_what_in_fees_as_in_listings() throws IOException {
        Files.writeString(folder.resolve("words.csv"), "column,word,means\nseller,Auktion,auction\nseller,H\u00e4ndler,trade\n"
                + "when,f\u00e4hrt nicht,non-runner\napplies_to,Gebot,bid\n");
        FeeSchedule schedule = FeeFiles.of(folder, "table,kind,flat,percent,applies_to,seller,when", "Aufgeld,fee,,10,Gebot,Auktion,",
                "Steuer,tax,,20,Gebot; Aufgeld,Auktion; H\u00e4ndler,", "Winde,freight,90,,,,f\u00e4hrt nicht");
        assertEquals(List.of(), schedule.read().orElseThrow().problems());
        assertEquals(new BigDecimal("1320.00"), LandedCost.of(schedule, FeeFiles.bid("1000")).total());
    }

    @Test
    void words_that_are_not_understood_and_rows_that_charge_nothing_are_refused() throws IOException {
        assertTrue(fault("premium,fee,,,90,,,,,neighbour,,").contains("known are: auction, trade, private, any"));
        assertTrue(fault("premium,fee,,,90,,,,,,at full moon,").contains("known are: always, non-runner, no key"));
        assertTrue(fault("premium,fee,,,,,,,,,,").contains("the row charges nothing"));
        assertTrue(fault(",fee,,,90,,,,,,,").contains("the row names no table"));
        assertTrue(fault("bid,fee,,,90,,,,,,,").contains("the name of the bid itself"));
    }

    @Test
    void a_table_for_a_car_that_is_not_in_play_is_named_and_not_passed_over() throws IOException {
        Files.write(folder.resolve("cars.csv"), List.of("name,vehicle,seller,price", "front hit,Velmarch,private,5300"));
        FeeSchedule fees = FeeFiles.of(folder, "table,kind,flat,car", "freight,freight,400,frnt hit", "title,paper,33,",
                "key,key,90,Front-hit");
        Landed landed = Landed.of(CarsFile.read(folder.resolve("cars.csv"), FeeFiles.USD).cars(), fees, Optional.empty());
        assertEquals(new BigDecimal("5423.00"), landed.costs().get(0).total());
        assertEquals(List.of("Tables of fees.csv for a car that cars.csv does not have, charged on nothing: 'freight' of 'frnt hit' (did"
                + " you mean front hit?)."), landed.lacking());
    }

    @Test
    void other_currencies_need_a_rate_and_steps_of_the_bid_need_its_currency() throws IOException {
        assertTrue(fault("premium,fee,,,90,,,,,,,EUR").contains("no rate from EUR to USD"));
        assertTrue(fault("premium,fee,,,90,,,,,,,florins").contains("this is no currency"));
        assertTrue(fault("premium,fee,0,500,90,,,,,,,EUR", "premium,fee,501,,90,,,,,,,EUR")
                .contains("must be in the currency of the folder, USD"));
        Files.writeString(folder.resolve("rates.csv"), "date,from,to,rate\n2025-12-01,EUR,USD,1.10\n");
        FeeSchedule mixed = FeeFiles.of(folder, "table,kind,flat,currency", "premium,fee,90,EUR", "title,paper,33,USD");
        assertEquals(new BigDecimal("1132.00"), LandedCost.of(mixed, FeeFiles.bid("1000")).total(), "1,000 + 90 x 1.10 + 33");
    }

    private static Purchase bought(String car, Seller seller) {
        return new Purchase(car, new BigDecimal("1500"), seller, PriceIncludes.NEITHER, Runs.DRIVES, Keys.YES, OptionalDouble.empty());
    }

    @Test
    void rows_whose_steps_do_not_go_together_are_rejected_each_and_rows_beside_one_that_cannot_be_used_are_set_aside() throws IOException {
        String head = "table,kind,from,to,flat,percent,minimum,seller";
        RowsRead gap = FeeFiles.of(folder, head, "premium,fee,1,999,160,,,auction", "title,paper,,,33,,,",
                "premium,fee,2000,,,12,300,auction")
                .read().orElseThrow();
        assertEquals("fees.csv, 3 rows: 1 used, 0 set aside, 2 rejected, 0 blank", gap.sentence());
        assertEquals(List.of(2, 4), gap.rejected().stream().map(RowProblem::line).toList());
        assertTrue(gap.rejected().get(0).message().contains("the rows leave a gap: one ends at 999, the next begins at 2,000"),
                gap.rejected().toString());
        RowsRead one = FeeFiles.of(folder, head, "premium,fee,1,999,many,,,auction", "premium,fee,1000,,,12,300,auction").read()
                .orElseThrow();
        assertEquals("fees.csv, 2 rows: 0 used, 1 set aside, 1 rejected, 0 blank", one.sentence());
        RowsRead step = FeeFiles.of(folder, head, "steps,increment,,,0,,,").read().orElseThrow();
        assertEquals(1, step.rejected().size());
    }

    @Test
    void a_table_that_cannot_be_used_is_missing_only_where_it_would_have_been_charged() throws IOException {
        String head = "table,kind,from,to,flat,percent,minimum,seller,car";
        for (String second : List.of("premium,fee,2000,,,12,300,auction,", "premium,fee,1000,,many,12,300,auction,")) {
            FeeSchedule fees = FeeFiles.of(folder, head, "premium,fee,1,999,160,,,auction,", second, "title,paper,,,33,,,,");
            LandedCost private1 = LandedCost.of(fees, bought("shell", Seller.PRIVATE));
            assertEquals(List.of(), private1.missing());
            assertEquals(new BigDecimal("1533.00"), private1.total());
            String bid = HighestBid.of(fees, bought("shell", Seller.PRIVATE), new BigDecimal("2000")).match(b -> b.bid().toPlainString(),
                    NoBid::reason);
            assertEquals("1967", bid, "2,000 less the title");
            for (Seller seller : List.of(Seller.AUCTION, Seller.UNKNOWN)) {
                assertEquals(1, LandedCost.of(fees, bought("shell", seller)).missing().size());
            }
        }
        FeeSchedule unclear = FeeFiles.of(folder, head, "premium,fee,,,160,,,neighbour,", "title,paper,,,33,,,,");
        assertEquals(1, LandedCost.of(unclear, bought("shell", Seller.PRIVATE)).missing().size(), "nobody can tell whom it charges");
        FeeSchedule own = FeeFiles.of(folder, head, "freight,freight,,,many,,,,", "freight,freight,,,200,,,,shell");
        assertEquals(List.of(), LandedCost.of(own, bought("shell", Seller.PRIVATE)).missing(), "its own table counts in its place");
        assertEquals(1, LandedCost.of(own, bought("hit", Seller.PRIVATE)).missing().size());
    }

    @Test
    void a_row_that_charges_nothing_says_so_whoever_sells() throws IOException {
        FeeSchedule fees = FeeFiles.of(folder, "table,kind,flat,minimum", "premium,fee,0,", "broker,broker,,90");
        List<LandedCost.Line> lines = LandedCost.of(fees, bought("shell", Seller.UNKNOWN)).lines();
        assertEquals(List.of("nothing", "the minimum, 90; counted because the row does not say who sells"), lines.subList(1, 3).stream()
                .map(LandedCost.Line::how).toList());
    }
}
