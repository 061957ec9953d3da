package swapworth.chart;

import static java.util.Objects.requireNonNull;

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
}
