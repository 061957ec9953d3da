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
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import swapworth.command.Main;

/** A notebook of which a cell fails: what ran so far becomes a page, which ends with the failed cell and why it failed. */
class FailedNotebookTest {
    private static final String NOTEBOOK = """
            // %% [markdown]
            // # Halfway

            // %%
            "ran before"

            // %% [markdown]
            // ## The listings

            // %%
            System.out.println("printed first");
            swapworth.listing.Listings.read(Path.of("nowhere.csv"));

            // %% [markdown]
            // ## Never reached

            // %%
            "ran after"
            """;

    @TempDir
    Path folder;

    private int run(PrintStream out, PrintStream err) throws IOException {
        Path file = Files.writeString(folder.resolve("halfway.jsh"), NOTEBOOK);
        return Main.run(out, err, "notebook", file.toString(), "--folder", folder.toString(), "--page", folder.toString(), "--ipynb");
    }

    private static PrintStream to(ByteArrayOutputStream bytes) {
        return new PrintStream(bytes, true, StandardCharsets.UTF_8);
    }

    @Test
    void the_page_and_the_file_for_jupyter_end_with_the_failed_cell_and_its_message() throws IOException {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        ByteArrayOutputStream err = new ByteArrayOutputStream();
        assertEquals(1, run(to(out), to(err)), "it is a failure all the same");
        String said = err.toString(StandardCharsets.UTF_8);
        assertTrue(said.contains("halfway.jsh:12: cell 4 of 6: nowhere.csv: there is no such file"), said);
        assertTrue(out.toString(StandardCharsets.UTF_8).contains("What ran so far: "), out.toString());
        String page = Files.readString(folder.resolve("halfway.html"));
        assertTrue(page.contains("<p class=\"lead\">Stopped at line 12: nowhere.csv: there is no such file"), "said first");
        int before = page.indexOf("<p>ran before</p>");
        int printed = page.indexOf("printed first\n</pre>");
        int stopped = page.indexOf("<h3>Stopped at line 12</h3>");
        assertTrue(0 < before && before < printed && printed < stopped, page);
        assertFalse(page.contains("ran after") || page.contains("Never reached"), "nothing follows");
        String ipynb = Files.readString(folder.resolve("halfway.ipynb"));
        NbformatRules.check(ipynb);
        assertTrue(ipynb.contains("\"output_type\": \"error\""), ipynb);
        assertTrue(ipynb.contains("\"evalue\": \"nowhere.csv: there is no such file"), ipynb);
        assertFalse(ipynb.contains("ran after"), ipynb);
        String index = Files.readString(folder.resolve("index.html"));
        assertTrue(index.contains("href=\"./halfway.html\"") && index.contains("Stopped at line 12: nowhere.csv"), index);
    }

    @Test
    void a_mistake_in_the_code_is_told_on_the_page_too() {
        NotebookFile notebook = NotebookFile.of(Path.of("some.jsh"), "// %%\nint a = 1;\na\n\n// %%\nint b = nothing;\n");
        String page = NotebookPage.html(notebook, Unwatched.run(notebook));
        assertTrue(page.contains("<p>1</p>"), page);
        assertTrue(page.contains("Stopped at line 6: cannot find symbol") && page.contains("<li>symbol:   variable nothing</li>"), page);
    }
}
