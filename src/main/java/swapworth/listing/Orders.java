package swapworth.listing;

import java.util.Arrays;

/**
 * The advertisements of one line in the orders in which those stand together that may show one car. Mileages and prices are sorted once
 * each; by model year and trim, of which there are few, advertisements are told apart without losing the order they had.
 */
final class Orders {
    /** Of two miles the fewer come first if they differ by this part of one. */
    private static final int PARTS_OF_A_MILE = 256;

    /** The model years, ascending, and of each advertisement the place of its year among them. */
    final int[] years;
    final int[] yearOf;
    /** Those with a mileage, ascending, and of equal ones in the order of the files. */
    final int[] byMiles;
    /** The same by model year, and within a year by mileage. */
    final int[] byYear;
    /** The same by model year, trim and mileage. */
    final int[] byYearAndTrim;
    /** All, by {@link #price}, model year and trim. */
    final int[] byPrice;
    private final Advertisements of;

    Orders(Advertisements of) {
        this.of = of;
        int n = of.count();
        years = distinct(of.year);
        yearOf = new int[n];
        long[] keys = new long[n];
        int[] all = new int[n];
        int known = 0;
        for (int i = 0; i < n; i++) {
            all[i] = i;
            yearOf[i] = Arrays.binarySearch(years, of.year[i]);
            if (!Double.isNaN(of.lastMiles[i])) {
                // The half makes those one that round to one mile.
                keys[known++] = (long) ((of.lastMiles[i] + 0.5) * PARTS_OF_A_MILE) << 32 | i;
            }
        }
        byMiles = sorted(keys, known, all);
        byYear = inOrderOfYears(byMiles);
        int trims = of.columns.trim.count();
        byYearAndTrim = inOrderOfYears(by(of.trim, trims, byMiles));
        int[] like = inOrderOfYears(by(of.trim, trims, all));
        for (int k = 0; k < n; k++) {
            keys[k] = (long) price(like[k]) << 32 | k;
        }
        byPrice = sorted(keys, n, like);
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

    private int placeOfPrice(long whole) {
        int from = 0;
        int to = byPrice.length;
        while (from < to) {
            int middle = from + to >>> 1;
            if (price(byPrice[middle]) < whole) {
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
        int to = byMiles.length;
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

    /** The advertisements whose places stand in the last 32 bits of some keys, in the order of the keys. */
    private static int[] sorted(long[] keys, int count, int[] places) {
        Arrays.sort(keys, 0, count);
        int[] sorted = new int[count];
        for (int k = 0; k < count; k++) {
            sorted[k] = places[(int) keys[k]];
        }
        return sorted;
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
