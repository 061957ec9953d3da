package swapworth.project;

import java.math.BigDecimal;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Currency;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.stream.Stream;
import swapworth.money.Money;
import swapworth.project.Entry.Direction;
import swapworth.project.Entry.Status;
import swapworth.reading.Currencies;
import swapworth.reading.NamedRows;
import swapworth.reading.Vocabulary;

/** What one row of a ledger says by itself, before currency and day of the whole are settled. */
final class LedgerRow {
    /** The car of a row that names none. */
    static final String PROJECT = "project";
    static final String DONOR = "donor";

    static final String DATE = "date";
    static final String AMOUNT = "amount";
    static final String NOTE = "note";
    static final String CAR = "car";
    static final String ITEM = "item";
    static final String CATEGORY = "category";
    static final String DIRECTION = "direction";
    static final String CURRENCY = "currency";
    static final String STATUS = "status";
    static final String DUE = "due";
    static final String LOW = "low";
    static final String LIKELY = "likely";
    static final String HIGH = "high";
    static final String GROSS = "gross";
    static final String FEE = "fee";
    static final String POSTAGE = "postage";
    static final String HOURS = "hours";
    static final String CHARGED = "charged";
    static final String RECEIPT = "receipt";
    static final String NEEDED = "needed";
    static final String ADDS = "adds";

    /** The shares of a car that has no other beside it. */
    private static final Set<BigDecimal> ALONE = Set.of(BigDecimal.ONE, BigDecimal.valueOf(100).stripTrailingZeros());
    private static final Vocabulary<Category> CATEGORIES = Category.vocabulary();
    private static final Vocabulary<Direction> DIRECTIONS = Vocabulary.<Direction>empty()
            .with(Direction.OUT, "out", "paid", "expense", "-").with(Direction.IN, "in", "received", "income", "refund", "+");
    private static final Vocabulary<Status> STATES = Vocabulary.<Status>empty().with(Status.ACTUAL, "actual", "paid", "done", "received")
            .with(Status.COMMITTED, "committed", "ordered", "agreed").with(Status.ESTIMATE, "estimate", "estimated", "planned", "guess");

    private static final Vocabulary<Need> NEEDS = Vocabulary.<Need>empty().with(Need.NEEDED, "yes", "y", "needed", "true")
            .with(Need.EXTRA, "no", "n", "extra", "wanted", "false");

    /** Whether the car is finished without it. */
    private enum Need { NEEDED, EXTRA }

    final NamedRows.Row row;
    private final Optional<LocalDate> due;
    private final OptionalDouble hours;
    private final OptionalDouble charged;
    private Optional<LocalDate> date;
    private Optional<Money> amount;
    /** What was expected of a row that is done: then low and high are its ends, and not those of an estimate. */
    private Optional<Money> planned = Optional.empty();
    private Optional<Money> low;
    private Optional<Money> high;
    private Optional<Money> gross;
    private Optional<Money> fee;
    private Optional<Money> postage;
    private Optional<Money> adds;
    private final boolean extra;
    private Category category;
    private Direction direction;
    private Status status;
    private List<String> cars = List.of(PROJECT);
    private List<BigDecimal> weights = List.of(BigDecimal.ONE);

    LedgerRow(NamedRows.Row row, Ledger.Options options) {
        this.row = row;
        // Where no currency is stated an amount is in that of the folder, where somebody says which it is, else in that of most rows.
        Currency otherwise = options.baseCurrency().orElse(Currencies.UNSAID);
        date = row.date(DATE);
        due = row.date(DUE);
        amount = row.money(AMOUNT, CURRENCY, otherwise);
        low = row.money(LOW, CURRENCY, otherwise);
        high = row.money(HIGH, CURRENCY, otherwise);
        gross = row.money(GROSS, CURRENCY, otherwise);
        fee = row.money(FEE, CURRENCY, otherwise);
        postage = row.money(POSTAGE, CURRENCY, otherwise);
        hours = row.number(HOURS, 0, 100_000);
        charged = row.number(CHARGED, 0, 100);
        adds = row.money(ADDS, CURRENCY, otherwise);
        extra = row.word(NEEDED, NEEDS).map(need -> need == Need.EXTRA).orElse(adds.isPresent());
        if (adds.isPresent() && !extra) {
            row.ask(ADDS, "what it adds to the price is counted of extras alone, and this is needed: write no under needed if the car is"
                    + " finished without it");
        }
        Optional<Money> likely = row.money(LIKELY, CURRENCY, otherwise);
        category = row.word(CATEGORY, CATEGORIES).orElse(gross.isPresent() ? Category.SOLD
                : amount.isEmpty() && likely.isEmpty() && hours.isPresent() ? Category.OWN_HOURS : Category.UNSORTED);
        Optional<Direction> stated = row.decisiveWord(DIRECTION, DIRECTIONS);
        direction = stated.orElse(category.isSale() ? Direction.IN : Direction.OUT);
        Optional<Status> saidStatus = row.decisiveWord(STATUS, STATES);
        status = saidStatus.orElse(likely.isPresent() || low.isPresent() || high.isPresent() ? Status.ESTIMATE : Status.ACTUAL);
        settleDay(saidStatus);
        settleAmount(likely);
        settleEnds();
        settleSign(stated);
        readCars();
        if (category.standsApart() && hours.isPresent()) {
            row.ask(HOURS, "own hours in a row of the category " + category.words() + " are not counted: give them a row of their own"
                    + " (category own hours)");
        }
        if (category.standsApart() && extra) {
            row.ask(adds.isPresent() ? ADDS : NEEDED, "a row of the category " + category.words() + " costs nothing and is no extra: what"
                    + " is wanted and not needed is said in the rows of what it costs");
        }
        if (category == Category.CAR_SOLD && cars.stream().allMatch(options::isDonor)) {
            category = Category.SOLD;
            row.odd(CATEGORY, "what is sold of the donor is counted as a part sold; 'car sold' is the finished car");
        }
    }

    private void settleDay(Optional<Status> saidStatus) {
        if (saidStatus.isEmpty() && !row.text(STATUS).isEmpty()) {
            // Whether it is done nobody can tell: it does not settle up to which day the ledger goes, or when a car was bought.
            date = Optional.empty();
        } else if (row.text(DATE).isEmpty()) {
            // What is not done yet has no day of its own but that on which it is due.
            if (status != Status.ACTUAL && due.isPresent()) {
                date = due;
            } else {
                row.reject(DATE, "a row needs its day, such as 2026-03-31" + (status == Status.ACTUAL ? "" : ", or the day on which it is"
                        + " due"));
            }
        }
    }

    private void settleAmount(Optional<Money> likely) {
        if (likely.isPresent() && status != Status.ACTUAL) {
            if (amount.isPresent() && amount.get().amount().compareTo(likely.get().amount()) != 0) {
                row.ask(AMOUNT, "amount and likely differ; the likely one is counted: which is meant?");
            }
            amount = likely;
        } else if (likely.isPresent() && (amount.isPresent() || gross.isPresent())) {
            planned = likely;
        }
    }

    private void settleEnds() {
        if (status == Status.ACTUAL) {
            if (planned.isEmpty() || low.isEmpty() || high.isEmpty()) {
                withoutEnds();
            }
        } else if (low.isPresent() != high.isPresent()) {
            row.ask(low.isEmpty() ? LOW : HIGH, "low and high belong together; with one of them alone the likely amount is taken with the"
                    + " spread of its category");
            withoutEnds();
        } else if (low.isPresent() && amount.isEmpty()) {
            row.reject(LIKELY, "between low and high an estimate needs the likely amount");
        }
    }

    private void withoutEnds() {
        low = Optional.empty();
        high = Optional.empty();
    }

    /** An amount below 0 is money that comes back; the ends of an estimate then change places. */
    private void settleSign(Optional<Direction> stated) {
        if (amount.isEmpty() || amount.get().amount().signum() >= 0) {
            return;
        }
        if (stated.isPresent() || category.isSale()) {
            row.reject(amountColumn(), stated.isPresent() ? "an amount below 0 beside a direction says it twice; write the amount without"
                    + " its sign" : "an amount below 0 of a row of the category " + category.words() + ", whose money comes in: write the"
                    + " amount without its sign, and out under direction where it goes back");
            return;
        }
        direction = Direction.IN;
        amount = amount.map(LedgerRow::negated);
        planned = planned.map(LedgerRow::negated);
        Optional<Money> least = high.map(LedgerRow::negated);
        high = low.map(LedgerRow::negated);
        low = least;
        row.odd(amountColumn(), "an amount below 0 is taken as money that came back");
    }

    private static Money negated(Money money) {
        return new Money(money.amount().negate(), money.currency());
    }

    /** One car, or several with {@code ;} between them: shared equally, or by weights behind a colon. */
    private void readCars() {
        String text = row.name(CAR);
        if (text.isEmpty()) {
            return;
        }
        List<String> names = new ArrayList<>();
        List<BigDecimal> shares = new ArrayList<>();
        for (String one : text.split(";")) {
            int colon = one.lastIndexOf(':');
            String name = (colon < 0 ? one : one.substring(0, colon)).strip();
            Optional<BigDecimal> weight = colon < 0 ? Optional.of(BigDecimal.ONE) : row.numberIn(one.substring(colon + 1));
            if (name.isEmpty() || weight.isEmpty() || weight.get().signum() <= 0) {
                row.reject(CAR, "a shared row names its cars with their shares, such as 'recipient: 60; donor: 40'");
                return;
            }
            names.add(canonical(row.meaning(CAR, name)));
            shares.add(weight.get());
        }
        if (names.size() == 1 && !ALONE.contains(shares.get(0).stripTrailingZeros())) {
            row.reject(CAR, "this is the share of one car without that of another; in a file of semicolons a cell such as"
                    + " 'recipient: 60; donor: 40' must stand in quotes");
            return;
        }
        cars = names;
        weights = shares;
    }

    private static String canonical(String name) {
        String lower = name.toLowerCase(Locale.ROOT);
        return Set.of("recipient", DONOR, PROJECT).contains(lower) ? lower : name;
    }

    /** The column in which its amount stands. */
    String amountColumn() {
        return row.text(AMOUNT).isEmpty() ? LIKELY : AMOUNT;
    }

    /** From here on amounts whose currency nothing says are in this one. */
    void saidIn(Currency currency) {
        amount = saidIn(amountColumn(), amount, currency);
        low = saidIn(LOW, low, currency);
        high = saidIn(HIGH, high, currency);
        planned = saidIn(LIKELY, planned, currency);
        gross = saidIn(GROSS, gross, currency);
        fee = saidIn(FEE, fee, currency);
        postage = saidIn(POSTAGE, postage, currency);
        adds = saidIn(ADDS, adds, currency);
    }

    private Optional<Money> saidIn(String column, Optional<Money> money, Currency currency) {
        return money.map(m -> row.saidIn(column, m, currency));
    }

    /** Whether nothing says the currency of its amount. */
    boolean isUnsaid() {
        return Stream.of(amount, gross).flatMap(Optional::stream).anyMatch(m -> m.currency().equals(Currencies.UNSAID));
    }

    /** Whether nothing but the lack of a sign speaks for money that goes out. */
    boolean isSilent() {
        return row.isUsable() && direction == Direction.OUT && category == Category.UNSORTED && !saysWhatFor();
    }

    /** Whether it states what the money is for or which way it goes. */
    boolean saysWhatFor() {
        return !row.text(CATEGORY).isEmpty() || !row.text(DIRECTION).isEmpty();
    }

    /** Its day; empty where it has none or nobody can tell whether it is done. */
    Optional<LocalDate> date() {
        return date;
    }

    Optional<LocalDate> due() {
        return due;
    }

    /** The amount, or the likely one of what is still to come. */
    Optional<Money> amount() {
        return amount;
    }

    /** What was expected of a row that is done. */
    Optional<Money> planned() {
        return planned;
    }

    Optional<Money> low() {
        return low;
    }

    Optional<Money> high() {
        return high;
    }

    Optional<Money> gross() {
        return gross;
    }

    Optional<Money> fee() {
        return fee;
    }

    Optional<Money> postage() {
        return postage;
    }

    /** Whether the car is finished without it. */
    boolean isExtra() {
        return extra;
    }

    /** What an extra adds to the price of the finished car, by the guess of the row. */
    Optional<Money> adds() {
        return adds;
    }

    OptionalDouble hours() {
        return hours;
    }

    /** Per cent of the amount that the undertaking is charged with, where the row states it. */
    OptionalDouble charged() {
        return charged;
    }

    Category category() {
        return category;
    }

    Direction direction() {
        return direction;
    }

    Status status() {
        return status;
    }

    List<String> cars() {
        return cars;
    }

    /** The weight of each car's share. */
    List<BigDecimal> weights() {
        return weights;
    }
}
