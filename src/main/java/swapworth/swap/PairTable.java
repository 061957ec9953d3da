package swapworth.swap;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.SortedSet;
import java.util.TreeSet;
import swapworth.listing.Car;
import swapworth.listing.CarFacts;
import swapworth.market.Figures;
import swapworth.table.Cell;
import swapworth.table.Column;
import swapworth.table.Table;

/** What each pair of body and running gear would cost in the state of a finished car, seen or unseen. */
final class PairTable {
    /** So many bodies and running gears have room. */
    private static final int MOST = 12;

    private final Situation s;
    /** The finished car in the form of each listed one, by body and by body and running gear. */
    private final Map<String, List<CarFacts>> forms = new HashMap<>();
    private final SortedSet<String> bodies = new TreeSet<>();
    private final SortedSet<String> gears = new TreeSet<>();

    PairTable(Situation situation) {
        this.s = situation;
        bodies.add(s.model.body(s.finished));
        gears.add(s.model.runningGear(s.finished));
        for (Car car : s.model.cars()) {
            String body = s.model.body(car.facts());
            String gear = s.model.runningGear(car.facts());
            bodies.add(body);
            gears.add(gear);
            CarFacts form = s.finished.inFormOf(car.facts());
            forms.computeIfAbsent(body, b -> new ArrayList<>()).add(form);
            forms.computeIfAbsent(pair(body, gear), b -> new ArrayList<>()).add(form);
        }
    }

    private static String pair(String body, String gear) {
        return body + "\n" + gear;
    }

    Table table() {
        List<String> shown = gears.stream().limit(MOST).toList();
        List<Column> columns = new ArrayList<>(List.of(Column.words("body")));
        shown.forEach(g -> columns.add(Column.number(g, "")));
        Table.Builder table = Table.titled("Bodies and running gears: the fair value of such a car" + s.onDay() + ", and how many cars show"
                + " it").columns(columns.toArray(Column[]::new));
        table.note("Year, distance, title and condition are those of the finished car, the trim is that of most such cars, the work the"
                + " maker's. A pair that was never seen is marked unseen: its value follows from cars that have the one or the other, and"
                + " how far a pair departs from the sum of the two is an assumption (spread_pairs). The pair of the finished car is marked"
                + " by *.");
        for (String body : bodies.stream().limit(MOST).toList()) {
            List<Cell> cells = new ArrayList<>(List.of(Cell.words(body)));
            shown.forEach(gear -> cells.add(cell(body, gear)));
            table.row(cells);
        }
        return table.build();
    }

    private Cell cell(String body, String gear) {
        boolean own = body.equals(s.model.body(s.finished)) && gear.equals(s.model.runningGear(s.finished));
        List<CarFacts> seen = forms.getOrDefault(pair(body, gear), List.of());
        List<CarFacts> like = seen.isEmpty() ? forms.getOrDefault(body, List.of()) : seen;
        CarFacts facts = own || like.isEmpty() ? s.finished : withGear(Situation.usual(like), gear);
        String value = s.model.value(s.subject(facts)).match(v -> Figures.rounded(v.median()), c -> "cannot tell");
        int cars = seen.size();
        return Cell.words((own ? "* " : "") + value + (cars == 0 ? ", unseen" : ", " + cars + (cars == 1 ? " car" : " cars")));
    }

    /** A car with a running gear that may be another line's. */
    private CarFacts withGear(CarFacts line, String gear) {
        return s.model.runningGear(line).equals(gear) ? line : Situation.changed(line.withoutGear(), b -> b.runningGear(gear));
    }
}
