package swapworth.notebook;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.Optional;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.condition.EnabledOnOs;
import org.junit.jupiter.api.condition.OS;

class QuickJavaTest {

    @Test
    void a_collector_that_is_chosen_for_every_java_stands_alone() {
        assertTrue(QuickJava.words("").contains("-XX:+UseSerialGC"));
        assertTrue(QuickJava.words("-Xmx1g -XX:+UseTransparentHugePages -XX:-UseG1GC").contains("-XX:+UseSerialGC"));
        for (String always : new String[] {"-XX:+UseG1GC", "-Xmx1g -XX:+UseZGC -Dx=y", " -XX:+UseParallelGC "}) {
            assertFalse(QuickJava.words(always).contains("-XX:+UseSerialGC"), always);
        }
    }

    @Test
    @EnabledOnOs({OS.LINUX, OS.MAC})
    void what_was_started_ends_with_who_started_it() throws Exception {
        Process early = new ProcessBuilder(Path.of(System.getProperty("java.home"), "bin", "java").toString(), "-cp",
                System.getProperty("java.class.path"), LeavesEarly.class.getName()).start();
        String said = new String(early.getInputStream().readAllBytes(), StandardCharsets.UTF_8).strip();
        assertEquals(0, early.waitFor());
        Optional<ProcessHandle> left = ProcessHandle.of(Long.parseLong(said));
        if (left.isPresent()) {
            left.get().onExit().get(20, TimeUnit.SECONDS);
        }
    }
}
