package swapworth.chart;

import static swapworth.chart.DrawnData.number;

import java.time.LocalDate;
import java.util.List;
import swapworth.table.Table;

/**
 * A line over time within its 80 and 95 % bands, with broken lines for reference.
 *
 * @param title what the chart shows
 * @param yLabel the vertical axis, with its unit
 * @param band the line and its bands
 * @param references the broken lines
 */
record BandLineChart(String title, String yLabel, DatedBand band, List<Charts.NamedLine> references) {
    private static final Ink LINE = new Ink(1, Ink.Manner.LINE);
    private static final Ink NEAR = new Ink(1, Ink.Manner.AREA);
    private static final Ink WIDE = new Ink(1, Ink.Manner.FAINT);

    Chart drawn() {
        Table data = data();
        double[] middle = band.middle();
        Extent up = new Extent(ValueScale.LINEAR);
        up.include(middle);
        if (up.isEmpty()) {
            return Charts.empty(title, data, Charts.NOTHING);
        }
        references.forEach(r -> up.include(r.level()));
        up.include(band.low80());
        up.include(band.high80());
        up.includeWithin(band.low95());
        up.includeWithin(band.high95());
        int end = middle.length - 1;
        LocalDate first = band.dates().get(0);
        LocalDate last = band.dates().get(end);
        Axis x = Axis.dates(first, last, Charts.TICKS_ACROSS + 1);
        Axis y = Axis.of(ValueScale.LINEAR, up.low(), up.high(), Charts.TICKS_UP);
        Plot plot = new Plot(Charts.MIDDLING, x, y, "", yLabel);
        paint(plot, x, y);
        return plot.chart(title, yLabel + " from " + first + " to " + last + ": " + number(middle[0]) + " at first, "
                + number(middle[end]) + " at last (80 % range " + number(band.low80()[end]) + " to " + number(band.high80()[end]) + ").",
                data, Charts.PAINTER);
    }

    private Table data() {
        DrawnData data = new DrawnData(title, List.of("date"), List.of(yLabel, "80 % from", "80 % to", "95 % from", "95 % to"));
        double[] middle = band.middle();
        double[] low80 = band.low80();
        double[] high80 = band.high80();
        double[] low95 = band.low95();
        double[] high95 = band.high95();
        for (int i = 0; i < middle.length; i++) {
            data.row(new String[] {band.dates().get(i).toString()}, middle[i], low80[i], high80[i], low95[i], high95[i]);
        }
        return data.table();
    }

    private void paint(Plot plot, Axis x, Axis y) {
        double[] days = days(band.dates());
        plot.add(Layer.band(WIDE, x, y, days, band.low95(), band.high95()));
        plot.add(Layer.band(NEAR, x, y, days, band.low80(), band.high80()));
        for (Charts.NamedLine reference : references) {
            double[] at = days(reference.dates());
            if (reference.name().isEmpty()) {
                at[0] = x.min();
                at[at.length - 1] = x.max();
            } else {
                plot.explain(Layer.Form.LINE, Charts.REFERENCE, reference.name());
            }
            plot.add(new Layer(Layer.Form.LINE, Charts.REFERENCE, at, y.at(reference.level())));
        }
        plot.add(new Layer(Layer.Form.LINE, LINE, days, y.at(band.middle())));
        if (days.length == 1) {
            plot.add(Layer.ofGroup(0, days, band.middle()));
        }
        plot.explain(Layer.Form.LINE, LINE, band.name());
        plot.explain(Layer.Form.POLYGON, NEAR, "80 % range");
        plot.explain(Layer.Form.POLYGON, WIDE, "95 % range");
    }

    private static double[] days(List<LocalDate> dates) {
        return dates.stream().mapToDouble(LocalDate::toEpochDay).toArray();
    }
}
