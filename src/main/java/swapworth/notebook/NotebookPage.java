package swapworth.notebook;

import java.util.ArrayList;
import java.util.List;
import swapworth.report.Page;
import swapworth.report.Part;
import swapworth.report.Section;

/**
 * Makes the page of a notebook that ran: its first heading is the title, headings of the second rank begin the sections that the
 * contents list, code is folded above what it put out. The page of a notebook that stopped ends with the cell that failed.
 */
final class NotebookPage {
    private final NotebookFile notebook;
    private final List<Section> sections = new ArrayList<>();
    private final List<Part> parts = new ArrayList<>();
    private String heading = "";

    private NotebookPage(NotebookFile notebook) {
        this.notebook = notebook;
    }

    /** The page as it is written. */
    static String html(NotebookFile notebook, Evaluation.Outcome outcome) {
        String stopped = outcome.failure().map(f -> f.place() + ": " + f.cause().strip().lines().findFirst().orElse("")).orElse("");
        Page page = new NotebookPage(notebook).page(outcome.outputs(), stopped.isEmpty() ? ""
                : stopped + "\n\nWhat ran so far stands below, up to the cell that failed.");
        return NotebookIndex.marked(page.html(), stopped.isEmpty() ? notebook.opening() : stopped);
    }

    private Page page(List<List<Output>> outputs, String lead) {
        boolean titled = false;
        for (int c = 0; c < outputs.size(); c++) {
            NotebookCell cell = notebook.cells().get(c);
            if (cell.kind() == NotebookCell.Kind.PROSE) {
                titled = prose(cell.text(), titled);
            } else if (Source.hasCode(cell.text())) {
                int lines = (int) cell.text().strip().lines().count();
                parts.add(Part.folded("", "the code, " + lines + (lines == 1 ? " line" : " lines"), Part.verbatim(cell.text().strip())));
                outputs.get(c).forEach(o -> parts.add(o.part()));
            }
        }
        close();
        boolean opened = !sections.isEmpty() && sections.get(0).heading().isEmpty();
        return new Page(notebook.title(), lead, sections, opened ? 1 : 0);
    }

    /** Takes the first heading of the first rank out as the title, and begins a section at each of the second. */
    private boolean prose(String text, boolean alreadyTitled) {
        boolean titled = alreadyTitled;
        boolean fenced = false;
        StringBuilder paragraph = new StringBuilder();
        for (String line : text.lines().toList()) {
            fenced ^= line.startsWith("```") || line.startsWith("~~~");
            if (!fenced && !titled && line.startsWith("# ")) {
                titled = true;
            } else if (!fenced && line.startsWith("## ")) {
                marked(paragraph);
                close();
                heading = line.substring("## ".length()).strip();
            } else {
                paragraph.append(line).append('\n');
            }
        }
        marked(paragraph);
        return titled;
    }

    private void marked(StringBuilder paragraph) {
        if (!paragraph.toString().isBlank()) {
            parts.add(Part.marked(paragraph.toString()));
        }
        paragraph.setLength(0);
    }

    private void close() {
        if (!parts.isEmpty() || !heading.isEmpty()) {
            sections.add(new Section("part-" + (sections.size() + 1), heading, parts));
        }
        parts.clear();
    }
}
