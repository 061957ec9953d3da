package swapworth.swap;

import static java.util.Objects.requireNonNull;

import java.util.List;
import java.util.Optional;

/**
 * What a finished swap is made of, at market prices and not at what was spent: the parts of the approach by cost. What is empty is
 * filled in by an assumption, and said.
 *
 * @param gear what the installed running gear would cost, complete and used
 * @param work what a shop would charge for labour and parts of the swap; nobody knows which share of it is paid for, so that work beyond
 *        some half of the car's value makes the approach less sure faster than it raises it, and the value no longer rises with it
 * @param removed what the removed running gear would bring, good and whole, whatever becomes of it
 * @param losses what makes the whole worth less than its parts: functions lost, parts that do not work together, rules and fuel prices
 */
public record SwapCost(Optional<UnsureAmount> gear, Optional<UnsureAmount> work, Optional<UnsureAmount> removed, List<Loss> losses) {
    private static final SwapCost UNSTATED = new SwapCost(Optional.empty(), Optional.empty(), Optional.empty(), List.of());

    /** Copies the list in and checks that nothing is missing. */
    public SwapCost {
        requireNonNull(gear, "gear");
        requireNonNull(work, "work");
        requireNonNull(removed, "removed");
        losses = List.copyOf(losses);
    }

    /**
     * What one thing takes off. As obsolescence, functional or external, it comes off the value by cost alone: swaps seen have lost the
     * same. A larger one never raises what the approaches say together. As a fault of one car it comes off whatever all approaches say of
     * a sound one.
     *
     * @param what what is lost, or the fault
     * @param amount an amount that is taken off; 0 where it is a share or nothing is stated
     * @param share a share of the whole that is taken off; 0 where it is an amount or nothing is stated
     */
    public record Loss(String what, double amount, double share) {

        /** Checks the figures. */
        public Loss {
            requireNonNull(what, "what");
            if (!(amount >= 0) || Double.isInfinite(amount) || !(share >= 0 && share < 1)) {
                throw new IllegalArgumentException(what + ": a loss is a finite amount of at least 0 or a share from 0 to 1, not " + amount
                        + " and " + share);
            }
        }

        /**
         * Something of which nobody says what it takes off.
         *
         * @param what what it is
         * @return a loss that moves nothing
         */
        public static Loss unstated(String what) {
            return new Loss(what, 0, 0);
        }

        /**
         * Whether it takes anything off.
         *
         * @return no where no figure is stated, or 0
         */
        public boolean isStated() {
            return amount > 0 || share > 0;
        }
    }

    /**
     * Nothing stated: every part by assumption, no loss listed.
     *
     * @return the same each time
     */
    public static SwapCost unstated() {
        return UNSTATED;
    }

    /**
     * With another value of the installed running gear.
     *
     * @param amount what it would cost
     * @return a copy
     */
    public SwapCost withGear(UnsureAmount amount) {
        return new SwapCost(Optional.of(amount), work, removed, losses);
    }

    /**
     * With another price of the work.
     *
     * @param amount labour and parts at a shop's price
     * @return a copy
     */
    public SwapCost withWork(UnsureAmount amount) {
        return new SwapCost(gear, Optional.of(amount), removed, losses);
    }

    /**
     * With another value of the removed running gear.
     *
     * @param amount what it would bring
     * @return a copy
     */
    public SwapCost withRemoved(UnsureAmount amount) {
        return new SwapCost(gear, work, Optional.of(amount), losses);
    }

    /**
     * With other losses.
     *
     * @param all what makes the whole worth less
     * @return a copy
     */
    public SwapCost withLosses(List<Loss> all) {
        return new SwapCost(gear, work, removed, all);
    }
}
