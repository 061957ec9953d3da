package swapworth.market;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import java.util.function.Function;
import java.util.stream.IntStream;
import swapworth.assumptions.Assumptions;
import swapworth.listing.Condition;
import swapworth.listing.Damage;
import swapworth.listing.LevelOfTrade;

/** Terms of steps against a base: levels of trade, and the state of a car. */
final class StepTerms {
    private static final int ZONES = Damage.values().length;
    /** No step, and each step alone: made once for all rows, which only read them. No fact has more steps than damage has zones. */
    private static final int[][] AT = IntStream.range(-1, ZONES + 1)
            .mapToObj(level -> level < 0 ? new int[0] : new int[] {level}).toArray(int[][]::new);

    private final Assumptions assumptions;

    StepTerms(Assumptions assumptions) {
        this.assumptions = assumptions;
    }

    /** How levels of trade, and what a price includes, stand to private asking prices that include nothing. */
    List<Term> trade() {
        List<LevelOfTrade> levels = List.of(LevelOfTrade.TRADE_ASKING, LevelOfTrade.PRIVATE_SOLD, LevelOfTrade.TRADE_SOLD,
                LevelOfTrade.AUCTION);
        Term level = steps("level of trade", Group.TRADE, 0, levels.stream().map(LevelOfTrade::words).toList(),
                List.of("level_trade_asking", "level_private_sold", "level_trade_sold", "level_auction"),
                s -> at(levels.indexOf(s.level())));
        Term includes = steps("price includes", Group.TRADE, 0, List.of("fees", "tax", "both", "unknown, at auction"),
                List.of("includes_fees", "includes_tax", "includes_both", "includes_unknown_at_auction"),
                s -> switch (s.includes()) {
                    case NEITHER -> at(-1);
                    case FEES -> at(0);
                    case TAX -> at(1);
                    case BOTH -> at(2);
                    case UNKNOWN -> at(s.level() == LevelOfTrade.AUCTION ? 3 : -1);
                });
        return List.of(level, includes);
    }

    /** What asks for nothing but the state of a car: title, running state, damage, condition, keys, airbags. */
    List<Term> ofState() {
        List<Term> terms = new ArrayList<>();
        terms.add(onState("title", Group.TITLE, 3, List.of("rebuilt", "salvage", "parts only", "unknown"),
                List.of("title_rebuilt", "title_salvage", "title_parts_only", "title_unknown"),
                s -> at(s.title().ordinal() - 1)));
        terms.add(onState("runs", Group.RUNS, 3, List.of("engine fires", "engine dead", "no engine", "not tried", "unknown"),
                List.of("runs_engine_fires", "runs_engine_dead", "runs_no_engine", "runs_not_tried", "runs_unknown"),
                s -> at(s.runs().ordinal() - 1)));
        List<String> zones = new ArrayList<>();
        List<String> names = new ArrayList<>();
        for (Damage zone : Damage.values()) {
            zones.add(zone.words());
            names.add("damage_" + zone.name().toLowerCase(Locale.ROOT));
        }
        zones.add("unknown");
        names.add("damage_unknown");
        terms.add(onState("damage", Group.DAMAGE, 0, zones, names, s -> zones(s.damage())));
        terms.add(condition("rust", State::rust));
        terms.add(condition("paint", State::paint));
        terms.add(condition("interior", State::interior));
        terms.add(condition("mechanical", State::mechanical));
        terms.add(condition("records", State::records));
        terms.add(onState("keys", Group.CONDITION, 0, List.of("no"), List.of("keys_no"), s -> switch (s.keys()) {
            case NO -> at(0);
            case YES, UNKNOWN -> at(-1);
        }));
        terms.add(onState("airbags", Group.CONDITION, 2, List.of("fired", "gone"), List.of("airbags_fired", "airbags_gone"),
                s -> switch (s.airbags()) {
                    case FIRED -> at(0);
                    case GONE -> at(1);
                    case IN_PLACE, UNKNOWN -> at(-1);
                }));
        return terms;
    }

    private Term condition(String name, Function<State, Condition> fact) {
        return onState(name, Group.CONDITION, 2, List.of("worn", "bad", "unknown"),
                List.of(name + "_worn", name + "_bad", "condition_unknown"), s -> at(fact.apply(s).ordinal() - 1));
    }

    private static int[] zones(Optional<Set<Damage>> damage) {
        return damage.isPresent() ? damage.get().stream().mapToInt(Damage::ordinal).toArray() : at(ZONES);
    }

    private static int[] at(int level) {
        return AT[level + 1];
    }

    /** Steps that ask for nothing but the state of a car. */
    private Term onState(String name, Group group, int ordered, List<String> labels, List<String> named,
            Function<State, int[]> standing) {
        return steps(name, group, ordered, labels, named, s -> standing.apply(State.of(s.facts())));
    }

    /** Steps, of which the first {@code ordered} are one flight, the one nearest to the base first. */
    private Term steps(String name, Group group, int ordered, List<String> labels, List<String> named,
            Function<Subject, int[]> standing) {
        List<Terms.Steps.Step> steps = new ArrayList<>();
        for (int i = 0; i < labels.size(); i++) {
            steps.add(new Terms.Steps.Step(labels.get(i), assumptions.logMiddle(named.get(i)), assumptions.logSpread(named.get(i)),
                    i < ordered ? 0 : i));
        }
        return new Terms.Steps(name, group, steps, standing);
    }
}
