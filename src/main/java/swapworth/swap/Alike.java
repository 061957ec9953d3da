package swapworth.swap;

import java.util.ArrayList;
import java.util.List;
import swapworth.statistics.Draws;

/**
 * Swaps that were seen of the very body and running gear of the finished car. They are prices of what is asked for, so they speak of the
 * result of all approaches and not of one of them: the log price of swap k is the level of the finished car, the step between the two
 * (year, distances, condition, level of trade, day, builder) and how one swap departs from its description. As they grow in number they
 * outweigh what the approaches say, and how far these differ.
 */
final class Alike {
    private final List<SeenSwap> swaps = new ArrayList<>();
    private final List<double[]> steps = new ArrayList<>();
    private final List<double[]> departures = new ArrayList<>();
    private final List<Double> logs = new ArrayList<>();

    /** A swap with draws of the step from the level of the finished car to that of such swaps, and of how the one departs from it. */
    void add(SeenSwap swap, double[] step, double[] departure) {
        swaps.add(swap);
        steps.add(Situation.sum(step, departure));
        departures.add(departure);
        logs.add(StrictMath.log(swap.price()));
    }

    int count() {
        return swaps.size();
    }

    private double[][] predicted(double[] together) {
        return steps.stream().map(step -> Situation.sum(together, step)).toArray(double[][]::new);
    }

    /** Draws of a quantity after these prices, where the approaches together say what they say. */
    double[] given(double[] quantity, double[] together) {
        return Draws.given(quantity, predicted(together), logs.stream().mapToDouble(Double::doubleValue).toArray());
    }

    /** How far the mean of these prices lies from what the approaches together say: the mean of the miss and its variance. */
    double[] miss(double[] together) {
        double[] gap = new double[together.length];
        for (int k = 0; k < logs.size(); k++) {
            for (int i = 0; i < gap.length; i++) {
                gap[i] += (logs.get(k) - together[i] - steps.get(k)[i]) / logs.size();
            }
        }
        return new double[] {Draws.mean(gap), Draws.covariance(gap, gap)};
    }

    /** The part of the variance of a quantity that goes with how these single swaps depart: rows hold it, and no assumption. */
    double partOf(double[] quantity) {
        double sum = 0;
        for (double[] departure : departures) {
            double both = Draws.covariance(quantity, departure);
            sum += both * both / Draws.covariance(departure, departure);
        }
        return sum / Draws.covariance(quantity, quantity);
    }
}
