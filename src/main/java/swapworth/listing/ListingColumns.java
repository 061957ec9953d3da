package swapworth.listing;

import java.math.BigDecimal;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Currency;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Set;
import java.util.function.IntPredicate;
import swapworth.money.Money;
import swapworth.reading.Currencies;

/**
 * Listings as columns: for each field one column over all rows. What is the same in all rows takes no room, and of texts and values that
 * many rows share each row keeps a number. A listing is made when it is asked for, and equal to the one that was put in.
 */
final class ListingColumns {
    /** Distinct free texts, such as notes, that are kept once for all rows; most collections have fewer, or one for each row. */
    private static final int SHARED_TEXTS = 4096;
    /** Any number of so many digits is one of 64 bits. */
    private static final int MOST_DIGITS = 18;

    private final Lately<Listing> lately = new Lately<>(this::made);
    private int size;

    private final Values<String> file = new Values<>("");
    private final Numbers line = new Numbers();
    final Texts id = new Texts(0);
    final Values<Optional<LocalDate>> seenOn = new Values<>(Optional.empty());
    private final Numbers unscaled = new Numbers();
    private final Numbers scale = new Numbers();
    private final Values<Currency> currency = new Values<>(Currencies.USUAL);
    /** Amounts as typed of more digits than a number holds. */
    private final Map<Integer, BigDecimal> largeAmounts = new HashMap<>(0);
    /** The price in the base currency, where it is not the typed one; else 0. */
    private final Numbers converted = new Numbers();
    final Values<PriceKind> kind = new Values<>(PriceKind.ASKING);
    final Values<PriceIncludes> includes = new Values<>(PriceIncludes.UNKNOWN);
    final Values<Outcome> outcome = new Values<>(Outcome.OPEN);
    private final Values<Optional<LocalDate>> endedOn = new Values<>(Optional.empty());
    final Values<Saved> saved = new Values<>(Saved.UNKNOWN);
    final Texts source = new Texts(SHARED_TEXTS);
    final Texts note = new Texts(SHARED_TEXTS);
    final Values<List<String>> remarks = new Values<>(List.of());

    final Values<String> vehicle = new Values<>("");
    final Values<Optional<String>> trim = new Values<>(Optional.empty());
    final Values<Optional<String>> body = new Values<>(Optional.empty());
    final Values<Optional<String>> runningGear = new Values<>(Optional.empty());
    final Measured powerKw = new Measured();
    final Measured cylinders = new Measured();
    final Measured weightKg = new Measured();
    final Values<DrivenWheels> drivenWheels = new Values<>(DrivenWheels.UNKNOWN);
    final Values<OptionalInt> modelYear = new Values<>(OptionalInt.empty());
    final Values<Optional<LocalDate>> firstRegistered = new Values<>(Optional.empty());
    final Measured ageYears = new Measured();
    final Distances mileage = new Distances();
    private final Distances gearMileage = new Distances();
    final Values<Seller> seller = new Values<>(Seller.UNKNOWN);
    final Values<Optional<String>> region = new Values<>(Optional.empty());
    private final Measured distanceAway = new Measured();
    final Values<Runs> runs = new Values<>(Runs.UNKNOWN);
    final Values<Condition> rust = new Values<>(Condition.UNKNOWN);
    final Values<Condition> paint = new Values<>(Condition.UNKNOWN);
    final Values<Condition> interior = new Values<>(Condition.UNKNOWN);
    final Values<Condition> mechanical = new Values<>(Condition.UNKNOWN);
    final Values<Condition> records = new Values<>(Condition.UNKNOWN);
    final Values<Keys> keys = new Values<>(Keys.UNKNOWN);
    final Values<Airbags> airbags = new Values<>(Airbags.UNKNOWN);
    final Values<Title> title = new Values<>(Title.UNKNOWN);
    final Values<Optional<Set<Damage>>> damage = new Values<>(Optional.empty());
    final Texts options = new Texts(SHARED_TEXTS);
    private final List<String> furtherNames = new ArrayList<>(0);
    private final List<Texts> further = new ArrayList<>(0);

    int size() {
        return size;
    }

    /** The lines of all rows. */
    List<String> lines() {
        List<String> lines = new ArrayList<>();
        vehicle.each(lines::add);
        return lines;
    }

    /** The lines of all rows and their trims, by their keys. */
    Set<String> linesAndTrims() {
        Set<Long> pairs = new HashSet<>();
        for (int row = 0; row < size; row++) {
            pairs.add((long) vehicle.code(row) << Integer.SIZE | trim.code(row));
        }
        Set<String> keys = new HashSet<>();
        for (long pair : pairs) {
            String line = vehicle.of((int) (pair >> Integer.SIZE));
            keys.add(LinesFile.key(line, Optional.empty()));
            keys.add(LinesFile.key(line, trim.of((int) pair)));
        }
        return keys;
    }

    /** Spells a name otherwise in all rows. */
    void rename(WordLists.Renamed name) {
        switch (name.column()) {
            case VEHICLE -> vehicle.replace(name.kept(), name.usual());
            case TRIM -> trim.replace(Optional.of(name.kept()), Optional.of(name.usual()));
            case BODY -> body.replace(Optional.of(name.kept()), Optional.of(name.usual()));
            case RUNNING_GEAR -> runningGear.replace(Optional.of(name.kept()), Optional.of(name.usual()));
            case REGION -> region.replace(Optional.of(name.kept()), Optional.of(name.usual()));
            default -> throw new IllegalArgumentException(name.column() + " holds no names of one spelling each");
        }
    }

    void add(Listing listing) {
        add(Draft.of(listing), listing.price().typed());
        setAmount(size - 1, listing.price().amount());
    }

    /** Adds what was read of a row that has a price, which counts as one in the base currency until another amount is set. */
    void add(Draft draft, Money typed) {
        int row = size;
        file.set(row, draft.file);
        line.set(row, Numbers.unsigned(draft.line));
        id.set(row, draft.id);
        seenOn.set(row, draft.seenOn);
        setTyped(row, typed);
        kind.set(row, draft.kind);
        includes.set(row, draft.includes);
        outcome.set(row, draft.outcome);
        endedOn.set(row, draft.endedOn);
        saved.set(row, draft.saved);
        source.set(row, draft.source);
        note.set(row, draft.note);
        remarks.set(row, draft.remarks.isEmpty() ? List.of() : List.copyOf(draft.remarks));
        setFacts(row, draft.facts);
        size++;
    }

    private void setTyped(int row, Money typed) {
        BigDecimal amount = typed.amount();
        if (amount.precision() <= MOST_DIGITS) {
            unscaled.set(row, Numbers.unsigned(amount.scale() == 0 ? amount.longValue() : amount.unscaledValue().longValue()));
            scale.set(row, Numbers.unsigned(amount.scale()));
        } else {
            largeAmounts.put(row, amount);
        }
        currency.set(row, typed.currency());
    }

    /** Sets the price in the base currency. */
    void setAmount(int row, double amount) {
        converted.set(row, amount == typed(row).doubleValue() ? 0 : Numbers.ofDouble(amount));
    }

    void setRemarks(int row, List<String> itsRemarks) {
        remarks.set(row, itsRemarks);
    }

    private void setFacts(int row, CarFacts.Builder facts) {
        vehicle.set(row, facts.vehicle);
        trim.set(row, facts.trim);
        body.set(row, facts.body);
        runningGear.set(row, facts.runningGear);
        powerKw.set(row, facts.powerKw);
        cylinders.set(row, facts.cylinders);
        weightKg.set(row, facts.weightKg);
        drivenWheels.set(row, facts.drivenWheels);
        modelYear.set(row, facts.modelYear);
        firstRegistered.set(row, facts.firstRegistered);
        ageYears.set(row, facts.ageYears);
        mileage.set(row, facts.mileage);
        gearMileage.set(row, facts.gearMileage);
        seller.set(row, facts.seller);
        region.set(row, facts.region);
        distanceAway.set(row, facts.distanceAway);
        runs.set(row, facts.runs);
        rust.set(row, facts.rust);
        paint.set(row, facts.paint);
        interior.set(row, facts.interior);
        mechanical.set(row, facts.mechanical);
        records.set(row, facts.records);
        keys.set(row, facts.keys);
        airbags.set(row, facts.airbags);
        title.set(row, facts.title);
        damage.set(row, facts.damage);
        options.set(row, facts.options);
        if (!facts.further.isEmpty()) {
            for (Map.Entry<String, String> entry : facts.further.entrySet()) {
                further(entry.getKey()).set(row, Optional.of(entry.getValue()));
            }
        }
    }

    private Texts further(String name) {
        int at = furtherNames.indexOf(name);
        if (at >= 0) {
            return further.get(at);
        }
        furtherNames.add(name);
        further.add(new Texts(SHARED_TEXTS));
        return further.get(further.size() - 1);
    }

    /** The listing of a row; of a small collection each is made once. */
    Listing listing(int row) {
        return size <= Lately.PLACES ? lately.get(row) : made(row);
    }

    /** The same, made anew: whoever keeps what was made of it need not find it again. */
    Listing made(int row) {
        return new Listing(origin(row), id.get(row), seenOn.get(row), facts(row), price(row), outcome.get(row), endedOn.get(row),
                saved.get(row), source.get(row), note.get(row), remarks.get(row));
    }

    CarFacts facts(int row) {
        return facts(new int[] {row}, 0, 1);
    }

    /** What some rows say of one car: the latest known word on each fact. */
    CarFacts facts(int[] rows, int from, int to) {
        return new CarFacts(vehicle.latest(rows, from, to), trim.latest(rows, from, to), body.latest(rows, from, to),
                runningGear.latest(rows, from, to), powerKw.latest(rows, from, to), cylinders.latest(rows, from, to),
                weightKg.latest(rows, from, to), drivenWheels.latest(rows, from, to), modelYear.latest(rows, from, to),
                firstRegistered.latest(rows, from, to), ageYears.latest(rows, from, to), mileage.latest(rows, from, to),
                gearMileage.latest(rows, from, to), seller.latest(rows, from, to), region.latest(rows, from, to),
                distanceAway.latest(rows, from, to), runs.latest(rows, from, to), rust.latest(rows, from, to),
                paint.latest(rows, from, to), interior.latest(rows, from, to), mechanical.latest(rows, from, to),
                records.latest(rows, from, to), keys.latest(rows, from, to), airbags.latest(rows, from, to), title.latest(rows, from, to),
                damage.latest(rows, from, to), options.latest(rows, from, to), further(rows, from, to));
    }

    /** What was seen in a row. */
    Sighting sighting(int row) {
        return new StoredRow(this, row);
    }

    Price price(int row) {
        BigDecimal typed = typed(row);
        long inBase = converted.get(row);
        return new Price(new Money(typed, currency.get(row)), inBase == 0 ? typed.doubleValue() : Numbers.toDouble(inBase),
                kind.get(row), includes.get(row));
    }

    private BigDecimal typed(int row) {
        BigDecimal large = largeAmounts.isEmpty() ? null : largeAmounts.get(row);
        return large != null ? large
                : BigDecimal.valueOf(Numbers.signed(unscaled.get(row)), (int) Numbers.signed(scale.get(row)));
    }

    /** The further columns of a row, by name; made anew for each. */
    Map<String, String> further(int row) {
        return further(new int[] {row}, 0, 1);
    }

    private Map<String, String> further(int[] rows, int from, int to) {
        if (further.isEmpty()) {
            return Map.of();
        }
        Map<String, String> all = new HashMap<>();
        for (int k = 0; k < further.size(); k++) {
            Optional<String> text = further.get(k).latest(rows, from, to);
            if (text.isPresent()) {
                all.put(furtherNames.get(k), text.get());
            }
        }
        return all;
    }

    boolean hasFurther() {
        return !further.isEmpty();
    }

    Origin origin(int row) {
        return new Origin(file.get(row), line(row));
    }

    private int line(int row) {
        return (int) Numbers.signed(line.get(row));
    }

    Currency currency(int row) {
        return currency.get(row);
    }

    /** The currency in which most prices were typed; of several the one seen first, US dollars before all others. */
    Currency mostFrequentCurrency() {
        int[] counts = new int[currency.count()];
        for (int row = 0; row < size; row++) {
            counts[currency.code(row)]++;
        }
        int most = 0;
        for (int code = 1; code < counts.length; code++) {
            most = counts[code] > counts[most] ? code : most;
        }
        return currency.of(most);
    }

    Optional<LocalDate> seenOn(int row) {
        return seenOn.get(row);
    }

    PriceKind kind(int row) {
        return kind.get(row);
    }

    Outcome outcome(int row) {
        return outcome.get(row);
    }

    Optional<LocalDate> endedOn(int row) {
        return endedOn.get(row);
    }

    List<String> remarks(int row) {
        return remarks.get(row);
    }

    /** Whether a row is of a line. */
    IntPredicate isOfLine(String line) {
        int code = vehicle.codeOf(line);
        return row -> vehicle.code(row) == code;
    }

    /** The price in the base currency. */
    double amount(int row) {
        long inBase = converted.get(row);
        return inBase != 0 ? Numbers.toDouble(inBase)
                : largeAmounts.isEmpty() && scale.get(row) == 0 ? Numbers.signed(unscaled.get(row)) : typed(row).doubleValue();
    }

    /** The mileage of the chassis; not a number if the row does not give it. */
    double miles(int row) {
        return mileage.miles(row);
    }

    boolean isDated(int row) {
        return seenOn.code(row) != 0;
    }

    /** The day on which the row was seen; 0 if it has none. */
    int day(int row) {
        Optional<LocalDate> day = seenOn.get(row);
        return day.isPresent() ? (int) day.get().toEpochDay() : 0;
    }

    /** The last day on which a row was seen, if any row has one. */
    Optional<LocalDate> lastDay() {
        Optional<LocalDate> last = Optional.empty();
        for (int code = 0; code < seenOn.count(); code++) {
            Optional<LocalDate> day = seenOn.of(code);
            last = last.isEmpty() || day.isPresent() && day.get().isAfter(last.get()) ? day : last;
        }
        return last;
    }

    /** Puts some of the rows of an array in order of day: rows without a day first, and the order they had within a day. */
    void sortByDay(int[] rows, int from, int to) {
        long[] order = new long[to - from];
        for (int k = 0; k < order.length; k++) {
            int row = rows[from + k];
            order[k] = (long) (isDated(row) ? day(row) : Integer.MIN_VALUE) << 32 | k;
        }
        Arrays.sort(order);
        int[] before = Arrays.copyOfRange(rows, from, to);
        for (int k = 0; k < order.length; k++) {
            rows[from + k] = before[(int) order[k]];
        }
    }

    /** The model year; 0 if the row has none. */
    int modelYear(int row) {
        return modelYear.get(row).orElse(0);
    }

    /** The year of first registration; 0 if the row has none. */
    int yearRegistered(int row) {
        Optional<LocalDate> day = firstRegistered.get(row);
        return day.isPresent() ? day.get().getYear() : 0;
    }

    /** Whether two rows are sales by one kind of seller: what an auction sold is often offered again by who bought it there. */
    boolean areSoldAlike(int row, int other) {
        return kind.get(row) == PriceKind.SOLD && kind.get(other) == PriceKind.SOLD && seller.get(row) == seller.get(other);
    }

    /** Whether a row stands for a car that is crashed, branded or dead. */
    boolean isTroubled(int row) {
        return Facts.isTroubled(title.get(row), runs.get(row), damage.get(row));
    }

    /** The age of the car in years, on the day it was seen, or on another day if the row has none; 0 if nothing speaks of it. */
    double age(int row, long otherDay) {
        Optional<LocalDate> registered = firstRegistered.get(row);
        OptionalInt year = modelYear.get(row);
        if (registered.isEmpty() && year.isEmpty()) {
            return ageYears.get(row).orElse(0);
        }
        long born = registered.isPresent() ? registered.get().toEpochDay() : Days.middleOf(year.getAsInt());
        return Days.years(born, isDated(row) ? day(row) : otherDay);
    }
}
