package swapworth.listing;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/**
 * Model lines of one or two rows whose names are a letter away from that of a line with many: most such names are mistyped. They are asked
 * about and never read as the other line, for a letter can make another car. Names that differ in short words or in words with digits, as
 * model codes do, are left alone.
 */
final class LikeLines {
    private static final int SHORTEST = 5;
    private static final int MOST_ROWS = 2;
    private static final int TIMES_AS_MANY = 3;
    /** More lines than this nobody would read questions about. */
    private static final int MOST_LINES = 2000;

    private LikeLines() {
    }

    /** A line and the one that it may be. */
    record Pair(int row, String rare, String usual, int rowsOfUsual) {
    }

    /** The pairs among the lines of some rows, in the order in which the lines stand first. */
    static List<Pair> of(ListingColumns columns, int[] rows) {
        int lines = columns.vehicle.count();
        List<Pair> pairs = new ArrayList<>();
        if (lines > MOST_LINES) {
            return pairs;
        }
        int[] count = new int[lines];
        int[] first = new int[lines];
        for (int k = rows.length - 1; k >= 0; k--) {
            int line = columns.vehicle.code(rows[k]);
            count[line]++;
            first[line] = rows[k];
        }
        for (int rare = 0; rare < lines; rare++) {
            int best = -1;
            for (int usual = 0; usual < lines && count[rare] > 0 && count[rare] <= MOST_ROWS; usual++) {
                if (count[usual] >= TIMES_AS_MANY * count[rare] && (best < 0 || count[usual] > count[best])
                        && areALetterApart(columns.vehicle.of(rare), columns.vehicle.of(usual))) {
                    best = usual;
                }
            }
            if (best >= 0) {
                pairs.add(new Pair(first[rare], columns.vehicle.of(rare), columns.vehicle.of(best), count[best]));
            }
        }
        return pairs;
    }

    /** Whether two names differ in one letter of one long word of letters: another one, one more, one fewer, or two changed about. */
    static boolean areALetterApart(String one, String other) {
        if (Math.abs(one.length() - other.length()) > 1 || Math.min(one.length(), other.length()) < SHORTEST) {
            return false;
        }
        String[] words = one.toLowerCase(Locale.ROOT).split("[ -]+");
        String[] others = other.toLowerCase(Locale.ROOT).split("[ -]+");
        int apart = -1;
        for (int i = 0; i < words.length && words.length == others.length; i++) {
            if (!words[i].equals(others[i])) {
                if (apart >= 0) {
                    return false;
                }
                apart = i;
            }
        }
        return apart >= 0 && isLongWord(words[apart]) && isLongWord(others[apart]) && isOneChange(words[apart], others[apart]);
    }

    private static boolean isLongWord(String word) {
        return word.length() >= SHORTEST && word.chars().allMatch(Character::isLetter);
    }

    private static boolean isOneChange(String a, String b) {
        int same = 0;
        while (same < Math.min(a.length(), b.length()) && a.charAt(same) == b.charAt(same)) {
            same++;
        }
        String restA = a.substring(same);
        String restB = b.substring(same);
        if (restA.length() == restB.length()) {
            return restA.substring(1).equals(restB.substring(1)) || restA.length() > 1 && restA.charAt(0) == restB.charAt(1)
                    && restA.charAt(1) == restB.charAt(0) && restA.substring(2).equals(restB.substring(2));
        }
        return restA.length() < restB.length() ? restB.substring(1).equals(restA) : restA.substring(1).equals(restB);
    }
}
