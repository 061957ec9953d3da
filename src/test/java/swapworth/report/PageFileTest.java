package swapworth.report;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class PageFileTest {
    @TempDir
    private Path folder;

    private List<String> names() throws IOException {
        try (Stream<Path> files = Files.list(folder)) {
            return files.map(file -> file.getFileName().toString()).sorted().toList();
        }
    }

    @Test
    void a_page_replaces_the_one_before_and_leaves_nothing_else() throws IOException {
        Path file = folder.resolve("page.html");
        Files.writeString(file, "old");
        Page page = Page.of("Über", "", Section.of("a", "x"));
        page.write(file);
        assertEquals(page.html(), Files.readString(file));
        assertEquals(List.of("page.html"), names());
    }

    @Test
    void a_folder_that_is_not_there_is_made() throws IOException {
        Path file = folder.resolve("missing/page.html");
        Page.of("t", "", Section.of("a", "x")).write(file);
        assertTrue(Files.size(file) > 0);
    }

    @Test
    void a_file_that_cannot_be_replaced_stays_as_it_was() throws IOException {
        Path taken = Files.createDirectories(folder.resolve("page.html/inside"));
        assertThrows(IOException.class, () -> swapworth.reading.OutputFile.write(folder.resolve("page.html"), "new"));
        assertTrue(Files.isDirectory(taken));
        assertEquals(List.of("page.html"), names());
    }
}
