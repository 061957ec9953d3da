package swapworth.chart;

import java.util.List;
import swapworth.table.Table;

/**
 * Estimates against asked prices, with the line on which both are equal.
 *
 * @param title what the chart shows
 * @param xLabel the asked price, with its unit
 * @param yLabel the estimate, with its unit
 * @param rangeName what the bars are
 * @param scale the scale of both axes
 * @param groups the cars
 */
record IdentityChart(String title, String xLabel, String yLabel, String rangeName, ValueScale scale, List<Estimates> groups) {

    Chart drawn() {
        Table data = data();
        Extent both = new Extent(scale);
        both.includeMost(Charts.joined(groups, Estimates::asked));
        both.includeMost(Charts.joined(groups, Estimates::middle));
        if (both.isEmpty()) {
            return Charts.empty(title, data, Charts.NOTHING);
        }
        Axis axis = Axis.of(scale, both.low(), both.high(), Charts.TICKS_ACROSS);
        Plot plot = new Plot(Charts.TALL, axis, axis, xLabel, yLabel);
        for (int g = 0; g < groups.size(); g++) {
            plot.add(uprights(Layer.hueOfGroup(g), axis, groups.get(g)));
        }
        double[] ends = {axis.min(), axis.max()};
        plot.add(new Layer(Layer.Form.LINE, Charts.REFERENCE, ends, ends));
        Marks marks = new Marks(plot, axis, axis);
        for (Estimates group : groups) {
            marks.add(group.name(), group.asked(), group.middle(), group.labels());
        }
        plot.explain(Layer.Form.LINE, new Ink(1, Ink.Manner.HAIR), rangeName);
        plot.explain(Layer.Form.LINE, Charts.REFERENCE, "equal");
        plot.note(marks.outside());
        return plot.chart(title, yLabel + " against " + xLabel + ": " + marks.words() + ", each with its " + rangeName
                + ", and the line on which both are equal; " + outside() + " their range.", data, Charts.PAINTER);
    }

    private Table data() {
        DrawnData data = DrawnData.ofPoints(title, List.of(xLabel, yLabel, "low", "high"));
        for (Estimates group : groups) {
            double[] asked = group.asked();
            double[] middle = group.middle();
            double[] low = group.low();
            double[] high = group.high();
            for (int i = 0; i < asked.length; i++) {
                data.point(group.name(), group.labels(), i, asked[i], middle[i], low[i], high[i]);
            }
        }
        return data.table();
    }

    /** How many cars are asked below and above their range. */
    private String outside() {
        int below = 0;
        int above = 0;
        for (Estimates group : groups) {
            double[] asked = group.asked();
            double[] low = group.low();
            double[] high = group.high();
            for (int i = 0; i < asked.length; i++) {
                below += asked[i] < low[i] ? 1 : 0;
                above += asked[i] > high[i] ? 1 : 0;
            }
        }
        return below + " asked below and " + above + " above";
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
}
