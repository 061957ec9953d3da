package swapworth.reading;

import static java.util.Objects.requireNonNull;

import java.util.Collection;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;

/**
 * How texts are compared: names and words by {@link #name}, headers, which part a unit from what it is the unit of, by {@link #key}.
 */
public final class Spelling {
    /** With more letters changed another word was meant. */
    private static final int MOST_SLIPS = 2;

    /** What people call the rows in which a spreadsheet sums up those above, in a few languages. */
    private static final Set<String> TOTALS = Set.of("total", "totals", "sum", "sums", "subtotal", "sub total", "grand total", "average",
            "mean", "median", "overall total", "summe", "gesamt", "gesamtsumme", "gesamtbetrag", "insgesamt", "zwischensumme",
            "durchschnitt", "mittelwert", "somme", "sous total", "moyenne", "suma", "promedio", "totale", "subtotale", "\u03c3",
            "\u2211");
    /** What may stand behind such a word without making a thing of its own of it: {@code sum of all payments so far}. */
    private static final Set<String> NO_THING = Set.of("of", "all", "the", "above", "rows", "payments", "costs", "cost", "expenses",
            "amount", "amounts", "spent", "paid", "out", "in", "so", "far", "to", "date", "total", "sum", "general",
            "g\u00e9n\u00e9ral", "aller", "alles", "zahlungen", "kosten", "de", "tout", "todo");
    /** What spreadsheets write where a formula has failed; a column that is too narrow is exported as {@code ###}. */
    private static final Set<String> FAULTS = Set.of("#ref!", "#value!", "#div/0!", "#name?", "#num!", "#null!", "#error!", "#spill!",
            "#calc!", "#bezug!", "#wert!", "#zahl!", "###", "####", "#####", "######", "#######", "########");
    /** Why such a text is not used, and what to do. */
    public static final String IS_FAULT = "a spreadsheet's error stands here in place of what was meant; mend it there, or leave the cell"
            + " blank";
    /** Why a row that is one of these is not used. */
    public static final String IS_TOTAL = "this looks like a row that sums up the others: it is no row of its own; if it is one, call it"
            + " something else";

    private Spelling() {
    }

    /**
     * Whether a name is what people call a row of totals, or of averages.
     *
     * @param name for instance {@code Total:}, {@code Sum of all} or {@code Summe}
     * @return whether it is such a word, with nothing behind it that would be a thing of its own: {@code total loss assessment} is one
     */
    public static boolean isTotal(String name) {
        String key = name.length() > 80 ? "" : header(name);
        int space = key.indexOf(' ');
        return TOTALS.contains(key) || space > 0 && TOTALS.contains(key.substring(0, space))
                && Stream.of(key.substring(space + 1).split(" ")).allMatch(Spelling::isNoThing);
    }

    /** A year, a currency and what a row of sums is said to be of. */
    private static boolean isNoThing(String word) {
        return NO_THING.contains(word) || Currencies.of(word).isPresent() || word.matches("20[0-9][0-9]");
    }

    /**
     * The text without the spaces around it; every kind of space counts, the no-break ones and the byte order mark included.
     *
     * @param text any text
     * @return the text itself if there is nothing to strip
     */
    public static String stripped(String text) {
        int from = 0;
        int to = text.length();
        if (to == 0 || plain(text.charAt(0)) && plain(text.charAt(to - 1))) {
            return text;
        }
        while (from < to && isSpace(text.charAt(from))) {
            from++;
        }
        while (to > from && isSpace(text.charAt(to - 1))) {
            to--;
        }
        return text.substring(from, to);
    }

    /**
     * The form in which headers are compared: lower case, runs of spaces, hyphens and underscores as one space, nothing around it, the
     * curved apostrophe as the straight one.
     *
     * @param text any text
     * @return for instance {@code engine dead} for {@code  Engine_dead }
     */
    public static String key(String text) {
        if (isKey(text)) {
            return text;
        }
        StringBuilder out = new StringBuilder(text.length());
        boolean gap = false;
        for (int i = 0; i < text.length(); i++) {
            char c = text.charAt(i);
            if (isSpace(c) || c == '_' || c == '-' || c == '\u2010' || c == '\u2011') {
                gap = out.length() > 0;
            } else {
                if (gap) {
                    out.append(' ');
                    gap = false;
                }
                out.append(c >= 'A' && c <= 'Z' ? (char) (c + 32) : c == '\u2019' ? '\'' : c);
            }
        }
        String key = out.toString();
        for (int i = 0; i < key.length(); i++) {
            if (key.charAt(i) > 127) {
                return key.toLowerCase(Locale.ROOT);
            }
        }
        return key;
    }

    /**
     * The form in which names and words are compared: lower case, without spaces, hyphens and underscores, for people write
     * {@code Corvane-7}, {@code Corvane 7} and {@code Corvane7}. Only between two digits a space is left: {@code Corvane 7 2} is not
     * {@code Corvane 72}.
     *
     * @param text any text
     * @return for instance {@code brackenholt} for {@code BRACKEN-HOLT}
     */
    public static String name(String text) {
        String key = key(text);
        if (key.indexOf(' ') < 0) {
            return key;
        }
        StringBuilder out = new StringBuilder(key.length());
        for (int i = 0; i < key.length(); i++) {
            char c = key.charAt(i);
            if (c != ' ' || isDigit(key.charAt(i - 1)) && isDigit(key.charAt(i + 1))) {
                out.append(c);
            }
        }
        return out.toString();
    }

    private static boolean isDigit(char c) {
        return c >= '0' && c <= '9';
    }

    /**
     * The form in which the words of a header are told apart, where a unit or a currency may stand beside its name: that of {@link #key},
     * with spaces in place of brackets, commas, colons and strokes.
     *
     * @param header for instance {@code Price [EUR]}
     * @return for instance {@code price eur}
     */
    public static String header(String header) {
        return key(withoutBrackets(header));
    }

    /** A header with spaces in place of brackets, commas, colons and strokes, so that a unit beside them is a word of its own. */
    static String withoutBrackets(String header) {
        return header.replace('(', ' ').replace(')', ' ').replace('[', ' ').replace(']', ' ').replace(',', ' ').replace(':', ' ')
                .replace('/', ' ');
    }

    private static boolean isKey(String text) {
        for (int i = 0; i < text.length(); i++) {
            char c = text.charAt(i);
            if (!(c >= 'a' && c <= 'z' || c > ' ' && c < 'A' && c != '-')) {
                return false;
            }
        }
        return true;
    }

    /**
     * The name most like a mistyped one.
     *
     * @param word what was typed
     * @param names the valid names
     * @return the name with the fewest single-letter changes, if fewer than half of its letters change
     */
    public static Optional<String> nearest(String word, Collection<String> names) {
        requireNonNull(word, "word");
        String key = key(shortened(word, 80));
        String best = "";
        int fewest = Integer.MAX_VALUE;
        for (String name : names) {
            int changes = changes(key, key(name));
            if (changes < fewest && 2 * changes < name.length()) {
                fewest = changes;
                best = name;
            }
        }
        return best.isEmpty() ? Optional.empty() : Optional.of(best);
    }

    /**
     * The name that was probably meant by a mistyped one: a hint for a message, what was typed is never read as it.
     *
     * @param word what was typed
     * @param names the valid names
     * @return the nearest name, if one or two single-letter changes lead to it and these are fewer than half of its letters
     */
    public static Optional<String> slipOf(String word, Collection<String> names) {
        return nearest(word, names).filter(name -> changes(key(shortened(word, 80)), key(name)) <= MOST_SLIPS);
    }

    /**
     * Text for display: cut to a length, control characters as spaces.
     *
     * @param text any text
     * @param limit the most characters kept, at least 2
     * @return the text, with {@code …} at its end if something was cut off
     */
    public static String shortened(String text, int limit) {
        int length = Math.min(text.length(), limit);
        StringBuilder out = new StringBuilder(length + 1);
        for (int i = 0; i < length; i++) {
            char c = text.charAt(i);
            out.append(Character.isISOControl(c) ? ' ' : c);
        }
        if (text.length() > limit) {
            out.setLength(limit - 1);
            if (Character.isHighSurrogate(out.charAt(out.length() - 1))) {
                out.setLength(out.length() - 1);
            }
            out.append('\u2026');
        }
        return out.toString();
    }

    /**
     * Whether a cell holds nothing, or one of the signs that people and programs put where they know nothing: {@code -}, {@code ?},
     * {@code n/a}, {@code #N/A}, {@code unknown} and their like.
     *
     * @param text the cell
     * @return whether it counts as blank
     */
    public static boolean isBlank(String text) {
        if (text.isEmpty()) {
            return true;
        }
        char first = text.charAt(0);
        if (first > ' ' && first < 127 && "?.-#nNuUtT".indexOf(first) < 0) {
            return false;
        }
        if (text.length() > 12) {
            return stripped(text).isEmpty();
        }
        return switch (key(text)) {
            case "", "?", "??", "\u2013", "\u2014", "n/a", "na", "n.a.", "unknown", "unk", "not known", "not stated", "tbc",
                    "tbd", "null", "#n/a", "#n/v", "." -> true;
            default -> false;
        };
    }

    /**
     * Whether a text is what a spreadsheet writes where a formula has failed, such as {@code #REF!}.
     *
     * @param text the cell
     * @return not for {@code #N/A}, which says that nothing is known
     */
    public static boolean isFault(String text) {
        return text.startsWith("#") && FAULTS.contains(key(text));
    }

    private static boolean plain(char c) {
        return c > ' ' && c < 127;
    }

    static boolean isSpace(char c) {
        return c <= ' ' || c > 127 && (Character.isSpaceChar(c) || c == '\ufeff' || c == '\u200b');
    }

    private static int changes(String a, String b) {
        int[] previous = new int[b.length() + 1];
        int[] current = new int[b.length() + 1];
        for (int j = 0; j < previous.length; j++) {
            previous[j] = j;
        }
        for (int i = 1; i <= a.length(); i++) {
            current[0] = i;
            for (int j = 1; j < current.length; j++) {
                int same = previous[j - 1] + (a.charAt(i - 1) == b.charAt(j - 1) ? 0 : 1);
                current[j] = Math.min(same, 1 + Math.min(previous[j], current[j - 1]));
            }
            int[] swap = previous;
            previous = current;
            current = swap;
        }
        return previous[b.length()];
    }
}
