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
    private static final int UNDATED = Integer.MIN_VALUE;

    /** Takes one pair, the earlier row first. */
    interface Pair {
        void take(int first, int second);
    }

    private final Advertisements of;
    private final PairScore score;
    /** The points that a pair must come to. */
    private final double least;
    private final Pair pair;

    private Candidates(Advertisements ofLine, PairScore score, double least, Pair pair) {
        this.of = ofLine;
        this.score = score;
        this.least = least;
        this.pair = pair;
    }

    /** Hands over each pair that may come to so many points. */
    static void of(Advertisements ofLine, PairScore score, double least, Pair pair) {
        new Candidates(ofLine, score, least, pair).find();
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
        long[] sorted = new long[block.length];
        for (int i = 0; i < block.length; i++) {
            sorted[i] = Math.round(of.lastMiles[block[i]] * 10) << 32 | block[i];
        }
        Arrays.sort(sorted);
        long[] byTrim = new long[sorted.length];
        int without = 0;
        for (int i = 0; i < sorted.length; i++) {
            int trim = of.trim[(int) sorted[i]];
            byTrim[i] = (long) trim << 32 | i;
            without += trim == 0 ? 1 : 0;
        }
        Arrays.sort(byTrim);
        if (without > 0) {
            new Near(sorted).pairsWithoutTrim();
        }
        for (int from = without, to; from < byTrim.length; from = to) {
            to = from;
            while (to < byTrim.length && byTrim[to] >> 32 == byTrim[from] >> 32) {
                to++;
            }
            if (to - from > 1) {
                long[] ofTrim = new long[to - from];
                for (int k = from; k < to; k++) {
                    ofTrim[k - from] = sorted[(int) byTrim[k]];
                }
                new Near(ofTrim).pairs();
            }
        }
    }

    /** Some advertisements in the order of their mileages, with what is compared first laid out in that order. */
    private final class Near {
        private final int[] number;
        private final double[] firstMiles;
        private final double[] lastMiles;
        private final double[] price;
        private final int[] firstDay;
        private final int[] lastDay;
        private final int[] region;
        private final int[] note;
        private final int[] options;
        /** How many miles may lie between two of one region, or of one that is not known, and between two of different regions. */
        private final double milesBetween;
        private final double milesBetweenRegions;

        /** Those whose numbers stand in the last 32 bits. */
        Near(long[] sorted) {
            int n = sorted.length;
            number = new int[n];
            firstMiles = new double[n];
            lastMiles = new double[n];
            price = new double[n];
            firstDay = new int[n];
            lastDay = new int[n];
            region = new int[n];
            note = new int[n];
            options = new int[n];
            milesBetween = score.mostMilesBetween((int) sorted[0], true, least);
            milesBetweenRegions = score.mostMilesBetween((int) sorted[0], false, least);
            for (int i = 0; i < n; i++) {
                int one = (int) sorted[i];
                number[i] = one;
                firstMiles[i] = of.firstMiles[one];
                lastMiles[i] = of.lastMiles[one];
                price[i] = of.lastPrice[one];
                firstDay[i] = of.dated[one] ? of.firstDay[one] : UNDATED;
                lastDay[i] = of.lastDay[one];
                region[i] = of.region[one];
                note[i] = of.note[one];
                options[i] = of.options[one];
            }
        }

        void pairs() {
            for (int i = 0; i < number.length; i++) {
                double most = lastMiles[i] + MOST_MILES_BETWEEN;
                for (int j = i + 1; j < number.length && lastMiles[j] <= most; j++) {
                    take(i, j);
                }
            }
        }

        /** The pairs of those without a trim with all others. */
        void pairsWithoutTrim() {
            for (int i = 0; i < number.length; i++) {
                for (int j = i + 1; j < number.length && lastMiles[j] - lastMiles[i] <= MOST_MILES_BETWEEN; j++) {
                    if (of.trim[number[i]] == 0 || of.trim[number[j]] == 0) {
                        take(i, j);
                    }
                }
            }
        }

        private void take(int i, int j) {
            if (lastMiles[j] == lastMiles[i] || price[j] == price[i] || !canBeOne(i, j)) {
                return;
            }
            int one = Math.min(number[i], number[j]);
            int other = Math.max(number[i], number[j]);
            if (!score.forbidden(one, other)) {
                pair.take(one, other);
            }
        }

        /**
         * Whether the mileages let two be one car, or the texts may: a first look, for most pairs fail here. The one that was seen later must
         * not have fewer miles, what lies between must have been driven in the time between, and be worth enough points.
         */
        private boolean canBeOne(int i, int j) {
            double up = firstMiles[j] - lastMiles[i];
            double down = firstMiles[i] - lastMiles[j];
            if (up == 0 || down == 0 || note[i] != 0 && note[i] == note[j] || options[i] != 0 && options[i] == options[j]) {
                return true;
            }
            double most = region[i] == region[j] || region[i] == 0 || region[j] == 0 ? milesBetween : milesBetweenRegions;
            return up > 0 && up <= most && canBeDriven(up, i, j) || down > 0 && down <= most && canBeDriven(down, j, i);
        }

        /** Whether so many miles may lie between one and another that was seen later, or on a day that is not known to be another. */
        private boolean canBeDriven(double miles, int earlier, int later) {
            return firstDay[earlier] == UNDATED || firstDay[later] == UNDATED || firstDay[earlier] == firstDay[later]
                    || firstDay[earlier] < firstDay[later] && PairScore.isLikely(miles, firstDay[later] - lastDay[earlier]);
        }
    }
}
