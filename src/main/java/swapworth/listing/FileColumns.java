package swapworth.listing;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Currency;
import java.util.EnumMap;
import java.util.EnumSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import swapworth.reading.CsvRow;
import swapworth.reading.Conventions;
import swapworth.reading.CsvSource;
import swapworth.reading.Currencies;
import swapworth.reading.DistanceUnit;
import swapworth.reading.RowProblem;
import swapworth.reading.Spelling;
import swapworth.reading.UnusableFileException;

/** Which column of a file is which, with the units that its headers state. */
final class FileColumns {

    /** What a file is about. */
    enum Kind { LISTINGS, CARS, LINES }

    /** What a file cannot do without: one column of several. */
    enum Need {
        NAME("the column 'name'", ListingColumn.NAME),
        VEHICLE("a column for the model line (vehicle, line, model)", ListingColumn.VEHICLE),
        PRICE("a column for the price (price, ask, price_usd, price_eur)", ListingColumn.PRICE),
        AGE("a column for age or distance (model_year, first_registered, age_years, mileage_mi, mileage_km)", ListingColumn.MODEL_YEAR,
                ListingColumn.FIRST_REGISTERED, ListingColumn.AGE, ListingColumn.MILEAGE);

        private final String words;
        private final ListingColumn[] columns;

        Need(String words, ListingColumn... columns) {
            this.words = words;
            this.columns = columns;
        }

        private boolean isMetBy(FileColumns file) {
            for (ListingColumn column : columns) {
                if (file.has(column)) {
                    return true;
                }
            }
            return false;
        }
    }

    /** What a file of model lines says of them. */
    static final Set<ListingColumn> OF_LINES = EnumSet.of(ListingColumn.VEHICLE, ListingColumn.MAKER, ListingColumn.TRIM,
            ListingColumn.BODY, ListingColumn.RUNNING_GEAR, ListingColumn.POWER, ListingColumn.CYLINDERS, ListingColumn.WEIGHT,
            ListingColumn.DRIVEN_WHEELS, ListingColumn.NOTE, ListingColumn.SOURCE);
    private static final ListingColumn[] ALL = ListingColumn.values();

    private final CsvSource source;
    private final int[] place = new int[ALL.length];
    private final String[] unit = new String[ALL.length];
    private final ListingColumn[] meaning;
    private final String[] how;
    private final int[] empty;
    private int rows;
    private final List<String> doubled = new ArrayList<>();
    private final String[] furtherName;
    private final Map<ListingColumn, Currency> currencies = new EnumMap<>(ListingColumn.class);
    private PriceKind kindByHeader = PriceKind.ASKING;
    private boolean kindStatedByHeader;
    private boolean hammerByHeader;

    FileColumns(CsvSource source, Kind kind) {
        this.source = source;
        int count = source.header().size();
        meaning = new ListingColumn[count];
        empty = new int[count];
        how = new String[count];
        furtherName = new String[count];
        Arrays.fill(place, -1);
        Arrays.fill(unit, "");
        Arrays.fill(how, "");
        // Names of our own come first, so that a synonym never takes a column from them.
        for (int i = 0; i < count; i++) {
            if (isOwnName(i)) {
                resolve(i, kind);
            }
        }
        for (int i = 0; i < count; i++) {
            if (!isOwnName(i)) {
                resolve(i, kind);
            }
        }
        for (int i = 0; i < count; i++) {
            String name = source.names().get(i);
            furtherName[i] = name.toLowerCase(Locale.ROOT);
            if (meaning[i] == null && how[i].isEmpty() && !name.equals(source.header().get(i))) {
                how[i] = "kept as '" + Spelling.shortened(name, 30) + "', as words.csv says";
            }
        }
        if (has(ListingColumn.MAKER) && has(ListingColumn.VEHICLE)) {
            String header = Spelling.key(source.names().get(place(ListingColumn.VEHICLE)));
            if (header.equals("model") || header.equals("car")) {
                how[place(ListingColumn.VEHICLE)] = "with the maker before it";
            } else {
                how[place(ListingColumn.MAKER)] = "kept as a further column: the vehicle column names the line";
                meaning[place(ListingColumn.MAKER)] = null;
                place[ListingColumn.MAKER.ordinal()] = -1;
            }
        }
    }

    /** Whether a column has the name that the format has for it, and no synonym. */
    private boolean isOwnName(int i) {
        String words = Spelling.header(source.names().get(i));
        return ListingColumn.of(words).map(column -> Spelling.key(column.header()).equals(words)).orElse(false);
    }

    private void resolve(int i, Kind kind) {
        if (meaning[i] != null || source.names().get(i).isEmpty()) {
            return;
        }
        String words = Spelling.header(source.names().get(i));
        Optional<ListingColumn> named = ListingColumn.of(words);
        if (named.isPresent()) {
            takeNamed(i, named.get(), kind, words);
        } else {
            takeWithUnit(i, kind, words);
        }
    }

    private void takeNamed(int i, ListingColumn column, Kind kind, String words) {
        // Where words.csv has put a name in the place of a header, that header may still state the unit or the currency.
        String typed = source.header().get(i);
        boolean renamed = !typed.equals(source.names().get(i));
        take(i, column, DistanceUnit.named(words).or(() -> renamed ? DistanceUnit.ofHeader(typed) : Optional.empty())
                .map(DistanceUnit::symbol).orElse(""), kind, words);
        if (renamed && isAmount(column) && meaning[i] == column) {
            Currencies.ofColumn(source.names().get(i), typed).ifPresent(money -> currencies.put(column, money));
        }
    }

    /** Takes a column whose name is that of a column of the format and, behind it, a unit of distance or a currency. */
    private void takeWithUnit(int i, Kind kind, String words) {
        int space = words.lastIndexOf(' ');
        if (space < 0) {
            return;
        }
        String last = words.substring(space + 1);
        String rest = words.substring(0, words.startsWith(" in", space - 3) ? space - 3 : space);
        Optional<DistanceUnit> distance = DistanceUnit.named(last);
        if (distance.isPresent()) {
            ListingColumn.of(rest).or(() -> ListingColumn.of(rest + " mileage"))
                    .filter(c -> c == ListingColumn.MILEAGE || c == ListingColumn.GEAR_MILEAGE
                    || c == ListingColumn.DISTANCE_AWAY)
                    .ifPresent(c -> take(i, c, distance.get().symbol(), kind, rest));
            return;
        }
        Optional<Currency> money = Currencies.ofHeader(words);
        Optional<ListingColumn> amount = ListingColumn.of(rest).filter(FileColumns::isAmount);
        if (money.isPresent() && amount.isPresent() && take(i, amount.get(), money.get().getCurrencyCode(), kind, rest)) {
            currencies.put(amount.get(), money.get());
        }
    }

    private static boolean isAmount(ListingColumn column) {
        return column == ListingColumn.PRICE || column == ListingColumn.PLANNED_BID;
    }

    /** Headers of columns that mean the same as one before them and are not used for it. */
    List<String> doubled() {
        return doubled;
    }

    /** What to ask where neither the header of the distances nor a convention states their unit; none where one does. */
    Optional<RowProblem> unitInQuestion(Conventions stated) {
        return has(ListingColumn.MILEAGE) && unit(ListingColumn.MILEAGE).isEmpty() && stated.mileageUnit().isEmpty()
                ? Optional.of(new RowProblem(source.file(), 0, header(ListingColumn.MILEAGE), "", RowProblem.Kind.QUESTION,
                        DistanceUnit.UNSTATED))
                : Optional.empty();
    }

    /** What to ask where no column says which part the cars play, with the headers that were not understood; none where one does. */
    Optional<RowProblem> rolesInQuestion() {
        if (has(ListingColumn.ROLE)) {
            return Optional.empty();
        }
        List<String> further = new ArrayList<>();
        for (int i = 0; i < meaning.length; i++) {
            if (meaning[i] == null && how[i].isEmpty() && !source.header().get(i).isBlank()) {
                further.add(Spelling.shortened(source.header().get(i), 40));
            }
        }
        String which = further.isEmpty() ? "" : ". Not understood as columns of ours are: " + String.join(", ", further)
                + ". If one of these holds the roles, say so in words.csv, for instance: header," + further.get(0) + ",role";
        return Optional.of(new RowProblem(source.file(), 0, ListingColumn.ROLE.header(), "", RowProblem.Kind.QUESTION,
                "there is no such column, so that no car counts as donor, recipient or finished: add it with these words" + which));
    }

    private boolean take(int i, ListingColumn column, String statedUnit, Kind kind, String words) {
        boolean forCars = column == ListingColumn.NAME || column == ListingColumn.ROLE || column == ListingColumn.PLANNED_BID;
        if (forCars && kind != Kind.CARS || kind == Kind.LINES && !OF_LINES.contains(column)) {
            return false;
        }
        if (place[column.ordinal()] >= 0) {
            doubled.add(source.header().get(i));
            how[i] = "kept as a further column: '" + Spelling.shortened(source.header().get(place[column.ordinal()]), 30)
                    + "' is taken for " + column.header();
            return false;
        }
        place[column.ordinal()] = i;
        meaning[i] = column;
        unit[column.ordinal()] = switch (column) {
            case POWER -> says(i, words, "hp") ? "hp" : says(i, words, "ps") ? "ps" : "kW";
            case WEIGHT -> says(i, words, "lb") || says(i, words, "lbs") ? "lb" : "kg";
            default -> statedUnit;
        };
        how[i] = unit[column.ordinal()];
        if (column == ListingColumn.PRICE && (words.startsWith("sold") || words.startsWith("sale") || words.endsWith("paid")
                || words.startsWith("hammer") || words.startsWith("winning"))) {
            kindByHeader = PriceKind.SOLD;
            kindStatedByHeader = true;
            hammerByHeader = ListingWords.saysHammer(words);
        } else if (column == ListingColumn.PRICE && words.contains("ask")) {
            kindStatedByHeader = true;
        }
        return true;
    }

    /** Whether a column names a unit, or else the header in whose place its name was put by words.csv does. */
    private boolean says(int i, String words, String itsUnit) {
        String typed = Spelling.header(source.header().get(i));
        return words.endsWith(itsUnit) || !words.endsWith("kw") && !words.endsWith("kg") && typed.endsWith(" " + itsUnit);
    }

    /** Refuses a file that lacks what it cannot do without, and names all that it lacks. */
    void check(List<Need> needs) {
        List<Need> missing = new ArrayList<>();
        for (Need need : needs) {
            if (!need.isMetBy(this)) {
                missing.add(need);
            }
        }
        if (!missing.isEmpty()) {
            throw UnusableFileException.missingColumns(source, missing.stream().map(n -> n.words).toList(),
                    missing.get(0).columns[0].header());
        }
    }

    boolean has(ListingColumn column) {
        return place[column.ordinal()] >= 0;
    }

    int place(ListingColumn column) {
        return place[column.ordinal()];
    }

    String header(ListingColumn column) {
        return has(column) ? source.header().get(place(column)) : column.header();
    }

    /** The unit that the header states, empty for none. */
    String unit(ListingColumn column) {
        return unit[column.ordinal()];
    }

    /** The unit of distance that the header states. */
    Optional<DistanceUnit> distanceUnit(ListingColumn column) {
        return DistanceUnit.named(unit(column));
    }

    /** The currency that the header of amounts states. */
    Optional<Currency> currency(ListingColumn column) {
        return Optional.ofNullable(currencies.get(column));
    }

    PriceKind kindByHeader() {
        return kindByHeader;
    }

    /** Whether the header of the prices says that an auction's hammer fell at them. */
    boolean hammerByHeader() {
        return hammerByHeader;
    }

    boolean kindStatedByHeader() {
        return kindStatedByHeader;
    }

    /** The name under which a column is kept if it is none of ours, else empty. */
    String furtherName(int i) {
        return meaning[i] == null ? furtherName[i] : "";
    }

    int count() {
        return meaning.length;
    }

    /** Counts which cells of a row hold something. */
    void count(CsvRow row) {
        rows++;
        for (int i = 0; i < empty.length; i++) {
            empty[i] += row.isEmpty(i) ? 1 : 0;
        }
    }

    /** How each column was understood, with the rows counted so far. */
    List<ColumnUnderstood> understood() {
        List<ColumnUnderstood> columns = new ArrayList<>();
        for (int i = 0; i < meaning.length; i++) {
            columns.add(new ColumnUnderstood(source.file(), Spelling.shortened(source.header().get(i), 60),
                    meaning[i] == null ? "" : meaning[i].header(), how[i], rows - empty[i], rows));
        }
        return columns;
    }
}
