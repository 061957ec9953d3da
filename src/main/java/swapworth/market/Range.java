package swapworth.market;

/**
 * A range in money.
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
