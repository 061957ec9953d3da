package swapworth.notebook;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.LinkedBlockingQueue;
import java.util.concurrent.TimeUnit;

/** Runs one notebook in a Java of its own, follows what it tells, and ends it when its time is over. */
final class ChildJava {
    private static final String END = "";
    private static final int MOST_CRIES = 40;
    private static final Duration START = Duration.ofSeconds(60);

    private final NotebookFile notebook;
    private final Progress progress;
    private final List<String> cries = new ArrayList<>();
    private int cell;
    private int line;
    private long cellBegan;

    ChildJava(NotebookFile notebook, Progress progress) {
        this.notebook = notebook;
        this.progress = progress;
    }

    /**
     * How a notebook ended, and why.
     *
     * @param end how
     * @param failure why it did not reach its end
     */
    record Ended(NotebookRun.End end, Optional<String> failure) {
        static Ended at(NotebookRun.End end, String why) {
            return new Ended(end, Optional.of(why));
        }
    }

    /** Runs it. */
    Ended run(Path folder, Path page, Optional<Path> ipynb, Duration limit) throws IOException {
        List<String> command = new ArrayList<>(QuickJava.words());
        command.addAll(List.of("-Duser.timezone=UTC", "-Dfolder=" + folder, "-cp", classPath(), RunsOneNotebook.class.getName(),
                notebook.file().toString(), page.toString(), ipynb.map(Path::toString).orElse(RunsOneNotebook.NOT_WANTED)));
        long began = System.nanoTime();
        Process process = QuickJava.started(new ProcessBuilder(command).redirectErrorStream(true));
        try {
            Ended ended = follow(process, limit);
            if (ended.failure().isPresent()) {
                progress.stops();
            } else {
                progress.ends(notebook.file(), notebook.cells().size(), Duration.ofNanos(System.nanoTime() - began));
            }
            return ended;
        } finally {
            process.destroyForcibly();
        }
    }

    private static String classPath() {
        return QuickJava.jar().map(Path::toString).orElseGet(() -> System.getProperty("java.class.path"));
    }

    private Ended follow(Process process, Duration limit) {
        // Its own time begins with its first cell: a busy machine may be slow to start it.
        long until = System.nanoTime() + START.plus(limit).toNanos();
        LinkedBlockingQueue<String> lines = new LinkedBlockingQueue<>();
        Thread reader = new Thread(() -> read(process, lines), "follows a notebook");
        reader.setDaemon(true);
        reader.start();
        try {
            for (String text = next(lines, until); !text.equals(END); text = next(lines, until)) {
                Optional<Message> message = Message.of(text);
                if (message.isEmpty()) {
                    cries.add(text);
                } else if (message.get().kind() == Message.Kind.DONE) {
                    cellEnds();
                    return new Ended(NotebookRun.End.REACHED, Optional.empty());
                } else if (message.get().kind() == Message.Kind.STOPPED) {
                    return Ended.at(NotebookRun.End.STOPPED, message.get().text());
                } else if (message.get().kind() == Message.Kind.FAILED) {
                    return brokenOff(message.get().text());
                } else {
                    until = cell == 0 ? System.nanoTime() + limit.toNanos() : until;
                    take(message.get());
                }
            }
            return brokenOff(place("the notebook ended its Java " + (process.waitFor(5, TimeUnit.SECONDS)
                    ? "with exit code " + process.exitValue() : "") + " before its last cell was done, as System.exit does; a notebook runs"
                    + " to its end") + cried());
        } catch (OverTimeException e) {
            return brokenOff(place("still running after " + limit.toSeconds() + " s" + ": ended here; a loop without end?"
                    + " --limit SECONDS gives it longer") + cried());
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            return brokenOff(place("interrupted"));
        }
    }

    private static Ended brokenOff(String why) {
        return Ended.at(NotebookRun.End.BROKEN_OFF, why);
    }

    private static String next(LinkedBlockingQueue<String> lines, long until) throws InterruptedException {
        String next = lines.poll(Math.max(0, until - System.nanoTime()), TimeUnit.NANOSECONDS);
        if (next == null) {
            throw new OverTimeException();
        }
        return next;
    }

    private static void read(Process process, LinkedBlockingQueue<String> lines) {
        try (BufferedReader in = new BufferedReader(new InputStreamReader(process.getInputStream(), StandardCharsets.UTF_8))) {
            in.lines().filter(l -> !l.isEmpty()).forEach(lines::add);
        } catch (IOException | UncheckedIOException e) {
            // The notebook's Java is gone, and with it the line to it.
        } finally {
            lines.add(END);
        }
    }

    private void take(Message message) {
        int number = Integer.parseInt(message.text());
        if (message.kind() == Message.Kind.LINE) {
            line = number;
            return;
        }
        cellEnds();
        cell = number;
        cellBegan = System.nanoTime();
        progress.begins(notebook.file(), cell, notebook.cells().size(), notebook.wordsOf(cell - 1));
    }

    private void cellEnds() {
        if (cell > 0) {
            progress.ends(notebook.file(), cell, notebook.cells().size(), notebook.wordsOf(cell - 1),
                    Duration.ofNanos(System.nanoTime() - cellBegan));
        }
    }

    private String place(String cause) {
        return cell == 0 ? notebook.file() + ": before its first cell: " + cause
                : new Failure(cell, line, cause, List.of()).report(notebook);
    }

    private String cried() {
        return cries.isEmpty() ? "" : "\n  Java says: " + String.join("\n  ", cries.subList(0, Math.min(MOST_CRIES, cries.size())));
    }

    private static final class OverTimeException extends RuntimeException {
        private static final long serialVersionUID = 1L;
    }
}
