package swapworth.listing;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import swapworth.reading.Spelling;

/** That the table of rows says what a map of ids would say. */
class SameIdTest {

    @Test
    void the_first_of_an_id_is_found_as_a_map_finds_it() {
        SplittableRandom random = new SplittableRandom(3);
        int rows = 20_000;
        Texts ids = new Texts(0);
        Map<String, Integer> map = new HashMap<>();
        int[] expected = new int[rows];
        for (int row = 0; row < rows; row++) {
            int number = random.nextInt(12_000);
            // The second and third have one hash: they are told apart by their letters alone.
            String id = List.of("A-", "Aa", "BB", "a ").get(random.nextInt(4)) + number;
            boolean without = random.nextInt(10) == 0;
            ids.set(row, without ? Optional.empty() : Optional.of(id));
            Integer first = without ? null : map.putIfAbsent(Spelling.key(id), row);
            expected[row] = first == null ? row : first;
        }
        assertEquals("Aa7".hashCode(), "BB7".hashCode());
        assertArrayEquals(expected, SameId.firsts(ids, rows));
        assertArrayEquals(new int[0], SameId.firsts(new Texts(0), 0));
    }
}
