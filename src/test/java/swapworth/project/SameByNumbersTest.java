package swapworth.project;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotEquals;

import java.math.BigDecimal;
import java.time.LocalDate;
import java.time.YearMonth;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import org.junit.jupiter.api.Test;
import swapworth.donor.NoBid;

/** Results that hold draws are the same where all that they hold is, and print themselves. */
class SameByNumbersTest {

    /** Draws from 1,000 on in steps of 100, so that the 80 % range of eleven of them is 1,100 to 1,900; shifted by so much. */
    private static double[] draws(double shift) {
        double[] draws = new double[11];
        Arrays.setAll(draws, i -> 1000 + 100 * i + shift);
        return draws;
    }

    private static double[] noughts() {
        return new double[11];
    }

    private static void sameByNumbers(Function<Double, Object> of, String words) {
        assertEquals(of.apply(0.0), of.apply(0.0));
        assertEquals(of.apply(0.0).hashCode(), of.apply(0.0).hashCode());
        assertNotEquals(of.apply(0.0), of.apply(1.0));
        assertFalse(of.apply(0.0).equals("another thing"));
        assertEquals(words, of.apply(0.0).toString());
    }

    @Test
    void now_or_later_and_its_legs() {
        sameByNumbers(shift -> new NowOrLater.Leg("donor", draws(shift), List.of(draws(0))),
                "donor: now 1,500 (80 % range 1,100 to 1,900), 1 month ahead");
        sameByNumbers(shift -> new NowOrLater.Leg("donor", draws(0), List.of(draws(0), draws(shift))),
                "donor: now 1,500 (80 % range 1,100 to 1,900), 2 months ahead");
        String words = "Waiting 1 month to buy brings USD 0 before what the wait costs you (80 % range 0 to 0, below 0 where it loses): the"
                + " chance that it brings anything is less than 1 %.";
        sameByNumbers(shift -> new NowOrLater("USD", draws(0), draws(0), List.of(draws(shift)), List.of(draws(shift)), List.of(),
                Optional.empty(), ""), words);
        sameByNumbers(shift -> new NowOrLater("USD", draws(shift), draws(shift), List.of(draws(shift)), List.of(draws(shift)),
                List.of("a remark"), Optional.empty(), ""), words);
    }

    @Test
    void what_is_left() {
        sameByNumbers(shift -> new Equity("USD", draws(0), noughts(), draws(shift), noughts(), 20, Optional.empty()),
                "left in cash USD 1,500 (80 % range 1,100 to 1,900)");
        sameByNumbers(shift -> new Equity("USD", draws(0), noughts(), noughts(), draws(shift), 20, Optional.empty()),
                "left in cash USD 1,500 (80 % range 1,100 to 1,900)");
    }

    @Test
    void finishing_and_a_way_to_stop() {
        sameByNumbers(shift -> new FinishOrStop.Exit("sold as it stands", draws(shift), "by the listings"),
                "sold as it stands: brings 1,500 (80 % range 1,100 to 1,900)");
        sameByNumbers(shift -> new FinishOrStop(LocalDate.of(2026, 5, 4), "USD", draws(0), noughts(), noughts(), 20,
                List.of(new FinishOrStop.Exit("sold as it stands", draws(shift), "by the listings"))),
                "finishing brings USD 1,500 (80 % range 1,100 to 1,900), as of 2026-05-04");
    }

    @Test
    void doing_it_again() {
        sameByNumbers(shift -> new RedoCost("USD", draws(0), noughts(), 20, noughts(), draws(shift), List.of(), Optional.empty(),
                LocalDate.of(2026, 5, 4)),
                "to do it again USD 1,500 (80 % range 1,100 to 1,900)");
    }

    @Test
    void an_alternative() {
        sameByNumbers(shift -> new Alternative("another car", draws(0), draws(shift), noughts(), 0, List.of(), List.of()),
                "another car: net cost 1,500 (80 % range 1,100 to 1,900)");
        sameByNumbers(shift -> new Alternative("another car", draws(0), noughts(), draws(shift), 0, List.of(), List.of(7)),
                "another car: net cost 1,500 (80 % range 1,100 to 1,900), 1 row not counted");
    }

    @Test
    void the_price_at_which_to_walk_away() {
        NoBid none = new NoBid(BigDecimal.TEN, "no bid");
        sameByNumbers(shift -> new WalkAway.Price("hit", BigDecimal.TEN, BigDecimal.TEN, "other hit", draws(shift), none, List.of()),
                "hit: landed at most 1,500 (80 % range 1,100 to 1,900), else other hit");
    }

    @Test
    void the_month_with_the_most_cash() {
        sameByNumbers(shift -> new Forecast.Peak(draws(shift), YearMonth.of(2026, 5), 0.8),
                "1,500 (80 % range 1,100 to 1,900) at the end of 2026-05 (80 % of the draws)");
    }
}
