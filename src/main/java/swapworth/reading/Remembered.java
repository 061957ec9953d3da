package swapworth.reading;

import java.util.HashMap;
import java.util.Map;
import java.util.function.Function;

/**
 * What texts were found to say, each read once as long as there is room.
 *
 * @param <T> what the texts stand for
 */
final class Remembered<T> {
    private static final int MOST = 1 << 16;

    private final Map<String, Parsed<T>> known = new HashMap<>();
    private final Function<String, Parsed<T>> reading;

    Remembered(Function<String, Parsed<T>> reading) {
        this.reading = reading;
    }

    Parsed<T> of(String text) {
        Parsed<T> parsed = known.get(text);
        if (parsed == null) {
            parsed = reading.apply(text);
            if (known.size() < MOST) {
                known.put(text, parsed);
            }
        }
        return parsed;
    }
}
