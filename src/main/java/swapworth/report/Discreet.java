package swapworth.report;

import java.util.regex.Pattern;
import swapworth.table.Cell;
import swapworth.table.Column;
import swapworth.table.Table;

/** Keeps links, addresses and numbers of people out of what strangers read. */
final class Discreet {
    private static final Pattern DAY = Pattern.compile("\\b(19|20)\\d\\d[-_.]?[01]\\d[-_.]?[0-3]\\d\\b");
    private static final Pattern REVEALING = Pattern.compile("(?i)https?:|www\\.|@|\\+\\s?\\d|\\d([ ./()-]{0,2}\\d){6,}");

    private Discreet() {
    }

    /** The text, or in its place words that say that the owner keeps it. */
    static String text(String text) {
        return REVEALING.matcher(DAY.matcher(text).replaceAll("")).find() ? "(kept by the owner)" : text;
    }

    /** A table without what the owner keeps, and without links. */
    static Table table(Table table) {
        Table.Builder copy = Table.titled(text(table.title())).columns(table.columns().toArray(Column[]::new));
        table.notes().forEach(note -> copy.note(text(note)));
        table.rows().forEach(row -> copy.row(row.stream().map(cell -> Cell.words(text(cell.shown()))).toList()));
        return copy.build();
    }
}
