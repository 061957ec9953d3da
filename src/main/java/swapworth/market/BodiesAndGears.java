package swapworth.market;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Deque;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.function.Function;
import swapworth.listing.DrivenWheels;
import swapworth.listing.Facts;
import swapworth.market.Stock.Kind;
import swapworth.statistics.Quantiles;

/**
 * Which bodies and running gears the cars of a collection show together, and the measured facts of each gear. Bodies and gears are
 * the two sides of a graph, a car is an edge: a body and a gear never seen together can be told apart where a path links them, or
 * where measured facts speak for the gear.
 */
final class BodiesAndGears {
    /** Gears with different facts that a slope on a fact needs before it says anything of another gear. */
    private static final int FEWEST_GEARS = 3;

    private final Map<String, Integer> carsOfPair = new HashMap<>();
    private final Map<String, Integer> pricesOfPair = new HashMap<>();
    /** The same for cars that name neither body nor gear, by line: most ask for these, and no words need be put together. */
    private final Map<String, Integer> carsOfPlainLine = new HashMap<>();
    private final Map<String, Integer> carsOfBodyAndGear = new HashMap<>();
    private final Map<String, String> bodyOfLine;
    private final Map<String, String> gearOfLine;
    private final Map<String, Set<String>> gearsOfBody = new HashMap<>();
    private final Map<String, Set<String>> bodiesOfGear = new HashMap<>();
    private final Map<Fact, Map<String, Double>> middles = new HashMap<>();

    /** A measured fact of a car. */
    enum Fact {
        /** Natural logarithm of the power. */
        POWER(f -> log(f.powerKw())),
        /** Number of cylinders. */
        CYLINDERS(Facts::cylinders),
        /** Natural logarithm of the weight. */
        WEIGHT(f -> log(f.weightKg())),
        /** 1 where all wheels are driven, 0 where two are. */
        ALL_WHEELS(f -> f.drivenWheels() == DrivenWheels.UNKNOWN ? OptionalDouble.empty()
                : OptionalDouble.of(f.drivenWheels() == DrivenWheels.ALL ? 1 : 0));

        private final Function<Facts, OptionalDouble> own;

        Fact(Function<Facts, OptionalDouble> own) {
            this.own = own;
        }

        private static OptionalDouble log(OptionalDouble value) {
            return value.isPresent() && value.getAsDouble() > 0 ? OptionalDouble.of(Math.log(value.getAsDouble()))
                    : OptionalDouble.empty();
        }
    }

    BodiesAndGears(List<Kind> kinds) {
        this.bodyOfLine = common(kinds, Facts::body);
        this.gearOfLine = common(kinds, Facts::runningGear);
        for (Kind kind : kinds) {
            Facts car = kind.facts();
            carsOfPair.merge(pair(car), kind.cars(), Integer::sum);
            pricesOfPair.merge(pair(car), kind.rows(), Integer::sum);
            carsOfBodyAndGear.merge(body(car) + "\n" + gear(car), kind.cars(), Integer::sum);
            gearsOfBody.computeIfAbsent(body(car), b -> new HashSet<>()).add(gear(car));
            bodiesOfGear.computeIfAbsent(gear(car), g -> new HashSet<>()).add(body(car));
        }
        for (Kind kind : kinds) {
            Facts car = kind.facts();
            if (car.body().isEmpty() && car.runningGear().isEmpty()) {
                carsOfPlainLine.put(car.vehicle(), cars(car));
            }
        }
        for (Fact fact : Fact.values()) {
            middles.put(fact, middlesByGear(kinds, fact));
        }
    }

    /** What the rows of a line that name a body (or a gear) agree on. */
    private static Map<String, String> common(List<Kind> kinds, Function<Facts, Optional<String>> fact) {
        Map<String, String> agreed = new HashMap<>();
        for (Kind kind : kinds) {
            Facts car = kind.facts();
            Optional<String> word = fact.apply(car);
            if (word.isPresent()) {
                String before = agreed.get(car.vehicle());
                agreed.put(car.vehicle(), before == null || before.equals(key(word.get())) ? key(word.get()) : key(car.vehicle()));
            }
        }
        return agreed;
    }

    private Map<String, Double> middlesByGear(List<Kind> kinds, Fact fact) {
        Map<String, List<double[]>> byGear = new HashMap<>();
        for (Kind kind : kinds) {
            OptionalDouble own = fact.own.apply(kind.facts());
            if (own.isPresent()) {
                double[] once = new double[kind.rows()];
                Arrays.fill(once, own.getAsDouble());
                byGear.computeIfAbsent(gear(kind.facts()), g -> new ArrayList<>()).add(once);
            }
        }
        Map<String, Double> middle = new HashMap<>();
        byGear.forEach((gear, values) -> middle.put(gear, Quantiles.of(values.stream().flatMapToDouble(Arrays::stream).toArray(), 0.5)));
        return middle;
    }

    private static String key(String word) {
        return word.toLowerCase(Locale.ROOT);
    }

    /** The body of a car: as stated, else as its line's rows agree, else the line's own. */
    String body(Facts car) {
        return car.body().isPresent() ? key(car.body().get()) : bodyOfLine.getOrDefault(car.vehicle(), key(car.vehicle()));
    }

    /** The running gear of a car, likewise. */
    String gear(Facts car) {
        return car.runningGear().isPresent() ? key(car.runningGear().get()) : gearOfLine.getOrDefault(car.vehicle(), key(car.vehicle()));
    }

    /** The pair of body and gear as its line sells it. */
    String pair(Facts car) {
        return car.vehicle() + "\n" + body(car) + "\n" + gear(car);
    }

    /** The number of cars that show a body and a gear together, as their line sells them. */
    int cars(Facts car) {
        if (car.body().isEmpty() && car.runningGear().isEmpty()) {
            Integer plain = carsOfPlainLine.get(car.vehicle());
            if (plain != null) {
                return plain;
            }
        }
        return carsOfPair.getOrDefault(pair(car), 0);
    }

    /** The number of prices of these cars: each has one at every level of trade at which it was seen. */
    int prices(Facts car) {
        return pricesOfPair.getOrDefault(pair(car), 0);
    }

    /** Whether another line shows the body and the gear of a car together. */
    boolean areInAnotherLine(Facts car) {
        return carsOfBodyAndGear.getOrDefault(body(car) + "\n" + gear(car), 0) > carsOfPair.getOrDefault(pair(car), 0);
    }

    /** Whether some body stands on two gears or some gear under two bodies, so that there is something to tell apart. */
    boolean linked() {
        return gearsOfBody.values().stream().anyMatch(g -> g.size() > 1) || bodiesOfGear.values().stream().anyMatch(b -> b.size() > 1);
    }

    /** A fact of a car: its own, else the middle one of the cars with its gear. */
    OptionalDouble fact(Fact fact, Facts car) {
        OptionalDouble own = fact.own.apply(car);
        if (own.isPresent()) {
            return own;
        }
        Double middle = middles.get(fact).get(gear(car));
        return middle == null ? OptionalDouble.empty() : OptionalDouble.of(middle);
    }

    /** How the body and the gear of a car stand to each other. */
    PairStanding standing(Facts car) {
        return standing(car, 0);
    }

    /** The same as told by the other cars of a fit, of which so many, of the same pair, are the car itself. */
    PairStanding standing(Facts car, int itself) {
        if (cars(car) > itself) {
            return PairStanding.SEEN;
        }
        String body = body(car);
        String gear = gear(car);
        if (!gearsOfBody.containsKey(body)) {
            return PairStanding.APART;
        }
        // Another line may show the two together.
        if (carsOfBodyAndGear.getOrDefault(body + "\n" + gear, 0) > itself || reaches(body, gear)) {
            return PairStanding.LINKED;
        }
        boolean spoken = (fact(Fact.POWER, car).isPresent() || fact(Fact.CYLINDERS, car).isPresent())
                && Math.max(middles.get(Fact.POWER).size(), middles.get(Fact.CYLINDERS).size()) >= FEWEST_GEARS;
        return spoken ? PairStanding.BY_FACTS : PairStanding.APART;
    }

    /** Whether a chain of shared gears and bodies leads from a body to a gear, not by the two together. */
    private boolean reaches(String body, String gear) {
        Set<String> bodies = new HashSet<>(Set.of(body));
        Deque<String> next = new ArrayDeque<>(bodies);
        while (!next.isEmpty()) {
            String from = next.remove();
            for (String g : gearsOfBody.get(from)) {
                if (!g.equals(gear)) {
                    bodiesOfGear.get(g).stream().filter(bodies::add).forEach(next::add);
                } else if (!from.equals(body)) {
                    return true;
                }
            }
        }
        return false;
    }
}
