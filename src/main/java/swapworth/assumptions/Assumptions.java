package swapworth.assumptions;

import static java.util.Objects.requireNonNull;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.math.BigDecimal;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Collection;
import java.util.Currency;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import swapworth.money.Conversion;
import swapworth.money.Money;
import swapworth.money.Rates;
import swapworth.reading.CsvRow;
import swapworth.reading.CsvSource;
import swapworth.reading.Currencies;
import swapworth.reading.RowProblem;
import swapworth.reading.RowsRead;
import swapworth.reading.Spelling;
import swapworth.reading.UnusableFileException;
import swapworth.table.Cell;
import swapworth.table.Column;
import swapworth.table.Table;

/**
 * The named numbers that stand in where the user's own rows do not speak. No number that values anything stands anywhere else,
 * and each can be replaced by a row of the user's {@code assumptions.csv} with the columns {@code name, middle, spread, unit,
 * source, note}, of which the first two are needed. Each has limits, beyond which the program cannot work with it; a row beyond them
 * changes nothing and is among the {@link #problems()}.
 */
public final class Assumptions {

    private static final double AS_GOOD_AS_KNOWN = 1e-4;

    private final Map<String, Assumption> byName;
    private final List<String> changed;
    private final List<RowProblem> problems;
    /** The currency in which amounts of money are counted; those of the program are stated in the usual one. */
    private final Currency base;
    /** Why amounts of the program stand as they are in another currency. */
    private final Optional<String> noRate;

    private Assumptions(Map<String, Assumption> byName, List<String> changed, List<RowProblem> problems, Currency base,
            Optional<String> noRate) {
        this.byName = byName;
        this.changed = changed;
        this.problems = problems;
        this.base = base;
        this.noRate = noRate;
    }

    /**
     * The numbers that come with the program.
     *
     * @return all assumptions, none changed
     */
    public static Assumptions defaults() {
        return Held.DEFAULTS;
    }

    private static final class Held {
        static final Assumptions DEFAULTS = load();

        private static Assumptions load() {
            Map<String, Assumption> byName = new LinkedHashMap<>();
            for (Question question : Question.values()) {
                load(question, byName);
            }
            return new Assumptions(byName, List.of(), List.of(), Currencies.USUAL, Optional.empty());
        }

        private static void load(Question question, Map<String, Assumption> byName) {
            String resource = question.resource();
            try (InputStream in = requireNonNull(Assumptions.class.getResourceAsStream(resource), resource)) {
                CsvSource source = CsvSource.of(resource, new String(in.readAllBytes(), StandardCharsets.UTF_8));
                for (CsvRow row : source.rows()) {
                    Assumption read = new Assumption(row.cell(0), question, Double.parseDouble(row.cell(1)),
                            Double.parseDouble(row.cell(2)), row.cell(3), row.cell(4), row.cell(5), Double.parseDouble(row.cell(6)),
                            Double.parseDouble(row.cell(7)));
                    if (byName.put(read.name(), read) != null) {
                        throw new IllegalStateException(resource + ": " + read.name() + " stands twice");
                    }
                }
            } catch (IOException e) {
                throw new UncheckedIOException(e);
            }
        }
    }

    /**
     * The numbers that hold in a folder: ours, with the rows of its {@code assumptions.csv} in their place where there is one.
     *
     * @param folder the folder of the user's files
     * @return the assumptions
     * @throws swapworth.reading.UnusableFileException if there is no such folder, or such a file that cannot be used as a whole
     */
    public static Assumptions ofFolder(Path folder) {
        if (!Files.isDirectory(folder)) {
            throw UnusableFileException.because(folder.toString(), "there is no such folder");
        }
        Path own = folder.resolve("assumptions.csv");
        return Files.isRegularFile(own) ? defaults().with(own) : defaults();
    }

    /**
     * These assumptions with the rows of a file in place of ours. What a row leaves blank stays as it is. Rows that name no
     * assumption, or give no number, change nothing and are among the {@link #problems()}; so is a row on an amount of money without
     * the amount, for ours is in US dollars.
     *
     * @param file with the columns {@code name, middle} and, if wanted, {@code spread, unit, source, note}; what {@code words.csv}
     *        beside it says of headers and of the decimal mark holds
     * @return a copy
     * @throws swapworth.reading.UnusableFileException if the file as a whole cannot be used
     */
    public Assumptions with(Path file) {
        AssumptionsFile rows = AssumptionsFile.read(file, byName);
        Map<String, Assumption> more = new LinkedHashMap<>(byName);
        more.putAll(rows.replaced());
        Set<String> names = new LinkedHashSet<>(changed);
        names.addAll(rows.replaced().keySet());
        List<RowProblem> found = new ArrayList<>(problems);
        found.addAll(rows.problems());
        return new Assumptions(more, List.copyOf(names), List.copyOf(found), base, noRate);
    }

    /** What to say of a name that no assumption has. */
    static String unknown(String name, Set<String> names) {
        return "there is no assumption of this name" + Spelling.nearest(name, names).map(n -> "; did you mean " + n + "?").orElse("");
    }

    /**
     * These assumptions with one in place of ours.
     *
     * @param assumption the new number
     * @return a copy
     * @throws IllegalArgumentException if there is no assumption of its name, its unit is another, or a number lies beyond the limits of
     *        ours; the message names the nearest, or the limits
     */
    public Assumptions with(Assumption assumption) {
        Assumption before = get(assumption.name());
        if (!before.unit().equals(assumption.unit())) {
            throw new IllegalArgumentException("the unit of " + before.name() + " is " + before.unit() + ", not "
                    + assumption.unit());
        }
        Map<String, Assumption> more = new LinkedHashMap<>(byName);
        more.put(assumption.name(), new Assumption(before.name(), assumption.question(), assumption.middle(), assumption.spread(),
                before.unit(), assumption.source(), assumption.note(), before.least(), before.most()));
        Set<String> names = new LinkedHashSet<>(changed);
        names.add(assumption.name());
        return new Assumptions(more, List.copyOf(names), problems, base, noRate);
    }

    /**
     * These assumptions where money is counted in another currency. The amounts of the program are stated in US dollars and taken at the
     * latest rate; the user's own are in the base currency already. Without a rate they stand as they are, and
     * {@link #amountsInQuestion} says so.
     *
     * @param currency the base currency
     * @param rates exchange rates
     * @return a copy
     */
    public Assumptions in(Currency currency, Rates rates) {
        if (currency.equals(base)) {
            return this;
        }
        Conversion conversion = rates.convert(new Money(BigDecimal.ONE, base), currency, LocalDate.MAX);
        if (!(conversion instanceof Conversion.Converted rate)) {
            return new Assumptions(byName, changed, problems, base, Optional.of("there is " + ((Conversion.NoRate) conversion).reason()));
        }
        Map<String, Assumption> more = new LinkedHashMap<>(byName);
        for (Assumption amount : byName.values()) {
            if (amount.isMoney() && !changed.contains(amount.name())) {
                more.put(amount.name(), amount.times(rate.amount().doubleValue(), currency.getCurrencyCode()));
            }
        }
        return new Assumptions(more, changed, problems, currency, Optional.empty());
    }

    /**
     * The amounts of the program that are counted in another currency than theirs for want of a rate.
     *
     * @param question whose amounts
     * @return how many there are and what to do; nothing where all is well
     */
    public Optional<RowsRead> amountsInQuestion(Question question) {
        List<String> amounts = byName.values().stream().filter(a -> a.question() == question && a.isMoney() && !changed.contains(a.name()))
                .map(Assumption::name).toList();
        return noRate.filter(why -> !amounts.isEmpty()).map(why -> new RowsRead("amounts among the assumptions", amounts.size(), List.of(),
                List.of(), List.of(), List.of(new RowProblem("assumptions.csv", 0, "middle", "", RowProblem.Kind.QUESTION,
                "these amounts are those of US dollars and stand as they are, for " + why + ", or your own amounts in assumptions.csv: "
                        + String.join(", ", amounts))), 0));
    }

    /**
     * The assumption of a name.
     *
     * @param name for instance {@code age_slope}
     * @return the assumption
     * @throws IllegalArgumentException if there is none; the message names the nearest
     */
    public Assumption get(String name) {
        Assumption found = byName.get(requireNonNull(name, "name"));
        if (found == null) {
            throw new IllegalArgumentException(name + ": " + unknown(name, byName.keySet()));
        }
        return found;
    }

    /**
     * All assumptions, in the order of the program's file.
     *
     * @return an unmodifiable copy
     */
    public Collection<Assumption> all() {
        return List.copyOf(byName.values());
    }

    /**
     * The names of those that the user replaced.
     *
     * @return in the order in which they were replaced
     */
    public List<String> changed() {
        return changed;
    }

    /**
     * The rows of the user's files that changed nothing, each with its reason.
     *
     * @return problems of the kind rejected
     */
    public List<RowProblem> problems() {
        return problems;
    }

    /**
     * The middle of an effect in per cent as an effect on the natural logarithm of the price: ln(1 + m / 100).
     *
     * @param name the name of an assumption in per cent
     * @return log points
     * @throws IllegalArgumentException if there is none of this name or its unit is not per cent
     */
    public double logMiddle(String name) {
        return Math.log1p(percent(name).middle() / 100);
    }

    /**
     * The spread of an effect in per cent on the natural logarithm of the price: (s / 100) / (1 + m / 100); of the market at least
     * 0.0001, which is as good as known: its regression asks for a spread above 0.
     *
     * @param name the name of an assumption in per cent
     * @return log points
     * @throws IllegalArgumentException if there is none of this name or its unit is not per cent
     */
    public double logSpread(String name) {
        Assumption assumption = percent(name);
        return Math.max(assumption.question() == Question.MARKET ? AS_GOOD_AS_KNOWN : 0,
                assumption.spread() / 100 / (1 + assumption.middle() / 100));
    }

    private Assumption percent(String name) {
        Assumption assumption = get(name);
        if (!assumption.isPercent()) {
            throw new IllegalArgumentException("the unit of " + name + " is " + assumption.unit() + ", not per cent");
        }
        return assumption;
    }

    /**
     * All assumptions as a table, those of the user marked.
     *
     * @return one row an assumption
     */
    public Table table() {
        return table(Question.values());
    }

    /**
     * The assumptions of some questions as a table, those of the user marked.
     *
     * @param questions whose assumptions to show
     * @return one row an assumption
     */
    public Table table(Question... questions) {
        Set<Question> asked = Set.of(questions);
        Table.Builder table = Table.titled("Assumptions").columns(Column.words("name"), Column.number("middle", ""),
                Column.number("spread", ""), Column.words("unit"), Column.words("whose"), Column.sentences("source"),
                Column.sentences("note"));
        long own = byName.values().stream().filter(a -> asked.contains(a.question()) && changed.contains(a.name())).count();
        table.note(own == 0 ? "None of them is the user's own; a file assumptions.csv in the folder replaces any."
                : own + (own == 1 ? " of them is" : " of them are") + " the user's own (assumptions.csv).");
        for (RowProblem problem : problems) {
            table.note(problem.file() + ":" + problem.line() + " changes nothing: " + problem.rawText() + ": "
                    + problem.message());
        }
        for (Assumption assumption : byName.values()) {
            if (!asked.contains(assumption.question())) {
                continue;
            }
            table.row(Cell.words(assumption.name()), Cell.stated(assumption.middle()), Cell.stated(assumption.spread()),
                    Cell.words(assumption.unit()), Cell.words(changed.contains(assumption.name()) ? "yours" : "ours"),
                    Cell.words(assumption.source()), Cell.words(assumption.note()));
        }
        return table.build();
    }
}
