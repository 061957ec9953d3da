package swapworth.project;

import java.math.BigDecimal;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Currency;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.Stream;
import swapworth.market.Range;
import swapworth.money.Money;
import swapworth.project.Alternative.Item;
import swapworth.project.Alternative.Kind;
import swapworth.reading.Conventions;
import swapworth.reading.FolderSettings;
import swapworth.reading.NamedRows;
import swapworth.reading.RowsRead;
import swapworth.reading.Spelling;
import swapworth.reading.Vocabulary;

/** Reads the items of alternatives, and asks about an alternative whose car is worth nothing in the end. */
final class AlternativesReader {
    private static final String AMOUNT = "amount";
    private static final String CURRENCY = "currency";
    private static final int MOST_MONTHS = 240;
    private static final Vocabulary<Kind> KINDS = Vocabulary.<Kind>empty().with(Kind.COST, "cost", "buy", "work", "purchase",
            "running cost")
            .with(Kind.PAYMENT, "payment", "instalment", "installment").with(Kind.PARTS, "parts sold", "parts back", "part sold", "sold")
            .with(Kind.OWNED, "owned", "already owned", "have").with(Kind.OWED, "owed", "debt", "already owed").with(Kind.LOAN, "loan",
                    "borrowed")
            .with(Kind.RESALE, "resale", "value", "value at the end", "sold in the end");

    private final FolderSettings settings;
    private final Alternatives.Options options;
    private final NamedRows rows;
    private final Map<String, List<Integer>> notCounted = new LinkedHashMap<>();
    private final Map<String, String> spelled = new HashMap<>();
    private final Currency base;

    AlternativesReader(Path file, Alternatives.Options options) {
        Path folder = file.toAbsolutePath().getParent();
        settings = FolderSettings.of(folder == null ? Path.of("") : folder, Conventions.unstated());
        this.options = options;
        base = options.baseCurrency().orElse(settings.currency());
        rows = NamedRows.of(file, settings).needs("alternative", "option", "way").needs("item", "what").needs(AMOUNT, "cost", "price")
                .column(CURRENCY).column("kind").column("month", "in month", "from month").column("until", "until month").column("low")
                .column("likely").column("high").column("chance").column("hours", "own hours").column("car").column("note");
    }

    /** Alternatives with their items. */
    Map<String, List<Item>> read() {
        Map<String, List<Item>> all = new LinkedHashMap<>();
        Map<String, NamedRows.Row> first = new LinkedHashMap<>();
        List<NamedRows.Row> used = new ArrayList<>();
        Map<String, Boolean> ends = new LinkedHashMap<>();
        List<Item> items = new ArrayList<>();
        Map<List<String>, Integer> told = new HashMap<>();
        int horizon = (int) Math.round(options.assumptions().get("horizon").middle());
        for (NamedRows.Row row : rows.rows()) {
            if (row.sumsUp("alternative", "item")) {
                continue;
            }
            Item item = item(row, horizon);
            String name = name(row);
            int before = told.getOrDefault(whole(row), row.line());
            if (before < row.line()) {
                row.ask("item", "the same item of this alternative stands on line " + before + " too; both are counted: is it one item"
                        + " entered twice?");
            }
            told.putIfAbsent(whole(row), row.line());
            ends.merge(name, item.kind() == Kind.RESALE, Boolean::logicalOr);
            first.putIfAbsent(name, row);
            used.add(row);
            items.add(item);
        }
        for (Map.Entry<String, Boolean> end : ends.entrySet()) {
            if (!end.getValue()) {
                first.get(end.getKey()).ask("kind", "this alternative has no resale: is its car worth nothing after " + horizon
                        + " months?");
            }
        }
        askOfLoans(used, items, horizon);
        for (int r = 0; r < used.size(); r++) {
            if (used.get(r).use()) {
                all.computeIfAbsent(name(used.get(r)), name -> new ArrayList<>()).add(items.get(r));
            } else {
                notCounted.computeIfAbsent(name(used.get(r)), name -> new ArrayList<>()).add(used.get(r).line());
            }
        }
        return all;
    }

    /** A loan that is not paid back looks like money gained. */
    private void askOfLoans(List<NamedRows.Row> used, List<Item> items, int horizon) {
        Map<String, NamedRows.Row> loans = new LinkedHashMap<>();
        Map<String, Double> lent = new HashMap<>();
        Map<String, Double> paidBack = new HashMap<>();
        for (int r = 0; r < used.size(); r++) {
            String name = name(used.get(r));
            Item item = items.get(r);
            double all = item.likely() * Math.max(0, Math.min(horizon, item.until()) - item.month() + 1);
            if (item.kind() == Kind.LOAN) {
                loans.putIfAbsent(name, used.get(r));
                lent.merge(name, all, Double::sum);
            } else if (item.kind() == Kind.PAYMENT || item.kind() == Kind.OWED) {
                paidBack.merge(name, all, Double::sum);
            }
        }
        loans.forEach((name, row) -> {
            if (paidBack.getOrDefault(name, 0.0) < lent.get(name)) {
                row.ask("kind", Math.round(lent.get(name)) + " is lent, and rows of the kinds payment and owed pay back "
                        + Math.round(paidBack.getOrDefault(name, 0.0)) + " of it within " + horizon + " months: the rest looks like money"
                        + " gained. What is still owed then needs a row of the kind owed in month " + horizon);
            }
        });
    }

    /** All that says what a row counts. */
    private static List<String> whole(NamedRows.Row row) {
        return Stream.of("alternative", "item", AMOUNT, CURRENCY, "kind", "month", "until", "low", "likely", "high", "chance", "hours",
                "car").map(row::text).map(Spelling::name).toList();
    }

    /** The alternative that a row names, in its first spelling: case, spaces and hyphens make no other. */
    private String name(NamedRows.Row row) {
        return spelled.computeIfAbsent(Spelling.name(row.text("alternative")), key -> row.text("alternative"));
    }

    /** The lines of rows that cannot be used, by the alternative that each names. */
    Map<String, List<Integer>> notCounted() {
        return notCounted;
    }

    RowsRead rowsRead() {
        return rows.read();
    }

    String currency() {
        return base.getCurrencyCode();
    }

    private Item item(NamedRows.Row row, int horizon) {
        if (row.text("alternative").isEmpty()) {
            row.reject("alternative", "a row needs the name of its alternative");
        }
        Kind kind = row.decisiveWord("kind", KINDS).orElse(Kind.COST);
        Optional<String> inPlay = options.known(row.text("car"));
        boolean known = inPlay.isPresent();
        String car = inPlay.orElse(row.text("car"));
        Optional<BigDecimal> low = amount(row, "low");
        Optional<BigDecimal> high = amount(row, "high");
        Optional<BigDecimal> likely = amount(row, "likely").or(() -> amount(row, AMOUNT));
        if (likely.isEmpty() && !known) {
            row.reject(AMOUNT, car.isEmpty() ? "an item needs an amount, or the name of a car in play whose value it is"
                    : "there is no value of '" + car + "': write an amount, or check the name against cars.csv");
        } else if (low.isPresent() != high.isPresent()) {
            row.ask("low", "low and high belong together; the likely amount alone is taken, with the spread of the assumptions");
            low = Optional.empty();
            high = Optional.empty();
        } else if (low.isPresent() && likely.isPresent()
                && (low.get().compareTo(likely.get()) > 0 || likely.get().compareTo(high.get()) > 0)) {
            row.reject("low", "low, likely and high must stand in this order, not " + low.get().toPlainString() + ", "
                    + likely.get().toPlainString() + ", " + high.get().toPlainString());
        }
        if (known && (likely.isPresent() || low.isPresent())) {
            row.ask(likely.isPresent() ? AMOUNT : "low", "what such a car sells for by the listings is counted, and not this amount: if the"
                    + " amount is meant, leave the car out");
        }
        if (likely.isPresent() && likely.get().signum() < 0) {
            row.reject(AMOUNT, "an amount below 0: kind says whether money comes in");
        }
        OptionalDouble month = month(row, "month");
        int from = (int) month.orElse(kind == Kind.RESALE ? horizon : 0);
        OptionalDouble until = month(row, "until");
        int to = (int) until.orElse(from);
        if (to < from) {
            row.reject("until", "the last month lies before the first");
        }
        if (Math.max(from, to) > horizon) {
            row.ask(until.isPresent() ? "until" : "month", "alternatives are held against each other after " + horizon
                    + " months; what comes later is not counted: is 'horizon' in assumptions.csv to be longer?");
        }
        double chance = chance(row);
        double hours = row.number("hours", 0, 100_000).orElse(0);
        double middle = likely.map(BigDecimal::doubleValue).orElse(0.0);
        boolean ordered = low.isPresent() && high.isPresent() && low.get().compareTo(high.get()) <= 0;
        Optional<Range> ends = ordered ? Optional.of(new Range(low.get().doubleValue(), high.get().doubleValue())) : Optional.empty();
        return new Item(row.line(), row.text("item"), kind, middle, ends, chance, from, Math.max(from, to), hours, car);
    }

    private static OptionalDouble month(NamedRows.Row row, String column) {
        OptionalDouble month = row.number(column, 0, MOST_MONTHS);
        if (month.isPresent() && month.getAsDouble() != Math.rint(month.getAsDouble())) {
            row.reject(column, "months are counted whole");
        }
        return month;
    }

    /** How likely it is to happen: in per cent; without the sign up to 1 it is a share, as in partout.csv, and asked about. */
    private static double chance(NamedRows.Row row) {
        double number = row.number("chance", 0, 100).orElse(100);
        if (number == 0 || number > 1 || row.text("chance").contains("%")) {
            return number / 100;
        }
        String percent = BigDecimal.valueOf(number).movePointRight(2).stripTrailingZeros().toPlainString();
        row.ask("chance", "is this meant as " + percent + " % or as " + row.text("chance") + " %? It is taken for " + percent
                + " %; write it with its sign");
        return number;
    }

    private Optional<BigDecimal> amount(NamedRows.Row row, String column) {
        Optional<Money> money = row.money(column, CURRENCY, base);
        return money.flatMap(m -> row.converted(column, m, base, LocalDate.MAX));
    }
}
