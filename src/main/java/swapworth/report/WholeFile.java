package swapworth.report;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.AtomicMoveNotSupportedException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.StandardOpenOption;

/** Writes a text file as a whole or not at all. */
final class WholeFile {

    private WholeFile() {
    }

    static void write(Path file, String text) throws IOException {
        Path target = file.toAbsolutePath();
        Path partial = target.resolveSibling("." + target.getFileName() + "." + ProcessHandle.current().pid() + "-"
                + System.nanoTime() + ".part");
        try {
            Files.writeString(partial, text, StandardCharsets.UTF_8, StandardOpenOption.CREATE_NEW, StandardOpenOption.WRITE);
            try {
                Files.move(partial, target, StandardCopyOption.ATOMIC_MOVE);
            } catch (AtomicMoveNotSupportedException e) {
                Files.move(partial, target, StandardCopyOption.REPLACE_EXISTING);
            }
        } finally {
            Files.deleteIfExists(partial);
        }
    }
}
