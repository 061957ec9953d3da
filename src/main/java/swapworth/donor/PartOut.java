package swapworth.donor;

import static java.util.Objects.requireNonNull;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.Function;
import java.util.stream.Stream;
import swapworth.assumptions.Assumptions;
import swapworth.listing.CandidateCar;
import swapworth.listing.CarFacts;
import swapworth.listing.PriceKind;
import swapworth.reading.Spelling;
import swapworth.statistics.RandomNumbers;
import swapworth.table.Cell;
import swapworth.table.Column;
import swapworth.table.Table;

/** The parts of one car: what its damage leaves of each, what becomes of it, and what it sells for. */
public final class PartOut {
    private final CandidateCar car;
    private final MarketState state;
    private final AssumptionDraws draws;
    private final List<Piece> pieces;
    private final double[] drift;
    private final Optional<Recovery> recovery;

    /** One row with everything that is known of it. */
    static final class Piece {
        final PartRow row;
        final PartState state;
        final String why;
        /** Draws of the logarithm of what it sells for; empty where it has no price. */
        final double[] logPrice;
        /** The same of another one, as far run as those on offer: how far this car has run makes no other part cheaper. */
        final double[] logAnother;
        final double asked;
        final String priceFrom;

        Piece(PartRow row, PartState state, String why, double[] logPrice, double[] logAnother, double asked, String priceFrom) {
            this.row = row;
            this.state = state;
            this.why = why;
            this.logPrice = logPrice;
            this.logAnother = logAnother;
            this.asked = asked;
            this.priceFrom = priceFrom;
        }

        boolean priced() {
            return logPrice.length > 0;
        }

        /** Why a part that is for sale earns nothing; empty where it earns. */
        String earnsNothing() {
            return row.part().ruled() && !row.ruleMet() ? "the local rule is not stated to be met"
                    : chanceless() ? "gone"
                    : !priced() && row.price().isPresent() ? "its row states a price of 0"
                    : !priced() ? "no price: no offer in parts.csv names it, and the row states none" : "";
        }

        /** The chance in each draw that one of it is good. */
        private double[] chances(AssumptionDraws draws, int count) {
            return row.chanceGood().isPresent() ? SaleUnit.all(row.chanceGood().getAsDouble(), count)
                    : state == PartState.GONE ? new double[count] : draws.share(state.chance());
        }

        private boolean chanceless() {
            return row.chanceGood().isPresent() ? row.chanceGood().getAsDouble() == 0 : state == PartState.GONE;
        }

        boolean onSale() {
            return forSale() && priced();
        }

        /** Whether it would be on sale if only it had a price. */
        boolean lacksPrice() {
            return forSale() && !priced() && row.price().isEmpty();
        }

        private boolean forSale() {
            return row.goesTo() == GoesTo.SELL && !row.part().isLeftOver() && !(row.part().ruled() && !row.ruleMet()) && !chanceless();
        }
    }

    private PartOut(CandidateCar car, List<Piece> pieces, MarketState state, AssumptionDraws draws, double[] drift) {
        this.car = car;
        this.pieces = pieces;
        this.state = state;
        this.draws = draws;
        this.drift = drift;
        this.recovery = pieces.isEmpty() ? Optional.empty() : Optional.of(Recovery.of(this));
    }

    /**
     * The parts of a car.
     *
     * @param car the car
     * @param file which parts it has and what becomes of them
     * @param market what parts sell for
     * @param state the states of the market that are gone through
     * @param assumptions what stands in where neither file speaks; each is drawn within its spread
     * @return the parts, priced and simulated
     */
    public static PartOut of(CandidateCar car, PartoutFile file, PartsMarket market, MarketState state, Assumptions assumptions) {
        return of(car, file, market, requireNonNull(state, "state"), new AssumptionDraws(assumptions, state.count(), state.seed()));
    }

    /** The same with assumptions that are drawn already, for several cars. */
    static PartOut of(CandidateCar car, PartoutFile file, PartsMarket market, MarketState state, AssumptionDraws draws) {
        PartsMarket.Drawn drawn = market.draws(state.count(), state.seed());
        double[] level = together(car.facts(), state, draws);
        List<Piece> pieces = new ArrayList<>();
        for (PartRow row : file.rows(car.name())) {
            pieces.add(piece(car, row, market, drawn, level, draws, state));
        }
        double[] drift = drawn.drift().orElseGet(() -> {
            double[] assumed = draws.between("part_drift", -50, 50).clone();
            for (int i = 0; i < assumed.length; i++) {
                assumed[i] = StrictMath.log1p(assumed[i] / 100);
            }
            return assumed;
        });
        return new PartOut(car, List.copyOf(pieces), state, draws, drift);
    }

    /**
     * How far the level of all part prices lies from its middle in each draw: together with the level of the car, as closely as assumed.
     */
    private static double[] together(CarFacts facts, MarketState state, AssumptionDraws draws) {
        double[] cars = state.departures(facts);
        double[] follow = draws.between("parts_correlate_with_cars", -1, 1);
        double[] level = new double[state.count()];
        double move = Math.log1p(draws.assumptions().get("parts_move").middle() / 100);
        RandomNumbers own = RandomNumbers.of(state.seed(), "parts move");
        for (int i = 0; i < level.length; i++) {
            level[i] = move * (follow[i] * cars[i] + Math.sqrt(1 - follow[i] * follow[i]) * own.normal());
        }
        return level;
    }

    private static Piece piece(CandidateCar car, PartRow row, PartsMarket market, PartsMarket.Drawn drawn, double[] level,
            AssumptionDraws draws,
            MarketState state) {
        DamageLeaves.Left left = DamageLeaves.of(car.facts(), row.part());
        PartState partState = row.state().orElse(left.state());
        String why = row.chanceGood().isPresent() || row.state().isPresent() ? "your own" : left.why();
        PartsMarket.Wanted wanted = wanted(car, row.part());
        String name = car.name() + "/" + row.part().name();
        RandomNumbers random = RandomNumbers.of(state.seed(), name);
        if (row.price().isPresent()) {
            double[] logs = new double[state.count()];
            double middle = row.price().getAsDouble();
            double spread = draws.assumptions().logSpread("own_price");
            double shift = draws.assumptions().logMiddle("own_price");
            for (int i = 0; i < logs.length; i++) {
                logs[i] = StrictMath.log(middle) + shift + spread * random.normal() + level[i];
            }
            double[] own = middle == 0 ? new double[0] : logs;
            return new Piece(row, partState, why, own, own, middle, "your own price");
        }
        long seed = RandomNumbers.seed(state.seed(), name);
        double[] logs = atLevel(drawn.sold(wanted, seed), level);
        double[] another = atLevel(drawn.sold(another(car, row.part()), seed), level);
        double asked = market.predicted(wanted, PriceKind.ASKING).map(m -> Math.exp(m.quantile(0.5))).orElse(0.0);
        int offers = market.offersOf(row.part());
        return new Piece(row, partState, why, logs, another, asked, logs.length == 0 ? ""
                : offers + (offers == 1 ? " offer, " : " offers, ") + Math.round(100 * market.priorShare(wanted)) + " % assumed");
    }

    private static double[] atLevel(Optional<double[]> logs, double[] level) {
        double[] at = logs.orElse(new double[0]);
        for (int i = 0; i < at.length; i++) {
            at[i] += level[i];
        }
        return at;
    }

    /** A part of the same kind that fits, as far run as those on offer. */
    static PartsMarket.Wanted another(CandidateCar car, PartKind part) {
        PartsMarket.Wanted own = wanted(car, part);
        return new PartsMarket.Wanted(own.part(), own.vehicle(), own.gear(), OptionalDouble.empty());
    }

    static PartsMarket.Wanted wanted(CandidateCar car, PartKind part) {
        CarFacts facts = car.facts();
        OptionalDouble own = facts.mileage().map(m -> OptionalDouble.of(m.miles())).orElse(OptionalDouble.empty());
        OptionalDouble gear = facts.gearMileage().map(m -> OptionalDouble.of(m.miles())).orElse(own);
        return new PartsMarket.Wanted(part, Spelling.name(facts.vehicle()), facts.runningGear().map(Spelling::name).orElse(""),
                part.mechanical() ? gear : own);
    }

    /**
     * The car.
     *
     * @return as it stands in cars.csv
     */
    public CandidateCar car() {
        return car;
    }

    List<Piece> pieces() {
        return pieces;
    }

    MarketState state() {
        return state;
    }

    AssumptionDraws draws() {
        return draws;
    }

    double[] drift() {
        return drift;
    }

    /** How many pieces would be on sale if only they had a price. */
    int partsUnpriced() {
        return pieces.stream().filter(Piece::lacksPrice).mapToInt(p -> p.row.count()).sum();
    }

    /** Whether what is left of the car goes to the scrap yard: a donor's does, a recipient is built on. */
    boolean endsAsHulk() {
        return car.role() == CandidateCar.Role.DONOR
                || car.role() != CandidateCar.Role.RECIPIENT && pieces.stream().anyMatch(p -> p.row.goesTo() == GoesTo.SWAP);
    }

    /**
     * What its left-over parts bring.
     *
     * @return nothing where no row of partout.csv names the car
     */
    public Optional<Recovery> recovery() {
        return recovery;
    }

    /**
     * What the parts that go into the swap would sell for, each taken to be good.
     *
     * @return draws in the order of the states of the market
     */
    public GearValue gear() {
        return asGood(toSwap());
    }

    private List<Piece> toSwap() {
        return pieces.stream().filter(p -> p.row.goesTo() == GoesTo.SWAP).toList();
    }

    /**
     * What the running gear that a swap takes out of this car would sell for, each part taken to be good and whatever becomes of it: the
     * parts that the donor gives anew; engine, gearbox and axles where the parts that the donor gives are not known, or are one set.
     *
     * @param donor the parts of the donor
     * @return draws in the order of the states of the market; engine and gearbox stand among what has no price where partout.csv does not
     *         name them for this car
     */
    public GearValue replaced(Optional<PartOut> donor) {
        List<PartKind> given = donor.map(PartOut::toSwap).orElse(List.of()).stream().map(p -> p.row.part()).toList();
        boolean known = given.stream().anyMatch(PartKind::isEngine);
        List<Piece> taken = pieces.stream().filter(p -> known ? given.contains(p.row.part()) : p.row.part().mechanical()).toList();
        GearValue found = asGood(taken);
        List<String> missing = new ArrayList<>(found.unpriced());
        boolean set = taken.stream().anyMatch(p -> p.row.part().isSet());
        Stream.of(PartKind.ENGINE, PartKind.GEARBOX).filter(name -> !set && taken.stream().noneMatch(p -> p.row.part().name().equals(name))
                && (!known || given.stream().anyMatch(k -> k.name().equals(name)))).forEach(missing::add);
        return new GearValue(found.draws(), found.parts(), missing);
    }

    /** How many pieces of a part turn out good in each draw: the same ones whatever becomes of it. */
    int[] good(Piece piece) {
        double[] chances = piece.chances(draws, state.count());
        RandomNumbers random = RandomNumbers.of(state.seed(), car.name() + "/good/" + piece.row.part().name());
        int[] good = new int[chances.length];
        for (int i = 0; i < good.length; i++) {
            for (int k = 0; k < piece.row.count(); k++) {
                good[i] += random.uniform() < chances[i] ? 1 : 0;
            }
        }
        return good;
    }

    private double[] asFound(Piece piece) {
        return Arrays.stream(good(piece)).asDoubleStream().toArray();
    }

    private double[] bad(Piece piece) {
        return Arrays.stream(good(piece)).mapToDouble(good -> piece.row.count() - good).toArray();
    }

    private GearValue asGood(List<Piece> parts) {
        return gear(parts, piece -> SaleUnit.all(piece.row.count(), state.count()), piece -> piece.logPrice);
    }

    /**
     * What another of each part that goes into the swap, as far run as those on offer, costs where the one in the car turns out not to be
     * good.
     *
     * @return draws in the order of the states of the market
     */
    GearValue gearToReplace() {
        return gear(toSwap(), this::bad, piece -> piece.logAnother);
    }

    /** Parts at what they or others sell for, a logarithm, each so many times as is told of it for each draw. */
    private GearValue gear(List<Piece> parts, Function<Piece, double[]> times, Function<Piece, double[]> price) {
        List<String> counted = new ArrayList<>();
        List<String> unpriced = new ArrayList<>();
        parts.forEach(piece -> (piece.priced() ? counted : unpriced).add(piece.row.part().name()));
        return new GearValue(counted.isEmpty() ? new double[0] : sum(parts, times, price), counted, unpriced);
    }

    /** The sum of those that have a price. */
    private double[] sum(List<Piece> parts, Function<Piece, double[]> times, Function<Piece, double[]> price) {
        double[] sum = new double[state.count()];
        for (Piece piece : parts) {
            if (piece.priced()) {
                double[] each = times.apply(piece);
                double[] log = price.apply(piece);
                for (int i = 0; i < sum.length; i++) {
                    sum[i] += each[i] * StrictMath.exp(log[i]);
                }
            }
        }
        return sum;
    }

    /** The same car with everything sold that would go into the swap or be kept. */
    PartOut allSold() {
        List<Piece> sold = new ArrayList<>();
        for (Piece p : pieces) {
            sold.add(p.row.goesTo() == GoesTo.SCRAP ? p
                    : new Piece(p.row.sold(), p.state, p.why, p.logPrice, p.logAnother, p.asked, p.priceFrom));
        }
        return new PartOut(car, sold, state, draws, drift);
    }

    /** What goes into the swap as used parts, as far as they turn out good. */
    double[] gearAsFound() {
        return sum(toSwap(), this::asFound, p -> p.logPrice);
    }

    /** What another engine and gearbox, as far run as those on offer, cost in place of those that turn out not to be good. */
    double[] drivetrainToReplace() {
        return sum(pieces.stream().filter(p -> p.row.part().isEngineOrGearbox()).toList(), this::bad, p -> p.logAnother);
    }

    /** The chance that the engine and the gearbox that go into the swap are both good, by the middles of the assumptions. */
    double gearGood() {
        double chance = 1;
        for (Piece p : toSwap()) {
            chance *= p.row.part().isEngineOrGearbox() ? chanceGood(p) : 1;
        }
        return chance;
    }

    private double chanceGood(Piece p) {
        return p.row.chanceGood().isPresent() ? p.row.chanceGood().getAsDouble()
                : p.state == PartState.GONE ? 0 : draws.assumptions().get(p.state.chance()).middle() / 100;
    }

    /**
     * What the damage leaves: every part of the car with its state and what becomes of it.
     *
     * @return one row a part
     */
    public Table leftTable() {
        Table.Builder table = Table.titled("What is left of " + car.name())
                .columns(Column.words("part"), Column.words("zone"), Column.words("state"),
                Column.words("by"), Column.number("chance good", "%"), Column.words("goes to"), Column.sentences("remark"));
        table.note(pieces.size() + (pieces.size() == 1 ? " part" : " parts") + " named. A blank damage is unknown, not none.");
        for (Piece p : pieces) {
            if (p.row.part().isLeftOver()) {
                table.row(Cell.words(p.row.part().name()), Cell.BLANK, Cell.BLANK, Cell.BLANK, Cell.BLANK,
                        Cell.words(p.row.goesTo().words()),
                        Cell.words("what remains in the end"));
                continue;
            }
            table.row(Cell.words(p.row.part().name() + (p.row.count() > 1 ? " (" + p.row.count() + ")" : "")),
                    Cell.words(p.row.part().zone()),
                    Cell.words(p.state.words()), Cell.words(p.why), Cell.number(100 * chanceGood(p), 0), Cell.words(p.row.goesTo().words()),
                    Cell.words(p.row.goesTo() == GoesTo.SELL ? p.earnsNothing()
                            : "earns nothing" + p.row.part().inAnotherCar(p.row.goesTo())));
        }
        return table.build();
    }

    /** Of which car how many parts are known. */
    @Override
    public String toString() {
        return car.name() + ": " + pieces.size() + " parts, " + pieces.stream().filter(Piece::onSale).count()
                + " of them on sale with a price";
    }
}
