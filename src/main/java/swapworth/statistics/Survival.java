package swapworth.statistics;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.OptionalDouble;
import java.util.stream.IntStream;

/**
 * How long something lasts where some of it has not ended yet: the product-limit estimate of E. Kaplan and P. Meier, J. Amer. Statist.
 * Assoc. 53 (1958) 457-481. S(t) is the product over the times up to t of 1 - d/n, with d endings among n still at risk; what is
 * censored at a time is still at risk at that time. Standard errors are Greenwood's, limits those of
 * ln(-ln S) taken back, so that they stay within 0 and 1.
 *
 * @param steps one step for each time that was seen, in order
 */
public record Survival(List<Step> steps) {

    /** The upper 2.5 % point of a normal law. */
    private static final double Z = Normal.quantile(0.975);

    /** Copies the list in. */
    public Survival {
        steps = List.copyOf(steps);
    }

    /**
     * What happened at one time.
     *
     * @param time the time
     * @param atRisk how many had lasted until then
     * @param ended how many ended then
     * @param censored how many were last seen then, not ended
     * @param survival S(t), the share that lasts longer
     * @param error its standard error; not a number where nothing is left
     * @param low95 lower end of its 95 % range; not a number where nothing is left
     * @param high95 upper end of its 95 % range; not a number where nothing is left
     */
    public record Step(double time, int atRisk, int ended, int censored, double survival, double error, double low95, double high95) {
    }

    /**
     * The estimate from times.
     *
     * @param times how long each lasted, or was seen to last; at least 0
     * @param ended whether each was seen to end
     * @return the estimate; of nothing, no step
     * @throws IllegalArgumentException if the lengths differ or a time is below 0
     */
    public static Survival of(double[] times, boolean[] ended) {
        if (times.length != ended.length) {
            throw new IllegalArgumentException(times.length + " times meet " + ended.length + " endings");
        }
        if (Arrays.stream(times).anyMatch(t -> !(t >= 0))) {
            throw new IllegalArgumentException("a time is not below 0");
        }
        int[] order = IntStream.range(0, times.length).boxed().sorted(Comparator.comparingDouble(i -> times[i])).mapToInt(i -> i)
                .toArray();
        List<Step> steps = new ArrayList<>();
        double survival = 1;
        double sum = 0;
        int at = 0;
        while (at < order.length) {
            double time = times[order[at]];
            int atRisk = order.length - at;
            int ends = 0;
            int next = at;
            while (next < order.length && times[order[next]] == time) {
                ends += ended[order[next++]] ? 1 : 0;
            }
            survival *= 1 - (double) ends / atRisk;
            sum += ends == 0 ? 0 : ends / ((double) atRisk * (atRisk - ends));
            boolean left = survival > 0;
            double logError = Math.sqrt(sum);
            double reach = survival < 1 ? Math.exp(Z * logError / -Math.log(survival)) : 1;
            steps.add(new Step(time, atRisk, ends, next - at - ends, survival, left ? survival * logError : Double.NaN,
                    left ? Math.pow(survival, reach) : Double.NaN, left ? Math.pow(survival, 1 / reach) : Double.NaN));
            at = next;
        }
        return new Survival(steps);
    }

    /**
     * How many things the estimate is of.
     *
     * @return at least 0
     */
    public int size() {
        return steps.isEmpty() ? 0 : steps.get(0).atRisk();
    }

    /**
     * How many of them were seen to end.
     *
     * @return at least 0
     */
    public int endings() {
        return steps.stream().mapToInt(Step::ended).sum();
    }

    /**
     * The time until which half have ended.
     *
     * @return the first time at which the estimate is at most one half (between two times where it is just that); empty where it never is
     */
    public OptionalDouble median() {
        return reached(Step::survival, 0.5);
    }

    /**
     * The lower end of the 95 % range of the median: the first time at which the lower limit is at most one half.
     *
     * @return empty where it never is, or no limit can be told
     */
    public OptionalDouble medianLow95() {
        return reached(Step::low95, 0.5);
    }

    /**
     * The upper end of the 95 % range of the median.
     *
     * @return empty where the upper limit never falls to one half: no end can be told
     */
    public OptionalDouble medianHigh95() {
        return reached(Step::high95, 0.5);
    }

    private OptionalDouble reached(java.util.function.ToDoubleFunction<Step> figure, double level) {
        for (int k = 0; k < steps.size(); k++) {
            Step step = steps.get(k);
            double at = figure.applyAsDouble(step);
            // A limit that is not a number is reached at no time.
            if (at <= level + 1e-12) {
                boolean touches = Math.abs(at - level) <= 1e-12;
                int next = k + 1;
                while (touches && next < steps.size() && steps.get(next).ended() == 0) {
                    next++;
                }
                return OptionalDouble.of(touches && next < steps.size() ? (step.time() + steps.get(next).time()) / 2 : step.time());
            }
        }
        return OptionalDouble.empty();
    }

    /**
     * The share that lasts longer than a time.
     *
     * @param time the time
     * @return S(t), 1 before the first step; empty beyond the last time seen where some had not ended by then: nobody watched so long
     */
    public OptionalDouble at(double time) {
        if (steps.isEmpty() || time > steps.get(steps.size() - 1).time() && steps.get(steps.size() - 1).survival() > 0) {
            return OptionalDouble.empty();
        }
        double survival = 1;
        for (Step step : steps) {
            if (step.time() > time) {
                break;
            }
            survival = step.survival();
        }
        return OptionalDouble.of(survival);
    }
}
