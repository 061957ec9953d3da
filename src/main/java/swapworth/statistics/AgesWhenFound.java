package swapworth.statistics;

import java.util.Arrays;

/**
 * How old things were when a look found them, and when they ended, where each began on an unknown day since the look before, and ended on
 * one of some days. If they begin as often on one day as on another, the chance that k days had begun and gone by, and that the end came
 * on the day d after the look, is as S(k + d - 1) - S(k + d); for one last seen then as S(k + d). S, the share that lasts longer, comes
 * from the product-limit estimate that counts each thing from every such age on, and as ended at every such end, by the share of its
 * chance; the day of the look itself is over when it is found. The two are made to agree in a few rounds, with the hazard smoothed over
 * half the middle gap between looks, as the data cannot tell a finer shape.
 */
final class AgesWhenFound {
    private static final int ROUNDS = 8;
    private static final double LEAST_HAZARD = 1e-5;
    private static final double MOST_HAZARD = 0.5;
    private static final double MOST_IN_ALL = 300;

    private final int[] gaps;
    private final int[] days;
    private final int[] unseen;
    private final int ages;

    private AgesWhenFound(int[] gaps, int[] days, int[] unseen) {
        this.gaps = gaps;
        this.days = days;
        this.unseen = unseen;
        int most = 0;
        for (int i = 0; i < gaps.length; i++) {
            most = Math.max(most, gaps[i] - 1 + days[i] + unseen[i]);
        }
        ages = most + 1;
    }

    /** What was seen at each age, in whole days: how many were watched then, ended, and were seen last. All are sums of shares. */
    record Seen(double[] atRisk, double[] ended, double[] censored) {
    }

    /**
     * What was seen at each age of things, by the days between the two looks before each was found, the days on which it was known to be
     * there after that, and the number of days after these of which one was its last; 0 of these if it was not seen to end.
     */
    static Seen of(int[] gaps, int[] days, int[] unseen) {
        AgesWhenFound found = new AgesWhenFound(gaps, days, unseen);
        int[] sorted = gaps.clone();
        Arrays.sort(sorted);
        int reach = sorted.length == 0 ? 0 : sorted[sorted.length / 2] / 4;
        // To begin with, an end is as likely on one day as on another.
        double[] survival = new double[found.ages];
        Arrays.setAll(survival, age -> 1 - 0.5 * age / found.ages);
        Seen seen = found.seen(survival);
        for (int round = 0; round < ROUNDS; round++) {
            seen = found.seen(survival(seen, reach));
        }
        return seen;
    }

    private Seen seen(double[] survival) {
        double[] entered = new double[ages];
        double[] ends = new double[ages];
        double[] censored = new double[ages];
        for (int i = 0; i < gaps.length; i++) {
            double sum = 0;
            for (int k = 0; k < gaps[i]; k++) {
                sum += chance(i, k, survival);
            }
            for (int k = 0; k < gaps[i]; k++) {
                entered[k] += chance(i, k, survival) / sum;
                int last = k + days[i];
                if (unseen[i] == 0) {
                    censored[last] += survival[last] / sum;
                }
                for (int end = last + 1; end <= last + unseen[i]; end++) {
                    ends[end] += (survival[end - 1] - survival[end]) / sum;
                }
            }
        }
        double[] atRisk = new double[ages];
        double now = 0;
        for (int age = 0; age < ages; age++) {
            atRisk[age] = now;
            now += entered[age] - ends[age] - censored[age];
        }
        return new Seen(atRisk, ends, censored);
    }

    /** How likely what was seen of thing i is, if it had been there for k days when it was found. */
    private double chance(int i, int k, double[] survival) {
        int last = k + days[i];
        return unseen[i] == 0 ? survival[last] : survival[last] - survival[last + unseen[i]];
    }

    /** S at each age, with the hazard smoothed over so many days to either side. */
    private static double[] survival(Seen seen, int reach) {
        int ages = seen.atRisk.length;
        double[] hazard = new double[ages];
        double all = 0;
        for (int age = 1; age < ages; age++) {
            double ends = 0;
            double atRisk = 0;
            for (int near = Math.max(1, age - reach); near <= Math.min(ages - 1, age + reach); near++) {
                ends += seen.ended[near];
                atRisk += seen.atRisk[near];
            }
            hazard[age] = atRisk > 0 ? Math.max(LEAST_HAZARD, Math.min(MOST_HAZARD, ends / atRisk)) : LEAST_HAZARD;
            all += hazard[age];
        }
        // No share may come to less than numbers can hold.
        double scale = Math.min(1, MOST_IN_ALL / all);
        double[] survival = new double[ages];
        survival[0] = 1;
        for (int age = 1; age < ages; age++) {
            survival[age] = survival[age - 1] * Math.exp(-scale * hazard[age]);
        }
        return survival;
    }
}
