package swapworth.market;

import java.math.BigDecimal;
import java.math.RoundingMode;

/**
 * A range in the unit of what it belongs to, most often money.
 *
 * @param low its lower end
 * @param high its upper end
 */
public record Range(double low, double high) {

    /** Checks the order of the ends. */
    public Range {
        if (!(low <= high)) {
            throw new IllegalArgumentException("a range from " + low + " to " + high + " is none");
        }
    }

    /** Its ends in whole units, for instance {@code 8470 to 13160}; below 100 with a decimal, below 10 with two. */
    @Override
    public String toString() {
        double larger = Math.max(Math.abs(low), Math.abs(high));
        int decimals = larger >= 100 ? 0 : larger >= 10 ? 1 : 2;
        return plain(low, decimals) + " to " + plain(high, decimals);
    }

    private static String plain(double end, int decimals) {
        return Double.isInfinite(end) ? Double.toString(end)
                : BigDecimal.valueOf(end).setScale(decimals, RoundingMode.HALF_EVEN).toPlainString();
    }

    /**
     * Whether an amount lies within, the ends included.
     *
     * @param amount the amount
     * @return true or false
     */
    public boolean holds(double amount) {
        return amount >= low && amount <= high;
    }
}
