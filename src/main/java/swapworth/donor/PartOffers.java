package swapworth.donor;

import static java.util.Objects.requireNonNull;

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
import swapworth.listing.PriceKind;
import swapworth.money.Money;
import swapworth.reading.FolderSettings;
import swapworth.reading.NamedRows;
import swapworth.reading.RowsRead;
import swapworth.reading.Spelling;
import swapworth.reading.Vocabulary;

/**
 * Used parts on offer: the rows of {@code parts.csv}. Needed are the columns {@code part} and {@code price}; the others are
 * {@code vehicle, running_gear, mileage, price_kind, seen_on, id, currency, seller, source, note}. An offer seen again (the same id,
 * the same part as far run) counts once, by its last row.
 */
public final class PartOffers {
    private static final Vocabulary<PriceKind> KINDS = Vocabulary.<PriceKind>empty()
            .with(PriceKind.ASKING, "asking", "asked", "ask", "on offer")
            .with(PriceKind.SOLD, "sold", "paid", "sale");

    /** A part that was taken out runs no further; what is told of it may be rounded. */
    private static final double SLIP_OF_MILES = 1_000;

    private final List<Offer> offers;
    private final RowsRead read;

    private PartOffers(List<Offer> offers, RowsRead read) {
        this.offers = List.copyOf(offers);
        this.read = read;
    }

    /** One part on offer, or sold. */
    record Offer(PartKind part, String vehicle, String gear, OptionalDouble miles, double price, PriceKind kind,
            Optional<LocalDate> seenOn) {

        /** Whether it can be the offer of another row: the same part, as far run. */
        boolean canBe(Offer other) {
            return part.equals(other.part) && agree(vehicle, other.vehicle) && agree(gear, other.gear) && (miles.isEmpty()
                    || other.miles.isEmpty() || Math.abs(miles.getAsDouble() - other.miles.getAsDouble()) <= SLIP_OF_MILES);
        }

        private static boolean agree(String a, String b) {
            return a.isEmpty() || b.isEmpty() || a.equals(b);
        }
    }

    /**
     * No offers.
     *
     * @return an empty collection
     */
    public static PartOffers none() {
        return new PartOffers(List.of(), new RowsRead("no parts.csv", 0, List.of(), List.of(), List.of(), List.of(), 0));
    }

    /**
     * Reads a file.
     *
     * @param file the file, for instance {@code parts.csv}
     * @param settings spellings, conventions and rates of its folder
     * @param currency the base currency
     * @return the offers, every row accounted for; a part that is not known is set aside with the nearest name
     * @throws swapworth.reading.UnusableFileException if the file as a whole cannot be used
     */
    public static PartOffers read(Path file, FolderSettings settings, Currency currency) {
        requireNonNull(currency, "currency");
        NamedRows rows = NamedRows.of(file, settings).needs("part", "item", "name").needs("price", "asked", "ask", "amount")
                .column("vehicle", "line", "model", "car").column("running_gear", "gear").column("mileage", "miles", "km", "odometer")
                .column("price_kind", "kind").column("seen_on", "date", "seen").column("id").column("currency").column("seller")
                .column("source").column("note", "notes");
        Map<String, Offer> byId = new LinkedHashMap<>();
        Map<String, Integer> lineOf = new HashMap<>();
        for (NamedRows.Row row : rows.rows()) {
            if (row.sumsUp("part", "vehicle")) {
                continue;
            }
            Optional<PartKind> part = kind(row, "part");
            Optional<Money> money = row.money("price", "currency", currency);
            Optional<LocalDate> seen = row.date("seen_on");
            OptionalDouble miles = row.miles("mileage");
            Optional<BigDecimal> price = price(row, money, currency, seen);
            PriceKind kind = row.word("price_kind", KINDS).orElse(PriceKind.ASKING);
            if (row.isUsable()) {
                Offer offer = new Offer(part.orElseThrow(), Spelling.name(row.name("vehicle")), Spelling.name(row.name("running_gear")),
                        miles, price.orElseThrow().doubleValue(), kind, seen);
                String own = "line " + row.line();
                String id = row.text("id").isEmpty() ? own : Spelling.name(row.text("id")) + " " + kind;
                boolean another = byId.containsKey(id) && !offer.canBe(byId.get(id));
                if (another) {
                    row.odd("id", "the id stands for another part, line or distance on line " + lineOf.get(id)
                            + ": taken for another offer; give each offer an id of its own");
                }
                lineOf.putIfAbsent(id, row.line());
                byId.merge(another ? own : id, offer, (a, b) -> b.seenOn().isPresent() && a.seenOn().isPresent()
                        && b.seenOn().get().isBefore(a.seenOn().get()) ? a : b);
            }
            row.use();
        }
        return new PartOffers(new ArrayList<>(byId.values()), rows.read());
    }

    private static Optional<BigDecimal> price(NamedRows.Row row, Optional<Money> money, Currency currency, Optional<LocalDate> seen) {
        if (row.text("price").isEmpty()) {
            row.setAside("price", "the row has no price");
        }
        Optional<BigDecimal> price = money.flatMap(m -> row.converted("price", m, currency, seen.orElse(LocalDate.MAX)));
        if (price.isPresent() && price.get().signum() < 0) {
            row.reject("price", "a price cannot be below 0");
        } else if (price.isPresent() && price.get().signum() == 0) {
            row.setAside("price", "a price of 0 says nothing of what the part is worth");
        }
        return price;
    }

    /** The part of a row, in the user's own spelling first; the row is set aside where nobody knows it. */
    static Optional<PartKind> kind(NamedRows.Row row, String column) {
        String name = row.name(column);
        Optional<PartKind> kind = PartCatalogue.get().kind(name);
        if (name.isEmpty()) {
            row.reject(column, "the row names no part");
        } else if (kind.isEmpty()) {
            row.setAside(column, "no such part is known" + PartCatalogue.get().nearest(name).map(near -> " (did you mean " + near
                    + "?)").orElse("")
                    + "; a row of words.csv (" + column + ", your word, what it means) maps it once");
        }
        return kind;
    }

    List<Offer> offers() {
        return offers;
    }

    /**
     * The number of different offers.
     *
     * @return of rows with one id, one
     */
    public int count() {
        return offers.size();
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
