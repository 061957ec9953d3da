package swapworth.swap;

import java.util.ArrayList;
import java.util.List;
import swapworth.listing.CarFacts;
import swapworth.market.Figures;
import swapworth.statistics.Quantiles;
import swapworth.table.Cell;
import swapworth.table.Column;
import swapworth.table.Table;

/** From the stock car and from the factory equivalent to the finished car, step by step. */
final class StepGrids {
    private static final String SHARED = "running-gear mileage: its share of the effect of distance";

    private final SwapValue value;
    private final Situation s;
    private final Approaches worked;
    private final Reconciled reconciled;

    /** A stage between two cars: its name and the log price there. */
    private record Stage(String name, double[] log) {
    }

    StepGrids(SwapValue value) {
        this.value = value;
        this.s = value.situation();
        this.worked = value.worked();
        this.reconciled = value.reconciled();
    }

    /** Two tables; none where the approach by body and running gear cannot tell. */
    List<Table> tables() {
        List<Table> grids = new ArrayList<>();
        worked.byBodyAndGear.found.ifPresent(found -> {
            worked.brackets.stock.map(stock -> grid("From the stock car to the finished car", fromStock(stock, found)))
                    .ifPresent(grids::add);
            worked.brackets.factoryAtChassis.map(factory -> grid("From the factory equivalent to the finished car",
                    fromFactory(factory, found))).ifPresent(grids::add);
        });
        return grids;
    }

    private List<Stage> fromStock(double[] stock, ByBodyAndGear.Found found) {
        List<Stage> stages = new ArrayList<>(List.of(new Stage("stock car", stock),
                new Stage("the running gear of the other line", found.atChassis()), new Stage(SHARED, found.shared())));
        finish(stages, found);
        return stages;
    }

    private List<Stage> fromFactory(double[] factory, ByBodyAndGear.Found found) {
        List<Stage> stages = new ArrayList<>(List.of(new Stage("factory equivalent at chassis mileage", factory)));
        worked.brackets.factoryShared.ifPresent(v -> stages.add(new Stage(SHARED, v)));
        stages.add(new Stage(fromFactoryTo(s.factory.orElseThrow()), found.shared()));
        finish(stages, found);
        return stages;
    }

    /** What of the factory equivalent the finished car has otherwise: of the same body, how far the two lines stand apart. */
    private String fromFactoryTo(CarFacts factory) {
        List<String> other = new ArrayList<>();
        if (!s.model.body(factory).equals(s.model.body(s.finished))) {
            other.add("the recipient's body in place of the factory's");
        } else if (!factory.vehicle().equals(s.finished.vehicle())) {
            other.add("the line '" + s.finished.vehicle() + "' in place of '" + factory.vehicle() + "'");
        }
        if (!s.model.runningGear(factory).equals(s.model.runningGear(s.finished))) {
            other.add("this running gear in place of its own");
        }
        return other.isEmpty() ? "what else is stated of this car" : String.join(", and ", other);
    }

    /** From the pair as the maker would have built it on. */
    private void finish(List<Stage> stages, ByBodyAndGear.Found found) {
        List<String> own = new ArrayList<>();
        found.builder().ifPresent(f -> own.add("built by " + s.car.builtBy().words()));
        if (found.swaps() > 0) {
            own.add("what swaps seen tell");
        }
        if (!own.isEmpty()) {
            stages.add(new Stage(String.join(", and ", own), found.log()));
        }
        stages.add(new Stage(worked.logs().size() == 1 ? "what one approach alone may miss" : "the other approaches",
                reconciled.together()));
        if (worked.alike.count() > 0) {
            stages.add(new Stage("swaps of this body and running gear that were seen", reconciled.draws()));
        }
        if (s.hasFaults()) {
            stages.add(new Stage("known faults, as the owner states", reconciled.withFaults(reconciled.draws())));
        }
        stages.add(new Stage("this one car, and offers for it", Situation.map(value.draws(), StrictMath::log)));
    }

    private static Table grid(String title, List<Stage> stages) {
        Table.Builder table = Table.titled(title).columns(Column.words("step"), Column.number("factor", ""),
                Column.number("80 % range of the factor", ""), Column.number("in money", ""), Column.number("price after it", ""));
        table.note("Each step is the ratio of two medians, so that the factors multiply out to the value.");
        double before = StrictMath.exp(Quantiles.median(stages.get(0).log()));
        table.row(Cell.words(stages.get(0).name()), Cell.BLANK, Cell.BLANK, Cell.BLANK, Figures.money(before));
        for (int k = 1; k < stages.size(); k++) {
            double after = StrictMath.exp(Quantiles.median(stages.get(k).log()));
            double[] ratio = Situation.combined((a, b) -> StrictMath.exp(a - b), stages.get(k).log(), stages.get(k - 1).log());
            table.row(Cell.words(stages.get(k).name()), Cell.number(after / before, 3),
                    Cell.words(Cell.format(Quantiles.of(ratio, 0.1), 3) + " to " + Cell.format(Quantiles.of(ratio, 0.9), 3)),
                    Cell.signed(Math.rint(after - before), 0), Figures.money(after));
            before = after;
        }
        return table.build();
    }
}
