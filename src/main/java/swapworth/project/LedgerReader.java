package swapworth.project;

import static swapworth.project.LedgerRow.AMOUNT;
import static swapworth.project.LedgerRow.CAR;
import static swapworth.project.LedgerRow.CATEGORY;
import static swapworth.project.LedgerRow.DATE;
import static swapworth.project.LedgerRow.ITEM;
import static swapworth.project.LedgerRow.NOTE;

import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.Currency;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;
import swapworth.project.Entry.Status;
import swapworth.reading.Currencies;
import swapworth.reading.FolderSettings;
import swapworth.reading.NamedRows;

/**
 * Reads a ledger: first what each row says ({@link LedgerRow}), then, when currency and day are settled, what it counts
 * ({@link LedgerEntries}); on the way it asks about what rows make doubtful together ({@link LedgerDoubts}).
 */
final class LedgerReader {
    private final NamedRows rows;
    private final FolderSettings settings;
    private final Ledger.Options options;

    LedgerReader(Path file, FolderSettings settings, Ledger.Options options) {
        this.settings = settings;
        this.options = options;
        rows = NamedRows.of(file, settings).needs(DATE, "day", "paid on").needs(AMOUNT, "price", "cost", "sum")
                .needs(NOTE, "what", "description", "text").column(CAR, "for").column(ITEM, "part").column(CATEGORY, "kind")
                .column(LedgerRow.DIRECTION, "in or out").column(LedgerRow.CURRENCY).column(LedgerRow.STATUS)
                .column(LedgerRow.DUE, "due date", "due on").column(LedgerRow.LOW).column(LedgerRow.LIKELY).column(LedgerRow.HIGH)
                .column(LedgerRow.GROSS, "gross price").column(LedgerRow.FEE, "selling fee").column(LedgerRow.POSTAGE, "shipping cost")
                .column(LedgerRow.HOURS, "own hours").column(LedgerRow.CHARGED, "charged percent")
                .column(LedgerRow.RECEIPT, "bill", "invoice").column(LedgerRow.NEEDED).column(LedgerRow.ADDS, "adds to the price");
    }

    Ledger read() {
        List<LedgerRow> said = new ArrayList<>();
        for (NamedRows.Row row : rows.rows()) {
            if (!row.sumsUp(DATE, NOTE, ITEM, CATEGORY, CAR)) {
                said.add(new LedgerRow(row, options));
            }
        }
        LedgerDoubts doubts = new LedgerDoubts(said, options);
        Currency base = options.baseCurrency().or(() -> settings.conventions().currency()).orElseGet(() -> mostFrequent(said));
        doubts.ofCurrency(base);
        said.forEach(row -> row.saidIn(base));
        doubts.ofFarDays();
        LocalDate on = options.on().orElseGet(() -> lastDone(said));
        LedgerEntries entries = new LedgerEntries(base, on, options.assumptions());
        List<Optional<Entry>> counted = new ArrayList<>();
        for (LedgerRow row : said) {
            Optional<Entry> entry = entries.of(row);
            entry.map(Entry::date).ifPresent(date -> {
                doubts.ofPurchase(row, date);
                doubts.ofTwins(row, date);
            });
            counted.add(entry);
        }
        doubts.ofDirection();
        doubts.ofNotes();
        doubts.ofMost(counted);
        doubts.ofCarSale(counted);
        List<Entry> used = new ArrayList<>();
        List<Entry> carSales = new ArrayList<>();
        List<Entry> invoices = new ArrayList<>();
        for (int i = 0; i < said.size(); i++) {
            if (said.get(i).row.use()) {
                Category category = said.get(i).category();
                (category == Category.CAR_SOLD ? carSales : category == Category.INVOICE ? invoices : used)
                        .add(counted.get(i).orElseThrow());
            }
        }
        return new Ledger(used, carSales, invoices, on, base, rows.read());
    }

    private static Currency mostFrequent(List<LedgerRow> rows) {
        Map<String, Integer> counts = new HashMap<>();
        rows.stream().flatMap(row -> row.amount().stream()).filter(m -> !m.currency().equals(Currencies.UNSAID))
                .forEach(m -> counts.merge(m.currency().getCurrencyCode(), 1, Integer::sum));
        return counts.entrySet().stream().max(Comparator.comparing((Map.Entry<String, Integer> e) -> e.getValue())
                .thenComparing(Map.Entry::getKey, Comparator.reverseOrder())).map(e -> Currency.getInstance(e.getKey()))
                .orElse(Currencies.USUAL);
    }

    /** The day of the last row that is done; where none is, of the first of all. */
    private static LocalDate lastDone(List<LedgerRow> rows) {
        return days(rows.stream().filter(row -> row.status() == Status.ACTUAL)).max(Comparator.naturalOrder())
                .or(() -> days(rows.stream()).min(Comparator.naturalOrder())).orElse(LocalDate.EPOCH);
    }

    private static Stream<LocalDate> days(Stream<LedgerRow> rows) {
        return rows.flatMap(row -> row.date().stream());
    }
}
