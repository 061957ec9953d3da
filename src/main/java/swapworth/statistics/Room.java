package swapworth.statistics;

import java.util.Arrays;
import java.util.Queue;
import java.util.concurrent.ConcurrentLinkedQueue;
import java.util.function.Consumer;
import java.util.function.Function;

/**
 * Room for as many numbers as a matrix has, lent for a step of work and taken back, by several threads at a time. Hundreds of steps then
 * share a few arrays: memory that is touched for the first time costs a machine more than the sums that are written into it.
 */
final class Room {
    private final long size;
    private final Queue<double[]> spare = new ConcurrentLinkedQueue<>();

    /** Room for so many numbers at a time. */
    Room(long size) {
        this.size = size;
    }

    /** How many numbers at a time. */
    long size() {
        return size;
    }

    /** As many zeros as there is room for. */
    double[] lend() {
        double[] room = spare.poll();
        return room == null ? new double[Math.toIntExact(size)] : room;
    }

    /** Takes back what was lent and is not looked at any more; what was lent elsewhere, of another size, is let go. */
    void takeBack(double[] lent) {
        if (lent.length != size) {
            return;
        }
        Arrays.fill(lent, 0);
        spare.add(lent);
    }

    /** What is made with as many zeros as there is room for, which it must not keep. */
    <T> T with(Function<double[], T> work) {
        double[] lent = lend();
        T made = work.apply(lent);
        takeBack(lent);
        return made;
    }

    /** Lends as many zeros as there is room for to work that must not keep them. */
    void lendTo(Consumer<double[]> work) {
        double[] lent = lend();
        work.accept(lent);
        takeBack(lent);
    }

    /** Lets go of what is not lent. */
    void clear() {
        spare.clear();
    }
}
