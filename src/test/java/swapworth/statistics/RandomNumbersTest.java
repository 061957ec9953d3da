package swapworth.statistics;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;

import java.util.HashSet;
import java.util.Set;
import org.junit.jupiter.api.Test;

/** Streams of random numbers by name. */
class RandomNumbersTest {

    @Test
    void no_two_short_names_have_one_seed() {
        Set<Long> seeds = new HashSet<>();
        int names = 0;
        for (char a = '0'; a <= 'z'; a++) {
            for (char b = '0'; b <= 'z'; b++) {
                for (String end : new String[] {"", "/engine", "/gearbox"}) {
                    seeds.add(RandomNumbers.seed(1, "" + a + b + end));
                    names++;
                }
            }
        }
        assertEquals(names, seeds.size());
    }

    @Test
    void names_of_one_hash_code_have_streams_that_do_not_go_together() {
        assertEquals("C1".hashCode(), "BP".hashCode());
        RandomNumbers one = RandomNumbers.of(1, "C1");
        RandomNumbers other = RandomNumbers.of(1, "BP");
        int n = 10_000;
        double both = 0;
        for (int i = 0; i < n; i++) {
            both += one.normal() * other.normal() / n;
        }
        assertEquals(0, both, 4 / Math.sqrt(n));
        assertNotEquals(RandomNumbers.seed(1, "C1"), RandomNumbers.seed(2, "C1"));
    }
}
