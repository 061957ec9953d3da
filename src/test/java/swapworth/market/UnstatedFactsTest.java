package swapworth.market;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;
import java.util.function.BiFunction;
import org.junit.jupiter.api.Test;
import swapworth.listing.Car;
import swapworth.listing.CarFacts;
import swapworth.listing.LevelOfTrade;

/** A trim or a region that nobody stated is one of those that there are, and no average of them. */
class UnstatedFactsTest {
    private static final LocalDate DAY = LocalDate.of(2025, 3, 1);

    private static CarFacts.Builder car(int k) {
        return CarFacts.of("Sivrette").modelYear(2012 + k % 8).mileage(TestCars.miles(60_000 + 3_000 * k));
    }

    /** Cars of two kinds, 40 log points apart, beside which nothing scatters much. */
    private static PriceModel model(BiFunction<CarFacts.Builder, Boolean, CarFacts.Builder> kind) {
        SplittableRandom random = new SplittableRandom(3);
        List<Car> cars = new ArrayList<>();
        for (int k = 0; k < 24; k++) {
            boolean dear = k % 2 == 0;
            double price = 6_000 * Math.exp((dear ? 0.4 : 0) + 0.05 * (k % 8) - 0.01 * k + 0.04 * (random.nextDouble() - 0.5));
            cars.add(TestCars.car(k, kind.apply(car(k), dear).build(), price));
        }
        return PriceModel.fit(cars);
    }

    private static FairValue value(PriceModel model, CarFacts car) {
        return TestCars.fair(model.value(Subject.of(car, LevelOfTrade.PRIVATE_ASKING, DAY)));
    }

    private static void assertMayBe(FairValue unstated, FairValue... either) {
        for (FairValue one : either) {
            assertTrue(unstated.range(0.80).holds(one.median()), one.median() + " in " + unstated.range(0.80));
        }
    }

    @Test
    void a_car_without_a_trim_may_be_of_either_where_others_state_theirs() {
        PriceModel model = model((car, dear) -> car.trim(dear ? "Fitted" : "Plain"));
        FairValue unstated = value(model, car(9).build());
        assertMayBe(unstated, value(model, car(9).trim("Fitted").build()), value(model, car(9).trim("Plain").build()));
        assertEquals("to know its trim would narrow this range most", unstated.narrowedBy());
        assertEquals(unstated.median(), value(model, car(9).trim("Sport").build()).median(), 1e-6, "as one of a trim never seen");
    }

    @Test
    void a_car_without_a_region_may_stand_in_either_where_others_say_theirs() {
        PriceModel model = model((car, dear) -> car.region(dear ? "Norrowfen" : "Eastmarl"));
        assertMayBe(value(model, car(9).build()), value(model, car(9).region("Norrowfen").build()),
                value(model, car(9).region("Eastmarl").build()));
    }

    @Test
    void where_no_car_states_a_trim_none_is_missed() {
        PriceModel model = model((car, dear) -> car.title(dear ? swapworth.listing.Title.CLEAN : swapworth.listing.Title.SALVAGE));
        FairValue plain = value(model, car(9).title(swapworth.listing.Title.CLEAN).build());
        assertTrue(plain.range(0.80).high() / plain.range(0.80).low() < 1.25, plain.range(0.80).toString());
    }
}
