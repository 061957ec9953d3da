package swapworth.command;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import swapworth.notebook.QuickJava;

/**
 * Starts the program again with the flags of the launcher, where it was started by {@code java -jar} alone. Where no archive lies
 * beside the jar, or the second start fails, the program goes on as it was started.
 */
final class QuickStart {
    /** Set by the launchers and by the second start, so that there is no third. */
    private static final String STARTED = "swapworth.started";

    /** Bytes, some 300,000 rows: from here on little room for what is new, and little beside what is kept, halves the memory taken. */
    private static final long LARGE_FILE = 30_000_000;
    /** Bytes, some 3,000,000 rows: these keep the second compiler tier busy long enough to pay for itself. */
    private static final long VERY_LARGE_FILE = 300_000_000;

    private QuickStart() {
    }

    /** Runs the program in a second process; the exit code, or nothing where it has to run in this one. */
    static OptionalInt again(String[] arguments) {
        // A word that this process could not read would reach the next one as a wrong word.
        if (System.getProperty(STARTED) != null || String.join("", arguments).indexOf(Arguments.NO_SUCH_LETTER) >= 0) {
            return OptionalInt.empty();
        }
        Optional<Path> jar = QuickJava.jar();
        if (jar.isEmpty() || QuickJava.archive().isEmpty()) {
            return OptionalInt.empty();
        }
        try {
            List<String> command = new ArrayList<>(QuickJava.words());
            command.addAll(wordsForFileOf(largestFile(arguments)));
            command.addAll(List.of("-D" + STARTED + "=again", "-jar", jar.get().toString()));
            command.addAll(List.of(arguments));
            return OptionalInt.of(QuickJava.started(new ProcessBuilder(command).inheritIO()).waitFor());
        } catch (IOException e) {
            return OptionalInt.empty();
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            return OptionalInt.of(1);
        }
    }

    /** What is said to Java, behind the words for short runs, where the largest file has so many bytes. */
    static List<String> wordsForFileOf(long bytes) {
        List<String> words = new ArrayList<>();
        if (bytes > LARGE_FILE) {
            words.addAll(List.of("-XX:PretenureSizeThreshold=32768", "-XX:MinHeapFreeRatio=10", "-XX:MaxHeapFreeRatio=30"));
        }
        if (bytes > VERY_LARGE_FILE) {
            words.add("-XX:TieredStopAtLevel=4");
        }
        return words;
    }

    /** The bytes of the largest file among the words. */
    private static long largestFile(String[] arguments) throws IOException {
        long largest = 0;
        for (String word : arguments) {
            try {
                Path file = Path.of(word);
                largest = Files.isRegularFile(file) ? Math.max(largest, Files.size(file)) : largest;
            } catch (InvalidPathException e) {
                // The word is no file.
                continue;
            }
        }
        return largest;
    }
}
