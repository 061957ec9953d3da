package swapworth.swap;

import static java.util.Objects.requireNonNull;

import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Collections;
import java.util.Currency;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import swapworth.assumptions.Assumptions;
import swapworth.listing.CandidateCar;
import swapworth.listing.CarsFile;
import swapworth.listing.LevelOfTrade;
import swapworth.listing.Mileage;
import swapworth.market.Answer;
import swapworth.market.CannotTell;
import swapworth.market.Figures;
import swapworth.market.PriceModel;
import swapworth.market.Range;
import swapworth.market.ValueDraws;
import swapworth.reading.Conventions;
import swapworth.reading.DistanceUnit;
import swapworth.reading.FolderSettings;
import swapworth.reading.RowProblem;
import swapworth.reading.Spelling;
import swapworth.reading.UnusableFileException;
import swapworth.table.Cell;
import swapworth.table.Column;
import swapworth.table.Table;

/**
 * The finished cars of a folder, each with its answer.
 *
 * @param answers one for each car of the role finished in {@code cars.csv}
 * @param currency the base currency
 * @param problems cells of these cars, and rows of {@code swaps.csv}, to look at
 * @param rejected rows of {@code swaps.csv} that could not be read
 * @param notes what was used and what further files would answer
 * @param assumptions the assumptions that the answers rest on
 */
public record Swaps(List<SwapAnswer> answers, Currency currency, List<RowProblem> problems, List<RowProblem> rejected, List<String> notes,
        Assumptions assumptions) {
    private static final String SEEN = "swaps.csv";

    /** Copies the lists in. */
    public Swaps {
        answers = List.copyOf(answers);
        requireNonNull(currency, "currency");
        requireNonNull(assumptions, "assumptions");
        problems = List.copyOf(problems);
        rejected = List.copyOf(rejected);
        notes = List.copyOf(notes);
    }

    /**
     * The first finished car that has a value.
     *
     * @return its value, or what is missing
     */
    public Answer<SwapValue> first() {
        List<Answer<SwapValue>> all = answers.stream().map(SwapAnswer::answer).toList();
        return all.stream().filter(a -> a.told().isPresent()).findFirst().or(() -> all.stream().findFirst())
                .orElseGet(() -> new Answer.NotTold<>(CannotTell.without("cars.csv has no car of the role finished",
                        "a row for the finished car, with vehicle and gear_line")));
    }

    private static Optional<RowProblem> strangeGearLine(CandidateCar car, PriceModel model) {
        return SwapWords.text(car.facts().further(), "gear_line").filter(line -> model.lines().stream()
                .noneMatch(known -> Spelling.name(known).equals(Spelling.name(line))))
                .map(line -> new RowProblem(car.origin().file(), car.origin().line(), "gear_line", line, RowProblem.Kind.ODD,
                        "no listing is of this line, so that none tells of its running gear"
                                + Spelling.nearest(line, model.lines()).map(near -> "; did you mean " + near + "?").orElse("")));
    }

    /** The donor's cluster shows the donor's distance: who takes it over must be told, and nobody has said a word. */
    private static Optional<RowProblem> untold(CarsFile cars, FinishedCar stated, FinishedCar car) {
        return cars.cars().stream().filter(c -> stated.cluster().isEmpty() && car.cluster().isPresent() && c.name().equals(car.name()))
                .findFirst().map(c -> new RowProblem(c.origin().file(), c.origin().line(), "cluster", "", RowProblem.Kind.QUESTION,
                        "partout.csv lets the donor's instrument cluster go into this car, and its odometer shows the donor's distance:"
                                + " which cluster is in it, and what did each odometer read when? Others must be told"));
    }

    /** A factory equivalent whose running gear is another one than that of the finished car is no equivalent. */
    private static Optional<RowProblem> otherGear(CarsFile cars, SwapValue value) {
        Situation s = value.situation();
        return cars.cars().stream().filter(c -> c.role() == CandidateCar.Role.FACTORY_EQUIVALENT).findFirst()
                .filter(c -> s.factory.isPresent() && !s.model.runningGear(s.factory.get()).equals(s.model.runningGear(s.finished)))
                .map(c -> new RowProblem(c.origin().file(), c.origin().line(), "running_gear", c.facts().runningGear().orElse(""),
                        RowProblem.Kind.QUESTION, "the factory equivalent '" + c.name() + "' has the running gear '"
                                + s.model.runningGear(s.factory.get()) + "' and the finished car '" + value.car().name() + "' has '"
                                + s.model.runningGear(s.finished) + "': is there a car that the maker sold with that one?"));
    }

    /**
     * Values the finished cars of a folder.
     *
     * @param folder the folder, in which {@code swaps.csv} may lie
     * @param cars what its {@code cars.csv} says
     * @param currency the base currency of the model
     * @param model the price model of its listings
     * @param on the valuation day; without one the last day seen
     * @param level the level of trade; without one private asking
     * @return one answer a car
     * @throws swapworth.reading.UnusableFileException if {@code swaps.csv} is there and cannot be used as a whole
     */
    public static Swaps of(Path folder, CarsFile cars, Currency currency, PriceModel model, Optional<LocalDate> on,
            Optional<LevelOfTrade> level) {
        FolderSettings settings = FolderSettings.of(folder, Conventions.unstated());
        FinishedCars finished = FinishedCars.of(cars, settings, currency, model.assumptions());
        List<RowProblem> problems = new ArrayList<>(finished.problems());
        cars.cars().stream().filter(car -> car.role() == CandidateCar.Role.FINISHED)
                .forEach(car -> strangeGearLine(car, model).ifPresent(problems::add));
        if (finished.cars().isEmpty()) {
            return new Swaps(List.of(), currency, problems, List.of(), List.of(), model.assumptions());
        }
        Path file = folder.resolve(SEEN);
        Optional<SwapsFile> seen = Files.isRegularFile(file) ? seen(file, currency, model, problems) : Optional.empty();
        seen.ifPresent(read -> problems.addAll(problems(read, model)));
        List<String> notes = new ArrayList<>(notes(seen, finished.cars()));
        SwapOptions options = options(finished, seen, on, level);
        ValueDraws draws = options.draws(model);
        PartsOfSwap parts = new PartsOfSwap(folder, cars.cars(), currency, model, draws, on.or(model::lastSeen));
        List<SwapAnswer> answers = new ArrayList<>();
        for (FinishedCar stated : finished.cars()) {
            FinishedCar car = parts.filled(stated, notes);
            untold(cars, stated, car).ifPresent(problems::add);
            SwapAnswer answer = options.with(draws).withOffers(seen.map(r -> r.offersFor(car.name())).orElse(List.of())).value(car, model);
            answers.add(answer);
            if (answer instanceof SwapValue value) {
                otherGear(cars, value).ifPresent(problems::add);
            }
        }
        return new Swaps(answers, currency, problems, seen.map(read -> read.read().rejected()).orElse(List.of()), notes,
                model.assumptions());
    }

    private static SwapOptions options(FinishedCars finished, Optional<SwapsFile> seen, Optional<LocalDate> on,
            Optional<LevelOfTrade> level) {
        SwapOptions options = SwapValue.options().withSeen(seen.map(SwapsFile::seen).orElse(List.of()));
        options = on.map(options::on).orElse(options);
        options = level.map(options::with).orElse(options);
        return finished.factoryEquivalent().map(options::withFactoryEquivalent).orElse(options);
    }

    /** What a reader should look at in the rows of the file. */
    private static List<RowProblem> problems(SwapsFile seen, PriceModel model) {
        List<RowProblem> problems = new ArrayList<>(seen.read().rejected());
        problems.addAll(seen.read().setAside());
        problems.addAll(seen.read().oddities());
        problems.addAll(seen.read().questions());
        problems.addAll(seen.problems());
        problems.addAll(seen.unusedColumns(model.furtherColumns()));
        return problems;
    }

    /** What the file holds, or what stands in where there is none. */
    private static List<String> notes(Optional<SwapsFile> seen, List<FinishedCar> finished) {
        if (seen.isEmpty()) {
            return List.of("without " + SEEN + " (swaps that you saw for sale or sold, and offers for your own) the factor of who built it"
                    + " and the position between stock and factory are assumptions");
        }
        int swaps = seen.get().seen().size();
        List<String> notes = new ArrayList<>(List.of(SEEN + ": " + seen.get().read().counts().sentence() + "; " + swaps
                + (swaps == 1 ? " swap of other people" : " swaps of other people")));
        for (String name : seen.get().offers().keySet()) {
            if (finished.stream().noneMatch(c -> Spelling.name(c.name()).equals(Spelling.name(name)))) {
                notes.add(SEEN + ": own_car '" + name + "' is no finished car of cars.csv; its rows teach nothing");
            }
        }
        return notes;
    }

    /** What the file says; one that holds nothing says nothing, and that is told. */
    private static Optional<SwapsFile> seen(Path file, Currency currency, PriceModel model, List<RowProblem> problems) {
        try {
            return Optional.of(SwapsFile.read(file, currency, model.cars()));
        } catch (UnusableFileException e) {
            if (!e.isOfNothing()) {
                throw e;
            }
            problems.add(new RowProblem(SEEN, 0, "", "", RowProblem.Kind.ODD, UnusableFileException.IS_EMPTY));
            return Optional.empty();
        }
    }

    /**
     * One row a car: for machines.
     *
     * @return name, value and ranges to the cent, what holds it, level of trade, day, and what it rests on
     */
    public Table table() {
        String money = currency.getCurrencyCode();
        DistanceUnit unit = answers.stream().flatMap(a -> Stream.of(a.car().facts().mileage(), a.car().facts().gearMileage()))
                .flatMap(Optional::stream).map(Mileage::unit).findFirst().orElse(DistanceUnit.MI);
        Table.Builder table = Table.titled("Finished swaps, " + money).columns(Column.words("name"), Column.words("vehicle"),
                Column.number("value", money).key("value"), Column.number("low 80", money).key("low_80"), Column.number("high 80", money)
                        .key("high_80"),
                Column.number("low 95", money).key("low_95"), Column.number("high 95", money).key("high_95"),
                Column.number("prior share", "").key("prior_share"), Column.sentences("largest assumption"), Column.words("level"),
                Column.words("valued on"), Column.sentences("basis"),
                Column.number("mileage", unit.symbol()).key("mileage_" + unit.symbol()),
                Column.number("gear mileage", unit.symbol()).key("gear_mileage_" + unit.symbol()), Column.sentences("remarks"));
        for (SwapAnswer answer : answers) {
            FinishedCar car = answer.car();
            List<Cell> cells = new ArrayList<>(List.of(Cell.words(car.name()), Cell.words(car.facts().vehicle())));
            cells.addAll(answer.match(Swaps::cells, none -> Collections.nCopies(10, Cell.BLANK)));
            cells.add(car.facts().mileage().map(m -> Cell.number(unit.fromMiles(m.miles()), 0)).orElse(Cell.BLANK));
            cells.add(car.facts().gearMileage().map(m -> Cell.number(unit.fromMiles(m.miles()), 0)).orElse(Cell.BLANK));
            cells.add(Cell.words(answer.match(value -> "", none -> "cannot tell; needed: " + String.join("; ", none.needed()))));
            table.row(cells);
        }
        return table.build();
    }

    private static List<Cell> cells(SwapValue value) {
        Range range80 = value.range(0.80);
        Range range95 = value.range(0.95);
        return List.of(cents(value.median()), cents(range80.low()), cents(range80.high()), cents(range95.low()), cents(range95.high()),
                Figures.share(value.priorShare()).exactTo(value.priorShare(), 4),
                Cell.words(value.largestAssumption().assumption()), Cell.words(value.level().words()),
                Cell.words(value.on().map(LocalDate::toString).orElse("")), Cell.words(value.basis()));
    }

    /** Rounded for people, to the cent for machines, as the values of listings are. */
    private static Cell cents(double amount) {
        return Figures.money(amount).exactTo(amount, 2);
    }
}
