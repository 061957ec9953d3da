package swapworth.project;

import static java.util.Objects.requireNonNull;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Currency;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import swapworth.assumptions.Assumption;
import swapworth.assumptions.Assumptions;
import swapworth.assumptions.Question;
import swapworth.donor.FeeSchedule;
import swapworth.donor.LandedCost;
import swapworth.donor.Purchase;
import swapworth.listing.CandidateCar;
import swapworth.listing.CandidateCar.Role;
import swapworth.listing.CarFacts;
import swapworth.listing.CarsFile;
import swapworth.listing.LevelOfTrade;
import swapworth.listing.Listings;
import swapworth.listing.ListingsRead;
import swapworth.listing.Mileage;
import swapworth.listing.MileageStatus;
import swapworth.listing.PriceIncludes;
import swapworth.listing.Runs;
import swapworth.market.Answer;
import swapworth.market.CannotTell;
import swapworth.market.MarketIndex;
import swapworth.market.Outlook;
import swapworth.market.PriceModel;
import swapworth.market.Subject;
import swapworth.market.ValueDraws;
import swapworth.reading.Conventions;
import swapworth.reading.Currencies;
import swapworth.reading.FolderSettings;
import swapworth.reading.RowsRead;
import swapworth.reading.UnusableFileException;
import swapworth.statistics.AmountLaw;
import swapworth.statistics.UncertainSum;
import swapworth.swap.SwapValue;
import swapworth.swap.Swaps;
import swapworth.table.Cell;

/**
 * The whole undertaking, from the files of one folder: whatever these allow is there, and for the rest it says which file is missing.
 * All draws that are put together belong to the same states of the market, draw by draw.
 */
public final class Undertaking {
    private final Answers answers;
    private final List<String> missing;
    private final List<RowsRead> read;
    private final Assumptions assumptions;

    /**
     * What the listings of the folder say, where they were read before.
     *
     * @param read the listings
     * @param model the price model
     * @param cars the cars in play
     * @param swaps the finished cars
     */
    public record Market(ListingsRead read, PriceModel model, CarsFile cars, Swaps swaps) {

        Currency currency() {
            return read.baseCurrency();
        }

        /**
         * What the listings of a folder say.
         *
         * @param folder the folder
         * @param on the valuation day; unless stated the last day seen
         * @return nothing without usable listings or without {@code cars.csv}
         * @throws UnusableFileException if one of the files cannot be used as a whole
         */
        public static Optional<Market> of(Path folder, Optional<LocalDate> on) {
            return of(folder, on, Optional.empty(), Listings::read,
                    read -> PriceModel.options().with(Assumptions.ofFolder(folder)).fit(read.cars()));
        }

        /**
         * What the listings of a folder say, read and fitted as stated.
         *
         * @param folder the folder
         * @param on the valuation day; unless stated the last day seen
         * @param level the level of trade of a finished car; unless stated private asking
         * @param reading reads {@code listings.csv}
         * @param fitting fits the model
         * @return nothing without usable listings or without {@code cars.csv}
         * @throws UnusableFileException if one of the files cannot be used as a whole
         */
        public static Optional<Market> of(Path folder, Optional<LocalDate> on, Optional<LevelOfTrade> level,
                Function<Path, ListingsRead> reading, Function<ListingsRead, PriceModel> fitting) {
            Path listings = folder.resolve("listings.csv");
            if (!Files.isRegularFile(listings) || !Files.isRegularFile(folder.resolve("cars.csv"))) {
                return Optional.empty();
            }
            ListingsRead read = reading.apply(listings);
            return read.listings().isEmpty() ? Optional.empty() : Optional.of(of(folder, read, fitting.apply(read), on, level));
        }

        /**
         * What listings that were read before say.
         *
         * @param folder the folder, with {@code cars.csv} in it
         * @param read the listings
         * @param model their price model
         * @param on the valuation day; unless stated the last day seen
         * @param level the level of trade of finished cars; unless stated private asking
         * @return the model with the cars in play
         */
        public static Market of(Path folder, ListingsRead read, PriceModel model, Optional<LocalDate> on, Optional<LevelOfTrade> level) {
            CarsFile cars = CarsFile.read(folder.resolve("cars.csv"), read);
            return new Market(read, model, cars, Swaps.of(folder, cars, read.baseCurrency(), model, on, level));
        }
    }

    /**
     * All answers, each with the reason where the files bear none.
     *
     * @param market what the listings of the folder say
     * @param ledger the ledger
     * @param forecast the forecast at completion
     * @param finished the value of the finished car, the first of the role finished that has one
     * @param equity what is left
     * @param finishOrStop whether to go on
     * @param redoCost what it would cost to do it again
     * @param nowOrLater whether to buy now or later
     * @param walkAway the prices at which to walk away
     * @param gates what must be settled first
     * @param alternatives ways to get a car, held against each other
     */
    public record Answers(Answer<Market> market, Answer<Ledger> ledger, Answer<Forecast> forecast, Answer<SwapValue> finished,
            Answer<Equity> equity, Answer<FinishOrStop> finishOrStop, Answer<RedoCost> redoCost, Answer<NowOrLater> nowOrLater,
            Answer<WalkAway> walkAway, Answer<Gates> gates, Answer<Alternatives> alternatives) {
    }

    private Undertaking(Path folder, Optional<LocalDate> on, Optional<Market> market) {
        Assumptions stated = Assumptions.ofFolder(folder);
        missing = new ArrayList<>();
        read = new ArrayList<>();
        Ledger.Options options = Ledger.withDefaults().with(stated);
        Ledger.Options dated = on.map(options::on).orElse(options);
        Ledger.Options inBase = market.map(m -> dated.in(m.currency()).donors(m.cars().cars().stream()
                .filter(car -> car.role() == Role.DONOR).map(CandidateCar::name).collect(Collectors.toSet()))).orElse(dated);
        Answer<Ledger> ledger = file(folder, "ledger.csv",
                "the money of the undertaking: what is spent, still to come and left, finish or stop, redo cost")
                .map(inBase::read).flatMap(l -> usable(l, l.read(), l.entries().size()));
        assumptions = market.map(Market::currency).or(() -> ledger.told().map(Ledger::currency))
                .map(c -> stated.in(c, FolderSettings.of(folder, Conventions.unstated()).rates())).orElse(stated);
        ledger.told().flatMap(l -> assumptions.amountsInQuestion(Question.PROJECT)).ifPresent(read::add);
        Answer<Market> listed = Answer.of(market, () -> CannotTell.without(whyNoMarket(folder), "listings.csv (listings of such cars)"
                + " and cars.csv (the cars in play, and the finished one as a row of the role finished)"));
        Answer<SwapValue> finished = listed.flatMap(m -> m.swaps.first());
        if (market.isEmpty()) {
            missing.add("listings.csv and cars.csv (listings of such cars, and a row of the role finished): what the finished car is"
                    + " worth, and"
                    + " with it what is left, finish or stop, and now or later.");
        } else if (finished.told().isEmpty()) {
            missing.add("cars.csv: a row of the role finished that the listings can value: what is left, finish or stop, redo cost.");
        }
        int count = finished.told().map(f -> f.draws().length).orElse(Forecast.withDefaults().count());
        Answer<Draws> draws = listed.map(m -> new Draws(m, m.model.draws(count, 1), assumptions, on.or(m.model::lastSeen),
                finished.told()));
        Forecast.Options drawn = Forecast.withDefaults().with(assumptions).draws(count, 1);
        Forecast.Options moving = draws.told().map(d -> d.moving(drawn)).orElse(drawn);
        Answer<Forecast> forecast = ledger.map(moving::of);
        Answer<Both> both = forecast.flatMap(f -> finished.map(v -> new Both(f, v)));
        FeeSchedule fees = market.map(m -> fees(folder, m)).orElse(FeeSchedule.none(Currencies.USUAL));
        Answer<NowOrLater> nowOrLater = finished.flatMap(f -> draws.flatMap(d -> d.nowOrLater(folder, f, fees, forecast.told())));
        Answer<Gates> gates = file(folder, "gates.csv",
                "what must be settled first: lawful, may be stripped, inspectable, insurable, lender told")
                .map(Gates::read);
        gates.told().ifPresent(g -> read.add(g.read()));
        Map<String, double[]> values = draws.told().map(Draws::byName).orElse(Map.of());
        Alternatives.Options ways = Alternatives.withDefaults().with(assumptions);
        Answer<Alternatives> alternatives = file(folder, "alternatives.csv",
                "against what: the factory car, tuning the engine that is there, the cheaper swap")
                .map(f -> (values.isEmpty() ? ways : ways.withCars(values, 1)).read(f))
                .flatMap(a -> usable(a, a.rowsRead(), a.all().size()));
        missing.addAll(draws.told().map(d -> d.missing).orElse(List.of()));
        answers = new Answers(listed, ledger, forecast, finished, both.map(b -> Equity.of(b.sold, b.forecast)),
                both.flatMap(b -> draws.flatMap(d -> finishOrStop(b, d))),
                both.flatMap(b -> draws.map(d -> RedoCost.of(b.sold, b.forecast, d.carsSince(b)))), nowOrLater,
                draws.flatMap(d -> walkAway(d, fees)), gates, alternatives);
    }

    private static String whyNoMarket(Path folder) {
        List<String> absent = Stream.of("listings.csv", "cars.csv").filter(name -> !Files.isRegularFile(folder.resolve(name))).toList();
        return absent.isEmpty() ? "no row of listings.csv can be used" : "there is no " + String.join(" and no ", absent);
    }

    private static Answer<FinishOrStop> finishOrStop(Both both, Draws draws) {
        if (both.forecast.ledger().carSold().isPresent()) {
            return new Answer.NotTold<>(CannotTell.without("the finished car is sold: there is nothing left to finish or to stop",
                    "no row of the category car sold"));
        }
        return !both.forecast.ledger().sums().toFinish().isEmpty()
                ? new Answer.Told<>(FinishOrStop.of(both.sold, both.forecast, draws.exits(both)))
                : new Answer.NotTold<>(CannotTell.without("no row of ledger.csv is still to be paid or worked: there is nothing left to"
                        + " finish", "what it still needs, as rows of the status estimate or committed"));
    }

    private static Answer<WalkAway> walkAway(Draws draws, FeeSchedule fees) {
        return Answer.of(Optional.of(WalkAway.of(draws.valued(), fees)).filter(w -> !w.prices().isEmpty()), () -> CannotTell.without(
                "cars.csv has no two cars of one role that both have a price and a line of the listings",
                "a second car beside each: above which price one is not worth buying is told by the next best"));
    }

    /** The money and the finished car, with draws of what it sells for: money is spent for what is paid, not for what is asked. */
    private record Both(Forecast forecast, SwapValue finished, double[] sold) {
        Both(Forecast forecast, SwapValue finished) {
            this(forecast, finished, finished.soldDraws());
        }
    }

    /**
     * The undertaking of a folder.
     *
     * @param folder the folder
     * @return what its files allow
     * @throws UnusableFileException if one of the files cannot be used as a whole
     */
    public static Undertaking of(Path folder) {
        return of(folder, Optional.empty(), Market.of(folder, Optional.empty()));
    }

    /**
     * The undertaking of a folder on a day, with listings that were read before.
     *
     * @param folder the folder
     * @param on the day up to which rows of the ledger can be done; unless stated that of the last row that is done
     * @param market what its listings say, where there are any
     * @return what its files allow
     * @throws UnusableFileException if one of the files cannot be used as a whole
     */
    public static Undertaking of(Path folder, Optional<LocalDate> on, Optional<Market> market) {
        return new Undertaking(requireNonNull(folder, "folder"), on, market);
    }

    /** Keeps the account of a file's rows; a file without a usable row answers nothing, and says so. */
    private <T> Answer<T> usable(T found, RowsRead rows, int count) {
        read.add(rows);
        if (count > 0) {
            return new Answer.Told<>(found);
        }
        missing.add("Usable rows: " + rows.sentence() + ".");
        return new Answer.NotTold<>(CannotTell.without("no row can be used: " + rows.sentence(), "usable rows"));
    }

    private Answer<Path> file(Path folder, String name, String answers) {
        Path file = folder.resolve(name);
        if (Files.isRegularFile(file)) {
            return new Answer.Told<>(file);
        }
        missing.add(name + " (" + answers + ").");
        return new Answer.NotTold<>(CannotTell.without("there is no " + name, "that file (" + answers + ")"));
    }

    private FeeSchedule fees(Path folder, Market market) {
        return file(folder, "fees.csv", "what a purchase costs beside the price: when to walk away, now or later").match(
                file -> FeeSchedule.read(file, FolderSettings.of(folder, Conventions.unstated()), market.currency(), assumptions),
                none -> FeeSchedule.none(market.currency()));
    }

    /** Everything that is drawn with the market. */
    private static final class Draws {
        /** At so many steps of the bid its landed cost is worked out. */
        private static final int BIDS = 64;

        private final Market market;
        private final ValueDraws values;
        private final Assumptions assumptions;
        /** The day of the finished car's value, so that all cars are worth what they are on one day. */
        private final Optional<LocalDate> on;
        /** The finished car that is spoken of: its row may name the cars that it is made from. */
        private final Optional<SwapValue> finished;
        private final List<String> missing = new ArrayList<>();

        Draws(Market market, ValueDraws values, Assumptions assumptions, Optional<LocalDate> on, Optional<SwapValue> finished) {
            this.market = market;
            this.on = on;
            this.finished = finished;
            this.values = values;
            this.assumptions = assumptions;
        }

        private Optional<double[]> level(CarFacts facts) {
            if (!market.model.lines().contains(facts.vehicle())) {
                return Optional.empty();
            }
            return Optional.of(values.level(new Subject(facts, LevelOfTrade.PRIVATE_SOLD, PriceIncludes.NEITHER, on)));
        }

        /**
         * What the level of the donor's line may be beside its middle moves what parts bring in; that of the recipient's what cars cost.
         */
        Forecast.Options moving(Forecast.Options options) {
            Forecast.Options moving = options;
            double follow = assumptions.get("parts_move_with_cars").middle() / 100;
            Optional<double[]> donor = first(Role.DONOR).flatMap(car -> level(car.facts()));
            Optional<double[]> recipient = first(Role.RECIPIENT, Role.CANDIDATE).flatMap(car -> level(car.facts()));
            if (donor.isPresent()) {
                moving = moving.moving(Category.SOLD, damped(beside(donor.get()), follow));
            }
            return recipient.isPresent() ? moving.moving(Category.PURCHASE, beside(recipient.get())) : moving;
        }

        /** Draws over their median. */
        private static double[] beside(double[] draws) {
            return DrawFigures.times(draws, 1 / DrawFigures.median(draws));
        }

        List<WalkAway.Valued> valued() {
            List<WalkAway.Valued> all = new ArrayList<>();
            for (CandidateCar car : market.cars.cars()) {
                if (car.role() != Role.FINISHED && car.role() != Role.FACTORY_EQUIVALENT) {
                    level(car.facts()).ifPresent(value -> all.add(new WalkAway.Valued(car, value)));
                }
            }
            return all;
        }

        Map<String, double[]> byName() {
            Map<String, double[]> all = new HashMap<>();
            for (CandidateCar car : market.cars.cars()) {
                if (car.role() != Role.FINISHED) {
                    level(car.facts()).ifPresent(value -> all.put(car.name(), value));
                }
            }
            for (var answer : market.swaps.answers()) {
                if (answer instanceof SwapValue value) {
                    all.put(answer.car().name(), value.soldDraws());
                }
            }
            return all;
        }

        private double[] share(String name) {
            Assumption assumption = assumptions.get(name);
            double[] shares = AmountLaw.normal(assumption.middle() / 100, assumption.spread() / 100)
                    .draws(UncertainSum.normals(values.count(), name.hashCode()));
            for (int i = 0; i < shares.length; i++) {
                shares[i] = Math.max(0, Math.min(1, shares[i]));
            }
            return shares;
        }

        /**
         * The ways to stop, of cars that are bought: the recipient as it stands as long as its own gear is in it, what the listings say of
         * it without its engine, and the half-built car as a share of the finished. What is agreed is owed either way, so that it does not
         * speak for stopping.
         */
        List<FinishOrStop.Exit> exits(Both both) {
            Ledger ledger = both.forecast.ledger();
            double agreed = ledger.sums().agreedToPay().doubleValue();
            String owed = agreed == 0 ? ""
                    : "; less " + Cell.format(agreed, 0) + " that is agreed and still to be paid, which is owed either way";
            boolean recipient = bought(ledger, Role.RECIPIENT);
            boolean donor = bought(ledger, Role.DONOR);
            if (!recipient && !donor) {
                return List.of(new FinishOrStop.Exit("buying nothing", constant(-agreed),
                        "no purchase of the ledger is done or agreed" + owed));
            }
            double[] comesIn = both.forecast.toReceive(car -> (recipient || roleOf(car) != Role.RECIPIENT)
                    && (donor || roleOf(car) != Role.DONOR));
            double[] stopped = DrawFigures.plus(comesIn, constant(-agreed));
            if (!recipient) {
                return List.of(new FinishOrStop.Exit("buying no recipient, left-over parts sold", stopped,
                        "the parts that the ledger still expects; the donor's gear itself is not in it" + owed));
            }
            List<FinishOrStop.Exit> exits = new ArrayList<>();
            Optional<CandidateCar> row = first(Role.RECIPIENT, Role.CANDIDATE);
            if (row.isPresent() && gearIsIn(ledger)) {
                double[] ofOthers = both.forecast.toReceive(car -> roleOf(car) != Role.RECIPIENT && (donor || roleOf(car) != Role.DONOR));
                level(row.get().facts()).ifPresent(car -> exits.add(new FinishOrStop.Exit("recipient sold as it stands, its own gear in it",
                        DrawFigures.plus(DrawFigures.plus(car, ofOthers), constant(-agreed)),
                        "the price model (private sales) for '" + row.get().name() + "' of cars.csv, and what the ledger still expects"
                        + " from other cars, as long as no row of work on the recipient or the project is done and no part of the"
                        + " recipient is sold" + owed)));
            }
            level(both.finished.stock().toBuilder().runs(Runs.NO_ENGINE).build()).ifPresent(car -> exits.add(
                    new FinishOrStop.Exit("recipient sold without an engine, left-over parts sold", DrawFigures.plus(car, stopped),
                            "the price model (private sales, no engine), and the parts that the ledger still expects"
                            + (donor ? "; the donor's gear itself is not in it" : " of it: the donor is not bought") + owed)));
            if (donor) {
                double[] half = share("unfinished_share");
                for (int i = 0; i < half.length; i++) {
                    half[i] = half[i] * both.sold[i] + stopped[i];
                }
                exits.add(new FinishOrStop.Exit("sold half-built with all that belongs to it, left-over parts sold", half,
                        "an assumption: " + Math.round(assumptions.get("unfinished_share").middle()) + " % of the finished value, give or"
                        + " take " + Math.round(assumptions.get("unfinished_share").spread()) + owed));
            }
            return exits;
        }

        /**
         * Whether the car of a role is there: a purchase of it is done or agreed, or no row speaks of one and it was there before. A
         * purchase whose row names no car of a role counts where none names it.
         */
        private boolean bought(Ledger ledger, Role role) {
            List<Entry> purchases = ledger.entries().stream().filter(e -> e.category() == Category.PURCHASE
                    && e.direction() == Entry.Direction.OUT).toList();
            for (Role named : List.of(role, Role.UNKNOWN)) {
                List<Entry> ofIt = purchases.stream().filter(e -> e.cars().stream().anyMatch(car -> roleOf(car) == named)).toList();
                if (!ofIt.isEmpty()) {
                    return ofIt.stream().anyMatch(e -> e.status() != Entry.Status.ESTIMATE);
                }
            }
            return true;
        }

        /** Whether the recipient's own running gear is still in it, as far as the ledger tells. */
        private boolean gearIsIn(Ledger ledger) {
            return ledger.entries().stream().noneMatch(e -> e.cars().stream().map(this::roleOf).anyMatch(role -> role == Role.RECIPIENT
                    ? e.category() == Category.SOLD && e.status() != Entry.Status.ESTIMATE || isWorkDone(e)
                    : role == Role.UNKNOWN && isWorkDone(e)));
        }

        private static boolean isWorkDone(Entry entry) {
            return entry.status() == Entry.Status.ACTUAL && (entry.category() == Category.LABOUR || entry.category() == Category.OWN_HOURS);
        }

        /** Whether a name of the ledger means the recipient or the donor; unknown where it means neither. */
        private Role roleOf(String car) {
            for (Role role : List.of(Role.RECIPIENT, Role.DONOR)) {
                if (car.equals(role.words()) || finished.flatMap(f -> f.car().madeFrom(role)).filter(car::equalsIgnoreCase).isPresent()) {
                    return role;
                }
            }
            return market.cars.cars().stream().filter(c -> c.name().equalsIgnoreCase(car)).map(CandidateCar::role)
                    .map(role -> role == Role.CANDIDATE ? Role.RECIPIENT : role)
                    .filter(role -> role == Role.RECIPIENT || role == Role.DONOR).findFirst().orElse(Role.UNKNOWN);
        }

        /**
         * For each car that was bought while listings were seen: how such a car of the same age has moved since, by the line of its role.
         */
        Map<Integer, double[]> carsSince(Both both) {
            LocalDate on = both.forecast.ledger().on();
            Optional<LocalDate> first = market.read.cars().stream().flatMap(c -> c.firstSeen().stream()).min(LocalDate::compareTo);
            Map<Integer, double[]> since = new HashMap<>();
            for (Entry entry : both.forecast.ledger().entries()) {
                Optional<String> line = entry.shares().size() == 1 ? lineOf(entry.shares().get(0).car(), both) : Optional.empty();
                boolean seen = first.isPresent() && !entry.date().isBefore(first.get());
                if (entry.category() == Category.PURCHASE && entry.status() == Entry.Status.ACTUAL && seen && line.isPresent()) {
                    double[] now = ofTheAge(line.get(), on);
                    double[] then = ofTheAge(line.get(), entry.date());
                    for (int i = 0; i < now.length; i++) {
                        now[i] /= then[i];
                    }
                    since.put(entry.line(), now);
                }
            }
            return since;
        }

        /** A car of the line whose age is stated outright, so that it does not grow older from one day to another. */
        private double[] ofTheAge(String line, LocalDate day) {
            double age = assumptions.get("redo_age").middle();
            double miles = age * assumptions.get("miles_per_year").middle();
            CarFacts facts = CarFacts.of(line).ageYears(age).mileage(new Mileage(miles, MileageStatus.UNKNOWN)).build();
            return values.level(Subject.of(facts, LevelOfTrade.PRIVATE_ASKING, day));
        }

        private Optional<String> lineOf(String car, Both both) {
            Optional<String> line = market.cars.cars().stream().filter(c -> c.name().equals(car)).map(c -> c.facts().vehicle()).findFirst();
            if (car.equals("recipient")) {
                line = Optional.of(both.finished.car().facts().vehicle());
            } else if (car.equals("donor")) {
                line = both.finished.car().gearLine().or(() -> first(Role.DONOR).map(c -> c.facts().vehicle()));
            }
            return line.filter(market.model.lines()::contains);
        }

        /** The car that the row of the finished car names for the first of the roles, else the first of these roles, with a price. */
        private Optional<CandidateCar> first(Role... roles) {
            Optional<String> name = finished.flatMap(f -> f.car().madeFrom(roles[0]));
            Optional<CandidateCar> stated = market.cars.cars().stream().filter(car -> name.filter(car.name()::equalsIgnoreCase).isPresent()
                    && car.priceOrBid().isPresent()).findFirst();
            if (stated.isPresent()) {
                return stated;
            }
            for (Role role : roles) {
                for (CandidateCar car : market.cars.cars()) {
                    if (car.role() == role && car.priceOrBid().isPresent()) {
                        return Optional.of(car);
                    }
                }
            }
            return Optional.empty();
        }

        private List<double[]> factors(Outlook outlook, String line) {
            List<double[]> factors = new ArrayList<>();
            for (int h = 1; h <= Outlook.MOST_AHEAD; h++) {
                factors.add(outlook.factors(values, market.model.lines().contains(line) ? line : "", h));
            }
            return factors;
        }

        /**
         * How a landed cost moves when the bid moves by factors: fees by the percent and by steps follow the bid, flat ones stand. Between
         * the least and the most of all factors it is worked out at some bids and taken as straight between them.
         */
        private static List<double[]> landed(FeeSchedule fees, Purchase at, List<double[]> factors) {
            double least = 1;
            double most = 1;
            for (double[] month : factors) {
                for (double factor : month) {
                    least = Math.min(least, factor);
                    most = Math.max(most, factor);
                }
            }
            double step = Math.max((most - least) / BIDS, 1e-9);
            double now = LandedCost.of(fees, at).total().doubleValue();
            double[] of = new double[BIDS + 2];
            for (int k = 0; k < of.length; k++) {
                BigDecimal bid = at.bid().multiply(BigDecimal.valueOf(least + k * step)).setScale(2, RoundingMode.HALF_EVEN);
                of[k] = LandedCost.of(fees, new Purchase(at.car(), bid, at.seller(), at.includes(), at.runs(), at.keys(), at.miles()))
                        .total().doubleValue() / now;
            }
            List<double[]> landed = new ArrayList<>();
            for (double[] month : factors) {
                double[] ratios = new double[month.length];
                for (int i = 0; i < ratios.length; i++) {
                    double place = (month[i] - least) / step;
                    int below = (int) place;
                    ratios[i] = of[below] + (place - below) * (of[below + 1] - of[below]);
                }
                landed.add(ratios);
            }
            return landed;
        }

        private double[] constant(double amount) {
            double[] draws = new double[values.count()];
            java.util.Arrays.fill(draws, amount);
            return draws;
        }

        Answer<NowOrLater> nowOrLater(Path folder, SwapValue finished, FeeSchedule fees, Optional<Forecast> forecast) {
            Answer<Outlook> outlook = market.model.index().flatMap(MarketIndex::outlook);
            if (outlook instanceof Answer.NotTold<Outlook> no) {
                missing.add("listings.csv: now or later cannot be told: " + no.reason().reason() + "; needed: "
                        + no.reason().needed() + ".");
            }
            Optional<CandidateCar> donor = first(Role.DONOR);
            Optional<CandidateCar> recipient = first(Role.RECIPIENT, Role.CANDIDATE);
            if (donor.isEmpty() || recipient.isEmpty()) {
                missing.add("cars.csv: a donor and a recipient with a price or planned bid each: now or later.");
                return new Answer.NotTold<>(CannotTell.without("cars.csv has no donor and recipient with a price or planned bid each",
                        "one row of each role, with its price"));
            }
            return outlook.map(o -> compared(atLastLook(folder, finished), fees, forecast, o, donor.get(), recipient.get()));
        }

        /** The finished car on the day from which the months to come count: on a later one part of their movement would be in it. */
        private SwapValue atLastLook(Path folder, SwapValue finished) {
            return finished.on().equals(market.model.lastSeen()) ? finished : Swaps.of(folder, market.cars, market.currency(), market.model,
                    Optional.empty(), Optional.of(finished.level())).first().told()
                    .filter(then -> then.car().name().equals(finished.car().name())).orElse(finished);
        }

        private NowOrLater compared(SwapValue finished, FeeSchedule fees, Optional<Forecast> forecast, Outlook outlook, CandidateCar donor,
                CandidateCar recipient) {
            List<String> remarks = new ArrayList<>(List.of("Bought: " + donor.name() + " and " + recipient.name()
                    + " of cars.csv, or such cars"
                    + " later at the level of their lines; exit: " + finished.car().name() + ", at the mean movement of its two lines."));
            if (!finished.on().equals(on)) {
                remarks.add("The months count from the last look" + finished.on().map(day -> ", " + day).orElse("")
                        + ": the exit value is that of this day" + on.map(day -> " and not of " + day).orElse("") + ".");
            }
            List<NowOrLater.Leg> legs = new ArrayList<>();
            for (CandidateCar car : List.of(donor, recipient)) {
                Purchase purchase = Purchase.of(car, fees.currency()).orElseThrow();
                LandedCost cost = LandedCost.of(fees, purchase);
                if (!cost.whole()) {
                    remarks.add(car.name() + " costs more than is counted: " + String.join("; ", cost.missing()) + ".");
                }
                legs.add(new NowOrLater.Leg(car.name(), constant(cost.total().doubleValue()),
                        landed(fees, purchase, factors(outlook, car.facts().vehicle()))));
            }
            List<double[]> ofDonor = factors(outlook, donor.facts().vehicle());
            double back = forecast.map(f -> f.ledger().sums().byCategory().stream().filter(s -> s.name().equals(Category.SOLD.words()))
                    .mapToDouble(s -> s.atCompletion().doubleValue()).sum()).orElse(0.0);
            if (back != 0) {
                legs.add(new NowOrLater.Leg("parts", constant(back), damped(ofDonor,
                        assumptions.get("parts_move_with_cars").middle() / 100)));
                remarks.add("What parts bring back is the ledger's " + Cell.format(-back, 0)
                        + "; their prices follow those of the donor's line by "
                        + Math.round(assumptions.get("parts_move_with_cars").middle()) + " % (assumption parts_move_with_cars).");
            } else {
                remarks.add("Nothing is counted as coming back from parts: the ledger has no rows of parts sold.");
            }
            List<double[]> exit = new ArrayList<>();
            List<double[]> body = factors(outlook, finished.car().facts().vehicle());
            List<double[]> gear = factors(outlook, finished.car().gearLine().orElse(donor.facts().vehicle()));
            for (int h = 0; h < body.size(); h++) {
                double[] both = body.get(h).clone();
                for (int i = 0; i < both.length; i++) {
                    both[i] = Math.sqrt(both[i] * gear.get(h)[i]);
                }
                exit.add(both);
            }
            if (forecast.filter(f -> f.ledger().sums().carsBought() >= 2).isPresent()) {
                remarks.add("By the ledger two cars are bought already: this then speaks of another such pair.");
            }
            return NowOrLater.of(market.currency().getCurrencyCode(), legs,
                    new NowOrLater.Leg("exit", finished.soldDraws(), exit), remarks);
        }

        private static List<double[]> damped(List<double[]> factors, double share) {
            List<double[]> damped = new ArrayList<>();
            for (double[] one : factors) {
                damped.add(damped(one, share));
            }
            return damped;
        }

        private static double[] damped(double[] factors, double share) {
            double[] damped = factors.clone();
            for (int i = 0; i < damped.length; i++) {
                damped[i] = StrictMath.pow(damped[i], share);
            }
            return damped;
        }
    }

    /**
     * All answers with the reasons where there are none.
     *
     * @return the answers
     */
    public Answers answers() {
        return answers;
    }

    /**
     * The assumptions behind all of it.
     *
     * @return those of the folder before those of the program
     */
    public Assumptions assumptions() {
        return assumptions;
    }

    /**
     * What the listings of the folder say.
     *
     * @return nothing without listings or cars in play
     */
    public Optional<Market> market() {
        return answers.market.told();
    }

    /**
     * The ledger.
     *
     * @return nothing without usable rows
     */
    public Optional<Ledger> ledger() {
        return answers.ledger.told();
    }

    /**
     * The forecast at completion.
     *
     * @return nothing without a ledger
     */
    public Optional<Forecast> forecast() {
        return answers.forecast.told();
    }

    /**
     * The value of the finished car, the first of the role finished that has one.
     *
     * @return nothing where the listings cannot tell
     */
    public Optional<SwapValue> finished() {
        return answers.finished.told();
    }

    /**
     * What is left.
     *
     * @return nothing without ledger or value
     */
    public Optional<Equity> equity() {
        return answers.equity.told();
    }

    /**
     * Whether to go on.
     *
     * @return nothing without ledger or value
     */
    public Optional<FinishOrStop> finishOrStop() {
        return answers.finishOrStop.told();
    }

    /**
     * What it would cost to do it again.
     *
     * @return nothing without ledger or value
     */
    public Optional<RedoCost> redoCost() {
        return answers.redoCost.told();
    }

    /**
     * Whether to buy now or later.
     *
     * @return nothing without an outlook of the market, a donor, a recipient and a value
     */
    public Optional<NowOrLater> nowOrLater() {
        return answers.nowOrLater.told();
    }

    /**
     * The prices at which to walk away.
     *
     * @return nothing where no two cars of one role have prices
     */
    public Optional<WalkAway> walkAway() {
        return answers.walkAway.told();
    }

    /**
     * What must be settled first.
     *
     * @return nothing without the file
     */
    public Optional<Gates> gates() {
        return answers.gates.told();
    }

    /**
     * Ways to get a car, held against each other.
     *
     * @return nothing without usable rows
     */
    public Optional<Alternatives> alternatives() {
        return answers.alternatives.told();
    }

    /**
     * Which further rows would narrow what is left most.
     *
     * @return the largest part of what is unsure first; nothing without an equity
     */
    public List<String> narrowing() {
        if (equity().isEmpty() || finished().isEmpty() || forecast().isEmpty()) {
            return List.of();
        }
        boolean sold = equity().get().sale().isPresent();
        if (sold && forecast().get().drivers().isEmpty()) {
            return List.of();
        }
        double ofValue = equity().get().shareOfValue();
        String value = "Of what is unsure about what is left, " + Math.round(100 * ofValue)
                + " % lies in the value of the finished car. "
                + finished().get().held() + ": swaps that you saw (swaps.csv), offers for your own, and listings of the lines of body and"
                + " gear narrow it.";
        List<Forecast.Driver> drivers = forecast().get().drivers();
        String money = Math.round(100 * (1 - ofValue)) + " % lies in the money" + (drivers.isEmpty() ? "." : ", most of it in '"
                + drivers.get(0).name()
                + "' (" + Math.round(100 * drivers.get(0).share())
                + " % of the variance of the forecast at a market that stands still): a firm offer for it narrows it.");
        return sold ? List.of(money) : ofValue >= 0.5 ? List.of(value, money) : List.of(money, value);
    }

    /**
     * What became of the rows of the files of the undertaking.
     *
     * @return one account for each of ledger.csv, gates.csv and alternatives.csv that is there
     */
    public List<RowsRead> read() {
        return List.copyOf(read);
    }

    /**
     * What further files and rows would answer.
     *
     * @return one sentence an answer that is missing
     */
    public List<String> missing() {
        return List.copyOf(missing);
    }
}
