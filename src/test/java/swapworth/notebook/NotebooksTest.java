package swapworth.notebook;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import swapworth.command.Main;

/** Notebooks in a Java of their own: what is written, and what becomes of those that fail. */
class NotebooksTest {

    @TempDir
    Path folder;

    private Path file(String name, String text) throws IOException {
        return Files.writeString(folder.resolve(name), text);
    }

    private List<String> written() throws IOException {
        Path pages = folder.resolve("pages");
        if (!Files.exists(pages)) {
            return List.of();
        }
        try (Stream<Path> files = Files.list(pages)) {
            return files.map(p -> p.getFileName().toString()).sorted().toList();
        }
    }

    private List<String> words(Path... notebooks) {
        List<String> words = new ArrayList<>(List.of("notebook", "--folder", folder.toString(), "--page",
                folder.resolve("pages").toString()));
        Stream.of(notebooks).map(Path::toString).forEach(words::add);
        return words;
    }

    @Test
    void a_loop_without_end_leaves_no_page_and_is_named() throws IOException {
        Path loop = file("loop.jsh", "// %% [markdown]\n// # Round and round\n\n// %%\nint a = 1;\nwhile (true) {\n    a++;\n}\n");
        List<String> words = words(loop);
        words.addAll(List.of("--limit", "5"));
        String said = complaints(words);
        assertTrue(said.contains("loop.jsh:6: cell 2 of 2: still running after 5 s"), said);
        assertTrue(said.contains("while (true) {"), said);
        String index = Files.readString(folder.resolve("pages/index.html"));
        assertTrue(index.contains("1 of 1 did not run to the end") && index.contains("Round and round"), index);
        assertFalse(index.contains(".html\""), "no link to a page that is not there");
    }

    @Test
    void a_notebook_that_ends_its_java_leaves_no_page_and_is_named() throws IOException {
        String said = complaints(words(file("exit.jsh", "// %%\nint a = 1;\n\n// %%\nSystem.exit(0);\n")));
        assertTrue(said.contains("exit.jsh:5: cell 2 of 2: the notebook ended its Java with exit code 0"), said);
        assertTrue(Pattern.compile("exit.jsh: cell 1 of 2, \\d+\\.\\d s").matcher(said).find(), said);
    }

    /** What is said of notebooks that do not run to their ends, and leave the index alone. */
    private String complaints(List<String> words) throws IOException {
        ByteArrayOutputStream err = new ByteArrayOutputStream();
        int code = Main.run(new PrintStream(new ByteArrayOutputStream(), true, StandardCharsets.UTF_8),
                new PrintStream(err, true, StandardCharsets.UTF_8), words.toArray(String[]::new));
        assertEquals(1, code);
        assertEquals(List.of("index.html"), written());
        return err.toString(StandardCharsets.UTF_8);
    }

    @Test
    void hostile_prose_and_output_are_shown_and_not_run() throws IOException {
        String hostile = "<script>alert(1)</script>";
        Path file = file("hostile & <b>.jsh", "// %% [markdown]\n// # A " + hostile + "\n//\n// Prose " + hostile
                + " [go](javascript:alert(1)) ![pic](http://somewhere/x.png)\n//\n// ## Two " + hostile
                + "\n//\n// | a | b |\n// | --- | --- |\n"
                + "// | " + hostile + " | 2 |\n\n// %%\nSystem.out.println(\"" + hostile + " \\u001b[2J\\u0001DONE\\u0001\");\n"
                + "swapworth.notebook.Show.show(List.of(\"" + hostile + "\", System.getProperty(\"folder\").length()));\n\"" + hostile
                + "\"\n");
        List<NotebookRun> runs = Notebooks.about(folder, folder.resolve("pages")).with(Notebooks.Copies.PAGE_AND_IPYNB).run(List.of(file));
        assertEquals(List.of(), runs.stream().flatMap(r -> r.failure().stream()).toList());
        assertEquals(List.of("hostile & <b>.html", "hostile & <b>.ipynb", "index.html"), written());
        String page = Files.readString(runs.get(0).page());
        for (String not : List.of("<script", "javascript:", "http:", "<img", "src=", "\u001b")) {
            assertFalse(page.contains(not), not);
        }
        assertTrue(page.contains("<title>A &lt;script&gt;alert(1)&lt;/script&gt;</title>"));
        assertTrue(page.contains("<th scope=\"col\">a</th>"), "tables of prose have heads");
        assertTrue(page.contains("<li>" + folder.toString().length() + "</li>"), "the folder is known to the notebook");
        NbformatRules.check(Files.readString(folder.resolve("pages/hostile & <b>.ipynb")));
        String index = Files.readString(folder.resolve("pages/index.html"));
        assertTrue(index.contains("href=\"./hostile%20&amp;%20%3Cb%3E.html\""), index);
    }

    @Test
    void what_cannot_be_run_is_refused_before_anything_runs() throws IOException {
        Notebooks notebooks = Notebooks.about(folder, folder.resolve("pages"));
        Path index = file("index.jsh", "// %%\n1\n");
        assertTrue(assertThrows(NotebookException.class, () -> notebooks.run(List.of(index))).getMessage().contains("is taken"));
        Path nowhere = folder.resolve("nowhere");
        assertTrue(assertThrows(NotebookException.class, () -> Notebooks.about(nowhere, nowhere).run(List.of())).getMessage()
                .contains("no such folder"));
        assertThrows(IllegalArgumentException.class, () -> notebooks.withLimit(Duration.ZERO));
        assertEquals(List.of(), written());
        List<NotebookRun> runs = notebooks.run(List.of(nowhere));
        assertTrue(runs.get(0).failure().orElseThrow().contains("no such notebook"));
    }

    @Test
    void wrong_words_are_wrong_usage() {
        PrintStream nowhere = new PrintStream(new ByteArrayOutputStream(), true, StandardCharsets.UTF_8);
        assertEquals(2, Main.run(nowhere, nowhere, "notebook"));
        assertEquals(2, Main.run(nowhere, nowhere, "notebook", "a.jsh", "--limit", "0"));
        assertEquals(2, Main.run(nowhere, nowhere, "notebook", "a.jsh", "--limit", "soon"));
    }

    @Test
    void messages_between_the_two_javas_keep_their_lines() {
        Message message = new Message(Message.Kind.FAILED, "a\\n\nb \u00e9");
        assertEquals(message, Message.of(message.line()).orElseThrow());
        assertTrue(Message.of("a cry of Java").isEmpty());
        assertTrue(Message.of("\u0001OTHER\u0001x").isEmpty());
    }
}
