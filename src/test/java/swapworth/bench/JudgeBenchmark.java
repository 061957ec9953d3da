package swapworth.bench;

import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
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
import org.openjdk.jmh.runner.Runner;
import org.openjdk.jmh.runner.RunnerException;
import org.openjdk.jmh.runner.options.OptionsBuilder;
import swapworth.listing.Listings;
import swapworth.listing.ListingsRead;
import swapworth.market.Judgement;
import swapworth.market.PriceModel;

/** The three long steps of the main job on the sample listings: reading, fitting, judging every listing. */
@State(Scope.Benchmark)
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.MILLISECONDS)
@Warmup(iterations = 5, time = 1)
@Measurement(iterations = 5, time = 1)
@Fork(2)
public class JudgeBenchmark {
    static final Path SAMPLE = Path.of("sample-listings", "listings.csv");

    private ListingsRead sample;
    private PriceModel model;

    /** Reads and fits once, for the steps that begin behind it. */
    @Setup
    public void prepare() {
        sample = Listings.read(SAMPLE);
        model = PriceModel.fit(sample.cars());
    }

    /** The file into listings and cars. */
    @Benchmark
    public ListingsRead read() {
        return Listings.read(SAMPLE);
    }

    /** The cars into a model. */
    @Benchmark
    public PriceModel fit() {
        return PriceModel.fit(sample.cars());
    }

    /** Every listing, its own car left out. */
    @Benchmark
    public List<Judgement> judge() {
        return model.judgeAll(model.lastSeen(), Optional.empty());
    }

    /**
     * Runs the three.
     *
     * @param patterns names of benchmarks to run; all without
     * @throws RunnerException if a benchmark fails
     */
    public static void main(String[] patterns) throws RunnerException {
        OptionsBuilder options = new OptionsBuilder();
        for (String pattern : patterns.length == 0 ? new String[] {JudgeBenchmark.class.getName()} : patterns) {
            options.include(pattern);
        }
        new Runner(options.build()).run();
    }
}
