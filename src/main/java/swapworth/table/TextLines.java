package swapworth.table;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;

/** Sentences in lines that can be read in a terminal. */
public final class TextLines {
    /** The most characters in a line, where words are short enough. */
    private static final int WIDTH = 110;
    private static final int LONGEST_TERM = 20;

    private TextLines() {
    }

    /**
     * A sentence in lines broken between words, all but the first a little further in.
     *
     * @param indent what stands before the first line, such as two spaces
     * @param sentence the sentence; its control characters become spaces
     * @return lines of at most {@value #WIDTH} characters, but for words that are longer than a line, which are cut; each ends in a line
     *     feed, and there is none where the sentence is empty
     */
    public static String of(String indent, String sentence) {
        StringBuilder out = new StringBuilder();
        String ahead = indent;
        String rest = plain(sentence);
        while (!rest.isEmpty()) {
            int end = end(rest, WIDTH - ahead.length());
            out.append(ahead).append(rest, 0, end).append('\n');
            rest = rest.substring(end).stripLeading();
            ahead = indent + "  ";
        }
        return out.toString();
    }

    /**
     * Terms and what they mean, the meanings in a column of their own beside the terms.
     *
     * @param meanings by term, in the order of the lines
     * @return lines of at most {@value #WIDTH} characters, each ending in a line feed; what a term longer than {@value #LONGEST_TERM}
     *     characters means begins on a line below it
     */
    public static String meanings(Map<String, String> meanings) {
        int longest = meanings.keySet().stream().mapToInt(TextLines::length).filter(n -> n <= LONGEST_TERM).max().orElse(0);
        String indent = " ".repeat(2 + longest + 2);
        StringBuilder out = new StringBuilder();
        meanings.forEach((term, meaning) -> {
            String ahead = "  " + term + " ".repeat(Math.max(0, longest - length(term))) + "  ";
            if (length(term) > longest) {
                out.append("  ").append(term).append('\n');
                ahead = indent;
            }
            for (String line : broken(meaning, WIDTH - indent.length())) {
                out.append(ahead).append(line).append('\n');
                ahead = indent;
            }
        });
        return out.toString();
    }

    /** A text in lines of at most so many characters; only a word that is longer by itself is cut. */
    static List<String> broken(String text, int width) {
        List<String> lines = new ArrayList<>(1);
        String rest = text;
        while (lines.isEmpty() || !rest.isEmpty()) {
            int end = end(rest, width);
            lines.add(rest.substring(0, end));
            rest = rest.substring(end).stripLeading();
        }
        return lines;
    }

    /** Where a line of at most so many characters ends. */
    private static int end(String text, int width) {
        if (length(text) <= width) {
            return text.length();
        }
        int most = text.offsetByCodePoints(0, width);
        int gap = text.lastIndexOf(' ', most);
        while (gap > 0 && text.startsWith("%", gap + 1)) {
            // A number and its sign stay together.
            gap = text.lastIndexOf(' ', gap - 1);
        }
        return gap > 0 ? gap : most;
    }

    /** As many places as a text takes. */
    static int length(String text) {
        return text.codePointCount(0, text.length());
    }

    /** A stranger's control characters could move a terminal's cursor or colour its text: they become spaces. */
    static String plain(String text) {
        StringBuilder clean = new StringBuilder(text.length());
        for (int i = 0; i < text.length(); i++) {
            char c = text.charAt(i);
            clean.append(Character.isISOControl(c) || Character.getType(c) == Character.FORMAT ? ' ' : c);
        }
        return clean.toString();
    }
}
