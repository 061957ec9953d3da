package swapworth.market;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.LocalDate;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import swapworth.listing.CarFacts;
import swapworth.listing.LevelOfTrade;
import swapworth.world.SampleWorld;

/** Questions that no listing can answer, and numbers that are none. */
class EdgesOfQuestionsTest {
    private static final PriceModel MODEL = PriceModel.fit(TestCars.line("Abel", 12_000, 25, 1));
    private static final LocalDate DAY = LocalDate.of(2026, 6, 1);

    private static Valuation value(double miles, LocalDate on) {
        CarFacts car = CarFacts.of("Abel").modelYear(2017).mileage(TestCars.miles(miles)).build();
        return MODEL.value(Subject.of(car, LevelOfTrade.PRIVATE_ASKING, on));
    }

    @Test
    void a_value_prints_itself_with_all_that_must_stand_beside_it() {
        FairValue value = TestCars.fair(value(60_000, DAY));
        assertTrue(value.toString().matches("\\d+,\\d{3}, 80 % range \\d+,\\d{3} to \\d+,\\d{3}, private asking on 2026-06-01, "
                + "by 25 cars of the line 'Abel' and 25 in all"), value.toString());
    }

    @ParameterizedTest
    @ValueSource(doubles = {1e9, 1e300})
    void a_mileage_beyond_all_reckoning_has_no_value(double miles) {
        assertInstanceOf(CannotTell.class, value(miles, DAY));
    }

    @Test
    void a_day_beyond_all_reckoning_has_no_value() {
        assertInstanceOf(CannotTell.class, value(60_000, LocalDate.MAX));
        PriceModel inTime = PriceModel.fit(SampleWorld.generate(600).joinedCars());
        CarFacts car = CarFacts.of(inTime.lines().get(0)).modelYear(2017).build();
        assertInstanceOf(CannotTell.class, inTime.value(Subject.of(car, LevelOfTrade.PRIVATE_ASKING, LocalDate.MIN)));
        assertInstanceOf(CannotTell.class, inTime.value(Subject.of(car, LevelOfTrade.PRIVATE_ASKING, LocalDate.MAX)));
    }

    @Test
    void every_amount_has_its_place_and_what_is_no_number_has_none() {
        FairValue value = TestCars.fair(value(60_000, DAY));
        assertEquals(100, value.percentile(Double.POSITIVE_INFINITY));
        assertEquals(0, value.percentile(-1));
        assertEquals(50, value.percentile(value.median()), 1e-4);
        assertThrows(IllegalArgumentException.class, () -> value.percentile(Double.NaN));
    }

    @Test
    void draws_are_neither_none_nor_more_than_fit() {
        assertThrows(IllegalArgumentException.class, () -> MODEL.draws(0, 1));
        assertThrows(IllegalArgumentException.class, () -> MODEL.draws(Integer.MAX_VALUE, 1));
        assertEquals(3, MODEL.draws(3, 1).count());
    }
}
