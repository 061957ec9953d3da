package swapworth.world;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.List;
import java.util.Set;
import org.junit.jupiter.api.Test;
import swapworth.listing.CarFacts;
import swapworth.listing.Condition;
import swapworth.listing.LevelOfTrade;
import swapworth.listing.Listings;
import swapworth.listing.Mileage;
import swapworth.listing.MileageStatus;
import swapworth.listing.Runs;
import swapworth.listing.Title;
import swapworth.market.FairValue;
import swapworth.market.PriceModel;
import swapworth.market.Subject;

class PriceWhenNewTest {

    /** Common practice, no source: in an inflated market a car of six or seven years asks about three quarters of its price when new. */
    @Test
    void in_the_inflated_sample_a_car_of_six_or_seven_years_asks_about_three_quarters_of_its_price_when_new() throws Exception {
        PriceModel model = PriceModel.fit(Listings.read(Path.of("sample-listings/listings.csv")).cars());
        LocalDate peak = LocalDate.of(2025, 6, 15);
        List<String> rows = Files.readAllLines(Path.of("sample-listings/lines.csv"));
        double sum = 0;
        for (Line line : Line.values()) {
            String row = rows.stream().filter(r -> r.startsWith(line.vehicle() + ",")).findFirst().orElseThrow();
            double priceNew = Double.parseDouble(row.substring(row.lastIndexOf(',') + 1).replace(" when new", ""));
            CarFacts car = CarFacts.of(line.vehicle()).trim(line.trims().get(0)).modelYear(peak.getYear() - 7)
                    .mileage(new Mileage(6.5 * line.milesPerYear(), MileageStatus.READ)).title(Title.CLEAN).runs(Runs.DRIVES)
                    .damage(Set.of()).rust(Condition.SOUND).paint(Condition.SOUND).interior(Condition.SOUND)
                    .mechanical(Condition.SOUND).records(Condition.SOUND).build();
            FairValue value = (FairValue) model.value(Subject.of(car, LevelOfTrade.PRIVATE_ASKING, peak));
            assertEquals(0.75, value.median() / priceNew, 0.12, line.vehicle());
            sum += value.median() / priceNew;
        }
        assertEquals(0.75, sum / Line.values().length, 0.05);
    }
}
