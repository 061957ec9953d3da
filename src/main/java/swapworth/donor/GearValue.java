package swapworth.donor;

import java.util.Arrays;
import java.util.List;

/**
 * What the parts that go into the swap would sell for as used parts, one by one.
 *
 * @param draws one amount for each state of the market; empty where none of the parts has a price
 * @param parts the parts that are counted
 * @param unpriced the parts that no offer and no row of the user prices
 */
public record GearValue(double[] draws, List<String> parts, List<String> unpriced) {

    /** No part that goes into the swap is known. */
    static final GearValue NONE = new GearValue(new double[0], List.of(), List.of());

    /** Copies everything in. */
    public GearValue {
        draws = draws.clone();
        parts = List.copyOf(parts);
        unpriced = List.copyOf(unpriced);
    }

    @Override
    public double[] draws() {
        return draws.clone();
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof GearValue value && Arrays.equals(draws, value.draws) && parts.equals(value.parts)
                && unpriced.equals(value.unpriced);
    }

    @Override
    public int hashCode() {
        return (Arrays.hashCode(draws) * 31 + parts.hashCode()) * 31 + unpriced.hashCode();
    }

    /** The parts with the 80 % range of what they sell for, and what is left out. */
    @Override
    public String toString() {
        String priced = draws.length == 0 ? "" : String.join(", ", parts) + ": " + Choice.range(draws);
        return priced + (priced.isEmpty() || reason().isEmpty() ? "" : "; ") + reason();
    }

    /**
     * Whether every part that goes into the swap has a price.
     *
     * @return whether there are parts and none is left out
     */
    public boolean whole() {
        return unpriced.isEmpty() && !parts.isEmpty();
    }

    /**
     * What is left out, in words.
     *
     * @return a sentence without its full stop; empty where nothing is
     */
    public String reason() {
        return parts.isEmpty() && unpriced.isEmpty() ? "no row of partout.csv goes into the swap"
                : unpriced.isEmpty() ? "" : "without a price: " + String.join(", ", unpriced) + "; add offers to parts.csv";
    }
}
