package swapworth.notebook;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import swapworth.chart.Chart;
import swapworth.report.Part;

/**
 * Writes a notebook that ran as JSON after nbformat 4.5, with its outputs, as Jupyter opens it; up to the cell that failed.
 *
 * @see <a href="https://nbformat.readthedocs.io/en/latest/format_description.html">The notebook file format</a>
 */
final class Ipynb {
    private final StringBuilder out = new StringBuilder(1 << 16);

    private Ipynb() {
    }

    static String of(NotebookFile notebook, List<List<Output>> outputs) {
        return new Ipynb().document(notebook, outputs);
    }

    private String document(NotebookFile notebook, List<List<Output>> outputs) {
        out.append("{\n\"cells\": [\n");
        int executed = 0;
        for (int c = 0; c < outputs.size(); c++) {
            NotebookCell cell = notebook.cells().get(c);
            out.append(c == 0 ? "{" : ",\n{");
            boolean code = cell.kind() == NotebookCell.Kind.CODE;
            out.append("\"cell_type\": ").append(code ? "\"code\"" : "\"markdown\"").append(", \"id\": \"cell-").append(c + 1)
                    .append("\", \"metadata\": {}");
            if (code) {
                executed++;
                out.append(", \"execution_count\": ").append(executed).append(", \"outputs\": [");
                outputs(outputs.get(c), executed);
                out.append(']');
            }
            out.append(", \"source\": ");
            lines(cell.text().strip());
            out.append('}');
        }
        return out.append("\n],\n\"metadata\": {\"kernelspec\": {\"display_name\": \"Java\", \"language\": \"java\", \"name\": \"java\"}, "
                + "\"language_info\": {\"file_extension\": \".jsh\", \"mimetype\": \"text/x-java-source\", \"name\": \"java\"}},\n"
                + "\"nbformat\": 4,\n\"nbformat_minor\": 5\n}\n").toString();
    }

    private void outputs(List<Output> outputs, int executed) {
        List<Runnable> written = new ArrayList<>();
        boolean last = false;
        for (Output output : outputs) {
            if (output.manner() == Output.Manner.PRINTED) {
                written.add(() -> stream(PartText.of(output.part())));
                continue;
            }
            if (output.manner() == Output.Manner.STOPPED) {
                written.add(() -> stopped((Part.Cautions) output.part()));
                continue;
            }
            // A cell has one result at most; further parts of it are shown beside it.
            boolean result = output.manner() == Output.Manner.LAST && !last;
            last |= result;
            written.add(() -> shown(output.part(), result, executed));
            if (output.part() instanceof Part.Picture picture && !picture.chart().svg().isEmpty()
                    && !picture.chart().data().rows().isEmpty()) {
                written.add(() -> shown(Part.folded("", "the numbers", Part.rows(picture.chart().data())), false, executed));
            }
        }
        for (int o = 0; o < written.size(); o++) {
            out.append(o == 0 ? "\n" : ",\n");
            written.get(o).run();
        }
    }

    private void stream(String text) {
        out.append("{\"name\": \"stdout\", \"output_type\": \"stream\", \"text\": ");
        lines(text);
        out.append('}');
    }

    private void stopped(Part.Cautions why) {
        out.append("{\"ename\": ");
        string(why.heading());
        out.append(", \"evalue\": ");
        string(why.items().get(0));
        out.append(", \"output_type\": \"error\", \"traceback\": [");
        string(PartText.of(why).stripTrailing());
        out.append("]}");
    }

    private void shown(Part part, boolean result, int executed) {
        out.append("{\"data\": {");
        if (part instanceof Part.Picture picture && !picture.chart().svg().isEmpty()) {
            Chart chart = picture.chart();
            out.append("\"image/svg+xml\": ");
            lines(chart.document());
        } else {
            out.append("\"text/html\": ");
            lines(part.html());
        }
        out.append(", \"text/plain\": ");
        lines(PartText.of(part).stripTrailing());
        out.append("}, ").append(result ? "\"execution_count\": " + executed + ", " : "").append("\"metadata\": {}, \"output_type\": ")
                .append(result ? "\"execute_result\"" : "\"display_data\"").append('}');
    }

    /** Text of several lines as an array of its lines, each with its line feed. */
    private void lines(String text) {
        out.append('[');
        int from = 0;
        while (from < text.length()) {
            int end = text.indexOf('\n', from);
            int to = end < 0 ? text.length() : end + 1;
            out.append(from == 0 ? "" : ", ");
            string(text.substring(from, to));
            from = to;
        }
        out.append(']');
    }

    private void string(String text) {
        out.append('"');
        for (int i = 0; i < text.length(); i++) {
            char c = text.charAt(i);
            switch (c) {
                case '"' -> out.append("\\\"");
                case '\\' -> out.append("\\\\");
                case '\n' -> out.append("\\n");
                case '\t' -> out.append("\\t");
                default -> {
                    if (c < ' ' || c == 0x7f || Character.isSurrogate(c)) {
                        out.append(String.format(Locale.ROOT, "\\u%04x", (int) c));
                    } else {
                        out.append(c);
                    }
                }
            }
        }
        out.append('"');
    }
}
