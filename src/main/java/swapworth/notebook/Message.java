package swapworth.notebook;

import java.util.Optional;

/**
 * What the Java that runs a notebook tells the one that started it: a line of its own on its standard output.
 *
 * @param kind what it says
 * @param text a number, or words in which line feeds may stand
 */
record Message(Kind kind, String text) {
    /** Begins a line that is a message; anything else is a cry of Java itself. */
    private static final char MARK = '\u0001';

    /** What a message says. */
    enum Kind {
        /** The cell with this number begins. */
        CELL,
        /** The snippet at this line begins. */
        LINE,
        /** A cell failed, and why; what ran so far is written. */
        STOPPED,
        /** Nothing could be written, and why. */
        FAILED,
        /** The notebook ran to its end and everything is written. */
        DONE
    }

    String line() {
        return MARK + kind.name() + MARK + text.replace("\\", "\\\\").replace("\n", "\\n").replace("\r", "");
    }

    static Optional<Message> of(String line) {
        if (line.isEmpty() || line.charAt(0) != MARK || line.indexOf(MARK, 1) < 0) {
            return Optional.empty();
        }
        String name = line.substring(1, line.indexOf(MARK, 1));
        StringBuilder text = new StringBuilder();
        for (int i = name.length() + 2; i < line.length(); i++) {
            boolean escape = line.charAt(i) == '\\' && i + 1 < line.length();
            i += escape ? 1 : 0;
            text.append(escape && line.charAt(i) == 'n' ? '\n' : line.charAt(i));
        }
        for (Kind kind : Kind.values()) {
            if (kind.name().equals(name)) {
                return Optional.of(new Message(kind, text.toString()));
            }
        }
        return Optional.empty();
    }
}
