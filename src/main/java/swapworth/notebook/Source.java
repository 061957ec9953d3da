package swapworth.notebook;

/** Finds the first code behind blanks and comments. */
final class Source {

    private Source() {
    }

    /** Whether anything but blanks and comments is there. */
    static boolean hasCode(String text) {
        return start(text) < text.length();
    }

    /** The place of the first character of code; the length of the text if there is none. */
    static int start(String text) {
        int at = 0;
        while (at < text.length()) {
            if (Character.isWhitespace(text.charAt(at)) || text.charAt(at) == ';') {
                at++;
            } else if (text.startsWith("//", at)) {
                int end = text.indexOf('\n', at);
                at = end < 0 ? text.length() : end;
            } else if (text.startsWith("/*", at) && text.indexOf("*/", at + 2) >= 0) {
                at = text.indexOf("*/", at + 2) + 2;
            } else {
                return at;
            }
        }
        return at;
    }
}
