package swapworth.donor;

import static java.util.Objects.requireNonNull;

import java.math.BigDecimal;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Currency;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import swapworth.listing.CandidateCar;
import swapworth.listing.Price;
import swapworth.money.Money;
import swapworth.reading.FolderSettings;
import swapworth.reading.NamedRows;
import swapworth.reading.RowsRead;
import swapworth.reading.Spelling;
import swapworth.table.Cell;

/**
 * Which parts of which car are sold, kept or go into the swap: the rows of {@code partout.csv}. Needed are {@code car} and
 * {@code part}; everything else has a default by the part's group: {@code goes_to, state, chance_good, count, price, sells, days, hours,
 * postage, postage_charged, packing, fee, bundle, local_rule, currency, note}.
 */
public final class PartoutFile {
    private static final double MOST_PIECES = 20;

    private final Map<String, List<PartRow>> byCar;
    private final RowsRead read;

    private PartoutFile(Map<String, List<PartRow>> byCar, RowsRead read) {
        this.byCar = byCar;
        this.read = read;
    }

    /**
     * Reads a file.
     *
     * @param file the file, for instance {@code partout.csv}
     * @param cars the cars in play, which its rows name
     * @param settings spellings, conventions and rates of its folder
     * @param currency the base currency
     * @return its rows by car; a part that the car cannot have, and a car that is not in play, are set aside with the reason
     * @throws swapworth.reading.UnusableFileException if the file as a whole cannot be used
     */
    public static PartoutFile read(Path file, List<CandidateCar> cars, FolderSettings settings, Currency currency) {
        requireNonNull(currency, "currency");
        NamedRows rows = NamedRows.of(file, settings).needs("car", "name").needs("part", "item").column("goes_to", "goes to", "use", "to")
                .column("state", "condition").column("chance_good", "good").column("count", "pieces", "number").column("price", "sells_for")
                .column("sells", "chance", "chance_to_sell").column("days", "days_to_sell").column("hours")
                .column("postage", "postage_paid").column("postage_charged").column("packing").column("fee", "selling_fee")
                .column("bundle").column("local_rule", "rule_met").column("currency").column("note", "notes");
        Map<String, CandidateCar> known = new LinkedHashMap<>();
        cars.forEach(car -> known.put(Spelling.name(car.name()), car));
        List<String> names = cars.stream().map(CandidateCar::name).toList();
        Map<String, List<PartRow>> byCar = new LinkedHashMap<>();
        Set<String> seen = new HashSet<>();
        for (NamedRows.Row row : rows.rows()) {
            if (row.sumsUp("car", "part")) {
                continue;
            }
            Optional<PartKind> part = PartOffers.kind(row, "part");
            Optional<CandidateCar> car = Optional.ofNullable(known.get(Spelling.name(row.text("car"))));
            check(row, car, part, names);
            PartRow stated = read(row, part, currency);
            boolean lacking = car.isPresent() && part.isPresent() && DamageLeaves.lacks(car.get().facts(), part.get());
            if (lacking && row.isUsable()) {
                row.odd("part", "the car has no engine: the row brings nothing, and where it goes into the swap another one is counted");
            }
            car.ifPresent(of -> askOfPrice(row, stated, of));
            PartRow read = lacking ? stated.gone() : stated;
            // A row that cannot be used takes no place from a later one of the same part.
            if (row.isUsable() && !seen.add(Spelling.name(read.car()) + "\n" + read.part().name())) {
                row.setAside("part", "this part of this car stands in an earlier row; state the number of pieces in count");
            }
            if (row.use()) {
                byCar.computeIfAbsent(Spelling.name(read.car()), name -> new ArrayList<>()).add(read);
            }
        }
        return new PartoutFile(byCar, rows.read());
    }

    /** Whether the car is in play and can have such a part. */
    private static void check(NamedRows.Row row, Optional<CandidateCar> car, Optional<PartKind> part, List<String> names) {
        if (row.text("car").isEmpty()) {
            row.reject("car", "the row names no car");
        } else if (car.isEmpty()) {
            row.setAside("car", "cars.csv has no such car" + Spelling.nearest(row.text("car"), names)
                    .map(near -> "; did you mean " + near + "?").orElse(""));
        } else if (part.isPresent()) {
            DamageLeaves.cannotHave(car.get().facts(), part.get()).ifPresent(why -> row.setAside("part", why));
        }
    }

    /** One part that is to bring more than its whole car is to be had for. */
    private static void askOfPrice(NamedRows.Row row, PartRow part, CandidateCar car) {
        double whole = car.priceOrBid().map(Price::amount).orElse(Double.POSITIVE_INFINITY);
        if (row.isUsable() && part.price().orElse(0) > whole) {
            row.ask("price", "one part is to bring more than the whole car is to be had for, " + Cell.format(whole, 0)
                    + ": is a decimal point or a digit wrong? It is counted as it stands");
        }
    }

    private static PartRow read(NamedRows.Row row, Optional<PartKind> part, Currency currency) {
        OptionalDouble count = row.number("count", 1, MOST_PIECES);
        if (count.isPresent() && count.getAsDouble() != Math.rint(count.getAsDouble())) {
            row.reject("count", "pieces are counted whole");
        }
        boolean mayCost = part.map(PartKind::isHulk).orElse(false);
        OptionalDouble price = money(row, "price", currency, mayCost);
        Optional<Boolean> ruleMet = row.yesOrNo("local_rule");
        if (part.map(PartKind::ruled).orElse(false) && ruleMet.isEmpty()) {
            row.ask("local_rule", "is it lawful where you live to sell this part used? Until local_rule says yes it earns nothing");
        }
        Optional<PartState> state = row.word("state", PartState.WORDS);
        OptionalDouble good = chance(row, "chance_good");
        if (state.equals(Optional.of(PartState.GONE)) && good.isEmpty() && !PartState.saysGone(row.name("state"))) {
            row.odd("state", "this is taken for gone: the part brings nothing, and the swap does not count on it. If it may still be good,"
                    + " write doubtful, or a chance in chance_good");
        }
        return new PartRow(row.text("car"), part.orElse(new PartKind("", "", "", "")), (int) Math.round(count.orElse(1)),
                state, good,
                row.decisiveWord("goes_to", GoesTo.WORDS).orElse(GoesTo.SELL), price, chance(row, "sells"),
                row.number("days", 0.1, 10_000), row.number("hours", 0, 1_000), money(row, "postage", currency, false),
                money(row, "postage_charged", currency, false), money(row, "packing", currency, false), row.number("fee", 0, 100),
                Spelling.name(row.text("bundle")), ruleMet.orElse(false), row.line());
    }

    /** A chance: between 0 and 1, or in per cent with its sign. */
    private static OptionalDouble chance(NamedRows.Row row, String column) {
        Optional<BigDecimal> number = row.number(column);
        if (number.isEmpty()) {
            return OptionalDouble.empty();
        }
        double chance = number.get().doubleValue() / (row.text(column).contains("%") ? 100 : 1);
        if (chance < 0 || chance > 1) {
            row.reject(column, "a chance lies between 0 and 1, or is written in per cent with the sign, such as 85 %");
            return OptionalDouble.empty();
        }
        return OptionalDouble.of(chance);
    }

    private static OptionalDouble money(NamedRows.Row row, String column, Currency currency, boolean mayCost) {
        Optional<Money> money = row.money(column, "currency", currency);
        Optional<BigDecimal> amount = money.flatMap(m -> row.converted(column, m, currency, LocalDate.MAX));
        if (amount.isPresent() && amount.get().signum() < 0 && !mayCost) {
            row.reject(column, "this cannot be below 0");
        }
        return amount.isPresent() ? OptionalDouble.of(amount.get().doubleValue()) : OptionalDouble.empty();
    }

    /** The rows of a car. */
    List<PartRow> rows(String car) {
        return byCar.getOrDefault(Spelling.name(car), List.of());
    }

    /**
     * Whether the file speaks of a car.
     *
     * @param car what the car is called
     * @return whether any used row names it
     */
    public boolean speaksOf(String car) {
        return !rows(car).isEmpty();
    }

    /**
     * What became of the rows.
     *
     * @return counts and problems
     */
    public RowsRead read() {
        return read;
    }
}
