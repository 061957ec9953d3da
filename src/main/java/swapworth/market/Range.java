package swapworth.market;

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

    /** Its ends in whole units, for instance {@code 8470 to 13160}. */
    @Override
    public String toString() {
        return Math.round(low) + " to " + Math.round(high);
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
