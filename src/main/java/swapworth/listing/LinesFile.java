package swapworth.listing;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import swapworth.reading.CellReader;
import swapworth.reading.Conventions;
import swapworth.reading.CsvRow;
import swapworth.reading.CsvSource;
import swapworth.reading.RowProblem;
import swapworth.reading.Spelling;
import swapworth.reading.Words;

/** Facts of whole model lines and trims: body, running gear, power, cylinders, weight, driven wheels. */
final class LinesFile {

    private static final LinesFile NONE = new LinesFile(Map.of(), List.of());

    private final Map<String, Map<String, CarFacts>> byLineAndTrim;
    private final List<RowProblem> problems;

    private LinesFile(Map<String, Map<String, CarFacts>> byLineAndTrim, List<RowProblem> problems) {
        this.byLineAndTrim = byLineAndTrim;
        this.problems = problems;
    }

    static LinesFile none() {
        return NONE;
    }

    static LinesFile read(Path file, Conventions conventions, Words words) {
        CsvSource source = CsvSource.read(file, words);
        FileColumns columns = new FileColumns(source, FileColumns.Kind.LINES);
        columns.check(List.of(FileColumns.Need.VEHICLE));
        WordLists lists = new WordLists();
        RowReader reader = new RowReader(source, columns, new CellReader(conventions, source.separator()), words, lists, NONE);
        Map<String, Map<String, CarFacts>> facts = new HashMap<>();
        List<RowProblem> problems = new ArrayList<>(source.rejected());
        for (CsvRow row : source.rows()) {
            Draft draft = reader.read(row);
            problems.addAll(draft.rejections);
            problems.addAll(draft.asides);
            problems.addAll(draft.oddities);
            if (!draft.facts.vehicle.isEmpty()) {
                facts.computeIfAbsent(Spelling.key(draft.facts.vehicle), line -> new HashMap<>())
                        .put(Spelling.key(draft.facts.trim.orElse("")), draft.facts.build());
            }
        }
        for (UnmatchedWord word : lists.unmatchedWords()) {
            problems.add(word.problem());
        }
        return new LinesFile(facts, problems);
    }

    List<RowProblem> problems() {
        return problems;
    }

    /** What is known of a line: of each trim by the key of its name, and of the line as a whole by an empty one. */
    Map<String, CarFacts> ofLine(String vehicle) {
        return byLineAndTrim.getOrDefault(Spelling.key(vehicle), Map.of());
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
