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

    /** Bytes: some 3,000,000 rows. */
    private static final long LARGE_FILE = 300_000_000;

    private QuickStart() {
    }

    /** The notebook to go through after the work, named by the build when it makes the archive, so that its classes are in it too. */
    static Optional<Path> rehearsal() {
        return Optional.ofNullable(System.getProperty("swapworth.rehearsal")).map(Path::of);
    }

    /** Runs the program in a second process; the exit code, or nothing where it has to run in this one. */
    static OptionalInt again(String[] arguments) {
        if (System.getProperty(STARTED) != null) {
            return OptionalInt.empty();
        }
        Optional<Path> jar = QuickJava.jar();
        if (jar.isEmpty() || QuickJava.archive().isEmpty()) {
            return OptionalInt.empty();
        }
        try {
            List<String> command = new ArrayList<>(QuickJava.words());
            if (isLarge(arguments)) {
                command.add("-XX:TieredStopAtLevel=4");
            }
            command.addAll(List.of("-D" + STARTED + "=again", "-jar", jar.get().toString()));
            command.addAll(List.of(arguments));
            return OptionalInt.of(new ProcessBuilder(command).inheritIO().start().waitFor());
        } catch (IOException e) {
            return OptionalInt.empty();
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            return OptionalInt.of(1);
        }
    }

    /** Whether a file keeps the second compiler tier busy long enough to pay for itself. */
    private static boolean isLarge(String[] arguments) throws IOException {
        for (String word : arguments) {
            try {
                Path file = Path.of(word);
                if (Files.isRegularFile(file) && Files.size(file) > LARGE_FILE) {
                    return true;
                }
            } catch (InvalidPathException e) {
                // The word is no file.
                continue;
            }
        }
        return false;
    }
}
