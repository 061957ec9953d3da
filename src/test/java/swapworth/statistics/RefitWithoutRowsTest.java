package swapworth.statistics;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.SplittableRandom;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

/** That steps on from the closed form end where a fit without the rows ends, whichever way they are asked for. */
class RefitWithoutRowsTest {
    private static final int P = 6;
    private static final int N = 40;
    private static final List<PriorBlock> PRIORS =
            IntStream.range(0, P).mapToObj(j -> PriorBlock.stated("coefficient " + j, j, 0.1, 0.5)).toList();

    private final SplittableRandom random = new SplittableRandom(8);
    private final SparseRow[] rows = new SparseRow[N];
    private final double[] y = new double[N];
    private final Posterior all;

    RefitWithoutRowsTest() {
        for (int i = 0; i < N; i++) {
            rows[i] = contrast();
            y[i] = rows[i].dot(new double[] {0.4, 0, -0.3, 0.2, 0, 0.1}) + 0.2 * Noise.normal(random) + (i % 9 == 0 ? 1 : 0);
        }
        all = fit(rows, y);
    }

    private SparseRow contrast() {
        double[] values = new double[P];
        for (int j = 0; j < P; j++) {
            values[j] = random.nextInt(3) == 0 ? 0 : random.nextDouble() - 0.3;
        }
        return SparseRow.dense(values);
    }

    private static Posterior fit(SparseRow[] rows, double[] y) {
        return ShrunkenRegression.withDefaults().with(ErrorLaw.student(4).withGrossErrors(0.01)).with(new ErrorScale.Stated(0.15))
                .withTolerance(1e-8).fit(Design.of(P, rows), Sample.of(y), PRIORS);
    }

    /** What a fit of all others says. */
    private Posterior without(int... left) {
        int[] kept = IntStream.range(0, N).filter(i -> Arrays.stream(left).noneMatch(r -> r == i)).toArray();
        return fit(Arrays.stream(kept).mapToObj(i -> rows[i]).toArray(SparseRow[]::new),
                Arrays.stream(kept).mapToDouble(i -> y[i]).toArray());
    }

    private static double miss(Posterior says, Posterior fresh, SparseRow x) {
        return Math.abs(says.estimate(x).mean() - fresh.estimate(x).mean()) / Math.sqrt(fresh.variance(x));
    }

    @Test
    void steps_end_where_a_fit_of_the_other_rows_does() {
        List<Double> refitted = new ArrayList<>();
        List<Double> closed = new ArrayList<>();
        for (int i = 0; i + 1 < N; i++) {
            int[] left = i % 2 == 0 ? new int[] {i} : new int[] {i, i + 1};
            Posterior fresh = without(left);
            for (SparseRow x : List.of(rows[i], contrast())) {
                refitted.add(miss(all.leavingOut(Posterior.LeaveOut.REFIT, left), fresh, x));
                closed.add(miss(all.leavingOut(Posterior.LeaveOut.CLOSED_FORM, left), fresh, x));
            }
        }
        // A refit ends with a step of a hundredth of the coefficients' own uncertainty, and the steps shrink.
        assertTrue(refitted.stream().allMatch(miss -> miss < 0.01), refitted.toString());
        assertTrue(closed.stream().anyMatch(miss -> miss > 0.05), closed.toString());
    }

    @Test
    void values_are_those_of_the_coefficients() {
        for (int i = 0; i + 1 < N; i++) {
            Posterior refit = all.leavingOut(Posterior.LeaveOut.REFIT, i, i + 1);
            for (SparseRow x : List.of(rows[i], rows[i + 1], contrast())) {
                assertEquals(x.dot(refit.mean()), refit.estimate(x).mean(), 1e-12, "row " + i);
            }
        }
    }
}
