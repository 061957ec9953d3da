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

    private final Map<String, CarFacts> byLineAndTrim;
    private final List<RowProblem> problems;

    private LinesFile(Map<String, CarFacts> byLineAndTrim, List<RowProblem> problems) {
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
        RowReader reader = new RowReader(source, columns, new CellReader(conventions, source.separator()), words, lists);
        Map<String, CarFacts> facts = new HashMap<>();
        List<RowProblem> problems = new ArrayList<>(source.rejected());
        for (CsvRow row : source.rows()) {
            Draft draft = reader.read(row);
            problems.addAll(draft.rejections);
            problems.addAll(draft.asides);
            problems.addAll(draft.oddities);
            if (!draft.facts.vehicle.isEmpty()) {
                facts.put(key(draft.facts.vehicle, draft.facts.trim.orElse("")), draft.facts.build());
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

    /** Where a row says nothing of its car, the facts of its trim stand in, else those of its line. */
    void complete(CarFacts.Builder facts) {
        if (byLineAndTrim.isEmpty()) {
            return;
        }
        if (facts.trim.isPresent()) {
            fill(facts, byLineAndTrim.get(key(facts.vehicle, facts.trim.get())));
        }
        fill(facts, byLineAndTrim.get(key(facts.vehicle, "")));
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

    private static String key(String vehicle, String trim) {
        return Spelling.key(vehicle) + "\n" + Spelling.key(trim);
    }
}
