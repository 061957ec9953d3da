package swapworth.listing;

import java.util.function.IntFunction;
import org.jspecify.annotations.Nullable;

/**
 * Things that are made when asked for by number, and kept until one of another number needs the place: whoever asks for the same several
 * times in a row, or for all of a few, gets the same object. Several threads may ask; at worst a thing is made twice.
 *
 * @param <T> the things, which never change
 */
final class Lately<T> {
    /** So many are kept; of fewer things each is made once. */
    static final int PLACES = 1 << 10;

    private final IntFunction<T> maker;
    private final @Nullable Made<T>[] places;

    private record Made<T>(int number, T thing) {
    }

    @SuppressWarnings("unchecked")
    Lately(IntFunction<T> maker) {
        this.maker = maker;
        this.places = (Made<T>[]) new Made<?>[PLACES];
    }

    T get(int number) {
        Made<T> made = places[number & PLACES - 1];
        if (made == null || made.number != number) {
            made = new Made<>(number, maker.apply(number));
            places[number & PLACES - 1] = made;
        }
        return made.thing;
    }
}
