package swapworth.market;

import java.time.YearMonth;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.stream.IntStream;

/**
 * In which month the level stood highest, as far as the listings can tell.
 *
 * @param months the months seen, in order
 * @param chances the probability that each of them is the highest; together 1
 */
public record Peak(List<YearMonth> months, double[] chances) {

    /** Copies the lists in and checks their sizes. */
    public Peak {
        months = List.copyOf(months);
        chances = chances.clone();
        if (months.isEmpty() || months.size() != chances.length) {
            throw new IllegalArgumentException(months.size() + " months meet " + chances.length + " chances");
        }
    }

    @Override
    public double[] chances() {
        return chances.clone();
    }

    /**
     * The month that is most probably the highest.
     *
     * @return the earliest of those with the largest chance
     */
    public YearMonth month() {
        return months.get(order().get(0));
    }

    /**
     * The fewest months that together hold the peak with a stated probability: the most probable ones.
     *
     * @param probability above 0 and below 1
     * @return in order of time
     * @throws IllegalArgumentException if the probability is not between 0 and 1
     */
    public List<YearMonth> within(double probability) {
        if (!(probability > 0 && probability < 1)) {
            throw new IllegalArgumentException("a probability must lie between 0 and 1, not " + probability);
        }
        List<YearMonth> held = new ArrayList<>();
        double sum = 0;
        for (int k : order()) {
            if (sum >= probability) {
                break;
            }
            held.add(months.get(k));
            sum += chances[k];
        }
        held.sort(Comparator.naturalOrder());
        return held;
    }

    private List<Integer> order() {
        return IntStream.range(0, chances.length).boxed().sorted(Comparator.comparingDouble((Integer k) -> -chances[k])).toList();
    }

    /** The month that is most probably the highest, and how probably. */
    @Override
    public String toString() {
        int highest = order().get(0);
        return "highest most probably in " + months.get(highest) + ", chance " + Figures.chance(chances[highest]).shown() + ", of "
                + months.size() + (months.size() == 1 ? " month" : " months");
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof Peak peak && months.equals(peak.months) && Arrays.equals(chances, peak.chances);
    }

    @Override
    public int hashCode() {
        return months.hashCode() * 31 + Arrays.hashCode(chances);
    }
}
