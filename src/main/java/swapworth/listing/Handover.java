package swapworth.listing;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.ArrayBlockingQueue;
import java.util.concurrent.BlockingQueue;
import java.util.function.Consumer;

/**
 * Hands things over to somebody who takes them in, one at a time and in their order: at first in the same thread, and once there are
 * many, in a thread of its own, so that the next are made ready meanwhile.
 *
 * @param <T> what is handed over
 */
final class Handover<T> implements Consumer<T> {
    /** Fewer than this many are not worth a thread. */
    private static final int MANY = 4096;
    private static final int AT_ONCE = 512;
    private static final int MOST_WAITING = 8;

    private final String name;
    private final Consumer<T> taking;
    private final BlockingQueue<List<T>> waiting = new ArrayBlockingQueue<>(MOST_WAITING);
    private List<T> batch = new ArrayList<>(0);
    /** Begun when there are many. */
    private Optional<Thread> taker = Optional.empty();
    private int direct = Runtime.getRuntime().availableProcessors() > 1 ? MANY : Integer.MAX_VALUE;
    private volatile Optional<Throwable> failure = Optional.empty();

    /**
     * Begins with nothing handed over.
     *
     * @param name name of the thread that takes them in once there are many
     * @param taking takes things in
     */
    Handover(String name, Consumer<T> taking) {
        this.name = name;
        this.taking = taking;
    }

    /** Hands a thing over. Errors of taking it in come out here, with a later thing, or at the end. */
    @Override
    public void accept(T thing) {
        if (direct > 0) {
            direct -= direct == Integer.MAX_VALUE ? 0 : 1;
            taking.accept(thing);
            return;
        }
        batch.add(thing);
        if (batch.size() >= AT_ONCE) {
            pass();
        }
    }

    /** Waits until all has been taken in. */
    void end() {
        if (!batch.isEmpty()) {
            pass();
        }
        if (taker.isPresent()) {
            // Nothing more is what an empty batch says.
            pass();
            try {
                taker.get().join();
            } catch (InterruptedException e) {
                throw new IllegalStateException(e);
            }
            failIfItFailed();
        }
    }

    /** Lets go of what has not been taken in; nothing more may be handed over. */
    void giveUp() {
        taker.ifPresent(Thread::interrupt);
    }

    private void pass() {
        failIfItFailed();
        if (taker.isEmpty()) {
            Thread thread = new Thread(this::takeAll, name);
            thread.setDaemon(true);
            thread.start();
            taker = Optional.of(thread);
        }
        try {
            waiting.put(batch);
        } catch (InterruptedException e) {
            throw new IllegalStateException(e);
        }
        batch = new ArrayList<>(AT_ONCE);
    }

    private void failIfItFailed() {
        if (failure.isPresent()) {
            giveUp();
            if (failure.get() instanceof Error error) {
                throw error;
            }
            throw (RuntimeException) failure.get();
        }
    }

    private void takeAll() {
        try {
            for (List<T> next = waiting.take(); !next.isEmpty(); next = waiting.take()) {
                take(next);
            }
        } catch (InterruptedException e) {
            // Nobody wants the rest any more.
            Thread.currentThread().interrupt();
        }
    }

    /** Behind a failure batches are let go, so that nobody waits for room. */
    private void take(List<T> things) {
        if (failure.isEmpty()) {
            try {
                things.forEach(taking);
            } catch (RuntimeException | Error e) {
                failure = Optional.of(e);
            }
        }
    }
}
