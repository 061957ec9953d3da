package swapworth.project;

import java.math.BigDecimal;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import swapworth.project.Entry.Direction;
import swapworth.table.Cell;
import swapworth.table.Column;
import swapworth.table.Table;

/** What was expected of rows that are done, held against what they came to: how far the next guess may be trusted. */
final class PlanAgainstActual {
    private final Ledger ledger;
    private final BigDecimal none;

    PlanAgainstActual(Ledger ledger) {
        this.ledger = ledger;
        this.none = ledger.nothing();
    }

    /** One line a category with its total for what goes out; none where no row that is done says what was expected of it. */
    Table table() {
        String unit = ledger.currency().getCurrencyCode();
        Table.Builder table = Table.titled("Plan against actual, " + unit + ", as of " + ledger.on()).columns(Column.words("category"),
                Column.number("rows", ""), Column.number("expected", unit), Column.number("came to", unit),
                Column.number("more than expected", unit), Column.number("more", "%"), Column.words("between low and high"));
        List<Entry> planned = ledger.entries().stream().filter(e -> e.status() == Entry.Status.ACTUAL && e.plan().isPresent()).toList();
        Map<Category, Sum> categories = new TreeMap<>();
        Sum spent = new Sum(none);
        for (Entry entry : planned) {
            categories.computeIfAbsent(entry.category(), category -> new Sum(none)).add(entry);
            if (entry.category() != Category.SOLD) {
                spent.add(entry);
            }
        }
        long done = ledger.entries().stream().filter(e -> e.status() == Entry.Status.ACTUAL).count();
        table.note(planned.size() + " of " + done + (done == 1 ? " row that is" : " rows that are") + " done still "
                + (planned.size() == 1 ? "says" : "say") + " what was expected (likely beside the amount). Of parts sold more is good, of"
                + " all else it is what the guess was short of. Nothing that is still to come is changed by it: where guesses of a"
                + " category fall short again and again, raise those to come.");
        categories.forEach((category, sum) -> sum.row(table, category.words()));
        if (categories.size() > 1 && spent.rows > 0) {
            spent.row(table, "all but parts sold");
        }
        return table.build();
    }

    /** Some rows together, a refund against what was paid. */
    private static final class Sum {
        private int rows;
        private BigDecimal expected;
        private BigDecimal cameTo;
        private int ranges;
        private int inside;

        Sum(BigDecimal none) {
            expected = none;
            cameTo = none;
        }

        void add(Entry entry) {
            Entry.Plan plan = entry.plan().orElseThrow();
            boolean against = (entry.direction() == Direction.IN) != (entry.category() == Category.SOLD);
            rows++;
            expected = against ? expected.subtract(plan.likely()) : expected.add(plan.likely());
            cameTo = against ? cameTo.subtract(entry.amount()) : cameTo.add(entry.amount());
            if (plan.range().isPresent()) {
                Entry.Ends ends = plan.range().get();
                ranges++;
                inside += entry.amount().compareTo(ends.low()) >= 0 && entry.amount().compareTo(ends.high()) <= 0 ? 1 : 0;
            }
        }

        void row(Table.Builder table, String name) {
            BigDecimal more = cameTo.subtract(expected);
            table.row(Cell.words(name), Cell.whole(rows), Cell.amount(expected), Cell.amount(cameTo), Cell.amount(more),
                    expected.signum() > 0 ? Cell.signed(100 * more.doubleValue() / expected.doubleValue(), 0) : Cell.BLANK,
                    Cell.words(ranges == 0 ? "no ends stated" : inside + " of " + ranges));
        }
    }
}
