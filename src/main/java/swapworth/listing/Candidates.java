package swapworth.listing;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/**
 * The pairs of advertisements of one line that are worth a score: those that agree exactly in mileage or, within a model year, in
 * price, or whose mileages lie so near that one car may have driven the difference. All other pairs could not reach a threshold.
 */
final class Candidates {

    private static final double MOST_MILES_BETWEEN = 3_000;
    private static final int LARGE_GROUP = 400;
    /** The number of an advertisement that belongs to no group. */
    private static final long NONE = -1;

    /** Takes one pair, the earlier row first. */
    interface Pair {
        void take(int first, int second);
    }

    private final Advertisements of;
    private final PairScore score;
    private final Pair pair;

    private Candidates(Advertisements ofLine, PairScore score, Pair pair) {
        this.of = ofLine;
        this.score = score;
        this.pair = pair;
    }

    static void of(Advertisements ofLine, PairScore score, Pair pair) {
        new Candidates(ofLine, score, pair).find();
    }

    private void find() {
        int n = of.count();
        int[] anyYear = new int[n];
        long[] miles = new long[n];
        long[] price = new long[n];
        long[] known = new long[n];
        for (int i = 0; i < n; i++) {
            price[i] = Math.round(of.lastPrice[i]);
            miles[i] = Double.isNaN(of.lastMiles[i]) ? NONE : Math.round(of.lastMiles[i]);
            known[i] = Double.isNaN(of.lastMiles[i]) ? NONE : 0;
        }
        for (int[] group : groups(anyYear, miles)) {
            sameMiles(group);
        }
        for (int[] group : groups(of.year, price)) {
            if (group.length <= LARGE_GROUP) {
                pairs(group, false);
            }
        }
        for (int[] block : groups(of.year, known)) {
            near(block);
        }
    }

    /**
     * The advertisements of which two or more have one year and number, each group in the order of the files: sorted by hash, which
     * takes less room than a map of mostly single ones.
     */
    private static List<int[]> groups(int[] year, long[] number) {
        long[] sorted = new long[number.length];
        int size = 0;
        for (int i = 0; i < number.length; i++) {
            if (number[i] != NONE) {
                sorted[size++] = (long) hash(year[i], number[i]) << 32 | i;
            }
        }
        Arrays.sort(sorted, 0, size);
        List<int[]> groups = new ArrayList<>();
        for (int from = 0, to; from < size; from = to) {
            to = from + 1;
            while (to < size && sorted[to] >> 32 == sorted[from] >> 32) {
                to++;
            }
            if (to - from > 1) {
                addGroups(sorted, from, to, year, number, groups);
            }
        }
        return groups;
    }

    private static int hash(int year, long number) {
        long mixed = (number * 31 + year) * 0x9E3779B97F4A7C15L;
        return (int) (mixed ^ mixed >>> 32);
    }

    /** Years and numbers of one hash are seldom two, but can be: each group takes its own out of the rest. */
    private static void addGroups(long[] sameHash, int from, int to, int[] year, long[] number, List<int[]> groups) {
        int[] rest = new int[to - from];
        for (int k = 0; k < rest.length; k++) {
            rest[k] = (int) sameHash[from + k];
        }
        while (rest.length > 1) {
            int[] own = new int[rest.length];
            int[] others = new int[rest.length];
            int owns = 0;
            for (int k = 0; k < rest.length; k++) {
                int one = rest[k];
                if (year[one] == year[rest[0]] && number[one] == number[rest[0]]) {
                    own[owns++] = one;
                } else {
                    others[k - owns] = one;
                }
            }
            if (owns > 1) {
                groups.add(Arrays.copyOf(own, owns));
            }
            rest = Arrays.copyOf(others, rest.length - owns);
        }
    }

    /** A mileage that hundreds share says so little that other years, or unknown ones, need not be compared. */
    private void sameMiles(int[] group) {
        if (group.length <= LARGE_GROUP) {
            pairs(group, true);
            return;
        }
        long[] byYear = new long[group.length];
        for (int k = 0; k < byYear.length; k++) {
            byYear[k] = (long) of.year[group[k]] << 32 | group[k];
        }
        Arrays.sort(byYear);
        for (int from = 0, to; from < byYear.length; from = to) {
            to = from;
            while (to < byYear.length && byYear[to] >> 32 == byYear[from] >> 32) {
                to++;
            }
            pairs(Arrays.stream(byYear, from, to).mapToInt(both -> (int) both).toArray(), true);
        }
    }

    private void pairs(int[] group, boolean equalMiles) {
        for (int i = 0; i < group.length; i++) {
            int one = group[i];
            for (int j = i + 1; j < group.length; j++) {
                int other = group[j];
                if ((equalMiles || of.lastMiles[one] != of.lastMiles[other]) && !score.forbidden(one, other)) {
                    pair.take(one, other);
                }
            }
        }
    }

    /** The pairs of one model year that lie near each other: those of one trim, and those of which one has none. */
    private void near(int[] block) {
        int n = block.length;
        long[] sorted = new long[n];
        for (int i = 0; i < n; i++) {
            sorted[i] = Math.round(of.lastMiles[block[i]] * 10) << 32 | block[i];
        }
        Arrays.sort(sorted);
        int[] ordered = new int[n];
        long[] byTrim = new long[n];
        for (int i = 0; i < n; i++) {
            ordered[i] = (int) sorted[i];
            byTrim[i] = (long) of.trim[ordered[i]] << 32 | i;
        }
        Arrays.sort(byTrim);
        int from = 0;
        for (; from < n && byTrim[from] >> 32 == 0; from++) {
            nearWithoutTrim(ordered, (int) byTrim[from]);
        }
        for (int to; from < n; from = to) {
            to = from;
            while (to < n && byTrim[to] >> 32 == byTrim[from] >> 32) {
                to++;
            }
            for (int i = from; i < to; i++) {
                for (int j = i + 1; j < to && takeNear(ordered[(int) byTrim[i]], ordered[(int) byTrim[j]]); j++) {
                    // Each that lies near enough is taken.
                }
            }
        }
    }

    /** The pairs of one without a trim with all others; of two without one, the first in the order has the pair. */
    private void nearWithoutTrim(int[] ordered, int i) {
        for (int j = i + 1; j < ordered.length && takeNear(ordered[i], ordered[j]); j++) {
            // Each that lies near enough is taken.
        }
        for (int j = i - 1; j >= 0 && of.lastMiles[ordered[i]] - of.lastMiles[ordered[j]] <= MOST_MILES_BETWEEN; j--) {
            if (of.trim[ordered[j]] != 0) {
                takeNear(ordered[j], ordered[i]);
            }
        }
    }

    /** Takes a pair, the one of fewer miles first; tells whether it, and those that follow, can lie near enough. */
    private boolean takeNear(int one, int other) {
        if (of.lastMiles[other] - of.lastMiles[one] > MOST_MILES_BETWEEN) {
            return false;
        }
        boolean alreadyTaken = of.lastMiles[other] == of.lastMiles[one] || of.lastPrice[other] == of.lastPrice[one];
        if (!alreadyTaken && !score.forbidden(one, other)) {
            pair.take(Math.min(one, other), Math.max(one, other));
        }
        return true;
    }
}
