package swapworth.market;

import java.time.LocalDate;
import java.util.Arrays;
import java.util.EnumSet;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import swapworth.listing.CarFacts;
import swapworth.listing.DrivenWheels;
import swapworth.listing.Facts;
import swapworth.listing.LevelOfTrade;
import swapworth.listing.Mileage;

/** What a range of rows holds, growing. */
final class StockPart {
    private static final int LATELY = 1 << 9;
    private static final String REGION = "";
    private static final String VINTAGE = " ";

    private final List<String> columns;
    int[] line;
    int[] day;
    int[] firstSeen;
    int[] lastSeen;
    double[] age;
    double[] miles;
    int rows;
    final Map<String, Integer> lines = new LinkedHashMap<>();
    final Map<KindKey, Counted> kinds = new LinkedHashMap<>();
    private final @Nullable Counted[] lately = new Counted[LATELY];
    /** Of regions, model years and further columns the row in which each word stands first. */
    final Map<String, Map<String, Integer>> firsts = new HashMap<>();
    private final Map<String, Integer> regions = new HashMap<>();
    private final Map<String, Integer> vintages = new HashMap<>();
    /** Of further columns the number of rows of each text. */
    final Map<String, Map<String, Integer>> further = new HashMap<>();
    final Set<LevelOfTrade> levels = EnumSet.noneOf(LevelOfTrade.class);
    int earliest = Integer.MAX_VALUE;
    int latest = Stock.NO_DAY;
    int newest;
    int undated;
    private int carBefore;

    /** What makes a kind of cars. */
    record KindKey(String vehicle, Optional<String> trim, Optional<String> body, Optional<String> gear, OptionalDouble power,
            OptionalDouble cylinders, OptionalDouble weight, DrivenWheels wheels) {

        static KindKey of(Facts facts) {
            return new KindKey(facts.vehicle(), facts.trim(), facts.body(), facts.runningGear(), facts.powerKw(), facts.cylinders(),
                    facts.weightKg(), facts.drivenWheels());
        }

        // Written out: those of a record are slow before the second compiler has seen them.
        @Override
        public int hashCode() {
            int hash = 31 * vehicle.hashCode() + trim.hashCode();
            hash = 31 * hash + body.hashCode();
            hash = 31 * hash + gear.hashCode();
            hash = 31 * hash + power.hashCode();
            hash = 31 * hash + cylinders.hashCode();
            return 31 * hash + weight.hashCode();
        }

        @Override
        public boolean equals(Object other) {
            return other instanceof KindKey key && vehicle.equals(key.vehicle) && trim.equals(key.trim) && body.equals(key.body)
                    && gear.equals(key.gear) && power.equals(key.power) && cylinders.equals(key.cylinders) && weight.equals(key.weight)
                    && wheels == key.wheels;
        }
    }

    /** A kind in a range of rows. */
    static final class Counted {
        final CarFacts facts;
        final int first;
        int rows;
        int cars;

        Counted(CarFacts facts, int first) {
            this.facts = facts;
            this.first = first;
        }

        /** Whether another car of the same kind was described with the very same words; if not, it may be of the kind nevertheless. */
        boolean shares(Facts other) {
            return facts.vehicle() == other.vehicle() && facts.trim() == other.trim() && facts.body() == other.body()
                    && facts.runningGear() == other.runningGear() && facts.powerKw() == other.powerKw()
                    && facts.cylinders() == other.cylinders() && facts.weightKg() == other.weightKg()
                    && facts.drivenWheels() == other.drivenWheels();
        }
    }

    /**
     * Begins with nothing.
     *
     * @param about how many rows are expected
     * @param columns the further columns that are asked for
     * @param carBefore the number of the car of the row before them
     */
    StockPart(int about, List<String> columns, int carBefore) {
        this.columns = columns;
        this.carBefore = carBefore;
        line = new int[about];
        day = new int[about];
        firstSeen = new int[about];
        lastSeen = new int[about];
        age = new double[about];
        miles = new double[about];
        firsts.put(REGION, regions);
        firsts.put(VINTAGE, vintages);
        for (String column : columns) {
            firsts.put("further " + column, new HashMap<>());
            further.put(column, new LinkedHashMap<>());
        }
    }

    /** Takes in the next row, one of the car of that number, which was seen on some days. */
    void add(int car, Subject subject, Stock.Seen seen) {
        Facts facts = subject.facts();
        int i = rows++;
        makeRoom(i);
        Integer number = lines.get(facts.vehicle());
        if (number == null) {
            number = lines.size();
            lines.put(facts.vehicle(), number);
        }
        line[i] = number;
        day[i] = number(subject.on());
        firstSeen[i] = number(seen.first());
        lastSeen[i] = number(seen.last());
        latest = Math.max(latest, lastSeen[i]);
        if (day[i] != Stock.NO_DAY) {
            earliest = Math.min(earliest, day[i]);
            latest = Math.max(latest, day[i]);
            age[i] = facts.ageOn(subject.on().get()).orElse(Double.NaN);
        } else {
            undated++;
        }
        Optional<Mileage> mileage = facts.mileage();
        miles[i] = mileage.isPresent() ? mileage.get().miles() : Double.NaN;
        newest = Math.max(newest, Math.max(facts.modelYear().orElse(0),
                facts.firstRegistered().isPresent() ? facts.firstRegistered().get().getYear() : 0));
        levels.add(subject.level());
        Counted kind = kind(facts, i);
        kind.rows++;
        kind.cars += car == carBefore ? 0 : 1;
        carBefore = car;
        first(regions, LevelWords.region(subject), i);
        first(vintages, LevelWords.vintage(subject), i);
        for (String column : columns) {
            String text = facts.further().getOrDefault(column, "");
            if (!text.isEmpty()) {
                Objects.requireNonNull(firsts.get("further " + column)).putIfAbsent(text, i);
                Objects.requireNonNull(further.get(column)).merge(text, 1, Integer::sum);
            }
        }
    }

    private void makeRoom(int i) {
        if (i == line.length) {
            int room = 16 + i + i / 4;
            line = Arrays.copyOf(line, room);
            day = Arrays.copyOf(day, room);
            firstSeen = Arrays.copyOf(firstSeen, room);
            lastSeen = Arrays.copyOf(lastSeen, room);
            age = Arrays.copyOf(age, room);
            miles = Arrays.copyOf(miles, room);
        }
    }

    private static int number(Optional<LocalDate> day) {
        return day.isPresent() ? Math.toIntExact(day.get().toEpochDay()) : Stock.NO_DAY;
    }

    /** The kind of a row; most rows share their words with one seen lately, object by object. */
    private Counted kind(Facts facts, int row) {
        int at = 31 * facts.vehicle().hashCode() + facts.trim().hashCode() & LATELY - 1;
        Counted kind = lately[at];
        if (kind == null || !kind.shares(facts)) {
            KindKey key = KindKey.of(facts);
            kind = kinds.get(key);
            if (kind == null) {
                kind = new Counted(facts.made(), row);
                kinds.put(key, kind);
            }
            lately[at] = kind;
        }
        return kind;
    }

    private static void first(Map<String, Integer> words, Optional<String> word, int row) {
        if (word.isPresent() && !words.containsKey(word.get())) {
            words.put(word.get(), row);
        }
    }
}
