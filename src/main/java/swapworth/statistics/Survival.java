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
 * @param size how many things the estimate is of
 * @param endings how many of them were seen to end
 */
public record Survival(List<Step> steps, int size, int endings) {

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
     * @param atRisk how many were watched that had lasted until then; no whole number where it is not known when each began
     * @param ended how many ended then, likewise
     * @param censored how many were last seen then, not ended, likewise
     * @param survival S(t), the share that lasts longer
     * @param error its standard error; not a number where nothing is left
     * @param low95 lower end of its 95 % range; not a number where nothing is left
     * @param high95 upper end of its 95 % range; not a number where nothing is left
     */
    public record Step(double time, double atRisk, double ended, double censored, double survival, double error, double low95,
            double high95) {
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
        ProductLimit limit = new ProductLimit();
        int endings = 0;
        int at = 0;
        while (at < order.length) {
            double time = times[order[at]];
            int atRisk = order.length - at;
            int ends = 0;
            int next = at;
            while (next < order.length && times[order[next]] == time) {
                ends += ended[order[next++]] ? 1 : 0;
            }
            limit.step(time, atRisk, ends, next - at - ends);
            endings += ends;
            at = next;
        }
        return new Survival(limit.steps, order.length, endings);
    }

    /**
     * The estimate where things are looked for now and then. Each began on an unknown day since the look before the one that found it, and
     * one that came and went between two looks was not found: so a thing counts as watched only from the age at which it was found. That
     * age is shared out over all days since the look before, each day of beginning being as likely as another. Limits are drawn in where a
     * later or an earlier one says more, for S never rises.
     *
     * @param gaps days from the look before to the look that found each, at least 1
     * @param days days from then to the last on which it was known to be there; at least 0
     * @param unseen how many days after that hold its end: 1 if its day is known; 0 if it was not seen to end
     * @return the estimate; of nothing, no step
     * @throws IllegalArgumentException if the lengths differ, a gap is below 1 or another number below 0
     */
    public static Survival ofLooks(int[] gaps, int[] days, int[] unseen) {
        if (gaps.length != days.length || days.length != unseen.length) {
            throw new IllegalArgumentException(gaps.length + " gaps and " + days.length + " days meet " + unseen.length + " endings");
        }
        if (Arrays.stream(gaps).anyMatch(g -> g < 1) || IntStream.concat(Arrays.stream(days), Arrays.stream(unseen)).anyMatch(d -> d < 0)) {
            throw new IllegalArgumentException("a gap is at least a day, and no number of days below 0");
        }
        AgesWhenFound.Seen seen = AgesWhenFound.of(gaps, days, unseen);
        ProductLimit limit = new ProductLimit();
        for (int age = 0; age < seen.atRisk().length; age++) {
            if (seen.atRisk()[age] > 0 && seen.ended()[age] + seen.censored()[age] > 0) {
                limit.step(age, seen.atRisk()[age], seen.ended()[age], seen.censored()[age]);
            }
        }
        return new Survival(limit.drawnIn(), unseen.length, (int) Arrays.stream(unseen).filter(d -> d > 0).count());
    }

    /** The estimate as it goes down step by step. */
    private static final class ProductLimit {
        /** Less is the rounding of sums of shares. */
        private static final double NOTHING = 1e-9;
        private final List<Step> steps = new ArrayList<>();
        private double survival = 1;
        private double sum;

        void step(double time, double atRisk, double ends, double censored) {
            boolean all = atRisk - ends < NOTHING;
            survival *= all ? 0 : 1 - ends / atRisk;
            sum += ends == 0 ? 0 : ends / (atRisk * (atRisk - ends));
            boolean left = survival > 0;
            double logError = Math.sqrt(sum);
            double reach = survival < 1 ? Math.exp(Z * logError / -Math.log(survival)) : 1;
            steps.add(new Step(time, atRisk, ends, censored, survival, left ? survival * logError : Double.NaN,
                    left ? Math.pow(survival, reach) : Double.NaN, left ? Math.pow(survival, 1 / reach) : Double.NaN));
        }

        List<Step> drawnIn() {
            double low = 0;
            for (int k = steps.size() - 1; k >= 0; k--) {
                Step s = steps.get(k);
                low = Double.isNaN(s.low95) ? low : Math.max(low, s.low95);
                steps.set(k, new Step(s.time, s.atRisk, s.ended, s.censored, s.survival, s.error, Double.isNaN(s.low95) ? s.low95 : low,
                        s.high95));
            }
            double high = 1;
            for (int k = 0; k < steps.size(); k++) {
                Step s = steps.get(k);
                high = Double.isNaN(s.high95) ? high : Math.min(high, s.high95);
                steps.set(k, new Step(s.time, s.atRisk, s.ended, s.censored, s.survival, s.error, s.low95,
                        Double.isNaN(s.high95) ? s.high95 : high));
            }
            return steps;
        }
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
