package swapworth.chart;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;
import swapworth.statistics.Survival;

class TimeChartsTest {

    @Test
    void a_curve_ends_where_fewer_than_five_cars_are_left() {
        // Six cars sold on the days 1 to 6: six are left before the first sale, five before the second, four before the third.
        Curve curve = TimeCharts.steps("all", Survival.of(new double[] {1, 2, 3, 4, 5, 6}, new boolean[] {true, true, true, true, true,
            true})).orElseThrow();
        assertArrayEquals(new double[] {0, 1, 2}, curve.x());
        assertArrayEquals(new double[] {100, 100 * 5 / 6.0, 100 * 4 / 6.0}, curve.middle(), 1e-9);
        assertEquals("all (6)", curve.name());
    }

    // Greenwood's error of 5/6 of six is sqrt(1/30) of it; limits of ln(-ln S) by hand: 5/6 to the power exp(+-1.96 sqrt(1/30) / ln 1.2).
    @Test
    void a_curve_has_the_95_percent_band_of_its_estimate() {
        Curve curve = TimeCharts.steps("all", Survival.of(new double[] {1, 2, 3, 4, 5, 6}, new boolean[] {true, false, false, false, false,
            false})).orElseThrow();
        double reach = Math.exp(1.959964 * Math.sqrt(1 / 30.0) / -Math.log(5 / 6.0));
        assertArrayEquals(new double[] {100, 100 * Math.pow(5 / 6.0, reach), 100 * Math.pow(5 / 6.0, reach)}, curve.low(), 1e-3);
        assertArrayEquals(new double[] {100, 100 * Math.pow(5 / 6.0, 1 / reach), 100 * Math.pow(5 / 6.0, 1 / reach)}, curve.high(), 1e-3);
        assertEquals("95 % range", curve.bandName());
    }

    @Test
    void a_curve_of_few_cars_or_without_a_sale_says_nothing_and_is_not_drawn() {
        assertTrue(TimeCharts.steps("near", Survival.of(new double[] {1, 2, 3, 4}, new boolean[] {true, true, true, true})).isEmpty());
        assertTrue(TimeCharts.steps("near", Survival.of(new double[] {1, 2, 3, 4, 5, 6}, new boolean[6])).isEmpty());
    }

    @Test
    void a_sale_on_the_day_of_the_first_sighting_lets_the_curve_begin_lower() {
        Curve curve = TimeCharts.steps("all", Survival.of(new double[] {0, 2, 3, 4, 5, 6}, new boolean[] {true, true, true, true, true,
            true})).orElseThrow();
        assertArrayEquals(new double[] {0, 2}, curve.x());
        assertArrayEquals(new double[] {100 * 5 / 6.0, 100 * 4 / 6.0}, curve.middle(), 1e-9);
    }
}
