package swapworth.market;

import java.util.List;
import java.util.function.Predicate;
import java.util.stream.IntStream;
import swapworth.listing.Airbags;
import swapworth.listing.Car;
import swapworth.listing.Condition;
import swapworth.listing.Facts;
import swapworth.listing.Keys;
import swapworth.listing.Runs;
import swapworth.listing.SeenCar;
import swapworth.listing.Title;
import swapworth.table.Cell;
import swapworth.table.Column;
import swapworth.table.Table;

/** What cars do not state, and how the model takes them for it: a value can only be argued with by who knows what stands in. */
public final class OpenFacts {
    private static final String CONDITION = "condition_unknown";
    private static final String IDLE = "no car states it: it plays no part";

    private static final List<Fact> FACTS = List.of(
            new Fact("mileage, of a known age", car -> !hasMiles(car) && hasAge(car),
                    "driven as far as is usual for its line at that age; its range is widened", IDLE),
            new Fact("age, of a known mileage", car -> hasMiles(car) && !hasAge(car),
                    "as old as is usual for its line at that mileage; its range is widened", IDLE),
            new Fact("age and mileage", car -> !hasMiles(car) && !hasAge(car),
                    "of the middle age of its line's cars and driven as far as is usual; its range is widened", IDLE),
            new Fact("trim", car -> car.trim().isEmpty(),
                    "of any trim where others of its line state theirs: its range is wide there", IDLE),
            new Fact("region", car -> car.region().isEmpty(), "of any region: others state theirs, and its range is wide", IDLE),
            step("title", car -> car.title() == Title.UNKNOWN, "title_unknown"),
            step("runs", car -> car.runs() == Runs.UNKNOWN, "runs_unknown"),
            step("damage", car -> car.damage().isEmpty(), "damage_unknown"),
            step("rust", car -> car.rust() == Condition.UNKNOWN, CONDITION),
            step("paint", car -> car.paint() == Condition.UNKNOWN, CONDITION),
            step("interior", car -> car.interior() == Condition.UNKNOWN, CONDITION),
            step("mechanical", car -> car.mechanical() == Condition.UNKNOWN, CONDITION),
            step("records", car -> car.records() == Condition.UNKNOWN, CONDITION),
            fact("keys", car -> car.keys() == Keys.UNKNOWN,
                    "with its keys: prices of cars that say nothing of them stand for cars that have them"),
            fact("airbags", car -> car.airbags() == Airbags.UNKNOWN,
                    "with its airbags in place: prices of cars that say nothing of them stand for such cars"));

    private OpenFacts() {
    }

    /**
     * A fact that a car may leave open.
     *
     * @param isOpen whether a car does
     * @param taken how it is taken for it, in words
     * @param takenOfAll the same where all cars leave it open
     */
    private record Fact(String name, Predicate<Facts> isOpen, String taken, String takenOfAll) {
    }

    private static Fact fact(String name, Predicate<Facts> isOpen, String taken) {
        return new Fact(name, isOpen, taken, taken);
    }

    /** One of which silence has a step of its own against the best: where all cars are silent nothing but the assumption tells it. */
    private static Fact step(String name, Predicate<Facts> isOpen, String assumption) {
        return new Fact(name, isOpen,
                "neither good nor bad: a step of its own, learned from such cars and held by the assumption " + assumption,
                "neither good nor bad: no car states it, so that how one that does would stand to these is assumed (" + assumption + ")");
    }

    private static boolean hasMiles(Facts car) {
        return car.mileage().isPresent();
    }

    private static boolean hasAge(Facts car) {
        return car.modelYear().isPresent() || car.firstRegistered().isPresent() || car.ageYears().isPresent();
    }

    /**
     * The facts that some cars do not state.
     *
     * @param cars the cars of a model
     * @return one row a fact: how many cars are silent, and what they are taken for; no row where all cars state everything
     */
    public static Table table(List<Car> cars) {
        Table.Builder table = Table.titled("What cars do not state, and how they are taken for it").columns(Column.words("fact"),
                Column.number("cars that do not state it", ""), Column.number("of", ""), Column.sentences("taken as"));
        for (Fact fact : FACTS) {
            long open = IntStream.range(0, cars.size()).filter(c -> fact.isOpen.test(SeenCar.of(cars, c).facts())).count();
            if (open > 0) {
                table.row(Cell.words(fact.name), Cell.whole(open), Cell.whole(cars.size()),
                        Cell.words(open == cars.size() ? fact.takenOfAll : fact.taken));
            }
        }
        return table.build();
    }
}
