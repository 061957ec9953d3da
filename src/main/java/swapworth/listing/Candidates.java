package swapworth.listing;

import java.util.Arrays;

/**
 * The pairs of advertisements of one line that are worth a score: those that agree exactly in mileage or, within a model year, in
 * price, or whose mileages lie so near that one car may have driven the difference, the model year of one and the year of registration
 * of the other being counted as one where they lie next to each other. All other pairs could hardly reach a threshold.
 */
final class Candidates {

    private static final double MOST_MILES_BETWEEN = 3_000;
    private static final int LARGE_GROUP = 400;
    private static final int UNDATED = Integer.MIN_VALUE;

    /** Takes one pair, the earlier row first. */
    interface Pair {
        void take(int first, int second);
    }

    private final Advertisements of;
    private final Orders orders;
    private final PairScore score;
    private final Pair pair;
    /** The points that mileage, price and texts of two of one region, or of one that is not known, must earn, by model year. */
    private final double[] asked;
    /** The same for two of different regions. */
    private final double[] askedOfRegions;

    /** How many miles may lie between two whose price is equal. */
    private final double[] reach;
    private final double[] reachOfRegions;

    private Candidates(Advertisements ofLine, Orders orders, PairScore score, double least, Pair pair) {
        this.of = ofLine;
        this.orders = orders;
        this.score = score;
        this.pair = pair;
        asked = new double[orders.years.length];
        askedOfRegions = new double[orders.years.length];
        reach = new double[orders.years.length];
        reachOfRegions = new double[orders.years.length];
        for (int year = 0; year < asked.length; year++) {
            asked[year] = score.askedInOneRegion(year, least);
            askedOfRegions[year] = score.askedAcrossRegions(year, least);
            reach[year] = score.reach(asked[year] - Rarities.MOST_FOR_PRICE);
            reachOfRegions[year] = score.reach(askedOfRegions[year] - Rarities.MOST_FOR_PRICE);
        }
    }

    /** Hands over each pair that may come to so many points. */
    static void of(Advertisements ofLine, Orders orders, PairScore score, double least, Pair pair) {
        new Candidates(ofLine, orders, score, least, pair).find();
    }

    private void find() {
        int[] byMiles = orders.byMiles;
        for (int from = 0, to; from < orders.withMiles; from = to) {
            to = from + 1;
            while (to < orders.withMiles && orders.miles(byMiles[to]) == orders.miles(byMiles[from])) {
                to++;
            }
            sameMiles(from, to);
        }
        Laid like = new Laid(orders.like);
        like.pairsOfOnePrice();
        like.nearOnes();
        if (orders.isOneWithoutTrim()) {
            new Laid(orders.byYear).nearOnesWithoutTrim();
        }
        if (orders.years.length > 0 && orders.years[0] < 0 && orders.years[orders.years.length - 1] > 0) {
            new Laid(orders.byYear).nearOnesOfEitherYear();
        }
    }

    /** A mileage that hundreds share says so little that other years, or unknown ones, need not be compared. */
    private void sameMiles(int from, int to) {
        int[] group = Arrays.copyOfRange(orders.byMiles, from, to);
        if (group.length <= LARGE_GROUP) {
            pairs(group, 0, group.length);
            return;
        }
        int[] byYear = orders.inOrderOfYears(group);
        for (int begin = 0, end; begin < byYear.length; begin = end) {
            end = begin + 1;
            while (end < byYear.length && orders.yearOf[byYear[end]] == orders.yearOf[byYear[begin]]) {
                end++;
            }
            pairs(byYear, begin, end);
        }
    }

    private void pairs(int[] group, int from, int to) {
        for (int i = from; i < to; i++) {
            for (int j = i + 1; j < to; j++) {
                take(group[i], group[j]);
            }
        }
    }

    private void take(int one, int other) {
        int first = Math.min(one, other);
        int second = Math.max(one, other);
        if (!score.forbidden(first, second)) {
            pair.take(first, second);
        }
    }

    /** The advertisements in some order, with what is compared first laid out in that order. */
    private final class Laid {
        private final int[] number;
        private final double[] firstMiles;
        private final double[] lastMiles;
        private final double[] firstPrice;
        private final double[] lastPrice;
        private final int[] firstDay;
        private final int[] lastDay;
        private final int[] region;
        private final int[] note;
        private final int[] options;

        Laid(int[] numbers) {
            int n = numbers.length;
            number = numbers;
            firstMiles = new double[n];
            lastMiles = new double[n];
            firstPrice = new double[n];
            lastPrice = new double[n];
            firstDay = new int[n];
            lastDay = new int[n];
            region = new int[n];
            note = new int[n];
            options = new int[n];
            for (int i = 0; i < n; i++) {
                int one = number[i];
                firstMiles[i] = of.firstMiles[one];
                lastMiles[i] = of.lastMiles[one];
                firstPrice[i] = of.firstPrice[one];
                lastPrice[i] = of.lastPrice[one];
                firstDay[i] = of.dated[one] ? of.firstDay[one] : UNDATED;
                lastDay[i] = of.lastDay[one];
                region[i] = of.region[one];
                note[i] = of.note[one];
                options[i] = of.options[one];
            }
        }

        /** The pairs of one model year and price: those of one trim, and of those without a trim with all others. */
        void pairsOfOnePrice() {
            int[] byPrice = orders.byPrice;
            for (int from = 0, to; from < byPrice.length; from = to) {
                int year = year(byPrice[from]);
                int price = orders.price(number[byPrice[from]]);
                to = from + 1;
                while (to < byPrice.length && orders.price(number[byPrice[to]]) == price && year(byPrice[to]) == year) {
                    to++;
                }
                if (to - from <= LARGE_GROUP) {
                    pairsOfOnePrice(from, to, year);
                }
            }
        }

        /** The same among those from one place up to another in the order of prices, by trim, those without one first. */
        private void pairsOfOnePrice(int from, int to, int year) {
            int[] byPrice = orders.byPrice;
            for (int k = from; k < to; k++) {
                int i = byPrice[k];
                int trim = trim(i);
                for (int m = k + 1; m < to && (trim == 0 || trim(byPrice[m]) == trim); m++) {
                    int j = byPrice[m];
                    if (lastMiles[i] != lastMiles[j] && canBeOne(i, j, year)) {
                        take(number[i], number[j]);
                    }
                }
            }
        }

        /** The pairs of one model year and trim whose mileages lie near each other. */
        void nearOnes() {
            for (int from = 0, to; from < number.length; from = to) {
                int year = year(from);
                int trim = trim(from);
                to = from + 1;
                while (to < number.length && trim(to) == trim && year(to) == year) {
                    to++;
                }
                for (int i = from; trim != 0 && i < to; i++) {
                    double most = lastMiles[i] + MOST_MILES_BETWEEN;
                    for (int j = i + 1; j < to && lastMiles[j] <= most; j++) {
                        takeUnlessEqual(i, j, year);
                    }
                }
            }
        }

        /** The pairs of one model year, of which one has no trim, whose mileages lie near each other. */
        void nearOnesWithoutTrim() {
            for (int i = 0; i < number.length; i++) {
                int year = year(i);
                double most = lastMiles[i] + MOST_MILES_BETWEEN;
                for (int j = i + 1; j < number.length && year(j) == year && lastMiles[j] <= most; j++) {
                    if (trim(i) == 0 || trim(j) == 0) {
                        takeUnlessEqual(i, j, year);
                    }
                }
            }
        }

        /** The pairs of a year of registration and a model year of one car whose mileages lie near each other. */
        void nearOnesOfEitherYear() {
            for (int from = 0, to; from < number.length && orders.years[year(from)] < 0; from = to) {
                int registered = -orders.years[year(from)];
                to = from + 1;
                while (to < number.length && year(to) == year(from)) {
                    to++;
                }
                for (int modelYear = registered - 1; modelYear <= registered + 1; modelYear++) {
                    int year = Arrays.binarySearch(orders.years, modelYear);
                    if (year >= 0) {
                        nearOnes(from, to, year);
                    }
                }
            }
        }

        /** The pairs of some of one year, in the order of their mileages, and all of another whose mileages lie near each other. */
        private void nearOnes(int from, int to, int otherYear) {
            int begin = placeOf(otherYear);
            int end = placeOf(otherYear + 1);
            for (int i = from; i < to; i++) {
                while (begin < end && lastMiles[begin] < lastMiles[i] - MOST_MILES_BETWEEN) {
                    begin++;
                }
                for (int j = begin; j < end && lastMiles[j] <= lastMiles[i] + MOST_MILES_BETWEEN; j++) {
                    if (lastMiles[j] != lastMiles[i] && canBeOne(i, j, otherYear)) {
                        take(number[i], number[j]);
                    }
                }
            }
        }

        /** Where those of a year begin, if the order is that of the years. */
        private int placeOf(int itsYear) {
            int from = 0;
            int to = number.length;
            while (from < to) {
                int middle = from + to >>> 1;
                if (year(middle) < itsYear) {
                    from = middle + 1;
                } else {
                    to = middle;
                }
            }
            return from;
        }

        private int year(int i) {
            return orders.yearOf[number[i]];
        }

        private int trim(int i) {
            return of.trim[number[i]];
        }

        /** Those of one mileage or price are taken elsewhere. */
        private void takeUnlessEqual(int i, int j, int year) {
            if (lastMiles[j] != lastMiles[i] && lastPrice[j] != lastPrice[i] && canBeOne(i, j, year)) {
                take(number[i], number[j]);
            }
        }

        /**
         * Whether two of one model year may come to the points asked for: a first look, for most pairs fail here. The one that was seen
         * later must not have fewer miles, and what lies between must have been driven in the time between and be worth enough; or the
         * texts must be equal.
         */
        private boolean canBeOne(int i, int j, int year) {
            double up = firstMiles[j] - lastMiles[i];
            double down = firstMiles[i] - lastMiles[j];
            if (up == 0 || down == 0 || Double.isNaN(up)) {
                return true;
            }
            boolean sameText = note[i] != 0 && note[i] == note[j] || options[i] != 0 && options[i] == options[j];
            boolean sameRegion = region[i] == region[j] || region[i] == 0 || region[j] == 0;
            double most = sameText ? Double.POSITIVE_INFINITY : (sameRegion ? reach : reachOfRegions)[year];
            boolean isUp = up > 0 && up <= most && canBeDriven(up, i, j);
            boolean isDown = down > 0 && down <= most && canBeDriven(down, j, i);
            if (!isUp && !isDown && !sameText) {
                return false;
            }
            double points = (sameRegion ? asked : askedOfRegions)[year] - mostForPrices(i, j)
                    - (sameText ? score.texts(number[i], number[j]) : 0);
            double limit = score.reach(points);
            return isUp && up <= limit || isDown && down <= limit || points <= PairScore.MILEAGE_JUMPED;
        }

        private double mostForPrices(int i, int j) {
            boolean canBeEqual = lastPrice[i] == lastPrice[j] || firstPrice[i] != lastPrice[i] || firstPrice[j] != lastPrice[j];
            return canBeEqual ? Rarities.MOST_FOR_PRICE : PairScore.otherPrice(lastPrice[i], lastPrice[j]);
        }

        /** Whether so many miles may lie between one and another that was seen later, or on a day that is not known to be another. */
        private boolean canBeDriven(double miles, int earlier, int later) {
            return firstDay[earlier] == UNDATED || firstDay[later] == UNDATED || firstDay[earlier] == firstDay[later]
                    || firstDay[earlier] < firstDay[later] && PairScore.isLikely(miles, firstDay[later] - lastDay[earlier]);
        }
    }
}
