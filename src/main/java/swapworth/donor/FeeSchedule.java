package swapworth.donor;

import static java.util.Objects.requireNonNull;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Currency;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import swapworth.assumptions.Assumptions;
import swapworth.market.Answer;
import swapworth.market.CannotTell;
import swapworth.reading.FolderSettings;
import swapworth.reading.RowsRead;
import swapworth.reading.Spelling;

/**
 * The tables of {@code fees.csv}: what a purchase costs beside the bid. One table is one line of the landed cost; its rows are steps
 * of the bid, of days, or of miles or km, whichever its prices a distance count in. Needed is the column {@code table}; the others are
 * {@code kind, from, to, flat, percent, minimum, maximum, per_day, free_days, days, per_mile, per_km, applies_to, seller, when, car,
 * currency, note}.
 */
public final class FeeSchedule {
    private final Currency currency;
    private final List<FeeTable> tables;
    private final List<FeesFile.Broken> broken;
    private final Answer<RowsRead> read;
    private final double usualDays;

    private FeeSchedule(Currency currency, List<FeeTable> tables, List<FeesFile.Broken> broken, Answer<RowsRead> read,
            double usualDays) {
        this.currency = currency;
        this.tables = tables;
        this.broken = broken;
        this.read = read;
        this.usualDays = usualDays;
    }

    /**
     * Reads the tables of a file.
     *
     * @param file the file, for instance {@code fees.csv}
     * @param settings spellings, conventions and rates of its folder
     * @param currency the base currency; other currencies are converted at the latest rate
     * @param assumptions where the days until a car is fetched come from when the file does not state them
     * @return the tables, those that cannot be used named with the reason
     * @throws swapworth.reading.UnusableFileException if the file as a whole cannot be used
     */
    public static FeeSchedule read(Path file, FolderSettings settings, Currency currency, Assumptions assumptions) {
        requireNonNull(currency, "currency");
        FeesFile rows = new FeesFile(file, settings, currency);
        return new FeeSchedule(currency, rows.tables(), rows.broken(), new Answer.Told<>(rows.read()),
                assumptions.get("days_until_collected").middle());
    }

    /**
     * What is there without a {@code fees.csv}.
     *
     * @param currency the base currency
     * @return an empty schedule, by which no landed cost is whole
     */
    public static FeeSchedule none(Currency currency) {
        return new FeeSchedule(requireNonNull(currency, "currency"), List.of(), List.of(),
                new Answer.NotTold<>(CannotTell.without("there is no fees.csv", "that file (what a purchase costs beside the price)")), 0);
    }

    /**
     * The currency of all amounts.
     *
     * @return the base currency
     */
    public Currency currency() {
        return currency;
    }

    /**
     * What became of the rows.
     *
     * @return counts and problems, or that there is no file
     */
    public Answer<RowsRead> read() {
        return read;
    }

    /**
     * The tables that cannot be used, each with the reason.
     *
     * @return sentences; a landed cost lacks their lines and says so
     */
    public List<String> unusable() {
        return broken.stream().map(FeesFile.Broken::reason).distinct().sorted().toList();
    }

    /** The tables that are for one car alone, of cars that are not among those named: they are charged on nothing. */
    List<String> forNobody(List<String> cars) {
        Set<String> known = cars.stream().map(Spelling::name).collect(Collectors.toSet());
        List<String> found = new ArrayList<>();
        for (FeeTable table : tables) {
            if (!table.car.isEmpty() && !known.contains(Spelling.name(table.car))) {
                found.add("'" + table.name + "' of '" + table.car + "'" + Spelling.nearest(table.car, cars)
                        .map(near -> " (did you mean " + near + "?)").orElse(""));
            }
        }
        return found;
    }

    double usualDays() {
        return usualDays;
    }

    /** The lines for a car: its own tables in place of those of the same name for all. */
    List<FeeTable> tablesFor(String car) {
        Map<String, FeeTable> chosen = new LinkedHashMap<>();
        for (FeeTable table : tables) {
            if (table.kind != CostKind.INCREMENT && (table.car.isEmpty() || Spelling.name(table.car).equals(Spelling.name(car)))) {
                chosen.merge(Spelling.name(table.name), table, (a, b) -> b.car.isEmpty() ? a : b);
            }
        }
        return List.copyOf(chosen.values());
    }

    /** The steps by which bids rise; nothing where the file states none, and bids rise by 1. */
    Optional<FeeTable> increments() {
        return tables.stream().filter(t -> t.kind == CostKind.INCREMENT).findFirst();
    }

    /** Why lines are missing from a purchase: not those of tables that it would not be charged, or in whose place its car has its own. */
    List<String> missingFrom(Purchase purchase) {
        List<String> reasons = new ArrayList<>();
        if (broken.isEmpty() && tables.stream().allMatch(t -> t.kind == CostKind.INCREMENT)) {
            reasons.add("fees, tax and carriage: " + read.match(rows -> rows.file() + " holds none", CannotTell::reason));
        }
        if (broken.isEmpty()) {
            return reasons;
        }
        Set<String> own = tables.stream().filter(t -> !t.car.isEmpty() && Spelling.name(t.car).equals(Spelling.name(purchase.car())))
                .map(t -> Spelling.name(t.name)).collect(Collectors.toSet());
        broken.stream().filter(line -> !line.spares(purchase) && !(line.car().isEmpty() && own.contains(Spelling.name(line.name()))))
                .forEach(line -> reasons.add(line.reason()));
        return reasons;
    }
}
