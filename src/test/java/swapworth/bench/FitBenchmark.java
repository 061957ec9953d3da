package swapworth.bench;

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
import swapworth.listing.Listings;
import swapworth.market.PriceModel;

/** A small fit with its hyperparameters integrated: sixty cars of the sample listings, with the terms that their rows give. */
@State(Scope.Benchmark)
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.MILLISECONDS)
@Warmup(iterations = 5, time = 1)
@Measurement(iterations = 5, time = 1)
@Fork(1)
public class FitBenchmark {
    private static final int CARS = 60;

    private List<Car> cars = new ArrayList<>();

    /** Takes sixty cars, evenly from all of them. */
    @Setup
    public void prepare() {
        List<Car> all = Listings.read(JudgeBenchmark.SAMPLE).cars();
        cars = new ArrayList<>();
        for (int k = 0; k < CARS; k++) {
            cars.add(all.get(k * all.size() / CARS));
        }
    }

    /** The cars into a model. */
    @Benchmark
    public PriceModel fit() {
        return PriceModel.fit(cars);
    }

    /**
     * Runs it.
     *
     * @param patterns names of benchmarks to run; this one without
     * @throws RunnerException if the benchmark fails
     */
    public static void main(String[] patterns) throws RunnerException {
        JudgeBenchmark.main(patterns.length == 0 ? new String[] {FitBenchmark.class.getName()} : patterns);
    }
}
