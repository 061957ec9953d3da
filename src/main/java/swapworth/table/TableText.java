package swapworth.table;

import java.util.List;

/** Renders a table as aligned text. */
final class TableText {

    private TableText() {
    }

    static String of(Table table) {
        StringBuilder out = new StringBuilder();
        out.append(table.title()).append('\n');
        for (String note : table.notes()) {
            out.append("  ").append(onOneLine(note)).append('\n');
        }
        List<Column> columns = table.columns();
        int[] width = new int[columns.size()];
        for (int c = 0; c < width.length; c++) {
            width[c] = length(columns.get(c).heading());
            for (List<Cell> row : table.rows()) {
                width[c] = Math.max(width[c], length(onOneLine(row.get(c).shown())));
            }
        }
        StringBuilder line = new StringBuilder();
        for (int c = 0; c < width.length; c++) {
            pad(line, columns.get(c).heading(), width[c], columns.get(c).align(), c);
        }
        finish(out, line);
        for (int c = 0; c < width.length; c++) {
            line.append(c == 0 ? "" : "  ").append("-".repeat(width[c]));
        }
        finish(out, line);
        for (List<Cell> row : table.rows()) {
            for (int c = 0; c < width.length; c++) {
                pad(line, onOneLine(row.get(c).shown()), width[c], columns.get(c).align(), c);
            }
            finish(out, line);
        }
        return out.toString();
    }

    private static void finish(StringBuilder out, StringBuilder line) {
        out.append(line.toString().stripTrailing()).append('\n');
        line.setLength(0);
    }

    private static void pad(StringBuilder line, String text, int width, Column.Align align, int column) {
        String gap = " ".repeat(Math.max(0, width - length(text)));
        line.append(column == 0 ? "" : "  ");
        if (align == Column.Align.RIGHT) {
            line.append(gap).append(text);
        } else {
            line.append(text).append(gap);
        }
    }

    private static int length(String text) {
        return text.codePointCount(0, text.length());
    }

    /** A stranger's control characters could move a terminal's cursor or colour its text: they become spaces. */
    private static String onOneLine(String text) {
        StringBuilder clean = new StringBuilder(text.length());
        for (int i = 0; i < text.length(); i++) {
            char c = text.charAt(i);
            clean.append(Character.isISOControl(c) || Character.getType(c) == Character.FORMAT ? ' ' : c);
        }
        return clean.toString();
    }
}
