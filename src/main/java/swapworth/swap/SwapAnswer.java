package swapworth.swap;

import java.util.List;
import java.util.function.Function;
import swapworth.market.Answer;
import swapworth.table.Table;

/** The answer to what a finished swap is worth: a value, or why there is none and what would help. */
public sealed interface SwapAnswer permits SwapValue, NoSwapValue {

    /**
     * One result from either case.
     *
     * @param <T> type of the result
     * @param value what to do with a value
     * @param none what to do with the reasons why there is none
     * @return the result
     */
    <T> T match(Function<SwapValue, T> value, Function<NoSwapValue, T> none);

    /**
     * The same as an answer of the house, from which more can follow.
     *
     * @return the value, or why there is none and what would help
     */
    default Answer<SwapValue> answer() {
        return match(Answer.Told::new, none -> new Answer.NotTold<>(none.cannotTell()));
    }

    /**
     * The car.
     *
     * @return as it was asked for
     */
    FinishedCar car();

    /**
     * The approaches, each with its answer or the reason why it has none.
     *
     * @return one for each kind
     */
    List<Approach> approaches();

    /**
     * Everything as tables.
     *
     * @return the result first
     */
    List<Table> tables();
}
