package swapworth;

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
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import jdk.jshell.JShell;
import jdk.jshell.Snippet;
import jdk.jshell.SnippetEvent;
import jdk.jshell.SourceCodeAnalysis;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What the README says can be done, done as it says. */
class ReadmeTest {

    private static String readme() throws IOException {
        return Files.readString(Path.of("README.md"));
    }

    private static List<String> blocks(String language) throws IOException {
        List<String> blocks = new ArrayList<>();
        Matcher matcher = Pattern.compile("```" + language + "\\R(.*?)```", Pattern.DOTALL).matcher(readme());
        while (matcher.find()) {
            blocks.add(matcher.group(1));
        }
        return blocks;
    }

    @Test
    void the_job_stands_in_its_first_paragraph_and_two_commands_do_all_the_set_up() throws IOException {
        String text = readme();
        assertTrue(text.indexOf("recipient") < text.indexOf("## Run it"), "the job comes first");
        assertTrue(blocks("sh").get(0).contains("mvn -q -DskipTests package && java -jar target/swapworth.jar"));
        assertTrue(Pattern.compile("Run the tests:\\R\\R```sh\\Rmvn verify\\R```").matcher(text).find());
    }

    @Test
    void its_java_runs() throws IOException {
        String source = blocks("java").get(0);
        ByteArrayOutputStream printed = new ByteArrayOutputStream();
        PrintStream before = System.out;
        System.setOut(new PrintStream(printed, true, StandardCharsets.UTF_8));
        try (JShell shell = JShell.builder().executionEngine("local").build()) {
            shell.addToClasspath(System.getProperty("java.class.path"));
            for (String name : List.of("java.nio.file.*", "swapworth.listing.*", "swapworth.market.*", "swapworth.project.*")) {
                shell.eval("import " + name + ";");
            }
            String rest = source;
            while (!rest.isBlank()) {
                SourceCodeAnalysis.CompletionInfo next = shell.sourceCodeAnalysis().analyzeCompletion(rest);
                for (SnippetEvent event : shell.eval(next.source())) {
                    assertEquals(Snippet.Status.VALID, event.status(), () -> next.source() + shell.diagnostics(event.snippet()).toList());
                    assertEquals(null, event.exception(), next.source());
                }
                rest = next.remaining();
            }
        } finally {
            System.setOut(before);
        }
        String text = printed.toString(StandardCharsets.UTF_8);
        assertTrue(text.contains("gap"), text);
        assertTrue(text.contains("80 % range") && text.contains("cars of this line"), text);
        assertTrue(text.contains(" % a month") && text.contains("the swap: "), text);
    }

    @Test
    void its_notebook_runs(@TempDir Path folder) throws IOException {
        Path notebook = Files.writeString(folder.resolve("miles.jsh"), blocks("jsh").get(0));
        CommandRun run = CommandRun.of("notebook", notebook.toString(), "--folder", "sample-listings", "--page",
                folder.resolve("pages").toString());
        assertEquals(0, run.code(), run.out() + run.err());
        String page = Files.readString(folder.resolve("pages/miles.html"));
        assertEquals(1 + 6 + 1, page.split("<td class=\"w\">80\u00a0% range", -1).length);
        assertTrue(page.contains("private sold on 2026-08-15, in the currency of the listings"));
    }

    @Test
    void the_least_file_that_works_works(@TempDir Path folder) throws IOException {
        Files.writeString(folder.resolve("listings.csv"), blocks("csv").get(0));
        CommandRun run = CommandRun.of(folder.toString());
        assertEquals(0, run.code(), run.err());
        assertTrue(run.out().contains("4 rows: 4 used"), run.out());
        assertTrue(run.out().contains("no other car of the line 'Velmarch'"), run.out());
        assertTrue(Files.size(folder.resolve("swapworth.html")) > 10_000);
    }

    @Test
    void its_steps_run_on_the_sample(@TempDir Path folder) throws IOException {
        List<String> lines = blocks("sh").stream().flatMap(String::lines).filter(l -> l.startsWith("target/swapworth ")).toList();
        assertTrue(lines.size() >= 9, lines.toString());
        for (String line : lines) {
            List<String> words = new ArrayList<>();
            Matcher word = Pattern.compile("\"([^\"]*)\"|(\\S+)").matcher(line.substring("target/swapworth ".length()));
            while (word.find()) {
                String text = word.group(1) != null ? word.group(1) : word.group(2);
                words.add(text.equals("pages") || text.matches("[a-z]+\\.(csv|html)") ? folder.resolve(text).toString() : text);
            }
            CommandRun run = CommandRun.of(words.toArray(String[]::new));
            assertEquals(0, run.code(), line + run.err());
            assertFalse(run.out().isEmpty());
        }
        assertTrue(Files.exists(folder.resolve("pages/1-is-this-listing-overpriced.html")));
        assertTrue(Files.exists(folder.resolve("pages/index.html")));
        String csv = Files.readString(folder.resolve("judged.csv"));
        assertTrue(csv.startsWith("file,line,id,vehicle,price,fair_value,low_80,high_80,low_95,high_95,gap,gap_percent,percentile,position,"
                + "cars_of_line,cars_in_file,prior_share,level,valued_on,remarks\r\n"), csv.lines().findFirst().orElse(""));
        assertEquals(785, csv.lines().count());
    }
}
