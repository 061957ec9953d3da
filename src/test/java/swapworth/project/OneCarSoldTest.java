package swapworth.project;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import swapworth.listing.CarFacts;
import swapworth.listing.LevelOfTrade;
import swapworth.listing.PriceIncludes;
import swapworth.listing.Runs;
import swapworth.market.PriceModel;
import swapworth.market.Range;
import swapworth.market.Subject;
import swapworth.statistics.Quantiles;

/**
 * A car that will be sold is one car: what it brings scatters as single prices do, not as their middle, and until then it loses what such
 * cars lose. The listings are invented: prices of 30,000 that fall by a fifth with each year and by 2 % with each 10,000 miles, and
 * scatter by 15 %.
 */
class OneCarSoldTest {
    @TempDir
    private Path folder;

    @BeforeEach
    void write() throws IOException {
        Random random = new Random(7);
        List<String> rows = new ArrayList<>(List.of("id,seen_on,vehicle,running_gear,runs,age_years,mileage_mi,price_usd"));
        for (int i = 0; i < 90; i++) {
            double age = 1 + 12 * random.nextDouble();
            double miles = 10_000 * age * Math.exp(0.3 * random.nextGaussian());
            double log = Math.log(30_000) + age * Math.log(0.8) + miles / 10_000 * Math.log(0.98) + 0.15 * random.nextGaussian();
            boolean six = i % 3 == 0;
            rows.add("c" + i + ",2026-0" + (1 + i % 9) + "-11," + (six ? "Galdrise,six" : "Sivrette,four") + ",drives,"
                    + Math.round(100 * age) / 100.0 + "," + Math.round(miles) + "," + Math.round(Math.exp(log + (six ? 0.5 : 0))));
        }
        Files.write(folder.resolve("listings.csv"), rows);
        Files.writeString(folder.resolve("cars.csv"), """
                name,role,vehicle,running_gear,runs,age_years,mileage_mi,gear_mileage,price_usd,recipient,donor,gear_line,\
                gear_value,work_value
                body,recipient,Sivrette,four,drives,6,60000,,6000,,,,,
                hit,donor,Galdrise,six,drives,5,50000,,7000,,,,,
                done,finished,Sivrette,six,drives,6,60000,50000,,body,hit,Galdrise,3000,3000
                """);
        Files.writeString(folder.resolve("ledger.csv"), """
                date,amount,currency,note,car,category,status
                2026-09-01,6000,USD,the body,body,purchase,actual
                2026-09-02,7000,USD,the hit,hit,purchase,actual
                2026-09-03,200,USD,engines out,body;hit,labour,actual
                2026-12-01,1500,USD,wiring,project,labour,estimate
                """);
        Files.writeString(folder.resolve("alternatives.csv"), """
                alternative,item,amount,kind,month,car
                keep,the car now,6000,payment,0,
                keep,the car then,,resale,36,body
                """);
    }

    private Range ofOne(Runs runs) {
        PriceModel model = Undertaking.of(folder).market().orElseThrow().model();
        CarFacts body = Undertaking.of(folder).market().orElseThrow().cars().cars().get(0).facts().toBuilder().runs(runs).build();
        Subject sold = new Subject(body, LevelOfTrade.PRIVATE_SOLD, PriceIncludes.NEITHER, model.lastSeen());
        return model.value(sold).match(value -> value.range(0.80),
                why -> {
                    throw new IllegalStateException(why.reason());
                });
    }

    @Test
    void a_resale_of_a_car_in_play_has_the_range_of_one_car_and_the_ageing_of_the_listings() {
        double[] resale = Undertaking.of(folder).alternatives().orElseThrow().all().get(0).resale();
        Range range = Forecast.range(resale, 0.80);
        Range now = ofOne(Runs.DRIVES);
        double aged = Math.sqrt(range.low() * range.high()) / Math.sqrt(now.low() * now.high());
        assertEquals(Math.pow(0.8, 3), aged, 0.03, "36 months of what the listings lose, and not of 10 % a year");
        assertEquals(Math.log(now.high() / now.low()), Math.log(range.high() / range.low()), 0.12, "one car, " + now + ", " + range);
    }

    @Test
    void a_recipient_that_is_sold_on_stopping_has_the_range_of_one_car() {
        FinishOrStop choice = Undertaking.of(folder).finishOrStop().orElseThrow();
        Optional<FinishOrStop.Exit> exit = choice.exits().stream().filter(e -> e.name().startsWith("recipient sold without an engine"))
                .findFirst();
        // The donor's gear, put at 3,000 in the row of the finished car, is sold as well: three quarters of it are left (swap_gear_net).
        double[] gear = Undertaking.of(folder).finished().orElseThrow().gearSoldDraws().orElseThrow();
        assertEquals(2_250, Quantiles.median(gear), 75);
        Range range = Forecast.range(DrawFigures.minus(exit.orElseThrow().brings(), gear), 0.80);
        Range one = ofOne(Runs.NO_ENGINE);
        assertEquals(1, range.low() / one.low(), 0.05);
        assertEquals(1, range.high() / one.high(), 0.05);
    }
}
