package swapworth.chart;

import static java.util.Objects.requireNonNull;
import static swapworth.chart.DrawnData.number;

import java.util.ArrayList;
import java.util.List;

/** Charts of amounts that add up, and of amounts that are not known yet. The rules of {@link Charts} hold here too. */
public final class AmountCharts {
    static final int MOST_IN_WORDS = 14;
    static final Ink UP = new Ink(2, Ink.Manner.BAR);
    static final Ink DOWN = new Ink(4, Ink.Manner.BAR);
    static final Ink LEVEL = new Ink(1, Ink.Manner.BAR);

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
        return new WaterfallChart(title, xLabel, steps).drawn();
    }

    static void fill(Plot plot, Ink ink, Places places, String name) {
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
     * @param reference the name of an upright line at 0; empty for none
     * @return the chart; the outermost of two hundred draws at each end stand in the outermost bins
     */
    public static Chart outcomes(String title, String xLabel, double[] draws, String reference) {
        return new OutcomesChart(title, xLabel, draws, reference).drawn();
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
        zero.stroke(0, y.min(), 0, y.max());
        plot.add(new Layer(Layer.Form.LINE, Charts.REFERENCE, zero.x(), zero.y()));
        return plot.chart(title, words.toString(), data.table(), Charts.PAINTER);
    }
}
