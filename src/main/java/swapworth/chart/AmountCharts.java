package swapworth.chart;

import static java.util.Objects.requireNonNull;
import static swapworth.chart.DrawnData.number;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import swapworth.statistics.Quantiles;
import swapworth.table.Cell;

/** Charts of amounts that add up, and of amounts that are not known yet. The rules of {@link Charts} hold here too. */
public final class AmountCharts {
    private static final int MOST_IN_WORDS = 14;
    private static final Ink UP = new Ink(2, Ink.Manner.BAR);
    private static final Ink DOWN = new Ink(4, Ink.Manner.BAR);
    private static final Ink LEVEL = new Ink(1, Ink.Manner.BAR);

    private AmountCharts() {
    }

    /**
     * One row of a waterfall.
     *
     * @param name what it is
     * @param amount the change; of a level not read
     * @param kind whether it changes the running sum or shows it
     */
    public record Step(String name, double amount, Kind kind) {

        /** What a row does. */
        public enum Kind {
            /** It changes the running sum. */
            CHANGE,
            /** It shows the running sum. */
            LEVEL
        }

        /** Checks that nothing is missing. */
        public Step {
            requireNonNull(name, "name");
            requireNonNull(kind, "kind");
        }

        /**
         * A change.
         *
         * @param name what it is
         * @param amount by how much
         * @return the row
         */
        public static Step change(String name, double amount) {
            return new Step(name, amount, Kind.CHANGE);
        }

        /**
         * The running sum.
         *
         * @param name what it is
         * @return the row
         */
        public static Step level(String name) {
            return new Step(name, 0, Kind.LEVEL);
        }
    }

    /**
     * From a beginning to an end by changes that add up: money from purchase to net, or the adjustments of one car toward another.
     *
     * @param title what the chart shows
     * @param xLabel the amounts, with their unit
     * @param steps the rows, from the top; the running sum begins at 0
     * @return the chart
     */
    public static Chart waterfall(String title, String xLabel, List<Step> steps) {
        DrawnData data = new DrawnData(title, List.of("row"), List.of(Charts.withSuffix(xLabel, " change"), Charts.withSuffix(xLabel,
                " so far")));
        Extent across = new Extent(ValueScale.LINEAR);
        double[] from = new double[steps.size()];
        double[] to = new double[steps.size()];
        double running = 0;
        for (int i = 0; i < steps.size(); i++) {
            Step step = steps.get(i);
            boolean level = step.kind == Step.Kind.LEVEL;
            double change = level || !Extent.isDrawable(step.amount) ? 0 : step.amount;
            from[i] = level ? 0 : running;
            running += change;
            to[i] = running;
            across.include(from[i], to[i]);
            data.row(new String[] {step.name}, level ? Double.NaN : step.amount, running);
        }
        if (steps.isEmpty() || across.isEmpty()) {
            return Charts.empty(title, data.table(), Charts.NOTHING);
        }
        Axis x = Axis.withMargins(Math.min(0, across.low()), Math.max(0, across.high()), Charts.TICKS_ACROSS);
        Axis y = Axis.rows(steps.size());
        Plot plot = new Plot(Charts.ROW * steps.size(), x, y, xLabel, "");
        Places up = new Places();
        Places down = new Places();
        Places levels = new Places();
        Places joints = new Places();
        StringBuilder words = new StringBuilder(title).append(": ").append(xLabel).append(": ");
        for (int i = 0; i < steps.size(); i++) {
            Step step = steps.get(i);
            double height = steps.size() - 1.0 - i;
            boolean level = step.kind == Step.Kind.LEVEL;
            String amount = level ? Cell.format(to[i], 0) : Cell.signed(to[i] - from[i], 0).shown();
            plot.nameRow(step.name, amount);
            (level ? levels : to[i] >= from[i] ? up : down).bar(from[i], to[i], height);
            if (i + 1 < steps.size()) {
                joints.stroke(x.at(to[i]), height - Places.HALF_BAR, x.at(to[i]), height - 1 + Places.HALF_BAR);
            }
            boolean last = i == steps.size() - 1;
            if (i < MOST_IN_WORDS || last) {
                words.append(i == 0 ? "" : last && i > MOST_IN_WORDS ? "; others in the table; at last " : "; ").append(step.name)
                        .append(' ').append(amount);
            }
        }
        words.append('.');
        plot.add(new Layer(Layer.Form.LINE, new Ink(0, Ink.Manner.HAIR), joints.x(), joints.y()));
        fill(plot, UP, up, "adds");
        fill(plot, DOWN, down, "takes off");
        fill(plot, LEVEL, levels, "stands at");
        return plot.chart(title, words.toString(), data.table(), Charts.PAINTER);
    }

    private static void fill(Plot plot, Ink ink, Places places, String name) {
        if (places.size() > 0) {
            plot.add(new Layer(Layer.Form.POLYGON, ink, places.x(), places.y()));
            plot.explain(Layer.Form.POLYGON, ink, name);
        }
    }

    /**
     * Outcomes of a simulation with their quantiles: how many draws lie in each of equally wide bins.
     *
     * @param title what the chart shows
     * @param xLabel the amounts, with their unit
     * @param draws the outcomes
     * @param reference the name of a broken upright line at 0; empty for none
     * @return the chart; the outermost of two hundred draws at each end stand in the outermost bins
     */
    public static Chart outcomes(String title, String xLabel, double[] draws, String reference) {
        double[] sorted = Arrays.stream(draws).filter(Extent::isDrawable).sorted().toArray();
        DrawnData data = new DrawnData(title, List.of("row"), List.of(Charts.withSuffix(xLabel, " from"), Charts.withSuffix(xLabel, " to"),
                "draws"));
        if (sorted.length == 0) {
            return Charts.empty(title, data.table(), Charts.NOTHING);
        }
        double[] marks = {0.025, 0.10, 0.50, 0.90, 0.975};
        String[] names = {"2.5 %", "10 %", "median", "90 %", "97.5 %"};
        for (int m = 0; m < marks.length; m++) {
            marks[m] = Quantiles.ofSorted(sorted, marks[m]);
            data.row(new String[] {names[m]}, marks[m], Double.NaN, Double.NaN);
        }
        double least = Quantiles.ofSorted(sorted, 0.005);
        double most = Quantiles.ofSorted(sorted, 0.995);
        double width = width(least, most);
        long first = (long) Math.floor(least / width);
        int[] counts = new int[(int) ((long) Math.floor(most / width) - first) + 1];
        for (double draw : sorted) {
            counts[(int) Math.max(0, Math.min(counts.length - 1, (long) Math.floor(draw / width) - first))]++;
        }
        int fullest = 0;
        for (int b = 0; b < counts.length; b++) {
            fullest = Math.max(fullest, counts[b]);
            data.row(new String[] {""}, (first + b) * width, (first + b + 1) * width, counts[b]);
        }
        double low = first * width;
        double high = (first + counts.length) * width;
        Axis x = Axis.withMargins(reference.isEmpty() ? low : Math.min(0, low), reference.isEmpty() ? high : Math.max(0, high),
                Charts.TICKS_ACROSS + 1);
        Axis y = Axis.between(0, fullest * 1.05, Charts.TICKS_ACROSS);
        Plot plot = new Plot(Charts.MIDDLING, x, y, xLabel, "draws of " + Cell.format(sorted.length, 0));
        Places boxes = new Places();
        for (int b = 0; b < counts.length; b++) {
            boxes.box((first + b + 0.03) * width, (first + b + 0.97) * width, counts[b]);
        }
        plot.add(new Layer(Layer.Form.POLYGON, LEVEL, boxes.x(), boxes.y()));
        Places wide = new Places();
        Places near = new Places();
        Places middle = new Places();
        upright(wide, marks[0], y);
        upright(wide, marks[4], y);
        upright(near, marks[1], y);
        upright(near, marks[3], y);
        upright(middle, marks[2], y);
        line(plot, new Ink(3, Ink.Manner.LINE), middle, "median " + Cell.format(marks[2], 0));
        line(plot, new Ink(3, Ink.Manner.DASH), near, "80 % range " + Cell.format(marks[1], 0) + " to " + Cell.format(marks[3], 0));
        line(plot, new Ink(3, Ink.Manner.HAIR), wide, "95 % range " + Cell.format(marks[0], 0) + " to " + Cell.format(marks[4], 0));
        if (!reference.isEmpty()) {
            Places zero = new Places();
            upright(zero, 0, y);
            // Not dashed as the reference of other charts is: the range beside it is.
            line(plot, new Ink(2, Ink.Manner.LINE), zero, reference);
        }
        return plot.chart(title, title + ": " + xLabel + ": " + Cell.format(sorted.length, 0) + " draws; median " + number(marks[2])
                + ", 80 % range " + number(marks[1]) + " to " + number(marks[3]) + ", 95 % range " + number(marks[0]) + " to "
                + number(marks[4]) + ".",
                data.table(), Charts.PAINTER);
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

    private static void upright(Places places, double place, Axis y) {
        places.stroke(place, y.min(), place, y.max());
    }

    private static void line(Plot plot, Ink ink, Places places, String name) {
        plot.add(new Layer(Layer.Form.LINE, ink, places.x(), places.y()));
        plot.explain(Layer.Form.LINE, ink, name);
    }

    /**
     * What one uncertain amount does to a sum while the others stay at their middle.
     *
     * @param name what it is
     * @param low the amount one in ten below
     * @param middle its median
     * @param high the amount one in ten above
     */
    public record Swing(String name, double low, double middle, double high) {

        /** Checks that nothing is missing. */
        public Swing {
            requireNonNull(name, "name");
        }
    }

    /**
     * How far each uncertain amount moves a sum, from its 10 % to its 90 % quantile.
     *
     * @param title what the chart shows
     * @param xLabel the change of the sum, with its unit
     * @param swings the rows, from the top; the widest first reads best
     * @return the chart
     */
    public static Chart tornado(String title, String xLabel, List<Swing> swings) {
        DrawnData data = new DrawnData(title, List.of("row"), List.of(Charts.withSuffix(xLabel, " at 10 %"), Charts.withSuffix(xLabel,
                " at 90 %")));
        Extent across = new Extent(ValueScale.LINEAR);
        List<Swing> drawn = new ArrayList<>();
        for (Swing swing : swings) {
            data.row(new String[] {swing.name}, swing.low - swing.middle, swing.high - swing.middle);
            if (Extent.isDrawable(swing.low) && Extent.isDrawable(swing.middle) && Extent.isDrawable(swing.high)) {
                across.include(swing.low - swing.middle, swing.high - swing.middle);
                drawn.add(swing);
            }
        }
        if (drawn.isEmpty()) {
            return Charts.empty(title, data.table(), Charts.NOTHING);
        }
        Axis x = Axis.withMargins(Math.min(0, across.low()), Math.max(0, across.high()), Charts.TICKS_ACROSS);
        Axis y = Axis.rows(drawn.size());
        Plot plot = new Plot(Charts.ROW * drawn.size(), x, y, xLabel, "");
        Places less = new Places();
        Places more = new Places();
        StringBuilder words = new StringBuilder(title).append(": ").append(xLabel).append(": ");
        for (int i = 0; i < drawn.size(); i++) {
            Swing swing = drawn.get(i);
            double height = drawn.size() - 1.0 - i;
            plot.nameRow(swing.name);
            less.bar(swing.low - swing.middle, 0, height);
            more.bar(0, swing.high - swing.middle, height);
            if (i < MOST_IN_WORDS) {
                words.append(i == 0 ? "" : "; ").append(swing.name).append(' ').append(number(swing.low - swing.middle)).append(" to ")
                        .append(number(swing.high - swing.middle));
            }
        }
        words.append(drawn.size() > MOST_IN_WORDS ? "; the rest in the table." : ".");
        fill(plot, DOWN, less, "one in ten is lower");
        fill(plot, UP, more, "one in ten is higher");
        Places zero = new Places();
        upright(zero, 0, y);
        plot.add(new Layer(Layer.Form.LINE, Charts.REFERENCE, zero.x(), zero.y()));
        return plot.chart(title, words.toString(), data.table(), Charts.PAINTER);
    }
}
