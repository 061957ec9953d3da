package swapworth.donor;

import java.math.BigDecimal;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Currency;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import swapworth.assumptions.Assumptions;
import swapworth.assumptions.Question;
import swapworth.listing.CandidateCar;
import swapworth.listing.CarFacts;
import swapworth.market.Answer;
import swapworth.market.CannotTell;
import swapworth.market.PriceModel;
import swapworth.reading.Conventions;
import swapworth.reading.FolderSettings;
import swapworth.reading.RowsRead;
import swapworth.reading.Spelling;

/** Reads what a folder says of donors and recipients: {@code fees.csv}, {@code partout.csv} and {@code parts.csv}. */
final class DonorFiles {
    static final String CARS = "cars.csv";

    private final Path folder;
    private final Currency currency;
    private final FolderSettings settings;
    private final Assumptions assumptions;
    private final List<RowsRead> read = new ArrayList<>();

    DonorFiles(Path folder, Currency currency, Assumptions stated) {
        this.folder = folder;
        this.currency = currency;
        this.settings = FolderSettings.of(folder, Conventions.unstated());
        this.assumptions = stated.in(currency, settings.rates());
    }

    /** What became of the rows of each file that was read so far. */
    List<RowsRead> read() {
        return read;
    }

    /** The landed costs by fees.csv, or why there are none. */
    Answer<Landed> landed(List<CandidateCar> cars, Optional<PriceModel> model, MarketState state, Optional<BigDecimal> target) {
        Path fees = folder.resolve("fees.csv");
        if (!Files.isRegularFile(fees)) {
            return without("fees.csv", "what a purchase costs beside the bid: table, kind, from, to, flat, percent, ...");
        }
        FeeSchedule schedule = FeeSchedule.read(fees, settings, currency, assumptions);
        schedule.read().told().ifPresent(read::add);
        Landed costs = Landed.of(cars, schedule, target, car -> model.flatMap(m -> state.cars().flatMap(draws ->
                Shading.of(car, m, draws, state.on(), assumptions))));
        return Answer.of(Optional.of(costs).filter(l -> !l.costs().isEmpty()), this::noPrice);
    }

    /** What cars give back by partout.csv and parts.csv, or why nobody can tell. */
    Answer<CarsCompared> compared(List<CandidateCar> cars, Optional<PriceModel> model, MarketState state, Optional<Landed> landed) {
        Path partout = folder.resolve("partout.csv");
        if (!Files.isRegularFile(partout)) {
            return without("partout.csv", "car, part, goes_to: which parts of which car are sold, kept, scrapped or go into the swap");
        }
        PartoutFile file = PartoutFile.read(partout, cars, settings, currency);
        read.add(file.read());
        assumptions.amountsInQuestion(Question.DONOR).ifPresent(read::add);
        Path parts = folder.resolve("parts.csv");
        PartOffers offers = Files.isRegularFile(parts) ? PartOffers.read(parts, settings, currency) : PartOffers.none();
        if (Files.isRegularFile(parts)) {
            read.add(offers.read());
        }
        PartsMarket market = PartsMarket.fit(offers, gears(cars, model), state.on(), assumptions);
        AssumptionDraws drawn = new AssumptionDraws(assumptions, state.count(), state.seed());
        List<CandidateCar> named = cars.stream().filter(car -> file.speaksOf(car.name())).toList();
        List<PartOut> partOuts = named.stream().parallel().map(car -> PartOut.of(car, file, market, state, drawn)).toList();
        return new Answer.Told<>(new CarsCompared(cars, landed, partOuts, market, state, drawn, model));
    }

    /** Which running gear each line carries, by the cars in play and the listings; none for a line whose rows name several. */
    static Map<String, String> gears(List<CandidateCar> cars, Optional<PriceModel> model) {
        Map<String, String> gears = new HashMap<>();
        List<CarFacts> facts = new ArrayList<>();
        model.ifPresent(m -> m.cars().forEach(car -> facts.add(car.facts())));
        cars.stream().filter(car -> car.role() != CandidateCar.Role.FINISHED).forEach(car -> facts.add(car.facts()));
        for (CarFacts one : facts) {
            one.runningGear().ifPresent(gear -> gears.merge(Spelling.name(one.vehicle()), Spelling.name(gear),
                    (a, b) -> a.equals(b) ? a : ""));
        }
        gears.values().removeIf(String::isEmpty);
        return gears;
    }

    private <T> Answer<T> without(String name, String holds) {
        return new Answer.NotTold<>(Files.isRegularFile(folder.resolve(CARS))
                ? CannotTell.without("there is no " + name, "that file (" + holds + ")") : noPrice());
    }

    private CannotTell noPrice() {
        return Files.isRegularFile(folder.resolve(CARS))
                ? CannotTell.without("no car to buy in cars.csv has a price or a planned bid", "the price or planned_bid of each")
                : CannotTell.without("there is no " + CARS, "that file (the cars that you think of buying: name, vehicle, role, price or"
                        + " planned_bid, ...)");
    }
}
