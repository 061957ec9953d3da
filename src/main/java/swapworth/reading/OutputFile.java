package swapworth.reading;

import static java.util.Objects.requireNonNull;

import java.io.FileDescriptor;
import java.io.FileOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.AccessDeniedException;
import java.nio.file.AtomicMoveNotSupportedException;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.FileSystemException;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.Map;

/**
 * Writes whole files: first under a temporary name in the same folder, then moved, so that a crash leaves no half a file. A symbolic link
 * stays one, and the file for which it stands is written; a pipe or a device stays one too, and is written to.
 */
public final class OutputFile {

    private static final int MOST_LINKS = 40;
    /** What is open already is not opened again: into a file it would be written from the beginning. */
    private static final Map<String, FileDescriptor> STANDARD = Map.of("/dev/stdout", FileDescriptor.out, "/dev/fd/1", FileDescriptor.out,
            "/proc/self/fd/1", FileDescriptor.out, "/dev/stderr", FileDescriptor.err, "/dev/fd/2", FileDescriptor.err,
            "/proc/self/fd/2", FileDescriptor.err);

    private OutputFile() {
    }

    /**
     * Writes text as UTF-8, in place of what was there.
     *
     * @param file where to; a missing folder is made
     * @param text what to write
     * @throws IOException if the folder or the file cannot be written, with the file and why; what was there before is then untouched
     */
    public static void write(Path file, String text) throws IOException {
        write(file, requireNonNull(text, "text").getBytes(StandardCharsets.UTF_8));
    }

    /**
     * Writes bytes, in place of what was there.
     *
     * @param file where to; a missing folder is made
     * @param bytes what to write
     * @throws IOException if the folder or the file cannot be written, with the file and why; what was there before is then untouched
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
     * @throws IOException if the folder or the file cannot be written, with the file and why; what was there before is then untouched
     */
    public static void write(Path file, Writing writing) throws IOException {
        Path target = file.toAbsolutePath();
        FileDescriptor open = STANDARD.get(target.toString());
        try {
            if (open != null) {
                through(new FileOutputStream(open), writing);
            } else if (Files.exists(target) && !Files.isRegularFile(target) && !Files.isDirectory(target)) {
                try (OutputStream out = Files.newOutputStream(target)) {
                    writing.to(out);
                }
            } else {
                replace(followed(target), writing);
            }
        } catch (IOException e) {
            throw new IOException(file + ": " + why(e), e);
        }
    }

    /** What others go on writing to is left open. */
    private static void through(OutputStream standard, Writing writing) throws IOException {
        writing.to(standard);
        standard.flush();
    }

    /** The file for which a symbolic link stands, whether or not it is there: the link stays one. */
    private static Path followed(Path target) throws IOException {
        Path at = target;
        for (int links = 0; Files.isSymbolicLink(at); links++) {
            if (links == MOST_LINKS) {
                throw new IOException("the symbolic links lead round in a circle");
            }
            at = at.resolveSibling(Files.readSymbolicLink(at));
        }
        return at;
    }

    private static void replace(Path target, Writing writing) throws IOException {
        Path folder = target.getParent();
        if (folder == null || Files.isDirectory(target)) {
            throw new IOException("this is a folder; a name of a file is needed");
        }
        if (!Files.isDirectory(folder)) {
            Files.createDirectories(folder);
        }
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

    /** Why writing failed, in words: of many failures the machine tells nothing but the name of a file. */
    private static String why(IOException e) {
        if (!(e instanceof FileSystemException failed)) {
            return e.getMessage() == null ? e.toString() : e.getMessage();
        }
        if (e instanceof AccessDeniedException) {
            Path denied = Path.of(failed.getFile());
            return Files.exists(denied) ? "no permission to write to it" : "no permission to write in the folder " + denied.getParent();
        }
        if (e instanceof FileAlreadyExistsException) {
            return failed.getFile() + " is a file, and no folder";
        }
        if (e instanceof NoSuchFileException) {
            return "there is no " + failed.getFile() + ", and it cannot be made";
        }
        return failed.getReason() == null ? failed.getMessage() : failed.getReason() + " (" + failed.getFile() + ")";
    }
}
