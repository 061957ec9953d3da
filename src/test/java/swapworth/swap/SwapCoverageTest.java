package swapworth.swap;

import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.Locale;
import java.util.Random;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import swapworth.assumptions.Assumptions;
import swapworth.market.PriceModel;
import swapworth.market.Range;

/** How often ranges of finished swaps hold the true price of a pair that was never listed, over invented worlds with known truths. */
class SwapCoverageTest {

    /** Counts of prices held. */
    private static final class AssumedShare {
        private int n;
        private int untold;
        private int first80;
        private int first95;
        private int all80;
        private int all95;

        /** Where body and gear leave a range too wide to say anything, that is the answer, and nothing is counted. */
        private void count(double price, SwapAnswer answer) {
            if (!(answer instanceof SwapValue value) || !(value.approaches().stream().filter(a -> a.kind() == Approach.Kind.BODY_AND_GEAR)
                    .findFirst().orElseThrow() instanceof Approach.Told own)) {
                untold++;
                return;
            }
            n++;
            double[] sorted = Arrays.stream(own.price()).sorted().toArray();
            first80 += SwapValue.range(sorted, 0.80).holds(price) ? 1 : 0;
            first95 += SwapValue.range(sorted, 0.95).holds(price) ? 1 : 0;
            Range range = value.range(0.80);
            all80 += range.holds(price) ? 1 : 0;
            all95 += value.range(0.95).holds(price) ? 1 : 0;
        }

        private double[] percent() {
            return new double[] {100.0 * first80 / n, 100.0 * first95 / n, 100.0 * all80 / n, 100.0 * all95 / n};
        }
    }

    private static double[] covered(SwapWorld.Size size, int worlds, double timesAssumed) {
        // The stated spread is the median of a half-normal prior, 0.6745 of its scale.
        double pairScale = timesAssumed * Assumptions.defaults().get("spread_pairs").middle() / 0.6745;
        double scale = Assumptions.defaults().get("swap_approach_spread").middle();
        AssumedShare held = new AssumedShare();
        for (int w = 0; w < worlds; w++) {
            Random spreads = new Random(w);
            double between = scale * Math.abs(spreads.nextGaussian());
            SwapWorld world = SwapWorld.drawn(size, 5000 + w, pairScale * Math.abs(spreads.nextGaussian()));
            PriceModel plain = PriceModel.fit(world.cars());
            for (int[] pair : world.unseen()) {
                SwapWorld.Swap swap = world.swap(pair[0], pair[1], between);
                SwapValue.Options options = SwapValue.options().assuming(swap.assumptions());
                SwapValue.Options named = swap.factory().isEmpty() ? options : options.withFactoryEquivalent(swap.factory().get(0));
                held.count(Math.exp(swap.logPrice()), named.value(swap.car(), plain));
            }
        }
        double[] percent = held.percent();
        System.out.printf(Locale.ROOT, "%s worlds of the size %s, pairs depart by %.1f times the assumption, %d swaps, %d of them without"
                + " an answer: body and gear held"
                + " %.1f"
                + " and %.1f %%, reconciled %.1f and %.1f %%%n", worlds, size, timesAssumed, held.n + held.untold, held.untold, percent[0],
                percent[1], percent[2],
                percent[3]);
        return percent;
    }

    private static void check(double[] percent, double least80, double most80, double least95, double most95) {
        for (int k = 0; k < 4; k += 2) {
            assertTrue(percent[k] >= least80 && percent[k] <= most80, "80 % ranges held " + percent[k]);
            assertTrue(percent[k + 1] >= least95 && percent[k + 1] <= most95, "95 % ranges held " + percent[k + 1]);
        }
    }

    // 60 and 40 swaps: bounds at about three standard errors of what is asked of many worlds.
    @Test
    void ranges_hold_in_some_worlds() {
        check(covered(SwapWorld.Size.RING, 12, 1), 62, 98, 82, 100);
        check(covered(SwapWorld.Size.SMALL, 40, 1), 60, 98, 80, 100);
    }

    @Tag("full")
    @Test
    void ranges_hold_over_many_worlds() {
        covered(SwapWorld.Size.RING, 200, 0.5);
        covered(SwapWorld.Size.RING, 200, 2);
        check(covered(SwapWorld.Size.RING, 200, 1), 75, 86, 92, 98.5);
    }

    @Tag("full")
    @Test
    void ranges_of_small_files_hold_over_many_worlds() {
        covered(SwapWorld.Size.SMALL, 400, 0.5);
        covered(SwapWorld.Size.SMALL, 400, 2);
        check(covered(SwapWorld.Size.SMALL, 400, 1), 75, 86, 92, 98.5);
    }
}
