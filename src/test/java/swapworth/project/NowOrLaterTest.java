package swapworth.project;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.LocalDate;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.function.Executable;
import swapworth.statistics.UncertainSum;

/** Now or later against sums by hand. */
class NowOrLaterTest {
    private static final int COUNT = 5000;

    private static double[] all(double amount) {
        double[] draws = new double[COUNT];
        Arrays.fill(draws, amount);
        return draws;
    }

    private static NowOrLater.Leg leg(String name, double now, double... factors) {
        return new NowOrLater.Leg(name, all(now), Arrays.stream(factors).mapToObj(NowOrLaterTest::all).toList());
    }

    @Test
    void waiting_brings_what_the_purchase_falls_less_what_the_exit_falls() {
        NowOrLater choice = NowOrLater.of("USD", List.of(leg("donor", 7000, 0.95, 0.9), leg("recipient", 10_000, 0.98, 0.96),
                leg("parts", -6000, 0.97, 0.94)), leg("exit", 13_000, 0.98, 0.96), List.of());
        // one month: 350 + 200 - 180 = 370 saved, 260 lost; two months: 700 + 400 - 360 = 740 saved, 520 lost
        assertEquals(110, choice.gain(1)[0], 1e-9);
        assertEquals(220, choice.gain(2)[0], 1e-9);
        assertEquals(110, choice.paysBelow(2), 1e-9);
        assertEquals(1, choice.together(2));
        // buying at 11000 - 220 now does as well as the best month to come
        assertEquals(10_780, choice.buyWhateverHappens(), 1e-9);
        String text = choice.tables().get(0).html();
        assertTrue(text.contains("usually move together") && text.contains("pays if a month costs less than"), text);
    }

    @Test
    void legs_that_move_apart_or_stand_still_are_not_said_to_move_together() {
        for (double exit : new double[] {1.03, 1}) {
            NowOrLater apart = NowOrLater.of("USD", List.of(leg("car", 10_000, 0.97)), leg("exit", 10_000, exit), List.of());
            assertEquals(0, apart.together(1));
            String text = apart.tables().get(0).html();
            assertTrue(text.contains("as a rule they do not move together") && !text.contains("usually move together"), text);
        }
    }

    @Test
    void a_month_that_is_not_compared_is_refused() {
        NowOrLater choice = NowOrLater.of("USD", List.of(leg("car", 10_000, 0.97)), leg("exit", 10_000, 0.97), List.of());
        assertThrows(IllegalArgumentException.class, () -> choice.gain(0));
        assertThrows(IllegalArgumentException.class, () -> choice.paysBelow(2));
        assertThrows(IllegalArgumentException.class, () -> choice.together(99));
    }

    // Trade arithmetic: if the exit car and the bought car drift alike, the gain is about the drift times purchase less exit.
    @Test
    void legs_that_drift_alike_leave_the_drift_on_their_difference() {
        NowOrLater choice = NowOrLater.of("USD", List.of(leg("car", 10_000, 0.97)), leg("exit", 10_000, 0.97), List.of());
        assertEquals(0, choice.gain(1)[0], 1e-9);
        NowOrLater more = NowOrLater.of("USD", List.of(leg("car", 15_000, 0.97)), leg("exit", 10_000, 0.97), List.of());
        assertEquals(0.03 * 5_000, more.gain(1)[0], 1e-9);
    }

    // By hand: waits bring 300, 500 and 400; the exit stands still.
    @Test
    void who_waits_does_so_until_the_day_after_which_a_wait_brings_less() {
        NowOrLater choice = NowOrLater.of("USD", List.of(leg("car", 10_000, 0.97, 0.95, 0.96)), leg("exit", 9_000, 1, 1, 1), List.of())
                .from(LocalDate.parse("2026-10-30"));
        assertEquals(OptionalInt.of(2), choice.longestWait());
        assertEquals("Buy whatever happens at a net purchase cost of 9,500 or less: in nine draws of ten no coming month does better. If"
                + " the price does not come to that, wait until 2026-12-30 at the latest, 2 months: by the middle that wait brings USD"
                + " 500 (80 % range 500 to 500), and a longer one less; what a month costs you makes the day an earlier one.",
                choice.rule());
        assertTrue(choice.tables().get(0).text().contains("2026-12-30"), choice.tables().get(0).text());
    }

    // By hand: in two months the car falls by 500 and the exit by 800, so that buying then leaves 300 less than buying now for 10,000.
    @Test
    void the_price_to_buy_at_takes_into_account_what_the_exit_value_loses() {
        NowOrLater choice = NowOrLater.of("USD", List.of(leg("car", 10_000, 0.99, 0.95)), leg("exit", 8_000, 1, 0.9), List.of());
        assertEquals(9_900, choice.buyWhateverHappens(), 1e-9);
        NowOrLater second = NowOrLater.of("USD", List.of(leg("car", 10_000, 1.05, 0.95)), leg("exit", 8_000, 0.95, 0.9), List.of());
        assertEquals(10_300, second.buyWhateverHappens(), 1e-9);
        assertEquals(OptionalInt.of(1), choice.longestWait());
        assertEquals(OptionalInt.empty(), second.longestWait());
        assertTrue(choice.rule().contains("wait 1 month at the latest"), choice.rule());
    }

    @Test
    void of_two_waits_that_bring_the_same_the_shorter_is_the_longest_that_pays_and_without_months_there_is_no_rule() {
        NowOrLater choice = NowOrLater.of("USD", List.of(leg("car", 10_000, 0.95, 0.95)), leg("exit", 8_000, 1, 1), List.of());
        assertEquals(OptionalInt.of(1), choice.longestWait());
        assertEquals("", NowOrLater.of("USD", List.of(leg("car", 10_000)), leg("exit", 8_000), List.of()).rule());
    }

    @Test
    void where_no_wait_brings_anything_no_day_is_named() {
        NowOrLater choice = NowOrLater.of("USD", List.of(leg("car", 10_000, 1.01, 1.02)), leg("exit", 9_000, 1, 1), List.of());
        assertEquals(OptionalInt.empty(), choice.longestWait());
        assertTrue(choice.rule().endsWith("nothing in these prices speaks for waiting."), choice.rule());
        NowOrLater falling = NowOrLater.of("USD", List.of(leg("car", 10_000, 0.99, 0.98)), leg("exit", 9_000, 1, 1), List.of());
        assertTrue(falling.rule().contains("does not come to that, wait 2 months at the latest: by the middle"), falling.rule());
        assertTrue(falling.rule().contains("as far as is looked ahead"), falling.rule());
    }

    @Test
    void at_the_trigger_nine_in_ten_months_to_come_do_no_better() {
        double[] state = UncertainSum.normals(COUNT, 2);
        double[] factors = Arrays.stream(state).map(z -> Math.exp(0.05 * z)).toArray();
        NowOrLater choice = NowOrLater.of("USD", List.of(new NowOrLater.Leg("car", all(10_000), List.of(factors))),
                new NowOrLater.Leg("exit", all(12_000), List.of(all(1))), List.of());
        // the 10 % quantile of 10000 exp(0.05 z)
        assertEquals(10_000 * Math.exp(-0.05 * 1.2815515655446004), choice.buyWhateverHappens(), 30);
    }

    @Test
    void legs_of_different_lengths_are_refused() {
        assertThrows(IllegalArgumentException.class, () -> NowOrLater.of("USD", List.of(leg("car", 1, 1, 1)), leg("exit", 1, 1),
                List.of()));
    }

    private static void refused(String words, Executable made) {
        assertEquals(words, assertThrows(IllegalArgumentException.class, made).getMessage());
    }

    @Test
    void unequal_numbers_of_draws_are_refused_where_they_are_given() {
        double[] few = new double[3];
        refused("the factors of 'car' after 2 months: 3 draws beside 5000; draw i of all must be one state of the market",
                () -> new NowOrLater.Leg("car", all(1), List.of(all(1), few)));
        NowOrLater.Leg exit = leg("exit", 1, 1);
        refused("'car' beside 'exit': 3 draws beside 5000; draw i of all must be one state of the market",
                () -> NowOrLater.of("USD", List.of(new NowOrLater.Leg("car", few, List.of(few))), exit, List.of()));
        refused("the net purchase cost now: 3 draws beside 5000; draw i of all must be one state of the market",
                () -> new NowOrLater("USD", few, all(1), List.of(), List.of(), List.of(), Optional.empty(), ""));
        refused("the exit value after 1 month: 3 draws beside 5000; draw i of all must be one state of the market",
                () -> new NowOrLater("USD", all(1), all(1), List.of(all(1)), List.of(few), List.of(), Optional.empty(), ""));
    }
}
