package swapworth.swap;

import static java.util.Objects.requireNonNull;

import java.util.Arrays;
import swapworth.statistics.Draws;
import swapworth.statistics.Normal;
import swapworth.statistics.Quantiles;
import swapworth.table.Cell;

/**
 * An amount of money of which one is not sure, as draws: either a middle with a spread (ln-normal, so never below 0), or draws from
 * elsewhere that belong to the same states of the market. Immutable.
 */
public final class UnsureAmount {
    private final double[] drawn;
    private final double middle;
    private final double logSpread;
    private final String source;
    private final boolean byParts;

    private UnsureAmount(double[] drawn, double middle, double logSpread, String source, boolean byParts) {
        this.byParts = byParts;
        this.drawn = drawn;
        this.middle = middle;
        this.logSpread = logSpread;
        this.source = requireNonNull(source, "source");
    }

    /**
     * A stated amount.
     *
     * @param middle its median, at least 0
     * @param spread about two thirds of the plausible values lie within this share of the middle, for instance 0.2
     * @param source who states it
     * @return the amount
     * @throws IllegalArgumentException if middle or spread are below 0, or one of them is infinite
     */
    public static UnsureAmount stated(double middle, double spread, String source) {
        if (!(middle >= 0) || !(spread >= 0) || Double.isInfinite(middle) || Double.isInfinite(spread)) {
            throw new IllegalArgumentException("an unsure amount needs a finite middle and spread of at least 0, not " + middle
                    + " and " + spread);
        }
        return new UnsureAmount(new double[0], middle, Math.log1p(spread), source, false);
    }

    /**
     * An amount of which there are draws.
     *
     * @param draws one number for each state of the market, in the order of the model's draws
     * @param source where they come from
     * @return the amount
     * @throws IllegalArgumentException if there is none, or one is below 0 or no finite number
     */
    public static UnsureAmount drawn(double[] draws, String source) {
        if (draws.length == 0 || !Arrays.stream(draws).allMatch(d -> d >= 0 && Double.isFinite(d))) {
            throw new IllegalArgumentException(source + ": an unsure amount needs draws that are finite and at least 0");
        }
        return new UnsureAmount(draws.clone(), Double.NaN, 0, source, false);
    }

    /** The sum of what parts would cost one by one: the whole costs less than they do. */
    static UnsureAmount ofParts(double[] draws, String source) {
        return new UnsureAmount(draws.clone(), Double.NaN, 0, source, true);
    }

    /** Whether somebody states it and it may be off. */
    boolean isStated() {
        return drawn.length == 0 && logSpread > 0;
    }

    boolean byParts() {
        return byParts;
    }

    /**
     * Where the amount comes from.
     *
     * @return words
     */
    public String source() {
        return source;
    }

    /** Its middle with the 80 % range, and who says so. */
    @Override
    public String toString() {
        return Cell.format(quantile(0.5), 0) + ", 80 % range " + Cell.format(quantile(0.1), 0) + " to " + Cell.format(quantile(0.9), 0)
                + (drawn.length > 0 ? ", " + drawn.length + " draws" : "") + ", by " + source;
    }

    private double quantile(double p) {
        return drawn.length > 0 ? Quantiles.of(drawn, p) : middle * StrictMath.exp(logSpread * Normal.quantile(p));
    }

    /** Draws of it, in the order of the market's. */
    double[] draws(int count, long seed) {
        if (drawn.length > 0) {
            if (drawn.length != count) {
                throw new IllegalArgumentException(source + ": " + drawn.length + " draws do not go with " + count + " of the market");
            }
            return drawn.clone();
        }
        double[] z = Draws.normal(count, seed);
        return Arrays.stream(z).map(x -> middle * StrictMath.exp(logSpread * x)).toArray();
    }
}
