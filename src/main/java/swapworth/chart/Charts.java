package swapworth.chart;

import static swapworth.chart.DrawnData.number;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.Function;
import java.util.function.ToDoubleFunction;
import swapworth.table.Table;

/**
 * Kinds of charts of plain numbers, one method each; {@link MarketCharts}, {@link TimeCharts}, {@link DonorCharts},
 * {@link SwapCharts} and {@link ProjectCharts} draw results with them. Labels of axes carry their unit, such as
 * {@code mileage, mi}. Values that are not finite, or beyond 10<sup>15</sup>, are not drawn but stay in the table, blank if not
 * finite; values so far off that they would flatten everything else are drawn at the edge, and the picture says how many. Without
 * any value the picture is a panel that says so. The same input gives the same bytes on every machine.
 */
public final class Charts {

    private static final int TALL = 270;
    private static final int MIDDLING = 225;
    private static final int ROW = 28;
    private static final int TICKS_ACROSS = 6;
    private static final int TICKS_UP = 7;
    private static final int ROWS_IN_WORDS = 12;
    /** What stands where a picture has no value and nobody knows more of it. */
    static final String NOTHING = "no data";

    static final Painter PAINTER = new XChartPainter();

    /** Lines beside each other differ in stroke too: in print and for many eyes hues alone do not tell them apart. */
    private static final List<Ink.Manner> STROKES = List.of(Ink.Manner.LINE, Ink.Manner.LONG, Ink.Manner.SHORT, Ink.Manner.MIXED);
    private static final Ink CURVE = new Ink(0, Ink.Manner.LINE);
    private static final Ink BAND = new Ink(0, Ink.Manner.AREA);
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
        DrawnData data = new DrawnData(title, List.of("drawn as", "note"), List.of(xLabel, yLabel, "low", "high"));
        Extent across = new Extent(ValueScale.LINEAR);
        Extent up = new Extent(scale);
        for (Points group : groups) {
            double[] gx = group.x();
            double[] gy = group.y();
            for (int i = 0; i < gx.length; i++) {
                data.row(heads(group.name(), group.labels(), i), gx[i], gy[i], Double.NaN, Double.NaN);
            }
        }
        across.includeMost(joined(groups, Points::x));
        up.includeMost(joined(groups, Points::y));
        double[] cx = curve.x();
        double[] middle = curve.middle();
        double[] low = curve.low();
        double[] high = curve.high();
        for (int i = 0; i < cx.length; i++) {
            data.row(new String[] {curve.name(), ""}, cx[i], middle[i], low[i], high[i]);
        }
        across.include(cx);
        up.include(middle);
        if (!up.isEmpty()) {
            up.includeBand(low);
            up.includeBand(high);
        }
        if (across.isEmpty() || up.isEmpty()) {
            return empty(title, data.table(), NOTHING);
        }
        Axis x = Axis.of(ValueScale.LINEAR, across.low(), across.high(), TICKS_ACROSS);
        Axis y = Axis.of(scale, up.low(), up.high(), TICKS_UP);
        Plot plot = new Plot(TALL, x, y, xLabel, yLabel);
        plot.add(band(BAND, x, y, cx, low, high));
        Marks marks = new Marks(plot, x, y);
        for (Points group : groups) {
            marks.add(group.name(), group.x(), group.y(), group.labels());
        }
        if (cx.length > 0) {
            plot.add(new Layer(Layer.Form.LINE, CURVE, x.at(cx), y.at(middle)));
            plot.explain(Layer.Form.LINE, CURVE, curve.name());
            plot.explain(Layer.Form.POLYGON, BAND, curve.bandName());
        }
        plot.note(marks.outside());
        String alt = title + (groups.isEmpty() ? ": " + yLabel + ", against " + xLabel
                : ": " + marks.words() + spans(xLabel, groups, Points::x) + spans(yLabel, groups, Points::y)) + "."
                + (marks.outside().isEmpty() ? "" : " " + marks.outside());
        if (cx.length > 0) {
            int last = cx.length - 1;
            alt += " " + curve.name() + ": " + at(middle[0], low[0], high[0], cx[0], curve.bandName())
                    + (last > 0 ? ", " + at(middle[last], low[last], high[last], cx[last], "") : "") + ".";
        }
        return plot.chart(title, alt, data.table(), PAINTER);
    }

    private static String at(double middle, double low, double high, double place, String band) {
        return number(middle) + " (" + (band.isEmpty() ? "" : band + " ") + number(low) + " to " + number(high) + ") at " + number(place);
    }

    /** From where to where the values of some points reach. */
    private static String spans(String label, List<Points> groups, Function<Points, double[]> values) {
        double[] drawn = Arrays.stream(joined(groups, values)).filter(Extent::isDrawable).sorted().toArray();
        if (drawn.length == 0) {
            return "";
        }
        double last = drawn[drawn.length - 1];
        return "; " + label + (last > drawn[0] ? " from " + number(drawn[0]) + " to " : " ") + number(last);
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
        DrawnData data = new DrawnData(title, List.of("drawn as", "note"), List.of(xLabel, yLabel, "low", "high"));
        int below = 0;
        int above = 0;
        for (Estimates group : groups) {
            double[] asked = group.asked();
            double[] middle = group.middle();
            double[] low = group.low();
            double[] high = group.high();
            for (int i = 0; i < asked.length; i++) {
                data.row(heads(group.name(), group.labels(), i), asked[i], middle[i], low[i], high[i]);
                below += asked[i] < low[i] ? 1 : 0;
                above += asked[i] > high[i] ? 1 : 0;
            }
        }
        Extent both = new Extent(scale);
        both.includeMost(joined(groups, Estimates::asked));
        both.includeMost(joined(groups, Estimates::middle));
        if (both.isEmpty()) {
            return empty(title, data.table(), NOTHING);
        }
        Axis axis = Axis.of(scale, both.low(), both.high(), TICKS_ACROSS);
        Plot plot = new Plot(TALL, axis, axis, xLabel, yLabel);
        for (int g = 0; g < groups.size(); g++) {
            plot.add(uprights(Layer.hueOfGroup(g), axis, groups.get(g)));
        }
        double[] ends = {axis.min(), axis.max()};
        plot.add(new Layer(Layer.Form.LINE, REFERENCE, ends, ends));
        Marks marks = new Marks(plot, axis, axis);
        for (Estimates group : groups) {
            marks.add(group.name(), group.asked(), group.middle(), group.labels());
        }
        plot.explain(Layer.Form.LINE, new Ink(1, Ink.Manner.HAIR), rangeName);
        plot.explain(Layer.Form.LINE, REFERENCE, "equal");
        plot.note(marks.outside());
        return plot.chart(title, yLabel + " against " + xLabel + ": " + marks.words() + ", each with its " + rangeName
                + ", and the line on which both are equal; " + below + " asked below and " + above + " above their range.",
                data.table(), PAINTER);
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
        DrawnData data = new DrawnData(title, List.of("date"),
                List.of(yLabel, "80 % from", "80 % to", "95 % from", "95 % to"));
        double[] middle = band.middle();
        double[] low80 = band.low80();
        double[] high80 = band.high80();
        double[] low95 = band.low95();
        double[] high95 = band.high95();
        double[] days = new double[middle.length];
        for (int i = 0; i < middle.length; i++) {
            days[i] = band.dates().get(i).toEpochDay();
            data.row(new String[] {band.dates().get(i).toString()}, middle[i], low80[i], high80[i], low95[i], high95[i]);
        }
        Extent up = new Extent(ValueScale.LINEAR);
        up.include(middle);
        if (up.isEmpty()) {
            return empty(title, data.table(), NOTHING);
        }
        references.forEach(r -> up.include(r.level()));
        up.include(low80);
        up.include(high80);
        up.includeWithin(low95);
        up.includeWithin(high95);
        LocalDate first = band.dates().get(0);
        LocalDate last = band.dates().get(middle.length - 1);
        Axis x = Axis.dates(first, last, TICKS_ACROSS + 1);
        Axis y = Axis.of(ValueScale.LINEAR, up.low(), up.high(), TICKS_UP);
        Plot plot = new Plot(MIDDLING, x, y, "", yLabel);
        Ink line = new Ink(1, Ink.Manner.LINE);
        Ink near = new Ink(1, Ink.Manner.AREA);
        Ink wide = new Ink(1, Ink.Manner.FAINT);
        plot.add(band(wide, x, y, days, low95, high95));
        plot.add(band(near, x, y, days, low80, high80));
        for (NamedLine reference : references) {
            double[] at = reference.dates().stream().mapToDouble(LocalDate::toEpochDay).toArray();
            if (reference.name().isEmpty()) {
                at[0] = x.min();
                at[at.length - 1] = x.max();
            } else {
                plot.explain(Layer.Form.LINE, REFERENCE, reference.name());
            }
            plot.add(new Layer(Layer.Form.LINE, REFERENCE, at, y.at(reference.level())));
        }
        plot.add(new Layer(Layer.Form.LINE, line, days, y.at(middle)));
        if (middle.length == 1) {
            plot.add(Layer.ofGroup(0, days, middle));
        }
        plot.explain(Layer.Form.LINE, line, band.name());
        plot.explain(Layer.Form.POLYGON, near, "80 % range");
        plot.explain(Layer.Form.POLYGON, wide, "95 % range");
        int end = middle.length - 1;
        return plot.chart(title, yLabel + " from " + first + " to " + last + ": " + number(middle[0]) + " at first, "
                + number(middle[end]) + " at last (80 % range " + number(low80[end]) + " to " + number(high80[end]) + ").",
                data.table(), PAINTER);
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
        return ranges(title, xLabel, "middle", rows, reference);
    }

    /** The same where the dot is no median. */
    static Chart ranges(String title, String xLabel, String dot, List<RangeRow> rows, OptionalDouble reference) {
        DrawnData data = new DrawnData(title, List.of("row"),
                List.of(xLabel, "80 % from", "80 % to", "95 % from", "95 % to"));
        for (RangeRow row : rows) {
            data.row(new String[] {row.name()}, row.middle(), row.low80(), row.high80(), row.low95(), row.high95());
        }
        Extent across = new Extent(ValueScale.LINEAR);
        across.include(ends(rows, RangeRow::middle, RangeRow::middle));
        if (across.isEmpty()) {
            return empty(title, data.table(), NOTHING);
        }
        reference.ifPresent(across::include);
        across.includeMost(ends(rows, RangeRow::low80, RangeRow::high80));
        across.includeMost(ends(rows, RangeRow::low95, RangeRow::high95));
        Axis x = Axis.withMargins(across.low(), across.high(), TICKS_ACROSS);
        Axis y = Axis.rows(rows.size());
        Plot plot = new Plot(ROW * rows.size(), x, y, xLabel, "");
        Places wide = new Places();
        Places near = new Places();
        Places middle = new Places();
        for (int i = 0; i < rows.size(); i++) {
            RangeRow row = rows.get(i);
            plot.nameRow(row.name());
            double height = rows.size() - 1.0 - i;
            wide.stroke(x.at(row.low95()), height, x.at(row.high95()), height);
            near.stroke(x.at(row.low80()), height, x.at(row.high80()), height);
            if (Double.isFinite(row.middle())) {
                middle.add(row.middle(), height);
            }
        }
        Ink reach = new Ink(1, Ink.Manner.REACH);
        Ink core = new Ink(1, Ink.Manner.CORE);
        Layer dots = new Layer(Layer.Form.DOT, new Ink(0, Ink.Manner.DOT), middle.x(), middle.y());
        reference.ifPresent(place -> plot.add(new Layer(Layer.Form.LINE, REFERENCE, new double[] {place, place},
                new double[] {y.min(), y.max()})));
        plot.add(new Layer(Layer.Form.LINE, reach, wide.x(), wide.y()));
        plot.add(new Layer(Layer.Form.LINE, core, near.x(), near.y()));
        plot.add(dots);
        plot.explain(dots.form(), dots.ink(), dot);
        plot.explain(Layer.Form.LINE, core, "80 % range");
        plot.explain(Layer.Form.LINE, reach, "95 % range");
        StringBuilder alt = new StringBuilder(title).append(": ").append(xLabel).append(", ").append(dot).append(" of ").append(rows.size())
                .append(" rows, with 80 and 95 % ranges");
        for (int i = 0; i < Math.min(rows.size(), ROWS_IN_WORDS); i++) {
            RangeRow row = rows.get(i);
            alt.append(i == 0 ? ": " : "; ").append(row.name()).append(' ').append(number(row.middle())).append(" (80 % range ")
                    .append(number(row.low80())).append(" to ").append(number(row.high80())).append(')');
        }
        alt.append(rows.size() > ROWS_IN_WORDS ? "; the rest in the table." : ".");
        return plot.chart(title, alt.toString(), data.table(), PAINTER);
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
        String band = lines.isEmpty() ? "" : lines.get(0).bandName();
        DrawnData data = new DrawnData(title, List.of("line"), List.of(xLabel, yLabel, band + " from", band + " to"));
        Extent across = new Extent(ValueScale.LINEAR);
        Extent up = new Extent(ValueScale.LINEAR);
        StringBuilder alt = new StringBuilder(yLabel).append(" by ").append(xLabel);
        for (Curve line : lines) {
            double[] x = line.x();
            double[] y = line.middle();
            double[] low = line.low();
            double[] high = line.high();
            for (int i = 0; i < x.length; i++) {
                data.row(new String[] {line.name()}, x[i], y[i], low[i], high[i]);
            }
            across.include(x);
            up.include(y);
            up.include(low);
            up.include(high);
            int last = x.length - 1;
            alt.append(line == lines.get(0) ? ": " : "; ").append(line.name()).append(x.length == 0 ? ", nothing" : ", at last "
                    + (Double.isNaN(low[last] + high[last]) ? number(y[last]) + " at " + number(x[last])
                    : at(y[last], low[last], high[last], x[last], band)));
        }
        if (across.isEmpty() || up.isEmpty()) {
            return empty(title, data.table(), NOTHING);
        }
        up.include(0);
        Axis xAxis = Axis.of(ValueScale.LINEAR, across.low(), across.high(), TICKS_ACROSS);
        Axis yAxis = Axis.of(ValueScale.LINEAR, up.low(), up.high(), TICKS_UP);
        Plot plot = new Plot(MIDDLING, xAxis, yAxis, xLabel, yLabel);
        for (int k = 0; k < lines.size(); k++) {
            Curve line = lines.get(k);
            plot.add(band(new Ink(Layer.hueOfGroup(k), Ink.Manner.FAINT), xAxis, yAxis, stepped(line.x(), 1), stepped(line.low(), 0),
                    stepped(line.high(), 0)));
        }
        for (int k = 0; k < lines.size(); k++) {
            Curve line = lines.get(k);
            Ink ink = new Ink(Layer.hueOfGroup(k), STROKES.get(k % STROKES.size()));
            plot.add(new Layer(Layer.Form.LINE, ink, stepped(line.x(), 1), stepped(line.middle(), 0)));
            plot.explain(Layer.Form.LINE, ink, line.name());
        }
        if (!band.isEmpty()) {
            plot.explain(Layer.Form.POLYGON, new Ink(Layer.hueOfGroup(0), Ink.Manner.FAINT), band);
        }
        return plot.chart(title, alt.append('.').toString(), data.table(), PAINTER);
    }

    /** The corners of steps: each value twice but at one end, those of x one place ahead, so that x moves before y does. */
    private static double[] stepped(double[] values, int ahead) {
        double[] twice = new double[Math.max(0, 2 * values.length - 1)];
        for (int i = 0; i < twice.length; i++) {
            twice[i] = values[(i + ahead) / 2];
        }
        return twice;
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

    private static String[] heads(String group, List<String> labels, int i) {
        return new String[] {group, labels.isEmpty() ? "" : labels.get(i)};
    }

    /** Words put before the unit of a label. */
    static String withSuffix(String label, String words) {
        int comma = label.lastIndexOf(", ");
        return comma < 0 ? label + words : label.substring(0, comma) + words + label.substring(comma);
    }

    private static <T> double[] joined(List<T> groups, Function<T, double[]> values) {
        double[] all = new double[0];
        for (T group : groups) {
            double[] more = values.apply(group);
            int size = all.length;
            all = Arrays.copyOf(all, size + more.length);
            System.arraycopy(more, 0, all, size, more.length);
        }
        return all;
    }

    private static double[] ends(List<RangeRow> rows, ToDoubleFunction<RangeRow> low, ToDoubleFunction<RangeRow> high) {
        double[] ends = new double[2 * rows.size()];
        for (int i = 0; i < rows.size(); i++) {
            ends[2 * i] = low.applyAsDouble(rows.get(i));
            ends[2 * i + 1] = high.applyAsDouble(rows.get(i));
        }
        return ends;
    }

    /** A closed band: along its upper edge, and back along its lower one, which on a logarithmic axis may lie below it. */
    private static Layer band(Ink ink, Axis x, Axis y, double[] valuesX, double[] low, double[] high) {
        Places edge = new Places();
        Places lower = new Places();
        for (int i = 0; i < valuesX.length; i++) {
            double from = low[i] <= 0 ? y.belowAll(low[i]) : y.at(low[i]);
            double to = y.at(high[i]);
            if (!Double.isNaN(valuesX[i] + from + to)) {
                edge.add(x.at(valuesX[i]), to);
                lower.add(x.at(valuesX[i]), from);
            }
        }
        edge.addBackward(lower);
        return new Layer(Layer.Form.POLYGON, ink, edge.x(), edge.y());
    }

    private static Layer uprights(int hue, Axis axis, Estimates cars) {
        double[] asked = cars.asked();
        double[] low = cars.low();
        double[] high = cars.high();
        Places strokes = new Places();
        for (int i = 0; i < asked.length; i++) {
            double across = axis.clamp(axis.at(asked[i]));
            strokes.stroke(across, low[i] <= 0 ? axis.belowAll(low[i]) : axis.at(low[i]), across, axis.at(high[i]));
        }
        return new Layer(Layer.Form.LINE, new Ink(hue, Ink.Manner.HAIR), strokes.x(), strokes.y());
    }

    /** Adds groups of marks to a plot and counts them, and those that its axes do not reach. */
    private static final class Marks {
        /** So many points beyond the axes are named. */
        private static final int NAMED = 3;
        private final Plot plot;
        private final Axis x;
        private final Axis y;
        private final List<String> words = new ArrayList<>();
        private int outside;
        private final List<String> outsiders = new ArrayList<>();

        Marks(Plot plot, Axis x, Axis y) {
            this.plot = plot;
            this.x = x;
            this.y = y;
        }

        void add(String name, double[] valuesX, double[] valuesY, List<String> labels) {
            Places places = new Places();
            for (int i = 0; i < valuesX.length; i++) {
                double across = x.at(valuesX[i]);
                double up = y.at(valuesY[i]);
                if (!Double.isNaN(across + up)) {
                    if (!x.holds(across) || !y.holds(up)) {
                        outside++;
                        outsiders.addAll(labels.isEmpty() ? List.of() : labels.subList(i, i + 1));
                    }
                    places.add(x.clamp(across), y.clamp(up));
                    if (!labels.isEmpty()) {
                        plot.hover(x.clamp(across), y.clamp(up), labels.get(i));
                    }
                }
            }
            Layer layer = Layer.ofGroup(words.size(), places.x(), places.y());
            plot.add(layer);
            plot.explain(layer.form(), layer.ink(), name + " (" + places.size() + ")");
            words.add(places.size() + " " + name);
        }

        String words() {
            return words.isEmpty() ? "no points" : String.join(", ", words);
        }

        String outside() {
            String named = outsiders.isEmpty() || outsiders.size() > NAMED ? "." : ": " + String.join("; ", outsiders) + ".";
            return switch (outside) {
                case 0 -> "";
                case 1 -> "1 point lies beyond the axes and stands at the edge" + named;
                default -> outside + " points lie beyond the axes and stand at the edge" + named;
            };
        }
    }
}
