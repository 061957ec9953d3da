package swapworth.market;

import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.Set;
import java.util.concurrent.ConcurrentHashMap;
import java.util.function.Function;
import java.util.stream.Collectors;
import swapworth.market.BodiesAndGears.Fact;
import swapworth.market.Stock.Kind;
import swapworth.statistics.PriorBlock;
import swapworth.statistics.PriorBlock.Role;

/** The terms of what a car is by its maker: its line, or body, running gear and their pair; its trim; the measured facts of its gear. */
final class LineTerms {
    private static final String TRIMS = "how far trims differ";
    /** The median of a half-normal law of scale 1. */
    private static final double HALF_NORMAL_MEDIAN = 0.6745;

    private final BodiesAndGears pairs;
    private final Optional<Terms.Levels> pairTerm;
    /** The level of cars that state no trim, of each line of which others do. */
    private final Map<String, Optional<String>> unstatedTrims = new HashMap<>();
    /** The words of each trim of each line. */
    private final Map<String, Map<String, Optional<String>>> trims = new ConcurrentHashMap<>();

    /**
     * Adds the terms.
     *
     * @param all the level of all cars, which is in each row the sum of the levels of bodies or lines
     */
    LineTerms(ModelTerms terms, Term all, List<Kind> kinds) {
        this.pairs = new BodiesAndGears(kinds);
        if (pairs.linked()) {
            terms.parts(all, levels(terms, "how far bodies differ", "spread_bodies", Role.PRIMARY,
                    s -> Optional.of(pairs.body(s.facts()))));
            levels(terms, "how far running gears differ", "spread_gears", Role.PRIMARY, s -> Optional.of(pairs.gear(s.facts())));
            // Pairs are few and tell little of their spread: the stated one is the middle of its prior, not the scale.
            pairTerm = Optional.of(terms.levels("how far a body and a running gear depart together", Group.LEVEL_OF_LINE,
                    new Terms.Prior(0, terms.assumed("spread_pairs") / HALF_NORMAL_MEDIAN, Role.PRIMARY),
                    s -> Optional.of(pairs.pair(s.facts())), ModelTerms.ONE));
        } else {
            pairTerm = Optional.empty();
            terms.parts(all, levels(terms, "how far lines differ", "spread_lines", Role.PRIMARY, s -> Optional.of(s.facts().vehicle())));
        }
        addTrims(terms);
        measuredFact(terms, new Slope("power", "% per 10 % more power", Fact.POWER, Math.log(1.1), "power_slope"), kinds);
        measuredFact(terms, new Slope("cylinders", "% per cylinder", Fact.CYLINDERS, 1, "cylinder_slope"), kinds);
        measuredFact(terms, new Slope("weight", "% per 10 % more weight", Fact.WEIGHT, Math.log(1.1), "weight_slope"), kinds);
        measuredFact(terms, new Slope("all wheels driven", "%", Fact.ALL_WHEELS, 1, "all_wheels_driven"), kinds);
    }

    private static Term levels(ModelTerms terms, String name, String spread, Role role, Function<Subject, Optional<String>> key) {
        return terms.levels(name, Group.LEVEL_OF_LINE, new Terms.Prior(0, terms.assumed(spread), role), key, ModelTerms.ONE);
    }

    private void addTrims(ModelTerms terms) {
        for (Subject subject : terms.seen()) {
            if (subject.facts().trim().isPresent()) {
                unstatedTrims.put(subject.facts().vehicle(), Optional.of(subject.facts().vehicle() + " "));
            }
        }
        levels(terms, TRIMS, "spread_trims", Role.SECONDARY, this::trim);
        // A level that no row is of has the whole spread by itself; one that rows of several trims share does not say how far these differ.
        Set<String> mixed = terms.seen().stream().filter(s -> s.facts().trim().isEmpty()).map(s -> s.facts().vehicle())
                .filter(unstatedTrims::containsKey).collect(Collectors.toSet());
        terms.gap(TRIMS, 1, s -> s.facts().trim().isEmpty() && mixed.contains(s.facts().vehicle()), "");
    }

    /**
     * The trim of a car with its line, put together once for all that have it. Where other cars of the line state theirs, one that does not
     * is of a level of its own: it is of some trim, and nobody knows of which.
     */
    private Optional<String> trim(Subject subject) {
        Optional<String> trim = subject.facts().trim();
        String line = subject.facts().vehicle();
        if (trim.isEmpty()) {
            return unstatedTrims.getOrDefault(line, trim);
        }
        Map<String, Optional<String>> ofLine = trims.get(line);
        Optional<String> known = ofLine == null ? null : ofLine.get(trim.get());
        return known != null ? known : trims.computeIfAbsent(line, l -> new ConcurrentHashMap<>())
                .computeIfAbsent(trim.get(), t -> Optional.of(line + " " + t.toLowerCase(Locale.ROOT)));
    }

    /**
     * A slope on a measured fact.
     *
     * @param one what counts as one unit
     * @param assumption the name of what is assumed of it
     */
    private record Slope(String name, String unit, Fact fact, double one, String assumption) {
    }

    /** A slope on a measured fact, where the rows differ in it; a car of which it is unknown stands at the mean, its range widened. */
    private void measuredFact(ModelTerms terms, Slope slope, List<Kind> kinds) {
        Fact fact = slope.fact;
        double one = slope.one;
        double sum = 0;
        double squares = 0;
        double rows = 0;
        double first = Double.NaN;
        boolean differs = false;
        for (Kind kind : kinds) {
            OptionalDouble value = pairs.fact(fact, kind.facts());
            if (value.isPresent()) {
                first = rows == 0 ? value.getAsDouble() : first;
                differs |= Math.abs(value.getAsDouble() - first) > 1e-9;
                sum += kind.rows() * (value.getAsDouble() - first);
                squares += kind.rows() * Math.pow(value.getAsDouble() - first, 2);
                rows += kind.rows();
            }
        }
        if (differs) {
            double mean = first + sum / rows;
            terms.add(new Terms.Measure(slope.name, Group.LEVEL_OF_LINE, slope.unit,
                    Terms.Prior.of(terms.assumptions(), slope.assumption), (s, m) -> {
                        OptionalDouble value = pairs.fact(fact, s.facts());
                        return value.isPresent() ? (value.getAsDouble() - mean) / one : 0;
                    }));
            terms.gap(slope.name, Math.sqrt(Math.max(0, squares / rows - Math.pow(sum / rows, 2))) / one,
                    s -> pairs.fact(fact, s.facts()).isEmpty(), slope.name + " not stated: the average taken, range widened");
        }
    }

    BodiesAndGears pairs() {
        return pairs;
    }

    /** The column that stands for the departure of every pair never seen, where the pair of a subject is one of them. */
    OptionalInt unseenPair(Subject subject) {
        return pairTerm.flatMap(t -> t.level(subject).filter(pair -> t.coefficient(pair).isEmpty()).map(pair -> t.unseen()))
                .map(OptionalInt::of).orElse(OptionalInt.empty());
    }

    /** What is assumed of how far pairs depart, where they are taken apart. */
    Optional<PriorBlock> pairBlock() {
        return pairTerm.map(t -> t.priors().get(0));
    }
}
