package swapworth.command;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.function.Function;
import swapworth.listing.ListingsRead;
import swapworth.project.Undertaking;
import swapworth.reading.Conventions;
import swapworth.reading.FolderSettings;
import swapworth.reading.RowsRead;
import swapworth.report.InShort;
import swapworth.report.ProjectFile;
import swapworth.report.ProjectPage;
import swapworth.report.Section;
import swapworth.table.Table;
import swapworth.table.TextLines;

/** The steps that speak of the whole undertaking. */
final class ProjectSteps {
    private final Inputs inputs;
    private final Terminal terminal;

    ProjectSteps(Inputs inputs, Terminal terminal) {
        this.inputs = inputs;
        this.terminal = terminal;
    }

    int project(Arguments arguments) throws IOException {
        return project(arguments, List.of(), undertaking -> new InShort(List.of()));
    }

    /** The step with what else its folder says, which stands on the page before the money, and with the answers in short. */
    int project(Arguments arguments, List<Section> more, Function<Undertaking, InShort> answers) throws IOException {
        Path folder = inputs.folder(arguments.folder());
        Path file = folder.resolve(Inputs.LEDGER);
        boolean hasLedger = Files.isRegularFile(file);
        Inputs.keepApart(arguments, List.of(file));
        Optional<ProjectFile.Reader> reader = arguments.reader();
        Undertaking undertaking = Undertaking.of(folder, arguments.on(), market(folder, arguments));
        inputs.assumptions(folder);
        undertaking.market().ifPresentOrElse(m -> account(folder, m),
                () -> terminal.account(FolderSettings.of(folder, Conventions.unstated())));
        // Without a ledger cars in play alone tell of now or later and of prices to walk away at.
        if (!hasLedger && (arguments.out().isPresent() || more.isEmpty() && undertaking.gates().isEmpty() && tables(undertaking).isEmpty()
                && undertaking.finished().isEmpty())) {
            throw new NothingUsableException(folder + ": there is no ledger.csv in this folder; start with one row a payment and the"
                    + " columns date, amount, note");
        }
        List<RowsRead> files = undertaking.read();
        if (reader.isPresent()) {
            files.forEach(terminal::account);
            Path page = arguments.page().orElse(folder.resolve("file-for-" + reader.get().name().toLowerCase(Locale.ROOT) + ".html"));
            terminal.writePage(page, ProjectFile.of(folder, undertaking, reader.get()));
            return Exit.DONE;
        }
        if (hasLedger && undertaking.ledger().isEmpty()) {
            return terminal.nothing(files.get(0));
        }
        files.forEach(terminal::account);
        tellAll(undertaking);
        if (arguments.out().isPresent()) {
            terminal.write(arguments.out().get(), undertaking.ledger().get().sums().byCategoryTable("").csv(), "the sums by category");
        }
        InShort inShort = answers.apply(undertaking);
        try {
            if (arguments.page().isPresent()) {
                terminal.writePage(arguments.page().get(), ProjectPage.of(Inputs.nameOf(folder), undertaking, more, inShort));
            }
        } finally {
            terminal.out().print(inShort.text());
        }
        return Exit.DONE;
    }

    private void account(Path folder, Undertaking.Market market) {
        terminal.printUndated(market.model());
        terminal.account(market.cars());
        terminal.account(market.swaps());
        DonorSteps donors = new DonorSteps(inputs, terminal);
        donors.accountOfFees(folder, market.read().baseCurrency());
        donors.accountOfParts(folder, market.cars(), market.read().baseCurrency());
    }

    private void tellAll(Undertaking undertaking) {
        undertaking.gates().ifPresent(terminal::account);
        tables(undertaking).forEach(table -> terminal.out().print("\n" + table.text()));
        ProjectPage.valueInIt(undertaking).ifPresent(words -> terminal.out().print("\n" + TextLines.of("", words)));
        undertaking.otherFinished().ifPresent(words -> terminal.out().print("\n" + TextLines.of("", "But " + words + ".")));
        undertaking.narrowing().forEach(n -> terminal.out().print("\n" + TextLines.of("", n)));
        undertaking.missing().forEach(m -> terminal.out().print("\n" + TextLines.of("", "Not here: " + m)));
    }

    /** The headlines of an undertaking, for the terminal. */
    void tell(Undertaking undertaking) {
        for (RowsRead read : undertaking.read()) {
            terminal.out().println();
            terminal.account(read);
        }
        undertaking.gates().ifPresent(terminal::account);
        undertaking.forecast().ifPresent(f -> terminal.out().print("\n" + f.figures().text()));
        undertaking.equity().ifPresent(e -> terminal.out().print("\n" + e.tables().get(0).text()));
        undertaking.job().ifPresent(job -> terminal.out().print("\n" + job.table().text()));
        undertaking.finishOrStop().ifPresent(f -> terminal.out().print("\n" + f.tables().get(1).text()));
        undertaking.alternatives().ifPresent(a -> terminal.out().print("\n" + a.tables().get(0).text()));
    }

    private Optional<Undertaking.Market> market(Path folder, Arguments arguments) {
        return Undertaking.Market.of(folder, arguments.on(), arguments.level(), listings -> {
            ListingsRead read = Inputs.read(List.of(listings));
            terminal.account(read);
            return read;
        }, read -> inputs.model(read, arguments, folder));
    }

    private static List<Table> tables(Undertaking undertaking) {
        List<Table> tables = new ArrayList<>();
        undertaking.ledger().ifPresent(l -> tables.addAll(l.sums().tables()));
        undertaking.forecast().ifPresent(f -> tables.addAll(f.tables()));
        undertaking.extras().ifPresent(e -> tables.add(e.table()));
        undertaking.equity().ifPresent(e -> tables.addAll(e.tables()));
        undertaking.job().ifPresent(job -> tables.add(job.table()));
        undertaking.finishOrStop().ifPresent(f -> tables.addAll(f.tables()));
        undertaking.redoCost().ifPresent(r -> tables.addAll(r.tables()));
        undertaking.keeping().ifPresent(k -> tables.add(k.table()));
        undertaking.alternatives().ifPresent(a -> tables.addAll(a.tables()));
        undertaking.nowOrLater().ifPresent(n -> tables.addAll(n.tables()));
        undertaking.walkAway().ifPresent(w -> tables.add(w.table()));
        return tables;
    }
}
