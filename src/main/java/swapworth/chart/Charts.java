package swapworth.chart;

import java.time.LocalDate;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.Function;
import swapworth.table.Table;

/**
 * Kinds of charts of plain numbers, one method each; {@link MarketCharts}, {@link TimeCharts}, {@link DonorCharts},
 * {@link SwapCharts} and {@link ProjectCharts} draw results with them. Labels of axes carry their unit, such as
 * {@code mileage, mi}. Values that are not finite, or beyond 10<sup>15</sup>, are not drawn but stay in the table, blank if not
 * finite; values so far off that they would flatten everything else are drawn at the edge, and the picture says how many. Without
 * any value the picture is a panel that says so. The same input gives the same bytes on every machine.
 */
public final class Charts {

    static final int TALL = 270;
    static final int MIDDLING = 225;
    static final int ROW = 28;
    static final int TICKS_ACROSS = 6;
    static final int TICKS_UP = 7;
    /** What stands where a picture has no value and nobody knows more of it. */
    static final String NOTHING = "no data";

    static final Painter PAINTER = new XChartPainter();

    static final Ink REFERENCE = new Ink(0, Ink.Manner.DASH);

    private Charts() {
    }

    /**
     * Loads what charts need in the background, so that the first one is drawn sooner. Nothing depends on it, and a machine that
     * cannot draw says so where a chart is asked for.
     */
    public static void prepare() {
        Thread thread = new Thread(() -> scatterWithBand("", "", "", ValueScale.LINEAR,
                List.of(Points.of("", new double[] {0, 1}, new double[] {0, 1})), Curve.none()), "charts");
        thread.setDaemon(true);
        thread.start();
    }

    /**
     * Points in groups, with a fitted curve and the band around it: price against mileage, for instance.
     *
     * @param title what the chart shows
     * @param xLabel the horizontal axis, with its unit
     * @param yLabel the vertical axis, with its unit
     * @param scale the scale of the vertical axis
     * @param groups the points; each group has its own shape and hue
     * @param curve the curve; {@link Curve#none()} draws the points alone
     * @return the chart, its table with the points first, then the curve
     */
    public static Chart scatterWithBand(String title, String xLabel, String yLabel, ValueScale scale, List<Points> groups,
            Curve curve) {
        return new ScatterChart(title, xLabel, yLabel, scale, groups, curve).drawn();
    }

    /**
     * Estimates against asked prices, with the line on which both are equal. A car below the line is asked above its estimate.
     *
     * @param title what the chart shows
     * @param xLabel the asked price, with its unit
     * @param yLabel the estimate, with its unit
     * @param rangeName what the bars are, for instance {@code 80 % range}
     * @param scale the scale of both axes, which have the same ends
     * @param groups the cars; each group has its own shape and hue
     * @return the chart
     */
    public static Chart identity(String title, String xLabel, String yLabel, String rangeName, ValueScale scale,
            List<Estimates> groups) {
        return new IdentityChart(title, xLabel, yLabel, rangeName, scale, groups).drawn();
    }

    /**
     * A line over time within its 80 and 95 % bands: an index, for instance.
     *
     * @param title what the chart shows
     * @param yLabel the vertical axis, with its unit
     * @param band the line and its bands
     * @param base the level of a broken line for reference, such as 100; none for no line
     * @return the chart
     */
    public static Chart bandLine(String title, String yLabel, DatedBand band, OptionalDouble base) {
        List<LocalDate> ends = band.dates().isEmpty() ? List.of() : List.of(band.dates().get(0), band.dates().get(band.dates().size() - 1));
        double[] levels = new double[ends.size()];
        Arrays.fill(levels, base.orElse(0));
        return bandLine(title, yLabel, band, base.isPresent() && !ends.isEmpty() ? List.of(new NamedLine("", ends, levels)) : List.of());
    }

    /**
     * A broken line over time, for reference.
     *
     * @param name what it is, for the legend; empty for no entry there
     * @param dates the dates, ascending
     * @param level the line at each date
     */
    public record NamedLine(String name, List<LocalDate> dates, double[] level) {

        /** Copies the numbers in and checks that they are as many. */
        public NamedLine {
            dates = List.copyOf(dates);
            level = level.clone();
            if (dates.size() != level.length) {
                throw new IllegalArgumentException("the line '" + name + "': " + dates.size() + " dates beside " + level.length
                        + " numbers");
            }
        }

        @Override
        public double[] level() {
            return level.clone();
        }

        /** Its name, and from when to when. */
        @Override
        public String toString() {
            return "line '" + name + "' of " + DatedBand.span(dates);
        }
    }

    /**
     * A line over time within its 80 and 95 % bands, with broken lines for reference.
     *
     * @param title what the chart shows
     * @param yLabel the vertical axis, with its unit
     * @param band the line and its bands
     * @param references the broken lines
     * @return the chart
     */
    public static Chart bandLine(String title, String yLabel, DatedBand band, List<NamedLine> references) {
        return new BandLineChart(title, yLabel, band, references).drawn();
    }

    /**
     * One row a name, with a dot in the middle of a thick 80 % and a thin 95 % range: the terms of a model, for instance.
     *
     * @param title what the chart shows
     * @param xLabel the horizontal axis, with its unit
     * @param rows the rows, from the top
     * @param reference where a broken upright line for reference stands, such as 0; none for no line
     * @return the chart
     */
    public static Chart ranges(String title, String xLabel, List<RangeRow> rows, OptionalDouble reference) {
        return new RangesChart(title, xLabel, "middle", rows, reference).drawn();
    }

    /** The same where the dot is no median. */
    static Chart ranges(String title, String xLabel, String dot, List<RangeRow> rows, OptionalDouble reference) {
        return new RangesChart(title, xLabel, dot, rows, reference).drawn();
    }

    /**
     * Lines that go down or up in steps, each within its band: shares that last, for instance.
     *
     * @param title what the chart shows
     * @param xLabel the horizontal axis, with its unit
     * @param yLabel the vertical axis, with its unit
     * @param lines each line by its steps: from each x on it stands at its middle, within its band where the ends of that are numbers;
     *     all bands are of one kind
     * @return the chart
     */
    public static Chart steps(String title, String xLabel, String yLabel, List<Curve> lines) {
        return new StepsChart(title, xLabel, yLabel, lines).drawn();
    }

    /** A panel in place of a picture that says why there is none, where there are no numbers either. */
    static Chart empty(String title, String why) {
        return empty(title, new DrawnData(title, List.of(), List.of()).table(), why);
    }

    /** A panel in place of a picture that says why there is none. */
    static Chart empty(String title, Table data, String why) {
        String alt = title + ": " + why;
        return new Chart(title, alt, Plot.empty(alt, why), data, Optional.empty());
    }

    /** Words put before the unit of a label. */
    static String withSuffix(String label, String words) {
        int comma = label.lastIndexOf(", ");
        return comma < 0 ? label + words : label.substring(0, comma) + words + label.substring(comma);
    }

    /** The values of all groups. */
    static <T> double[] joined(List<T> groups, Function<T, double[]> values) {
        double[] all = new double[0];
        for (T group : groups) {
            double[] more = values.apply(group);
            int size = all.length;
            all = Arrays.copyOf(all, size + more.length);
            System.arraycopy(more, 0, all, size, more.length);
        }
        return all;
    }
}
