package swapworth.market;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.IntStream;
import swapworth.listing.Car;
import swapworth.listing.CarFacts;
import swapworth.listing.Condition;
import swapworth.listing.Days;
import swapworth.listing.LevelOfTrade;
import swapworth.listing.Mileage;
import swapworth.listing.MileageStatus;
import swapworth.listing.PriceIncludes;
import swapworth.listing.Runs;
import swapworth.listing.Title;
import swapworth.statistics.Bound;
import swapworth.statistics.Mixture;
import swapworth.statistics.Posterior;
import swapworth.statistics.Quantiles;

/** How price runs with mileage for the middle car of a line. */
final class MileageCurve {
    private static final int STEPS = 32;

    private final List<Car> cars;
    private final List<Evidence> evidence;
    private final Encoder encoder;
    private final EncodedRows encoded;
    private final Posterior posterior;

    MileageCurve(List<Car> cars, List<Evidence> evidence, Encoder encoder, EncodedRows encoded, Posterior posterior) {
        this.cars = cars;
        this.evidence = evidence;
        this.encoder = encoder;
        this.encoded = encoded;
        this.posterior = posterior;
    }

    /** The curve of a line that has evidence. */
    LineCurve of(String line) {
        int[] rows = IntStream.range(0, evidence.size())
                .filter(i -> evidence.get(i).subject().facts().vehicle().equals(line)).toArray();
        double age = Quantiles.of(IntStream.of(rows).mapToDouble(i -> encoder.measured(evidence.get(i).subject()).age()).toArray(), 0.5);
        double[] miles = steps(IntStream.of(rows).mapToDouble(i -> encoder.measured(evidence.get(i).subject()).miles()).toArray());
        double[][] curve = new double[3][miles.length];
        for (int k = 0; k < miles.length; k++) {
            Encoded row = encoder.encode(middleCar(line, age, miles[k]));
            Mixture m = posterior.predict(row.row(), row.inflation(), row.growth());
            curve[0][k] = Math.exp(m.quantile(0.1));
            curve[1][k] = Math.exp(m.quantile(0.5));
            curve[2][k] = Math.exp(m.quantile(0.9));
        }
        boolean allTroubled = IntStream.of(rows).allMatch(i -> evidence.get(i).subject().facts().isTroubled());
        return new LineCurve(line, "a car of " + age(rows, age) + ", clean title, driving, sound, private asking"
                + encoder.end().map(d -> ", on " + d).orElse("") + (allTroubled ? " (no such car is in the files)" : ""), miles, curve[1],
                curve[0], curve[2], points(line, rows, age));
    }

    /**
     * How old the middle car is. Without any date ages are counted to a day that only the model knows: there the model year says it, where
     * all cars state theirs.
     */
    private String age(int[] rows, double age) {
        if (encoder.end().isEmpty()) {
            double[] years = IntStream.of(rows).mapToObj(i -> evidence.get(i).subject().facts())
                    .filter(facts -> facts.firstRegistered().isEmpty() && facts.modelYear().isPresent())
                    .mapToDouble(facts -> facts.modelYear().getAsInt()).toArray();
            if (years.length == rows.length) {
                return "the model year " + Math.round(Quantiles.of(years, 0.5));
            }
        }
        return Math.round(age) == 1 ? "1 year" : Math.round(age) + " years";
    }

    /** Even steps from the least mileage seen to the largest. */
    private static double[] steps(double[] seen) {
        double least = Arrays.stream(seen).min().orElseThrow();
        double most = Arrays.stream(seen).max().orElseThrow();
        if (most - least < 1) {
            // One mileage alone has no curve: a tenth to either side shows how it runs there.
            least *= 0.9;
            most = 1.1 * most + 1;
        }
        double[] miles = new double[STEPS + 1];
        for (int k = 0; k <= STEPS; k++) {
            miles[k] = least + (most - least) * k / STEPS;
        }
        return miles;
    }

    /** The prices of some rows, each adjusted to the middle car of its own mileage. */
    private List<LineCurve.Point> points(String line, int[] rows, double age) {
        double[] mean = posterior.mean();
        List<LineCurve.Point> points = new ArrayList<>();
        for (int i : rows) {
            Evidence e = evidence.get(i);
            if (e.bound() == Bound.NONE) {
                double own = encoder.measured(e.subject()).miles();
                double toward = encoder.encode(middleCar(line, age, own)).row().dot(mean) - encoded.get(i).row().dot(mean);
                points.add(new LineCurve.Point(cars.get(e.car()).name(), own, e.listing().price().amount(),
                        Math.exp(e.logPrice() + toward), e.subject().facts().mileage().isPresent() ? LineCurve.OfMileage.STATED
                                : LineCurve.OfMileage.FILLED_IN));
            }
        }
        return points;
    }

    private Subject middleCar(String line, double age, double miles) {
        Optional<LocalDate> on = encoder.end();
        CarFacts.Builder facts = CarFacts.of(line).mileage(new Mileage(miles, MileageStatus.READ)).title(Title.CLEAN).runs(Runs.DRIVES)
                .damage(Set.of()).rust(Condition.SOUND).paint(Condition.SOUND).interior(Condition.SOUND).mechanical(Condition.SOUND)
                .records(Condition.SOUND);
        if (on.isPresent()) {
            facts.firstRegistered(on.get().minusDays(Math.round(age * Days.PER_YEAR)));
        } else {
            facts.ageYears(age);
        }
        return new Subject(facts.build(), LevelOfTrade.PRIVATE_ASKING, PriceIncludes.NEITHER, on);
    }
}
