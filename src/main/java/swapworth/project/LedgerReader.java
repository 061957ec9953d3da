package swapworth.project;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.nio.file.Path;
import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.Currency;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.function.BiFunction;
import java.util.stream.Stream;
import swapworth.money.Money;
import swapworth.project.Entry.Direction;
import swapworth.project.Entry.Status;
import swapworth.reading.Currencies;
import swapworth.reading.FolderSettings;
import swapworth.reading.NamedRows;
import swapworth.reading.Spelling;
import swapworth.reading.Vocabulary;

/** Reads a ledger: first what each row says, then, when currency and day are settled, what it counts. */
final class LedgerReader {
    /** The car of a row that names none. */
    static final String PROJECT = "project";

    /** So many days between the payment at an end of the ledger and the next one make its year doubtful. */
    private static final int FAR = 366;
    /** In a ledger of no more rows one may well be more than the others. */
    private static final int FEW_ROWS = 4;
    private static final String DONOR = "donor";
    private static final String AMOUNT = "amount";
    private static final String NOTE = "note";
    private static final String CATEGORY = "category";
    private static final String CURRENCY = "currency";
    private static final String DIRECTION = "direction";
    private static final String STATUS = "status";
    private static final String CHARGED = "charged";
    private static final String GROSS = "gross";
    private static final String LIKELY = "likely";
    private static final BigDecimal HUNDRED = BigDecimal.valueOf(100);
    /** The shares of a car that has no other beside it. */
    private static final Set<BigDecimal> ALONE = Set.of(BigDecimal.ONE, HUNDRED.stripTrailingZeros());
    private static final Vocabulary<Category> CATEGORIES = Category.vocabulary();
    private static final Vocabulary<Direction> DIRECTIONS = Vocabulary.<Direction>empty()
            .with(Direction.OUT, "out", "paid", "expense", "-").with(Direction.IN, "in", "received", "income", "refund", "+");
    private static final Vocabulary<Status> STATES = Vocabulary.<Status>empty().with(Status.ACTUAL, "actual", "paid", "done", "received")
            .with(Status.COMMITTED, "committed", "ordered", "agreed").with(Status.ESTIMATE, "estimate", "estimated", "planned", "guess");

    private final NamedRows rows;
    private final FolderSettings settings;
    private final Ledger.Options options;

    LedgerReader(Path file, FolderSettings settings, Ledger.Options options) {
        this.settings = settings;
        this.options = options;
        rows = NamedRows.of(file, settings).needs("date", "day", "paid on").needs(AMOUNT, "price", "cost", "sum")
                .needs(NOTE, "what", "description", "text").column("car", "for").column("item", "part").column(CATEGORY, "kind")
                .column(DIRECTION, "in or out").column(CURRENCY).column(STATUS).column("due", "due date", "due on").column("low")
                .column(LIKELY).column("high").column(GROSS, "gross price").column("fee", "selling fee").column("postage",
                        "shipping cost")
                .column("hours", "own hours").column(CHARGED, "charged percent").column("receipt", "bill", "invoice");
    }

    /** What a row says, before currency and day are settled. */
    private static final class Draft {
        final NamedRows.Row row;
        Optional<LocalDate> date = Optional.empty();
        Optional<LocalDate> due = Optional.empty();
        Optional<Money> amount = Optional.empty();
        Optional<Money> low = Optional.empty();
        Optional<Money> high = Optional.empty();
        Optional<Money> gross = Optional.empty();
        Optional<Money> fee = Optional.empty();
        Optional<Money> postage = Optional.empty();
        OptionalDouble hours = OptionalDouble.empty();
        OptionalDouble charged = OptionalDouble.empty();
        Category category = Category.UNSORTED;
        Direction direction = Direction.OUT;
        Status status = Status.ACTUAL;
        List<String> cars = List.of(PROJECT);
        List<BigDecimal> weights = List.of(BigDecimal.ONE);

        Draft(NamedRows.Row row) {
            this.row = row;
        }

        /** Whether nothing but the lack of a sign speaks for money that goes out. */
        boolean isSilent() {
            return row.isUsable() && direction == Direction.OUT && category == Category.UNSORTED && row.text(CATEGORY).isEmpty()
                    && row.text(DIRECTION).isEmpty();
        }

        /** From here on amounts whose currency nothing says are in this one. */
        void saidIn(Currency currency) {
            BiFunction<String, Optional<Money>, Optional<Money>> said = (column, m) -> m.map(money -> row.saidIn(column, money, currency));
            amount = said.apply(row.text(AMOUNT).isEmpty() ? LIKELY : AMOUNT, amount);
            low = said.apply("low", low);
            high = said.apply("high", high);
            gross = said.apply(GROSS, gross);
            fee = said.apply("fee", fee);
            postage = said.apply("postage", postage);
        }

        boolean isUnsaid() {
            return Stream.of(amount, gross).flatMap(Optional::stream).anyMatch(m -> m.currency().equals(Currencies.UNSAID));
        }
    }

    Ledger read() {
        List<Draft> drafts = new ArrayList<>();
        for (NamedRows.Row row : rows.rows()) {
            if (!row.sumsUp("date", NOTE, "item", CATEGORY, "car")) {
                drafts.add(draft(row));
            }
        }
        Currency base = options.baseCurrency().or(() -> settings.conventions().currency()).orElseGet(() -> mostFrequent(drafts));
        askOfCurrency(drafts, base);
        drafts.forEach(draft -> draft.saidIn(base));
        LocalDate on = options.on().orElseGet(() -> lastDone(drafts));
        askOfFarDays(drafts);
        Map<String, LocalDate> bought = bought(drafts);
        Map<String, Integer> seen = new HashMap<>();
        List<Optional<Entry>> read = new ArrayList<>();
        for (Draft draft : drafts) {
            read.add(entry(draft, base, on, bought, seen));
        }
        askOfDirection(drafts);
        askOfNotes(drafts);
        Optional<BigDecimal> dearest = read.stream().flatMap(Optional::stream).filter(e -> e.category() == Category.PURCHASE
                && e.direction() == Direction.OUT).map(Entry::amount).max(Comparator.naturalOrder());
        BigDecimal insured = read.stream().flatMap(Optional::stream).filter(e -> e.category() == Category.INSURANCE
                && e.direction() == Direction.OUT).map(Entry::amount).reduce(BigDecimal.ZERO, BigDecimal::add);
        List<Entry> entries = new ArrayList<>();
        List<Entry> carSales = new ArrayList<>();
        askOfMost(drafts, read);
        for (int i = 0; i < drafts.size(); i++) {
            Draft draft = drafts.get(i);
            read.get(i).ifPresent(entry -> askOfCarSale(draft, entry, dearest, insured));
            if (draft.row.use()) {
                (draft.category == Category.CAR_SOLD ? carSales : entries).add(read.get(i).orElseThrow());
            }
        }
        return new Ledger(entries, carSales, on, base, rows.read());
    }

    /**
     * The sale of the finished car, or what an insurer pays for it, stands under another category beside the value of the car: more comes
     * in than any car cost, or more from the insurer than was paid for insurance.
     */
    private static void askOfCarSale(Draft draft, Entry entry, Optional<BigDecimal> dearest, BigDecimal insured) {
        if (entry.direction() != Direction.IN || entry.category() == Category.CAR_SOLD) {
            return;
        }
        boolean claim = entry.category() == Category.INSURANCE && entry.amount().compareTo(insured) > 0;
        if (claim || dearest.isPresent() && entry.amount().compareTo(dearest.get()) > 0) {
            draft.row.ask(CATEGORY, (claim ? "more comes in than was paid for insurance" : "more comes in than any car of this ledger cost")
                    + ": if the finished car is sold here, its category is 'car sold', and 'total loss' if an insurer pays for it; else it"
                    + " is counted beside the value of the car");
        }
    }

    /** A row that is for something else than a car and yet more than all others together may have a digit too many. */
    private static void askOfMost(List<Draft> drafts, List<Optional<Entry>> read) {
        int most = -1;
        int rows = 0;
        BigDecimal all = BigDecimal.ZERO;
        for (int i = 0; i < drafts.size(); i++) {
            Optional<Entry> entry = read.get(i).filter(e -> e.direction() == Direction.OUT && e.amount().signum() > 0);
            if (entry.isPresent() && drafts.get(i).row.isUsable()) {
                rows++;
                all = all.add(entry.get().amount());
                most = most < 0 || entry.get().amount().compareTo(read.get(most).orElseThrow().amount()) > 0 ? i : most;
            }
        }
        if (rows <= FEW_ROWS) {
            return;
        }
        Entry largest = read.get(most).orElseThrow();
        boolean mayBeCar = largest.category() == Category.PURCHASE || largest.category() == Category.UNSORTED;
        BigDecimal others = all.subtract(largest.amount());
        if (!mayBeCar && largest.amount().compareTo(others) > 0) {
            NamedRows.Row row = drafts.get(most).row;
            row.ask(row.text(AMOUNT).isEmpty() ? LIKELY : AMOUNT, "this is more than all other " + (rows - 1) + " rows that go out"
                    + " together, " + plain(others) + ": is a decimal point or a digit wrong? It is counted as it stands");
        }
    }

    private static Currency mostFrequent(List<Draft> drafts) {
        Map<String, Integer> counts = new HashMap<>();
        for (Draft draft : drafts) {
            draft.amount.filter(m -> !m.currency().equals(Currencies.UNSAID)).ifPresent(m -> counts.merge(m.currency().getCurrencyCode(), 1,
                    Integer::sum));
        }
        return counts.entrySet().stream().max(Comparator.comparing((Map.Entry<String, Integer> e) -> e.getValue())
                .thenComparing(Map.Entry::getKey, Comparator.reverseOrder())).map(e -> Currency.getInstance(e.getKey()))
                .orElse(Currencies.USUAL);
    }

    private static LocalDate lastDone(List<Draft> drafts) {
        LocalDate last = LocalDate.MIN;
        LocalDate first = LocalDate.MAX;
        for (Draft draft : drafts) {
            if (draft.date.isPresent()) {
                LocalDate date = draft.date.get();
                first = firstOf(date, first);
                last = draft.status == Status.ACTUAL && date.isAfter(last) ? date : last;
            }
        }
        return last.equals(LocalDate.MIN) ? first.equals(LocalDate.MAX) ? LocalDate.EPOCH : first : last;
    }

    /**
     * A mistyped year moves the day of the whole ledger, or makes money stand for decades: the first and the last payment are asked about.
     */
    private static void askOfFarDays(List<Draft> drafts) {
        List<Draft> done = drafts.stream().filter(d -> d.status == Status.ACTUAL && d.date.isPresent())
                .sorted(Comparator.comparing((Draft d) -> d.date.orElseThrow())).toList();
        int last = done.size() - 1;
        if (last > 0) {
            askIfFar(done.get(last), done.get(last - 1), "after the payment before it, and all is counted as of this day");
            askIfFar(done.get(0), done.get(1), "before the next payment");
        }
    }

    /**
     * Money of a row that says neither what it is for nor whether it goes out counts as going out. In a file that says so of other rows
     * each is asked about; in one that says it of none the first stands for all.
     */
    private static void askOfDirection(List<Draft> drafts) {
        List<Draft> silent = drafts.stream().filter(Draft::isSilent).toList();
        if (silent.isEmpty()) {
            return;
        }
        boolean others = drafts.stream().anyMatch(d -> !d.row.text(CATEGORY).isEmpty() || !d.row.text(DIRECTION).isEmpty());
        if (others) {
            silent.forEach(d -> d.row.ask(DIRECTION, "neither category nor direction says whether this goes out or comes in: it is counted"
                    + " as money that goes out; if it came in, write in"));
        } else {
            silent.get(0).row.ask(DIRECTION, "no row of this file has a category or a direction: " + (silent.size() == 1
                    ? "this one is counted" : "all " + silent.size() + " with an amount are counted")
                    + " as money that goes out; where some came in, add the column direction and write in");
        }
    }

    /** What has neither note nor item cannot be told from another row; one question stands for all. */
    private static void askOfNotes(List<Draft> drafts) {
        List<Draft> silent = drafts.stream().filter(d -> d.row.isUsable() && d.row.text(NOTE).isEmpty() && d.row.text("item").isEmpty())
                .toList();
        if (!silent.isEmpty()) {
            silent.get(0).row.ask(NOTE, "a row without a note or an item cannot be told from another: what was it"
                    + (silent.size() == 1 ? "?" : ", and what were the " + (silent.size() - 1) + " more that have neither?"));
        }
    }

    /** Where some rows state a currency and others none, one question stands for all of these. */
    private static void askOfCurrency(List<Draft> drafts, Currency base) {
        List<Draft> unsaid = drafts.stream().filter(Draft::isUnsaid).toList();
        if (!unsaid.isEmpty() && unsaid.size() < drafts.stream().filter(d -> d.amount.isPresent()).count()) {
            unsaid.get(0).row.ask(AMOUNT, (unsaid.size() == 1 ? "nothing states the currency of this amount: it is"
                    : "nothing states the currency of this amount and " + (unsaid.size() - 1) + " more: they are") + " counted in "
                    + base.getCurrencyCode() + ", that of most rows");
        }
    }

    private static void askIfFar(Draft end, Draft next, String where) {
        LocalDate day = end.date.orElseThrow();
        long days = Math.abs(ChronoUnit.DAYS.between(day, next.date.orElseThrow()));
        if (days > FAR) {
            end.row.ask("date", day + " lies " + days + " days " + where + ": is the year right?");
        }
    }

    private static LocalDate firstOf(LocalDate a, LocalDate b) {
        return a.isBefore(b) ? a : b;
    }

    /** The cars for whose purchase there is a row, and the day of the first. */
    private static Map<String, LocalDate> bought(List<Draft> drafts) {
        Map<String, LocalDate> cars = new HashMap<>();
        for (Draft draft : drafts) {
            if (draft.category == Category.PURCHASE && draft.direction == Direction.OUT && draft.date.isPresent()) {
                draft.cars.forEach(car -> cars.merge(Spelling.name(car), draft.date.get(), LedgerReader::firstOf));
            }
        }
        return cars;
    }

    private Draft draft(NamedRows.Row row) {
        Draft draft = new Draft(row);
        draft.date = row.date("date");
        draft.due = row.date("due");
        draft.amount = money(row, AMOUNT);
        draft.low = money(row, "low");
        draft.high = money(row, "high");
        draft.gross = money(row, GROSS);
        draft.fee = money(row, "fee");
        draft.postage = money(row, "postage");
        draft.hours = row.number("hours", 0, 100_000);
        draft.charged = row.number(CHARGED, 0, 100);
        Optional<Money> likely = money(row, LIKELY);
        Optional<Category> category = row.word(CATEGORY, CATEGORIES);
        draft.category = category.orElse(draft.gross.isPresent() ? Category.SOLD
                : draft.amount.isEmpty() && likely.isEmpty() && draft.hours.isPresent() ? Category.OWN_HOURS : Category.UNSORTED);
        Optional<Direction> direction = row.decisiveWord(DIRECTION, DIRECTIONS);
        draft.direction = direction.orElse(draft.category.isSale() ? Direction.IN : Direction.OUT);
        Optional<Status> status = row.decisiveWord(STATUS, STATES);
        boolean ranged = likely.isPresent() || draft.low.isPresent() || draft.high.isPresent();
        draft.status = status.orElse(ranged ? Status.ESTIMATE : Status.ACTUAL);
        if (status.isEmpty() && !row.text(STATUS).isEmpty()) {
            // Whether it is done nobody can tell: it does not settle up to which day the ledger goes, or when a car was bought.
            draft.date = Optional.empty();
        } else if (row.text("date").isEmpty()) {
            // What is not done yet has no day of its own but that on which it is due.
            if (draft.status != Status.ACTUAL && draft.due.isPresent()) {
                draft.date = draft.due;
            } else {
                row.reject("date", "a row needs its day, such as 2026-03-31" + (draft.status == Status.ACTUAL ? "" : ", or the day on "
                        + "which it is due"));
            }
        }
        likely(draft, likely);
        negative(draft, direction);
        cars(draft);
        if (draft.category == Category.CAR_SOLD && draft.cars.stream().allMatch(car -> car.equals(DONOR) || isDonor(car))) {
            draft.category = Category.SOLD;
            row.odd(CATEGORY, "what is sold of the donor is counted as a part sold; 'car sold' is the finished car");
        }
        return draft;
    }

    /** Where no currency is stated an amount is in that of the folder, where somebody says which it is, else in that of most rows. */
    private Optional<Money> money(NamedRows.Row row, String column) {
        return row.money(column, CURRENCY, options.baseCurrency().orElse(Currencies.UNSAID));
    }

    /** Whether it is the name of a donor of {@code cars.csv}. */
    private boolean isDonor(String car) {
        return options.donors().stream().anyMatch(donor -> Spelling.name(donor).equals(Spelling.name(car)));
    }

    /** The names under which rows may speak of a car: a donor has one of its own beside that of its role. */
    private Stream<String> names(String car) {
        Stream<String> others = car.equals(DONOR) ? options.donors().stream() : isDonor(car) ? Stream.of(DONOR) : Stream.empty();
        return Stream.concat(Stream.of(car), others).map(Spelling::name);
    }

    /** An amount below 0 is money that comes back; the ends of an estimate then change places. */
    private static void negative(Draft draft, Optional<Direction> direction) {
        if (draft.amount.isEmpty() || draft.amount.get().amount().signum() >= 0) {
            return;
        }
        String column = draft.row.text(AMOUNT).isEmpty() ? LIKELY : AMOUNT;
        if (direction.isPresent() || draft.category.isSale()) {
            draft.row.reject(column, "an amount below 0 beside a direction says it twice; write the amount without its sign");
            return;
        }
        draft.direction = Direction.IN;
        draft.amount = draft.amount.map(LedgerReader::negated);
        Optional<Money> low = draft.high.map(LedgerReader::negated);
        draft.high = draft.low.map(LedgerReader::negated);
        draft.low = low;
        draft.row.odd(column, "an amount below 0 is taken as money that came back");
    }

    private static Money negated(Money money) {
        return new Money(money.amount().negate(), money.currency());
    }

    private static void likely(Draft draft, Optional<Money> likely) {
        NamedRows.Row row = draft.row;
        if (likely.isPresent() && draft.status != Status.ACTUAL) {
            if (draft.amount.isPresent() && draft.amount.get().amount().compareTo(likely.get().amount()) != 0) {
                row.ask(AMOUNT, "amount and likely differ; the likely one is counted: which is meant?");
            }
            draft.amount = likely;
        } else if (likely.isPresent()) {
            row.ask(LIKELY, "what is done has one amount, and that is counted: is this row an estimate?");
        }
        if (draft.status == Status.ACTUAL || draft.low.isEmpty() && draft.high.isEmpty()) {
            draft.low = Optional.empty();
            draft.high = Optional.empty();
            return;
        }
        if (draft.low.isEmpty() || draft.high.isEmpty()) {
            row.ask(draft.low.isEmpty() ? "low" : "high", "low and high belong together; with one of them alone the likely amount is taken"
                    + " with the spread of its category");
            draft.low = Optional.empty();
            draft.high = Optional.empty();
        } else if (draft.amount.isEmpty()) {
            row.reject(LIKELY, "between low and high an estimate needs the likely amount");
        }
    }

    /** One car, or several with {@code ;} between them: shared equally, or by weights behind a colon. */
    private static void cars(Draft draft) {
        String text = draft.row.name("car");
        if (text.isEmpty()) {
            return;
        }
        List<String> cars = new ArrayList<>();
        List<BigDecimal> weights = new ArrayList<>();
        for (String one : text.split(";")) {
            int colon = one.lastIndexOf(':');
            String name = (colon < 0 ? one : one.substring(0, colon)).strip();
            Optional<BigDecimal> weight = colon < 0 ? Optional.of(BigDecimal.ONE) : draft.row.numberIn(one.substring(colon + 1));
            if (name.isEmpty() || weight.isEmpty() || weight.get().signum() <= 0) {
                draft.row.reject("car", "a shared row names its cars with their shares, such as 'recipient: 60; donor: 40'");
                return;
            }
            cars.add(canonical(draft.row.meaning("car", name)));
            weights.add(weight.get());
        }
        if (cars.size() == 1 && !ALONE.contains(weights.get(0).stripTrailingZeros())) {
            draft.row.reject("car", "this is the share of one car without that of another; in a file of semicolons a cell such as"
                    + " 'recipient: 60; donor: 40' must stand in quotes");
            return;
        }
        draft.cars = cars;
        draft.weights = weights;
    }

    private static String canonical(String name) {
        String lower = name.toLowerCase(Locale.ROOT);
        return Set.of("recipient", DONOR, PROJECT).contains(lower) ? lower : name;
    }

    private Optional<Entry> entry(Draft draft, Currency base, LocalDate on, Map<String, LocalDate> bought, Map<String, Integer> seen) {
        NamedRows.Row row = draft.row;
        if (draft.date.isEmpty()) {
            return Optional.empty();
        }
        LocalDate date = draft.date.get();
        LocalDate rateDay = firstOf(date, on);
        Optional<Entry.Sale> sale = sale(draft, base, rateDay);
        Optional<BigDecimal> net = sale.map(s -> s.gross().subtract(s.fee()).subtract(s.postage()));
        Optional<BigDecimal> stated = draft.amount.flatMap(m -> coins(row, AMOUNT, m, base, rateDay));
        askOfAmount(draft, stated, net);
        BigDecimal amount = net.or(() -> stated).orElseGet(() -> BigDecimal.ZERO.setScale(digits(base)));
        Money typed = net.map(left -> new Money(left, base)).or(() -> draft.amount).orElseGet(() -> new Money(amount, base));
        Status status = status(draft, date, on);
        LocalDate due = due(draft, status, date, on);
        Optional<Entry.Ends> ends = ends(draft, amount, sale.isPresent(), base, rateDay);
        askOfPurchase(draft, date, bought);
        askOfTwins(draft, seen);
        BigDecimal charged = charged(draft, amount);
        return Optional.of(new Entry(row.line(), date, due, row.text("item"), draft.category, draft.direction, status, typed, amount, ends,
                amount.subtract(charged), shares(draft, charged), sale, draft.hours.orElse(0), row.text("receipt"), row.text(NOTE)));
    }

    private static void askOfAmount(Draft draft, Optional<BigDecimal> stated, Optional<BigDecimal> net) {
        if (net.isPresent() && stated.isPresent() && stated.get().compareTo(net.get()) != 0) {
            draft.row.ask(AMOUNT, "gross less fee and postage leaves " + net.get().toPlainString()
                    + ", and that is counted: which amount arrived?");
        }
        if (net.isPresent() && net.get().signum() < 0) {
            draft.row.ask(GROSS, "fee and postage take more than the gross price: is that so?");
        }
        if (net.isEmpty() && draft.amount.isEmpty() && draft.hours.isEmpty()) {
            draft.row.reject(AMOUNT, "a row needs an amount; for own hours fill hours");
        }
    }

    /** What is said to be done on a day after that of the ledger is still to come. */
    private static Status status(Draft draft, LocalDate date, LocalDate on) {
        if (draft.status != Status.ACTUAL) {
            return draft.status;
        }
        if (date.isAfter(on)) {
            draft.row.odd("date", "this day lies after " + on + ", so the row is counted as still to come");
            return Status.COMMITTED;
        }
        if (draft.row.text(STATUS).isEmpty() && draft.due.isPresent() && draft.due.get().isAfter(on)) {
            draft.row.ask("due", "this is due after " + on + ", and no status says that it is still to come: it is counted as paid; if"
                    + " it is not, write committed or estimate");
        }
        return Status.ACTUAL;
    }

    private static LocalDate due(Draft draft, Status status, LocalDate date, LocalDate on) {
        LocalDate due = draft.status == Status.ACTUAL ? date : draft.due.orElse(date);
        if (status == Status.ACTUAL || !due.isBefore(on)) {
            return due;
        }
        draft.row.odd(draft.due.isPresent() ? "due" : "date", "this was due before " + on
                + " and is not done: it is counted as due on that day");
        return on;
    }

    /** The ends of an estimate in the base currency: only there can they be held against the amount that is counted. */
    private static Optional<Entry.Ends> ends(Draft draft, BigDecimal amount, boolean sold, Currency base, LocalDate day) {
        NamedRows.Row row = draft.row;
        Optional<BigDecimal> low = draft.low.flatMap(m -> coins(row, "low", m, base, day));
        Optional<BigDecimal> high = draft.high.flatMap(m -> coins(row, "high", m, base, day));
        if (low.isEmpty() || high.isEmpty()) {
            return Optional.empty();
        }
        if (low.get().compareTo(amount) <= 0 && amount.compareTo(high.get()) <= 0) {
            if (amount.signum() > 0 && high.get().compareTo(amount.multiply(BigDecimal.TEN)) > 0) {
                row.ask("high", "the high end is more than ten times the likely amount: is a digit too many? It is counted as it stands");
            }
            return Optional.of(new Entry.Ends(low.get(), high.get()));
        }
        if (sold) {
            row.ask("low", "what is left of the gross price, " + plain(amount) + ", does not lie between " + plain(low.get()) + " and "
                    + plain(high.get()) + ": are these ends of the gross price? They are not counted, and the spread of its category is"
                    + " taken");
        } else {
            row.reject("low", "low, likely and high must stand in this order, not " + plain(low.get()) + ", " + plain(amount) + ", "
                    + plain(high.get()));
        }
        return Optional.empty();
    }

    private static String plain(BigDecimal amount) {
        return amount.stripTrailingZeros().toPlainString();
    }

    /** What is sold of a car that was never bought, or before it was. */
    private void askOfPurchase(Draft draft, LocalDate date, Map<String, LocalDate> bought) {
        if (draft.direction != Direction.IN || draft.category != Category.SOLD) {
            return;
        }
        for (String car : draft.cars) {
            Optional<LocalDate> since = names(car).flatMap(name -> Stream.ofNullable(bought.get(name))).min(LocalDate::compareTo);
            if (!car.equals(PROJECT) && since.isEmpty()) {
                draft.row.ask("car", "something of " + car + " is sold, and no row tells of its purchase: is the name another, was it"
                        + " yours before, or is it the finished car (category 'car sold')?");
            } else if (since.isPresent() && date.isBefore(since.get())) {
                draft.row.ask("date", "something of " + car + " is sold before " + since.get()
                        + ", the day on which it was bought: which day is right?");
            }
        }
    }

    /** What falls on which car; a sale that cost more than it brought falls on the first. */
    private static List<Entry.Share> shares(Draft draft, BigDecimal charged) {
        List<Entry.Share> shares = new ArrayList<>();
        List<BigDecimal> parts = charged.signum() < 0 ? List.of() : Apportioned.of(charged, draft.weights);
        for (int i = 0; i < draft.cars.size(); i++) {
            shares.add(new Entry.Share(draft.cars.get(i), parts.isEmpty() ? (i == 0 ? charged : BigDecimal.ZERO) : parts.get(i)));
        }
        return shares;
    }

    private BigDecimal charged(Draft draft, BigDecimal amount) {
        double percent = draft.charged.orElse(draft.category == Category.TOOL ? options.assumptions().get("tools_charged").middle() : 100);
        return amount.multiply(BigDecimal.valueOf(percent)).divide(HUNDRED, amount.scale(), RoundingMode.HALF_EVEN);
    }

    private Optional<Entry.Sale> sale(Draft draft, Currency base, LocalDate day) {
        if (draft.gross.isEmpty()) {
            if (draft.fee.isPresent() || draft.postage.isPresent()) {
                draft.row.ask(draft.fee.isPresent() ? "fee" : "postage",
                        "a fee or postage beside no gross price is not counted: is the amount"
                        + " what was left?");
            }
            return Optional.empty();
        }
        if (draft.direction != Direction.IN) {
            draft.row.reject(GROSS, "a gross price is money that comes in; direction says out");
        }
        notNegative(draft.row, GROSS, draft.gross);
        notNegative(draft.row, "fee", draft.fee);
        notNegative(draft.row, "postage", draft.postage);
        Optional<BigDecimal> gross = coins(draft.row, GROSS, draft.gross.get(), base, day);
        BigDecimal none = BigDecimal.ZERO.setScale(digits(base));
        BigDecimal fee = draft.fee.flatMap(m -> coins(draft.row, "fee", m, base, day)).orElse(none);
        BigDecimal postage = draft.postage.flatMap(m -> coins(draft.row, "postage", m, base, day)).orElse(none);
        return gross.map(g -> new Entry.Sale(g, fee, postage));
    }

    private static void notNegative(NamedRows.Row row, String column, Optional<Money> money) {
        if (money.isPresent() && money.get().amount().signum() < 0) {
            row.reject(column, "of a sale, gross price, fee and postage are written without a sign; what went back to the buyer is a row "
                    + "of its own with the direction out");
        }
    }

    private static int digits(Currency base) {
        return Math.max(0, base.getDefaultFractionDigits());
    }

    private static Optional<BigDecimal> coins(NamedRows.Row row, String column, Money money, Currency base, LocalDate day) {
        return row.converted(column, money, base, day).map(amount -> amount.setScale(digits(base), RoundingMode.HALF_EVEN));
    }

    private static void askOfTwins(Draft draft, Map<String, Integer> seen) {
        String key = draft.date.orElseThrow() + "\n" + draft.amount + "\n" + draft.gross + "\n" + Spelling.key(draft.row.text(NOTE)) + "\n"
                + (draft.row.text(NOTE).isEmpty() ? Spelling.key(draft.row.text("item")) : "") + "\n" + draft.hours;
        Integer before = seen.putIfAbsent(key, draft.row.line());
        if (before != null) {
            draft.row.ask(AMOUNT, "the same day, amount and note stand on line " + before + " too; both are counted: is it one payment"
                    + " entered twice?");
        }
    }
}
