package swapworth.notebook;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import swapworth.command.Main;
import swapworth.notebook.NotebookRun.End;
import swapworth.report.Page;

/** The index holds every page of a notebook that is there, whichever run wrote it. */
class NotebookIndexTest {

    @TempDir
    Path folder;

    private Path page(String name, String title, String opening) throws IOException {
        NotebookFile notebook = NotebookFile.of(Path.of(name + ".jsh"), "// %% [markdown]\n// # " + title + "\n//\n// " + opening + "\n");
        String html = NotebookPage.html(notebook, Unwatched.run(notebook));
        return Files.writeString(folder.resolve(name + ".html"), html);
    }

    private NotebookRun run(Path page, End end, String failure) {
        return new NotebookRun(Path.of("x.jsh"), "title of " + page.getFileName(), end, page,
                Optional.of(failure).filter(f -> !f.isEmpty()));
    }

    private String index(NotebookRun... runs) throws IOException {
        return NotebookIndex.of(folder, List.of(runs)).html();
    }

    @Test
    void lists_the_pages_of_earlier_runs_with_title_and_opening() throws IOException {
        page("old", "An old \"one\" & more", "It tells <much>.");
        String index = index(run(page("new", "A new one", "It tells more."), End.REACHED, ""));
        assertTrue(0 < index.indexOf("href=\"./new.html\">A new one</a>"), index);
        assertTrue(index.indexOf("./new.html") < index.indexOf("href=\"./old.html\">An old &quot;one&quot; &amp; more</a>"), index);
        assertTrue(index.contains("It tells &lt;much&gt;.") && index.contains("It tells more."), index);
        assertFalse(index.contains("did not run to the end"), index);
    }

    @Test
    void leaves_out_what_is_no_page_of_a_notebook() throws IOException {
        Page.of("Another page", "").write(folder.resolve("swapworth.html"));
        Files.write(folder.resolve("bytes.html"), new byte[] {(byte) 0xff, (byte) 0xfe, 0, 1});
        String index = index(run(page("one", "One", "Opening."), End.REACHED, ""));
        assertTrue(index.contains("./one.html"), index);
        assertFalse(index.contains("swapworth.html") || index.contains("bytes.html"), index);
    }

    @Test
    void says_which_notebook_left_no_page_and_which_page_is_from_an_earlier_run() throws IOException {
        Path old = page("old", "Old", "Opening.");
        String index = index(run(old, End.BROKEN_OFF, "old.jsh:3: ended\nmore"),
                run(folder.resolve("none.html"), End.BROKEN_OFF, "none.jsh:1: ended"));
        assertTrue(index.contains("2 of 2 did not run to the end this time."), index);
        assertTrue(index.contains("Opening. From an earlier run; this time: old.jsh:3: ended<"), index);
        assertTrue(index.contains("title of none.html") && index.contains("No page: none.jsh:1: ended"), index);
        assertFalse(index.contains("href=\"./none.html\""), "no link to a page that is not there");
    }

    @Test
    void is_left_as_it_was_where_nothing_ran() throws IOException {
        Path index = folder.resolve("index.html");
        Files.writeString(index, "as it was");
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        PrintStream to = new PrintStream(out, true, StandardCharsets.UTF_8);
        assertEquals(1, Main.run(to, to, "notebook", folder.resolve("nosuch.jsh").toString(), "--folder", folder.toString(), "--page",
                folder.toString()));
        assertEquals("as it was", Files.readString(index));
        String said = out.toString(StandardCharsets.UTF_8);
        assertTrue(said.contains("nosuch.jsh: there is no such notebook") && !said.contains("The index"), said);
    }
}
