package swapworth.project;

import static java.util.Objects.requireNonNull;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collection;
import java.util.Comparator;
import java.util.Currency;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import swapworth.assumptions.Assumption;
import swapworth.assumptions.Assumptions;
import swapworth.market.Range;
import swapworth.project.Alternative.Item;
import swapworth.project.Alternative.Kind;
import swapworth.reading.RowsRead;
import swapworth.reading.Spelling;
import swapworth.reading.UnusableFileException;
import swapworth.statistics.AmountLaw;
import swapworth.statistics.Quantiles;
import swapworth.statistics.RandomNumbers;
import swapworth.statistics.UncertainSum;
import swapworth.table.Cell;
import swapworth.table.Column;
import swapworth.table.Table;

/**
 * Ways to get a car, held against each other at one day with the same end in view: a file {@code alternatives.csv} has one row for each
 * item of each way, with {@code alternative, item, amount} and, where known, {@code kind} (cost, payment, parts sold, owned, owed, loan,
 * resale), {@code month} and {@code until} (months from now), {@code low, likely, high, chance, hours, car}.
 *
 * <p>All amounts are carried to the horizon with the cost of money. Draw i of every way is one state of the world: an item of the same
 * name,
 * amounts and kind in two ways is drawn once, and the value of a car in play comes with the draws of the market (at a resale in a later
 * month older by what such cars lose with each year). So the chance that one
 * way beats another is not read off two ranges.
 */
public final class Alternatives {
    private final String currency;
    private final int horizon;
    private final List<Alternative> all;
    private final Map<String, List<Integer>> notCounted;
    private final RowsRead read;

    private Alternatives(String currency, int horizon, List<Alternative> all, Map<String, List<Integer>> notCounted, RowsRead read) {
        this.currency = currency;
        this.horizon = horizon;
        this.all = all;
        this.notCounted = notCounted;
        this.read = read;
    }

    /**
     * Reads a file, with no draws of cars.
     *
     * @param file the file
     * @return its alternatives
     * @throws UnusableFileException if the file as a whole cannot be used
     */
    public static Alternatives read(Path file) {
        return withDefaults().read(file);
    }

    /**
     * The ways to read alternatives.
     *
     * @return 10,000 draws, seed 1, the assumptions of the program, no cars
     */
    public static Options withDefaults() {
        return new Options(10_000, 1, Assumptions.defaults(), Map.of(), Map.of(), Optional.empty());
    }

    /**
     * How alternatives are read and drawn.
     *
     * @param count the number of draws
     * @param seed their seed
     * @param assumptions what stands in where rows do not speak
     * @param cars draws of the values of cars in play by their names
     * @param ageing draws of the logarithm of what a year takes off them by their names; where there are none the assumption
     *     {@code age_slope} tells it
     * @param baseCurrency the currency of all figures, and of amounts that state none; unless stated that of the conventions
     */
    public record Options(int count, long seed, Assumptions assumptions, Map<String, double[]> cars, Map<String, double[]> ageing,
            Optional<Currency> baseCurrency) {

        /** Copies the cars in and checks their draws. */
        public Options {
            requireNonNull(assumptions, "assumptions");
            requireNonNull(baseCurrency, "baseCurrency");
            cars = DrawFigures.copied(cars);
            ageing = DrawFigures.copied(ageing);
            for (Map<String, double[]> draws : List.of(cars, ageing)) {
                for (Map.Entry<String, double[]> car : draws.entrySet()) {
                    if (car.getValue().length != count) {
                        throw new IllegalArgumentException(car.getKey() + ": " + car.getValue().length + " draws beside " + count);
                    }
                }
            }
        }

        @Override
        public Map<String, double[]> cars() {
            return DrawFigures.copied(cars);
        }

        @Override
        public Map<String, double[]> ageing() {
            return DrawFigures.copied(ageing);
        }

        /** The name of a car that there are draws of, however it is written; empty where there are none. */
        Optional<String> known(String car) {
            return cars.keySet().stream().filter(name -> Spelling.name(name).equals(Spelling.name(car))).findFirst();
        }

        /**
         * The same by other assumptions.
         *
         * @param own the assumptions
         * @return a copy
         */
        public Options with(Assumptions own) {
            return new Options(count, seed, own, cars, ageing, baseCurrency);
        }

        /**
         * The same with the values of cars in play.
         *
         * @param draws draws by the name of the car, in the currency of the undertaking, all as many and joint
         * @param of the seed for everything else
         * @return a copy, without what cars lose as they grow older: its draws may be of another number
         */
        public Options withCars(Map<String, double[]> draws, long of) {
            int many = draws.values().stream().findFirst().map(d -> d.length).orElse(count);
            return new Options(many, of, assumptions, draws, Map.of(), baseCurrency);
        }

        /**
         * The same with what cars in play lose as they grow older.
         *
         * @param logsAYear draws of the logarithm of what a year takes off, by the name of the car: as many as of the values
         * @return a copy
         * @throws IllegalArgumentException if there are more or fewer draws of a car
         */
        public Options withAgeing(Map<String, double[]> logsAYear) {
            return new Options(count, seed, assumptions, cars, logsAYear, baseCurrency);
        }

        /**
         * The same, in the currency of the cars' values.
         *
         * @param currency the base currency
         * @return a copy
         */
        public Options in(Currency currency) {
            return new Options(count, seed, assumptions, cars, ageing, Optional.of(currency));
        }

        /**
         * Reads a file.
         *
         * @param file the file
         * @return its alternatives
         * @throws UnusableFileException if the file as a whole cannot be used
         */
        public Alternatives read(Path file) {
            AlternativesReader reader = new AlternativesReader(file, this);
            Map<String, List<Item>> items = reader.read();
            int horizon = (int) Math.round(assumptions.get("horizon").middle());
            List<Alternative> all = new ArrayList<>();
            Drawing drawing = new Drawing(this, horizon, items);
            items.forEach((name, own) -> all.add(drawing.of(name, own, reader.notCounted().getOrDefault(name, List.of()))));
            return new Alternatives(reader.currency(), horizon, List.copyOf(all), reader.notCounted(), reader.rowsRead());
        }
    }

    /** Draws items, each once. */
    private static final class Drawing {
        /** Money that costs less than this takes nearly all back. */
        private static final double LEAST_RATE = -0.99;

        private final Options options;
        private final int horizon;
        private final double[] monthly;
        private final Map<String, double[]> drawn = new HashMap<>();
        private final Map<String, String> streams = new HashMap<>();

        Drawing(Options options, int horizon, Map<String, List<Item>> items) {
            this.options = options;
            streams(items);
            this.horizon = horizon;
            monthly = DrawFigures.costOfMoney(options.assumptions(), options.count(), options.seed());
            for (int i = 0; i < monthly.length; i++) {
                monthly[i] = StrictMath.log1p(Math.max(LEAST_RATE, monthly[i] / 100)) / 12;
            }
        }

        Alternative of(String name, List<Item> items, List<Integer> notCounted) {
            int count = options.count();
            double[] net = new double[count];
            double[] resale = new double[count];
            double hours = 0;
            for (Item item : items) {
                hours += item.hours();
            }
            double[][] cash = new double[horizon + 1][count];
            // The second item of one kind within a way is another thing than the first: it may happen or not by itself.
            Map<String, Integer> before = new HashMap<>();
            for (Item item : items) {
                double[] amounts = amounts(item, before.merge(key(item), 1, Integer::sum));
                double sign = item.kind().comesIn() ? -1 : 1;
                for (int month = item.month(); month <= Math.min(horizon, item.until()); month++) {
                    for (int i = 0; i < count; i++) {
                        double carried = sign * amounts[i] * StrictMath.exp(monthly[i] * (horizon - month));
                        net[i] += carried;
                        resale[i] -= item.kind() == Kind.RESALE ? carried : 0;
                        cash[month][i] += item.kind().isCash() ? sign * amounts[i] : 0;
                    }
                }
            }
            double[] toFind = new double[count];
            for (int i = 0; i < count; i++) {
                double standing = 0;
                for (double[] month : cash) {
                    standing += month[i];
                    toFind[i] = Math.max(toFind[i], standing);
                }
            }
            return new Alternative(name, net, toFind, resale, hours, items, notCounted);
        }

        private double[] amounts(Item item, int place) {
            String another = place == 1 ? "" : "\n" + place;
            return drawn.computeIfAbsent(key(item) + another,
                    k -> draw(item, RandomNumbers.seed(options.seed(), streams.get(key(item)) + another)));
        }

        /**
         * What each thing is drawn by: what it is called and not how much it is or how likely, so that a changed amount moves no other
         * number; things of one name that are not the same by the first of the ways that hold them, whatever order the rows come in.
         */
        private void streams(Map<String, List<Item>> items) {
            Map<String, Map<String, String>> ofName = new HashMap<>();
            items.forEach((way, own) -> own.forEach(item -> ofName.computeIfAbsent(name(item), n -> new HashMap<>())
                    .merge(key(item), Spelling.name(way), (a, b) -> a.compareTo(b) <= 0 ? a : b)));
            ofName.forEach((name, firstWay) -> {
                List<String> things = firstWay.entrySet().stream().sorted(Map.Entry.<String, String>comparingByValue()
                        .thenComparing(Map.Entry.comparingByKey())).map(Map.Entry::getKey).toList();
                things.forEach(thing -> streams.put(thing, name + "\n" + things.indexOf(thing)));
            });
        }

        private static String name(Item item) {
            return Spelling.name(item.name()) + "\n" + item.kind() + "\n" + item.car() + "\n" + (item.car().isEmpty() ? 0 : item.month());
        }

        /** What makes two items one thing, in whatever case and spacing it is written. */
        private static String key(Item item) {
            return name(item) + "\n" + item.likely() + "\n" + item.ends() + "\n" + item.chance();
        }

        private double[] draw(Item item, long seed) {
            double[] normals = UncertainSum.normals(options.count(), seed);
            double[] amounts;
            if (options.cars.containsKey(item.car())) {
                double years = item.kind() == Kind.RESALE ? item.month() / 12.0 : 0;
                amounts = options.cars.get(item.car()).clone();
                double[] told = options.ageing.getOrDefault(item.car(), new double[0]);
                double assumed = options.assumptions().logMiddle("age_slope");
                for (int i = 0; i < amounts.length; i++) {
                    amounts[i] *= StrictMath.exp(years * (told.length > 0 ? told[i] : assumed));
                }
            } else if (item.ends().isPresent()) {
                amounts = AmountLaw.pert(item.ends().get().low(), item.likely(), item.ends().get().high()).draws(normals);
            } else {
                Assumption off = options.assumptions().get("alternative_estimate");
                boolean fixed = item.kind() == Kind.PAYMENT || item.kind() == Kind.OWED || item.kind() == Kind.LOAN || item.likely() <= 0;
                amounts = fixed ? AmountLaw.exactly(item.likely()).draws(normals)
                        : Forecast.guess(item.likely(), off).draws(normals);
            }
            if (item.chance() < 1) {
                double[] happens = UncertainSum.of(List.of(new UncertainSum.Line(AmountLaw.exactly(1), 0, 0, 1, item.chance(), 0)))
                        .totals(options.count(), ~seed);
                for (int i = 0; i < amounts.length; i++) {
                    amounts[i] *= happens[i];
                }
            }
            return amounts;
        }
    }

    /**
     * The alternatives.
     *
     * @return in the order in which the file names them first
     */
    public List<Alternative> all() {
        return all;
    }

    /**
     * What became of every row.
     *
     * @return counts and problems
     */
    public RowsRead rowsRead() {
        return read;
    }

    /**
     * The base currency.
     *
     * @return its code
     */
    public String currency() {
        return currency;
    }

    /**
     * The month at which alternatives are held against each other.
     *
     * @return months from now
     */
    public int horizon() {
        return horizon;
    }

    /**
     * The chance that one alternative costs less than another.
     *
     * @param one the one
     * @param other the other
     * @return the share of draws
     */
    public static double chanceCheaper(Alternative one, Alternative other) {
        return DrawFigures.chance(DrawFigures.minus(other.netCost(), one.netCost()));
    }

    /**
     * Which way costs least, and by how much the next one is dearer; ways of which not all rows are counted are not held against others.
     *
     * @return a sentence; empty where fewer than two can be compared
     */
    public String sentence() {
        List<Alternative> whole = all.stream().filter(Alternative::whole)
                .sorted(Comparator.comparingDouble((Alternative one) -> Quantiles.median(one.netCost()))).toList();
        if (whole.size() < 2) {
            return "";
        }
        Alternative least = whole.get(0);
        Alternative next = whole.get(1);
        return "Of " + whole.size() + " ways '" + least.name() + "' costs least over " + horizon + " months: net " + currency + " "
                + DrawFigures.withRange(least.netCost()) + ", own hours not in it; next '" + next.name() + "' with "
                + DrawFigures.withRange(next.netCost()) + ", which is dearer with a chance of "
                + Cell.chanceInWords(chanceCheaper(least, next)) + ".";
    }

    /**
     * The alternatives side by side, and the chance that each beats each other. One of which a row cannot be counted is marked, and not
     * held against others.
     *
     * @return two tables
     */
    public List<Table> tables() {
        Table.Builder side = Table.titled("Alternatives, " + currency + ", held against each other after " + horizon + " months")
                .columns(Column.words("alternative"), Column.number("net cost", currency), Column.number("80 % from", currency),
                        Column.number("80 % to", currency), Column.number("a month", currency), Column.number("resale then", currency),
                        Column.number("cash to find", currency), Column.number("90 % at most", currency).key("cash_to_find_90"),
                        Column.number("own hours", "h"), Column.number("items", ""));
        side.note(read.sentence() + ".");
        side.note("Net cost: all that is paid and used up until then less what comes in and the resale, carried to that month with the cost"
                + " of money; own hours are not in it. The resale of a car in play is what this one car would sell for now (private sold),"
                + " older by what such cars lose with each year of age at the same distance (age_slope, as the listings tell it); how the"
                + " market moves until then is not in it. Cash to find: the most that must be found at any time beside what is owned and"
                + " borrowed; nine times in ten it is no more than the figure beside it.");
        lacking().forEach(side::note);
        for (Alternative one : all) {
            Range near = Forecast.range(one.netCost(), 0.80);
            side.row(Cell.words(one.name() + (one.whole() ? "" : " (" + rows(one.notCounted()) + " not counted)")),
                    Cell.number(Quantiles.median(one.netCost()), 0), Cell.number(near.low(), 0),
                    Cell.number(near.high(), 0), Cell.number(Quantiles.median(one.netCost()) / horizon, 0),
                    Cell.number(Quantiles.median(one.resale()), 0), Cell.number(Quantiles.median(one.toFind()), 0),
                    Cell.number(Forecast.range(one.toFind(), 0.80).high(), 0), Cell.number(one.hours(), 0), Cell.whole(one.items().size()));
        }
        Table.Builder chances = Table.titled("Chance that the one on the left costs less than the one above, %")
                .columns(Column.words("alternative"));
        chances.note("Counted draw by draw, with what they share in common; 50 means that the rows cannot tell.");
        List<Alternative> whole = all.stream().filter(Alternative::whole).toList();
        String others = all.stream().filter(one -> !one.whole()).map(one -> "'" + one.name() + "'").collect(Collectors.joining(", "));
        if (!others.isEmpty()) {
            chances.note("Not compared, since not all of their rows are counted: " + others + ".");
        }
        for (Alternative other : whole) {
            chances.columns(Column.number(other.name(), ""));
        }
        for (Alternative one : whole) {
            List<Cell> cells = new ArrayList<>(List.of(Cell.words(one.name())));
            for (Alternative other : whole) {
                cells.add(one == other ? Cell.BLANK : Cell.chance(chanceCheaper(one, other)));
            }
            chances.row(cells);
        }
        return List.of(side.build(), chances.build());
    }

    /** What to know of rows that cannot be used, beside the marks behind the names. */
    private List<String> lacking() {
        List<String> notes = new ArrayList<>();
        if (!all.stream().allMatch(Alternative::whole)) {
            notes.add("Where a row is not counted the figures are not whole: what it costs is missing, and so is what it brings in. Such a "
                    + "one is not held against others.");
        }
        Set<Integer> nameless = new TreeSet<>();
        Stream.concat(read.rejected().stream(), read.setAside().stream()).filter(row -> !row.losesNothing())
                .forEach(row -> nameless.add(row.line()));
        notCounted.forEach((name, lines) -> {
            nameless.removeAll(name.isEmpty() ? List.of() : lines);
            if (!name.isEmpty() && all.stream().noneMatch(one -> one.name().equals(name))) {
                notes.add("'" + name + "' is not shown: " + rows(lines) + " not counted.");
            }
        });
        if (!nameless.isEmpty()) {
            notes.add("Of " + rows(nameless) + " nobody can tell to which alternative it belongs: that one is not whole.");
        }
        return notes;
    }

    private static String rows(Collection<Integer> lines) {
        return (lines.size() == 1 ? "row " : "rows ") + lines.stream().map(String::valueOf).collect(Collectors.joining(", "));
    }
}
