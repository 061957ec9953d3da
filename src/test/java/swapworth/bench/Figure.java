package swapworth.bench;

import java.util.Arrays;
import java.util.List;
import java.util.function.IntToDoubleFunction;
import java.util.stream.IntStream;
import swapworth.statistics.Quantiles;
import swapworth.statistics.RatioStudy;

/** The figures of one training set: how close the values of its left-out cars are, and what their ranges hold. */
enum Figure {
    /** Median of 100 |value / price - 1|. */
    MEDIAN_ERROR("median error", "%", 2),
    /** Mean of |ln value - ln price|. */
    LOG_ERROR("log error", "", 4),
    /** Coefficient of dispersion of value / price. */
    COD("COD", "", 2),
    /** Price-related differential. */
    PRD("PRD", "", 3),
    /** Share of values within 10 % of the price. */
    WITHIN_10("within 10", "%", 1),
    /** Share of values within 20 % of the price. */
    WITHIN_20("within 20", "%", 1),
    /** Share of prices in the 80 % range. */
    COVER_80("cover 80", "%", 1),
    /** Share of prices in the 95 % range. */
    COVER_95("cover 95", "%", 1),
    /** Mean of ln(high / low) of the 80 % range. */
    WIDTH_80("width 80", "", 3),
    /** Mean of ln(high / low) of the 95 % range. */
    WIDTH_95("width 95", "", 3),
    /** Mean interval score of the 80 % range on ln price: width + 2 / 0.2 times the distance of a price outside. */
    SCORE_80("score 80", "", 3),
    /** Mean interval score of the 95 % range on ln price: width + 2 / 0.05 times the distance of a price outside. */
    SCORE_95("score 95", "", 3),
    /** Share of cars for which the method cannot tell: their value is the median of the line, and no range is counted. */
    CANNOT_TELL("cannot tell", "%", 1);

    private final String label;
    private final String unit;
    private final int decimals;

    Figure(String label, String unit, int decimals) {
        this.label = label;
        this.unit = unit;
        this.decimals = decimals;
    }

    String label() {
        return label;
    }

    String unit() {
        return unit;
    }

    int decimals() {
        return decimals;
    }

    /** All figures of some predictions, by ordinal; not a number where there is no range. */
    static double[] of(List<Prediction> predictions, double[] prices) {
        int n = prices.length;
        double[] figures = new double[values().length];
        double[] values = predictions.stream().mapToDouble(Prediction::value).toArray();
        double[] misses = IntStream.range(0, n).mapToDouble(i -> 100 * Math.abs(values[i] / prices[i] - 1)).toArray();
        RatioStudy study = RatioStudy.of(values, prices);
        figures[MEDIAN_ERROR.ordinal()] = median(misses);
        figures[LOG_ERROR.ordinal()] = mean(n, i -> Math.abs(Math.log(values[i] / prices[i])));
        figures[COD.ordinal()] = study.cod();
        figures[PRD.ordinal()] = study.prd();
        figures[WITHIN_10.ordinal()] = mean(n, i -> misses[i] <= 10 ? 100 : 0);
        figures[WITHIN_20.ordinal()] = mean(n, i -> misses[i] <= 20 ? 100 : 0);
        ranges(figures, 0, n, 0.80, prices, i -> predictions.get(i).low80(), i -> predictions.get(i).high80());
        ranges(figures, 1, n, 0.95, prices, i -> predictions.get(i).low95(), i -> predictions.get(i).high95());
        figures[CANNOT_TELL.ordinal()] = mean(n, i -> predictions.get(i).answer() == Prediction.Answer.CANNOT_TELL ? 100 : 0);
        return figures;
    }

    private static void ranges(double[] figures, int which, int n, double probability, double[] prices, IntToDoubleFunction low,
            IntToDoubleFunction high) {
        figures[COVER_80.ordinal() + which] = mean(n, i -> Double.isNaN(low.applyAsDouble(i)) ? Double.NaN
                : prices[i] >= low.applyAsDouble(i) && prices[i] <= high.applyAsDouble(i) ? 100 : 0);
        figures[WIDTH_80.ordinal() + which] = mean(n, i -> Math.log(high.applyAsDouble(i) / low.applyAsDouble(i)));
        figures[SCORE_80.ordinal() + which] = mean(n, i -> Math.log(high.applyAsDouble(i) / low.applyAsDouble(i))
                + 2 / (1 - probability) * (Math.max(0, Math.log(low.applyAsDouble(i) / prices[i]))
                + Math.max(0, Math.log(prices[i] / high.applyAsDouble(i)))));
    }

    /** The mean of those that are numbers. */
    private static double mean(int n, IntToDoubleFunction value) {
        return IntStream.range(0, n).mapToDouble(value).filter(v -> !Double.isNaN(v)).average().orElse(Double.NaN);
    }

    static double median(double[] values) {
        return Quantiles.of(Arrays.copyOf(values, values.length), 0.5);
    }
}
