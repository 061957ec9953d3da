package swapworth.market;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import swapworth.listing.Car;
import swapworth.listing.CarFacts;
import swapworth.listing.LevelOfTrade;
import swapworth.listing.Title;
import swapworth.statistics.Quantiles;

/** Ranges in files of many cars, which have learned how far the prices of each line scatter and how heavy their tails are. */
class RangesOfLinesTest {
    private static final double[] SCATTER = {0.08, 0.12, 0.12, 0.20};
    private static final int OF_LINE = 700;

    private static Car car(int number, int line, SplittableRandom random) {
        double age = 2 + 10 * random.nextDouble();
        double miles = 11_000 * age * Math.exp(0.4 * random.nextGaussian());
        CarFacts facts = CarFacts.of("Line " + line).ageYears(age).mileage(TestCars.miles(miles)).build();
        double log = Math.log(12_000 * (1 + line)) - 0.08 * age - 0.03 * miles / 10_000 + SCATTER[line] * random.nextGaussian();
        return TestCars.car(number, facts, Math.exp(log));
    }

    private static PriceModel model(int ofLine, SplittableRandom random) {
        List<Car> cars = new ArrayList<>();
        for (int k = 0; k < ofLine * SCATTER.length; k++) {
            cars.add(car(k, k % SCATTER.length, random));
        }
        return PriceModel.fit(cars);
    }

    /** The fit of 2,800 prices takes all lines to scatter alike, with tails that these errors do not have. */
    @Test
    void each_line_holds_what_its_ranges_promise() {
        SplittableRandom random = new SplittableRandom(4);
        PriceModel model = model(OF_LINE, random);
        assertTrue(model.tail().degreesOfFreedom() >= 12, model.tail().toString());
        assertEquals(OF_LINE * SCATTER.length, model.tail().residuals());
        for (int line = 0; line < SCATTER.length; line++) {
            int in80 = 0;
            int in95 = 0;
            for (int k = 0; k < 2000; k++) {
                Car fresh = car(1_000_000 + k, line, random);
                FairValue value = TestCars.fair(model.value(Evidence.subject(fresh.facts(), fresh.latest())));
                double price = fresh.latest().price().amount();
                in80 += value.range(0.80).holds(price) ? 1 : 0;
                in95 += value.range(0.95).holds(price) ? 1 : 0;
            }
            assertEquals(80, in80 / 20.0, 4.5, "line " + line);
            assertEquals(95, in95 / 20.0, 1.9, "line " + line);
        }
    }

    /** With more lines than prices that are enough for the tail, none was taken of any, and 95 % ranges were those of what is assumed. */
    @Test
    void thousands_of_lines_tell_how_heavy_tails_are() {
        List<Car> cars = new ArrayList<>();
        for (int k = 0; k < 6000; k++) {
            CarFacts facts = CarFacts.of("Line " + (k < 4500 ? k : 0)).ageYears(5).mileage(TestCars.miles(50_000 + k)).build();
            cars.add(TestCars.car(k, facts, 9000));
        }
        EvidenceList.Found found = EvidenceList.in(cars, List.of());
        Stretches.Chosen chosen = Stretches.Chosen.of(found.evidence(), found.stock());
        assertEquals(4000, chosen.forTail().length);
        long ofFirst = IntStream.of(chosen.forTail()).filter(i -> found.evidence().subject(i).facts().vehicle().equals("Line 0")).count();
        assertEquals(1000, ofFirst, 5, "a quarter of the cars are of one line");
    }

    /** What is put together from draws has the scatter of each line too: that of its normal errors, 0.08 to 0.20. */
    @Test
    void prices_drawn_scatter_as_those_of_their_line_do() {
        SplittableRandom random = new SplittableRandom(4);
        PriceModel model = model(OF_LINE, random);
        ValueDraws draws = model.draws(20_000, 1);
        for (int line = 0; line < SCATTER.length; line++) {
            CarFacts facts = CarFacts.of("Line " + line).ageYears(6).mileage(TestCars.miles(66_000)).build();
            Subject subject = Subject.of(facts, LevelOfTrade.PRIVATE_ASKING, model.lastSeen().orElseThrow());
            double[] price = draws.price(subject, 5);
            double width = Math.log(Quantiles.of(price, 0.9) / Quantiles.of(price, 0.1));
            Range range = TestCars.fair(model.value(subject)).range(0.80);
            assertEquals(1, width / Math.log(range.high() / range.low()), 0.03, "line " + line);
            assertEquals(1, width / (2 * 1.281552 * SCATTER[line]), 0.15, "line " + line);
        }
    }

    private static Car salvage(int number, SplittableRandom random) {
        double age = 2 + 10 * random.nextDouble();
        CarFacts facts = CarFacts.of("Line 0").ageYears(age).mileage(TestCars.miles(11_000 * age)).title(Title.SALVAGE).build();
        return TestCars.car(number, facts, Math.exp(Math.log(6_000) - 0.113 * age + 0.4 * random.nextGaussian()));
    }

    /** Crashed cars of the quietest line, whose sound ones scatter by 8 %, scatter by 40 %. */
    @Test
    void crashed_cars_of_a_quiet_line_hold_what_their_ranges_promise() {
        SplittableRandom random = new SplittableRandom(9);
        List<Car> cars = new ArrayList<>();
        for (int k = 0; k < OF_LINE * SCATTER.length; k++) {
            cars.add(car(k, k % SCATTER.length, random));
        }
        for (int k = 0; k < 300; k++) {
            cars.add(salvage(100_000 + k, random));
        }
        PriceModel model = PriceModel.fit(cars);
        int in80 = 0;
        int in95 = 0;
        for (int k = 0; k < 2000; k++) {
            Car fresh = salvage(1_000_000 + k, random);
            FairValue value = TestCars.fair(model.value(Evidence.subject(fresh.facts(), fresh.latest())));
            double price = fresh.latest().price().amount();
            in80 += value.range(0.80).holds(price) ? 1 : 0;
            in95 += value.range(0.95).holds(price) ? 1 : 0;
        }
        assertEquals(80, in80 / 20.0, 4.5);
        assertEquals(95, in95 / 20.0, 2.5);
    }

    /** A car judged without itself and one like it that was never seen have ranges of one law. */
    @ParameterizedTest
    @ValueSource(ints = {30, 700})
    void the_tail_is_that_of_ranges_percentiles_and_draws(int ofLine) {
        PriceModel model = model(ofLine, new SplittableRandom(7));
        assertTrue(model.tail().degreesOfFreedom() > 4, model.tail().toString());
        Car car = model.cars().get(1);
        FairValue value = TestCars.fair(model.value(Evidence.subject(car.facts(), car.latest())));
        for (double percent : new double[] {2.5, 10, 90, 97.5}) {
            Range range = value.range(Math.abs(2 * percent / 100 - 1));
            assertEquals(percent, value.percentile(percent < 50 ? range.low() : range.high()), 0.01);
        }
        double ratio = Math.log(value.range(0.95).high() / value.median()) / Math.log(value.range(0.80).high() / value.median());
        FairValue judged = model.judge(car.latest()).valuation().match(fair -> fair, no -> {
            throw new AssertionError(no);
        });
        assertEquals(ratio, Math.log(judged.range(0.95).high() / judged.median()) / Math.log(judged.range(0.80).high() / judged.median()),
                0.02);
        // 2.776 / 1.533 for Student's t with 4 degrees, 1.960 / 1.282 for normal errors.
        assertTrue(ratio < 1.78, ofLine + ": " + ratio);
    }
}
