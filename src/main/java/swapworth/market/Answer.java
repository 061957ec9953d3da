package swapworth.market;

import static java.util.Objects.requireNonNull;

import java.util.Optional;
import java.util.function.Function;
import java.util.function.Supplier;

/**
 * An answer that the listings may be too few to bear: the answer, or why there is none.
 *
 * @param <T> what is answered
 */
public sealed interface Answer<T> {

    /**
     * The listings bear an answer.
     *
     * @param <T> what is answered
     * @param value the answer
     */
    record Told<T>(T value) implements Answer<T> {

        /** Checks that there is an answer. */
        public Told {
            requireNonNull(value, "value");
        }

        @Override
        public <R> R match(Function<T, R> told, Function<CannotTell, R> not) {
            return told.apply(value);
        }
    }

    /**
     * The listings bear no answer.
     *
     * @param <T> what was asked
     * @param reason why
     */
    record NotTold<T>(CannotTell reason) implements Answer<T> {

        /** Checks that there is a reason. */
        public NotTold {
            requireNonNull(reason, "reason");
        }

        @Override
        public <R> R match(Function<T, R> told, Function<CannotTell, R> not) {
            return not.apply(reason);
        }
    }

    /**
     * One result from either case.
     *
     * @param <R> type of the result
     * @param told what to do with an answer
     * @param not what to do with a reason why there is none
     * @return the result
     */
    <R> R match(Function<T, R> told, Function<CannotTell, R> not);

    /**
     * What may be there, or why it is not.
     *
     * @param <T> what is answered
     * @param found the answer, where there is one
     * @param reason why there is none, asked only then
     * @return the answer
     */
    static <T> Answer<T> of(Optional<T> found, Supplier<CannotTell> reason) {
        return found.<Answer<T>>map(Told::new).orElseGet(() -> new NotTold<>(reason.get()));
    }

    /**
     * What follows from an answer, where there is one.
     *
     * @param <R> what follows
     * @param follows works it out
     * @return what follows, or the same reason
     */
    default <R> Answer<R> map(Function<T, R> follows) {
        return flatMap(told -> new Told<>(follows.apply(told)));
    }

    /**
     * What follows from an answer, where there is one and where more is not missing.
     *
     * @param <R> what follows
     * @param follows works it out, or says why not
     * @return what follows, or the first reason why nothing does
     */
    default <R> Answer<R> flatMap(Function<T, Answer<R>> follows) {
        return match(follows, NotTold::new);
    }

    /**
     * The answer without the reason.
     *
     * @return nothing where there is no answer
     */
    default Optional<T> told() {
        return match(Optional::of, no -> Optional.empty());
    }

    /**
     * The answer, where there must be one.
     *
     * @return the answer
     * @throws IllegalStateException if the listings bear none; the message says why and what is needed
     */
    default T orElseThrow() {
        return match(told -> told, no -> {
            throw new IllegalStateException("cannot tell: " + no.reason() + "; needed: " + no.needed());
        });
    }
}
