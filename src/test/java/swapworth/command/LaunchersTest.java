package swapworth.command;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import swapworth.notebook.QuickJava;

/** That a run is the same by whichever door it comes: the launchers say to Java what {@code java -jar} says when it starts itself again. */
class LaunchersTest {

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

    @Test
    void a_small_file_needs_nothing_more() {
        assertEquals(List.of(), QuickStart.wordsForFileOf(1_000_000));
    }
}
