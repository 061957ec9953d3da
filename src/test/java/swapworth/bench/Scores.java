package swapworth.bench;

import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.function.ToDoubleFunction;
import java.util.stream.Stream;

/**
 * The figures of all sets, and their means with standard errors.
 *
 * @param sets one entry a line, size and draw
 */
record Scores(List<OfSet> sets) {

    /**
     * The figures of one set.
     *
     * @param line the line
     * @param size cars to learn from
     * @param number number of the draw
     * @param clean by ordinal of method and of figure
     * @param gross the same after gross errors; empty without
     */
    record OfSet(String line, int size, int number, double[][] clean, double[][] gross) {

        double of(Method method, Figure figure) {
            return clean[method.ordinal()][figure.ordinal()];
        }

        double afterErrors(Method method, Figure figure) {
            return gross[method.ordinal()][figure.ordinal()];
        }

        double ratio(Figure figure, Method above, Method below) {
            return of(above, figure) / of(below, figure);
        }

        double growth(Figure figure, Method method) {
            return afterErrors(method, figure) / of(method, figure);
        }
    }

    /**
     * A mean and its standard error over sets.
     *
     * @param mean not a number without sets
     * @param error not a number with fewer than two
     */
    record Mean(double mean, double error) {
    }

    List<String> lines(int size) {
        return sets.stream().filter(s -> s.size == size).map(OfSet::line).distinct().sorted().toList();
    }

    List<Integer> sizes() {
        return sets.stream().map(OfSet::size).distinct().sorted().toList();
    }

    Stream<OfSet> of(String line, int size) {
        return sets.stream().filter(s -> s.size == size && s.line.equals(line));
    }

    /** Over the sets of a line; sets without the figure are passed over. */
    Mean ofLine(String line, int size, ToDoubleFunction<OfSet> figure) {
        double[] all = of(line, size).mapToDouble(figure).filter(v -> !Double.isNaN(v)).toArray();
        double mean = Arrays.stream(all).average().orElse(Double.NaN);
        double squares = Arrays.stream(all).map(v -> (v - mean) * (v - mean)).sum();
        return new Mean(mean, Math.sqrt(squares / (all.length - 1.0) / all.length));
    }

    /** The mean over lines of the means over sets, with its standard error over sets: the lines are taken as they are. */
    Mean overLines(int size, ToDoubleFunction<OfSet> figure) {
        List<Mean> each = lines(size).stream().map(line -> ofLine(line, size, figure))
                .filter(m -> !Double.isNaN(m.mean)).toList();
        double mean = each.stream().mapToDouble(Mean::mean).average().orElse(Double.NaN);
        double variance = each.stream().mapToDouble(m -> m.error * m.error).sum();
        return new Mean(mean, Math.sqrt(variance) / each.size());
    }

    /** The reference with the smallest figure at a size, on average over lines. */
    Method strongest(int size, Figure figure) {
        return Stream.of(Method.values()).filter(m -> m != Method.OURS)
                .min(Comparator.comparingDouble(m -> overLines(size, s -> s.of(m, figure)).mean)).orElseThrow();
    }
}
