package swapworth.chart;

import static swapworth.chart.DrawnData.number;

import java.util.Arrays;
import java.util.List;
import swapworth.statistics.Quantiles;
import swapworth.table.Cell;
import swapworth.table.Table;

/** Outcomes of a simulation with their quantiles: how many draws lie in each of equally wide bins. */
final class OutcomesChart {
    private static final double[] SHARES = {0.025, 0.10, 0.50, 0.90, 0.975};
    private static final String[] NAMES = {"2.5 %", "10 %", "median", "90 %", "97.5 %"};
    /** So much of the draws stands in the outermost bin of each end, however far off it lies. */
    private static final double OUTERMOST = 0.005;

    private final String title;
    private final String xLabel;
    private final String reference;
    private final double[] sorted;

    /**
     * The chart.
     *
     * @param title what it shows
     * @param xLabel the amounts, with their unit
     * @param draws the outcomes
     * @param reference the name of an upright line at 0; empty for none
     */
    OutcomesChart(String title, String xLabel, double[] draws, String reference) {
        this.title = title;
        this.xLabel = xLabel;
        this.reference = reference;
        this.sorted = Arrays.stream(draws).filter(Extent::isDrawable).sorted().toArray();
    }

    /** How many draws lie in each of some bins, the first of which is so many widths from 0. */
    private record Bins(double width, long first, int[] counts) {

        double from(int bin) {
            return (first + bin) * width;
        }

        /** A place within a bin, between 0 and 1. */
        double within(int bin, double share) {
            return (first + bin + share) * width;
        }
    }

    Chart drawn() {
        if (sorted.length == 0) {
            return Charts.empty(title, data().table(), Charts.NOTHING);
        }
        double[] marks = Arrays.stream(SHARES).map(share -> Quantiles.ofSorted(sorted, share)).toArray();
        Bins bins = bins();
        double low = bins.from(0);
        double high = bins.from(bins.counts.length);
        Axis x = Axis.withMargins(reference.isEmpty() ? low : Math.min(0, low), reference.isEmpty() ? high : Math.max(0, high),
                Charts.TICKS_ACROSS + 1);
        Axis y = Axis.between(0, Arrays.stream(bins.counts).max().orElse(0) * 1.05, Charts.TICKS_ACROSS);
        Plot plot = new Plot(Charts.MIDDLING, x, y, xLabel, "draws of " + Cell.format(sorted.length, 0));
        Places boxes = new Places();
        for (int b = 0; b < bins.counts.length; b++) {
            boxes.box(bins.within(b, 0.03), bins.within(b, 0.97), bins.counts[b]);
        }
        plot.add(new Layer(Layer.Form.POLYGON, AmountCharts.LEVEL, boxes.x(), boxes.y()));
        upright(plot, y, new Ink(3, Ink.Manner.LINE), "median " + Cell.format(marks[2], 0), marks[2]);
        upright(plot, y, new Ink(3, Ink.Manner.DASH), "80 % range " + Cell.format(marks[1], 0) + " to " + Cell.format(marks[3], 0),
                marks[1], marks[3]);
        upright(plot, y, new Ink(3, Ink.Manner.HAIR), "95 % range " + Cell.format(marks[0], 0) + " to " + Cell.format(marks[4], 0),
                marks[0], marks[4]);
        if (!reference.isEmpty()) {
            // Not dashed as the reference of other charts is: the range beside it is.
            upright(plot, y, new Ink(2, Ink.Manner.LINE), reference, 0);
        }
        return plot.chart(title, words(marks), data(marks, bins), Charts.PAINTER);
    }

    private DrawnData data() {
        return new DrawnData(title, List.of("row"), List.of(Charts.withSuffix(xLabel, " from"), Charts.withSuffix(xLabel, " to"),
                "draws"));
    }

    private Table data(double[] marks, Bins bins) {
        DrawnData data = data();
        for (int m = 0; m < marks.length; m++) {
            data.row(new String[] {NAMES[m]}, marks[m], Double.NaN, Double.NaN);
        }
        for (int b = 0; b < bins.counts.length; b++) {
            data.row(new String[] {""}, bins.from(b), bins.from(b + 1), bins.counts[b]);
        }
        return data.table();
    }

    private Bins bins() {
        double least = Quantiles.ofSorted(sorted, OUTERMOST);
        double most = Quantiles.ofSorted(sorted, 1 - OUTERMOST);
        double width = width(least, most);
        long first = (long) Math.floor(least / width);
        int[] counts = new int[(int) ((long) Math.floor(most / width) - first) + 1];
        for (double draw : sorted) {
            counts[(int) Math.max(0, Math.min(counts.length - 1, (long) Math.floor(draw / width) - first))]++;
        }
        return new Bins(width, first, counts);
    }

    /** A round width that gives some thirty bins. */
    private static double width(double least, double most) {
        double span = most - least;
        if (!(span > 1e-9 * Math.max(1, Math.abs(most)))) {
            return Math.max(1, Math.abs(most) * 0.1);
        }
        double rough = span / 30;
        double power = StrictMath.pow(10, Math.floor(StrictMath.log10(rough)));
        double digit = rough / power;
        return power * (digit <= 1 ? 1 : digit <= 2 ? 2 : digit <= 5 ? 5 : 10);
    }

    private static void upright(Plot plot, Axis y, Ink ink, String name, double... at) {
        Places places = new Places();
        for (double place : at) {
            places.stroke(place, y.min(), place, y.max());
        }
        plot.add(new Layer(Layer.Form.LINE, ink, places.x(), places.y()));
        plot.explain(Layer.Form.LINE, ink, name);
    }

    private String words(double[] marks) {
        return title + ": " + xLabel + ": " + Cell.format(sorted.length, 0) + " draws; median " + number(marks[2]) + ", 80 % range "
                + number(marks[1]) + " to " + number(marks[3]) + ", 95 % range " + number(marks[0]) + " to " + number(marks[4]) + ".";
    }
}
