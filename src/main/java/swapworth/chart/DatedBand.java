package swapworth.chart;

import static java.util.Objects.requireNonNull;

import java.time.LocalDate;
import java.util.List;

/**
 * A line over time with two bands around it.
 *
 * @param name what the line is, for the legend
 * @param dates the dates, ascending
 * @param middle the line at each date
 * @param low80 the lower edge of the 80 % band
 * @param high80 its upper edge
 * @param low95 the lower edge of the 95 % band
 * @param high95 its upper edge
 */
public record DatedBand(String name, List<LocalDate> dates, double[] middle, double[] low80, double[] high80, double[] low95,
        double[] high95) {

    /** Copies the numbers in and checks that they are as many and ascending in time. */
    public DatedBand {
        requireNonNull(name, "name");
        dates = List.copyOf(dates);
        middle = middle.clone();
        low80 = low80.clone();
        high80 = high80.clone();
        low95 = low95.clone();
        high95 = high95.clone();
        Lengths.same("the band '" + name + "'", middle, low80, high80, low95, high95);
        if (dates.size() != middle.length) {
            throw new IllegalArgumentException("the band '" + name + "': " + dates.size() + " dates beside " + middle.length
                    + " numbers");
        }
        for (int i = 1; i < dates.size(); i++) {
            if (!dates.get(i).isAfter(dates.get(i - 1))) {
                throw new IllegalArgumentException("the band '" + name + "' does not go forward in time at " + dates.get(i));
            }
        }
    }

    @Override
    public double[] middle() {
        return middle.clone();
    }

    @Override
    public double[] low80() {
        return low80.clone();
    }

    @Override
    public double[] high80() {
        return high80.clone();
    }

    @Override
    public double[] low95() {
        return low95.clone();
    }

    @Override
    public double[] high95() {
        return high95.clone();
    }

    /** Its name, and from when to when. */
    @Override
    public String toString() {
        return "band '" + name + "' of " + span(dates);
    }

    /** How many dates, and from when to when. */
    static String span(List<LocalDate> dates) {
        return dates.size() + (dates.size() == 1 ? " date" : " dates")
                + (dates.isEmpty() ? "" : ", " + dates.get(0) + " to " + dates.get(dates.size() - 1));
    }
}
