package swapworth.chart;

import static swapworth.chart.DrawnData.number;

import java.util.Arrays;
import java.util.List;
import java.util.function.Function;
import swapworth.table.Table;

/**
 * Points in groups with a fitted curve and the band around it.
 *
 * @param title what the chart shows
 * @param xLabel the horizontal axis, with its unit
 * @param yLabel the vertical axis, with its unit
 * @param scale the scale of the vertical axis
 * @param groups the points
 * @param curve the curve; none for the points alone
 */
record ScatterChart(String title, String xLabel, String yLabel, ValueScale scale, List<Points> groups, Curve curve) {
    private static final Ink CURVE = new Ink(0, Ink.Manner.LINE);
    private static final Ink BAND = new Ink(0, Ink.Manner.AREA);

    Chart drawn() {
        Table data = data();
        Extent across = new Extent(ValueScale.LINEAR);
        across.includeMost(Charts.joined(groups, Points::x));
        across.include(curve.x());
        Extent up = up();
        if (across.isEmpty() || up.isEmpty()) {
            return Charts.empty(title, data, Charts.NOTHING);
        }
        Axis x = Axis.of(ValueScale.LINEAR, across.low(), across.high(), Charts.TICKS_ACROSS);
        Axis y = Axis.of(scale, up.low(), up.high(), Charts.TICKS_UP);
        Plot plot = new Plot(Charts.TALL, x, y, xLabel, yLabel);
        plot.add(Layer.band(BAND, x, y, curve));
        Marks marks = new Marks(plot, x, y);
        for (Points group : groups) {
            marks.add(group.name(), group.x(), group.y(), group.labels());
        }
        if (hasCurve()) {
            plot.add(new Layer(Layer.Form.LINE, CURVE, x.at(curve.x()), y.at(curve.middle())));
            plot.explain(Layer.Form.LINE, CURVE, curve.name());
            plot.explain(Layer.Form.POLYGON, BAND, curve.bandName());
        }
        plot.note(marks.outside());
        return plot.chart(title, words(marks), data, Charts.PAINTER);
    }

    private boolean hasCurve() {
        return curve.x().length > 0;
    }

    private Table data() {
        DrawnData data = DrawnData.ofPoints(title, List.of(xLabel, yLabel, "low", "high"));
        for (Points group : groups) {
            double[] x = group.x();
            double[] y = group.y();
            for (int i = 0; i < x.length; i++) {
                data.point(group.name(), group.labels(), i, x[i], y[i], Double.NaN, Double.NaN);
            }
        }
        double[] x = curve.x();
        double[] middle = curve.middle();
        double[] low = curve.low();
        double[] high = curve.high();
        for (int i = 0; i < x.length; i++) {
            data.point(curve.name(), List.of(), i, x[i], middle[i], low[i], high[i]);
        }
        return data.table();
    }

    private Extent up() {
        Extent up = new Extent(scale);
        up.includeMost(Charts.joined(groups, Points::y));
        up.include(curve.middle());
        if (!up.isEmpty()) {
            up.includeBand(curve.low());
            up.includeBand(curve.high());
        }
        return up;
    }

    private String words(Marks marks) {
        String points = title + (groups.isEmpty() ? ": " + yLabel + ", against " + xLabel
                : ": " + marks.words() + spans(xLabel, Points::x) + spans(yLabel, Points::y)) + "."
                + (marks.outside().isEmpty() ? "" : " " + marks.outside());
        if (!hasCurve()) {
            return points;
        }
        int last = curve.x().length - 1;
        return points + " " + curve.name() + ": " + curve.inWords(0, curve.bandName()) + (last > 0 ? ", " + curve.inWords(last, "") : "")
                + ".";
    }

    /** From where to where the values of some points reach. */
    private String spans(String label, Function<Points, double[]> values) {
        double[] drawn = Arrays.stream(Charts.joined(groups, values)).filter(Extent::isDrawable).sorted().toArray();
        if (drawn.length == 0) {
            return "";
        }
        double last = drawn[drawn.length - 1];
        return "; " + label + (last > drawn[0] ? " from " + number(drawn[0]) + " to " : " ") + number(last);
    }
}
