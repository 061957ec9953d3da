package swapworth.chart;

import static swapworth.chart.DrawnData.number;

import java.util.List;
import swapworth.table.Table;

/**
 * Lines that go down or up in steps, each within its band.
 *
 * @param title what the chart shows
 * @param xLabel the horizontal axis, with its unit
 * @param yLabel the vertical axis, with its unit
 * @param lines each line by its steps
 */
record StepsChart(String title, String xLabel, String yLabel, List<Curve> lines) {
    /** Lines beside each other differ in stroke too: in print and for many eyes hues alone do not tell them apart. */
    private static final List<Ink.Manner> STROKES = List.of(Ink.Manner.LINE, Ink.Manner.LONG, Ink.Manner.SHORT, Ink.Manner.MIXED);

    Chart drawn() {
        Table data = data();
        Extent across = new Extent(ValueScale.LINEAR);
        Extent up = new Extent(ValueScale.LINEAR);
        for (Curve line : lines) {
            across.include(line.x());
            up.include(line.middle());
            up.include(line.low());
            up.include(line.high());
        }
        if (across.isEmpty() || up.isEmpty()) {
            return Charts.empty(title, data, Charts.NOTHING);
        }
        up.include(0);
        Axis x = Axis.of(ValueScale.LINEAR, across.low(), across.high(), Charts.TICKS_ACROSS);
        Axis y = Axis.of(ValueScale.LINEAR, up.low(), up.high(), Charts.TICKS_UP);
        Plot plot = new Plot(Charts.MIDDLING, x, y, xLabel, yLabel);
        for (int k = 0; k < lines.size(); k++) {
            Curve line = lines.get(k);
            plot.add(Layer.band(faint(k), x, y, stepped(line.x(), 1), stepped(line.low(), 0), stepped(line.high(), 0)));
        }
        for (int k = 0; k < lines.size(); k++) {
            Curve line = lines.get(k);
            Ink ink = new Ink(Layer.hueOfGroup(k), STROKES.get(k % STROKES.size()));
            plot.add(new Layer(Layer.Form.LINE, ink, stepped(line.x(), 1), stepped(line.middle(), 0)));
            plot.explain(Layer.Form.LINE, ink, line.name());
        }
        if (!band().isEmpty()) {
            plot.explain(Layer.Form.POLYGON, faint(0), band());
        }
        return plot.chart(title, words(), data, Charts.PAINTER);
    }

    private static Ink faint(int line) {
        return new Ink(Layer.hueOfGroup(line), Ink.Manner.FAINT);
    }

    private String band() {
        return lines.isEmpty() ? "" : lines.get(0).bandName();
    }

    private Table data() {
        DrawnData data = new DrawnData(title, List.of("line"), List.of(xLabel, yLabel, band() + " from", band() + " to"));
        for (Curve line : lines) {
            double[] x = line.x();
            double[] middle = line.middle();
            double[] low = line.low();
            double[] high = line.high();
            for (int i = 0; i < x.length; i++) {
                data.row(new String[] {line.name()}, x[i], middle[i], low[i], high[i]);
            }
        }
        return data.table();
    }

    private String words() {
        StringBuilder words = new StringBuilder(yLabel).append(" by ").append(xLabel);
        for (int k = 0; k < lines.size(); k++) {
            Curve line = lines.get(k);
            words.append(k == 0 ? ": " : "; ").append(line.name()).append(line.x().length == 0 ? ", nothing" : ", at last " + end(line));
        }
        return words.append('.').toString();
    }

    private String end(Curve line) {
        int last = line.x().length - 1;
        return Double.isNaN(line.low()[last] + line.high()[last]) ? number(line.middle()[last]) + " at " + number(line.x()[last])
                : line.inWords(last, band());
    }

    /** The corners of steps: each value twice but at one end, those of x one place ahead, so that x moves before y does. */
    private static double[] stepped(double[] values, int ahead) {
        double[] twice = new double[Math.max(0, 2 * values.length - 1)];
        for (int i = 0; i < twice.length; i++) {
            twice[i] = values[(i + ahead) / 2];
        }
        return twice;
    }
}
