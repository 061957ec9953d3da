package swapworth.listing;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import swapworth.reading.RowProblem;
import swapworth.reading.UnusableFileException;

class ListingsRowsTest extends ReadingListings {

    private static final String HEADER = "id,seen_on,vehicle,model_year,mileage_mi,price_usd,seller,price_includes";

    @Test
    void a_file_with_the_fewest_columns_works() {
        ListingsRead read = read("model,year,ask\nRoadster,2010,9000\nRoadster,2012,11000\n");
        assertEquals(2, read.counts().used());
        assertEquals(2, read.cars().size());
        assertEquals("Roadster", read.listings().get(0).facts().vehicle());
        assertEquals(9000, read.listings().get(0).price().amount());
    }

    @Test
    void a_hammer_price_is_one_of_an_auction() {
        ListingsRead read = read("vehicle,year,price,price_kind,seller\n"
                + "Roadster,2010,9000,hammer,\nRoadster,2010,9100,winning bid,private\n"
                + "Roadster,2010,9200,sold,\nRoadster,2010,9300,hammer price,auction\n");
        assertEquals(List.of(LevelOfTrade.AUCTION, LevelOfTrade.PRIVATE_SOLD, LevelOfTrade.PRIVATE_SOLD, LevelOfTrade.AUCTION),
                read.listings().stream().map(Listing::level).toList());
        assertEquals(1, read.oddities().size(), read.oddities().toString());
        assertTrue(read.oddities().get(0).message().contains("an auction's result, but the seller is no auction"));
        assertEquals(LevelOfTrade.AUCTION, read("vehicle,year,hammer price\nRoadster,2010,9000\n").listings().get(0).level());
    }

    @Test
    void a_row_without_a_day_is_of_no_year_after_those_of_the_others() {
        String undated = "b,,Roadster,2030,10,9000,private,\nc,,Roadster,2025,10,9000,private,\n";
        ListingsRead read = read(HEADER + "\na,2024-05-01,Roadster,2010,50000,9000,private,\n" + undated);
        assertEquals(new Counts(2, 1, 0, 0, 0), read.counts());
        assertEquals("the model year lies more than a year after the last day seen, 2024-05-01", read.setAside().get(0).message());
        assertEquals(3, read.setAside().get(0).line());
        assertEquals("the first registration lies after the last day seen, 2024-05-01", read("id,seen_on,vehicle,first_registered,price\n"
                + "a,2024-05-01,Roadster,2010,9000\nb,,Roadster,2030-03-01,9000\n").setAside().get(0).message());
        // Where no row has a day, nothing says which years are still to come.
        assertEquals(2, read(HEADER + "\n" + undated).counts().used());
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', value = {
        "a,2024-01-01,Roadster,2010,50000,,private,|the row has no price",
        "a,2024-01-01,Roadster,2010,50000,0,private,|the price is not above 0",
        "a,2024-01-01,Roadster,2010,50000,-5,private,|the price is not above 0",
        "a,2024-01-01,,2010,50000,9000,private,|which model line",
        "a,2024-01-01,Roadster,,,9000,private,|neither the age nor the mileage",
        "a,2024-01-01,Roadster,2010,-50000,9000,private,|cannot be below 0",
        "a,2024-01-01,Roadster,2010,1000001,9000,private,|more than a million miles",
        "a,2024-01-01,Roadster,2026,10,9000,private,|more than a year after the sighting",
        "a,2024-01-01,Roadster,1800,10,9000,private,|no car is of this model year"})
    void a_row_outside_what_a_model_may_use_is_set_aside(String row, String reason) {
        ListingsRead read = read(HEADER + "\n" + row + "\n");
        assertEquals(new Counts(0, 1, 0, 0, 0), read.counts());
        assertTrue(read.setAside().get(0).message().contains(reason), read.setAside().toString());
        assertEquals(2, read.setAside().get(0).line());
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', value = {
        "a,2024-01-01,Roadster,2010,50000,12.500,private,|price_usd|12500 or 12.500",
        "a,2024-01-01,Roadster,2010,50000,POA,private,|price_usd|no amount of money",
        "a,2024-01-01,Roadster,2010,lots,9000,private,|mileage_mi|no number",
        "a,2024-01-01,Roadster,2010,12.500 km,9000,private,|mileage_mi|12500 or 12.500",
        "a,03/04/2024,Roadster,2010,50000,9000,private,|seen_on|day or the month",
        "a,2024-01-01,Roadster,98,50000,9000,private,|model_year|four digits",
        "a,2024-01-01,Roadster,MMX,50000,9000,private,|model_year|no number"})
    void a_row_that_cannot_be_read_is_rejected_with_its_question(String row, String column, String reason) {
        ListingsRead read = read(HEADER + "\n" + row + "\n");
        assertEquals(new Counts(0, 0, 1, 0, 0), read.counts());
        assertEquals(column, read.rejected().get(0).column());
        assertTrue(read.rejected().get(0).message().contains(reason), read.rejected().toString());
    }

    @Test
    void a_row_with_two_problems_has_one_entry_that_names_both() {
        ListingsRead read = read(HEADER + "\na,2024-01-01,Roadster,98,lots,9000,private,\n");
        assertEquals(1, read.rejected().size());
        assertTrue(read.rejected().get(0).message().contains("Also mileage_mi 'lots'"), read.rejected().toString());
    }

    @Test
    void next_years_model_is_fine() {
        assertEquals(1, read(HEADER + "\na,2024-11-01,Roadster,2025,10,9000,private,\n").counts().used());
    }

    @Test
    void the_same_advertisement_twice_on_a_day_at_one_price_is_one_sighting() {
        ListingsRead read = read(HEADER + "\na,2024-01-01,Roadster,2010,50000,9000,private,\n"
                + "A,2024-01-01,Roadster,2010,50000,9000,private,\na,2024-01-02,Roadster,2010,50000,9000,private,\n");
        assertEquals(new Counts(2, 1, 0, 0, 0), read.counts());
        assertTrue(read.setAside().get(0).message().contains("listings.csv:2: one sighting"));
        assertEquals(1, read.cars().size());
    }

    @Test
    void two_prices_on_one_day_are_both_kept_and_flagged() {
        ListingsRead read = read(HEADER + "\na,2024-01-01,Roadster,2010,50000,9000,private,\n"
                + "a,2024-01-01,Roadster,2010,50000,8500,private,\n");
        assertEquals(2, read.counts().used());
        assertTrue(read.oddities().get(0).message().contains("stands at USD 9000"));
    }

    @Test
    void where_prices_scatter_wide_one_must_lie_further_off_to_be_asked_about() {
        StringBuilder text = new StringBuilder(HEADER + "\n");
        for (int i = 0; i < 40; i++) {
            int price = i == 20 ? 45_000 : 4_000 << i % 3;
            text.append("c").append(i).append(",2024-01-01,Roadster,2010,").append(40_000 + 1_117 * i).append(',').append(price)
                    .append(",private,\n");
        }
        // 45,000 is more than five times the middle of 8,000, but two thirds of the others lie at half of it or at twice.
        assertEquals(List.of(), read(text.toString()).oddities());
    }

    @Test
    void a_price_ten_times_off_its_neighbours_is_flagged_and_kept() {
        StringBuilder text = new StringBuilder(HEADER + "\n");
        for (int i = 0; i < 20; i++) {
            text.append("c").append(i).append(",2024-01-01,Roadster,").append(2005 + i % 10).append(',').append(40_000
                    + 1_117 * i)
                    .append(',').append(i == 7 ? 95_000 : 8_000 + 150 * (i % 10)).append(",private,\n");
        }
        ListingsRead read = read(text.toString());
        assertEquals(20, read.counts().used());
        assertEquals(List.of(9), read.oddities().stream().map(RowProblem::line).toList());
        assertTrue(read.oddities().get(0).message().contains("is a digit too many or missing?"));
        assertEquals(1, read.listings().get(7).remarks().size());
        // To many readers 8.950 is a thousand times 8.95.
        ListingsRead small = read(text.toString().replace(",95000,", ",8.9500,"));
        assertEquals("USD 8.95", small.oddities().get(0).rawText());
    }

    @Test
    void hardly_any_distance_of_a_car_some_years_old_is_asked_about() {
        ListingsRead read = read(HEADER + "\na,2024-01-01,Roadster,2013,0,7300,private,\nb,2024-01-01,Roadster,2024,12,19000,private,\n"
                + "c,2024-01-01,Roadster,2013,4000,9000,private,\n");
        assertEquals(List.of(2), read.oddities().stream().map(RowProblem::line).toList(), read.oddities().toString());
        assertTrue(read.oddities().get(0).message().startsWith("hardly any distance for a car of this age"), read.oddities().toString());
        assertEquals(3, read.counts().used());
    }

    /** Nobody drives a car a thousand miles or kilometres in several years (common practice, no source). */
    @Test
    void a_distance_that_counts_thousands_is_asked_about_whatever_tells_the_age_and_where_nothing_does() {
        String head = "seen_on,vehicle,model_year,first_registered,age_years,mileage,price_eur\n";
        ListingsRead read = read(head + "2026-01-01,Roadster,2016,,,165 km,9000\n2026-01-02,Roadster,,2016,,165 km,9100\n"
                + "2026-01-03,Roadster,,,10,165 mi,9200\n,Roadster,2016,,,999 km,9300\n2026-01-05,Roadster,,2025-03,,900 km,19000\n"
                + "2026-01-06,Roadster,2016,,,1000 km,9400\n2026-01-07,Roadster,,,1,165 km,18000\n");
        assertEquals(List.of(2, 3, 4, 5), read.oddities().stream().map(RowProblem::line).toList(), read.oddities().toString());
        assertTrue(read.oddities().get(0).message().contains("if it counts thousands, write it in full"));
        assertTrue(read.oddities().get(3).message().startsWith("hardly any distance for a car that may be years old"));
        assertEquals(7, read.counts().used());
    }

    @Test
    void an_end_before_a_sighting_on_offer_is_odd_and_not_used_but_a_sale_may_be_noted_later() {
        ListingsRead read = read("seen_on,vehicle,year,price,outcome,ended_on\n2024-02-01,A,2010,9000,,2024-01-20\n"
                + "2024-02-01,A,2011,9000,sold,2024-01-20\n");
        assertEquals(List.of(2), read.oddities().stream().map(RowProblem::line).toList());
        assertTrue(read.listings().get(0).endedOn().isEmpty());
        assertTrue(read.listings().get(1).endedOn().isPresent());
    }

    @Test
    void an_auction_result_that_hides_its_fees_raises_one_question_a_file() {
        ListingsRead read = read(HEADER
                + "\na,2024-01-01,Roadster,2010,50000,9000,auction,\nb,2024-01-01,Roadster,2011,51000,9000,"
                + "auction,\nc,2024-01-01,Roadster,2012,52000,9000,auction,fees\nd,2024-01-01,Roadster,2012,,9000,private,\n");
        List<RowProblem> questions = read.questions().stream().filter(q -> q.column().equals("price_includes")).toList();
        assertEquals(1, questions.size());
        assertTrue(questions.get(0).message().startsWith("2 auction results"));
        assertEquals(4, read.counts().used());
        assertEquals(LevelOfTrade.AUCTION, read.listings().get(0).level());
        assertEquals(PriceKind.SOLD, read.listings().get(0).price().kind());
    }

    @Test
    void which_line_carries_the_gear_is_asked_only_if_no_row_says() {
        assertTrue(read("vehicle,year,price\nA,2010,1000\n").questions().stream().anyMatch(q -> q.column()
                .equals("running_gear")));
        assertTrue(read("vehicle,year,price,running_gear\nA,2010,1000,six\n").questions().stream()
                .noneMatch(q -> q.column().equals("running_gear")));
    }

    @Test
    void an_unstated_unit_and_currency_are_asked_for() {
        assertEquals(List.of("mileage", "price"), read("vehicle,mileage,price,running_gear\nA,50000,1000,six\n").questions()
                .stream()
                .map(RowProblem::column).toList());
        assertEquals(List.of(), read("vehicle,mileage,price,running_gear\nA,50000 mi,$1000,six\n").questions());
    }

    @Test
    void a_sighting_far_from_all_others_at_either_end_is_asked_about_on_its_own_row() {
        String middle = "\nA,2026-05-04,2010,1000\nA,,2010,1100\nB,2026-08-04,2011,950\nB,2026-11-14,2011,900\n";
        assertEquals(List.of(), days("A,2026-06-01,2012,1500" + middle + "C,2027-05-16,2013,800\n"));
        assertEquals(List.of("2 2027-11-12: this day lies 363 days after the sighting before it, and it makes that the day of all values:"
                + " is the year right?"), days("A,2027-11-12,2012,1500" + middle));
        assertEquals(List.of("2 2025-06-01: this day lies 337 days before the next sighting: is the year right?"),
                days("A,2025-06-01,2012,1500" + middle));
        assertEquals(List.of(), days("A,2027-11-12,2012,1500" + middle + "C,2027-11-20,2013,800\n"));
    }

    private List<String> days(String rows) {
        return read("vehicle,seen_on,year,price\n" + rows).questions().stream().filter(q -> q.column().equals("seen_on"))
                .map(q -> q.line() + " " + q.rawText() + ": " + q.message()).toList();
    }

    @Test
    void a_word_that_is_not_known_is_listed_and_the_fact_stays_unknown() {
        ListingsRead read = read("vehicle,year,price,runs,title\nA,2010,1000,blown,clean\nA,2011,1000,Blown,murky\n");
        assertEquals(2, read.counts().used());
        assertEquals(Runs.UNKNOWN, read.listings().get(0).facts().runs());
        assertEquals("runs: blown 2, title: murky 1", read.unmatchedWords().stream()
                .map(word -> word.column() + ": " + word.word() + " " + word.rows()).collect(Collectors.joining(", ")));
        assertTrue(read.unmatchedWords().get(0).accepted().contains("engine dead"));
    }

    @Test
    void a_missing_column_names_what_was_found() {
        assertMissing("vehicle,year\nA,2010\n", "a column for the price");
        assertMissing("year,price\n2010,1\n", "a column for the model line");
        assertMissing("vehicle,price\nA,1\n", "a column for age or distance");
    }

    private void assertMissing(String text, String needed) {
        String message = assertThrows(UnusableFileException.class, () -> read(text)).getMessage();
        assertTrue(message.contains(needed) && message.contains("found the columns " + text.substring(0, text.indexOf('\n'))
                .replace(",", ", ")), message);
    }
}
