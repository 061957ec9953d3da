package swapworth.donor;

import static java.util.Objects.requireNonNull;

import java.math.BigDecimal;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Collections;
import java.util.Currency;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import swapworth.assumptions.Assumptions;
import swapworth.listing.CandidateCar;
import swapworth.listing.CarsFile;
import swapworth.listing.Listings;
import swapworth.listing.ListingsRead;
import swapworth.market.Answer;
import swapworth.market.CannotTell;
import swapworth.market.PriceModel;
import swapworth.reading.Conventions;
import swapworth.reading.FolderSettings;
import swapworth.reading.RowsRead;
import swapworth.reading.Spelling;
import swapworth.table.Cell;
import swapworth.table.Column;
import swapworth.table.Table;

/**
 * Everything that a folder's files say of donors and recipients: landed costs by {@code fees.csv}, recoveries by {@code partout.csv} and
 * {@code parts.csv}. What is missing is left out; what follows from several files is worked out when it is first asked for.
 */
public final class DonorStudy {

    /** The number of states of the market, unless told otherwise. */
    public static final int DRAWS = 2_000;
    /** The seed of the states, unless told otherwise. */
    public static final long SEED = 1;

    private final Currency currency;
    private final Optional<LocalDate> on;
    private final Answer<Landed> landed;
    private final Answer<CarsCompared> compared;
    private final List<RowsRead> read;

    private DonorStudy(Currency currency, Optional<LocalDate> on, Answer<Landed> landed, Answer<CarsCompared> compared,
            List<RowsRead> read) {
        this.currency = requireNonNull(currency, "currency");
        this.on = requireNonNull(on, "on");
        this.landed = landed;
        this.compared = compared;
        this.read = List.copyOf(read);
    }

    /**
     * The currency of all amounts.
     *
     * @return the base currency
     */
    public Currency currency() {
        return currency;
    }

    /**
     * The day on which parts are priced.
     *
     * @return nothing where there are no dates
     */
    public Optional<LocalDate> on() {
        return on;
    }

    /**
     * The landed costs.
     *
     * @return why there are none without fees.csv, or where no car to buy has a price
     */
    public Answer<Landed> landed() {
        return landed;
    }

    /**
     * The parts of each car that partout.csv names.
     *
     * @return in the order of the cars
     */
    public List<PartOut> partOuts() {
        return compared.match(CarsCompared::partOuts, no -> List.of());
    }

    /**
     * What used parts sell for.
     *
     * @return nothing without partout.csv
     */
    public Optional<PartsMarket> market() {
        return compared.told().map(CarsCompared::market);
    }

    /**
     * What became of the rows of each file.
     *
     * @return counts and problems
     */
    public List<RowsRead> read() {
        return read;
    }

    /**
     * Donors side by side, and recipients.
     *
     * @return a purpose with no priced car is left out; empty without partout.csv
     */
    public List<Choice> choices() {
        return compared.match(CarsCompared::choices, no -> List.of());
    }

    /**
     * What else could be done with each donor.
     *
     * @return one for each donor that partout.csv names and that has a price
     */
    public List<DonorUses> uses() {
        return compared.match(CarsCompared::uses, no -> List.of());
    }

    /**
     * What cars that do not run are worth.
     *
     * @return one for each such car; empty without listings
     */
    public List<RunningBracket> brackets() {
        return compared.match(CarsCompared::brackets, no -> List.of());
    }

    /**
     * {@link #choices()} as tables.
     *
     * @return one a purpose, or why there are none
     */
    public Answer<List<Table>> choiceTables() {
        return tables(choices(), c -> c.table(currency.getCurrencyCode()), "no car to buy in cars.csv has a price or a planned bid",
                "the price or planned_bid of each");
    }

    /**
     * {@link #brackets()} as tables.
     *
     * @return one a car, or why there are none
     */
    public Answer<List<Table>> bracketTables() {
        return tables(brackets(), b -> b.table(currency.getCurrencyCode()),
                "no car to buy is stated not to run, or no listings tell what such cars sell for",
                "for a car that does not run, its state in the column runs, beside a listings.csv");
    }

    /**
     * {@link #uses()} as tables.
     *
     * @return one a donor, or why there are none
     */
    public Answer<List<Table>> useTables() {
        return tables(uses(), u -> u.table(currency.getCurrencyCode()), "no donor that partout.csv names has a price or a planned bid",
                "its price or planned_bid in cars.csv");
    }

    private <T> Answer<List<Table>> tables(List<T> found, Function<T, Table> table, String none, String needed) {
        return compared.flatMap(c -> Answer.of(Optional.of(found.stream().map(table).toList()).filter(tables -> !tables.isEmpty()),
                () -> CannotTell.without(none, needed)));
    }

    /**
     * The car to look at first: the donor with the lowest net cost, gear to replace added, of those that partout.csv names, else the
     * recipient; where no file speaks of parts, the car with the lowest landed cost.
     *
     * @return its name, or why there is none
     */
    public Answer<String> first() {
        return choices().isEmpty() ? landed.map(l -> Collections.min(l.costs(), LandedCost.CHEAPEST).purchase().car())
                : new Answer.Told<>(choices().get(0).options().get(0).car().name());
    }

    /**
     * Reads the files of a folder and works everything out.
     *
     * @param folder the folder
     * @param cars the cars in play
     * @param currency the base currency
     * @param model the price model of the folder's listings, where there are any
     * @param state the states of the market, those of the model where there is one, with the valuation day
     * @param stated what stands in where no file speaks; its amounts of money are taken at the rates of the folder
     * @return the study
     */
    public static DonorStudy of(Path folder, List<CandidateCar> cars, Currency currency, Optional<PriceModel> model, MarketState state,
            Assumptions stated) {
        return of(new DonorFiles(folder, currency, stated), cars, currency, model, state, Optional.empty());
    }

    /** The same with files that were found already, and the most to be paid in all for one car where it is stated. */
    static DonorStudy of(DonorFiles files, List<CandidateCar> cars, Currency currency, Optional<PriceModel> model,
            MarketState state, Optional<BigDecimal> target) {
        Answer<Landed> landed = files.landed(cars, model, state, target);
        Answer<CarsCompared> compared = files.compared(cars, model, state, landed.told());
        return new DonorStudy(currency, state.on(), landed, compared, files.read());
    }

    /**
     * Everything that the files of a folder say, on the last day seen. Without listings nothing is known of what whole cars are worth, and
     * without {@code cars.csv} there is no car to speak of.
     *
     * @param folder the folder
     * @param target the most to be paid in all for one car
     * @return the study
     * @throws swapworth.reading.UnusableFileException if one of the files cannot be used as a whole
     */
    public static DonorStudy of(Path folder, BigDecimal target) {
        Assumptions assumptions = Assumptions.ofFolder(folder);
        Path listings = folder.resolve("listings.csv");
        Optional<ListingsRead> seen = Files.isRegularFile(listings)
                ? Optional.of(Listings.read(listings)).filter(l -> !l.listings().isEmpty()) : Optional.empty();
        Optional<PriceModel> model = seen.map(l -> PriceModel.options().with(assumptions).fit(l.cars()));
        Path file = folder.resolve(DonorFiles.CARS);
        Optional<CarsFile> cars = Files.isRegularFile(file) ? Optional.of(seen.map(listed -> CarsFile.read(file, listed))
                .orElseGet(() -> CarsFile.read(file))) : Optional.empty();
        Currency currency = cars.map(CarsFile::currency).or(() -> seen.map(ListingsRead::baseCurrency))
                .orElseGet(() -> FolderSettings.of(folder, Conventions.unstated()).currency());
        DonorStudy study = of(new DonorFiles(folder, currency, assumptions), cars.map(CarsFile::cars).orElse(List.of()), currency, model,
                MarketState.of(model, model.flatMap(PriceModel::lastSeen)), Optional.of(target));
        List<RowsRead> accounts = new ArrayList<>(study.read);
        cars.ifPresent(c -> accounts.add(0, c.read()));
        return new DonorStudy(currency, study.on, study.landed, study.compared, accounts);
    }

    /**
     * The landed cost of a car.
     *
     * @param car what the car is called
     * @return its lines, or why there are none
     */
    public Answer<LandedCost> landedOf(String car) {
        return landed.flatMap(l -> Answer.of(l.of(car), () -> CannotTell.without("cars.csv has no car '" + car
                + "' to buy that has a price or a planned bid", "a row of that name with one of the two")));
    }

    /**
     * The parts of a car.
     *
     * @param car what the car is called
     * @return why there are none where partout.csv does not name it
     */
    public Answer<PartOut> partOut(String car) {
        String key = Spelling.name(car);
        return compared.flatMap(c -> Answer.of(c.partOuts().stream().filter(p -> Spelling.name(p.car().name()).equals(key)).findFirst(),
                () -> CannotTell.without("partout.csv does not name the car '" + car + "'", "its parts, a row each")));
    }

    /**
     * The parts of a car that the study chose itself.
     *
     * @param car what the car is called, as {@link #first()} tells it
     * @return why there are none: no partout.csv first, then no car
     */
    public Answer<PartOut> partOut(Answer<String> car) {
        return compared.flatMap(c -> car.flatMap(this::partOut));
    }

    /**
     * What a reader looks at of each car's parts: the recovery first.
     *
     * @return tables
     */
    public List<Table> partTables() {
        List<Table> tables = new ArrayList<>();
        for (PartOut out : partOuts()) {
            out.recovery().ifPresent(recovery -> {
                tables.add(recovery.table(currency.getCurrencyCode()));
                tables.add(recovery.partsTable(currency.getCurrencyCode()));
                tables.add(recovery.monthsTable(currency.getCurrencyCode()));
            });
            tables.add(out.leftTable());
        }
        return tables;
    }

    /**
     * Every part on sale of every car: for machines.
     *
     * @return one row a part or bundle
     */
    public Table partsTable() {
        Table.Builder table = Table.titled("Parts on sale, " + currency.getCurrencyCode())
                .columns(Column.words("car"), Column.words("part"),
                Column.number("pieces", ""), Column.number("sells_for", ""), Column.number("low_80", ""), Column.number("high_80", ""),
                Column.words("priced_by"), Column.number("chance_to_sell", ""), Column.number("net", ""), Column.number("hours", ""),
                Column.number("net_per_hour", ""));
        for (PartOut out : partOuts()) {
            for (Recovery.PartResult p : out.recovery().map(Recovery::parts).orElse(List.of())) {
                table.row(Cell.words(out.car().name()), Cell.words(p.name()), Cell.whole(p.pieces()), Cell.number(p.price(), 2),
                        Cell.number(p.range80().low(), 2), Cell.number(p.range80().high(), 2), Cell.words(p.priceFrom()),
                        Cell.number(p.chanceSold(), 3), Cell.number(p.net(), 2), Cell.number(p.hours(), 2), Cell.number(p.perHour(), 2));
            }
        }
        return table.build();
    }

    /** How many cars and offers it speaks of. */
    @Override
    public String toString() {
        return "donors and recipients: landed costs of " + landed.told().map(l -> l.costs().size()).orElse(0) + " cars, parts of "
                + partOuts().size() + ", by " + offersOfParts();
    }

    /**
     * How many offers of parts stand behind the prices of parts.
     *
     * @return for instance {@code 12 offers of parts}
     */
    public String offersOfParts() {
        int offers = market().map(PartsMarket::offers).orElse(0);
        return offers + (offers == 1 ? " offer of parts" : " offers of parts");
    }
}
