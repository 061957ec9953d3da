package swapworth.command;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.CompletableFuture;
import java.util.stream.Stream;
import swapworth.chart.Charts;
import swapworth.listing.CarsFile;
import swapworth.listing.ListingsRead;
import swapworth.market.IndexTables;
import swapworth.market.Judged;
import swapworth.market.PriceModel;
import swapworth.market.Valued;
import swapworth.project.Undertaking;
import swapworth.report.FolderPage;
import swapworth.report.InShort;
import swapworth.report.MarketSection;
import swapworth.report.Section;
import swapworth.swap.Swaps;
import swapworth.table.Table;
import swapworth.table.TextLines;

/** The whole job: whatever the files of a folder allow, on one page. */
final class FolderStep {
    private final Inputs inputs;
    private final Terminal terminal;

    FolderStep(Inputs inputs, Terminal terminal) {
        this.inputs = inputs;
        this.terminal = terminal;
    }

    /** The whole job: judges the listings of a folder and values its cars in play, on one page. */
    int run(Arguments stated) throws IOException {
        Path folder = inputs.folder(stated.folder());
        Arguments arguments = stated.onPage(folder.resolve("swapworth.html"));
        Path listings = folder.resolve(Inputs.LISTINGS);
        Inputs.keepApart(arguments, List.of(listings));
        Charts.prepare();
        try {
            return Files.isRegularFile(listings) ? withListings(folder, arguments) : withoutListings(folder, arguments);
        } catch (IOException e) {
            String page = arguments.page().orElseThrow().toString();
            throw stated.page().isPresent() || !String.valueOf(e.getMessage()).startsWith(page + ":") ? e
                    : new IOException(e.getMessage() + "; --page FILE.html writes the page to another place", e);
        }
    }

    private int withListings(Path folder, Arguments arguments) throws IOException {
        Path listings = folder.resolve(Inputs.LISTINGS);
        ListingsRead read = Inputs.read(List.of(listings));
        if (read.listings().isEmpty()) {
            return terminal.nothing(read);
        }
        PriceModel model = inputs.model(read, arguments, folder);
        Optional<CarsFile> inPlay = Files.isRegularFile(folder.resolve(Inputs.CARS))
                ? Optional.of(CarsFile.read(folder.resolve(Inputs.CARS), read)) : Optional.empty();
        // Donors and recipients are worked out while the listings are judged.
        DonorSteps donors = new DonorSteps(inputs, terminal);
        inPlay.ifPresent(cars -> donors.start(folder, cars.cars(), read, model, arguments));
        // The market in time is followed while the listings are judged.
        CompletableFuture<Section> market = CompletableFuture.supplyAsync(() -> MarketSection.of(model));
        Judged judged = Judged.of(read, model, arguments.on(), arguments.level());
        printOnOffer(read, judged);
        Optional<Valued> valued = inPlay.map(cars -> valued(cars, read, model, arguments));
        Optional<Swaps> swaps = inPlay.filter(cars -> cars.unfinished().size() < cars.cars().size())
                .map(cars -> new SwapSteps(inputs, terminal).swaps(folder, cars, read, model, arguments));
        List<Section> ofDonors = donors.finish();
        if (arguments.out().isPresent()) {
            terminal.write(arguments.out().get(), judged.table().csv(), "the judged listings");
        }
        terminal.out().print("\n" + TextLines.of("", IndexTables.summary(model)));
        Undertaking undertaking = Undertaking.of(folder, arguments.on(), inPlay.map(cars -> new Undertaking.Market(read, model, cars,
                swaps.orElseGet(() -> Swaps.of(folder, cars, read.baseCurrency(), model, arguments.on(), arguments.level())))));
        new ProjectSteps(inputs, terminal).tell(undertaking);
        FolderPage all = new FolderPage(folder, judged, inPlay, valued, donors.study(), ofDonors, market.join(), swaps, undertaking);
        try {
            terminal.writePage(arguments.page().orElseThrow(), all.page());
        } finally {
            // What was found is told, whether or not its page can be written.
            terminal.out().print(all.inShort().text());
        }
        return Exit.DONE;
    }

    /** What the cars in play are worth, said at once. */
    private Valued valued(CarsFile cars, ListingsRead read, PriceModel model, Arguments arguments) {
        terminal.out().println();
        terminal.account(cars);
        Valued valued = Valued.of(cars.unfinished(), model, read.baseCurrency(), arguments.on(), arguments.level());
        terminal.out().println();
        terminal.printRows(valued.brief());
        valued.remarks().forEach(r -> terminal.out().print(TextLines.of("  ", r)));
        return valued;
    }

    /** What the other files of a folder say: what its cars cost at the door and give back, and the money. */
    private int withoutListings(Path folder, Arguments arguments) throws IOException {
        DonorSteps steps = new DonorSteps(inputs, terminal);
        List<Section> donors = steps.withoutListings(folder, arguments);
        if (donors.isEmpty() && Stream.of(Inputs.LEDGER, Inputs.GATES, Inputs.ALTERNATIVES).map(folder::resolve)
                .noneMatch(Files::isRegularFile)) {
            throw new NothingUsableException(folder + ": there is no " + Inputs.LISTINGS + " in this folder; start with one row a listing"
                    + " and the columns vehicle, model_year, mileage_mi, price_usd (or your own units), seen_on");
        }
        return new ProjectSteps(inputs, terminal).project(arguments, donors,
                undertaking -> InShort.withoutListings(steps.study(), undertaking));
    }

    /** Of all rows those that can still be bought; without dates nobody knows which these are. */
    private void printOnOffer(ListingsRead read, Judged judged) {
        if (judged.model().lastSeen().isEmpty()) {
            terminal.printJudged(read, judged);
            return;
        }
        terminal.account(read);
        Table onOffer = judged.onOffer("");
        terminal.out().println();
        if (onOffer.rows().isEmpty()) {
            terminal.out().println("No car was on offer" + judged.lately() + ".");
        } else {
            terminal.printRows(onOffer);
        }
        int rows = read.listings().size();
        terminal.out().println("\n" + rows + (rows == 1 ? " row is judged" : " rows are judged")
                + " in all: the step 'judge' and the page show them.");
        terminal.printFit(judged.model(), judged.study());
    }
}
