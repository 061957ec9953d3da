package swapworth.listing;

import java.time.LocalDate;

/** How many days the years and months of the calendar have on average, and how days are counted in years. */
public final class Days {
    /** The mean length of a year. */
    public static final double PER_YEAR = 365.25;
    /** The mean length of a month. */
    public static final double PER_MONTH = PER_YEAR / 12;

    private static final int FIRST_USUAL_YEAR = 1900;
    /** The middles of usual years as far as they were asked for; none of them is day 0. */
    private static final int[] MIDDLES = new int[200];

    private Days() {
    }

    /** The day in the middle of a year, 1 July: a million cars share few years. */
    static long middleOf(int year) {
        int at = year - FIRST_USUAL_YEAR;
        if (at < 0 || at >= MIDDLES.length) {
            return LocalDate.of(year, 7, 1).toEpochDay();
        }
        if (MIDDLES[at] == 0) {
            MIDDLES[at] = (int) LocalDate.of(year, 7, 1).toEpochDay();
        }
        return MIDDLES[at];
    }

    /** The years between two days, at least 0. */
    static double years(long born, long on) {
        return Math.max(0, (on - born) / PER_YEAR);
    }
}
