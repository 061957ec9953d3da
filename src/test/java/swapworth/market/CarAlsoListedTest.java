package swapworth.market;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import swapworth.listing.CarsFile;
import swapworth.listing.Listings;
import swapworth.listing.ListingsRead;
import swapworth.market.Valued.ValuedCar;

/** A car of cars.csv that stands in the listings too: its own price is no witness of what it is worth. */
class CarAlsoListedTest {
    @TempDir
    Path folder;
    private ListingsRead read;
    private PriceModel model;
    private Judgement judged;

    @BeforeEach
    void listings() throws IOException {
        StringBuilder rows = new StringBuilder("id,seen_on,vehicle,model_year,mileage_mi,price_usd,seller\n");
        for (int i = 0; i < 8; i++) {
            rows.append("ad ").append(i).append(",2026-01-04,").append(i % 2 == 0 ? "Quorvane," : "Hestrel,").append(2011 + i).append(',')
                    .append(150_000 - 14_000 * i).append(',').append(4_000 + 1_100 * i + 170 * (i % 3)).append(",private\n");
        }
        // Far below the others: what it is worth hangs on whether it is asked itself.
        rows.append("ad 8,2026-01-04,Quorvane,2016,90000,5900,private\n");
        Path file = folder.resolve("listings.csv");
        Files.writeString(file, rows.toString());
        read = Listings.read(file);
        model = PriceModel.fit(read.cars());
        judged = model.judge(read.listings().get(8));
    }

    private ValuedCar valued(String row) {
        Path file = folder.resolve("cars.csv");
        try {
            Files.writeString(file, "name,role,vehicle,model_year,mileage_mi,price_usd,seller\n" + row + "\n");
        } catch (IOException e) {
            throw new AssertionError(e);
        }
        return Valued.of(CarsFile.read(file, read).cars(), model, read.baseCurrency(), Optional.empty(), Optional.empty()).cars().get(0);
    }

    private void isJudgedAsItsRow(ValuedCar inPlay) {
        FairValue own = TestCars.fair(judged.valuation());
        FairValue value = TestCars.fair(inPlay.valuation());
        assertEquals(own.median(), value.median(), 1e-6 * own.median());
        assertEquals(own.range(0.80), value.range(0.80));
        assertEquals(judged.position(), inPlay.position());
        assertEquals(List.of(own.carsOfLine(), own.carsInFile()), List.of(value.carsOfLine(), value.carsInFile()));
        assertTrue(inPlay.remarks().contains("listings.csv:10 holds this car: it is valued by all others"), inPlay.remarks().toString());
    }

    @Test
    void by_its_name_as_an_id_it_is_judged_as_its_row_is() {
        isJudgedAsItsRow(valued("AD-8,candidate,Quorvane,2016,90000,5900,private"));
        ValuedCar cheaper = valued("ad 8,candidate,Quorvane,2016,90200,5000,private");
        assertEquals(8, TestCars.fair(cheaper.valuation()).carsInFile(), "a price that was talked down makes no other car of it");
    }

    @Test
    void under_another_name_it_is_known_by_line_year_distance_and_price() {
        isJudgedAsItsRow(valued("the green one,candidate,Quorvane,2016,90000,5900,private"));
    }

    @Test
    void another_car_is_valued_by_all_cars() {
        for (String row : List.of("ad 8,candidate,Hestrel,2016,90000,5900,private", "ad 8,candidate,Quorvane,2012,90000,5900,private",
                "ad 8,candidate,Quorvane,2016,40000,5900,private", "the green one,candidate,Quorvane,2016,90000,6100,private",
                "the green one,candidate,Quorvane,2016,90100,5900,private", "the green one,candidate,Quorvane,2016,,5900,private")) {
            ValuedCar inPlay = valued(row);
            assertEquals(9, TestCars.fair(inPlay.valuation()).carsInFile(), row);
            assertTrue(inPlay.remarks().stream().noneMatch(r -> r.contains("holds this car")), row);
        }
    }
}
