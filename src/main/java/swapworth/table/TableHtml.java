package swapworth.table;

import java.util.List;
import java.util.regex.Pattern;

/** Renders a table as an HTML figure. */
final class TableHtml {
    /** Beside more columns than this sentences have no room: they stand below the other cells of their row. */
    private static final int ROOM_FOR_SENTENCES = 7;
    private static final Pattern RANGE = Pattern.compile("[-+]?[\\d.,]+ to [-+]?[\\d.,]+");

    private TableHtml() {
    }

    static String of(Table table) {
        StringBuilder out = new StringBuilder(256 + table.rows().size() * 160);
        out.append("<figure class=\"table\">\n<figcaption>").append(Html.unbroken(table.title())).append("</figcaption>\n");
        for (String note : table.notes()) {
            out.append("<p class=\"note\">").append(Html.unbroken(note)).append("</p>\n");
        }
        if (table.rows().isEmpty()) {
            return out.append(table.notes().isEmpty() ? "<p class=\"note\">No row.</p>\n" : "").append("</figure>\n").toString();
        }
        out.append("<div class=\"wide\"><table aria-label=\"").append(Html.escape(table.title())).append('"')
                .append(crowded(table) ? " class=\"crowded\"" : "").append(">\n<thead><tr>");
        boolean[] empty = emptySentences(table);
        boolean[] words = columnsOfWords(table);
        for (int c = 0; c < empty.length; c++) {
            if (!empty[c]) {
                heading(table.columns().get(c), out);
            }
        }
        out.append("</tr></thead>\n<tbody>\n");
        for (List<Cell> row : table.rows()) {
            out.append("<tr>");
            for (int c = 0; c < row.size(); c++) {
                if (!empty[c]) {
                    out.append("<td").append(leaning(table.columns().get(c), words[c])).append('>');
                    content(row.get(c), out);
                    out.append("</td>");
                }
            }
            out.append("</tr>\n");
        }
        return out.append("</tbody>\n</table></div>\n</figure>\n").toString();
    }

    private static void heading(Column column, StringBuilder out) {
        out.append("<th scope=\"col\"").append(leaning(column, false)).append('>').append(Html.unbroken(column.label()));
        if (!column.unit().isEmpty()) {
            out.append(" <span class=\"unit\">").append(Html.escape(column.unit())).append("</span>");
        }
        out.append("</th>");
    }

    private static void content(Cell cell, StringBuilder out) {
        if (cell.link().isEmpty()) {
            out.append(Html.unbroken(cell.shown()));
        } else {
            out.append("<a href=\"").append(Html.escape(cell.link())).append("\">").append(Html.escape(cell.shown())).append("</a>");
        }
    }

    /** Columns of sentences in which no row has one: below a crowded table their heading would stand alone. */
    private static boolean[] emptySentences(Table table) {
        boolean[] empty = new boolean[table.columns().size()];
        for (int c = 0; c < empty.length; c++) {
            int column = c;
            empty[c] = !table.rows().isEmpty() && table.columns().get(c).align() == Column.Align.LEFT_IN_LINES
                    && table.rows().stream().allMatch(row -> row.get(column).shown().isEmpty());
        }
        return empty;
    }

    private static boolean crowded(Table table) {
        return table.columns().size() > ROOM_FOR_SENTENCES
                && table.columns().stream().anyMatch(c -> c.align() == Column.Align.LEFT_IN_LINES);
    }

    /** Columns of several words: on paper these may break into lines, and dates, ranges and numbers may not. */
    private static boolean[] columnsOfWords(Table table) {
        boolean[] words = new boolean[table.columns().size()];
        for (int c = 0; c < words.length; c++) {
            int column = c;
            words[c] = table.columns().get(c).align() == Column.Align.LEFT
                    && table.rows().stream().map(row -> row.get(column).shown()).anyMatch(TableHtml::isOfWords);
        }
        return words;
    }

    private static boolean isOfWords(String shown) {
        return shown.indexOf(' ') >= 0 && !RANGE.matcher(shown).matches();
    }

    private static String leaning(Column column, boolean words) {
        boolean behind = column.rank() == Column.Rank.BEHIND;
        return switch (column.align()) {
            case LEFT -> behind ? words ? " class=\"w b\"" : " class=\"b\"" : words ? " class=\"w\"" : "";
            case RIGHT -> behind ? " class=\"n b\"" : " class=\"n\"";
            case LEFT_IN_LINES -> " class=\"t\"";
        };
    }
}
