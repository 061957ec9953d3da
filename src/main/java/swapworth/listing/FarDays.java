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
        ask(listings, 1, "after the sighting before it, and it makes that the day of all values", questions);
        ask(listings, -1, "before the next sighting", questions);
    }

    /** Looks at the two sightings at one end: at the last with the direction 1, at the first with -1. */
    private static void ask(StoredListings listings, int direction, String where, List<RowProblem> questions) {
        ListingColumns columns = listings.columns();
        int end = -1;
        int next = -1;
        for (int place = 0; place < listings.size(); place++) {
            int row = listings.row(place);
            if (!columns.isDated(row)) {
                continue;
            }
            int day = direction * columns.day(row);
            if (end < 0 || day > direction * columns.day(end)) {
                next = end;
                end = row;
            } else if (next < 0 || day > direction * columns.day(next)) {
                next = row;
            }
        }
        int days = next < 0 ? 0 : Math.abs(columns.day(end) - columns.day(next));
        if (days > FAR) {
            LocalDate seen = columns.seenOn(end).orElseThrow();
            Origin origin = columns.origin(end);
            questions.add(new RowProblem(origin.file(), origin.line(), "seen_on", seen.toString(), RowProblem.Kind.QUESTION,
                    "this day lies " + days + " days " + where + ": is the year right?"));
        }
    }
}
