package swapworth.reading;

import static java.util.Objects.requireNonNull;

import java.util.List;
import java.util.function.Function;
import java.util.function.Supplier;

/**
 * What became of the text of one cell: understood, blank, or refused with a question.
 *
 * @param <T> what the text stands for
 */
public sealed interface Parsed<T> {

    /**
     * The text was understood.
     *
     * @param value what it stands for
     * @param remarks what a reader should know of how it was understood
     * @param <T> what the text stands for
     */
    record Understood<T>(T value, List<String> remarks) implements Parsed<T> {

        /** Copies the remarks in. */
        public Understood {
            requireNonNull(value, "value");
            remarks = List.copyOf(remarks);
        }
    }

    /**
     * The cell says nothing.
     *
     * @param <T> what the text would stand for
     */
    record Blank<T>() implements Parsed<T> {
    }

    /**
     * The text was not understood, and is not guessed.
     *
     * @param reason what is wrong
     * @param question what the user may answer or change
     * @param <T> what the text would stand for
     */
    record Refused<T>(String reason, String question) implements Parsed<T> {

        /** Checks that nothing is missing. */
        public Refused {
            requireNonNull(reason, "reason");
            requireNonNull(question, "question");
        }

        /**
         * The reason and the question in one sentence.
         *
         * @return for instance {@code two numbers in one cell; which one is meant?}
         */
        public String message() {
            return question.isEmpty() ? reason : reason + "; " + question;
        }
    }

    /**
     * The text was understood and there is nothing to say of it.
     *
     * @param value what it stands for
     * @param <T> what the text stands for
     * @return the value
     */
    static <T> Parsed<T> understood(T value) {
        return new Understood<>(value, List.of());
    }

    /**
     * The text was understood, with a remark.
     *
     * @param value what it stands for
     * @param remark what a reader should know
     * @param <T> what the text stands for
     * @return the value
     */
    static <T> Parsed<T> understood(T value, String remark) {
        return new Understood<>(value, List.of(remark));
    }

    /**
     * The cell says nothing.
     *
     * @param <T> what the text would stand for
     * @return a blank
     */
    static <T> Parsed<T> blank() {
        return new Blank<>();
    }

    /**
     * The text was not understood.
     *
     * @param reason what is wrong
     * @param question what the user may answer or change; empty for none
     * @param <T> what the text would stand for
     * @return a refusal
     */
    static <T> Parsed<T> refused(String reason, String question) {
        return new Refused<>(reason, question);
    }

    /**
     * One function for each case, so that none is forgotten.
     *
     * @param understood for a value
     * @param blank for a blank
     * @param refused for a refusal
     * @param <R> what the functions give
     * @return what the function of the case gives
     */
    default <R> R match(Function<Understood<T>, R> understood, Supplier<R> blank, Function<Refused<T>, R> refused) {
        if (this instanceof Understood<T> value) {
            return understood.apply(value);
        }
        return this instanceof Refused<T> no ? refused.apply(no) : blank.get();
    }

    /**
     * The same case with another value.
     *
     * @param change what to do with an understood value
     * @param <R> what the changed value is
     * @return a value with the same remarks, a blank or the same refusal
     */
    default <R> Parsed<R> map(Function<T, R> change) {
        return match(value -> new Understood<>(change.apply(value.value()), value.remarks()), Parsed::blank,
                no -> refused(no.reason(), no.question()));
    }
}
