package swapworth.command;

import java.io.IOException;
import java.io.OutputStream;
import java.io.PrintStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.concurrent.CompletableFuture;
import java.util.stream.Stream;
import swapworth.assumptions.Assumptions;
import swapworth.chart.Charts;
import swapworth.listing.CarsFile;
import swapworth.listing.Check;
import swapworth.listing.Listings;
import swapworth.listing.ListingsRead;
import swapworth.listing.UnmatchedWord;
import swapworth.market.Answer;
import swapworth.market.FitStudy;
import swapworth.market.IndexTables;
import swapworth.market.Judged;
import swapworth.market.JudgedRows;
import swapworth.market.MarketIndex;
import swapworth.market.ModelTables;
import swapworth.market.PriceModel;
import swapworth.market.TimeOnMarket;
import swapworth.market.Valued;
import swapworth.notebook.NotebookException;
import swapworth.notebook.NotebookRun;
import swapworth.notebook.Notebooks;
import swapworth.notebook.Progress;
import swapworth.project.Undertaking;
import swapworth.reading.OutputFile;
import swapworth.reading.RowProblem;
import swapworth.reading.RowsRead;
import swapworth.reading.UnusableFileException;
import swapworth.report.CarsSection;
import swapworth.report.FolderPage;
import swapworth.report.ListingsPage;
import swapworth.report.MarketSection;
import swapworth.report.Page;
import swapworth.report.Part;
import swapworth.report.Section;
import swapworth.swap.Swaps;
import swapworth.table.Table;
import swapworth.table.TextLines;

/** The steps of the program, each a few calls of the library. */
final class Steps {
    private static final int DONE = 0;
    private static final int NOTHING_USABLE = 1;
    private static final int WRONG_USAGE = 2;
    /** More rows than this fill a terminal to no use. */
    private static final int TOO_MANY_TO_SHOW = 5_000;
    /** Words of listings that were not understood are listed by 'check'; the other steps show so many. */
    private static final int WORDS_SHOWN = 3;
    private static final String LISTINGS = "listings.csv";
    private static final String CARS = "cars.csv";

    private final PrintStream out;
    private final PrintStream err;
    private final Accounts accounts = new Accounts();
    /** What was printed of the rows, so that nothing is told twice. */
    private final Set<RowProblem> printed = new HashSet<>();
    private Optional<Assumptions> assumptions = Optional.empty();

    Steps(PrintStream out, PrintStream err) {
        this.out = out;
        this.err = err;
    }

    int run(String step, Arguments arguments) {
        try {
            arguments.check();
            int code = switch (step) {
                case "check" -> check(arguments);
                case "judge" -> judge(arguments);
                case "value" -> value(arguments);
                case "index" -> index(arguments);
                case "landed" -> new DonorSteps(this, out).landed(arguments);
                case "partout" -> new DonorSteps(this, out).partout(arguments);
                case "project" -> new ProjectSteps(this, out, err).project(arguments);
                case "swap" -> new SwapSteps(this, out, err).swap(arguments);
                case "notebook" -> notebook(arguments);
                default -> folder(arguments);
            };
            return code == DONE ? ending(arguments) : code;
        } catch (WrongUsageException e) {
            err.println(e.getMessage());
            return WRONG_USAGE;
        } catch (UnusableFileException | NothingUsableException | NotebookException e) {
            err.println(e.getMessage());
            return NOTHING_USABLE;
        } catch (IOException e) {
            err.println("cannot write " + e.getMessage());
            return NOTHING_USABLE;
        }
    }

    /** What is said in the end of rows that were rejected in any of the files read. */
    private int ending(Arguments arguments) {
        if (arguments.strictness() == Arguments.Strictness.LENIENT) {
            return DONE;
        }
        String rejected = accounts.sentence();
        if (rejected.isEmpty()) {
            return DONE;
        }
        err.println("--strict: " + rejected);
        return NOTHING_USABLE;
    }

    /** Refuses to write over a file that is read, and to write two things into one file. */
    static void keepApart(Arguments arguments, List<Path> inputs) throws IOException {
        List<Path> read = new ArrayList<>(inputs);
        for (Path input : inputs) {
            for (String beside : List.of(LISTINGS, CARS, "words.csv", "lines.csv", "rates.csv", "assumptions.csv", "fees.csv", "parts.csv",
                    "partout.csv", "swaps.csv", "ledger.csv", "gates.csv", "alternatives.csv")) {
                read.add(input.resolveSibling(beside));
            }
        }
        for (Optional<Path> output : List.of(arguments.out(), arguments.page())) {
            for (Path input : read) {
                if (output.isPresent() && Files.exists(output.get()) && Files.exists(input) && Files.isSameFile(output.get(), input)) {
                    throw new WrongUsageException(output.get() + ": this file is read; write to another one");
                }
            }
        }
        if (arguments.out().isPresent() && arguments.page().isPresent() && isOne(arguments.out().get(), arguments.page().get())) {
            throw new WrongUsageException(arguments.out().get() + ": the rows and the page cannot be written into one file; give --out and"
                    + " --page names of their own");
        }
    }

    private static boolean isOne(Path a, Path b) throws IOException {
        return a.toAbsolutePath().normalize().equals(b.toAbsolutePath().normalize())
                || Files.exists(a) && Files.exists(b) && Files.isSameFile(a, b);
    }

    private int check(Arguments arguments) throws IOException {
        keepApart(arguments, arguments.listings());
        ListingsRead read = read(arguments.listings());
        collect(read);
        Check check = Check.of(read);
        out.print(check.text());
        List<CarsFile> cars = arguments.carsBeside().stream().map(file -> CarsFile.read(file, read)).toList();
        cars.forEach(file -> {
            accounts.add(file.read().problems());
            out.println(file.read().table().text());
        });
        if (arguments.out().isPresent()) {
            write(arguments.out().get(), problems(read).csv(), "the rows set aside, rejected, odd or in question");
        }
        if (arguments.page().isPresent()) {
            List<Part> parts = new ArrayList<>(check.tables().stream().map(Part::rows).toList());
            cars.forEach(file -> parts.add(Part.rows(file.read().table())));
            Page page = Page.of("Check of " + names(arguments.listings()), read.counts().sentence() + ".",
                    Section.of("check", "What was understood", parts.toArray(Part[]::new)));
            writePage(arguments.page().get(), page);
        }
        return read.listings().isEmpty() ? nothing(read) : DONE;
    }

    private static Table problems(ListingsRead read) {
        List<RowProblem> all = new ArrayList<>();
        for (List<RowProblem> some : List.of(read.rejected(), read.setAside(), read.oddities(), read.questions())) {
            all.addAll(some);
        }
        return RowProblem.table("Rows to look at", all);
    }

    private int judge(Arguments arguments) throws IOException {
        keepApart(arguments, arguments.listings());
        if (arguments.page().isPresent()) {
            Charts.prepare();
        }
        ListingsRead read = read(arguments.listings());
        if (read.listings().isEmpty()) {
            return nothing(read);
        }
        PriceModel model = model(read, arguments, folderOf(arguments.listings().get(0)));
        if (arguments.page().isEmpty() && read.listings().size() > TOO_MANY_TO_SHOW) {
            return judgeMany(read, model, arguments);
        }
        Judged judged = Judged.of(read, model, arguments.on(), arguments.level());
        // The page is made while the terminal fills.
        Optional<CompletableFuture<Page>> page = arguments.page().map(file -> CompletableFuture.supplyAsync(
                () -> ListingsPage.of(names(arguments.listings()), judged).page()));
        print(read, judged);
        if (arguments.out().isPresent()) {
            write(arguments.out().get(), judged.table().csv(), "the judged listings");
        }
        if (page.isPresent()) {
            writePage(arguments.page().orElseThrow(), page.get().join());
        }
        return DONE;
    }

    /** Judges more rows than anybody reads: they are written to a file, and the terminal gets what they say together. */
    private int judgeMany(ListingsRead read, PriceModel model, Arguments arguments) throws IOException {
        account(read);
        JudgedRows rows = new JudgedRows(read, model, arguments.on(), arguments.level());
        Answer<FitStudy> study;
        if (arguments.out().isPresent()) {
            Path file = arguments.out().get();
            List<Answer<FitStudy>> made = new ArrayList<>();
            writing(file, () -> OutputFile.write(file, bytes -> made.add(rows.write(bytes))), "the judged listings");
            study = made.get(0);
        } else {
            study = rows.write(OutputStream.nullOutputStream());
            out.println("\n" + tooMany(read.listings().size()));
        }
        print(model, study);
        return DONE;
    }

    private int value(Arguments arguments) throws IOException {
        List<Path> inputs = new ArrayList<>(arguments.market());
        inputs.add(arguments.subject());
        keepApart(arguments, inputs);
        ListingsRead read = read(arguments.market());
        if (read.listings().isEmpty()) {
            return nothing(read);
        }
        CarsFile cars = CarsFile.read(arguments.subject(), read);
        PriceModel model = model(read, arguments, folderOf(arguments.market().get(0)));
        Valued valued = Valued.of(cars.cars(), model, read.baseCurrency(), arguments.on(), arguments.level());
        account(read);
        account(cars);
        printUndated(model);
        out.println();
        printRows(valued.brief());
        valued.remarks().forEach(r -> out.print(TextLines.of("  ", r)));
        if (arguments.out().isPresent()) {
            write(arguments.out().get(), valued.table().csv(), "the values");
        }
        if (arguments.page().isPresent()) {
            Judged judged = Judged.of(read, model, Optional.empty(), Optional.empty());
            writePage(arguments.page().get(), ListingsPage.of(names(List.of(arguments.subject())), judged).withCarsInPlay(valued)
                    .withFirst(CarsSection.toLookAt(cars)).page());
        }
        return cars.cars().isEmpty() ? NOTHING_USABLE : DONE;
    }

    private int index(Arguments arguments) throws IOException {
        keepApart(arguments, arguments.listings());
        ListingsRead read = read(arguments.listings());
        if (read.listings().isEmpty()) {
            return nothing(read);
        }
        PriceModel model = model(read, arguments, folderOf(arguments.listings().get(0)));
        account(read);
        if (!(model.index() instanceof Answer.Told<MarketIndex> told)) {
            out.print("\n" + TextLines.of("", IndexTables.summary(model)));
            if (arguments.page().isPresent()) {
                writePage(arguments.page().get(), marketPage(arguments, read, MarketSection.of(model)));
            }
            if (arguments.out().isPresent()) {
                err.println("--out: " + arguments.out().get() + " is not written, because the index cannot be told");
                return NOTHING_USABLE;
            }
            return DONE;
        }
        MarketIndex index = chosen(told.value(), arguments);
        out.print("\n" + TextLines.of("", IndexTables.summary(index)));
        index.cautions().forEach(c -> out.print(TextLines.of("  ", c + ".")));
        List<Table> tables = new ArrayList<>(IndexTables.all(model, index));
        tables.addAll(TimeOnMarket.of(model).match(TimeOnMarket::tables, no -> List.of()));
        for (Table table : tables) {
            out.println();
            out.print(table.text());
        }
        if (arguments.out().isPresent()) {
            write(arguments.out().get(), IndexTables.months(index).csv(), "the level of each month");
        }
        if (arguments.page().isPresent()) {
            writePage(arguments.page().get(), marketPage(arguments, read, MarketSection.of(model, index)));
        }
        return DONE;
    }

    private static Page marketPage(Arguments arguments, ListingsRead read, Section market) {
        return Page.of(names(arguments.listings()) + ": the market in time", counted(read) + ".", market);
    }

    private static MarketIndex chosen(MarketIndex index, Arguments arguments) {
        MarketIndex chosen = index;
        try {
            if (arguments.line().isPresent()) {
                chosen = chosen.ofLine(arguments.line().get());
            }
            return arguments.base().isPresent() ? chosen.withBase(arguments.base().get()) : chosen;
        } catch (IllegalArgumentException e) {
            throw new WrongUsageException(String.valueOf(e.getMessage()));
        }
    }

    private int notebook(Arguments arguments) throws IOException {
        Path folder = chosen(arguments.notebookFolder());
        // A console is there only where both ends are a terminal.
        Progress progress = Progress.on(err, System.console() == null ? Progress.Screen.LINES : Progress.Screen.TERMINAL);
        Notebooks notebooks = Notebooks.about(folder, arguments.page().orElse(folder.resolve("pages"))).with(arguments.copies())
                .telling(progress);
        List<NotebookRun> runs = arguments.limit().map(notebooks::withLimit).orElse(notebooks).run(arguments.notebooks());
        for (NotebookRun run : runs) {
            run.failure().ifPresent(err::println);
            if (run.isWritten()) {
                out.println((run.failure().isPresent() ? "What ran so far: " : "The page: ") + run.page().toAbsolutePath().normalize());
            }
        }
        notebooks.index(runs).ifPresent(index -> out.println("The index: " + index.toAbsolutePath().normalize()));
        return runs.stream().allMatch(r -> r.failure().isEmpty()) ? DONE : NOTHING_USABLE;
    }

    /** The whole job: judges the listings of a folder and values its cars in play, on one page. */
    private int folder(Arguments stated) throws IOException {
        Path folder = folder(stated.folder());
        Arguments arguments = stated.onPage(folder.resolve("swapworth.html"));
        Path listings = folder.resolve(LISTINGS);
        keepApart(arguments, List.of(listings));
        Charts.prepare();
        if (!Files.isRegularFile(listings)) {
            return withoutListings(folder, arguments);
        }
        ListingsRead read = read(List.of(listings));
        if (read.listings().isEmpty()) {
            return nothing(read);
        }
        PriceModel model = model(read, arguments, folder);
        Optional<CarsFile> inPlay = Files.isRegularFile(folder.resolve(CARS))
                ? Optional.of(CarsFile.read(folder.resolve(CARS), read)) : Optional.empty();
        // Donors and recipients are worked out while the listings are judged.
        DonorSteps donors = new DonorSteps(this, out);
        inPlay.ifPresent(cars -> donors.start(folder, cars.cars(), read, model, arguments));
        // The market in time is followed while the listings are judged.
        CompletableFuture<Section> market = CompletableFuture.supplyAsync(() -> MarketSection.of(model));
        Judged judged = Judged.of(read, model, arguments.on(), arguments.level());
        printOnOffer(read, judged);
        Optional<Valued> valued = Optional.empty();
        Optional<Swaps> swaps = Optional.empty();
        if (inPlay.isPresent()) {
            CarsFile cars = inPlay.get();
            out.println();
            account(cars);
            valued = Optional.of(Valued.of(cars.unfinished(), model, read.baseCurrency(), arguments.on(), arguments.level()));
            out.println();
            printRows(valued.get().brief());
            valued.get().remarks().forEach(r -> out.print(TextLines.of("  ", r)));
            if (cars.unfinished().size() < cars.cars().size()) {
                swaps = Optional.of(new SwapSteps(this, out, err).swaps(folder, cars, read, model, arguments));
            }
        }
        List<Section> ofDonors = donors.finish();
        if (arguments.out().isPresent()) {
            write(arguments.out().get(), judged.table().csv(), "the judged listings");
        }
        out.print("\n" + TextLines.of("", IndexTables.summary(model)));
        Optional<Swaps> finished = swaps;
        Undertaking undertaking = Undertaking.of(folder, arguments.on(), inPlay.map(cars -> new Undertaking.Market(read, model, cars,
                finished.orElseGet(() -> Swaps.of(folder, cars, read.baseCurrency(), model, arguments.on(), arguments.level())))));
        new ProjectSteps(this, out, err).tell(undertaking);
        FolderPage all = new FolderPage(folder, judged, inPlay, valued, donors.study(), ofDonors, market.join(), swaps, undertaking);
        writePage(arguments.page().orElseThrow(), all.page());
        out.print(all.inShort().text());
        return DONE;
    }

    /** What the other files of a folder say: what its cars cost at the door and give back, and the money. */
    private int withoutListings(Path folder, Arguments arguments) throws IOException {
        List<Section> donors = new DonorSteps(this, out).withoutListings(folder, arguments);
        if (donors.isEmpty() && !Files.isRegularFile(folder.resolve("ledger.csv"))) {
            throw new NothingUsableException(folder + ": there is no " + LISTINGS + " in this folder; start with one row a listing and the"
                    + " columns vehicle, model_year, mileage_mi, price_usd (or your own units), seen_on");
        }
        return new ProjectSteps(this, out, err).project(arguments, donors);
    }

    /** The folder that a step works on; refused where it is none. */
    Path folder(Optional<Path> stated) {
        Path folder = chosen(stated);
        if (Files.isRegularFile(folder)) {
            throw new NothingUsableException(folder + ": this is a file; needed: the folder in which it lies");
        }
        if (!Files.isDirectory(folder)) {
            throw new NothingUsableException(folder + ": there is no such folder; needed: a folder with " + LISTINGS
                    + ", or one of the steps " + Main.STEPS);
        }
        return folder;
    }

    private Path chosen(Optional<Path> stated) {
        if (stated.isPresent()) {
            return stated.get();
        }
        Optional<Path> own = ownFolder(Path.of("."));
        if (own.isPresent()) {
            return own.get();
        }
        Path sample = sampleFolder();
        if (Files.isDirectory(sample)) {
            out.println("This is the sample; for your own files: swapworth FOLDER");
        }
        return sample;
    }

    /** The working folder, where it holds files of the user's own. */
    static Optional<Path> ownFolder(Path working) {
        return Stream.of(LISTINGS, CARS, "ledger.csv").map(working::resolve).anyMatch(Files::isRegularFile) ? Optional.of(working)
                : Optional.empty();
    }

    static String nameOf(Path folder) {
        Path name = folder.toAbsolutePath().normalize().getFileName();
        return name == null ? "listings" : name.toString();
    }

    /** The sample beside the jar's folder, else in the working folder. */
    private static Path sampleFolder() {
        Path here = Path.of("sample-listings");
        if (Files.isDirectory(here)) {
            return here;
        }
        try {
            Path jar = Path.of(Steps.class.getProtectionDomain().getCodeSource().getLocation().toURI());
            Path above = jar.getParent() == null ? here : jar.getParent().resolveSibling("sample-listings");
            return Files.isDirectory(above) ? above : here;
        } catch (java.net.URISyntaxException e) {
            return here;
        }
    }

    static ListingsRead read(List<Path> files) {
        return Listings.withDefaults().readFiles(files.get(0), files.subList(1, files.size()).toArray(Path[]::new));
    }

    PriceModel model(ListingsRead read, Arguments arguments, Path folder) {
        Assumptions assumptions = assumptions(folder);
        TreeSet<String> columns = new TreeSet<>();
        if (!arguments.with().isEmpty()) {
            read.listings().forEach(l -> columns.addAll(l.facts().further().keySet()));
        }
        List<String> further = new ArrayList<>();
        for (String column : arguments.with()) {
            if (PriceModel.MEASURED_FACTS.contains(column)) {
                out.println("  --with: the column '" + column + "' is always in the model");
                continue;
            }
            further.add(column);
            if (!columns.contains(column)) {
                throw new WrongUsageException("--with: the files have no further column '" + column + "'; they have "
                        + (columns.isEmpty() ? "none" : String.join(", ", columns)));
            }
        }
        PriceModel model = PriceModel.options().with(assumptions).withColumns(further).fit(read.cars());
        model.columnsTaken().forEach(taken -> out.print(TextLines.of("  ", "--with " + taken)));
        return model;
    }

    /** The assumptions of the one folder that a step is about; rows of its file that change nothing are told when it is read. */
    Assumptions assumptions(Path folder) {
        if (assumptions.isEmpty()) {
            Assumptions read = Assumptions.ofFolder(folder);
            accounts.add(read.problems());
            printProblems("changes nothing", read.problems());
            assumptions = Optional.of(read);
        }
        return assumptions.get();
    }

    private void print(ListingsRead read, Judged judged) {
        account(read);
        out.println();
        int rows = read.listings().size();
        if (rows > TOO_MANY_TO_SHOW) {
            out.println(tooMany(rows));
        } else {
            out.print(judged.inFileOrder("").text());
        }
        print(judged.model(), judged.study());
    }

    /** A table, up to as many rows as anybody reads. */
    private void printRows(Table table) {
        int rows = table.rows().size();
        out.print(rows > TOO_MANY_TO_SHOW ? tooMany(rows) + "\n" : table.text());
    }

    private static String tooMany(int rows) {
        return rows + " rows are too many to show: --out FILE.csv writes them, --page FILE.html shows them.";
    }

    /** Of all rows those that can still be bought; without dates nobody knows which these are. */
    private void printOnOffer(ListingsRead read, Judged judged) {
        if (judged.model().lastSeen().isEmpty()) {
            print(read, judged);
            return;
        }
        account(read);
        Table onOffer = judged.onOffer("");
        out.println();
        if (onOffer.rows().isEmpty()) {
            out.println("No car was on offer" + judged.lately() + ".");
        } else {
            printRows(onOffer);
        }
        int rows = read.listings().size();
        out.println("\n" + rows + (rows == 1 ? " row is judged" : " rows are judged")
                + " in all: the step 'judge' and the page show them.");
        print(judged.model(), judged.study());
    }

    static String counted(ListingsRead read) {
        int cars = read.cars().size();
        return read.counts().sentence() + "; " + cars + (cars == 1 ? " car" : " cars");
    }

    private void collect(ListingsRead read) {
        accounts.add(read.rejected());
        accounts.add(read.oddities());
    }

    /** What became of the rows of listings, and of the files that speak for all of their folder. */
    void account(ListingsRead read) {
        collect(read);
        out.println(counted(read));
        read.notes().forEach(n -> out.print(TextLines.of("  ", n)));
        printProblems("rejected", read.rejected());
        printProblems("rejected", read.oddities().stream().filter(p -> p.kind() == RowProblem.Kind.REJECTED).toList());
        printProblems("set aside", read.setAside());
        printProblems("question", read.questions());
        printUnmatched(read);
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
        accounts.add(rows.problems());
        out.println(rows.sentence());
        printProblems("rejected", rows.rejected());
        printProblems("set aside", rows.setAside());
        printProblems("question", rows.questions());
        printProblems("to look at", rows.oddities());
    }

    /** What became of the rows of swaps that were seen, and of those of the finished cars. */
    void account(Swaps swaps) {
        accounts.add(swaps.problems());
        printProblems("to look at", swaps.problems());
        swaps.notes().forEach(n -> out.print(TextLines.of("  ", n)));
    }

    /** What was done with prices without a date. */
    void printUndated(PriceModel model) {
        model.undated().ifPresent(words -> out.print(TextLines.of("  ", words + ".")));
    }

    private void print(PriceModel model, Answer<FitStudy> study) {
        printUndated(model);
        model.confounded().forEach(c -> out.print("\n" + TextLines.of("", c.sentence() + ".")));
        out.print("\n" + study.match(s -> ModelTables.fit(model, s).text(), no -> no.sentence() + "\n"));
    }

    private void printProblems(String what, List<RowProblem> all) {
        List<RowProblem> problems = printed.isEmpty() ? all : all.stream().filter(p -> !printed.contains(p)).toList();
        for (RowProblem p : problems.subList(0, Math.min(20, problems.size()))) {
            out.print(TextLines.of("  ", what + ": " + p.file() + (p.line() > 0 ? ":" + p.line() : "")
                    + (p.column().isEmpty() ? "" : " " + p.column()) + (p.rawText().isEmpty() ? "" : " '" + p.rawText() + "'") + ": "
                    + p.message()));
            printed.add(p);
        }
        if (problems.size() > 20) {
            out.println("  " + what + ": " + (problems.size() - 20) + " more; 'check' lists those of listings and of cars.csv");
        }
    }

    int nothing(ListingsRead read) {
        err.println("no usable row: " + read.counts().sentence());
        for (List<RowProblem> some : List.of(read.rejected(), read.setAside())) {
            for (RowProblem p : some.subList(0, Math.min(5, some.size()))) {
                err.println("  " + p.file() + ":" + p.line() + " " + p.column() + ": " + p.message());
            }
        }
        return NOTHING_USABLE;
    }

    void writePage(Path file, Page page) throws IOException {
        try {
            page.write(file);
        } catch (IOException e) {
            throw new IOException(file + ": " + e.getMessage(), e);
        }
        out.println("\nThe page: " + file.toAbsolutePath().normalize());
    }

    void write(Path file, String text, String what) throws IOException {
        writing(file, () -> OutputFile.write(file, text), what);
    }

    /** Work that may fail in writing. */
    private interface Work {
        void run() throws IOException;
    }

    private void writing(Path file, Work work, String what) throws IOException {
        try {
            work.run();
        } catch (IOException e) {
            throw new IOException(file + ": " + e.getMessage(), e);
        }
        out.println("\nWritten, " + what + ": " + file.toAbsolutePath().normalize());
    }

    private static Path folderOf(Path file) {
        Path parent = file.toAbsolutePath().getParent();
        return parent == null ? Path.of("") : parent;
    }

    private static String names(List<Path> files) {
        return String.join(", ", files.stream().map(f -> f.getFileName().toString()).toList());
    }
}
