package swapworth.market;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.util.Optional;
import org.junit.jupiter.api.Test;

/** An answer or the reason why there is none, carried through whatever follows from it. */
class AnswerTest {
    private static final CannotTell REASON = CannotTell.without("there is no fees.csv", "that file");

    @Test
    void what_follows_from_an_answer_follows() {
        Answer<Integer> two = Answer.of(Optional.of(2), () -> {
            throw new AssertionError("no reason is asked for");
        });
        assertEquals(new Answer.Told<>("2 cars"), two.map(n -> n + " cars"));
        assertEquals(Optional.of(4), two.flatMap(n -> new Answer.Told<>(2 * n)).told());
    }

    @Test
    void the_first_reason_stays_and_nothing_more_is_worked_out() {
        Answer<Integer> none = Answer.of(Optional.empty(), () -> REASON);
        Answer<Integer> after = none.<Integer>map(n -> {
            throw new AssertionError("nothing to work with");
        }).flatMap(n -> new Answer.NotTold<>(CannotTell.without("another", "thing")));
        assertEquals(new Answer.NotTold<Integer>(REASON), after);
        assertEquals(Optional.empty(), after.told());
        assertEquals("Cannot tell: there is no fees.csv; needed: that file.", after.match(n -> "", CannotTell::sentence));
        assertEquals("cannot tell: there is no fees.csv; needed: that file",
                assertThrows(IllegalStateException.class, after::orElseThrow).getMessage());
    }
}
