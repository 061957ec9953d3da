package swapworth.table;

/** Escapes text for HTML. */
public final class Html {

    private Html() {
    }

    private static boolean isPlain(char c) {
        return c > '>' && c != 0x7f || c >= ' ' && c != '&' && c != '<' && c != '>' && c != '"' && c != '\'';
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
                    if (c >= ' ' && c != 0x7f || c == '\t' || c == '\n') {
                        out.append(c);
                    }
                }
            }
        }
        return out.toString();
    }
}
