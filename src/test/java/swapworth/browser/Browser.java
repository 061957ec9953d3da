package swapworth.browser;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.logging.Level;
import java.util.logging.Logger;
import java.util.stream.Stream;
import org.openqa.selenium.chrome.ChromeDriver;
import org.openqa.selenium.chrome.ChromeDriverService;
import org.openqa.selenium.chrome.ChromeOptions;
import org.openqa.selenium.logging.LogEntry;
import org.openqa.selenium.logging.LogType;
import org.openqa.selenium.logging.LoggingPreferences;

/** A browser without a window, for looking at our pages as a reader would. */
final class Browser implements AutoCloseable {

    private static final List<String> PLACES = List.of("/usr/bin", "/usr/local/bin", "/snap/bin");
    private static final List<String> QUIET = List.of("--headless=new", "--no-sandbox", "--disable-gpu", "--disable-quic", "--no-first-run",
            "--disable-background-networking", "--disable-component-update", "--disable-sync", "--disable-dev-shm-usage",
            "--hide-scrollbars");

    private static final Logger TALK = Logger.getLogger("org.openqa.selenium");

    private final ChromeDriver driver;

    private Browser(Path chromium, Path chromedriver) {
        // It tells of every version of the browser that it does not know yet; nothing here needs its own part of the protocol.
        TALK.setLevel(Level.SEVERE);
        ChromeOptions options = new ChromeOptions();
        options.setBinary(chromium.toFile());
        options.addArguments(QUIET);
        LoggingPreferences logs = new LoggingPreferences();
        logs.enable(LogType.BROWSER, Level.ALL);
        logs.enable(LogType.PERFORMANCE, Level.ALL);
        options.setCapability("goog:loggingPrefs", logs);
        driver = new ChromeDriver(new ChromeDriverService.Builder().usingDriverExecutable(chromedriver.toFile()).build(), options);
    }

    /** The browser of this machine; nothing where it or its driver is missing. */
    static Optional<Browser> open() {
        Optional<Path> chromium = find("chromium").or(() -> find("google-chrome")).or(() -> find("chrome"));
        Optional<Path> chromedriver = find("chromedriver");
        return chromium.isPresent() && chromedriver.isPresent() ? Optional.of(new Browser(chromium.get(), chromedriver.get()))
                : Optional.empty();
    }

    private static Optional<Path> find(String program) {
        String path = System.getenv().getOrDefault("PATH", "");
        return Stream.concat(Stream.of(path.split(java.io.File.pathSeparator)), PLACES.stream())
                .map(folder -> Path.of(folder, program)).filter(Files::isExecutable).findFirst();
    }

    /** Opens a page at a width, light or dark, and forgets what was logged before. */
    void show(Path page, int width, String scheme) {
        complaints();
        driver.manage().logs().get(LogType.PERFORMANCE);
        driver.executeCdpCommand("Emulation.setDeviceMetricsOverride", Map.of("width", width, "height", 900, "deviceScaleFactor", 1,
                "mobile", false));
        driver.executeCdpCommand("Emulation.setEmulatedMedia", Map.of("media", "screen", "features",
                List.of(Map.of("name", "prefers-color-scheme", "value", scheme))));
        driver.get(page.toAbsolutePath().toUri().toString());
    }

    /** Opens a page as it is laid out for paper of a width. */
    void print(Path page, int width) {
        show(page, width, "light");
        driver.executeCdpCommand("Emulation.setEmulatedMedia", Map.of("media", "print"));
    }

    /** The answer of a piece of script in the page. */
    @SuppressWarnings("unchecked")
    <T> T ask(String script) {
        return (T) java.util.Objects.requireNonNull(driver.executeScript(script), script);
    }

    /** What the page complained of since the last call. */
    List<String> complaints() {
        return driver.manage().logs().get(LogType.BROWSER).getAll().stream().map(LogEntry::getMessage).toList();
    }

    /** Everything that was asked of anywhere but the page's own file since the last call. */
    List<String> outsideRequests(Path page) {
        String own = page.toAbsolutePath().toUri().toString();
        return driver.manage().logs().get(LogType.PERFORMANCE).getAll().stream().map(LogEntry::getMessage)
                .filter(entry -> entry.contains("\"Network.requestWillBeSent\"")).map(Browser::url)
                .filter(url -> !url.equals(own) && !url.startsWith("data:")).toList();
    }

    private static String url(String entry) {
        String request = entry.substring(entry.indexOf("\"request\":"));
        int from = request.indexOf("\"url\":\"") + 7;
        return request.substring(from, request.indexOf('"', from));
    }

    @Override
    public void close() {
        driver.quit();
    }
}
