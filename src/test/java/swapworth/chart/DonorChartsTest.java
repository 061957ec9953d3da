package swapworth.chart;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.util.Currency;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import swapworth.assumptions.Assumptions;
import swapworth.donor.DonorStudy;
import swapworth.donor.MarketState;
import swapworth.donor.PartOut;
import swapworth.listing.CarsFile;

class DonorChartsTest {
    private static DonorStudy study;

    @BeforeAll
    static void work_out_the_sample() {
        Path folder = Path.of("sample-listings");
        java.util.Currency usd = java.util.Currency.getInstance("USD");
        study = DonorStudy.of(folder, CarsFile.read(folder.resolve("cars.csv"), usd).cars(), usd, Optional.empty(),
                MarketState.of(Optional.empty(), Optional.empty()), Assumptions.defaults());
    }

    @Test
    void landed_costs_stand_as_stacks_that_add_up() {
        Chart chart = DonorCharts.landed(study.landed().orElseThrow());
        assertEquals(4, chart.data().rows().size());
        for (int i = 0; i < 4; i++) {
            double sum = 0;
            for (int c = 1; c < 5; c++) {
                sum += Double.parseDouble(chart.data().rows().get(i).get(c).exact());
            }
            assertEquals(study.landed().orElseThrow().costs().get(i).total().doubleValue(), sum, 0.005);
        }
        assertTrue(chart.alt().startsWith("Landed cost of 4 cars: tidy roadster"), chart.alt());
        assertTrue(chart.svg().contains("fees of the sale"), "a legend");
    }

    @Test
    void recovery_runs_over_the_months_within_its_band_and_parts_stand_by_money_per_hour() {
        PartOut out = study.partOut("front hit").orElseThrow();
        Chart months = DonorCharts.recoveryByMonth(out, "USD");
        assertEquals(12, months.data().rows().size());
        assertTrue(months.alt().startsWith(months.title() + ": net recovery so far, USD, against months. median: "), months.alt());
        Chart hours = DonorCharts.netPerHour(out, "USD");
        List<String> names = hours.data().rows().stream().map(r -> r.get(0).shown()).toList();
        assertEquals(out.recovery().orElseThrow().parts().stream().map(p -> p.name()).toList(), names);
        assertTrue(hours.svg().contains("80 % range"));
    }

    @Test
    void without_costs_or_sales_the_picture_says_so() {
        assertTrue(DonorCharts.landed(new swapworth.donor.Landed(Currency.getInstance("USD"), List.of(), List.of(), List.of(),
                List.of(), List.of())).alt().contains("no car has a price or a planned bid"));
    }
}
