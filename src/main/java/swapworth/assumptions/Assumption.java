package swapworth.assumptions;

import static java.util.Objects.requireNonNull;

import java.math.BigDecimal;

/**
 * A number that stands in where rows do not speak.
 *
 * @param name its name in {@code assumptions.csv}
 * @param question which question it stands in for
 * @param middle the most likely value, in its unit
 * @param spread about two thirds of the plausible values lie within this distance of the middle; at least 0, in the unit of the
 *        middle, or for an ln-normal scale in log points
 * @param unit for instance {@code %}, {@code % per year}, {@code log points}
 * @param source where the number comes from, or {@code common practice, no source}
 * @param note what it means
 * @param least the least middle with which the program can work
 * @param most the greatest; the spread is at most the distance of the two
 */
public record Assumption(String name, Question question, double middle, double spread, String unit, String source, String note,
        double least, double most) {

    /** Checks the numbers and that nothing is missing. */
    public Assumption {
        requireNonNull(name, "name");
        requireNonNull(question, "question");
        requireNonNull(unit, "unit");
        requireNonNull(source, "source");
        requireNonNull(note, "note");
        if (!Double.isFinite(middle)) {
            throw new IllegalArgumentException(name + ": the middle must be a number, not " + middle);
        }
        if (!(spread >= 0) || Double.isInfinite(spread)) {
            throw new IllegalArgumentException(name + ": the spread must be a number of at least 0, not " + spread);
        }
        if (!(middle >= least && middle <= most)) {
            throw new IllegalArgumentException(name + ": the middle must lie between " + plain(least) + " and " + plain(most) + " " + unit
                    + ", not at " + plain(middle));
        }
        if (unit.startsWith("%") && middle <= -100) {
            throw new IllegalArgumentException(name + ": an effect of " + middle + " % leaves no price");
        }
        if (!(spread <= most - least)) {
            throw new IllegalArgumentException(name + ": the spread must be at most " + plain(most - least) + " " + unit + ", not "
                    + plain(spread));
        }
    }

    /**
     * An assumption without limits of its own; put into a collection ({@link Assumptions#with(Assumption)}) it has those of the one that it
     * replaces.
     *
     * @param name its name in {@code assumptions.csv}
     * @param question which question it stands in for
     * @param middle the most likely value
     * @param spread how far about two thirds of the plausible values lie from it at most
     * @param unit the unit of both
     * @param source where the number comes from
     * @param note what it means
     */
    public Assumption(String name, Question question, double middle, double spread, String unit, String source, String note) {
        this(name, question, middle, spread, unit, source, note, Double.NEGATIVE_INFINITY, Double.POSITIVE_INFINITY);
    }

    private static String plain(double number) {
        return Double.isInfinite(number) ? Double.toString(number) : BigDecimal.valueOf(number).stripTrailingZeros().toPlainString();
    }

    /**
     * What it says, for a sentence.
     *
     * @return the note, which speaks for itself; the name where there is none
     */
    public String words() {
        return note.isEmpty() ? name : note;
    }

    /**
     * Whether it is an amount of money; one that comes with the program is stated in US dollars.
     *
     * @return whether the unit is the base currency, for one thing or for an hour
     */
    public boolean isMoney() {
        return unit.startsWith("base currency") || unit.startsWith("money");
    }

    /** The same amount in another currency, of which so many are one of this. */
    Assumption times(double rate, String to) {
        return new Assumption(name, question, middle * rate, spread * rate, unit, source + "; in US dollars, taken at " + plain(rate) + " "
                + to, note, least * rate, most * rate);
    }

    /**
     * Whether the middle is an effect in per cent.
     *
     * @return whether the unit begins with the per cent sign
     */
    public boolean isPercent() {
        return unit.startsWith("%");
    }
}
