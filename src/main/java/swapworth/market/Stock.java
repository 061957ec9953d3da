package swapworth.market;

import java.time.LocalDate;
import java.util.Arrays;
import java.util.EnumSet;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import swapworth.listing.CarFacts;
import swapworth.listing.LevelOfTrade;
import swapworth.statistics.Ranges;

/**
 * What a collection holds, found by going through its evidence once: the age and mileage of every row, and which words there are, so that
 * the terms of the model need not go through all rows themselves.
 */
final class Stock {
    static final int NO_DAY = Integer.MIN_VALUE;
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

    /** What the ranges of rows hold together, one behind the other. */
    Stock(EvidenceList evidence, List<StockPart> parts) {
        int n = evidence.size();
        line = new int[n];
        day = new int[n];
        firstSeen = new int[n];
        lastSeen = new int[n];
        age = new double[n];
        miles = new double[n];
        FirstRows words = new FirstRows();
        int earliest = Integer.MAX_VALUE;
        int latest = NO_DAY;
        int newest = 0;
        int without = 0;
        int at = 0;
        for (StockPart part : parts) {
            copyRows(part, at, words.numbersOfLines(part));
            words.take(part, at);
            part.further.forEach((column, texts) -> texts.forEach((text, rows) ->
                    further.computeIfAbsent(column, c -> new LinkedHashMap<>()).merge(text, rows, Integer::sum)));
            levels.addAll(part.levels);
            earliest = Math.min(earliest, part.earliest);
            latest = Math.max(latest, part.latest);
            newest = Math.max(newest, part.newest);
            without += part.undated;
            at += part.rows;
        }
        lines = List.copyOf(words.lines.keySet());
        kinds = List.copyOf(words.kinds.values());
        examples = words.rows.stream().map(i -> evidence.subject(i)).toList();
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

    /** Copies what each row of a range says behind that of the ranges before it. */
    private void copyRows(StockPart part, int at, int[] numbersOfLines) {
        for (int i = 0; i < part.rows; i++) {
            line[at + i] = numbersOfLines[part.line[i]];
        }
        System.arraycopy(part.day, 0, day, at, part.rows);
        System.arraycopy(part.firstSeen, 0, firstSeen, at, part.rows);
        System.arraycopy(part.lastSeen, 0, lastSeen, at, part.rows);
        System.arraycopy(part.age, 0, age, at, part.rows);
        System.arraycopy(part.miles, 0, miles, at, part.rows);
    }

    /** Lines, kinds and words of all ranges, and the rows in which each kind and word stands first. */
    private static final class FirstRows {
        private final Map<String, Integer> lines = new LinkedHashMap<>();
        private final Map<StockPart.KindKey, Kind> kinds = new LinkedHashMap<>();
        private final Map<String, Set<String>> words = new HashMap<>();
        private final TreeSet<Integer> rows = new TreeSet<>();

        /** The numbers of the lines of a range among all. */
        int[] numbersOfLines(StockPart part) {
            int[] numbers = new int[part.lines.size()];
            part.lines.forEach((name, number) -> {
                lines.putIfAbsent(name, lines.size());
                numbers[number] = lines.get(name);
            });
            return numbers;
        }

        void take(StockPart part, int at) {
            part.kinds.forEach((key, kind) -> {
                if (!kinds.containsKey(key)) {
                    rows.add(at + kind.first);
                }
                kinds.merge(key, new Kind(kind.facts, kind.rows, kind.cars), Kind::and);
            });
            part.firsts.forEach((column, ofPart) -> ofPart.forEach((word, row) -> {
                if (words.computeIfAbsent(column, c -> new HashSet<>()).add(word)) {
                    rows.add(at + row);
                }
            }));
        }
    }

    /**
     * Goes through evidence that is known already.
     *
     * @param further the further columns that are asked for
     */
    static Stock of(EvidenceList evidence, List<String> further) {
        return new Stock(evidence, Ranges.make(evidence.size(), (first, end) -> {
            StockPart part = new StockPart(end - first, further, first == 0 ? NO_CAR : evidence.car(first - 1));
            for (int i = first; i < end; i++) {
                part.add(evidence.car(i), evidence.subject(i), evidence.seen(i));
            }
            return part;
        }));
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
