package swapworth.bench;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.SplittableRandom;
import java.util.TreeMap;
import java.util.function.Function;
import java.util.function.Supplier;
import java.util.stream.Collectors;

/**
 * Writes lots of invented cars that are unlike those on which assumptions were chosen, each a line of one file, to run
 * {@link AccuracyBench} on: nearly new cars and classics that rise with age, motorcycles and vans, tight dealers and wild private sellers,
 * heavy and skewed errors, holes in columns, lots without any slope. What makes their prices is drawn anew for each lot, widely.
 */
public final class WriteOddLots {
    private static final LocalDate LAST_DAY = LocalDate.of(2024, 6, 30);
    private static final List<String> FURTHER = List.of("output", "litres", "doors", "state", "box", "colour", "extras");

    private final SplittableRandom random;
    private final Map<String, Function<WriteOddLots, Supplier<Row>>> kinds = new LinkedHashMap<>();

    /** A car in the making. */
    private static final class Row {
        private double age;
        private double miles;
        private double logPrice;
        /** Prices are rounded to this. */
        private double rounding = 1;
        private int daysAgo;
        private final Map<String, String> cells = new TreeMap<>();

        Row with(String column, String cell) {
            cells.put(column, cell);
            return this;
        }

        Row plus(double log) {
            logPrice += log;
            return this;
        }
    }

    /** A plain line: level, slopes per year and per 10,000 miles, ages between two, miles a year. */
    private record Line(double level, double perYear, double perTenThousand, double youngest, double oldest, double milesPerYear) {
    }

    private WriteOddLots(long seed) {
        random = new SplittableRandom(seed);
        ages();
        errors();
        holes();
        terms();
        mixtures();
        days();
    }

    /**
     * Writes the file.
     *
     * @param arguments cars of a lot, lots of a kind, seed, file; then names of kinds, or none for all
     * @throws IOException if it cannot be written
     */
    public static void main(String[] arguments) throws IOException {
        new WriteOddLots(Long.parseLong(arguments[2])).write(Integer.parseInt(arguments[0]), Integer.parseInt(arguments[1]),
                Path.of(arguments[3]), List.of(arguments).subList(4, arguments.length));
    }

    private void write(int cars, int lots, Path file, List<String> only) throws IOException {
        List<String> columns = new ArrayList<>(List.of("id", "seen_on", "vehicle", "trim", "model_year", "mileage_mi", "price_usd",
                "price_kind", "seller", "region", "title"));
        columns.addAll(FURTHER);
        List<String> out = new ArrayList<>(List.of(String.join(",", columns)));
        kinds.forEach((kind, maker) -> {
            for (int lot = 1; lot <= lots; lot++) {
                Supplier<Row> line = maker.apply(this);
                for (int car = 0; car < cars; car++) {
                    Row row = line.get();
                    LocalDate day = LAST_DAY.minusDays(row.daysAgo);
                    LocalDate born = day.minusDays(Math.round(row.age * 365.25));
                    row.with("id", kind + lot + "-" + car).with("vehicle", kind + " " + lot)
                            .with("model_year", Integer.toString(born.getYear()))
                            .with("price_usd", Long.toString(Math.round(Math.max(1, Math.rint(Math.exp(row.logPrice) / row.rounding))
                                    * row.rounding)));
                    row.cells.putIfAbsent("seen_on", day.toString());
                    row.cells.putIfAbsent("mileage_mi", Long.toString(Math.round(row.miles)));
                    row.cells.putIfAbsent("price_kind", "asking");
                    if (only.isEmpty() || only.contains(kind)) {
                        out.add(columns.stream().map(c -> row.cells.getOrDefault(c, "")).collect(Collectors.joining(",")));
                    }
                }
            }
        });
        Files.write(file, out, StandardCharsets.UTF_8);
    }

    private double between(double low, double high) {
        return low + (high - low) * random.nextDouble();
    }

    private boolean happens(double chance) {
        return random.nextDouble() < chance;
    }

    private double normal(double spread) {
        return spread * random.nextGaussian();
    }

    private double student(int degrees, double scale) {
        double squares = 0;
        for (int i = 0; i < degrees; i++) {
            squares += Math.pow(random.nextGaussian(), 2);
        }
        return normal(scale) / Math.sqrt(squares / degrees);
    }

    private String oneOf(String... words) {
        return words[random.nextInt(words.length)];
    }

    /** A line about a price, with slopes near a middle and ages between two. */
    private Line line(double price, double perYear, double perTenThousand, double youngest, double oldest, double milesPerYear) {
        return new Line(Math.log(price * between(0.7, 1.4)), perYear * between(0.5, 1.5), perTenThousand * between(0.5, 1.5), youngest,
                oldest, milesPerYear);
    }

    private Line usual() {
        return line(9000, -0.09, -0.04, 1, 18, 11_000);
    }

    private Row car(Line line) {
        Row row = new Row();
        row.age = between(line.youngest, line.oldest);
        row.miles = Math.max(50, (row.age + 0.4) * line.milesPerYear * Math.exp(normal(0.4)));
        row.logPrice = line.level + line.perYear * (row.age - (line.youngest + line.oldest) / 2)
                + line.perTenThousand * (row.miles - line.milesPerYear * (line.youngest + line.oldest) / 2) / 10_000;
        row.rounding = 50;
        row.daysAgo = random.nextInt(60);
        return row;
    }

    /** Steps of so many words about 0. */
    private Map<String, Double> steps(String stem, int words, double spread) {
        Map<String, Double> steps = new LinkedHashMap<>();
        for (int w = 0; w < words; w++) {
            steps.put(stem + (char) ('a' + w), normal(spread));
        }
        return steps;
    }

    /** One of the words, the first ones most often. */
    private String rare(Map<String, Double> steps) {
        List<String> words = List.copyOf(steps.keySet());
        return words.get((int) (words.size() * Math.pow(random.nextDouble(), 2.5)));
    }

    /** How price runs with age and distance. */
    private void ages() {
        kinds.put("nearly new", w -> {
            Line line = w.line(32_000, -0.14, -0.03, 0.1, 3, 11_000);
            double scatter = w.between(0.04, 0.08);
            return () -> w.car(line).plus(w.normal(scatter));
        });
        kinds.put("falling fast at first", w -> {
            Line line = w.line(14_000, -0.03, -0.03, 0, 20, 11_000);
            double fall = w.between(0.8, 1.6);
            double scatter = w.between(0.1, 0.2);
            return () -> {
                Row row = w.car(line);
                return row.plus(fall * Math.exp(-row.age / 4) + w.normal(scatter));
            };
        });
        kinds.put("classics rising", w -> {
            Line line = w.line(18_000, 0, -0.03, 12, 65, 2500);
            double turn = w.between(20, 35);
            double bend = w.between(0.0005, 0.0012);
            double scatter = w.between(0.25, 0.4);
            return () -> {
                Row row = w.car(line);
                return row.plus(bend * Math.pow(row.age - turn, 2) - 0.4 + w.student(4, scatter));
            };
        });
        kinds.put("rising straight", w -> {
            Line line = w.line(25_000, 0.03, -0.05, 20, 55, 2000);
            double scatter = w.between(0.2, 0.35);
            return () -> w.car(line).plus(w.normal(scatter));
        });
        kinds.put("motorcycles", w -> {
            Line line = w.line(5000, -0.06, -0.14, 0.5, 25, 2800);
            double scatter = w.between(0.15, 0.3);
            return () -> w.car(line).plus(w.normal(scatter));
        });
        kinds.put("vans of many miles", w -> {
            Line line = w.line(11_000, -0.07, -0.03, 1, 15, 26_000);
            Map<String, Double> lengths = w.steps("length ", 4, 0.2);
            double scatter = w.between(0.15, 0.25);
            return () -> {
                String length = w.rare(lengths);
                return w.car(line).with("trim", length).plus(lengths.get(length) + w.normal(scatter));
            };
        });
        kinds.put("dear and rare", w -> {
            Line line = w.line(140_000, -0.04, -0.15, 0.5, 25, 2500);
            double scatter = w.between(0.1, 0.2);
            return () -> {
                Row row = w.car(line).plus(w.normal(scatter));
                row.rounding = 500;
                return row;
            };
        });
        kinds.put("two generations", w -> {
            Line line = w.usual();
            double step = w.between(0.25, 0.6);
            double turn = w.between(5, 11);
            double scatter = w.between(0.1, 0.2);
            return () -> {
                Row row = w.car(line);
                return row.plus((row.age < turn ? step : 0) + w.normal(scatter));
            };
        });
        kinds.put("miles by age alone", w -> {
            Line line = w.usual();
            double scatter = w.between(0.12, 0.25);
            return () -> {
                Row row = w.car(line);
                row.miles = 11_000 * row.age * (1 + w.normal(0.02)) + 300;
                row.logPrice = line.level + line.perYear * (row.age - 9) + line.perTenThousand * (row.miles - 100_000) / 10_000;
                return row.plus(w.normal(scatter));
            };
        });
    }

    /** How far single prices are off. */
    private void errors() {
        kinds.put("cheap and rounded to 500", w -> {
            Line line = w.line(2500, -0.08, -0.03, 8, 22, 10_000);
            double scatter = w.between(0.3, 0.45);
            return () -> {
                Row row = w.car(line).plus(w.normal(scatter));
                row.rounding = 500;
                return row;
            };
        });
        kinds.put("prices in millions", w -> {
            Line line = w.line(1_400_000, -0.09, -0.05, 1, 16, 8000);
            double scatter = w.between(0.12, 0.22);
            return () -> {
                Row row = w.car(line).plus(w.normal(scatter));
                row.rounding = 10_000;
                return row;
            };
        });
        kinds.put("dealers", w -> {
            Line line = w.line(17_000, -0.08, -0.035, 1, 7, 12_000);
            Map<String, Double> trims = w.steps("fit ", 4, 0.08);
            double scatter = w.between(0.03, 0.05);
            return () -> {
                String trim = w.rare(trims);
                return w.car(line).with("seller", "trade").with("trim", trim).plus(trims.get(trim) + w.normal(scatter));
            };
        });
        kinds.put("wild private", w -> {
            Line line = w.usual();
            double scatter = w.between(0.5, 0.7);
            return () -> w.car(line).with("seller", "private").plus(w.normal(scatter));
        });
        kinds.put("heavy tails", w -> {
            Line line = w.usual();
            double scatter = w.between(0.1, 0.18);
            return () -> w.car(line).plus(w.student(2, scatter));
        });
        kinds.put("hidden faults", w -> {
            Line line = w.usual();
            double fault = w.between(0.25, 0.4);
            return () -> w.car(line).plus(fault + w.normal(0.1) + fault * Math.log(1 - w.random.nextDouble()));
        });
        kinds.put("dreamers", w -> {
            Line line = w.usual();
            double dream = w.between(0.25, 0.4);
            return () -> w.car(line).plus(w.normal(0.1) - dream - dream * Math.log(1 - w.random.nextDouble()));
        });
        kinds.put("old ones scatter", w -> {
            Line line = w.line(9000, -0.09, -0.04, 0.5, 22, 11_000);
            double growth = w.between(0.02, 0.035);
            return () -> {
                Row row = w.car(line);
                return row.plus(w.normal(0.04 + growth * row.age));
            };
        });
    }

    /** What rows leave open, or say wrongly. */
    private void holes() {
        kinds.put("mileage mostly missing", w -> {
            Line line = w.usual();
            double scatter = w.between(0.15, 0.25);
            return () -> {
                Row row = w.car(line).plus(w.normal(scatter));
                return w.happens(0.75) ? row.with("mileage_mi", "") : row;
            };
        });
        kinds.put("mileage rounded and some 999999", w -> {
            Line line = w.usual();
            double scatter = w.between(0.15, 0.25);
            return () -> {
                Row row = w.car(line).plus(w.normal(scatter));
                return row.with("mileage_mi", w.happens(0.03) ? "999999" : Long.toString(10_000 * Math.round(row.miles / 10_000)));
            };
        });
        kinds.put("mileage of anything", w -> {
            Line line = w.line(9000, -0.13, 0, 1, 18, 11_000);
            double scatter = w.between(0.15, 0.25);
            return () -> w.car(line).plus(w.normal(scatter)).with("mileage_mi", Long.toString(w.random.nextInt(250_000)));
        });
    }

    /** Further columns and trims. */
    private void terms() {
        kinds.put("many trims", w -> {
            Line line = w.usual();
            Map<String, Double> trims = w.steps("trim ", 12, 0.25);
            double scatter = w.between(0.1, 0.2);
            return () -> {
                String trim = w.rare(trims);
                return w.car(line).with("trim", trim).plus(trims.get(trim) + w.normal(scatter));
            };
        });
        kinds.put("numbers that count", w -> {
            Line line = w.usual();
            double output = w.between(0.15, 0.4);
            double litres = w.between(-0.15, 0.15);
            double scatter = w.between(0.1, 0.2);
            return () -> {
                double z = w.normal(1);
                double size = Math.rint(10 * (2 + 0.3 * z + w.normal(0.2))) / 10;
                return w.car(line).with("output", Long.toString(Math.round(110 * Math.exp(0.25 * z)))).with("litres", Double.toString(size))
                        .with("doors", w.oneOf("3", "5")).plus(output * z + litres * (size - 2) / 0.36 + w.normal(scatter));
            };
        });
        kinds.put("words that count", w -> {
            Line line = w.usual();
            List<String> states = List.of("poor", "fair", "good", "superb");
            double state = w.between(0.15, 0.35);
            double box = w.between(0.05, 0.25);
            double scatter = w.between(0.1, 0.2);
            return () -> {
                int s = w.random.nextInt(4);
                boolean self = w.happens(0.4);
                return w.car(line).with("state", states.get(s)).with("box", self ? "self-shifting" : "by hand")
                        .with("colour", w.oneOf("red", "blue", "grey", "white", "black", "green"))
                        .plus(state * (s - 1.5) + (self ? box : 0) + w.normal(scatter));
            };
        });
        kinds.put("columns of nothing", w -> {
            Line line = w.usual();
            double scatter = w.between(0.15, 0.25);
            return () -> w.car(line).with("output", Integer.toString(60 + w.random.nextInt(120)))
                    .with("litres", w.oneOf("1.4", "1.8", "2.2")).with("doors", w.oneOf("3", "5"))
                    .with("state", w.oneOf("fair", "good", "superb")).with("box", w.oneOf("by hand", "other"))
                    .with("colour", w.oneOf("red", "blue", "grey", "white", "black", "green", "gold", "brown"))
                    .with("extras", w.oneOf("none", "some", "all")).plus(w.normal(scatter));
        });
    }

    /** Cars that are not of one piece. */
    private void mixtures() {
        kinds.put("kits and whole cars", w -> {
            Line line = w.line(16_000, -0.03, -0.05, 2, 25, 2500);
            double kit = w.between(0.7, 1.3);
            double scatter = w.between(0.15, 0.25);
            return () -> w.car(line).plus((w.happens(0.3) ? -kit : 0) + w.normal(scatter));
        });
        kinds.put("wrecks", w -> {
            Line line = w.line(1500, 0, 0, 3, 25, 11_000);
            double scatter = w.between(0.5, 0.8);
            return () -> w.car(line).plus(w.normal(scatter));
        });
        kinds.put("mixed lot", w -> {
            Line line = w.line(7000, 0, 0, 1, 25, 11_000);
            double apart = w.between(0.6, 1);
            return () -> w.car(line).plus((w.happens(0.5) ? apart : -apart) + w.normal(0.35));
        });
        kinds.put("kinds of price", w -> {
            Line line = w.usual();
            double sold = w.between(-0.12, 0);
            double auction = w.between(-0.4, -0.05);
            double trade = w.between(0, 0.15);
            double scatter = w.between(0.12, 0.22);
            return () -> {
                int kind = w.random.nextInt(4);
                return w.car(line).with("price_kind", kind == 0 || kind == 3 ? "sold" : "asking")
                        .with("seller", kind == 0 ? "auction" : kind == 1 ? "trade" : "private")
                        .plus((kind == 0 ? auction : kind == 1 ? trade : kind == 3 ? sold : 0) + w.normal(scatter));
            };
        });
        kinds.put("branded titles", w -> {
            Line line = w.usual();
            double branded = w.between(-0.7, -0.2);
            double scatter = w.between(0.12, 0.22);
            double times = w.between(1, 2);
            return () -> {
                boolean bad = w.happens(0.3);
                return w.car(line).with("title", bad ? "salvage" : "clean").plus(bad ? branded + w.normal(times * scatter)
                        : w.normal(scatter));
            };
        });
    }

    /** The market over the days seen. */
    private void days() {
        kinds.put("two years of trend", w -> {
            Line line = w.usual();
            double drift = w.between(-0.025, 0.025);
            double scatter = w.between(0.12, 0.22);
            return () -> {
                Row row = w.car(line);
                row.daysAgo = w.random.nextInt(720);
                return row.plus(-drift * row.daysAgo / 30.4 + w.normal(scatter));
            };
        });
        kinds.put("one day", w -> {
            Line line = w.usual();
            double scatter = w.between(0.12, 0.22);
            return () -> {
                Row row = w.car(line).plus(w.normal(scatter));
                row.daysAgo = 0;
                return row;
            };
        });
        kinds.put("regions", w -> {
            Line line = w.usual();
            Map<String, Double> regions = w.steps("vale ", 8, 0.1);
            double scatter = w.between(0.12, 0.22);
            return () -> {
                String region = w.rare(regions);
                return w.car(line).with("region", region).plus(regions.get(region) + w.normal(scatter));
            };
        });
    }
}
