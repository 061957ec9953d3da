package swapworth.listing;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.EnumSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import swapworth.reading.Spelling;
import swapworth.reading.Vocabulary;

/** That the words of the columns and the signs of not knowing are apart, so that it does not matter which is looked for first. */
class ListingWordsTest {

    @Test
    void no_sign_of_not_knowing_is_a_word() {
        for (String sign : List.of("", " ", "?", "??", "\u2013", "\u2014", "n/a", "NA", "n.a.", "unknown", "unk", "not known",
                "Not-stated", "tbc", ".")) {
            assertTrue(Spelling.isBlank(sign), sign);
            for (Vocabulary<?> words : List.of(ListingWords.PRICE_KIND, ListingWords.PRICE_INCLUDES, ListingWords.SELLER, ListingWords.RUNS,
                    ListingWords.CONDITION, ListingWords.KEYS, ListingWords.AIRBAGS, ListingWords.TITLE, ListingWords.OUTCOME,
                    ListingWords.SAVED,
                    ListingWords.MILEAGE_STATUS, ListingWords.DRIVEN_WHEELS)) {
                assertEquals(Optional.empty(), words.meaning(sign), sign);
            }
        }
    }

    @Test
    void every_column_whose_words_may_not_be_understood_says_which_are_known(@TempDir Path folder) throws IOException {
        int columns = 0;
        for (ListingColumn column : EnumSet.complementOf(EnumSet.of(ListingColumn.VEHICLE, ListingColumn.PRICE,
                ListingColumn.MODEL_YEAR, ListingColumn.MILEAGE, ListingColumn.GEAR_MILEAGE))) {
            String rows = "vehicle,price_usd,model_year,mileage_mi,gear_mileage_mi," + column.header()
                    + "\nSivrette,9000,2014,88000,40000,qzxv\n";
            for (UnmatchedWord word : Listings.read(Files.writeString(folder.resolve("listings.csv"), rows)).unmatchedWords()) {
                assertFalse(word.accepted().isEmpty(), column.header());
                columns++;
            }
        }
        assertEquals(18, columns, "columns with a vocabulary");
    }

    @Test
    void a_word_that_is_not_understood_is_told_with_those_that_are(@TempDir Path folder) throws IOException {
        Map<String, String> known = Map.of("runs", "drives, engine fires, engine dead, no engine, not tried", "rust", "sound, worn, bad",
                "damage", "none, front, rear, left, right, roof, underside, flood, fire; several with ;", "keys", "yes, no",
                "title", "clean, rebuilt, salvage, parts only", "price_kind", "asking, sold, bid not met", "airbags",
                "in place, fired, gone", "saved", "whole search, picked");
        for (Map.Entry<String, String> column : known.entrySet()) {
            String rows = "vehicle,price_usd,model_year," + column.getKey() + "\nSivrette,9000,2014,qzxv\n";
            ListingsRead read = Listings.read(Files.writeString(folder.resolve("listings.csv"), rows));
            assertEquals(List.of(column.getValue()), read.unmatchedWords().stream().map(UnmatchedWord::accepted).toList());
        }
    }

    private static void mean(Runs runs, String... words) {
        for (String word : words) {
            assertEquals(Optional.of(runs), ListingWords.RUNS.meaning(word), word);
        }
    }

    /** What sellers write; which state a word names is common practice, no source. */
    @Test
    void the_words_of_advertisements_say_whether_a_car_moves() {
        mean(Runs.DRIVES, "Runs and drives", "runs & drives", "runs/drives", "starts and drives", "drives", "drivable");
        mean(Runs.ENGINE_FIRES, "runs", "Runs", "running", "starts", "starts and runs", "engine runs", "runs but does not drive",
                "starts, not driven");
        mean(Runs.ENGINE_DEAD, "no start", "No-Start", "won't start", "won\u2019t start", "wont start", "does not start", "doesn't start",
                "will not start", "non runner", "non-runner", "Nonrunner", "not running", "does not run",
                "cranks but won't start", "seized");
        mean(Runs.NO_ENGINE, "no engine", "no motor", "roller");
        mean(Runs.NOT_TRIED, "not tried", "untried", "untested", "not started");
    }

    @Test
    void a_word_that_may_mean_several_things_is_not_understood() {
        for (String word : List.of("yes", "no", "blown", "starter", "as is", "project", "barn find", "does not drive", "needs work")) {
            assertEquals(Optional.empty(), ListingWords.RUNS.meaning(word), word);
        }
    }

    @Test
    void every_state_that_a_message_lists_as_known_is_known_by_that_word() {
        for (Runs runs : Runs.values()) {
            if (runs != Runs.UNKNOWN) {
                assertEquals(Optional.of(runs), ListingWords.RUNS.meaning(runs.words()));
                assertTrue(ListingWords.RUNS.accepted().contains(runs.words()));
            }
        }
    }
}
