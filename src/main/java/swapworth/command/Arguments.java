package swapworth.command;

import java.math.BigDecimal;
import java.nio.file.Path;
import java.time.Duration;
import java.time.LocalDate;
import java.time.YearMonth;
import java.time.format.DateTimeParseException;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import picocli.CommandLine.ParseResult;
import swapworth.listing.LevelOfTrade;
import swapworth.notebook.Notebooks;
import swapworth.report.ProjectFile;

/** The words of one step, asked for by what they mean. */
final class Arguments {
    private final ParseResult parsed;

    private final Optional<Path> unlessStated;

    Arguments(ParseResult parsed) {
        this(parsed, Optional.empty());
    }

    private Arguments(ParseResult parsed, Optional<Path> unlessStated) {
        this.parsed = parsed;
        this.unlessStated = unlessStated;
    }

    /** The folder of the whole job. */
    Optional<Path> folder() {
        return Optional.ofNullable(parsed.matchedPositionalValue(0, (Path) null));
    }

    /** The most to be paid in all. */
    Optional<BigDecimal> target() {
        return Optional.ofNullable(parsed.matchedOptionValue("--target", (BigDecimal) null));
    }

    List<Path> listings() {
        return List.of(parsed.matchedPositionalValue(0, new Path[0]));
    }

    List<Path> market() {
        return List.of(parsed.matchedOptionValue("--market", new Path[0]));
    }

    Path subject() {
        return parsed.matchedOptionValue("--subject", Path.of(""));
    }

    Optional<Path> out() {
        return path("--out");
    }

    Optional<Path> page() {
        return path("--page").or(() -> unlessStated);
    }

    /** The same, with a page where none is stated. */
    Arguments onPage(Path page) {
        return new Arguments(parsed, Optional.of(page));
    }

    private Optional<Path> path(String option) {
        return Optional.ofNullable(parsed.matchedOptionValue(option, (Path) null));
    }

    List<Path> notebooks() {
        return listings();
    }

    /** The folder of the user's files that notebooks read. */
    Optional<Path> notebookFolder() {
        return path("--folder");
    }

    Notebooks.Copies copies() {
        return parsed.hasMatchedOption("--ipynb") ? Notebooks.Copies.PAGE_AND_IPYNB : Notebooks.Copies.PAGE;
    }

    /** The longest that a notebook may run. */
    Optional<Duration> limit() {
        if (!parsed.hasMatchedOption("--limit")) {
            return Optional.empty();
        }
        int seconds = parsed.matchedOptionValue("--limit", 0);
        if (seconds < 1) {
            throw new WrongUsageException("--limit: " + seconds + " leaves no time; write whole seconds, for instance 300");
        }
        return Optional.of(Duration.ofSeconds(seconds));
    }

    Strictness strictness() {
        return parsed.hasMatchedOption("--strict") ? Strictness.STRICT : Strictness.LENIENT;
    }

    /** Whether rejected rows are a failure. */
    enum Strictness { STRICT, LENIENT }

    Optional<LocalDate> on() {
        String text = parsed.matchedOptionValue("--on", "");
        if (text.isEmpty()) {
            return Optional.empty();
        }
        try {
            return Optional.of(LocalDate.parse(text));
        } catch (DateTimeParseException e) {
            throw new WrongUsageException("--on: '" + text + "' is no date; write it as year-month-day, for instance 2026-03-31");
        }
    }

    /** The month whose level is 100. */
    Optional<YearMonth> base() {
        String text = parsed.matchedOptionValue("--base", "");
        if (text.isEmpty()) {
            return Optional.empty();
        }
        try {
            return Optional.of(YearMonth.parse(text));
        } catch (DateTimeParseException e) {
            throw new WrongUsageException("--base: '" + text + "' is no month; write it as year-month, for instance 2026-03");
        }
    }

    /** The one line that is asked about. */
    Optional<String> line() {
        return Optional.ofNullable(parsed.matchedOptionValue("--line", (String) null));
    }

    Optional<LevelOfTrade> level() {
        String text = parsed.matchedOptionValue("--level", "").strip().toLowerCase(Locale.ROOT).replace('-', ' ').replace('_', ' ');
        if (text.isEmpty()) {
            return Optional.empty();
        }
        return Optional.of(Arrays.stream(LevelOfTrade.values()).filter(l -> l.words().equals(text)).findFirst()
                .orElseThrow(() -> new WrongUsageException("--level: '" + text + "' is no level of trade; there are "
                        + String.join(", ", Arrays.stream(LevelOfTrade.values()).map(LevelOfTrade::words).toList()))));
    }

    /** Who is to read the file on the finished car. */
    Optional<ProjectFile.Reader> reader() {
        String text = parsed.matchedOptionValue("--for", "").strip().toUpperCase(Locale.ROOT);
        if (text.isEmpty()) {
            return Optional.empty();
        }
        return Optional.of(Arrays.stream(ProjectFile.Reader.values()).filter(r -> r.name().equals(text)).findFirst()
                .orElseThrow(() -> new WrongUsageException("--for: there is no such reader; there are self, buyer, lender, insurer")));
    }

    List<String> with() {
        return Arrays.stream(parsed.matchedOptionValue("--with", new String[0])).map(c -> c.strip().toLowerCase(Locale.ROOT))
                .filter(c -> !c.isEmpty()).toList();
    }
}
