package swapworth.chart;

import static swapworth.chart.DrawnData.number;

import java.util.List;
import java.util.OptionalDouble;
import java.util.function.ToDoubleFunction;

/**
 * One row a name, with a dot in the middle of a thick 80 % and a thin 95 % range.
 *
 * @param title what the chart shows
 * @param xLabel the horizontal axis, with its unit
 * @param dot what the dot is
 * @param rows the rows, from the top
 * @param reference where a broken upright line for reference stands; none for no line
 */
record RangesChart(String title, String xLabel, String dot, List<RangeRow> rows, OptionalDouble reference) {
    private static final int ROWS_IN_WORDS = 12;
    private static final Ink REACH = new Ink(1, Ink.Manner.REACH);
    private static final Ink CORE = new Ink(1, Ink.Manner.CORE);

    Chart drawn() {
        DrawnData data = new DrawnData(title, List.of("row"), List.of(xLabel, "80 % from", "80 % to", "95 % from", "95 % to"));
        for (RangeRow row : rows) {
            data.row(new String[] {row.name()}, row.middle(), row.low80(), row.high80(), row.low95(), row.high95());
        }
        Extent across = new Extent(ValueScale.LINEAR);
        across.include(ends(RangeRow::middle, RangeRow::middle));
        if (across.isEmpty()) {
            return Charts.empty(title, data.table(), Charts.NOTHING);
        }
        reference.ifPresent(across::include);
        across.includeMost(ends(RangeRow::low80, RangeRow::high80));
        across.includeMost(ends(RangeRow::low95, RangeRow::high95));
        Axis x = Axis.withMargins(across.low(), across.high(), Charts.TICKS_ACROSS);
        Axis y = Axis.rows(rows.size());
        Plot plot = new Plot(Charts.ROW * rows.size(), x, y, xLabel, "");
        paint(plot, x, y);
        return plot.chart(title, words(), data.table(), Charts.PAINTER);
    }

    private void paint(Plot plot, Axis x, Axis y) {
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
        Layer dots = new Layer(Layer.Form.DOT, new Ink(0, Ink.Manner.DOT), middle.x(), middle.y());
        reference.ifPresent(place -> plot.add(new Layer(Layer.Form.LINE, Charts.REFERENCE, new double[] {place, place},
                new double[] {y.min(), y.max()})));
        plot.add(new Layer(Layer.Form.LINE, REACH, wide.x(), wide.y()));
        plot.add(new Layer(Layer.Form.LINE, CORE, near.x(), near.y()));
        plot.add(dots);
        plot.explain(dots.form(), dots.ink(), dot);
        plot.explain(Layer.Form.LINE, CORE, "80 % range");
        plot.explain(Layer.Form.LINE, REACH, "95 % range");
    }

    private String words() {
        StringBuilder words = new StringBuilder(title).append(": ").append(xLabel).append(", ").append(dot).append(" of ")
                .append(rows.size()).append(" rows, with 80 and 95 % ranges");
        for (int i = 0; i < Math.min(rows.size(), ROWS_IN_WORDS); i++) {
            RangeRow row = rows.get(i);
            words.append(i == 0 ? ": " : "; ").append(row.name()).append(' ').append(number(row.middle())).append(" (80 % range ")
                    .append(number(row.low80())).append(" to ").append(number(row.high80())).append(')');
        }
        return words.append(rows.size() > ROWS_IN_WORDS ? "; the rest in the table." : ".").toString();
    }

    private double[] ends(ToDoubleFunction<RangeRow> low, ToDoubleFunction<RangeRow> high) {
        double[] ends = new double[2 * rows.size()];
        for (int i = 0; i < rows.size(); i++) {
            ends[2 * i] = low.applyAsDouble(rows.get(i));
            ends[2 * i + 1] = high.applyAsDouble(rows.get(i));
        }
        return ends;
    }
}
