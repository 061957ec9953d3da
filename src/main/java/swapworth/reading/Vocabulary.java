package swapworth.reading;

import static java.util.Objects.requireNonNull;

import java.util.HashMap;
import java.util.Map;
import java.util.Optional;

/**
 * The words of a column and what each stands for; a word is matched exactly, without regard to case, spaces and hyphens, and
 * never by likeness.
 *
 * @param <E> what the words stand for
 */
public final class Vocabulary<E> {

    private final Map<String, E> meanings;

    private Vocabulary(Map<String, E> meanings) {
        this.meanings = meanings;
    }

    /**
     * A vocabulary without words.
     *
     * @param <E> what its words will stand for
     * @return an empty vocabulary
     */
    public static <E> Vocabulary<E> empty() {
        return new Vocabulary<>(Map.of());
    }

    /**
     * The same vocabulary with more words.
     *
     * @param meaning what they stand for
     * @param words the words
     * @return a copy
     * @throws IllegalArgumentException if one of the words stands for something else already
     */
    public Vocabulary<E> with(E meaning, String... words) {
        requireNonNull(meaning, "meaning");
        Map<String, E> more = new HashMap<>(meanings);
        for (String word : words) {
            E before = more.put(Spelling.key(word), meaning);
            if (before != null && !before.equals(meaning)) {
                throw new IllegalArgumentException("'" + word + "' cannot stand for both " + before + " and " + meaning);
            }
        }
        return new Vocabulary<>(more);
    }

    /**
     * What a word stands for.
     *
     * @param word the word, in any case
     * @return nothing if it is not in the vocabulary
     */
    public Optional<E> meaning(String word) {
        E asTyped = meanings.get(word);
        return Optional.ofNullable(asTyped == null ? meanings.get(Spelling.key(word)) : asTyped);
    }
}
