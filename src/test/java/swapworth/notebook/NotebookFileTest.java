package swapworth.notebook;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** How a file becomes cells. */
class NotebookFileTest {

    private static NotebookFile of(String text) {
        return NotebookFile.of(Path.of("some.jsh"), text);
    }

    @Test
    void cells_stand_between_their_marks_and_know_their_lines() {
        NotebookFile notebook = of("// a word before\n// %% [markdown]\n// # Title\n//\n// First *words*\n// of it.\n//\n// More.\n\n// "
                + "%%\nint a = 1;\na\n");
        assertEquals(2, notebook.cells().size());
        assertEquals(new NotebookCell(NotebookCell.Kind.PROSE, 3, "# Title\n\nFirst *words*\nof it.\n\nMore.\n"), notebook.cells().get(0));
        assertEquals(new NotebookCell(NotebookCell.Kind.CODE, 11, "int a = 1;\na\n"), notebook.cells().get(1));
        assertEquals("Title", notebook.title());
        assertEquals("First words of it.", notebook.opening());
        assertEquals("Title", notebook.wordsOf(1));
    }

    @Test
    void the_opening_keeps_the_words_of_a_link_and_not_its_target() {
        assertEquals("See the list and a picture of it.",
                of("// %% [markdown]\n// # Title\n//\n// See [the list](http://somewhere/x(1)) and ![a picture](y.png) of it.\n")
                .opening());
    }

    @Test
    void code_before_the_first_mark_is_a_cell() {
        assertEquals(1, of("int a = 1;\n").cells().get(0).line());
    }

    @Test
    void code_among_prose_is_refused_with_its_line() {
        String message = assertThrows(NotebookException.class, () -> of("// %% [markdown]\n// words\nint a = 1;\n")).getMessage();
        assertTrue(message.startsWith("some.jsh:3: code in a cell of prose"), message);
        assertTrue(message.endsWith("int a = 1;"), message);
    }

    @Test
    void a_file_without_cells_says_what_makes_one() {
        assertTrue(assertThrows(NotebookException.class, () -> of("// nothing\n")).getMessage().contains("// %%"));
    }

    @Test
    void a_file_that_is_not_there_or_not_utf_8_is_named(@TempDir Path folder) throws IOException {
        Path file = folder.resolve("latin.jsh");
        assertTrue(assertThrows(NotebookException.class, () -> NotebookFile.read(file)).getMessage().contains("no such notebook"));
        Files.write(file, "// %%\nString s = \"\u00e9\";\n".getBytes(StandardCharsets.ISO_8859_1));
        assertTrue(assertThrows(NotebookException.class, () -> NotebookFile.read(file)).getMessage().contains("UTF-8"));
        Files.write(file, "\uFEFF// %%\r\nint a = 1;\r\n".getBytes(StandardCharsets.UTF_8));
        assertEquals("int a = 1;\n", NotebookFile.read(file).cells().get(0).text());
    }
}
