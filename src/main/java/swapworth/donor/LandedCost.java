package swapworth.donor;

import static java.util.Objects.requireNonNull;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.Currency;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import swapworth.listing.PriceIncludes;
import swapworth.listing.Seller;
import swapworth.reading.Spelling;
import swapworth.table.Cell;
import swapworth.table.Column;
import swapworth.table.Table;

/**
 * What a car costs once it stands in the yard: L(b) = b + every line of the fee tables at the bid b. Lines are exact; the total is
 * rounded once, to the cent.
 *
 * @param purchase what the costs depend on
 * @param currency the currency of all amounts
 * @param lines the bid first, then one line a fee table, those that add nothing with the reason
 * @param missing why lines are missing; empty where the total is whole
 * @param questions what the row leaves open that could change the total
 */
public record LandedCost(Purchase purchase, Currency currency, List<Line> lines, List<String> missing, List<String> questions) {

    /** The lowest total first; one of which a line is missing looks lower than it is and stands behind those that are whole. */
    public static final Comparator<LandedCost> CHEAPEST = Comparator.comparing(LandedCost::whole).reversed()
            .thenComparing(LandedCost::total);

    private static final String BID = "bid";

    /**
     * One line.
     *
     * @param name what it is called
     * @param kind what it is for
     * @param amount exact, in the base currency
     * @param how how it came about
     */
    public record Line(String name, CostKind kind, BigDecimal amount, String how) {

        /** Checks that nothing is missing. */
        public Line {
            requireNonNull(name, "name");
            requireNonNull(kind, "kind");
            requireNonNull(amount, "amount");
            requireNonNull(how, "how");
        }
    }

    /** Copies the lists in. */
    public LandedCost {
        requireNonNull(purchase, "purchase");
        requireNonNull(currency, "currency");
        lines = List.copyOf(lines);
        missing = List.copyOf(missing);
        questions = List.copyOf(questions);
    }

    /**
     * The landed cost of a purchase.
     *
     * @param schedule the fee tables
     * @param purchase the bid and what else they depend on
     * @return its lines; where a table cannot be used or does not hold the bid, the missing line is named
     */
    public static LandedCost of(FeeSchedule schedule, Purchase purchase) {
        List<Line> lines = new ArrayList<>();
        lines.add(new Line(BID, CostKind.OTHER, purchase.bid(), purchase.typed()));
        List<String> missing = new ArrayList<>(schedule.missingFrom(purchase));
        Map<String, BigDecimal> above = new HashMap<>(Map.of(BID, purchase.bid()));
        for (FeeTable table : schedule.tablesFor(purchase.car())) {
            FeeTable.Charge charge = table.charge(purchase, above, schedule.usualDays());
            if (charge instanceof FeeTable.Line line) {
                lines.add(new Line(table.name, table.kind, line.amount(), line.how()));
                above.put(Spelling.key(table.name), line.amount());
            } else if (charge instanceof FeeTable.Unknown unknown) {
                missing.add(unknown.reason());
            }
        }
        return new LandedCost(purchase, schedule.currency(), lines, missing, questions(purchase));
    }

    private static List<String> questions(Purchase purchase) {
        List<String> questions = new ArrayList<>();
        if (purchase.seller() == Seller.AUCTION && purchase.includes() == PriceIncludes.UNKNOWN) {
            questions.add("does the price include fees or tax (price_includes)? At an auction that can be a third; it is taken as the bid "
                    + "alone");
        }
        if (purchase.seller() == Seller.UNKNOWN) {
            questions.add("who sells it (seller)? Until that is known every fee and tax is counted");
        }
        return questions;
    }

    /**
     * Everything paid.
     *
     * @return to the cent, half a cent up; at least this where lines are missing
     */
    public BigDecimal total() {
        BigDecimal sum = BigDecimal.ZERO;
        for (Line line : lines) {
            sum = sum.add(line.amount());
        }
        return Cents.rounded(sum);
    }

    /**
     * Whether no line is missing.
     *
     * @return whether the total holds everything
     */
    public boolean whole() {
        return missing.isEmpty();
    }

    /**
     * Every line.
     *
     * @return one row a line, the total last
     */
    public Table table() {
        String car = purchase.car().isEmpty() ? "" : " of " + purchase.car();
        Table.Builder table = Table.titled("Landed cost" + car + ", " + currency.getCurrencyCode())
                .columns(Column.words("line"), Column.number("amount", ""), Column.words("how"));
        missing.forEach(reason -> table.note("Not in the total: " + reason + "."));
        questions.forEach(question -> table.note("Question: " + question + "."));
        for (Line line : lines) {
            table.row(Cell.words(line.name()), Cents.cell(line.amount()), Cell.words(line.how()));
        }
        return table.row(Cell.words("landed cost"), Cents.cell(total()), Cell.words(whole() ? "lines are exact, the total is rounded once"
                : "at least")).build();
    }
}
