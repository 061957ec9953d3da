package swapworth.listing;

import java.time.LocalDate;
import java.util.List;
import swapworth.reading.RowProblem;

/**
 * Asks about the first and the last sighting where one lies far from all others: a mistyped year moves the day of all values, the cars that
 * are on offer and the drift of the market.
 */
final class FarDays {
    /** More than half a year: most cars of a collection are seen within months, and a mistyped year takes a row twelve months away. */
    private static final int FAR = 183;

    private FarDays() {
    }

    static void ask(StoredListings listings, List<RowProblem> questions) {
        ListingColumns columns = listings.columns();
        // Days with their rows behind them: the last two and the first two.
        long last = Long.MIN_VALUE;
        long before = Long.MIN_VALUE;
        long first = Long.MAX_VALUE;
        long next = Long.MAX_VALUE;
        int dated = 0;
        for (int place = 0; place < listings.size(); place++) {
            int row = listings.row(place);
            if (columns.isDated(row)) {
                long day = (long) columns.day(row) << 32 | row;
                before = Math.max(before, Math.min(day, last));
                last = Math.max(last, day);
                next = Math.min(next, Math.max(day, first));
                first = Math.min(first, day);
                dated++;
            }
        }
        if (dated > 1) {
            ask(columns, last, before, "after the sighting before it, and it makes that the day of all values", questions);
            ask(columns, first, next, "before the next sighting", questions);
        }
    }

    private static void ask(ListingColumns columns, long end, long other, String where, List<RowProblem> questions) {
        long days = Math.abs((end >> 32) - (other >> 32));
        if (days > FAR) {
            int row = (int) end;
            LocalDate seen = columns.seenOn(row).orElseThrow();
            Origin origin = columns.origin(row);
            questions.add(new RowProblem(origin.file(), origin.line(), "seen_on", seen.toString(), RowProblem.Kind.QUESTION,
                    "this day lies " + days + " days " + where + ": is the year right?"));
        }
    }
}
