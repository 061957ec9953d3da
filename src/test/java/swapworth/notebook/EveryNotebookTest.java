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
import java.util.ArrayList;
import java.util.List;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Every notebook of the project runs on the sample, by our runner and by the JDK's own, and says the same each time. */
class EveryNotebookTest {
    private static final Path SAMPLE = Path.of("sample-listings");

    private static List<Path> notebooks() throws IOException {
        try (Stream<Path> files = Files.list(Path.of("notebooks"))) {
            List<Path> notebooks = files.filter(f -> f.toString().endsWith(".jsh")).sorted().toList();
            assertFalse(notebooks.isEmpty());
            return notebooks;
        }
    }

    @Test
    void runs_to_its_end_and_twice_gives_the_same_bytes(@TempDir Path folder) throws IOException {
        ByteArrayOutputStream told = new ByteArrayOutputStream();
        Progress progress = Progress.on(new PrintStream(told, true, StandardCharsets.UTF_8), Progress.Screen.LINES);
        List<NotebookRun> runs = Notebooks.about(SAMPLE, folder).with(Notebooks.Copies.PAGE_AND_IPYNB).telling(progress).run(notebooks());
        String index = Files.readString(folder.resolve("index.html"));
        for (NotebookRun run : runs) {
            assertEquals("", run.failure().orElse(""));
            String page = Files.readString(run.page());
            assertFalse(page.contains("<script") || page.contains("http:") || page.contains("<img"), "stands alone");
            assertTrue(page.contains("For your own files"), "ends with what to change");
            assertFalse(page.contains("columns label ") || page.contains(", kind words"), "a table is shown and not what it is made of");
            assertTrue(page.contains("no appraisal"), "an estimate says that it is one: " + run.page());
            assertTrue(index.contains("href=\"./" + run.page().getFileName() + "\""), index);
            String ipynb = Files.readString(Path.of(run.page().toString().replace(".html", ".ipynb")));
            NbformatRules.check(ipynb);
            // Once more, in this Java, whose language and time zone may be others.
            NotebookFile notebook = NotebookFile.read(run.file());
            Evaluation.Outcome again = Unwatched.run(notebook);
            assertEquals(page, NotebookPage.html(notebook, again));
            assertEquals(ipynb, Ipynb.of(notebook, again.outputs()));
        }
        String lines = told.toString(StandardCharsets.UTF_8);
        assertTrue(Pattern.compile("1-is-this-listing-overpriced.jsh: cell 4 of \\d+, What was read, \\d+\\.\\d s").matcher(lines).find(),
                lines);
    }

    @Test
    void runs_under_plain_jshell(@TempDir Path folder) throws IOException, InterruptedException {
        for (Path notebook : notebooks()) {
            Path out = folder.resolve("out.txt");
            List<String> command = new ArrayList<>(List.of(Path.of(System.getProperty("java.home"), "bin", "jshell").toString(),
                    "-J-XX:TieredStopAtLevel=1", "-R-XX:TieredStopAtLevel=1", "-R-Djava.awt.headless=true",
                    "-J-Djava.util.prefs.userRoot=" + folder, "--class-path", System.getProperty("java.class.path"),
                    notebook.toString()));
            Process process = new ProcessBuilder(command).redirectErrorStream(true).redirectOutput(out.toFile()).start();
            process.getOutputStream().close();
            assertEquals(0, process.waitFor());
            String said = Files.readString(out, StandardCharsets.UTF_8);
            assertFalse(Pattern.compile("(?m)^(\\|\\s+)?(Error:|Exception |.*Exception:)").matcher(said).find(), said);
            assertTrue(said.contains("Before you rely on any of this"), notebook + " up to its last cell, the cautions: " + said);
        }
    }

    @Test
    void the_first_runs_on_the_least_file_that_works(@TempDir Path folder) throws IOException {
        Files.writeString(folder.resolve("listings.csv"), "vehicle,model_year,mileage_mi,price_usd\nSivrette,2014,88000,9800\n"
                + "Sivrette,2016,71000,11900\nVelmarch,2018,54000,17400\n");
        System.setProperty("folder", folder.toString());
        try {
            NotebookFile notebook = NotebookFile.read(notebooks().get(0));
            Evaluation.Outcome outcome = Unwatched.run(notebook);
            assertEquals("", outcome.failure().map(f -> f.report(notebook)).orElse(""));
            String page = NotebookPage.html(notebook, outcome);
            assertTrue(page.contains("3 rows: 3 used"));
            assertTrue(page.contains("fewer than ten prices have a value"), "not an empty section");
        } finally {
            System.clearProperty("folder");
        }
    }

    @Test
    void is_short_in_every_cell_and_takes_the_folder_as_its_one_setting() throws IOException {
        for (Path file : notebooks()) {
            NotebookFile notebook = NotebookFile.read(file);
            for (NotebookCell cell : notebook.cells()) {
                assertTrue(cell.kind() == NotebookCell.Kind.PROSE || cell.text().strip().lines().count() <= 12, file + ":" + cell.line());
            }
            assertEquals(1, notebook.lines().stream().filter(l -> l.contains("System.getProperty(\"folder\", \"sample-listings\")"))
                    .count());
            assertFalse(notebook.title().isEmpty() || notebook.opening().isEmpty());
        }
    }
}
