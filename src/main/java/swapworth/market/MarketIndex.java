package swapworth.market;

import java.time.LocalDate;
import java.util.List;

/**
 * How the level of the market has moved with the cars held still, from the time terms of the price model.
 *
 * @param base the day whose level is 100
 * @param points one point a month, in order of date; the last is the base
 */
public record MarketIndex(LocalDate base, List<Point> points) {

    /** Copies the points in. */
    public MarketIndex {
        points = List.copyOf(points);
    }

    /**
     * The level on a day.
     *
     * @param on the day
     * @param level the level, base = 100
     * @param range80 its 80 % range
     * @param range95 its 95 % range
     * @param prices prices in the fit seen within half a month of the day
     */
    public record Point(LocalDate on, double level, Range range80, Range range95, int prices) {
    }
}
