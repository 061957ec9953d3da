package swapworth.listing;

import java.util.ArrayList;
import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * Members by key, in the order in which they came.
 *
 * @param <K> what members are grouped by
 * @param <V> the members
 */
final class Groups<K, V> {

    private final Map<K, List<V>> groups = new LinkedHashMap<>();

    void add(K key, V member) {
        List<V> group = groups.get(key);
        if (group == null) {
            group = new ArrayList<>(2);
            groups.put(key, group);
        }
        group.add(member);
    }

    List<V> of(K key) {
        List<V> group = groups.get(key);
        return group == null ? List.of() : group;
    }

    Collection<List<V>> all() {
        return groups.values();
    }
}
