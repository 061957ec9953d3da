package swapworth.command;

import java.io.FileDescriptor;
import java.io.FileOutputStream;
import java.io.IOException;
import java.nio.file.Path;
import java.util.Optional;

/** Where results go, and whether all of them arrived: what goes into a file may meet a full disk. */
final class ShownText extends FileOutputStream {
    private String why = "";

    ShownText(FileDescriptor where) {
        super(where);
    }

    @Override
    public void write(byte[] bytes, int from, int count) throws IOException {
        try {
            super.write(bytes, from, count);
        } catch (IOException e) {
            why = why.isEmpty() ? String.valueOf(e.getMessage()) : why;
            throw e;
        }
    }

    /** Why not all of it arrived; empty where it did, or where a pipe was closed by who had read enough. */
    Optional<String> lost() {
        return why.isEmpty() || isPipe() ? Optional.empty() : Optional.of("cannot write all of what is shown: " + why);
    }

    /** A pipe has no path of its own. */
    private static boolean isPipe() {
        try {
            Path.of("/dev/stdout").toRealPath();
            return false;
        } catch (IOException e) {
            return true;
        }
    }
}
