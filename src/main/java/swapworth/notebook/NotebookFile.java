package swapworth.notebook;

import java.io.IOException;
import java.nio.charset.CharacterCodingException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.regex.Pattern;
import java.util.stream.Stream;

/**
 * A notebook as it stands in its file: cells between lines that begin with {@code // %%}. A cell whose line goes on with
 * {@code [markdown]} holds prose in comment lines; any other holds code.
 *
 * @param file where it stands
 * @param lines all its lines
 * @param cells its cells, in order
 */
record NotebookFile(Path file, List<String> lines, List<NotebookCell> cells) {
    private static final String SUFFIX = ".jsh";
    /** A link or a picture of Markdown, of which the words stay. */
    private static final Pattern LINK = Pattern.compile("!?\\[([^\\]]*)\\]\\(\\S*\\)");

    NotebookFile {
        lines = List.copyOf(lines);
        cells = List.copyOf(cells);
    }

    /**
     * Reads a notebook.
     *
     * @throws NotebookException if the file cannot be read, is not UTF-8, holds no cell, or has code among its prose
     */
    static NotebookFile read(Path file) {
        String text;
        try {
            text = Files.readString(file);
        } catch (CharacterCodingException e) {
            throw new NotebookException(file + ": this is not UTF-8 text; save it as UTF-8");
        } catch (IOException e) {
            throw new NotebookException(file + ": there is no such notebook, or it cannot be read");
        }
        return of(file, text.startsWith("\uFEFF") ? text.substring(1) : text);
    }

    static NotebookFile of(Path file, String text) {
        List<String> lines = text.lines().toList();
        List<NotebookCell> cells = new ArrayList<>();
        int from = 0;
        for (int i = 0; i <= lines.size(); i++) {
            if (i == lines.size() || i > from && mark(lines.get(i)).isPresent()) {
                cell(file, lines.subList(from, i), from, cells);
                from = i;
            }
        }
        if (cells.isEmpty()) {
            throw new NotebookException(file + ": there is no cell in this file; a line '// %%' begins a cell of code, '// %% [markdown]'"
                    + " one of prose");
        }
        return new NotebookFile(file, lines, cells);
    }

    private static void cell(Path file, List<String> lines, int from, List<NotebookCell> cells) {
        if (lines.isEmpty()) {
            return;
        }
        Optional<String> mark = mark(lines.get(0));
        int first = mark.isPresent() ? 1 : 0;
        List<String> body = lines.subList(first, lines.size());
        int firstLine = from + first + 1;
        if (mark.isEmpty() && body.stream().allMatch(l -> l.isBlank() || l.startsWith("//"))) {
            return;
        }
        if (mark.isPresent() && mark.get().startsWith("[markdown]")) {
            StringBuilder prose = new StringBuilder();
            for (int i = 0; i < body.size(); i++) {
                String line = body.get(i);
                if (!line.isBlank() && !line.startsWith("//")) {
                    throw new NotebookException(file + ":" + (firstLine + i) + ": code in a cell of prose: begin its lines with '//',"
                            + " or the cell with '// %%' alone\n    " + line.strip());
                }
                prose.append(line.startsWith("// ") ? line.substring(3) : line.isBlank() ? "" : line.substring(2)).append('\n');
            }
            cells.add(new NotebookCell(NotebookCell.Kind.PROSE, firstLine, prose.toString().strip() + "\n"));
            return;
        }
        cells.add(new NotebookCell(NotebookCell.Kind.CODE, firstLine, String.join("\n", body) + "\n"));
    }

    /** What stands behind the mark of a line that begins a cell; empty for any other line. */
    private static Optional<String> mark(String line) {
        if (!line.startsWith("//")) {
            return Optional.empty();
        }
        String rest = line.substring(2).stripLeading();
        return rest.startsWith("%%") ? Optional.of(rest.substring(2).strip()) : Optional.empty();
    }

    /** The name of a file without its ending. */
    static String nameOf(Path file) {
        String name = file.getFileName() == null ? "" : file.getFileName().toString();
        return name.endsWith(SUFFIX) ? name.substring(0, name.length() - SUFFIX.length()) : name;
    }

    /** The first heading of the prose, else the name of the file. */
    String title() {
        return prose().filter(l -> l.startsWith("# ")).map(l -> l.substring(2).strip()).findFirst().orElse(nameOf(file));
    }

    /** The first paragraph of the prose, without marks. */
    String opening() {
        List<String> words = prose().dropWhile(l -> l.isBlank() || l.startsWith("#")).takeWhile(l -> !l.isBlank() && !l.startsWith("#"))
                .toList();
        return plain(String.join(" ", words));
    }

    private Stream<String> prose() {
        return cells.stream().filter(c -> c.kind() == NotebookCell.Kind.PROSE).flatMap(c -> c.text().lines());
    }

    /** The first words of the prose that a cell of code belongs to. */
    String wordsOf(int cell) {
        int at = cell;
        while (at >= 0 && cells.get(at).kind() == NotebookCell.Kind.CODE) {
            at--;
        }
        String line = at < 0 ? "" : plain(cells.get(at).text().lines().filter(l -> !l.isBlank()).findFirst().orElse(""));
        return line.length() <= 48 ? line : line.substring(0, line.lastIndexOf(' ', 48) < 1 ? 48 : line.lastIndexOf(' ', 48)) + " ...";
    }

    private static String plain(String marked) {
        StringBuilder plain = new StringBuilder(marked.length());
        LINK.matcher(marked).replaceAll("$1").chars()
                .filter(c -> "#*`_".indexOf(c) < 0 && !Character.isISOControl(c)).forEach(c -> plain.append((char) c));
        return plain.toString().strip();
    }
}
