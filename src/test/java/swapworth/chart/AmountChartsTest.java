package swapworth.chart;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import swapworth.chart.AmountCharts.Step;
import swapworth.chart.AmountCharts.Swing;
import swapworth.project.Forecast;
import swapworth.project.Ledger;
import swapworth.project.LedgerSums;
import swapworth.table.Cell;
import swapworth.table.Table;

/** Charts of amounts: what stands in their tables and words is what was put in. */
class AmountChartsTest {

    @Test
    void a_waterfall_runs_from_nothing_to_its_sum() {
        Chart chart = AmountCharts.waterfall("Money", "amount, USD", List.of(Step.change("car", 9000), Step.change("parts", 1500.5),
                Step.level("paid"), Step.change("sold", -4000), Step.level("net")));
        assertTrue(chart.alt().contains("car +9,000; parts +1,500; paid 10,500; sold -4,000; net 6,500"), chart.alt());
        Table data = chart.data();
        assertEquals("6500.5", data.rows().get(4).get(2).exact());
        assertEquals("", data.rows().get(2).get(1).exact());
        assertTrue(chart.svg().contains("takes off") && chart.svg().contains("stands at"));
    }

    @Test
    void the_money_waterfall_ends_at_the_forecast_that_the_table_shows() {
        Forecast forecast = Forecast.of(Ledger.read(Path.of("sample-listings", "ledger.csv")));
        Map<String, String> figures = forecast.figures().rows().stream().collect(Collectors.toMap(r -> r.get(0).shown(),
                r -> r.get(1).shown()));
        Chart chart = ProjectCharts.moneyWaterfall(forecast);
        List<List<Cell>> rows = chart.data().rows();
        assertEquals("forecast, its median " + figures.get("less tools kept: what the undertaking costs") + ".",
                chart.alt().substring(chart.alt().lastIndexOf("forecast, its")));
        assertTrue(rows.stream().anyMatch(row -> row.get(0).shown().equals("paid and still to be paid")), chart.data().csv());
        LedgerSums sums = forecast.ledger().sums();
        double likely = sums.total().atCompletion().subtract(sums.keptAtCompletion()).doubleValue();
        assertEquals("by likely amounts", rows.get(rows.size() - 3).get(0).shown());
        assertEquals(likely, Double.parseDouble(rows.get(rows.size() - 3).get(2).exact()), 0.005);
        assertEquals("reserve and overrun", rows.get(rows.size() - 2).get(0).shown());
    }

    @Test
    void a_money_waterfall_without_estimates_ends_at_what_it_costs(@TempDir Path folder) throws IOException {
        Path file = Files.writeString(folder.resolve("ledger.csv"), "date,amount,note\n2026-03-04,80,pump\n2026-04-04,20,belt\n");
        Chart chart = ProjectCharts.moneyWaterfall(Forecast.of(Ledger.read(file)));
        assertTrue(chart.alt().endsWith("; what it costs 100."), chart.alt());
        assertFalse(chart.alt().contains("forecast, its median"), chart.alt());
    }

    @Test
    void outcomes_count_every_draw_and_name_their_quantiles() {
        double[] draws = new double[1001];
        for (int i = 0; i < draws.length; i++) {
            draws[i] = i - 200;
        }
        Chart chart = AmountCharts.outcomes("Left", "left, USD", draws, "nothing left");
        assertTrue(chart.alt().contains("1,001 draws; median 300, 80 % range -100 to 700, 95 % range -175 to 775"), chart.alt());
        long counted = chart.data().rows().stream().map(r -> r.get(3).exact()).filter(t -> !t.isEmpty()).mapToLong(Long::parseLong).sum();
        assertEquals(1001, counted);
        assertTrue(chart.svg().contains("nothing left"));
        assertFalse(chart.svg().contains("h0 dash"), "dashed is the 80 % range");
    }

    @Test
    void a_tornado_shows_both_sides_of_each_amount() {
        Chart chart = AmountCharts.tornado("Drivers", "change, USD", List.of(new Swing("welding", 1600, 2000, 2500), new Swing("glass",
                -300, -200, -150)));
        assertTrue(chart.alt().contains(", USD: welding"), chart.alt());
        assertTrue(chart.alt().contains("welding -400 to 500; glass -100 to 50"), chart.alt());
        assertEquals(2, chart.data().rows().size());
    }

    @Test
    void without_numbers_there_is_a_panel_that_says_so() {
        assertTrue(AmountCharts.waterfall("Money", "amount, USD", List.of()).svg().contains("no data"));
        assertTrue(AmountCharts.outcomes("Left", "left, USD", new double[] {Double.NaN}, "").svg().contains("no data"));
        assertTrue(AmountCharts.tornado("Drivers", "change, USD", List.of(new Swing("odd", Double.NaN, 0, 1))).svg().contains("no data"));
        assertFalse(AmountCharts.outcomes("Left", "left, USD", new double[] {5, 5, 5}, "").svg().contains("no data"));
        assertFalse(AmountCharts.waterfall("Money", "amount, USD", List.of(Step.change("odd", Double.NaN),
                Step.level("net"))).svg().contains("NaN"));
    }
}
