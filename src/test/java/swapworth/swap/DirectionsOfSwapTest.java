package swapworth.swap;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import java.util.function.BiFunction;
import org.junit.jupiter.api.Test;
import swapworth.InOneLine;
import swapworth.listing.CarFacts;
import swapworth.listing.LevelOfTrade;
import swapworth.listing.PriceIncludes;
import swapworth.market.PriceModel;
import swapworth.market.TestCars;

/** Which way the value of a finished swap moves when one thing that is stated of it is changed, in invented worlds. */
class DirectionsOfSwapTest {
    private static final int WORLDS = 3;

    /** A world with a finished car in it, and what its parts are about worth. */
    private record Case(PriceModel model, SwapOptions options, FinishedCar car, SwapCost parts, double level) {

        static Case of(int seed) {
            Random random = new Random(seed);
            SwapWorld.Size size = SwapWorld.Size.values()[seed % 2];
            SwapWorld world = SwapWorld.drawn(size, 7000 + seed, 0.1 * Math.abs(random.nextGaussian()));
            List<int[]> unseen = world.unseen();
            int[] pair = unseen.get(random.nextInt(unseen.size()));
            SwapWorld.Swap swap = world.swap(pair[0], pair[1], 0.1 * random.nextGaussian());
            PriceModel model = PriceModel.fit(world.cars());
            SwapOptions options = SwapValue.options().assuming(swap.assumptions()).with(model.draws(4000, 1));
            if (!swap.factory().isEmpty()) {
                options = options.withFactoryEquivalent(swap.factory().get(0));
            }
            double level = Math.exp(swap.logLevel());
            SwapCost parts = SwapCost.unstated().withGear(stated(level * (0.15 + 0.4 * random.nextDouble())))
                    .withWork(stated(level * (0.1 + 0.5 * random.nextDouble())));
            SwapCost cost = random.nextBoolean() ? parts.withRemoved(stated(0.1 * level * random.nextDouble())) : parts;
            return new Case(model, options, swap.car(), cost, level);
        }

        double value(FinishedCar other) {
            return ((SwapValue) options.value(other, model)).median();
        }

        double value(SwapCost cost) {
            return value(car.with(cost));
        }
    }

    private static UnsureAmount stated(double amount) {
        return UnsureAmount.stated(amount, 0.2, "the test");
    }

    private static SwapCost losing(SwapCost cost, double amount, double share) {
        return cost.withLosses(List.of(new SwapCost.Loss("a", amount, 0), new SwapCost.Loss("b", 0, share)));
    }

    /** Goes through growing amounts, as shares of the level; no step may move the value the wrong way, and together they do move it. */
    private static void moves(int sign, double[] shares, BiFunction<Case, Double, SwapCost> cost) {
        for (int seed = 0; seed < WORLDS; seed++) {
            Case one = Case.of(seed);
            double first = one.value(cost.apply(one, shares[0]));
            double before = first;
            for (double share : shares) {
                double now = one.value(cost.apply(one, share));
                assertTrue(sign * (now - before) >= -1e-6 * before, "world " + seed + ", " + share + " of the level: " + now + " after "
                        + before);
                before = now;
            }
            assertTrue(sign * (before - first) > 0.01 * first, "world " + seed + " moves from " + first + " to " + before);
        }
    }

    @Test
    void a_larger_loss_never_raises_the_value() {
        double[] shares = {0, 0.005, 0.05, 0.2, 0.4, 0.6, 0.7, 0.8, 0.9, 1, 1.2, 1.5, 2};
        moves(-1, shares, (one, share) -> losing(one.parts(), share * one.level(), 0));
        moves(-1, shares, (one, share) -> losing(one.parts(), share * one.level(), 0.05));
    }

    @Test
    void a_loss_of_a_larger_share_never_raises_the_value() {
        double[] shares = {0, 0.01, 0.1, 0.3, 0.5, 0.7, 0.9};
        moves(-1, shares, (one, share) -> losing(one.parts(), 0, share));
        moves(-1, shares, (one, share) -> losing(one.parts(), 0.3 * one.level(), share));
    }

    @Test
    void gear_that_costs_more_never_lowers_the_value_and_gear_taken_out_that_brings_more_never_raises_it() {
        double[] shares = {0.01, 0.05, 0.1, 0.2, 0.3, 0.4, 0.5, 0.6};
        moves(1, shares, (one, share) -> one.parts().withGear(stated(share * one.level())));
        moves(1, shares, (one, share) -> losing(one.parts(), 0.4 * one.level(), 0).withGear(stated(share * one.level())));
        moves(-1, shares, (one, share) -> one.parts().withRemoved(stated(share * one.level())));
    }

    // Nobody knows which share of much work is paid for: beyond half of the level it makes the approach less sure than it raises it.
    @Test
    void work_that_costs_more_never_lowers_the_value_up_to_half_of_it() {
        moves(1, new double[] {0.01, 0.05, 0.1, 0.2, 0.3, 0.4, 0.5}, (one, share) -> one.parts().withWork(stated(share * one.level())));
    }

    @Test
    void no_small_loss_moves_the_value_by_much() {
        for (int seed = 0; seed < WORLDS; seed++) {
            Case one = Case.of(seed);
            for (double share : new double[] {0, 0.1, 0.3, 0.5, 0.8, 1, 1.3}) {
                double before = one.value(losing(one.parts(), share * one.level(), 0));
                double after = one.value(losing(one.parts(), (share + 0.001) * one.level(), 0));
                assertEquals(before, after, 0.002 * one.level(), "world " + seed + " at " + share);
            }
        }
    }

    @Test
    void a_loss_counts_once_however_it_is_cut() {
        Case one = Case.of(3);
        SwapCost whole = one.parts().withLosses(List.of(new SwapCost.Loss("all", 0.3 * one.level(), 0)));
        SwapCost cut = one.parts().withLosses(List.of(new SwapCost.Loss("a", 0.1 * one.level(), 0), new SwapCost.Loss("b",
                0.2 * one.level(), 0)));
        assertEquals(one.value(whole), one.value(cut), 1e-6 * one.level());
        assertTrue(one.value(one.parts()) - one.value(whole) < 0.3 * one.level());
    }

    @Test
    void a_loss_that_no_approach_takes_off_is_said_to_move_nothing() {
        Case one = Case.of(1);
        SwapCost lossy = losing(one.parts(), 0.1 * one.level(), 0);
        SwapOptions others = one.options().weighted(Map.of(Approach.Kind.BODY_AND_GEAR, 1.0), "the test");
        String words = InOneLine.of(((SwapValue) others.value(one.car().with(lossy), one.model())).result().text());
        assertTrue(words.contains("The listed losses move nothing"), words);
        String counted = InOneLine.of(((SwapValue) one.options().value(one.car().with(lossy), one.model())).result().text());
        assertFalse(counted.contains("The listed losses move nothing"), counted);
    }

    @Test
    void a_dearer_swap_of_the_same_pair_never_lowers_the_value_and_an_offer_that_was_refused_neither() {
        for (int seed = 0; seed < WORLDS; seed++) {
            Case one = Case.of(seed);
            double seen = 0;
            double refused = 0;
            for (double share : new double[] {0.5, 0.7, 0.9, 1, 1.1, 1.3, 1.6}) {
                double price = share * one.level();
                double bySeen = ((SwapValue) one.options().withSeen(List.of(new SeenSwap("seen", one.car().facts(), BuiltBy.OWNER, price,
                        SeenSwap.Kind.SOLD, LevelOfTrade.PRIVATE_SOLD, PriceIncludes.NEITHER, Optional.of(SwapWorld.DAY),
                        Optional.empty()))).value(one.car(), one.model())).median();
                double byRefused = ((SwapValue) one.options().withOffers(List.of(OwnOffer.refused(price, SwapWorld.DAY)))
                        .value(one.car(), one.model())).median();
                assertTrue(bySeen >= seen, "world " + seed + " at " + share + ": " + bySeen + " after " + seen);
                seen = bySeen;
                if (share <= 1.3) {
                    assertTrue(byRefused >= refused, "world " + seed + " at " + share + ": " + byRefused + " after " + refused);
                    refused = byRefused;
                }
            }
        }
    }

    @Test
    void a_longer_time_without_a_taker_never_raises_the_value() {
        for (int seed = 0; seed < WORLDS; seed++) {
            Case one = Case.of(seed);
            double before = Double.MAX_VALUE;
            for (double days : new double[] {1, 10, 30, 60, 120, 240}) {
                double now = ((SwapValue) one.options().withOffers(List.of(OwnOffer.noTaker(1.1 * one.level(), days)))
                        .value(one.car(), one.model())).median();
                assertTrue(now <= before, "world " + seed + " after " + days + " days: " + now + ", before " + before);
                before = now;
            }
        }
    }

    @Test
    void more_miles_of_chassis_or_gear_never_raise_the_value() {
        for (int seed = 0; seed < WORLDS; seed++) {
            Case one = Case.of(seed);
            double[] before = {Double.MAX_VALUE, Double.MAX_VALUE};
            for (double miles : new double[] {20_000, 21_000, 40_000, 80_000, 120_000, 180_000}) {
                CarFacts facts = one.car().facts();
                double[] now = {one.value(of(one.car(), facts.toBuilder().mileage(TestCars.miles(miles)).build())),
                        one.value(of(one.car(), facts.toBuilder().gearMileage(TestCars.miles(miles)).build()))};
                assertTrue(now[0] <= before[0] && now[1] <= before[1], "world " + seed + " at " + miles + ": " + Arrays.toString(now)
                        + " after " + Arrays.toString(before));
                before = now;
            }
        }
    }

    private static FinishedCar of(FinishedCar car, CarFacts facts) {
        return new FinishedCar(car.name(), facts, car.gearLine(), car.gearYear(), car.builtBy(), car.papers(), car.optionsKept(),
                car.optionsLost(), car.faults(), car.cost(), car.recipient(), car.donor());
    }
}
