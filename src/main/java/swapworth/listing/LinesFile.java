package swapworth.listing;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import swapworth.reading.CellReader;
import swapworth.reading.Conventions;
import swapworth.reading.CsvRow;
import swapworth.reading.CsvSource;
import swapworth.reading.RowProblem;
import swapworth.reading.RowsRead;
import swapworth.reading.Spelling;
import swapworth.reading.Words;

/** Facts of whole model lines and trims: body, running gear, power, cylinders, weight, driven wheels. */
final class LinesFile {

    private static final LinesFile NONE = new LinesFile(Map.of(), List.of(), new RowsRead("no lines.csv", 0, List.of(), List.of(),
            List.of(), List.of(), 0));

    private final Map<String, Map<String, CarFacts>> byLineAndTrim;
    private final List<Draft> used;
    private final RowsRead read;

    private LinesFile(Map<String, Map<String, CarFacts>> byLineAndTrim, List<Draft> used, RowsRead read) {
        this.byLineAndTrim = byLineAndTrim;
        this.used = used;
        this.read = read;
    }

    static LinesFile none() {
        return NONE;
    }

    static LinesFile read(Path file, Conventions conventions, Words words) {
        CsvSource source = CsvSource.readBeside(file, words);
        if (source.isOfNothing()) {
            return new LinesFile(Map.of(), List.of(), new RowsRead(source.file(), 0, List.of(), List.of(),
                    source.oddities(), List.of(), 0));
        }
        FileColumns columns = new FileColumns(source, FileColumns.Kind.LINES);
        columns.check(List.of(FileColumns.Need.VEHICLE));
        WordLists lists = new WordLists();
        RowReader reader = new RowReader(source, columns, new CellReader(conventions, source.separator()), words, lists, NONE);
        Map<String, Draft> first = new LinkedHashMap<>();
        List<RowProblem> rejected = new ArrayList<>(source.rejected());
        List<RowProblem> setAside = new ArrayList<>();
        List<RowProblem> oddities = new ArrayList<>(source.oddities());
        for (CsvRow row : source.rows()) {
            Draft draft = reader.read(row);
            String key = key(draft.facts.vehicle, draft.facts.trim);
            if (draft.asides.isEmpty() && first.containsKey(key)) {
                draft.setAside(columns.header(ListingColumn.VEHICLE), reader.vehicle(row), "this line"
                        + draft.facts.trim.map(t -> " with its trim").orElse("") + " stands on line " + first.get(key).line
                        + " already, and that row counts: put all that is to be said of it there");
            }
            if (!draft.rejections.isEmpty()) {
                rejected.add(RowProblem.joined(draft.rejections));
            } else if (!draft.asides.isEmpty()) {
                setAside.add(RowProblem.joined(draft.asides));
            } else {
                oddities.addAll(draft.oddities);
                first.put(key, draft);
            }
        }
        lists.unmatchedWords().forEach(word -> oddities.add(word.problem()));
        oddities.addAll(ColumnUnderstood.unread(columns.understood(), Set.of(), FileColumns.OF_LINES.stream().map(ListingColumn::header)
                .toList()));
        Map<String, Map<String, CarFacts>> facts = new HashMap<>();
        for (Draft draft : first.values()) {
            facts.computeIfAbsent(Spelling.name(draft.facts.vehicle), line -> new HashMap<>())
                    .put(Spelling.name(draft.facts.trim.orElse("")), draft.facts.build());
        }
        return new LinesFile(facts, List.copyOf(first.values()), new RowsRead(source.file(), first.size(), rejected, setAside, oddities,
                List.of(), source.blankLines()));
    }

    /** A line, or one of its trims, in the form in which names are compared. */
    static String key(String vehicle, Optional<String> trim) {
        return Spelling.name(vehicle) + trim.map(t -> "\n" + Spelling.name(t)).orElse("");
    }

    /** What became of its rows. */
    RowsRead rows() {
        return read;
    }

    /**
     * The rows that say nothing of any listing.
     *
     * @param listings the listings, of whose lines one may have been meant
     */
    List<RowProblem> ofNoListing(ListingColumns listings) {
        List<RowProblem> none = new ArrayList<>();
        if (used.isEmpty()) {
            return none;
        }
        Set<String> seen = listings.linesAndTrims();
        List<String> lines = listings.lines();
        for (Draft draft : used) {
            String vehicle = draft.facts.vehicle;
            if (!seen.contains(key(vehicle, draft.facts.trim))) {
                boolean ofLine = draft.facts.trim.isEmpty() || !seen.contains(key(vehicle, Optional.empty()));
                none.add(new RowProblem(read.file(), draft.line, ofLine ? "vehicle" : "trim", ofLine ? vehicle : draft.facts.trim.get(),
                        RowProblem.Kind.ODD, "no listing that can be used is of this " + (ofLine ? "line" : "trim")
                        + ": the row can speak of cars in cars.csv only" + (ofLine ? Spelling.slipOf(vehicle, lines)
                                .map(near -> "; did you mean " + near + "?").orElse("") : "")));
            }
        }
        return none;
    }

    /** What is known of a line: of each trim by the key of its name, and of the line as a whole by an empty one. */
    Map<String, CarFacts> ofLine(String vehicle) {
        return byLineAndTrim.getOrDefault(Spelling.name(vehicle), Map.of());
    }

    /** Where a row says nothing of its car, the facts of its trim stand in, else those of its line. */
    static void complete(CarFacts.Builder facts, Map<String, CarFacts> ofLine, String trimKey) {
        fill(facts, ofLine.get(trimKey));
        fill(facts, ofLine.get(""));
    }

    private static void fill(CarFacts.Builder facts, @Nullable CarFacts line) {
        if (line == null) {
            return;
        }
        facts.body = facts.body.isPresent() ? facts.body : line.body();
        facts.runningGear = facts.runningGear.isPresent() ? facts.runningGear : line.runningGear();
        facts.powerKw = facts.powerKw.isPresent() ? facts.powerKw : line.powerKw();
        facts.cylinders = facts.cylinders.isPresent() ? facts.cylinders : line.cylinders();
        facts.weightKg = facts.weightKg.isPresent() ? facts.weightKg : line.weightKg();
        facts.drivenWheels = facts.drivenWheels == DrivenWheels.UNKNOWN ? line.drivenWheels() : facts.drivenWheels;
    }
}
