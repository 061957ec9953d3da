package swapworth.command;

import java.io.IOException;
import java.net.URISyntaxException;
import java.nio.file.Files;
import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalInt;

/**
 * Starts the program again with the flags of the launcher, where it was started by {@code java -jar} alone: most runs are over before
 * the second compiler tier pays for itself, and the archive of loaded classes beside the jar saves reading them one by one. Where no
 * archive lies beside the jar, or the second start fails, the program goes on as it was started.
 */
final class QuickStart {
    /** Set by the launchers and by the second start, so that there is no third. */
    private static final String STARTED = "swapworth.started";

    /** Bytes: some 300,000 rows. */
    private static final long LARGE_FILE = 30_000_000;

    private QuickStart() {
    }

    /** Runs the program in a second process; the exit code, or nothing where it has to run in this one. */
    static OptionalInt again(String[] arguments) {
        if (System.getProperty(STARTED) != null) {
            return OptionalInt.empty();
        }
        try {
            Path jar = Path.of(QuickStart.class.getProtectionDomain().getCodeSource().getLocation().toURI());
            Path archive = jar.resolveSibling("swapworth.jsa");
            Path java = Path.of(System.getProperty("java.home"), "bin", "java");
            if (!jar.toString().endsWith(".jar") || !Files.isRegularFile(archive) || !Files.isExecutable(java)) {
                return OptionalInt.empty();
            }
            List<String> command = new ArrayList<>(List.of(java.toString(), "-Xlog:disable", "-Xshare:auto",
                    "-XX:SharedArchiveFile=" + archive, tier(arguments), "-XX:+UseSerialGC", "-Djava.awt.headless=true",
                    "-D" + STARTED + "=again", "-jar", jar.toString()));
            command.addAll(List.of(arguments));
            return OptionalInt.of(new ProcessBuilder(command).inheritIO().start().waitFor());
        } catch (IOException | URISyntaxException e) {
            return OptionalInt.empty();
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            return OptionalInt.of(1);
        }
    }

    /** The first compiler tier alone, but for a file that keeps the second one busy long enough to pay for itself. */
    private static String tier(String[] arguments) throws IOException {
        for (String word : arguments) {
            try {
                Path file = Path.of(word);
                if (Files.isRegularFile(file) && Files.size(file) > LARGE_FILE) {
                    return "-XX:+TieredCompilation";
                }
            } catch (InvalidPathException e) {
                // The word is no file.
                continue;
            }
        }
        return "-XX:TieredStopAtLevel=1";
    }
}
