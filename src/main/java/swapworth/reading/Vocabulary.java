package swapworth.reading;

import static java.util.Objects.requireNonNull;

import java.util.Collections;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/**
 * The words of a column and what each stands for; a word is matched without regard to case, spaces and hyphens, and never by likeness. The
 * first word of each meaning is the one that messages name.
 *
 * @param <E> what the words stand for
 */
public final class Vocabulary<E> {

    private final Map<String, Optional<E>> meanings;
    private final Set<String> words;
    /** The first word of each meaning. */
    private final Map<E, String> first;

    private Vocabulary(Map<String, Optional<E>> meanings, Set<String> words, Map<E, String> first) {
        this.meanings = meanings;
        this.words = words;
        this.first = first;
    }

    /**
     * A vocabulary without words.
     *
     * @param <E> what its words will stand for
     * @return an empty vocabulary
     */
    public static <E> Vocabulary<E> empty() {
        return new Vocabulary<>(Map.of(), Set.of(), Map.of());
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
        Map<String, Optional<E>> more = new HashMap<>(meanings);
        Set<String> all = new LinkedHashSet<>(this.words);
        Map<E, String> firsts = new LinkedHashMap<>(first);
        for (String word : words) {
            firsts.putIfAbsent(meaning, word);
            Optional<E> before = more.put(Spelling.name(word), Optional.of(meaning));
            if (before != null && !before.get().equals(meaning)) {
                throw new IllegalArgumentException("'" + word + "' cannot stand for both " + before.get() + " and " + meaning);
            }
            all.add(Spelling.key(word));
        }
        return new Vocabulary<>(more, all, firsts);
    }

    /**
     * All words, for hints.
     *
     * @return in the order in which they were given, in lower case
     */
    public Set<String> words() {
        return Collections.unmodifiableSet(words);
    }

    /**
     * The words as a reader should write them, for messages: the first of each meaning, in the order in which meanings were given.
     *
     * @return such as {@code asking, sold}
     */
    public String accepted() {
        return String.join(", ", first.values());
    }

    /**
     * What a word stands for.
     *
     * @param word the word, in any case
     * @return nothing if it is not in the vocabulary
     */
    public Optional<E> meaning(String word) {
        Optional<E> asTyped = meanings.get(word);
        return asTyped == null ? meanings.getOrDefault(Spelling.name(word), Optional.empty()) : asTyped;
    }
}
