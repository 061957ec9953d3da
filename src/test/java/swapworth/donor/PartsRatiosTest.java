package swapworth.donor;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import swapworth.assumptions.Assumptions;
import swapworth.listing.CandidateCar;
import swapworth.listing.CarsFile;
import swapworth.reading.Conventions;
import swapworth.reading.FolderSettings;
import swapworth.world.PartsWorld;

/**
 * Rules of thumb of the trade, common practice, no source. The invented market of the sample is built so that they come out of its data;
 * when the data change, so do they.
 */
class PartsRatiosTest {
    private static final LocalDate EVENING = LocalDate.of(2026, 10, 30);

    @TempDir
    Path folder;

    /** What the tool finds for the sound recipient of the sample, at its miles and at half as many again. */
    private record Found(double gearShare, double milesRatio, double shareOfCost) {
    }

    private Found found(PartsWorld world) throws IOException {
        Files.writeString(folder.resolve("parts.csv"), world.parts(EVENING));
        Files.writeString(folder.resolve("words.csv"),
                "column,word,means\npart,lump,engine\npart,box,gearbox\npart,brain,engine control unit\n");
        Files.writeString(folder.resolve("partout.csv"), PartsWorld.partout());
        Files.writeString(folder.resolve("fees.csv"), PartsWorld.fees());
        FolderSettings settings = FolderSettings.of(folder, Conventions.unstated());
        double[] sums = new double[2];
        double gear = 0;
        double share = 0;
        List<String> miles = List.of("71000", "106500");
        for (int k = 0; k < 2; k++) {
            Files.writeString(folder.resolve("cars.csv"),
                    "name,role,vehicle,running_gear,mileage,seller,price,price_includes,runs,damage,distance_away,keys\n"
                    + "tidy roadster,recipient,Sivrette,four 2.0," + miles.get(k) + ",private,10600,neither,drives,none,38,yes\n");
            List<CandidateCar> cars = CarsFile.read(folder.resolve("cars.csv"), FeeFiles.USD).cars();
            PartsMarket market = PartsMarket.fit(PartOffers.read(folder.resolve("parts.csv"), settings, FeeFiles.USD),
                    Map.of("velmarch", "six 3.2", "galdrise", "six 3.2", "sivrette", "four 2.0"), Optional.of(EVENING),
                    Assumptions.defaults());
            PartoutFile file = PartoutFile.read(folder.resolve("partout.csv"), cars, settings, FeeFiles.USD);
            PartOut out = PartOut.of(cars.get(0), file, market, MarketState.withoutCars(2000, 1), Assumptions.defaults());
            Recovery recovery = out.recovery().orElseThrow();
            for (Recovery.PartResult p : recovery.parts()) {
                sums[k] += p.net();
                gear += k == 0 && p.engineOrGearbox() ? p.net() : 0;
            }
            double cost = Landed.of(cars, FeeSchedule.read(folder.resolve("fees.csv"), settings, FeeFiles.USD, Assumptions.defaults()),
                    Optional.empty())
                    .costs().get(0).total().doubleValue();
            share = k == 0 ? Arrays.stream(recovery.net()).average().orElseThrow() / cost : share;
        }
        return new Found(gear / sums[0], sums[1] / sums[0], share);
    }

    @Test
    void engine_and_gearbox_are_two_thirds_of_the_parts_money_which_falls_by_a_third_with_half_the_miles_again_and_is_a_third_of_the_cost()
            throws IOException {
        Found sample = found(PartsWorld.of(23));
        assertEquals(0.67, sample.gearShare(), 0.08, sample.toString());
        assertEquals(0.67, sample.milesRatio(), 0.08, sample.toString());
        assertEquals(0.33, sample.shareOfCost(), 0.07, sample.toString());
    }

    @Test
    void the_ratios_follow_the_data() throws IOException {
        Found sample = found(PartsWorld.of(23));
        Found cheap = found(PartsWorld.of(23).withGearFactor(0.4));
        // By hand: 0.4 g / (0.4 g + 1 - g).
        double g = sample.gearShare();
        assertEquals(0.4 * g / (0.4 * g + 1 - g), cheap.gearShare(), 0.07, cheap.toString());
        Found flat = found(PartsWorld.of(23).withSlopes(-0.02, -0.01));
        assertTrue(flat.milesRatio() > sample.milesRatio() + 0.15, flat.toString());
        assertTrue(cheap.shareOfCost() < sample.shareOfCost() - 0.06, cheap.toString());
    }
}
