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

    private final Advertisement[] advertisements;
    private final Pair pair;

    private Candidates(List<Advertisement> ofLine, Pair pair) {
        this.advertisements = ofLine.toArray(new Advertisement[0]);
        this.pair = pair;
    }

    static void of(List<Advertisement> ofLine, Pair pair) {
        new Candidates(ofLine, pair).find();
    }

    private void find() {
        int n = advertisements.length;
        int[] anyYear = new int[n];
        int[] year = new int[n];
        long[] miles = new long[n];
        long[] price = new long[n];
        long[] known = new long[n];
        for (int i = 0; i < n; i++) {
            Advertisement one = advertisements[i];
            year[i] = one.year;
            price[i] = Math.round(one.lastPrice);
            miles[i] = Double.isNaN(one.lastMiles) ? NONE : Math.round(one.lastMiles);
            known[i] = Double.isNaN(one.lastMiles) ? NONE : 0;
        }
        for (int[] group : groups(anyYear, miles)) {
            sameMiles(group);
        }
        for (int[] group : groups(year, price)) {
            if (group.length <= LARGE_GROUP) {
                pairs(group, false);
            }
        }
        for (int[] block : groups(year, known)) {
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
        Groups<Integer, Integer> byYear = new Groups<>();
        for (int i : group) {
            byYear.add(advertisements[i].year, i);
        }
        for (List<Integer> year : byYear.all()) {
            pairs(year.stream().mapToInt(Integer::intValue).toArray(), true);
        }
    }

    private void pairs(int[] group, boolean equalMiles) {
        for (int i = 0; i < group.length; i++) {
            Advertisement one = advertisements[group[i]];
            for (int j = i + 1; j < group.length; j++) {
                Advertisement other = advertisements[group[j]];
                if ((equalMiles || one.lastMiles != other.lastMiles) && !PairScore.forbidden(one, other)) {
                    pair.take(group[i], group[j]);
                }
            }
        }
    }

    private void near(int[] block) {
        long[] sorted = new long[block.length];
        for (int i = 0; i < sorted.length; i++) {
            sorted[i] = Math.round(advertisements[block[i]].lastMiles * 10) << 32 | block[i];
        }
        Arrays.sort(sorted);
        Advertisement[] ordered = new Advertisement[sorted.length];
        for (int i = 0; i < sorted.length; i++) {
            ordered[i] = advertisements[(int) sorted[i]];
        }
        for (int i = 0; i < sorted.length; i++) {
            Advertisement one = ordered[i];
            for (int j = i + 1; j < sorted.length; j++) {
                Advertisement other = ordered[j];
                if (other.lastMiles - one.lastMiles > MOST_MILES_BETWEEN) {
                    break;
                }
                boolean alreadyTaken = other.lastMiles == one.lastMiles || other.lastPrice == one.lastPrice;
                if (!alreadyTaken && !PairScore.forbidden(one, other)) {
                    int first = (int) sorted[i];
                    int second = (int) sorted[j];
                    pair.take(Math.min(first, second), Math.max(first, second));
                }
            }
        }
    }
}
