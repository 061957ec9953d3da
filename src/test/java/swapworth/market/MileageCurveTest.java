package swapworth.market;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import swapworth.listing.Listings;
import swapworth.reading.DistanceUnit;

/** The curve of price against mileage of a line. */
class MileageCurveTest {

    @Test
    void it_falls_lies_within_its_band_and_runs_over_the_mileages_seen() {
        PriceModel model = PriceModel.fit(Listings.read(Path.of("sample-listings/listings.csv")).cars());
        for (String line : model.lines()) {
            LineCurve curve = model.curve(line);
            double[] middle = curve.middle();
            int last = middle.length - 1;
            assertTrue(middle[last] < middle[0], line + " is worth less with more miles");
            for (int k = 0; k <= last; k++) {
                assertTrue(curve.low()[k] < middle[k] && middle[k] < curve.high()[k]);
            }
            long inside = curve.points().stream().filter(p -> {
                int at = (int) Math.min(last, Math.round(last * (p.miles() - curve.miles()[0]) / (curve.miles()[last] - curve.miles()[0])));
                return p.adjusted() > curve.low()[at] && p.adjusted() < curve.high()[at];
            }).count();
            assertTrue(inside > 0.65 * curve.points().size(), line + ": " + inside + " of " + curve.points().size() + " in the 80 % band");
        }
    }

    @Test
    void a_line_known_by_missed_bids_alone_has_a_curve_without_points(@TempDir Path folder) throws IOException {
        Path file = folder.resolve("listings.csv");
        Files.writeString(file, "vehicle,model_year,mileage_mi,price_usd,price_kind,seller\n"
                + "Sivrette,2014,88000,9800,asking,private\nSivrette,2016,71000,11900,asking,private\nVelmarch,2018,54000,12000,bid not "
                + "met,auction\n");
        PriceModel model = PriceModel.fit(Listings.read(file).cars());
        assertEquals(0, model.curve("Velmarch").points().size());
        assertThrows(IllegalArgumentException.class, () -> model.curve("Nothing"));
    }

    @Test
    void without_dates_the_middle_car_is_named_by_its_model_year_for_nobody_knows_its_age(@TempDir Path folder) throws IOException {
        String rows = "Sivrette,2014,88000,9800%s\nSivrette,2016,71000,11900%s\nSivrette,2012,120500,7200%s\n"
                + "Velmarch,2018,54000,17400%s\n";
        Path undated = Files.writeString(folder.resolve("undated.csv"),
                "vehicle,model_year,mileage_mi,price_usd\n" + rows.replace("%s", ""));
        PriceModel model = PriceModel.fit(Listings.read(undated).cars());
        assertTrue(model.curve("Sivrette").car().startsWith("a car of the model year 2014, "), model.curve("Sivrette").car());
        assertTrue(ModelTables.terms(model, DistanceUnit.MI).notes().get(0).contains("4.0 years (counted to the middle of the year after"));
        Path dated = Files.writeString(folder.resolve("dated.csv"), "vehicle,model_year,mileage_mi,price_usd,seen_on\n"
                + rows.replace("%s", ",2019-07-01"));
        PriceModel known = PriceModel.fit(Listings.read(dated).cars());
        assertTrue(known.curve("Sivrette").car().startsWith("a car of 5 years, "), known.curve("Sivrette").car());
        assertTrue(known.curve("Velmarch").car().startsWith("a car of 1 year, "), known.curve("Velmarch").car());
        assertTrue(ModelTables.terms(known, DistanceUnit.MI).notes().get(0).contains("4.0 years, "));
    }
}
