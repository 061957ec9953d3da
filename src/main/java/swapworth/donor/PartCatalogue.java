package swapworth.donor;

import static java.util.Objects.requireNonNull;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeSet;
import swapworth.reading.CsvRow;
import swapworth.reading.CsvSource;
import swapworth.reading.Spelling;

/** The kinds of parts that the program knows, with their other names, and what damage leaves of each zone. */
final class PartCatalogue {
    private final Map<String, PartKind> byName = new LinkedHashMap<>();
    /** All names, for hints. */
    private final List<String> names = new ArrayList<>();
    private final List<Leaves> leaves = new ArrayList<>();

    /** What one damage or fault leaves of the parts of a zone, or of a side. */
    record Leaves(String what, String zone, PartState state) {
    }

    private static final class Held {
        static final PartCatalogue ONE = new PartCatalogue();
    }

    static PartCatalogue get() {
        return Held.ONE;
    }

    private PartCatalogue() {
        for (CsvRow row : rows("parts.csv")) {
            PartKind kind = new PartKind(row.cell(0), row.cell(1), row.cell(2), row.cell(3));
            add(kind.name(), kind);
            for (String other : row.cell(4).split(";")) {
                if (!other.isBlank()) {
                    add(other, kind);
                }
            }
        }
        for (CsvRow row : rows("damage-leaves.csv")) {
            leaves.add(new Leaves(row.cell(0), row.cell(1), PartState.WORDS.meaning(row.cell(2)).orElseThrow()));
        }
    }

    private void add(String name, PartKind kind) {
        names.add(Spelling.key(name));
        PartKind before = byName.put(Spelling.name(name), kind);
        if (before != null && before != kind) {
            throw new IllegalStateException("'" + name + "' is both " + before.name() + " and " + kind.name());
        }
    }

    private static List<CsvRow> rows(String name) {
        try (InputStream in = requireNonNull(PartCatalogue.class.getResourceAsStream("/swapworth/donor/" + name), name)) {
            return CsvSource.of(name, new String(in.readAllBytes(), StandardCharsets.UTF_8)).rows();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    Optional<PartKind> kind(String name) {
        return Optional.ofNullable(byName.get(Spelling.name(name)));
    }

    Optional<String> nearest(String name) {
        return Spelling.nearest(name, names);
    }

    List<String> groups() {
        TreeSet<String> groups = new TreeSet<>();
        byName.values().forEach(kind -> groups.add(kind.group()));
        return List.copyOf(groups);
    }

    List<Leaves> leaves() {
        return leaves;
    }
}
