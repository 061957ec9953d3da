package swapworth.notebook;

import static java.util.Objects.requireNonNull;

import java.io.PrintStream;
import java.nio.file.Path;
import java.time.Duration;
import java.util.Locale;

/** Tells somebody who waits how far a notebook is. */
public final class Progress {
    private static final double NANOS = 1e9;

    private final PrintStream to;
    private final Screen screen;

    /** Where progress is told. */
    public enum Screen {
        /** A terminal, on which one line can be written over. */
        TERMINAL,
        /** A file or another program: plain lines, one a cell. */
        LINES
    }

    private Progress(PrintStream to, Screen screen) {
        this.to = requireNonNull(to, "to");
        this.screen = requireNonNull(screen, "screen");
    }

    /**
     * Tells it to a stream.
     *
     * @param to where to
     * @param screen what kind of stream that is
     * @return the teller
     */
    public static Progress on(PrintStream to, Screen screen) {
        return new Progress(to, screen);
    }

    void begins(Path file, int cell, int cells, String words) {
        if (screen == Screen.TERMINAL) {
            to.print("\r\u001b[K" + line(file, cell, cells, words));
            to.flush();
        }
    }

    void ends(Path file, int cell, int cells, String words, Duration took) {
        if (screen == Screen.LINES) {
            to.println(line(file, cell, cells, words) + seconds(took));
        }
    }

    void ends(Path file, int cells, Duration took) {
        to.println((screen == Screen.TERMINAL ? "\r\u001b[K" : "") + file.getFileName() + ": " + cells
                + (cells == 1 ? " cell" : " cells") + seconds(took));
    }

    void stops() {
        if (screen == Screen.TERMINAL) {
            to.print("\r\u001b[K");
            to.flush();
        }
    }

    private static String line(Path file, int cell, int cells, String words) {
        return file.getFileName() + ": cell " + cell + " of " + cells + (words.isEmpty() ? "" : ", " + words);
    }

    private static String seconds(Duration took) {
        return String.format(Locale.ROOT, ", %.1f s", took.toNanos() / NANOS);
    }
}
