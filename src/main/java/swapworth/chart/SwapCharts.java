package swapworth.chart;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import swapworth.statistics.Quantiles;
import swapworth.swap.Approach;
import swapworth.swap.SwapValue;

/** The charts of finished swaps, each made from results of their valuation. */
public final class SwapCharts {

    private SwapCharts() {
    }

    /**
     * The approaches with their ranges, the reconciled value, and what stands around it.
     *
     * @param value the value of a finished swap
     * @param currency the base currency
     * @return the chart; approaches that cannot tell are not in it
     */
    public static Chart approaches(SwapValue value, String currency) {
        List<RangeRow> rows = new ArrayList<>();
        for (Approach approach : value.approaches()) {
            if (approach instanceof Approach.Told told) {
                rows.add(row(told.kind().words(), told.price()));
            }
        }
        rows.add(row("reconciled: this one car", value.draws()));
        around(rows, "stock car (level)", value.stockDraws());
        around(rows, "factory equivalent (level)", value.factoryDraws());
        around(rows, "taken apart", value.takenApartDraws());
        return Charts.ranges("What '" + value.car().name() + "' is worth, by each approach and together", "price, " + currency, rows,
                OptionalDouble.empty());
    }

    private static void around(List<RangeRow> rows, String name, Optional<double[]> draws) {
        draws.ifPresent(d -> rows.add(row(name, d)));
    }

    private static RangeRow row(String name, double[] draws) {
        double[] sorted = draws.clone();
        Arrays.sort(sorted);
        return new RangeRow(name, Quantiles.ofSorted(sorted, 0.5), Quantiles.ofSorted(sorted, 0.1), Quantiles.ofSorted(sorted, 0.9),
                Quantiles.ofSorted(sorted, 0.025), Quantiles.ofSorted(sorted, 0.975));
    }
}
