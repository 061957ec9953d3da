package swapworth.listing;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Queue;
import java.util.concurrent.ArrayBlockingQueue;
import java.util.concurrent.BlockingQueue;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.function.Consumer;
import java.util.function.Function;

/**
 * Hands things over to somebody who makes something of each, in their order, and has what was made of them put away, in the same order: at
 * first all in one thread, and once there are many, the making in a thread of its own, so that the next are made ready meanwhile. Things
 * are put away one at a time by whichever thread has less to do.
 *
 * @param <T> what is handed over
 * @param <R> what is made of it
 */
final class Handover<T, R> implements Consumer<T> {
    /** Fewer than this many are not worth a thread. */
    private static final int MANY = 4096;
    private static final int AT_ONCE = 256;
    private static final int MOST_WAITING = 8;

    private final Function<T, R> making;
    private final Consumer<R> away;
    private final BlockingQueue<List<T>> waiting = new ArrayBlockingQueue<>(MOST_WAITING);
    private final AtomicInteger batches = new AtomicInteger();
    private List<T> batch = new ArrayList<>(0);
    /** Begun when there are many. */
    private Optional<Thread> maker = Optional.empty();
    private int direct = Runtime.getRuntime().availableProcessors() > 1 ? MANY : Integer.MAX_VALUE;

    /** Held by whoever puts away, which keeps the order, and guards the fields below. */
    private final Object turn = new Object();
    private final Queue<List<R>> made = new ArrayDeque<>();
    private final List<Throwable> failures = new ArrayList<>(1);
    private volatile boolean failed;

    /**
     * Begins with nothing handed over.
     *
     * @param making makes something of a thing; one thing at a time
     * @param away puts away what was made; one thing at a time
     */
    Handover(Function<T, R> making, Consumer<R> away) {
        this.making = making;
        this.away = away;
    }

    /** Hands a thing over. Errors of making and putting away come out here or at the end. */
    @Override
    public void accept(T thing) {
        if (direct > 0) {
            direct -= direct == Integer.MAX_VALUE ? 0 : 1;
            away.accept(making.apply(thing));
            return;
        }
        batch.add(thing);
        if (batch.size() >= AT_ONCE) {
            if (maker.isEmpty()) {
                Thread thread = new Thread(this::makeAll, "rows");
                thread.setDaemon(true);
                thread.start();
                maker = Optional.of(thread);
            }
            pass();
        }
    }

    /** Waits until all has been put away. */
    void end() {
        if (maker.isEmpty()) {
            batch.forEach(thing -> away.accept(making.apply(thing)));
            return;
        }
        if (!batch.isEmpty()) {
            pass();
        }
        try {
            synchronized (turn) {
                while (batches.get() > 0 && !failed) {
                    if (!putAway()) {
                        turn.wait();
                    }
                }
            }
        } catch (InterruptedException e) {
            throw new IllegalStateException(e);
        }
        giveUp();
        failIfItFailed();
    }

    /** Lets go of what has not been made; nothing more may be handed over. */
    void giveUp() {
        maker.ifPresent(Thread::interrupt);
    }

    private void failIfItFailed() {
        if (!failed) {
            return;
        }
        giveUp();
        synchronized (turn) {
            if (failures.get(0) instanceof Error error) {
                throw error;
            }
            throw failures.get(0) instanceof RuntimeException known ? known : new IllegalStateException(failures.get(0));
        }
    }

    private void fail(Throwable failure) {
        synchronized (turn) {
            failures.add(failure);
            failed = true;
            turn.notifyAll();
        }
    }

    /** Passes the batch on; while too many wait there is time to put away. */
    private void pass() {
        failIfItFailed();
        batches.incrementAndGet();
        try {
            while (!waiting.offer(batch)) {
                failIfItFailed();
                if (!putAway() && waiting.offer(batch, 1, TimeUnit.MILLISECONDS)) {
                    break;
                }
            }
        } catch (InterruptedException e) {
            throw new IllegalStateException(e);
        }
        batch = new ArrayList<>(AT_ONCE);
    }

    /** Puts away the batch that was made first; whether there was one. */
    private boolean putAway() {
        synchronized (turn) {
            List<R> next = failed ? null : made.poll();
            if (next == null) {
                return false;
            }
            batches.decrementAndGet();
            try {
                next.forEach(away);
            } catch (RuntimeException | Error e) {
                fail(e);
            }
            return true;
        }
    }

    private void makeAll() {
        try {
            while (!failed && !Thread.currentThread().isInterrupted()) {
                List<T> next = waiting.poll();
                if (next != null) {
                    makeOne(next);
                } else if (!putAway()) {
                    makeOne(waiting.take());
                }
            }
        } catch (InterruptedException e) {
            // All has been put away, or nobody wants it any more.
            Thread.currentThread().interrupt();
        } catch (Throwable e) {
            fail(e);
        }
    }

    private void makeOne(List<T> things) {
        List<R> results = new ArrayList<>(things.size());
        List<Throwable> failure = new ArrayList<>(0);
        try {
            for (T thing : things) {
                results.add(making.apply(thing));
            }
        } catch (RuntimeException | Error e) {
            failure.add(e);
        }
        synchronized (turn) {
            made.add(results);
            while (!failure.isEmpty() && putAway()) {
                // What was made before the failure comes first.
            }
            failure.forEach(this::fail);
            turn.notifyAll();
        }
        while (tooManyMade() && putAway()) {
            // Little is to be under way at a time.
        }
    }

    private boolean tooManyMade() {
        synchronized (turn) {
            return made.size() > MOST_WAITING;
        }
    }
}
