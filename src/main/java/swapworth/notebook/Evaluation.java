package swapworth.notebook;

import java.io.ByteArrayOutputStream;
import java.io.InputStream;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import jdk.jshell.DeclarationSnippet;
import jdk.jshell.Diag;
import jdk.jshell.EvalException;
import jdk.jshell.JShell;
import jdk.jshell.Snippet;
import jdk.jshell.SnippetEvent;
import jdk.jshell.SourceCodeAnalysis;
import jdk.jshell.SourceCodeAnalysis.CompletionInfo;
import jdk.jshell.spi.ExecutionControl;
import jdk.jshell.spi.ExecutionControlProvider;
import jdk.jshell.spi.ExecutionEnv;
import swapworth.report.Part;

/** Runs the cells of one notebook, one after the other, in this Java, up to the first that fails. */
final class Evaluation {
    /** What jshell imports by itself, so that a file runs alike under both. */
    private static final List<String> IMPORTS = List.of("java.io.*", "java.math.*", "java.net.*", "java.nio.file.*", "java.util.*",
            "java.util.concurrent.*", "java.util.function.*", "java.util.prefs.*", "java.util.regex.*", "java.util.stream.*");
    /** Snippets that state a value; an assignment has one too, but is there for what it does. */
    private static final Set<Snippet.SubKind> VALUES = Set.of(Snippet.SubKind.TEMP_VAR_EXPRESSION_SUBKIND,
            Snippet.SubKind.VAR_VALUE_SUBKIND, Snippet.SubKind.OTHER_EXPRESSION_SUBKIND);
    /** Printed text beyond this many bytes a cell is cut. */
    private static final int MOST_PRINTED = 400_000;

    private final NotebookFile notebook;
    private final Watcher watcher;
    private final CellExecution execution = new CellExecution();
    private final Map<String, Integer> offsetOfSnippet = new LinkedHashMap<>();
    private final Map<String, Integer> cellOfSnippet = new LinkedHashMap<>();
    private final List<Output> outputs = new ArrayList<>();
    private final Printed printed = new Printed();

    /** Is told how far the work is. */
    interface Watcher {
        /** A cell of code begins; cells count from 1. */
        void cell(int cell);

        /** A snippet begins at a line of the file. */
        void at(int line);
    }

    /**
     * What came of it.
     *
     * @param outputs the outputs of each cell that was reached; none for prose, and last why it stopped for one that failed
     * @param failure where it stopped; empty if it ran to its end
     */
    record Outcome(List<List<Output>> outputs, Optional<Failure> failure) {
    }

    Evaluation(NotebookFile notebook, Watcher watcher) {
        this.notebook = notebook;
        this.watcher = watcher;
    }

    /** Runs all cells; standard output and error of this Java are the notebook's meanwhile. */
    Outcome run() {
        PrintStream out = System.out;
        PrintStream err = System.err;
        PrintStream to = new PrintStream(printed, true, StandardCharsets.UTF_8);
        System.setOut(to);
        System.setErr(to);
        Show.to(parts -> {
            takePrinted();
            parts.forEach(p -> outputs.add(new Output(Output.Manner.SHOWN, p)));
        });
        try (JShell shell = JShell.builder().executionEngine(new InThisJava(), Map.of()).in(InputStream.nullInputStream()).build()) {
            shell.addToClasspath(System.getProperty("java.class.path"));
            IMPORTS.forEach(i -> shell.eval("import " + i + ";"));
            return cells(shell);
        } finally {
            Show.toTerminal();
            System.setOut(out);
            System.setErr(err);
        }
    }

    private Outcome cells(JShell shell) {
        List<List<Output>> all = new ArrayList<>();
        Optional<Failure> failure = Optional.empty();
        for (int c = 0; c < notebook.cells().size() && failure.isEmpty(); c++) {
            outputs.clear();
            if (notebook.cells().get(c).kind() == NotebookCell.Kind.CODE) {
                watcher.cell(c + 1);
                failure = cell(shell, c);
                takePrinted();
                failure.ifPresent(f -> outputs.add(new Output(Output.Manner.STOPPED, f.part())));
            }
            all.add(List.copyOf(outputs));
        }
        return new Outcome(all, failure);
    }

    private Optional<Failure> cell(JShell shell, int c) {
        String text = notebook.cells().get(c).text();
        SourceCodeAnalysis analysis = shell.sourceCodeAnalysis();
        Optional<Object> last = Optional.empty();
        int offset = 0;
        while (Source.hasCode(text.substring(offset))) {
            int begin = offset + Source.start(text.substring(offset));
            String rest = text.substring(begin);
            watcher.at(line(c, begin));
            CompletionInfo info = analysis.analyzeCompletion(rest);
            if (info.completeness() == SourceCodeAnalysis.Completeness.DEFINITELY_INCOMPLETE) {
                return Optional.of(new Failure(c + 1, line(c, begin), "the cell ends before what begins here does: a bracket, a quote or"
                        + " the rest of a statement is missing", List.of()));
            }
            last = Optional.empty();
            // Events with a cause tell of snippets of before, which this one changes.
            for (SnippetEvent event : shell.eval(info.source()).stream().filter(e -> e.causeSnippet() == null).toList()) {
                Snippet snippet = event.snippet();
                offsetOfSnippet.put(snippet.id(), begin);
                cellOfSnippet.put(snippet.id(), c);
                if (event.status() == Snippet.Status.REJECTED) {
                    return Optional.of(rejected(shell, snippet, c, begin));
                }
                if (event.exception() != null) {
                    return Optional.of(thrown(shell, event, c, begin));
                }
                last = VALUES.contains(snippet.subKind()) ? execution.value() : Optional.empty();
            }
            offset = info.remaining().isEmpty() ? text.length() : text.length() - info.remaining().length();
        }
        Optional<Failure> unresolved = unresolved(shell);
        if (unresolved.isPresent()) {
            return unresolved;
        }
        takePrinted();
        last.ifPresent(value -> Shown.parts(value).forEach(p -> outputs.add(new Output(Output.Manner.LAST, p))));
        return Optional.empty();
    }

    private Failure rejected(JShell shell, Snippet snippet, int c, int begin) {
        List<Diag> errors = shell.diagnostics(snippet).filter(Diag::isError).toList();
        String cause = errors.stream().map(d -> d.getMessage(Locale.ROOT).strip()).distinct().collect(Collectors.joining("\n"));
        int at = begin + (errors.isEmpty() ? 0 : (int) Math.max(0, errors.get(0).getStartPosition()));
        return new Failure(c + 1, line(c, at), cause.isEmpty() ? "this is not understood as Java" : cause, List.of());
    }

    private Failure thrown(JShell shell, SnippetEvent event, int c, int begin) {
        List<Integer> lines = new ArrayList<>();
        if (event.exception() instanceof EvalException thrown) {
            for (StackTraceElement element : thrown.getStackTrace()) {
                lineOf(element).ifPresent(lines::add);
            }
        } else {
            // A method was called that speaks of something not declared: say what.
            Optional<Failure> unresolved = unresolved(shell);
            if (unresolved.isPresent()) {
                return unresolved.get();
            }
        }
        int first = lines.isEmpty() ? line(c, begin) : lines.remove(0);
        return new Failure(c + 1, first, execution.thrown().map(Evaluation::causes).orElse("the snippet did not run to its end"),
                lines.stream().distinct().limit(8).toList());
    }

    /** The line of the file at which a frame of the notebook's own code stands. */
    private Optional<Integer> lineOf(StackTraceElement element) {
        String file = element.getFileName() == null ? "" : element.getFileName();
        String id = file.startsWith("#") ? file.substring(1) : "";
        if (!offsetOfSnippet.containsKey(id) || element.getLineNumber() < 1) {
            return Optional.empty();
        }
        return Optional.of(line(cellOfSnippet.get(id), offsetOfSnippet.get(id)) + element.getLineNumber() - 1);
    }

    private static String causes(Throwable thrown) {
        StringBuilder text = new StringBuilder(words(thrown));
        Throwable cause = thrown.getCause();
        for (int depth = 0; cause != null && depth < 8; depth++) {
            text.append("\ncaused by ").append(words(cause));
            cause = cause.getCause();
        }
        return text.toString();
    }

    /** What the library says to the user stands by itself; anything else is Java's, and its class tells more than its message. */
    private static String words(Throwable thrown) {
        String message = thrown.getMessage();
        boolean ours = isOurs(thrown.getClass().getName())
                || (thrown instanceof IllegalArgumentException || thrown instanceof IllegalStateException)
                        && thrown.getStackTrace().length > 0 && isOurs(thrown.getStackTrace()[0].getClassName());
        return ours && message != null && !message.isBlank() ? message : thrown.toString();
    }

    private static boolean isOurs(String name) {
        return name.startsWith("swapworth.");
    }

    /** A declaration that speaks of what no cell up to here declares. */
    private Optional<Failure> unresolved(JShell shell) {
        return shell.snippets().filter(s -> shell.status(s) == Snippet.Status.RECOVERABLE_DEFINED
                || shell.status(s) == Snippet.Status.RECOVERABLE_NOT_DEFINED).findFirst().map(s -> {
                    int c = cellOfSnippet.getOrDefault(s.id(), 0);
                    return new Failure(c + 1, line(c, offsetOfSnippet.getOrDefault(s.id(), 0)),
                            "this needs what is declared nowhere up to here: "
                            + shell.unresolvedDependencies((DeclarationSnippet) s).collect(Collectors.joining(", ")), List.of());
                });
    }

    private int line(int cell, int offset) {
        NotebookCell of = notebook.cells().get(cell);
        int end = Math.min(offset, of.text().length());
        return of.line() + (int) of.text().substring(0, end).chars().filter(ch -> ch == '\n').count();
    }

    private void takePrinted() {
        String text = printed.take();
        if (!text.isEmpty()) {
            outputs.add(new Output(Output.Manner.PRINTED, Part.verbatim(text)));
        }
    }

    /** What a cell prints, up to a limit. */
    private static final class Printed extends ByteArrayOutputStream {
        private boolean cut;

        @Override
        public synchronized void write(int b) {
            if (count < MOST_PRINTED) {
                super.write(b);
            } else {
                cut = true;
            }
        }

        @Override
        public synchronized void write(byte[] bytes, int from, int length) {
            int room = Math.min(length, MOST_PRINTED - count);
            cut |= room < length;
            super.write(bytes, from, Math.max(0, room));
        }

        synchronized String take() {
            String text = toString(StandardCharsets.UTF_8) + (cut ? "\n(the cell printed more; the rest is left out)\n" : "");
            reset();
            cut = false;
            return text;
        }
    }

    /** Hands our way of running snippets to JShell. */
    private final class InThisJava implements ExecutionControlProvider {

        @Override
        public String name() {
            return "cells";
        }

        @Override
        public ExecutionControl generate(ExecutionEnv env, Map<String, String> parameters) {
            return execution;
        }
    }
}
