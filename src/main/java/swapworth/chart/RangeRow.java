package swapworth.chart;

import static java.util.Objects.requireNonNull;

import java.util.Arrays;
import swapworth.statistics.Quantiles;

/**
 * One row of a chart of ranges.
 *
 * @param name what the row is, for instance the term of a model
 * @param middle the middle; NaN draws an empty row
 * @param low80 the low end of the 80 % range
 * @param high80 its high end
 * @param low95 the low end of the 95 % range
 * @param high95 its high end
 */
public record RangeRow(String name, double middle, double low80, double high80, double low95, double high95) {

    /** Checks that the name is there. */
    public RangeRow {
        requireNonNull(name, "name");
    }

    /**
     * The row of a quantity of which there are draws.
     *
     * @param name what the row is
     * @param draws at least one draw
     * @return its median and its ranges
     */
    public static RangeRow of(String name, double[] draws) {
        double[] sorted = draws.clone();
        Arrays.sort(sorted);
        return new RangeRow(name, Quantiles.ofSorted(sorted, 0.5), Quantiles.ofSorted(sorted, 0.1), Quantiles.ofSorted(sorted, 0.9),
                Quantiles.ofSorted(sorted, 0.025), Quantiles.ofSorted(sorted, 0.975));
    }
}
