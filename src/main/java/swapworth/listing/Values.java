package swapworth.listing;

import java.util.Arrays;
import java.util.HashMap;
import java.util.Map;
import java.util.function.Consumer;

/**
 * One value a row, of which many are equal: each distinct one is kept once, and each row keeps its number. The usual value has the number
 * 0, and rows in which none was set have it.
 *
 * @param <V> the values
 */
final class Values<V> {
    /** So many values are told by looking at each, which for a few is quicker than a map. */
    private static final int FEW = 20;

    private final Map<V, Integer> numbers = new HashMap<>(4);
    private V[] distinct;
    private int count;
    private final Numbers codes = new Numbers();
    private V last;
    private int lastCode;

    @SuppressWarnings("unchecked")
    Values(V usual) {
        distinct = (V[]) new Object[4];
        last = usual;
        add(usual);
    }

    V get(int row) {
        return count == 1 ? distinct[0] : distinct[codes.code(row)];
    }

    /** The value that one of some rows has, the last one whose value is not the usual one. */
    V latest(int[] rows, int from, int to) {
        for (int at = to - 1; count > 1 && at >= from; at--) {
            int code = codes.code(rows[at]);
            if (code != 0) {
                return distinct[code];
            }
        }
        return distinct[0];
    }

    /** The number of the value of a row: equal for equal values, 0 for the usual one. */
    int code(int row) {
        return count == 1 ? 0 : codes.code(row);
    }

    /** The number of a value; -1 if no row ever had it. */
    int codeOf(V value) {
        return numbers.getOrDefault(value, -1);
    }

    /** The value of a number. */
    V of(int code) {
        return distinct[code];
    }

    /** How many distinct values there are; their numbers lie below. */
    int count() {
        return count;
    }

    /** Puts a value that no row has yet in the place of another, in all rows that have it. */
    void replace(V value, V other) {
        Integer code = numbers.remove(value);
        if (code != null) {
            numbers.put(other, code);
            distinct[code] = other;
            last = last == value ? other : last;
        }
    }

    /** Hands on each distinct value, in the order in which they came. */
    void each(Consumer<V> taker) {
        for (int code = 0; code < count; code++) {
            taker.accept(distinct[code]);
        }
    }

    /** Most columns never hold but the usual value, and are passed over at once. */
    void set(int row, V value) {
        if (count > 1 || value != last) {
            put(row, value);
        }
    }

    private void put(int row, V value) {
        if (value != last) {
            lastCode = number(value);
            last = value;
        }
        codes.set(row, lastCode);
    }

    private int number(V value) {
        if (count <= FEW) {
            for (int k = 0; k < count; k++) {
                if (distinct[k] == value) {
                    return k;
                }
            }
        }
        Integer known = numbers.get(value);
        return known == null ? add(value) : known;
    }

    private int add(V value) {
        if (count == distinct.length) {
            distinct = Arrays.copyOf(distinct, 2 * count);
        }
        distinct[count] = value;
        numbers.put(value, count);
        return count++;
    }
}
