package swapworth.listing;

import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.ArrayBlockingQueue;
import java.util.concurrent.BlockingQueue;
import java.util.function.Consumer;

/**
 * Hands things over to somebody who works on them in their order: at first in the same thread, and once there are many, in one of its own,
 * so that the next are made ready meanwhile. What the work has changed may be looked at once {@link #end} has been reached.
 *
 * @param <T> what is handed over
 */
final class Handover<T> implements Consumer<T> {
    /** Fewer than this many are not worth a thread. */
    private static final int MANY = 4096;
    private static final int AT_ONCE = 512;
    private static final int MOST_WAITING = 16;

    private final Consumer<T> work;
    private final BlockingQueue<List<T>> waiting = new ArrayBlockingQueue<>(MOST_WAITING);
    private final List<Throwable> failures = new ArrayList<>(1);
    private List<T> batch = new ArrayList<>(0);
    private Thread worker = Thread.currentThread();
    private int direct = Runtime.getRuntime().availableProcessors() > 1 ? MANY : Integer.MAX_VALUE;

    Handover(Consumer<T> work) {
        this.work = work;
    }

    @Override
    public void accept(T thing) {
        if (direct > 0) {
            direct -= direct == Integer.MAX_VALUE ? 0 : 1;
            work.accept(thing);
            return;
        }
        batch.add(thing);
        if (batch.size() >= AT_ONCE) {
            if (worker == Thread.currentThread()) {
                worker = new Thread(this::workOnAll, "rows");
                worker.setDaemon(true);
                worker.start();
            }
            pass();
        }
    }

    /** Waits until all is done. Errors of the work come out here. */
    void end() {
        if (worker == Thread.currentThread()) {
            batch.forEach(work);
            return;
        }
        if (!batch.isEmpty()) {
            pass();
        }
        // An empty batch is the last.
        pass();
        try {
            worker.join();
        } catch (InterruptedException e) {
            throw new IllegalStateException(e);
        }
        for (Throwable failure : failures) {
            if (failure instanceof Error error) {
                throw error;
            }
            throw failure instanceof RuntimeException known ? known : new IllegalStateException(failure);
        }
    }

    /** Lets go of what has not been worked on; nothing more may be handed over. */
    void giveUp() {
        if (worker != Thread.currentThread()) {
            worker.interrupt();
        }
    }

    private void pass() {
        try {
            waiting.put(batch);
        } catch (InterruptedException e) {
            throw new IllegalStateException(e);
        }
        batch = new ArrayList<>(AT_ONCE);
    }

    private void workOnAll() {
        try {
            for (List<T> next = waiting.take(); !next.isEmpty(); next = waiting.take()) {
                for (T thing : next) {
                    if (failures.isEmpty()) {
                        doOne(thing);
                    }
                }
            }
        } catch (InterruptedException e) {
            failures.add(e);
        }
    }

    private void doOne(T thing) {
        try {
            work.accept(thing);
        } catch (RuntimeException | Error e) {
            failures.add(e);
        }
    }
}
