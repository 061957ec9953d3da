package swapworth.listing;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.function.Function;

/**
 * The pairs of advertisements that are worth a score: those of one line that agree exactly in mileage or, within a model year, in
 * price, or whose mileages lie so near that one car may have driven the difference. All other pairs could not reach a threshold.
 */
final class Candidates {

    private static final double MOST_MILES_BETWEEN = 3_000;
    private static final int LARGE_GROUP = 400;
    /** The key of those that belong to no group. */
    private static final Cohort NONE = new Cohort("", 0, -1);

    /** Takes one pair, the earlier row first. */
    interface Pair {
        void take(int first, int second);
    }

    private final List<Advertisement> advertisements;
    private final Pair pair;

    private Candidates(List<Advertisement> advertisements, Pair pair) {
        this.advertisements = advertisements;
        this.pair = pair;
    }

    static void of(List<Advertisement> advertisements, Pair pair) {
        new Candidates(advertisements, pair).find();
    }

    private void find() {
        for (int[] group : groups(one -> Double.isNaN(one.lastMiles) ? NONE : new Cohort(one.vehicle, 0, Math.round(one.lastMiles)))) {
            sameMiles(group);
        }
        for (int[] group : groups(one -> new Cohort(one.vehicle, one.year, Math.round(one.lastPrice)))) {
            if (group.length <= LARGE_GROUP) {
                pairs(group, false);
            }
        }
        for (int[] block : groups(one -> Double.isNaN(one.lastMiles) ? NONE : new Cohort(one.vehicle, one.year, 0))) {
            near(block);
        }
    }

    /**
     * The advertisements of which two or more have one key, each group in the order of the files: sorted by hash, which takes less room
     * than a map of mostly single ones.
     */
    private List<int[]> groups(Function<Advertisement, Cohort> key) {
        long[] sorted = new long[advertisements.size()];
        int size = 0;
        for (int i = 0; i < sorted.length; i++) {
            Cohort cohort = key.apply(advertisements.get(i));
            if (cohort != NONE) {
                sorted[size++] = (long) cohort.hashCode() << 32 | i;
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
                addGroups(Arrays.copyOfRange(sorted, from, to), key, groups);
            }
        }
        return groups;
    }

    /** Keys of one hash are seldom two, but can be. */
    private void addGroups(long[] sameHash, Function<Advertisement, Cohort> key, List<int[]> groups) {
        Groups<Cohort, Integer> byKey = new Groups<>();
        for (long one : sameHash) {
            byKey.add(key.apply(advertisements.get((int) one)), (int) one);
        }
        for (List<Integer> group : byKey.all()) {
            if (group.size() > 1) {
                groups.add(group.stream().mapToInt(Integer::intValue).toArray());
            }
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
            byYear.add(advertisements.get(i).year, i);
        }
        for (List<Integer> year : byYear.all()) {
            pairs(year.stream().mapToInt(Integer::intValue).toArray(), true);
        }
    }

    private void pairs(int[] group, boolean equalMiles) {
        for (int i = 0; i < group.length; i++) {
            Advertisement one = advertisements.get(group[i]);
            for (int j = i + 1; j < group.length; j++) {
                Advertisement other = advertisements.get(group[j]);
                if ((equalMiles || one.lastMiles != other.lastMiles) && !PairScore.forbidden(one, other)) {
                    pair.take(group[i], group[j]);
                }
            }
        }
    }

    private void near(int[] block) {
        long[] sorted = new long[block.length];
        for (int i = 0; i < sorted.length; i++) {
            sorted[i] = Math.round(advertisements.get(block[i]).lastMiles * 10) << 32 | block[i];
        }
        Arrays.sort(sorted);
        for (int i = 0; i < sorted.length; i++) {
            int first = (int) sorted[i];
            Advertisement one = advertisements.get(first);
            for (int j = i + 1; j < sorted.length; j++) {
                int second = (int) sorted[j];
                Advertisement other = advertisements.get(second);
                if (other.lastMiles - one.lastMiles > MOST_MILES_BETWEEN) {
                    break;
                }
                boolean alreadyTaken = other.lastMiles == one.lastMiles || other.lastPrice == one.lastPrice;
                if (!alreadyTaken && !PairScore.forbidden(one, other)) {
                    pair.take(Math.min(first, second), Math.max(first, second));
                }
            }
        }
    }
}
