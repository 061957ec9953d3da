package swapworth.market;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import swapworth.table.Cell;

/** Cells of money and of shares, rounded to what the listings can carry. */
public final class Figures {

    private Figures() {
    }

    /**
     * An amount rounded to 1 below 1,000, to 10 below 20,000, to 50 above; exact for machines.
     *
     * @param amount the amount
     * @return the cell
     */
    public static Cell money(double amount) {
        Cell exact = Cell.number(amount, 2);
        return exact == Cell.BLANK ? exact : new Cell(rounded(amount), exact.exact(), Cell.Kind.NUMBER, "");
    }

    /** An amount that was seen, as it was: nothing of it is rounded but parts of a unit. */
    static Cell asSeen(double amount) {
        return Cell.number(amount, amount == Math.rint(amount) ? 0 : 2);
    }

    /** An estimated amount with its sign. */
    static Cell signedMoney(double amount) {
        Cell cell = money(amount);
        return amount > 0 ? new Cell("+" + cell.shown(), cell.exact(), Cell.Kind.NUMBER, "") : cell;
    }

    /**
     * A difference of logarithms as per cent of the second.
     *
     * @param log the difference
     * @return per cent
     */
    public static double percent(double log) {
        return 100 * Math.expm1(log);
    }

    /**
     * An amount rounded as {@link #money} does.
     *
     * @param amount the amount
     * @return for instance {@code 12,340}
     */
    public static String rounded(double amount) {
        double size = Math.abs(amount);
        double unit = size < 1000 ? 1 : size < 20_000 ? 10 : 50;
        return Cell.format(Math.rint(amount / unit) * unit, 0);
    }

    /**
     * A range with both ends rounded as an amount is.
     *
     * @param range the range
     * @return for instance {@code 8,470 to 13,160}
     */
    public static String range(Range range) {
        return rounded(range.low()) + " to " + rounded(range.high());
    }

    /**
     * A share as whole per cent.
     *
     * @param share 1 for all
     * @return the cell
     */
    public static Cell share(double share) {
        return new Cell(Math.round(100 * share) + " %", Cell.number(share, 4).exact(), Cell.Kind.NUMBER, "");
    }

    /** A chance in whole per cent with its sign, never surer than draws or a model can tell. */
    static Cell chance(double share) {
        Cell cell = Cell.chance(share);
        return new Cell(cell.shown() + " %", Cell.number(share, 4).exact(), Cell.Kind.NUMBER, "");
    }

    /** A remark as the beginning of a sentence. */
    static String capital(String words) {
        return words.substring(0, 1).toUpperCase(Locale.ROOT) + words.substring(1);
    }

    static String sentences(List<String> sentences) {
        return sentences.isEmpty() ? "" : String.join("; ", sentences);
    }

    /** Sentences and further ones: of a million rows most have neither, so that a list is made only where both are. */
    static List<String> joined(List<String> sentences, List<String> further) {
        if (sentences.isEmpty() || further.isEmpty()) {
            return sentences.isEmpty() ? further : sentences;
        }
        List<String> both = new ArrayList<>(sentences);
        both.addAll(further);
        return both;
    }
}
