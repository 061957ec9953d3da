package swapworth.listing;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import swapworth.reading.Spelling;

/** That the table of places says what a map of ids would say. */
class SameIdTest {

    @Test
    void the_first_of_an_id_is_found_as_a_map_finds_it() {
        SplittableRandom random = new SplittableRandom(3);
        List<String> ids = new ArrayList<>();
        SameId table = new SameId(i -> Optional.of(ids.get(i)), 8);
        Map<String, Integer> map = new HashMap<>();
        for (int i = 0; i < 20_000; i++) {
            int number = random.nextInt(12_000);
            String id = random.nextBoolean() ? "A-" + number : "a " + number;
            Integer first = map.putIfAbsent(Spelling.key(id), i);
            assertEquals(first == null ? -1 : first, table.firstOr(id, ids.size()));
            ids.add(id);
        }
    }
}
