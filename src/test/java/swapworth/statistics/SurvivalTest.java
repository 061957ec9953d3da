package swapworth.statistics;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Random;
import java.util.function.ToDoubleFunction;
import org.junit.jupiter.api.Test;

/** The product-limit estimate. Source of the values: R 4.2.2, survfit of the package survival 3.5-3, limits of log-log. */
class SurvivalTest {
    private static final Survival TREATED = of(Reference.read("survival/gehan.csv").where("treat", "6-MP"), "cens");
    private static final Survival CONTROL = of(Reference.read("survival/gehan.csv").where("treat", "control"), "cens");

    private static Survival of(Reference set, String ended) {
        boolean[] ends = new boolean[set.rows()];
        for (int i = 0; i < ends.length; i++) {
            ends[i] = set.number(i, ended) == 1;
        }
        return Survival.of(set.numbers("time"), ends);
    }

    private static void check(Survival found, double[][] expected) {
        for (double[] e : expected) {
            Survival.Step step = found.steps().stream().filter(s -> s.time() == e[0]).findFirst().orElseThrow();
            assertEquals(e[1], step.atRisk(), "at risk at " + e[0]);
            assertEquals(e[2], step.ended(), "ended at " + e[0]);
            assertTrue(Reference.digits(step.survival(), e[3]) >= 10, "survival at " + e[0]);
            assertTrue(Reference.digits(step.error(), e[4]) >= 9, "standard error at " + e[0]);
            if (e.length > 5) {
                assertEquals(e[5], step.low95(), 1e-9, "lower limit at " + e[0]);
                assertEquals(e[6], step.high95(), 1e-9, "upper limit at " + e[0]);
            }
        }
    }

    @Test
    void times_of_remission_under_treatment_are_those_of_the_reference() {
        check(TREATED, new double[][] {
            {6, 21, 3, 0.857142857142857, 0.0763603548321213, 0.619717955265984, 0.951551747646997},
            {7, 17, 1, 0.80672268907563, 0.0869352851800572, 0.563146564622233, 0.92280901920288},
            {10, 15, 1, 0.752941176470588, 0.0963496529943205, 0.503199510799957, 0.889361835169265},
            {16, 11, 1, 0.627450980392157, 0.114053865256753, 0.367510855987502, 0.804912189471841},
            {23, 6, 1, 0.448179271708683, 0.13459145675576, 0.188052005959232, 0.680142628495241},
            {35, 1, 0, 0.448179271708683, 0.13459145675576, 0.188052005959232, 0.680142628495241}});
        assertEquals(9, TREATED.endings());
        assertEquals(21, TREATED.size());
        assertEquals(23, TREATED.median().orElseThrow());
        assertEquals(13, TREATED.medianLow95().orElseThrow());
        assertTrue(TREATED.medianHigh95().isEmpty());
    }

    @Test
    void times_of_remission_without_treatment_are_those_of_the_reference() {
        check(CONTROL, new double[][] {
            {1, 21, 2, 0.904761904761905, 0.0640564484890047, 0.670045882235034, 0.975294149038113},
            {8, 12, 4, 0.380952380952381, 0.105971169574131, 0.183066548820394, 0.577788677745831},
            {22, 2, 1, 0.0476190476190476, 0.0464714320451682, 0.00332446304253118, 0.197044905698946}});
        assertEquals(0, CONTROL.at(23).orElseThrow(), 1e-15);
        assertEquals(8, CONTROL.median().orElseThrow());
        assertEquals(4, CONTROL.medianLow95().orElseThrow());
        assertEquals(11, CONTROL.medianHigh95().orElseThrow());
    }

    @Test
    void a_second_set_is_that_of_the_reference() {
        check(of(Reference.read("survival/aml.csv").where("x", "Maintained"), "status"), new double[][] {
            {9, 11, 1, 0.9090909091, 0.0866784172},
            {31, 5, 1, 0.4909090909, 0.1641932672},
            {48, 2, 1, 0.1840909091, 0.1534927458}});
    }

    private static void checkWhole(Survival found, Reference expected, double digits) {
        assertTrue(expected.rows() > 0);
        for (int i = 0; i < expected.rows(); i++) {
            double time = expected.number(i, "time");
            Survival.Step step = found.steps().stream().filter(s -> s.time() == time).findFirst().orElseThrow();
            assertEquals(expected.number(i, "n_risk"), step.atRisk(), "at risk at " + time);
            assertEquals(expected.number(i, "n_event"), step.ended(), "ended at " + time);
            agrees(expected.text(i, "survival"), step.survival(), digits, "survival at " + time);
            agrees(expected.text(i, "error"), step.error(), digits, "standard error at " + time);
        }
    }

    /** The reference has no number where nothing is left. */
    private static void agrees(String expected, double found, double digits, String what) {
        if (expected.startsWith("Na") || expected.equals("NA")) {
            assertTrue(Double.isNaN(found), what);
        } else {
            assertTrue(Reference.digits(found, Double.parseDouble(expected)) >= digits, what + ": " + found + " for " + expected);
        }
    }

    @Test
    void every_step_of_both_arms_is_that_of_the_reference() {
        for (String arm : List.of("6-MP", "control")) {
            Reference expected = Reference.read("survival/gehan_estimates.csv").where("treat", arm);
            Survival found = arm.equals("6-MP") ? TREATED : CONTROL;
            assertEquals(expected.rows(), found.steps().size());
            checkWhole(found, expected, 12);
            for (int i = 0; i < expected.rows(); i++) {
                Survival.Step step = found.steps().get(i);
                assertEquals(expected.number(i, "n_censor"), step.censored(), "censored at " + step.time());
                agrees(expected.text(i, "low95"), step.low95(), 12, "lower limit at " + step.time());
                agrees(expected.text(i, "high95"), step.high95(), 12, "upper limit at " + step.time());
            }
        }
    }

    @Test
    void every_ending_of_a_second_set_is_that_of_the_reference() {
        for (String group : List.of("Maintained", "Nonmaintained")) {
            checkWhole(of(Reference.read("survival/aml.csv").where("x", group), "status"),
                    Reference.read("survival/aml_estimates.csv").where("x", group), 9);
        }
    }

    // By hand: of 4 that ended at 1 to 4 just half last longer than 2, until 3; of 101 that ended at 1 to 101, 51 last longer than 50.
    @Test
    void a_median_lies_between_two_times_where_just_half_are_left_and_not_before_half_are_gone() {
        assertEquals(2.5, ended(4).median().orElseThrow());
        assertEquals(51, ended(101).median().orElseThrow());
    }

    private static Survival ended(int count) {
        boolean[] ended = new boolean[count];
        Arrays.fill(ended, true);
        double[] times = new double[count];
        Arrays.setAll(times, i -> i + 1);
        return Survival.of(times, ended);
    }

    /** The same call of the reference: median 14, limits 9 and NA; of one that ended at 14: median 14, limits NA and NA. */
    @Test
    void where_the_last_watched_one_ends_the_median_has_no_upper_limit() {
        double[] times = new double[12];
        Arrays.fill(times, 10);
        boolean[] ended = new boolean[12];
        for (int i = 0; i < 3; i++) {
            times[i] = new double[] {5, 9, 14}[i];
            ended[i] = true;
        }
        Survival few = Survival.of(times, ended);
        assertEquals(14, few.median().orElseThrow());
        assertEquals(9, few.medianLow95().orElseThrow());
        assertTrue(few.medianHigh95().isEmpty());
        Survival one = Survival.of(new double[] {14}, new boolean[] {true});
        assertEquals(14, one.median().orElseThrow());
        assertTrue(one.medianLow95().isEmpty() && one.medianHigh95().isEmpty());
    }

    @Test
    void beyond_the_last_day_watched_nothing_is_known_of_those_still_there() {
        assertEquals(0.448179271708683, TREATED.at(35).orElseThrow(), 1e-9);
        assertTrue(TREATED.at(36).isEmpty());
        assertEquals(0, CONTROL.at(1000).orElseThrow(), 1e-15);
    }

    @Test
    void with_nothing_censored_it_is_the_share_that_lasted_longer() {
        Random random = new Random(4);
        double[] times = random.doubles(200, 0, 30).map(Math::rint).toArray();
        boolean[] ended = new boolean[200];
        Arrays.fill(ended, true);
        Survival all = Survival.of(times, ended);
        for (double t = 0; t <= 30; t++) {
            double limit = t;
            assertEquals(Arrays.stream(times).filter(x -> x > limit).count() / 200.0, all.at(t).orElseThrow(), 1e-12);
        }
    }

    /**
     * Things that begin evenly over 500 days before and 365 days of looks, and what a look every so many days finds of those that begin
     * after the first one, with the days of the ends or without: how many of 60 ranges of the median hold the truth, and how far the
     * middle one is off.
     */
    private static void lookedFor(double truth, boolean dated, ToDoubleFunction<Random> life) {
        for (int gap : dated ? new int[] {7, 14, 28} : new int[] {7, 14}) {
            int held = 0;
            double[] medians = new double[60];
            for (int world = 0; world < medians.length; world++) {
                Random random = new Random(100 * world + gap);
                List<int[]> found = new ArrayList<>();
                int last = 364 / gap * gap;
                for (int k = 0; k < 250; k++) {
                    double begin = 865 * random.nextDouble() - 500;
                    double end = begin + life.applyAsDouble(random);
                    int look = gap * (int) Math.ceil(begin / gap);
                    if (begin > 0 && look <= last && end > look) {
                        int ended = (int) Math.ceil(end);
                        found.add(end > last ? new int[] {last - look, 0} : dated ? new int[] {ended - 1 - look, 1}
                                : new int[] {(ended - 1) / gap * gap - look, gap});
                    }
                }
                int[] gaps = new int[found.size()];
                Arrays.fill(gaps, gap);
                Survival survival = Survival.ofLooks(gaps, found.stream().mapToInt(f -> f[0]).toArray(),
                        found.stream().mapToInt(f -> f[1]).toArray());
                medians[world] = survival.median().orElseThrow();
                held += survival.medianLow95().orElse(0) <= truth && truth <= survival.medianHigh95().orElse(999) ? 1 : 0;
            }
            Arrays.sort(medians);
            assertTrue(held >= 51, "looks every " + gap + " days: held by " + held + " of 60 ranges");
            assertEquals(truth, medians[30], 0.1 * truth, "looks every " + gap + " days");
        }
    }

    /** The median of a gamma law of shape 4 and scale 1 is 3.672061 (its distribution function there is one half, by hand). */
    @Test
    void looks_now_and_then_tell_how_long_things_last_whose_hazard_rises() {
        double median = 3.672061;
        assertEquals(0.5, 1 - Math.exp(-median) * (1 + median + median * median / 2 + Math.pow(median, 3) / 6), 1e-6);
        lookedFor(9.15 * median, true, random -> -9.15 * Math.log(random.nextDouble() * random.nextDouble() * random.nextDouble()
                * random.nextDouble()));
    }

    @Test
    void looks_now_and_then_tell_how_long_things_last_whose_hazard_stays() {
        lookedFor(40 * Math.log(2), true, random -> -40 * Math.log(random.nextDouble()));
    }

    /** Three quarters of mean 25 and a quarter of mean 150: S(24.07) = 0.75 exp(-24.07 / 25) + 0.25 exp(-24.07 / 150) is one half. */
    @Test
    void looks_now_and_then_tell_how_long_things_last_whose_hazard_falls() {
        assertEquals(0.5, 0.75 * Math.exp(-24.07 / 25) + 0.25 * Math.exp(-24.07 / 150), 1e-3);
        lookedFor(24.07, true, random -> -(random.nextInt(4) > 0 ? 25 : 150) * Math.log(random.nextDouble()));
    }

    @Test
    void looks_now_and_then_tell_it_though_nobody_wrote_down_the_days_of_the_ends() {
        lookedFor(9.15 * 3.672061, false, random -> -9.15 * Math.log(random.nextDouble() * random.nextDouble() * random.nextDouble()
                * random.nextDouble()));
        lookedFor(40 * Math.log(2), false, random -> -40 * Math.log(random.nextDouble()));
    }

    @Test
    void looks_every_day_are_the_product_limit() {
        Random random = new Random(4);
        int[] days = random.ints(50, 1, 30).toArray();
        boolean[] ended = new boolean[50];
        Arrays.fill(ended, 0, 40, true);
        int[] gaps = new int[50];
        Arrays.fill(gaps, 1);
        int[] unseen = new int[50];
        Arrays.fill(unseen, 0, 40, 1);
        int[] there = days.clone();
        for (int i = 0; i < 40; i++) {
            there[i]--;
        }
        Survival looked = Survival.ofLooks(gaps, there, unseen);
        Survival plain = Survival.of(Arrays.stream(days).asDoubleStream().toArray(), ended);
        assertEquals(40, looked.endings());
        assertEquals(50, looked.size());
        assertEquals(plain.median().orElseThrow(), looked.median().orElseThrow(), 1e-9);
        assertEquals(plain.at(20).orElseThrow(), looked.at(20).orElseThrow(), 1e-12);
    }

    @Test
    void nothing_at_all_has_no_median_and_times_below_0_are_refused() {
        Survival none = Survival.of(new double[0], new boolean[0]);
        assertTrue(none.median().isEmpty() && none.size() == 0);
        assertTrue(none.at(10).isEmpty());
        assertThrows(IllegalArgumentException.class, () -> Survival.of(new double[] {-1}, new boolean[] {true}));
        assertThrows(IllegalArgumentException.class, () -> Survival.of(new double[] {1}, new boolean[0]));
        assertEquals(0, Survival.ofLooks(new int[0], new int[0], new int[0]).size());
        assertThrows(IllegalArgumentException.class, () -> Survival.ofLooks(new int[] {0}, new int[] {1}, new int[] {1}));
        assertThrows(IllegalArgumentException.class, () -> Survival.ofLooks(new int[] {1}, new int[] {-1}, new int[] {1}));
        assertThrows(IllegalArgumentException.class, () -> Survival.ofLooks(new int[] {1}, new int[] {1}, new int[0]));
    }
}
