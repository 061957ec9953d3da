package swapworth.reading;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * The user's own spellings and conventions: what a file {@code words.csv} with the columns {@code column, word, means} says. Rows
 * whose column is {@code *} state a convention ({@code decimal mark}: comma or point; {@code date order}: day first or month
 * first; {@code mileage unit}: mi or km; {@code currency}: an ISO 4217 code); rows whose column is {@code header} say which column a
 * header of the user's own is, in every file of the folder; the others say what a word means in a column.
 */
public final class Words {

    private static final String HEADER = "header";
    private static final Words NONE = new Words(Conventions.unstated(), Map.of(), List.of());

    private final Conventions conventions;
    private final Map<String, Map<String, String>> meanings;
    private final List<RowProblem> problems;

    private Words(Conventions conventions, Map<String, Map<String, String>> meanings, List<RowProblem> problems) {
        this.conventions = conventions;
        this.meanings = meanings;
        this.problems = List.copyOf(problems);
    }

    /**
     * No spellings, and nothing stated.
     *
     * @return the empty collection
     */
    public static Words none() {
        return NONE;
    }

    /**
     * Reads a file.
     *
     * @param file with the columns {@code column, word, means}
     * @return what it says; rows that cannot be used are among the problems
     * @throws UnusableFileException if the file cannot be used as a whole
     */
    public static Words read(Path file) {
        CsvSource source = CsvSource.readBeside(file, Optional.empty());
        if (source.isOfNothing()) {
            return new Words(Conventions.unstated(), Map.of(), source.oddities());
        }
        int[] places = source.neededColumns("column", "word", source.column("means") >= 0 || source.column("meaning") < 0
                ? "means" : "meaning");
        int column = places[0];
        int word = places[1];
        int means = places[2];
        Conventions conventions = Conventions.unstated();
        Map<String, Map<String, String>> meanings = new HashMap<>();
        List<RowProblem> problems = new ArrayList<>(source.rejected());
        problems.addAll(source.oddities());
        for (CsvRow row : source.rows()) {
            String meaning = row.cell(means);
            if (!row.cell(column).equals("*")) {
                boolean ofHeader = Spelling.key(row.cell(column)).equals(HEADER);
                if (row.cell(column).isEmpty() || row.cell(word).isEmpty() || ofHeader && meaning.isEmpty()) {
                    problems.add(new RowProblem(source.file(), row.line(), "", String.join(",", row.cells()),
                            RowProblem.Kind.REJECTED, ofHeader ? "a row of a header needs the header as it stands in your files and the"
                                    + " name of the column that it means" : "a row needs a column and a word"));
                } else {
                    meanings.computeIfAbsent(Spelling.key(row.cell(column)), key -> new HashMap<>())
                            .put(Spelling.name(row.cell(word)), meaning);
                }
                continue;
            }
            Optional<Conventions> stated = stated(Spelling.key(row.cell(word)), meaning, conventions);
            if (stated.isPresent()) {
                conventions = stated.get();
            } else {
                problems.add(new RowProblem(source.file(), row.line(), row.cell(word), meaning, RowProblem.Kind.REJECTED,
                        "a convention is one of: decimal mark (comma, point), date order (day first, month first), mileage unit"
                                + " (mi, km), currency (an ISO 4217 code)"));
            }
        }
        return new Words(conventions, meanings, problems);
    }

    private static Optional<Conventions> stated(String what, String meaning, Conventions so) {
        String key = Spelling.key(meaning);
        return switch (what) {
            case "decimal mark" -> switch (key) {
                case "comma", "," -> Optional.of(so.with(DecimalMark.COMMA));
                case "point", "dot", "." -> Optional.of(so.with(DecimalMark.POINT));
                default -> Optional.empty();
            };
            case "date order" -> switch (key) {
                case "day first" -> Optional.of(so.with(DateOrder.DAY_FIRST));
                case "month first" -> Optional.of(so.with(DateOrder.MONTH_FIRST));
                default -> Optional.empty();
            };
            case "mileage unit" -> DistanceUnit.named(meaning).map(so::with);
            case "currency" -> Currencies.of(meaning).map(so::with);
            default -> Optional.empty();
        };
    }

    /**
     * What the file beside others says.
     *
     * @param folder the folder
     * @return what its {@code words.csv} says; nothing where there is none
     * @throws UnusableFileException if the file is there and cannot be used as a whole
     */
    public static Words ofFolder(Path folder) {
        Path file = folder.resolve("words.csv");
        return Files.isRegularFile(file) ? read(file) : NONE;
    }

    /** Whether there is no such file, or one that says nothing. */
    boolean saysNothing() {
        return meanings.isEmpty() && conventions.equals(Conventions.unstated());
    }

    /**
     * Headers by the names of the columns that they mean.
     *
     * @param header the headers as they stand in the user's file
     * @return for each what the user says it means, else itself
     */
    List<String> names(List<String> header) {
        return meanings.containsKey(HEADER) ? header.stream().map(own -> meaning(HEADER, own).orElse(own)).toList() : header;
    }

    /**
     * What the file states of numbers, dates, distances and money.
     *
     * @return the conventions, each possibly unstated
     */
    public Conventions conventions() {
        return conventions;
    }

    /**
     * The rows that could not be used.
     *
     * @return problems of the kind rejected
     */
    public List<RowProblem> problems() {
        return problems;
    }

    /**
     * What a word means in a column.
     *
     * @param column the name of the column
     * @param word the word as it stands in the user's file
     * @return what the user says it means; nothing if the user says nothing
     */
    public Optional<String> meaning(String column, String word) {
        if (meanings.isEmpty()) {
            return Optional.empty();
        }
        Map<String, String> ofColumn = meanings.get(Spelling.key(column));
        return ofColumn == null ? Optional.empty() : Optional.ofNullable(ofColumn.get(Spelling.name(word)));
    }

    /**
     * Whether anything is said of a column.
     *
     * @param column the name of the column
     * @return whether {@link #meaning} can have an answer
     */
    public boolean speakOf(String column) {
        return meanings.containsKey(Spelling.key(column));
    }
}
