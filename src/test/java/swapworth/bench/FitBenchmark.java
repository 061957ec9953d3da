package swapworth.bench;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.TimeUnit;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Fork;
import org.openjdk.jmh.annotations.Measurement;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.Setup;
import org.openjdk.jmh.annotations.State;
import org.openjdk.jmh.annotations.Warmup;
import org.openjdk.jmh.runner.RunnerException;
import swapworth.listing.Car;
import swapworth.listing.CarFacts;
import swapworth.listing.Listings;
import swapworth.market.PriceModel;

/**
 * Small fits with their hyperparameters integrated, and with the stretch of their ranges: sixty cars of the sample listings, once with
 * the terms that all their facts give, once with the twelve that line, trim, model year, mileage and seller give.
 */
@State(Scope.Benchmark)
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.MILLISECONDS)
@Warmup(iterations = 5, time = 1)
@Measurement(iterations = 5, time = 1)
@Fork(1)
public class FitBenchmark {
    private static final int CARS = 60;

    private List<Car> cars = new ArrayList<>();
    private List<Car> carsOfFewFacts = new ArrayList<>();

    /**
     * Takes sixty cars, evenly from all of them.
     *
     * @throws IOException if no file can be written
     */
    @Setup
    public void prepare() throws IOException {
        List<Car> all = Listings.read(JudgeBenchmark.SAMPLE).cars();
        cars = new ArrayList<>();
        for (int k = 0; k < CARS; k++) {
            cars.add(all.get(k * all.size() / CARS));
        }
        Path file = Files.createTempFile("few-facts", ".csv");
        Files.writeString(file, fewFacts());
        carsOfFewFacts = Listings.read(file).cars();
        Files.delete(file);
    }

    /** The cars without a date, so that there is no term of time; every other car of a trader, so that there is one of trade. */
    private String fewFacts() {
        StringBuilder rows = new StringBuilder("id,vehicle,trim,model_year,mileage_mi,price_usd,seller\n");
        for (int k = 0; k < CARS; k++) {
            CarFacts facts = cars.get(k).facts();
            rows.append(k).append(',').append(facts.vehicle()).append(',').append(facts.trim().orElse("")).append(',')
                    .append(facts.modelYear().isPresent() ? facts.modelYear().getAsInt() : "").append(',')
                    .append(facts.mileage().isPresent() ? Math.round(facts.mileage().get().miles()) : "").append(',')
                    .append(Math.round(cars.get(k).sightings().get(0).price().amount())).append(',')
                    .append(k % 2 == 0 ? "trade" : "private").append('\n');
        }
        return rows.toString();
    }

    /** Twelve terms: level, line, trim, age, mileage, their slopes by line, their curves, their product, model year, level of trade. */
    @Benchmark
    public PriceModel twelveTerms() {
        return PriceModel.fit(carsOfFewFacts);
    }

    /** Every term of the sample. */
    @Benchmark
    public PriceModel everyTerm() {
        return PriceModel.fit(cars);
    }

    /**
     * Runs them.
     *
     * @param patterns names of benchmarks to run; these without
     * @throws RunnerException if a benchmark fails
     */
    public static void main(String[] patterns) throws RunnerException {
        JudgeBenchmark.main(patterns.length == 0 ? new String[] {FitBenchmark.class.getName()} : patterns);
    }
}
