package swapworth.swap;

import java.util.Arrays;
import java.util.function.DoubleUnaryOperator;
import swapworth.statistics.Draws;

/**
 * What the approach by cost says beside others: its parts, and what comes off them in money (the gear that was taken out, and losses).
 *
 * <p>The logarithm of what is left would not do. Where much comes off, the doubt about the parts is a large one of the little that is left,
 * so the approach would weigh next to nothing, and the others, which know nothing of a further loss, would carry the result back up: the
 * loss would raise it. How sure the parts are in money does not hang on what comes off them. So it comes off at the level that all
 * approaches together find. With the sum of the parts Q, what comes off L, its mean l and that level V the approach says, in log points,
 *
 * <pre>ln V + v (ln Q - ln(v V)) + v - 1 - L / V,   v = 1 + l / V, but no more than the middle of Q / V and no less than 1.</pre>
 *
 * <p>Where Q - L is about V that is ln(Q - L), with the doubt of Q and L in money over V; where nothing comes off it is ln Q. The further
 * Q - L lies below V, the lower it is, in a straight line and with the same doubt, so that more that comes off never raises the result.
 */
final class CostAtLevel {
    private static final double STEP = 0.25;
    private static final int MOST_STEPS = 100;
    /** How near two levels are one, log points. */
    private static final double NEAR = 1e-9;

    private final double[] logParts;
    private final double[] off;
    private final double middleParts;
    private final double meanOff;

    /**
     * The approach.
     *
     * @param logParts draws of the logarithm of the sum of the parts
     * @param off draws of what comes off it, at least 0
     */
    CostAtLevel(double[] logParts, double[] off) {
        this.logParts = logParts;
        this.off = off;
        this.middleParts = StrictMath.exp(Draws.mean(logParts));
        this.meanOff = Draws.mean(off);
    }

    /** Draws of what it would say if nothing came off. */
    double[] whole() {
        return logParts.clone();
    }

    /** Whether nothing comes off in any draw. */
    boolean isWhole() {
        return Arrays.stream(off).allMatch(amount -> amount == 0);
    }

    /** Draws of what it says where all approaches together find a level, a logarithm. */
    double[] at(double logLevel) {
        double level = StrictMath.exp(logLevel);
        double times = Math.min(1 + meanOff / level, Math.max(1, middleParts / level));
        double from = logLevel + StrictMath.log(times);
        return Situation.combined((parts, amount) -> logLevel + times * (parts - from) + times - 1 - amount / level, logParts, off);
    }

    /**
     * The level at which what all approaches together find is that level.
     *
     * @param found what they find where it comes off at a level, both logarithms
     * @param most a level above which it cannot lie: what they find where nothing comes off
     */
    static double level(DoubleUnaryOperator found, double most) {
        double high = most;
        double above = found.applyAsDouble(high) - high;
        double low = high;
        double below = above;
        for (int k = 0; k < MOST_STEPS && below < 0; k++) {
            high = low;
            above = below;
            low -= STEP;
            below = found.applyAsDouble(low) - low;
        }
        // Regula falsi; the end that stays is halved (Illinois).
        double next = low;
        double at = below;
        for (int k = 0; k < MOST_STEPS && Math.abs(at) > NEAR && high - low > NEAR; k++) {
            next = low + (high - low) * below / (below - above);
            at = found.applyAsDouble(next) - next;
            if (at > 0) {
                low = next;
                below = at;
                above /= 2;
            } else {
                high = next;
                above = at;
                below /= 2;
            }
        }
        return next;
    }
}
