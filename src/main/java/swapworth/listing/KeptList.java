package swapworth.listing;

import java.util.AbstractList;
import java.util.List;
import java.util.RandomAccess;

/**
 * A list that never changes and may make its members anew each time they are asked for: two members from one place are equal, but not
 * one object. A million listings or cars kept as columns take a fifth of the room of a million objects, and a copy would make them all.
 *
 * @param <T> the members
 */
public abstract class KeptList<T> extends AbstractList<T> implements RandomAccess {

    KeptList() {
    }

    /**
     * A list that does not change: the list itself if it is one of this kind.
     *
     * @param list any list
     * @param <T> the members
     * @return the same members, none of which may be null
     */
    public static <T> List<T> copyOf(List<T> list) {
        return list instanceof KeptList<T> ? list : List.copyOf(list);
    }
}
