package swapworth.assumptions;

import java.math.BigDecimal;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import swapworth.reading.CellReader;
import swapworth.reading.CsvRow;
import swapworth.reading.CsvSource;
import swapworth.reading.Parsed;
import swapworth.reading.RowProblem;
import swapworth.reading.Spelling;
import swapworth.reading.Words;

/** The rows of an {@code assumptions.csv} held against the assumptions that they would replace; of one named twice the later row counts. */
final class AssumptionsFile {
    private final CsvSource source;
    private final CellReader cells;
    private final int name;
    private final int middle;
    private final int spread;
    private final int unit;
    private final int from;
    private final int note;
    private final Map<String, Assumption> before;
    private final Map<String, Assumption> replaced = new LinkedHashMap<>();
    private final List<RowProblem> problems = new ArrayList<>();

    private AssumptionsFile(CsvSource source, Words words, Map<String, Assumption> before) {
        this.source = source;
        this.cells = new CellReader(words.conventions(), source.separator());
        int[] needed = source.isOfNothing() ? new int[] {-1, -1} : source.neededColumns("name", "middle");
        this.name = needed[0];
        this.middle = needed[1];
        this.spread = source.column("spread");
        this.unit = source.column("unit");
        this.from = source.column("source");
        this.note = source.column("note");
        this.before = before;
    }

    static AssumptionsFile read(Path file, Map<String, Assumption> before) {
        Path folder = file.toAbsolutePath().getParent();
        Words words = folder == null ? Words.none() : Words.ofFolder(folder);
        AssumptionsFile read = new AssumptionsFile(CsvSource.readBeside(file, words), words, before);
        read.problems.addAll(read.source.rejected());
        read.problems.addAll(read.source.oddities());
        read.source.rows().forEach(read::take);
        return read;
    }

    /** The assumptions with the user's numbers, by name, in the order of the file. */
    Map<String, Assumption> replaced() {
        return replaced;
    }

    /** The rows that changed nothing. */
    List<RowProblem> problems() {
        return problems;
    }

    private void take(CsvRow row) {
        String key = Spelling.key(row.cell(name)).replace(' ', '_');
        Assumption ours = replaced.getOrDefault(key, before.get(key));
        if (ours == null) {
            reject(row, "name", name, Assumptions.unknown(row.cell(name), before.keySet()));
            return;
        }
        Parsed<BigDecimal> newMiddle = cells.number(row.cell(middle), "%");
        Parsed<BigDecimal> newSpread = cells.number(row.cell(spread), "%");
        if (newMiddle instanceof Parsed.Refused<BigDecimal> no) {
            reject(row, "middle", middle, no.message());
        } else if (newSpread instanceof Parsed.Refused<BigDecimal> no) {
            reject(row, "spread", spread, no.message());
        } else if (ours.isMoney() && !(newMiddle instanceof Parsed.Understood<BigDecimal>)) {
            reject(row, "middle", middle, "a row on an amount of money states the amount: ours is in US dollars, and a spread alone would"
                    + " be in another currency");
        } else if (!Spelling.key(orElse(row.cell(unit), ours.unit())).equals(Spelling.key(ours.unit()))) {
            reject(row, "unit", unit, "the unit of " + key + " is " + ours.unit() + "; express the number in it");
        } else {
            replace(row, ours, orElse(newMiddle, ours.middle()), orElse(newSpread, ours.spread()));
        }
    }

    private void replace(CsvRow row, Assumption ours, double newMiddle, double newSpread) {
        try {
            replaced.put(ours.name(), new Assumption(ours.name(), ours.question(), newMiddle, newSpread, ours.unit(),
                    orElse(row.cell(from), "the user's own, " + source.file()), orElse(row.cell(note), ours.note()), ours.least(),
                    ours.most()));
        } catch (IllegalArgumentException e) {
            boolean spreadAlone = newMiddle >= ours.least() && newMiddle <= ours.most();
            reject(row, spreadAlone ? "spread" : "middle", spreadAlone ? spread : middle, String.valueOf(e.getMessage()));
        }
    }

    private void reject(CsvRow row, String column, int place, String message) {
        problems.add(new RowProblem(source.file(), row.line(), column, row.cell(place), RowProblem.Kind.REJECTED, message));
    }

    private static String orElse(String text, String otherwise) {
        return text.isEmpty() ? otherwise : text;
    }

    private static double orElse(Parsed<BigDecimal> parsed, double otherwise) {
        return parsed instanceof Parsed.Understood<BigDecimal> number ? number.value().doubleValue() : otherwise;
    }
}
