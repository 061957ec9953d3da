package swapworth.listing;

import java.util.Arrays;
import java.util.List;
import java.util.Map;

/**
 * The pairs of advertisements that are worth a score: those of one line that agree exactly in mileage or, within a model year, in
 * price, or whose mileages lie so near that one car may have driven the difference. All other pairs could not reach a threshold.
 */
final class Candidates {

    private static final double MOST_MILES_BETWEEN = 3_000;
    private static final int LARGE_GROUP = 400;

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
        Groups<Cohort, Integer> byMiles = new Groups<>();
        Groups<Cohort, Integer> byPrice = new Groups<>();
        Groups<Cohort, Integer> blocks = new Groups<>();
        for (int i = 0; i < advertisements.size(); i++) {
            Advertisement one = advertisements.get(i);
            if (!Double.isNaN(one.lastMiles)) {
                blocks.add(new Cohort(one.vehicle, one.year, 0), i);
                byMiles.add(new Cohort(one.vehicle, 0, Math.round(one.lastMiles)), i);
            }
            byPrice.add(new Cohort(one.vehicle, one.year, Math.round(one.lastPrice)), i);
        }
        for (List<Integer> group : byMiles.all()) {
            if (group.size() > 1) {
                sameMiles(group);
            }
        }
        for (List<Integer> group : byPrice.all()) {
            if (group.size() > 1 && group.size() <= LARGE_GROUP) {
                pairs(group, false);
            }
        }
        for (Map.Entry<Cohort, List<Integer>> block : blocks.byKey().entrySet()) {
            near(block.getValue());
        }
    }

    /** A mileage that hundreds share says so little that other years, or unknown ones, need not be compared. */
    private void sameMiles(List<Integer> group) {
        if (group.size() <= LARGE_GROUP) {
            pairs(group, true);
            return;
        }
        Groups<Integer, Integer> byYear = new Groups<>();
        for (int i : group) {
            byYear.add(advertisements.get(i).year, i);
        }
        for (List<Integer> year : byYear.all()) {
            pairs(year, true);
        }
    }

    private void pairs(List<Integer> group, boolean equalMiles) {
        for (int i = 0; i < group.size(); i++) {
            Advertisement one = advertisements.get(group.get(i));
            for (int j = i + 1; j < group.size(); j++) {
                Advertisement other = advertisements.get(group.get(j));
                if ((equalMiles || one.lastMiles != other.lastMiles) && !PairScore.forbidden(one, other)) {
                    pair.take(group.get(i), group.get(j));
                }
            }
        }
    }

    private void near(List<Integer> block) {
        long[] sorted = new long[block.size()];
        for (int i = 0; i < sorted.length; i++) {
            sorted[i] = Math.round(advertisements.get(block.get(i)).lastMiles * 10) << 32 | block.get(i);
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
