package swapworth.table;

/** Escapes text for HTML. */
public final class Html {
    private static final char DELETE = 0x7f;
    private static final char NO_BREAK = 0xa0;

    private Html() {
    }

    private static boolean isPlain(char c) {
        return c > '>' && c != DELETE || c >= ' ' && c != '&' && c != '<' && c != '>' && c != '"' && c != '\'';
    }

    private static boolean isKept(char c) {
        return c >= ' ' && c != DELETE || c == '\t' || c == '\n';
    }

    /**
     * Text without control characters other than tab and line feed, which are all that a page holds.
     *
     * @param text any text, a stranger's included
     * @return the text, markup as it is
     */
    public static String withoutControls(String text) {
        StringBuilder clean = new StringBuilder(text.length());
        text.chars().filter(c -> isKept((char) c)).forEach(c -> clean.append((char) c));
        return clean.toString();
    }

    /**
     * The same for words that a browser may break into lines: a number and the sign for per cent behind it stay together.
     *
     * @param text any text, a stranger's included
     * @return the escaped text, with a space that does not break before each such sign
     */
    public static String unbroken(String text) {
        String escaped = escape(text);
        int sign = escaped.indexOf(" %");
        if (sign < 0) {
            return escaped;
        }
        StringBuilder out = new StringBuilder(escaped);
        for (; sign >= 0; sign = out.indexOf(" %", sign + 1)) {
            if (sign > 0 && Character.isDigit(out.charAt(sign - 1))) {
                out.setCharAt(sign, NO_BREAK);
            }
        }
        return out.toString();
    }

    /**
     * Text that a browser shows as it is, whether between tags or inside a quoted attribute: the five characters of markup become
     * entities, and control characters other than tab and line feed are dropped.
     *
     * @param text any text, a stranger's included
     * @return the escaped text
     */
    public static String escape(String text) {
        int plain = 0;
        while (plain < text.length() && isPlain(text.charAt(plain))) {
            plain++;
        }
        if (plain == text.length()) {
            return text;
        }
        StringBuilder out = new StringBuilder(text.length() + 16).append(text, 0, plain);
        for (int i = plain; i < text.length(); i++) {
            char c = text.charAt(i);
            switch (c) {
                case '&' -> out.append("&amp;");
                case '<' -> out.append("&lt;");
                case '>' -> out.append("&gt;");
                case '"' -> out.append("&quot;");
                case '\'' -> out.append("&#39;");
                default -> {
                    if (isKept(c)) {
                        out.append(c);
                    }
                }
            }
        }
        return out.toString();
    }
}
