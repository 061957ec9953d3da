package swapworth.listing;

import java.util.Arrays;

/**
 * The advertisements of one line in the orders in which those stand together that may show one car. Mileages and prices are sorted once
 * each; by model year and trim, of which there are few, advertisements are told apart without losing the order they had.
 */
final class Orders {
    /** Of two miles the fewer come first if they differ by this part of one. */
    private static final int PARTS_OF_A_MILE = 256;

    /** The years by {@link Advertisements#year}, ascending, and of each advertisement the place of its year among them. */
    final int[] years;
    final int[] yearOf;
    /** By mileage, ascending, of equal ones in the order of the files, and last those without one. */
    final int[] byMiles;
    /** How many have a mileage. */
    final int withMiles;
    /** By model year, and within a year by mileage. */
    final int[] byYear;
    /** By model year, trim and mileage. */
    final int[] like;
    /** The places of {@link #like} by {@link #price}, and within a price ascending. */
    final int[] byPrice;
    private final Advertisements of;

    Orders(Advertisements of) {
        this.of = of;
        int n = of.count();
        yearOf = new int[n];
        Arrays.setAll(yearOf, of::year);
        years = distinct(yearOf);
        long[] keys = new long[n];
        int known = 0;
        for (int i = 0; i < n; i++) {
            yearOf[i] = Arrays.binarySearch(years, yearOf[i]);
            known += Double.isNaN(of.lastMiles[i]) ? 0 : 1;
            keys[i] = milesForOrder(of.lastMiles[i]) << 32 | i;
        }
        withMiles = known;
        byMiles = lastBits(keys);
        byYear = inOrderOfYears(byMiles);
        like = inOrderOfYears(by(of.trim, of.columns.trim.count(), byMiles));
        for (int k = 0; k < n; k++) {
            keys[k] = (long) price(like[k]) << 32 | k;
        }
        byPrice = lastBits(keys);
    }

    private static long milesForOrder(double miles) {
        // The half makes those one that round to one mile.
        return Double.isNaN(miles) ? Integer.MAX_VALUE : (long) Math.min((miles + 0.5) * PARTS_OF_A_MILE, Integer.MAX_VALUE - 1);
    }

    /** The whole price of an advertisement; one above two thousand million by a number that hardly any other has. */
    int price(int one) {
        return price(of.lastPrice[one]);
    }

    private static int price(double price) {
        return Long.hashCode(Math.round(price));
    }

    /** How many advertisements have a whole price. */
    int countOfPrice(double price) {
        long whole = price(price);
        return placeOfPrice(whole + 1) - placeOfPrice(whole);
    }

    /** The price in the middle of all; of none any will do. */
    double middlePrice() {
        return byPrice.length == 0 ? 1 : of.lastPrice[like[byPrice[byPrice.length / 2]]];
    }

    private int placeOfPrice(long whole) {
        int from = 0;
        int to = byPrice.length;
        while (from < to) {
            int middle = from + to >>> 1;
            if (price(like[byPrice[middle]]) < whole) {
                from = middle + 1;
            } else {
                to = middle;
            }
        }
        return from;
    }

    /** The whole miles of an advertisement. */
    long miles(int one) {
        return Math.round(of.lastMiles[one]);
    }

    /** How many advertisements have fewer whole miles: the place among {@link #byMiles} at which those with so many begin. */
    int placeOfMiles(long whole) {
        int from = 0;
        int to = withMiles;
        while (from < to) {
            int middle = from + to >>> 1;
            if (miles(byMiles[middle]) < whole) {
                from = middle + 1;
            } else {
                to = middle;
            }
        }
        return from;
    }

    /** Some advertisements by model year, those of one year in the order they had. */
    int[] inOrderOfYears(int[] some) {
        return by(yearOf, years.length, some);
    }

    boolean isOneWithoutTrim() {
        for (int trim : of.trim) {
            if (trim == 0) {
                return true;
            }
        }
        return false;
    }

    private static int[] distinct(int[] values) {
        int[] sorted = values.clone();
        Arrays.sort(sorted);
        int count = 0;
        for (int value : sorted) {
            if (count == 0 || sorted[count - 1] != value) {
                sorted[count++] = value;
            }
        }
        return Arrays.copyOf(sorted, count);
    }

    /** The last 32 bits of some keys, in the order of the keys. */
    private static int[] lastBits(long[] keys) {
        Arrays.sort(keys);
        int[] bits = new int[keys.length];
        for (int k = 0; k < bits.length; k++) {
            bits[k] = (int) keys[k];
        }
        return bits;
    }

    /**
     * The places of some groups, those of each together and ascending.
     *
     * @param groupOf the group of each place
     * @param begin is set to where each group begins and, behind them, where the last one ends
     */
    static int[] grouped(int[] groupOf, int[] begin) {
        for (int group : groupOf) {
            begin[group + 1]++;
        }
        for (int group = 1; group < begin.length; group++) {
            begin[group] += begin[group - 1];
        }
        int[] next = begin.clone();
        int[] places = new int[groupOf.length];
        for (int place = 0; place < groupOf.length; place++) {
            places[next[groupOf[place]]++] = place;
        }
        return places;
    }

    /** Advertisements in the order of small numbers, those of one number in the order they had. */
    private static int[] by(int[] numberOf, int numbers, int[] before) {
        int[] next = new int[numbers + 1];
        for (int one : before) {
            next[numberOf[one] + 1]++;
        }
        for (int number = 0; number < numbers; number++) {
            next[number + 1] += next[number];
        }
        int[] after = new int[before.length];
        for (int one : before) {
            after[next[numberOf[one]]++] = one;
        }
        return after;
    }
}
