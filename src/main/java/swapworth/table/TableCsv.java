package swapworth.table;

import java.util.List;

/** Renders the rows of a table as CSV. */
final class TableCsv {

    private TableCsv() {
    }

    static String of(Table table) {
        CsvRows rows = new CsvRows(64 + table.rows().size() * 96).header(table.columns());
        for (List<Cell> row : table.rows()) {
            row.forEach(rows::cell);
            rows.end();
        }
        return rows.toString();
    }
}
