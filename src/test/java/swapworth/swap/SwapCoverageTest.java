package swapworth.swap;

import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Random;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import swapworth.assumptions.Assumptions;
import swapworth.listing.LevelOfTrade;
import swapworth.market.PriceModel;
import swapworth.market.Range;
import swapworth.statistics.Draws;

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
                SwapOptions options = SwapValue.options().assuming(swap.assumptions());
                SwapOptions named = swap.factory().isEmpty() ? options : options.withFactoryEquivalent(swap.factory().get(0));
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

    /** How ranges of the middle price of sold swaps hold the truth, and how far the middle is from it, after a number of sales. */
    private static final class Middles {
        private int n;
        private int held80;
        private int held95;
        private double squares;
        private double far;
        private double back;

        private void count(double truth, SwapValue without, SwapValue value) {
            n++;
            held80 += value.level(0.80).holds(Math.exp(truth)) ? 1 : 0;
            held95 += value.level(0.95).holds(Math.exp(truth)) ? 1 : 0;
            double off = truth - Draws.mean(without.reconciled().draws());
            double left = truth - Draws.mean(value.reconciled().draws());
            squares += left * left;
            far += off * off;
            back += off * left;
        }

        private double percent80() {
            return 100.0 * held80 / n;
        }

        private double percent95() {
            return 100.0 * held95 / n;
        }

        private double error() {
            return 100 * Math.sqrt(squares / n);
        }

        /** By how much of the way to the truth the middle is held back at what the approaches say without a sale. */
        private double heldBack() {
            return 100 * back / far;
        }
    }

    /** The same swaps after 0 sales of the very pair and so on; the fewer are the first of the more. */
    private static List<Middles> middles(SwapWorld.Size size, int worlds, int... sales) {
        double pairScale = Assumptions.defaults().get("spread_pairs").middle() / 0.6745;
        double scale = Assumptions.defaults().get("swap_approach_spread").middle();
        List<Middles> found = Arrays.stream(sales).mapToObj(k -> new Middles()).toList();
        for (int w = 0; w < worlds; w++) {
            Random spreads = new Random(w);
            double between = scale * Math.abs(spreads.nextGaussian());
            SwapWorld world = SwapWorld.drawnWithSlopes(size, 9000 + w, pairScale * Math.abs(spreads.nextGaussian()));
            PriceModel plain = PriceModel.fit(world.cars());
            SwapOptions drawn = SwapValue.options().with(LevelOfTrade.PRIVATE_SOLD).with(plain.draws(4000, 1));
            for (int[] pair : world.unseen()) {
                SwapWorld.Swap swap = world.swap(pair[0], pair[1], between);
                SwapWorld.Sold sold = world.sold(pair[0], pair[1], swap, sales[sales.length - 1]);
                SwapOptions options = drawn.assuming(swap.assumptions());
                SwapOptions named = swap.factory().isEmpty() ? options : options.withFactoryEquivalent(swap.factory().get(0));
                if (named.value(swap.car(), plain) instanceof SwapValue first) {
                    for (int k = 0; k < sales.length; k++) {
                        found.get(k).count(sold.logLevel(), first, sales[k] == 0 ? first
                                : (SwapValue) named.withSeen(sold.swaps().subList(0, sales[k])).value(swap.car(), plain));
                    }
                }
            }
        }
        for (int k = 0; k < sales.length; k++) {
            Middles one = found.get(k);
            System.out.printf(Locale.ROOT, "%d worlds of the size %s, %d swaps, %d sales of the very pair: 80 and 95 %% ranges of"
                    + " the middle price held %.1f and %.1f %%, error of the middle %.1f %%, held back by %.0f %%%n", worlds, size, one.n,
                    sales[k], one.percent80(), one.percent95(), one.error(), one.heldBack());
        }
        return found;
    }

    // 24 swaps of four worlds, each with truths of its own: bounds at about three standard errors.
    @Test
    void sales_of_the_same_pair_come_to_outweigh_the_approaches_and_the_range_of_the_middle_price_still_holds() {
        List<Middles> found = middles(SwapWorld.Size.RING, 4, 4, 30);
        found.forEach(one -> assertTrue(one.percent80() >= 55 && one.percent95() >= 80, one.percent80() + ", " + one.percent95()));
        Middles few = found.get(0);
        Middles many = found.get(1);
        assertTrue(many.heldBack() < 12 && many.heldBack() < few.heldBack(), few.heldBack() + ", " + many.heldBack());
        assertTrue(many.error() < few.error(), few.error() + ", " + many.error());
    }

    // Asked for is 80 and 95. Of small files the ranges are a little short without a sale and too wide after many (see DEVELOPERS.md): the
    // bounds hold what was measured, so that it gets no worse.
    @Tag("full")
    @Test
    void ranges_of_the_middle_price_hold_over_many_worlds_whatever_the_number_of_sales() {
        for (SwapWorld.Size size : SwapWorld.Size.values()) {
            for (Middles one : middles(size, size == SwapWorld.Size.RING ? 100 : 300, 0, 4, 12, 30)) {
                assertTrue(one.percent80() >= 73 && one.percent80() <= 90 && one.percent95() >= 92 && one.percent95() <= 99,
                        one.percent80() + ", " + one.percent95());
            }
        }
    }
}
