package swapworth.reading;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.CompletableFuture;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class OutputFileTest {
    @TempDir
    Path folder;

    private List<String> names() throws IOException {
        try (Stream<Path> files = Files.list(folder)) {
            return files.map(file -> file.getFileName().toString()).sorted().toList();
        }
    }

    private static String refused(Path file) {
        return assertThrows(IOException.class, () -> OutputFile.write(file, "text")).getMessage();
    }

    @Test
    void writing_replaces_a_file_and_leaves_nothing_beside_it() throws IOException {
        Path target = folder.resolve("new/page.html");
        OutputFile.write(target, "first \u00e9");
        OutputFile.write(target, "second");
        assertEquals("second", Files.readString(target));
        try (var files = Files.list(target.getParent())) {
            assertEquals(1, files.count());
        }
    }

    @Test
    void writing_over_a_folder_fails_and_leaves_nothing_beside_it() throws IOException {
        Path taken = Files.createDirectories(folder.resolve("out"));
        assertEquals(taken + ": this is a folder; a name of a file is needed", refused(taken));
        assertEquals(List.of("out"), names());
    }

    @Test
    void a_symbolic_link_stays_one_and_its_file_is_written() throws IOException {
        Files.createDirectory(folder.resolve("there"));
        Path link = link("rows.csv", "there/real.csv");
        Path further = link("further.csv", "rows.csv");
        for (String text : List.of("first", "second")) {
            OutputFile.write(further, text);
            assertEquals(text, Files.readString(folder.resolve("there/real.csv")));
        }
        assertTrue(Files.isSymbolicLink(link) && Files.isSymbolicLink(further));
        assertFalse(Files.isSymbolicLink(folder.resolve("there/real.csv")));
        assertEquals(List.of("further.csv", "rows.csv", "there"), names());
    }

    @Test
    void links_in_a_circle_are_refused() throws IOException {
        link("b", "a");
        assertTrue(refused(link("a", "b")).endsWith("the symbolic links lead round in a circle"));
        assertEquals(List.of("a", "b"), names());
    }

    private Path link(String name, String to) throws IOException {
        try {
            return Files.createSymbolicLink(folder.resolve(name), Path.of(to));
        } catch (UnsupportedOperationException e) {
            assumeTrue(false, "links cannot be made here");
            throw e;
        }
    }

    @Test
    void a_pipe_is_written_to_and_stays_one() throws IOException, InterruptedException {
        Path pipe = folder.resolve("pipe");
        assumeTrue(Files.isExecutable(Path.of("/usr/bin/mkfifo")), "pipes with a name are of other systems");
        assertEquals(0, new ProcessBuilder("/usr/bin/mkfifo", pipe.toString()).start().waitFor());
        CompletableFuture<String> read = CompletableFuture.supplyAsync(() -> {
            try {
                return Files.readString(pipe);
            } catch (IOException e) {
                return e.toString();
            }
        });
        OutputFile.write(pipe, "rows");
        assertEquals("rows", read.join());
        assertFalse(Files.isRegularFile(pipe, LinkOption.NOFOLLOW_LINKS));
        assertEquals(List.of("pipe"), names());
    }

    @Test
    void a_device_is_written_to_and_one_that_is_full_is_said() throws IOException {
        Path full = Path.of("/dev/full");
        assumeTrue(Files.exists(full), "no such device here");
        OutputFile.write(Path.of("/dev/null"), "rows");
        assertTrue(refused(full).startsWith("/dev/full: No space left"), refused(full));
        assertFalse(Files.isRegularFile(full));
    }

    @Test
    void a_failure_names_the_file_and_the_reason() throws IOException {
        Path file = Files.writeString(folder.resolve("listings.csv"), "rows");
        assertEquals(file.resolve("out.csv") + ": " + file + " is a file, and no folder", refused(file.resolve("out.csv")));
        String deep = refused(file.resolve("a/out.csv"));
        assertTrue(deep.startsWith(file.resolve("a/out.csv") + ": ") && deep.length() > deep.lastIndexOf(": ") + 10, deep);
        assertEquals("rows", Files.readString(file));
        assertEquals(List.of("listings.csv"), names());
    }
}
