package swapworth.notebook;

import java.io.IOException;
import java.net.URISyntaxException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/**
 * How another Java is started with the settings that suit short runs: most are over before the second compiler tier pays for itself,
 * and the archive of loaded classes beside the jar saves reading them one by one.
 */
public final class QuickJava {

    private static final Pattern COLLECTOR = Pattern.compile("-XX:\\+Use\\w*GC\\b");

    private QuickJava() {
    }

    /**
     * Starts another Java, which ends when this one is told to end.
     *
     * @param how what to start
     * @return the process
     * @throws IOException if it cannot be started
     */
    public static Process started(ProcessBuilder how) throws IOException {
        Process process = how.start();
        Runtime.getRuntime().addShutdownHook(new Thread(process::destroy, "ends what was started"));
        return process;
    }

    /**
     * The jar that this program was started from.
     *
     * @return empty where it runs from folders of classes
     */
    public static Optional<Path> jar() {
        try {
            Path code = Path.of(QuickJava.class.getProtectionDomain().getCodeSource().getLocation().toURI());
            return Files.isRegularFile(code) ? Optional.of(code) : Optional.empty();
        } catch (URISyntaxException e) {
            return Optional.empty();
        }
    }

    /**
     * The archive of loaded classes beside the jar.
     *
     * @return empty where there is none
     */
    public static Optional<Path> archive() {
        return jar().map(j -> j.resolveSibling("swapworth.jsa")).filter(Files::isRegularFile);
    }

    /**
     * The first words of the command: the same Java as this one, and its settings.
     *
     * @return words, to which the class path or the jar is to be added
     */
    public static List<String> words() {
        return words(Stream.of("JDK_JAVA_OPTIONS", "JAVA_TOOL_OPTIONS", "_JAVA_OPTIONS").map(System::getenv).filter(Objects::nonNull)
                .collect(Collectors.joining(" ")));
    }

    /**
     * The same where something is said to every Java: two collectors of garbage are refused, so that one that is chosen there stands.
     *
     * @param always what the machine says to every Java
     * @return words, to which the class path or the jar is to be added
     */
    static List<String> words(String always) {
        List<String> words = new ArrayList<>(List.of(Path.of(System.getProperty("java.home"), "bin", "java").toString()));
        archive().ifPresent(a -> words.addAll(List.of("-Xlog:disable", "-Xshare:auto", "-XX:SharedArchiveFile=" + a,
                "-XX:+UnlockDiagnosticVMOptions", "-XX:ArchiveRelocationMode=0")));
        words.addAll(List.of("-XX:TieredStopAtLevel=1", "-XX:Tier3BackEdgeThreshold=5000", "-Xmn64m"));
        if (!COLLECTOR.matcher(always).find()) {
            words.add("-XX:+UseSerialGC");
        }
        words.add("-Djava.awt.headless=true");
        if (lendsLargePages()) {
            words.add("-XX:+UseTransparentHugePages");
        }
        return words;
    }

    /** Whether this is a Linux that gives large pages to programs that ask for them: Java knows the flag nowhere else. */
    private static boolean lendsLargePages() {
        Path lent = Path.of("/sys/kernel/mm/transparent_hugepage/enabled");
        try {
            return Files.isReadable(lent) && !Files.readString(lent).contains("[never]");
        } catch (IOException e) {
            return false;
        }
    }
}
