package swapworth.market;

import static java.util.Objects.requireNonNull;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.TreeMap;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.CompletionException;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.ForkJoinPool;
import java.util.concurrent.FutureTask;
import java.util.stream.IntStream;
import org.jspecify.annotations.Nullable;
import swapworth.assumptions.Assumptions;
import swapworth.listing.Car;
import swapworth.listing.CarFacts;
import swapworth.listing.Facts;
import swapworth.listing.KeptList;
import swapworth.listing.LevelOfTrade;
import swapworth.listing.Listing;
import swapworth.listing.ListingsRead;
import swapworth.listing.SeenCar;
import swapworth.listing.Sighting;
import swapworth.statistics.Bound;
import swapworth.statistics.ErrorLaw;
import swapworth.statistics.ErrorScale;
import swapworth.statistics.Integration;
import swapworth.statistics.Mixture;
import swapworth.statistics.Normal;
import swapworth.statistics.Posterior;
import swapworth.statistics.Posterior.LeaveOut;
import swapworth.statistics.PriorBlock;
import swapworth.statistics.Quantiles;
import swapworth.statistics.RangeStretch;
import swapworth.statistics.ShrunkenRegression;
import swapworth.statistics.SparseRow;
import swapworth.table.Cell;

/**
 * One price model for all cars of a collection: what a car of given facts sells for, on a day, at a level of trade, and how sure that
 * is.
 *
 * <p>The logarithm of the price is a sum of terms: line and trim, age and mileage (a straight line each, whose slopes differ a little
 * from line to line, a smooth departure, a product), model year, market time (a drift and a random walk over months), level of trade,
 * what the price includes, title, running state, damage, condition facts, region, and further columns on request. Every term is shrunk
 * toward what {@link Assumptions} say; with few cars they carry the slopes, with many the cars do. Errors are of Student's t with 4
 * degrees of freedom, and a small share of prices is taken to be mistyped, so that such a price does not bend the fit.
 *
 * <p>A car enters once for each level of trade. Prices of the same car share its own departure: a second price enters as its
 * difference from the first, with an error scale of its own.
 *
 * <p>Immutable; safe for use by several threads.
 */
public final class PriceModel {
    /** The columns of measured facts: always in the model where the rows differ in them. */
    public static final List<String> MEASURED_FACTS = List.of("power_kw", "cylinders", "weight_kg", "driven_wheels");

    /** Up to this many cars each is left out by a refit, beyond it in closed form. */
    private static final int REFITTED = 150;
    /** So often it is asked how lines scatter. */
    private static final int PASSES = 3;
    /** Up to this many prices the hyperparameters are averaged over. */
    private static final int INTEGRATED = 2000;
    /** An 80 % range whose upper end is more than this many times its lower end says too little to judge by. */
    private static final double WIDEST = 8;
    /** Beyond so many times nobody asks how many. */
    private static final double MOST_TIMES = 1000;
    /** More draws than anybody needs fill the memory. */
    public static final int MOST_DRAWS = 1_000_000;
    /** Left-out residuals of about this many cars are enough to tell by how much ranges are to be stretched. */
    private static final int MOST_STRETCHED_BY = 1000;

    private final List<Car> cars;
    private final EvidenceList evidence;
    private final Assumptions assumptions;
    private final List<String> further;
    private final Encoder encoder;
    private final List<PriorBlock> blocks;
    private final EncodedRows encoded;
    private final Posterior posterior;
    private final Map<Integer, Posterior> leftOut = new ConcurrentHashMap<>();
    /** Found when first asked for, once. */
    private final FutureTask<List<Confounded>> confounded;
    /** Found when first asked for: the same whichever thread finds it. */
    private volatile @Nullable Answer<MarketIndex> index;
    private final Stretches stretch;
    private final Grids grids;
    /** The first row of each car, and behind the last car the number of rows. */
    private final int[] firstRow;
    private final Map<String, Integer> carsOfLine = new HashMap<>();
    /** Made when first asked for, as the two before. */
    private volatile @Nullable CarOfListing carOfListing;

    private PriceModel(List<Car> cars, Assumptions assumptions, List<String> further) {
        this.cars = KeptList.copyOf(cars);
        this.assumptions = assumptions;
        EvidenceList.Found found = EvidenceList.in(this.cars, further);
        this.evidence = found.evidence();
        if (evidence.isEmpty()) {
            throw new IllegalArgumentException("a price model needs at least one car with a price");
        }
        this.firstRow = firstRows();
        this.encoder = new Encoder(evidence, found.stock(), assumptions, further);
        this.blocks = encoder.priors();
        double sameCar = sameCarScale();
        Optional<CompletableFuture<ShrunkenRegression.Found>> search = searchBegun(sameCar);
        EncodedRows rows = new EncodedRows(evidence, encoder, sameCar);
        carsOfLine.putAll(encoder.carsOfLine());
        for (int c = 0; c < this.cars.size(); c++) {
            if (firstRow[c] == firstRow[c + 1]) {
                carsOfLine.merge(this.cars.get(c).facts().vehicle(), 1, Integer::sum);
            }
        }
        this.further = List.copyOf(further);
        this.confounded = new FutureTask<>(() -> new Confounding(evidence, encoder, rows).all());
        if (evidence.size() > Confounding.MOST_PRICES) {
            ForkJoinPool.commonPool().execute(confounded);
        }
        ShrunkenRegression regression = regression(evidence.size());
        Scattered fitted = learnScatter(rows);
        Optional<ShrunkenRegression.Found> near = search.map(PriceModel::found).or(fitted::near);
        this.posterior = near.isEmpty() ? regression.fit(fitted.rows.design(), fitted.rows.sample(), blocks)
                : regression.fit(fitted.rows.design(), fitted.rows.sample(), blocks, near.get());
        encoder.scatterAs(encoder.scatter().foundBy(posterior, blocks));
        this.encoded = fitted.rows.scatteredAnew();
        this.stretch = stretch();
        this.grids = new Grids(this.cars, evidence, encoder, encoded, posterior);
    }

    /**
     * Fits the model with the default assumptions.
     *
     * @param cars at least one car
     * @return the fitted model
     * @throws IllegalArgumentException if there is no car
     */
    public static PriceModel fit(List<Car> cars) {
        return options().fit(cars);
    }

    /**
     * How a model is to be fitted.
     *
     * @return the default assumptions and no further column
     */
    public static Options options() {
        return new Options(Assumptions.defaults(), List.of());
    }

    /** How a model is to be fitted; immutable. */
    public static final class Options {
        private final Assumptions assumptions;
        private final List<String> further;

        private Options(Assumptions assumptions, List<String> further) {
            this.assumptions = requireNonNull(assumptions, "assumptions");
            this.further = List.copyOf(further);
        }

        /**
         * With other assumptions.
         *
         * @param changed the assumptions
         * @return a copy
         */
        public Options with(Assumptions changed) {
            return new Options(changed, further);
        }

        /**
         * With further columns of the user's files as terms: a number gives one slope on its standardised value, words give a group.
         *
         * @param columns headers in lower case, as in {@link CarFacts#further()}
         * @return a copy
         */
        public Options withColumns(List<String> columns) {
            return new Options(assumptions, columns);
        }

        /**
         * Fits the model.
         *
         * @param cars at least one car
         * @return the fitted model
         * @throws IllegalArgumentException if there is no car
         */
        public PriceModel fit(List<Car> cars) {
            return new PriceModel(cars, assumptions, further);
        }
    }

    private int[] firstRows() {
        int[] first = new int[cars.size() + 1];
        for (int i = 0; i < evidence.size(); i++) {
            first[evidence.car(i) + 1]++;
        }
        for (int c = 0; c < cars.size(); c++) {
            first[c + 1] += first[c];
        }
        return first;
    }

    /** The search for spreads keeps one processor busy most of the time: of many prices the rows of the others are made meanwhile. */
    private Optional<CompletableFuture<ShrunkenRegression.Found>> searchBegun(double sameCar) {
        int[] some = ShrunkenRegression.searchedIn(evidence.size());
        if (some.length == 0) {
            return Optional.empty();
        }
        return Optional.of(CompletableFuture.supplyAsync(() -> {
            EncodedRows.Rows rows = EncodedRows.some(evidence, encoder, sameCar, some);
            return regression(evidence.size()).search(rows.design(), rows.sample(), blocks);
        }, task -> {
            // A thread of its own, for those of the pool make the rows.
            Thread thread = new Thread(task, "search");
            thread.setDaemon(true);
            thread.start();
        }));
    }

    private static ShrunkenRegression.Found found(CompletableFuture<ShrunkenRegression.Found> search) {
        try {
            return search.join();
        } catch (CompletionException e) {
            if (e.getCause() instanceof Error error) {
                throw error;
            }
            throw e.getCause() instanceof RuntimeException known ? known : e;
        }
    }

    private ShrunkenRegression regression(int rows) {
        var scale = assumptions.get("error_scale");
        var growing = assumptions.get("error_growth_with_age");
        return ShrunkenRegression.withDefaults()
                .with(ErrorLaw.student(4).withGrossErrors(assumptions.get("mistyped_prices").middle() / 100))
                .with(ErrorScale.of(scale.middle(), scale.spread()))
                .withGrowth(growing.middle(), growing.spread())
                .withSecondarySpread(assumptions.get("secondary_scale").spread())
                .with(rows <= INTEGRATED ? Integration.POINTS : Integration.MODE);
    }

    /**
     * The rows with their factors on the error scale, and hyperparameters that a fit without these factors found.
     *
     * @param near where the search for those of the fit may begin; empty where none were found
     */
    private record Scattered(EncodedRows rows, Optional<ShrunkenRegression.Found> near) {
    }

    /**
     * Has the encoder take up how the prices of lines scatter, those of crashed cars, and of cars that leave something open, from fits with
     * the hyperparameters held at their mode: three, for a price that was taken to be mistyped may be one of a line that scatters far.
     *
     * @return the rows with their factors on the error scale; of more than {@value #INTEGRATED} prices, where lines differ in what their
     *     ranges are stretched by, as they were
     */
    private Scattered learnScatter(EncodedRows rows) {
        int[] first = firstPrices();
        if (evidence.size() > INTEGRATED || first.length == 0
                || carsOfLine.size() == 1 && Arrays.stream(rows.sample().inflation()).allMatch(factor -> factor == 1)) {
            return new Scattered(rows, Optional.empty());
        }
        ShrunkenRegression pilot = regression(evidence.size()).with(Integration.MODE);
        ShrunkenRegression.Found held = pilot.search(rows.design(), rows.sample(), blocks);
        List<Facts> cars = Arrays.stream(first).mapToObj(i -> evidence.subject(i).facts()).toList();
        EncodedRows scattered = rows;
        for (int pass = 0; pass < PASSES; pass++) {
            Posterior by = pilot.fit(scattered.design(), scattered.sample(), blocks, held);
            EncodedRows as = scattered;
            double[] z = Arrays.stream(first).mapToDouble(i -> deviate(by.leavingOut(LeaveOut.CLOSED_FORM, i), as, i)).toArray();
            encoder.scatterAs(encoder.scatter().foundBy(by, blocks).toldBy(cars, z, assumptions));
            scattered = scattered.scatteredAnew();
        }
        return new Scattered(scattered, Optional.of(held));
    }

    /** A price as a normal deviate of its prediction. */
    private double deviate(Posterior by, EncodedRows rows, int i) {
        Mixture predicted = by.predict(rows.get(i).row(), rows.inflation(i), rows.growth(i));
        return Normal.quantile(Math.max(1e-12, Math.min(1 - 1e-12, predicted.cumulative(evidence.logPrice(i)))));
    }

    /** Whether every price is only known to be too low. */
    boolean hasBoundsOnly() {
        return firstPrices().length == 0;
    }

    /** The first price of each car that has one which is no bound. */
    private int[] firstPrices() {
        return IntStream.range(0, evidence.size())
                .filter(i -> evidence.bound(i) == Bound.NONE && (i == 0 || evidence.car(i - 1) != evidence.car(i))).toArray();
    }

    /**
     * How probable it is that the dates of the listings tell nothing of their prices, neither of a market nor of ageing: as if each had
     * been drawn at random. By the marginal likelihood of the prices with and without their dates, and the assumption.
     */
    private double chanceThatDatesTellNothing() {
        double assumed = assumptions.get("dates_tell_nothing").middle() / 100;
        if (assumed <= 0 || encoder.walk().isEmpty()) {
            return 0;
        }
        EvidenceList undated = evidence.undated();
        Encoder without = new Encoder(undated, Stock.of(undated, further), assumptions, further);
        without.scatterAs(encoder.scatter());
        EncodedRows rows = new EncodedRows(undated, without, sameCarScale());
        double more = posterior.logMarginal()
                - regression(rows.size()).fit(rows.design(), rows.sample(), without.priors()).logMarginal();
        return assumed / (assumed + (1 - assumed) * Math.exp(more));
    }

    /**
     * By how much ranges are to be stretched: those of crashed, branded and dead cars, whose prices scatter otherwise, by themselves.
     *
     * @param sound of all other cars
     * @param troubled of these
     * @param lines by how much more those of a line; empty where the scatter of lines is in the fit
     */
    private record Stretches(RangeStretch sound, RangeStretch troubled, Map<String, Double> lines) {

        double of(Facts car) {
            return (car.isTroubled() ? troubled : sound).factor() * lines.getOrDefault(car.vehicle(), 1.0);
        }
    }

    private Stretches stretch() {
        int[] first = firstPrices();
        int[] sound = some(IntStream.of(first).filter(i -> !evidence.isTroubled(i)).toArray());
        int[] troubled = some(IntStream.of(first).filter(evidence::isTroubled).toArray());
        double[] z = leftOutResiduals(sound);
        double[] zOfTroubled = leftOutResiduals(troubled);
        RangeStretch ofSound = RangeStretch.of(z);
        if (evidence.size() <= INTEGRATED) {
            return new Stretches(ofSound, RangeStretch.of(zOfTroubled), Map.of());
        }
        // Of many cars the fit has not learned how crashed ones and lines scatter: the ranges do. At the least crashed ones do like others.
        RangeStretch ofTroubled = RangeStretch.of(assumptions.logSpread("scatter_of_troubled"),
                Math.min(1, Math.exp(-assumptions.logMiddle("scatter_of_troubled"))), zOfTroubled);
        List<Facts> cars = Arrays.stream(sound).mapToObj(i -> evidence.subject(i).facts()).toList();
        double[] beyond = Arrays.stream(z).map(deviate -> deviate / ofSound.factor()).toArray();
        return new Stretches(ofSound, ofTroubled, Scatter.ofLines(cars, beyond, Map.of(), assumptions));
    }

    /** Of many cars some, evenly taken, which stand for all. */
    private static int[] some(int[] of) {
        int every = 1 + (of.length - 1) / MOST_STRETCHED_BY;
        return IntStream.range(0, of.length / every).map(k -> of[k * every]).toArray();
    }

    /** The first prices of some cars predicted without these, as normal deviates. */
    private double[] leftOutResiduals(int[] first) {
        return IntStream.of(first).parallel().mapToDouble(i -> {
            Posterior without = leavingOut(evidence.car(i));
            leftOut.put(evidence.car(i), without);
            return deviate(without, encoded, i);
        }).toArray();
    }

    /**
     * How far two prices of one car at two levels of trade scatter about the step between the levels: the median distance of their
     * log differences from the middle one of the same two levels, as a scale, drawn toward the assumption as if by five more pairs.
     */
    private double sameCarScale() {
        Map<String, List<Double>> differences = new TreeMap<>();
        for (int i = 1; i < evidence.size(); i++) {
            if (evidence.isSecondPrice(i)) {
                Evidence a = evidence.get(i - 1);
                Evidence b = evidence.get(i);
                differences.computeIfAbsent(a.subject().level() + " " + b.subject().level(), k -> new ArrayList<>())
                        .add(b.logPrice() - a.logPrice());
            }
        }
        double assumed = assumptions.get("same_car_scale").middle();
        double squares = 5 * assumed * assumed;
        double weight = 5;
        for (List<Double> list : differences.values()) {
            if (list.size() >= 5) {
                double[] d = list.stream().mapToDouble(Double::doubleValue).toArray();
                double middle = Quantiles.of(d, 0.5);
                double distance = Quantiles.of(Arrays.stream(d).map(x -> Math.abs(x - middle)).toArray(), 0.5);
                // 0.7407 is the upper quartile of Student's t with 4 degrees of freedom.
                squares += list.size() * distance * distance / (0.7407 * 0.7407);
                weight += list.size();
            }
        }
        return Math.sqrt(squares / weight);
    }

    /**
     * The cars that the model was fitted to.
     *
     * @return in the order given
     */
    public List<Car> cars() {
        return cars;
    }

    /**
     * The assumptions that the model was fitted with.
     *
     * @return the assumptions
     */
    public Assumptions assumptions() {
        return assumptions;
    }

    /**
     * The number of prices in the fit: a car counts once for each level of trade.
     *
     * @return at least 1
     */
    public int prices() {
        return evidence.size();
    }

    /**
     * The last day on which a car was seen: the valuation day unless another is stated.
     *
     * @return empty where no row has a date
     */
    public Optional<LocalDate> lastSeen() {
        return encoder.end();
    }

    /**
     * How many prices have no date where others have one, and what was done with them.
     *
     * @return a sentence or two without the last full stop; empty where all prices have a date, or none
     */
    public Optional<String> undated() {
        return encoder.undated();
    }

    /**
     * The age and mileage, of the middle car of the fit, at which slopes are stated.
     *
     * @return age in years and distance in miles
     */
    public MiddleCar middleCar() {
        return new MiddleCar(encoder.middleAge(), encoder.middleMiles());
    }

    /**
     * The middle of the cars in a fit.
     *
     * @param ageYears median age, years
     * @param miles median mileage
     */
    public record MiddleCar(double ageYears, double miles) {
    }

    /**
     * The typical error of one car's price about the fit: the scale of the errors at the middle age, per cent of price.
     *
     * @return per cent
     */
    public double errorPercent() {
        return Figures.percent(posterior.errorScale());
    }

    /**
     * By how much ranges are stretched, found from the prices of cars that were left out; applied to cars of pairs, levels of trade
     * and days that the collection holds.
     *
     * @return the factor and the number of prices behind it
     */
    public RangeStretch stretched() {
        return stretch.sound;
    }

    /**
     * The same for crashed, branded and dead cars, found by their prices alone.
     *
     * @return the factor and the number of prices behind it
     */
    public RangeStretch stretchedTroubled() {
        return stretch.troubled;
    }

    /**
     * By how much more the prices of each line scatter than those of the middle car; the ranges of its cars are as much wider.
     *
     * @return a factor for each line; empty where there is one line alone
     */
    public Map<String, Double> scatterOfLines() {
        return Map.copyOf(stretch.lines.isEmpty() ? encoder.scatter().ofLine() : stretch.lines);
    }

    /**
     * By how much more the prices of crashed, branded and dead cars scatter than those of others.
     *
     * @return a factor
     */
    public double scatterOfTroubled() {
        return encoder.scatter().ofTroubled();
    }

    List<PriorBlock> blocks() {
        return blocks;
    }

    /**
     * What a car is worth on a day at a level of trade, by all cars of the fit.
     *
     * @param subject the car, the day and the level
     * @return a fair value, or why there is none
     */
    public Valuation value(Subject subject) {
        return value(subject, encoder.encode(subject), posterior, -1, outside(subject));
    }

    private Valuation value(Subject subject, Encoded row, Posterior by, int withoutCar, List<String> outside) {
        String line = subject.facts().vehicle();
        int ofLine = carsOfLine.getOrDefault(line, 0) - (withoutCar >= 0 ? 1 : 0);
        int inFile = cars.size() - (withoutCar >= 0 ? 1 : 0);
        PairStanding pair = encoder.pairs().standing(subject.facts(), withoutCar >= 0);
        if (pair == PairStanding.APART) {
            return ofLine <= 0
                    ? new CannotTell("no other car of the line '" + line + "' is in the files", 0, inFile, "listings of this line")
                    : new CannotTell("no car in the files has this body with this running gear, and nothing links the two", ofLine,
                            inFile, "listings that share this body or this running gear, or power_kw and cylinders of three gears");
        }
        if (subject.facts().mileage().isEmpty() && !encoder.measured(subject).isAgeStated()) {
            return new CannotTell("neither age nor mileage of the car is known", ofLine, inFile, "its model year, or its mileage");
        }
        List<String> open = Figures.joined(row.remarks(), encoder.leftOpen(subject));
        List<String> remarks = Figures.joined(open, pair == PairStanding.SEEN ? outside
                : Figures.joined(List.of(unseen(subject, pair)), outside));
        if (subject.on().isEmpty() && encoder.hasUndated()) {
            remarks = Figures.joined(remarks, List.of("no date: valued on no known day, by the step of the prices without one"));
        }
        double factor = exchangeable(subject, pair) ? stretch.of(subject.facts()) : 1;
        FairValue value = new FairValue(this, by, withoutCar, subject, row, factor, ofLine, inFile, remarks);
        Range range = value.range(0.80);
        double times = range.high() / range.low();
        if (!(times <= WIDEST)) {
            return new CannotTell("the 80 % range is too wide to say anything: its upper end is "
                    + (times < MOST_TIMES ? Cell.format(times, 1) : "more than " + Cell.format(MOST_TIMES, 0))
                    + " times its lower end", ofLine, inFile, value.narrowedBy());
        }
        return value;
    }

    /**
     * How the body and the running gear of a car stand to each other in the collection.
     *
     * @param car what is known of the car
     * @return whether cars show them together, and what speaks for the pair if not
     */
    public PairStanding pair(Facts car) {
        return encoder.pairs().standing(car, false);
    }

    /**
     * The number of prices whose cars show the body and the running gear of a car together, under the same model line.
     *
     * @param car what is known of the car
     * @return 0 where the pair was never seen
     */
    public int pricesOfPair(Facts car) {
        return encoder.pairs().cars(car);
    }

    /**
     * The running gear of a car: as its facts say, else as the cars of its line agree, else a word of the line's own.
     *
     * @param car what is known of the car
     * @return in lower case
     */
    public String runningGear(Facts car) {
        return encoder.pairs().gear(car);
    }

    /**
     * The body of a car, likewise.
     *
     * @param car what is known of the car
     * @return in lower case
     */
    public String body(Facts car) {
        return encoder.pairs().body(car);
    }

    /**
     * Whether some lines share a body or a running gear, so that the levels of lines are taken apart into the two and their pair.
     *
     * @return false where each line has a level of its own
     */
    public boolean takesPairsApart() {
        return encoder.pairs().linked();
    }

    /** Whether a subject is one like those whose left-out residuals the ranges are stretched by. */
    private boolean exchangeable(Subject subject, PairStanding pair) {
        return pair == PairStanding.SEEN && encoder.levels().contains(subject.level())
                && (subject.on().isEmpty() || encoder.end().isEmpty() || !subject.on().get().isAfter(encoder.end().get()));
    }

    private String unseen(Subject subject, PairStanding pair) {
        String assumed = " is an assumption (spread_pairs, " + assumptions.get("spread_pairs").middle() + " log points)";
        if (encoder.pairs().areInAnotherLine(subject.facts())) {
            return "this body with this running gear is in the files as another line alone: how far one of this line departs from those"
                    + assumed;
        }
        return "no other car in the files has this body with this running gear: "
                + (pair == PairStanding.LINKED ? "the two are valued by cars that have the one or the other"
                        : "the running gear is valued by its measured facts alone")
                + ", and how far they depart together" + assumed;
    }

    /** Where a subject lies outside what the model has seen of its line. */
    private List<String> outside(Subject subject) {
        List<String> remarks = new ArrayList<>();
        Optional<Encoder.LineExtent> extent = encoder.extentOf(subject.facts().vehicle());
        if (extent.isEmpty()) {
            return remarks;
        }
        Measures.Measured m = encoder.measured(subject);
        if (extent.get().isOutsideAges(m)) {
            remarks.add("its age lies outside the ages seen of this line: the value is carried on beyond them");
        }
        if (extent.get().isOutsideMiles(m)) {
            remarks.add("its mileage lies outside the mileages seen of this line: the value is carried on beyond them");
        }
        if (subject.on().isPresent() && encoder.begin().isPresent() && encoder.end().isPresent()) {
            LocalDate day = subject.on().get();
            if (day.isBefore(encoder.begin().get())) {
                remarks.add("valued before " + encoder.begin().get() + ", the first day of the prices that count (of each car the last):"
                        + " the market's drift is carried back");
            }
            if (day.isAfter(encoder.end().get())) {
                remarks.add("valued after the last day seen, " + encoder.end().get() + ": the market's drift is carried on");
            }
        }
        return remarks;
    }

    /**
     * How a listing's price stands, its own car left out. A listing that the model has not seen is judged by all cars.
     *
     * @param listing the listing, on the day it was seen
     * @return the judgement
     */
    public Judgement judge(Listing listing) {
        int car = lookup().of(listing);
        return standing(listing, car, Optional.empty(), Optional.empty(), new Misses())
                .of(listing, car < 0 ? listing.id().orElse(listing.origin().toString()) : cars.get(car).name());
    }

    /** Gets ready to judge all listings of many cars, one by one. */
    void expectAll() {
        if (cars.size() > MOST_STRETCHED_BY) {
            posterior.expectEachRowLeftOut();
        }
    }

    /** The numbers of the cars of some listings, the same as the model was fitted to as a rule: -1 for none of the fit. */
    int[] carOfEach(ListingsRead read) {
        int[] known = read.cars() == cars ? read.carOfEach() : new int[0];
        if (known.length == read.listings().size()) {
            return known;
        }
        CarOfListing lookup = lookup();
        return read.listings().stream().mapToInt(lookup::of).toArray();
    }

    private CarOfListing lookup() {
        CarOfListing found = carOfListing;
        if (found == null) {
            found = new CarOfListing(cars);
            carOfListing = found;
        }
        return found;
    }

    /**
     * How the price of a sighting stands of which the number of its car is known, -1 for none of the fit; taken into the misses where the
     * model learned from its very price, and not only that it is a bound.
     */
    Standing standing(Sighting seen, int number, Optional<LocalDate> on, Optional<LevelOfTrade> level, Misses misses) {
        if (number < 0) {
            return standing(seen, -1, asked(Evidence.subject(seen.facts(), seen), -1, on, level), posterior);
        }
        SeenCar car = SeenCar.of(cars, number);
        int place = CarOfListing.place(seen, car);
        int row = row(number, place);
        Asked asked = asked(Evidence.subject(car.facts(), car.sightings().get(place)), row, on, level);
        Standing standing = standing(seen, number, asked, without(number, row, asked));
        if (learnedFrom(row)) {
            misses.add(seen.amount(), standing);
        }
        return standing;
    }

    /** The row of the fit that holds the price of a sighting of a car; -1 if none does. */
    private int row(int car, int place) {
        for (int row = firstRow[car]; row < firstRow[car + 1]; row++) {
            if (evidence.place(row) == place) {
                return row;
            }
        }
        return -1;
    }

    private boolean learnedFrom(int row) {
        return row >= 0 && evidence.bound(row) == Bound.NONE;
    }

    /**
     * How the price of each listing of the fit stands, each with its own car left out, on its own day and at its own level of trade.
     *
     * @return in the order of cars and of their sightings
     */
    public List<Judgement> judgeAll() {
        return judgeAll(Optional.empty(), Optional.empty());
    }

    /**
     * How the price of each listing of the fit stands, each with its own car left out.
     *
     * @param on values every listing on this day instead of the day on which it was seen
     * @param level values every listing at this level of trade instead of its own
     * @return in the order of cars and of their sightings
     */
    public List<Judgement> judgeAll(Optional<LocalDate> on, Optional<LevelOfTrade> level) {
        List<List<Judgement>> all = new ArrayList<>(java.util.Collections.nCopies(cars.size(), List.of()));
        IntStream.range(0, cars.size()).parallel().forEach(c -> {
            Posterior without = without(c);
            List<Judgement> ofCar = new ArrayList<>();
            Car car = cars.get(c);
            for (int k = 0; k < car.sightings().size(); k++) {
                Listing listing = car.sightings().get(k);
                Asked asked = asked(Evidence.subject(car.facts(), listing), row(c, k), on, level);
                ofCar.add(standing(listing, c, asked, without).of(listing, car.name()));
            }
            all.set(c, ofCar);
        });
        return all.stream().flatMap(List::stream).toList();
    }

    /** The posterior had a car never been seen; those that the stretch of ranges asked for are kept. */
    private Posterior without(int car) {
        Posterior kept = leftOut.get(car);
        return kept != null ? kept : leavingOut(car);
    }

    /** The same for what is asked of a row: of many cars each with one price, the row that was made for it is left out. */
    private Posterior without(int car, int row, Asked asked) {
        boolean alone = cars.size() > MOST_STRETCHED_BY && firstRow[car + 1] - firstRow[car] == 1;
        return alone && asked.own.isPresent() ? posterior.leavingOut(row, asked.own.get().row()) : without(car);
    }

    private Posterior leavingOut(int car) {
        int[] rows = new int[firstRow[car + 1] - firstRow[car]];
        Arrays.setAll(rows, r -> firstRow[car] + r);
        return posterior.leavingOut(cars.size() <= REFITTED ? LeaveOut.REFIT : LeaveOut.CLOSED_FORM, rows);
    }

    /**
     * What the model is asked to judge a listing.
     *
     * @param own the row of the fit that holds the listing's price, no difference taken, where the listing is judged as it was seen
     */
    private record Asked(Subject subject, Encoded encoded, Optional<Encoded> own, List<String> outside) {
    }

    private Asked asked(Subject seen, int row, Optional<LocalDate> on, Optional<LevelOfTrade> level) {
        if (on.isPresent() || level.isPresent()) {
            Subject changed = new Subject(seen.facts(), level.orElse(seen.level()), seen.includes(), on.or(seen::on));
            return new Asked(changed, encoder.encode(changed), Optional.empty(), outside(changed));
        }
        if (row < 0) {
            return new Asked(seen, encoder.encode(seen), Optional.empty(), outside(seen));
        }
        // What the model learned from does not lie outside of what it has seen.
        Encoded own = encoded.get(row);
        return new Asked(seen, encoder.asOnOffer(row) ? encoder.notOnOffer(own) : own, Optional.of(own), List.of());
    }

    private Standing standing(Sighting seen, int car, Asked asked, Posterior by) {
        Subject subject = asked.subject;
        Valuation valuation = value(subject, asked.encoded, by, car, asked.outside);
        double price = seen.amount();
        List<String> ofListing = seen.remarks();
        if (!(valuation instanceof FairValue value)) {
            return Standing.untold(valuation, ofListing);
        }
        if (subject.level() != seen.level()) {
            List<String> apart = List.of("the price is one of the level " + seen.level().words() + ", the value of the level "
                    + subject.level().words() + ": they are not compared");
            return Standing.untold(value, Figures.joined(ofListing, Figures.joined(value.remarks(), apart)));
        }
        if (!subject.on().equals(seen.seenOn())) {
            ofListing = Figures.joined(ofListing, List.of("the price is of "
                    + seen.seenOn().map(LocalDate::toString).orElse("an unknown day") + ", the value of "
                    + subject.on().map(LocalDate::toString).orElse("an unknown day")));
        }
        Range range = value.range(0.80);
        Position position = price < range.low() ? Position.BELOW : price > range.high() ? Position.ABOVE : Position.INSIDE;
        return new Standing(value, position, price - value.median(), 100 * (price / value.median() - 1), 100 * value.percentile(price),
                Figures.joined(ofListing, Figures.joined(value.remarks(), Flags.of(seen, subject, value, position))));
    }

    /**
     * How well the model's values, each with its own car left out, meet the prices seen, and how often its ranges hold them.
     *
     * @param judgements of all listings of the fit
     * @return why there is nothing to tell with fewer than ten prices that have a value: figures of dispersion would say nothing
     */
    public Answer<FitStudy> study(List<Judgement> judgements) {
        Judgement[] byRow = new Judgement[evidence.size()];
        for (Judgement judgement : judgements) {
            int car = lookup().of(judgement.listing());
            int row = car < 0 ? -1 : row(car, CarOfListing.place(judgement.listing(), cars.get(car)));
            if (learnedFrom(row)) {
                byRow[row] = judgement;
            }
        }
        Misses misses = new Misses();
        Arrays.stream(byRow).filter(Objects::nonNull).forEach(j -> misses.add(j.listing().price().amount(), j.standing()));
        return misses.study();
    }

    /**
     * The effects of the terms that mean something by themselves, and the slopes of each line.
     *
     * @return those of which at least one price tells, main terms first
     */
    public List<TermEffect> terms() {
        return new Effects(evidence, encoder, encoded, posterior).all();
    }

    /**
     * The terms that the prices cannot tell apart, such as a level of trade and a damage that always go together: there the assumptions
     * decide how an effect splits between them.
     *
     * @return empty where every fact that varies can be told from the others
     */
    public List<Confounded> confounded() {
        confounded.run();
        try {
            return confounded.get();
        } catch (ExecutionException e) {
            throw new IllegalStateException(e.getCause());
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            throw new IllegalStateException(e);
        }
    }

    /**
     * How each further column is taken, in words: as numbers where at least nine of ten filled rows hold one, else as words, and because
     * of which cell; a cell that is no number in such a column, and one more than twenty standard deviations (by the quartiles) from the
     * middle, says nothing.
     *
     * @return one sentence a column of {@link Options#withColumns}
     */
    public List<String> columnsTaken() {
        return List.copyOf(encoder.furtherTaken());
    }

    /**
     * The lines of the model, the one with most cars first.
     *
     * @return their names
     */
    public List<String> lines() {
        return carsOfLine.entrySet().stream().sorted(Map.Entry.<String, Integer>comparingByValue().reversed()
                .thenComparing(Map.Entry.comparingByKey())).map(Map.Entry::getKey).toList();
    }

    /**
     * How price runs with mileage in a line, for its middle car: median age, clean title, driving, sound, private asking, on the last
     * day seen.
     *
     * @param line a line of the model
     * @return the curve and the prices of the line, adjusted to that car
     * @throws IllegalArgumentException if the model has no such line
     */
    public LineCurve curve(String line) {
        if (!carsOfLine.containsKey(line)) {
            throw new IllegalArgumentException("no car of the line '" + line + "' is in the model; its lines are " + lines());
        }
        return new MileageCurve(cars, evidence, encoder, encoded, posterior).of(line);
    }

    /**
     * How the middle price of one car stands to that of another: what differs between them, priced. Of a fact that the collection does
     * not hold, such as a line that it has never seen, only the assumption speaks; the share held by assumptions shows it.
     *
     * @param first a car, a day and a level of trade
     * @param second another
     * @return the difference with its ranges and what holds it
     */
    public Difference difference(Subject first, Subject second) {
        SparseRow contrast = encoder.encode(first).row().plus(-1, encoder.encode(second).row());
        Mixture m = posterior.estimate(contrast);
        double[] shares = posterior.priorShares(contrast);
        return new Difference(Figures.percent(m.quantile(0.5)), new Range(Figures.percent(m.quantile(0.1)),
                Figures.percent(m.quantile(0.9))),
                new Range(Figures.percent(m.quantile(0.025)), Figures.percent(m.quantile(0.975))), Math.min(1, Arrays.stream(shares).sum()),
                FairValue.HeldBy.largest(blocks, shares));
    }

    /**
     * Joint draws from the fit, the same for the same seed.
     *
     * @param count number of draws, 1 to {@value #MOST_DRAWS}
     * @param seed seed of the generator
     * @return the draws, to be asked for any car
     * @throws IllegalArgumentException if the count lies outside
     */
    public ValueDraws draws(int count, long seed) {
        if (count < 1 || count > MOST_DRAWS) {
            throw new IllegalArgumentException("draws are 1 to " + MOST_DRAWS + ", not " + count);
        }
        // Pairs of body and running gear are few: their spread is drawn too.
        return new ValueDraws(encoder, encoder.pairBlock().map(pairs -> posterior.draws(pairs, count, seed))
                .orElseGet(() -> posterior.draws(count, seed)));
    }

    /**
     * How the level of the market has moved, with the cars held still.
     *
     * @return the index, base 100 in the first month; why there is none where the listings have no dates, or one only
     */
    public Answer<MarketIndex> index() {
        Answer<MarketIndex> found = index;
        if (found == null) {
            found = MarketIndex.of(cars, assumptions, encoder, posterior, evidence, chanceThatDatesTellNothing());
            index = found;
        }
        return found;
    }

    Comparables comparables(FairValue value) {
        return grids.of(value);
    }

    /** How many cars of which lines it rests on. */
    @Override
    public String toString() {
        return "price model of " + cars.size() + " cars with " + prices() + " prices, lines " + lines();
    }
}
