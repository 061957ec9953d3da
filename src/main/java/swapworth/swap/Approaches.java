package swapworth.swap;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import swapworth.market.Subject;
import swapworth.swap.Approach.Kind;

/** The approaches to one finished car, worked out one after the other on one set of draws, and what stands around it. */
final class Approaches {
    final Brackets brackets;
    final ByBodyAndGear byBodyAndGear;
    final ByCost byCost;
    final ByPosition byPosition;
    /** The swaps of other people that were seen. */
    final ComparedSwaps seen;
    /** Those of this body and this running gear: they speak of the result of all approaches. */
    final Alike alike = new Alike();

    private final Situation s;
    private final MiddlePrices prices;
    private final Map<Subject, double[]> ofAlike = new LinkedHashMap<>();

    Approaches(Situation situation, List<SeenSwap> swaps) {
        this.s = situation;
        this.prices = new MiddlePrices(situation);
        this.seen = new ComparedSwaps(situation, swaps);
        this.brackets = new Brackets(prices);
        this.byBodyAndGear = new ByBodyAndGear(prices, seen);
        this.byCost = new ByCost(prices, brackets);
        this.byPosition = new ByPosition(prices, brackets, seen);
        compareAlike();
        seen.leaveOutTheRest();
    }

    /**
     * Swaps of the same body and running gear: what year, distance, condition, level and builder make of them is told by body and running
     * gear, where that approach tells, else by the stock car.
     */
    private void compareAlike() {
        boolean byPair = byBodyAndGear.found.isPresent();
        if (!byPair && brackets.stock.isEmpty()) {
            return;
        }
        BuiltBy builder = s.car.builtBy();
        double[] own = byPair ? s.asBuilt(s.subject(s.finished), builder)
                : Situation.sum(brackets.stock.get(), s.builtBy(builder));
        String gear = s.model.runningGear(s.finished);
        for (SeenSwap swap : seen.alike()) {
            Subject subject = byPair ? seen.subject(swap) : seen.subject(swap, s.stockOf(swap.facts(), gear));
            double[] maker = s.logLevel(subject, asked -> ofAlike.computeIfAbsent(asked, s.draws::level));
            double[] its = byPair ? s.asBuilt(maker, subject, swap.builtBy()) : Situation.sum(maker, s.builtBy(swap.builtBy()));
            alike.add(swap, Situation.combined((a, b) -> a - b, its, own), seen.departure(swap));
            seen.use(swap);
        }
        alike.learnScatter(s.assumption("swap_scatter_worth").middle());
    }

    /** What each says, or why it cannot tell. */
    List<Approach> all() {
        return List.of(byBodyAndGear.approach, byCost.approach, byPosition.approach);
    }

    /** Draws of the logarithm by each that can tell. */
    Map<Kind, double[]> logs() {
        Map<Kind, double[]> logs = new LinkedHashMap<>();
        byBodyAndGear.found.ifPresent(f -> logs.put(Kind.BODY_AND_GEAR, f.log()));
        byCost.found.ifPresent(f -> logs.put(Kind.COST, f.log()));
        byPosition.found.ifPresent(f -> logs.put(Kind.POSITION, f.log()));
        return logs;
    }

    /** The approach by cost, its parts and what comes off them apart, where it can tell. */
    Optional<CostAtLevel> costAtLevel() {
        return byCost.found.map(ByCost.Found::atLevel);
    }

    /** Draws of the middle prices that the approaches are made of. */
    Map<Subject, double[]> market() {
        return prices.asked();
    }

    /** And those by which the swaps seen of this body and this running gear are compared with it. */
    Map<Subject, double[]> ofAlike() {
        return ofAlike;
    }
}
