package swapworth.chart;

import static java.util.Objects.requireNonNull;

import java.util.List;

/**
 * What was asked for some cars, and what they were estimated at.
 *
 * @param name what the cars are, for the legend
 * @param asked the asked prices
 * @param middle the estimates, as many
 * @param low the low ends of the ranges of the estimates
 * @param high the high ends
 * @param labels a text for each car, shown when a pointer rests on it, and in the table; none, or as many as cars
 */
public record Estimates(String name, double[] asked, double[] middle, double[] low, double[] high, List<String> labels) {

    /** Copies the numbers in and checks that they are as many. */
    public Estimates {
        requireNonNull(name, "name");
        asked = asked.clone();
        middle = middle.clone();
        low = low.clone();
        high = high.clone();
        labels = List.copyOf(labels);
        Lengths.same("the estimates of '" + name + "'", asked, middle, low, high);
        Lengths.noneOrAll("the estimates of '" + name + "'", labels, asked);
    }

    @Override
    public double[] asked() {
        return asked.clone();
    }

    @Override
    public double[] middle() {
        return middle.clone();
    }

    @Override
    public double[] low() {
        return low.clone();
    }

    @Override
    public double[] high() {
        return high.clone();
    }

    /** Their name, and how many they are. */
    @Override
    public String toString() {
        return asked.length + (asked.length == 1 ? " estimate" : " estimates") + " of '" + name + "'";
    }
}
