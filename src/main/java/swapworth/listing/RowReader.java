package swapworth.listing;

import java.time.LocalDate;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import swapworth.reading.CellReader;
import swapworth.reading.CsvRow;
import swapworth.reading.CsvSource;
import swapworth.reading.Parsed;
import swapworth.reading.Remembered;
import swapworth.reading.Spelling;
import swapworth.reading.Words;

/** Reads the rows of one file of listings, of cars in play, or of model lines: what the cells of a row say together. */
final class RowReader extends FileCells {

    private static final double MOST_MILES = 1_000_000;
    /** Less than this, in miles or in kilometres, nobody has driven a car that is some years old. */
    private static final double HARDLY_ANY = 1_000;
    private static final double NO_LONGER_NEW = 2;

    private final Remembered<Optional<String>> id = texts(ListingColumn.ID);
    private final Column<Optional<LocalDate>> seenOn = seenOn();
    private final Remembered<Map<String, Line>> linesByMaker = linesByMaker();
    private final Names trim = names(ListingColumn.TRIM);
    private final Remembered<String> trimKey = trimKeys();
    private final Names body = names(ListingColumn.BODY);
    private final Names runningGear = names(ListingColumn.RUNNING_GEAR);
    private final Names region = names(ListingColumn.REGION);
    private final Column<OptionalDouble> powerKw = powerKw();
    private final Column<OptionalDouble> cylinders = cylinders();
    private final Column<OptionalDouble> weightKg = weightKg();
    private final Column<DrivenWheels> drivenWheels = words(ListingColumn.DRIVEN_WHEELS, ListingWords.DRIVEN_WHEELS, DrivenWheels.UNKNOWN);
    private final Column<OptionalInt> modelYear = modelYear();
    private final Column<Optional<LocalDate>> firstRegistered = firstRegistered();
    private final Column<OptionalDouble> ageYears = ageYears();
    private final Column<Distance> mileage = mileage();
    private final Column<MileageStatus> mileageStatus = status(ListingColumn.MILEAGE_STATUS);
    private final Column<Distance> gearMileage = distances(ListingColumn.GEAR_MILEAGE);
    private final Column<MileageStatus> gearMileageStatus = status(ListingColumn.GEAR_MILEAGE_STATUS);
    private final Column<Distance> distanceAway = distances(ListingColumn.DISTANCE_AWAY);
    private final Column<Amounts> amounts = amounts();
    private final Column<PriceKind> kind = words(ListingColumn.PRICE_KIND, ListingWords.PRICE_KIND, columns.kindByHeader());
    private final Remembered<Boolean> hammer = hammer();
    private final Column<PriceIncludes> includes = words(ListingColumn.PRICE_INCLUDES, ListingWords.PRICE_INCLUDES, PriceIncludes.UNKNOWN);
    private final Column<Seller> seller = words(ListingColumn.SELLER, ListingWords.SELLER, Seller.UNKNOWN);
    private final Column<Runs> runs = words(ListingColumn.RUNS, ListingWords.RUNS, Runs.UNKNOWN);
    private final Column<Condition> rust = condition(ListingColumn.RUST);
    private final Column<Condition> paint = condition(ListingColumn.PAINT);
    private final Column<Condition> interior = condition(ListingColumn.INTERIOR);
    private final Column<Condition> mechanical = condition(ListingColumn.MECHANICAL);
    private final Column<Condition> records = condition(ListingColumn.RECORDS);
    private final Column<Keys> keys = words(ListingColumn.KEYS, ListingWords.KEYS, Keys.UNKNOWN);
    private final Column<Airbags> airbags = words(ListingColumn.AIRBAGS, ListingWords.AIRBAGS, Airbags.UNKNOWN);
    private final Column<Title> title = words(ListingColumn.TITLE, ListingWords.TITLE, Title.UNKNOWN);
    private final Remembered<Damaged> damage = damage();
    private final Column<Outcome> outcome = words(ListingColumn.OUTCOME, ListingWords.OUTCOME, Outcome.OPEN);
    private final Column<Optional<LocalDate>> endedOn = endedOn();
    private final Column<Saved> saved = words(ListingColumn.SAVED, ListingWords.SAVED, Saved.UNKNOWN);
    private final Remembered<Optional<String>> options = texts(ListingColumn.OPTIONS);
    private final Remembered<Optional<String>> foundAt = texts(ListingColumn.SOURCE);
    private final Remembered<Optional<String>> note = texts(ListingColumn.NOTE);
    private final List<Further> further = further();

    RowReader(CsvSource source, FileColumns columns, CellReader cells, Words words, WordLists lists, LinesFile lines) {
        super(source, columns, cells, words, lists, lines);
    }

    private Column<Condition> condition(ListingColumn column) {
        return words(column, ListingWords.CONDITION, Condition.UNKNOWN);
    }

    private Column<MileageStatus> status(ListingColumn column) {
        return words(column, ListingWords.MILEAGE_STATUS, MileageStatus.UNKNOWN);
    }

    Draft read(CsvRow row) {
        Line line = line(linesByMaker.of(row), row);
        Draft draft = new Draft(source.file(), row.line(), CarFacts.of(line.inRow()));
        if (line.noLine().isPresent()) {
            draft.setAside(columns.header(ListingColumn.VEHICLE), vehicle(row), line.noLine().get());
        }
        draft.name = text(ListingColumn.NAME, row);
        draft.role = text(ListingColumn.ROLE, row);
        draft.id = id.of(row);
        if (draft.id.isPresent() && Spelling.isTotal(draft.id.get())) {
            draft.setAside(columns.header(ListingColumn.ID), draft.id.get(), Spelling.IS_TOTAL);
        }
        draft.seenOn = seenOn.of(row, draft);
        describe(row, draft);
        age(row, draft);
        distances(row, draft);
        price(row, draft);
        draft.outcome = outcome.of(row, draft);
        draft.endedOn = endedOn.of(row, draft);
        if (draft.outcome == Outcome.OPEN && draft.endedOn.isPresent() && draft.seenOn.isPresent()
                && draft.endedOn.get().isBefore(draft.seenOn.get())) {
            draft.odd(columns.header(ListingColumn.ENDED_ON), text(ListingColumn.ENDED_ON, row),
                    "it is said to have ended before it was seen on offer; the day of its end is not used");
            draft.endedOn = Optional.empty();
        }
        draft.saved = saved.of(row, draft);
        draft.source = foundAt.of(row);
        draft.note = note.of(row);
        kind(row, draft);
        if (!line.known().isEmpty()) {
            LinesFile.complete(draft.facts, line.known(), trimKey.of(row));
        }
        return draft;
    }

    private void describe(CsvRow row, Draft draft) {
        CarFacts.Builder facts = draft.facts;
        facts.trim = trim.of(row, draft);
        facts.body = body.of(row, draft);
        facts.runningGear = runningGear.of(row, draft);
        facts.region = region.of(row, draft);
        facts.powerKw = powerKw.of(row, draft);
        facts.cylinders = cylinders.of(row, draft);
        facts.weightKg = weightKg.of(row, draft);
        facts.drivenWheels = drivenWheels.of(row, draft);
        facts.seller = seller.of(row, draft);
        facts.runs = runs.of(row, draft);
        facts.rust = rust.of(row, draft);
        facts.paint = paint.of(row, draft);
        facts.interior = interior.of(row, draft);
        facts.mechanical = mechanical.of(row, draft);
        facts.records = records.of(row, draft);
        facts.keys = keys.of(row, draft);
        facts.airbags = airbags.of(row, draft);
        facts.title = title.of(row, draft);
        Damaged damaged = damage.of(row);
        facts.damage = damaged.zones();
        for (String zone : damaged.unmatched()) {
            lists.unmatched(ListingColumn.DAMAGE, columns.header(ListingColumn.DAMAGE), zone, ListingWords.DAMAGE, draft);
        }
        facts.options = options.of(row);
        if (!further.isEmpty()) {
            Map<String, String> all = new HashMap<>();
            for (Further column : further) {
                Optional<String> text = column.texts().of(row);
                if (text.isPresent()) {
                    all.put(column.name(), text.get());
                }
            }
            facts.further = all;
        }
    }

    private void age(CsvRow row, Draft draft) {
        CarFacts.Builder facts = draft.facts;
        OptionalInt year = modelYear.of(row, draft);
        if (year.isPresent()) {
            if (year.getAsInt() < CarFacts.FIRST_MODEL_YEAR || year.getAsInt() > CarFacts.LAST_MODEL_YEAR
                    || draft.seenOn.isPresent() && year.getAsInt() > draft.seenOn.get().getYear() + 1) {
                draft.setAside(columns.header(ListingColumn.MODEL_YEAR), text(ListingColumn.MODEL_YEAR, row), draft.seenOn.isPresent()
                        && year.getAsInt() > CarFacts.FIRST_MODEL_YEAR
                        ? "the model year lies more than a year after the sighting of " + draft.seenOn.get()
                        : "no car is of this model year");
            } else {
                facts.modelYear = year;
            }
        }
        if (firstRegistered.read(row, draft) instanceof Parsed.Understood<Optional<LocalDate>> day) {
            if (draft.seenOn.isPresent() && day.value().orElseThrow().isAfter(draft.seenOn.get()) && day.remarks().isEmpty()) {
                draft.setAside(columns.header(ListingColumn.FIRST_REGISTERED), text(ListingColumn.FIRST_REGISTERED, row),
                        "the first registration lies after the sighting of " + draft.seenOn.get());
            } else {
                facts.firstRegistered = day.value();
                draft.remarkAll(day.remarks());
            }
        }
        OptionalDouble years = ageYears.of(row, draft);
        if (years.isPresent()) {
            if (years.getAsDouble() < 0 || years.getAsDouble() > 140) {
                draft.setAside(columns.header(ListingColumn.AGE), text(ListingColumn.AGE, row), "no car is of this age in years");
            } else {
                facts.ageYears = years;
            }
        }
    }

    private void distances(CsvRow row, Draft draft) {
        CarFacts.Builder facts = draft.facts;
        Distance run = distance(mileage, row, draft);
        if (run != NO_DISTANCE) {
            draft.unit = run.unit();
            draft.unitInCell = run.inCell();
            if (run.miles() < 0) {
                draft.setAside(columns.header(ListingColumn.MILEAGE), text(ListingColumn.MILEAGE, row), "a distance cannot be below 0");
            } else if (run.miles() > MOST_MILES) {
                draft.setAside(columns.header(ListingColumn.MILEAGE), text(ListingColumn.MILEAGE, row),
                        "more than a million miles (1.6 million km) is no distance of a car");
            } else {
                facts.mileage(run.as(mileageStatus.of(row, draft)));
                askOfNoDistance(run, row, draft);
            }
        }
        Distance gear = distance(gearMileage, row, draft);
        if (gear.miles() < 0 || gear.miles() > MOST_MILES) {
            draft.odd(columns.header(ListingColumn.GEAR_MILEAGE), text(ListingColumn.GEAR_MILEAGE, row),
                    "no distance of a running gear; not used");
        } else if (gear != NO_DISTANCE) {
            facts.gearMileage(gear.as(gearMileageStatus.of(row, draft)));
        }
        Distance away = distance(distanceAway, row, draft);
        if (away.miles() < 0 || away.miles() > MOST_MILES) {
            draft.odd(columns.header(ListingColumn.DISTANCE_AWAY), text(ListingColumn.DISTANCE_AWAY, row),
                    "no distance to a car; not used");
        } else if (away != NO_DISTANCE) {
            facts.distanceAway(away.miles());
        }
    }

    /** A car some years old that has run nothing is rare; a distance that nobody wrote down is not, nor one written in thousands. */
    private void askOfNoDistance(Distance run, CsvRow row, Draft draft) {
        OptionalDouble age = yearsOld(draft);
        if (run.unit().fromMiles(run.miles()) < HARDLY_ANY && age.orElse(NO_LONGER_NEW) >= NO_LONGER_NEW) {
            draft.odd(columns.header(ListingColumn.MILEAGE), text(ListingColumn.MILEAGE, row), "hardly any distance for a car "
                    + (age.isPresent() ? "of this age" : "that may be years old")
                    + ": if it counts thousands, write it in full; if it is not known, leave the cell blank. The row is used as it stands");
        }
    }

    /** The age that a row tells, in years between two numbers of years where it is not given outright. */
    private static OptionalDouble yearsOld(Draft draft) {
        CarFacts.Builder facts = draft.facts;
        OptionalInt born = facts.firstRegistered.isPresent() ? OptionalInt.of(facts.firstRegistered.get().getYear()) : facts.modelYear;
        return facts.ageYears.isPresent() || draft.seenOn.isEmpty() || born.isEmpty() ? facts.ageYears
                : OptionalDouble.of(draft.seenOn.get().getYear() - born.getAsInt());
    }

    private Distance distance(Column<Distance> column, CsvRow row, Draft draft) {
        Parsed<Distance> parsed = column.read(row, draft);
        if (parsed instanceof Parsed.Understood<Distance> distance) {
            draft.remarkAll(distance.remarks());
            String contradiction = distance.value().contradiction();
            if (!contradiction.isEmpty()) {
                draft.odd(columns.header(column.column), text(column.column, row), contradiction);
            }
        }
        return column.value(parsed);
    }

    private void price(CsvRow row, Draft draft) {
        Parsed<Amounts> currency = amounts.read(row, draft);
        if (currency instanceof Parsed.Refused) {
            return;
        }
        Amounts beside = amounts.value(currency);
        Asked bid = beside.bid(row);
        boolean planned = !Spelling.isBlank(bid.text());
        Asked asked = planned ? bid : beside.asked(row);
        draft.asked = asked;
        draft.planned = planned;
        draft.remarkAll(asked.remarks());
        if (!asked.refusal().isEmpty()) {
            draft.reject(columns.header(planned ? ListingColumn.PLANNED_BID : ListingColumn.PRICE), asked.text(), asked.refusal());
        }
    }

    private void kind(CsvRow row, Draft draft) {
        if (hammer.of(row)) {
            hammer(row, draft);
        }
        Parsed<PriceKind> stated = kind.read(row, draft);
        boolean auction = draft.facts.seller == Seller.AUCTION && !columns.kindStatedByHeader();
        draft.kind = stated instanceof Parsed.Understood<PriceKind> known ? known.value()
                : auction ? PriceKind.SOLD : columns.kindByHeader();
        if (auction && Spelling.isBlank(text(ListingColumn.PRICE_KIND, row))) {
            draft.remark("the row does not say what kind its price is: an auction's price is taken for a result");
        }
        draft.includes = includes.of(row, draft);
    }

    /** A hammer falls at an auction: that is the seller where the row names none. */
    private void hammer(CsvRow row, Draft draft) {
        if (draft.facts.seller == Seller.UNKNOWN) {
            draft.facts.seller = Seller.AUCTION;
        } else if (draft.facts.seller != Seller.AUCTION) {
            draft.odd(columns.header(ListingColumn.SELLER), text(ListingColumn.SELLER, row),
                    "the price is an auction's result, but the seller is no auction: taken for a sale by this seller; write auction if it"
                            + " was one");
        }
    }
}
