package swapworth.reading;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.Optional;
import org.junit.jupiter.api.Test;

class VocabularyTest {
    private static final Vocabulary<Integer> SIDES = Vocabulary.<Integer>empty().with(1, "left", "near side").with(2, "Right-hand", "right")
            .with(1, "l");

    @Test
    void messages_name_the_first_word_of_each_meaning_as_it_is_written() {
        assertEquals("left, Right-hand", SIDES.accepted());
        assertEquals("", Vocabulary.empty().accepted());
    }

    @Test
    void every_word_of_a_meaning_is_understood() {
        assertEquals(Optional.of(1), SIDES.meaning("L"));
        assertEquals(Optional.of(2), SIDES.meaning("right hand"));
    }
}
