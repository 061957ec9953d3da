package swapworth.listing;

import java.util.Optional;
import java.util.function.IntFunction;
import swapworth.reading.Spelling;

/**
 * Which of many things was the first to have an id, whatever its case, spaces and hyphens: a table of places, because a map of a million
 * texts would take more room than the things themselves.
 */
final class SameId {
    private static final int FEWEST = 64;

    private final IntFunction<Optional<String>> id;
    /** The hash of an id and, in the last 32 bits, one more than the place of the first that has it; 0 is free. */
    private long[] table;
    private int known;

    /**
     * Begins with no id known.
     *
     * @param id the id of the thing at a place, which is asked only of those that were given one
     * @param expected about how many there will be
     */
    SameId(IntFunction<Optional<String>> id, int expected) {
        this.id = id;
        int room = Integer.highestOneBit(Math.max(FEWEST, expected)) * 2;
        this.table = new long[room];
    }

    /** For each row of some columns the first row that has its id; the row itself if it has none, or is the first. */
    static int[] firsts(ListingColumns columns) {
        int[] firsts = new int[columns.size()];
        SameId ids = new SameId(columns.id::get, firsts.length);
        for (int row = 0; row < firsts.length; row++) {
            int known = columns.id.has(row) ? ids.firstOr(columns.id.get(row).orElseThrow(), row) : -1;
            firsts[row] = known < 0 ? row : known;
        }
        return firsts;
    }

    /** The place of the first thing with this id, or -1: then the thing at the stated place, soon to be added, is the first. */
    int firstOr(String text, int place) {
        String key = Spelling.key(text);
        int hash = key.hashCode() * 0x9E3779B9;
        int at = hash >>> 7 & table.length - 1;
        while (table[at] != 0) {
            int first = (int) table[at] - 1;
            if (table[at] >> 32 == hash && Spelling.key(id.apply(first).orElse("")).equals(key)) {
                return first;
            }
            at = at + 1 & table.length - 1;
        }
        table[at] = (long) hash << 32 | place + 1;
        known++;
        if (known * 4L > table.length * 3L) {
            grow();
        }
        return -1;
    }

    private void grow() {
        long[] before = table;
        table = new long[2 * before.length];
        for (long entry : before) {
            if (entry != 0) {
                int at = (int) (entry >> 32) >>> 7 & table.length - 1;
                while (table[at] != 0) {
                    at = at + 1 & table.length - 1;
                }
                table[at] = entry;
            }
        }
    }
}
