package swapworth.donor;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.io.IOException;
import java.nio.file.Path;
import java.util.Arrays;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A part turns out good or bad once in each draw, whatever is done with it: what is done with the same car is held against each other. */
class GoodOrBadOnceTest {
    private static final int MANY = 20_000;

    @TempDir
    Path folder;
    private Donors donors;

    @BeforeEach
    void cars() throws IOException {
        donors = new Donors(folder).file("cars.csv", "name,role,vehicle,runs,damage", "hit,donor,Velmarch,drives,none")
                .file("partout.csv", "car,part,goes_to,price,count,chance_good,sells,days,postage", "hit,engine,swap,1500,,0.3,1,0.1,0",
                        "hit,wheels,swap,90,4,0.8,1,0.1,0", "hit,radio,sell,100,,0.5,1,0.1,0");
    }

    private PartOut out() {
        return donors.partOut(0, MarketState.withoutCars(MANY, 4), Donors.plain());
    }

    // By hand: sold at once, for the price and without costs, gear brings what it is worth as used parts.
    @Test
    void to_use_the_gear_leaves_what_it_brings_when_it_is_sold_at_once_and_for_nothing() {
        PartOut out = out();
        double[] used = out.gearAsFound();
        double[] rest = out.recovery().orElseThrow().net();
        double[] sold = out.allSold().recovery().orElseThrow().net();
        for (int i = 0; i < MANY; i++) {
            assertEquals(sold[i], used[i] + rest[i], 1e-9, "draw " + i);
        }
    }

    // By hand: an engine is worth 1,500 or has to be bought for as much.
    @Test
    void an_engine_is_good_or_another_one_is_bought() {
        PartOut out = out();
        double[] used = out.gearAsFound();
        double[] bought = out.gearToReplace().draws();
        double[] drivetrain = out.drivetrainToReplace();
        for (int i = 0; i < MANY; i++) {
            assertEquals(1500 + 4 * 90, used[i] + bought[i], 1e-9, "draw " + i);
            assertEquals(used[i] >= 1500 ? 0 : 1500, drivetrain[i], 1e-9, "draw " + i);
        }
    }

    // Source: closed forms of the binomial law: mean 1500 x 0.3 + 360 x 0.8, variance 1500^2 x 0.3 x 0.7 + 4 x 90^2 x 0.8 x 0.2.
    @Test
    void gear_is_as_often_good_as_its_chance_says() {
        double[] used = out().gearAsFound();
        double error = Math.sqrt((1500 * 1500 * 0.3 * 0.7 + 4 * 90 * 90 * 0.8 * 0.2) / MANY);
        assertEquals(1500 * 0.3 + 360 * 0.8, Arrays.stream(used).average().orElseThrow(), 4.5 * error);
        assertEquals(0.3, Arrays.stream(used).filter(u -> u >= 1500).count() / (double) MANY, 4.5 * Math.sqrt(0.3 * 0.7 / MANY));
    }
}
