package swapworth.notebook;

import static java.util.Objects.requireNonNull;

import java.io.IOException;
import java.io.OutputStream;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;

/**
 * Runs notebooks, each in a Java of its own that is ended when its time is over, and writes a page for each and an index of all pages
 * of notebooks in their folder. The page of a notebook that fails ends with the cell that failed; one that is ended leaves none. Immutable.
 *
 * <p>A notebook finds the folder of the user's files in the system property {@code folder}.
 */
public final class Notebooks {
    private static final Duration LIMIT = Duration.ofSeconds(120);

    private final Path folder;
    private final Path pages;
    private final Copies copies;
    private final Duration limit;
    private final Progress progress;

    /** What is written of a notebook. */
    public enum Copies {
        /** Its page. */
        PAGE,
        /** Its page, and a file that Jupyter opens, with the outputs. */
        PAGE_AND_IPYNB
    }

    private Notebooks(Path folder, Path pages, Copies copies, Duration limit, Progress progress) {
        this.folder = requireNonNull(folder, "folder");
        this.pages = requireNonNull(pages, "pages");
        this.copies = requireNonNull(copies, "copies");
        this.limit = requireNonNull(limit, "limit");
        this.progress = requireNonNull(progress, "progress");
    }

    /**
     * Notebooks about one folder of the user's files.
     *
     * @param folder the folder
     * @param pages the folder into which pages go; it is made if it is not there
     * @return a page each, at most 120 seconds each, and nobody is told of progress
     */
    public static Notebooks about(Path folder, Path pages) {
        return new Notebooks(folder, pages, Copies.PAGE, LIMIT, Progress.on(new PrintStream(OutputStream.nullOutputStream(), false,
                StandardCharsets.UTF_8), Progress.Screen.LINES));
    }

    /**
     * With other copies.
     *
     * @param wanted what is to be written of each notebook
     * @return a copy
     */
    public Notebooks with(Copies wanted) {
        return new Notebooks(folder, pages, wanted, limit, progress);
    }

    /**
     * With another limit.
     *
     * @param longest how long one notebook may run
     * @return a copy
     * @throws IllegalArgumentException if that is no time at all
     */
    public Notebooks withLimit(Duration longest) {
        if (longest.isNegative() || longest.isZero()) {
            throw new IllegalArgumentException("a limit of " + longest.toSeconds() + " seconds leaves no time");
        }
        return new Notebooks(folder, pages, copies, longest, progress);
    }

    /**
     * Telling somebody of progress.
     *
     * @param teller who tells
     * @return a copy
     */
    public Notebooks telling(Progress teller) {
        return new Notebooks(folder, pages, copies, limit, teller);
    }

    /**
     * Runs notebooks, one after the other; one that fails does not keep the others from running.
     *
     * @param files the notebooks
     * @return what came of each, in the same order
     * @throws NotebookException if the folder is not there, or two pages would have one name
     * @throws IOException if Java cannot be started again, or the index cannot be written
     */
    public List<NotebookRun> run(List<Path> files) throws IOException {
        if (!Files.isDirectory(folder)) {
            throw new NotebookException(folder + ": there is no such folder; notebooks need the folder of your files");
        }
        Set<String> names = new HashSet<>(Set.of(NotebookIndex.NAME));
        for (Path file : files) {
            String name = NotebookFile.nameOf(file);
            if (!names.add(name.toLowerCase(Locale.ROOT))) {
                throw new NotebookException(file + ": its page would be " + name + ".html, which is taken; give the notebook another name");
            }
        }
        List<NotebookRun> runs = new ArrayList<>();
        for (Path file : files) {
            runs.add(run(file));
        }
        Optional<Path> index = index(runs);
        if (index.isPresent()) {
            NotebookIndex.of(pages, runs).write(index.get());
        }
        return runs;
    }

    /**
     * Where the index of the pages stands after some runs.
     *
     * @param runs what came of them
     * @return a file in the folder of the pages; nothing where no notebook ran, for then no index is written
     */
    public Optional<Path> index(List<NotebookRun> runs) {
        return runs.stream().allMatch(r -> r.end() == NotebookRun.End.NOT_BEGUN) ? Optional.empty()
                : Optional.of(pages.resolve(NotebookIndex.NAME + ".html"));
    }

    private NotebookRun run(Path file) throws IOException {
        String name = NotebookFile.nameOf(file);
        Path page = pages.resolve(name + ".html");
        NotebookFile notebook;
        try {
            notebook = NotebookFile.read(file);
        } catch (NotebookException e) {
            return new NotebookRun(file, name, NotebookRun.End.NOT_BEGUN, page, Optional.of(e.getMessage()));
        }
        Optional<Path> ipynb = copies == Copies.PAGE ? Optional.empty() : Optional.of(pages.resolve(name + ".ipynb"));
        ChildJava.Ended ended = new ChildJava(notebook, progress).run(folder, page, ipynb, limit);
        boolean older = ended.end() == NotebookRun.End.BROKEN_OFF && Files.exists(page);
        return new NotebookRun(file, notebook.title(), ended.end(), page,
                ended.failure().map(f -> older ? f + "\n  " + page + " is from an earlier run" : f));
    }
}
