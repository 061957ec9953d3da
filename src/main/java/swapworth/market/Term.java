package swapworth.market;

import java.util.List;
import swapworth.statistics.PriorBlock;
import swapworth.statistics.SparseRow;

/** One term of the model: some neighbouring coefficients, how a subject is coded in them, and what is assumed of them. */
abstract class Term {
    private final String name;
    private final Group group;
    private int from = -1;

    Term(String name, Group group) {
        this.name = name;
        this.group = group;
    }

    /** What the term is, in the reader's words. */
    final String name() {
        return name;
    }

    final Group group() {
        return group;
    }

    /** The first coefficient of the term. */
    final int from() {
        return from;
    }

    final void place(int first) {
        from = first;
    }

    /** The number of coefficients. */
    abstract int count();

    /** What is assumed of them. */
    abstract List<PriorBlock> priors();

    /** Writes the entries of a subject. */
    abstract void encode(Subject subject, Measures.Measured measured, SparseRow.Writer row);

    /** The effects of the term that a reader is shown; none where single coefficients mean nothing to a person. */
    abstract List<Effect> effects();

    /**
     * Something that the term says by itself.
     *
     * @param label what it is, for instance {@code title: salvage}
     * @param unit for instance {@code % per year}
     * @param contrast the coefficients that make it up, scaled to one unit
     * @param present a coefficient that every row which tells of it has
     * @param absent a coefficient that no such row has; -1 for none
     */
    record Effect(String label, String unit, SparseRow contrast, int present, int absent) {

        static Effect of(String label, String unit, int coefficient, double perUnit) {
            return new Effect(label, unit, SparseRow.of(new int[] {coefficient}, new double[] {perUnit}), coefficient, -1);
        }

        /** The entry by which a row, written out as far as the term reaches, tells of it; 0 if it does not. */
        double entryIn(double[] entries) {
            return absent >= 0 && entries[absent] != 0 ? 0 : entries[present];
        }

        boolean toldBy(SparseRow row) {
            boolean has = false;
            for (int e = 0; e < row.size(); e++) {
                if (row.index(e) == absent) {
                    return false;
                }
                has |= row.index(e) == present;
            }
            return has;
        }
    }
}
