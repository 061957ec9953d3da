package swapworth.swap;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import swapworth.listing.CarFacts;
import swapworth.listing.LevelOfTrade;
import swapworth.listing.PriceIncludes;
import swapworth.listing.Runs;
import swapworth.market.FairValue;
import swapworth.market.Subject;
import swapworth.statistics.Draws;
import swapworth.swap.Approach.Kind;

/** The approach by cost: the recipient without its gear, the gear that is in it now, and what the market pays of the work, less losses. */
final class ByCost {
    final Approach approach;
    final Optional<Found> found;

    private final Situation s;
    private final MiddlePrices prices;
    private final List<String> remarks = new ArrayList<>();
    /** The assumptions that it rests on. */
    private final List<String> assumptions = new ArrayList<>();

    /**
     * What it finds, as draws.
     *
     * @param log the logarithm of the middle price of such swaps
     * @param atLevel the parts and what comes off them apart
     * @param gear the running gear that is in it now, in money
     */
    record Found(double[] log, CostAtLevel atLevel, double[] gear) {
    }

    ByCost(MiddlePrices prices, Brackets brackets) {
        this.prices = prices;
        this.s = prices.situation();
        Optional<double[]> gear = brackets.stock.flatMap(stock -> gear());
        if (brackets.stock.isEmpty()) {
            approach = brackets.withoutStock(Kind.COST);
            found = Optional.empty();
        } else if (gear.isEmpty()) {
            approach = new Approach.Untold(Kind.COST, "neither the car's row nor the listings tell what its running gear would cost",
                    "gear_value in the row of the finished car, or listings of cars with this running gear");
            found = Optional.empty();
        } else {
            Found all = found(SwapValue.money(brackets.stock.get()), gear.get());
            approach = prices.told(Kind.COST, all.log, assumptions, remarks);
            found = Optional.of(all);
        }
    }

    private Found found(double[] stock, double[] gear) {
        Roller roller = roller(stock);
        double[] work = work(gear);
        double[] paid = s.between("swap_work_share", 0, 1);
        assumptions.add("swap_work_share");
        double amounts = s.car.cost().losses().stream().mapToDouble(SwapCost.Loss::amount).sum();
        double kept = s.car.cost().losses().stream().mapToDouble(l -> 1 - l.share()).reduce(1, (a, b) -> a * b);
        if (s.car.cost().losses().isEmpty()) {
            remarks.add("no loss by age of design or by rules is listed (column 'obsolescence'), so none is taken off");
        }
        double[] log = new double[s.count()];
        double[] sum = new double[s.count()];
        double[] off = new double[s.count()];
        int floored = 0;
        for (int i = 0; i < log.length; i++) {
            double parts = (roller.car()[i] + gear[i] + paid[i] * work[i]) * kept;
            off[i] = (roller.removed()[i] + amounts) * kept;
            double least = MiddlePrices.FLOOR * stock[i];
            floored += parts - off[i] < least ? 1 : 0;
            log[i] = StrictMath.log(Math.max(least, parts - off[i]));
            sum[i] = StrictMath.log(Math.max(least, parts));
        }
        if (floored > 0) {
            remarks.add(Math.round(100.0 * floored / log.length)
                    + " % of the draws fell below one twentieth of the stock car and were held there");
        }
        stated(Draws.mean(paid));
        assumptions.add("swap_stated_spread");
        return new Found(log, new CostAtLevel(sum, off), gear);
    }

    /**
     * The recipient without an engine, sold privately as the price model has such cars, and the running gear sold, net, in money; empty
     * where the one or the other is not known. Whoever stops sells the same shell at the same price.
     */
    Optional<double[]> takenApart() {
        Subject shell = new Subject(s.withoutEngine(), LevelOfTrade.PRIVATE_SOLD, PriceIncludes.NEITHER, s.on);
        return s.model.value(shell) instanceof FairValue ? gearSold().map(gear -> Situation.sum(s.draws.level(shell), gear))
                : Optional.empty();
    }

    /** What the running gear that is in it brings when it is sold by itself, net; empty where nothing tells what it would cost. */
    Optional<double[]> gearSold() {
        return found.map(f -> Situation.combined((gear, share) -> gear * share, f.gear(), s.between("swap_gear_net", 0, 1)));
    }

    /** How the amounts that the car's row states move the whole together, for the account of what holds it. */
    private void stated(double paid) {
        SwapCost cost = s.car.cost();
        double[] moved = stated(cost.gear(), "gear", 1, new double[s.count()]);
        s.source("swap_stated_spread", stated(cost.removed(), "removed", -1, stated(cost.work(), "work", paid, moved)));
    }

    private double[] stated(Optional<UnsureAmount> amount, String name, double times, double[] moved) {
        return amount.filter(UnsureAmount::isStated).map(a -> Situation.combined((sum, one) -> sum + times * one, moved,
                a.draws(s.count(), s.seedOfCar(name)))).orElse(moved);
    }

    /** The recipient without its running gear: a car and what the gear taken out of it takes off. */
    private record Roller(double[] car, double[] removed) {
    }

    /** By cars without an engine, else the stock car less what its removed parts bring. */
    private Roller roller(double[] stock) {
        long rollers = s.model.cars().stream().filter(c -> c.facts().runs() == Runs.NO_ENGINE).count();
        if (s.car.cost().removed().isPresent()) {
            UnsureAmount removed = s.car.cost().removed().get();
            remarks.add("recipient without its gear: the stock car less its removed running gear (" + removed.source()
                    + whole(removed) + ")");
            return new Roller(stock, amount(removed, "removed"));
        }
        if (rollers > 0) {
            remarks.add("recipient without its gear: by " + rollers + (rollers == 1 ? " car" : " cars")
                    + " without an engine in the listings");
            return new Roller(prices.level(s.subject(s.withoutEngine())), new double[s.count()]);
        }
        remarks.add("recipient without its gear: the stock car less a share for its removed parts, which is an assumption"
                + " (swap_removed_parts; state removed_value in the car's row instead)");
        assumptions.add("swap_removed_parts");
        return new Roller(stock, Situation.combined((v, r) -> v * r, stock, s.between("swap_removed_parts", 0, 0.9)));
    }

    private static String whole(UnsureAmount amount) {
        return amount.byParts() ? ", less what a whole one costs less than its parts (swap_gear_whole)" : "";
    }

    private double[] amount(UnsureAmount amount, String name) {
        double[] draws = amount.draws(s.count(), s.seedOfCar(name));
        if (!amount.byParts()) {
            return draws;
        }
        assumptions.add("swap_gear_whole");
        return Situation.combined((a, share) -> a * share, draws, s.between("swap_gear_whole", 0.05, 1));
    }

    private Optional<double[]> gear() {
        if (s.car.cost().gear().isPresent()) {
            UnsureAmount gear = s.car.cost().gear().get();
            remarks.add("running gear: " + gear.source() + whole(gear));
            return Optional.of(amount(gear, "gear"));
        }
        String gear = s.model.runningGear(s.finished);
        Optional<String> line = giverLine(gear);
        if (line.isEmpty()) {
            return Optional.empty();
        }
        CarFacts.Builder giver = s.ofMaker(CarFacts.of(line.get()).build(), gear).toBuilder().seller(s.finished.seller()).runs(Runs.DRIVES);
        s.car.gearYear().ifPresentOrElse(giver::modelYear, () -> s.finished.modelYear().ifPresent(giver::modelYear));
        s.finished.gearMileage().or(s.finished::mileage).ifPresent(giver::mileage);
        if (!prices.isKnown(giver.build())) {
            return Optional.empty();
        }
        remarks.add("running gear: a share of what a driving car of the line '" + line.get() + "' is worth, which is an assumption"
                + " (swap_gear_share; state gear_value in the car's row instead)");
        assumptions.add("swap_gear_share");
        return Optional.of(Situation.combined((v, g) -> v * g, prices.level(s.subject(giver.build())),
                s.between("swap_gear_share", 0.02, 1)));
    }

    private double[] work(double[] gear) {
        if (s.car.cost().work().isPresent()) {
            UnsureAmount work = s.car.cost().work().get();
            remarks.add("labour and parts: " + work.source() + "; the market pays for a share of it only (swap_work_share)");
            return work.draws(s.count(), s.seedOfCar("work"));
        }
        remarks.add("labour and parts: as much as the running gear costs, give or take, which is an assumption (swap_work_cost; state"
                + " work_value in the car's row instead); the market pays for a share of it only (swap_work_share)");
        assumptions.add("swap_work_cost");
        return Situation.combined((g, f) -> g * f, gear, s.between("swap_work_cost", 0, 10));
    }

    /** The line that carries the running gear: the one that the car's row names, else that of most cars. */
    private Optional<String> giverLine(String gear) {
        Map<String, Integer> lines = new HashMap<>();
        s.model.cars().stream().filter(c -> s.model.runningGear(c.facts()).equals(gear)).forEach(c -> lines.merge(c.facts().vehicle(), 1,
                Integer::sum));
        return s.car.gearLine().filter(lines::containsKey).or(() -> lines.entrySet().stream()
                .max(Map.Entry.<String, Integer>comparingByValue().thenComparing(Map.Entry.comparingByKey())).map(Map.Entry::getKey));
    }
}
