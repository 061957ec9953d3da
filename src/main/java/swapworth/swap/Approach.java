package swapworth.swap;

import static java.util.Objects.requireNonNull;

import java.util.Arrays;
import java.util.List;
import swapworth.market.FairValue.HeldBy;
import swapworth.market.Figures;
import swapworth.statistics.Quantiles;

/**
 * One way to the price of a finished swap: the middle price of such swaps by it, or why it cannot tell.
 */
public sealed interface Approach permits Approach.Told, Approach.Untold {

    /** The three ways. */
    enum Kind {
        /** By what the market pays for body and running gear, each in other cars. */
        BODY_AND_GEAR("body and running gear"),
        /** By its parts at market prices. */
        COST("cost"),
        /** By where swaps that were seen stand between the stock car and the factory equivalent. */
        POSITION("position, stock to factory");

        private final String words;

        Kind(String words) {
            this.words = words;
        }

        /**
         * How it stands on a page.
         *
         * @return plain words
         */
        public String words() {
            return words;
        }
    }

    /**
     * Which way.
     *
     * @return its kind
     */
    Kind kind();

    /**
     * An answer.
     *
     * @param kind which way
     * @param level draws of the middle price of such swaps, in the base currency, in the order of the market's draws
     * @param price draws of the price of one such swap, likewise
     * @param priorShare how much of what is unsure about the level assumptions hold, between 0 and 1
     * @param largest the assumption that holds most of it
     * @param remarks what a reader must know of it
     */
    record Told(Kind kind, double[] level, double[] price, double priorShare, HeldBy largest, List<String> remarks) implements Approach {

        /** Copies in and checks that nothing is missing. */
        public Told {
            requireNonNull(kind, "kind");
            requireNonNull(largest, "largest");
            level = level.clone();
            price = price.clone();
            remarks = List.copyOf(remarks);
            if (level.length == 0 || level.length != price.length) {
                throw new IllegalArgumentException(level.length + " draws of the middle price meet " + price.length + " of one");
            }
        }

        @Override
        public double[] level() {
            return level.clone();
        }

        @Override
        public double[] price() {
            return price.clone();
        }

        @Override
        public boolean equals(Object other) {
            return other instanceof Told told && kind == told.kind && Arrays.equals(level, told.level) && Arrays.equals(price, told.price)
                    && Double.compare(priorShare, told.priorShare) == 0 && largest.equals(told.largest) && remarks.equals(told.remarks);
        }

        @Override
        public int hashCode() {
            return Arrays.hashCode(level) * 31 + Arrays.hashCode(price);
        }

        /** Which way, with the price of one such swap and its range. */
        @Override
        public String toString() {
            double[] sorted = Arrays.stream(price).sorted().toArray();
            return kind.words() + ": " + Figures.rounded(Quantiles.ofSorted(sorted, 0.5)) + ", 80 % range "
                    + Figures.range(SwapValue.range(sorted, 0.80)) + ", " + Math.round(100 * priorShare)
                    + " % of what is unsure about the middle price held by assumptions";
        }
    }

    /**
     * No answer.
     *
     * @param kind which way
     * @param reason why, in one sentence
     * @param needed what would help
     */
    record Untold(Kind kind, String reason, String needed) implements Approach {

        /** Checks that nothing is missing. */
        public Untold {
            requireNonNull(kind, "kind");
            requireNonNull(reason, "reason");
            requireNonNull(needed, "needed");
        }
    }
}
