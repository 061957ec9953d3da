package swapworth.listing;

import java.util.ArrayList;
import java.util.BitSet;
import java.util.HashMap;
import java.util.List;
import java.util.Map;

/**
 * Which rows show an advertisement that another row shows on the same day: at the same price they are one sighting, at another one both
 * are kept and it is said. Rows are asked in their order, each once, and those without a rate to the base currency are not seen.
 */
final class SecondSightings {
    private final ListingColumns rows;
    private final Findings findings;
    /** For each row the first row that has its id. */
    private final int[] firsts;
    /** The rows that share their id and day with another, and a few that only seem to. */
    private final BitSet onSharedDay;
    private final Map<Long, List<Integer>> sightingsOfDay = new HashMap<>();

    SecondSightings(ListingColumns rows, int[] firsts, Findings findings) {
        this.rows = rows;
        this.firsts = firsts;
        this.findings = findings;
        this.onSharedDay = onSharedDay();
    }

    /** Whatever falls on one bit is looked at closely, and that is little. */
    private BitSet onSharedDay() {
        BitSet repeated = new BitSet();
        for (int row = 0; row < firsts.length; row++) {
            if (firsts[row] != row) {
                repeated.set(row);
                repeated.set(firsts[row]);
            }
        }
        int bits = 16 * Integer.highestOneBit(1 + repeated.cardinality());
        BitSet once = new BitSet(bits);
        BitSet twice = new BitSet(bits);
        for (int row = repeated.nextSetBit(0); row >= 0; row = repeated.nextSetBit(row + 1)) {
            int bit = bitOfDay(row) & bits - 1;
            (once.get(bit) ? twice : once).set(bit);
        }
        BitSet shared = new BitSet();
        for (int row = repeated.nextSetBit(0); row >= 0; row = repeated.nextSetBit(row + 1)) {
            shared.set(row, twice.get(bitOfDay(row) & bits - 1));
        }
        return shared;
    }

    private int bitOfDay(int row) {
        return (int) (idAndDay(row) * 0x9E3779B97F4A7C15L >>> 32);
    }

    /** The id, by the first row that has it, and the day of a row. */
    private long idAndDay(int row) {
        return (long) firsts[row] << 32 | rows.day(row) & 0xffff_ffffL;
    }

    /**
     * Whether a row is set aside for another of its day.
     *
     * @param withoutRate the rows before it whose price has no rate to the base currency
     */
    boolean isOne(int row, BitSet withoutRate) {
        int first = firsts[row];
        if (!onSharedDay.get(row) || first == row || !rows.isDated(row)) {
            return false;
        }
        if (rows.isDated(first) && !withoutRate.get(first)) {
            sightingsOfDay.computeIfAbsent(idAndDay(first), day -> new ArrayList<>(List.of(first)));
        }
        List<Integer> seen = sightingsOfDay.computeIfAbsent(idAndDay(row), day -> new ArrayList<>());
        List<Integer> same = seen.stream().filter(other -> rows.vehicle.code(other) == rows.vehicle.code(row)).toList();
        Price price = rows.price(row);
        for (int other : same) {
            if (rows.price(other).sameAsTyped(price) && rows.price(other).kind() == price.kind()) {
                findings.setAside(rows.origin(row), "id", rows.id.get(row).orElseThrow(),
                        "the same advertisement was seen on the same day at the same price in " + rows.origin(other) + ": one sighting");
                return true;
            }
        }
        if (!same.isEmpty()) {
            findings.odd(rows.origin(row), "price", price.typed().toString(), "on the same day the advertisement stands at "
                    + rows.price(same.get(0)).typed() + " in " + rows.origin(same.get(0)) + "; both are kept");
        }
        seen.add(row);
        return false;
    }
}
