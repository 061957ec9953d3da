package swapworth.market;

import static java.util.Objects.requireNonNull;

import java.time.YearMonth;

/**
 * How fast the level moves: the mean change a month over a stated window, without the season where that is known.
 *
 * @param from the first month of the window, in its middle
 * @param to the last month of the window, in its middle
 * @param held what is held still
 * @param percentPerMonth the middle of what is believed, compounded, per cent a month
 * @param range80 its 80 % range
 * @param range95 its 95 % range
 * @param chanceOfFall the probability that the level fell over the window, from 0 to 1
 * @param spread what is still unsure: posterior standard deviation, log points a month
 * @param priorSpread what was unsure before any listing was read: prior standard deviation, log points a month
 * @param priorShare how much of what is still unsure assumptions hold, between 0 and 1
 */
public record Drift(YearMonth from, YearMonth to, Held held, double percentPerMonth, Range range80, Range range95, double chanceOfFall,
        double spread, double priorSpread, double priorShare) {

    /** Checks that nothing is missing. */
    public Drift {
        requireNonNull(from, "from");
        requireNonNull(to, "to");
        requireNonNull(held, "held");
        requireNonNull(range80, "range80");
        requireNonNull(range95, "range95");
    }

    /**
     * How much of the movement is the assumption (market_drift, spread_market_month) and not the listings: what is still unsure in squares,
     * of what was unsure before. Where both are normal, it is the weight of what was assumed in the middle of what is believed.
     *
     * @return 0 where the listings alone speak, 1 where they say nothing
     */
    public double weightOfAssumption() {
        return Math.min(1, spread * spread / (priorSpread * priorSpread));
    }

    /**
     * Whether the assumption weighs as much as the listings or more.
     *
     * @return true from a weight of one half on
     */
    public boolean isMostlyAssumed() {
        return weightOfAssumption() >= 0.5;
    }
}
