package swapworth.notebook;

import static java.util.Objects.requireNonNull;

import java.nio.file.Path;
import java.util.Optional;

/**
 * What came of running a notebook.
 *
 * @param file the notebook
 * @param title its first heading, else its name
 * @param opening the first paragraph of its prose
 * @param page where its page was written; with a failure, where it would have been
 * @param failure why it stopped, with file, line, cell and the text of the line; empty if it ran to its end
 */
public record NotebookRun(Path file, String title, String opening, Path page, Optional<String> failure) {

    /** Checks that nothing is missing. */
    public NotebookRun {
        requireNonNull(file, "file");
        requireNonNull(title, "title");
        requireNonNull(opening, "opening");
        requireNonNull(page, "page");
        requireNonNull(failure, "failure");
    }
}
