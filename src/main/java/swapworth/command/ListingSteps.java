package swapworth.command;

import java.io.IOException;
import java.io.OutputStream;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.CompletableFuture;
import java.util.stream.Stream;
import swapworth.chart.Charts;
import swapworth.listing.CarsFile;
import swapworth.listing.Check;
import swapworth.listing.ListingsRead;
import swapworth.market.Answer;
import swapworth.market.FitStudy;
import swapworth.market.IndexTables;
import swapworth.market.Judged;
import swapworth.market.JudgedRows;
import swapworth.market.MarketIndex;
import swapworth.market.PriceModel;
import swapworth.market.TimeOnMarket;
import swapworth.market.Valued;
import swapworth.reading.OutputFile;
import swapworth.reading.RowProblem;
import swapworth.report.CarsSection;
import swapworth.report.Cautions;
import swapworth.report.ListingsPage;
import swapworth.report.MarketSection;
import swapworth.report.Page;
import swapworth.report.Part;
import swapworth.report.Section;
import swapworth.table.Table;
import swapworth.table.TextLines;

/** The steps that speak of listings alone: what was understood, how they stand, what such cars go for, how the market moved. */
final class ListingSteps {
    private final Inputs inputs;
    private final Terminal terminal;

    ListingSteps(Inputs inputs, Terminal terminal) {
        this.inputs = inputs;
        this.terminal = terminal;
    }

    int check(Arguments arguments) throws IOException {
        Inputs.keepApart(arguments, arguments.listings());
        ListingsRead read = Inputs.read(arguments.listings());
        terminal.count(read);
        Check check = Check.of(read);
        terminal.out().print(check.text());
        List<CarsFile> cars = arguments.carsBeside().stream().map(file -> CarsFile.read(file, read)).toList();
        cars.forEach(file -> {
            terminal.count(file.read());
            terminal.out().println(file.read().table().text());
        });
        if (arguments.out().isPresent()) {
            terminal.write(arguments.out().get(), problems(read, cars).csv(), "the rows set aside, rejected, odd or in question");
        }
        if (arguments.page().isPresent()) {
            List<Part> parts = new ArrayList<>(check.tables().stream().map(Part::rows).toList());
            cars.forEach(file -> parts.add(Part.rows(file.read().table())));
            Page page = Page.of("Check of " + Inputs.names(arguments.listings()), read.counts().sentence() + ".",
                    new Section("check", "What was understood", parts));
            terminal.writePage(arguments.page().get(), page);
        }
        return read.listings().isEmpty() ? terminal.nothing(read) : Exit.DONE;
    }

    private static Table problems(ListingsRead read, List<CarsFile> cars) {
        Stream<RowProblem> ofListings = Stream.of(read.rejected(), read.setAside(), read.oddities(), read.questions())
                .flatMap(List::stream);
        Stream<RowProblem> ofCars = cars.stream().flatMap(file -> file.read().problems().stream());
        return RowProblem.tableOfAllKinds("Rows to look at", Stream.concat(ofListings, ofCars).toList());
    }

    int judge(Arguments arguments) throws IOException {
        Inputs.keepApart(arguments, arguments.listings());
        if (arguments.page().isPresent()) {
            Charts.prepare();
        }
        ListingsRead read = Inputs.read(arguments.listings());
        if (read.listings().isEmpty()) {
            return terminal.nothing(read);
        }
        PriceModel model = inputs.model(read, arguments, Inputs.folderOf(arguments.listings().get(0)));
        if (arguments.page().isEmpty() && Terminal.areTooMany(read.listings().size())) {
            return judgeMany(read, model, arguments);
        }
        Judged judged = Judged.of(read, model, arguments.on(), arguments.level());
        // The page is made while the terminal fills.
        Optional<CompletableFuture<Page>> page = arguments.page().map(file -> CompletableFuture.supplyAsync(
                () -> ListingsPage.of(Inputs.names(arguments.listings()), judged).page()));
        terminal.printJudged(read, judged);
        if (arguments.out().isPresent()) {
            terminal.write(arguments.out().get(), judged.table().csv(), "the judged listings");
        }
        if (page.isPresent()) {
            terminal.writePage(arguments.page().orElseThrow(), page.get().join());
        }
        return Exit.DONE;
    }

    /** Judges more rows than anybody reads: they are written to a file, and the terminal gets what they say together. */
    private int judgeMany(ListingsRead read, PriceModel model, Arguments arguments) throws IOException {
        terminal.account(read);
        JudgedRows rows = new JudgedRows(read, model, arguments.on(), arguments.level());
        Answer<FitStudy> study;
        if (arguments.out().isPresent()) {
            Path file = arguments.out().get();
            List<Answer<FitStudy>> made = new ArrayList<>();
            OutputFile.write(file, bytes -> made.add(rows.write(bytes)));
            terminal.written(file, "the judged listings");
            study = made.get(0);
        } else {
            study = rows.write(OutputStream.nullOutputStream());
            terminal.out().println("\n" + Terminal.tooMany(read.listings().size()));
        }
        terminal.printFit(model, study);
        return Exit.DONE;
    }

    int value(Arguments arguments) throws IOException {
        List<Path> files = new ArrayList<>(arguments.market());
        files.add(arguments.subject());
        Inputs.keepApart(arguments, files);
        ListingsRead read = Inputs.read(arguments.market());
        if (read.listings().isEmpty()) {
            return terminal.nothing(read);
        }
        CarsFile cars = CarsFile.read(arguments.subject(), read);
        PriceModel model = inputs.model(read, arguments, Inputs.folderOf(arguments.market().get(0)));
        Valued valued = Valued.of(cars.cars(), model, read.baseCurrency(), arguments.on(), arguments.level());
        terminal.account(read);
        terminal.account(cars);
        terminal.printUndated(model);
        terminal.out().println();
        terminal.printRows(valued.brief());
        valued.remarks().forEach(r -> terminal.out().print(TextLines.of("  ", r)));
        if (arguments.out().isPresent()) {
            terminal.write(arguments.out().get(), valued.table().csv(), "the values");
        }
        if (arguments.page().isPresent()) {
            Judged judged = Judged.of(read, model, Optional.empty(), Optional.empty());
            terminal.writePage(arguments.page().get(), ListingsPage.of(Inputs.names(List.of(arguments.subject())), judged)
                    .withCarsInPlay(valued).withFirst(CarsSection.toLookAt(cars)).page());
        }
        return cars.cars().isEmpty() ? Exit.NOTHING_USABLE : Exit.DONE;
    }

    int index(Arguments arguments) throws IOException {
        Inputs.keepApart(arguments, arguments.listings());
        ListingsRead read = Inputs.read(arguments.listings());
        if (read.listings().isEmpty()) {
            return terminal.nothing(read);
        }
        PriceModel model = inputs.model(read, arguments, Inputs.folderOf(arguments.listings().get(0)));
        terminal.account(read);
        if (!(model.index() instanceof Answer.Told<MarketIndex> told)) {
            terminal.out().print("\n" + TextLines.of("", IndexTables.summary(model)));
            if (arguments.page().isPresent()) {
                terminal.writePage(arguments.page().get(), marketPage(arguments, read, MarketSection.of(model)));
            }
            if (arguments.out().isPresent()) {
                terminal.err().println("--out: " + arguments.out().get() + " is not written, because the index cannot be told");
                return Exit.NOTHING_USABLE;
            }
            return Exit.DONE;
        }
        MarketIndex index = chosen(told.value(), arguments);
        terminal.out().print("\n" + TextLines.of("", IndexTables.summary(index)));
        index.cautions().forEach(c -> terminal.out().print(TextLines.of("  ", c + ".")));
        List<Table> tables = new ArrayList<>(IndexTables.all(model, index));
        tables.addAll(TimeOnMarket.of(model).match(TimeOnMarket::tables, no -> List.of()));
        for (Table table : tables) {
            terminal.out().println();
            terminal.out().print(table.text());
        }
        if (arguments.out().isPresent()) {
            terminal.write(arguments.out().get(), IndexTables.months(index).csv(), "the level of each month");
        }
        if (arguments.page().isPresent()) {
            terminal.writePage(arguments.page().get(), marketPage(arguments, read, MarketSection.of(model, index)));
        }
        return Exit.DONE;
    }

    private static Page marketPage(Arguments arguments, ListingsRead read, Section market) {
        return Page.of(Inputs.names(arguments.listings()) + ": the market in time", Terminal.counted(read) + ".", market,
                Section.of("cautions", "Cautions", Part.cautions("Before you rely on any of this", Cautions.ofMarket())));
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
}
