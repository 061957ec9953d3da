package swapworth.reading;

import static java.util.Objects.requireNonNull;

import java.io.IOException;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.AtomicMoveNotSupportedException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;

/** Writes whole files: first under a temporary name in the same folder, then moved, so that a crash leaves no half a file. */
public final class OutputFile {

    private OutputFile() {
    }

    /**
     * Writes text as UTF-8, in place of what was there.
     *
     * @param file where to; a missing folder is made
     * @param text what to write
     * @throws IOException if the folder or the file cannot be written; what was there before is then untouched
     */
    public static void write(Path file, String text) throws IOException {
        write(file, requireNonNull(text, "text").getBytes(StandardCharsets.UTF_8));
    }

    /**
     * Writes bytes, in place of what was there.
     *
     * @param file where to; a missing folder is made
     * @param bytes what to write
     * @throws IOException if the folder or the file cannot be written; what was there before is then untouched
     */
    public static void write(Path file, byte[] bytes) throws IOException {
        write(file, out -> out.write(bytes));
    }

    /** Something that writes bytes. */
    public interface Writing {
        /**
         * Writes.
         *
         * @param out where to; closed by the caller
         * @throws IOException if that fails
         */
        void to(OutputStream out) throws IOException;
    }

    /**
     * Writes bytes as they are made, in place of what was there.
     *
     * @param file where to; a missing folder is made
     * @param writing what writes them
     * @throws IOException if the folder or the file cannot be written; what was there before is then untouched
     */
    public static void write(Path file, Writing writing) throws IOException {
        Path target = file.toAbsolutePath();
        Path folder = target.getParent();
        if (folder == null || Files.isDirectory(target)) {
            throw new IOException(file + " is a folder; a name of a file is needed");
        }
        Files.createDirectories(folder);
        Path temporary = folder.resolve("." + target.getFileName() + "." + ProcessHandle.current().pid() + ".part");
        try {
            try (OutputStream out = Files.newOutputStream(temporary)) {
                writing.to(out);
            }
            try {
                Files.move(temporary, target, StandardCopyOption.ATOMIC_MOVE, StandardCopyOption.REPLACE_EXISTING);
            } catch (AtomicMoveNotSupportedException e) {
                Files.move(temporary, target, StandardCopyOption.REPLACE_EXISTING);
            }
        } finally {
            Files.deleteIfExists(temporary);
        }
    }
}
