package swapworth.swap;

import java.time.LocalDate;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import swapworth.listing.CarFacts;
import swapworth.listing.LevelOfTrade;
import swapworth.market.FairValue.HeldBy;
import swapworth.market.PriceModel;
import swapworth.market.Range;
import swapworth.statistics.Quantiles;
import swapworth.table.Table;

/**
 * What a finished swap is worth: the price of this one car, on a day, at a level of trade, as joint draws with the market.
 *
 * <p>Up to three approaches answer for one quantity, each on the same draws of the fit: by body and running gear, by cost, and by the
 * position of swaps between the stock car and the factory equivalent. They share listings and assumptions, so they are put together by the
 * covariance of their draws, with a spread between them under a half-normal prior that is integrated over
 * ({@link swapworth.statistics.Combination}): that they agree is no evidence as far as they share their data. Swaps that were seen of the
 * same body and running gear then move the result of all of them ({@link swapworth.statistics.Draws#given}), so that many of them outweigh
 * the approaches. How the one car departs from others of its description is added then, once. All that speaks of a sound car: what the
 * faults of this one take off, as its owner states, comes off next ({@link FinishedCar#faults()}).
 * Offers for the car itself, which has its faults, weigh the draws; the draws are then moved, rank by rank, to the law that results, so
 * that each is as likely as the next and still belongs to its state of the market.
 *
 * <p>Stock value, factory equivalent and the take-apart estimate stand beside the result; none of them cuts it off. Immutable.
 */
public final class SwapValue implements SwapAnswer {
    private final Situation situation;
    private final SwapOptions options;
    private final Approaches approaches;
    private final Reconciled reconciled;
    private final double[] level;
    private final double[] price;
    private final double[] sortedPrice;
    private final double[] sortedLevel;

    SwapValue(Situation situation, SwapOptions options, Approaches approaches) {
        this.situation = situation;
        this.options = options;
        this.approaches = approaches;
        this.reconciled = new Reconciled(situation, approaches, options.weights(), options.offers());
        this.level = reconciled.level();
        this.price = reconciled.price();
        this.sortedLevel = Arrays.stream(level).sorted().toArray();
        this.sortedPrice = Arrays.stream(price).sorted().toArray();
    }

    /**
     * The value of a finished swap by a model and assumptions alone.
     *
     * @param car the car
     * @param model the price model of all listings
     * @return a value, or why there is none
     */
    public static SwapAnswer of(FinishedCar car, PriceModel model) {
        return options().value(car, model);
    }

    /**
     * How a finished swap is to be valued.
     *
     * @return nothing seen beside the listings, private asking, the last day seen, weights by covariance, 4,000 draws, seed 1
     */
    public static SwapOptions options() {
        return new SwapOptions();
    }

    /**
     * The same car with other offers for it in place of those that were known.
     *
     * @param offers what happened when it was on offer, in any order
     * @return the value with them
     */
    public SwapAnswer with(List<OwnOffer> offers) {
        return options.withOffers(offers).value(situation.car, situation.model);
    }

    @Override
    public <T> T match(Function<SwapValue, T> value, Function<NoSwapValue, T> none) {
        return value.apply(this);
    }

    @Override
    public FinishedCar car() {
        return situation.car;
    }

    @Override
    public List<Approach> approaches() {
        return approaches.all();
    }

    /**
     * The day of the value.
     *
     * @return empty where the listings have no dates
     */
    public Optional<LocalDate> on() {
        return situation.on;
    }

    /**
     * The level of trade of the value.
     *
     * @return the level
     */
    public LevelOfTrade level() {
        return situation.level;
    }

    /**
     * Draws of the price of this one car, in the order of the market's draws.
     *
     * @return amounts in the base currency, each as likely as the next
     */
    public double[] draws() {
        return price.clone();
    }

    /**
     * The facts of the car with the running gear that is in it now: what {@code lines.csv} says of the stock car's does not count.
     *
     * @return the facts that the market is asked about
     */
    public CarFacts built() {
        return situation.finished;
    }

    /**
     * The facts of the stock car: the same with the running gear that the recipient had, else with that of most cars of its line.
     *
     * @return the facts that the market is asked about
     */
    public CarFacts stock() {
        return situation.stock;
    }

    /**
     * Draws of what this one car sells for: of its price, times the step from the level asked at to that of sales in the same draw.
     *
     * @return amounts in the base currency at the level {@code level().sold()}, in the order of the market's draws
     */
    public double[] soldDraws() {
        return drawsAt(level().sold());
    }

    /** Draws of the price of this one car at another level of trade: times the step to it in the same draw. */
    double[] drawsAt(LevelOfTrade other) {
        return other == level() ? draws() : Situation.combined((amount, times) -> amount * times, price,
                situation.step(situation.subject(situation.finished), situation.finishedAt(other)));
    }

    /**
     * Draws of the middle price of such swaps with the faults that this one states, in the order of the market's draws.
     *
     * @return amounts in the base currency, each as likely as the next
     */
    public double[] levelDraws() {
        return level.clone();
    }

    /**
     * Draws of the price of this one car by the approaches alone, its faults taken off, before swaps of the same body and running gear
     * move it.
     *
     * @return amounts in the base currency, in the order of the market's draws; empty where no such swap counts: nothing of other swaps
     *     lies between the approaches and the value
     */
    public Optional<double[]> togetherDraws() {
        return approaches.alike.count() == 0 ? Optional.empty()
                : Optional.of(money(reconciled.withFaults(Situation.sum(reconciled.together(), situation.departure))));
    }

    /**
     * The median of the price of this one car.
     *
     * @return in the base currency
     */
    public double median() {
        return Quantiles.ofSorted(sortedPrice, 0.5);
    }

    /**
     * The range that holds the price of this one car with a stated probability, as much left out above as below.
     *
     * @param probability above 0 and below 1, for instance 0.80
     * @return in the base currency
     * @throws IllegalArgumentException if the probability is none of these
     */
    public Range range(double probability) {
        return range(sortedPrice, probability);
    }

    /**
     * The range of the middle price of such swaps.
     *
     * @param probability above 0 and below 1, for instance 0.80
     * @return in the base currency
     * @throws IllegalArgumentException if the probability is none of these
     */
    public Range level(double probability) {
        return range(sortedLevel, probability);
    }

    static Range range(double[] sorted, double probability) {
        if (!(probability > 0 && probability < 1)) {
            throw new IllegalArgumentException("a range holds more than nothing and less than all, not " + probability);
        }
        return new Range(Quantiles.ofSorted(sorted, (1 - probability) / 2), Quantiles.ofSorted(sorted, (1 + probability) / 2));
    }

    /**
     * How much of what is unsure about the middle price of such swaps, offers for the car itself aside, is held by assumptions and not by
     * rows. The price of one car is far more unsure than that, by how single cars differ.
     *
     * @return between 0 and 1
     */
    public double priorShare() {
        return reconciled.held().share();
    }

    /**
     * The assumption that holds most of {@link #priorShare()}.
     *
     * @return its name and its part
     */
    public HeldBy largestAssumption() {
        return reconciled.largestAssumption();
    }

    /**
     * How much each approach weighs in what the approaches together say, before swaps of the same body and running gear.
     *
     * @return weights that add up to 1, of the approaches that can tell
     */
    public Map<Approach.Kind, Double> weights() {
        return reconciled.weights();
    }

    /**
     * How many equally likely draws the offers leave of those there are; few where the offers contradict all else.
     *
     * @return between 1 and the number of draws
     */
    public double drawsLeft() {
        return reconciled.drawsLeft();
    }

    /**
     * Draws of what the car would be worth as it left the maker, its line's own running gear in it.
     *
     * @return middle prices, in the order of the market's draws; empty where the listings cannot tell
     */
    public Optional<double[]> stockDraws() {
        return approaches.brackets.stock.map(SwapValue::money);
    }

    /**
     * Draws of what the change adds: the middle price of such swaps, with the faults that this one states, less the stock car.
     *
     * @return amounts, in the order of the market's draws, below 0 where it takes value away; empty where the listings cannot tell of the
     *     stock car
     */
    public Optional<double[]> addedDraws() {
        return stockDraws().map(stock -> Situation.combined((whole, plain) -> whole - plain, level, stock));
    }

    /**
     * Draws of what the factory equivalent in the same state would be worth if it had run as far as the chassis of the finished car.
     *
     * @return middle prices, in the order of the market's draws; empty where none is named or the listings cannot tell
     */
    public Optional<double[]> factoryAtChassisDraws() {
        return approaches.brackets.factoryAtChassis.map(SwapValue::money);
    }

    /**
     * Draws of what the factory equivalent in the same state would be worth if it had run as far as the running gear of the finished car.
     *
     * @return middle prices, in the order of the market's draws; empty where no such distance is stated, none is named or the listings
     *     cannot tell
     */
    public Optional<double[]> factoryAtGearDraws() {
        return approaches.brackets.factoryAtGear.map(SwapValue::money);
    }

    /**
     * Draws of what the recipient without an engine (sold privately, by the price model) and the running gear, sold apart, would bring,
     * net of what selling costs; hours are not counted.
     *
     * @return amounts, in the order of the market's draws; empty where the parts are not known
     */
    public Optional<double[]> takenApartDraws() {
        return approaches.byCost.takenApart();
    }

    /**
     * Draws of what the running gear of the finished car would bring, sold by itself, net of what selling costs; hours are not counted.
     *
     * @return amounts, in the order of the market's draws; empty where nothing tells what it would cost
     */
    public Optional<double[]> gearSoldDraws() {
        return approaches.byCost.gearSold();
    }

    static double[] money(double[] logs) {
        return Situation.map(logs, StrictMath::exp);
    }

    static double middle(double[] logs) {
        return Quantiles.median(money(logs));
    }

    /**
     * The highest refused offer: the owner holds the car to be worth more to them.
     *
     * @return in the base currency; empty where none was refused
     */
    public Optional<Double> ownersValueAbove() {
        return options.offers().stream().filter(o -> o.kind() == OwnOffer.Kind.OFFER_REFUSED).map(OwnOffer::amount)
                .max(Comparator.naturalOrder());
    }

    @Override
    public List<Table> tables() {
        return new SwapTables(this).all();
    }

    /**
     * The result, with what holds it and what does not fit together.
     *
     * @return a table
     */
    public Table result() {
        return new SwapTables(this).result();
    }

    /**
     * What it stands by: approaches that can tell, cars of the body's line and in all, swaps seen, offers for the car itself.
     *
     * @return words without a full stop
     */
    public String basis() {
        return new Basis(this).words();
    }

    /**
     * By what the price was found: sales of this very car, the approaches that told with their weights, swaps seen, offers.
     *
     * @return sentences
     */
    public String howFound() {
        return new Basis(this).howFound();
    }

    /**
     * The swaps of other people that count in it.
     *
     * @return a table; empty where none does
     */
    public Optional<Table> seen() {
        return new SwapTables(this).seen();
    }

    /**
     * How much of what is unsure about the middle price of such swaps assumptions hold, and which holds most.
     *
     * @return words without a full stop
     */
    public String held() {
        return new Basis(this).held();
    }

    /**
     * Each approach with its ranges, its weight, what holds it and what is to be known of it.
     *
     * @return a table
     */
    public Table approachesTable() {
        return new SwapTables(this).approaches();
    }

    /**
     * Stock car, factory equivalent at both distances, and the car taken apart.
     *
     * @return a table
     */
    public Table brackets() {
        return new SwapTables(this).brackets();
    }

    /**
     * From the stock car and from the factory equivalent to the finished car, step by step.
     *
     * @return two tables; none where the approach by body and running gear cannot tell
     */
    public List<Table> grids() {
        return new StepGrids(this).tables();
    }

    /**
     * What each pair of body and running gear would cost in the state of the finished car, seen or unseen.
     *
     * @return a table
     */
    public Table pairs() {
        return new PairTable(situation).table();
    }

    /**
     * Which further rows would narrow the value most.
     *
     * @return a table
     */
    public Table narrowing() {
        return new SwapTables(this).narrowing();
    }

    /**
     * What to ask for it, how long it then stands, what is paid of it, and below what a sale is worse than taking the car apart.
     *
     * @return a table; empty where the car is sold
     */
    public Optional<Table> selling() {
        return isSold() ? Optional.empty() : Optional.of(new Selling(this).table());
    }

    /**
     * What each way to sell it leaves: privately, on commission, to a dealer, at auction, taken apart.
     *
     * @return a table; empty where the car is sold
     */
    public Optional<Table> waysToSell() {
        return isSold() ? Optional.empty() : Optional.of(new WaysToSell(this).table());
    }

    private boolean isSold() {
        return sale().isPresent();
    }

    /**
     * The sale of this very car, as swaps.csv tells of it.
     *
     * @return the last where there are several; empty where none is told
     */
    public Optional<OwnOffer> sale() {
        return options.offers().stream().filter(offer -> offer.kind() == OwnOffer.Kind.SOLD).max(OwnOffer.ORDER);
    }

    /**
     * What a buyer, a lender or an insurer must be told: both distances apart, each with its status, title, papers, changes.
     *
     * @return a table
     */
    public Table disclosure() {
        return new Disclosure(situation).table();
    }

    /**
     * What the owner states against the car: an inspection, an emissions test or an approval that it has not, and faults; what of that the
     * range has taken off, and what it has not.
     *
     * @return whole sentences that say so; empty where nothing is stated, or the car was sold as it is
     */
    public Optional<String> statedAgainst() {
        return isSold() ? Optional.empty() : new Disclosure(situation).statedAgainst();
    }

    Situation situation() {
        return situation;
    }

    Approaches worked() {
        return approaches;
    }

    Reconciled reconciled() {
        return reconciled;
    }

    List<OwnOffer> offers() {
        return options.offers();
    }

    String reason() {
        return options.reason();
    }

    /** The value with its range and what it stands by. */
    @Override
    public String toString() {
        return car().name() + ": " + Math.round(median()) + ", 80 % range " + range(0.80) + ", by " + basis();
    }
}
