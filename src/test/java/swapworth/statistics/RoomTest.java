package swapworth.statistics;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertNotSame;
import static org.junit.jupiter.api.Assertions.assertSame;

import java.util.Arrays;
import java.util.Random;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

/** Room that is lent and taken back. */
class RoomTest {

    @Test
    void what_was_lent_before_is_lent_again_as_zeros() {
        Room room = new Room(5);
        double[] first = room.lend();
        Arrays.fill(first, 7);
        room.takeBack(first);
        assertSame(first, room.lend());
        assertArrayEquals(new double[5], first);
    }

    @Test
    void work_within_work_has_room_of_its_own() {
        Room room = new Room(3);
        room.lendTo(outer -> room.lendTo(inner -> assertNotSame(outer, inner)));
    }

    @Test
    void nothing_is_kept_once_it_is_let_go() {
        Room room = new Room(3);
        double[] lent = room.lend();
        room.takeBack(lent);
        room.clear();
        assertNotSame(lent, room.lend());
    }

    /** Sums that share room among threads are those of one thread that does not, added in the same order. */
    @Test
    void sums_of_many_threads_with_shared_room_are_those_of_one() {
        int rows = 40_000;
        double[] numbers = new Random(5).doubles(rows).toArray();
        double[] alone = new double[rows / 1000];
        int ranges = 10;
        for (int r = 0; r < ranges; r++) {
            double[] part = new double[alone.length];
            add(numbers, part, r * rows / ranges, (r + 1) * rows / ranges);
            Arrays.setAll(alone, k -> alone[k] + part[k]);
        }
        Room room = new Room(alone.length);
        IntStream.range(0, 200).parallel().forEach(again -> {
            double[] sums = new double[alone.length];
            Ranges.sum(rows, sums, room, (part, first, end) -> add(numbers, part, first, end));
            assertArrayEquals(alone, sums);
        });
    }

    private static void add(double[] numbers, double[] sums, int first, int end) {
        for (int i = first; i < end; i++) {
            sums[i % sums.length] += numbers[i];
        }
    }
}
