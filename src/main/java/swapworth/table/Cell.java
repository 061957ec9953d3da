package swapworth.table;

import static java.util.Objects.requireNonNull;

import java.math.BigDecimal;
import java.math.RoundingMode;

/**
 * One cell of a {@link Table}: what a person reads, and what a machine reads.
 *
 * @param shown the text for people, for instance {@code 12,500}
 * @param exact the text for machines, for instance {@code 12500.0}
 * @param kind whether the exact text is a number or words; only words are neutralised against spreadsheet formulas
 * @param link an address for the shown text within the page, such as {@code #car-12}; empty for none
 */
public record Cell(String shown, String exact, Kind kind, String link) {

    /** What the exact text of a cell is. */
    public enum Kind {
        /** Words, possibly a stranger's. */
        WORDS,
        /** A number that this program wrote. */
        NUMBER
    }

    private static final double[] POWERS = {1, 10, 100, 1e3, 1e4, 1e5, 1e6};

    /** The empty cell. */
    public static final Cell BLANK = words("");

    /** Checks that nothing is missing. */
    public Cell {
        requireNonNull(shown, "shown");
        requireNonNull(exact, "exact");
        requireNonNull(kind, "kind");
        requireNonNull(link, "link");
    }

    /**
     * A cell of words.
     *
     * @param text the words, shown as they are
     * @return the cell
     */
    public static Cell words(String text) {
        return new Cell(text, text, Kind.WORDS, "");
    }

    /**
     * A number, shown with thousands separators and a fixed number of decimals.
     *
     * @param value the number; one that is not finite gives {@link #BLANK}
     * @param decimals decimals shown to people; machines get at most twelve significant digits
     * @return the cell
     */
    public static Cell number(double value, int decimals) {
        if (!Double.isFinite(value)) {
            return BLANK;
        }
        return new Cell(format(value, decimals), PlainNumber.text(value), Kind.NUMBER, "");
    }

    /**
     * A number that somebody stated, shown with as many decimals as it has, four at most.
     *
     * @param value the number; one that is not finite gives {@link #BLANK}
     * @return the cell
     */
    public static Cell stated(double value) {
        int decimals = 0;
        while (decimals < 4 && Math.abs(value * POWERS[decimals] - Math.rint(value * POWERS[decimals])) > 1e-9) {
            decimals++;
        }
        return number(value, decimals);
    }

    /**
     * A whole number, shown with thousands separators.
     *
     * @param value the number
     * @return the cell
     */
    public static Cell whole(long value) {
        return new Cell(format(value, 0), Long.toString(value), Kind.NUMBER, "");
    }

    /**
     * A whole number that names something, such as a line or a year: no thousands separators.
     *
     * @param value the number
     * @return the cell
     */
    public static Cell label(long value) {
        return new Cell(Long.toString(value), Long.toString(value), Kind.NUMBER, "");
    }

    /**
     * An exact amount, shown with thousands separators and all decimals that it has.
     *
     * @param amount the amount
     * @return the cell
     */
    public static Cell amount(BigDecimal amount) {
        return new Cell(format(amount.doubleValue(), Math.max(0, amount.scale())), amount.toPlainString(), Kind.NUMBER, "");
    }

    /**
     * A number with its sign always shown.
     *
     * @param value the number; one that is not finite gives {@link #BLANK}
     * @param decimals decimals shown to people
     * @return the cell
     */
    public static Cell signed(double value, int decimals) {
        Cell cell = number(value, decimals);
        boolean zero = cell.shown.chars().noneMatch(c -> c >= '1' && c <= '9');
        return cell == BLANK || value <= 0 || zero ? cell : new Cell("+" + cell.shown, cell.exact, Kind.NUMBER, "");
    }

    /**
     * A chance as a share of draws: shown in whole per cent and never as surer than draws can tell, {@code > 99} and {@code < 1}.
     *
     * @param share between 0 and 1; no finite number gives {@link #BLANK}
     * @return the cell; machines read the per cent
     */
    public static Cell chance(double share) {
        Cell cell = number(100 * share, 0);
        return cell == BLANK || share >= 0.01 && share <= 0.99 ? cell
                : new Cell(share < 0.01 ? "< 1" : "> 99", cell.exact, Kind.NUMBER, "");
    }

    /**
     * The same within a sentence: {@code 39 %}, {@code more than 99 %} or {@code less than 1 %}.
     *
     * @param share between 0 and 1
     * @return plain words
     */
    public static String chanceInWords(double share) {
        return share > 0.99 ? "more than 99 %" : share < 0.01 ? "less than 1 %" : format(100 * share, 0) + " %";
    }

    /**
     * The same cell of a number, which machines read rounded to some places.
     *
     * @param value the number; one that is not finite leaves the cell as it is
     * @param places 2, 4 or 6; zeros at the end are left out
     * @return a copy
     */
    public Cell exactTo(double value, int places) {
        return Double.isFinite(value) ? new Cell(shown, PlainNumber.text(value, places), kind, link) : this;
    }

    /**
     * The same cell, its shown text leading to another place of the page.
     *
     * @param address for instance {@code #car-12}
     * @return a copy
     */
    public Cell linked(String address) {
        return new Cell(shown, exact, kind, address);
    }

    /**
     * A number as people read it: thousands separated by commas, a point before the decimals, whatever the machine's language.
     *
     * @param value a finite number
     * @param decimals decimals shown
     * @return for instance {@code 12,500.50}
     */
    public static String format(double value, int decimals) {
        double scaled = decimals < POWERS.length ? value * POWERS[decimals] : Double.POSITIVE_INFINITY;
        double whole = Math.rint(scaled);
        // Next to a half, or among large numbers, only the exact value tells which way to round.
        boolean clear = Math.abs(scaled) < 1e9 && Math.abs(Math.abs(scaled - whole) - 0.5) > 1e-6;
        String digits = clear ? Long.toString((long) Math.abs(whole))
                : new BigDecimal(value).setScale(decimals, RoundingMode.HALF_EVEN).unscaledValue().abs().toString();
        StringBuilder text = new StringBuilder(digits.length() + 8);
        text.append("0".repeat(Math.max(0, decimals + 1 - digits.length()))).append(digits);
        int point = text.length() - decimals;
        if (decimals > 0) {
            text.insert(point, '.');
        }
        for (int comma = point - 3; comma > 0; comma -= 3) {
            text.insert(comma, ',');
        }
        return value < 0 && !digits.equals("0") ? text.insert(0, '-').toString() : text.toString();
    }
}
