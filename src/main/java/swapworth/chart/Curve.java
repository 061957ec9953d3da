package swapworth.chart;

import static java.util.Objects.requireNonNull;
import static swapworth.chart.DrawnData.number;

/**
 * A fitted curve with a band around it.
 *
 * @param name what the curve is, for the legend
 * @param bandName what the band is, for instance {@code 80 % range of one car}
 * @param x horizontal values, ascending; none for no curve
 * @param middle the curve at each of them
 * @param low the lower edge of the band
 * @param high the upper edge of the band
 */
public record Curve(String name, String bandName, double[] x, double[] middle, double[] low, double[] high) {

    /** Copies the numbers in and checks that they are as many and ascending. */
    public Curve {
        requireNonNull(name, "name");
        requireNonNull(bandName, "bandName");
        x = x.clone();
        middle = middle.clone();
        low = low.clone();
        high = high.clone();
        Lengths.same("the curve '" + name + "'", x, middle, low, high);
        for (int i = 1; i < x.length; i++) {
            if (!(x[i] > x[i - 1])) {
                throw new IllegalArgumentException("the curve '" + name + "' does not go from left to right at " + x[i]);
            }
        }
    }

    /**
     * No curve.
     *
     * @return a curve without places
     */
    public static Curve none() {
        double[] nothing = {};
        return new Curve("", "", nothing, nothing, nothing, nothing);
    }

    /** One of its places: the curve there, within its band by a name. */
    String inWords(int place, String band) {
        return number(middle[place]) + " (" + (band.isEmpty() ? "" : band + " ") + number(low[place]) + " to " + number(high[place])
                + ") at " + number(x[place]);
    }

    @Override
    public double[] x() {
        return x.clone();
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

    /** Its name, and how many places it has. */
    @Override
    public String toString() {
        return "curve '" + name + "' of " + x.length + (x.length == 1 ? " place" : " places");
    }
}
