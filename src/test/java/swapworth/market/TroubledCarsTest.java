package swapworth.market;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import swapworth.listing.Car;
import swapworth.listing.CarFacts;
import swapworth.listing.Title;

/** Crashed, branded and dead cars scatter more about their values than others, and their ranges say so. */
class TroubledCarsTest {
    private static final int WORLDS = 12;
    private static final double CLEAN = 0.15;
    private static final double SALVAGE = 0.29;

    private static List<Car> cars(long seed) {
        SplittableRandom random = new SplittableRandom(seed);
        List<Car> cars = new ArrayList<>();
        for (int k = 0; k < 55; k++) {
            boolean clean = k < 30;
            double age = 5 + random.nextInt(8);
            double miles = 11_000 * age * (0.7 + 0.6 * random.nextDouble());
            double log = Math.log(20_000) - 0.1 * age - 0.04 * miles / 10_000 - (clean ? 0 : 0.6) + (clean ? CLEAN : SALVAGE) * random.nextGaussian();
            cars.add(TestCars.car(k, CarFacts.of("Sivrette").ageYears(age).mileage(TestCars.miles(miles)).title(clean ? Title.CLEAN : Title.SALVAGE)
                    .build(), Math.exp(log)));
        }
        return cars;
    }

    // With one scale for all, 64 and 90 per cent of the salvage cars lay in their ranges, and 91 and 99.6 of the others (30 worlds).
    @Test
    void ranges_of_salvage_cars_hold_more_nearly_what_they_promise() {
        double[] in80 = new double[2];
        double[] in95 = new double[2];
        double[] of = new double[2];
        for (long world = 1; world <= WORLDS; world++) {
            for (Judgement judged : PriceModel.fit(cars(world)).judgeAll()) {
                int group = judged.listing().facts().isTroubled() ? 1 : 0;
                double price = judged.listing().price().amount();
                of[group]++;
                in80[group] += TestCars.fair(judged.valuation()).range(0.80).holds(price) ? 1 : 0;
                in95[group] += TestCars.fair(judged.valuation()).range(0.95).holds(price) ? 1 : 0;
            }
        }
        assertTrue(in80[1] / of[1] > 0.68 && in95[1] / of[1] > 0.91, in80[1] / of[1] + " and " + in95[1] / of[1]);
        assertTrue(in80[0] / of[0] < 0.89 && in80[0] / of[0] > 0.78, in80[0] / of[0] + " of clean cars");
    }

    @Test
    void each_group_is_stretched_by_its_own_prices() {
        PriceModel model = PriceModel.fit(cars(1));
        assertEquals(30, model.stretched().residuals());
        assertEquals(25, model.stretchedTroubled().residuals());
        assertTrue(model.stretchedTroubled().factor() > model.stretched().factor(), model.stretchedTroubled() + " " + model.stretched());
        FitStudy study = model.study(model.judgeAll()).orElseThrow();
        assertEquals(55, study.all().prices());
        assertEquals(25, study.troubled().prices());
        assertTrue(ModelTables.fit(model, study).csv().contains("\"crashed, branded and dead cars inside their 80 % range, %\","
                + Math.round(study.troubled().percent80()) + ","), ModelTables.fit(model, study).csv());
    }
}
