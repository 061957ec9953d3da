package swapworth.notebook;

import static java.util.Objects.requireNonNull;

import java.nio.file.Path;
import java.util.Optional;

/**
 * What came of running a notebook.
 *
 * @param file the notebook
 * @param title its first heading, else its name
 * @param end how it ended
 * @param page where its page was written; where none was, where it would have been
 * @param failure why it stopped, with file, line, cell and the text of the line; empty if it ran to its end
 */
public record NotebookRun(Path file, String title, End end, Path page, Optional<String> failure) {

    /** How a run ended. */
    public enum End {
        /** It ran to its end, and its page is written. */
        REACHED,
        /** A cell failed; the page holds what ran so far and why it stopped. */
        STOPPED,
        /** It was ended, or ended itself, and no page is written. */
        BROKEN_OFF,
        /** There is no such notebook, or it cannot be read: nothing ran. */
        NOT_BEGUN
    }

    /** Checks that nothing is missing. */
    public NotebookRun {
        requireNonNull(file, "file");
        requireNonNull(title, "title");
        requireNonNull(end, "end");
        requireNonNull(page, "page");
        requireNonNull(failure, "failure");
    }

    /**
     * Whether this run wrote the page.
     *
     * @return whether it reached its end or stopped at a cell
     */
    public boolean isWritten() {
        return end == End.REACHED || end == End.STOPPED;
    }
}
