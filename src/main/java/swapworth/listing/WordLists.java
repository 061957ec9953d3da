package swapworth.listing;

import java.util.ArrayList;
import java.util.Comparator;
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

    /** A name, by the spelling under which rows are kept while they are read: the first one seen. */
    private static final class Name {
        final ListingColumn column;
        final Optional<String> kept;
        /** Whether it is kept so because cars that were read before spell it so. */
        final boolean known;
        final Map<String, Spelled> spellings = new LinkedHashMap<>(2);

        Name(ListingColumn column, String kept, boolean known) {
            this.column = column;
            this.kept = Optional.of(kept);
            this.known = known;
        }

        /** The spelling of most rows. */
        String usual() {
            return known ? kept.orElseThrow() : spellings.entrySet().stream().max(Comparator.comparingInt(e -> e.getValue().rows))
                    .map(Map.Entry::getKey).orElse(kept.orElseThrow());
        }
    }

    /** One spelling of a name, with the rows that have it. */
    static final class Spelled {
        private final Optional<String> kept;
        private final Origin first;
        private int rows;

        private Spelled(Optional<String> kept, Origin first) {
            this.kept = kept;
            this.first = first;
        }

        /** The spelling under which a row that has this one is kept. */
        Optional<String> inRow() {
            rows++;
            return kept;
        }
    }

    private final Map<String, Name> names = new LinkedHashMap<>();
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
        names.putIfAbsent(key(column, name), new Name(column, name, true));
    }

    private static String key(ListingColumn column, String name) {
        return column.header() + "\n" + Spelling.name(name);
    }

    /** A spelling of a name, which differs from others of it at most in case, spaces and hyphens. */
    Spelled spelled(ListingColumn column, String text, Origin origin) {
        Name name = names.computeIfAbsent(key(column, text), key -> new Name(column, text, false));
        return name.spellings.computeIfAbsent(text, t -> new Spelled(name.kept, origin));
    }

    /** The spelling under which rows are kept that have a name of another file. */
    Optional<String> kept(ListingColumn column, String text) {
        return names.computeIfAbsent(key(column, text), key -> new Name(column, text, false)).kept;
    }

    /** A name that is kept in one spelling, and which most rows have in another. */
    record Renamed(ListingColumn column, String kept, String usual) {
    }

    /** What is to be spelled as most rows do. */
    List<Renamed> renamed() {
        return names.values().stream().map(name -> new Renamed(name.column, name.kept.orElseThrow(), name.usual()))
                .filter(name -> !name.kept.equals(name.usual)).toList();
    }

    void unmatched(ListingColumn column, String header, String word, Vocabulary<?> known, Draft draft) {
        String key = key(column, Spelling.shortened(word, 60));
        Seen seen = unmatched.get(key);
        if (seen == null) {
            if (unmatched.size() >= MOST_UNMATCHED) {
                return;
            }
            seen = new Seen(Spelling.shortened(word, 60), header, accepted(column, known), draft.origin(),
                    Spelling.slipOf(word, known.words()));
            unmatched.put(key, seen);
        }
        seen.rows++;
    }

    /** A damage cell may also say that there is none, or hold several zones. */
    private static String accepted(ListingColumn column, Vocabulary<?> known) {
        return column == ListingColumn.DAMAGE ? "none, " + known.accepted() + "; several with ;" : known.accepted();
    }

    /** The spellings that are not the usual one of their name. */
    List<RowProblem> variants() {
        List<RowProblem> variants = new ArrayList<>();
        for (Name name : names.values()) {
            String usual = name.usual();
            name.spellings.forEach((text, spelled) -> {
                if (!text.equals(usual)) {
                    variants.add(new RowProblem(spelled.first.file(), spelled.first.line(), name.column.header(), text,
                            RowProblem.Kind.ODD, "taken for '" + Spelling.shortened(usual, 40) + "', which is spelt otherwise elsewhere"));
                }
            });
        }
        return variants;
    }

    List<UnmatchedWord> unmatchedWords() {
        List<UnmatchedWord> words = new ArrayList<>();
        for (Seen seen : unmatched.values()) {
            words.add(new UnmatchedWord(seen.header, seen.word, seen.rows, seen.first, seen.accepted, seen.nearest));
        }
        return words;
    }
}
