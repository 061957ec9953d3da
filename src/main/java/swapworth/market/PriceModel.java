package swapworth.market;

import static java.util.Objects.requireNonNull;

import java.time.LocalDate;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import swapworth.assumptions.Assumptions;
import swapworth.listing.Car;
import swapworth.listing.CarFacts;
import swapworth.listing.Facts;
import swapworth.listing.LevelOfTrade;
import swapworth.listing.Listing;
import swapworth.reading.DistanceUnit;
import swapworth.statistics.ErrorTail;
import swapworth.statistics.Mixture;
import swapworth.statistics.Posterior;
import swapworth.statistics.PriorBlock;
import swapworth.statistics.RangeStretch;
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
 * difference from the first, with an error scale of its own. A bid that missed the reserve says that the worth lies above it: beside
 * prices of its car it is a bound of its difference from the last of them.
 *
 * <p>Immutable; safe for use by several threads.
 */
public final class PriceModel {
    /** The columns of measured facts: always in the model where the rows differ in them. */
    public static final List<String> MEASURED_FACTS = List.of("power_kw", "cylinders", "weight_kg", "driven_wheels");

    /** All columns of listings that are in the model without being asked for, where the rows differ in them. */
    public static final List<String> ALWAYS_TAKEN = Stream.concat(MEASURED_FACTS.stream(), Stream.of("vehicle", "trim", "body",
            "running_gear", "model_year", "first_registered", "age_years", "mileage", "seen_on", "price_kind", "price_includes", "seller",
            "region", "title", "runs", "damage", "rust", "paint", "interior", "mechanical", "records", "keys", "airbags")).toList();

    /** More draws than anybody needs fill the memory. */
    public static final int MOST_DRAWS = 1_000_000;

    private final PriceFit fit;
    private final List<Car> cars;
    private final EvidenceList evidence;
    private final Encoder encoder;
    private final Posterior posterior;
    /** Found when first asked for: the same whichever thread finds it. */
    private volatile @Nullable Answer<MarketIndex> index;
    private final Values values;
    private final Judging judging;
    private final Grids grids;

    private PriceModel(PriceFit fit) {
        this.fit = fit;
        this.cars = fit.cars();
        this.evidence = fit.evidence();
        this.encoder = fit.encoder();
        this.posterior = fit.posterior();
        this.values = new Values(this, encoder, fit.stretches(), fit.carsOfLine());
        this.judging = new Judging(fit, values);
        this.grids = new Grids(fit);
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
         * @param columns headers, as in {@link CarFacts#further()}; in whatever case, for those are in lower case. One that no car fills is
         *     not used, and {@link PriceModel#columnsTaken} says so
         * @return a copy
         */
        public Options withColumns(List<String> columns) {
            return new Options(assumptions, columns.stream().map(c -> c.strip().toLowerCase(Locale.ROOT)).distinct().toList());
        }

        /**
         * Fits the model.
         *
         * @param cars at least one car
         * @return the fitted model
         * @throws IllegalArgumentException if there is no car
         */
        public PriceModel fit(List<Car> cars) {
            return new PriceModel(new PriceFit(cars, assumptions, further));
        }
    }

    /** Whether every price is only known to be too low. */
    boolean hasBoundsOnly() {
        return evidence.firstPrices().length == 0;
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
        return fit.assumptions();
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
     * How heavy the tails of single prices about their values are, found from the prices of cars that were left out.
     *
     * @return degrees of freedom of Student's t, and the number of those cars
     */
    public ErrorTail tail() {
        return fit.stretches().tail();
    }

    /**
     * By how much ranges are stretched, found from the prices of cars that were left out; applied to cars of pairs, levels of trade
     * and days that the collection holds.
     *
     * @return the factor and the number of prices behind it
     */
    public RangeStretch stretched() {
        return fit.stretches().sound();
    }

    /**
     * The same for crashed, branded and dead cars, found by their prices alone.
     *
     * @return the factor and the number of prices behind it
     */
    public RangeStretch stretchedTroubled() {
        return fit.stretches().troubled();
    }

    /**
     * By how much more the prices of each line scatter than those of the middle car; the ranges of its cars are as much wider.
     *
     * @return a factor for each line; empty where there is one line alone
     */
    public Map<String, Double> scatterOfLines() {
        Map<String, Double> ofRanges = fit.stretches().lines();
        return Map.copyOf(ofRanges.isEmpty() ? encoder.scatter().ofLine() : ofRanges);
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
        return fit.blocks();
    }

    /**
     * What a car is worth on a day at a level of trade, by all cars of the fit. Names that differ from those of the listings in case,
     * spaces or hyphens alone are taken for them, here and wherever a car or a line is asked for.
     *
     * @param subject the car, the day and the level
     * @return a fair value, or why there is none
     */
    public Valuation value(Subject subject) {
        return valueWithout(-1, subject);
    }

    /**
     * The same by all cars but one.
     *
     * @param car its number among the cars of the model; below 0 for none
     */
    Valuation valueWithout(int car, Subject subject) {
        Subject asked = encoder.names().of(subject);
        return car < 0 ? values.of(asked, encoder.encode(asked), posterior, -1, values.outside(asked)) : judging.value(asked, car);
    }

    /**
     * How the body and the running gear of a car stand to each other in the collection.
     *
     * @param car what is known of the car
     * @return whether cars show them together, and what speaks for the pair if not
     */
    public PairStanding pair(Facts car) {
        return encoder.pairs().standing(encoder.names().of(car));
    }

    /**
     * The number of prices whose cars show the body and the running gear of a car together, under the same model line.
     *
     * @param car what is known of the car
     * @return 0 where the pair was never seen
     */
    public int pricesOfPair(Facts car) {
        return encoder.pairs().prices(encoder.names().of(car));
    }

    /**
     * The running gear of a car: as its facts say, else as the cars of its line agree, else a word of the line's own.
     *
     * @param car what is known of the car
     * @return in lower case
     */
    public String runningGear(Facts car) {
        return encoder.pairs().gear(encoder.names().of(car));
    }

    /**
     * The body of a car, likewise.
     *
     * @param car what is known of the car
     * @return in lower case
     */
    public String body(Facts car) {
        return encoder.pairs().body(encoder.names().of(car));
    }

    /**
     * Whether some lines share a body or a running gear, so that the levels of lines are taken apart into the two and their pair.
     *
     * @return false where each line has a level of its own
     */
    public boolean takesPairsApart() {
        return encoder.pairs().linked();
    }

    /**
     * How a listing's price stands, its own car left out. A listing that the model has not seen is judged by all cars.
     *
     * @param listing the listing, on the day it was seen
     * @return the judgement
     */
    public Judgement judge(Listing listing) {
        return judging.judge(listing);
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
        return judging.judgeAll(on, level);
    }

    Judging judging() {
        return judging;
    }

    /**
     * How well the model's values, each with its own car left out, meet the prices seen, and how often its ranges hold them.
     *
     * @param judgements of all listings of the fit
     * @return why there is nothing to tell with fewer than ten prices that have a value: figures of dispersion would say nothing
     */
    public Answer<FitStudy> study(List<Judgement> judgements) {
        return judging.study(judgements);
    }

    /**
     * The effects of the terms that mean something by themselves, and the slopes of each line.
     *
     * @return those of which at least one price tells, main terms first
     */
    public List<TermEffect> terms() {
        return new Effects(evidence, encoder, fit.encoded(), posterior).all();
    }

    /**
     * Whether prices step down where the distance passes a round 10,000, beyond the smooth fall: no term of the model and in no value,
     * but found from what each price, its own car left out, lies off its value.
     *
     * @param unit the unit in which buyers read distances; a car whose distance was written in another one tells nothing
     * @return the effect of having just passed one against being just before it; empty where no price with a distance tells of it
     */
    public Optional<TermEffect> stepAtRoundDistances(DistanceUnit unit) {
        return new RoundDistances(evidence, fit.encoded(), fit.leftOut(), fit.assumptions()).step(unit);
    }

    /**
     * Whether age and distance tell anything of these prices: of wrecks by the lump and of mixed lots they may not.
     *
     * @return a sentence without the last full stop; empty where they tell, by all likelihood
     */
    public Optional<String> slopesInDoubt() {
        double chance = posterior.chanceOfAbsence();
        return chance < IndexCautions.WORTH_SAYING ? Optional.empty()
                : Optional.of("With a chance of " + Cell.chanceInWords(chance) + " neither age nor distance tells anything of these"
                + " prices, as of wrecks by the lump and of mixed lots: so far values are those of the level alone, and slopes are"
                + " averaged with 0 (slopes_tell_nothing)");
    }

    /**
     * The steps that stand against the usual order by these prices, such as a salvage title above a rebuilt one.
     *
     * @return those that do so with a chance of at least 80 %, and of both of which a price tells
     */
    public List<AgainstOrder> againstOrder() {
        return new Effects(evidence, encoder, fit.encoded(), posterior).againstOrder();
    }

    /**
     * Whether the listings hold a price at a level of trade; where they do not, the step to it is assumed.
     *
     * @param level the level
     * @return whether a price of the fit is of it
     */
    public boolean hasPricesAt(LevelOfTrade level) {
        return encoder.levels().contains(level);
    }

    /**
     * The terms that the prices cannot tell apart, such as a level of trade and a damage that always go together: there the assumptions
     * decide how an effect splits between them.
     *
     * @return empty where every fact that varies can be told from the others
     */
    public List<Confounded> confounded() {
        return fit.confounded();
    }

    /**
     * The further columns that it takes.
     *
     * @return the names of {@link Options#withColumns}, each once, in lower case
     */
    public List<String> furtherColumns() {
        return fit.further();
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
        return fit.carsOfLine().entrySet().stream().sorted(Map.Entry.<String, Integer>comparingByValue().reversed()
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
        String known = encoder.names().line(line);
        if (!fit.carsOfLine().containsKey(known)) {
            throw encoder.names().unknown(line, lines());
        }
        return new MileageCurve(cars, evidence, encoder, fit.encoded(), posterior).of(known);
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
        SparseRow contrast = encoder.encode(encoder.names().of(first)).row()
                .plus(-1, encoder.encode(encoder.names().of(second)).row());
        Mixture m = posterior.estimate(contrast);
        double[] shares = posterior.priorShares(contrast);
        return new Difference(Figures.percent(m.quantile(0.5)), new Range(Figures.percent(m.quantile(0.1)),
                Figures.percent(m.quantile(0.9))),
                new Range(Figures.percent(m.quantile(0.025)), Figures.percent(m.quantile(0.975))), Math.min(1, Arrays.stream(shares).sum()),
                FairValue.HeldBy.largest(fit.blocks(), shares));
    }

    /**
     * What holds a weighted sum of the logarithms of middle prices: how much of its variance goes with each assumption. Several cars that
     * rest on the same assumption do so together, and what two of them share falls out of their difference.
     *
     * @param weights the weight of each car, day and level of trade, a finite number; at least one
     * @return the part of each assumption by its name, at least 0, together at most about 1
     * @throws IllegalArgumentException if there is none, or a weight is no number
     */
    public Map<String, Double> heldBy(Map<Subject, Double> weights) {
        if (weights.isEmpty()) {
            throw new IllegalArgumentException("a sum of no prices is held by nothing");
        }
        SparseRow contrast = SparseRow.of(new int[0], new double[0]);
        for (Map.Entry<Subject, Double> one : weights.entrySet()) {
            if (!Double.isFinite(one.getValue())) {
                throw new IllegalArgumentException("a weight must be a finite number, not " + one.getValue());
            }
            contrast = contrast.plus(one.getValue(), encoder.encode(encoder.names().of(one.getKey())).row());
        }
        double[] shares = posterior.priorShares(contrast);
        Map<String, Double> held = new LinkedHashMap<>();
        for (int b = 0; b < shares.length; b++) {
            held.merge(fit.blocks().get(b).name(), shares[b], Double::sum);
        }
        return held;
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
                .orElseGet(() -> posterior.draws(count, seed)), values);
    }

    /**
     * Whether draws are of this model: those of another one belong to other states of the market.
     *
     * @param draws joint draws
     * @return whether {@link #draws} made them
     */
    public boolean drew(ValueDraws draws) {
        return draws.areOf(encoder);
    }

    /**
     * How the level of the market has moved, with the cars held still.
     *
     * @return the index, base 100 in the first month; why there is none where the listings have no dates, or one only
     */
    public Answer<MarketIndex> index() {
        Answer<MarketIndex> found = index;
        if (found == null) {
            found = MarketIndex.of(IndexBasis.of(fit));
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
