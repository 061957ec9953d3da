package swapworth.listing;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import swapworth.reading.Spelling;
import swapworth.reading.Vocabulary;

/** That the words of the columns and the signs of not knowing are apart, so that it does not matter which is looked for first. */
class ListingWordsTest {

    @Test
    void no_sign_of_not_knowing_is_a_word() {
        for (String sign : List.of("", " ", "?", "??", "\u2013", "\u2014", "n/a", "NA", "n.a.", "unknown", "unk", "not known", "Not-stated", "tbc", ".")) {
            assertTrue(Spelling.isBlank(sign), sign);
            for (Vocabulary<?> words : List.of(ListingWords.PRICE_KIND, ListingWords.PRICE_INCLUDES, ListingWords.SELLER, ListingWords.RUNS,
                    ListingWords.CONDITION, ListingWords.KEYS, ListingWords.AIRBAGS, ListingWords.TITLE, ListingWords.OUTCOME, ListingWords.SAVED,
                    ListingWords.MILEAGE_STATUS, ListingWords.DRIVEN_WHEELS)) {
                assertEquals(Optional.empty(), words.meaning(sign), sign);
            }
        }
    }
}
