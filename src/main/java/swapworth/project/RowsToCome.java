package swapworth.project;

import java.math.BigDecimal;
import java.time.YearMonth;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import swapworth.assumptions.Assumption;
import swapworth.assumptions.Assumptions;
import swapworth.project.Entry.Direction;
import swapworth.project.Entry.Status;
import swapworth.statistics.AmountLaw;
import swapworth.statistics.UncertainSum;

/**
 * The rows of a ledger that are to come, and the reserve, as lines of an uncertain sum in an order that does not depend on the file. Each
 * category is a group whose numbers go together; the reserve is a group of its own.
 */
final class RowsToCome {
    /** The categories that a forecast holds, in the order of their groups. */
    private static final List<Category> GROUPS = Stream.of(Category.values()).filter(c -> !c.standsApart()).toList();
    /** The group of the reserve: what nobody thought of goes with no category. */
    static final int RESERVE = GROUPS.size();
    /** The group of rows that no forecast holds. */
    private static final int APART = RESERVE + 1;

    /** What a row sells of a car. */
    enum Part {
        /** Its engine, alone or with what belongs to it. */
        ENGINE,
        OTHER;

        private static final Pattern ENGINE_WORDS = Pattern.compile("\\b(engine|motor|drivetrain|running gear)\\b",
                Pattern.CASE_INSENSITIVE);

        /** By the words of the item and the note. */
        static Part of(Entry entry) {
            return ENGINE_WORDS.matcher(entry.item() + " " + entry.note()).find() ? ENGINE : OTHER;
        }
    }

    /**
     * Rows to come that are summed up together.
     *
     * @param month the month, from that of the ledger's day
     * @param direction whether money goes out or comes in
     * @param moving the category with whose market they move; empty where they stand still
     * @param kept the share of them that is not charged to the undertaking: tools that stay
     * @param cars the cars that they fall on, of money that comes in
     * @param part what of them is sold
     */
    record Bin(int month, Direction direction, Optional<Category> moving, double kept, List<String> cars, Part part) {
    }

    private final List<UncertainSum.Line> lines = new ArrayList<>();
    private final List<String> names = new ArrayList<>();
    private final List<Entry> entries = new ArrayList<>();
    private final List<Bin> bins = new ArrayList<>();
    private final int months;
    private final int reserves;

    RowsToCome(Ledger ledger, Forecast.Options options) {
        Assumptions assumptions = options.assumptions();
        List<Entry> toCome = toCome(ledger.entries());
        Map<String, Integer> namesakes = new HashMap<>();
        YearMonth first = YearMonth.from(ledger.on());
        Set<Category> moved = options.moved().keySet();
        double[] guessed = new double[1200];
        int last = 0;
        boolean reserved = false;
        for (Entry entry : toCome) {
            int month = (int) Math.min(guessed.length - 1, ChronoUnit.MONTHS.between(first, YearMonth.from(entry.due())));
            last = Math.max(last, month);
            boolean out = entry.direction() == Direction.OUT;
            Optional<Category> moving = Optional.of(entry.category())
                    .filter(c -> moved.contains(c) && law(entry, assumptions).sd() > 0);
            double kept = entry.amount().signum() == 0 ? 0 : entry.kept().doubleValue() / entry.amount().doubleValue();
            lines.add(line(entry, assumptions, bin(new Bin(month, entry.direction(), moving, kept, out ? List.of() : entry.cars(),
                    out ? Part.OTHER : Part.of(entry)))));
            names.add(name(entry, namesakes));
            entries.add(entry);
            reserved |= entry.category() == Category.CONTINGENCY;
            guessed[month] += out && entry.status() == Status.ESTIMATE ? entry.amount().subtract(entry.kept()).doubleValue() : 0;
        }
        months = last + 1;
        Assumption reserve = assumptions.get("contingency");
        int added = 0;
        for (int m = 0; m < months && !reserved; m++) {
            if (guessed[m] > 0 && reserve.middle() > 0) {
                AmountLaw law = AmountLaw.lognormal(guessed[m] * reserve.middle() / 100, reserve.spread() / reserve.middle());
                lines.add(new UncertainSum.Line(law, RESERVE, 1, 1, 1,
                        bin(new Bin(m, Direction.OUT, Optional.empty(), 0, List.of(), Part.OTHER))));
                names.add("reserve " + m);
                added++;
            }
        }
        reserves = added;
    }

    /**
     * Draws of the sum of those of some rows that are to come, what goes out above 0 and what comes in below: each row by the numbers by
     * which the forecast draws it, the market taken to stand still.
     */
    static double[] sum(List<Entry> some, Forecast.Options options) {
        List<UncertainSum.Line> lines = new ArrayList<>();
        List<String> names = new ArrayList<>();
        Map<String, Integer> namesakes = new HashMap<>();
        for (Entry entry : toCome(some)) {
            lines.add(line(entry, options.assumptions(), 0));
            names.add(name(entry, namesakes));
        }
        return UncertainSum.named(lines, names).totals(options.count(), options.seed());
    }

    /** Those of some rows that are to come and move money, in an order that does not depend on the file. */
    private static List<Entry> toCome(List<Entry> rows) {
        List<Entry> toCome = new ArrayList<>(rows);
        toCome.removeIf(e -> e.status() == Status.ACTUAL || isNothing(e));
        toCome.sort(Comparator.comparing(Entry::due).thenComparing(Entry::category).thenComparing(Entry::direction)
                .thenComparing(Entry::amount).thenComparing(Entry::note).thenComparing(Entry::item)
                .thenComparing(e -> e.range().map(r -> r.low()).orElse(BigDecimal.ZERO))
                .thenComparing(e -> e.range().map(r -> r.high()).orElse(BigDecimal.ZERO)).thenComparing(Entry::status)
                .thenComparing(Entry::kept)
                .thenComparing(e -> String.join(";", e.cars())));
        return toCome;
    }

    private static UncertainSum.Line line(Entry entry, Assumptions assumptions, int bin) {
        AmountLaw law = law(entry, assumptions);
        double common = law.sd() == 0 ? 0 : Math.sqrt(assumptions.get("estimate_correlation").middle());
        int group = entry.category().standsApart() ? APART : groupOf(entry.category());
        return new UncertainSum.Line(law, group, common, entry.direction() == Direction.OUT ? 1 : -1, 1, bin);
    }

    /** Whether a row moves no money: what most likely costs nothing may still cost something. */
    private static boolean isNothing(Entry entry) {
        return entry.amount().signum() == 0
                && entry.range().filter(ends -> ends.low().signum() != 0 || ends.high().signum() != 0).isEmpty();
    }

    /**
     * What a row is drawn by: what it is for, and not how much or when, so that a changed amount, range or day moves no other number; of
     * rows that are for the same thing the first, second and so on.
     */
    private static String name(Entry entry, Map<String, Integer> namesakes) {
        String what = entry.category() + "\n" + entry.direction() + "\n" + entry.note() + "\n" + entry.item() + "\n"
                + String.join(";", entry.cars());
        return what + "\n" + namesakes.merge(what, 1, Integer::sum);
    }

    private int bin(Bin bin) {
        int known = bins.indexOf(bin);
        if (known < 0) {
            bins.add(bin);
        }
        return known < 0 ? bins.size() - 1 : known;
    }

    /** What the amount of a row to come may turn out to be. */
    private static AmountLaw law(Entry entry, Assumptions assumptions) {
        double likely = entry.amount().doubleValue();
        if (entry.range().isPresent()) {
            return AmountLaw.pert(entry.range().get().low().doubleValue(), likely, entry.range().get().high().doubleValue());
        }
        return entry.status() == Status.COMMITTED || likely <= 0 ? AmountLaw.exactly(likely)
                : Forecast.guess(likely, assumptions.get(entry.category().assumption()));
    }

    List<Forecast.Driver> drivers(double[] covariances) {
        double variance = 0;
        for (double one : covariances) {
            variance += one;
        }
        List<Forecast.Driver> drivers = new ArrayList<>();
        double reserve = 0;
        double[] ofReserve = new double[3];
        for (int l = 0; l < lines.size(); l++) {
            UncertainSum.Line line = lines.get(l);
            double sign = line.weight();
            double[] three = {sign * line.law().quantile(sign > 0 ? Forecast.LOW : Forecast.HIGH), sign * line.law().quantile(0.5),
                    sign * line.law().quantile(sign > 0 ? Forecast.HIGH : Forecast.LOW)};
            double share = variance > 0 ? covariances[l] / variance : 0;
            if (l >= lines.size() - reserves) {
                reserve += share;
                for (int k = 0; k < 3; k++) {
                    ofReserve[k] += three[k];
                }
            } else if (line.law().sd() > 0) {
                Entry entry = entries.get(l);
                String name = Stream.of(entry.note(), entry.item()).filter(words -> !words.isEmpty()).findFirst()
                        .orElse("line " + entry.line());
                drivers.add(new Forecast.Driver(name, entry.line(), three[0], three[1], three[2], share));
            }
        }
        if (reserves > 0) {
            drivers.add(new Forecast.Driver("reserve for what nobody thought of", 0, ofReserve[0], ofReserve[1], ofReserve[2], reserve));
        }
        drivers.sort(Comparator.comparingDouble((Forecast.Driver d) -> -d.share()));
        return drivers;
    }

    /** The group of draws in which estimates of a category go together. */
    static int groupOf(Category category) {
        return GROUPS.indexOf(category);
    }

    /** The draws, their bins in the order of {@link #bins}. */
    UncertainSum.Drawn drawn(int count, long seed) {
        return UncertainSum.named(lines, names).drawn(count, seed);
    }

    List<Bin> bins() {
        return bins;
    }

    /** How many months there are from that of the ledger's day to the last in which a row is due. */
    int months() {
        return months;
    }
}
