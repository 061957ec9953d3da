package swapworth.market;

import java.util.Arrays;
import swapworth.statistics.Quantiles;
import swapworth.statistics.RatioStudy;

/** How values missed prices, collected judgement by judgement; of each only a few numbers are kept. */
final class Misses {
    private static final int FEWEST_STUDIED = 10;

    private double[] values;
    private double[] prices;
    private double[] misses;
    private int near;
    private int used;
    private FitStudy.Inside all = FitStudy.Inside.NONE;
    private FitStudy.Inside troubled = FitStudy.Inside.NONE;

    /**
     * Begins with none.
     *
     * @param most the largest number of prices that will be taken in
     */
    Misses(int most) {
        values = new double[most];
        prices = new double[most];
        misses = new double[most];
    }

    /** Takes in how a price stands; without a value it tells nothing. */
    void add(double price, Standing standing) {
        if (standing.valuation() instanceof FairValue value) {
            misses[used++] = Math.abs(standing.gapPercent());
            all = all.with(price, value);
            troubled = value.subject().facts().isTroubled() ? troubled.with(price, value) : troubled;
            if (Flags.nearItsValue(price, value)) {
                values[near] = value.median();
                prices[near++] = price;
            }
        }
    }

    /** Takes in what another one has collected. */
    void add(Misses other) {
        System.arraycopy(other.values, 0, values, near, other.near);
        System.arraycopy(other.prices, 0, prices, near, other.near);
        System.arraycopy(other.misses, 0, misses, used, other.used);
        near += other.near;
        used += other.used;
        all = all.with(other.all);
        troubled = troubled.with(other.troubled);
    }

    /** Nothing is told with fewer than ten prices near their values: figures of dispersion would say nothing. */
    Answer<FitStudy> study() {
        if (near < FEWEST_STUDIED) {
            return new Answer.NotTold<>(new CannotTell(
                    "fewer than ten prices have a value, and how well values meet prices does not show in so few", 0, near,
                    "listings of more cars"));
        }
        // With millions of prices there is little room beside them.
        values = Arrays.copyOf(values, near);
        prices = Arrays.copyOf(prices, near);
        RatioStudy ratios = RatioStudy.of(values, prices);
        misses = Arrays.copyOf(misses, used);
        return new Answer.Told<>(new FitStudy(ratios, used - near, Quantiles.ofPartlyOrdered(misses, 0.5), all, troubled));
    }
}
