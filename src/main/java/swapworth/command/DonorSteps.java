package swapworth.command;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Currency;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.CompletionException;
import java.util.function.Function;
import swapworth.assumptions.Assumptions;
import swapworth.donor.DonorStudy;
import swapworth.donor.FeeSchedule;
import swapworth.donor.Landed;
import swapworth.donor.MarketState;
import swapworth.donor.PartOffers;
import swapworth.donor.PartoutFile;
import swapworth.donor.Shading;
import swapworth.listing.CandidateCar;
import swapworth.listing.CarsFile;
import swapworth.listing.ListingsRead;
import swapworth.market.Answer;
import swapworth.market.PriceModel;
import swapworth.market.ValueDraws;
import swapworth.market.Valued;
import swapworth.reading.Conventions;
import swapworth.reading.FolderSettings;
import swapworth.report.CarsSection;
import swapworth.report.DonorSections;
import swapworth.report.FolderPage;
import swapworth.reading.UnusableFileException;
import swapworth.report.Page;
import swapworth.report.Part;
import swapworth.report.Section;
import swapworth.table.Table;
import swapworth.table.TextLines;

/** The steps that speak of donors and recipients. */
final class DonorSteps {
    private final Inputs inputs;
    private final Terminal terminal;
    private Optional<CompletableFuture<Found>> running = Optional.empty();
    private Optional<DonorStudy> study = Optional.empty();

    /** What the files of a folder say of its cars in play, and its sections of the page. */
    private record Found(DonorStudy study, List<Section> sections) {
    }

    DonorSteps(Inputs inputs, Terminal terminal) {
        this.inputs = inputs;
        this.terminal = terminal;
    }

    int landed(Arguments arguments) throws IOException {
        Path folder = inputs.folder(arguments.folder());
        Path cars = needed(folder, Inputs.CARS,
                "the cars that you think of buying: name, vehicle, price or planned_bid, seller, distance_away");
        Path fees = needed(folder, "fees.csv", "what a purchase costs beside the bid: table, kind, from, to, flat, percent, ...");
        Inputs.keepApart(arguments, List.of(cars));
        FolderSettings settings = settings(folder);
        Optional<ListingsRead> listings = listings(folder);
        CarsFile read = cars(cars, listings);
        Currency currency = read.currency();
        FeeSchedule schedule = FeeSchedule.read(fees, settings, currency, inputs.assumptions(folder));
        terminal.account(read);
        schedule.read().told().ifPresent(terminal::account);
        // What a car is worth is asked only where a bid is sought.
        Optional<PriceModel> model = arguments.target().isEmpty() ? Optional.empty()
                : listings.map(l -> inputs.model(l, arguments, folder));
        model.ifPresent(terminal::printUndated);
        Landed landed = Landed.of(read.cars(), schedule, arguments.target(),
                model.map(m -> shading(m, arguments)).orElse(car -> Optional.empty()));
        Optional<Table> worth = model.map(m -> worth(read.cars(), landed, m, currency, arguments));
        landed.bidTable().ifPresent(table -> terminal.out().print("\n" + table.text()));
        worth.ifPresent(table -> terminal.out().print("\n" + table.text()));
        landed.costs().forEach(cost -> terminal.out().print("\n" + cost.table().text()));
        Assumptions assumptions = inputs.assumptions(folder).in(currency, settings.rates());
        landed.lookTable(assumptions).ifPresent(table -> terminal.out().print("\n" + table.text()));
        unpriced(landed);
        if (arguments.out().isPresent()) {
            terminal.write(arguments.out().get(), landed.lines().csv(), "the lines of the landed costs");
        }
        if (arguments.page().isPresent()) {
            List<Section> sections = new ArrayList<>(CarsSection.toLookAt(read));
            sections.add(DonorSections.landed(landed, assumptions));
            worth.ifPresent(table -> sections.add(Section.of("in-play", "What such cars go for", Part.rows(table))));
            sections.add(DonorSections.cautionsOfCrashes());
            terminal.writePage(arguments.page().get(), Page.of("Landed costs", "What each car costs once it stands in the yard.",
                    sections));
        }
        return landed.costs().isEmpty() && landed.bids().isEmpty() ? Exit.NOTHING_USABLE : Exit.DONE;
    }

    private void unpriced(Landed landed) {
        landed.lacking().forEach(sentence -> terminal.out().print("\n" + TextLines.of("", sentence)));
    }

    /** What such cars go for, to be held against the bids. */
    private static Table worth(List<CandidateCar> cars, Landed landed, PriceModel model, Currency currency, Arguments arguments) {
        List<CandidateCar> bought = cars.stream().filter(car -> landed.bids().stream().anyMatch(b -> b.car().equals(car.name()))).toList();
        return Valued.of(bought, model, currency, arguments.on(), arguments.level()).brief();
    }

    /** Bids are shaded where listings say what a car is worth. */
    private static Function<CandidateCar, Optional<Answer<Shading>>> shading(PriceModel model, Arguments arguments) {
        ValueDraws draws = model.draws(DonorStudy.DRAWS, DonorStudy.SEED);
        Optional<LocalDate> on = arguments.on().or(model::lastSeen);
        return car -> Shading.of(car, model, draws, on, model.assumptions());
    }

    int partout(Arguments arguments) throws IOException {
        Path folder = inputs.folder(arguments.folder());
        Path cars = needed(folder, Inputs.CARS, "the cars that you think of buying");
        needed(folder, "partout.csv", "car, part, goes_to: which parts are sold, kept or go into the swap");
        Inputs.keepApart(arguments, List.of(cars));
        Optional<ListingsRead> listings = listings(folder);
        Assumptions assumptions = inputs.assumptions(folder);
        Optional<PriceModel> model = listings.map(l -> inputs.model(l, arguments, folder));
        CarsFile read = cars(cars, listings);
        Currency currency = read.currency();
        Optional<LocalDate> lastSeen = model.flatMap(PriceModel::lastSeen);
        Optional<LocalDate> on = arguments.on().or(() -> lastSeen);
        DonorStudy study = DonorStudy.of(folder, read.cars(), currency, model, MarketState.of(model, on), assumptions);
        terminal.account(read);
        model.ifPresent(terminal::printUndated);
        study.read().forEach(terminal::account);
        String money = currency.getCurrencyCode();
        study.choices().forEach(choice -> terminal.out().print("\n" + choice.table(money).text()));
        study.landed().told().ifPresent(this::unpriced);
        study.brackets().forEach(bracket -> terminal.out().print("\n" + bracket.table(money).text()));
        study.uses().forEach(uses -> terminal.out().print("\n" + uses.table(money).text()));
        study.partTables().forEach(table -> terminal.out().print("\n" + table.text()));
        if (arguments.out().isPresent()) {
            terminal.write(arguments.out().get(), study.partsTable().csv(), "the parts");
        }
        if (arguments.page().isPresent()) {
            List<Section> sections = new ArrayList<>(CarsSection.toLookAt(read));
            sections.addAll(DonorSections.all(study, assumptions.in(currency, settings(folder).rates())));
            sections.add(DonorSections.cautions());
            terminal.writePage(arguments.page().get(), Page.of("What the parts bring", "What the left-over parts of each car bring, net.",
                    sections));
        }
        return study.partOuts().isEmpty() ? Exit.NOTHING_USABLE : Exit.DONE;
    }

    /** Works out and says what the files of a folder without listings tell of its cars in play. */
    List<Section> withoutListings(Path folder, Arguments arguments) {
        Path file = folder.resolve(Inputs.CARS);
        if (!Files.isRegularFile(file) || !FolderPage.hasStudy(folder)) {
            return List.of();
        }
        CarsFile read = CarsFile.read(file);
        Currency currency = read.currency();
        terminal.account(read);
        Assumptions assumptions = inputs.assumptions(folder);
        DonorStudy done = DonorStudy.of(folder, read.cars(), currency, Optional.empty(),
                MarketState.of(Optional.empty(), arguments.on()), assumptions);
        study = Optional.of(done);
        List<Section> sections = new ArrayList<>(CarsSection.toLookAt(read));
        sections.addAll(DonorSections.all(done, assumptions.in(currency, settings(folder).rates())));
        tell(done);
        return sections;
    }

    /** Begins to work out what the other files of a folder say of its cars in play. */
    void start(Path folder, List<CandidateCar> cars, ListingsRead read, PriceModel model, Arguments arguments) {
        if (!FolderPage.hasStudy(folder)) {
            return;
        }
        Assumptions assumptions = inputs.assumptions(folder);
        Optional<LocalDate> on = arguments.on().or(model::lastSeen);
        running = Optional.of(CompletableFuture.supplyAsync(() -> {
            DonorStudy done = DonorStudy.of(folder, cars, read.baseCurrency(), Optional.of(model),
                    MarketState.of(Optional.of(model), on), assumptions);
            return new Found(done, DonorSections.all(done, assumptions.in(read.baseCurrency(), settings(folder).rates())));
        }));
    }

    /** Says what was found, once it is there. */
    List<Section> finish() {
        try {
            Optional<Found> found = running.map(CompletableFuture::join);
            found.ifPresent(f -> {
                study = Optional.of(f.study);
                terminal.out().println();
                tell(f.study);
            });
            return found.map(Found::sections).orElse(List.of());
        } catch (CompletionException e) {
            if (e.getCause() instanceof UnusableFileException unusable) {
                throw unusable;
            }
            throw e;
        }
    }

    private void tell(DonorStudy found) {
        found.read().forEach(terminal::account);
        found.landed().told().ifPresent(l -> {
            terminal.out().print("\n" + l.totals().text());
            unpriced(l);
        });
        found.choices().forEach(c -> terminal.out().print("\n" + c.table(found.currency().getCurrencyCode()).text()));
    }

    /** What was found. */
    Optional<DonorStudy> study() {
        return study;
    }

    /** What became of the fees of a folder, for a step that shows no costs of its own. */
    void accountOfFees(Path folder, Currency currency) {
        Path fees = folder.resolve("fees.csv");
        if (Files.isRegularFile(fees)) {
            FeeSchedule.read(fees, settings(folder), currency, inputs.assumptions(folder)).read().told().ifPresent(terminal::account);
        }
    }

    /** What became of the parts of a folder, for a step that takes from them what went into a finished car. */
    void accountOfParts(Path folder, CarsFile cars, Currency currency) {
        Path partout = folder.resolve("partout.csv");
        Path parts = folder.resolve("parts.csv");
        if (Files.isRegularFile(partout) && cars.unfinished().size() < cars.cars().size()) {
            terminal.account(PartoutFile.read(partout, cars.cars(), settings(folder), currency).read());
            if (Files.isRegularFile(parts)) {
                terminal.account(PartOffers.read(parts, settings(folder), currency).read());
            }
        }
    }

    private static FolderSettings settings(Path folder) {
        return FolderSettings.of(folder, Conventions.unstated());
    }

    /** The cars in play, spelled as the listings are where there are any. */
    private static CarsFile cars(Path file, Optional<ListingsRead> listings) {
        return listings.map(listed -> CarsFile.read(file, listed)).orElseGet(() -> CarsFile.read(file));
    }

    /** The listings of a folder; nothing where there are none that can be used. */
    private Optional<ListingsRead> listings(Path folder) {
        Path file = folder.resolve(Inputs.LISTINGS);
        Optional<ListingsRead> read = Files.isRegularFile(file) ? Optional.of(Inputs.read(List.of(file))) : Optional.empty();
        read.ifPresent(terminal::account);
        return read.filter(l -> !l.listings().isEmpty());
    }

    private static Path needed(Path folder, String name, String what) {
        Path file = folder.resolve(name);
        if (!Files.isRegularFile(file)) {
            throw new NothingUsableException(folder + ": there is no " + name + " in this folder (" + what + ")");
        }
        return file;
    }
}
