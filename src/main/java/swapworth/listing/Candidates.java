package swapworth.listing;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;

/**
 * The pairs of advertisements that are worth a score: those of one line that agree exactly in mileage or, within a model year, in
 * price, or whose mileages lie so near that one car may have driven the difference. All other pairs could not reach a threshold.
 */
final class Candidates {

    private static final double MOST_MILES_BETWEEN = 3_000;

    /** Takes one pair, the earlier row first. */
    interface Pair {
        void take(int first, int second);
    }

    private record Key(String vehicle, int year, long number) {
    }

    private record Block(String vehicle, int year) {
    }

    private Candidates() {
    }

    static void of(List<Advertisement> advertisements, int largeGroup, Pair pair) {
        Map<Key, List<Integer>> byMiles = new HashMap<>();
        Map<Key, List<Integer>> byMilesAnyYear = new HashMap<>();
        Map<Key, List<Integer>> byPrice = new HashMap<>();
        Map<Block, List<Integer>> blocks = new HashMap<>();
        for (int i = 0; i < advertisements.size(); i++) {
            Advertisement one = advertisements.get(i);
            blocks.computeIfAbsent(new Block(one.vehicle, one.year), k -> new ArrayList<>()).add(i);
            if (!Double.isNaN(one.lastMiles)) {
                byMiles.computeIfAbsent(new Key(one.vehicle, one.year, Math.round(one.lastMiles)), k -> new ArrayList<>(2)).add(i);
                byMilesAnyYear.computeIfAbsent(new Key(one.vehicle, 0, Math.round(one.lastMiles)), k -> new ArrayList<>(2)).add(i);
            }
            byPrice.computeIfAbsent(new Key(one.vehicle, one.year, Math.round(one.lastPrice)), k -> new ArrayList<>(2)).add(i);
        }
        byMilesAnyYear.forEach((key, group) -> {
            if (group.size() <= largeGroup) {
                pairs(advertisements, group, pair, true);
            }
        });
        byMiles.forEach((key, group) -> {
            if (byMilesAnyYear.getOrDefault(new Key(key.vehicle, 0, key.number), List.of()).size() > largeGroup) {
                pairs(advertisements, group, pair, true);
            }
        });
        byPrice.values().forEach(group -> {
            if (group.size() <= largeGroup) {
                pairs(advertisements, group, pair, false);
            }
        });
        blocks.values().forEach(block -> near(advertisements, block, pair));
    }

    private static void pairs(List<Advertisement> advertisements, List<Integer> group, Pair pair, boolean equalMiles) {
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

    private static void near(List<Advertisement> advertisements, List<Integer> block, Pair pair) {
        List<Integer> sorted = new ArrayList<>();
        for (int i : block) {
            if (!Double.isNaN(advertisements.get(i).lastMiles)) {
                sorted.add(i);
            }
        }
        sorted.sort(Comparator.comparingDouble((Integer i) -> advertisements.get(i).lastMiles).thenComparingInt(i -> i));
        for (int i = 0; i < sorted.size(); i++) {
            Advertisement one = advertisements.get(sorted.get(i));
            for (int j = i + 1; j < sorted.size(); j++) {
                Advertisement other = advertisements.get(sorted.get(j));
                if (other.lastMiles - one.lastMiles > MOST_MILES_BETWEEN) {
                    break;
                }
                boolean alreadyTaken = other.lastMiles == one.lastMiles || other.lastPrice == one.lastPrice;
                if (!alreadyTaken && !PairScore.forbidden(one, other)) {
                    pair.take(Math.min(sorted.get(i), sorted.get(j)), Math.max(sorted.get(i), sorted.get(j)));
                }
            }
        }
    }
}
