package swapworth.table;

import java.util.List;

/** Renders the rows of a table as CSV. */
final class TableCsv {

    private TableCsv() {
    }

    static String of(Table table) {
        StringBuilder out = new StringBuilder(64 + table.rows().size() * 96);
        for (int c = 0; c < table.columns().size(); c++) {
            field(out, table.columns().get(c).key(), c);
        }
        out.append("\r\n");
        for (List<Cell> row : table.rows()) {
            for (int c = 0; c < row.size(); c++) {
                Cell cell = row.get(c);
                field(out, cell.kind() == Cell.Kind.WORDS ? neutral(cell.exact()) : cell.exact(), c);
            }
            out.append("\r\n");
        }
        return out.toString();
    }

    private static String neutral(String words) {
        return !words.isEmpty() && "=+-@\t\r".indexOf(words.charAt(0)) >= 0 ? "'" + words : words;
    }

    private static void field(StringBuilder out, String text, int column) {
        if (column > 0) {
            out.append(',');
        }
        if (text.indexOf(',') >= 0 || text.indexOf('"') >= 0 || text.indexOf('\n') >= 0 || text.indexOf('\r') >= 0) {
            out.append('"').append(text.replace("\"", "\"\"")).append('"');
        } else {
            out.append(text);
        }
    }
}
