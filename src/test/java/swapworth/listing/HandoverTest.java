package swapworth.listing;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

/** That what is made of things is put away in their order, all of it, few things or many. */
class HandoverTest {

    @Test
    void everything_is_put_away_in_its_order() {
        for (int count : new int[] {0, 1, 4096, 4097, 5000, 30_000}) {
            List<Integer> seen = new ArrayList<>();
            Handover<Integer, String> handover = new Handover<>(i -> "" + i, made -> seen.add(Integer.valueOf(made)));
            IntStream.range(0, count).forEach(handover::accept);
            handover.end();
            assertEquals(IntStream.range(0, count).boxed().toList(), seen);
        }
    }

    @Test
    void an_error_of_the_making_comes_out_and_nothing_hangs() {
        for (int failing : new int[] {10, 4500, 29_999}) {
            List<Integer> seen = new ArrayList<>();
            Handover<Integer, Integer> handover = new Handover<>(i -> {
                if (i == failing) {
                    throw new IllegalArgumentException("row " + i);
                }
                return i;
            }, seen::add);
            IllegalArgumentException error = assertThrows(IllegalArgumentException.class, () -> {
                IntStream.range(0, 30_000).forEach(handover::accept);
                handover.end();
            });
            assertEquals("row " + failing, error.getMessage());
            assertTrue(seen.size() == failing, "nothing behind the error is put away: " + seen.size());
        }
    }

    @Test
    void an_error_of_putting_away_comes_out_and_nothing_hangs() {
        for (int failing : new int[] {10, 4500, 29_999}) {
            AtomicInteger seen = new AtomicInteger();
            Handover<Integer, Integer> handover = new Handover<>(i -> i, i -> {
                if (i == failing) {
                    throw new StackOverflowError("row " + i);
                }
                seen.incrementAndGet();
            });
            StackOverflowError error = assertThrows(StackOverflowError.class, () -> {
                IntStream.range(0, 30_000).forEach(handover::accept);
                handover.end();
            });
            assertEquals("row " + failing, error.getMessage());
            assertEquals(failing, seen.get(), "nothing behind the error is put away");
        }
    }
}
