package swapworth.listing;

import java.util.HashMap;
import java.util.Map;

/**
 * How often each value was counted.
 *
 * @param <K> the values
 */
final class Counted<K> {

    private final Map<K, int[]> counts = new HashMap<>();

    void add(K value) {
        int[] count = counts.get(value);
        if (count == null) {
            counts.put(value, new int[] {1});
        } else {
            count[0]++;
        }
    }

    boolean isEmpty() {
        return counts.isEmpty();
    }

    int of(K value) {
        int[] count = counts.get(value);
        return count == null ? 0 : count[0];
    }
}
