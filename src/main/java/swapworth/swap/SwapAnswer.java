package swapworth.swap;

import java.util.List;
import swapworth.table.Table;

/** The answer to what a finished swap is worth: a value, or why there is none and what would help. */
public sealed interface SwapAnswer permits SwapValue, NoSwapValue {

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
