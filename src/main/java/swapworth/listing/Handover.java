package swapworth.listing;

import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.ArrayBlockingQueue;
import java.util.concurrent.BlockingQueue;
import java.util.concurrent.LinkedBlockingQueue;
import java.util.function.Consumer;
import java.util.function.Function;

/**
 * Hands things over to somebody who makes something of each, in their order, and takes what was made of them back, in the same order: at
 * first all in one thread, and once there are many, the making in a thread of its own, so that the next are made ready and what came back
 * is put away meanwhile.
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
    private final Consumer<R> taking;
    private final BlockingQueue<List<T>> waiting = new ArrayBlockingQueue<>(MOST_WAITING);
    private final BlockingQueue<Made<R>> made = new LinkedBlockingQueue<>();
    private List<T> batch = new ArrayList<>(0);
    private Thread maker = Thread.currentThread();
    private int direct = Runtime.getRuntime().availableProcessors() > 1 ? MANY : Integer.MAX_VALUE;
    private int away;

    /** What was made of a batch, and the error that ended it before its end, if one did. */
    private record Made<R>(List<R> things, List<Throwable> failure) {
    }

    /**
     * Begins with nothing handed over.
     *
     * @param making makes something of a thing; one thing at a time
     * @param taking takes what was made, in the thread that hands over
     */
    Handover(Function<T, R> making, Consumer<R> taking) {
        this.making = making;
        this.taking = taking;
    }

    /** Hands a thing over. Errors of the making come out here or at the end. */
    @Override
    public void accept(T thing) {
        if (direct > 0) {
            direct -= direct == Integer.MAX_VALUE ? 0 : 1;
            taking.accept(making.apply(thing));
            return;
        }
        batch.add(thing);
        if (batch.size() >= AT_ONCE) {
            if (maker == Thread.currentThread()) {
                maker = new Thread(this::makeAll, "rows");
                maker.setDaemon(true);
                maker.start();
            }
            pass();
        }
    }

    /** Waits until all has come back. */
    void end() {
        if (maker == Thread.currentThread()) {
            batch.forEach(thing -> taking.accept(making.apply(thing)));
            return;
        }
        if (!batch.isEmpty()) {
            pass();
        }
        while (away > 0) {
            takeBack();
        }
        giveUp();
    }

    /** Lets go of what has not been made; nothing more may be handed over. */
    void giveUp() {
        if (maker != Thread.currentThread()) {
            maker.interrupt();
        }
    }

    /** Passes the batch on, and takes back what is ready: little is under way at a time. */
    private void pass() {
        while (!waiting.offer(batch)) {
            takeBack();
        }
        away++;
        batch = new ArrayList<>(AT_ONCE);
        while (!made.isEmpty()) {
            takeBack();
        }
    }

    private void takeBack() {
        Made<R> next;
        try {
            next = made.take();
        } catch (InterruptedException e) {
            throw new IllegalStateException(e);
        }
        away--;
        next.things.forEach(taking);
        for (Throwable failure : next.failure) {
            giveUp();
            if (failure instanceof Error error) {
                throw error;
            }
            throw (RuntimeException) failure;
        }
    }

    private void makeAll() {
        try {
            while (true) {
                made.add(makeOne(waiting.take()));
            }
        } catch (InterruptedException e) {
            // All has been made, or nobody wants it any more.
            Thread.currentThread().interrupt();
        }
    }

    private Made<R> makeOne(List<T> things) {
        List<R> results = new ArrayList<>(things.size());
        try {
            for (T thing : things) {
                results.add(making.apply(thing));
            }
        } catch (RuntimeException | Error e) {
            return new Made<>(results, List.of(e));
        }
        return new Made<>(results, List.of());
    }
}
