package swapworth.market;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
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
    private static final String OWN_STEP = "neither good nor bad: a step of its own, learned from such cars and held by the assumption ";

    /** Facts that are not stated, in the order of the table; those of which no car is silent stay at 0. */
    private final Map<String, Integer> silent = new LinkedHashMap<>();
    private boolean anyTrim;
    private boolean anyRegion;

    private OpenFacts(List<Car> cars) {
        for (int c = 0; c < cars.size(); c++) {
            count(SeenCar.of(cars, c).facts());
        }
    }

    private void count(Facts car) {
        boolean age = car.modelYear().isPresent() || car.firstRegistered().isPresent() || car.ageYears().isPresent();
        boolean miles = car.mileage().isPresent();
        count("mileage, of a known age", !miles && age);
        count("age, of a known mileage", !age && miles);
        count("age and mileage", !age && !miles);
        count("trim", car.trim().isEmpty());
        count("region", car.region().isEmpty());
        count("title", car.title() == Title.UNKNOWN);
        count("runs", car.runs() == Runs.UNKNOWN);
        count("damage", car.damage().isEmpty());
        count("rust", car.rust() == Condition.UNKNOWN);
        count("paint", car.paint() == Condition.UNKNOWN);
        count("interior", car.interior() == Condition.UNKNOWN);
        count("mechanical", car.mechanical() == Condition.UNKNOWN);
        count("records", car.records() == Condition.UNKNOWN);
        count("keys", car.keys() == Keys.UNKNOWN);
        count("airbags", car.airbags() == Airbags.UNKNOWN);
        anyTrim |= car.trim().isPresent();
        anyRegion |= car.region().isPresent();
    }

    private void count(String fact, boolean isOpen) {
        silent.merge(fact, isOpen ? 1 : 0, Integer::sum);
    }

    /**
     * The facts that some cars do not state.
     *
     * @param cars the cars of a model
     * @return one row a fact: how many cars are silent, and what they are taken for; no row where all cars state everything
     */
    public static Table table(List<Car> cars) {
        OpenFacts open = new OpenFacts(cars);
        Table.Builder table = Table.titled("What cars do not state, and how they are taken for it").columns(Column.words("fact"),
                Column.number("cars that do not state it", ""), Column.number("of", ""), Column.sentences("taken as"));
        open.silent.forEach((fact, count) -> {
            if (count > 0) {
                table.row(Cell.words(fact), Cell.whole(count), Cell.whole(cars.size()), Cell.words(open.taken(fact)));
            }
        });
        return table.build();
    }

    private String taken(String fact) {
        return switch (fact) {
            case "mileage, of a known age" -> "driven as far as is usual for its line at that age; its range is widened";
            case "age, of a known mileage" -> "as old as is usual for its line at that mileage; its range is widened";
            case "age and mileage" -> "of the middle age of its line's cars and driven as far as is usual; its range is widened";
            case "trim" -> anyTrim ? "of any trim where others of its line state theirs: its range is wide there"
                    : "no car states it: it plays no part";
            case "region" -> anyRegion ? "of any region: others state theirs, and its range is wide" : "no car states it: it plays no part";
            case "title" -> OWN_STEP + "title_unknown";
            case "runs" -> OWN_STEP + "runs_unknown";
            case "damage" -> OWN_STEP + "damage_unknown";
            case "keys" -> "with its keys: prices of cars that say nothing of them stand for cars that have them";
            case "airbags" -> "with its airbags in place: prices of cars that say nothing of them stand for such cars";
            default -> OWN_STEP + "condition_unknown";
        };
    }
}
