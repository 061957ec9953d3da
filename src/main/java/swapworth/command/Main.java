package swapworth.command;

import java.io.FileDescriptor;
import java.io.FileOutputStream;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.stream.Stream;
import org.apache.commons.cli.ParseException;
import swapworth.assumptions.Assumptions;
import swapworth.command.Usage.Alone;
import swapworth.command.Usage.Many;
import swapworth.command.Usage.Named;
import swapworth.command.Usage.Need;
import swapworth.command.Usage.Takes;

/**
 * The program: {@code swapworth FOLDER} does whatever the folder's files allow; {@code check}, {@code judge}, {@code value},
 * {@code index}, {@code landed}, {@code partout}, {@code swap}, {@code project} and {@code notebook} are single steps. Exit codes: 0 done,
 * 1 nothing usable (or any rejected row with {@code --strict}), 2 wrong usage.
 */
public final class Main {
    private static final Alone LISTINGS = new Alone("LISTINGS", Many.AT_LEAST_ONE,
            "one or several files of listings, taken together; of a folder its listings.csv");
    private static final Alone FOLDER = new Alone("FOLDER", Many.AT_MOST_ONE, "the folder of your files: listings.csv, and cars.csv,"
            + " ledger.csv and the others where you have them; unless stated the working folder, and the sample where that holds none");
    private static final List<Named> COMMON = List.of(
            option("--page", "FILE.html", "writes the page for people"),
            option("--out", "FILE.csv", "writes the rows for machines"),
            flag("--strict", "exit 1 when any row of the files read was rejected"));
    private static final Named WITH = new Named("--with", "COLUMN,...", Takes.A_LIST, Need.NONE,
            "further columns of the files as terms of the model");
    private static final List<Named> MODELLING = joined(COMMON, List.of(
            option("--on", "DATE", "the valuation day, year-month-day; unless stated each listing's own day, and for cars the last day"
                    + " seen"),
            option("--level", "LEVEL", "the level of trade: private asking, trade asking, private sold, trade sold, auction; unless"
                    + " stated each car's own, else private asking"),
            WITH));

    private Main() {
    }

    /**
     * Runs the program and ends the process with its exit code.
     *
     * @param arguments the words of the command line
     */
    public static void main(String[] arguments) {
        System.setProperty("java.awt.headless", "true");
        boolean notebooks = arguments.length > 0 && Step.named(arguments[0]).equals(Optional.of(Step.NOTEBOOK));
        // Notebooks are run by a second Java anyway.
        OptionalInt elsewhere = notebooks ? OptionalInt.empty() : QuickStart.again(arguments);
        if (elsewhere.isPresent()) {
            System.exit(elsewhere.getAsInt());
        }
        // What every step needs is loaded while the words of the command line are read.
        if (!notebooks) {
            Thread early = new Thread(Assumptions::defaults, "assumptions");
            early.setDaemon(true);
            early.start();
        }
        ShownText shown = new ShownText(FileDescriptor.out);
        PrintStream out = new PrintStream(shown, false, StandardCharsets.UTF_8);
        PrintStream err = new PrintStream(new FileOutputStream(FileDescriptor.err), true, StandardCharsets.UTF_8);
        int code = run(out, err, arguments);
        out.flush();
        Optional<String> lost = shown.lost();
        if (lost.isPresent()) {
            err.println(lost.get());
            code = Math.max(code, Exit.NOTHING_USABLE);
        }
        // AWT and the pool of helpers need not wind down for a finished page.
        System.exit(code);
    }

    /**
     * Runs the program.
     *
     * @param out where results go
     * @param err where complaints go
     * @param arguments the words of the command line
     * @return the exit code
     */
    public static int run(PrintStream out, PrintStream err, String... arguments) {
        String first = arguments.length == 0 ? "" : arguments[0];
        Optional<Step> named = Step.named(first);
        Usage usage = named.map(Main::usage).orElseGet(Main::folder);
        CommandWords words;
        try {
            words = usage.toldApart(named.isPresent() ? Arrays.copyOfRange(arguments, 1, arguments.length) : arguments);
        } catch (ParseException e) {
            return wrong(err, named, WrongWords.sentence(e, usage));
        }
        if (words.has(Usage.HELP)) {
            out.print(usage.help() + (named.isPresent() ? "" : Step.help()));
            return Exit.DONE;
        }
        Optional<String> wrong = WrongWords.of(usage, words, first, named.isPresent());
        if (wrong.isPresent()) {
            return wrong(err, named, wrong.get());
        }
        if (named.isEmpty()) {
            Optional<String> mistyped = words.first().flatMap(WrongWords::noStep);
            if (mistyped.isPresent()) {
                err.println(mistyped.get());
                return Exit.WRONG_USAGE;
            }
        }
        try {
            return new Steps(out, err).run(named, new Arguments(words));
        } catch (RuntimeException | OutOfMemoryError e) {
            // Work beside the main thread hands on what it met with.
            if (Stream.<Throwable>iterate(e, Objects::nonNull, Throwable::getCause).noneMatch(OutOfMemoryError.class::isInstance)) {
                throw e;
            }
            err.println("Java has room for " + Runtime.getRuntime().maxMemory() / 1_000_000 + " MB here, and that was not enough."
                    + " JAVA_TOOL_OPTIONS=-Xmx8g asks for 8 GB.");
            return Exit.NOTHING_USABLE;
        }
    }

    private static int wrong(PrintStream err, Optional<Step> step, String sentence) {
        err.println(sentence);
        err.println("For help: swapworth " + step.map(s -> s.word() + " ").orElse("") + Usage.HELP);
        return Exit.WRONG_USAGE;
    }

    /** The whole job, for which no step is named. */
    private static Usage folder() {
        return new Usage("swapworth", List.of("Fair values with honest ranges from car listings that you collected.",
                "Does whatever the files of the folder allow, on one page. Without a folder the working folder is taken, and the sample"
                        + " where that holds no listings.csv, cars.csv or ledger.csv."), FOLDER, MODELLING);
    }

    private static Usage usage(Step step) {
        return new Usage("swapworth " + step.word(), List.of(step.description()), switch (step) {
            case CHECK, JUDGE, INDEX -> LISTINGS;
            case VALUE -> new Alone("", Many.NONE, "");
            case LANDED, PARTOUT, SWAP, PROJECT -> FOLDER;
            case NOTEBOOK -> new Alone("FILE", Many.AT_LEAST_ONE, "the notebooks");
        }, switch (step) {
            case CHECK -> COMMON;
            case JUDGE, PARTOUT, SWAP -> MODELLING;
            case VALUE -> joined(List.of(
                    new Named("--market", "LISTINGS...", Takes.WORDS, Need.NEEDED,
                            "one or several files of listings; of a folder its listings.csv"),
                    new Named("--subject", "CARS", Takes.A_WORD, Need.NEEDED, "the file of the cars to value")), MODELLING);
            case INDEX -> joined(List.of(
                    option("--base", "YYYY-MM", "the month whose level is 100; unless stated the first"),
                    option("--line", "LINE", "one line of the listings; unless stated all together")), joined(COMMON, List.of(WITH)));
            case LANDED -> joined(List.of(option("--target", "AMOUNT",
                    "the most to be paid in all: gives the highest bid for each car")), MODELLING);
            case PROJECT -> joined(List.of(option("--for", "READER", "the file to hand on: self, buyer, lender, insurer; for others than"
                    + " yourself it holds no equity and nobody's notes, links or numbers")), MODELLING);
            case NOTEBOOK -> List.of(
                    option("--folder", "FOLDER", "the folder of your files, which notebooks read; unless stated the working folder, and"
                            + " the sample where that holds none"),
                    option("--page", "DIR", "the folder into which the pages and their index go; unless stated 'pages' in the folder of"
                            + " your files"),
                    flag("--ipynb", "writes a file beside each page that Jupyter opens, with the outputs"),
                    option("--limit", "SECONDS", "ends a notebook that runs longer; unless stated 120"));
        });
    }

    private static Named flag(String name, String description) {
        return new Named(name, "", Takes.NOTHING, Need.NONE, description);
    }

    private static Named option(String name, String label, String description) {
        return new Named(name, label, Takes.A_WORD, Need.NONE, description);
    }

    private static List<Named> joined(List<Named> some, List<Named> others) {
        return Stream.concat(some.stream(), others.stream()).toList();
    }
}
