package swapworth.listing;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.LocalDate;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import swapworth.reading.RowProblem;

/** What an id that stands on several rows tells of the car. The limits are common practice, no source. */
class SharedIdsTest extends ReadingListings {

    private static final String HEADER = "id,seen_on,vehicle,model_year,mileage_mi,price_usd,price_kind,outcome,ended_on\n";
    private static final String OTHERS = "8,2024-01-05,Alder,2014,61000,10500,,,\n9,2024-02-05,Alder,2017,31000,14900,,,\n"
            + "10,2024-03-05,Alder,2013,88000,8800,,,\n11,2024-05-05,Alder,2018,22000,16500,,,\n";

    private static List<String> messages(List<RowProblem> problems) {
        return problems.stream().filter(p -> p.column().equals("id")).map(RowProblem::message).toList();
    }

    @Test
    void an_id_used_again_after_its_car_was_gone_is_two_cars_and_the_end_is_kept() {
        ListingsRead read = read(HEADER + "7,2024-01-05,Alder,2015,45000,12000,,gone,2024-02-01\n"
                + "7,2024-06-10,Alder,2016,118000,7900,,,\n" + OTHERS);
        assertEquals(6, read.cars().size());
        assertEquals(Outcome.GONE, read.cars().get(0).outcome());
        assertEquals(List.of("under this id the mileage grows by 162 % from listings.csv:2 within 157 days; taken for another car. Is one"
                + " of the two mistyped, or does the id stand for two cars?"), messages(read.oddities()));
        ListingsRead without = read(HEADER.replace(",mileage_mi", "") + "7,2024-01-05,Alder,2015,12000,,gone,2024-02-01\n"
                + "7,2024-06-10,Alder,2016,7900,,,\n");
        assertEquals(2, without.cars().size());
        assertEquals(List.of("the id stands for a car recorded as gone on 2024-02-01 in listings.csv:2, 130 days before: whether it is that"
                + " car again is told by the facts, not by the id"), messages(without.oddities()));
    }

    @ParameterizedTest(name = "{0} on 2024-02-01, on offer on {1}: {2}")
    @CsvSource({"sold, 2024-02-15, 1", "sold, 2024-02-16, 2", "gone, 2024-03-17, 1", "gone, 2024-03-18, 2", "withdrawn, 2024-07-30, 1",
        "withdrawn, 2024-07-31, 2"})
    void a_car_may_be_on_offer_again_under_its_id_for_a_while_after_its_end(String outcome, String again, int cars) {
        assertEquals(cars, read(HEADER + "7,2024-01-05,Alder,2015,,12000,," + outcome + ",2024-02-01\n7," + again
                + ",Alder,2015,,11900,,,\n").cars().size());
    }

    @Test
    void the_price_that_was_paid_may_be_told_long_after_the_end_and_once() {
        String paid = "7,2024-06-10,Alder,2015,,11000,sold,sold,\n";
        assertEquals(1, read(HEADER + "7,2024-01-05,Alder,2015,,12000,,gone,2024-02-01\n" + paid).cars().size());
        assertEquals(2, read(HEADER + "7,2024-01-05,Alder,2015,,12000,sold,sold,2024-01-05\n" + paid).cars().size());
    }

    @Test
    void an_outcome_without_a_day_on_every_row_of_an_advertisement_is_no_end_of_the_first_one() {
        assertEquals(1, read(HEADER + "7,2024-01-05,Alder,2015,,12000,,gone,\n7,2024-03-05,Alder,2015,,12000,,gone,\n").cars().size());
        assertEquals(2, read(HEADER + "7,2024-01-05,Alder,2015,,12000,,gone,\n7,2024-03-05,Alder,2015,,12000,,,\n").cars().size());
    }

    @ParameterizedTest(name = "{0} miles, then {1} after {2} days: {3}")
    @CsvSource({"45000, 40500, 7, 1", "45000, 40400, 7, 2", "45000, 49500, 7, 1", "45000, 49600, 7, 2", "45000, 49600, 31, 1",
        "45000, 52000, 60, 1", "900, 1900, 1, 1", "0, 50000, 7, 1", "45000, 450000, 7, 2"})
    void small_slips_and_driving_join_and_a_mileage_that_falls_or_leaps_does_not(int before, int after, int days, int cars) {
        ListingsRead read = read(HEADER + "7,2024-01-01,Alder,2015," + before + ",12000,,,\n7,"
                + LocalDate.of(2024, 1, 1).plusDays(days) + ",Alder,2015," + after + ",9000,,,\n");
        assertEquals(cars, read.cars().size());
        assertEquals(cars - 1, messages(read.oddities()).size());
    }

    @Test
    void a_mistyped_mileage_costs_its_own_row_alone() {
        ListingsRead read = read(HEADER + "7,2024-01-01,Alder,2015,80000,9000,,,\n7,2024-01-08,Alder,2015,8000,9000,,,\n"
                + "7,2024-01-15,Alder,2015,80100,8900,,,\n");
        assertEquals(2, read.cars().size());
        assertEquals(2, read.cars().get(0).sightings().size());
    }

    @Test
    void rows_tell_the_same_cars_in_whatever_order_they_stand() {
        String one = "7,2024-01-05,Alder,2015,45000,12000,,gone,2024-02-01\n";
        String two = "7,2024-06-10,Alder,2016,48000,11900,,,\n";
        assertEquals(6, read(HEADER + one + two + OTHERS).cars().size());
        assertEquals(6, read(HEADER + two + one + OTHERS).cars().size());
    }

    /** Three cars with mileages of their own, numbered anew at each of three looks. */
    @Test
    void where_most_ids_contradict_themselves_none_joins_and_one_question_says_so() {
        String[] cars = {"Alder,2015,45123,12000", "Birch,2012,88231,7000", "Alder,2019,20817,17000"};
        StringBuilder rows = new StringBuilder(HEADER);
        for (int look = 0; look < 3; look++) {
            for (int car = 0; car < 3; car++) {
                rows.append(1 + (car + look) % 3).append(",2024-0").append(1 + look).append("-05,").append(cars[car]).append(",,,\n");
            }
        }
        ListingsRead read = read(rows.toString());
        assertEquals(List.of(3, 3, 3), read.cars().stream().map(c -> c.sightings().size()).toList());
        assertEquals(List.of(), messages(read.oddities()));
        assertEquals(1, messages(read.questions()).size());
        assertTrue(messages(read.questions()).get(0).startsWith("3 of 3 ids that stand on several rows contradict themselves"));
    }
}
