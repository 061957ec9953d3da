package swapworth.chart;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import java.util.Random;

/** Six charts of invented data, as a page of the main job has them. */
public final class SampleCharts {

    private static final String[] LINES = {"Veldra Sprenn", "Veldra Sprenn S", "Veldra Marel V6", "Veldra Corso"};

    private SampleCharts() {
    }

    /** Price against mileage, twice; asked against estimate; index; terms; left-out errors. */
    public static List<Chart> six(int points, long seed) {
        Random random = new Random(seed);
        List<Chart> charts = new ArrayList<>();
        charts.add(scatter(points, ValueScale.LINEAR, random));
        charts.add(scatter(points, ValueScale.LOGARITHMIC, random));
        charts.add(identity(points, random));
        charts.add(index());
        charts.add(terms());
        charts.add(errors(points, random));
        return charts;
    }

    static Chart scatter(int points, ValueScale scale, Random random) {
        List<Points> groups = new ArrayList<>();
        for (int g = 0; g < LINES.length; g++) {
            int n = points / LINES.length;
            double[] x = new double[n];
            double[] y = new double[n];
            List<String> labels = new ArrayList<>();
            for (int i = 0; i < n; i++) {
                x[i] = Math.rint(5_000 + 170_000 * random.nextDouble());
                y[i] = Math.rint(21_000 * Math.exp(-x[i] / 140_000 - 0.2 * g + 0.17 * random.nextGaussian()) / 50) * 50;
                labels.add(LINES[g] + " no. " + i + ", " + (int) y[i] + " USD");
            }
            if (g == 1 && n > 3) {
                y[2] = 187_500;
                x[3] = Double.NaN;
            }
            groups.add(g == 0 ? new Points(LINES[g], x, y, labels) : Points.of(LINES[g], x, y));
        }
        int steps = 80;
        double[] x = new double[steps];
        double[] middle = new double[steps];
        double[] low = new double[steps];
        double[] high = new double[steps];
        for (int i = 0; i < steps; i++) {
            x[i] = 5_000 + i * 170_000.0 / (steps - 1);
            middle[i] = 17_500 * Math.exp(-x[i] / 140_000);
            low[i] = middle[i] * Math.exp(-0.36 - 0.000001 * x[i]);
            high[i] = middle[i] * Math.exp(0.36 + 0.000001 * x[i]);
        }
        String title = "Asked price against mileage, Veldra lines" + (scale == ValueScale.LINEAR ? "" : " (equal ratios)");
        return Charts.scatterWithBand(title, "mileage, mi", "asked price, USD", scale, groups,
                new Curve("fitted, 6 years old", "80 % range of one car", x, middle, low, high));
    }

    static Chart identity(int points, Random random) {
        double[] asked = new double[points];
        double[] middle = new double[points];
        double[] low = new double[points];
        double[] high = new double[points];
        for (int i = 0; i < points; i++) {
            middle[i] = Math.exp(Math.log(9_000) + 0.55 * random.nextGaussian());
            low[i] = middle[i] * 0.76;
            high[i] = middle[i] * 1.31;
            asked[i] = Math.rint(middle[i] * Math.exp(0.2 * random.nextGaussian()) / 50) * 50;
        }
        return Charts.identity("Asked against fair value, each car left out of its own estimate", "asked price, USD",
                "fair value, USD", "80 % range", ValueScale.LOGARITHMIC,
                List.of(new Estimates("cars", asked, middle, low, high, List.of())));
    }

    static Chart index() {
        int weeks = 78;
        List<LocalDate> dates = new ArrayList<>();
        double[][] lines = new double[5][weeks];
        double[] widths = {0, -0.022, 0.022, -0.036, 0.036};
        for (int i = 0; i < weeks; i++) {
            dates.add(LocalDate.of(2025, 5, 5).plusWeeks(i));
            double level = 100 * Math.exp(0.09 * Math.sin(i / 24.0) - 0.0012 * i);
            double spread = 1 + 0.9 * Math.abs(Math.cos(i / 9.0));
            for (int k = 0; k < lines.length; k++) {
                lines[k][i] = level * Math.exp(widths[k] * spread);
            }
        }
        return Charts.bandLine("Market index of the file", "index, May 2025 = 100",
                new DatedBand("index", dates, lines[0], lines[1], lines[2], lines[3], lines[4]), OptionalDouble.of(100));
    }

    static Chart terms() {
        List<RangeRow> rows = new ArrayList<>();
        String[] names = {"one year older", "10,000 mi more", "engine dead", "title salvage", "front damage", "sold, not asked",
                "trade asking, not private", "trim S", "bad rust", "cooling per month"};
        double[] middles = {-9.6, -4.1, -38, -31, -22, -5.5, 6.8, 14, -18, -0.9};
        for (int i = 0; i < names.length; i++) {
            double s = 1 + Math.abs(middles[i]) * 0.18;
            rows.add(new RangeRow(names[i], middles[i], middles[i] - 1.28 * s, middles[i] + 1.28 * s, middles[i] - 1.96 * s,
                    middles[i] + 1.96 * s));
        }
        return Charts.ranges("What each term does to the price", "change of price, %", rows, OptionalDouble.of(0));
    }

    static Chart errors(int points, Random random) {
        return AmountCharts.outcomes("Asked price less fair value", "gap, %",
                random.doubles(points).map(u -> 20 * (u + random.nextDouble() + random.nextDouble() - 1.5)).toArray(), "equal");
    }
}
