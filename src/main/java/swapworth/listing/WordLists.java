package swapworth.listing;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import swapworth.reading.RowProblem;
import swapworth.reading.Spelling;
import swapworth.reading.Vocabulary;

/** What was seen of the words of several files: one spelling for each name, and the words that were not understood. */
final class WordLists {

    private static final int MOST_UNMATCHED = 1_000;

    private static final class Seen {
        final String word;
        final String header;
        final String accepted;
        final Origin first;
        final Optional<String> nearest;
        int rows;

        Seen(String word, String header, String accepted, Origin first, Optional<String> nearest) {
            this.word = word;
            this.header = header;
            this.accepted = accepted;
            this.first = first;
            this.nearest = nearest;
        }
    }

    private final Map<String, String> spellings = new HashMap<>();
    private final Map<String, RowProblem> variants = new LinkedHashMap<>();
    private final Map<String, Seen> unmatched = new LinkedHashMap<>();

    /** Lists that spell each name as cars that were read before do: a car in play belongs to the line of the listings. */
    static WordLists spelledAs(List<Car> cars) {
        WordLists lists = new WordLists();
        if (cars instanceof StoredCars stored) {
            stored.names(lists::know);
        } else {
            for (Car car : cars) {
                lists.know(ListingColumn.VEHICLE, car.facts().vehicle());
                car.facts().trim().ifPresent(trim -> lists.know(ListingColumn.TRIM, trim));
                car.facts().body().ifPresent(body -> lists.know(ListingColumn.BODY, body));
                car.facts().runningGear().ifPresent(gear -> lists.know(ListingColumn.RUNNING_GEAR, gear));
                car.facts().region().ifPresent(region -> lists.know(ListingColumn.REGION, region));
            }
        }
        return lists;
    }

    private void know(ListingColumn column, String name) {
        spellings.putIfAbsent(key(column, name), name);
    }

    private static String key(ListingColumn column, String name) {
        return column.header() + "\n" + Spelling.key(name);
    }

    /** The spelling first seen of a name that differs at most in case, spaces and hyphens. */
    String oneSpelling(ListingColumn column, String text, Origin origin) {
        String first = spellings.computeIfAbsent(key(column, text), key -> text);
        if (!first.equals(text)) {
            variants.computeIfAbsent(column + text, key -> new RowProblem(origin.file(), origin.line(), column.header(), text,
                    RowProblem.Kind.ODD, "taken for '" + Spelling.shortened(first, 40)
                    + "', which is spelt otherwise elsewhere"));
        }
        return first;
    }

    void unmatched(ListingColumn column, String header, String word, Vocabulary<?> known, Draft draft) {
        String key = key(column, Spelling.shortened(word, 60));
        Seen seen = unmatched.get(key);
        if (seen == null) {
            if (unmatched.size() >= MOST_UNMATCHED) {
                return;
            }
            seen = new Seen(Spelling.shortened(word, 60), header, ListingWords.accepted(column).orElse(""), draft.origin(),
                    Spelling.slipOf(word, known.words()));
            unmatched.put(key, seen);
        }
        seen.rows++;
    }

    List<RowProblem> variants() {
        return new ArrayList<>(variants.values());
    }

    List<UnmatchedWord> unmatchedWords() {
        List<UnmatchedWord> words = new ArrayList<>();
        for (Seen seen : unmatched.values()) {
            words.add(new UnmatchedWord(seen.header, seen.word, seen.rows, seen.first, seen.accepted, seen.nearest));
        }
        return words;
    }
}
