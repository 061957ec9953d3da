package swapworth.listing;

import java.util.Arrays;

/**
 * The pairs of advertisements of one line that are worth a score: those that agree exactly in mileage or, within a model year, in
 * price, or whose mileages lie so near that one car may have driven the difference. All other pairs could not reach a threshold.
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

    private Candidates(Advertisements ofLine, Orders orders, PairScore score, double least, Pair pair) {
        this.of = ofLine;
        this.orders = orders;
        this.score = score;
        this.pair = pair;
        asked = new double[orders.years.length];
        askedOfRegions = new double[orders.years.length];
        for (int year = 0; year < asked.length; year++) {
            asked[year] = score.asked(year, true, least);
            askedOfRegions[year] = score.asked(year, false, least);
        }
    }

    /** Hands over each pair that may come to so many points. */
    static void of(Advertisements ofLine, Orders orders, PairScore score, double least, Pair pair) {
        new Candidates(ofLine, orders, score, least, pair).find();
    }

    private void find() {
        int[] byMiles = orders.byMiles;
        for (int from = 0, to; from < byMiles.length; from = to) {
            to = from + 1;
            while (to < byMiles.length && orders.miles(byMiles[to]) == orders.miles(byMiles[from])) {
                to++;
            }
            sameMiles(from, to);
        }
        new Laid(orders.byPrice).pairsOfOnePrice();
        new Laid(orders.byYearAndTrim).nearOnes();
        if (orders.isOneWithoutTrim()) {
            new Laid(orders.byYear).nearOnesWithoutTrim();
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
            while (end < byYear.length && of.year[byYear[end]] == of.year[byYear[begin]]) {
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
        private final int[] year;
        private final int[] trim;
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
            year = new int[n];
            trim = new int[n];
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
                year[i] = orders.yearOf[one];
                trim[i] = of.trim[one];
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
            int n = number.length;
            for (int from = 0, to; from < n; from = to) {
                int whole = orders.price(number[from]);
                int withoutTrim = from;
                to = from;
                while (to < n && year[to] == year[from] && orders.price(number[to]) == whole) {
                    withoutTrim += trim[to] == 0 ? 1 : 0;
                    to++;
                }
                for (int i = from; to - from <= LARGE_GROUP && i < to; i++) {
                    for (int j = i + 1; j < to && (i < withoutTrim || trim[j] == trim[i]); j++) {
                        if (lastMiles[i] != lastMiles[j] && canBeOne(i, j)) {
                            take(number[i], number[j]);
                        }
                    }
                }
            }
        }

        /** The pairs of one model year and trim whose mileages lie near each other. */
        void nearOnes() {
            int n = number.length;
            for (int i = 0; i < n; i++) {
                double most = trim[i] == 0 ? -1 : lastMiles[i] + MOST_MILES_BETWEEN;
                for (int j = i + 1; j < n && lastMiles[j] <= most && trim[j] == trim[i] && year[j] == year[i]; j++) {
                    takeUnlessEqual(i, j);
                }
            }
        }

        /** The pairs of one model year, of which one has no trim, whose mileages lie near each other. */
        void nearOnesWithoutTrim() {
            int n = number.length;
            for (int i = 0; i < n; i++) {
                for (int j = i + 1; j < n && year[j] == year[i] && lastMiles[j] - lastMiles[i] <= MOST_MILES_BETWEEN; j++) {
                    if (trim[i] == 0 || trim[j] == 0) {
                        takeUnlessEqual(i, j);
                    }
                }
            }
        }

        /** Those of one mileage or price are taken elsewhere. */
        private void takeUnlessEqual(int i, int j) {
            if (lastMiles[j] != lastMiles[i] && lastPrice[j] != lastPrice[i] && canBeOne(i, j)) {
                take(number[i], number[j]);
            }
        }

        /**
         * Whether two of one model year may come to the points asked for: a first look, for most pairs fail here. The one that was seen later
         * must not have fewer miles, what lies between must have been driven in the time between, or the texts must be equal.
         */
        private boolean canBeOne(int i, int j) {
            double up = firstMiles[j] - lastMiles[i];
            double down = firstMiles[i] - lastMiles[j];
            if (up == 0 || down == 0 || Double.isNaN(up)) {
                return true;
            }
            boolean sameText = note[i] != 0 && note[i] == note[j] || options[i] != 0 && options[i] == options[j];
            boolean isUp = up > 0 && canBeDriven(up, i, j);
            boolean isDown = down > 0 && canBeDriven(down, j, i);
            if (!isUp && !isDown && !sameText) {
                return false;
            }
            boolean sameRegion = region[i] == region[j] || region[i] == 0 || region[j] == 0;
            double points = (sameRegion ? asked : askedOfRegions)[year[i]] - mostForPrices(i, j)
                    - (sameText ? score.texts(number[i], number[j]) : 0);
            return isUp && score.mayEarn(points, up) || isDown && score.mayEarn(points, down) || points <= PairScore.MILEAGE_JUMPED;
        }

        private double mostForPrices(int i, int j) {
            boolean canBeEqual = lastPrice[i] == lastPrice[j] || firstPrice[i] != lastPrice[i] || firstPrice[j] != lastPrice[j];
            return canBeEqual ? PairScore.MOST_FOR_PRICE : PairScore.otherPrice(lastPrice[i], lastPrice[j]);
        }

        /** Whether so many miles may lie between one and another that was seen later, or on a day that is not known to be another. */
        private boolean canBeDriven(double miles, int earlier, int later) {
            return firstDay[earlier] == UNDATED || firstDay[later] == UNDATED || firstDay[earlier] == firstDay[later]
                    || firstDay[earlier] < firstDay[later] && PairScore.isLikely(miles, firstDay[later] - lastDay[earlier]);
        }
    }
}
