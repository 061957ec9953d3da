package swapworth.chart;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import swapworth.swap.Approach;
import swapworth.swap.SwapValue;

/** The charts of finished swaps, each made from results of their valuation. */
public final class SwapCharts {

    private SwapCharts() {
    }

    /**
     * The approaches with their ranges, what they say together where swaps seen then move it, the reconciled value, each the price of this
     * one car; and what stands around it, marked by *: middle prices, whose ranges do not hold single cars. The factory equivalent stands
     * at either distance, as in {@link SwapValue#brackets}.
     *
     * @param value the value of a finished swap
     * @param currency the base currency
     * @return the chart; approaches that cannot tell are not in it
     */
    public static Chart approaches(SwapValue value, String currency) {
        List<RangeRow> rows = new ArrayList<>();
        for (Approach approach : value.approaches()) {
            if (approach instanceof Approach.Told told) {
                rows.add(RangeRow.of(told.kind().words(), told.price()));
            }
        }
        value.togetherDraws().ifPresent(d -> rows.add(RangeRow.of("the approaches together", d)));
        rows.add(RangeRow.of("reconciled: this one car" + (value.car().statedFaults().isEmpty() ? "" : ", its faults taken off"),
                value.draws()));
        int single = rows.size();
        around(rows, "stock car", value.stockDraws());
        around(rows, "factory at chassis mileage", value.factoryAtChassisDraws());
        around(rows, "factory at gear mileage", value.factoryAtGearDraws());
        around(rows, "taken apart", value.takenApartDraws());
        return Charts.ranges("What '" + value.car().name() + "' is worth, by each approach and together", "price of this one car"
                + (rows.size() > single ? ", * a middle price" : "") + ", " + currency, rows, OptionalDouble.empty());
    }

    private static void around(List<RangeRow> rows, String name, Optional<double[]> draws) {
        draws.ifPresent(d -> rows.add(RangeRow.of(name + " *", d)));
    }
}
