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
    /** One more than the place of a thing; 0 is free. */
    private int[] table;
    private int[] hashes;
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
        this.table = new int[room];
        this.hashes = new int[room];
    }

    /** The place of the first thing with this id, or -1: then the thing at the stated place, soon to be added, is the first. */
    int firstOr(String text, int place) {
        String key = Spelling.key(text);
        int hash = key.hashCode() * 0x9E3779B9;
        int at = hash >>> 7 & table.length - 1;
        while (table[at] != 0) {
            if (hashes[at] == hash && Spelling.key(id.apply(table[at] - 1).orElse("")).equals(key)) {
                return table[at] - 1;
            }
            at = at + 1 & table.length - 1;
        }
        table[at] = place + 1;
        hashes[at] = hash;
        known++;
        if (known * 4L > table.length * 3L) {
            grow();
        }
        return -1;
    }

    private void grow() {
        int[] places = table;
        int[] before = hashes;
        table = new int[2 * places.length];
        hashes = new int[table.length];
        for (int i = 0; i < places.length; i++) {
            if (places[i] != 0) {
                int at = before[i] >>> 7 & table.length - 1;
                while (table[at] != 0) {
                    at = at + 1 & table.length - 1;
                }
                table[at] = places[i];
                hashes[at] = before[i];
            }
        }
    }
}
