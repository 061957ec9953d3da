package swapworth.chart;

import java.util.List;
import swapworth.chart.AmountCharts.Step;
import swapworth.table.Cell;

/** From a beginning to an end by changes that add up. */
final class WaterfallChart {
    private final String title;
    private final String xLabel;
    private final List<Step> steps;
    /** Between what sums each row reaches. */
    private final double[] from;
    private final double[] to;
    private final Extent across = new Extent(ValueScale.LINEAR);
    private final DrawnData data;

    WaterfallChart(String title, String xLabel, List<Step> steps) {
        this.title = title;
        this.xLabel = xLabel;
        this.steps = steps;
        this.from = new double[steps.size()];
        this.to = new double[steps.size()];
        this.data = new DrawnData(title, List.of("row"), List.of(Charts.withSuffix(xLabel, " change"),
                Charts.withSuffix(xLabel, " so far")));
        double running = 0;
        for (int i = 0; i < steps.size(); i++) {
            Step step = steps.get(i);
            boolean level = isLevel(step);
            from[i] = level ? 0 : running;
            running += level || !Extent.isDrawable(step.amount()) ? 0 : step.amount();
            to[i] = running;
            across.include(from[i], to[i]);
            data.row(new String[] {step.name()}, level ? Double.NaN : step.amount(), running);
        }
    }

    private static boolean isLevel(Step step) {
        return step.kind() == Step.Kind.LEVEL;
    }

    Chart drawn() {
        if (steps.isEmpty() || across.isEmpty()) {
            return Charts.empty(title, data.table(), Charts.NOTHING);
        }
        Axis x = Axis.withMargins(Math.min(0, across.low()), Math.max(0, across.high()), Charts.TICKS_ACROSS);
        Plot plot = new Plot(Charts.ROW * steps.size(), x, Axis.rows(steps.size()), xLabel, "");
        paint(plot, x);
        return plot.chart(title, words(), data.table(), Charts.PAINTER);
    }

    private void paint(Plot plot, Axis x) {
        Places up = new Places();
        Places down = new Places();
        Places levels = new Places();
        Places joints = new Places();
        for (int i = 0; i < steps.size(); i++) {
            double height = steps.size() - 1.0 - i;
            plot.nameRow(steps.get(i).name(), amount(i));
            (isLevel(steps.get(i)) ? levels : to[i] >= from[i] ? up : down).bar(from[i], to[i], height);
            if (i + 1 < steps.size()) {
                joints.stroke(x.at(to[i]), height - Places.HALF_BAR, x.at(to[i]), height - 1 + Places.HALF_BAR);
            }
        }
        plot.add(new Layer(Layer.Form.LINE, new Ink(0, Ink.Manner.HAIR), joints.x(), joints.y()));
        AmountCharts.fill(plot, AmountCharts.UP, up, "adds");
        AmountCharts.fill(plot, AmountCharts.DOWN, down, "takes off");
        AmountCharts.fill(plot, AmountCharts.LEVEL, levels, "stands at");
    }

    private String amount(int i) {
        return isLevel(steps.get(i)) ? Cell.format(to[i], 0) : Cell.signed(to[i] - from[i], 0).shown();
    }

    private String words() {
        StringBuilder words = new StringBuilder(title).append(": ").append(xLabel).append(": ");
        for (int i = 0; i < steps.size(); i++) {
            boolean last = i == steps.size() - 1;
            if (i < AmountCharts.MOST_IN_WORDS || last) {
                words.append(i == 0 ? "" : last && i > AmountCharts.MOST_IN_WORDS ? "; others in the table; at last " : "; ")
                        .append(steps.get(i).name()).append(' ').append(amount(i));
            }
        }
        return words.append('.').toString();
    }
}
