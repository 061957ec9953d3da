package swapworth.market;

import static java.util.Objects.requireNonNull;

import java.time.YearMonth;

/**
 * The level of the market in the middle of one month.
 *
 * @param month the month
 * @param cars cars whose price in the fit is of this month: the last ask of a car counts in the month from which it stood so
 * @param index the level, that of the base month being 100: the middle of what is believed
 * @param range80 its 80 % range
 * @param range95 its 95 % range
 * @param support how many cars speak for the month
 */
public record IndexMonth(YearMonth month, int cars, double index, Range range80, Range range95, Support support) {

    /** Checks that nothing is missing. */
    public IndexMonth {
        requireNonNull(month, "month");
        requireNonNull(range80, "range80");
        requireNonNull(range95, "range95");
        requireNonNull(support, "support");
    }

    /** From so many cars on a month is seen. */
    static final int SEEN_FROM = 5;

    /** How many cars speak for a month. */
    public enum Support {
        /** Five or more. */
        SEEN(""),
        /** One to four: the months beside it speak too. */
        THIN("few cars"),
        /** No price that counts is of it: bridged from the months beside it. */
        BRIDGED("no price, bridged");

        private final String words;

        Support(String words) {
            this.words = words;
        }

        /**
         * What to say of the month.
         *
         * @return nothing where there is nothing to say
         */
        public String words() {
            return words;
        }

        static Support of(int cars) {
            return cars == 0 ? BRIDGED : cars < SEEN_FROM ? THIN : SEEN;
        }
    }
}
