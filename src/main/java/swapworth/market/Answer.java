package swapworth.market;

import static java.util.Objects.requireNonNull;

import java.util.function.Function;

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
