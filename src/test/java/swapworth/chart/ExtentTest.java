package swapworth.chart;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.Random;
import org.junit.jupiter.api.Test;

class ExtentTest {

    @Test
    void one_price_typed_ten_times_too_high_does_not_stretch_the_span() {
        double[] prices = {9_000, 9_500, 10_200, 11_000, 12_000, 13_500, 127_500};
        Extent extent = new Extent(ValueScale.LINEAR);
        extent.includeMost(prices);
        assertEquals(9_000, extent.low());
        assertEquals(13_500, extent.high());
        Extent ratios = new Extent(ValueScale.LOGARITHMIC);
        ratios.includeMost(prices);
        assertEquals(13_500, ratios.high());
    }

    @Test
    void ordinary_prices_all_count() {
        Random random = new Random(2);
        double[] prices = random.doubles(500).map(u -> 4_000 + 20_000 * u * u).toArray();
        for (ValueScale scale : ValueScale.values()) {
            Extent extent = new Extent(scale);
            extent.includeMost(prices);
            assertEquals(Arrays.stream(prices).min().orElseThrow(), extent.low());
            assertEquals(Arrays.stream(prices).max().orElseThrow(), extent.high());
        }
    }

    @Test
    void a_band_widens_a_span_by_no_more_than_the_span_on_either_side() {
        Extent extent = new Extent(ValueScale.LINEAR);
        extent.include(10, 20);
        extent.includeWithin(5, 22);
        assertEquals(5, extent.low());
        assertEquals(22, extent.high());
        extent.includeWithin(-1e6, 1e6);
        assertEquals(-12, extent.low());
        assertEquals(39, extent.high());
    }

    @Test
    void a_cut_among_many_asks_that_stand_still_counts_and_a_tenfold_rise_does_not() {
        double[] cuts = new double[226];
        for (int i = 0; i < 68; i++) {
            cuts[i] = -1 - i % 14;
        }
        cuts[0] = -23.1;
        cuts[1] = 900;
        Extent extent = new Extent(ValueScale.LINEAR);
        extent.includeMost(cuts);
        assertEquals(-23.1, extent.low());
        assertEquals(0, extent.high());
    }

    @Test
    void what_has_no_place_does_not_count() {
        Extent extent = new Extent(ValueScale.LOGARITHMIC);
        extent.include(Double.NaN, Double.NEGATIVE_INFINITY, 0, -3, 1e300);
        extent.includeMost(Double.NaN, -1);
        assertTrue(extent.isEmpty());
        extent.include(7);
        assertEquals(7, extent.low());
    }
}
