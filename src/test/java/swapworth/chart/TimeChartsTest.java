package swapworth.chart;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;

import org.junit.jupiter.api.Test;
import swapworth.statistics.Survival;

class TimeChartsTest {

    @Test
    void a_curve_ends_where_fewer_than_five_cars_are_left() {
        // Six cars sold on the days 1 to 6: six are left before the first sale, five before the second, four before the third.
        Points curve = TimeCharts.steps("all", Survival.of(new double[] {1, 2, 3, 4, 5, 6}, new boolean[] {true, true, true, true, true,
            true}));
        assertArrayEquals(new double[] {0, 1, 2}, curve.x());
        assertArrayEquals(new double[] {100, 100 * 5 / 6.0, 100 * 4 / 6.0}, curve.y(), 1e-9);
        assertEquals("all (6)", curve.name());
    }
}
