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
import java.util.TreeSet;
import org.jspecify.annotations.Nullable;
import swapworth.listing.CarFacts;
import swapworth.listing.DrivenWheels;
import swapworth.listing.Facts;
import swapworth.listing.LevelOfTrade;
import swapworth.listing.Mileage;
import swapworth.statistics.Ranges;

/**
 * What a collection holds, found by going through its evidence once: the age and mileage of every row, and which words there are, so that
 * the terms of the model need not go through all rows themselves.
 */
final class Stock {
    private static final int NO_DAY = Integer.MIN_VALUE;
    /** The number of the car before the first one. */
    static final int NO_CAR = -1;

    private final List<String> lines;
    private final int[] line;
    private final int[] day;
    /** The days on which the car of a row was first and last seen. */
    private final int[] firstSeen;
    private final int[] lastSeen;
    private final double[] age;
    private final double[] miles;
    private final List<Kind> kinds;
    private final Map<String, Map<String, Integer>> further = new HashMap<>();
    private final List<Subject> examples;
    private final Set<LevelOfTrade> levels = EnumSet.noneOf(LevelOfTrade.class);
    private final Optional<LocalDate> begin;
    private final Optional<LocalDate> end;
    private final int undated;
    private final LocalDate fallbackDay;

    /**
     * Cars that a line sells as the same: one line, trim, body, running gear and one set of measured facts.
     *
     * @param facts those of the first of its rows
     * @param rows how many rows are of it
     * @param cars how many cars these rows are of
     */
    record Kind(CarFacts facts, int rows, int cars) {

        /** The same kind in two ranges of rows. */
        Kind and(Kind more) {
            return new Kind(facts, rows + more.rows, cars + more.cars);
        }
    }

    /** The first and the last day on which a car was seen; empty where none of its sightings has a day. */
    record Seen(Optional<LocalDate> first, Optional<LocalDate> last) {
        static final Seen NEVER = new Seen(Optional.empty(), Optional.empty());
    }

    /** What makes a kind. */
    private record KindKey(String vehicle, Optional<String> trim, Optional<String> body, Optional<String> gear, OptionalDouble power,
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

    /** What the ranges of rows hold together, one behind the other. */
    Stock(EvidenceList evidence, List<Part> parts) {
        int n = evidence.size();
        line = new int[n];
        day = new int[n];
        firstSeen = new int[n];
        lastSeen = new int[n];
        age = new double[n];
        miles = new double[n];
        Map<String, Integer> numbers = new LinkedHashMap<>();
        Map<KindKey, Kind> ofKey = new LinkedHashMap<>();
        Map<String, Map<String, Integer>> firsts = new HashMap<>();
        TreeSet<Integer> first = new TreeSet<>();
        int earliest = Integer.MAX_VALUE;
        int latest = NO_DAY;
        int newest = 0;
        int without = 0;
        int at = 0;
        for (Part part : parts) {
            int[] numberHere = new int[part.lines.size()];
            part.lines.forEach((name, number) -> {
                numbers.putIfAbsent(name, numbers.size());
                numberHere[number] = numbers.get(name);
            });
            for (int i = 0; i < part.rows; i++) {
                line[at + i] = numberHere[part.line[i]];
            }
            System.arraycopy(part.day, 0, day, at, part.rows);
            System.arraycopy(part.firstSeen, 0, firstSeen, at, part.rows);
            System.arraycopy(part.lastSeen, 0, lastSeen, at, part.rows);
            System.arraycopy(part.age, 0, age, at, part.rows);
            System.arraycopy(part.miles, 0, miles, at, part.rows);
            int before = at;
            part.kinds.forEach((key, kind) -> {
                if (!ofKey.containsKey(key)) {
                    first.add(before + kind.first);
                }
                ofKey.merge(key, new Kind(kind.facts, kind.rows, kind.cars), Kind::and);
            });
            part.firsts.forEach((column, words) -> words.forEach((word, row) -> {
                if (firsts.computeIfAbsent(column, c -> new HashMap<>()).putIfAbsent(word, before + row) == null) {
                    first.add(before + row);
                }
            }));
            part.further.forEach((column, texts) -> texts.forEach((text, rows) ->
                    further.computeIfAbsent(column, c -> new LinkedHashMap<>()).merge(text, rows, Integer::sum)));
            levels.addAll(part.levels);
            earliest = Math.min(earliest, part.earliest);
            latest = Math.max(latest, part.latest);
            newest = Math.max(newest, part.newest);
            without += part.undated;
            at += part.rows;
        }
        lines = List.copyOf(numbers.keySet());
        kinds = List.copyOf(ofKey.values());
        examples = first.stream().map(i -> evidence.subject(i)).toList();
        begin = latest == NO_DAY ? Optional.empty() : Optional.of(LocalDate.ofEpochDay(earliest));
        end = latest == NO_DAY ? Optional.empty() : Optional.of(LocalDate.ofEpochDay(latest));
        int year = newest;
        undated = without;
        // Without any date ages are counted to the end of the year after the newest model year: only differences matter. Of some rows
        // without one they are counted to the middle of the days seen, which is as likely too late as too early.
        fallbackDay = end.map(last -> undated == 0 ? last : LocalDate.ofEpochDay((begin.orElseThrow().toEpochDay() + last.toEpochDay())
                / 2)).orElseGet(() -> LocalDate.of(Math.max(1, year) + 1, 7, 1));
        Ranges.each(n, (from, to) -> {
            for (int i = from; i < to; i++) {
                if (day[i] == NO_DAY) {
                    age[i] = evidence.subject(i).facts().ageOn(fallbackDay).orElse(Double.NaN);
                }
            }
        });
    }

    /**
     * Goes through evidence that is known already.
     *
     * @param further the further columns that are asked for
     */
    static Stock of(EvidenceList evidence, List<String> further) {
        return new Stock(evidence, Ranges.make(evidence.size(), (first, end) -> {
            Part part = new Part(end - first, further, first == 0 ? NO_CAR : evidence.car(first - 1));
            for (int i = first; i < end; i++) {
                part.add(evidence.car(i), evidence.subject(i), evidence.seen(i));
            }
            return part;
        }));
    }

    /** A kind in a range of rows. */
    private static final class Counted {
        private final CarFacts facts;
        private final int first;
        private int rows;
        private int cars;

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

    /** What a range of rows holds, growing. */
    static final class Part {
        private static final int LATELY = 1 << 9;
        private static final String REGION = "";
        private static final String VINTAGE = " ";

        private final List<String> columns;
        private int[] line;
        private int[] day;
        private int[] firstSeen;
        private int[] lastSeen;
        private double[] age;
        private double[] miles;
        private int rows;
        private final Map<String, Integer> lines = new LinkedHashMap<>();
        private final Map<KindKey, Counted> kinds = new LinkedHashMap<>();
        private final @Nullable Counted[] lately = new Counted[LATELY];
        /** Of regions, model years and further columns the row in which each word stands first. */
        private final Map<String, Map<String, Integer>> firsts = new HashMap<>();
        private final Map<String, Integer> regions = new HashMap<>();
        private final Map<String, Integer> vintages = new HashMap<>();
        /** Of further columns the number of rows of each text. */
        private final Map<String, Map<String, Integer>> further = new HashMap<>();
        private final Set<LevelOfTrade> levels = EnumSet.noneOf(LevelOfTrade.class);
        private int earliest = Integer.MAX_VALUE;
        private int latest = NO_DAY;
        private int newest;
        private int undated;
        private int carBefore;

        /**
         * Begins with nothing.
         *
         * @param about how many rows are expected
         * @param columns the further columns that are asked for
         * @param carBefore the number of the car of the row before them
         */
        Part(int about, List<String> columns, int carBefore) {
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
        void add(int car, Subject subject, Seen seen) {
            Facts facts = subject.facts();
            int i = rows++;
            if (i == line.length) {
                int room = 16 + i + i / 4;
                line = Arrays.copyOf(line, room);
                day = Arrays.copyOf(day, room);
                firstSeen = Arrays.copyOf(firstSeen, room);
                lastSeen = Arrays.copyOf(lastSeen, room);
                age = Arrays.copyOf(age, room);
                miles = Arrays.copyOf(miles, room);
            }
            Integer number = lines.get(facts.vehicle());
            if (number == null) {
                number = lines.size();
                lines.put(facts.vehicle(), number);
            }
            line[i] = number;
            day[i] = number(subject.on());
            firstSeen[i] = number(seen.first);
            lastSeen[i] = number(seen.last);
            latest = Math.max(latest, lastSeen[i]);
            if (day[i] != NO_DAY) {
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

        private static int number(Optional<LocalDate> day) {
            return day.isPresent() ? Math.toIntExact(day.get().toEpochDay()) : NO_DAY;
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

    /** The number of rows. */
    int rows() {
        return line.length;
    }

    /** The model lines, in the order of their first rows. */
    List<String> lines() {
        return lines;
    }

    /** The number of the line of a row. */
    int line(int i) {
        return line[i];
    }

    /** The age of a row, years; NaN where nothing speaks of it. */
    double age(int i) {
        return age[i];
    }

    /** The mileage of a row; NaN where it is unknown. */
    double miles(int i) {
        return miles[i];
    }

    /** The kinds of cars, in the order of their first rows. */
    List<Kind> kinds() {
        return kinds;
    }

    /** The texts of a further column with their numbers of rows; blank cells left out. */
    Map<String, Integer> texts(String column) {
        return further.getOrDefault(column, Map.of());
    }

    /**
     * A subject for every kind, region, model year and word of a further column, in the order of the rows in which each stands first: all
     * levels that groups of these can have, in the order in which all rows would show them.
     */
    List<Subject> examples() {
        return examples;
    }

    Set<LevelOfTrade> levels() {
        return levels;
    }

    /** The first day seen. */
    Optional<LocalDate> begin() {
        return begin;
    }

    /** The last day seen. */
    Optional<LocalDate> end() {
        return end;
    }

    /** The number of rows without a day. */
    int undated() {
        return undated;
    }

    /** The day on which ages are counted of rows without one. */
    LocalDate fallbackDay() {
        return fallbackDay;
    }

    /** Whether the car of a row was seen at most so many days before the last day. */
    boolean seenLately(int i, double days) {
        return lastSeen[i] != NO_DAY && end.orElseThrow().toEpochDay() - lastSeen[i] <= days;
    }

    /** The days from the first look at the car of a row to the last; 0 where it has no day. */
    int stood(int i) {
        return lastSeen[i] - firstSeen[i];
    }

    /** The days from one row to another; 0 where one of them has no day. */
    int daysBetween(int from, int to) {
        return day[from] == NO_DAY || day[to] == NO_DAY ? 0 : day[to] - day[from];
    }

    /** Numbers of rows, apart for each line. */
    double[][] byLine(double[] numbers) {
        int[] sizes = new int[lines.size()];
        for (int i = 0; i < line.length; i++) {
            sizes[line[i]] += Double.isNaN(numbers[i]) ? 0 : 1;
        }
        double[][] apart = new double[sizes.length][];
        Arrays.setAll(apart, k -> new double[sizes[k]]);
        int[] filled = new int[sizes.length];
        for (int i = 0; i < line.length; i++) {
            if (!Double.isNaN(numbers[i])) {
                apart[line[i]][filled[line[i]]++] = numbers[i];
            }
        }
        return apart;
    }
}
