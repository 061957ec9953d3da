package swapworth.listing;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;

/**
 * One value a row, of which many are equal: each distinct one is kept once, and each row keeps its number. The usual value has the number
 * 0, and rows in which none was set have it.
 *
 * @param <V> the values
 */
final class Values<V> {
    private final Map<V, Integer> numbers = new HashMap<>(4);
    private final List<V> distinct = new ArrayList<>(4);
    private final Numbers codes = new Numbers();
    private V last;
    private int lastCode;

    Values(V usual) {
        numbers.put(usual, 0);
        distinct.add(usual);
        last = usual;
    }

    V get(int row) {
        return distinct.get(codes.code(row));
    }

    /** The number of the value of a row: equal for equal values, 0 for the usual one. */
    int code(int row) {
        return codes.code(row);
    }

    /** The value of a number. */
    V of(int code) {
        return distinct.get(code);
    }

    /** How many distinct values there are; their numbers lie below. */
    int count() {
        return distinct.size();
    }

    void set(int row, V value) {
        if (value != last) {
            lastCode = number(value);
            last = value;
        }
        codes.set(row, lastCode);
    }

    private int number(V value) {
        Integer known = numbers.get(value);
        if (known == null) {
            known = distinct.size();
            numbers.put(value, known);
            distinct.add(value);
        }
        return known;
    }
}
