package swapworth.project;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.function.Executable;
import swapworth.market.Range;

/** Draws that somebody reckoned himself are refused in plain words where nothing can be told from them. */
class OwnDrawsTest {
    private static final Forecast FORECAST = Forecast.of(Ledger.read(Path.of("sample-listings", "ledger.csv")));

    private static String refused(Executable asked) {
        return assertThrows(IllegalArgumentException.class, asked).getMessage();
    }

    @Test
    void too_few_draws_are_told_against_the_draws_that_they_stand_beside() {
        double[] two = {9000, 9500};
        assertEquals("the money in it: 10000 draws beside 2; draw i of all must be one state of the market",
                refused(() -> Equity.of(two, FORECAST)));
        assertEquals("the value of the finished car: 2 draws beside 10000; draw i of all must be one state of the market",
                refused(() -> RedoCost.of(two, FORECAST)));
    }

    @Test
    void a_draw_that_is_no_number_gives_no_chance_of_anything() {
        double[] value = new double[FORECAST.count()];
        Arrays.fill(value, 12_000);
        value[7] = Double.NaN;
        assertEquals("the value of the finished car: draw 7 is NaN, not a finite number", refused(() -> Equity.of(value, FORECAST)));
        assertEquals("the value of the finished car: draw 7 is NaN, not a finite number", refused(() -> RedoCost.of(value, FORECAST)));
        assertEquals("the value of the finished car: draw 7 is NaN, not a finite number",
                refused(() -> FinishOrStop.of(value, FORECAST, List.of())));
    }

    @Test
    void a_range_is_asked_for_by_a_share_and_not_by_per_cent() {
        double[] draws = {1, 2, 3, 4, 5};
        assertEquals(new Range(1.4, 4.6), Forecast.range(draws, 0.80));
        assertEquals("a range holds a share of the draws above 0 and below 1, such as 0.80, not 80.0",
                refused(() -> Forecast.range(draws, 80)));
        assertEquals("no draw has no range", refused(() -> Forecast.range(new double[0], 0.80)));
    }
}
