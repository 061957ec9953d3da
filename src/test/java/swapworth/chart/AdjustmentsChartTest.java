package swapworth.chart;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import swapworth.listing.Listings;
import swapworth.listing.ListingsRead;
import swapworth.market.FairValue;
import swapworth.market.Judged;
import swapworth.market.JudgedListing;
import swapworth.market.Judgement;
import swapworth.market.PriceModel;
import swapworth.table.Cell;

class AdjustmentsChartTest {

    @Test
    void the_steps_lead_from_the_price_that_was_seen_to_the_fair_value() {
        ListingsRead read = Listings.read(Path.of("sample-listings/listings.csv"));
        Judged judged = Judged.of(read, PriceModel.fit(read.cars()));
        for (Judgement one : judged.latest().subList(0, 40)) {
            if (one.valuation() instanceof FairValue value) {
                Chart chart = MarketCharts.adjustments(new JudgedListing(one, read.baseCurrency()));
                List<List<Cell>> rows = chart.data().rows();
                double price = value.comparables().rows().get(0).listing().price().amount();
                assertEquals(price, shown(rows.get(0).get(2)), 1, one.car());
                assertEquals(value.median(), shown(rows.get(rows.size() - 1).get(2)), 1, one.car());
                assertTrue(chart.alt().contains("fair value of " + one.car()), chart.alt());
            }
        }
    }

    private static double shown(Cell cell) {
        return Double.parseDouble(cell.shown().replace(",", ""));
    }
}
