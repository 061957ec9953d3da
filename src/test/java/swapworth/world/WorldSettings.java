package swapworth.world;

import java.time.YearMonth;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;

/** How large and how rough a sample world is to be. Immutable; every {@code with} returns a changed copy. */
public final class WorldSettings {

    private static final WorldSettings DEFAULTS = new WorldSettings(usualCars(), YearMonth.of(2025, 5), 18, 0.11, 0.05, 2,
            Dirt.ON, List.of());

    private final Map<Line, Integer> cars;
    private final YearMonth firstMonth;
    private final int months;
    private final double errorScale;
    private final double pairSpread;
    private final int typingErrors;
    private final Dirt dirt;
    private final List<Double> marketPath;

    private WorldSettings(Map<Line, Integer> cars, YearMonth firstMonth, int months, double errorScale, double pairSpread,
            int typingErrors, Dirt dirt, List<Double> marketPath) {
        this.cars = cars;
        this.firstMonth = firstMonth;
        this.months = months;
        this.errorScale = errorScale;
        this.pairSpread = pairSpread;
        this.typingErrors = typingErrors;
        this.dirt = dirt;
        this.marketPath = marketPath;
    }

    private static Map<Line, Integer> usualCars() {
        Map<Line, Integer> cars = new EnumMap<>(Line.class);
        for (Line line : Line.values()) {
            cars.put(line, line.usualCars());
        }
        return cars;
    }

    /** The sample folder's world: 305 cars over 18 months, an error scale of 0.11, two typing errors, dirt. */
    static WorldSettings defaults() {
        return DEFAULTS;
    }

    /** Whether the files carry what people's files carry beside facts: spellings, gaps, slips, repeats. */
    public enum Dirt {
        /** They do. */
        ON,
        /** Every cell is plain, nothing true is left out, and no typing error is made. */
        OFF
    }

    /** So many cars of one line. */
    public WorldSettings withCars(Line line, int count) {
        if (count < 0) {
            throw new IllegalArgumentException("a line has at least 0 cars, not " + count);
        }
        Map<Line, Integer> changed = new EnumMap<>(cars);
        changed.put(line, count);
        return new WorldSettings(changed, firstMonth, months, errorScale, pairSpread, typingErrors, dirt, marketPath);
    }

    /** So many cars of every line. */
    public WorldSettings withCarsPerLine(int count) {
        WorldSettings changed = this;
        for (Line line : Line.values()) {
            changed = changed.withCars(line, count);
        }
        return changed;
    }

    /** The calendar month in which collecting begins. */
    public WorldSettings withFirstMonth(YearMonth month) {
        return new WorldSettings(cars, month, months, errorScale, pairSpread, typingErrors, dirt, marketPath);
    }

    /** So many months of collecting, at least 1, on a drawn market. */
    public WorldSettings withMonths(int count) {
        if (count < 1) {
            throw new IllegalArgumentException("a world lasts at least 1 month, not " + count);
        }
        return new WorldSettings(cars, firstMonth, count, errorScale, pairSpread, typingErrors, dirt, List.of());
    }

    /** The scale of the cars' own Student-t errors at seven years of age, in log points. */
    public WorldSettings withErrorScale(double scale) {
        return new WorldSettings(cars, firstMonth, months, scale, pairSpread, typingErrors, dirt, marketPath);
    }

    /** The standard deviation of the effects of pairs of body and running gear, in log points. */
    public WorldSettings withPairSpread(double spread) {
        return new WorldSettings(cars, firstMonth, months, errorScale, spread, typingErrors, dirt, marketPath);
    }

    /** So many mistyped prices; made only with dirt on. */
    public WorldSettings withTypingErrors(int count) {
        return new WorldSettings(cars, firstMonth, months, errorScale, pairSpread, count, dirt, marketPath);
    }

    /** With or without dirt. */
    public WorldSettings with(Dirt choice) {
        return new WorldSettings(cars, firstMonth, months, errorScale, pairSpread, typingErrors, choice, marketPath);
    }

    /**
     * A given market instead of a drawn one: the natural logarithm of its level in the middle of each month, season included.
     */
    public WorldSettings withMarketPath(List<Double> logLevels) {
        if (logLevels.isEmpty()) {
            throw new IllegalArgumentException("a market path needs at least one month");
        }
        return new WorldSettings(cars, firstMonth, logLevels.size(), errorScale, pairSpread, typingErrors, dirt,
                List.copyOf(logLevels));
    }

    /** The world of that seed; the same on every machine. */
    public SampleWorld generate(long seed) {
        return SampleWorld.generate(seed, this);
    }

    int cars(Line line) {
        return cars.getOrDefault(line, 0);
    }

    YearMonth firstMonth() {
        return firstMonth;
    }

    int months() {
        return months;
    }

    double errorScale() {
        return errorScale;
    }

    double pairSpread() {
        return pairSpread;
    }

    int typingErrors() {
        return typingErrors;
    }

    Dirt dirt() {
        return dirt;
    }

    List<Double> marketPath() {
        return marketPath;
    }
}
