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

/** That things are taken in in their order, all of them, few or many. */
class HandoverTest {
    private static final Duration LONG = Duration.ofSeconds(60);

    @Test
    void everything_is_taken_in_in_its_order() {
        for (int count : new int[] {0, 1, 4096, 4097, 5000, 30_000}) {
            List<Integer> seen = new ArrayList<>();
            Handover<Integer> handover = new Handover<>("rows", seen::add);
            IntStream.range(0, count).forEach(handover::accept);
            handover.end();
            assertEquals(IntStream.range(0, count).boxed().toList(), seen);
        }
    }

    @Test
    void an_error_comes_out_and_nothing_hangs() {
        for (int failing : new int[] {10, 4500, 29_999}) {
            AtomicInteger seen = new AtomicInteger();
            Handover<Integer> handover = new Handover<>("rows", i -> {
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
            assertEquals(failing, seen.get(), "nothing behind the error is taken in");
        }
    }

    @Test
    void two_in_a_row_keep_the_order_and_hand_back_an_error() {
        for (int failing : new int[] {10, 4500, 20_000, 29_999, Integer.MAX_VALUE}) {
            List<Integer> seen = new ArrayList<>();
            Handover<Integer> second = new Handover<>("kept", i -> {
                if (i == 2 * failing) {
                    throw new IllegalStateException("row " + failing);
                }
                seen.add(i);
            });
            Handover<Integer> first = new Handover<>("understood", i -> second.accept(2 * i));
            assertTimeoutPreemptively(LONG, () -> {
                try {
                    IntStream.range(0, 30_000).forEach(first::accept);
                    first.end();
                    second.end();
                    assertEquals(Integer.MAX_VALUE, failing, "no error came out");
                } catch (IllegalStateException e) {
                    assertEquals("row " + failing, e.getMessage());
                    first.giveUp();
                    second.giveUp();
                }
            });
            assertEquals(IntStream.range(0, Math.min(failing, 30_000)).mapToObj(i -> 2 * i).toList(), seen);
        }
    }

    @Test
    void what_nobody_wants_any_more_is_not_taken_in() throws InterruptedException {
        assumeTrue(Runtime.getRuntime().availableProcessors() > 1, "one processor takes everything in at once");
        Thread here = Thread.currentThread();
        AtomicInteger taken = new AtomicInteger();
        Handover<Integer> handover = new Handover<>("rows", i -> {
            if (Thread.currentThread() != here) {
                LockSupport.parkNanos(1_000_000);
            }
            taken.incrementAndGet();
        });
        IntStream.range(0, 6_000).forEach(handover::accept);
        handover.giveUp();
        for (int before = -1; before != taken.get();) {
            before = taken.get();
            Thread.sleep(50);
        }
        assertTrue(taken.get() < 5_000, taken + " of 6,000");
    }
}
