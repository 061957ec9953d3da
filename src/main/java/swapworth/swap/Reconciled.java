package swapworth.swap;

import java.util.Arrays;
import java.util.EnumMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import swapworth.market.FairValue.HeldBy;
import swapworth.statistics.Combination;
import swapworth.statistics.Draws;

/**
 * What the approaches say together of the price of one car, log points: weighed by the covariance of their draws or as the user says,
 * moved by the swaps of this body and running gear that were seen. All these speak of a sound car. What the faults of this one take off
 * comes off then, and before what happened when the car itself was on offer moves it: that was the car with its faults.
 */
final class Reconciled {
    /** The least that faults leave of a sound car: below it a logarithm would run away. */
    private static final double LEAST = 0.05;

    private final Situation situation;
    private final Approaches approaches;
    private final Map<Approach.Kind, Double> stated;
    private final double[][] logs;
    private final Combination combination;
    private final double[] together;
    private final double[] draws;
    private final double[] departure;
    private final double[] one;
    private final double faultAmounts;
    private final double faultsLeave;
    /** Whether there are offers, and how much they weigh each draw. */
    private final boolean learned;
    private final double[] ofOffers;
    private final AssumedShare held;

    /**
     * Puts the approaches together.
     *
     * @param stated the user's own weights; none for those by covariance
     * @param offers what happened when the car itself was on offer
     */
    Reconciled(Situation situation, Approaches approaches, Map<Approach.Kind, Double> stated, List<OwnOffer> offers) {
        this.situation = situation;
        this.approaches = approaches;
        this.stated = stated;
        this.logs = toWeigh();
        this.combination = combined(logs);
        this.together = combination.draws(logs, situation.seedOfPair("between approaches"));
        this.draws = approaches.alike.given(together, together);
        this.departure = approaches.alike.scattered(situation.departure);
        this.faultAmounts = situation.car.faults().stream().mapToDouble(SwapCost.Loss::amount).sum();
        this.faultsLeave = situation.car.faults().stream().mapToDouble(f -> 1 - f.share()).reduce(1, (a, b) -> a * b);
        this.one = withFaults(Situation.sum(draws, departure));
        this.learned = !offers.isEmpty();
        this.ofOffers = new Learning(situation).weights(one, offers);
        this.held = shares();
    }

    /**
     * Draws of what each approach says, to be weighed: what comes off the parts of the one by cost comes off at the level that all together
     * find ({@link CostAtLevel}). Where it stands alone, or its weight is stated, there is nothing that could outweigh it.
     */
    private double[][] toWeigh() {
        double[][] all = approaches.logs().values().toArray(double[][]::new);
        int place = List.copyOf(approaches.logs().keySet()).indexOf(Approach.Kind.COST);
        Optional<CostAtLevel> cost = approaches.costAtLevel().filter(c -> all.length > 1 && stated.isEmpty() && !c.isWhole());
        return cost.map(c -> with(all, place, c.at(CostAtLevel.level(level -> combined(with(all, place, c.at(level))).mean(),
                combined(with(all, place, c.whole())).mean())))).orElse(all);
    }

    private static double[][] with(double[][] logs, int place, double[] other) {
        double[][] changed = logs.clone();
        changed[place] = other;
        return changed;
    }

    /** What the stated faults leave of log prices of a sound car. */
    double[] withFaults(double[] sound) {
        return situation.car.statedFaults().isEmpty() ? sound : Situation.map(sound, log -> StrictMath.log(
                Math.max(LEAST * StrictMath.exp(log), left(log))));
    }

    private double left(double sound) {
        return StrictMath.exp(sound) * faultsLeave - faultAmounts;
    }

    /** In how many of the draws the faults take off more than may come off. */
    double shareHeld() {
        return Arrays.stream(Situation.sum(draws, departure)).filter(log -> left(log) < LEAST * StrictMath.exp(log)).count()
                / (double) draws.length;
    }

    private Combination combined(double[][] logs) {
        double[] middles = Arrays.stream(logs).mapToDouble(Draws::mean).toArray();
        double scale = situation.assumption("swap_approach_spread").middle();
        return stated.isEmpty() ? Combination.of(middles, Draws.covariance(logs), scale)
                : Combination.weighted(middles, Draws.covariance(logs), scale, approaches.logs().keySet().stream()
                        .mapToDouble(k -> stated.getOrDefault(k, 0.0)).toArray());
    }

    private AssumedShare shares() {
        double[] weight = combination.weights();
        double[] apart = together.clone();
        for (int a = 0; a < weight.length; a++) {
            for (int i = 0; i < apart.length; i++) {
                apart[i] -= weight[a] * logs[a][i];
            }
        }
        Map<String, double[]> sources = new LinkedHashMap<>(situation.sources());
        sources.put("swap_approach_spread", apart);
        return AssumedShare.of(draws, sources, situation, approaches.market(), approaches.ofAlike());
    }

    /** The approaches put together after prices of cars of one description, each as expected with a departure of its own. */
    Combination given(double[] log, List<double[]> departures) {
        double[][] errors = departures.toArray(double[][]::new);
        double[][] predicted = departures.stream().map(d -> log).toArray(double[][]::new);
        double[] expected = departures.stream().mapToDouble(d -> Draws.mean(log) + Draws.mean(d)).toArray();
        return combined(Arrays.stream(logs).map(a -> Draws.given(a, predicted, errors, expected)).toArray(double[][]::new));
    }

    /** The approaches put together. */
    Combination combination() {
        return combination;
    }

    /** How much each approach that can tell weighs in that. */
    Map<Approach.Kind, Double> weights() {
        Map<Approach.Kind, Double> byKind = new EnumMap<>(Approach.Kind.class);
        double[] w = combination.weights();
        int a = 0;
        for (Approach.Kind kind : approaches.logs().keySet()) {
            byKind.put(kind, w[a++]);
        }
        return byKind;
    }

    /** What the approaches say of the middle price before swaps of this body and running gear move it. */
    double[] together() {
        return together.clone();
    }

    /** What is said of the middle price of sound ones with the swaps seen, before the offers. */
    double[] draws() {
        return draws.clone();
    }

    /** How this one car departs from the middle price, as widely as swaps like it were seen to scatter. */
    double[] departure() {
        return departure.clone();
    }

    /** The price of this one car in money with its faults, before the offers. */
    double[] priceBeforeOffers() {
        return SwapValue.money(one);
    }

    /** The middle price of such cars with these faults in money with all that is known, each draw as likely as the next. */
    double[] level() {
        return learned(withFaults(draws));
    }

    /** The same of sound ones. */
    double[] soundLevel() {
        return learned(draws);
    }

    /** The same of the price of this one car. */
    double[] price() {
        return learned(one);
    }

    /** Offers weigh the draws, which are then moved to the law that results. */
    private double[] learned(double[] log) {
        return SwapValue.money(learned ? Draws.moved(log, ofOffers) : log);
    }

    /** How many equally likely draws the offers leave. */
    double drawsLeft() {
        return Draws.worth(ofOffers);
    }

    /** How much of what is unsure about the middle price, the offers aside, assumptions hold. */
    AssumedShare held() {
        return held;
    }

    /** The assumption that holds most of that. */
    HeldBy largestAssumption() {
        HeldBy largest = held.largest();
        return approaches.logs().size() > 1 || !largest.assumption().equals(situation.assumption("swap_approach_spread").words()) ? largest
                : new HeldBy("how far one approach alone may be off", largest.share());
    }
}
