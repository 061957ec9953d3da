package swapworth.listing;

import swapworth.reading.Spelling;
import swapworth.statistics.Ranges;

/**
 * Which of many rows was the first to have an id, whatever its case, spaces and hyphens: a table of rows, because a map of a million texts
 * would take more room than the rows themselves.
 */
final class SameId {
    private final Texts id;
    /** The hash of the id of each row; any number where it has none. */
    private final int[] hash;
    /** One more than the first row that has an id, at a place that its hash tells; 0 is free. */
    private final int[] table;

    private SameId(Texts id, int rows) {
        this.id = id;
        this.hash = new int[rows];
        this.table = new int[4 * Integer.highestOneBit(Math.max(1, rows))];
        // Most of the work is to make the texts.
        Ranges.each(rows, (from, to) -> {
            for (int row = from; row < to; row++) {
                hash[row] = id.has(row) ? key(row).hashCode() * 0x9E3779B9 : 0;
            }
        });
    }

    /** For each of so many rows the first row that has its id; the row itself if it has none, or is the first. */
    static int[] firsts(Texts id, int rows) {
        SameId ids = new SameId(id, rows);
        int[] firsts = new int[rows];
        for (int row = 0; row < rows; row++) {
            firsts[row] = id.has(row) ? ids.first(row) : row;
        }
        return firsts;
    }

    private String key(int row) {
        return Spelling.name(id.get(row).orElse(""));
    }

    /** The first row with the id of a row, which is that row if none has come before. */
    private int first(int row) {
        int at = hash[row] >>> 7 & table.length - 1;
        while (table[at] != 0) {
            int first = table[at] - 1;
            if (hash[first] == hash[row] && key(first).equals(key(row))) {
                return first;
            }
            at = at + 1 & table.length - 1;
        }
        table[at] = row + 1;
        return row;
    }
}
