package swapworth.command;

import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.OptionalInt;
import picocli.CommandLine;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Model.OptionSpec;
import picocli.CommandLine.Model.PositionalParamSpec;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.ParseResult;
import swapworth.assumptions.Assumptions;

/**
 * The program: {@code swapworth FOLDER} does whatever the folder's files allow; {@code check}, {@code judge} and {@code value} are
 * single steps. Exit codes: 0 done, 1 nothing usable (or any rejected row with {@code --strict}), 2 wrong usage.
 */
public final class Main {
    private static final int WRONG_USAGE = 2;

    private Main() {
    }

    /**
     * Runs the program and ends the process with its exit code.
     *
     * @param arguments the words of the command line
     */
    public static void main(String[] arguments) {
        System.setProperty("java.awt.headless", "true");
        OptionalInt elsewhere = QuickStart.again(arguments);
        if (elsewhere.isPresent()) {
            System.exit(elsewhere.getAsInt());
        }
        // What every step needs is loaded while the words of the command line are read.
        Thread early = new Thread(Assumptions::defaults, "assumptions");
        early.setDaemon(true);
        early.start();
        PrintStream out = new PrintStream(new java.io.FileOutputStream(java.io.FileDescriptor.out), false, StandardCharsets.UTF_8);
        PrintStream err = new PrintStream(new java.io.FileOutputStream(java.io.FileDescriptor.err), true, StandardCharsets.UTF_8);
        int code = run(out, err, arguments);
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
        CommandLine line = commandLine();
        line.setOut(new java.io.PrintWriter(out, true, StandardCharsets.UTF_8));
        line.setErr(new java.io.PrintWriter(err, true, StandardCharsets.UTF_8));
        ParseResult parsed;
        try {
            parsed = line.parseArgs(arguments);
        } catch (ParameterException e) {
            err.println(e.getMessage());
            err.println("For help: swapworth --help");
            return WRONG_USAGE;
        }
        Integer help = CommandLine.executeHelpRequest(parsed);
        if (help != null) {
            return help;
        }
        ParseResult step = parsed.hasSubcommand() ? parsed.subcommand() : parsed;
        return new Steps(out, err).run(parsed.hasSubcommand() ? step.commandSpec().name() : "folder", new Arguments(step));
    }

    private static CommandLine commandLine() {
        CommandSpec root = CommandSpec.create().name("swapworth");
        root.usageMessage().description("Fair values with honest ranges from car listings that you collected.",
                "FOLDER: does whatever the files of the folder allow, on one page. Without it the sample folder is taken.");
        root.addPositional(PositionalParamSpec.builder().index("0").arity("0..1").paramLabel("FOLDER").type(Path.class)
                .description("a folder with listings.csv, and cars.csv where you have one").build());
        common(root);
        modelling(root);
        CommandSpec check = step("check", "Says what was understood of listing files, and what was not.");
        files(check);
        common(check);
        CommandSpec judge = step("judge", "Judges every listing, its own car left out.");
        files(judge);
        common(judge);
        modelling(judge);
        CommandSpec value = step("value", "Values cars by listings: --market LISTINGS --subject CARS.");
        value.addOption(OptionSpec.builder("--market").paramLabel("LISTINGS").arity("1..*").type(Path[].class).required(true)
                .description("one or several files of listings").build());
        value.addOption(OptionSpec.builder("--subject").paramLabel("CARS").type(Path.class).required(true)
                .description("the file of the cars to value").build());
        common(value);
        modelling(value);
        CommandLine line = new CommandLine(root);
        for (CommandSpec spec : new CommandSpec[] {check, judge, value}) {
            line.addSubcommand(spec.name(), new CommandLine(spec));
        }
        return line;
    }

    private static CommandSpec step(String name, String description) {
        CommandSpec spec = CommandSpec.create().name(name);
        spec.usageMessage().description(description);
        return spec;
    }

    private static void files(CommandSpec spec) {
        spec.addPositional(PositionalParamSpec.builder().index("0..*").arity("1..*").paramLabel("LISTINGS").type(Path[].class)
                .required(true).description("one or several files of listings, taken together").build());
    }

    private static void common(CommandSpec spec) {
        spec.addOption(OptionSpec.builder("-h", "--help").usageHelp(true).description("prints this").build());
        spec.addOption(OptionSpec.builder("--strict").type(boolean.class).description("exit 1 when any row was rejected").build());
        spec.addOption(OptionSpec.builder("--out").paramLabel("FILE.csv").type(Path.class)
                .description("writes the rows for machines").build());
        spec.addOption(OptionSpec.builder("--page").paramLabel("FILE.html").type(Path.class)
                .description("writes the page for people").build());
    }

    private static void modelling(CommandSpec spec) {
        spec.addOption(OptionSpec.builder("--on").paramLabel("DATE").type(String.class)
                .description("the valuation day, year-month-day; unless stated each listing's own day, and for cars the last day seen")
                .build());
        spec.addOption(OptionSpec.builder("--level").paramLabel("LEVEL").type(String.class)
                .description("the level of trade: private asking, trade asking, private sold, trade sold, auction; unless stated"
                        + " each car's own, else private asking").build());
        spec.addOption(OptionSpec.builder("--with").paramLabel("COLUMN,...").splitRegex(",").type(String[].class)
                .description("further columns of the files as terms of the model").build());
    }
}
