package swapworth.listing;

import java.math.BigDecimal;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.Currency;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.Set;
import java.util.function.Function;
import swapworth.reading.CellReader;
import swapworth.reading.CsvRow;
import swapworth.reading.CsvSource;
import swapworth.reading.Currencies;
import swapworth.reading.DistanceUnit;
import swapworth.reading.Parsed;
import swapworth.reading.Quantity;
import swapworth.reading.Remembered;
import swapworth.reading.RowProblem;
import swapworth.reading.Spelling;
import swapworth.reading.Vocabulary;
import swapworth.reading.Words;

/** What single cells of one file of listings, of cars in play, or of model lines say, column by column. */
abstract class FileCells {

    private static final double KW_OF_HP = 0.745699872;
    private static final double KG_OF_LB = 0.45359237;
    private static final Map<String, Double> KILOWATTS = Map.of("kW", 1.0, "hp", KW_OF_HP, "bhp", KW_OF_HP, "ps", 0.73549875);
    private static final Map<String, Double> KILOGRAMS = Map.of("kg", 1.0, "lb", KG_OF_LB, "lbs", KG_OF_LB);
    static final Distance NO_DISTANCE = new Distance(Double.NaN, DistanceUnit.MI, false, "");

    /** Columns of finished swaps that name a line beside that of the row: it is spelled as that line is elsewhere. */
    private static final Set<String> LINES = Set.of("gear line", "factory line");

    final CsvSource source;
    final FileColumns columns;
    final WordLists lists;
    private final LinesFile lines;
    private final CellReader cells;
    private final Words words;
    private final boolean[] translated = new boolean[ListingColumn.values().length];
    private final DistanceUnit unitOfFile;
    /** Whether the header of the mileage or a convention states the unit of the file; else miles stand in. */
    private final boolean unitIsStated;

    FileCells(CsvSource source, FileColumns columns, CellReader cells, Words words, WordLists lists, LinesFile lines) {
        this.source = source;
        this.columns = columns;
        this.cells = cells;
        this.words = words;
        this.lists = lists;
        this.lines = lines;
        for (ListingColumn column : ListingColumn.values()) {
            translated[column.ordinal()] = columns.has(column)
                    && (words.speakOf(column.header()) || words.speakOf(columns.header(column)));
        }
        Optional<DistanceUnit> unitStated = columns.distanceUnit(ListingColumn.MILEAGE).or(() -> cells.conventions().mileageUnit());
        unitIsStated = unitStated.isPresent();
        unitOfFile = unitStated.orElse(DistanceUnit.MI);
    }

    /** The cell, put into the program's words where the user's own words.csv speaks of it. */
    final String text(ListingColumn column, CsvRow row) {
        String text = row.cell(columns.place(column));
        return text.isEmpty() ? text : meaning(column, text);
    }

    /** A word of a column, which words.csv may call by our name or by the header in the file. */
    private String meaning(ListingColumn column, String word) {
        return translated[column.ordinal()]
                ? words.meaning(column.header(), word).or(() -> words.meaning(columns.header(column), word)).orElse(word) : word;
    }

    final <T> Remembered<T> remembered(ListingColumn column, Function<CsvRow, T> finding) {
        return new Remembered<>(columns.place(column), finding);
    }

    /** The cells of one column. What is not understood is told as odd, and not used. */
    class Column<V> {
        final ListingColumn column;
        private final V nothing;
        private final boolean isThere;
        private final Remembered<Parsed<V>> saying;

        /** A column, and what stands for a cell that says nothing. */
        Column(ListingColumn column, V nothing, Function<String, Parsed<V>> reading) {
            this.column = column;
            this.nothing = nothing;
            this.isThere = columns.has(column);
            this.saying = remembered(column, row -> reading.apply(text(column, row)));
        }

        final V of(CsvRow row, Draft draft) {
            return isThere ? value(read(row, draft)) : nothing;
        }

        final V value(Parsed<V> parsed) {
            return parsed instanceof Parsed.Understood<V> known ? known.value() : nothing;
        }

        final Parsed<V> read(CsvRow row, Draft draft) {
            Parsed<V> parsed = saying.of(row);
            if (parsed instanceof Parsed.Refused<V> no) {
                tell(text(column, row), no.message(), draft);
            }
            return parsed;
        }

        void tell(String text, String message, Draft draft) {
            draft.odd(columns.header(column), text, message + RowProblem.NOT_USED);
        }
    }

    /** A column that must be understood: a row in which it is not is rejected. */
    private final class NeededColumn<V> extends Column<V> {
        NeededColumn(ListingColumn column, V nothing, Function<String, Parsed<V>> reading) {
            super(column, nothing, reading);
        }

        @Override
        void tell(String text, String message, Draft draft) {
            draft.reject(columns.header(column), text, message);
        }
    }

    /** A column of words: those that are not understood are listed, and never guessed. */
    private final class WordColumn<E> extends Column<E> {
        private final Vocabulary<E> vocabulary;

        WordColumn(ListingColumn column, Vocabulary<E> vocabulary, E unknown) {
            super(column, unknown, text -> meaning(vocabulary, text));
            this.vocabulary = vocabulary;
        }

        @Override
        void tell(String text, String message, Draft draft) {
            lists.unmatched(column, columns.header(column), text, vocabulary, draft);
        }
    }

    private static <E> Parsed<E> meaning(Vocabulary<E> vocabulary, String text) {
        Optional<E> meaning = vocabulary.meaning(text);
        return meaning.isPresent() ? Parsed.understood(meaning.get())
                : Spelling.isBlank(text) ? Parsed.blank() : Parsed.refused("this word is not known", "");
    }

    final <E> Column<E> words(ListingColumn column, Vocabulary<E> vocabulary, E unknown) {
        return new WordColumn<>(column, vocabulary, unknown);
    }

    /** Texts as they stand; where a formula has failed nothing stands. */
    final Remembered<Optional<String>> texts(ListingColumn column) {
        return remembered(column, row -> {
            String text = text(column, row);
            return text.isEmpty() || Spelling.isFault(text) ? Optional.empty() : Optional.of(text);
        });
    }

    /** Names, each in the one spelling that is used for it. */
    final Names names(ListingColumn column) {
        return new Names(column);
    }

    /** The cells of a column of names. */
    final class Names {
        private final ListingColumn column;
        private final Remembered<Optional<WordLists.Spelled>> saying;

        private Names(ListingColumn column) {
            this.column = column;
            saying = remembered(column, row -> name(column, text(column, row), row));
        }

        Optional<String> of(CsvRow row, Draft draft) {
            Optional<WordLists.Spelled> spelled = saying.of(row);
            if (spelled.isPresent()) {
                return spelled.get().inRow();
            }
            String text = text(column, row);
            if (Spelling.isFault(text)) {
                draft.odd(columns.header(column), text, Spelling.IS_FAULT + RowProblem.NOT_USED);
            }
            return Optional.empty();
        }
    }

    private Optional<WordLists.Spelled> name(ListingColumn column, String text, CsvRow row) {
        return Spelling.isBlank(text) || Spelling.isFault(text) ? Optional.empty()
                : Optional.of(lists.spelled(column, text, new Origin(source.file(), row.line())));
    }

    /**
     * A model line.
     *
     * @param spelled its name; nothing where a row does not say which it is
     * @param known what lines.csv knows of it, by the keys of its trims
     * @param noLine why the row is of none
     */
    record Line(Optional<WordLists.Spelled> spelled, Map<String, CarFacts> known, Optional<String> noLine) {

        /** The one spelling of its name for a row; empty where that does not say which it is. */
        String inRow() {
            return spelled.isPresent() ? spelled.get().inRow().orElseThrow() : "";
        }
    }

    /** The model lines, each by the makers that stand beside it. */
    final Remembered<Map<String, Line>> linesByMaker() {
        return remembered(ListingColumn.VEHICLE, row -> new HashMap<>(2));
    }

    final Line line(Map<String, Line> byMaker, CsvRow row) {
        String maker = text(ListingColumn.MAKER, row);
        Line known = byMaker.get(maker);
        if (known == null) {
            String name = vehicle(row);
            Optional<WordLists.Spelled> spelled = name(ListingColumn.VEHICLE, name, row);
            Optional<String> noLine = Spelling.isFault(name) ? Optional.of(Spelling.IS_FAULT)
                    : spelled.isEmpty() ? Optional.of("the row does not say which model line the car is of")
                    : Spelling.isTotal(name) ? Optional.of(Spelling.IS_TOTAL) : Optional.empty();
            known = new Line(spelled, spelledAsHere(lines.ofLine(name)), noLine);
            byMaker.put(maker, known);
        }
        return known;
    }

    private Map<String, CarFacts> spelledAsHere(Map<String, CarFacts> ofLine) {
        Map<String, CarFacts> all = new HashMap<>(ofLine);
        all.replaceAll((trim, facts) -> {
            CarFacts.Builder builder = facts.toBuilder();
            builder.body = facts.body().flatMap(body -> lists.kept(ListingColumn.BODY, body));
            builder.runningGear = facts.runningGear().flatMap(gear -> lists.kept(ListingColumn.RUNNING_GEAR, gear));
            return builder.build();
        });
        return all;
    }

    final String vehicle(CsvRow row) {
        String maker = text(ListingColumn.MAKER, row);
        String vehicle = text(ListingColumn.VEHICLE, row);
        return maker.isEmpty() || vehicle.isEmpty() ? vehicle : maker + " " + vehicle;
    }

    final Remembered<String> trimKeys() {
        return remembered(ListingColumn.TRIM, row -> {
            String trim = text(ListingColumn.TRIM, row);
            return Spelling.isBlank(trim) || Spelling.isFault(trim) ? "" : Spelling.name(trim);
        });
    }

    final Column<Optional<LocalDate>> seenOn() {
        return new NeededColumn<>(ListingColumn.SEEN_ON, Optional.empty(), this::day);
    }

    final Column<Optional<LocalDate>> endedOn() {
        return new Column<>(ListingColumn.ENDED_ON, Optional.empty(), this::day);
    }

    private Parsed<Optional<LocalDate>> day(String text) {
        return cells.date(text).map(Optional::of);
    }

    final Column<Optional<LocalDate>> firstRegistered() {
        return new NeededColumn<>(ListingColumn.FIRST_REGISTERED, Optional.empty(), text -> cells.dayMonthOrYear(text).map(Optional::of));
    }

    final Column<OptionalInt> modelYear() {
        return new NeededColumn<>(ListingColumn.MODEL_YEAR, OptionalInt.empty(), this::year);
    }

    private Parsed<OptionalInt> year(String text) {
        Parsed<BigDecimal> number = cells.number(text);
        double year = number instanceof Parsed.Understood<BigDecimal> known ? known.value().doubleValue() : Double.NaN;
        boolean isYear = year == Math.rint(year) && year >= 1000 && year <= 9999;
        return isYear || number instanceof Parsed.Blank ? number.map(known -> OptionalInt.of(known.intValue()))
                : Parsed.refused(number instanceof Parsed.Refused<BigDecimal> no ? no.reason() : "this is no year",
                        "write the year with four digits, such as 2011; a month or a day of first registration belongs into a column "
                        + ListingColumn.FIRST_REGISTERED.header());
    }

    final Column<OptionalDouble> ageYears() {
        return new NeededColumn<>(ListingColumn.AGE, OptionalDouble.empty(),
                text -> cells.number(text).map(years -> OptionalDouble.of(years.doubleValue())));
    }

    final Column<OptionalDouble> powerKw() {
        return measure(ListingColumn.POWER, KILOWATTS);
    }

    final Column<OptionalDouble> cylinders() {
        return measure(ListingColumn.CYLINDERS, Map.of());
    }

    final Column<OptionalDouble> weightKg() {
        return measure(ListingColumn.WEIGHT, KILOGRAMS);
    }

    /** A measure in the unit of its cell, else of its column; each unit with what it is worth. */
    private Column<OptionalDouble> measure(ListingColumn column, Map<String, Double> units) {
        String ofColumn = columns.unit(column);
        return new Column<>(column, OptionalDouble.empty(), text -> {
            String unit = units.keySet().stream().filter(name -> carries(text, name)).max(Comparator.comparing(String::length))
                    .orElse(ofColumn);
            Parsed<BigDecimal> number = cells.number(text, unit);
            return number instanceof Parsed.Understood<BigDecimal> known && known.value().signum() <= 0
                    ? Parsed.refused("this is no number above 0", "")
                    : number.map(value -> OptionalDouble.of(value.doubleValue() * units.getOrDefault(unit, 1.0)));
        });
    }

    /** Whether a number stands before a unit at the end of a text. */
    private static boolean carries(String text, String unit) {
        int cut = text.length() - unit.length();
        return cut > 0 && text.regionMatches(true, cut, unit, 0, unit.length()) && !Character.isLetter(text.charAt(cut - 1));
    }

    /**
     * A distance of either sign.
     *
     * @param miles in miles
     * @param unit the unit in which it was written
     * @param inCell whether the cell itself says so
     * @param contradiction what is to be said where the cell contradicts its header or the file; else empty
     */
    record Distance(double miles, DistanceUnit unit, boolean inCell, String contradiction) {
        Mileage as(MileageStatus status) {
            return new Mileage(miles, status, unit);
        }
    }

    final Column<Distance> mileage() {
        return new NeededColumn<>(ListingColumn.MILEAGE, NO_DISTANCE, distancesIn(ListingColumn.MILEAGE));
    }

    final Column<Distance> distances(ListingColumn column) {
        return new Column<>(column, NO_DISTANCE, distancesIn(column));
    }

    private Function<String, Parsed<Distance>> distancesIn(ListingColumn column) {
        Optional<DistanceUnit> ofHeader = columns.distanceUnit(column);
        DistanceUnit stated = ofHeader.orElse(unitOfFile);
        String saying = ofHeader.isPresent() ? "its header says " : unitIsStated ? "the file counts in " : "";
        return text -> distance(text, stated, saying);
    }

    private Parsed<Distance> distance(String text, DistanceUnit stated, String saying) {
        Parsed<Quantity> parsed = cells.distance(text);
        if (!(parsed instanceof Parsed.Understood<Quantity> quantity)) {
            return parsed.map(none -> NO_DISTANCE);
        }
        Optional<DistanceUnit> ofCell = quantity.value().unit();
        DistanceUnit used = ofCell.orElse(stated);
        String contradiction = used == stated || saying.isEmpty() ? ""
                : "the cell says " + used.symbol() + ", " + saying + stated.symbol() + "; the cell's unit is used";
        double miles = used.toMiles(quantity.value().number().doubleValue());
        return new Parsed.Understood<>(new Distance(miles, used, ofCell.isPresent(), contradiction), quantity.remarks());
    }

    /** Amounts, each in the currency that stands beside it. */
    final class Amounts {
        private final Remembered<Asked> asked;
        private final Remembered<Asked> bid;

        private Amounts(Optional<Currency> ofPrice, Optional<Currency> ofBid) {
            asked = remembered(ListingColumn.PRICE, row -> Asked.of(text(ListingColumn.PRICE, row), ofPrice, cells));
            bid = remembered(ListingColumn.PLANNED_BID, row -> Asked.of(text(ListingColumn.PLANNED_BID, row), ofBid, cells));
        }

        Asked asked(CsvRow row) {
            return asked.of(row);
        }

        Asked bid(CsvRow row) {
            return bid.of(row);
        }
    }

    /** The amounts by the currency beside them, else that of the header; a bid's is that of the price unless its header says another. */
    final Column<Amounts> amounts() {
        Optional<Currency> ofPrice = columns.currency(ListingColumn.PRICE);
        Amounts byHeader = new Amounts(ofPrice, columns.currency(ListingColumn.PLANNED_BID).or(() -> ofPrice));
        return new NeededColumn<>(ListingColumn.CURRENCY, byHeader, text -> {
            Optional<Currency> currency = Currencies.of(text);
            return Spelling.isBlank(text) ? Parsed.blank() : currency.isPresent() ? Parsed.understood(new Amounts(currency, currency))
                    : Parsed.refused("this is no currency; write the ISO 4217 code, such as EUR", "");
        });
    }

    /** Whether a kind of price, else the header of the prices, says that an auction's hammer fell. */
    final Remembered<Boolean> hammer() {
        return remembered(ListingColumn.PRICE_KIND, row -> {
            String kind = text(ListingColumn.PRICE_KIND, row);
            return Spelling.isBlank(kind) ? columns.hammerByHeader() : ListingWords.saysHammer(Spelling.key(kind));
        });
    }

    final Remembered<Damaged> damage() {
        return remembered(ListingColumn.DAMAGE,
                row -> Damaged.of(text(ListingColumn.DAMAGE, row), word -> meaning(ListingColumn.DAMAGE, word)));
    }

    /**
     * A column that is none of ours.
     *
     * @param name its header in lower case
     * @param texts its cells, in the user's other words where words.csv has them; empty where blank
     */
    record Further(String name, Remembered<Optional<String>> texts) {
    }

    final List<Further> further() {
        List<Further> further = new ArrayList<>();
        for (int i = 0; i < columns.count(); i++) {
            String name = columns.furtherName(i);
            int place = i;
            if (!name.isEmpty()) {
                further.add(new Further(name, new Remembered<>(place, row -> {
                    String text = row.cell(place);
                    return LINES.contains(Spelling.key(name)) ? name(ListingColumn.VEHICLE, words.meaning(name, text).orElse(text), row)
                            .flatMap(WordLists.Spelled::inRow)
                            : Spelling.isBlank(text) || Spelling.isFault(text) ? Optional.empty()
                            : Optional.of(words.meaning(name, text).orElse(text));
                })));
            }
        }
        return further;
    }
}
