package swapworth.table;

import java.util.List;

/** Renders the rows of a table as CSV. */
final class TableCsv {

    private TableCsv() {
    }

    static String of(Table table) {
        StringBuilder out = new StringBuilder(64 + table.rows().size() * 96);
        CsvRows rows = new CsvRows(out).header(table.columns());
        for (List<Cell> row : table.rows()) {
            row.forEach(rows::cell);
            rows.end();
        }
        return out.toString();
    }
}
