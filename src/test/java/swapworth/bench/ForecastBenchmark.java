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
import org.openjdk.jmh.annotations.State;
import org.openjdk.jmh.annotations.Warmup;
import org.openjdk.jmh.runner.RunnerException;
import swapworth.statistics.AmountLaw;
import swapworth.statistics.UncertainSum;

/** A million draws of a ledger of twenty estimates in four categories: beta, triangular and ln-normal laws in turn. */
@State(Scope.Benchmark)
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.MILLISECONDS)
@Warmup(iterations = 5, time = 1)
@Measurement(iterations = 5, time = 1)
@Fork(1)
public class ForecastBenchmark {
    private static final int DRAWS = 1_000_000;

    /** The laws and the draws of the sum alone, on all processors. */
    @Benchmark
    public double[] million() {
        List<UncertainSum.Line> lines = new ArrayList<>();
        for (int l = 0; l < 20; l++) {
            double likely = 200 + 37.0 * l;
            AmountLaw law = switch (l % 3) {
                case 0 -> AmountLaw.pert(0.8 * likely, likely, 1.7 * likely);
                case 1 -> AmountLaw.triangular(0.8 * likely, likely, 1.7 * likely);
                default -> AmountLaw.lognormal(likely, 0.25);
            };
            lines.add(new UncertainSum.Line(law, l % 4, 0.5, 1, 1, 0));
        }
        return UncertainSum.of(lines).totals(DRAWS, 1);
    }

    /**
     * Runs it.
     *
     * @param patterns names of benchmarks to run; this one without
     * @throws RunnerException if the benchmark fails
     */
    public static void main(String[] patterns) throws RunnerException {
        JudgeBenchmark.main(patterns.length == 0 ? new String[] {ForecastBenchmark.class.getName()} : patterns);
    }
}
