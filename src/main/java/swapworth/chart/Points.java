package swapworth.chart;

import static java.util.Objects.requireNonNull;

import java.util.List;

/**
 * A group of points, drawn in one shape and hue.
 *
 * @param name what the points are, for the legend
 * @param x horizontal values; NaN for one that is not known
 * @param y vertical values, as many
 * @param labels a text for each point, shown when a pointer rests on it, and in the table; none, or as many as points
 */
public record Points(String name, double[] x, double[] y, List<String> labels) {

    /** Copies the numbers in and checks that they are as many. */
    public Points {
        requireNonNull(name, "name");
        x = x.clone();
        y = y.clone();
        labels = List.copyOf(labels);
        Lengths.same("the points of '" + name + "'", x, y);
        Lengths.noneOrAll("the points of '" + name + "'", labels, x);
    }

    /**
     * Points without texts.
     *
     * @param name what the points are
     * @param x horizontal values
     * @param y vertical values, as many
     * @return the group
     */
    public static Points of(String name, double[] x, double[] y) {
        return new Points(name, x, y, List.of());
    }

    @Override
    public double[] x() {
        return x.clone();
    }

    @Override
    public double[] y() {
        return y.clone();
    }

    /** Their name, and how many they are. */
    @Override
    public String toString() {
        return x.length + (x.length == 1 ? " point" : " points") + " of '" + name + "'";
    }
}
