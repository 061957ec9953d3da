package swapworth.market;

import static java.util.Objects.requireNonNull;

import swapworth.statistics.RatioStudy;

/**
 * How well values with the own car left out met the prices seen: each on its own day and at its own level of trade, whatever day and
 * level values were asked for.
 *
 * @param ratios the ratio study, of the prices within a factor of {@value Flags#DIGIT} of their value
 * @param leftOut prices further off, such as a digit too many or too few makes them: they would drown the other ratios
 * @param medianMissPercent median distance of a price from its value, per cent of the value
 * @param all how many of all prices lie inside their ranges
 * @param troubled the same of the prices of crashed, branded and dead cars
 */
public record FitStudy(RatioStudy ratios, int leftOut, double medianMissPercent, Inside all, Inside troubled) {

    /** Checks that nothing is missing. */
    public FitStudy {
        requireNonNull(ratios, "ratios");
        requireNonNull(all, "all");
        requireNonNull(troubled, "troubled");
    }

    /**
     * How many of some prices lie inside their ranges.
     *
     * @param prices their number
     * @param in80 of these inside their 80 % range
     * @param in95 of these inside their 95 % range
     */
    public record Inside(int prices, int in80, int in95) {

        /** No price yet. */
        static final Inside NONE = new Inside(0, 0, 0);

        /** With one more. */
        Inside with(double price, FairValue value) {
            return new Inside(prices + 1, in80 + (value.range(0.80).holds(price) ? 1 : 0), in95 + (value.range(0.95).holds(price) ? 1 : 0));
        }

        /** With others. */
        Inside with(Inside other) {
            return new Inside(prices + other.prices, in80 + other.in80, in95 + other.in95);
        }

        /**
         * The share inside their 80 % range.
         *
         * @return per cent; not a number of no prices
         */
        public double percent80() {
            return 100.0 * in80 / prices;
        }

        /**
         * The share inside their 95 % range.
         *
         * @return per cent; not a number of no prices
         */
        public double percent95() {
            return 100.0 * in95 / prices;
        }
    }
}
