package swapworth.listing;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTimeoutPreemptively;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.concurrent.locks.LockSupport;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

/** That what is made of things is put away in their order, all of it, few things or many. */
class HandoverTest {
    private static final Duration LONG = Duration.ofSeconds(60);

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
            IllegalArgumentException error = assertTimeoutPreemptively(LONG, () -> assertThrows(IllegalArgumentException.class, () -> {
                IntStream.range(0, 30_000).forEach(handover::accept);
                handover.end();
            }));
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
            StackOverflowError error = assertTimeoutPreemptively(LONG, () -> assertThrows(StackOverflowError.class, () -> {
                IntStream.range(0, 30_000).forEach(handover::accept);
                handover.end();
            }));
            assertEquals("row " + failing, error.getMessage());
            assertEquals(failing, seen.get(), "nothing behind the error is put away");
        }
    }

    @Test
    void what_nobody_wants_any_more_is_not_made() throws InterruptedException {
        assumeTrue(Runtime.getRuntime().availableProcessors() > 1, "one processor makes everything at once");
        Thread here = Thread.currentThread();
        AtomicInteger made = new AtomicInteger();
        Handover<Integer, Integer> handover = new Handover<>(i -> {
            if (Thread.currentThread() != here) {
                LockSupport.parkNanos(1_000_000);
            }
            return made.incrementAndGet();
        }, i -> { });
        IntStream.range(0, 6_000).forEach(handover::accept);
        handover.giveUp();
        for (int before = -1; before != made.get();) {
            before = made.get();
            Thread.sleep(50);
        }
        assertTrue(made.get() < 5_000, made + " of 6,000");
    }
}
