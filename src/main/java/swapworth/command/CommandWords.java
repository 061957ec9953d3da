package swapworth.command;

import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * The words of a command line, told apart.
 *
 * @param alone those that stand by themselves
 * @param byOption of each option that is stated, as often as it is, the words that go with it
 */
record CommandWords(List<String> alone, Map<String, List<List<String>>> byOption) {

    /** The first that stands by itself. */
    Optional<String> first() {
        return alone.stream().findFirst();
    }

    boolean has(String option) {
        return byOption.containsKey(option);
    }

    int times(String option) {
        return byOption.getOrDefault(option, List.of()).size();
    }

    /** All words that go with an option. */
    List<String> all(String option) {
        return byOption.getOrDefault(option, List.of()).stream().flatMap(List::stream).toList();
    }

    /** The word that goes with an option. */
    Optional<String> one(String option) {
        return all(option).stream().findFirst();
    }
}
