package swapworth.reading;

import java.math.BigDecimal;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Currency;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import swapworth.money.Conversion;
import swapworth.money.Money;

/**
 * One of the smaller files of a folder (fees, parts, ledger, ...), read row by row by the names of its columns. Columns are named once
 * with their synonyms; each row then gives its cells as texts, numbers, days, amounts and words, and a cell that cannot be read
 * rejects its row with line, column, text and reason. {@link #read()} accounts for every row at the end.
 *
 * <p>A header may carry a unit or a currency behind its name: {@code amount_eur}, {@code freight_km}.
 */
public final class NamedRows {
    private final CsvSource source;
    private final FolderSettings settings;
    private final CellReader cells;
    private final Map<String, Integer> places = new HashMap<>();
    private final Set<Integer> taken = new HashSet<>();
    private final List<String> missing = new ArrayList<>();
    private final Map<String, RowProblem> unmatched = new LinkedHashMap<>();
    private final List<RowProblem> rejected;
    private final List<RowProblem> setAside = new ArrayList<>();
    private final List<RowProblem> oddities = new ArrayList<>();
    private final List<RowProblem> questions = new ArrayList<>();
    /** The columns of distances about whose unit was asked. */
    private final Set<String> unitsAsked = new HashSet<>();
    private int used;

    private NamedRows(CsvSource source, FolderSettings settings) {
        this.source = source;
        this.settings = settings;
        this.cells = new CellReader(settings.conventions(), source.separator());
        this.rejected = new ArrayList<>(source.rejected());
    }

    /**
     * Opens a file.
     *
     * @param file the file
     * @param settings what speaks for all files of its folder
     * @return its rows, no column named yet
     * @throws UnusableFileException if the file as a whole cannot be used
     */
    public static NamedRows of(Path file, FolderSettings settings) {
        return new NamedRows(CsvSource.readBeside(file, settings.words()), settings);
    }

    /**
     * Names a column that the file must have; {@link #rows()} fails where one is missing.
     *
     * @param name its name
     * @param synonyms other names by which it may stand there
     * @return this
     */
    public NamedRows needs(String name, String... synonyms) {
        column(name, synonyms);
        if (!has(name) && !source.isOfNothing()) {
            missing.add(name);
        }
        return this;
    }

    /**
     * Names a column that the file may have.
     *
     * @param name its name
     * @param synonyms other names by which it may stand there
     * @return this
     */
    public NamedRows column(String name, String... synonyms) {
        int place = placeOf(name);
        for (int i = 0; place < 0 && i < synonyms.length; i++) {
            place = placeOf(synonyms[i]);
        }
        places.put(name, place);
        if (place >= 0) {
            taken.add(place);
        }
        return this;
    }

    private int placeOf(String name) {
        int place = source.column(name);
        for (int i = 0; place < 0 && i < source.names().size(); i++) {
            String header = headerWords(i);
            int space = header.lastIndexOf(' ');
            boolean unit = space > 0 && header.substring(0, space).equals(Spelling.key(name))
                    && (DistanceUnit.named(header.substring(space + 1)).isPresent() || Currencies.ofHeader(header).isPresent());
            place = unit ? i : -1;
        }
        return place;
    }

    private String headerWords(int place) {
        return Spelling.header(source.names().get(place));
    }

    /**
     * Whether the file has a column.
     *
     * @param name a name that was named before
     * @return whether it is there
     */
    public boolean has(String name) {
        Integer place = places.get(name);
        if (place == null) {
            throw new IllegalArgumentException("the column " + name + " was never named");
        }
        return place >= 0;
    }

    /**
     * The name of the file.
     *
     * @return without its folder
     */
    public String file() {
        return source.file();
    }

    /**
     * The rows, in file order, for reading once each. Where the header stands again, one export was put behind another: a row below it
     * that stands above it too is the same one, and set aside.
     *
     * @return every other row that holds text and could be told apart
     * @throws UnusableFileException if needed columns are missing; the message names all of them and lists the columns that were found
     */
    public List<Row> rows() {
        if (!missing.isEmpty()) {
            throw UnusableFileException.missingNames(source, missing);
        }
        int again = source.headerAgain();
        Map<String, Integer> above = new HashMap<>();
        List<Row> rows = new ArrayList<>(source.rows().size());
        for (CsvRow row : source.rows()) {
            int first = again > 0 && row.line() > again ? above.getOrDefault(whole(row), 0) : 0;
            if (row.line() < again) {
                above.putIfAbsent(whole(row), row.line());
            }
            if (first > 0) {
                Row same = new Row(row);
                same.setAside("", "line " + first + " says the same, above the header that stands again on line " + again
                        + ": " + RowProblem.COUNTED_ONCE);
                same.use();
            } else {
                rows.add(new Row(row));
            }
        }
        return rows;
    }

    private static String whole(CsvRow row) {
        return Spelling.stripped(String.join("\n", row.cells()));
    }

    /**
     * The account of all rows; to be asked when every row has been told by {@link Row#use} what becomes of it.
     *
     * @return counts and problems, columns and words that were not understood among them
     */
    public RowsRead read() {
        List<RowProblem> odd = new ArrayList<>(source.oddities());
        odd.addAll(oddities);
        odd.addAll(unmatched.values());
        for (int i = 0; i < source.names().size(); i++) {
            String header = source.header().get(i);
            if (!taken.contains(i) && !header.isEmpty()) {
                odd.add(RowProblem.unusedColumn(source.file(), header, source.names().get(i), places.keySet(), this::has));
            }
        }
        return new RowsRead(source.file(), used, rejected, setAside, odd, questions, source.blankLines());
    }

    /** One row while it is read. */
    public final class Row {
        private final CsvRow row;
        private final List<RowProblem> rejections = new ArrayList<>();
        private final List<RowProblem> asides = new ArrayList<>();
        private final List<RowProblem> odd = new ArrayList<>();
        private final List<RowProblem> asked = new ArrayList<>();

        private Row(CsvRow row) {
            this.row = row;
        }

        /**
         * The physical line on which the row begins.
         *
         * @return from 1
         */
        public int line() {
            return row.line();
        }

        /**
         * A text as it stands.
         *
         * @param column the name of the column
         * @return without the spaces around it; empty where the column is missing, or the cell blank or a sign that nothing is known, such
         *     as {@code n/a} or {@code -}, of which words.csv says nothing
         */
        public String text(String column) {
            String text = has(column) ? row.cell(places.get(column)) : "";
            if (text.isEmpty()) {
                return text;
            }
            boolean blank = Spelling.isBlank(text) && own(column, text).isEmpty();
            return blank ? "" : text;
        }

        /**
         * A number, which may carry a per cent sign.
         *
         * @param column the name of the column
         * @return nothing where the cell is blank; where it is no number the row is rejected
         */
        public Optional<BigDecimal> number(String column) {
            return value(column, cells.number(text(column), "%"));
        }

        /**
         * A number within limits.
         *
         * @param column the name of the column
         * @param least the least that makes sense
         * @param most the most that makes sense
         * @return nothing where the cell is blank; where it is no number or beyond the limits the row is rejected
         */
        public OptionalDouble number(String column, double least, double most) {
            Optional<BigDecimal> number = number(column);
            if (number.isPresent() && !(number.get().doubleValue() >= least && number.get().doubleValue() <= most)) {
                String message = most == Double.POSITIVE_INFINITY ? "this must be at least " + plain(least)
                        : "this must lie between " + plain(least) + " and " + plain(most);
                reject(column, message);
                return OptionalDouble.empty();
            }
            return number.isPresent() ? OptionalDouble.of(number.get().doubleValue()) : OptionalDouble.empty();
        }

        private static String plain(double number) {
            return BigDecimal.valueOf(number).stripTrailingZeros().toPlainString();
        }

        /**
         * A distance in miles: by the unit of the cell, else of the header, else of the conventions, else miles.
         *
         * @param column the name of the column
         * @return nothing where the cell is blank; where it is no distance the row is rejected
         */
        public OptionalDouble miles(String column) {
            Optional<Quantity> distance = value(column, cells.distance(text(column)));
            if (distance.isEmpty()) {
                return OptionalDouble.empty();
            }
            String header = headerWords(places.get(column));
            Optional<DistanceUnit> stated = distance.get().unit()
                    .or(() -> DistanceUnit.named(header.substring(header.lastIndexOf(' ') + 1)))
                    .or(() -> DistanceUnit.ofHeader(source.header().get(places.get(column))))
                    .or(() -> settings.conventions().mileageUnit());
            if (stated.isEmpty() && !unitsAsked.contains(column)) {
                unitsAsked.add(column);
                questions.add(new RowProblem(source.file(), 0, source.header().get(places.get(column)), "", RowProblem.Kind.QUESTION,
                        DistanceUnit.UNSTATED));
            }
            DistanceUnit unit = stated.orElse(DistanceUnit.MI);
            double amount = distance.get().number().doubleValue();
            if (amount < 0) {
                reject(column, "a distance cannot be below 0");
                return OptionalDouble.empty();
            }
            return OptionalDouble.of(unit.toMiles(amount));
        }

        /**
         * A day.
         *
         * @param column the name of the column
         * @return nothing where the cell is blank; where it is no day the row is rejected
         */
        public Optional<LocalDate> date(String column) {
            return value(column, cells.date(text(column)));
        }

        /**
         * An amount of money, in the currency of the cell, else of {@code currencyColumn}, else of the header, else of the conventions.
         *
         * @param column the name of the column
         * @param currencyColumn the name of the column that states currencies; empty for none
         * @return nothing where the cell is blank; where it is no amount, or the currency is none, the row is rejected
         */
        public Optional<Money> money(String column, String currencyColumn) {
            return money(column, currencyColumn, settings.conventions().currency());
        }

        /**
         * An amount of money, in the currency of the cell, else of {@code currencyColumn}, else of the header, else of the
         * conventions, else in the one given.
         *
         * @param column the name of the column
         * @param currencyColumn the name of the column that states currencies; empty for none
         * @param otherwise the currency where the row states none
         * @return nothing where the cell is blank; where it is no amount, or the currency is none, the row is rejected
         */
        public Optional<Money> money(String column, String currencyColumn, Currency otherwise) {
            return money(column, currencyColumn, settings.conventions().currency().or(() -> Optional.of(otherwise)));
        }

        private Optional<Money> money(String column, String currencyColumn, Optional<Currency> otherwise) {
            if (text(column).isEmpty()) {
                return Optional.empty();
            }
            Optional<Currency> currency = Currencies.ofColumn(source.names().get(places.get(column)),
                    source.header().get(places.get(column)));
            if (!currencyColumn.isEmpty() && !text(currencyColumn).isEmpty()) {
                currency = Currencies.of(text(currencyColumn));
                if (currency.isEmpty()) {
                    reject(currencyColumn, "this is no currency; write its ISO 4217 code, such as USD or EUR");
                    return Optional.empty();
                }
            }
            return value(column, cells.money(text(column), currency, otherwise));
        }

        /**
         * An amount in the currency of other rows where nothing says its own.
         *
         * @param column the name of the column
         * @param money the amount, perhaps in {@link Currencies#UNSAID}
         * @param others the currency of the others
         * @return the amount in its own currency, else in that one; where it was read with decimals that no coin there has, the row is
         *     rejected
         */
        public Money saidIn(String column, Money money, Currency others) {
            if (!money.currency().equals(Currencies.UNSAID)) {
                return money;
            }
            Money said = new Money(money.amount(), others);
            value(column, MoneyText.in(said, List.of()));
            return said;
        }

        /**
         * An amount in a base currency, at the rate of a day.
         *
         * @param column the name of the column, for messages
         * @param money the amount
         * @param base the base currency
         * @param on the day of the rate
         * @return nothing where there is no rate; the row is then set aside
         */
        public Optional<BigDecimal> converted(String column, Money money, Currency base, LocalDate on) {
            Conversion conversion = settings.rates().convert(money, base, on);
            if (conversion instanceof Conversion.NoRate none) {
                setAside(column, none.reason());
                return Optional.empty();
            }
            return Optional.of(((Conversion.Converted) conversion).amount());
        }

        /**
         * A word of a vocabulary, by the user's own spellings first.
         *
         * @param column the name of the column
         * @param vocabulary its words
         * @param <E> what the words stand for
         * @return nothing where the cell is blank, or the word is not understood, which is then listed and never guessed
         */
        public <E> Optional<E> word(String column, Vocabulary<E> vocabulary) {
            String word = word(column);
            Optional<E> meaning = meaning(word, vocabulary);
            if (meaning.isEmpty() && !word.isEmpty()) {
                unmatched.computeIfAbsent(column + "\n" + Spelling.key(text(column)), key -> problem(column, RowProblem.Kind.ODD,
                        "this word is not understood and taken as unknown" + instead(word, vocabulary)));
            }
            return meaning;
        }

        /**
         * A word without which nobody can tell how the row counts, such as whether its money was paid: as {@link #word}, but where the word
         * is not understood the row is rejected.
         *
         * @param column the name of the column
         * @param vocabulary its words
         * @param <E> what the words stand for
         * @return nothing where the cell is blank, or the word is not understood
         */
        public <E> Optional<E> decisiveWord(String column, Vocabulary<E> vocabulary) {
            String word = word(column);
            Optional<E> meaning = meaning(word, vocabulary);
            if (meaning.isEmpty() && !word.isEmpty()) {
                reject(column, "this word is not understood, so nobody can tell how the row counts" + instead(word, vocabulary));
            }
            return meaning;
        }

        /**
         * Several words of a cell, between which a {@code ;} or a {@code /} stands, without which nobody can tell how the row counts.
         *
         * @param column the name of the column
         * @param vocabulary its words
         * @param <E> what the words stand for
         * @return what each stands for; the row is rejected where one is not understood
         */
        public <E> List<E> decisiveWords(String column, Vocabulary<E> vocabulary) {
            List<E> meanings = new ArrayList<>();
            for (String part : word(column).split("[;/]")) {
                String word = Spelling.stripped(meaning(column, Spelling.stripped(part)));
                Optional<E> meaning = meaning(word, vocabulary);
                meaning.ifPresent(meanings::add);
                if (meaning.isEmpty() && !Spelling.isBlank(word)) {
                    reject(column, "'" + Spelling.shortened(word, 30) + "' is not understood, so nobody can tell how the row counts"
                            + instead(word, vocabulary));
                }
            }
            return meanings;
        }

        /** The word of a cell, by the user's own spellings first; empty where it says nothing, or that nothing is known. */
        private String word(String column) {
            String word = name(column);
            return Spelling.isBlank(word) ? "" : word;
        }

        /** A sign such as a dash may be a word, and nothing is none. */
        private static <E> Optional<E> meaning(String word, Vocabulary<E> vocabulary) {
            return word.isEmpty() ? Optional.empty() : vocabulary.meaning(word);
        }

        private static <E> String instead(String word, Vocabulary<E> vocabulary) {
            return "; known are: " + vocabulary.accepted() + "; words.csv can say what it means"
                    + Spelling.slipOf(word, vocabulary.words()).map(near -> "; did you mean " + near + "?").orElse("");
        }

        /**
         * A name in the user's own spelling, or in the one that {@code words.csv} puts in its place.
         *
         * @param column the name of the column
         * @return the name; empty where the cell is blank
         */
        public String name(String column) {
            return meaning(column, text(column));
        }

        /**
         * What {@code words.csv} puts in the place of a word, one of several in a cell for instance.
         *
         * @param column the name of the column
         * @param word the word in the user's own spelling
         * @return what it means there, else the word itself
         */
        public String meaning(String column, String word) {
            return own(column, word).orElse(word);
        }

        /** What words.csv says of a word of a column, which it may call by our name or by the header in the file. */
        private Optional<String> own(String column, String word) {
            return settings.words().meaning(column, word)
                    .or(() -> has(column) ? settings.words().meaning(source.header().get(places.get(column)), word) : Optional.empty());
        }

        /**
         * A number in a part of a cell, which may carry a per cent sign.
         *
         * @param part the part
         * @return nothing where it is none as the user writes numbers
         */
        public Optional<BigDecimal> numberIn(String part) {
            return cells.number(part, "%") instanceof Parsed.Understood<BigDecimal> number ? Optional.of(number.value()) : Optional.empty();
        }

        /**
         * Yes or no, by the user's own spellings first.
         *
         * @param column the name of the column
         * @return nothing where the cell is blank; where it is neither the row is rejected
         */
        public Optional<Boolean> yesOrNo(String column) {
            return value(column, CellReader.yesOrNo(word(column)));
        }

        private <T> Optional<T> value(String column, Parsed<T> parsed) {
            if (parsed instanceof Parsed.Refused<T> no) {
                reject(column, no.message());
            }
            return parsed instanceof Parsed.Understood<T> value ? Optional.of(value.value()) : Optional.empty();
        }

        /**
         * Says that the row cannot be read.
         *
         * @param column the name of the column
         * @param message the reason
         */
        public void reject(String column, String message) {
            rejections.add(problem(column, RowProblem.Kind.REJECTED, message));
        }

        /**
         * Says that the row was read and cannot be used.
         *
         * @param column the name of the column
         * @param message the reason
         */
        public void setAside(String column, String message) {
            asides.add(problem(column, RowProblem.Kind.SET_ASIDE, message));
        }

        /**
         * Sets the row aside where one of the cells that name it says that it sums up the others; nothing more is to be read of it then.
         *
         * @param naming the columns whose cells name a row
         * @return whether it is set aside
         */
        public boolean sumsUp(String... naming) {
            for (String column : naming) {
                if (Spelling.isTotal(text(column))) {
                    setAside(column, Spelling.IS_TOTAL);
                    return !use();
                }
            }
            return false;
        }

        /**
         * Says that something about the row looks odd.
         *
         * @param column the name of the column
         * @param message what
         */
        public void odd(String column, String message) {
            odd.add(problem(column, RowProblem.Kind.ODD, message));
        }

        /**
         * Asks something whose answer would make the row worth more.
         *
         * @param column the name of the column
         * @param message the question
         */
        public void ask(String column, String message) {
            asked.add(problem(column, RowProblem.Kind.QUESTION, message));
        }

        private RowProblem problem(String column, RowProblem.Kind kind, String message) {
            return new RowProblem(source.file(), row.line(), column, column.isEmpty() ? row.cell(0) : text(column), kind, message);
        }

        /**
         * Whether nothing has rejected the row or set it aside so far.
         *
         * @return what {@link #use} will say unless more is found
         */
        public boolean isUsable() {
            return rejections.isEmpty() && asides.isEmpty();
        }

        /**
         * Settles what becomes of the row; to be called once, last.
         *
         * @return whether it is used: nothing rejected it or set it aside
         */
        public boolean use() {
            if (!rejections.isEmpty()) {
                rejected.add(RowProblem.joined(rejections));
            } else if (!asides.isEmpty()) {
                setAside.add(RowProblem.joined(asides));
            } else {
                used++;
                oddities.addAll(odd);
                questions.addAll(asked);
                return true;
            }
            return false;
        }
    }
}
