package swapworth.swap;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import swapworth.listing.CarFacts;
import swapworth.listing.LevelOfTrade;
import swapworth.listing.PriceIncludes;
import swapworth.listing.Runs;
import swapworth.market.CannotTell;
import swapworth.market.FairValue;
import swapworth.market.PairStanding;
import swapworth.market.Subject;
import swapworth.market.Valuation;
import swapworth.statistics.Draws;
import swapworth.swap.Approach.Kind;

/** Works out the approaches to one finished car, on one set of draws. */
final class Approaches {
    /** The least that a car by parts or position is worth, of the stock car: below it a logarithm would run away. */
    private static final double FLOOR = 0.05;

    final List<Approach> all = new ArrayList<>();
    /** Draws of the logarithm by each approach that can tell. */
    final Map<Kind, double[]> logs = new LinkedHashMap<>();
    /** The approach by cost, its parts and what comes off them apart, where it can tell. */
    Optional<CostAtLevel> byCost = Optional.empty();
    /** By body and running gear alone: as the maker would have built it, at chassis distance and with the distance shared. */
    Optional<double[]> atChassis = Optional.empty();
    Optional<double[]> shared = Optional.empty();
    Optional<double[]> stockValue = Optional.empty();
    Optional<double[]> gearValue = Optional.empty();
    Optional<double[]> factoryAtChassis = Optional.empty();
    Optional<double[]> factoryAtGear = Optional.empty();
    Optional<double[]> factoryShared = Optional.empty();
    Optional<double[]> builder = Optional.empty();
    Optional<double[]> position = Optional.empty();
    /** Draws of the middle prices that the approaches are made of. */
    final Map<Subject, double[]> market = new LinkedHashMap<>();
    /** And those by which the swaps seen of this body and this running gear are compared with it. */
    final Map<Subject, double[]> ofAlike = new LinkedHashMap<>();
    final Map<String, String> leftOut = new LinkedHashMap<>();
    /** The swaps seen of this body and this running gear: they speak of the result of all approaches. */
    final Alike alike = new Alike();
    /** The swaps seen that count, in an approach or in the result. */
    final Set<SeenSwap> used = new LinkedHashSet<>();
    int swapsByPair;
    int swapsByPosition;

    private final Situation s;
    private final List<SeenSwap> seen;

    Approaches(Situation situation, List<SeenSwap> seen) {
        this.s = situation;
        // Whatever order the rows come in, sums are the same to the last bit.
        this.seen = seen.stream().map(k -> k.with(situation.swapped(k.facts(), Optional.empty())))
                .sorted(Comparator.comparing(SeenSwap::name).thenComparingDouble(SeenSwap::price)).toList();
        brackets();
        bodyAndGear();
        cost();
        position();
        alike();
        // Where neither approach that learns from them can tell, nothing has looked at them.
        this.seen.stream().filter(swap -> !used.contains(swap)).forEach(swap -> leftOut.putIfAbsent(swap.name(), isAlike(swap)
                ? "what its stock car is worth cannot be told"
                : "no approach that swaps of another body or running gear speak of can tell"));
    }

    private Valuation value(CarFacts facts) {
        return s.model.value(s.subject(facts));
    }

    private double[] level(Subject subject) {
        return market.computeIfAbsent(subject, s.draws::level);
    }

    private double[] logLevel(Subject subject) {
        return s.logLevel(subject, this::level);
    }

    private void brackets() {
        if (value(s.stock) instanceof FairValue) {
            stockValue = Optional.of(logLevel(s.subject(s.stock)));
        }
        if (s.factory.isPresent() && value(s.factory.get()) instanceof FairValue) {
            CarFacts f = s.factory.get();
            factoryShared = Optional.of(logLevel(s.subject(f)));
            factoryAtChassis = Optional.of(Situation.map(level(s.subject(f)), StrictMath::log));
            factoryAtGear = f.gearMileage().map(m -> Situation.map(
                    level(s.subject(Situation.changed(f, b -> b.mileage(m)))), StrictMath::log));
        }
    }

    private void untold(Kind kind, String reason, String needed) {
        all.add(new Approach.Untold(kind, reason, needed));
    }

    private void told(Kind kind, double[] log, List<String> names, List<String> remarks) {
        AssumedShare held = AssumedShare.of(log, some(names), s, market, Map.of());
        logs.put(kind, log);
        all.add(new Approach.Told(kind, Situation.map(log, StrictMath::exp),
                Situation.map(Situation.sum(log, s.departure), StrictMath::exp), held.share(), held.largest(), remarks));
    }

    /**
     * The recipient without an engine, sold privately as the price model has such cars, and the running gear sold, net, in money; empty
     * where the one or the other is not known. Whoever stops sells the same shell at the same price.
     */
    Optional<double[]> takenApart() {
        Subject shell = new Subject(s.withoutEngine(), LevelOfTrade.PRIVATE_SOLD, PriceIncludes.NEITHER, s.on);
        if (gearValue.isEmpty() || !(s.model.value(shell) instanceof FairValue)) {
            return Optional.empty();
        }
        double[] gear = Situation.combined((g, share) -> StrictMath.exp(g) * share, gearValue.get(), s.between("swap_gear_net", 0, 1));
        return Optional.of(Situation.sum(s.draws.level(shell), gear));
    }

    private Map<String, double[]> some(List<String> names) {
        Map<String, double[]> some = new LinkedHashMap<>();
        for (String name : names) {
            if (s.sources().containsKey(name)) {
                some.put(name, s.sources().get(name));
            }
        }
        return some;
    }

    private void bodyAndGear() {
        Valuation valuation = value(s.finished);
        if (valuation instanceof CannotTell no) {
            untold(Kind.BODY_AND_GEAR, no.reason(), no.needed());
            return;
        }
        FairValue value = (FairValue) valuation;
        List<String> remarks = new ArrayList<>(value.remarks());
        List<String> names = new ArrayList<>(List.of("swap_mileage_share"));
        atChassis = Optional.of(Situation.map(level(s.subject(s.finished)), StrictMath::log));
        double[] log = logLevel(s.subject(s.finished));
        shared = Optional.of(log);
        PairStanding standing = s.model.pair(s.finished);
        if (standing == PairStanding.BY_FACTS && !s.model.takesPairsApart()) {
            // Each line has a level of its own: what its running gear is worth beyond its facts is known of neither.
            double[] scale = Situation.map(Draws.normal(s.count(), s.seedOfPair("scale of gears")), Math::abs);
            double spread = s.assumption("spread_gears").middle() * Math.sqrt(2);
            double[] apart = Situation.combined((z, h) -> spread * h * z, Draws.normal(s.count(), s.seedOfPair("gears")), scale);
            s.source("spread_gears", apart);
            names.add("spread_gears");
            log = Situation.sum(log, apart);
        }
        if (standing == PairStanding.SEEN) {
            int prices = s.model.pricesOfPair(s.finished);
            remarks.add(prices + (prices == 1 ? " price of such a car is" : " prices of such cars are")
                    + " in the listings: what buyers make of them is in what is asked and paid, and no factor of who built it is taken");
        } else {
            double[] factor = s.builtBy(s.car.builtBy());
            names.add(s.builtByName());
            log = Situation.sum(log, factor);
            builder = Optional.of(factor);
        }
        List<SeenSwap> told = usable();
        used.addAll(told);
        double[][] predicted = new double[told.size()][];
        double[][] departures = new double[told.size()][];
        double[] observed = new double[told.size()];
        for (int k = 0; k < observed.length; k++) {
            predicted[k] = made(subject(told.get(k)), told.get(k).builtBy());
            departures[k] = departure(told.get(k));
            observed[k] = StrictMath.log(told.get(k).price());
        }
        swapsByPair = observed.length;
        log = Draws.given(log, predicted, departures, observed);
        builder = builder.map(f -> Draws.given(f, predicted, departures, observed));
        told(Kind.BODY_AND_GEAR, log, names, remarks);
    }

    /** The middle price of a swap by body and running gear, by who built it where the listings show no such pair. */
    private double[] made(Subject subject, BuiltBy builder) {
        return made(s.asBuiltByMaker(subject), subject, builder);
    }

    private double[] made(double[] maker, Subject subject, BuiltBy builder) {
        return s.model.pair(subject.facts()) == PairStanding.SEEN ? maker : Situation.sum(maker, s.builtBy(builder));
    }

    /** How the price of one swap departs from that of such swaps. */
    private double[] departure(SeenSwap swap) {
        return Situation.sum(s.departureOf(subject(swap), swap.ownName()), below(swap));
    }

    private boolean isAlike(SeenSwap swap) {
        return s.samePair(swap.facts(), s.finished);
    }

    /**
     * Swaps of the same body and running gear: what year, distance, condition, level and builder make of them is told by body and running
     * gear, where that approach tells, else by the stock car.
     */
    private void alike() {
        boolean byPair = logs.containsKey(Kind.BODY_AND_GEAR);
        if (!byPair && stockValue.isEmpty()) {
            return;
        }
        double[] own = byPair ? made(s.subject(s.finished), s.car.builtBy())
                : Situation.sum(stockValue.get(), s.builtBy(s.car.builtBy()));
        String gear = s.model.runningGear(s.finished);
        for (SeenSwap swap : seen) {
            if (isAlike(swap)) {
                Subject subject = subject(swap);
                double[] maker = s.logLevel(byPair ? subject : with(subject, s.stockOf(swap.facts(), gear)),
                        asked -> ofAlike.computeIfAbsent(asked, s.draws::level));
                double[] its = byPair ? made(maker, subject, swap.builtBy()) : Situation.sum(maker, s.builtBy(swap.builtBy()));
                alike.add(swap, Situation.combined((a, b) -> a - b, its, own), departure(swap));
                used.add(swap);
            }
        }
        alike.learnScatter(s.assumption("swap_scatter_worth").middle());
    }

    /** A refused offer stands below the price at which a swap is sold. */
    private double[] below(SeenSwap swap) {
        if (swap.kind() != SeenSwap.Kind.OFFER_REFUSED) {
            return new double[s.count()];
        }
        double middle = s.assumptions().logMiddle("swap_offer_below");
        double spread = s.assumptions().logSpread("swap_offer_below");
        return Situation.map(Draws.normal(s.count(), s.seedOf("offer for " + swap.ownName())), z -> middle + spread * z);
    }

    /** The swaps of other pairs that were seen and whose body and running gear the listings know. */
    private List<SeenSwap> usable() {
        List<SeenSwap> used = new ArrayList<>();
        for (SeenSwap swap : seen) {
            if (isAlike(swap)) {
                continue;
            }
            if (s.model.pair(swap.facts()) == PairStanding.APART) {
                leftOut.put(swap.name(), "the listings do not know its body or its running gear");
            } else {
                used.add(swap);
            }
        }
        return used;
    }

    /** A refused offer is beside a private sale. */
    static LevelOfTrade level(SeenSwap swap) {
        return swap.kind() == SeenSwap.Kind.OFFER_REFUSED ? LevelOfTrade.PRIVATE_SOLD : swap.level();
    }

    private Subject subject(SeenSwap swap) {
        return new Subject(swap.facts(), level(swap), swap.includes(), swap.on().or(() -> s.on));
    }

    private void cost() {
        if (stockValue.isEmpty()) {
            untold(Kind.COST, "the listings do not tell what the stock car is worth", stockNeeded());
            return;
        }
        List<String> remarks = new ArrayList<>();
        List<String> names = new ArrayList<>();
        double[] stock = Situation.map(stockValue.get(), StrictMath::exp);
        Optional<double[]> gear = gear(stock, remarks, names);
        if (gear.isEmpty()) {
            untold(Kind.COST, "neither the car's row nor the listings tell what its running gear would cost",
                    "gear_value in the row of the finished car, or listings of cars with this running gear");
            return;
        }
        Roller roller = roller(stock, remarks, names);
        double[] work = work(gear.get(), remarks, names);
        double[] paid = s.between("swap_work_share", 0, 1);
        names.add("swap_work_share");
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
            double parts = (roller.car()[i] + gear.get()[i] + paid[i] * work[i]) * kept;
            off[i] = (roller.removed()[i] + amounts) * kept;
            double least = FLOOR * stock[i];
            floored += parts - off[i] < least ? 1 : 0;
            log[i] = StrictMath.log(Math.max(least, parts - off[i]));
            sum[i] = StrictMath.log(Math.max(least, parts));
        }
        byCost = Optional.of(new CostAtLevel(sum, off));
        if (floored > 0) {
            remarks.add(Math.round(100.0 * floored / log.length)
                    + " % of the draws fell below one twentieth of the stock car and were held there");
        }
        gearValue = Optional.of(Situation.map(gear.get(), StrictMath::log));
        stated(Draws.mean(paid));
        names.add("swap_stated_spread");
        told(Kind.COST, log, names, remarks);
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
    private Roller roller(double[] stock, List<String> remarks, List<String> names) {
        long rollers = s.model.cars().stream().filter(c -> c.facts().runs() == Runs.NO_ENGINE).count();
        if (s.car.cost().removed().isPresent()) {
            UnsureAmount removed = s.car.cost().removed().get();
            remarks.add("recipient without its gear: the stock car less its removed running gear (" + removed.source()
                    + whole(removed) + ")");
            return new Roller(stock, amount(removed, "removed", names));
        }
        if (rollers > 0) {
            remarks.add("recipient without its gear: by " + rollers + (rollers == 1 ? " car" : " cars")
                    + " without an engine in the listings");
            return new Roller(level(s.subject(s.withoutEngine())), new double[s.count()]);
        }
        remarks.add("recipient without its gear: the stock car less a share for its removed parts, which is an assumption"
                + " (swap_removed_parts; state removed_value in the car's row instead)");
        names.add("swap_removed_parts");
        return new Roller(stock, Situation.combined((v, r) -> v * r, stock, s.between("swap_removed_parts", 0, 0.9)));
    }

    private static String whole(UnsureAmount amount) {
        return amount.byParts() ? ", less what a whole one costs less than its parts (swap_gear_whole)" : "";
    }

    private double[] amount(UnsureAmount amount, String name, List<String> names) {
        double[] draws = amount.draws(s.count(), s.seedOfCar(name));
        if (!amount.byParts()) {
            return draws;
        }
        names.add("swap_gear_whole");
        return Situation.combined((a, share) -> a * share, draws, s.between("swap_gear_whole", 0.05, 1));
    }

    private Optional<double[]> gear(double[] stock, List<String> remarks, List<String> names) {
        if (s.car.cost().gear().isPresent()) {
            UnsureAmount gear = s.car.cost().gear().get();
            remarks.add("running gear: " + gear.source() + whole(gear));
            return Optional.of(amount(gear, "gear", names));
        }
        Map<String, Integer> lines = new HashMap<>();
        String gear = s.model.runningGear(s.finished);
        s.model.cars().stream().filter(c -> s.model.runningGear(c.facts()).equals(gear)).forEach(c -> lines.merge(c.facts().vehicle(), 1,
                Integer::sum));
        Optional<String> line = s.car.gearLine().filter(lines::containsKey).or(() -> lines.entrySet().stream()
                .max(Map.Entry.<String, Integer>comparingByValue().thenComparing(Map.Entry.comparingByKey())).map(Map.Entry::getKey));
        if (line.isEmpty()) {
            return Optional.empty();
        }
        CarFacts.Builder giver = s.ofMaker(CarFacts.of(line.get()).build(), gear).toBuilder().seller(s.finished.seller()).runs(Runs.DRIVES);
        s.car.gearYear().ifPresentOrElse(giver::modelYear, () -> s.finished.modelYear().ifPresent(giver::modelYear));
        s.finished.gearMileage().or(s.finished::mileage).ifPresent(giver::mileage);
        if (!(value(giver.build()) instanceof FairValue)) {
            return Optional.empty();
        }
        remarks.add("running gear: a share of what a driving car of the line '" + line.get() + "' is worth, which is an assumption"
                + " (swap_gear_share; state gear_value in the car's row instead)");
        names.add("swap_gear_share");
        return Optional.of(Situation.combined((v, g) -> v * g, level(s.subject(giver.build())),
                s.between("swap_gear_share", 0.02, 1)));
    }

    private double[] work(double[] gear, List<String> remarks, List<String> names) {
        if (s.car.cost().work().isPresent()) {
            UnsureAmount work = s.car.cost().work().get();
            remarks.add("labour and parts: " + work.source() + "; the market pays for a share of it only (swap_work_share)");
            return work.draws(s.count(), s.seedOfCar("work"));
        }
        remarks.add("labour and parts: as much as the running gear costs, give or take, which is an assumption (swap_work_cost; state"
                + " work_value in the car's row instead); the market pays for a share of it only (swap_work_share)");
        names.add("swap_work_cost");
        return Situation.combined((g, f) -> g * f, gear, s.between("swap_work_cost", 0, 10));
    }

    private String stockNeeded() {
        return s.model.lines().contains(s.stock.vehicle()) ? "running_gear (and body) of the recipient in cars.csv, as the"
                + " listings of the line '" + s.stock.vehicle() + "' name them" : "listings of the line '" + s.stock.vehicle() + "'";
    }

    private void position() {
        if (stockValue.isEmpty()) {
            untold(Kind.POSITION, "the listings do not tell what the stock car is worth", stockNeeded());
            return;
        }
        if (factoryShared.isEmpty()) {
            untold(Kind.POSITION, s.factory.isEmpty() ? "no factory equivalent is named"
                    : "the listings do not tell what the factory equivalent '" + s.factory.get().vehicle() + "' is worth",
                    s.factory.isEmpty() ? "a row of the role 'factory equivalent' in cars.csv, and listings of its line"
                            : "listings of the line '" + s.factory.get().vehicle() + "'");
            return;
        }
        List<String> remarks = new ArrayList<>();
        double[] z = s.standard("swap_position");
        double middle = s.assumption("swap_position").middle();
        double spread = s.assumption("swap_position").spread();
        double[] where = Situation.map(z, x -> middle + spread * x);
        List<double[]> predictions = new ArrayList<>();
        List<double[]> departures = new ArrayList<>();
        List<Double> prices = new ArrayList<>();
        for (SeenSwap swap : seen) {
            Optional<double[]> level = isAlike(swap) ? Optional.empty() : between(swap, where);
            if (level.isPresent()) {
                predictions.add(level.get());
                departures.add(departure(swap));
                prices.add(StrictMath.log(swap.price()));
                used.add(swap);
            }
        }
        swapsByPosition = prices.size();
        double[] learned = Draws.given(where, predictions.toArray(double[][]::new), departures.toArray(double[][]::new),
                prices.stream().mapToDouble(Double::doubleValue).toArray());
        position = Optional.of(learned);
        double[] log = between(stockValue.get(), factoryShared.get(), learned);
        if (Draws.mean(factoryShared.get()) <= Draws.mean(stockValue.get())) {
            remarks.add("the factory equivalent is not worth more than the stock car: a position between the two says little");
        }
        remarks.add(swapsByPosition == 0 ? "no swap of another pair was seen that tells of the position: it is an assumption"
                + " (swap_position)"
                : "the position is an assumption (swap_position) with " + swapsByPosition + (swapsByPosition == 1 ? " swap" : " swaps")
                        + " of other pairs that " + (swapsByPosition == 1 ? "was" : "were") + " seen");
        told(Kind.POSITION, log, List.of("swap_position", "swap_mileage_share"), remarks);
    }

    private static double[] between(double[] stock, double[] factory, double[] where) {
        double[] log = new double[where.length];
        for (int i = 0; i < log.length; i++) {
            double low = StrictMath.exp(stock[i]);
            double high = StrictMath.exp(factory[i]);
            log[i] = StrictMath.log(Math.max(FLOOR * low, low + where[i] * (high - low)));
        }
        return log;
    }

    /** What a swap that was seen would cost at a position between its own stock car and its own factory equivalent. */
    private Optional<double[]> between(SeenSwap swap, double[] where) {
        Subject subject = subject(swap);
        Optional<CarFacts> maker = Optional.empty();
        if (swap.factoryLine().isPresent()) {
            maker = Optional.of(s.ofMaker(CarFacts.of(swap.factoryLine().get()).build(), s.model.runningGear(swap.facts())));
        } else if (s.model.body(swap.facts()).equals(s.model.body(s.finished))
                && s.model.runningGear(swap.facts()).equals(s.model.runningGear(s.finished))) {
            maker = s.factory;
        }
        if (maker.isEmpty()) {
            leftOut.putIfAbsent(swap.name(), "for its position: its factory equivalent is not named (column 'factory_line')");
            return Optional.empty();
        }
        Subject stock = with(subject, s.stockOf(swap.facts(), s.model.runningGear(swap.facts())));
        Subject factory = with(subject, swap.facts().inFormOf(maker.get()));
        if (!(s.model.value(stock) instanceof FairValue) || !(s.model.value(factory) instanceof FairValue)) {
            leftOut.putIfAbsent(swap.name(), "for its position: the listings do not tell what its stock car or its factory equivalent is"
                    + " worth");
            return Optional.empty();
        }
        return Optional.of(between(s.logLevel(stock), s.logLevel(factory), where));
    }

    private static Subject with(Subject subject, CarFacts facts) {
        return new Subject(facts, subject.level(), subject.includes(), subject.on());
    }
}
