package swapworth.table;

import java.util.ArrayList;
import java.util.List;

/**
 * Renders a table as aligned text for a terminal: headings break into lines above their columns; where the table would be too wide, words
 * break within theirs, and sentences that have no room beside the rest stand below their row. Numbers never break.
 */
final class TableText {
    /** The most characters in a line, where the numbers leave it at that. */
    private static final int WIDTH = 140;
    private static final String GAP = "  ";
    /** No column of words is made narrower than this for the others' sake. */
    private static final int FEWEST = 10;
    /** Sentences that have less room than this stand below. */
    private static final int SENTENCES = 36;
    private static final String BELOW = "      ";

    private final Table table;
    /** The columns that stand side by side, and those of sentences that stand below. */
    private final List<Integer> beside = new ArrayList<>();
    private final List<Integer> below = new ArrayList<>();
    private final int[] width;

    private TableText(Table table) {
        this.table = table;
        width = new int[table.columns().size()];
        int[] narrowest = new int[width.length];
        int room = WIDTH;
        for (int c = 0; c < width.length; c++) {
            for (String word : column(c).heading().split(" ")) {
                narrowest[c] = Math.max(narrowest[c], TextLines.length(word));
            }
            width[c] = narrowest[c];
            for (List<Cell> row : table.rows()) {
                width[c] = Math.max(width[c], TextLines.length(text(row, c)));
            }
            room -= isOfSentences(c) ? 0 : width[c] + GAP.length();
        }
        for (int c = 0; c < width.length; c++) {
            (isOfSentences(c) && width[c] > Math.max(room, SENTENCES) && room < SENTENCES ? below : beside).add(c);
        }
        narrow(narrowest);
        widen();
    }

    static String of(Table table) {
        StringBuilder out = new StringBuilder();
        out.append(table.title()).append('\n');
        table.notes().forEach(note -> out.append(TextLines.of(GAP, note)));
        if (!table.rows().isEmpty()) {
            new TableText(table).write(out);
        } else if (table.notes().isEmpty()) {
            out.append(GAP).append("No row.\n");
        }
        return out.toString();
    }

    private Column column(int c) {
        return table.columns().get(c);
    }

    private boolean isOfSentences(int c) {
        return column(c).align() == Column.Align.LEFT_IN_LINES;
    }

    private boolean isOfNumbers(int c) {
        return column(c).align() == Column.Align.RIGHT;
    }

    private static String text(List<Cell> row, int c) {
        return TextLines.plain(row.get(c).shown());
    }

    private int total() {
        return beside.stream().mapToInt(c -> width[c] + GAP.length()).sum() - GAP.length();
    }

    /** Takes from the widest columns of words what the table is too wide by. */
    private void narrow(int[] narrowest) {
        for (int over = total() - WIDTH; over > 0; over--) {
            int widest = -1;
            for (int c : beside) {
                if (!isOfNumbers(c) && width[c] > Math.max(FEWEST, narrowest[c]) && (widest < 0 || width[c] > width[widest])) {
                    widest = c;
                }
            }
            if (widest < 0) {
                return;
            }
            width[widest]--;
        }
    }

    /** Gives the headings of most lines what room is left. */
    private void widen() {
        for (int left = WIDTH - total(); left > 0; left--) {
            int tallest = -1;
            int most = 1;
            for (int c : beside) {
                int lines = heading(c).size();
                if (lines > most) {
                    tallest = c;
                    most = lines;
                }
            }
            if (tallest < 0) {
                return;
            }
            width[tallest]++;
        }
    }

    private List<String> heading(int c) {
        return TextLines.broken(column(c).heading(), width[c]);
    }

    private void write(StringBuilder out) {
        int tallest = beside.stream().mapToInt(c -> heading(c).size()).max().orElse(0);
        List<List<String>> headings = new ArrayList<>();
        List<List<String>> rules = new ArrayList<>();
        for (int c : beside) {
            List<String> heading = heading(c);
            while (heading.size() < tallest) {
                heading.add(0, "");
            }
            headings.add(heading);
            rules.add(List.of("-".repeat(width[c])));
        }
        writeLines(out, headings);
        writeLines(out, rules);
        for (List<Cell> row : table.rows()) {
            List<List<String>> cells = new ArrayList<>();
            for (int c : beside) {
                cells.add(isOfNumbers(c) ? List.of(text(row, c)) : TextLines.broken(text(row, c), width[c]));
            }
            writeLines(out, cells);
            for (int c : below) {
                if (!text(row, c).isEmpty()) {
                    out.append(TextLines.of(BELOW, column(c).heading() + ": " + text(row, c)));
                }
            }
        }
    }

    /** Writes cells of one or more lines side by side. */
    private void writeLines(StringBuilder out, List<List<String>> cells) {
        int lines = cells.stream().mapToInt(List::size).max().orElse(0);
        for (int l = 0; l < lines; l++) {
            StringBuilder line = new StringBuilder();
            for (int b = 0; b < cells.size(); b++) {
                int c = beside.get(b);
                String text = l < cells.get(b).size() ? cells.get(b).get(l) : "";
                String pad = " ".repeat(Math.max(0, width[c] - TextLines.length(text)));
                line.append(b == 0 ? "" : GAP).append(isOfNumbers(c) ? pad + text : text + pad);
            }
            out.append(line.toString().stripTrailing()).append('\n');
        }
    }
}
