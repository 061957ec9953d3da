package swapworth.listing;

import static java.util.Objects.requireNonNull;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.stream.Stream;
import swapworth.reading.RowProblem;
import swapworth.reading.Spelling;
import swapworth.table.Cell;
import swapworth.table.Column;
import swapworth.table.Table;

/** What was understood of files of listings, as tables: what a user should look at before believing any value. */
public final class Check {

    private static final String[] MARKS = {"used", "set aside", "rejected", "blank", "comment lines"};

    private final ListingsRead read;

    private Check(ListingsRead read) {
        this.read = read;
    }

    /**
     * The check of a collection.
     *
     * @param read what came out of its files
     * @return the check
     */
    public static Check of(ListingsRead read) {
        return new Check(requireNonNull(read, "read"));
    }

    /**
     * All tables that have rows, in the order in which they should be read.
     *
     * @return counts, questions, columns, words, rejected, set aside, oddities, cars by line, joins, price cuts
     */
    public List<Table> tables() {
        List<Table> tables = new ArrayList<>(List.of(counts()));
        for (Table table : List.of(questions(), columns(), words(), rejected(), setAside(), oddities(), lines(), joins(),
                priceCuts())) {
            if (!table.rows().isEmpty()) {
                tables.add(table);
            }
        }
        return tables;
    }

    /**
     * All tables as text.
     *
     * @return the tables one below the other
     */
    public String text() {
        StringBuilder text = new StringBuilder();
        for (Table table : tables()) {
            text.append(table.text()).append('\n');
        }
        return text.toString();
    }

    /**
     * The counts of rows, and what was taken by default.
     *
     * @return one row a count
     */
    public Table counts() {
        Counts counts = read.counts();
        Table.Builder table = Table.titled("Rows of the files").note(counts.sentence() + ".")
                .note(read.cars().size() + " cars. Prices in " + read.baseCurrency().getCurrencyCode() + ", distances in "
                        + read.distanceUnit().symbol() + ".");
        for (String note : read.notes()) {
            table.note(Character.toUpperCase(note.charAt(0)) + note.substring(1) + ".");
        }
        table.columns(Column.words("rows"), Column.number("count", ""));
        int[] values = {counts.used(), counts.setAside(), counts.rejected(), counts.blank(), counts.comments()};
        for (int i = 0; i < MARKS.length; i++) {
            table.row(Cell.words(MARKS[i]), Cell.whole(values[i]));
        }
        return table.build();
    }

    /**
     * How each column was understood.
     *
     * @return one row a column
     */
    public Table columns() {
        Table.Builder table = Table.titled("Columns").columns(Column.words("file"), Column.words("header"),
                Column.words("taken for"),
                Column.words("how"), Column.number("filled", ""), Column.number("rows", ""));
        for (ColumnUnderstood column : read.columns()) {
            table.row(Cell.words(column.file()), Cell.words(column.header()),
                    Cell.words(column.meaning().isEmpty() ? "a further column" : column.meaning()), Cell.words(column.how()),
                    Cell.whole(column.filled()), Cell.whole(column.rows()));
        }
        return table.build();
    }

    /**
     * What an answer would make worth more.
     *
     * @return one row a question
     */
    public Table questions() {
        return RowProblem.table("Questions", read.questions());
    }

    /**
     * The words that were not understood; the fact stays unknown in their rows.
     *
     * @return one row a word
     */
    public Table words() {
        Table.Builder table = Table.titled("Words that were not understood")
                .note("A row in words.csv tells what a word means: column, word, means.")
                .columns(Column.words("column"), Column.words("word"), Column.number("rows", ""), Column.words("first seen"),
                        Column.words("known words"), Column.words("did you mean"));
        for (UnmatchedWord word : read.unmatchedWords()) {
            table.row(Cell.words(word.column()), Cell.words(word.word()), Cell.whole(word.rows()),
                    Cell.words(word.firstSeen().toString()), Cell.words(word.accepted()),
                    word.nearest().map(Cell::words).orElse(Cell.BLANK));
        }
        return table.build();
    }

    /**
     * The rows that could not be read.
     *
     * @return one row a row
     */
    public Table rejected() {
        List<RowProblem> all = new ArrayList<>(read.rejected());
        all.addAll(oddities(RowProblem.Kind.REJECTED));
        return RowProblem.table("Rejected: could not be read", all);
    }

    /**
     * The rows that a model may not use.
     *
     * @return one row a row
     */
    public Table setAside() {
        return RowProblem.table("Set aside: read, but not for use", read.setAside());
    }

    /**
     * The used rows about which something looks odd.
     *
     * @return one row an oddity
     */
    public Table oddities() {
        return RowProblem.table("Odd, and used all the same", oddities(RowProblem.Kind.ODD));
    }

    /** Rows of the files that speak for all may be rejected beside the odd ones. */
    private List<RowProblem> oddities(RowProblem.Kind kind) {
        return read.oddities().stream().filter(problem -> problem.kind() == kind).toList();
    }

    /**
     * The model lines: how many sightings and cars, over which days, and how they ended.
     *
     * @return one row a line
     */
    public Table lines() {
        Map<String, List<Car>> lines = new LinkedHashMap<>();
        for (Car car : read.cars()) {
            lines.computeIfAbsent(car.facts().vehicle(), line -> new ArrayList<>()).add(car);
        }
        Table.Builder table = Table.titled("Model lines")
                .note("Gone is a vanished advertisement, which is not a sale.")
                .columns(Column.words("line"), Column.number("cars", ""), Column.number("sightings", ""),
                Column.words("first seen"),
                        Column.words("last seen"), Column.number("sold", ""), Column.number("withdrawn", ""),
                        Column.number("gone", ""),
                        Column.number("open", ""));
        for (Map.Entry<String, List<Car>> line : lines.entrySet()) {
            int[] outcomes = new int[Outcome.values().length];
            int sightings = 0;
            Optional<LocalDate> first = Optional.empty();
            Optional<LocalDate> last = Optional.empty();
            for (Car car : line.getValue()) {
                outcomes[car.outcome().ordinal()]++;
                sightings += car.sightings().size();
                first = earliest(first, car.firstSeen());
                last = latest(last, car.lastSeen());
            }
            table.row(Cell.words(Spelling.shortened(line.getKey(), 60)), Cell.whole(line.getValue().size()),
                    Cell.whole(sightings),
                    day(first), day(last), Cell.whole(outcomes[Outcome.SOLD.ordinal()]),
                    Cell.whole(outcomes[Outcome.WITHDRAWN.ordinal()]), Cell.whole(outcomes[Outcome.GONE.ordinal()]),
                    Cell.whole(outcomes[Outcome.OPEN.ordinal()]));
        }
        return table.build();
    }

    private static Optional<LocalDate> earliest(Optional<LocalDate> a, Optional<LocalDate> b) {
        return Stream.concat(a.stream(), b.stream()).min(Comparator.naturalOrder());
    }

    private static Optional<LocalDate> latest(Optional<LocalDate> a, Optional<LocalDate> b) {
        return Stream.concat(a.stream(), b.stream()).max(Comparator.naturalOrder());
    }

    /**
     * The cars whose sightings were joined on facts, and why.
     *
     * @return one row a join
     */
    public Table joins() {
        Table.Builder table = Table.titled("Rows taken for the same car, without a common id")
                .note("A pair needs " + CarMatching.needed()
                        + "; give two rows of different cars different trims or mileages to keep them apart.")
                .columns(Column.words("car"), Column.words("line"), Column.number("sightings", ""), Column.sentences("why"));
        for (Car car : read.cars()) {
            for (String why : car.joinedBy()) {
                table.row(Cell.words(Spelling.shortened(car.name(), 40)), Cell.words(Spelling.shortened(car.facts().vehicle(),
                        60)),
                        Cell.whole(car.sightings().size()), Cell.words(why));
            }
        }
        return table.build();
    }

    /**
     * All cars with their histories.
     *
     * @return one row a car
     */
    public Table cars() {
        String currency = read.baseCurrency().getCurrencyCode();
        Table.Builder table = Table.titled("Cars").columns(Column.words("car"), Column.words("line"), Column.number("sightings",
                ""),
                Column.words("first seen"), Column.words("last seen"), Column.number("days on offer", ""),
                Column.number("first price", currency), Column.number("last price", currency), Column.number("cuts", ""),
                Column.words("outcome"));
        for (Car car : read.cars()) {
            OptionalLong days = car.daysOnOffer();
            table.row(Cell.words(Spelling.shortened(car.name(), 40)), Cell.words(Spelling.shortened(car.facts().vehicle(), 60)),
                    Cell.whole(car.sightings().size()), day(car.firstSeen()), day(car.lastSeen()),
                    days.isPresent() ? Cell.whole(days.getAsLong()) : Cell.BLANK,
                    Cell.number(car.sightings().get(0).price().amount(), 0), Cell.number(car.latest().price().amount(), 0),
                    Cell.whole(car.priceCuts().size()), Cell.words(car.outcome().words()));
        }
        return table.build();
    }

    /**
     * The cuts of asking prices that the sightings show.
     *
     * @return one row a cut
     */
    public Table priceCuts() {
        String currency = read.baseCurrency().getCurrencyCode();
        Table.Builder table = Table.titled("Price cuts").columns(Column.words("car"), Column.words("line"), Column.words("seen"),
                Column.words("seen again"), Column.number("before", currency), Column.number("after", currency),
                Column.number("change", "%"));
        int changed = 0;
        int again = 0;
        for (Car car : read.cars()) {
            again += car.sightings().size() > 1 ? 1 : 0;
            changed += car.priceCuts().isEmpty() ? 0 : 1;
            for (Car.PriceChange cut : car.priceCuts()) {
                table.row(Cell.words(Spelling.shortened(car.name(), 40)), Cell.words(Spelling.shortened(car.facts().vehicle(),
                        60)),
                        day(Optional.of(cut.from())), day(Optional.of(cut.to())), Cell.number(cut.before(), 0),
                        Cell.number(cut.after(), 0), Cell.signed(cut.percent(), 1));
            }
        }
        return table.note(again == 1 ? "The 1 car seen more than once was " + (changed == 1 ? "cut." : "not cut.")
                : changed + " of the " + again + " cars seen more than once " + (changed == 1 ? "was cut." : "were cut.")).build();
    }

    private static Cell day(Optional<LocalDate> day) {
        return day.map(d -> Cell.words(d.toString())).orElse(Cell.BLANK);
    }
}
