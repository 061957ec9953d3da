package swapworth.project;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Currency;
import java.util.List;
import java.util.Optional;
import swapworth.assumptions.Assumptions;
import swapworth.money.Money;
import swapworth.project.Entry.Direction;
import swapworth.project.Entry.Status;
import swapworth.reading.NamedRows;

/**
 * What rows of a ledger count, once currency and day of the whole are settled.
 *
 * @param base the currency in which all is counted
 * @param on the day up to which rows can be done
 * @param assumptions what stands in where rows do not speak
 */
record LedgerEntries(Currency base, LocalDate on, Assumptions assumptions) {
    private static final BigDecimal HUNDRED = BigDecimal.valueOf(100);

    /** The entry of a row; empty where it has no day. Problems go to the row. */
    Optional<Entry> of(LedgerRow said) {
        NamedRows.Row row = said.row;
        if (said.date().isEmpty()) {
            return Optional.empty();
        }
        LocalDate date = said.date().get();
        LocalDate rateDay = date.isBefore(on) ? date : on;
        Optional<Entry.Sale> sale = sale(said, rateDay);
        Optional<BigDecimal> net = sale.map(s -> s.gross().subtract(s.fee()).subtract(s.postage()));
        Optional<BigDecimal> stated = said.amount().flatMap(m -> coins(row, LedgerRow.AMOUNT, m, rateDay));
        askOfAmount(said, stated, net);
        BigDecimal amount = net.or(() -> stated).orElseGet(this::nothing);
        Money typed = net.map(left -> new Money(left, base)).or(said::amount).orElseGet(() -> new Money(amount, base));
        Status status = status(said, date);
        LocalDate due = due(said, status, date);
        Optional<Entry.Ends> ends = ends(said, amount, sale.isPresent(), rateDay);
        BigDecimal charged = charged(said, amount);
        return Optional.of(new Entry(row.line(), date, due, row.text(LedgerRow.ITEM), said.category(), said.direction(), status, typed,
                amount, ends, amount.subtract(charged), shares(said, charged), sale, said.hours().orElse(0), row.text(LedgerRow.RECEIPT),
                row.text(LedgerRow.NOTE), plan(said, rateDay), extra(said, rateDay)));
    }

    /** What was expected of a row that is done; ends that do not hold their likely amount between them are asked about and left out. */
    private Optional<Entry.Plan> plan(LedgerRow said, LocalDate day) {
        return said.planned().flatMap(m -> coins(said.row, LedgerRow.LIKELY, m, day)).map(likely -> {
            Optional<BigDecimal> low = said.low().flatMap(m -> coins(said.row, LedgerRow.LOW, m, day));
            Optional<BigDecimal> high = said.high().flatMap(m -> coins(said.row, LedgerRow.HIGH, m, day));
            if (low.isEmpty() || high.isEmpty()) {
                return new Entry.Plan(likely, Optional.empty());
            }
            if (low.get().compareTo(likely) > 0 || likely.compareTo(high.get()) > 0) {
                said.row.ask(LedgerRow.LOW, "what was expected does not stand in order, low, likely, high: " + plain(low.get()) + ", "
                        + plain(likely) + ", " + plain(high.get()) + "; the ends are not held against what was paid");
                return new Entry.Plan(likely, Optional.empty());
            }
            return new Entry.Plan(likely, Optional.of(new Entry.Ends(low.get(), high.get())));
        });
    }

    private Optional<Entry.Extra> extra(LedgerRow said, LocalDate day) {
        return said.isExtra() ? Optional.of(new Entry.Extra(said.adds().flatMap(m -> coins(said.row, LedgerRow.ADDS, m, day))))
                : Optional.empty();
    }

    private static void askOfAmount(LedgerRow said, Optional<BigDecimal> stated, Optional<BigDecimal> net) {
        if (net.isPresent() && stated.isPresent() && stated.get().compareTo(net.get()) != 0) {
            said.row.ask(LedgerRow.AMOUNT, "gross less fee and postage leaves " + net.get().toPlainString()
                    + ", and that is counted: which amount arrived?");
        }
        if (net.isPresent() && net.get().signum() < 0) {
            said.row.ask(LedgerRow.GROSS, "fee and postage take more than the gross price: is that so?");
        }
        if (net.isEmpty() && said.amount().isEmpty() && said.hours().isEmpty()) {
            said.row.reject(LedgerRow.AMOUNT, "a row needs an amount; for own hours fill hours");
        }
    }

    /** What is said to be done on a day after that of the ledger is still to come. */
    private Status status(LedgerRow said, LocalDate date) {
        if (said.status() != Status.ACTUAL) {
            return said.status();
        }
        if (date.isAfter(on)) {
            said.row.odd(LedgerRow.DATE, "this day lies after " + on + ", so the row is counted as still to come");
            return Status.COMMITTED;
        }
        if (said.row.text(LedgerRow.STATUS).isEmpty() && said.due().isPresent() && said.due().get().isAfter(on)) {
            said.row.ask(LedgerRow.DUE, "this is due after " + on + ", and no status says that it is still to come: it is counted as paid;"
                    + " if it is not, write committed or estimate");
        }
        return Status.ACTUAL;
    }

    private LocalDate due(LedgerRow said, Status status, LocalDate date) {
        LocalDate due = said.status() == Status.ACTUAL ? date : said.due().orElse(date);
        if (status == Status.ACTUAL || !due.isBefore(on)) {
            return due;
        }
        said.row.odd(said.due().isPresent() ? LedgerRow.DUE : LedgerRow.DATE, "this was due before " + on
                + " and is not done: it is counted as due on that day");
        return on;
    }

    /** The ends of an estimate in the base currency: only there can they be held against the amount that is counted. */
    private Optional<Entry.Ends> ends(LedgerRow said, BigDecimal amount, boolean sold, LocalDate day) {
        if (said.planned().isPresent()) {
            return Optional.empty();
        }
        NamedRows.Row row = said.row;
        Optional<BigDecimal> low = said.low().flatMap(m -> coins(row, LedgerRow.LOW, m, day));
        Optional<BigDecimal> high = said.high().flatMap(m -> coins(row, LedgerRow.HIGH, m, day));
        if (low.isEmpty() || high.isEmpty()) {
            return Optional.empty();
        }
        if (low.get().compareTo(amount) <= 0 && amount.compareTo(high.get()) <= 0) {
            if (amount.signum() > 0 && high.get().compareTo(amount.multiply(BigDecimal.TEN)) > 0) {
                row.ask(LedgerRow.HIGH, "the high end is more than ten times the likely amount: is a digit too many? It is counted as it"
                        + " stands");
            }
            return Optional.of(new Entry.Ends(low.get(), high.get()));
        }
        if (sold) {
            row.ask(LedgerRow.LOW, "what is left of the gross price, " + plain(amount) + ", does not lie between " + plain(low.get())
                    + " and " + plain(high.get()) + ": are these ends of the gross price? They are not counted, and the spread of its"
                    + " category is taken");
        } else {
            row.reject(LedgerRow.LOW, "low, likely and high must stand in this order, not " + plain(low.get()) + ", " + plain(amount)
                    + ", " + plain(high.get()));
        }
        return Optional.empty();
    }

    /** An amount as messages show it. */
    static String plain(BigDecimal amount) {
        return amount.stripTrailingZeros().toPlainString();
    }

    private BigDecimal charged(LedgerRow said, BigDecimal amount) {
        double percent = said.charged().orElse(said.category() == Category.TOOL ? assumptions.get("tools_charged").middle() : 100);
        return amount.multiply(BigDecimal.valueOf(percent)).divide(HUNDRED, amount.scale(), RoundingMode.HALF_EVEN);
    }

    /** What falls on which car; a sale that cost more than it brought falls on the first. */
    private static List<Entry.Share> shares(LedgerRow said, BigDecimal charged) {
        List<Entry.Share> shares = new ArrayList<>();
        List<BigDecimal> parts = charged.signum() < 0 ? List.of() : Apportioned.of(charged, said.weights());
        for (int i = 0; i < said.cars().size(); i++) {
            shares.add(new Entry.Share(said.cars().get(i), parts.isEmpty() ? (i == 0 ? charged : BigDecimal.ZERO) : parts.get(i)));
        }
        return shares;
    }

    private Optional<Entry.Sale> sale(LedgerRow said, LocalDate day) {
        NamedRows.Row row = said.row;
        if (said.gross().isEmpty()) {
            if (said.fee().isPresent() || said.postage().isPresent()) {
                row.ask(said.fee().isPresent() ? LedgerRow.FEE : LedgerRow.POSTAGE, "a fee or postage beside no gross price is not"
                        + " counted: is the amount what was left?");
            }
            return Optional.empty();
        }
        if (said.direction() != Direction.IN) {
            row.reject(LedgerRow.GROSS, "a gross price is money that comes in; direction says out");
        }
        notNegative(row, LedgerRow.GROSS, said.gross());
        notNegative(row, LedgerRow.FEE, said.fee());
        notNegative(row, LedgerRow.POSTAGE, said.postage());
        Optional<BigDecimal> gross = coins(row, LedgerRow.GROSS, said.gross().get(), day);
        BigDecimal fee = said.fee().flatMap(m -> coins(row, LedgerRow.FEE, m, day)).orElseGet(this::nothing);
        BigDecimal postage = said.postage().flatMap(m -> coins(row, LedgerRow.POSTAGE, m, day)).orElseGet(this::nothing);
        return gross.map(g -> new Entry.Sale(g, fee, postage));
    }

    private static void notNegative(NamedRows.Row row, String column, Optional<Money> money) {
        if (money.isPresent() && money.get().amount().signum() < 0) {
            row.reject(column, "of a sale, gross price, fee and postage are written without a sign; what went back to the buyer is a row "
                    + "of its own with the direction out");
        }
    }

    private int digits() {
        return Math.max(0, base.getDefaultFractionDigits());
    }

    private BigDecimal nothing() {
        return BigDecimal.ZERO.setScale(digits());
    }

    private Optional<BigDecimal> coins(NamedRows.Row row, String column, Money money, LocalDate day) {
        return row.converted(column, money, base, day).map(amount -> amount.setScale(digits(), RoundingMode.HALF_EVEN));
    }
}
