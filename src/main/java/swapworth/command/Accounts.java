package swapworth.command;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import swapworth.reading.RowProblem;

/** What was rejected of all files that a step has read. */
final class Accounts {
    private final List<List<RowProblem>> told = new ArrayList<>();

    /** Takes the problems of one file in; those of its rows that were rejected count. */
    void add(List<RowProblem> problems) {
        told.add(problems);
    }

    /** The rejected rows, each once: the files that speak for a whole folder are read with each of its other files. */
    private Set<RowProblem> rejected() {
        Set<RowProblem> rejected = new LinkedHashSet<>();
        for (List<RowProblem> problems : told) {
            problems.stream().filter(p -> p.kind() == RowProblem.Kind.REJECTED).forEach(rejected::add);
        }
        return rejected;
    }

    /** How many rows were rejected, by file; empty for none. */
    String sentence() {
        Map<String, Integer> byFile = new TreeMap<>();
        rejected().forEach(p -> byFile.merge(p.file(), 1, Integer::sum));
        return String.join(", ", byFile.entrySet().stream().map(e -> e.getValue() + " rejected in " + e.getKey()).toList());
    }
}
