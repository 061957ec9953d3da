package swapworth.reading;

import static java.util.Objects.requireNonNull;

import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/**
 * The words of a column and what each stands for; a word is matched exactly, without regard to case, spaces and hyphens, and
 * never by likeness.
 *
 * @param <E> what the words stand for
 */
public final class Vocabulary<E> {

    private final Map<String, Optional<E>> meanings;

    private Vocabulary(Map<String, Optional<E>> meanings) {
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
        Map<String, Optional<E>> more = new LinkedHashMap<>(meanings);
        for (String word : words) {
            Optional<E> before = more.put(Spelling.key(word), Optional.of(meaning));
            if (before != null && !before.get().equals(meaning)) {
                throw new IllegalArgumentException("'" + word + "' cannot stand for both " + before.get() + " and " + meaning);
            }
        }
        return new Vocabulary<>(more);
    }

    /**
     * All words, for hints.
     *
     * @return in the order in which they were given, as they are compared
     */
    public Set<String> words() {
        return Collections.unmodifiableSet(meanings.keySet());
    }

    /**
     * What a word stands for.
     *
     * @param word the word, in any case
     * @return nothing if it is not in the vocabulary
     */
    public Optional<E> meaning(String word) {
        Optional<E> asTyped = meanings.get(word);
        return asTyped == null ? meanings.getOrDefault(Spelling.key(word), Optional.empty()) : asTyped;
    }
}
