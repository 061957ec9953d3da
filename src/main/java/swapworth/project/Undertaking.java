package swapworth.project;

import static java.util.Objects.requireNonNull;

import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.Currency;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import java.util.stream.Collectors;
import swapworth.assumptions.Assumptions;
import swapworth.assumptions.Question;
import swapworth.donor.FeeSchedule;
import swapworth.listing.CandidateCar;
import swapworth.listing.CandidateCar.Role;
import swapworth.listing.CarsFile;
import swapworth.listing.LevelOfTrade;
import swapworth.listing.Listings;
import swapworth.listing.ListingsRead;
import swapworth.market.Answer;
import swapworth.market.CannotTell;
import swapworth.market.PriceModel;
import swapworth.reading.Currencies;
import swapworth.reading.RowsRead;
import swapworth.reading.UnusableFileException;
import swapworth.swap.OwnOffer;
import swapworth.swap.SwapValue;
import swapworth.swap.Swaps;

/**
 * The whole undertaking, from the files of one folder: whatever these allow is there, and for the rest it says which file is missing.
 * All draws that are put together belong to the same states of the market, draw by draw.
 */
public final class Undertaking {
    private final Answers answers;
    private final UndertakingFiles files;
    private final Assumptions assumptions;
    private final Optional<Keeping> keeping;

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
     * @param job what a job for a customer leaves
     * @param extras what is wanted and not needed, and whether it pays to leave it out
     * @param finishOrStop whether to go on
     * @param redoCost what it would cost to do it again
     * @param nowOrLater whether to buy now or later
     * @param walkAway the prices at which to walk away
     * @param gates what must be settled first
     * @param alternatives ways to get a car, held against each other
     */
    public record Answers(Answer<Market> market, Answer<Ledger> ledger, Answer<Forecast> forecast, Answer<SwapValue> finished,
            Answer<Equity> equity, Answer<Job> job, Answer<Extras> extras, Answer<FinishOrStop> finishOrStop,
            Answer<RedoCost> redoCost, Answer<NowOrLater> nowOrLater, Answer<WalkAway> walkAway, Answer<Gates> gates,
            Answer<Alternatives> alternatives) {
    }

    private Undertaking(Path folder, Optional<LocalDate> on, Optional<Market> market) {
        Assumptions stated = Assumptions.ofFolder(folder);
        files = new UndertakingFiles(folder);
        Answer<Ledger> entered = files.ledger(howToRead(stated, on, market));
        Optional<Currency> base = market.map(Market::currency).or(() -> entered.told().map(Ledger::currency));
        assumptions = base.map(c -> stated.in(c, files.settings().rates())).orElse(stated);
        entered.told().flatMap(l -> assumptions.amountsInQuestion(Question.PROJECT)).ifPresent(files::account);
        Answer<Market> listed = files.market(market);
        Answer<SwapValue> finished = listed.flatMap(m -> m.swaps.first());
        Optional<OwnOffer> sale = finished.told().flatMap(SwapValue::sale)
                .filter(sold -> on.isEmpty() || sold.on().filter(on.get()::isBefore).isEmpty());
        Answer<Ledger> ledger = entered.map(l -> sale.map(l::sold).orElse(l));
        if (market.isPresent() && finished.told().isEmpty()) {
            files.lack(List.of("cars.csv: a row of the role finished that the listings can value: what is left, finish or stop, redo"
                    + " cost."));
        }
        int count = finished.told().map(f -> f.draws().length).orElse(Forecast.withDefaults().count());
        Answer<CarsInPlay> cars = listed.map(m -> new CarsInPlay(m, m.model.draws(count, 1), on.or(m.model::lastSeen), finished.told()));
        Answer<MarketMoves> moves = cars.map(c -> new MarketMoves(c, assumptions));
        Forecast.Options drawn = Forecast.withDefaults().with(assumptions).draws(count, 1);
        Answer<Forecast> forecast = ledger.map(moves.told().map(m -> m.moving(drawn)).orElse(drawn)::of);
        // What a customer's car is worth is no money of the shop that works on it.
        Answer<SwapValue> own = ledger.told().filter(Ledger::isOfCustomersCar).isEmpty() ? finished : new Answer.NotTold<>(
                CannotTell.without("the ledger has invoices: the car is the customer's", "a ledger without rows of the category invoice;"
                        + " for the customer's car 'What the job leaves' is told"));
        Answer<Both> both = forecast.flatMap(f -> own.map(v -> new Both(f, v)));
        FeeSchedule fees = market.map(m -> files.fees(m.currency(), assumptions)).orElse(FeeSchedule.none(Currencies.USUAL));
        Answer<BuyingLater> later = own.flatMap(f -> cars.map(c -> new BuyingLater(c, assumptions, fees)));
        Answer<Gates> gates = files.gates();
        Map<String, double[]> values = cars.told().map(CarsInPlay::byName).orElse(Map.of());
        Alternatives.Options plain = Alternatives.withDefaults().with(assumptions);
        Alternatives.Options ways = base.map(plain::in).orElse(plain);
        Answer<Alternatives> alternatives = files.alternatives(values.isEmpty() ? ways
                : ways.withCars(values, 1).withAgeing(cars.orElseThrow().ageingByName(assumptions.get("horizon").middle() / 12)));
        files.lack(later.told().map(BuyingLater::missing).orElse(List.of()));
        boolean sold = sale.isPresent() || ledger.told().flatMap(Ledger::carSold).isPresent();
        keeping = later.told().filter(l -> !sold).flatMap(l -> own.told().flatMap(f -> l.keeping(folder, f)));
        answers = new Answers(listed, ledger, forecast, finished, both.map(b -> Equity.of(b.sold, b.forecast)),
                forecast.flatMap(Undertaking::job), forecast.flatMap(Undertaking::extras),
                both.flatMap(b -> cars.flatMap(c -> new WaysToStop(c, assumptions, b.forecast, b.finished, b.sold).answer())),
                both.flatMap(b -> moves.map(m -> RedoCost.of(b.sold, b.forecast, m.since(b.forecast.ledger())))),
                later.flatMap(l -> own.flatMap(f -> l.answer(folder, f, ledger.told()))),
                cars.flatMap(c -> walkAway(c, fees)), gates, alternatives);
    }

    private static Ledger.Options howToRead(Assumptions stated, Optional<LocalDate> on, Optional<Market> market) {
        Ledger.Options options = Ledger.withDefaults().with(stated);
        Ledger.Options dated = on.map(options::on).orElse(options);
        return market.map(m -> dated.in(m.currency()).donors(m.cars().cars().stream()
                .filter(car -> car.role() == Role.DONOR).map(CandidateCar::name).collect(Collectors.toSet()))).orElse(dated);
    }

    private static Answer<Extras> extras(Forecast forecast) {
        return Answer.of(Optional.of(forecast).filter(f -> f.ledger().carSold().isEmpty() && !f.ledger().isOfCustomersCar())
                .flatMap(Extras::of), () -> CannotTell.without("the ledger has no extras that are still to come of a car of one's own",
                "rows of ledger.csv with no under needed, or with what they add"));
    }

    private static Answer<Job> job(Forecast forecast) {
        return Answer.of(Optional.of(forecast).filter(f -> f.ledger().isOfCustomersCar()).map(Job::of),
                () -> CannotTell.without("no customer pays for the work", "rows of the category invoice in ledger.csv"));
    }

    private static Answer<WalkAway> walkAway(CarsInPlay cars, FeeSchedule fees) {
        return Answer.of(Optional.of(WalkAway.of(cars.valued(), fees, cars.on())).filter(w -> !w.prices().isEmpty()),
                () -> CannotTell.without("cars.csv has no two cars of one role that both have a price and a line of the listings",
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
     * What is wanted and not needed, and whether it pays to leave it out.
     *
     * @return nothing where no row of the ledger is an extra, the car is sold, or it is a customer's
     */
    public Optional<Extras> extras() {
        return answers.extras.told();
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
     * Which finished cars beside that one the folder has: a ledger is held against one car, and its rows are not told apart by swaps.
     *
     * @return a sentence; nothing where there is no other, or no ledger
     */
    public Optional<String> otherFinished() {
        List<String> others = answers.market.told().filter(m -> ledger().isPresent()).stream()
                .flatMap(m -> m.cars.cars().stream()).filter(car -> car.role() == Role.FINISHED).map(CandidateCar::name)
                .filter(name -> finished().filter(f -> !f.car().name().equals(name)).isPresent()).toList();
        String named = others.stream().limit(3).map(name -> "'" + name + "'").collect(Collectors.joining(", "));
        return others.isEmpty() ? Optional.empty() : Optional.of("cars.csv has " + (others.size() == 1
                ? "one more finished car, " + named + ": it is" : others.size() + " more finished cars, " + named
                + (others.size() > 3 ? ", ...: they are" : ": they are")) + " in none of these figures, and all rows of the ledger count"
                + " for '" + finished().orElseThrow().car().name() + "', the first that has a value. Keep a folder for each swap");
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
     * What a job for a customer leaves.
     *
     * @return nothing without rows of invoices
     */
    public Optional<Job> job() {
        return answers.job.told();
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
     * @return nothing without an outlook of the market, a donor, a recipient and a value, and of a car that is a customer's
     */
    public Optional<NowOrLater> nowOrLater() {
        return answers.nowOrLater.told();
    }

    /**
     * What keeping the finished car costs a month, and when its value must be found anew.
     *
     * @return nothing where the car is sold or a customer's, or its price in the months to come is not known
     */
    public Optional<Keeping> keeping() {
        return keeping;
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
        String ofLeft = "Of what is unsure about what is left, ";
        String value = (ofValue >= 0.5 ? ofLeft : "") + Math.round(100 * ofValue)
                + " % lies in the value of the finished car. " + finished().get().held() + ": swaps that you saw (swaps.csv), offers for"
                + " your own, and listings of the lines of body and gear narrow it.";
        List<Forecast.Driver> drivers = forecast().get().drivers();
        String money = (sold ? "All that is unsure about what is left"
                : (ofValue >= 0.5 ? "" : ofLeft) + Math.round(100 * (1 - ofValue)) + " %") + " lies in the money"
                + (drivers.isEmpty() ? "." : ", most of it in '"
                + drivers.get(0).name()
                + "' (" + Math.round(100 * drivers.get(0).share())
                + " % of the variance of the forecast at a market that stands still): " + (drivers.get(0).isReserve()
                        ? "it is a share of what is still guessed, and firm offers for that make it smaller."
                        : "a firm offer for it narrows it."));
        return sold ? List.of(money) : ofValue >= 0.5 ? List.of(value, money) : List.of(money, value);
    }

    /**
     * What became of the rows of the files of the undertaking.
     *
     * @return one account for each of ledger.csv, gates.csv and alternatives.csv that is there
     */
    public List<RowsRead> read() {
        return files.read();
    }

    /**
     * What further files and rows would answer.
     *
     * @return one sentence an answer that is missing
     */
    public List<String> missing() {
        return files.missing();
    }

    /** What it speaks of. */
    @Override
    public String toString() {
        return "undertaking: " + ledger().map(l -> l.entries().size() + " rows of the ledger").orElse("no ledger") + "; "
                + finished().map(SwapValue::toString).orElse("no value of a finished car");
    }
}
