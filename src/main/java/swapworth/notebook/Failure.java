package swapworth.notebook;

import java.util.List;
import swapworth.report.Part;

/**
 * Where and why a notebook stopped.
 *
 * @param cell number of the cell, from 1
 * @param line line of the file, from 1
 * @param cause what went wrong, in one or several lines
 * @param from the lines of the notebook from which that line was reached, the nearest first
 */
record Failure(int cell, int line, String cause, List<Integer> from) {

    Failure {
        from = List.copyOf(from);
    }

    /** Where it stopped, in words. */
    String place() {
        return "Stopped at line " + line;
    }

    /** What a reader of the page must not overlook. */
    Part part() {
        return Part.cautions(place(), cause.strip().lines().map(String::strip).toList());
    }

    /** File, line, cell, cause and the text of the line. */
    String report(NotebookFile notebook) {
        StringBuilder report = new StringBuilder().append(notebook.file()).append(':').append(line).append(": cell ").append(cell)
                .append(" of ").append(notebook.cells().size()).append(": ").append(cause.strip());
        if (line >= 1 && line <= notebook.lines().size()) {
            report.append("\n    ").append(notebook.lines().get(line - 1).strip());
        }
        from.forEach(l -> report.append("\n  from ").append(notebook.file()).append(':').append(l));
        return report.toString();
    }
}
