package swapworth.command;

import java.io.FileDescriptor;
import java.io.FileOutputStream;
import java.io.PrintStream;
import java.io.PrintWriter;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import picocli.CommandLine;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Model.OptionSpec;
import picocli.CommandLine.Model.PositionalParamSpec;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.ParseResult;
import swapworth.assumptions.Assumptions;
import swapworth.notebook.Notebooks;

/**
 * The program: {@code swapworth FOLDER} does whatever the folder's files allow; {@code check}, {@code judge}, {@code value},
 * {@code index}, {@code landed}, {@code partout}, {@code swap}, {@code project} and {@code notebook} are single steps. Exit codes: 0 done,
 * 1 nothing usable (or any rejected row with {@code --strict}), 2 wrong usage.
 */
public final class Main {

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
        PrintStream out = new PrintStream(new FileOutputStream(FileDescriptor.out), false, StandardCharsets.UTF_8);
        PrintStream err = new PrintStream(new FileOutputStream(FileDescriptor.err), true, StandardCharsets.UTF_8);
        int code = run(out, err, arguments);
        Optional<Path> rehearsal = QuickStart.rehearsal();
        if (rehearsal.isPresent()) {
            Notebooks.rehearse(rehearsal.get());
        }
        out.flush();
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
        CommandLine line = new CommandLine(named.map(Main::spec).orElseGet(Main::folder));
        line.setOut(new PrintWriter(out, true, StandardCharsets.UTF_8));
        line.setErr(new PrintWriter(err, true, StandardCharsets.UTF_8));
        ParseResult parsed;
        try {
            parsed = line.parseArgs(named.isPresent() ? Arrays.copyOfRange(arguments, 1, arguments.length) : arguments);
        } catch (ParameterException e) {
            err.println(WrongWords.sentence(e, first, named.isPresent()));
            err.println("For help: swapworth " + (named.isPresent() ? first + " " : "") + "--help");
            return Exit.WRONG_USAGE;
        }
        if (parsed.isUsageHelpRequested()) {
            line.usage(out);
            return Exit.DONE;
        }
        if (named.isEmpty()) {
            Optional<String> mistyped = WrongWords.noStep(parsed.matchedPositionalValue(0, ""));
            if (mistyped.isPresent()) {
                err.println(mistyped.get());
                return Exit.WRONG_USAGE;
            }
        }
        return new Steps(out, err).run(named, new Arguments(parsed));
    }

    /** The whole job, for which no step is named. */
    private static CommandSpec folder() {
        CommandSpec root = CommandSpec.create().name("swapworth");
        List<String> footer = new ArrayList<>(List.of("", "Single steps, each with its own --help:"));
        for (Step step : Step.values()) {
            footer.add(step.inHelp());
        }
        root.usageMessage().description("Fair values with honest ranges from car listings that you collected.",
                "FOLDER: does whatever the files of the folder allow, on one page. Without it the working folder is taken, and the"
                        + " sample where that holds no listings.csv, cars.csv or ledger.csv.")
                .footer(footer.toArray(String[]::new));
        folder(root);
        common(root);
        modelling(root);
        return root;
    }

    /** A single step; each is described only when asked for, since describing them all takes time at every start. */
    private static CommandSpec spec(Step step) {
        CommandSpec spec = CommandSpec.create().name("swapworth " + step.word());
        spec.usageMessage().description(step.description());
        switch (step) {
            case CHECK -> {
                files(spec);
                common(spec);
            }
            case JUDGE -> {
                files(spec);
                common(spec);
                modelling(spec);
            }
            case VALUE -> {
                spec.addOption(OptionSpec.builder("--market").paramLabel("LISTINGS").arity("1..*").type(String[].class).required(true)
                        .description("one or several files of listings; of a folder its listings.csv").build());
                spec.addOption(OptionSpec.builder("--subject").paramLabel("CARS").type(String.class).required(true)
                        .description("the file of the cars to value").build());
                common(spec);
                modelling(spec);
            }
            case INDEX -> {
                files(spec);
                spec.addOption(OptionSpec.builder("--base").paramLabel("YYYY-MM").type(String.class)
                        .description("the month whose level is 100; unless stated the first").build());
                spec.addOption(OptionSpec.builder("--line").paramLabel("LINE").type(String.class)
                        .description("one line of the listings; unless stated all together").build());
                common(spec);
                with(spec);
            }
            case LANDED -> {
                folder(spec);
                spec.addOption(OptionSpec.builder("--target").paramLabel("AMOUNT").type(String.class)
                        .description("the most to be paid in all: gives the highest bid for each car").build());
                common(spec);
                modelling(spec);
            }
            case PARTOUT, SWAP -> {
                folder(spec);
                common(spec);
                modelling(spec);
            }
            case PROJECT -> {
                folder(spec);
                common(spec);
                spec.addOption(OptionSpec.builder("--for").paramLabel("READER").type(String.class)
                        .description("the file to hand on: self, buyer, lender, insurer; for others than yourself it holds no equity and "
                                + "nobody's notes, links or numbers").build());
                modelling(spec);
            }
            case NOTEBOOK -> notebook(spec);
        }
        return spec;
    }

    private static void notebook(CommandSpec spec) {
        spec.addPositional(PositionalParamSpec.builder().index("0..*").arity("1..*").paramLabel("FILE").type(String[].class)
                .required(true).description("the notebooks").build());
        help(spec);
        spec.addOption(OptionSpec.builder("--folder").paramLabel("FOLDER").type(String.class)
                .description("the folder of your files, which notebooks read; unless stated the working folder, and the sample where that"
                        + " holds none").build());
        spec.addOption(OptionSpec.builder("--page").paramLabel("DIR").type(String.class)
                .description("the folder into which the pages and their index go; unless stated 'pages' in the folder of your files")
                .build());
        spec.addOption(OptionSpec.builder("--ipynb").arity("0").type(boolean.class)
                .description("writes a file beside each page that Jupyter opens, with the outputs").build());
        spec.addOption(OptionSpec.builder("--limit").paramLabel("SECONDS").type(String.class)
                .description("ends a notebook that runs longer; unless stated 120").build());
    }

    private static void folder(CommandSpec spec) {
        spec.addPositional(PositionalParamSpec.builder().index("0").arity("0..1").paramLabel("FOLDER").type(String.class)
                .description("the folder of your files: listings.csv, and cars.csv, ledger.csv and the others where you have them;"
                        + " unless stated the working folder, and the sample where that holds none").build());
    }

    private static void on(CommandSpec spec, String description) {
        spec.addOption(OptionSpec.builder("--on").paramLabel("DATE").type(String.class).description(description).build());
    }

    private static void files(CommandSpec spec) {
        spec.addPositional(PositionalParamSpec.builder().index("0..*").arity("1..*").paramLabel("LISTINGS").type(String[].class)
                .required(true).description("one or several files of listings, taken together; of a folder its listings.csv").build());
    }

    private static void help(CommandSpec spec) {
        spec.addOption(OptionSpec.builder("-h", "--help").usageHelp(true).description("prints this").build());
    }

    private static void common(CommandSpec spec) {
        help(spec);
        spec.addOption(OptionSpec.builder("--strict").arity("0").type(boolean.class)
                .description("exit 1 when any row of the files read was rejected").build());
        spec.addOption(OptionSpec.builder("--out").paramLabel("FILE.csv").type(String.class)
                .description("writes the rows for machines").build());
        spec.addOption(OptionSpec.builder("--page").paramLabel("FILE.html").type(String.class)
                .description("writes the page for people").build());
    }

    private static void modelling(CommandSpec spec) {
        on(spec, "the valuation day, year-month-day; unless stated each listing's own day, and for cars the last day seen");
        spec.addOption(OptionSpec.builder("--level").paramLabel("LEVEL").type(String.class)
                .description("the level of trade: private asking, trade asking, private sold, trade sold, auction; unless stated"
                        + " each car's own, else private asking").build());
        with(spec);
    }

    private static void with(CommandSpec spec) {
        spec.addOption(OptionSpec.builder("--with").paramLabel("COLUMN,...").splitRegex(",").type(String[].class)
                .description("further columns of the files as terms of the model").build());
    }
}
