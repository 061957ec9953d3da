package swapworth.statistics;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Random;
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

    /** The same call of the reference: median 14, limits 9 and NA; of one that ended at 14: median 14, limits NA and NA. */
    @Test
    void where_the_last_watched_one_ends_the_median_has_no_upper_limit() {
        double[] times = new double[12];
        java.util.Arrays.fill(times, 10);
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
        java.util.Arrays.fill(ended, true);
        Survival all = Survival.of(times, ended);
        for (double t = 0; t <= 30; t++) {
            double limit = t;
            assertEquals(java.util.Arrays.stream(times).filter(x -> x > limit).count() / 200.0, all.at(t).orElseThrow(), 1e-12);
        }
    }

    @Test
    void nothing_at_all_has_no_median_and_times_below_0_are_refused() {
        Survival none = Survival.of(new double[0], new boolean[0]);
        assertTrue(none.median().isEmpty() && none.size() == 0);
        assertTrue(none.at(10).isEmpty());
        assertThrows(IllegalArgumentException.class, () -> Survival.of(new double[] {-1}, new boolean[] {true}));
        assertThrows(IllegalArgumentException.class, () -> Survival.of(new double[] {1}, new boolean[0]));
    }
}
