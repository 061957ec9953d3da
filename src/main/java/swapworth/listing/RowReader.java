package swapworth.listing;

import java.math.BigDecimal;
import java.time.LocalDate;
import java.util.Currency;
import java.util.EnumSet;
import java.util.HashMap;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import swapworth.money.Money;
import swapworth.reading.CellReader;
import swapworth.reading.CsvRow;
import swapworth.reading.CsvSource;
import swapworth.reading.Currencies;
import swapworth.reading.Parsed;
import swapworth.reading.Quantity;
import swapworth.reading.Spelling;
import swapworth.reading.Vocabulary;
import swapworth.reading.Words;

/** Reads the rows of one file of listings, of cars in play, or of model lines. */
final class RowReader {

    private static final double KW_OF_HP = 0.745699872;
    private static final double KW_OF_PS = 0.73549875;
    private static final double KG_OF_LB = 0.45359237;
    private static final double MOST_MILES = 1_000_000;
    private static final int FIRST_MODEL_YEAR = 1886;
    private static final int LAST_MODEL_YEAR = 2200;

    private final CsvSource source;
    private final FileColumns columns;
    private final CellReader cells;
    private final Words words;
    private final WordLists lists;
    private final boolean[] translated = new boolean[ListingColumn.values().length];
    private final DistanceUnit unitOfFile;
    /** Whether the header of the mileage or a convention states the unit of the file; else miles stand in. */
    private final boolean unitIsStated;

    RowReader(CsvSource source, FileColumns columns, CellReader cells, Words words, WordLists lists) {
        this.source = source;
        this.columns = columns;
        this.cells = cells;
        this.words = words;
        this.lists = lists;
        for (ListingColumn column : ListingColumn.values()) {
            translated[column.ordinal()] = columns.has(column)
                    && (words.speakOf(column.header()) || words.speakOf(columns.header(column)));
        }
        unitIsStated = !columns.unit(ListingColumn.MILEAGE).isEmpty() || cells.conventions().mileageUnit().isPresent();
        unitOfFile = unit(columns.unit(ListingColumn.MILEAGE)).or(() -> cells.conventions().mileageUnit()
                .flatMap(RowReader::unit))
                .orElse(DistanceUnit.MI);
    }

    private static Optional<DistanceUnit> unit(String symbol) {
        return symbol.equals("km") ? Optional.of(DistanceUnit.KM) : symbol.equals("mi") ? Optional.of(DistanceUnit.MI)
                : Optional.empty();
    }

    Draft read(CsvRow row) {
        Draft draft = new Draft(source.file(), row);
        draft.name = text(ListingColumn.NAME, row);
        draft.role = text(ListingColumn.ROLE, row);
        draft.id = words(ListingColumn.ID, row);
        draft.seenOn = date(ListingColumn.SEEN_ON, draft, true);
        CarFacts.Builder facts = CarFacts.of(vehicle(draft));
        describe(facts, draft);
        age(facts, draft);
        distances(facts, draft);
        price(draft);
        draft.outcome = word(ListingColumn.OUTCOME, ListingWords.OUTCOME, Outcome.OPEN, draft);
        draft.endedOn = date(ListingColumn.ENDED_ON, draft, false);
        if (draft.outcome == Outcome.OPEN && draft.endedOn.isPresent() && draft.seenOn.isPresent()
                && draft.endedOn.get().isBefore(draft.seenOn.get())) {
            draft.odd(columns.header(ListingColumn.ENDED_ON), text(ListingColumn.ENDED_ON, row),
                    "it is said to have ended before it was seen on offer; the day of its end is not used");
            draft.endedOn = Optional.empty();
        }
        draft.saved = word(ListingColumn.SAVED, ListingWords.SAVED, Saved.UNKNOWN, draft);
        draft.source = words(ListingColumn.SOURCE, row);
        draft.note = words(ListingColumn.NOTE, row);
        draft.facts = facts.build();
        kind(draft);
        return draft;
    }

    private String vehicle(Draft draft) {
        String vehicle = text(ListingColumn.VEHICLE, draft.row);
        String maker = text(ListingColumn.MAKER, draft.row);
        String joined = maker.isEmpty() || vehicle.isEmpty() ? vehicle : maker + " " + vehicle;
        Optional<String> known = lists.known(ListingColumn.VEHICLE, joined);
        if (known.isPresent()) {
            return known.get();
        }
        if (Spelling.isBlank(joined)) {
            draft.setAside(columns.header(ListingColumn.VEHICLE), joined, "the row does not say which model line the car is of");
            return "";
        }
        return lists.oneSpelling(ListingColumn.VEHICLE, joined, draft).orElseThrow();
    }

    private void describe(CarFacts.Builder facts, Draft draft) {
        CsvRow row = draft.row;
        facts.names(name(ListingColumn.TRIM, draft), name(ListingColumn.BODY, draft), name(ListingColumn.RUNNING_GEAR, draft),
                name(ListingColumn.REGION, draft));
        String power = columns.unit(ListingColumn.POWER);
        OptionalDouble powerKw = measure(ListingColumn.POWER, draft, power.equals("hp") ? KW_OF_HP : power.equals("ps") ? KW_OF_PS : 1);
        if (powerKw.isPresent()) {
            facts.powerKw(powerKw.getAsDouble());
        }
        OptionalDouble cylinders = measure(ListingColumn.CYLINDERS, draft, 1);
        if (cylinders.isPresent()) {
            facts.cylinders(cylinders.getAsDouble());
        }
        OptionalDouble weightKg = measure(ListingColumn.WEIGHT, draft, columns.unit(ListingColumn.WEIGHT).equals("lb") ? KG_OF_LB : 1);
        if (weightKg.isPresent()) {
            facts.weightKg(weightKg.getAsDouble());
        }
        facts.drivenWheels(word(ListingColumn.DRIVEN_WHEELS, ListingWords.DRIVEN_WHEELS, DrivenWheels.UNKNOWN, draft));
        facts.seller(word(ListingColumn.SELLER, ListingWords.SELLER, Seller.UNKNOWN, draft));
        facts.runs(word(ListingColumn.RUNS, ListingWords.RUNS, Runs.UNKNOWN, draft));
        facts.rust(word(ListingColumn.RUST, ListingWords.CONDITION, Condition.UNKNOWN, draft));
        facts.paint(word(ListingColumn.PAINT, ListingWords.CONDITION, Condition.UNKNOWN, draft));
        facts.interior(word(ListingColumn.INTERIOR, ListingWords.CONDITION, Condition.UNKNOWN, draft));
        facts.mechanical(word(ListingColumn.MECHANICAL, ListingWords.CONDITION, Condition.UNKNOWN, draft));
        facts.records(word(ListingColumn.RECORDS, ListingWords.CONDITION, Condition.UNKNOWN, draft));
        facts.keys(word(ListingColumn.KEYS, ListingWords.KEYS, Keys.UNKNOWN, draft));
        facts.airbags(word(ListingColumn.AIRBAGS, ListingWords.AIRBAGS, Airbags.UNKNOWN, draft));
        facts.title(word(ListingColumn.TITLE, ListingWords.TITLE, Title.UNKNOWN, draft));
        damage(facts, draft);
        Optional<String> options = words(ListingColumn.OPTIONS, row);
        if (options.isPresent()) {
            facts.options(options.get());
        }
        Map<String, String> further = Map.of();
        for (int i = 0; i < columns.count(); i++) {
            String name = columns.furtherName(i);
            if (!name.isEmpty()) {
                String text = row.cell(i);
                if (!Spelling.isBlank(text)) {
                    further = further.isEmpty() ? new HashMap<>() : further;
                    further.put(name, words.meaning(name, text).orElse(text));
                }
            }
        }
        facts.further(further);
    }

    private void damage(CarFacts.Builder facts, Draft draft) {
        String text = text(ListingColumn.DAMAGE, draft.row);
        if (Spelling.isBlank(text)) {
            return;
        }
        if (ListingWords.saysNoDamage(Spelling.key(text))) {
            facts.damage(Set.of());
            return;
        }
        Set<Damage> zones = EnumSet.noneOf(Damage.class);
        int start = 0;
        for (int i = 0; i <= text.length(); i++) {
            if (i == text.length() || ";,/+|&".indexOf(text.charAt(i)) >= 0) {
                String zone = Spelling.stripped(text.substring(start, i));
                start = i + 1;
                if (!zone.isEmpty()) {
                    Optional<Damage> known = ListingWords.DAMAGE.meaning(words.meaning("damage", zone).orElse(zone));
                    if (known.isPresent()) {
                        zones.add(known.get());
                    } else {
                        lists.unmatched(ListingColumn.DAMAGE, columns.header(ListingColumn.DAMAGE), zone, ListingWords.DAMAGE, draft);
                    }
                }
            }
        }
        if (!zones.isEmpty()) {
            facts.damage(zones);
        }
    }

    private void age(CarFacts.Builder facts, Draft draft) {
        String yearText = text(ListingColumn.MODEL_YEAR, draft.row);
        if (needed(cells.number(yearText), ListingColumn.MODEL_YEAR, yearText, draft)
                instanceof Parsed.Understood<BigDecimal> number) {
            double year = number.value().doubleValue();
            if (year != Math.rint(year) || year < 1000 || year > 9999) {
                draft.reject(columns.header(ListingColumn.MODEL_YEAR), yearText, "this is no year; write it with four digits");
            } else if (year < FIRST_MODEL_YEAR || year > LAST_MODEL_YEAR
                    || draft.seenOn.isPresent() && year > draft.seenOn.get().getYear() + 1) {
                draft.setAside(columns.header(ListingColumn.MODEL_YEAR), yearText, draft.seenOn.isPresent()
                        && year > FIRST_MODEL_YEAR
                        ? "the model year lies more than a year after the sighting of " + draft.seenOn.get()
                        : "no car is of this model year");
            } else {
                facts.modelYear((int) year);
            }
        }
        String registeredText = text(ListingColumn.FIRST_REGISTERED, draft.row);
        if (needed(cells.dayMonthOrYear(registeredText), ListingColumn.FIRST_REGISTERED, registeredText, draft)
                instanceof Parsed.Understood<LocalDate> day) {
            if (draft.seenOn.isPresent() && day.value().isAfter(draft.seenOn.get()) && day.remarks().isEmpty()) {
                draft.setAside(columns.header(ListingColumn.FIRST_REGISTERED), registeredText,
                        "the first registration lies after the sighting of " + draft.seenOn.get());
            } else {
                facts.firstRegistered(day.value());
                draft.remarkAll(day.remarks());
            }
        }
        String ageText = text(ListingColumn.AGE, draft.row);
        if (needed(cells.number(ageText), ListingColumn.AGE, ageText, draft) instanceof Parsed.Understood<BigDecimal> number) {
            double age = number.value().doubleValue();
            if (age < 0 || age > 140) {
                draft.setAside(columns.header(ListingColumn.AGE), ageText, "no car is of this age in years");
            } else {
                facts.ageYears(age);
            }
        }
    }

    private void distances(CarFacts.Builder facts, Draft draft) {
        String text = text(ListingColumn.MILEAGE, draft.row);
        Optional<Distance> run = distance(ListingColumn.MILEAGE, text, draft, true);
        if (run.isPresent()) {
            String header = columns.header(ListingColumn.MILEAGE);
            draft.unit = run.get().unit;
            if (run.get().miles < 0) {
                draft.setAside(header, text, "a distance cannot be below 0");
            } else if (run.get().miles > MOST_MILES) {
                draft.setAside(header, text, "more than a million miles (1.6 million km) is no distance of a car");
            } else {
                facts.mileage(run.get().as(word(ListingColumn.MILEAGE_STATUS, ListingWords.MILEAGE_STATUS, MileageStatus.UNKNOWN, draft)));
            }
        }
        String gearText = text(ListingColumn.GEAR_MILEAGE, draft.row);
        Optional<Distance> gear = distance(ListingColumn.GEAR_MILEAGE, gearText, draft, false);
        if (gear.isPresent()) {
            if (gear.get().miles < 0 || gear.get().miles > MOST_MILES) {
                draft.odd(columns.header(ListingColumn.GEAR_MILEAGE), gearText, "no distance of a running gear; not used");
            } else {
                facts.gearMileage(gear.get().as(word(ListingColumn.GEAR_MILEAGE_STATUS, ListingWords.MILEAGE_STATUS, MileageStatus.UNKNOWN,
                        draft)));
            }
        }
        Optional<Distance> away = distance(ListingColumn.DISTANCE_AWAY, text(ListingColumn.DISTANCE_AWAY, draft.row), draft, false);
        if (away.isPresent() && away.get().miles >= 0) {
            facts.distanceAway(away.get().miles);
        }
    }

    /** A distance of either sign, and the unit in which it was written. */
    private record Distance(double miles, DistanceUnit unit) {
        Mileage as(MileageStatus status) {
            return new Mileage(miles, status, unit);
        }
    }

    private Optional<Distance> distance(ListingColumn column, String text, Draft draft, boolean needed) {
        if (text.isEmpty()) {
            return Optional.empty();
        }
        Parsed<Quantity> parsed = cells.distance(text);
        if (parsed instanceof Parsed.Refused<Quantity> no) {
            if (needed) {
                draft.reject(columns.header(column), text, no.message());
            } else {
                draft.odd(columns.header(column), text, no.message() + "; not used");
            }
            return Optional.empty();
        }
        if (!(parsed instanceof Parsed.Understood<Quantity> quantity)) {
            return Optional.empty();
        }
        draft.remarkAll(quantity.remarks());
        String ofHeader = columns.unit(column);
        DistanceUnit stated = unit(ofHeader).orElse(unitOfFile);
        DistanceUnit used = quantity.value().unit().flatMap(RowReader::unit).orElse(stated);
        if (used != stated && (!ofHeader.isEmpty() || unitIsStated)) {
            draft.odd(columns.header(column), text, "the cell says " + used.symbol() + ", "
                    + (ofHeader.isEmpty() ? "the file counts in " : "its header says ") + stated.symbol()
                    + "; the cell's unit is used");
        }
        if (column == ListingColumn.MILEAGE) {
            draft.unitInCell = quantity.value().unit().isPresent();
        }
        return Optional.of(new Distance(used.toMiles(quantity.value().number().doubleValue()), used));
    }

    private void price(Draft draft) {
        String bid = text(ListingColumn.PLANNED_BID, draft.row);
        ListingColumn column = Spelling.isBlank(bid) ? ListingColumn.PRICE : ListingColumn.PLANNED_BID;
        String text = column == ListingColumn.PRICE ? text(column, draft.row) : bid;
        draft.priceText = text;
        String currencyText = text(ListingColumn.CURRENCY, draft.row);
        Optional<Currency> currency = columns.currency();
        if (!Spelling.isBlank(currencyText)) {
            Optional<Currency> own = Currencies.of(currencyText);
            if (own.isEmpty()) {
                draft.reject(columns.header(ListingColumn.CURRENCY), currencyText,
                        "this is no currency; write the ISO 4217 code, such as EUR");
                return;
            }
            currency = own;
        }
        Parsed<Money> parsed = cells.money(text, currency);
        if (parsed instanceof Parsed.Refused<Money> no) {
            draft.reject(columns.header(column), text, no.message());
        } else if (parsed instanceof Parsed.Understood<Money> money) {
            draft.remarkAll(money.remarks());
            draft.money = Optional.of(money.value());
            draft.currencyByDefault = currency.isEmpty() && cells.conventions().currency().isEmpty() && digitsOnly(text);
        }
    }

    private static boolean digitsOnly(String text) {
        for (int i = 0; i < text.length(); i++) {
            if (Character.isLetter(text.charAt(i)) && text.charAt(i) != 'k'
                    || Character.getType(text.charAt(i)) == Character.CURRENCY_SYMBOL) {
                return false;
            }
        }
        return true;
    }

    private void kind(Draft draft) {
        String text = text(ListingColumn.PRICE_KIND, draft.row);
        hammer(text, draft);
        boolean auction = draft.facts.seller() == Seller.AUCTION;
        boolean stated = columns.kindStatedByHeader();
        PriceKind byDefault = !stated && auction ? PriceKind.SOLD : columns.kindByHeader();
        draft.kind = word(ListingColumn.PRICE_KIND, ListingWords.PRICE_KIND, byDefault, draft);
        if (auction && !stated && Spelling.isBlank(text)) {
            draft.remark("the row does not say what kind its price is: an auction's price is taken for a result");
        }
        draft.includes = word(ListingColumn.PRICE_INCLUDES, ListingWords.PRICE_INCLUDES, PriceIncludes.UNKNOWN, draft);
    }

    /** A hammer falls at an auction: that is the seller where the row names none. */
    private void hammer(String kind, Draft draft) {
        if (!(Spelling.isBlank(kind) ? columns.hammerByHeader() : ListingWords.saysHammer(Spelling.key(kind)))) {
            return;
        }
        Seller seller = draft.facts.seller();
        if (seller == Seller.UNKNOWN) {
            draft.facts = draft.facts.toBuilder().seller(Seller.AUCTION).build();
        } else if (seller != Seller.AUCTION) {
            draft.odd(columns.header(ListingColumn.SELLER), text(ListingColumn.SELLER, draft.row),
                    "the price is an auction's result, but the seller is no auction: taken for a sale by this seller; write auction if it"
                            + " was one");
        }
    }

    private Optional<LocalDate> date(ListingColumn column, Draft draft, boolean needed) {
        String text = text(column, draft.row);
        if (text.isEmpty()) {
            return Optional.empty();
        }
        Parsed<LocalDate> parsed = cells.date(text);
        if (parsed instanceof Parsed.Refused<LocalDate> no) {
            if (needed) {
                draft.reject(columns.header(column), text, no.message());
            } else {
                draft.odd(columns.header(column), text, no.message() + "; not used");
            }
        }
        return parsed instanceof Parsed.Understood<LocalDate> day ? Optional.of(day.value()) : Optional.empty();
    }

    private <T> Parsed<T> needed(Parsed<T> parsed, ListingColumn column, String text, Draft draft) {
        if (parsed instanceof Parsed.Refused<T> no) {
            draft.reject(columns.header(column), text, no.message());
        }
        return parsed;
    }

    private OptionalDouble measure(ListingColumn column, Draft draft, double factor) {
        String text = text(column, draft.row);
        if (text.isEmpty()) {
            return OptionalDouble.empty();
        }
        Parsed<BigDecimal> parsed = cells.number(text, columns.unit(column));
        if (parsed instanceof Parsed.Understood<BigDecimal> number && number.value().signum() > 0) {
            return OptionalDouble.of(number.value().doubleValue() * factor);
        }
        if (!(parsed instanceof Parsed.Blank)) {
            draft.odd(columns.header(column), text, "this is no number above 0; not used");
        }
        return OptionalDouble.empty();
    }

    private <E> E word(ListingColumn column, Vocabulary<E> vocabulary, E unknown, Draft draft) {
        String text = text(column, draft.row);
        if (text.isEmpty()) {
            return unknown;
        }
        Optional<E> meaning = vocabulary.meaning(text);
        if (meaning.isPresent()) {
            return meaning.get();
        }
        if (!Spelling.isBlank(text) && !text.equals("-")) {
            lists.unmatched(column, columns.header(column), text, vocabulary, draft);
        }
        return unknown;
    }

    private Optional<String> name(ListingColumn column, Draft draft) {
        String text = text(column, draft.row);
        if (text.isEmpty()) {
            return Optional.empty();
        }
        Optional<String> known = lists.known(column, text);
        return known.isPresent() ? known : Spelling.isBlank(text) ? Optional.empty() : lists.oneSpelling(column, text, draft);
    }

    private Optional<String> words(ListingColumn column, CsvRow row) {
        String text = text(column, row);
        return text.isEmpty() ? Optional.empty() : Optional.of(text);
    }

    /** The cell, put into the program's words where the user's own words.csv speaks of it. */
    private String text(ListingColumn column, CsvRow row) {
        int place = columns.place(column);
        if (place < 0) {
            return "";
        }
        String text = row.cell(place);
        if (translated[column.ordinal()] && !text.isEmpty()) {
            return words.meaning(column.header(), text).or(() -> words.meaning(columns.header(column), text)).orElse(text);
        }
        return text;
    }
}
