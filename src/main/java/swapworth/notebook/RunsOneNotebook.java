package swapworth.notebook;

import java.io.FileDescriptor;
import java.io.FileOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.Locale;
import swapworth.chart.Charts;
import swapworth.reading.OutputFile;

/** The program of the Java that runs one notebook; {@link Notebooks} starts it, and may end it. */
final class RunsOneNotebook {
    /** Said instead of the name of a file that is not wanted. */
    static final String NOT_WANTED = "-";

    private RunsOneNotebook() {
    }

    /**
     * Runs a notebook.
     *
     * @param arguments the notebook, where its page goes, where its {@code .ipynb} goes
     */
    public static void main(String[] arguments) {
        Locale.setDefault(Locale.ROOT);
        PrintStream to = new PrintStream(new FileOutputStream(FileDescriptor.out), true, StandardCharsets.UTF_8);
        endWithTheOther();
        Charts.prepare();
        try {
            run(arguments, to);
        } catch (NotebookException e) {
            to.println(new Message(Message.Kind.FAILED, e.getMessage()).line());
        } catch (IOException e) {
            to.println(new Message(Message.Kind.FAILED, "cannot write " + e.getMessage()).line());
        }
        // Threads that the notebook left behind do not keep it alive.
        Runtime.getRuntime().halt(0);
    }

    private static void run(String[] arguments, PrintStream to) throws IOException {
        NotebookFile notebook = NotebookFile.read(Path.of(arguments[0]));
        Evaluation.Outcome outcome = new Evaluation(notebook, new Evaluation.Watcher() {
            @Override
            public void cell(int cell) {
                to.println(new Message(Message.Kind.CELL, Integer.toString(cell)).line());
            }

            @Override
            public void at(int line) {
                to.println(new Message(Message.Kind.LINE, Integer.toString(line)).line());
            }
        }).run();
        String page = NotebookPage.html(notebook, outcome);
        if (!arguments[2].equals(NOT_WANTED)) {
            OutputFile.write(Path.of(arguments[2]), Ipynb.of(notebook, outcome.outputs()));
        }
        OutputFile.write(Path.of(arguments[1]), page);
        to.println(outcome.failure().map(f -> new Message(Message.Kind.STOPPED, f.report(notebook)))
                .orElseGet(() -> new Message(Message.Kind.DONE, "")).line());
    }

    /** Should the Java that started this one be gone, its end of the line is shut, and this one must not run on for ever. */
    private static void endWithTheOther() {
        InputStream line = System.in;
        System.setIn(InputStream.nullInputStream());
        Thread thread = new Thread(() -> {
            try {
                while (line.read() >= 0) {
                    continue;
                }
            } catch (IOException e) {
                // The line broke: the other is gone.
            }
            Runtime.getRuntime().halt(1);
        }, "ends with the other");
        thread.setDaemon(true);
        thread.start();
    }
}
