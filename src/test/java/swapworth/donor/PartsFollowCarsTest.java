package swapworth.donor;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import swapworth.assumptions.Assumptions;
import swapworth.listing.CandidateCar;
import swapworth.listing.LevelOfTrade;
import swapworth.listing.PriceIncludes;
import swapworth.market.PriceModel;
import swapworth.market.Subject;
import swapworth.market.ValueDraws;
import swapworth.world.SampleWorld;

/** Draw i is one state of the market for cars and for their parts. */
class PartsFollowCarsTest {
    @TempDir
    Path folder;

    private static double correlation(double[] a, double[] b) {
        double ma = 0;
        double mb = 0;
        for (int i = 0; i < a.length; i++) {
            ma += a[i] / a.length;
            mb += b[i] / b.length;
        }
        double ab = 0;
        double aa = 0;
        double bb = 0;
        for (int i = 0; i < a.length; i++) {
            ab += (a[i] - ma) * (b[i] - mb);
            aa += (a[i] - ma) * (a[i] - ma);
            bb += (b[i] - mb) * (b[i] - mb);
        }
        return ab / Math.sqrt(aa * bb);
    }

    @Test
    void the_level_of_parts_follows_the_level_of_their_car_as_closely_as_is_assumed() throws IOException {
        Donors donors = new Donors(folder).file("cars.csv", "name,role,vehicle,model_year,mileage_mi,runs,damage",
                "body,recipient,Sivrette,2016,71000,drives,none").file("partout.csv", "car,part,price,sells,days,postage",
                "body,engine,1000,1,0.1,0");
        PriceModel model = PriceModel.fit(SampleWorld.generate(4).joinedCars());
        ValueDraws draws = model.draws(4000, 2);
        CandidateCar car = donors.cars().get(0);
        double[] level = draws.level(new Subject(car.facts(), LevelOfTrade.PRIVATE_SOLD, PriceIncludes.NEITHER, model.lastSeen()));
        for (double follow : new double[] {1, 0.5, 0}) {
            Assumptions a = Donors.plain("parts_correlate_with_cars", follow, "parts_move", 10);
            PartOut out = donors.partOut(0, MarketState.of(draws, 3, model.lastSeen()), a);
            double[] net = out.recovery().orElseThrow().net();
            assertEquals(follow, correlation(level, net), 0.06, "assumed " + follow);
            assertEquals(4000, net.length);
        }
        double[] alone = donors.partOut(0, MarketState.withoutCars(4000, 3),
                Donors.plain("parts_correlate_with_cars", 0.8, "parts_move", 10)).recovery()
                .orElseThrow().net();
        assertTrue(Math.abs(correlation(level, alone)) < 0.06, "without listings the parts move by themselves");
    }
}
