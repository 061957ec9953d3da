package swapworth.project;

import java.math.BigDecimal;
import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.Comparator;
import java.util.Currency;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.BinaryOperator;
import java.util.stream.Stream;
import swapworth.project.Entry.Direction;
import swapworth.project.Entry.Status;
import swapworth.reading.Spelling;

/** What rows of a ledger make doubtful when they are held against each other; each is asked about, none is changed. */
final class LedgerDoubts {
    /** So many days between the payment at an end of the ledger and the next one make its year doubtful. */
    private static final int FAR = 366;
    /** In a ledger of no more rows one may well be more than the others. */
    private static final int FEW_ROWS = 4;

    private final List<LedgerRow> rows;
    private final Ledger.Options options;
    /** Whether a customer pays: the cars are then the customer's. */
    private final boolean customers;
    /** The cars for whose purchase there is a row, and the day of the first. */
    private final Map<String, LocalDate> bought = new HashMap<>();
    /** The lines on which payments stand, by what makes them one. */
    private final Map<String, Integer> seen = new HashMap<>();

    LedgerDoubts(List<LedgerRow> rows, Ledger.Options options) {
        this.rows = rows;
        this.options = options;
        customers = rows.stream().anyMatch(row -> row.category() == Category.INVOICE);
        for (LedgerRow one : rows) {
            if (one.category() == Category.PURCHASE && one.direction() == Direction.OUT && one.date().isPresent()) {
                one.cars().forEach(car -> bought.merge(Spelling.name(car), one.date().get(),
                        BinaryOperator.minBy(Comparator.<LocalDate>naturalOrder())));
            }
        }
    }

    /** Where some rows state a currency and others none, one question stands for all of these. */
    void ofCurrency(Currency base) {
        List<LedgerRow> unsaid = rows.stream().filter(LedgerRow::isUnsaid).toList();
        if (!unsaid.isEmpty() && unsaid.size() < rows.stream().filter(r -> r.amount().isPresent()).count()) {
            unsaid.get(0).row.ask(LedgerRow.AMOUNT, (unsaid.size() == 1 ? "nothing states the currency of this amount: it is"
                    : "nothing states the currency of this amount and " + (unsaid.size() - 1) + " more: they are") + " counted in "
                    + base.getCurrencyCode() + ", that of most rows");
        }
    }

    /**
     * A mistyped year moves the day of the whole ledger, or makes money stand for decades: the first and the last payment are asked about.
     */
    void ofFarDays() {
        List<LedgerRow> done = rows.stream().filter(r -> r.status() == Status.ACTUAL && r.date().isPresent())
                .sorted(Comparator.comparing((LedgerRow r) -> r.date().orElseThrow())).toList();
        int last = done.size() - 1;
        if (last > 0) {
            askIfFar(done.get(last), done.get(last - 1), "after the payment before it, and all is counted as of this day");
            askIfFar(done.get(0), done.get(1), "before the next payment");
        }
    }

    private static void askIfFar(LedgerRow end, LedgerRow next, String where) {
        LocalDate day = end.date().orElseThrow();
        long days = Math.abs(ChronoUnit.DAYS.between(day, next.date().orElseThrow()));
        if (days > FAR) {
            end.row.ask(LedgerRow.DATE, day + " lies " + days + " days " + where + ": is the year right?");
        }
    }

    /** What is sold of a car that was never bought, or before it was. A shop sells parts of cars that its customer bought. */
    void ofPurchase(LedgerRow one, LocalDate date) {
        if (one.direction() != Direction.IN || one.category() != Category.SOLD || customers) {
            return;
        }
        for (String car : one.cars()) {
            Optional<LocalDate> since = options.namesOf(car).map(Spelling::name).flatMap(name -> Stream.ofNullable(bought.get(name)))
                    .min(LocalDate::compareTo);
            if (!car.equals(LedgerRow.PROJECT) && since.isEmpty()) {
                one.row.ask(LedgerRow.CAR, "something of " + car + " is sold, and no row tells of its purchase: is the name another, was"
                        + " it yours before, or is it the finished car (category 'car sold')?");
            } else if (since.isPresent() && date.isBefore(since.get())) {
                one.row.ask(LedgerRow.DATE, "something of " + car + " is sold before " + since.get()
                        + ", the day on which it was bought: which day is right?");
            }
        }
    }

    /** One payment may have been entered twice. */
    void ofTwins(LedgerRow one, LocalDate date) {
        String key = date + "\n" + one.amount() + "\n" + one.gross() + "\n" + Spelling.key(one.row.text(LedgerRow.NOTE)) + "\n"
                + (one.row.text(LedgerRow.NOTE).isEmpty() ? Spelling.key(one.row.text(LedgerRow.ITEM)) : "") + "\n" + one.hours();
        Integer before = seen.putIfAbsent(key, one.row.line());
        if (before != null) {
            one.row.ask(LedgerRow.AMOUNT, "the same day, amount and note stand on line " + before + " too; both are counted: is it one"
                    + " payment entered twice?");
        }
    }

    /**
     * Money of a row that says neither what it is for nor whether it goes out counts as going out. In a file that says so of other rows
     * each is asked about; in one that says it of none the first stands for all.
     */
    void ofDirection() {
        List<LedgerRow> silent = rows.stream().filter(LedgerRow::isSilent).toList();
        if (silent.isEmpty()) {
            return;
        }
        if (rows.stream().anyMatch(LedgerRow::saysWhatFor)) {
            silent.forEach(r -> r.row.ask(LedgerRow.DIRECTION, "neither category nor direction says whether this goes out or comes in: it"
                    + " is counted as money that goes out; if it came in, write in"));
        } else {
            silent.get(0).row.ask(LedgerRow.DIRECTION, "no row of this file has a category or a direction: " + (silent.size() == 1
                    ? "this one is counted" : "all " + silent.size() + " with an amount are counted")
                    + " as money that goes out; where some came in, add the column direction and write in");
        }
    }

    /**
     * A row that is for something else than a car and yet more than all others together may have a digit too many.
     *
     * @param counted what each row counts, in the order of the rows
     */
    void ofMost(List<Optional<Entry>> counted) {
        int most = -1;
        int goingOut = 0;
        BigDecimal all = BigDecimal.ZERO;
        for (int i = 0; i < rows.size(); i++) {
            Optional<Entry> entry = counted.get(i).filter(e -> e.direction() == Direction.OUT && e.amount().signum() > 0);
            if (entry.isPresent() && rows.get(i).row.isUsable()) {
                goingOut++;
                all = all.add(entry.get().amount());
                most = most < 0 || entry.get().amount().compareTo(counted.get(most).orElseThrow().amount()) > 0 ? i : most;
            }
        }
        if (goingOut <= FEW_ROWS) {
            return;
        }
        Entry largest = counted.get(most).orElseThrow();
        boolean mayBeCar = largest.category() == Category.PURCHASE || largest.category() == Category.UNSORTED;
        BigDecimal others = all.subtract(largest.amount());
        if (!mayBeCar && largest.amount().compareTo(others) > 0) {
            rows.get(most).row.ask(rows.get(most).amountColumn(), "this is more than all other " + (goingOut - 1) + " rows that go out"
                    + " together, " + LedgerEntries.plain(others) + ": is a decimal point or a digit wrong? It is counted as it stands");
        }
    }

    /**
     * The sale of the finished car, or what an insurer pays for it, stands under another category beside the value of the car: more comes
     * in than any car cost, or more from the insurer than was paid for insurance.
     *
     * @param counted what each row counts, in the order of the rows
     */
    void ofCarSale(List<Optional<Entry>> counted) {
        List<Entry> out = counted.stream().flatMap(Optional::stream).filter(e -> e.direction() == Direction.OUT).toList();
        Optional<BigDecimal> dearest = out.stream().filter(e -> e.category() == Category.PURCHASE).map(Entry::amount)
                .max(Comparator.naturalOrder());
        BigDecimal insured = out.stream().filter(e -> e.category() == Category.INSURANCE).map(Entry::amount)
                .reduce(BigDecimal.ZERO, BigDecimal::add);
        for (int i = 0; i < rows.size(); i++) {
            Optional<Entry> in = counted.get(i).filter(e -> e.direction() == Direction.IN && !e.category().standsApart());
            boolean claim = in.filter(e -> e.category() == Category.INSURANCE && e.amount().compareTo(insured) > 0).isPresent();
            if (claim || dearest.isPresent() && in.filter(e -> e.amount().compareTo(dearest.get()) > 0).isPresent()) {
                rows.get(i).row.ask(LedgerRow.CATEGORY, (claim ? "more comes in than was paid for insurance"
                        : "more comes in than any car of this ledger cost") + ": if the finished car is sold here, its category is"
                        + " 'car sold', and 'total loss' if an insurer pays for it; else it is counted beside the value of the car");
            }
        }
    }

    /** What has neither note nor item cannot be told from another row; one question stands for all. */
    void ofNotes() {
        List<LedgerRow> silent = rows.stream().filter(r -> r.row.isUsable() && r.row.text(LedgerRow.NOTE).isEmpty()
                && r.row.text(LedgerRow.ITEM).isEmpty()).toList();
        if (!silent.isEmpty()) {
            silent.get(0).row.ask(LedgerRow.NOTE, "a row without a note or an item cannot be told from another: what was it"
                    + (silent.size() == 1 ? "?" : ", and what were the " + (silent.size() - 1) + " more that have neither?"));
        }
    }
}
