package swapworth.report;

import java.math.BigDecimal;
import java.time.LocalDate;
import java.util.List;
import java.util.TreeSet;
import swapworth.project.Category;
import swapworth.project.Entry;
import swapworth.project.Ledger;
import swapworth.project.LedgerSums;
import swapworth.table.Cell;
import swapworth.table.Column;
import swapworth.table.Table;

/** What was done to a car and paid for it, by category, in the file that its owner hands on. */
final class WorkSection {
    private final Ledger ledger;
    private final Table.Builder table;
    private BigDecimal all = BigDecimal.ZERO;
    private double hours;

    WorkSection(Ledger ledger) {
        this.ledger = ledger;
        String unit = ledger.currency().getCurrencyCode();
        this.table = Table.titled("What was paid, " + unit + ", to " + ledger.on()).columns(Column.words("category"),
                Column.words("first"), Column.words("last"), Column.number("rows", ""),
                Column.number("paid, less what came back", unit).key("paid"), Column.number("own hours", "h"),
                Column.sentences("receipts"));
        for (LedgerSums.Sum sum : ledger.sums().byCategory()) {
            List<Entry> done = ledger.entries().stream().filter(e -> e.category().words().equals(sum.name())
                    && e.status() == Entry.Status.ACTUAL && e.category() != Category.SOLD).toList();
            if (!done.isEmpty()) {
                add(sum, done);
            }
        }
        table.row(Cell.words("all"), Cell.BLANK, Cell.words(ledger.on().toString()), Cell.BLANK, Cell.amount(all), hours(hours),
                Cell.BLANK);
        addTools();
    }

    private void add(LedgerSums.Sum sum, List<Entry> done) {
        BigDecimal paid = sum.paid().subtract(sum.refunded());
        double own = done.stream().mapToDouble(Entry::hours).sum();
        all = all.add(paid);
        hours += own;
        List<LocalDate> days = done.stream().map(Entry::date).sorted().toList();
        TreeSet<String> receipts = new TreeSet<>();
        done.stream().map(Entry::receipt).filter(r -> !r.isEmpty()).forEach(r -> receipts.add(Discreet.text(r)));
        table.row(Cell.words(sum.name()), Cell.words(days.get(0).toString()), Cell.words(days.get(days.size() - 1).toString()),
                Cell.whole(done.size()), Cell.amount(paid), hours(own), Cell.words(String.join(", ", receipts)));
    }

    private static Cell hours(double hours) {
        return hours > 0 ? Cell.number(hours, 1) : Cell.BLANK;
    }

    private void addTools() {
        BigDecimal kept = ledger.sums().keptSoFar();
        if (kept.signum() != 0) {
            add("of it tools that stay with the owner", kept);
            add("all without these tools", all.subtract(kept));
        }
    }

    private void add(String what, BigDecimal amount) {
        table.row(Cell.words(what), Cell.BLANK, Cell.BLANK, Cell.BLANK, Cell.amount(amount), Cell.BLANK, Cell.BLANK);
    }

    Section section() {
        return Section.of("work", "What was done and paid", Part.prose("From the owner's ledger, exact to the smallest coin; other"
                + " currencies at the rate of their day. Cost is not value. Receipts can be shown under the names given."),
                Part.rows(table.build()));
    }
}
