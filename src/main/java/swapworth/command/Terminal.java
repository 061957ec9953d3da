package swapworth.command;

import java.io.IOException;
import java.io.PrintStream;
import java.nio.file.Path;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import swapworth.assumptions.Assumptions;
import swapworth.listing.CarsFile;
import swapworth.listing.ListingsRead;
import swapworth.listing.UnmatchedWord;
import swapworth.market.Answer;
import swapworth.market.FitStudy;
import swapworth.market.Judged;
import swapworth.market.ModelTables;
import swapworth.market.PriceModel;
import swapworth.project.Gates;
import swapworth.reading.FolderSettings;
import swapworth.reading.OutputFile;
import swapworth.reading.RowProblem;
import swapworth.reading.RowsRead;
import swapworth.report.Page;
import swapworth.swap.Swaps;
import swapworth.table.Table;
import swapworth.table.TextLines;

/** What a run tells of the files that it reads and writes, each row once. */
final class Terminal {
    /** More rows than this fill a terminal to no use. */
    private static final int TOO_MANY_TO_SHOW = 5_000;
    /** Words of listings that were not understood are listed by 'check'; the other steps show so many. */
    private static final int WORDS_SHOWN = 3;
    /** So many problems of a kind are told of a file; the page and 'check' have the others. */
    private static final int PROBLEMS_SHOWN = 20;
    /** So many are told where no row could be used. */
    private static final int FIRST_FEW = 5;

    /** The files that speak for all of a folder: an odd row of theirs moves many figures. */
    private static final Set<String> SETTINGS = Set.of("words.csv", "rates.csv", "lines.csv");

    private static final Map<RowProblem.Kind, String> WORDS_OF = Map.of(RowProblem.Kind.REJECTED, "rejected", RowProblem.Kind.SET_ASIDE,
            "set aside", RowProblem.Kind.QUESTION, "question", RowProblem.Kind.ODD, "to look at");

    private final PrintStream out;
    private final PrintStream err;
    private final Accounts accounts = new Accounts();
    /** What was printed of the rows, so that nothing is told twice. */
    private final Set<String> printed = new HashSet<>();

    Terminal(PrintStream out, PrintStream err) {
        this.out = out;
        this.err = err;
    }

    /** Where results go. */
    PrintStream out() {
        return out;
    }

    /** Where goes what kept a step from its work. */
    PrintStream err() {
        return err;
    }

    /** How many rows were rejected of all files that were told of, by file; empty for none. */
    String rejected() {
        return accounts.sentence();
    }

    /** Whether so many rows fill a terminal to no use. */
    static boolean areTooMany(int rows) {
        return rows > TOO_MANY_TO_SHOW;
    }

    static String tooMany(int rows) {
        return rows + " rows are too many to show: --out FILE.csv writes them, --page FILE.html shows them.";
    }

    /** A table, up to as many rows as anybody reads. */
    void printRows(Table table) {
        int rows = table.rows().size();
        out.print(areTooMany(rows) ? tooMany(rows) + "\n" : table.text());
    }

    static String counted(ListingsRead read) {
        int cars = read.cars().size();
        return read.counts().sentence() + "; " + cars + (cars == 1 ? " car" : " cars");
    }

    /** Counts what was rejected of listings, for a step that tells it in its own way. */
    void count(ListingsRead read) {
        accounts.add(read.rejected());
        accounts.add(read.oddities());
    }

    /** The same of the rows of another file. */
    void count(RowsRead rows) {
        accounts.add(rows.problems());
    }

    /** What became of the rows of listings, and of the files that speak for all of their folder. */
    void account(ListingsRead read) {
        count(read);
        out.println(counted(read));
        read.notes().forEach(n -> out.print(TextLines.of("  ", n)));
        printProblems("rejected", read.rejected());
        printProblems("rejected", read.oddities().stream().filter(p -> p.kind() == RowProblem.Kind.REJECTED).toList());
        printProblems("set aside", read.setAside());
        printProblems("set aside", read.oddities().stream().filter(p -> p.kind() == RowProblem.Kind.SET_ASIDE).toList());
        printProblems("to look at", read.oddities().stream().filter(p -> p.kind() == RowProblem.Kind.ODD && SETTINGS.contains(p.file()))
                .toList());
        printProblems("question", read.questions());
        printUnusedCells(read);
        printUnmatched(read);
    }

    /** Cells of listings that are not used, though their rows are: how many, and the first. */
    private void printUnusedCells(ListingsRead read) {
        List<RowProblem> cells = read.oddities().stream().filter(p -> p.message().endsWith(RowProblem.NOT_USED)
                && !SETTINGS.contains(p.file())).toList();
        printProblems("to look at", cells.subList(0, Math.min(1, cells.size())));
        if (cells.size() > 1) {
            out.println("  to look at: " + (cells.size() - 1) + " more cells that are not used; the page and 'check' list them");
        }
    }

    /** What could not be used of the files that speak for all of a folder. */
    void account(FolderSettings settings) {
        accounts.add(settings.problems());
        printProblems("rejected", settings.problems().stream().filter(p -> p.kind() == RowProblem.Kind.REJECTED).toList());
        printProblems("to look at", settings.problems().stream().filter(p -> p.kind() != RowProblem.Kind.REJECTED).toList());
    }

    /** The words of listings that were not understood: how many, and the first few. */
    private void printUnmatched(ListingsRead read) {
        List<UnmatchedWord> words = read.unmatchedWords();
        if (words.isEmpty()) {
            return;
        }
        int cells = words.stream().mapToInt(UnmatchedWord::rows).sum();
        out.println("  not understood: " + words.size() + (words.size() == 1 ? " word in " : " words in ") + cells
                + (cells == 1 ? " cell" : " cells") + "; the fact stays unknown there"
                + (words.size() > WORDS_SHOWN ? "; the first " + WORDS_SHOWN + " are below, 'check' lists them all" : ""));
        printProblems("to look at", words.stream().limit(WORDS_SHOWN).map(UnmatchedWord::problem).toList());
    }

    /** What became of the rows of the cars in play, and what was not understood of them. */
    void account(CarsFile cars) {
        account(cars.read());
    }

    /** What became of the rows of a file. */
    void account(RowsRead rows) {
        count(rows);
        out.println(rows.sentence());
        printProblems("rejected", rows.rejected());
        printProblems("set aside", rows.setAside());
        printProblems("question", rows.questions());
        printProblems("to look at", rows.oddities());
    }

    /** What became of the rows of swaps that were seen, and of those of the finished cars. */
    void account(Swaps swaps) {
        accounts.add(swaps.problems());
        for (RowProblem.Kind kind : RowProblem.Kind.values()) {
            printProblems(WORDS_OF.get(kind), swaps.problems().stream().filter(p -> p.kind() == kind).toList());
        }
        swaps.notes().forEach(n -> out.print(TextLines.of("  ", n)));
    }

    /** What must be settled before any money. */
    void account(Gates gates) {
        gates.warnings().forEach(w -> out.print(TextLines.of("  ", "not settled: " + w)));
    }

    /** What became of the rows of assumptions: those that change nothing. */
    void account(Assumptions read) {
        accounts.add(read.problems());
        printProblems("changes nothing", read.problems());
    }

    /** What was done with prices without a date. */
    void printUndated(PriceModel model) {
        model.undated().ifPresent(words -> out.print(TextLines.of("  ", words + ".")));
    }

    /** What became of the rows, how each of them stands, and how well values met prices. */
    void printJudged(ListingsRead read, Judged judged) {
        account(read);
        out.println();
        int rows = read.listings().size();
        if (areTooMany(rows)) {
            out.println(tooMany(rows));
        } else {
            out.print(judged.inFileOrder("").text());
        }
        printFit(judged.model(), judged.study());
    }

    /** What the model could not tell apart, and how well values met prices. */
    void printFit(PriceModel model, Answer<FitStudy> study) {
        printUndated(model);
        model.slopesInDoubt().ifPresent(words -> out.print("\n" + TextLines.of("", words + ".")));
        model.confounded().forEach(c -> out.print("\n" + TextLines.of("", c.sentence() + ".")));
        out.print("\n" + study.match(s -> ModelTables.fit(model, s).text(), no -> no.sentence() + "\n"));
    }

    private void printProblems(String what, List<RowProblem> all) {
        List<RowProblem> problems = printed.isEmpty() ? all : all.stream().filter(p -> !printed.contains(sentence(p))).toList();
        for (RowProblem p : problems.subList(0, Math.min(PROBLEMS_SHOWN, problems.size()))) {
            out.print(TextLines.of("  ", what + ": " + sentence(p)));
            printed.add(sentence(p));
        }
        if (problems.size() > PROBLEMS_SHOWN) {
            out.println("  " + what + ": " + (problems.size() - PROBLEMS_SHOWN) + " more; 'check' lists those of listings and of cars.csv");
        }
    }

    private static String sentence(RowProblem p) {
        return p.file() + (p.line() > 0 ? ":" + p.line() : "") + (p.column().isEmpty() ? "" : " " + p.column())
                + (p.rawText().isEmpty() ? "" : " '" + p.rawText() + "'") + ": " + p.message();
    }

    /** Why no row could be used, and the exit code for that. */
    int nothing(ListingsRead read) {
        err.println("no usable row: " + read.counts().sentence());
        // What was not understood of the files that speak for all of the folder is often the cause of the rest.
        List<RowProblem> settings = read.oddities().stream()
                .filter(p -> p.kind() == RowProblem.Kind.REJECTED || SETTINGS.contains(p.file()) && !p.file().equals("lines.csv"))
                .toList();
        List.of(settings, read.rejected(), read.setAside()).forEach(this::complain);
        return Exit.NOTHING_USABLE;
    }

    /** Why no row of a file could be used, and the exit code for that. */
    int nothing(RowsRead read) {
        err.println("no usable row: " + read.sentence());
        complain(read.problems());
        return Exit.NOTHING_USABLE;
    }

    private void complain(List<RowProblem> problems) {
        for (RowProblem p : problems.subList(0, Math.min(FIRST_FEW, problems.size()))) {
            err.println("  " + sentence(p));
        }
    }

    /** Writes a page and says where it lies. */
    void writePage(Path file, Page page) throws IOException {
        page.write(file);
        out.println("\nThe page: " + file.toAbsolutePath().normalize());
    }

    /** Writes rows for machines and says where they lie. */
    void write(Path file, String text, String what) throws IOException {
        OutputFile.write(file, text);
        written(file, what);
    }

    /** Says where lies what was written bit by bit. */
    void written(Path file, String what) {
        out.println("\nWritten, " + what + ": " + file.toAbsolutePath().normalize());
    }
}
