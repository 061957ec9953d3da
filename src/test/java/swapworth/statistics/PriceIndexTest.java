package swapworth.statistics;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import swapworth.statistics.RepeatPrices.Pair;

/** Price indexes by other methods, which stand beside the market's index as a check. */
class PriceIndexTest {

    // Source: M. Bailey, R. Muth, H. Nourse, JASA 58 (1963) 933-942; the worked example in the README of the R package rsmatrix
    // (238.1102 and 125.9921), exactly 100 (13.5)^(1/3) and 100 (2)^(1/3); standard error re-derived with R 4.2.2.
    @Test
    void the_published_example_of_repeat_sales_comes_out() {
        RepeatPrices.Levels found = RepeatPrices.of(3, List.of(new Pair(0, 1, Math.log(3)), new Pair(1, 2, Math.log(2.0 / 3)),
                new Pair(0, 2, 0)));
        assertTrue(Reference.digits(100 * Math.exp(found.log()[1]), 238.11015779523) >= 13);
        assertTrue(Reference.digits(100 * Math.exp(found.log()[2]), 125.992104989487) >= 13);
        assertTrue(Reference.digits(found.error()[1], 0.326752714489516) >= 12);
        assertEquals(1, found.degreesOfFreedom());
    }

    // Source: seven constructed pairs, computed with R 4.2.2 (lm on the differences of dummies).
    @Test
    void seven_pairs_over_four_times_are_those_of_r() {
        double[][] pairs = {{0, 1, 10000, 10800}, {0, 2, 8000, 9100}, {1, 2, 12000, 12300}, {1, 3, 9500, 8900}, {2, 3, 15000, 13200},
            {0, 3, 20000, 19500}, {2, 3, 7000, 6100}};
        List<Pair> list = new ArrayList<>();
        for (double[] p : pairs) {
            list.add(new Pair((int) p[0], (int) p[1], Math.log(p[3] / p[2])));
        }
        RepeatPrices.Levels found = RepeatPrices.of(4, list);
        double[][] expected = {{0.0744962638522412, 0.0120786254886444}, {0.1175726966594408, 0.0115644034672648},
            {-0.0115928555168751, 0.0115644034672648}};
        for (int t = 1; t <= 3; t++) {
            assertTrue(Reference.digits(found.log()[t], expected[t - 1][0]) >= 11, "level " + t);
            assertTrue(Reference.digits(found.error()[t], expected[t - 1][1]) >= 11, "standard error " + t);
        }
    }

    // Source: constructed prices exp(9.6 - 0.09 age - 0.0035 miles - 0.15 period): every hedonic method gives exactly 100 exp(-0.15).
    @Test
    void month_dummies_find_a_fall_that_is_free_of_noise() {
        double[][] cars = {{0, 2, 20}, {0, 4, 45}, {0, 6, 70}, {0, 9, 120}, {1, 3, 30}, {1, 5, 65}, {1, 8, 90}, {1, 12, 150}};
        double[] prices = {11498.82344514982, 8799.938396112204, 6734.507764621206, 4315.636062697413, 8734.185738821492,
            6454.288031589758, 4514.275554808255, 2552.937663543534};
        SparseRow[] rows = new SparseRow[8];
        double[] y = new double[8];
        for (int i = 0; i < 8; i++) {
            rows[i] = SparseRow.dense(1, cars[i][1], cars[i][2], cars[i][0]);
            y[i] = Math.log(prices[i]);
        }
        Posterior fit = ShrunkenRegression.withDefaults().with(ErrorLaw.NORMAL).with(Integration.MODE)
                .with(new ErrorScale.Unsure(1, Double.POSITIVE_INFINITY)).withTolerance(1e-12)
                .fit(Design.of(4, rows), Sample.of(y), List.of(PriorBlock.flat("all", 0, 4)));
        assertTrue(Reference.digits(100 * Math.exp(fit.mean()[3]), 86.07079764250578) >= 11, "index " + 100 * Math.exp(fit.mean()[3]));
        assertEquals(0, Math.sqrt(fit.variance(SparseRow.of(new int[] {3}, new double[] {1}))), 1e-9);
    }

    @Test
    void pairs_that_link_nothing_with_the_base_are_refused() {
        assertThrows(ConfoundedColumnsException.class, () -> RepeatPrices.of(4, List.of(new Pair(0, 1, 0.1), new Pair(2, 3, 0.1),
                new Pair(2, 3, 0.2), new Pair(2, 3, 0.3))));
        assertThrows(IllegalArgumentException.class, () -> RepeatPrices.of(3, List.of(new Pair(0, 1, 0.1))));
    }

    @Test
    void two_indices_of_the_same_pairs_are_the_same_and_print_themselves() {
        List<Pair> pairs = List.of(new Pair(0, 1, 0.5), new Pair(0, 1, 0.5));
        assertEquals(RepeatPrices.of(2, pairs), RepeatPrices.of(2, pairs));
        assertEquals(RepeatPrices.of(2, pairs).hashCode(), RepeatPrices.of(2, pairs).hashCode());
        assertNotEquals(RepeatPrices.of(2, pairs), RepeatPrices.of(2, List.of(new Pair(0, 1, 0.5), new Pair(0, 1, 0.6))));
        assertEquals("ln of the level [0.0, 0.5], standard errors [0.0, 0.1], 3 degrees of freedom",
                new RepeatPrices.Levels(new double[] {0, 0.5}, new double[] {0, 0.1}, 3).toString());
    }

    @Test
    void two_samples_of_the_same_rows_are_the_same_and_print_themselves() {
        assertEquals(Sample.of(1, 2), Sample.of(1, 2));
        assertEquals(Sample.of(1, 2).hashCode(), Sample.of(1, 2).hashCode());
        assertNotEquals(Sample.of(1, 2), Sample.of(1, 3));
        assertNotEquals(Sample.of(1, 2), Sample.of(1, 2).withInflation(new double[] {1, 2}));
        assertEquals("2 rows", Sample.of(1, 2).toString());
        assertEquals("1 row, of which 1 only bounds the response", new Sample(new double[1], new Bound[] {Bound.BELOW}, new double[] {1},
                new double[1], new double[1]).toString());
    }
}
