package swapworth.notebook;

import java.nio.file.Path;

/**
 * Runs a notebook in its own Java and writes nothing: the build asks what classes that takes, for the archive beside the jar.
 * {@link RunsOneNotebook} ends with whoever started it and cannot be asked.
 */
final class RehearsesNotebook {
    private RehearsesNotebook() {
    }

    /**
     * Runs it.
     *
     * @param arguments the notebook
     */
    public static void main(String[] arguments) {
        NotebookFile notebook = NotebookFile.read(Path.of(arguments[0]));
        Evaluation.Outcome outcome = Unwatched.run(notebook);
        outcome.failure().ifPresent(f -> {
            throw new NotebookException(f.report(notebook));
        });
        NotebookPage.html(notebook, outcome);
        Ipynb.of(notebook, outcome.outputs());
        System.exit(0);
    }
}
