package swapworth.listing;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import swapworth.reading.RowProblem;

/** What is found of the rows of several files beside the cars that they show: which are left out, what is odd, what is asked. */
final class Findings {
    /** One problem for each row that is rejected. */
    final List<RowProblem> rejected = new ArrayList<>();
    /** One problem for each row that is set aside. */
    final List<RowProblem> setAside = new ArrayList<>();
    final List<RowProblem> oddities = new ArrayList<>();
    final List<RowProblem> questions = new ArrayList<>();
    private final Map<String, Integer> fileOrder = new LinkedHashMap<>();

    /** A further file is begun. */
    void begin(String file) {
        fileOrder.putIfAbsent(file, fileOrder.size());
    }

    /** Sets a row aside that was kept until all rows were known. */
    void setAside(Origin origin, String column, String text, String reason) {
        setAside.add(new RowProblem(origin.file(), origin.line(), column, text, RowProblem.Kind.SET_ASIDE, reason));
    }

    void odd(Origin origin, String column, String text, String message) {
        oddities.add(new RowProblem(origin.file(), origin.line(), column, text, RowProblem.Kind.ODD, message));
    }

    /** What is odd and what is asked, told apart. */
    void takeAll(List<RowProblem> found) {
        found.forEach(p -> (p.kind() == RowProblem.Kind.QUESTION ? questions : oddities).add(p));
    }

    /** Puts everything in the order of the files and their lines. */
    void sort() {
        for (List<RowProblem> problems : List.of(rejected, setAside, oddities, questions)) {
            if (problems.size() > 1) {
                problems.sort(this::inOrderOfFiles);
            }
        }
    }

    private int inOrderOfFiles(RowProblem a, RowProblem b) {
        int byFile = Integer.compare(fileOrder.getOrDefault(a.file(), -1), fileOrder.getOrDefault(b.file(), -1));
        return byFile != 0 ? byFile : Integer.compare(a.line(), b.line());
    }
}
