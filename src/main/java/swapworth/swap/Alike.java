package swapworth.swap;

import java.util.ArrayList;
import java.util.List;
import swapworth.statistics.Draws;

/**
 * Swaps that were seen of the very body and running gear of the finished car. They are prices of what is asked for, so they speak of the
 * result of all approaches and not of one of them: the log price of swap k is the level of the finished car, the step between the two
 * (year, distances, condition, level of trade, day, builder) and how one swap departs from its description. As they grow in number they
 * outweigh what the approaches say, and how far these differ, and tell themselves how far single ones scatter.
 */
final class Alike {
    private final List<SeenSwap> swaps = new ArrayList<>();
    private final List<double[]> steps = new ArrayList<>();
    private final List<double[]> departures = new ArrayList<>();
    private final List<Double> logs = new ArrayList<>();
    private double scatter = 1;

    /** A swap with draws of the step from the level of the finished car to that of such swaps, and of how the one departs from it. */
    void add(SeenSwap swap, double[] step, double[] departure) {
        swaps.add(swap);
        steps.add(step);
        departures.add(departure);
        logs.add(StrictMath.log(swap.price()));
    }

    int count() {
        return swaps.size();
    }

    /**
     * Learns how far single swaps scatter, as a factor on what is assumed: the mean square of their distances from their mean, each in
     * units of its own spread, with the assumed 1 counted as so many swaps.
     */
    void learnScatter(double worth) {
        double[] rest = new double[logs.size()];
        double[] weight = new double[rest.length];
        double sum = 0;
        double mean = 0;
        for (int k = 0; k < rest.length; k++) {
            rest[k] = logs.get(k) - Draws.mean(steps.get(k)) - Draws.mean(departures.get(k));
            weight[k] = 1 / Draws.covariance(departures.get(k), departures.get(k));
            sum += weight[k];
            mean += weight[k] * rest[k];
        }
        double squares = 0;
        for (int k = 0; k < rest.length; k++) {
            squares += weight[k] * (rest[k] - mean / sum) * (rest[k] - mean / sum);
        }
        scatter = rest.length < 2 ? 1 : Math.sqrt((worth + squares) / (worth + rest.length - 1));
        departures.replaceAll(this::scattered);
    }

    /** By which factor single swaps scatter more or less than is assumed; 1 where fewer than two were seen. */
    double scatter() {
        return scatter;
    }

    /** A departure of one swap, scattered as was learned. */
    double[] scattered(double[] departure) {
        double mean = Draws.mean(departure);
        return Situation.map(departure, d -> mean + scatter * (d - mean));
    }

    /** What such swaps bring on average, one by one. */
    private double[][] predicted(double[] together) {
        return steps.stream().map(step -> Situation.sum(together, step)).toArray(double[][]::new);
    }

    /** Draws of a quantity after these prices, where the approaches together say what they say. */
    double[] given(double[] quantity, double[] together) {
        return Draws.given(quantity, predicted(together), departures.toArray(double[][]::new),
                logs.stream().mapToDouble(Double::doubleValue).toArray());
    }

    /** How far the mean of these prices lies from what the approaches together say: the mean of the miss and its variance. */
    double[] miss(double[] together) {
        double[] gap = new double[together.length];
        double[][] predicted = predicted(together);
        for (int k = 0; k < predicted.length; k++) {
            for (int i = 0; i < gap.length; i++) {
                gap[i] += (logs.get(k) - predicted[k][i] - departures.get(k)[i]) / predicted.length;
            }
        }
        return new double[] {Draws.mean(gap), Draws.covariance(gap, gap)};
    }
}
