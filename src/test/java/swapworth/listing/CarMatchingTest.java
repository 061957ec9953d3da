package swapworth.listing;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Collections;
import java.util.HashMap;
import java.util.List;
import java.util.Optional;
import java.util.Map;
import java.util.Random;
import org.junit.jupiter.api.Test;
import swapworth.table.Table;

class CarMatchingTest extends ReadingListings {

    private static final String HEADER = "id,seen_on,vehicle,trim,model_year,mileage_mi,price_usd,region,note,colour\n";

    @Test
    void one_id_is_one_car_and_its_history_is_told() {
        ListingsRead read = read(HEADER + "a,2024-02-01,Roadster,,2010,50100,8500,,,\na,2024-01-01,Roadster,,2010,50000,9000,,,\n"
                + "b,2024-01-01,Roadster,,2011,70000,8000,,,\n");
        assertEquals(2, read.cars().size());
        Car car = read.cars().get(0);
        assertEquals("a", car.name());
        assertEquals(50100, car.facts().mileage().orElseThrow().miles());
        assertEquals(1, car.priceCuts().size());
        assertEquals(-5.56, car.priceCuts().get(0).percent(), 0.01);
        assertEquals(31, car.daysOnOffer().orElseThrow());
        assertEquals(Outcome.OPEN, car.outcome());
        assertEquals(8500, car.lastAsk().orElseThrow().price().amount());
        assertEquals(Optional.empty(), car.sale());
        assertEquals(List.of(), car.joinedBy());
    }

    /** The points of an equal price rest on how thickly the prices of the line lie, and not on the coin in which they are counted. */
    @Test
    void which_rows_show_one_car_does_not_depend_on_the_currency() {
        List<List<Integer>> joins = new ArrayList<>();
        for (int coin : new int[] {1, 150, 400}) {
            Random random = new Random(3);
            StringBuilder looks = new StringBuilder();
            StringBuilder again = new StringBuilder();
            for (int i = 0; i < 16; i++) {
                int miles = (15 - i % 8) * (7_000 + random.nextInt(6_000));
                long price = 50 * Math.round(18_000 * Math.pow(0.9, 15 - i % 8) * (0.8 + 0.45 * random.nextDouble()) / 50) * coin;
                String car = ",Roadster,," + (2010 + i % 8) + ",";
                looks.append(",2025-05-01").append(car).append(miles).append(',').append(price).append(",,,\n");
                again.append(",2025-05-22").append(car).append(miles + 40 + random.nextInt(260)).append(',').append(price).append(",,,\n");
            }
            joins.add(read(HEADER + looks + again).cars().stream().map(c -> c.sightings().get(0).origin().line()).toList());
        }
        assertEquals(16, joins.get(0).size());
        assertEquals(joins.get(0), joins.get(1));
        assertEquals(joins.get(0), joins.get(2));
    }

    @Test
    void undated_rows_are_one_car_or_two_in_whatever_order_they_stand() {
        String low = ",,Roadster,,2016,61237,9123,North,,\n";
        String high = ",,Roadster,,2016,61250,9123,North,,\n";
        String others = ",,Roadster,,2016,90000,8000,South,,\n,,Roadster,,2017,80000,8500,East,,\n";
        assertEquals(read(HEADER + low + high + others).cars().size(), read(HEADER + high + low + others).cars().size());
    }

    @Test
    void cars_registered_in_different_years_stay_apart_when_a_row_without_a_year_is_joined() {
        String head = "vehicle,first_registered,mileage_mi,price_usd,seen_on,note\n";
        String note = ",one careful keeper and a folder full of bills\n";
        assertEquals(2, read(head + "Roadster,2016,61237,9000,2026-01-01" + note + "Roadster,,61237,9000,2026-02-01" + note
                + "Roadster,2018,61237,9000,2026-03-01" + note).cars().size());
    }

    /** Of rows that state no year but an age on their day the age tells two cars apart, as far as whole years can. */
    @Test
    void cars_of_different_ages_stay_apart_where_no_year_is_stated() {
        String head = "vehicle,age_years,mileage_mi,price_usd,seen_on,note\n";
        String note = ",one careful keeper and a folder full of bills\n";
        String first = "Roadster,6,61237,9000,2026-01-01" + note;
        assertEquals(2, read(head + first + "Roadster,9,61237,9000,2026-01-01" + note).cars().size());
        assertEquals(2, read(head + first + "Roadster,6,61237,9000,2029-01-01" + note).cars().size());
        assertEquals(2, read(head + first + "Roadster,,61237,9000,2026-02-01" + note + "Roadster,9,61237,9000,2026-03-01" + note)
                .cars().size());
        assertEquals(1, read(head + first + "Roadster,7,61237,9000,2026-02-01" + note).cars().size());
        assertEquals(1, read(head + first + "Roadster,7,61237,9000,2026-11-01" + note).cars().size());
        assertEquals(2, read(head.replace(",seen_on", "") + "Roadster,6,61237,9000" + note + "Roadster,9,61237,9000" + note).cars().size());
    }

    /** One offer has one price on one day: among many cars of a year an equal mileage beside another price is chance. */
    @Test
    void rows_of_one_day_at_two_prices_are_two_cars_unless_much_speaks_for_one() {
        StringBuilder many = new StringBuilder();
        for (int i = 0; i < 120; i++) {
            many.append(",2026-01-01,Roadster,,2016,").append(40_000 + 517 * i).append(',').append(8_000 + 13 * i).append(",,,\n");
        }
        String first = ",2026-01-01,Roadster,,2016,61237,9000,,,\n";
        assertEquals(122, read(HEADER + many + first + ",2026-01-01,Roadster,,2016,61237,9700,,,\n").cars().size());
        assertEquals(121, read(HEADER + many + first + ",2026-01-15,Roadster,,2016,61237,9700,,,\n").cars().size());
        String text = "one careful keeper and a folder full of bills";
        assertEquals(121, read(HEADER + many + first.replace(",,,", ",," + text + ",") + ",2026-01-01,Roadster,,2016,61237,9700,,"
                + text + ",\n").cars().size());
    }

    /** A car is mostly registered in its model year or the year before or after (common practice, no source). */
    @Test
    void a_car_told_by_its_model_year_and_by_the_year_it_was_registered_is_one_car() {
        String note = ",one careful keeper and a folder full of bills\n";
        String head = "vehicle,model_year,first_registered,mileage_mi,price_usd,seen_on,note\n";
        String others = "Roadster,2012,,91000,7000,2026-01-03,\nRoadster,,2019,40100,15000,2026-01-04,\n";
        for (int registered = 2014; registered <= 2018; registered++) {
            for (int driven : new int[] {0, 120}) {
                ListingsRead read = read(head + "Roadster,2016,,61237,9000,2026-01-01" + note
                        + "Roadster,," + registered + "," + (61237 + driven) + ",9000,2026-02-01" + note + others);
                assertEquals(Math.abs(registered - 2016) <= 1 ? 3 : 4, read.cars().size(), registered + ", " + driven + " miles");
            }
        }
        // A row that states both tells a second car by either.
        assertEquals(1, read(head + "Roadster,2016,2015,61237,9000,2026-01-01" + note + "Roadster,,2015,61237,9000,2026-02-01" + note)
                .cars().size());
        assertEquals(2, read(head + "Roadster,2016,2015,61237,9000,2026-01-01" + note + "Roadster,,2016,61237,9000,2026-02-01" + note)
                .cars().size());
    }

    @Test
    void cars_of_two_model_years_stay_apart_though_a_row_between_them_tells_the_year_of_registration_alone() {
        String note = ",one careful keeper and a folder full of bills\n";
        assertEquals(2, read("vehicle,model_year,first_registered,mileage_mi,price_usd,seen_on,note\n"
                + "Roadster,2015,,61237,9000,2026-01-01" + note + "Roadster,,2016,61237,9000,2026-02-01" + note
                + "Roadster,2017,,61237,9000,2026-03-01" + note).cars().size());
    }

    @Test
    void a_mileage_that_falls_across_a_row_without_one_is_that_of_another_car_and_asked_about() {
        ListingsRead read = read(HEADER + "x,2026-01-01,Roadster,,2016,80000,9000,,,\nx,2026-02-01,Roadster,,2016,,9000,,,\n"
                + "x,2026-03-01,Roadster,,2016,40000,9000,,,\n");
        assertEquals(2, read.cars().size());
        assertEquals(1, read.oddities().size(), read.oddities().toString());
        assertTrue(read.oddities().get(0).message().contains("falls by 50 % from listings.csv:2"));
    }

    @Test
    void one_id_for_two_lines_is_two_cars_and_flagged() {
        ListingsRead read = read(HEADER + "a,2024-02-01,Roadster,,2010,50100,8500,,,\na,2024-03-01,Saloon,,2010,50000,9000,,,\n"
                + "a,2024-04-01,Saloon,,2010,50000,9000,,,\n");
        assertEquals(2, read.cars().size());
        assertEquals(1, read.oddities().size());
        assertTrue(read.oddities().get(0).message().contains("stands for a Roadster in listings.csv:2"));
    }

    @Test
    void one_id_for_two_model_years_is_two_cars_and_flagged() {
        ListingsRead read = read(HEADER + "a,2024-02-01,Roadster,,2014,88000,9800,,,\na,2024-03-01,Roadster,,2018,41000,15400,,,\n"
                + "a,2024-04-01,Roadster,,,41500,15000,,,\na,2024-05-01,Roadster,,2018,42000,14900,,,\n");
        assertEquals(2, read.cars().size());
        assertEquals(2014, read.cars().get(0).facts().modelYear().orElseThrow());
        assertEquals(1, read.oddities().size(), read.oddities().toString());
        assertTrue(read.oddities().get(0).message().contains("stands for a car of model year 2014 in listings.csv:2; taken for another"));
        // A row without a year goes with the car of its id that was seen last.
        assertEquals(3, read.cars().get(1).sightings().size());
    }

    @Test
    void a_year_set_right_from_one_look_to_the_next_is_no_other_car() {
        ListingsRead read = read(HEADER + "a,2024-02-01,Roadster,,2014,88000,9800,,,\na,2024-03-01,Roadster,,2015,88100,9600,,,\n");
        assertEquals(1, read.cars().size());
        assertEquals(List.of(), read.oddities());
    }

    @Test
    void nothing_is_asked_of_a_mileage_whose_row_has_no_day() {
        ListingsRead read = read(HEADER + "a,,Roadster,,2014,88000,9800,,,\na,2024-03-01,Roadster,,2014,41000,9600,,,\n");
        assertEquals(List.of(), read.oddities());
    }

    @Test
    void a_repost_under_another_id_is_joined_and_the_reason_shown() {
        ListingsRead read = read(HEADER + "a,2024-01-01,Roadster,S,2010,50123,9000,North,,red\n"
                + "b,2024-02-01,Roadster,S,2010,50123,8700,North,,red\n" + others());
        assertEquals(12, read.cars().size());
        Car car = read.cars().get(0);
        assertEquals(2, car.sightings().size());
        String why = car.joinedBy().get(0);
        assertTrue(why.contains("listings.csv:2 and listings.csv:3"), why);
        assertTrue(why.contains("same mileage"), why);
        assertEquals(1, Check.of(read).joins().rows().size());
    }

    /** What sellers write of many cars, such as a service book and a price to talk about, shows no two rows to be one car. */
    @Test
    void a_note_that_many_cars_share_joins_none_of_them() {
        for (int seed = 1; seed <= 10; seed++) {
            Random random = new Random(seed);
            StringBuilder rows = new StringBuilder();
            for (int i = 0; i < 150; i++) {
                String note = List.of("full service book, price negotiable", "collector's car with an expert's report", "new tyres", "")
                        .get(random.nextInt(4));
                int year = 2009 + random.nextInt(12);
                int miles = (2021 - year) * 6_000 + random.nextInt(40_000);
                rows.append("car").append(i).append(',').append(LocalDate.of(2025, 11, 1).plusDays(random.nextInt(360))).append(',')
                        .append(List.of("Roadster", "Saloon", "Estate").get(random.nextInt(3))).append(",,").append(year).append(',')
                        .append(miles).append(',').append(50 * (60 + random.nextInt(200))).append(',')
                        .append(List.of("North", "South", "East").get(random.nextInt(3))).append(",\"").append(note).append("\",\n");
            }
            ListingsRead read = read(HEADER + rows);
            assertEquals(150, read.cars().size(), () -> Check.of(read).joins().text());
        }
    }

    @Test
    void a_long_note_that_one_car_alone_has_still_shows_a_mistyped_mileage() {
        String note = ",North,one careful keeper and a folder full of bills,\n";
        String rows = HEADER + "a,2024-01-01,Roadster,S,2010,5123,9000" + note + "b,2024-02-01,Roadster,S,2010,50123,9000" + note;
        assertEquals(12, read(rows + others()).cars().size());
        String elsewhere = "x,2024-01-01,Saloon,,2014,71000,9900" + note + "y,2024-01-03,Estate,,2012,91000,7900" + note;
        assertEquals(15, read(rows + others() + elsewhere).cars().size());
    }

    @Test
    void rows_without_an_id_are_joined_on_facts() {
        ListingsRead read = read(HEADER + ",2024-01-01,Roadster,S,2010,50123,9000,North,,red\n"
                + ",2024-02-01,Roadster,S,2010,50123,9000,North,,red\n" + others());
        assertEquals(12, read.cars().size());
        assertEquals("listings.csv:2", read.cars().get(0).name());
    }

    @Test
    void another_year_or_trim_forbids_a_join() {
        assertEquals(13, read(HEADER + "a,2024-01-01,Roadster,S,2010,50123,9000,North,,red\n"
                + "b,2024-02-01,Roadster,S,2011,50123,9000,North,,red\n" + others()).cars().size());
        assertEquals(13, read(HEADER + "a,2024-01-01,Roadster,S,2010,50123,9000,North,,red\n"
                + "b,2024-02-01,Roadster,L,2010,50123,9000,North,,red\n" + others()).cars().size());
    }

    @Test
    void two_cars_sold_by_private_people_stay_two_and_one_bought_at_auction_may_be_offered_again() {
        String head = "id,vehicle,trim,model_year,mileage_mi,seen_on,price_usd,price_kind,seller,title,damage\n";
        String others = "a3,Sivrette,Plain,2020,51200,2025-07-02,12100,asking,private,clean,none\n"
                + "a4,Sivrette,Plain,2018,70300,2025-07-09,9900,asking,private,clean,none\n"
                + "a5,Sivrette,Plain,2019,61700,2025-07-12,10900,asking,private,clean,none\n";
        assertEquals(5, read(head + "a1,Sivrette,Plain,2022,30400,2025-06-21,14551,sold,private,clean,none\n"
                + "a2,Sivrette,Plain,2022,30400,2025-08-10,16797,sold,private,,front\n" + others).cars().size());
        ListingsRead again = read(head + "a1,Sivrette,Plain,2022,30417,2025-06-21,14551,sold,auction,clean,none\n"
                + "a2,Sivrette,Plain,2022,30417,2025-08-10,16797,asking,trade,clean,none\n" + others);
        assertEquals(4, again.cars().size());
    }

    @Test
    void a_round_mileage_alone_joins_nothing() {
        assertEquals(13, read(HEADER + "a,2024-01-01,Roadster,,2010,100000,9000,,,\nb,2024-02-01,Roadster,,2010,100000,7000,,,\n"
                + others()).cars().size());
    }

    @Test
    void a_mileage_that_fell_joins_nothing() {
        assertEquals(13, read(HEADER + "a,2024-01-01,Roadster,,2010,50123,9000,,,\nb,2024-02-01,Roadster,,2010,49000,9000,,,\n"
                + others()).cars().size());
    }

    @Test
    void two_like_cars_seen_side_by_side_stay_two() {
        ListingsRead read = read(HEADER + ",2024-01-01,Roadster,S,2010,35225,17981,North,,red\n"
                + ",2024-01-01,Roadster,S,2010,35396,17981,North,,red\n,2024-01-15,Roadster,S,2010,35225,17982,North,,red\n"
                + ",2024-01-15,Roadster,S,2010,35396,17982,North,,red\n");
        assertEquals(2, read.cars().size());
    }

    @Test
    void an_advertisement_that_ended_before_the_next_one_of_a_car_is_not_the_end_of_its_offer() {
        ListingsRead read = read("id,seen_on,vehicle,year,price,price_kind,outcome,ended_on\n"
                + "a,2024-05-01,A,2010,9000,asking,withdrawn,2024-05-10\na,2024-08-01,A,2010,8500,asking,,\n");
        assertEquals(92, read.cars().get(0).daysOnOffer().orElseThrow());
    }

    @Test
    void a_car_that_vanished_is_not_sold_and_a_sale_is() {
        ListingsRead read = read("id,seen_on,vehicle,year,price,price_kind,outcome,ended_on\n"
                + "a,2024-01-01,A,2010,9000,asking,gone,2024-01-20\n"
                + "b,2024-01-01,A,2011,9000,asking,,\nb,2024-02-01,A,2011,8500,sold,,\n");
        assertEquals(Outcome.GONE, read.cars().get(0).outcome());
        assertEquals(19, read.cars().get(0).daysOnOffer().orElseThrow());
        assertEquals(Outcome.SOLD, read.cars().get(1).outcome());
        assertEquals(8500, read.cars().get(1).sale().orElseThrow().price().amount());
        assertEquals(0, read.cars().get(1).priceCuts().size());
    }

    /** A world of known cars: joins must find nearly all reposts and hardly ever join two cars. */
    @Test
    void most_reposts_are_found_and_hardly_any_false_ones() {
        Random random = new Random(5);
        StringBuilder text = new StringBuilder("seen_on,vehicle,model_year,mileage_mi,price_usd,region,truth\n");
        int cars = 300;
        List<String> rows = new ArrayList<>();
        for (int car = 0; car < cars; car++) {
            int year = 2005 + random.nextInt(10);
            int miles = 20_000 + random.nextInt(120_000);
            miles = random.nextInt(3) == 0 ? miles / 1000 * 1000 : miles;
            int price = 3000 + random.nextInt(90) * 100;
            String region = "region " + random.nextInt(6);
            int sightings = random.nextInt(3) == 0 ? 2 + random.nextInt(2) : 1;
            int day = random.nextInt(300);
            for (int s = 0; s < sightings; s++) {
                rows.add(LocalDate.of(2024, 1, 1).plusDays(day) + ",Roadster," + year + "," + miles + "," + price + "," + region
                        + ",car" + car);
                day += 7 + random.nextInt(40);
                price = random.nextInt(2) == 0 ? price : price * 95 / 100;
            }
        }
        Collections.shuffle(rows, random);
        rows.forEach(row -> text.append(row).append('\n'));
        ListingsRead withTruth = read(text.toString());
        List<Listing> hidden = new ArrayList<>();
        Map<Origin, String> truth = new HashMap<>();
        for (Listing l : withTruth.listings()) {
            truth.put(l.origin(), l.facts().further().get("truth"));
            hidden.add(new Listing(l.origin(), l.id(), l.seenOn(), l.facts().toBuilder().further(Map.of()).build(), l.price(),
                    l.outcome(),
                    l.endedOn(), l.saved(), l.source(), l.note(), l.remarks()));
        }
        int joined = 0;
        int rightly = 0;
        int all = 0;
        for (int i = 0; i < hidden.size(); i++) {
            for (int j = i + 1; j < hidden.size(); j++) {
                all += truth.get(hidden.get(i).origin()).equals(truth.get(hidden.get(j).origin())) ? 1 : 0;
            }
        }
        for (Car car : CarMatching.match(hidden).cars()) {
            for (int i = 0; i < car.sightings().size(); i++) {
                for (int j = i + 1; j < car.sightings().size(); j++) {
                    joined++;
                    rightly += truth.get(car.sightings().get(i).origin()).equals(truth.get(car.sightings().get(j).origin())) ? 1
                            : 0;
                }
            }
        }
        assertTrue(rightly >= 0.97 * joined, rightly + " of " + joined + " joined pairs are one car");
        assertTrue(rightly >= 0.85 * all, rightly + " of " + all + " pairs of one car are joined");
    }

    @Test
    void the_points_can_be_printed() {
        Table weights = CarMatching.table();
        assertTrue(weights.text().contains("mileage"));
        assertTrue(weights.rows().size() > 20);
    }

    private static String others() {
        StringBuilder text = new StringBuilder();
        for (int i = 0; i < 11; i++) {
            text.append("other").append(i).append(",2024-01-0").append(1 + i % 9).append(",Roadster,,").append(2005 + i)
                    .append(',')
                    .append(60_017 + 3_001 * i).append(',').append(7_000 + 113 * i).append(",South,,blue\n");
        }
        return text.toString();
    }
}
