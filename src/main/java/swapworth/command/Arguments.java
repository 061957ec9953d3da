package swapworth.command;

import java.math.BigDecimal;
import java.nio.file.Files;
import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.time.Duration;
import java.time.LocalDate;
import java.time.YearMonth;
import java.time.format.DateTimeParseException;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import swapworth.listing.LevelOfTrade;
import swapworth.notebook.Notebooks;
import swapworth.reading.CellReader;
import swapworth.reading.Conventions;
import swapworth.reading.DecimalMark;
import swapworth.reading.FolderSettings;
import swapworth.reading.Parsed;
import swapworth.reading.Spelling;
import swapworth.report.ProjectFile;

/** The words of one step, asked for by what they mean. */
final class Arguments {
    /** Characters of a wrong word that a message repeats. */
    private static final int SHOWN = 60;
    /** What Java puts where the language of the shell has no letter for what was typed. */
    static final char NO_SUCH_LETTER = '\uFFFD';

    private final CommandWords words;

    private final Optional<Path> unlessStated;

    Arguments(CommandWords words) {
        this(words, Optional.empty());
    }

    private Arguments(CommandWords words, Optional<Path> unlessStated) {
        this.words = words;
        this.unlessStated = unlessStated;
    }

    /**
     * Asks for everything that has a form of its own, so that a wrong word is told before any work is done.
     *
     * @throws WrongUsageException that names the first word that makes no sense
     */
    void check() {
        target();
        limit();
        on();
        base();
        level();
        if (reader().isPresent() && out().isPresent()) {
            throw new WrongUsageException("--out: with --for a page is written for its reader and no rows for machines; leave out the one "
                    + "or the other");
        }
    }

    /** The folder of the whole job. */
    Optional<Path> folder() {
        return words.first().map(text -> path("FOLDER", text));
    }

    /** The most to be paid in all. */
    Optional<BigDecimal> target() {
        return words.one("--target").map(text -> text.matches("[^.,]*")
                || !folderMark().equals(Optional.of(DecimalMark.COMMA)) ? amount("--target", text.strip())
                : amountWithComma("--target", text.strip()));
    }

    /** The decimal mark that words.csv of the folder states. */
    private Optional<DecimalMark> folderMark() {
        return folder().or(() -> Inputs.ownFolder(Path.of("."))).filter(Files::isDirectory)
                .flatMap(folder -> FolderSettings.of(folder, Conventions.unstated()).conventions().decimalMark());
    }

    /** An amount where the folder writes a decimal comma; what can only be meant with a decimal point is still read so. */
    private static BigDecimal amountWithComma(String option, String text) {
        if (text.matches("[1-9]\\d{0,2},\\d{3}")) {
            throw new WrongUsageException(option + ": '" + text + "' can be read in two ways, since words.csv states the decimal comma;"
                    + " write " + text.replace(",", "") + " or " + text.substring(0, text.indexOf(',')));
        }
        boolean comma = text.matches("(\\d{1,3}(\\.\\d{3})+|\\d{1,15})(,\\d{1,4})?");
        return amount(option, comma ? text.replace(".", "").replace(',', '.') : text);
    }

    private static BigDecimal amount(String option, String text) {
        // Six, or six thousand with the mark that other countries put there.
        if (text.matches("[1-9]\\d{0,2}\\.\\d{3}")) {
            throw new WrongUsageException(option + ": '" + text + "' can be read in two ways; write " + text.replace(".", "") + " or "
                    + text.substring(0, text.indexOf('.')));
        }
        if (text.matches("\\d{1,3}(\\.\\d{3})+,\\d{1,4}|\\d{1,15},\\d{1,2}")) {
            throw new WrongUsageException(option + ": '" + Spelling.shortened(text, SHOWN) + "' is written with a decimal comma, which no"
                    + " words.csv of the folder states; write " + text.replace(".", "").replace(',', '.')
                    + ", or state it there: *,decimal mark,comma");
        }
        if (!text.matches("(\\d{1,3}(,\\d{3})+|\\d{1,15})(\\.\\d{1,4})?") || new BigDecimal(text.replace(",", "")).signum() == 0) {
            throw new WrongUsageException(option + ": '" + Spelling.shortened(text, SHOWN)
                    + "' is no amount above 0; write it in digits, for instance 6000 or 6,000 or 6000.50");
        }
        return new BigDecimal(text.replace(",", ""));
    }

    /** The files of listings; of a folder it is that of its usual name. */
    List<Path> listings() {
        return inFolders("LISTINGS", words.alone(), "listings.csv");
    }

    /** The cars in play of the folders that stand for their listings. */
    List<Path> carsBeside() {
        return words.alone().stream().map(text -> path("LISTINGS", text).resolve("cars.csv"))
                .filter(Files::isRegularFile).toList();
    }

    List<Path> market() {
        return inFolders("--market", words.all("--market"), "listings.csv");
    }

    Path subject() {
        return inFolders("--subject", words.all("--subject"), "cars.csv").get(0);
    }

    private static List<Path> inFolders(String what, List<String> texts, String name) {
        return texts.stream().map(text -> path(what, text)).map(path -> Files.isDirectory(path) ? path.resolve(name) : path).toList();
    }

    private static Path path(String what, String text) {
        try {
            if (!text.isBlank()) {
                return Path.of(text);
            }
        } catch (InvalidPathException e) {
            throw noName(what, text);
        }
        throw noName(what, text);
    }

    private static WrongUsageException noName(String what, String text) {
        String letters = text.indexOf(NO_SUCH_LETTER) < 0 ? ""
                : " here, where the shell's language has no other letters than ASCII; 'export LC_ALL=C.UTF-8' gives it all of them";
        return new WrongUsageException(what + ": '" + Spelling.shortened(text, SHOWN) + "' cannot be the name of a file or folder"
                + letters);
    }

    Optional<Path> out() {
        return path("--out");
    }

    Optional<Path> page() {
        return path("--page").or(() -> unlessStated);
    }

    /** The same, with a page where none is stated. */
    Arguments onPage(Path page) {
        return new Arguments(words, Optional.of(page));
    }

    private Optional<Path> path(String option) {
        return words.one(option).map(text -> path(option, text));
    }

    List<Path> notebooks() {
        return words.alone().stream().map(text -> path("FILE", text)).toList();
    }

    /** The folder of the user's files that notebooks read. */
    Optional<Path> notebookFolder() {
        return path("--folder");
    }

    Notebooks.Copies copies() {
        return words.has("--ipynb") ? Notebooks.Copies.PAGE_AND_IPYNB : Notebooks.Copies.PAGE;
    }

    /** The longest that a notebook may run. */
    Optional<Duration> limit() {
        if (!words.has("--limit")) {
            return Optional.empty();
        }
        String text = words.one("--limit").orElse("").strip();
        if (!text.matches("[1-9]\\d{0,5}|[1-9]\\d{0,2},\\d{3}")) {
            throw new WrongUsageException("--limit: '" + Spelling.shortened(text, SHOWN)
                    + "' is no time to run; write whole seconds from 1, for instance 300");
        }
        return Optional.of(Duration.ofSeconds(Integer.parseInt(text.replace(",", ""))));
    }

    Strictness strictness() {
        return words.has("--strict") ? Strictness.STRICT : Strictness.LENIENT;
    }

    /** Whether rejected rows are a failure. */
    enum Strictness { STRICT, LENIENT }

    Optional<LocalDate> on() {
        String text = words.one("--on").orElse("");
        if (text.isEmpty()) {
            return Optional.empty();
        }
        try {
            LocalDate day = LocalDate.parse(text);
            if (new CellReader(Conventions.unstated(), ',').date(text) instanceof Parsed.Refused<LocalDate> no) {
                throw new WrongUsageException("--on: " + text + ": " + no.message());
            }
            return Optional.of(day);
        } catch (DateTimeParseException e) {
            throw new WrongUsageException("--on: '" + text + "' is no date; write it as year-month-day, for instance 2026-03-31");
        }
    }

    /** The month whose level is 100. */
    Optional<YearMonth> base() {
        String text = words.one("--base").orElse("");
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
        return words.one("--line");
    }

    Optional<LevelOfTrade> level() {
        String text = words.one("--level").orElse("").strip().toLowerCase(Locale.ROOT).replace('-', ' ').replace('_', ' ');
        if (text.isEmpty()) {
            return Optional.empty();
        }
        return Optional.of(Arrays.stream(LevelOfTrade.values()).filter(l -> l.words().equals(text)).findFirst()
                .orElseThrow(() -> new WrongUsageException("--level: '" + text + "' is no level of trade; there are "
                        + String.join(", ", Arrays.stream(LevelOfTrade.values()).map(LevelOfTrade::words).toList()))));
    }

    /** Who is to read the file on the finished car. */
    Optional<ProjectFile.Reader> reader() {
        String text = words.one("--for").orElse("").strip().toUpperCase(Locale.ROOT);
        if (text.isEmpty()) {
            return Optional.empty();
        }
        return Optional.of(Arrays.stream(ProjectFile.Reader.values()).filter(r -> r.name().equals(text)).findFirst()
                .orElseThrow(() -> new WrongUsageException("--for: there is no such reader; there are self, buyer, lender, insurer")));
    }

    List<String> with() {
        return words.all("--with").stream().flatMap(list -> Arrays.stream(list.split(","))).map(c -> c.strip().toLowerCase(Locale.ROOT))
                .filter(c -> !c.isEmpty()).toList();
    }
}
