package swapworth.project;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.YearMonth;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import swapworth.assumptions.Assumption;
import swapworth.assumptions.Assumptions;
import swapworth.table.Table;

/** What keeping a finished car costs, against sums by hand. */
class KeepingTest {
    private static final YearMonth ON = YearMonth.of(2026, 11);

    private static double[] all(double amount) {
        double[] draws = new double[500];
        Arrays.fill(draws, amount);
        return draws;
    }

    private static Optional<Keeping> keeping(double... factors) {
        return keeping(Assumptions.defaults(), factors);
    }

    private static Optional<Keeping> keeping(Assumptions assumptions, double... factors) {
        List<double[]> then = Arrays.stream(factors).mapToObj(KeepingTest::all).toList();
        return Keeping.of("USD", new NowOrLater.Leg("exit", all(12_000), then), ON, with(assumptions, "capital_rate", 8), 1);
    }

    private static Assumptions with(Assumptions assumptions, String name, double middle) {
        Assumption a = assumptions.get(name);
        return assumptions.with(new Assumption(name, a.question(), middle, 0, a.unit(), "test", ""));
    }

    @Test
    void it_loses_what_market_and_age_take_off_and_what_the_money_in_it_costs() {
        Keeping keeping = keeping(0.98, 0.96, 0.94).orElseThrow();
        // 12,000 x 6 % in three months; 12,000 x 8 % a year.
        assertEquals(240, keeping.loses()[0], 1e-9);
        assertEquals(80, keeping.capital()[0], 1e-9);
        Table table = keeping.table();
        assertEquals(List.of("240", "80", "320"), table.rows().stream().map(row -> row.get(1).shown()).toList());
        assertTrue(table.title().contains("from 2026-11 over 3 months"), table.title());
    }

    @Test
    void a_car_that_gains_loses_less_than_nothing() {
        assertEquals(-120, keeping(1.01, 1.02).orElseThrow().loses()[0], 1e-9);
    }

    @Test
    void the_value_is_found_anew_when_it_has_moved_by_a_twentieth_up_or_down() {
        String falls = keeping(0.98, 0.96, 0.94).orElseThrow().sentence();
        assertTrue(falls.contains("moves by 5 % within 3 months, by the middle: find it anew in 2027-02"), falls);
        assertEquals(Optional.of(2), keeping(1.03, 1.06).orElseThrow().anew());
        Keeping still = keeping(0.99, 0.98).orElseThrow();
        assertEquals(Optional.empty(), still.anew());
        assertTrue(still.sentence().contains("less than 5 % within 2 months") && still.sentence().contains("2027-01 all the same"),
                still.sentence());
    }

    @Test
    void by_how_much_it_may_move_is_shown_as_it_was_stated() {
        String often = keeping(with(Assumptions.defaults(), "revalue_at", 0.5), 0.997, 0.994).orElseThrow().sentence();
        assertTrue(often.contains("moves by 0.5 % within 2 months, by the middle: find it anew in 2027-01"), often);
        String seldom = keeping(with(Assumptions.defaults(), "revalue_at", 7.5), 0.93).orElseThrow().sentence();
        assertTrue(seldom.contains("moves by less than 7.5 % within 1 month, by the middle"), seldom);
    }

    @Test
    void what_is_driven_meanwhile_is_said_not_to_be_in_it() {
        assertTrue(String.join(" ", keeping(0.98).orElseThrow().table().notes()).contains("what you drive meanwhile comes on top"));
    }

    @Test
    void without_an_outlook_nothing_is_said() {
        assertEquals(Optional.empty(), keeping());
    }
}
