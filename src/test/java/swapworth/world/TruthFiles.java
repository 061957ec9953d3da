package swapworth.world;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.List;
import swapworth.listing.LevelOfTrade;

/** What is true of the sample folder, as files for the test resources. */
final class TruthFiles {

    private static final String LOG_POINTS = "log points";

    private TruthFiles() {
    }

    /** Name, value and unit of each parameter, and the market month by month. */
    static String truths(SampleWorld world) {
        Truths truths = world.truths();
        List<List<String>> rows = new ArrayList<>();
        truths.effects().forEach((name, value) -> rows.add(switch (name) {
            case "median_age" -> List.of(name, decimal(value, 4), "years");
            case "median_mileage" -> List.of(name, decimal(value, 0), "miles");
            default -> List.of(name, decimal(value, 6), unit(name));
        }));
        rows.add(List.of("error_scale", decimal(truths.errorScale(Truths.REFERENCE_AGE), 4), LOG_POINTS + " at seven years"));
        for (int k = 0; k < truths.months(); k++) {
            rows.add(List.of("market_" + truths.month(k), decimal(truths.market(k), 6), LOG_POINTS));
        }
        for (int k = 0; k < truths.months(); k++) {
            rows.add(List.of("trend_" + truths.month(k), decimal(truths.trend(k), 6), LOG_POINTS));
        }
        rows.add(List.of("peak_month", truths.month(truths.peakMonth()).toString(), "month"));
        rows.add(List.of("drift_last_6_months", decimal(truths.drift(6), 6), LOG_POINTS + " a month"));
        rows.add(List.of("valued_on", world.lastEvening().toString(), "date"));
        return WorldFiles.csv(List.of("name", "value", "unit"), rows);
    }

    /** What was done to which line of the listings. */
    static String slips(SampleWorld world) {
        return WorldFiles.csv(List.of("line", "id", "slip", "truth"), world.slips().stream()
                .map(slip -> List.of(Integer.toString(slip.line()), slip.id(), slip.kind().words(), slip.truth()))
                .toList());
    }

    private static String unit(String name) {
        if (name.equals("age_mileage_product")) {
            return LOG_POINTS + " a year and 10000 miles";
        }
        if (name.startsWith("age_slope") || name.equals("error_growth")) {
            return LOG_POINTS + " a year";
        }
        if (name.equals("age_curve")) {
            return LOG_POINTS + " a year squared";
        }
        if (name.startsWith("mileage_slope")) {
            return LOG_POINTS + " for 10000 miles";
        }
        if (name.equals("mileage_curve")) {
            return LOG_POINTS + " for 10000 miles squared";
        }
        return name.startsWith("body_") ? "logarithm of dollars" : LOG_POINTS;
    }

    /** Each car of the world, then each car in play, with its true value on the last evening. */
    static String cars(SampleWorld world) {
        Truths truths = world.truths();
        List<List<String>> rows = new ArrayList<>();
        for (CarOfWorld car : world.cars()) {
            double value = truths.trueValue(car, LevelOfTrade.PRIVATE_ASKING, world.lastEvening());
            rows.add(List.of(car.name(), String.join(" ", car.ids()), "listed", car.line().vehicle(), decimal(car.error(), 4),
                    decimal(value / StrictMath.exp(car.error()), 0), decimal(value, 0), car.offeredOn().toString(),
                    Integer.toString(car.daysOnOffer()), car.fate() == CarOfWorld.Fate.SOLD ? "sold" : "kept"));
        }
        for (WorldFiles.InPlay car : world.carsInPlay()) {
            String value = decimal(truths.typicalValue(car.facts(), LevelOfTrade.PRIVATE_ASKING, world.lastEvening()), 0);
            rows.add(List.of(car.name(), "", car.role(), car.facts().vehicle(), "0", value, value, "", "", ""));
        }
        return WorldFiles.csv(List.of("car", "ids", "role", "vehicle", "own_error", "typical_value", "true_value", "offered_on",
                "days_on_offer", "fate"), rows);
    }

    private static String decimal(double value, int places) {
        return BigDecimal.valueOf(value).setScale(places, RoundingMode.HALF_EVEN).toPlainString();
    }

    static String source() {
        return """
                # The sample world's truths

                Source: made by this project's own generator, `swapworth.world.SampleWorld`, with seed %d and its usual
                settings. Nothing in it was observed: makers, models, regions, sellers and prices are invented.

                Licence: Apache-2.0, as the project.

                Made by: `mvn -q test-compile`, then
                `java -cp target/test-classes:target/classes swapworth.world.WriteSample .`
                That writes `sample-listings/` and this folder. A test asserts that the committed files are what the
                generator makes.

                - `truths.csv`: every parameter by name. Effects are natural logarithms of price ratios, against a car that is
                  clean, drives, is undamaged and sound, at private asking. `age_slope` and `mileage_slope` hold at the median
                  car (`median_age`, `median_mileage`), the `_reference` ones at 7 years and 60,000 miles. `market_` is the
                  level in the middle of a month, season included; `trend_` leaves the season out.
                - `slips.csv`: what was done to which line of `listings.csv`, and what would be true in its place.
                - `cars.csv`: each car with the ids of its advertisements, its own error, and its value on the last evening at
                  private asking: the median of such cars, and with its own error. For the cars of the sample's own `cars.csv`
                  the two are the same.
                """.formatted(WriteSample.SEED);
    }
}
