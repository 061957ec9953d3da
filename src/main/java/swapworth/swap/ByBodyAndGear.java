package swapworth.swap;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import swapworth.market.CannotTell;
import swapworth.market.FairValue;
import swapworth.market.PairStanding;
import swapworth.market.Valuation;
import swapworth.statistics.Draws;
import swapworth.swap.Approach.Kind;

/** The approach by body and running gear: what the market pays for each in other cars, and what swaps of other pairs tell beside it. */
final class ByBodyAndGear {
    final Approach approach;
    final Optional<Found> found;

    private final Situation s;
    private final MiddlePrices prices;

    /**
     * What it finds, as draws of logarithms.
     *
     * @param log the middle price of such swaps
     * @param atChassis as the maker would have built it, at chassis distance
     * @param shared the same with the effect of distance shared
     * @param builder the factor of who built it; empty where prices of such cars hold it
     * @param swaps how many swaps that were seen it has learned from
     */
    record Found(double[] log, double[] atChassis, double[] shared, Optional<double[]> builder, int swaps) {
    }

    ByBodyAndGear(MiddlePrices prices, ComparedSwaps seen) {
        this.prices = prices;
        this.s = prices.situation();
        Valuation valuation = prices.value(s.finished);
        if (valuation instanceof CannotTell no) {
            approach = new Approach.Untold(Kind.BODY_AND_GEAR, no.reason(), no.needed());
            found = Optional.empty();
        } else {
            List<String> remarks = new ArrayList<>(((FairValue) valuation).remarks());
            List<String> assumptions = new ArrayList<>(List.of("swap_mileage_share"));
            Found all = found(seen, assumptions, remarks);
            approach = prices.told(Kind.BODY_AND_GEAR, all.log, assumptions, remarks);
            found = Optional.of(all);
        }
    }

    private Found found(ComparedSwaps seen, List<String> assumptions, List<String> remarks) {
        double[] atChassis = prices.logAtChassis(s.finished);
        double[] shared = prices.logLevel(s.finished);
        PairStanding standing = s.model.pair(s.finished);
        double[] log = standing == PairStanding.BY_FACTS && !s.model.takesPairsApart() ? unknownGear(shared, assumptions) : shared;
        Optional<double[]> builder = Optional.empty();
        if (standing == PairStanding.SEEN) {
            int cars = s.model.pricesOfPair(s.finished);
            remarks.add(cars + (cars == 1 ? " price of such a car is" : " prices of such cars are")
                    + " in the listings: what buyers make of them is in what is asked and paid, and no factor of who built it is taken");
        } else {
            double[] factor = s.builtBy(s.car.builtBy());
            assumptions.add(s.builtByName());
            log = Situation.sum(log, factor);
            builder = Optional.of(factor);
        }
        List<SeenSwap> told = told(seen);
        double[][] predicted = new double[told.size()][];
        double[][] departures = new double[told.size()][];
        double[] observed = new double[told.size()];
        for (int k = 0; k < observed.length; k++) {
            predicted[k] = s.asBuilt(seen.subject(told.get(k)), told.get(k).builtBy());
            departures[k] = seen.departure(told.get(k));
            observed[k] = StrictMath.log(told.get(k).price());
        }
        return new Found(Draws.given(log, predicted, departures, observed), atChassis, shared,
                builder.map(f -> Draws.given(f, predicted, departures, observed)), observed.length);
    }

    /** Each line has a level of its own: what its running gear is worth beyond its facts is known of neither. */
    private double[] unknownGear(double[] log, List<String> assumptions) {
        double[] scale = Situation.map(Draws.normal(s.count(), s.seedOfPair("scale of gears")), Math::abs);
        double spread = s.assumption("spread_gears").middle() * Math.sqrt(2);
        double[] apart = Situation.combined((z, h) -> spread * h * z, Draws.normal(s.count(), s.seedOfPair("gears")), scale);
        s.source("spread_gears", apart);
        assumptions.add("spread_gears");
        return Situation.sum(log, apart);
    }

    /** The swaps of other pairs whose body and running gear the listings know. */
    private List<SeenSwap> told(ComparedSwaps seen) {
        List<SeenSwap> told = new ArrayList<>();
        for (SeenSwap swap : seen.others()) {
            if (s.model.pair(swap.facts()) == PairStanding.APART) {
                seen.leaveOut(swap, "the listings do not know its body or its running gear");
            } else {
                told.add(swap);
                seen.use(swap);
            }
        }
        return told;
    }
}
