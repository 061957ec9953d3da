package swapworth.donor;

import java.util.Optional;
import java.util.OptionalDouble;
import swapworth.listing.CandidateCar;
import swapworth.listing.CarFacts;
import swapworth.listing.PriceKind;
import swapworth.reading.Spelling;
import swapworth.statistics.RandomNumbers;

/** What the parts of one car are worth, draw by draw with the level of the car. */
final class PiecePrices {
    private final CandidateCar car;
    private final PartsMarket market;
    private final PartsMarket.Drawn drawn;
    private final MarketState state;
    private final AssumptionDraws assumptions;
    /** How far the level of all part prices lies from its middle in each draw. */
    private final double[] level;

    PiecePrices(CandidateCar car, PartsMarket market, MarketState state, AssumptionDraws assumptions) {
        this.car = car;
        this.market = market;
        this.drawn = market.draws(state.count(), state.seed());
        this.state = state;
        this.assumptions = assumptions;
        this.level = together();
    }

    /** Together with the level of the car, as closely as assumed. */
    private double[] together() {
        double[] cars = state.departures(car.facts());
        double[] follow = assumptions.between("parts_correlate_with_cars", -1, 1);
        double[] together = new double[state.count()];
        double move = Math.log1p(assumptions.assumptions().get("parts_move").middle() / 100);
        RandomNumbers own = RandomNumbers.of(state.seed(), "parts move");
        for (int i = 0; i < together.length; i++) {
            together[i] = move * (follow[i] * cars[i] + Math.sqrt(1 - follow[i] * follow[i]) * own.normal());
        }
        return together;
    }

    /** The logarithm of a month's factor on all prices of parts, as offers show it, else as assumed. */
    double[] drift() {
        return drawn.drift().orElseGet(() -> {
            double[] assumed = assumptions.between("part_drift", -50, 50).clone();
            for (int i = 0; i < assumed.length; i++) {
                assumed[i] = StrictMath.log1p(assumed[i] / 100);
            }
            return assumed;
        });
    }

    /** A part with its state and its price. */
    Piece of(PartRow row) {
        DamageLeaves.Left left = DamageLeaves.of(car.facts(), row.part());
        String why = row.chanceGood().isPresent() || row.state().isPresent() ? "your own" : left.why();
        return new Piece(row, row.state().orElse(left.state()), why,
                row.price().isPresent() ? own(row, row.price().getAsDouble()) : byOffers(row.part()));
    }

    private String name(PartKind part) {
        return car.name() + "/" + part.name();
    }

    /** The user's own price, which may be off; of 0 it is none. */
    private Piece.Price own(PartRow row, double price) {
        RandomNumbers random = RandomNumbers.of(state.seed(), name(row.part()));
        double spread = assumptions.assumptions().logSpread("own_price");
        double shift = assumptions.assumptions().logMiddle("own_price");
        double[] logs = new double[price == 0 ? 0 : state.count()];
        for (int i = 0; i < logs.length; i++) {
            logs[i] = StrictMath.log(price) + shift + spread * random.normal() + level[i];
        }
        return new Piece.Price(logs, logs, price, "your own price");
    }

    private Piece.Price byOffers(PartKind part) {
        PartsMarket.Wanted wanted = wanted(car, part);
        long seed = RandomNumbers.seed(state.seed(), name(part));
        double[] logs = atLevel(drawn.sold(wanted, seed));
        double[] another = atLevel(drawn.sold(another(car, part), seed));
        double asked = market.predicted(wanted, PriceKind.ASKING).map(m -> Math.exp(m.quantile(0.5))).orElse(0.0);
        int offers = market.offersOf(part);
        return new Piece.Price(logs, another, asked, logs.length == 0 ? ""
                : offers + (offers == 1 ? " offer, " : " offers, ") + Math.round(100 * market.priorShare(wanted)) + " % assumed");
    }

    private double[] atLevel(Optional<double[]> logs) {
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
}
