package swapworth.command;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.Assumptions.assumeFalse;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.condition.DisabledOnOs;
import org.junit.jupiter.api.condition.EnabledOnOs;
import org.junit.jupiter.api.condition.OS;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import swapworth.notebook.QuickJava;

/** That a run is the same by whichever door it comes: the launchers say to Java what {@code java -jar} says when it starts itself again. */
class LaunchersTest {

    @TempDir
    private Path home;

    private static String launcher(String name) throws IOException {
        return Files.readString(Path.of("src", "main", "launcher", name));
    }

    @ParameterizedTest
    @ValueSource(strings = {"swapworth", "swapworth.cmd"})
    void a_launcher_says_to_java_what_java_jar_says(String name) throws IOException {
        String text = launcher(name);
        List<String> words = new ArrayList<>(QuickJava.words().subList(1, QuickJava.words().size()));
        words.addAll(QuickStart.wordsForFileOf(Long.MAX_VALUE));
        // The archive lies elsewhere, and large pages are lent by Linux alone.
        words.removeIf(word -> word.contains("swapworth.jsa") || word.contains("HugePages"));
        words.forEach(word -> assertTrue(text.contains(word), name + " does not say " + word));
    }

    @ParameterizedTest
    @ValueSource(strings = {"swapworth", "swapworth.cmd"})
    void a_launcher_takes_the_same_files_for_large(String name) throws IOException {
        for (long size : new long[] {30_000_000, 300_000_000}) {
            assertTrue(QuickStart.wordsForFileOf(size + 1).size() > QuickStart.wordsForFileOf(size).size(), "more than " + size + " bytes");
            assertTrue(launcher(name).matches("(?s).*(-gt|GTR) " + size + "\\b.*"), name + " does not ask for " + size + " bytes");
        }
    }

    /** Java under the language "C" takes names of files for plain ASCII; a stand-in for it tells which language it was given. */
    @ParameterizedTest
    @CsvSource({"'', C.UTF-8", "C, C.UTF-8", "POSIX, C.UTF-8", "de_DE.UTF-8, ''", "en_GB.ISO-8859-1, ''"})
    @DisabledOnOs(OS.WINDOWS)
    void names_with_other_letters_are_found_where_no_language_is_set(String lang, String given) throws Exception {
        Path start = standIn("echo \"${LC_ALL:-}\"");
        assertEquals(given, said(0, lang, Map.of("JAVA_HOME", home.toString()), "sh", start.toString()));
    }

    /** Java refuses to start with two collectors of garbage. */
    @ParameterizedTest
    @CsvSource({"'', true", "-Xmx1g, true", "-XX:+UseG1GC, false", "-Xmx1g -XX:+UseParallelGC, false"})
    @DisabledOnOs(OS.WINDOWS)
    void a_collector_that_is_chosen_for_every_java_stands_alone(String always, boolean own) throws Exception {
        Path start = standIn("echo \"$@\"");
        for (String name : List.of("JAVA_TOOL_OPTIONS", "JDK_JAVA_OPTIONS", "_JAVA_OPTIONS")) {
            String said = said(0, "C", Map.of("JAVA_HOME", home.toString(), name, always), "sh", start.toString());
            assertEquals(own, said.contains("-XX:+UseSerialGC"), said);
            assertTrue(launcher("swapworth.cmd").contains("if defined " + name + " set " + name + " | findstr"), name);
        }
    }

    /** A launcher beside a stand-in for Java. */
    private Path standIn(String script) throws IOException {
        Path bin = Files.createDirectories(home.resolve("bin"));
        Path java = Files.writeString(bin.resolve("java"), "#!/bin/sh\n" + script + "\n");
        assertTrue(java.toFile().setExecutable(true));
        Files.writeString(home.resolve("release"), "JAVA_VERSION=\"17.0.1\"\n");
        Files.writeString(home.resolve("swapworth.jar"), "");
        return Files.writeString(home.resolve("swapworth"), launcher("swapworth"));
    }

    @Test
    @EnabledOnOs({OS.LINUX, OS.MAC})
    void what_may_not_be_read_is_left_to_the_program_to_say() throws Exception {
        Path start = standIn("echo it is Java that says so");
        Path file = Files.writeString(home.resolve("listings.csv"), "vehicle\n");
        assertTrue(file.toFile().setReadable(false, false));
        assumeFalse(Files.isReadable(file), "who may read everything cannot try this");
        assertEquals("it is Java that says so", said(0, "C", Map.of("JAVA_HOME", home.toString()), "sh", start.toString(), "judge",
                file.toString()));
    }

    @Test
    @EnabledOnOs({OS.LINUX, OS.MAC})
    void a_folder_that_may_not_be_entered_is_not_said_to_lack_a_file() throws IOException {
        Path shut = Files.createDirectory(home.resolve("shut"));
        Files.writeString(shut.resolve("listings.csv"), "vehicle\n");
        assertTrue(shut.toFile().setExecutable(false, false));
        assumeFalse(Files.isExecutable(shut), "who may enter every folder cannot try this");
        ByteArrayOutputStream err = new ByteArrayOutputStream();
        PrintStream into = new PrintStream(err, true, StandardCharsets.UTF_8);
        assertEquals(1, Main.run(into, into, shut.toString()));
        assertEquals(shut + ": no permission to look into this folder", err.toString(StandardCharsets.UTF_8).strip());
        assertTrue(shut.toFile().setExecutable(true));
    }

    @Test
    @EnabledOnOs(OS.LINUX)
    void text_that_does_not_fit_on_the_disk_is_no_success() throws Exception {
        String java = "\"$0\" -cp \"$1\" \"$2\" --help ";
        String[] words = {"sh", "-c", java + ">/dev/full", Path.of(System.getProperty("java.home"), "bin", "java").toString(),
            System.getProperty("java.class.path"), Main.class.getName()};
        String said = said(1, "C", Map.of(), words);
        assertTrue(said.startsWith("cannot write all of what is shown: ") && !said.contains("\n"), said);
        words[2] = "(sleep 2; " + java + "; echo $? >&2) | true";
        assertEquals("0", said(0, "C", Map.of(), words), "who reads a pipe may have read enough");
    }

    @Test
    @EnabledOnOs(OS.LINUX)
    void without_a_launcher_a_name_with_other_letters_is_refused_with_what_helps() throws Exception {
        // The letters as bytes, whatever the language of the tests.
        String said = said(2, "C", Map.of(), "sh", "-c", "exec \"$0\" -cp \"$1\" \"$2\" \"$(printf 'gr\\303\\266n')\"",
                Path.of(System.getProperty("java.home"), "bin", "java").toString(), System.getProperty("java.class.path"),
                Main.class.getName());
        assertTrue(said.contains("cannot be the name of a file or folder here, where the shell's language has no other letters than ASCII;"
                + " 'export LC_ALL=C.UTF-8'"), said);
    }

    @Test
    void too_little_memory_is_said_in_words() throws Exception {
        List<String> rows = Files.readAllLines(Path.of("sample-listings", "listings.csv"));
        List<String> many = new ArrayList<>(rows);
        for (int again = 0; again < 100; again++) {
            many.addAll(rows.subList(1, rows.size()));
        }
        Path listings = Files.write(home.resolve("many.csv"), many);
        String said = said(1, "C", Map.of("JAVA_TOOL_OPTIONS", ""), Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                "-Xmx24m", "-XX:+UseSerialGC", "-Dswapworth.started=no", "-cp", System.getProperty("java.class.path"),
                Main.class.getName(), "judge", listings.toString(), "--out",
                home.resolve("judged.csv").toString());
        assertTrue(said.contains(" MB here, and that was not enough. JAVA_TOOL_OPTIONS=-Xmx8g asks for 8 GB."), said);
        assertFalse(said.contains("Exception"), said);
    }

    /** What a process says under a language. */
    private static String said(int code, String lang, Map<String, String> environment, String... command) throws Exception {
        ProcessBuilder run = new ProcessBuilder(command).redirectErrorStream(true);
        run.environment().keySet().removeIf(name -> name.startsWith("LC_") || name.equals("LANG"));
        run.environment().putAll(environment);
        run.environment().put("LANG", lang);
        Process process = run.start();
        String said = new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8).strip();
        assertEquals(code, process.waitFor(), said);
        return said;
    }

    @Test
    void a_small_file_needs_nothing_more() {
        assertEquals(List.of(), QuickStart.wordsForFileOf(1_000_000));
    }
}
