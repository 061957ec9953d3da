package swapworth.project;

import static java.util.Objects.requireNonNull;

import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import swapworth.market.Range;

/**
 * One way to get a car: what it costs until a stated month, all counted in the money of that month.
 *
 * @param name what the user calls it
 * @param netCost draws of all that is paid, and of what is owned and used up, less all that comes in and the resale
 * @param toFind draws of the most cash that has to be found at any time, beside what is owned and borrowed
 * @param resale draws of what the car brings at the end, in that month's money
 * @param hours own hours
 * @param items what it is made of
 * @param notCounted the lines of its rows that cannot be used; empty where it is whole
 */
public record Alternative(String name, double[] netCost, double[] toFind, double[] resale, double hours, List<Item> items,
        List<Integer> notCounted) {

    /** What an item of an alternative is. */
    public enum Kind {
        /** Money paid. */
        COST("cost"),
        /** A payment of a loan. */
        PAYMENT("payment"),
        /** Money that parts bring in. */
        PARTS("parts sold"),
        /** What is owned already and is used up: it could be sold instead. */
        OWNED("owned"),
        /** A debt that must be paid. */
        OWED("owed"),
        /** Money that a lender gives. */
        LOAN("loan"),
        /** What the car brings at the end. */
        RESALE("resale");

        private final String words;

        Kind(String words) {
            this.words = words;
        }

        /**
         * How it stands in a file and on a page.
         *
         * @return plain words in lower case
         */
        public String words() {
            return words;
        }

        boolean comesIn() {
            return this == PARTS || this == LOAN || this == RESALE;
        }

        boolean isCash() {
            return this != OWNED && this != RESALE;
        }
    }

    /**
     * One item, in the base currency.
     *
     * @param line the line of the file on which it begins
     * @param name its name: the same name, amounts and kind in two alternatives are one thing, drawn once
     * @param kind what it is
     * @param likely the likely amount
     * @param ends the least and the most, where they are stated
     * @param chance how likely it is to happen at all, 0 to 1
     * @param month the first month, from now
     * @param until the last month for something that comes every month, else the first
     * @param hours own hours
     * @param car the car in play whose value the amount is; empty for none
     */
    public record Item(int line, String name, Kind kind, double likely, Optional<Range> ends, double chance, int month, int until,
            double hours, String car) {
    }

    /** Copies draws and list in and checks that the draws are as many. */
    public Alternative {
        requireNonNull(name, "name");
        netCost = netCost.clone();
        toFind = toFind.clone();
        resale = resale.clone();
        items = List.copyOf(items);
        notCounted = List.copyOf(notCounted);
        DrawFigures.asMany(netCost.length, "the cash to find of '" + name + "'", toFind);
        DrawFigures.asMany(netCost.length, "the resale of '" + name + "'", resale);
    }

    /**
     * Whether all its rows are counted.
     *
     * @return whether it can be held against others
     */
    public boolean whole() {
        return notCounted.isEmpty();
    }

    @Override
    public double[] netCost() {
        return netCost.clone();
    }

    @Override
    public double[] toFind() {
        return toFind.clone();
    }

    @Override
    public double[] resale() {
        return resale.clone();
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof Alternative one && name.equals(one.name) && Arrays.equals(netCost, one.netCost)
                && Arrays.equals(toFind, one.toFind) && Arrays.equals(resale, one.resale) && Double.compare(hours, one.hours) == 0
                && items.equals(one.items) && notCounted.equals(one.notCounted);
    }

    @Override
    public int hashCode() {
        return name.hashCode() * 31 + Arrays.hashCode(netCost);
    }

    /** What it is and its net cost. */
    @Override
    public String toString() {
        return name + ": net cost " + DrawFigures.withRange(netCost)
                + (whole() ? "" : ", " + notCounted.size() + (notCounted.size() == 1 ? " row" : " rows") + " not counted");
    }
}
