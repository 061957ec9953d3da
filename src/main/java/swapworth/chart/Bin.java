package swapworth.chart;

/**
 * One bar of a histogram.
 *
 * @param from the low end, included
 * @param to the high end, above {@code from}
 * @param count how many lie between
 */
public record Bin(double from, double to, long count) {

    /** Checks that the bin has a width and no negative count. */
    public Bin {
        if (!(to > from) || Double.isInfinite(to - from)) {
            throw new IllegalArgumentException("a bin goes from " + from + " to " + to);
        }
        if (count < 0) {
            throw new IllegalArgumentException("a bin holds " + count);
        }
    }
}
