package swapworth.donor;

import java.math.BigDecimal;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.Currency;
import java.util.EnumSet;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;
import swapworth.listing.Seller;
import swapworth.money.Money;
import swapworth.reading.DistanceUnit;
import swapworth.reading.FolderSettings;
import swapworth.reading.NamedRows;
import swapworth.reading.RowsRead;
import swapworth.reading.Spelling;
import swapworth.reading.Vocabulary;

/** The rows of {@code fees.csv} put together into tables. */
final class FeesFile {
    private static final Vocabulary<Set<Seller>> SELLERS = Vocabulary.<Set<Seller>>empty().with(Set.of(Seller.AUCTION), "auction")
            .with(Set.of(Seller.TRADE), "trade", "dealer", "business").with(Set.of(Seller.PRIVATE), "private", "private seller")
            .with(EnumSet.allOf(Seller.class), "any", "all", "every");
    private static final Vocabulary<FeeTable.When> WHEN = Vocabulary.<FeeTable.When>empty().with(FeeTable.When.ALWAYS, "always")
            .with(FeeTable.When.NON_RUNNER, "non-runner", "non runner", "does not drive", "not running")
            .with(FeeTable.When.NO_KEY, "no key", "no keys", "keys missing");
    private static final String BID = "bid";
    /** Where a row without ends stands among others: after all. */
    private static final BigDecimal NO_END = BigDecimal.valueOf(Long.MAX_VALUE);

    private final NamedRows file;
    private final Currency currency;
    private final Map<String, Draft> drafts = new LinkedHashMap<>();
    private final List<NamedRows.Row> rows = new ArrayList<>();
    private final List<FeeTable> tables = new ArrayList<>();
    private final List<Broken> broken = new ArrayList<>();

    /**
     * A table that cannot be used.
     *
     * @param name what it is called
     * @param reason why its line is missing
     * @param car the car that it is for alone; empty for all
     * @param table itself, to ask whom it would charge; nothing where its rows do not say that
     */
    record Broken(String name, String reason, String car, Optional<FeeTable> table) {

        /** Whether it leaves nothing out of what a car costs: it would not be charged. */
        boolean spares(Purchase purchase) {
            return !car.isEmpty() && !Spelling.name(car).equals(Spelling.name(purchase.car()))
                    || table.isPresent() && table.get().notCharged(purchase).isPresent();
        }
    }

    /** One table while its rows are gathered. */
    private static final class Draft {
        final String name;
        final String car;
        Optional<CostKind> kind = Optional.empty();
        Optional<Set<Seller>> sellers = Optional.empty();
        Optional<FeeTable.When> when = Optional.empty();
        FeeTable.Measure measure = FeeTable.Measure.BID;
        Optional<Set<String>> base = Optional.empty();
        Optional<BigDecimal> days = Optional.empty();
        /** The words by which its rows first said each of these. */
        final Map<String, String> words = new HashMap<>();
        final List<FeeTable.Tier> tiers = new ArrayList<>();
        final List<NamedRows.Row> rows = new ArrayList<>();
        /** Why it cannot be used, with a row that cannot. */
        Optional<String> fault = Optional.empty();
        /** Whether all rows say whom it charges. */
        boolean saysWhom = true;

        Draft(String name, String car) {
            this.name = name;
            this.car = car;
        }

        /** What the table has: as rows above said, else as this row does. A row that says otherwise is another table's. */
        <T> Optional<T> one(NamedRows.Row row, String column, Optional<T> had, Optional<T> said, String otherwise) {
            String text = row.text(column).isEmpty() ? otherwise : "'" + row.text(column) + "'";
            if (had.isPresent() && said.isPresent() && !had.equals(said) && !text.equals(words.get(column))) {
                row.reject(column, "the rows above of '" + name + "' have " + words.get(column) + ": one table has one " + column
                        + "; give this row a table name of its own");
            } else if (said.isPresent()) {
                words.putIfAbsent(column, text);
            }
            return had.or(() -> said);
        }
    }

    FeesFile(Path path, FolderSettings settings, Currency currency) {
        this.currency = currency;
        file = NamedRows.of(path, settings).needs("table", "name", "fee table", "item").column("kind", "type")
                .column("from", "above", "min bid")
                .column("to", "up to", "max bid").column("flat", "fee", "amount", "fixed")
                .column("percent", "per cent", "rate", "percentage")
                .column("minimum", "at least", "least").column("maximum", "at most", "cap", "most").column("per_day", "daily", "each day")
                .column("free_days").column("days").column("per_mile", "each mile")
                .column("per_km", "each km", "per kilometre", "per kilometer").column("applies_to", "on", "base")
                .column("seller", "sellers", "charged by").column("when", "if").column("car").column("currency").column("note", "notes");
        file.rows().forEach(this::take);
        drafts.values().forEach(this::settle);
        rows.forEach(NamedRows.Row::use);
    }

    List<FeeTable> tables() {
        return List.copyOf(tables);
    }

    List<Broken> broken() {
        return List.copyOf(broken);
    }

    RowsRead read() {
        return file.read();
    }

    private void take(NamedRows.Row row) {
        String name = row.text("table");
        if (row.sumsUp("table")) {
            return;
        }
        String car = row.text("car");
        String where = (name.isEmpty() ? "line " + row.line() : Spelling.name(name)) + "\n" + Spelling.name(car);
        if (name.isEmpty()) {
            row.reject("table", "the row names no table");
        } else if (Spelling.key(name).equals(BID)) {
            row.reject("table", "this is the name of the bid itself; call the table something else");
        }
        Draft draft = drafts.computeIfAbsent(where, w -> new Draft(name, car));
        rows.add(row);
        draft.rows.add(row);
        boolean first = draft.tiers.isEmpty();
        draft.kind = draft.one(row, "kind", draft.kind, row.word("kind", CostKind.WORDS), "");
        if (first && row.text("kind").isEmpty()) {
            row.ask("kind", "what is the table '" + name + "' for (" + CostKind.WORDS.accepted()
                    + ")? Until that is known it is always charged, also on a price that includes fees or tax");
        }
        draft.sellers = draft.one(row, "seller", draft.sellers, sellers(row), "");
        draft.when = draft.one(row, "when", draft.when, when(row, draft), "none, so that they always count");
        draft.saysWhom &= row.isUsable();
        draft.base = draft.one(row, "applies_to", draft.base, base(row, draft), "the bid alone");
        FeeTable.Tier tier = tier(row, draft, first);
        if (tier.minimum().isPresent() && tier.maximum().isPresent() && tier.minimum().get().compareTo(tier.maximum().get()) > 0) {
            row.reject("minimum", "the minimum is more than the maximum");
        }
        if (Stream.of("flat", "percent", "minimum", "per_day", "per_mile", "per_km").allMatch(column -> row.text(column).isEmpty())) {
            row.reject("flat", "the row charges nothing: it needs one of flat, percent, minimum, per_day, per_mile, per_km");
        }
        if (row.isUsable()) {
            draft.tiers.add(tier);
        } else {
            draft.fault = Optional.of((name.isEmpty() ? "a line without a name" : "the line '" + name + "'") + " is missing: "
                    + file.file() + ":" + row.line() + " cannot be used");
        }
    }

    /** What a row charges, and where. */
    private FeeTable.Tier tier(NamedRows.Row row, Draft draft, boolean first) {
        BigDecimal perMile = amount(row, "per_mile").orElse(BigDecimal.ZERO);
        BigDecimal perKm = amount(row, "per_km").orElse(BigDecimal.ZERO);
        BigDecimal perDay = amount(row, "per_day").orElse(BigDecimal.ZERO);
        FeeTable.Measure measure = perMile.signum() > 0 ? FeeTable.Measure.MILES : perKm.signum() > 0 ? FeeTable.Measure.KM
                : perDay.signum() > 0 ? FeeTable.Measure.DAYS : zones(row, draft);
        if (perMile.signum() > 0 && perKm.signum() > 0) {
            row.reject("per_km", "the row has a price a mile and a price a km: keep one and leave the other blank");
        } else {
            oneUnit(row, draft, measure);
        }
        draft.measure = first || draft.measure == FeeTable.Measure.BID ? measure : draft.measure;
        Optional<BigDecimal> days = count(row, "days");
        draft.days = draft.one(row, "days", draft.days, days, "");
        if (row.text("per_day").isEmpty()) {
            for (String column : List.of("days", "free_days")) {
                if (!row.text(column).isEmpty()) {
                    row.odd(column, "without a price in per_day days count for nothing");
                }
            }
        }
        Optional<BigDecimal> percent = row.number("percent");
        if (percent.isPresent() && (percent.get().signum() < 0 || percent.get().compareTo(BigDecimal.valueOf(100)) > 0)) {
            row.reject("percent", "a percentage lies between 0 and 100");
        }
        return new FeeTable.Tier(edge(row, "from"), edge(row, "to"), amount(row, "flat").orElse(BigDecimal.ZERO),
                percent.orElse(BigDecimal.ZERO), amount(row, "minimum"), amount(row, "maximum"), perDay, perMile.add(perKm),
                measure == FeeTable.Measure.KM ? DistanceUnit.KM : DistanceUnit.MI, count(row, "free_days").orElse(BigDecimal.ZERO), days);
    }

    /** What the steps of a row count that has no price for each: of carriage miles or km where it says that one costs 0, else the bid. */
    private static FeeTable.Measure zones(NamedRows.Row row, Draft draft) {
        boolean carriage = draft.kind.filter(kind -> kind == CostKind.FREIGHT || kind == CostKind.TRAVEL).isPresent();
        boolean steps = !row.text("from").isEmpty() || !row.text("to").isEmpty();
        return !carriage || !steps ? FeeTable.Measure.BID : !row.text("per_mile").isEmpty() ? FeeTable.Measure.MILES
                : !row.text("per_km").isEmpty() ? FeeTable.Measure.KM : FeeTable.Measure.BID;
    }

    private static void oneUnit(NamedRows.Row row, Draft draft, FeeTable.Measure measure) {
        if (measure == FeeTable.Measure.BID || draft.measure == FeeTable.Measure.BID || measure == draft.measure) {
            return;
        }
        String column = "per_" + measure.distance.map(DistanceUnit::one).orElse("day");
        boolean distances = measure.distance.isPresent() && draft.measure.distance.isPresent();
        row.reject(column, "the rows above of '" + draft.name + "' count in" + draft.measure.words + ": one table counts in one unit"
                + (distances ? "" : "; give this row a table name of its own"));
    }

    /** Who charges it. */
    private static Optional<Set<Seller>> sellers(NamedRows.Row row) {
        Set<Seller> sellers = EnumSet.noneOf(Seller.class);
        row.decisiveWords("seller", SELLERS).forEach(sellers::addAll);
        return Optional.of(sellers).filter(s -> !s.isEmpty());
    }

    /** When it counts: always, where the first row of the table leaves it blank. */
    private static Optional<FeeTable.When> when(NamedRows.Row row, Draft draft) {
        return row.text("when").isEmpty() ? draft.when.or(() -> Optional.of(FeeTable.When.ALWAYS))
                : row.decisiveWord("when", WHEN);
    }

    /** What a percentage is charged on: lines above, or the bid alone (an empty set), also where the first percentage says nothing. */
    private Optional<Set<String>> base(NamedRows.Row row, Draft draft) {
        String text = Spelling.key(row.name("applies_to"));
        if (text.isEmpty()) {
            return row.text("percent").isEmpty() ? draft.base : draft.base.or(() -> Optional.of(Set.of()));
        }
        if (text.equals("price")) {
            return Optional.of(Set.of());
        }
        List<String> above = new ArrayList<>(List.of(BID));
        for (Draft other : drafts.values()) {
            if (other != draft && !above.contains(Spelling.key(other.name))) {
                above.add(Spelling.key(other.name));
            }
        }
        if (text.equals("all above") || text.equals("everything above") || text.equals("all")) {
            return Optional.of(new LinkedHashSet<>(above));
        }
        Set<String> base = new LinkedHashSet<>();
        for (String part : text.split("[;+]")) {
            String line = Spelling.key(row.meaning("applies_to", part));
            if (above.contains(line)) {
                base.add(line);
            } else if (!line.isEmpty()) {
                row.reject("applies_to", "'" + line + "' is no line above this one" + Spelling.nearest(line, above).map(near ->
                        "; did you mean " + near + "?").orElse(".")
                                + " It may be bid, the names of tables above with ; between, or all above");
            }
        }
        return Optional.of(base.equals(Set.of(BID)) ? Set.of() : base);
    }

    private Optional<BigDecimal> amount(NamedRows.Row row, String column) {
        Optional<Money> money = money(row, column);
        if (money.isPresent() && money.get().amount().signum() < 0) {
            row.reject(column, "a fee cannot be below 0");
            return Optional.empty();
        }
        return money.flatMap(m -> row.converted(column, m, currency, LocalDate.MAX));
    }

    /** In the folder's currency where the cell, the column and the header say nothing. */
    private Optional<Money> money(NamedRows.Row row, String column) {
        return row.money(column, "currency", currency);
    }

    /** An end of a step: of the bid in the base currency, else miles, km or days. */
    private Optional<BigDecimal> edge(NamedRows.Row row, String column) {
        boolean ofBid = row.text("per_mile").isEmpty() && row.text("per_km").isEmpty() && row.text("per_day").isEmpty();
        Optional<BigDecimal> end = ofBid ? money(row, column).flatMap(m -> {
            if (!m.currency().equals(currency)) {
                row.reject(column, "the steps of the bid must be in the currency of the folder, " + currency.getCurrencyCode()
                        + ", also for a bid in another one: it is converted first");
            }
            return Optional.of(m.amount());
        }) : row.number(column);
        if (end.isPresent() && end.get().signum() < 0) {
            row.reject(column, "a step cannot begin or end below 0");
        }
        return end;
    }

    private static Optional<BigDecimal> count(NamedRows.Row row, String column) {
        Optional<BigDecimal> number = row.number(column);
        if (number.isPresent() && number.get().signum() < 0) {
            row.reject(column, "days cannot be below 0");
        }
        return number;
    }

    /** Makes the table of its rows. Where these do not go together none is counted: steps that do not are refused, others set aside. */
    private void settle(Draft draft) {
        List<FeeTable.Tier> tiers = new ArrayList<>(draft.tiers);
        tiers.sort(Comparator.comparing((FeeTable.Tier t) -> t.from().or(t::to).orElse(NO_END)));
        CostKind kind = draft.kind.orElse(CostKind.OTHER);
        FeeTable table = new FeeTable(draft.name, draft.car, kind, draft.measure, draft.sellers.orElse(Set.of()),
                draft.when.orElse(FeeTable.When.ALWAYS), List.copyOf(draft.base.orElse(Set.of())), tiers);
        Optional<String> fault = FeeTable.fault(tiers).map(words -> "the line '" + draft.name + "' is missing: " + words);
        if (fault.isEmpty() && kind == CostKind.INCREMENT && tiers.stream().anyMatch(t -> t.flat().signum() <= 0)) {
            fault = Optional.of("the bid increments '" + draft.name + "' are not used: a step must be above 0");
        }
        if (draft.fault.isPresent()) {
            String reason = draft.fault.get();
            draft.rows.stream().filter(NamedRows.Row::isUsable).forEach(row -> row.setAside("table", reason));
            broken.add(new Broken(draft.name, reason, draft.car, draft.saysWhom ? Optional.of(table) : Optional.empty()));
        } else if (fault.isPresent()) {
            String reason = fault.get();
            draft.rows.forEach(row -> row.reject("from", reason));
            broken.add(new Broken(draft.name, reason, draft.car, Optional.of(table)));
        } else {
            tables.add(table);
        }
    }
}
