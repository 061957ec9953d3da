package swapworth.market;

import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.OptionalDouble;
import java.util.stream.LongStream;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import swapworth.world.Line;
import swapworth.world.SampleWorld;
import swapworth.world.Truths;

/** Whether ranges hold what they promise, in worlds whose truth is known. Cars and effects of all worlds are pooled. */
class SampleWorldCoverageTest {

    /** Shares in per cent. */
    private record Coverage(double effects95, double prices80, double prices95, double effects) {
    }

    private static Coverage of(LongStream seeds) {
        double[] sums = new double[5];
        double[] counts = new double[2];
        seeds.forEach(seed -> {
            SampleWorld world = SampleWorld.generate(seed);
            PriceModel model = PriceModel.fit(world.joinedCars());
            for (TermEffect term : model.terms()) {
                OptionalDouble truth = truth(world.truths(), model, term.label());
                if (truth.isPresent()) {
                    double percent = 100 * Math.expm1(truth.getAsDouble());
                    sums[0] += percent >= term.low95() && percent <= term.high95() ? 1 : 0;
                    counts[0]++;
                }
            }
            FitStudy study = model.study(model.judgeAll()).orElseThrow();
            int prices = study.ratios().n() + study.leftOut();
            sums[1] += study.all().in80();
            sums[2] += study.all().in95();
            counts[1] += prices;
        });
        return new Coverage(100 * sums[0] / counts[0], 100 * sums[1] / counts[1], 100 * sums[2] / counts[1], counts[0]);
    }

    /** What is true of a term of the model, in log points; empty where the world has no such single number. */
    private static OptionalDouble truth(Truths truths, PriceModel model, String label) {
        // The world's slopes are stated at 7 years and 60,000 miles, the model's at its middle car.
        double pastAge = model.middleCar().ageYears() - 7;
        double pastMiles = (model.middleCar().miles() - 60_000) / 10_000;
        double product = truths.effect("age_mileage_product");
        if (label.equals("age") || label.startsWith("age, ")) {
            double common = truths.effect("age_slope_reference") + 2 * truths.effect("age_curve") * pastAge + product * pastMiles;
            return OptionalDouble.of(common + ofLine(truths, "age_slope_departure_", label));
        }
        if (label.equals("mileage") || label.startsWith("mileage, ")) {
            double common = truths.effect("mileage_slope_reference") + 2 * truths.effect("mileage_curve") * pastMiles
                    + product * pastAge;
            return OptionalDouble.of(common + ofLine(truths, "mileage_slope_departure_", label));
        }
        if (label.equals("price includes: both")) {
            return OptionalDouble.of(truths.effect("includes_fees") + truths.effect("includes_tax"));
        }
        String name = label.replace("level of trade: ", "level_").replace("price includes: ", "includes_").replace(": ", "_")
                .replace(' ', '_');
        return truths.effects().containsKey(name) ? OptionalDouble.of(truths.effect(name)) : OptionalDouble.empty();
    }

    private static double ofLine(Truths truths, String prefix, String label) {
        int comma = label.indexOf(", ");
        return comma < 0 ? 0 : truths.effect(prefix + Line.named(label.substring(comma + 2)).vehicle());
    }

    private static void check(Coverage c, List<Double> effects95, List<Double> prices80, List<Double> prices95) {
        assertTrue(c.effects95 >= effects95.get(0) && c.effects95 <= effects95.get(1), c.toString());
        assertTrue(c.prices80 >= prices80.get(0) && c.prices80 <= prices80.get(1), c.toString());
        assertTrue(c.prices95 >= prices95.get(0) && c.prices95 <= prices95.get(1), c.toString());
    }

    @Test
    @Tag("full")
    void forty_worlds_hold_their_effects_and_prices_as_promised() {
        Coverage coverage = of(LongStream.range(100, 140));
        assertTrue(coverage.effects > 40 * 40, coverage.toString());
        check(coverage, List.of(90.0, 98.0), List.of(77.0, 84.0), List.of(93.0, 97.5));
    }

    @Test
    void six_worlds_hold_their_effects_and_prices_nearly_as_promised() {
        check(of(LongStream.range(100, 106)), List.of(88.0, 99.5), List.of(75.0, 86.0), List.of(92.0, 98.5));
    }
}
