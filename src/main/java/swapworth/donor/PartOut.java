package swapworth.donor;

import static java.util.Objects.requireNonNull;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import java.util.stream.Stream;
import swapworth.assumptions.Assumptions;
import swapworth.listing.CandidateCar;
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
        PiecePrices prices = new PiecePrices(car, market, state, draws);
        return new PartOut(car, file.rows(car.name()).stream().map(prices::of).toList(), state, draws, prices.drift());
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
        return gear(toSwap(), this::bad, Piece::logAnother);
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
        return new PartOut(car, pieces.stream().map(Piece::sold).toList(), state, draws, drift);
    }

    /** What goes into the swap as used parts, as far as they turn out good. */
    double[] gearAsFound() {
        return sum(toSwap(), this::asFound, p -> p.logPrice);
    }

    /** What another engine and gearbox, as far run as those on offer, cost in place of those that turn out not to be good. */
    double[] drivetrainToReplace() {
        return sum(pieces.stream().filter(p -> p.row.part().isEngineOrGearbox()).toList(), this::bad, Piece::logAnother);
    }

    /** The chance that the engine and the gearbox that go into the swap are both good, by the middles of the assumptions. */
    double gearGood() {
        double chance = 1;
        for (Piece p : toSwap()) {
            chance *= p.row.part().isEngineOrGearbox() ? p.chance(draws.assumptions()) : 1;
        }
        return chance;
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
                        Cell.words(p.row.goesTo().words()), Cell.words("what remains in the end"));
                continue;
            }
            table.row(Cell.words(p.row.part().name() + (p.row.count() > 1 ? " (" + p.row.count() + ")" : "")),
                    Cell.words(p.row.part().zone()), Cell.words(p.state.words()), Cell.words(p.why),
                    Cell.number(100 * p.chance(draws.assumptions()), 0), Cell.words(p.row.goesTo().words()),
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
