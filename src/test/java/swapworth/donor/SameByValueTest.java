package swapworth.donor;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotEquals;

import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import org.junit.jupiter.api.Test;
import swapworth.listing.CandidateCar;
import swapworth.listing.CarFacts;
import swapworth.listing.Origin;

/** Facts that hold draws are the same where all that they hold is, and print themselves. */
class SameByValueTest {
    private static final CandidateCar CAR = new CandidateCar("hit", CandidateCar.Role.DONOR, CarFacts.of("Velmarch").build(),
            Optional.empty(), new Origin("cars.csv", 2));

    /** Draws from 1,000 on in steps of 100, so that the 80 % range of eleven of them is 1,100 to 1,900; shifted by so much. */
    private static double[] draws(double shift) {
        double[] draws = new double[11];
        Arrays.setAll(draws, i -> 1000 + 100 * i + shift);
        return draws;
    }

    private static void sameByValue(Function<Double, Object> of, String words) {
        assertEquals(of.apply(0.0), of.apply(0.0));
        assertEquals(of.apply(0.0).hashCode(), of.apply(0.0).hashCode());
        assertNotEquals(of.apply(0.0), of.apply(1.0));
        assertFalse(of.apply(0.0).equals("another thing"));
        assertEquals(words, of.apply(0.0).toString());
    }

    private static GearValue gear(double shift) {
        return new GearValue(draws(shift), List.of("engine", "gearbox"), List.of("axle"));
    }

    @Test
    void what_gear_is_worth() {
        sameByValue(SameByValueTest::gear, "engine, gearbox: 1,100 to 1,900; without a price: axle; add offers to parts.csv");
        assertEquals("no row of partout.csv goes into the swap", GearValue.NONE.toString());
        assertEquals(GearValue.NONE, new GearValue(new double[0], List.of(), List.of()));
    }

    @Test
    void a_car_that_may_be_bought() {
        sameByValue(shift -> new CarOption(CAR, 5000, true, draws(shift), draws(0), gear(0), GearValue.NONE, 1, true, 3, 0),
                "hit: landed cost 5,000, net cost 3,100 to 3,900");
        sameByValue(shift -> new CarOption(CAR, 5000, true, draws(0), draws(0), gear(shift), GearValue.NONE, 1, false, 3, 0),
                "hit: landed cost 5,000, left-over parts not counted");
    }

    @Test
    void a_use_of_a_donor_and_a_pulled_set_in_its_place() {
        sameByValue(shift -> new DonorUses.Use("sell it as it lies", draws(shift), "private sold"), "sell it as it lies: leaves 1,100 to"
                + " 1,900");
        sameByValue(shift -> new DonorUses.PulledSet(draws(0), draws(shift), 2),
                "a pulled set for 1,100 to 1,900, cheaper than the whole donor by 1,100 to 1,900, by 2 offers");
    }

    @Test
    void the_two_sides_of_a_car_that_does_not_run() {
        sameByValue(shift -> new RunningBracket(CAR, draws(0), 1, 2, draws(shift), 900, 12, Optional.empty()),
                "hit: as it lies 1,100 to 1,900, from running 1,100 to 1,900");
    }
}
