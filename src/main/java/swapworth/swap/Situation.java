package swapworth.swap;

import java.time.LocalDate;
import java.util.Arrays;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.function.DoubleBinaryOperator;
import java.util.function.DoubleUnaryOperator;
import java.util.function.Function;
import java.util.function.Predicate;
import java.util.function.UnaryOperator;
import swapworth.assumptions.Assumption;
import swapworth.assumptions.Assumptions;
import swapworth.listing.Car;
import swapworth.listing.CarFacts;
import swapworth.listing.Facts;
import swapworth.listing.LevelOfTrade;
import swapworth.listing.PriceIncludes;
import swapworth.listing.Runs;
import swapworth.market.FairValue;
import swapworth.market.PairStanding;
import swapworth.market.PriceModel;
import swapworth.market.Subject;
import swapworth.market.ValueDraws;
import swapworth.statistics.Draws;
import swapworth.statistics.RandomNumbers;

/**
 * What all approaches to one finished car share: the market's draws, the car in its three forms (finished, stock, factory equivalent),
 * and the draws of each assumption. All amounts in it are natural logarithms unless the name says otherwise.
 */
final class Situation {
    final FinishedCar car;
    final PriceModel model;
    final ValueDraws draws;
    final LevelOfTrade level;
    final Optional<LocalDate> on;
    final CarFacts finished;
    final CarFacts stock;
    final Optional<CarFacts> factory;
    /** Which running gear the stock car is taken to have, and by whom, in words. */
    final String stockGear;
    /** How much of the effect of distance belongs to the running gear, draw by draw. */
    final double[] gearShare;
    /** How this car departs from others of its description: workmanship, and what no row tells. */
    final double[] departure;

    private final Assumptions assumptions;
    private final long seed;
    private final Map<String, double[]> sources = new LinkedHashMap<>();

    Situation(FinishedCar car, PriceModel model, SwapOptions options) {
        this.car = car;
        this.model = model;
        this.draws = options.draws(model);
        this.assumptions = options.assumptions(model);
        this.seed = options.seed();
        this.level = options.level();
        this.on = options.on().or(model::lastSeen);
        this.finished = swapped(car.facts(), car.gearLine());
        String gear = model.runningGear(finished);
        Optional<CarFacts> told = car.recipient().flatMap(recipient -> asRecipient(car.facts().withoutGear(), recipient, gear));
        this.stock = told.orElseGet(() -> stockOf(car.facts(), gear));
        boolean several = model.cars().stream().map(Car::facts).filter(c -> c.vehicle().equals(stock.vehicle())).map(model::runningGear)
                .distinct().limit(2).count() > 1;
        this.stockGear = !several ? "its line's own running gear" : "the running gear '" + model.runningGear(stock) + "', as "
                + (told.isPresent() ? "the row of the recipient says" : "most cars of the line '" + stock.vehicle()
                        + "' have; running_gear in the recipient's row would tell");
        this.factory = options.factory().map(maker -> car.facts().inFormOf(ofMaker(maker, gear)));
        this.gearShare = between("swap_mileage_share", 0, 1);
        double own = assumption("swap_own_departure").middle();
        double[] work = Draws.normal(count(), seedOfCar("departure"));
        double[] single = single(subject(finished), seedOfCar("single"));
        this.departure = combined((w, s) -> own * w + s, work, single);
    }

    /**
     * The facts of a finished swap. Power, cylinders and driven wheels that are those of the stock car were filled in for the line and
     * do not speak of the running gear that is in it now: those of other cars with that running gear stand in.
     */
    CarFacts swapped(CarFacts f, Optional<String> gearLine) {
        Optional<String> gear = f.runningGear();
        if (gearLine.isPresent() && (gear.isEmpty() || model.runningGear(f).equals(model.runningGear(stockOf(f, ""))))) {
            gear = Optional.of(model.runningGear(ofMaker(CarFacts.of(gearLine.get()).build(), "")));
        }
        if (gear.isEmpty()) {
            return f;
        }
        List<CarFacts> ofLine = model.cars().stream().map(Car::facts).filter(c -> c.vehicle().equals(f.vehicle())).toList();
        boolean power = f.powerKw().isPresent() && ofLine.stream().anyMatch(c -> c.powerKw().equals(f.powerKw()));
        boolean cylinders = f.cylinders().isPresent() && ofLine.stream().anyMatch(c -> c.cylinders().equals(f.cylinders()));
        CarFacts.Builder told = f.toBuilder();
        if (power && cylinders) {
            told = f.withoutGear().toBuilder();
            f.weightKg().ifPresent(told::weightKg);
            f.gearMileage().ifPresent(told::gearMileage);
        }
        return told.runningGear(gear.get()).build();
    }

    /** The facts that stand for most cars of a line that fit; empty where none does. */
    private Optional<CarFacts> most(String line, Predicate<CarFacts> fits) {
        Map<String, Integer> counts = new TreeMap<>();
        Map<String, CarFacts> first = new HashMap<>();
        for (Car one : model.cars()) {
            if (one.facts().vehicle().equals(line) && fits.test(one.facts())) {
                String pair = model.body(one.facts()) + "\n" + model.runningGear(one.facts());
                counts.merge(pair, 1, Integer::sum);
                first.putIfAbsent(pair, one.facts());
            }
        }
        return counts.entrySet().stream().max(Map.Entry.comparingByValue()).map(e -> first.get(e.getKey()));
    }

    /** The stock car with the running gear of the car that it was made from, where the listings know such a car. */
    private Optional<CarFacts> asRecipient(CarFacts plain, CarFacts recipient, String gear) {
        if (!recipient.vehicle().equals(plain.vehicle()) || recipient.runningGear().isEmpty()
                || model.runningGear(recipient).equals(gear)) {
            return Optional.empty();
        }
        CarFacts.Builder told = plain.toBuilder().runningGear(recipient.runningGear().get()).drivenWheels(recipient.drivenWheels());
        recipient.powerKw().ifPresent(told::powerKw);
        recipient.cylinders().ifPresent(told::cylinders);
        recipient.weightKg().ifPresent(told::weightKg);
        return Optional.of(told.build()).filter(f -> model.pair(f) == PairStanding.SEEN
                || model.pair(stockOf(plain, gear)) != PairStanding.SEEN && model.value(subject(f)) instanceof FairValue);
    }

    /** A car with the running gear that most cars of its line and body have, that of the swap left aside. */
    CarFacts stockOf(CarFacts swap, String gear) {
        CarFacts plain = swap.withoutGear();
        return most(plain.vehicle(), c -> model.body(c).equals(model.body(plain)) && !model.runningGear(c).equals(gear))
                .flatMap(CarFacts::runningGear).map(own -> changed(plain, b -> b.runningGear(own))).orElse(plain);
    }

    /** The stock car without its running gear: the shell. */
    CarFacts withoutEngine() {
        return changed(stock, b -> b.runs(Runs.NO_ENGINE));
    }

    /** A car as its maker sold it: body and running gear that the facts leave open are those of most cars of its line, best with a gear. */
    CarFacts ofMaker(CarFacts maker, String gear) {
        Predicate<CarFacts> fits = c -> (maker.body().isEmpty() || model.body(c).equals(model.body(maker)))
                && (maker.runningGear().isEmpty() || model.runningGear(c).equals(model.runningGear(maker)));
        Optional<CarFacts> usual = most(maker.vehicle(), c -> fits.test(c) && model.runningGear(c).equals(gear))
                .or(() -> most(maker.vehicle(), fits));
        CarFacts.Builder whole = maker.toBuilder();
        usual.flatMap(CarFacts::body).filter(body -> maker.body().isEmpty()).ifPresent(whole::body);
        usual.flatMap(CarFacts::runningGear).filter(own -> maker.runningGear().isEmpty()).ifPresent(whole::runningGear);
        return whole.build();
    }

    /** What most of some cars are, in whatever order they stand. */
    static CarFacts usual(List<CarFacts> forms) {
        Map<CarFacts, Integer> counts = new HashMap<>();
        forms.forEach(form -> counts.merge(form, 1, Integer::sum));
        return counts.entrySet().stream().max(Map.Entry.<CarFacts, Integer>comparingByValue()
                .thenComparing(e -> e.getKey().toString())).orElseThrow().getKey();
    }

    int count() {
        return draws.count();
    }

    Assumptions assumptions() {
        return assumptions;
    }

    Assumption assumption(String name) {
        return assumptions.get(name);
    }

    /** The seed of what is one and the same for all cars. */
    long seedOf(String name) {
        return RandomNumbers.seed(seed, name);
    }

    /** The seed of what is this car's own luck: another finished car on the same draws of the market has another one. */
    long seedOfCar(String name) {
        return seedOf("own " + name + "\n" + car.name());
    }

    /** The seed of what cars of this body and running gear share, and no others. */
    long seedOfPair(String name) {
        return seedOf(name + "\n" + pairOf(finished));
    }

    private String pairOf(Facts facts) {
        return facts.vehicle() + "\n" + model.body(facts) + "\n" + model.runningGear(facts);
    }

    /** Standard normal draws of an assumption, the same whoever asks. */
    double[] standard(String name) {
        return sources.computeIfAbsent(name, n -> Draws.normal(count(), seedOf(n)));
    }

    /** Draws that an assumption alone moves, for the account of what holds the result. */
    void source(String name, double[] moved) {
        sources.put(name, moved);
    }

    /** The assumptions that have spoken so far, each with the draws that it moves. */
    Map<String, double[]> sources() {
        return sources;
    }

    /** Draws of an assumption about its middle, kept within limits. */
    double[] between(String name, double least, double most) {
        Assumption a = assumption(name);
        return map(standard(name), z -> Math.max(least, Math.min(most, a.middle() + a.spread() * z)));
    }

    /** The day of the value, to be put behind a title; empty where there is none. */
    String onDay() {
        return on.map(d -> " on " + d).orElse("");
    }

    boolean hasFaults() {
        return !car.statedFaults().isEmpty();
    }

    Subject subject(CarFacts facts) {
        return new Subject(facts, level, PriceIncludes.NEITHER, on);
    }

    /** The factor from the middle price of one subject to that of another, draw by draw. */
    double[] step(Subject from, Subject to) {
        return combined((there, here) -> there / here, draws.level(to), draws.level(from));
    }

    /** The same finished car at a level of trade, on the day of the value. */
    Subject finishedAt(LevelOfTrade other) {
        return new Subject(finished, other, PriceIncludes.NEITHER, on);
    }

    /** How one car departs from the middle of its description, by the errors of the price model. */
    double[] single(Subject subject, long ownSeed) {
        return combined((p, l) -> StrictMath.log(p / l), draws.price(subject, ownSeed), draws.level(subject));
    }

    /** The middle price of such cars, the effect of distance shared between chassis and running gear where the two differ. */
    double[] logLevel(Subject subject) {
        return logLevel(subject, s -> draws.level(s));
    }

    double[] logLevel(Subject subject, Function<Subject, double[]> levels) {
        double[] chassis = map(levels.apply(subject), StrictMath::log);
        CarFacts facts = subject.facts().made();
        if (facts.gearMileage().isEmpty()) {
            return chassis;
        }
        CarFacts atGear = facts.toBuilder().mileage(facts.gearMileage().get()).build();
        double[] gear = map(levels.apply(new Subject(atGear, subject.level(), subject.includes(), subject.on())), StrictMath::log);
        double[] split = new double[chassis.length];
        for (int i = 0; i < split.length; i++) {
            split[i] = chassis[i] + gearShare[i] * (gear[i] - chassis[i]);
        }
        return split;
    }

    /** Whether two cars are the same pair of body and running gear in the same line. */
    boolean samePair(CarFacts a, CarFacts b) {
        return a.vehicle().equals(b.vehicle()) && model.body(a).equals(model.body(b)) && model.runningGear(a).equals(model.runningGear(b));
    }

    /** The middle price of a swap as if the maker had built it, another pair than that of the car with a departure of its own. */
    double[] asBuiltByMaker(Subject subject) {
        if (samePair(subject.facts().made(), finished) || model.pair(subject.facts()) == PairStanding.SEEN) {
            return logLevel(subject);
        }
        long pair = seedOf("pair\n" + pairOf(subject.facts()));
        return logLevel(subject, s -> draws.levelOfAnotherPair(s, pair));
    }

    /** The factor of who built it. */
    double[] builtBy(BuiltBy builder) {
        double middle = assumptions().logMiddle(builder.assumption());
        double spread = assumptions().logSpread(builder.assumption());
        return map(standard(builtByName()), z -> middle + spread * z);
    }

    /** The middle price of a swap by body and running gear, by who built it where the listings show no such pair. */
    double[] asBuilt(Subject subject, BuiltBy builder) {
        return asBuilt(asBuiltByMaker(subject), subject, builder);
    }

    /** The same where the middle price as if the maker had built it is known. */
    double[] asBuilt(double[] maker, Subject subject, BuiltBy builder) {
        return model.pair(subject.facts()) == PairStanding.SEEN ? maker : sum(maker, builtBy(builder));
    }

    /** One draw moves all builders alike, under the name of this car's. */
    String builtByName() {
        return car.builtBy().assumption();
    }

    /** How another swap departs from others of its description. */
    double[] departureOf(Subject subject, String name) {
        double own = assumption("swap_own_departure").middle();
        return combined((w, s) -> own * w + s, Draws.normal(count(), seedOf("departure of " + name)),
                single(subject, seedOf("single " + name)));
    }

    static double[] map(double[] values, DoubleUnaryOperator with) {
        return Arrays.stream(values).map(with).toArray();
    }

    static double[] combined(DoubleBinaryOperator with, double[] a, double[] b) {
        double[] result = new double[a.length];
        for (int i = 0; i < result.length; i++) {
            result[i] = with.applyAsDouble(a[i], b[i]);
        }
        return result;
    }

    static double[] sum(double[] a, double[] b) {
        return combined(Double::sum, a, b);
    }

    static CarFacts changed(CarFacts facts, UnaryOperator<CarFacts.Builder> change) {
        return change.apply(facts.toBuilder()).build();
    }
}
