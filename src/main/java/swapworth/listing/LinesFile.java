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
            if (!draft.facts.vehicle().isEmpty()) {
                facts.put(key(draft.facts.vehicle(), draft.facts.trim().orElse("")), draft.facts);
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

    /** The facts of a car, where the row says nothing those of its trim, else those of its line. */
    CarFacts completed(CarFacts facts) {
        if (byLineAndTrim.isEmpty()) {
            return facts;
        }
        CarFacts done = facts;
        if (facts.trim().isPresent()) {
            done = filled(done, byLineAndTrim.get(key(facts.vehicle(), facts.trim().get())));
        }
        return filled(done, byLineAndTrim.get(key(facts.vehicle(), "")));
    }

    private static CarFacts filled(CarFacts facts, @Nullable CarFacts line) {
        if (line == null) {
            return facts;
        }
        CarFacts.Builder builder = facts.toBuilder();
        if (facts.body().isEmpty()) {
            line.body().ifPresent(builder::body);
        }
        if (facts.runningGear().isEmpty()) {
            line.runningGear().ifPresent(builder::runningGear);
        }
        if (facts.powerKw().isEmpty()) {
            line.powerKw().ifPresent(builder::powerKw);
        }
        if (facts.cylinders().isEmpty()) {
            line.cylinders().ifPresent(builder::cylinders);
        }
        if (facts.weightKg().isEmpty()) {
            line.weightKg().ifPresent(builder::weightKg);
        }
        if (facts.drivenWheels() == DrivenWheels.UNKNOWN) {
            builder.drivenWheels(line.drivenWheels());
        }
        return builder.build();
    }

    private static String key(String vehicle, String trim) {
        return Spelling.key(vehicle) + "\n" + Spelling.key(trim);
    }
}
