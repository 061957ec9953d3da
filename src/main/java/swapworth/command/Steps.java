package swapworth.command;

import java.io.IOException;
import java.io.PrintStream;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import swapworth.notebook.NotebookException;
import swapworth.notebook.NotebookRun;
import swapworth.notebook.Notebooks;
import swapworth.notebook.Progress;
import swapworth.reading.UnusableFileException;

/** Does the steps of the program, each a few calls of the library. */
final class Steps {
    private final Terminal terminal;
    private final Inputs inputs;

    Steps(PrintStream out, PrintStream err) {
        terminal = new Terminal(out, err);
        inputs = new Inputs(terminal);
    }

    /** Does a step, or the whole job where none is named; gives the exit code. */
    int run(Optional<Step> step, Arguments arguments) {
        try {
            arguments.check();
            int code = step.isEmpty() ? new FolderStep(inputs, terminal).run(arguments) : switch (step.get()) {
                case CHECK -> listings().check(arguments);
                case JUDGE -> listings().judge(arguments);
                case VALUE -> listings().value(arguments);
                case INDEX -> listings().index(arguments);
                case LANDED -> new DonorSteps(inputs, terminal).landed(arguments);
                case PARTOUT -> new DonorSteps(inputs, terminal).partout(arguments);
                case SWAP -> new SwapSteps(inputs, terminal).swap(arguments);
                case PROJECT -> new ProjectSteps(inputs, terminal).project(arguments);
                case NOTEBOOK -> notebook(arguments);
            };
            return code == Exit.DONE ? ending(arguments) : code;
        } catch (WrongUsageException e) {
            terminal.err().println(e.getMessage());
            return Exit.WRONG_USAGE;
        } catch (UnusableFileException | NothingUsableException | NotebookException e) {
            terminal.err().println(e.getMessage());
            return Exit.NOTHING_USABLE;
        } catch (IOException e) {
            terminal.err().println("cannot write " + e.getMessage());
            return Exit.NOTHING_USABLE;
        }
    }

    private ListingSteps listings() {
        return new ListingSteps(inputs, terminal);
    }

    /** What is said in the end of rows that were rejected in any of the files read. */
    private int ending(Arguments arguments) {
        if (arguments.strictness() == Arguments.Strictness.LENIENT) {
            return Exit.DONE;
        }
        String rejected = terminal.rejected();
        if (rejected.isEmpty()) {
            return Exit.DONE;
        }
        terminal.err().println("--strict: " + rejected);
        return Exit.NOTHING_USABLE;
    }

    private int notebook(Arguments arguments) throws IOException {
        Path folder = inputs.chosen(arguments.notebookFolder());
        // A console is there only where both ends are a terminal.
        Progress progress = Progress.on(terminal.err(), System.console() == null ? Progress.Screen.LINES : Progress.Screen.TERMINAL);
        Notebooks notebooks = Notebooks.about(folder, arguments.page().orElse(folder.resolve("pages"))).with(arguments.copies())
                .telling(progress);
        List<NotebookRun> runs = arguments.limit().map(notebooks::withLimit).orElse(notebooks).run(arguments.notebooks());
        for (NotebookRun run : runs) {
            run.failure().ifPresent(terminal.err()::println);
            if (run.isWritten()) {
                terminal.out().println((run.failure().isPresent() ? "What ran so far: " : "The page: ")
                        + run.page().toAbsolutePath().normalize());
            }
        }
        notebooks.index(runs).ifPresent(index -> terminal.out().println("The index: " + index.toAbsolutePath().normalize()));
        return runs.stream().allMatch(r -> r.failure().isEmpty()) ? Exit.DONE : Exit.NOTHING_USABLE;
    }
}
