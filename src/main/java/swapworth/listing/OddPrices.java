package swapworth.listing;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import swapworth.reading.RowProblem;
import swapworth.table.Cell;

/**
 * Flags prices that look mistyped: more than five times above or below the median of the fifteen rows of the same line that are
 * nearest in age (sound cars among sound ones, crashed, branded and dead ones among their like), and more than four robust standard deviations (1.4826 times the median absolute deviation of the line's
 * distances). Such rows stay in use: the model is robust against them.
 */
final class OddPrices {

    private static final int NEIGHBOURS = 15;
    private static final int FEWEST = 6;
    private static final LocalDate NO_DAY = LocalDate.of(2025, 1, 1);
    private static final double FACTOR = Math.log(5);

    private OddPrices() {
    }

    static List<Listing> flagged(List<Listing> listings, List<RowProblem> oddities) {
        List<Listing> result = new ArrayList<>(listings);
        List<List<Odd>> found = likes(listings).parallelStream().map(like -> oddOnes(listings, like)).toList();
        for (List<Odd> ofLine : found) {
            for (Odd odd : ofLine) {
                flag(listings.get(odd.place), odd, result, oddities);
            }
        }
        return result;
    }

    /** The places of the rows of each line, sound cars and troubled ones apart, where there are enough. */
    private static List<int[]> likes(List<Listing> listings) {
        Map<String, Integer> numbers = new HashMap<>();
        int[] group = new int[listings.size()];
        int[] sizes = new int[16];
        for (int i = 0; i < group.length; i++) {
            CarFacts facts = listings.get(i).facts();
            Integer number = numbers.get(facts.vehicle());
            if (number == null) {
                number = numbers.size();
                numbers.put(facts.vehicle(), number);
            }
            group[i] = 2 * number + (isTroubled(facts) ? 1 : 0);
            sizes = group[i] < sizes.length ? sizes : Arrays.copyOf(sizes, 2 * group[i]);
            sizes[group[i]]++;
        }
        int[][] places = new int[sizes.length][];
        List<int[]> enough = new ArrayList<>();
        for (int i = 0; i < group.length; i++) {
            int g = group[i];
            if (sizes[g] >= FEWEST) {
                if (places[g] == null) {
                    places[g] = new int[sizes[g]];
                    enough.add(places[g]);
                    sizes[g] = FEWEST;
                }
                places[g][sizes[g]++ - FEWEST] = i;
            }
        }
        return enough;
    }

    /** Crashed, branded and dead cars are cheap for a reason; they are neighbours of one another. */
    private static boolean isTroubled(CarFacts facts) {
        boolean branded = facts.title() != Title.CLEAN && facts.title() != Title.UNKNOWN;
        boolean still = facts.runs() != Runs.DRIVES && facts.runs() != Runs.UNKNOWN;
        return branded || still || !facts.damage().orElse(Set.of()).isEmpty();
    }

    /** A price that looks mistyped: its place among the listings and why. */
    private record Odd(int place, String message) {
    }

    private static List<Odd> oddOnes(List<Listing> listings, int[] line) {
        int n = line.length;
        long[] order = new long[n];
        for (int i = 0; i < n; i++) {
            order[i] = Math.round(100 * age(listings.get(line[i]))) << 32 | i;
        }
        Arrays.sort(order);
        double[] log = new double[n];
        for (int i = 0; i < n; i++) {
            log[i] = Math.log(listings.get(line[(int) order[i]]).price().amount());
        }
        double[] distance = new double[n];
        double[] size = new double[n];
        int window = Math.min(NEIGHBOURS, n);
        double[] near = Arrays.copyOf(log, window);
        Arrays.sort(near);
        int last = window - 1;
        for (int i = 0; i < n; i++) {
            int from = Math.max(0, Math.min(n - window, i - window / 2));
            if (from + window - 1 > last) {
                last++;
                replace(near, log[last - window], log[last]);
            }
            distance[i] = log[i] - middle(near);
            size[i] = Math.abs(distance[i]);
        }
        double limit = Math.max(FACTOR, 4 * 1.4826 * median(size.clone()));
        List<Odd> odd = new ArrayList<>();
        for (int i = 0; i < n; i++) {
            if (size[i] > limit) {
                odd.add(new Odd(line[(int) order[i]], "the price is " + Cell.format(Math.exp(size[i]), 1) + " times "
                        + (distance[i] > 0 ? "above" : "below") + " the middle of the " + window
                        + " like rows of the line nearest in age; is a digit too many or missing? The row is used"));
            }
        }
        return odd;
    }

    private static void flag(Listing listing, Odd odd, List<Listing> result, List<RowProblem> oddities) {
        oddities.add(new RowProblem(listing.origin().file(), listing.origin().line(), "price", listing.price().typed().toString(),
                RowProblem.Kind.ODD, odd.message));
        List<String> remarks = new ArrayList<>(listing.remarks());
        remarks.add(odd.message);
        result.set(odd.place, new Listing(listing.origin(), listing.id(), listing.seenOn(), listing.facts(), listing.price(),
                listing.outcome(), listing.endedOn(), listing.saved(), listing.source(), listing.note(), remarks));
    }

    /** A row without a day counts as seen on one and the same day, so that the rows stay in the order of their ages. */
    private static double age(Listing listing) {
        CarFacts facts = listing.facts();
        LocalDate day = listing.seenOn().orElse(NO_DAY);
        return facts.ageOn(day).orElse(0);
    }

    /** Puts one number into the place of another and keeps the order: each window differs from the last by one row. */
    private static void replace(double[] sorted, double gone, double come) {
        int at = Arrays.binarySearch(sorted, gone);
        while (at > 0 && sorted[at - 1] > come) {
            sorted[at] = sorted[at - 1];
            at--;
        }
        while (at < sorted.length - 1 && sorted[at + 1] < come) {
            sorted[at] = sorted[at + 1];
            at++;
        }
        sorted[at] = come;
    }

    private static double median(double[] values) {
        Arrays.sort(values);
        return middle(values);
    }

    private static double middle(double[] sorted) {
        int half = sorted.length / 2;
        return sorted.length % 2 == 1 ? sorted[half] : (sorted[half - 1] + sorted[half]) / 2;
    }
}
