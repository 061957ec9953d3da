package swapworth.bench;

import java.io.IOException;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.TreeMap;
import java.util.concurrent.Callable;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import swapworth.assumptions.Assumption;
import swapworth.assumptions.Assumptions;
import swapworth.listing.Listings;
import swapworth.listing.ListingsRead;
import swapworth.market.PriceModel;
import swapworth.reading.OutputFile;

/**
 * How close the values of the price model come to real listings, and what its ranges hold, beside what a careful person gets
 * from a statistics package on the same cars.
 *
 * <p>For each line of a file and each number n of cars, random sets of n cars of that line alone are learned from, and up to
 * 200 other cars of the line predicted. A line takes part where at least 50 cars are left over. The draw of a set depends on the
 * seed, the line, n and the number of the set alone, and no figure on which thread comes first.
 */
public final class AccuracyBench {
    private static final int FEWEST_LEFT_OUT = 50;
    private static final int THREADS = 2;
    private static final String USAGE = """
            LISTINGS.csv [--with COLUMN,...] [--sets 100] [--sizes 12,25,60,150] [--seed 1] [--gross SHARE] [--out FILE.csv]
              --with     further columns, for the model and for the references with all columns
              --gross    then also with gross errors in this share of the training rows, for instance 0.15
              --assume   NAME=MIDDLE[,SPREAD], again for each assumption: another number in place of ours
              --from     prices below this one are no offers and left out (200)
              --complete only cars with both age and mileage
              --line     only this line; again for each""";

    private final PriceModel.Options options;
    private final int sets;
    private final List<Integer> sizes;
    private final long seed;
    private final double gross;

    /** A bench of a model with so many sets of each size; a share of gross errors of 0 leaves the second run out. */
    AccuracyBench(PriceModel.Options options, int sets, List<Integer> sizes, long seed, double gross) {
        this.options = options;
        this.sets = sets;
        this.sizes = List.copyOf(sizes);
        this.seed = seed;
        this.gross = gross;
    }

    /**
     * Measures and prints.
     *
     * @param words the listing file and options
     * @throws IOException if the figures cannot be written
     * @throws InterruptedException if the measuring is broken off
     */
    public static void main(String[] words) throws IOException, InterruptedException {
        PrintStream out = new PrintStream(System.out, true, StandardCharsets.UTF_8);
        Map<String, List<String>> given = new TreeMap<>();
        List<String> files = new ArrayList<>();
        for (int i = 0; i < words.length; i++) {
            if (words[i].equals("--complete")) {
                given.put(words[i], List.of());
            } else if (List.of("--with", "--sets", "--sizes", "--seed", "--gross", "--out", "--assume", "--from", "--line")
                    .contains(words[i]) && i + 1 < words.length) {
                given.computeIfAbsent(words[i], k -> new ArrayList<>()).add(words[++i]);
            } else if (words[i].startsWith("--")) {
                throw new IllegalArgumentException(words[i] + " is no option, or lacks its value; usage: " + USAGE);
            } else {
                files.add(words[i]);
            }
        }
        if (files.size() != 1) {
            throw new IllegalArgumentException("one listing file is needed; usage: " + USAGE);
        }
        List<String> further = list(last(given, "--with", "")).map(c -> c.toLowerCase(Locale.ROOT)).toList();
        Assumptions assumptions = Assumptions.defaults();
        for (String assume : given.getOrDefault("--assume", List.of())) {
            assumptions = assumptions.with(assumed(assumptions, assume));
        }
        ListingsRead read = Listings.read(Path.of(files.get(0)));
        BenchCar.Taken taken = BenchCar.take(read.cars(), further, Double.parseDouble(last(given, "--from", "200")),
                given.containsKey("--complete") ? BenchCar.Gaps.LEFT_OUT : BenchCar.Gaps.KEPT);
        List<String> lines = given.getOrDefault("--line", List.of());
        List<BenchCar> cars = taken.cars().stream()
                .filter(c -> lines.isEmpty() || lines.contains(c.car().facts().vehicle())).toList();
        for (String column : further) {
            long filled = cars.stream().filter(c -> c.cells().containsKey(column)).count();
            out.println(column + ": " + filled + " of " + cars.size() + " cars");
        }
        AccuracyBench bench = new AccuracyBench(PriceModel.options().with(assumptions)
                .withColumns(further.stream().filter(c -> !PriceModel.MEASURED_FACTS.contains(c)).toList()),
                Integer.parseInt(last(given, "--sets", "100")),
                list(last(given, "--sizes", "12,25,60,150")).map(Integer::valueOf).toList(),
                Long.parseLong(last(given, "--seed", "1")),
                Double.parseDouble(last(given, "--gross", "0")));
        out.println(read.counts().sentence());
        out.println(taken.note());
        out.println("seed " + bench.seed + ", " + bench.sets + " sets; changed assumptions: "
                + String.join(" ", given.getOrDefault("--assume", List.of("none"))) + "\n");
        long begin = System.nanoTime();
        Scores scores = bench.run(cars);
        if (scores.sets().isEmpty()) {
            throw new IllegalArgumentException("no line has enough cars: " + bench.sizes + " and "
                    + FEWEST_LEFT_OUT + " left over");
        }
        out.println(ScoreTables.averages(scores).text());
        out.println(ScoreTables.against(scores).text());
        out.println(ScoreTables.lines(scores).text());
        if (bench.gross > 0) {
            out.println(ScoreTables.gross(scores).text());
        }
        out.println(scores.sets().size() + " sets in " + Math.round((System.nanoTime() - begin) / 1e9) + " s");
        for (String file : given.getOrDefault("--out", List.of())) {
            OutputFile.write(Path.of(file), ScoreTables.all(scores).csv());
        }
    }

    private static String last(Map<String, List<String>> given, String option, String otherwise) {
        List<String> all = given.getOrDefault(option, List.of(otherwise));
        return all.get(all.size() - 1);
    }

    private static Stream<String> list(String text) {
        return Stream.of(text.split(",")).map(String::strip).filter(s -> !s.isEmpty());
    }

    /** {@code name=middle} or {@code name=middle,spread}. */
    private static Assumption assumed(Assumptions before, String text) {
        int sign = text.indexOf('=');
        if (sign < 0) {
            throw new IllegalArgumentException("--assume: '" + text + "' is not NAME=MIDDLE[,SPREAD]");
        }
        Assumption old = before.get(text.substring(0, sign));
        List<String> numbers = list(text.substring(sign + 1)).toList();
        return new Assumption(old.name(), old.question(), Double.parseDouble(numbers.get(0)),
                numbers.size() > 1 ? Double.parseDouble(numbers.get(1)) : old.spread(), old.unit(), "bench", old.note());
    }

    /** Draws and scores all sets of all lines with enough cars. */
    Scores run(List<BenchCar> cars) throws InterruptedException {
        Map<String, List<BenchCar>> byLine = cars.stream()
                .collect(Collectors.groupingBy(c -> c.car().facts().vehicle(), TreeMap::new, Collectors.toList()));
        List<Callable<Scores.OfSet>> tasks = new ArrayList<>();
        byLine.forEach((line, ofLine) -> {
            for (int size : sizes) {
                for (int number = 0; number < sets && ofLine.size() >= size + FEWEST_LEFT_OUT; number++) {
                    int draw = number;
                    tasks.add(() -> score(ofLine, size, draw));
                }
            }
        });
        ExecutorService threads = Executors.newFixedThreadPool(THREADS);
        try {
            List<Scores.OfSet> scored = new ArrayList<>();
            for (Future<Scores.OfSet> done : threads.invokeAll(tasks)) {
                scored.add(done.get());
            }
            return new Scores(List.copyOf(scored));
        } catch (ExecutionException e) {
            throw new IllegalStateException("a set could not be scored: " + e.getCause(), e);
        } finally {
            threads.shutdownNow();
        }
    }

    private Scores.OfSet score(List<BenchCar> ofLine, int size, int number) {
        TrainingSet set = TrainingSet.draw(ofLine, size, number, seed);
        double[][] clean = figures(set);
        return new Scores.OfSet(set.line(), size, number, clean,
                gross > 0 ? figures(set.withGrossErrors(gross)) : new double[0][]);
    }

    private double[][] figures(TrainingSet set) {
        double[] prices = set.leftOut().stream().mapToDouble(BenchCar::price).toArray();
        return Stream.of(Method.values()).map(m -> Figure.of(m.predict(options, set.training(), set.leftOut()), prices))
                .toArray(double[][]::new);
    }
}
