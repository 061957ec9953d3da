package swapworth.table;

import static java.util.Objects.requireNonNull;

import java.util.Locale;

/**
 * What a column of a {@link Table} holds: a label for people, a unit, a key for machines and the side its cells lean to.
 *
 * @param label what a reader sees at the head of the column
 * @param unit the unit of every number below it, for instance {@code USD} or {@code mi}; empty for none
 * @param key the name of the column in a CSV file
 * @param align the side its cells lean to
 * @param rank where it stands on a narrow screen
 */
public record Column(String label, String unit, String key, Align align, Rank rank) {

    /** The side that the cells of a column lean to: words lean left, numbers right. */
    public enum Align {
        /** For words. */
        LEFT,
        /** For numbers. */
        RIGHT,
        /** For sentences: they lean left and are given room to break into lines. */
        LEFT_IN_LINES
    }

    /** Where a column stands on a narrow screen, which shows the first few at once. */
    public enum Rank {
        /** In its place. */
        IN_PLACE,
        /** Behind all that stand in their place. */
        BEHIND
    }

    /** Checks that nothing is missing. */
    public Column {
        requireNonNull(label, "label");
        requireNonNull(unit, "unit");
        requireNonNull(key, "key");
        requireNonNull(align, "align");
        requireNonNull(rank, "rank");
    }

    /**
     * A column of words.
     *
     * @param label what a reader sees; the key is the label in lower case with {@code _} for spaces
     * @return the column
     */
    public static Column words(String label) {
        return new Column(label, "", keyOf(label), Align.LEFT, Rank.IN_PLACE);
    }

    /**
     * A column of sentences, such as reasons and remarks.
     *
     * @param label what a reader sees; the key is the label in lower case with {@code _} for spaces
     * @return the column
     */
    public static Column sentences(String label) {
        return new Column(label, "", keyOf(label), Align.LEFT_IN_LINES, Rank.IN_PLACE);
    }

    /**
     * A column of numbers.
     *
     * @param label what a reader sees; the key is the label in lower case with {@code _} for spaces
     * @param unit the unit of the numbers, empty for none
     * @return the column
     */
    public static Column number(String label, String unit) {
        return new Column(label, unit, keyOf(label), Align.RIGHT, Rank.IN_PLACE);
    }

    /**
     * The same column under another key.
     *
     * @param key the name of the column in a CSV file
     * @return a copy
     */
    public Column key(String key) {
        return new Column(label, unit, key, align, rank);
    }

    /**
     * The same column, on a narrow screen behind the others: what a reader can do without at first sight.
     *
     * @return a copy
     */
    public Column behind() {
        return new Column(label, unit, key, align, Rank.BEHIND);
    }

    /**
     * The label with its unit, as it stands above the column.
     *
     * @return for instance {@code price, USD}
     */
    public String heading() {
        return unit.isEmpty() ? label : label + ", " + unit;
    }

    /** Letters and digits in lower case; whatever stands between two of them becomes one underscore. */
    private static String keyOf(String label) {
        String lower = label.toLowerCase(Locale.ROOT);
        StringBuilder key = new StringBuilder(lower.length());
        boolean gap = false;
        for (int i = 0, c; i < lower.length(); i += Character.charCount(c)) {
            c = lower.codePointAt(i);
            if (Character.isLetterOrDigit(c)) {
                if (gap && key.length() > 0) {
                    key.append('_');
                }
                key.appendCodePoint(c);
                gap = false;
            } else {
                gap = true;
            }
        }
        return key.toString();
    }
}
